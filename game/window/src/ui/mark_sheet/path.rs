//! The path of certainty: the likeliest possibilities after each note.

use assess::marks::sheet::{EvidenceSheet, ReadingLine};
use assess::report::{classes_after, classes_to_show};
use egui::{Color32, Label, Sense, Shape, Stroke, vec2};
use egui_plot::{AxisHints, Line, LineStyle, MarkerShape, Plot, PlotPoints, Points};

use super::super::super::theme;
use super::super::paper;
use super::chart;
use front::words::Words;

/// Lines drawn.
const LINES: usize = 4;
/// Height of the plot, points.
const HEIGHT: f32 = 190.0;

/// Colour, dash and marker of a line; a line is told by any of the three.
fn look(slot: usize) -> (Color32, LineStyle, MarkerShape) {
    match slot {
        0 => (theme::SERIES[0], LineStyle::Solid, MarkerShape::Circle),
        1 => (theme::SERIES[1], LineStyle::dashed_dense(), MarkerShape::Square),
        2 => (theme::SERIES[2], LineStyle::dotted_dense(), MarkerShape::Up),
        _ => (theme::SERIES[5], LineStyle::dashed_loose(), MarkerShape::Diamond),
    }
}

/// An axis whose numbers are drawn in full ink however close they stand.
pub(super) fn legible(axis: AxisHints<'_>) -> AxisHints<'_> {
    axis.label_spacing(egui::Rangef::new(15.0, 16.0)).tick_label_color(theme::INK_FAINT)
}

/// Shows it.
pub(super) fn show(page: &mut egui::Ui, words: &Words, evidence: &EvidenceSheet) {
    let counted: Vec<&ReadingLine> =
        evidence.readings.iter().filter(|line| classes_after(line).is_some()).collect();
    if counted.is_empty() {
        return;
    }
    paper::heading(page, words.say("mark-path"));
    let shown = classes_to_show(evidence, 0.02, LINES);
    for (slot, &class) in shown.iter().enumerate() {
        page.horizontal(|row| {
            key(row, slot);
            let name = chart::class(evidence, class);
            let last = counted.last().and_then(|l| classes_after(l)).map_or(0.0, |p| p[class]);
            let values = [
                ("class", name.into()),
                ("was", words.percent(evidence.classes[class].start).into()),
                ("now", words.percent(last).into()),
            ];
            let truth = evidence.true_class == Some(class);
            let text = if truth { "mark-path-truth" } else { "mark-path-line" };
            row.add(Label::new(words.say_with(text, &values)).wrap());
        });
    }
    let start = words.say("mark-chart-start-short");
    let numbers: Vec<u32> = counted.iter().map(|l| l.number).collect();
    let plot = Plot::new("path")
        .height(HEIGHT)
        .include_y(0.0)
        .include_y(100.0)
        .allow_zoom(false)
        .allow_drag(false)
        .allow_scroll(false)
        .allow_boxed_zoom(false)
        .show_crosshair(false)
        .x_grid_spacer(|input| {
            let (from, to) = (input.bounds.0.ceil().max(0.0) as u32, input.bounds.1.floor().max(0.0) as u32);
            (from..=to).map(|n| egui_plot::GridMark { value: f64::from(n), step_size: 1.0 }).collect()
        })
        .y_grid_spacer(egui_plot::uniform_grid_spacer(|_| [25.0, 50.0, 100.0]))
        .custom_x_axes(vec![legible(AxisHints::new_x().label(words.say("mark-path-x")).formatter(
            move |mark, _| {
                let n = mark.value.round();
                if n < 0.5 {
                    return start.clone();
                }
                numbers.get(n as usize - 1).map_or_else(String::new, u32::to_string)
            },
        ))])
        .custom_y_axes(vec![legible(AxisHints::new_y().label("%"))]);
    plot.show(page, |plot| {
        for (slot, &class) in shown.iter().enumerate() {
            let (colour, style, marker) = look(slot);
            let start = evidence.classes[class].start;
            let after = counted.iter().filter_map(|l| classes_after(l)).map(|p| p[class]);
            let points: Vec<[f64; 2]> =
                std::iter::once(start).chain(after).enumerate().map(|(n, p)| [n as f64, 100.0 * p]).collect();
            let name = chart::class(evidence, class);
            let width = if slot == 0 { 3.0 } else { 2.0 };
            plot.line(
                Line::new(name.clone(), PlotPoints::from(points.clone()))
                    .color(colour)
                    .width(width)
                    .style(style),
            );
            plot.points(Points::new(name, PlotPoints::from(points)).color(colour).shape(marker).radius(4.5));
        }
    });
}

/// A bit of the line with its marker, as in the plot.
fn key(row: &mut egui::Ui, slot: usize) {
    let (rect, _) = row.allocate_exact_size(vec2(34.0, 16.0), Sense::hover());
    let (colour, _, _) = look(slot);
    let painter = row.painter();
    let (c, stroke) = (rect.center(), Stroke::new(2.0, colour));
    let ends = [rect.left_center(), rect.right_center()];
    match slot {
        0 => painter.extend([Shape::line_segment(ends, Stroke::new(3.0, colour))]),
        1 => painter.extend(Shape::dashed_line(&ends, stroke, 6.0, 3.0)),
        2 => painter.extend(Shape::dotted_line(&ends, colour, 4.0, 1.2)),
        _ => painter.extend(Shape::dashed_line(&ends, stroke, 8.0, 6.0)),
    }
    match slot {
        0 => {
            painter.circle_filled(c, 5.0, colour);
        }
        1 => {
            painter.rect_filled(egui::Rect::from_center_size(c, vec2(9.0, 9.0)), 0.0, colour);
        }
        2 => {
            let up = vec![c + vec2(0.0, -6.0), c + vec2(6.0, 5.0), c + vec2(-6.0, 5.0)];
            painter.add(Shape::convex_polygon(up, colour, Stroke::NONE));
        }
        _ => {
            let diamond =
                vec![c + vec2(0.0, -6.0), c + vec2(6.0, 0.0), c + vec2(0.0, 6.0), c + vec2(-6.0, 0.0)];
            painter.add(Shape::convex_polygon(diamond, colour, Stroke::NONE));
        }
    }
}
