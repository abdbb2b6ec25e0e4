//! A part of a long scale, enlarged round its pointer: the rule, the angle finder, and any dial whose
//! divisions would run together on a round face. One looks at it closely, as one does at a rule.

use egui::{Align2, FontId, Painter, Pos2, Rect, Shape, Stroke, StrokeKind, pos2, vec2};

use super::printed::{Printed, figure};
use crate::theme;

/// Points for one division.
pub const DIVISION: f32 = 5.0;
/// Highest shift of the window: it begins at a numbered mark.
const EDGE: f32 = 8.0;

/// The part of the scale that is shown.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Window {
    /// First mark shown.
    pub first: u32,
    /// Last mark shown.
    pub last: u32,
}

/// The part round `value` that fits into `width`.
#[must_use]
pub fn window(printed: &Printed, width: f32, value: f64) -> Window {
    let total = printed.divisions();
    let fit = (((width - 2.0 * EDGE) / DIVISION).floor().max(4.0) as u32).min(total);
    let place = ((value - printed.min) / printed.division).clamp(0.0, f64::from(total));
    let wanted = (place as u32).saturating_sub(fit / 2).min(total - fit);
    // It moves by halves of a numbered interval, so that the scale does not creep under the pointer.
    let step = (printed.per_number / 2).max(1);
    let first = if wanted == total - fit { wanted } else { wanted / step * step };
    Window { first, last: first + fit }
}

/// Where a value stands across the strip.
#[must_use]
pub fn x(printed: &Printed, rect: Rect, window: Window, value: f64) -> f32 {
    let divisions = (value - printed.min) / printed.division - f64::from(window.first);
    let most = f64::from(window.last - window.first);
    rect.left() + EDGE + DIVISION * divisions.clamp(-1.0, most + 1.0) as f32
}

/// Draws the strip: the whole scale as a bar above, the part round the pointer below it.
pub fn paint(painter: &Painter, rect: Rect, printed: &Printed, value: Option<f64>, class: &str) {
    let painter = painter.with_clip_rect(rect.intersect(painter.clip_rect()));
    painter.rect(rect.shrink(0.5), 3.0, theme::FACE, Stroke::new(1.0, theme::CASE_EDGE), StrokeKind::Inside);
    let middle = value.unwrap_or(0.5 * (printed.min + printed.max));
    let shown = window(printed, rect.width(), middle);
    overview(&painter, rect, printed, shown);
    let base = rect.top() + 0.60 * rect.height();
    let numbers = FontId::proportional(14.0);
    for i in shown.first..=shown.last {
        let at = x(printed, rect, shown, printed.mark(i));
        let (length, width) = if printed.numbered(i) {
            (36.0, 1.8)
        } else if i % 5 == 0 {
            (27.0, 1.1)
        } else {
            (18.0, 1.0)
        };
        painter.line_segment([pos2(at, base), pos2(at, base - length)], Stroke::new(width, theme::FACE_INK));
        if printed.numbered(i) {
            let text = figure(printed.mark(i));
            // At the edges a number stands inside, still nearest its mark.
            let half = 0.3 * numbers.size * text.chars().count() as f32;
            let at = at.clamp(rect.left() + 4.0 + half, rect.right() - 4.0 - half);
            painter.text(
                pos2(at, base - length - 10.0),
                Align2::CENTER_CENTER,
                text,
                numbers.clone(),
                theme::FACE_INK,
            );
        }
    }
    let left = rect.left() + EDGE;
    painter
        .line_segment([pos2(left, base), pos2(rect.right() - EDGE, base)], Stroke::new(1.0, theme::FACE_INK));
    if let Some(value) = value {
        pointer(&painter, pos2(x(printed, rect, shown, value), base));
    }
    let low = rect.bottom() - 22.0;
    painter.text(
        pos2(rect.center().x, low),
        Align2::CENTER_CENTER,
        printed.unit,
        FontId::proportional(14.0),
        theme::FACE_INK,
    );
    painter.text(
        pos2(rect.center().x, rect.bottom() - 8.0),
        Align2::CENTER_CENTER,
        class,
        FontId::proportional(10.0),
        theme::FACE_INK,
    );
}

/// The whole scale as a bar, with the part that is shown.
fn overview(painter: &Painter, rect: Rect, printed: &Printed, shown: Window) {
    let bar =
        Rect::from_min_max(rect.left_top() + vec2(EDGE, 10.0), pos2(rect.right() - EDGE, rect.top() + 16.0));
    painter.rect_stroke(bar, 2.0, Stroke::new(1.0, theme::FACE_INK), StrokeKind::Inside);
    let share = |mark: u32| bar.left() + bar.width() * mark as f32 / printed.divisions() as f32;
    let part = Rect::from_min_max(pos2(share(shown.first), bar.top()), pos2(share(shown.last), bar.bottom()));
    painter.rect_filled(part, 2.0, theme::ACCENT);
    let font = FontId::proportional(10.5);
    for (mark, align) in [(0, Align2::LEFT_TOP), (printed.divisions(), Align2::RIGHT_TOP)] {
        let at = pos2(share(mark), bar.bottom() + 2.0);
        painter.text(at, align, figure(printed.mark(mark)), font.clone(), theme::FACE_INK);
    }
}

/// A slider with a fine line, under the scale.
fn pointer(painter: &Painter, at: Pos2) {
    painter.line_segment([at - vec2(0.0, 19.0), at + vec2(0.0, 16.0)], Stroke::new(1.0, theme::NEEDLE));
    let body = vec![at + vec2(0.0, 1.0), at + vec2(7.0, 15.0), at + vec2(-7.0, 15.0)];
    painter.add(Shape::convex_polygon(body, theme::NEEDLE, Stroke::NONE));
}

#[cfg(test)]
mod tests {
    use super::*;
    use front::prefs::PressureUnit;
    use sim_core::instrument::{Dial, InstrumentKind};

    #[test]
    fn inv_a_strip_shows_its_pointer_and_reads_to_half_a_division() {
        let dial = |max| Dial { min: 0.0, max, class: 0.5, division: 1.0 };
        let kinds = [
            (InstrumentKind::AngleFinder { dial: dial(180.0) }, PressureUnit::Kpa),
            (InstrumentKind::PedalRule { dial: dial(200.0) }, PressureUnit::Kpa),
            (
                InstrumentKind::Barometer { dial: Dial { min: 60.0, max: 110.0, class: 0.6, division: 0.5 } },
                PressureUnit::Inhg,
            ),
        ];
        let rect = Rect::from_min_size(pos2(300.0, 500.0), vec2(172.0, 172.0));
        for (kind, unit) in kinds {
            let printed = Printed::of(&kind, unit).unwrap();
            assert!(!printed.fits_round());
            for step in 0..=printed.divisions() * 4 {
                let value = printed.min + f64::from(step) / 4.0 * printed.division;
                let shown = window(&printed, rect.width(), value);
                let at = x(&printed, rect, shown, value).round();
                assert!(rect.left() < at && at < rect.right());
                let first = x(&printed, rect, shown, printed.mark(shown.first));
                let read = printed.mark(shown.first) + f64::from((at - first) / DIVISION) * printed.division;
                assert!((read - value).abs() <= 0.25 * printed.division, "{value} reads {read}");
                let numbers = (shown.first..=shown.last).filter(|i| printed.numbered(*i)).count();
                assert!(2 <= numbers, "{numbers} numbers in {shown:?}");
            }
        }
    }
}
