//! What can be picked in the room, as widgets over the picture: each a name for screen readers, a place in
//! the focus order, and at least 24 px to hit. The room writes where things are; here they become things
//! one can click, focus and hear the name of.

use egui::{Pos2, Rect, Sense, Stroke, Vec2, WidgetInfo, WidgetType};

use super::super::hands::Thing;
use super::super::shop::Shop;
use super::super::state::Ui;
use super::super::theme;
use super::super::words::Words;

/// Shows a hotspot at each anchor inside the scene.
pub fn show(root: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    let Some(scene) = ui.scene else { return };
    let anchors: Vec<(Thing, Pos2)> = ui.anchors.iter().map(|(t, p)| (*t, *p)).collect();
    for (thing, at) in anchors {
        let rect = Rect::from_center_size(at, Vec2::splat(theme::TARGET));
        if !scene.contains_rect(rect) {
            continue;
        }
        let response = root.interact(rect, root.id().with(("hotspot", thing)), Sense::click());
        let name = words.name(shop, thing);
        response.widget_info(|| WidgetInfo::labeled(WidgetType::Button, true, &name));
        let marked = response.hovered() || response.has_focus();
        if marked {
            ui.hover = Some(thing);
            let stroke = Stroke::new(2.5, theme::ACCENT_ON_DARK);
            root.painter().circle_stroke(at, theme::TARGET * 0.5, stroke);
        } else if matches!(thing, Thing::Port(_)) {
            root.painter().circle(at, 4.0, theme::ACCENT_ON_DARK, Stroke::new(1.0, theme::INK));
        }
        if response.clicked() {
            ui.open_menu(thing, at);
        }
        if response.hovered() {
            response.on_hover_text_at_pointer(name);
        }
    }
}
