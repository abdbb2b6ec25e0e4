//! The notebook: what was looked at and not yet noted, what is noted, and the record of the car.
//!
//! A reading that was looked at stands here without its number, but with its instrument as the eye had it:
//! whoever wants the number reads it there.

use egui::{Label, RichText, WidgetInfo, WidgetType};
use sim_core::action::Action;
use sim_core::observe::{Observed, Reading};

use super::super::super::state::Ui;
use super::super::super::theme;
use super::super::paper;
use super::note::NoteForm;
use super::{note_face, note_form};
use front::ask::Ask;
use front::shop::Shop;
use front::words::Words;

/// Shows it.
pub(super) fn show(page: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    let Some(view) = shop.view() else { return };
    let noted = |id: u32| view.notes.iter().filter(|(n, ..)| *n == id).count();
    // A form has done its work when its reading has been noted.
    let done =
        |form: &mut NoteForm| *form.noted_before.get_or_insert(noted(form.reading)) < noted(form.reading);
    if ui.clipboard.note.as_mut().is_some_and(done) {
        ui.clipboard.note = None;
    }
    ui.clipboard.drafts.retain(|_, form| !done(form));
    let open: Vec<&Reading> = view.readings.iter().filter(|r| noted(r.id) == 0).collect();
    paper::small_heading(page, words.say("notebook-open"));
    if open.is_empty() {
        paper::faint(page, words.say("notebook-none-open"));
    } else {
        page.add(Label::new(RichText::new(words.say("notebook-open-why")).color(theme::INK_FAINT)).wrap());
    }
    for reading in open.iter().rev() {
        page.push_id(("open", reading.id), |row| not_noted(row, shop, words, ui, reading));
    }
    paper::small_heading(page, words.say("notebook-notes"));
    if view.notes.is_empty() {
        paper::faint(page, words.say("notebook-no-notes"));
    }
    for (i, (id, written, line)) in view.notes.iter().enumerate().rev() {
        let struck_out = view.notes.iter().skip(i + 1).any(|(later, ..)| later == id);
        let Some(reading) = view.readings.iter().find(|r| r.id == *id) else { continue };
        let value = match written {
            Some(written) => words.written(written, ui.prefs.pressure),
            None => words.shown(shop, reading).unwrap_or_else(|| words.say("notebook-no-number")),
        };
        page.push_id(("noted", i), |row| {
            noted_ui(row, shop, words, reading, &value, line.as_deref(), struck_out);
            if !struck_out {
                anew(row, shop, words, ui, reading, line.as_deref());
            }
        });
    }
    record(page, shop, words);
}

/// What a reading was of, with its number and the time.
fn title(page: &mut egui::Ui, shop: &Shop, words: &Words, reading: &Reading, struck: bool) {
    let text = words.say_with(
        "notebook-reading",
        &[
            ("n", reading.id.into()),
            ("time", words.clock(reading.tick).into()),
            ("what", words.observed(shop, &reading.what).into()),
        ],
    );
    let text = RichText::new(text);
    let text = if struck { text.strikethrough().color(theme::INK_FAINT) } else { text };
    page.add(Label::new(text).wrap());
}

/// A reading that was looked at. Its number is not written; its instrument stands there as it was read, until
/// it is noted or struck out.
fn not_noted(page: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui, reading: &Reading) {
    paper::rule(page);
    let n = [("n", reading.id.into())];
    let writing = ui.clipboard.writing() == Some(reading.id);
    if writing && words.shown(shop, reading).is_none() {
        title(page, shop, words, reading, false);
        note_form::show(page, shop, words, ui);
        return;
    }
    let struck = ui.clipboard.struck.contains(&reading.id);
    page.horizontal_top(|row| {
        row.spacing_mut().item_spacing.x = 8.0;
        note_face::small(row, shop, words, ui.prefs.pressure, reading);
        row.vertical(|lines| {
            title(lines, shop, words, reading, struck);
            if let Some(draft) = ui.clipboard.drafts.get(&reading.id) {
                let text = words.say_with("notebook-draft", &[("text", draft.typed().to_owned().into())]);
                lines.label(RichText::new(text).color(theme::PEN));
            }
            if let Some(shown) = words.shown(shop, reading) {
                let shown = RichText::new(shown).color(theme::PEN);
                lines.add(Label::new(if struck { shown.strikethrough() } else { shown }).wrap());
                // Struck out it keeps its place: what is below must not move under the pointer.
                let text = words.say_with("notebook-note-sense", &n);
                let button = lines
                    .add_enabled_ui(!struck, |lines| sensed(lines, shop, words, ui, reading, text))
                    .inner;
                // Whoever asked to note it comes here.
                if writing {
                    ui.clipboard.note = None;
                    button.request_focus();
                    button.scroll_to_me(None);
                }
                strike(lines, words, ui, reading.id, struck);
                return;
            }
            lines.horizontal_wrapped(|buttons| {
                let text = words.say_with("notebook-note-number", &n);
                if buttons.add_enabled(!struck, paper::button(text)).clicked() {
                    ui.clipboard.open_form(NoteForm::new(reading.id));
                }
                strike(buttons, words, ui, reading.id, struck);
            });
        });
    });
}

/// Strikes a reading out, or takes that back.
fn strike(row: &mut egui::Ui, words: &Words, ui: &mut Ui, id: u32, struck: bool) {
    let n = [("n", id.into())];
    let (text, name) = if struck {
        (words.say("notebook-unstrike-short"), words.say_with("notebook-unstrike", &n))
    } else {
        (words.say("notebook-strike-short"), words.say_with("notebook-strike", &n))
    };
    // As wide with either word: it stands still when it is pressed.
    let font = egui::TextStyle::Button.resolve(row.style());
    let wide =
        |key: &str| row.fonts_mut(|f| f.layout_no_wrap(words.say(key), font.clone(), theme::INK).size().x);
    let wide = wide("notebook-strike-short").max(wide("notebook-unstrike-short"));
    let size = egui::vec2(wide + 2.0 * row.spacing().button_padding.x, theme::TARGET);
    let button = row.add(paper::button(text).min_size(size));
    button.widget_info(|| WidgetInfo::labeled(WidgetType::Button, true, &name));
    if button.on_hover_text(words.say("notebook-strike-why")).clicked() {
        if struck {
            ui.clipboard.struck.remove(&id);
        } else {
            ui.clipboard.struck.insert(id);
            if ui.clipboard.writing() == Some(id) {
                ui.clipboard.put_aside();
            }
        }
    }
}

/// What was sensed, or showed no number: the line of the record it is for, and the button that notes it.
fn sensed(
    page: &mut egui::Ui,
    shop: &Shop,
    words: &Words,
    ui: &mut Ui,
    reading: &Reading,
    text: String,
) -> egui::Response {
    let mut line = ui.clipboard.sense_line.as_ref().filter(|(n, _)| *n == reading.id).map(|(_, l)| l.clone());
    note_form::pick_line(page, shop, words, reading.id, &mut line);
    ui.clipboard.sense_line = match (&line, &ui.clipboard.sense_line) {
        (Some(line), _) => Some((reading.id, line.clone())),
        (None, Some((n, _))) if *n == reading.id => None,
        (None, other) => other.clone(),
    };
    let button = page.add(paper::button(text));
    if button.clicked() {
        ui.ask(Ask::Do(Action::Note { reading: reading.id, written: None, record: line }));
        ui.clipboard.note = None;
    }
    button
}

fn noted_ui(
    page: &mut egui::Ui,
    shop: &Shop,
    words: &Words,
    reading: &Reading,
    value: &str,
    line: Option<&str>,
    struck_out: bool,
) {
    paper::rule(page);
    title(page, shop, words, reading, false);
    page.horizontal_wrapped(|row| {
        let size = if matches!(reading.what, Observed::Sense(_)) { 14.5 } else { 17.0 };
        let value = paper::by_hand(value).size(size);
        row.label(if struck_out { value.strikethrough() } else { value });
        if struck_out {
            paper::faint(row, words.say("notebook-struck-out"));
        } else if let Some(line) = line {
            let text = words.say_with("notebook-for", &[("line", words.record_short(shop, line).into())]);
            paper::faint(row, text);
        }
    });
}

/// Writes anew what was noted.
fn anew(page: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui, reading: &Reading, line: Option<&str>) {
    let n = [("n", reading.id.into())];
    if ui.clipboard.note.as_ref().is_none_or(|form| form.reading != reading.id) {
        let anew = page.add(paper::button(words.say_with("notebook-anew", &n)));
        if anew.on_hover_text(words.say("notebook-anew-why")).clicked() {
            ui.clipboard.open_form(NoteForm::anew(reading.id, line));
            ui.clipboard.sense_line = line.map(|line| (reading.id, line.to_owned()));
        }
    } else if words.shown(shop, reading).is_some() {
        sensed(page, shop, words, ui, reading, words.say("note-do"));
    } else {
        note_form::show(page, shop, words, ui);
    }
}

/// The lines every job of this car asks for.
fn record(page: &mut egui::Ui, shop: &Shop, words: &Words) {
    let (Some(car), Some(session)) = (shop.car(), shop.session()) else { return };
    let now = session.workshop().record_now();
    paper::heading(page, words.say("record-title"));
    let mut part = |release: bool, title: &str| {
        paper::small_heading(page, words.say(title));
        for item in car.record.iter().filter(|item| item.kind.is_release() == release) {
            let entry = now.iter().find(|e| e.item == item.id);
            // A word and a shape, not a colour alone.
            let (mark, state, colour) = match entry {
                Some(e) if e.condition_met => ("✔", "record-filled", theme::ACCENT),
                Some(_) => ("✖", "record-not-met", theme::REFUSED),
                None => ("○", "record-open", theme::INK_FAINT),
            };
            let why = entry.and_then(|e| e.unmet).and_then(|why| Some(words.speech(shop)?.tell(&why)));
            page.horizontal_top(|row| {
                row.label(RichText::new(mark).color(colour));
                row.vertical(|text| {
                    let name = words.record_short(shop, &item.id);
                    let why = why.unwrap_or_default();
                    let state = words.say_with(state, &[("line", name.into()), ("why", why.into())]);
                    text.add(Label::new(RichText::new(state).color(colour)).wrap());
                    let ask =
                        RichText::new(words.record_line(shop, &item.id)).small().color(theme::INK_FAINT);
                    text.add(Label::new(ask).wrap());
                });
            });
        }
    };
    part(false, "record-day");
    part(true, "record-release");
}
