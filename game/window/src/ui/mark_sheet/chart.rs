//! The evidence chart: readings along the top, what it could be down the side; each cell is how probable
//! that was after the note, with an arrow where the note moved it.

use assess::marks::sheet::{EvidenceSheet, NoteWorth, ReadingLine};
use assess::report::{classes_after, classes_to_show};
use egui::{Align2, FontId, Label, Rect, RichText, Sense, Stroke, WidgetInfo, WidgetType, pos2, vec2};

use super::super::super::theme;
use super::super::paper;
use super::lists;
use front::words::Words;

/// Rows.
const ROWS: usize = 8;
/// Least probability that earns a row.
const LEAST: f64 = 0.02;
/// Width of a cell, points.
const CELL: f32 = 44.0;
/// Height of a cell, points.
const HEIGHT: f32 = 26.0;
/// Width of the names, points.
const NAMES: f32 = 296.0;
/// Between two cells, points.
const BETWEEN: f32 = 2.0;
/// The bar before notes that count for the release only, points.
const GAP_WIDE: f32 = 10.0;
/// A move below this much of itself, or below half a percent, earns no arrow.
const MOVES: f64 = 0.1;

/// What a class is called.
pub(super) fn class(evidence: &EvidenceSheet, class: usize) -> String {
    evidence.classes.get(class).map_or_else(String::new, |c| c.name.clone())
}

/// Probability of `class` after the `n`th note that counts, or before the first.
fn before(evidence: &EvidenceSheet, counted: &[&ReadingLine], n: usize, class: usize) -> f64 {
    match n.checked_sub(1).and_then(|i| counted.get(i)).and_then(|line| classes_after(line)) {
        Some(p) => p.get(class).copied().unwrap_or(0.0),
        None => evidence.classes[class].start,
    }
}

/// Shows it.
pub(super) fn show(page: &mut egui::Ui, words: &Words, evidence: &EvidenceSheet) {
    paper::heading(page, words.say("mark-chart"));
    page.add(Label::new(RichText::new(words.say("mark-chart-why")).color(theme::INK_FAINT)).wrap());
    let counted: Vec<&ReadingLine> =
        evidence.readings.iter().filter(|line| classes_after(line).is_some()).collect();
    if counted.is_empty() {
        page.label(words.say("mark-chart-none"));
        return;
    }
    let rows = classes_to_show(evidence, LEAST, ROWS);
    // Notes after the finding or the first repair count for the release only: a gap stands before them.
    let late = counted
        .iter()
        .position(|l| matches!(l.worth, NoteWorth::Counts { for_finding: false, .. }))
        .unwrap_or(counted.len());
    // As many columns as there is room for, the rest in tables below: nothing has to be scrolled for.
    let room = page.available_width();
    let names = NAMES.min(0.42 * room);
    let fit = ((room - names - CELL - GAP_WIDE) / (CELL + BETWEEN)).floor().max(3.0) as usize;
    page.scope(|page| {
        page.spacing_mut().item_spacing = vec2(BETWEEN, BETWEEN);
        for first in (0..counted.len()).step_by(fit) {
            if 0 < first {
                page.add_space(8.0);
            }
            let table =
                Table { counted: &counted, shown: first..counted.len().min(first + fit), late, names };
            head(page, words, &table);
            for &row in &rows {
                line(page, words, evidence, &table, row);
            }
        }
    });
    if late < counted.len() {
        let text = RichText::new(words.say("mark-chart-late")).small().color(theme::INK_FAINT);
        page.add(Label::new(text).wrap());
    }
}

/// A table of the chart.
struct Table<'c> {
    /// All readings that count.
    counted: &'c [&'c ReadingLine],
    /// Those that have a column here.
    shown: std::ops::Range<usize>,
    /// The first that counts for the release only.
    late: usize,
    /// Width of the names, points.
    names: f32,
}

fn gap(row: &mut egui::Ui) {
    let (rect, _) = row.allocate_exact_size(vec2(5.0, HEIGHT), Sense::hover());
    row.painter().vline(rect.center().x, rect.y_range(), Stroke::new(2.0, theme::INK));
}

fn head(page: &mut egui::Ui, words: &Words, table: &Table<'_>) {
    page.horizontal(|row| {
        let (rect, _) = row.allocate_exact_size(vec2(table.names, HEIGHT), Sense::hover());
        let font = FontId::proportional(13.0);
        row.painter().text(
            rect.right_center(),
            Align2::RIGHT_CENTER,
            words.say("mark-chart-reading"),
            font,
            theme::INK_FAINT,
        );
        let text = words.say("mark-chart-start");
        if table.shown.start == 0 {
            cell(row, &words.say("mark-chart-start-short"), &text, 0.0, false);
        }
        for n in table.shown.clone() {
            let line = table.counted[n];
            if n == table.late {
                gap(row);
            }
            let what = lists::what(line);
            let name =
                words.say_with("mark-chart-column", &[("n", line.number.into()), ("what", what.into())]);
            cell(row, &line.number.to_string(), &name, 0.0, false);
        }
    });
}

fn line(page: &mut egui::Ui, words: &Words, evidence: &EvidenceSheet, table: &Table<'_>, row_class: usize) {
    let counted = table.counted;
    let truth = evidence.true_class == Some(row_class);
    let name = class(evidence, row_class);
    page.horizontal(|row| {
        let (rect, response) = row.allocate_exact_size(vec2(table.names, HEIGHT), Sense::hover());
        let mark = if truth { "◆ " } else { "" };
        let mut job = egui::text::LayoutJob::single_section(
            format!("{mark}{name}"),
            egui::TextFormat::simple(FontId::proportional(13.0), theme::INK),
        );
        job.wrap = egui::text::TextWrapping::truncate_at_width(table.names - 6.0);
        let galley = row.painter().layout_job(job);
        let at = pos2(rect.left(), rect.center().y - galley.size().y * 0.5);
        row.painter().galley(at, galley, theme::INK);
        response.widget_info(|| WidgetInfo::labeled(WidgetType::Label, true, &name));
        response.on_hover_text(&name);
        let start = evidence.classes[row_class].start;
        if table.shown.start == 0 {
            cell(row, &tenths(words, start), &words.percent(start), start, truth);
        }
        for n in table.shown.clone() {
            if n == table.late {
                gap(row);
            }
            let was = before(evidence, counted, n, row_class);
            let now = before(evidence, counted, n + 1, row_class);
            let moved = (now - was).abs();
            let arrow = if moved < 0.005 || moved < MOVES * was {
                ""
            } else if was < now {
                "▲"
            } else {
                "▼"
            };
            let tip = words.say_with(
                "mark-chart-cell",
                &[
                    ("class", name.as_str().into()),
                    ("n", counted[n].number.into()),
                    ("was", words.percent(was).into()),
                    ("now", words.percent(now).into()),
                ],
            );
            cell(row, &format!("{}{arrow}", tenths(words, now)), &tip, now, truth);
        }
    });
}

/// A cell: text, a ground filled as high as the probability, and the whole sentence for whoever hovers or
/// listens.
fn cell(row: &mut egui::Ui, text: &str, sentence: &str, share: f64, truth: bool) {
    let (rect, response) = row.allocate_exact_size(vec2(CELL, HEIGHT), Sense::hover());
    let painter = row.painter();
    painter.rect_filled(rect, 1.0, theme::FIELD);
    let height = rect.height() * (share.clamp(0.0, 1.0) as f32);
    let filled = Rect::from_min_max(pos2(rect.left(), rect.bottom() - height), rect.max);
    painter.rect_filled(filled, 1.0, theme::SHARE);
    if truth {
        painter.hline(rect.x_range(), rect.bottom(), Stroke::new(1.5, theme::ACCENT));
    }
    painter.text(rect.center(), Align2::CENTER_CENTER, text, FontId::proportional(12.5), theme::INK);
    response.widget_info(|| WidgetInfo::labeled(WidgetType::Label, true, sentence));
    response.on_hover_text(sentence);
}

/// Percent with few characters.
fn tenths(words: &Words, p: f64) -> String {
    if p < 0.001 {
        "·".to_owned()
    } else if p < 0.0995 {
        words.number(100.0 * p, 1)
    } else {
        words.number(100.0 * p, 0)
    }
}
