//! A digital display: seven segments a digit, as liquid crystal shows them; OL beyond the range, dark when
//! there is nothing.

use egui::{Align2, Color32, FontId, Painter, Pos2, Rect, Shape, Stroke, StrokeKind, Vec2, pos2, vec2};
use front::words::pretty_unit;
use sim_core::observe::{Scale, ShownValue};

use crate::theme;

/// Digits a display has room for at least.
const DIGITS: usize = 5;

/// What a display shows, as characters; `None` when it is dark.
#[must_use]
pub fn characters(shown: ShownValue, scale: Option<&Scale>) -> Option<String> {
    scale.and_then(|scale| scale.characters(shown))
}

/// The unit beside the digits, as displays print it.
#[must_use]
pub fn unit(scale: Option<&Scale>) -> &'static str {
    if let Some(Scale::Numeric { unit, .. }) = scale { pretty_unit(unit) } else { "" }
}

/// Segments of a character, bits a to g; `None` for one that seven segments cannot show.
#[must_use]
pub fn segments(c: char) -> Option<u8> {
    Some(match c {
        '0' | 'O' => 0b011_1111,
        '1' => 0b000_0110,
        '2' => 0b101_1011,
        '3' => 0b100_1111,
        '4' => 0b110_0110,
        '5' => 0b110_1101,
        '6' => 0b111_1101,
        '7' => 0b000_0111,
        '8' => 0b111_1111,
        '9' => 0b110_1111,
        'L' => 0b011_1000,
        '-' => 0b100_0000,
        ' ' => 0,
        _ => return None,
    })
}

/// Width of a digit's cell over its height.
const CELL: f32 = 0.60;
/// Width of the gap that the point has to itself, over the height of a digit.
const POINT: f32 = 0.26;

/// Draws a display into `rect`. Dark (`None`) shows the faint shapes of all segments and no unit.
pub fn paint(painter: &Painter, rect: Rect, text: Option<&str>, unit: &str) {
    let ground = if text.is_some() { theme::LCD } else { theme::LCD_DARK };
    painter.rect(rect, 3.0, ground, Stroke::new(1.5, theme::CASE_EDGE), StrokeKind::Inside);
    // A small face has small margins, so that its digits stay as large as they can.
    let room = rect.shrink2(vec2((0.05 * rect.width()).min(8.0), (0.12 * rect.height()).min(6.0)));
    let unit_width = (0.20 * rect.width()).min(26.0);
    let mut rest: Vec<char> = text.unwrap_or("").chars().collect();
    let cells = rest.iter().filter(|c| **c != '.').count().max(DIGITS);
    // Room for a point is always kept, so that digits do not change size.
    let height = room.height().min((room.width() - unit_width) / (cells as f32 * CELL + POINT));
    let size = vec2(CELL * height, height);
    // Right-aligned like any display.
    let mut right = room.right() - unit_width;
    let top = room.center().y - 0.5 * height;
    for _ in 0..cells {
        let point = rest.pop_if(|c| *c == '.').is_some();
        if point {
            right -= POINT * height;
        }
        let cell = Rect::from_min_size(pos2(right - size.x, top), size);
        if cell.left() < room.left() - 1.0 {
            break;
        }
        let c = rest.pop().unwrap_or(' ');
        digit(painter, cell, segments(c).unwrap_or(0), point);
        right -= size.x;
    }
    if text.is_some() {
        let font = FontId::proportional((0.5 * height).clamp(11.0_f32.min(0.8 * unit_width), 20.0));
        painter.text(room.right_bottom(), Align2::RIGHT_BOTTOM, unit, font, theme::LCD_INK);
    }
}

/// One digit with its point.
fn digit(painter: &Painter, cell: Rect, lit: u8, point: bool) {
    let box_ = Rect::from_min_max(cell.lerp_inside(vec2(0.14, 0.04)), cell.lerp_inside(vec2(0.82, 0.96)));
    let (w, h) = (box_.width(), 0.5 * box_.height());
    let thick = (0.16 * cell.width()).max(2.0 / painter.ctx().zoom_factor());
    // A slight slope, as such digits have.
    let lean = |p: Pos2| p + vec2(0.08 * (box_.center().y - p.y), 0.0);
    let corner = |x: f32, y: f32| pos2(box_.left() + x * w, box_.top() + y * h);
    let lines = [
        (corner(0.0, 0.0), corner(1.0, 0.0)),
        (corner(1.0, 0.0), corner(1.0, 1.0)),
        (corner(1.0, 1.0), corner(1.0, 2.0)),
        (corner(0.0, 2.0), corner(1.0, 2.0)),
        (corner(0.0, 1.0), corner(0.0, 2.0)),
        (corner(0.0, 0.0), corner(0.0, 1.0)),
        (corner(0.0, 1.0), corner(1.0, 1.0)),
    ];
    for (i, (a, b)) in lines.into_iter().enumerate() {
        let colour = if lit & (1 << i) == 0 { theme::LCD_GHOST } else { theme::LCD_INK };
        bar(painter, lean(a), lean(b), thick, colour);
    }
    if point {
        // In the middle of its gap: it must not melt into the strokes beside it.
        let at = pos2(cell.right() + 0.42 * POINT * cell.height(), cell.bottom() - 0.06 * cell.height());
        painter.circle_filled(at, (0.8 * thick).max(2.2 / painter.ctx().zoom_factor()), theme::LCD_INK);
    }
}

/// A segment: a bar with pointed ends.
fn bar(painter: &Painter, a: Pos2, b: Pos2, thick: f32, colour: Color32) {
    let along = (b - a).normalized();
    let across = Vec2::new(-along.y, along.x) * 0.5 * thick;
    let (a, b) = (a + along * 0.12 * thick, b - along * 0.12 * thick);
    let inset = along * 0.5 * thick;
    let outline = vec![a, a + inset + across, b - inset + across, b, b - inset - across, a + inset - across];
    painter.add(Shape::convex_polygon(outline, colour, Stroke::NONE));
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_character_a_display_can_show_has_its_own_shape() {
        let all = "0123456789L- ";
        let shapes: std::collections::BTreeSet<u8> = all.chars().map(|c| segments(c).unwrap()).collect();
        assert_eq!(shapes.len(), all.chars().count());
        assert_eq!(segments('x'), None);
    }
}
