//! A refusal says why, there: a small note at the place where the hands were, until it is put away or
//! something else is done.

use egui::{Id, Order, Pos2, Rect, RichText, WidgetInfo, WidgetType};

use super::super::super::state::Ui;
use super::super::super::theme;
use super::state::Note;
use front::shop::{RemarkKind, Shop};
use front::words::Words;

/// Widest a note gets, points.
const WIDTH: f32 = 300.0;

fn steps(shop: &Shop) -> usize {
    shop.session().map_or(0, |s| s.attempt().steps.len())
}

/// Looks whether what was asked for was refused.
pub(super) fn settle(shop: &Shop, ui: &mut Ui) {
    // As long as it is still on the list it has not been carried out.
    if !ui.asks.is_empty() {
        return;
    }
    if let Some(waiting) = ui.menus.waiting.take() {
        let refused = shop
            .remarks()
            .iter()
            .rev()
            .take_while(|r| waiting.after < r.n)
            .find(|r| r.kind == RemarkKind::Refused);
        if let Some(refusal) = refused {
            if waiting.carry.is_some() {
                ui.carrying = waiting.carry;
            }
            let told = refusal.told.clone();
            ui.menus.note = Some(Note { thing: waiting.thing, at: waiting.at, told, steps: steps(shop) });
        }
    }
    if ui.menus.note.as_ref().is_some_and(|n| n.steps != steps(shop)) {
        ui.menus.note = None;
    }
}

/// Shows the note, if there is one.
pub(super) fn show(ctx: &egui::Context, shop: &Shop, words: &Words, ui: &mut Ui) {
    let Some(note) = &ui.menus.note else { return };
    // The room may have turned since.
    let at = ui.marks.get(note.thing).unwrap_or(note.at);
    let mut gone = false;
    let (pos, pivot, width) = super::beside(ctx.content_rect(), at, WIDTH);
    egui::Area::new("refusal".into()).order(Order::Foreground).fixed_pos(pos).pivot(pivot).show(
        ctx,
        |area| {
            let frame = egui::Frame::menu(area.style())
                .fill(theme::PAPER)
                .stroke(egui::Stroke::new(2.0, theme::REFUSED));
            frame.show(area, |inner| {
                inner.set_max_width(width);
                inner.horizontal_top(|row| {
                    let text =
                        words.say_with("remark-refused", &[("text", words.told(shop, &note.told).into())]);
                    let close = egui::Button::new("×").min_size(egui::Vec2::splat(theme::TARGET));
                    row.allocate_ui(egui::vec2(width - theme::TARGET - 20.0, 0.0), |left| {
                        let label =
                            left.add(egui::Label::new(RichText::new(text).color(theme::REFUSED)).wrap());
                        left.ctx().accesskit_node_builder(label.id, |node| {
                            node.set_live(egui::accesskit::Live::Assertive);
                        });
                    });
                    let close = row.add(close);
                    let name = words.say("note-dismiss");
                    close.widget_info(|| WidgetInfo::labeled(WidgetType::Button, true, &name));
                    gone = close.clicked();
                });
            });
        },
    );
    mark(ctx, at);
    if gone {
        ui.menus.note = None;
    }
}

/// A ring round the place, so that the note is seen to belong there.
fn mark(ctx: &egui::Context, at: Pos2) {
    let layer = egui::LayerId::new(Order::Middle, Id::new("refusal-mark"));
    let rect = Rect::from_center_size(at, egui::Vec2::splat(theme::TARGET + 6.0));
    let painter = ctx.layer_painter(layer);
    painter.circle_stroke(rect.center(), 0.5 * rect.width(), egui::Stroke::new(2.0, theme::CAUTION));
    painter.circle_stroke(rect.center(), 0.5 * rect.width() + 1.5, egui::Stroke::new(1.5, theme::REFUSED));
}
