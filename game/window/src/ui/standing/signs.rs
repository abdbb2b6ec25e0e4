//! Small signs of the strip: key, engine, pump, pedal, cover, clamp, plug. Pump, clamp and plug are drawn as in
//! the line diagram.

use egui::{Color32, Painter, Pos2, Rect, Shape, Stroke, Vec2, pos2, vec2};

/// What a sign stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Sign {
    Key,
    Engine,
    Pump,
    Pedal,
    Cover,
    Clamp,
    Plug,
}

/// Side of the square a sign is drawn in, points.
pub(super) const SIDE: f32 = 20.0;

/// Draws a sign about `middle`. `on`: what it stands for is not at rest, and its shape says so too.
pub(super) fn draw(painter: &Painter, middle: Pos2, sign: Sign, ink: Color32, on: bool) {
    let stroke = Stroke::new(1.7, ink);
    let at = |x: f32, y: f32| middle + vec2(x, y);
    let line = |a: Pos2, b: Pos2| {
        painter.line_segment([a, b], stroke);
    };
    match sign {
        Sign::Key => {
            // Turned with the lock: upright when it is on.
            let turn = |v: Vec2| if on { vec2(-v.y, v.x) } else { v };
            let at = |x: f32, y: f32| middle + turn(vec2(x, y));
            painter.circle_stroke(at(-5.0, 0.0), 3.6, stroke);
            line(at(-1.4, 0.0), at(8.5, 0.0));
            line(at(8.0, 0.0), at(8.0, 3.6));
            line(at(4.6, 0.0), at(4.6, 2.8));
        }
        Sign::Engine => {
            let corners = [(-8.0, -2.0), (-4.0, -5.0), (5.0, -5.0), (8.0, -2.0), (8.0, 6.0), (-8.0, 6.0)];
            let corners = corners.map(|(x, y)| at(x, y)).to_vec();
            if on {
                painter.add(Shape::convex_polygon(corners, ink, stroke));
            } else {
                painter.add(Shape::closed_line(corners, stroke));
            }
            line(at(-2.5, -8.0), at(3.5, -8.0));
            line(at(0.5, -8.0), at(0.5, -5.0));
        }
        Sign::Pump => {
            painter.circle_stroke(middle, 8.0, stroke);
            let corners = vec![at(0.0, 7.0), at(-4.6, -0.5), at(4.6, -0.5)];
            if on {
                painter.add(Shape::convex_polygon(corners, ink, Stroke::NONE));
            } else {
                painter.add(Shape::closed_line(corners, stroke));
            }
        }
        Sign::Pedal => {
            let (top, pad) = (at(-6.0, -8.0), if on { at(6.0, 3.0) } else { at(3.0, 6.5) });
            line(top, pad);
            let along = (pad - top).normalized();
            let across = vec2(-along.y, along.x);
            painter.line_segment([pad - across * 5.0, pad + across * 5.0], Stroke::new(3.4, ink));
        }
        Sign::Cover => {
            painter.rect_stroke(
                Rect::from_min_max(at(-7.5, 0.0), at(7.5, 7.5)),
                0.0,
                stroke,
                egui::StrokeKind::Middle,
            );
            if on {
                line(at(-8.5, -3.0), at(6.0, -9.0));
            } else {
                line(at(-9.0, -3.0), at(9.0, -3.0));
            }
        }
        Sign::Clamp => {
            let gap = if on { 0.6 } else { 3.2 };
            line(at(-9.0, 0.0), at(9.0, 0.0));
            for side in [-1.0_f32, 1.0] {
                let tip = at(0.0, side * gap);
                let base = tip + vec2(0.0, side * 6.4);
                let corners = vec![tip, base + vec2(4.2, 0.0), base - vec2(4.2, 0.0)];
                if on {
                    painter.add(Shape::convex_polygon(corners, ink, Stroke::NONE));
                } else {
                    painter.add(Shape::closed_line(corners, stroke));
                }
            }
        }
        Sign::Plug => {
            let out = if on { 0.0 } else { 3.0 };
            line(at(-9.0, -4.0), at(-1.0, -4.0));
            line(at(-9.0, 4.0), at(-1.0, 4.0));
            let corners = vec![at(out, -6.0), at(out + 5.5, -4.0), at(out + 5.5, 4.0), at(out, 6.0)];
            if on {
                painter.add(Shape::convex_polygon(corners, ink, stroke));
            } else {
                painter.add(Shape::closed_line(corners, stroke));
            }
        }
    }
}

/// The square of a sign at the left edge of `rect`.
pub(super) fn place(rect: Rect) -> Pos2 {
    pos2(rect.left() + 5.0 + SIDE * 0.5, rect.center().y)
}
