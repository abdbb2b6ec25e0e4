//! The small forms that ask for a number, or a second thought, before the deed.

use egui::text::{CCursor, CCursorRange};
use egui::text_edit::TextEditState;
use egui::{DragValue, Id, Key, Modifiers};
use sim_core::action::{Action, Cue, Cycle, PedalHold};

use super::super::super::state::OpenForm;
use super::super::super::theme;
use super::super::pad;
use front::hands::Form;
use front::shop::Shop;
use front::words::Words;

/// What came of a form in this frame.
#[derive(Debug, PartialEq)]
pub(super) enum Filled {
    /// Still open.
    No,
    /// Do it.
    Yes(Action),
    /// Leave it.
    Leave,
}

/// Shows an open form. `fresh`: it opened in this frame and takes the focus, unless that rests at `begins`.
pub(super) fn show(
    inner: &mut egui::Ui,
    shop: &Shop,
    words: &Words,
    open: &mut OpenForm,
    fresh: bool,
    begins: Option<Id>,
) -> Filled {
    inner.label(words.say(heading(open.form)));
    if let Some(key) = sentence(open.form) {
        inner.add(egui::Label::new(words.say(key)).wrap());
    }
    let mut fields = Vec::new();
    // Fields in the order shown: which one the pad writes into, and how far it may go.
    let (mut at, mut most) = (open.field, 0.0);
    let begun = open.begun;
    egui::Grid::new("form").num_columns(3).show(inner, |grid| {
        let mut field = |key: &str, value: &mut f64, range: std::ops::RangeInclusive<f64>, unit: &str| {
            let label = grid.label(words.say(key));
            let upper = *range.end();
            let drag = DragValue::new(value).range(range).max_decimals(0);
            let response = grid.add_sized([96.0, theme::TARGET], drag).labelled_by(label.id);
            if response.gained_focus() || response.clicked() || response.dragged() {
                at = fields.len();
            }
            if at == fields.len() {
                most = upper;
                let below = response.rect.expand(1.0);
                grid.painter().hline(below.x_range(), below.bottom(), (2.0, theme::ACCENT));
            }
            fields.push(response.id);
            grid.label(unit);
            grid.end_row();
        };
        match open.form {
            Form::HoldByFoot => field("form-force", &mut open.first, 1.0..=700.0, "N"),
            Form::HoldByProp => field("form-force", &mut open.first, 1.0..=500.0, "N"),
            Form::PumpPedal => {
                field("form-times", &mut open.second, 1.0..=30.0, "");
                field("form-force", &mut open.first, 1.0..=700.0, "N");
            }
            Form::Stroke(_) => field("form-strokes", &mut open.first, 1.0..=200.0, ""),
            Form::Wait => {
                field("form-minutes", &mut open.first, 0.0..=720.0, "min");
                field("form-seconds", &mut open.second, 0.0..=59.0, "s");
            }
            Form::WaitUntil(_) | Form::Time(_) => {
                field("form-longest-minutes", &mut open.first, 0.0..=120.0, "min");
                field("form-longest-seconds", &mut open.second, 0.0..=59.0, "s");
            }
            Form::Overnight | Form::HandBack => {}
        }
    });
    // Another field was taken: its number is replaced by the first digit.
    open.begun = begun && at == open.field;
    open.field = at;
    if let Some(id) = fields.first() {
        if begins.is_none() {
            select_when_shown(inner.ctx(), *id, fresh);
        }
        if let Some(key) = pad::show(inner, words, pad::Needs::Whole) {
            // What stood in the field as it lost the focus to the pad would come back a frame later.
            inner.data_mut(|d| fields.iter().for_each(|id| d.remove::<String>(*id)));
            let OpenForm { first, second, begun, .. } = open;
            pad::into_whole(if first_of(open.form) == (at == 0) { first } else { second }, begun, key, most);
        }
    }
    let mut filled = Filled::No;
    inner.horizontal(|row| {
        let size = egui::vec2(72.0, theme::TARGET);
        let yes = row.add(egui::Button::new(words.say("form-do")).min_size(size));
        let leave = row.add(egui::Button::new(words.say("form-cancel")).min_size(size));
        if fresh && begins.is_none() {
            yes.ctx.memory_mut(|m| m.request_focus(fields.first().copied().unwrap_or(yes.id)));
        }
        // Return in a field means: that is the number, now do it. At rest it means nothing.
        let focused = row.memory(|m| m.focused());
        let here = focused.is_none_or(|id| id == yes.id || fields.contains(&id));
        let rests = begins.is_some() && focused == begins;
        let enter = !fresh && here && !rests && row.input_mut(|i| i.consume_key(Modifiers::NONE, Key::Enter));
        if leave.clicked() {
            filled = Filled::Leave;
        } else if (yes.clicked() || enter)
            && let Some(action) = action(shop, *open)
        {
            filled = Filled::Yes(action);
        }
    });
    filled
}

/// Marks the number in the field that got the focus, so that what is typed replaces it. The field turns into
/// one to type in only in the frame after.
fn select_when_shown(ctx: &egui::Context, field: Id, fresh: bool) {
    let waiting = Id::new("field-to-select");
    if fresh {
        ctx.data_mut(|d| d.insert_temp(waiting, field));
        return;
    }
    if ctx.data(|d| d.get_temp::<Id>(waiting)) != Some(field) {
        return;
    }
    if let Some(mut state) = TextEditState::load(ctx, field) {
        let all = CCursorRange::two(CCursor::new(0), CCursor::new(MOST_DIGITS));
        state.cursor.set_char_range(Some(all));
        state.store(ctx, field);
        ctx.data_mut(|d| d.remove::<Id>(waiting));
    }
}

/// Longer than any number that is asked for.
const MOST_DIGITS: usize = 12;

/// The words of the offer that opened the form.
fn heading(form: Form) -> &'static str {
    match form {
        Form::HoldByFoot => "offer-pedal-hold",
        Form::HoldByProp => "offer-prop",
        Form::PumpPedal => "offer-pedal-pump",
        Form::Stroke(_) => "offer-stroke",
        Form::Wait => "offer-wait",
        Form::WaitUntil(Cue::PumpStarts) => "offer-wait-pump-starts",
        Form::WaitUntil(Cue::PumpStops) => "offer-wait-pump-stops",
        Form::WaitUntil(Cue::LampOn) => "offer-wait-lamp-on",
        Form::WaitUntil(Cue::LampOut) => "offer-wait-lamp-out",
        Form::Time(Cycle::PumpRun) => "offer-time-run",
        Form::Time(Cycle::PumpRest) => "offer-time-rest",
        Form::Overnight => "offer-overnight",
        Form::HandBack => "offer-hand-back",
    }
}

/// A sentence over the fields, where the numbers alone do not say what will happen.
fn sentence(form: Form) -> Option<&'static str> {
    match form {
        Form::WaitUntil(_) | Form::Time(_) => Some("form-longest"),
        Form::Overnight => Some("form-overnight"),
        Form::HandBack => Some("form-hand-back"),
        _ => None,
    }
}

/// What a filled form asks for.
#[must_use]
pub fn action(shop: &Shop, open: OpenForm) -> Option<Action> {
    let whole = |v: f64| v.round().clamp(0.0, f64::from(u32::MAX)) as u32;
    let seconds = || whole(open.first) * 60 + whole(open.second);
    Some(match open.form {
        Form::HoldByFoot => Action::Pedal(PedalHold::Foot { force_n: open.first }),
        Form::HoldByProp => Action::Pedal(PedalHold::Prop { force_n: open.first }),
        Form::PumpPedal => Action::PumpPedal { times: whole(open.second), force_n: open.first },
        Form::Stroke(card) => {
            let kit = &shop.session()?.workshop().setup().kit;
            Action::Stroke { instrument: kit.get(usize::from(card))?.id.clone(), times: whole(open.first) }
        }
        Form::Wait => Action::Wait { s: seconds() },
        Form::WaitUntil(cue) => Action::WaitUntil { cue, max_s: seconds() },
        Form::Time(cycle) => Action::Time { cycle, max_s: seconds() },
        Form::Overnight => Action::Overnight,
        Form::HandBack => Action::HandBack,
    })
}

/// A form as it opens.
#[must_use]
pub fn open(form: Form) -> OpenForm {
    let (first, second) = match form {
        Form::HoldByFoot | Form::HoldByProp => (100.0, 0.0),
        Form::PumpPedal => (200.0, 5.0),
        Form::Stroke(_) => (10.0, 0.0),
        Form::Wait => (1.0, 0.0),
        Form::WaitUntil(_) => (2.0, 0.0),
        Form::Time(_) => (15.0, 0.0),
        Form::Overnight | Form::HandBack => (0.0, 0.0),
    };
    OpenForm { form, first, second, field: 0, begun: false }
}

/// Whether the field shown first is the form's first number.
fn first_of(form: Form) -> bool {
    !matches!(form, Form::PumpPedal)
}
