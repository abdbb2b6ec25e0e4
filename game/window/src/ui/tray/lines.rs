//! What the tray draws over the room: a thin line from each instrument to where its ends are.

use egui::{Id, LayerId, Order, Painter, Pos2, Shape, Stroke, vec2};

use super::super::super::shown::Middle;
use super::super::super::state::Ui;
use super::super::super::theme;
use front::hands::{self, Thing};
use front::shop::Shop;

/// Draws the lines; after the room and the diagram have said where things are.
pub fn over_the_room(root: &egui::Ui, shop: &Shop, ui: &Ui) {
    leads(root, shop, ui);
}

/// A ring where each end in view is; a line to it from the card that is pointed at.
fn leads(root: &egui::Ui, shop: &Shop, ui: &Ui) {
    let Some(view) = shop.view() else { return };
    let layer = LayerId::new(Order::Background, Id::new("leads"));
    let all = root.ctx().layer_painter(layer);
    // Rings and lines belong to room and sheet: what lies beyond a panel's edge stays behind the panel.
    let middle = ui.tray.middle.unwrap_or(egui::Rect::NOTHING);
    let painter = all.with_clip_rect(middle);
    for (card, rect) in &ui.tray.cards {
        let Some(seen) = view.instruments.get(usize::from(*card)) else { continue };
        let marked = ui.hover == Some(Thing::Instrument(*card));
        if ui.middle == Middle::Diagram {
            // The sheet shows the instrument with its leads; here only which one it is, when asked.
            if let Some(to) = ui.marks.get(Thing::Instrument(*card)).filter(|_| marked) {
                lead(&painter, Pos2::new(rect.center().x, middle.bottom().min(rect.top())), to);
            }
            continue;
        }
        let n = seen.at.len();
        for (i, (_, at)) in seen.at.iter().enumerate() {
            let to = hands::place(shop, at).and_then(|thing| ui.marks.get(thing));
            let Some(to) = to else { continue };
            if !marked {
                // The room shows the instrument with its own hose and leads: a line more would only cross it.
                ring(&painter, to, 5.0);
                continue;
            }
            // Two leads leave the card side by side.
            let share = (i as f32 + 1.0) / (n as f32 + 1.0);
            let from = Pos2::new(rect.left() + share * rect.width().min(180.0), rect.top());
            // Inside the tray it is only hinted at, so that it crosses no words.
            let edge = Pos2::new(from.x, ui.tray.middle.map_or(from.y, |m| m.bottom().min(from.y)));
            all.line_segment([from, edge], Stroke::new(1.0, theme::ACCENT_ON_DARK.gamma_multiply(0.4)));
            lead(&painter, edge, to);
        }
    }
}

fn ring(painter: &Painter, at: Pos2, size: f32) {
    painter.circle_stroke(at, size, Stroke::new(4.0, theme::SHADOW));
    painter.circle_stroke(at, size, Stroke::new(2.0, theme::ACCENT_ON_DARK));
}

/// A sagging line with a ring at its end.
fn lead(painter: &Painter, from: Pos2, to: Pos2) {
    let rise = (from.y - to.y).abs().max(40.0);
    let points = [from, from - vec2(0.0, 0.55 * rise), to + vec2(0.0, 0.35 * rise), to];
    for (width, colour) in [(4.0, theme::SHADOW), (3.0, theme::ACCENT_ON_DARK)] {
        let curve = egui::epaint::CubicBezierShape::from_points_stroke(
            points,
            false,
            egui::Color32::TRANSPARENT,
            Stroke::new(width, colour),
        );
        painter.add(Shape::CubicBezier(curve));
    }
    ring(painter, to, 7.0);
}
