//! What the air was really doing: the true pressure of the store over the attempt, with what the trainee's
//! gauge showed there.

use assess::marks::sheet::Marks;
use assess::play::course::TracePoint;
use egui::{Align2, Label, RichText};
use egui_plot::{AxisHints, Line, MarkerShape, Plot, PlotPoint, PlotPoints, Points, Text};

use super::super::super::theme;
use super::super::paper;
use super::path;
use front::prefs::PressureUnit;
use front::shop::Shop;
use front::words::Words;

/// Height of the plot, points.
const HEIGHT: f32 = 220.0;

/// The true pressure at a second of the attempt, kPa, between the two points beside it.
fn true_at(trace: &[TracePoint], s: f64) -> Option<f64> {
    let after = trace.partition_point(|p| p.at_s < s);
    let (a, b) = (trace.get(after.checked_sub(1)?)?, trace.get(after)?);
    let share = if a.at_s < b.at_s { (s - a.at_s) / (b.at_s - a.at_s) } else { 0.0 };
    Some(a.store_kpa + share * (b.store_kpa - a.store_kpa))
}

/// What a gauge in the store showed.
struct Gauged {
    n: u32,
    s: f64,
    kpa: f64,
}

/// Shows it.
pub(super) fn show(page: &mut egui::Ui, shop: &Shop, words: &Words, marks: &Marks, unit: PressureUnit) {
    if marks.trace.is_empty() {
        return;
    }
    paper::heading(page, words.say("mark-trace"));
    page.add(Label::new(RichText::new(words.say("mark-trace-why")).color(theme::INK_FAINT)).wrap());
    // The moment of the look itself: the action that took it went on for some seconds, and the pump with it.
    let taken = shop.view().map(|v| v.readings.as_slice()).unwrap_or_default();
    let gauged: Vec<Gauged> = marks
        .evidence
        .readings
        .iter()
        .filter(|line| line.of_store)
        .filter_map(|line| {
            let reading = taken.iter().find(|r| r.id == line.number)?;
            Some(Gauged { n: line.number, s: reading.tick.s(), kpa: line.value.as_ref()?.0 })
        })
        .collect();
    let per_kpa = unit.per_kpa();
    let line: Vec<[f64; 2]> = marks.trace.iter().map(|p| [p.at_s / 60.0, p.store_kpa * per_kpa]).collect();
    let rings: Vec<[f64; 2]> = gauged.iter().map(|g| [g.s / 60.0, g.kpa * per_kpa]).collect();
    let plot = Plot::new("trace")
        .height(HEIGHT)
        .include_y(0.0)
        .include_y(-70.0 * per_kpa)
        .allow_zoom(false)
        .allow_drag(false)
        .allow_scroll(false)
        .allow_boxed_zoom(false)
        .show_crosshair(false)
        .y_grid_spacer(egui_plot::uniform_grid_spacer(move |_| {
            [20.0, 100.0, 500.0].map(|step| step * per_kpa)
        }))
        .custom_x_axes(vec![path::legible(AxisHints::new_x().label(words.say("mark-trace-x")))])
        .custom_y_axes(vec![path::legible(
            AxisHints::new_y()
                .label(words.say_with("mark-trace-y", &[("unit", unit.symbol().into())]))
                .formatter(|mark, _| words.number(mark.value, usize::from(per_kpa < 1.0))),
        )]);
    let (true_name, shown_name) = (words.say("mark-trace-true"), words.say("mark-trace-shown"));
    plot.show(page, |plot| {
        plot.line(Line::new(true_name, PlotPoints::from(line)).color(theme::SERIES[0]).width(1.8));
        let points = Points::new(shown_name, PlotPoints::from(rings.clone()));
        plot.points(points.color(theme::SERIES[1]).shape(MarkerShape::Diamond).filled(false).radius(7.0));
        for (gauged, at) in gauged.iter().zip(&rings) {
            let text = RichText::new(format!("  {}", gauged.n)).size(13.0);
            let at = PlotPoint::new(at[0], at[1]);
            plot.text(Text::new("", at, text).color(theme::INK).anchor(Align2::LEFT_BOTTOM));
        }
    });
    for g in &gauged {
        let Some(truth) = true_at(&marks.trace, g.s) else { continue };
        let values = [
            ("n", g.n.into()),
            ("min", words.number(g.s / 60.0, 0).into()),
            ("shown", words.pressure(g.kpa, unit).into()),
            ("true", words.pressure((truth * 10.0).round() / 10.0, unit).into()),
        ];
        page.add(Label::new(words.say_with("mark-trace-line", &values)).wrap());
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_true_pressure_lies_between_its_neighbours() {
        let trace = [TracePoint { at_s: 0.0, store_kpa: 0.0 }, TracePoint { at_s: 60.0, store_kpa: -60.0 }];
        assert_eq!(true_at(&trace, 30.0), Some(-30.0));
        assert_eq!(true_at(&trace, 90.0), None);
    }
}
