//! A round dial: 270 degrees, numbers, long and short marks, unit, class, needle with its pivot, stop pins.

use std::f32::consts::PI;

use egui::{Align2, FontId, Painter, Pos2, Rect, Shape, Stroke, vec2};

use super::printed::{Printed, figure};
use crate::theme;

/// How far the scale goes round.
pub const SWEEP: f32 = 1.5 * PI;
/// How far beyond the end of the scale a needle rests on its stop pin.
const STOP: f32 = 5.0 / 180.0 * PI;

/// The angle of a value, clockwise from straight up. Beyond the ends the needle rests against a pin.
#[must_use]
pub fn angle(printed: &Printed, value: f64) -> f32 {
    let share = ((value - printed.min) / (printed.max - printed.min)) as f32;
    (SWEEP * (share - 0.5)).clamp(-0.5 * SWEEP - STOP, 0.5 * SWEEP + STOP)
}

/// A point on a circle, `angle` clockwise from straight up.
#[must_use]
pub fn on_circle(centre: Pos2, radius: f32, angle: f32) -> Pos2 {
    centre + radius * vec2(angle.sin(), -angle.cos())
}

/// The sizes of a dial that is drawn into a square.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sizes {
    /// Middle of the pivot.
    pub centre: Pos2,
    /// Outer edge of the case.
    pub case: f32,
    /// Outer ends of the marks.
    pub scale: f32,
}

/// Sizes of the dial that fills `rect`.
#[must_use]
pub fn sizes(rect: Rect) -> Sizes {
    let case = 0.5 * rect.width().min(rect.height()) - 1.0;
    Sizes { centre: rect.center(), case, scale: case - (0.055 * case).max(4.0) - 3.0 }
}

/// Tip and tail of the needle.
#[must_use]
pub fn needle(printed: &Printed, sizes: Sizes, value: f64) -> [Pos2; 2] {
    let at = angle(printed, value);
    [on_circle(sizes.centre, sizes.scale - 1.0, at), on_circle(sizes.centre, -0.28 * sizes.scale, at)]
}

/// Outer end of mark number `i`.
#[must_use]
pub fn mark(printed: &Printed, sizes: Sizes, i: u32) -> Pos2 {
    on_circle(sizes.centre, sizes.scale, angle(printed, printed.mark(i)))
}

/// Draws the dial. `value` is in the printed unit; `None` leaves the needle away. `class` is the line under
/// the pivot.
pub fn paint(painter: &Painter, rect: Rect, printed: &Printed, value: Option<f64>, class: &str) {
    let s = sizes(rect);
    let c = s.centre;
    // Case, its inner edge, the face.
    painter.circle_filled(c + vec2(0.0, 1.5), s.case, theme::SHADOW);
    painter.circle(c, s.case, theme::CASE, Stroke::new(1.0, theme::CASE_EDGE));
    let face = s.scale + 3.0;
    painter.circle(c, face, theme::FACE, Stroke::new(1.2, theme::CASE_EDGE));
    // Sizes below are for a screen; a larger scale makes a small dial just as large.
    let zoom = painter.ctx().zoom_factor();
    let numbers = FontId::proportional((0.145 * s.case).clamp(10.0 / zoom, 30.0));
    let inner = (0.15 * s.scale).clamp(8.0 / zoom, 26.0);
    // A sign must not run into the mark beside it.
    let gap = 0.045 * s.case;
    for i in 0..=printed.divisions() {
        let at = angle(printed, printed.mark(i));
        let (length, width) = if printed.numbered(i) {
            (inner, 1.8)
        } else if printed.halfway(i) {
            (0.75 * inner, 1.1)
        } else {
            (0.52 * inner, 1.0)
        };
        let ends = [on_circle(c, s.scale, at), on_circle(c, s.scale - length, at)];
        painter.line_segment(ends, Stroke::new(width, theme::FACE_INK));
        if printed.numbered(i) {
            let text = figure(printed.mark(i));
            // Long numbers stand sideways further in than high.
            let wide = 0.29 * numbers.size * text.chars().count() as f32;
            let reach = (at.sin().abs() * wide).max(at.cos().abs() * 0.5 * numbers.size);
            let place = on_circle(c, s.scale - inner - gap - reach.max(0.5 * numbers.size), at);
            painter.text(place, Align2::CENTER_CENTER, text, numbers.clone(), theme::FACE_INK);
        }
    }
    for end in [-1.0, 1.0] {
        // The needle's flank lies against the pin, so the pin stands a little further.
        let pin = on_circle(c, 0.9 * s.scale, end * (0.5 * SWEEP + STOP + 0.035));
        painter.circle(pin, (0.028 * s.case).max(1.8), theme::CASE_EDGE, Stroke::new(0.8, theme::FACE_INK));
    }
    let unit = FontId::proportional((0.17 * s.case).clamp(11.0 / zoom, 34.0));
    painter.text(c + vec2(0.0, 0.40 * s.scale), Align2::CENTER_CENTER, printed.unit, unit, theme::FACE_INK);
    let small = FontId::proportional((0.115 * s.case).clamp(9.0 / zoom, 22.0));
    painter.text(c + vec2(0.0, 0.62 * s.scale), Align2::CENTER_CENTER, class, small, theme::FACE_INK);
    if let Some(value) = value {
        paint_needle(painter, printed, s, value);
    }
    // A sheen on the glass, so faint that nothing under it is lost.
    painter.circle_filled(c - vec2(0.25, 0.42) * s.scale, 0.42 * s.scale, theme::SHEEN);
}

fn paint_needle(painter: &Painter, printed: &Printed, s: Sizes, value: f64) {
    let [tip, tail] = needle(printed, s, value);
    let along = (tip - tail).normalized();
    let across = vec2(-along.y, along.x);
    let root = (0.045 * s.case).max(2.4);
    let offset = vec2(0.0, 1.5);
    for (shift, colour) in [(offset, theme::SHADOW), (vec2(0.0, 0.0), theme::NEEDLE)] {
        let blade = vec![tip + shift, s.centre + root * across + shift, s.centre - root * across + shift];
        painter.add(Shape::convex_polygon(blade, colour, Stroke::NONE));
        painter.line_segment([s.centre + shift, tail + shift], Stroke::new(2.2 * root, colour));
    }
    // A point is thinner than a pixel: a fine line keeps the tip sharp and visible.
    painter.line_segment([s.centre, tip], Stroke::new(1.0, theme::NEEDLE));
    painter.circle(s.centre, 0.085 * s.case, theme::CASE, Stroke::new(1.0, theme::CASE_EDGE));
    painter.circle_filled(s.centre, 0.03 * s.case, theme::NEEDLE);
}

#[cfg(test)]
mod tests {
    use super::*;
    use front::prefs::PressureUnit;
    use sim_core::instrument::{Dial, InstrumentKind};

    /// As large as the tray draws it at 1280 × 720.
    const SIDE: f32 = 168.0;
    /// Marks nearer than this run together.
    const TOLD_APART_PX: f32 = 3.0;

    fn dials() -> Vec<Printed> {
        let dial = |min, max, division| Dial { min, max, class: 1.6, division };
        let kinds = [
            InstrumentKind::Gauge { dial: dial(-100.0, 0.0, 2.0) },
            InstrumentKind::HandPump { dial: dial(-100.0, 0.0, 5.0) },
            InstrumentKind::Barometer { dial: dial(60.0, 110.0, 0.5) },
            InstrumentKind::WallThermometer { dial: dial(-30.0, 50.0, 1.0) },
        ];
        kinds
            .iter()
            .flat_map(|k| PressureUnit::ALL.map(|u| Printed::of(k, u).unwrap()))
            .filter(Printed::fits_round)
            .collect()
    }

    fn square() -> Rect {
        Rect::from_min_size(egui::pos2(320.0, 500.0), vec2(SIDE, SIDE))
    }

    /// Reads a drawn dial as an eye does: between which marks the tip lies, and how far along.
    fn read(printed: &Printed, s: Sizes, tip: Pos2) -> f64 {
        let nearest = |i: &u32| mark(printed, s, *i).distance(tip);
        let order = |a: &u32, b: &u32| nearest(a).total_cmp(&nearest(b));
        let here = (0..=printed.divisions()).min_by(order).unwrap();
        let beside = (0..=printed.divisions()).filter(|i| i.abs_diff(here) == 1).min_by(order).unwrap();
        let (to_here, to_beside) = (nearest(&here), nearest(&beside));
        let share = f64::from(to_here / (to_here + to_beside));
        printed.mark(here) + share * (printed.mark(beside) - printed.mark(here))
    }

    #[test]
    fn inv_a_drawn_dial_reads_to_half_a_division() {
        for printed in dials() {
            let s = sizes(square());
            for step in 0..=printed.divisions() * 8 {
                let value = printed.min + f64::from(step) / 8.0 * printed.division;
                // Pixels are what is seen.
                let tip = needle(&printed, s, value)[0].round();
                let seen = read(&printed, s, tip);
                assert!(
                    (seen - value).abs() <= 0.5 * printed.division,
                    "{value} reads {seen} on {printed:?}"
                );
            }
        }
    }

    #[test]
    fn marks_of_the_tray_dials_are_told_apart() {
        for printed in dials() {
            let s = sizes(square());
            let gap = mark(&printed, s, 0).distance(mark(&printed, s, 1));
            assert!(TOLD_APART_PX <= gap, "{gap} px on {printed:?}");
        }
    }

    #[test]
    fn a_needle_off_the_scale_rests_beyond_its_end() {
        let printed = &dials()[0];
        assert!(angle(printed, -180.0) < angle(printed, printed.min));
        assert!(angle(printed, printed.max) < angle(printed, 50.0));
        assert!((angle(printed, 1e9) - angle(printed, 50.0)).abs() < 1e-6);
    }
}
