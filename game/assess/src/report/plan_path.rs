//! How soon the truth was as probable as it became: along one's own notes, and along the reference plan.
//!
//! Both run over the minutes of the clock, waiting included. The plan's line is that of a car with every tolerance in the
//! middle, whose readings are not those of this car: it says how the work could have gone, not what would have been read.
//!
//! Points carry the number of the reading and the letter of the test: what settled the matter, and what could have, is read off
//! the picture and the list of tests under it.

use plotters::prelude::*;
use plotters::style::text_anchor::{HPos, Pos, VPos};

use super::plots::{
    FINE, INK, LINE_INKS, NAMES, OWN, PLAN, PlotError, SIZE, mark, plot_error, text, write_names,
};
use crate::locale::Locale;
use crate::marks::sheet::{Marks, NoteWorth};
use crate::report::classes_after;

/// Ends of the picture, percent: letters have room above the highest point, numbers under the lowest.
const ENDS: std::ops::Range<f64> = -24.0..112.0;
/// Points nearer to each other than this have their numbers in different rows, share of the width.
const CROWDED: f64 = 0.03;
/// Rows of numbers.
const ROWS: i32 = 3;
/// Height of a row, px.
const ROW: i32 = 10;

/// Minutes, percent, and what stands beside the point.
type Line = Vec<(f64, f64, String)>;

/// Probability of what is true against time; `None` without a reference plan.
pub(crate) fn beside_plan(marks: &Marks, words: &Locale) -> Option<Result<String, PlotError>> {
    if marks.plan.is_empty() {
        return None;
    }
    let start = 100.0 * marks.evidence.p_true_at_start(&marks.truth);
    let lines =
        [(own(marks, start), OWN, "paper-plan-own"), (planned(marks, start), PLAN, "paper-plan-plan")];
    Some(drawn(&lines, words))
}

/// Along one's own notes, up to the finding.
fn own(marks: &Marks, start: f64) -> Line {
    let evidence = &marks.evidence;
    let counts = |worth: &NoteWorth| matches!(worth, NoteWorth::Counts { for_finding: true, .. });
    let notes = evidence.readings.iter().filter(|line| counts(&line.worth)).filter_map(|line| {
        let p_true = evidence.p_true(&marks.truth, classes_after(line)?);
        Some((line.at_min, 100.0 * p_true, line.number.to_string()))
    });
    std::iter::once((0.0, start, String::new())).chain(notes).collect()
}

/// Along the reference plan.
fn planned(marks: &Marks, start: f64) -> Line {
    let mut at = 0.0;
    let tests = marks.plan.iter().enumerate().map(|(index, test)| {
        at += test.worked_min + test.waited_min;
        (at, 100.0 * test.p_true, letter(index))
    });
    std::iter::once((0.0, start, String::new())).chain(tests).collect()
}

/// The letter of a test of the plan: A, B, …, Z, then its number.
pub(crate) fn letter(index: usize) -> String {
    match u8::try_from(index) {
        Ok(index) if index < 26 => char::from(b'A' + index).to_string(),
        _ => (index + 1).to_string(),
    }
}

/// A line that stays until the next point and then steps there.
fn steps(line: &Line) -> Vec<(f64, f64)> {
    let at = |point: &(f64, f64, String)| (point.0, point.1);
    let step = |pair: &[(f64, f64, String)]| [(pair[1].0, pair[0].1), at(&pair[1])];
    line.first().map(at).into_iter().chain(line.windows(2).flat_map(step)).collect()
}

fn drawn(lines: &[(Line, usize, &str)], words: &Locale) -> Result<String, PlotError> {
    let mut svg = String::new();
    {
        let root = SVGBackend::with_string(&mut svg, SIZE).into_drawing_area();
        let (left, right) = root.split_horizontally(SIZE.0 - NAMES);
        let ends = lines.iter().filter_map(|(line, ..)| line.last());
        let end_min = ends.map(|(at, ..)| *at).fold(1.0, f64::max);
        let mut chart = ChartBuilder::on(&left)
            .margin(6)
            .margin_right(2)
            .x_label_area_size(34)
            .y_label_area_size(44)
            .build_cartesian_2d(0.0..end_min * 1.02, ENDS)
            .map_err(plot_error)?;
        chart
            .configure_mesh()
            .disable_x_mesh()
            .light_line_style(WHITE)
            .bold_line_style(FINE)
            .axis_style(INK)
            .x_labels(10)
            .y_labels(5)
            .x_label_formatter(&|x| format!("{x:.0}"))
            .y_label_formatter(&|y| if *y < -1.0 { String::new() } else { format!("{y:.0} %") })
            .x_desc(words.say("paper-plan-axis"))
            .label_style(text(12))
            .axis_desc_style(text(12))
            .draw()
            .map_err(plot_error)?;
        let mut names = Vec::new();
        for (line, slot, key) in lines {
            let is_own = *slot == OWN;
            let style = LINE_INKS[*slot].stroke_width(if is_own { 3 } else { 2 });
            chart.draw_series(LineSeries::new(steps(line), style)).map_err(plot_error)?;
            // Letters of tests above their points, numbers of readings below theirs.
            let (mut last, mut row) = (f64::NEG_INFINITY, 0);
            for (at, percent, label) in line {
                mark(chart.plotting_area(), *slot, (*at, *percent))?;
                row = if at - last < CROWDED * end_min { (row + 1) % ROWS } else { 0 };
                last = *at;
                let (away, vertical) =
                    if is_own { (6 + ROW * row, VPos::Top) } else { (-7 - ROW * row, VPos::Bottom) };
                let style = text(11).pos(Pos::new(HPos::Center, vertical)).color(&LINE_INKS[*slot]);
                let label = Text::new(label.clone(), (0, away), style);
                chart.draw_series([EmptyElement::at((*at, *percent)) + label]).map_err(plot_error)?;
            }
            names.push((line.last().map_or(0.0, |point| point.1), words.say(key), *slot));
        }
        write_names(&right, &ENDS, names)?;
        root.present().map_err(plot_error)?;
    }
    Ok(svg)
}
