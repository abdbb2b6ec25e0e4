//! The menu at a thing: what hands can do with it, and the small forms that ask for a number first.

use egui::{DragValue, Key, Order, RichText};
use sim_core::action::{Action, PedalHold};

use super::super::ask::Ask;
use super::super::hands::{Form, Offer, Then, Thing, offers};
use super::super::shop::Shop;
use super::super::state::{Menu, OpenForm, Ui};
use super::super::theme;
use super::super::words::Words;

/// Widest a menu gets, points.
const WIDTH: f32 = 320.0;

/// Shows the open menu, if one is.
pub fn show(ctx: &egui::Context, shop: &Shop, words: &Words, ui: &mut Ui) {
    let Some(mut menu) = ui.menu.take() else { return };
    let list = offers(shop, ui.carrying.as_ref(), menu.thing);
    if list.is_empty() {
        return;
    }
    let mut taken: Option<Then> = None;
    let mut close = ctx.input_mut(|i| i.consume_key(egui::Modifiers::NONE, Key::Escape));
    let title = words.name(shop, menu.thing);
    let area = egui::Area::new("thing-menu".into())
        .order(Order::Foreground)
        .fixed_pos(menu.at)
        .constrain(true)
        .show(ctx, |area| {
            egui::Frame::menu(area.style()).show(area, |inner| {
                inner.set_max_width(WIDTH);
                inner.label(RichText::new(&title).strong());
                inner.separator();
                match &mut menu.form {
                    Some(form) => taken = form_ui(inner, shop, words, form, &mut close),
                    None => taken = list_ui(inner, shop, words, &list, menu.fresh),
                }
            });
        });
    let elsewhere = ctx.input(|i| i.pointer.any_pressed()) && !area.response.contains_pointer();
    if elsewhere && !menu.fresh {
        close = true;
    }
    menu.fresh = false;
    match taken {
        Some(then) => take(ui, menu, then),
        None if close => {}
        None => ui.menu = Some(menu),
    }
}

fn list_ui(inner: &mut egui::Ui, shop: &Shop, words: &Words, list: &[Offer], fresh: bool) -> Option<Then> {
    let mut taken = None;
    egui::ScrollArea::vertical().max_height(360.0).show(inner, |inner| {
        inner.with_layout(egui::Layout::top_down_justified(egui::Align::LEFT), |inner| {
            for (i, offer) in list.iter().enumerate() {
                let text = words.offer(shop, offer);
                let turns = matches!(offer.then, Then::Turn(_) | Then::Form(_));
                let text = if turns { format!("{text} …") } else { text };
                let button = egui::Button::new(text).wrap().min_size(egui::vec2(0.0, theme::TARGET));
                let response = inner.add(button);
                if fresh && i == 0 {
                    // So that the keyboard goes on where it was.
                    response.request_focus();
                }
                if response.clicked() {
                    taken = Some(offer.then.clone());
                }
            }
        });
    });
    taken
}

fn form_ui(
    inner: &mut egui::Ui,
    shop: &Shop,
    words: &Words,
    open: &mut OpenForm,
    close: &mut bool,
) -> Option<Then> {
    let mut done = None;
    egui::Grid::new("form").num_columns(2).show(inner, |grid| {
        let mut field = |key: &str, value: &mut f64, range: std::ops::RangeInclusive<f64>, unit: &str| {
            let label = grid.label(words.say(key));
            grid.add(DragValue::new(value).range(range).max_decimals(0).suffix(unit)).labelled_by(label.id);
            grid.end_row();
        };
        match open.form {
            Form::HoldByFoot => field("form-force", &mut open.first, 1.0..=700.0, " N"),
            Form::HoldByProp => field("form-force", &mut open.first, 1.0..=500.0, " N"),
            Form::PumpPedal => {
                field("form-times", &mut open.second, 1.0..=30.0, "");
                field("form-force", &mut open.first, 1.0..=700.0, " N");
            }
            Form::Stroke(_) => field("form-strokes", &mut open.first, 1.0..=200.0, ""),
            Form::Wait => {
                field("form-minutes", &mut open.first, 0.0..=720.0, " min");
                field("form-seconds", &mut open.second, 0.0..=59.0, " s");
            }
        }
    });
    inner.horizontal(|row| {
        if row.button(words.say("form-do")).clicked() {
            done = form_action(shop, *open).map(Then::Do);
        }
        if row.button(words.say("form-cancel")).clicked() {
            *close = true;
        }
    });
    done
}

/// What a filled form asks for.
#[must_use]
pub fn form_action(shop: &Shop, open: OpenForm) -> Option<Action> {
    let whole = |v: f64| v.round().clamp(0.0, f64::from(u32::MAX)) as u32;
    Some(match open.form {
        Form::HoldByFoot => Action::Pedal(PedalHold::Foot { force_n: open.first }),
        Form::HoldByProp => Action::Pedal(PedalHold::Prop { force_n: open.first }),
        Form::PumpPedal => Action::PumpPedal { times: whole(open.second), force_n: open.first },
        Form::Stroke(card) => {
            let kit = &shop.session()?.workshop().setup().kit;
            Action::Stroke { instrument: kit.get(usize::from(card))?.id.clone(), times: whole(open.first) }
        }
        Form::Wait => Action::Wait { s: whole(open.first) * 60 + whole(open.second) },
    })
}

/// A form as it opens.
#[must_use]
pub fn open_form(form: Form) -> OpenForm {
    let (first, second) = match form {
        Form::HoldByFoot | Form::HoldByProp => (100.0, 0.0),
        Form::PumpPedal => (200.0, 5.0),
        Form::Stroke(_) => (10.0, 0.0),
        Form::Wait => (1.0, 0.0),
    };
    OpenForm { form, first, second }
}

/// Does what was taken from a menu.
fn take(ui: &mut Ui, menu: Menu, then: Then) {
    match then {
        Then::Do(action) => {
            if matches!(action, Action::Fit { .. }) {
                ui.carrying = None;
            }
            ui.ask(Ask::Do(action));
        }
        Then::Carry(carry) => ui.carrying = Some(carry),
        Then::PutBack => ui.carrying = None,
        Then::Form(form) => ui.menu = Some(Menu { form: Some(open_form(form)), ..menu }),
        Then::Turn(thing) => turn(ui, menu, thing),
    }
}

fn turn(ui: &mut Ui, menu: Menu, thing: Thing) {
    ui.menu = Some(Menu { thing, fresh: true, form: None, ..menu });
}
