//! Verdict, parts and conditions.

use assess::marks::sheet::{MarkSheet, Marks, PartLine};
use assess::report;
use egui::{Label, RichText, Sense, Stroke, vec2};

use super::super::super::theme;
use super::super::paper;
use front::words::Words;

/// Width of a part's name, points.
const TITLE: f32 = 140.0;
/// Width of a part's bar, points.
const BAR: f32 = 150.0;

/// What holds where an instructor has overridden the mark; the program's own stands below it.
pub(super) fn overrides(page: &mut egui::Ui, words: &Words, sheet: &MarkSheet) {
    let Some(holds) = &sheet.holds else { return };
    paper::heading(page, words.say("override-title"));
    page.add(Label::new(RichText::new(report::holding(holds, words)).size(18.0)).wrap());
    for line in report::overrides(&sheet.overrides, words) {
        page.add(Label::new(line).wrap());
    }
    paper::heading(page, words.say("override-own"));
}

/// Competent or not yet, the total, the minutes.
pub(super) fn verdict(page: &mut egui::Ui, words: &Words, sheet: &MarkSheet, marks: &Marks) {
    let (mark, key, colour) = if marks.competent {
        ("✔", "mark-competent", theme::ACCENT)
    } else {
        ("✖", "mark-not-yet", theme::BREACH)
    };
    let frame = egui::Frame::new()
        .fill(theme::FIELD)
        .stroke(Stroke::new(2.0, colour))
        .inner_margin(12.0)
        .corner_radius(4.0);
    frame.show(page, |inner| {
        inner.set_min_width(inner.available_width());
        inner.horizontal_wrapped(|row| {
            row.label(RichText::new(format!("{mark} {}", words.say(key))).size(24.0).color(colour));
            row.add_space(16.0);
            let total = words.number(marks.total, 1);
            let cut = words.number(marks.cut, 0);
            let text = words.say_with("mark-total", &[("total", total.into()), ("cut", cut.into())]);
            row.label(RichText::new(text).size(18.0));
        });
        let worked = words.number(sheet.attended_min, 0);
        let waited = words.number(sheet.unattended_min, 0);
        let allowed = words.number(sheet.time_limit_min, 0);
        let text = words.say_with(
            "mark-minutes",
            &[("worked", worked.into()), ("waited", waited.into()), ("allowed", allowed.into())],
        );
        paper::faint(inner, text);
    });
}

/// The parts of the mark with their points and why.
pub(super) fn parts(page: &mut egui::Ui, words: &Words, marks: &Marks) {
    paper::heading(page, words.say("mark-parts"));
    for part in &marks.parts {
        line(page, words, part);
    }
    page.horizontal_wrapped(|row| {
        title(row, &words.say("mark-part-S"));
        let off = words.number(marks.deducted, 0);
        row.label(words.say_with("mark-off", &[("points", off.into())]));
    });
    page.indent("S", |inner| inner.add(Label::new(&marks.safety).wrap()));
}

fn line(page: &mut egui::Ui, words: &Words, part: &PartLine) {
    page.horizontal_wrapped(|row| {
        let name = words.say_or(&format!("mark-part-{}", part.letter), &part.name);
        title(row, &name);
        if part.weight <= 0.0 {
            let off = words.number(-part.points, 0);
            row.label(words.say_with("mark-off", &[("points", off.into())]));
            return;
        }
        bar(row, part.value);
        let points = words.number(part.points, 1);
        let weight = words.number(part.weight, 1);
        row.label(words.say_with("mark-points", &[("points", points.into()), ("of", weight.into())]));
    });
    page.indent(&part.letter, |inner| {
        inner.add(Label::new(&part.why).wrap());
        if !part.fine.is_empty() {
            let fine = format!("{} {}", part.fine, words.say("mark-bit"));
            inner.add(Label::new(RichText::new(fine).small().color(theme::INK_FAINT)).wrap());
        }
    });
    page.add_space(4.0);
}

/// Name of a part, as wide as every other. Its letter is for files, whose language is English.
fn title(row: &mut egui::Ui, name: &str) {
    let layout = egui::Layout::left_to_right(egui::Align::Center);
    row.allocate_ui_with_layout(vec2(TITLE, 22.0), layout, |cell| {
        cell.set_min_width(TITLE);
        cell.label(RichText::new(name).size(15.5).color(theme::ACCENT));
    });
}

/// How much of it was earned, drawn; the number stands beside it.
fn bar(row: &mut egui::Ui, value: f64) {
    let (rect, _) = row.allocate_exact_size(vec2(BAR, 14.0), Sense::hover());
    let painter = row.painter();
    painter.rect(rect, 2.0, theme::FIELD, Stroke::new(1.0, theme::RULE), egui::StrokeKind::Inside);
    let share = value.clamp(-1.0, 1.0) as f32;
    let mut filled = rect.shrink(2.0);
    filled.set_width(filled.width() * share.abs());
    let colour = if share < 0.0 { theme::BREACH } else { theme::ACCENT };
    painter.rect_filled(filled, 1.0, colour);
}

/// What *competent* asks, one by one.
pub(super) fn conditions(page: &mut egui::Ui, words: &Words, marks: &Marks) {
    paper::heading(page, words.say("mark-conditions"));
    for condition in &marks.conditions {
        let (mark, key, colour) = if condition.met {
            ("✔", "mark-met", theme::ACCENT)
        } else {
            ("✖", "mark-not-met", theme::BREACH)
        };
        let text = format!("{mark} {} {}", words.say(key), condition.asked);
        page.add(Label::new(RichText::new(text).color(colour)).wrap());
    }
}
