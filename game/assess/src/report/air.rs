//! What the air was really doing: true pressure in the store over the attempt, with what the trainee's gauge showed there.
//!
//! A night between two readings would leave the work no room: long stretches in which nothing was read or repaired are drawn
//! narrow ([`Clock`]), with their minutes written into them.

use std::ops::Range;

use plotters::coord::ranged1d::{DefaultFormatting, KeyPointHint};
use plotters::prelude::*;
use plotters::style::text_anchor::{HPos, Pos, VPos};

use super::plots::{FINE, INK, LINE_INKS, OWN, PlotError, SIZE, plot_error, text};
use crate::locale::Locale;
use crate::marks::sheet::Marks;

/// A stretch longer than this is drawn narrow, minutes.
const LONG_MIN: f64 = 45.0;
/// It is drawn as wide as so many.
const NARROW_MIN: f64 = 8.0;
/// What is shown beside such a stretch, minutes: what led into it, and what came of it.
const BESIDE_MIN: f64 = 4.0;
/// Room over the line for words, kPa; below the next line of the grid.
const OVER_KPA: f64 = 19.0;

/// Minutes of the attempt, of which some stretches are drawn narrow.
#[derive(Clone, Debug)]
struct Clock {
    end_min: f64,
    /// Stretches that are drawn narrow, in order.
    narrow: Vec<Range<f64>>,
}

impl Clock {
    /// A clock of an attempt in which something was read or done at `moments`.
    fn of(end_min: f64, moments: impl Iterator<Item = f64>) -> Self {
        let mut moments: Vec<f64> = moments.filter(|at| (0.0..=end_min).contains(at)).collect();
        moments.extend([0.0, end_min]);
        moments.sort_by(f64::total_cmp);
        let long = moments.windows(2).filter(|pair| LONG_MIN < pair[1] - pair[0]);
        Self { end_min, narrow: long.map(|pair| pair[0] + BESIDE_MIN..pair[1] - BESIDE_MIN).collect() }
    }

    /// Minutes as they are drawn.
    fn drawn(&self, at: f64) -> f64 {
        let saved = |stretch: &Range<f64>| {
            let length = stretch.end - stretch.start;
            (at.clamp(stretch.start, stretch.end) - stretch.start) * (1.0 - NARROW_MIN / length)
        };
        at - self.narrow.iter().map(saved).sum::<f64>()
    }

    fn is_narrow(&self, at: f64) -> bool {
        self.narrow.iter().any(|stretch| stretch.contains(&at))
    }
}

impl Ranged for Clock {
    type FormatOption = DefaultFormatting;
    type ValueType = f64;

    fn map(&self, at: &f64, limit: (i32, i32)) -> i32 {
        let share = self.drawn(*at) / self.drawn(self.end_min);
        limit.0 + (share * f64::from(limit.1 - limit.0)).round() as i32
    }

    fn key_points<Hint: KeyPointHint>(&self, hint: Hint) -> Vec<f64> {
        /// Minutes from one number on the axis to the next.
        const STEPS: [f64; 7] = [1.0, 2.0, 5.0, 10.0, 20.0, 30.0, 60.0];
        let most = (hint.max_num_points().max(1)) as f64;
        let fits = |step: &&f64| self.drawn(self.end_min) <= most * **step;
        let step = STEPS.iter().find(fits).copied().unwrap_or(self.end_min / most);
        let points = (0..=(self.end_min / step) as u32).map(|n| f64::from(n) * step);
        points.filter(|at| !self.is_narrow(*at)).collect()
    }

    fn range(&self) -> Range<f64> {
        0.0..self.end_min
    }
}

/// True pressure in the store over the attempt, with what the trainee's gauge showed there.
pub(crate) fn trace(marks: &Marks, words: &Locale) -> Result<String, PlotError> {
    let mut svg = String::new();
    {
        let root = SVGBackend::with_string(&mut svg, SIZE).into_drawing_area();
        let end_min = marks.trace.last().map_or(1.0, |point| point.at_s / 60.0).max(1.0);
        let lowest = marks.trace.iter().map(|point| point.store_kpa).fold(-70.0, f64::min);
        let finding = marks.findings.iter().find(|finding| finding.counts_in_full);
        let said = finding.map(|finding| (finding.at_min, words.say("paper-air-finding")));
        let replaced = marks.swaps.iter().map(|swap| (swap.at_min, words.say("paper-air-repair")));
        let lines: Vec<(f64, String)> = said.into_iter().chain(replaced).collect();
        let read = marks.evidence.readings.iter().map(|reading| reading.at_min);
        let clock = Clock::of(end_min, read.chain(lines.iter().map(|line| line.0)));
        let (low, high) = ((lowest - 6.0).floor(), OVER_KPA);
        let mut chart = ChartBuilder::on(&root)
            .margin(6)
            .x_label_area_size(34)
            .y_label_area_size(44)
            .build_cartesian_2d(clock.clone(), low..high)
            .map_err(plot_error)?;
        chart
            .configure_mesh()
            .disable_x_mesh()
            .light_line_style(WHITE)
            .bold_line_style(FINE)
            .axis_style(INK)
            .x_labels(12)
            .y_labels(6)
            .x_label_formatter(&|x| format!("{x:.0}"))
            .y_label_formatter(&|y| if 0.5 < *y { String::new() } else { format!("{y:.0}") })
            .x_desc(words.say("paper-air-axis"))
            .y_desc(words.say("paper-air-kpa"))
            .label_style(text(12))
            .axis_desc_style(text(12))
            .draw()
            .map_err(plot_error)?;
        for stretch in &clock.narrow {
            let band = Rectangle::new([(stretch.start, low), (stretch.end, high)], FINE.mix(0.45).filled());
            chart.draw_series([band]).map_err(plot_error)?;
            let minutes = format!("{:.0}", stretch.end - stretch.start);
            let waited = words.say_with("paper-air-waited", &[("minutes", minutes.as_str().into())]);
            let style = text(11).pos(Pos::new(HPos::Center, VPos::Top));
            let middle = (stretch.start + stretch.end) / 2.0;
            chart.draw_series([Text::new(waited, (middle, high), style)]).map_err(plot_error)?;
        }
        let line = marks.trace.iter().map(|point| (point.at_s / 60.0, point.store_kpa));
        chart.draw_series(LineSeries::new(line, INK.stroke_width(1))).map_err(plot_error)?;
        for (row, (at, word)) in lines.into_iter().enumerate() {
            let dashes = DashedLineSeries::new([(at, low), (at, high)], 4, 4, INK.stroke_width(1));
            chart.draw_series(dashes).map_err(plot_error)?;
            let style = text(11).pos(Pos::new(HPos::Left, VPos::Top));
            // One under the other: a repair follows its finding soon.
            let label = Text::new(word, (3, 12 * (row as i32 % 2)), style);
            chart.draw_series([EmptyElement::at((at, high)) + label]).map_err(plot_error)?;
        }
        for reading in marks.evidence.readings.iter().filter(|reading| reading.of_store) {
            let Some((value, _)) = &reading.value else { continue };
            let style = text(12).pos(Pos::new(HPos::Left, VPos::Center));
            let ring = EmptyElement::at((reading.at_min, *value))
                + Circle::new((0, 0), 5, LINE_INKS[OWN].stroke_width(2))
                + Text::new(reading.number.to_string(), (7, -6), style);
            chart.draw_series([ring]).map_err(plot_error)?;
        }
        root.present().map_err(plot_error)?;
    }
    Ok(svg)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_night_is_drawn_narrow_and_the_work_is_not() {
        let clock = Clock::of(820.0, [10.0, 25.0, 80.0, 800.0, 815.0].into_iter());
        assert_eq!(clock.narrow, [29.0..76.0, 84.0..796.0]);
        assert!((clock.drawn(25.0) - 25.0).abs() < 1e-9, "before it nothing is moved");
        assert!((clock.drawn(796.0) - clock.drawn(84.0) - NARROW_MIN).abs() < 1e-9);
        assert!((clock.drawn(815.0) - clock.drawn(800.0) - 15.0).abs() < 1e-9);
        let points = clock.key_points(12);
        assert!(points.iter().all(|at| !clock.is_narrow(*at)), "{points:?}");
        let drawn: Vec<i32> = (0..820).map(|at| clock.map(&f64::from(at), (44, 744))).collect();
        assert!(drawn.is_sorted(), "time runs on");
    }

    #[test]
    fn an_attempt_without_a_long_wait_is_drawn_as_the_clock_ran() {
        let clock = Clock::of(60.0, [20.0, 50.0].into_iter());
        assert!(clock.narrow.is_empty());
        assert_eq!(clock.map(&30.0, (0, 600)), 300);
        assert_eq!(clock.key_points(12)[..3], [0.0, 5.0, 10.0]);
    }
}
