//! Curves over time, as SVG: one panel a unit, one under the other, names beside the ends of the lines.
//! Looks as the charts of the mark sheet do.
//!
//! Long curves are thinned: of each sliver of time the lowest and the highest point stay, so that no peak is lost.

use plotters::prelude::*;

use crate::locale::sentence::Sentence;
use crate::sentence;

use super::plots::{self, FINE, INK, LINE_INKS, NAMES, PlotError, SIZE, mark, plot_error, text, write_names};

/// Lines in one panel: as many as there are inks and marks that can be told apart.
pub const LINES: usize = plots::LINES;
/// Points of a curve that are drawn, about; a panel is some 570 px wide.
const POINTS: usize = 2_400;

/// A quantity over time.
#[derive(Clone, Debug, PartialEq)]
pub struct Curve {
    /// What it is called at its end.
    pub name: String,
    /// Its unit; curves of one unit share a panel.
    pub unit: String,
    /// Time (s) and value; times rise.
    pub points: Vec<(f64, f64)>,
}

/// Why there is no picture.
#[derive(Debug, thiserror::Error)]
#[error("{}", self.sentence())]
#[non_exhaustive]
pub enum CurvesError {
    /// Nothing to draw.
    Nothing,
    /// More lines of a unit than can be told apart.
    TooMany {
        /// The unit.
        unit: String,
        /// How many there are.
        count: usize,
    },
    /// The plotting library's reason.
    Plot(#[from] PlotError),
}

impl CurvesError {
    /// What is wrong, for every language.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        match self {
            Self::Nothing => sentence!("curves-nothing", "there is nothing to draw: no curve has a point"),
            Self::TooMany { unit, count } => sentence!(
                "curves-too-many",
                "{count} curves in {unit}: at most {most} of one unit fit into a picture",
                count = *count,
                unit = unit,
                most = LINES
            ),
            Self::Plot(error) => error.sentence(),
        }
    }
}

/// Draws `curves`, a panel a unit in the order in which units come first.
///
/// # Errors
/// Without any point; with more than [`LINES`] curves of one unit; when the drawing fails.
pub fn svg(curves: &[Curve]) -> Result<String, CurvesError> {
    let mut panels: Vec<(&str, Vec<&Curve>)> = Vec::new();
    for curve in curves {
        match panels.iter_mut().find(|(unit, _)| *unit == curve.unit) {
            Some((_, of_unit)) => of_unit.push(curve),
            None => panels.push((&curve.unit, vec![curve])),
        }
    }
    if let Some((unit, of_unit)) = panels.iter().find(|(_, of_unit)| LINES < of_unit.len()) {
        return Err(CurvesError::TooMany { unit: (*unit).to_owned(), count: of_unit.len() });
    }
    let times = || curves.iter().flat_map(|curve| &curve.points).map(|p| p.0);
    let (from, to) = (times().fold(f64::INFINITY, f64::min), times().fold(f64::NEG_INFINITY, f64::max));
    if to < from {
        return Err(CurvesError::Nothing);
    }
    let time = from..to.max(from + 0.01);
    let mut svg = String::new();
    {
        let root =
            SVGBackend::with_string(&mut svg, (SIZE.0, SIZE.1 * panels.len() as u32)).into_drawing_area();
        root.fill(&WHITE).map_err(plot_error)?;
        for ((unit, of_unit), area) in panels.iter().zip(root.split_evenly((panels.len(), 1))) {
            let (left, right) = area.split_horizontally(SIZE.0 - NAMES);
            let values = || of_unit.iter().flat_map(|curve| &curve.points).map(|p| p.1);
            let (low, high) =
                (values().fold(f64::INFINITY, f64::min), values().fold(f64::NEG_INFINITY, f64::max));
            let (low, high) = if low <= high { (low, high) } else { (0.0, 0.0) };
            let room = 0.05 * (high - low).max(1e-3 * high.abs().max(1e-3));
            let (low, high) = (low - room, high + room);
            let mut chart = ChartBuilder::on(&left)
                .margin(6)
                .margin_right(2)
                .x_label_area_size(34)
                .y_label_area_size(58)
                .build_cartesian_2d(time.clone(), low..high)
                .map_err(plot_error)?;
            chart
                .configure_mesh()
                .disable_x_mesh()
                .light_line_style(WHITE)
                .bold_line_style(FINE)
                .axis_style(INK)
                .x_labels(10)
                .y_labels(6)
                .x_desc("s")
                .y_desc(*unit)
                .label_style(text(12))
                .axis_desc_style(text(12))
                .draw()
                .map_err(plot_error)?;
            let mut names = Vec::new();
            for (slot, curve) in of_unit.iter().enumerate() {
                let points = thinned(&curve.points);
                let Some(&last) = points.last() else { continue };
                let style = LINE_INKS[slot].stroke_width(if slot == 0 { 2 } else { 1 });
                chart.draw_series(LineSeries::new(points, style)).map_err(plot_error)?;
                mark(chart.plotting_area(), slot, last)?;
                names.push((last.1, curve.name.clone(), slot));
            }
            write_names(&right, &(low..high), names)?;
        }
        root.present().map_err(plot_error)?;
    }
    Ok(svg)
}

/// At most about [`POINTS`] of the points: first and last, and of each sliver the lowest and the highest.
fn thinned(points: &[(f64, f64)]) -> Vec<(f64, f64)> {
    if points.len() <= POINTS {
        return points.to_vec();
    }
    let sliver = points.len().div_ceil(POINTS / 2);
    let mut kept = Vec::with_capacity(POINTS + 2);
    kept.extend(points.first());
    for part in points.chunks(sliver) {
        let by_value = |a: &&(f64, f64), b: &&(f64, f64)| a.1.total_cmp(&b.1);
        let mut two: Vec<(f64, f64)> =
            part.iter().min_by(by_value).into_iter().chain(part.iter().max_by(by_value)).copied().collect();
        two.sort_by(|a, b| a.0.total_cmp(&b.0));
        kept.extend(two);
    }
    kept.extend(points.last());
    kept
}

#[cfg(test)]
mod tests {
    use super::*;

    fn curve(name: &str, unit: &str, points: Vec<(f64, f64)>) -> Curve {
        Curve { name: name.to_owned(), unit: unit.to_owned(), points }
    }

    #[test]
    fn inv_a_thinned_curve_keeps_its_peak_and_its_ends() {
        let mut points: Vec<(f64, f64)> = (0..100_000).map(|i| (f64::from(i), f64::from(i % 7))).collect();
        points[54_321].1 = 99.0;
        let kept = thinned(&points);
        assert!(kept.len() <= POINTS + 2, "{}", kept.len());
        assert!(kept.contains(&(54_321.0, 99.0)));
        assert_eq!((kept.first(), kept.last()), (points.first(), points.last()));
        assert!(kept.windows(2).all(|w| w[0].0 <= w[1].0), "time runs on");
    }

    #[test]
    fn a_panel_a_unit_with_all_names() {
        let svg = svg(&[
            curve("store", "kPa_abs", vec![(0.0, 101.0), (10.0, 40.0)]),
            curve("pump", "A", vec![(0.0, 9.0), (10.0, 0.0)]),
            curve("source", "kPa_abs", vec![(0.0, 101.0), (10.0, 39.0)]),
        ])
        .unwrap();
        for wanted in ["store", "source", "pump", "kPa_abs", "height=\"430\""] {
            assert!(svg.contains(wanted), "{wanted}: {svg}");
        }
    }

    #[test]
    fn what_cannot_be_drawn_is_said() {
        assert!(matches!(svg(&[]), Err(CurvesError::Nothing)));
        assert!(matches!(svg(&[curve("a", "V", Vec::new())]), Err(CurvesError::Nothing)));
        let five: Vec<Curve> = (0..5).map(|i| curve(&i.to_string(), "V", vec![(0.0, 1.0)])).collect();
        assert!(matches!(svg(&five), Err(CurvesError::TooMany { count: 5, .. })));
        // One point and a value that never moves are drawn all the same.
        assert!(svg(&five[..1]).is_ok());
    }
}
