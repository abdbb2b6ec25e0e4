//! The path of certainty, as SVG, and the looks that all charts of the mark sheet share.
//!
//! Lines differ in shade *and* in their marks and carry their names at their ends, so that nothing hangs on
//! colour. All inks have a contrast of at least 4.5 : 1 on white (tested).

use plotters::coord::{CoordTranslate, Shift};
use plotters::prelude::*;

use super::{classes_after, classes_to_show};
use crate::locale::Locale;
use crate::locale::sentence::Sentence;
use crate::marks::sheet::{Marks, NoteWorth};
use crate::sentence;

/// Why a chart could not be drawn.
#[derive(Debug, thiserror::Error)]
#[error("{}", self.sentence())]
pub struct PlotError(String);

impl PlotError {
    /// What is wrong, for every language; the reason is the plotting library's own.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        sentence!("chart-not-drawn", "the chart could not be drawn: {why}", why = &self.0)
    }
}

/// Any of the plotting library's errors.
pub(super) fn plot_error(error: impl std::fmt::Display) -> PlotError {
    PlotError(error.to_string())
}

pub(super) type Area<'a> = DrawingArea<SVGBackend<'a>, Shift>;

/// Size of a chart, px.
pub(super) const SIZE: (u32, u32) = (760, 215);
/// Room at the right for the names of lines, px.
pub(super) const NAMES: u32 = 190;
/// Ends of a picture of percents.
const WHOLE: std::ops::Range<f64> = 0.0..100.0;
/// Lines drawn in the path of certainty.
pub(super) const LINES: usize = 4;

/// Ink for text and axes.
pub(crate) const INK: RGBColor = RGBColor(0x1c, 0x26, 0x29);
/// Fine lines.
pub(super) const FINE: RGBColor = RGBColor(0xc9, 0xd1, 0xd0);
/// Inks of the lines: of possibilities, the true one first; then of what is one's own and of the plan's, in every chart.
pub(crate) const LINE_INKS: [RGBColor; LINES + 2] = [
    RGBColor(0x0b, 0x5f, 0x59),
    RGBColor(0x8a, 0x2f, 0x1d),
    RGBColor(0x3b, 0x3f, 0x8f),
    RGBColor(0x5c, 0x5f, 0x3a),
    RGBColor(0x7a, 0x1f, 0x6b),
    INK,
];
/// Ink and mark of what is one's own.
pub(super) const OWN: usize = LINES;
/// Ink and mark of the reference plan.
pub(super) const PLAN: usize = LINES + 1;

pub(super) fn text(size: u32) -> TextStyle<'static> {
    ("sans-serif", size).into_font().color(&INK)
}

/// Probability of the likeliest classes after each note.
pub(crate) fn path(marks: &Marks, words: &Locale) -> Result<String, PlotError> {
    let evidence = &marks.evidence;
    let counted: Vec<_> =
        evidence.readings.iter().filter_map(|line| classes_after(line).map(|p| (line, p))).collect();
    let mut svg = String::new();
    {
        let root = SVGBackend::with_string(&mut svg, SIZE).into_drawing_area();
        let n = counted.len().max(1) as f64;
        let (left, right) = root.split_horizontally(SIZE.0 - NAMES);
        let mut chart = ChartBuilder::on(&left)
            .margin(6)
            .margin_right(2)
            .x_label_area_size(34)
            .y_label_area_size(44)
            .build_cartesian_2d(0.0..n, WHOLE)
            .map_err(plot_error)?;
        let number = |x: &f64| {
            let index = x.round();
            if index < 0.5 {
                return "0".to_owned();
            }
            counted.get(index as usize - 1).map_or(String::new(), |(line, _)| line.number.to_string())
        };
        chart
            .configure_mesh()
            .disable_x_mesh()
            .light_line_style(WHITE)
            .bold_line_style(FINE)
            .axis_style(INK)
            .x_labels(counted.len().clamp(2, 30))
            .y_labels(5)
            .x_label_formatter(&number)
            .y_label_formatter(&|y| format!("{y:.0} %"))
            .x_desc(words.say("paper-path-axis"))
            .label_style(text(12))
            .axis_desc_style(text(12))
            .draw()
            .map_err(plot_error)?;
        let before = counted
            .iter()
            .take_while(|(line, _)| matches!(line.worth, NoteWorth::Counts { for_finding: true, .. }))
            .count() as f64;
        if before < counted.len() as f64 {
            let x = before + 0.5;
            chart
                .draw_series(DashedLineSeries::new([(x, 0.0), (x, 100.0)], 4, 4, INK.stroke_width(1)))
                .map_err(plot_error)?;
            chart
                .draw_series([Text::new(words.say("paper-path-late"), (x + n * 0.01, 56.0), text(12))])
                .map_err(plot_error)?;
        }
        let mut names: Vec<(f64, String, usize)> = Vec::new();
        for (slot, class) in classes_to_show(evidence, 0.02, LINES).into_iter().enumerate() {
            let start = evidence.classes[class].start;
            let points: Vec<(f64, f64)> = std::iter::once((0.0, 100.0 * start))
                .chain(counted.iter().enumerate().map(|(i, (_, p))| ((i + 1) as f64, 100.0 * p[class])))
                .collect();
            let style = LINE_INKS[slot].stroke_width(if slot == 0 { 3 } else { 2 });
            chart.draw_series(LineSeries::new(points.clone(), style)).map_err(plot_error)?;
            for point in &points {
                mark(chart.plotting_area(), slot, *point)?;
            }
            let truth = if evidence.true_class == Some(class) {
                format!(" {}", words.say("paper-path-truth"))
            } else {
                String::new()
            };
            let end = points.last().map_or(0.0, |p| p.1);
            names.push((end, format!("{}{truth}", evidence.classes[class].name), slot));
        }
        write_names(&right, &WHOLE, names)?;
        root.present().map_err(plot_error)?;
    }
    Ok(svg)
}

/// Draws the mark of a line: circle, triangle, cross, square, ring (one's own), bar (the plan).
pub(super) fn mark<CT: CoordTranslate>(
    area: &DrawingArea<SVGBackend<'_>, CT>,
    slot: usize,
    at: CT::From,
) -> Result<(), PlotError>
where
    CT::From: Clone,
{
    let ink = LINE_INKS[slot].filled();
    let at = EmptyElement::at(at);
    match slot {
        0 => area.draw(&(at + Circle::new((0, 0), 4, ink))),
        1 => area.draw(&(at + TriangleMarker::new((0, 0), 5, ink))),
        2 => area.draw(&(at + Cross::new((0, 0), 4, LINE_INKS[slot].stroke_width(2)))),
        OWN => area.draw(&(at + Circle::new((0, 0), 4, LINE_INKS[slot].stroke_width(2)))),
        PLAN => area.draw(&(at + Rectangle::new([(-2, -4), (2, 4)], ink))),
        _ => area.draw(&(at + Rectangle::new([(-3, -3), (3, 3)], ink))),
    }
    .map_err(plot_error)
}

/// Writes the names of lines beside their ends, one under the other without overlapping; `ends`: lowest and highest value
/// of the picture, in the unit of the lines' ends.
pub(super) fn write_names(
    area: &Area<'_>,
    ends: &std::ops::Range<f64>,
    mut names: Vec<(f64, String, usize)>,
) -> Result<(), PlotError> {
    /// Height of a name of up to two rows, px.
    const ROW: i32 = 14;
    let height = SIZE.1 as i32 - 46;
    names.sort_by(|a, b| b.0.total_cmp(&a.0).then(a.2.cmp(&b.2)));
    let mut next = 4;
    let mut placed = Vec::new();
    for (end, name, slot) in &names {
        let rows = textwrap::wrap(name, 28);
        let down = (ends.end - end) / (ends.end - ends.start);
        let wanted = 6 + (down * f64::from(height)) as i32 - ROW / 2;
        let y = wanted.max(next);
        next = y + rows.len() as i32 * ROW + 4;
        placed.push((y, rows, *slot));
    }
    // From below they push each other up again, so that none runs out of the picture.
    let mut lowest = SIZE.1 as i32;
    for (y, rows, _) in placed.iter_mut().rev() {
        *y = (*y).min(lowest - rows.len() as i32 * ROW - 4);
        lowest = *y;
    }
    for (mut y, rows, slot) in placed {
        mark(area, slot, (8, y + 6))?;
        for row in rows {
            area.draw(&Text::new(row.into_owned(), (18, y), text(12))).map_err(plot_error)?;
            y += ROW;
        }
    }
    Ok(())
}
