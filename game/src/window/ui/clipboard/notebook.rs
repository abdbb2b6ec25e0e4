//! The notebook: what was looked at and not yet noted, what is noted, and the record of the car.
//!
//! A reading that was looked at stands here without its number: whoever wants it must have read it.

use egui::{Label, RichText};
use sim_core::action::Action;
use sim_core::observe::{Observed, Reading};

use super::super::super::ask::Ask;
use super::super::super::shop::Shop;
use super::super::super::state::Ui;
use super::super::super::theme;
use super::super::super::words::Words;
use super::super::paper;
use super::NoteForm;
use super::note_form;

/// Shows it.
pub(super) fn show(page: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    let Some(view) = shop.view() else { return };
    let open: Vec<&Reading> =
        view.readings.iter().filter(|r| view.notes.iter().all(|(id, ..)| *id != r.id)).collect();
    let is_open = |id: u32| open.iter().any(|r| r.id == id);
    if ui.clipboard.note.as_ref().is_some_and(|form| !form.anew && !is_open(form.reading)) {
        ui.clipboard.note = None;
    }
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
            noted(row, shop, words, reading, &value, line.as_deref(), struck_out);
            if !struck_out {
                anew(row, shop, words, ui, reading, line.as_deref());
            }
        });
    }
    record(page, shop, words);
}

/// What a reading was of, with its number and the time.
fn title(page: &mut egui::Ui, shop: &Shop, words: &Words, reading: &Reading) {
    let text = words.say_with(
        "notebook-reading",
        &[
            ("n", reading.id.into()),
            ("time", words.clock(reading.tick).into()),
            ("what", words.observed(shop, &reading.what).into()),
        ],
    );
    page.add(Label::new(text).wrap());
}

/// A reading that was looked at; its number is not shown.
fn not_noted(page: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui, reading: &Reading) {
    paper::rule(page);
    title(page, shop, words, reading);
    if ui.clipboard.note.as_ref().is_some_and(|form| form.reading == reading.id)
        && words.shown(shop, reading).is_none()
    {
        note_form::show(page, shop, words, ui);
        return;
    }
    let Some(shown) = words.shown(shop, reading) else {
        let text = words.say_with("notebook-note-number", &[("n", reading.id.into())]);
        if page.add(paper::button(text)).clicked() {
            ui.clipboard.note = Some(NoteForm::new(reading.id));
        }
        return;
    };
    page.add(Label::new(RichText::new(shown).color(theme::PEN)).wrap());
    // Whoever asked to note it comes here.
    let asked = ui.clipboard.note.take_if(|form| form.reading == reading.id).is_some();
    let text = words.say_with("notebook-note-sense", &[("n", reading.id.into())]);
    let button = sensed(page, shop, words, ui, reading, text);
    if asked {
        button.request_focus();
        button.scroll_to_me(None);
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

fn noted(
    page: &mut egui::Ui,
    shop: &Shop,
    words: &Words,
    reading: &Reading,
    value: &str,
    line: Option<&str>,
    struck_out: bool,
) {
    paper::rule(page);
    title(page, shop, words, reading);
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
            ui.clipboard.note = Some(NoteForm::anew(reading.id, line));
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
                Some(_) if release => ("✖", "record-void", theme::REFUSED),
                Some(_) => ("✖", "record-not-met", theme::REFUSED),
                None => ("○", "record-open", theme::INK_FAINT),
            };
            page.horizontal_top(|row| {
                row.label(RichText::new(mark).color(colour));
                row.vertical(|text| {
                    let name = words.record_short(shop, &item.id);
                    let state = words.say_with(state, &[("line", name.into())]);
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
