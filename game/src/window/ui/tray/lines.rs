//! What the tray draws over the room, a thin line from each instrument to where its ends are; and the strip
//! that says what is in the hand.

use egui::{Id, LayerId, Order, Painter, Pos2, RichText, Shape, Stroke, vec2};

use super::super::super::hands::{self, Carry, Thing};
use super::super::super::shop::Shop;
use super::super::super::state::{Middle, Ui};
use super::super::super::theme;
use super::super::super::words::Words;

/// Draws the lines; after the room and the diagram have said where things are.
pub fn over_the_room(root: &egui::Ui, shop: &Shop, ui: &Ui) {
    leads(root, shop, ui);
}

/// Shows what is in the hand, if anything is. It takes its place from room and diagram and covers nothing: the
/// next end may go anywhere in them.
pub fn in_the_hand(root: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    let Some(carry) = ui.carrying.clone() else { return };
    strip(root, shop, words, ui, &carry);
    ui.tray.middle = Some(root.available_rect_before_wrap());
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
            if let Some(to) = ui.anchors.get(&Thing::Instrument(*card)).filter(|_| marked) {
                lead(&painter, Pos2::new(rect.center().x, middle.bottom().min(rect.top())), *to);
            }
            continue;
        }
        let n = seen.at.len();
        for (i, (_, at)) in seen.at.iter().enumerate() {
            let to = hands::place(shop, at).and_then(|thing| ui.anchors.get(&thing));
            let Some(to) = to else { continue };
            if !marked {
                // The room shows the instrument with its own hose and leads: a line more would only cross it.
                ring(&painter, *to, 5.0);
                continue;
            }
            // Two leads leave the card side by side.
            let share = (i as f32 + 1.0) / (n as f32 + 1.0);
            let from = Pos2::new(rect.left() + share * rect.width().min(180.0), rect.top());
            // Inside the tray it is only hinted at, so that it crosses no words.
            let edge = Pos2::new(from.x, ui.tray.middle.map_or(from.y, |m| m.bottom().min(from.y)));
            all.line_segment([from, edge], Stroke::new(1.0, theme::ACCENT_ON_DARK.gamma_multiply(0.4)));
            lead(&painter, edge, *to);
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

/// What is in the hand, which end comes next, and how to put it back.
fn strip(root: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui, carry: &Carry) {
    let name = words.name(shop, Thing::Instrument(carry.card));
    let end = carry.left.first().map_or("", String::as_str);
    let end_name = words.say_or(&format!("lead-{end}"), end);
    let place = words.say_or(&format!("place-{end}"), "");
    let mut text = words.say_with("carry-what", &[("name", name.into()), ("end", end_name.into())]);
    if let Some((placed, at)) = carry.placed.last() {
        let at = hands::place(shop, at).map_or_else(|| at.clone(), |t| words.name(shop, t));
        let placed = words.say_or(&format!("lead-{placed}"), placed);
        text = format!(
            "{} {text}",
            words.say_with("carry-placed", &[("end", placed.into()), ("at", at.into())])
        );
    }
    let mut back = false;
    let frame = egui::Frame::new().fill(theme::ACCENT).inner_margin(egui::Margin::symmetric(12, 4));
    egui::Panel::top("in-hand").frame(frame).resizable(false).show(root, |inner| {
        inner.horizontal_wrapped(|row| {
            let label = row.label(RichText::new(text).strong().color(theme::ON_BENCH));
            row.ctx().accesskit_node_builder(label.id, |node| {
                node.set_live(egui::accesskit::Live::Polite);
            });
            row.label(RichText::new(place).color(theme::ON_BENCH));
            if row.button(words.say("carry-find")).clicked() {
                ui.pages.open_find();
            }
            back = row.button(words.say("carry-back")).clicked();
        });
    });
    if back {
        ui.carrying = None;
    }
}
