//! What can be picked in the room, as widgets over the picture: each a name for screen readers, a place in
//! the focus order, and at least 24 px to hit. The room writes where things are; here they become things
//! one can click, focus and hear the name of.
//!
//! The marks are small and quiet until they are pointed at. Air and current are told apart by shape: a
//! ring for a fitting, a square for a terminal.

pub mod state;

use egui::{
    Color32, FontId, Pos2, Rect, Response, Sense, Shape, Stroke, StrokeKind, Vec2, WidgetInfo, WidgetType,
    vec2,
};
use sim_core::parts::Domain;

use super::super::state::Ui;
use super::super::theme;
use front::hands::Thing;
use front::shop::Shop;
use front::words::Words;

/// Rim of the marks: dark enough to be seen on light paint and on a white wall (looked at, not computed).
const RIM: Color32 = Color32::from_rgba_premultiplied(0, 0, 0, 165);
/// Half the size of a port's mark, points.
const MARK: f32 = 5.0;
/// The same when it is pointed at or has the focus.
const MARK_ON: f32 = 12.0;

/// Shows a hotspot at each anchor inside the scene.
pub fn show(root: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    let Some(scene) = ui.scene else { return };
    let ctx = root.ctx().clone();
    let pointer = ctx.pointer_hover_pos().filter(|p| scene.contains(*p));
    ui.hotspots.pointer = !ui.pages.is_open()
        && pointer.is_none_or(|p| ctx.layer_id_at(p).is_none_or(|layer| layer == root.layer_id()));
    ui.hotspots.keys = ui.menu.is_none() && !ui.pages.is_open() && ctx.memory(|m| m.focused().is_none());
    ui.hotspots.hit = false;
    // Only what was drawn for this station and this cut of the window is there.
    let room = ui.marks.room(scene).cloned();
    let (spots, homes) = room.map(|room| (room.spots, room.homes)).unwrap_or_default();
    let mut told: Option<(Thing, Pos2)> = None;
    let painter = root.painter().with_clip_rect(scene);
    for line in &ui.outline {
        painter.add(Shape::closed_line(line.clone(), Stroke::new(4.0, RIM)));
        painter.add(Shape::closed_line(line.clone(), Stroke::new(2.0, theme::ACCENT_ON_DARK)));
    }
    for (thing, home) in homes.iter().filter(|_| !ui.hotspots.glides) {
        if let Some(at) = spots.get(thing) {
            let line = [*at + (*home - *at).normalized() * (MARK + 1.0), *home];
            painter.line_segment(line, Stroke::new(2.6, RIM));
            painter.line_segment(line, Stroke::new(1.0, theme::ON_BENCH));
        }
    }
    // Marks stand closer where everything is shown larger, never closer than 24 px.
    let target = theme::TARGET / ui.prefs.scale.max(1.0).powf(0.6);
    for (thing, at) in spots.iter().map(|(thing, at)| (*thing, *at)) {
        let rect = Rect::from_center_size(at, Vec2::splat(target));
        if !scene.contains_rect(rect) {
            continue;
        }
        let response = root.interact(rect, root.id().with(("hotspot", thing)), Sense::click());
        let name = words.name(shop, thing);
        response.widget_info(|| WidgetInfo::labeled(WidgetType::Button, true, &name));
        let on = response.hovered() || response.has_focus();
        ui.hotspots.hit |= response.hovered();
        mark(root, shop, thing, at, on);
        if on {
            ui.hover = Some(thing);
            told = Some((thing, at));
        }
        if clicked(&response) {
            ui.open_menu(thing, at);
        }
    }
    ui.hotspots.pressed = pointer.is_some() && !ui.hotspots.hit && ctx.input(|i| i.pointer.primary_pressed());
    if told.is_none()
        && let Some((thing, at)) = ui.hotspots.pointed
        && ui.menu.is_none()
    {
        ui.hover = Some(thing);
        let at = spots.get(&thing).copied().filter(|p| scene.contains(*p)).unwrap_or(at + vec2(0.0, -6.0));
        told = Some((thing, at));
    }
    if ui.hotspots.names && ui.menu.is_none() && !ui.hotspots.glides {
        let told = told.map(|(thing, _)| thing);
        names(root, scene, shop, words, &spots, told);
    }
    if let Some((thing, at)) = told.filter(|_| ui.menu.is_none()) {
        name_tag(root, scene, at, &called(shop, words, thing));
    }
    let all = egui::Button::new(words.say("room-names")).selected(ui.hotspots.names);
    let size = vec2(0.0, theme::TARGET);
    let corner = Rect::from_min_size(scene.min + vec2(8.0, 6.0), vec2(90.0, theme::TARGET));
    let mut inner = root.new_child(egui::UiBuilder::new().max_rect(corner));
    let button = inner.add(all.min_size(size)).on_hover_text(words.say("tip-names"));
    if button.clicked() {
        ui.hotspots.names = !ui.hotspots.names;
    }
    legend(root, words, button.rect.right_center() + vec2(8.0, 0.0));
}

/// What the three kinds of marks stand for, in a line that begins at `at`.
fn legend(root: &egui::Ui, words: &Words, at: Pos2) {
    let painter = root.painter();
    let kinds = [(Kind::Air, "legend-air"), (Kind::Wire, "legend-wire"), (Kind::Body, "legend-part")];
    let texts = kinds.map(|(kind, key)| {
        (kind, painter.layout_no_wrap(words.say(key), FontId::proportional(13.0), theme::ON_BENCH))
    });
    let wide: f32 = texts.iter().map(|(_, text)| text.size().x + 32.0).sum();
    let back = Rect::from_min_size(at - vec2(0.0, 12.0), vec2(wide + 4.0, 24.0));
    painter.rect_filled(back, 3.0, theme::BENCH);
    let mut x = at.x + 14.0;
    for (kind, text) in texts {
        draw_mark(painter, kind, Pos2::new(x, at.y), false);
        let width = text.size().x;
        painter.galley(Pos2::new(x + 10.0, at.y - text.size().y * 0.5), text, theme::ON_BENCH);
        x += width + 32.0;
    }
}

/// Widths of a name beside its thing, points, the one that is tried first in front; and size of its letters.
const NAME_WIDE: [f32; 2] = [152.0, 76.0];
const NAME_SIZE: f32 = 12.5;

/// What a thing is called in the room: a spare with the number on its shelf.
fn called(shop: &Shop, words: &Words, thing: Thing) -> String {
    let name = words.name(shop, thing);
    match thing {
        Thing::Spare(i) => format!("{} · {name}", i + 1),
        _ => name,
    }
}

/// The names of parts, tools and spares beside their marks, as many as have room; those of ports are told
/// when they are pointed at.
fn names(
    root: &egui::Ui,
    scene: Rect,
    shop: &Shop,
    words: &Words,
    anchors: &std::collections::BTreeMap<Thing, Pos2>,
    told: Option<Thing>,
) {
    let painter = root.painter().with_clip_rect(scene);
    let marks: Vec<Rect> =
        anchors.values().map(|p| Rect::from_center_size(*p, Vec2::splat(MARK * 2.0 + 4.0))).collect();
    let mut taken: Vec<Rect> = Vec::new();
    for (thing, at) in anchors {
        if matches!(thing, Thing::Port(_) | Thing::Joint(_)) || told == Some(*thing) || !scene.contains(*at) {
            continue;
        }
        let free = |rect: &Rect| {
            scene.contains_rect(*rect)
                && taken.iter().all(|t| !t.intersects(*rect))
                && marks.iter().all(|m| !m.intersects(*rect))
        };
        // In one line where there is room, else narrower and higher.
        let placed = NAME_WIDE.into_iter().find_map(|wide| {
            let font = FontId::proportional(NAME_SIZE);
            let name = called(shop, words, *thing);
            let word = |w: &str| painter.layout_no_wrap(w.to_owned(), font.clone(), theme::ON_BENCH).size().x;
            // No word is broken.
            if name.split(' ').any(|w| wide < word(w)) {
                return None;
            }
            let text = painter.layout(name, font.clone(), theme::ON_BENCH, wide);
            let size = text.size() + vec2(8.0, 4.0);
            let (dx, dy) = (size.x * 0.5, size.y * 0.5);
            let gap = MARK + 4.0;
            let tries = [
                vec2(0.0, gap + dy),
                vec2(gap + dx, 0.0),
                vec2(-gap - dx, 0.0),
                vec2(0.0, -gap - dy),
                vec2(gap + dx, gap + dy),
                vec2(-gap - dx, gap + dy),
                vec2(gap + dx, -gap - dy),
                vec2(-gap - dx, -gap - dy),
            ];
            let rect = tries.iter().map(|d| Rect::from_center_size(*at + *d, size)).find(free);
            rect.map(|rect| (rect, text))
        });
        let Some((rect, text)) = placed else { continue };
        painter.rect_filled(rect, 2.0, theme::BENCH);
        painter.add(Shape::galley(rect.min + vec2(4.0, 2.0), text, Color32::PLACEHOLDER));
        taken.push(rect.expand(1.0));
    }
}

fn clicked(response: &Response) -> bool {
    // The right button turns the room.
    response.clicked_by(egui::PointerButton::Primary) || response.clicked()
}

/// What a mark marks.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Kind {
    /// A port for air.
    Air,
    /// A port for current.
    Wire,
    /// A body.
    Body,
}

/// The mark of a hotspot.
fn mark(root: &egui::Ui, shop: &Shop, thing: Thing, at: Pos2, on: bool) {
    let kind = match thing {
        Thing::Port(port) => match shop.car().map(|car| car.assembly.domain(port)) {
            Some(Domain::Electrical) => Kind::Wire,
            _ => Kind::Air,
        },
        _ => Kind::Body,
    };
    draw_mark(root.painter(), kind, at, on);
}

/// Dark rim, light line, so that it is seen on paint and on paper.
fn draw_mark(painter: &egui::Painter, kind: Kind, at: Pos2, on: bool) {
    let size = if on { MARK_ON } else { MARK };
    let strokes = if on {
        [Stroke::new(5.0, RIM), Stroke::new(2.5, theme::ACCENT_ON_DARK)]
    } else {
        [Stroke::new(3.4, RIM), Stroke::new(1.6, theme::ON_BENCH)]
    };
    match kind {
        Kind::Wire => {
            let rect = Rect::from_center_size(at, Vec2::splat(size * 1.8));
            for stroke in strokes {
                painter.rect_stroke(rect, 1.0, stroke, StrokeKind::Middle);
            }
        }
        Kind::Body if !on => {
            // A body wants no mark: one sees it. A dot says that it can be taken hold of.
            painter.circle_filled(at, 4.6, RIM);
            painter.circle_filled(at, 2.6, theme::ON_BENCH);
        }
        Kind::Air | Kind::Body => {
            for stroke in strokes {
                painter.circle_stroke(at, size, stroke);
            }
        }
    }
}

/// The name beside what is pointed at, inside the scene.
fn name_tag(root: &egui::Ui, scene: Rect, at: Pos2, name: &str) {
    let painter = root.painter();
    let wide = (scene.width() * 0.5).clamp(120.0, 380.0);
    let text = painter.layout(name.to_owned(), FontId::proportional(14.0), theme::ON_BENCH, wide);
    let size = text.size() + vec2(16.0, 8.0);
    let above = at.y - size.y - 18.0;
    let y = if scene.top() + 2.0 < above { above } else { at.y + 18.0 };
    let x = (at.x - size.x * 0.5)
        .clamp(scene.left() + 4.0, (scene.right() - size.x - 4.0).max(scene.left() + 4.0));
    let rect = Rect::from_min_size(Pos2::new(x, y), size);
    painter.rect(rect, 3.0, theme::BENCH, Stroke::new(1.0, theme::ACCENT_ON_DARK), StrokeKind::Inside);
    painter.add(Shape::galley(rect.min + vec2(8.0, 4.0), text, Color32::PLACEHOLDER));
}
