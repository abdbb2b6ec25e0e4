//! What the pointer is on, and the outline round it.
//!
//! A ray against the triangles of what can be picked: some tens of thousand, and only when the pointer
//! moves or the picture does. Bevy's own picking does not know of docked panels; `ui.scene` does.

use std::sync::Arc;

use bevy::prelude::*;
use egui::Pos2;

use super::super::app::{Drawn, ShopRes, UiRes};
use super::super::hands::{self, Thing};
use super::super::prefs::Quality;
use super::build::{Picks, Shape};
use super::camera::{Lens, RoomEye};
use super::materials::Palette;
use super::shapes::Geo;

/// What the pointer is on in the room.
#[derive(Resource, Debug, Default)]
pub(super) struct Pointed {
    /// The thing.
    pub(super) thing: Option<Thing>,
    pointer: Option<Vec2>,
    /// Outlined things and their hulls.
    hulls: Vec<Entity>,
    outlined: Option<Thing>,
    /// What would be outlined, and for how many frames it has been that.
    next: (Option<Thing>, u32),
    round: u64,
}

/// Frames for which something is pointed at before it is outlined where a processor draws the room: whoever
/// types into a list or runs across the picture does not wait for outlines that are gone at once.
const BEFORE_OUTLINE: u32 = 5;

/// The hull that makes an outline.
#[derive(Component, Clone, Copy, Debug)]
pub(super) struct Hull;

/// Distance along a ray to a triangle mesh, if it is hit.
#[must_use]
pub(super) fn hit(geo: &Geo, origin: Vec3, way: Vec3) -> Option<f32> {
    let (lo, hi) = geo.bounds();
    let inverse = Vec3::ONE / way;
    let (a, b) = ((lo - origin) * inverse, (hi - origin) * inverse);
    let (near, far) = (a.min(b).max_element(), a.max(b).min_element());
    if far < near.max(0.0) {
        return None;
    }
    let at = |i: u32| geo.positions[i as usize];
    geo.indices
        .chunks_exact(3)
        .filter_map(|t| triangle(at(t[0]), at(t[1]), at(t[2]), origin, way))
        .min_by(f32::total_cmp)
}

/// Möller and Trumbore.
fn triangle(a: Vec3, b: Vec3, c: Vec3, origin: Vec3, way: Vec3) -> Option<f32> {
    let (e1, e2) = (b - a, c - a);
    let p = way.cross(e2);
    let det = e1.dot(p);
    if det.abs() < 1e-12 {
        return None;
    }
    let t = origin - a;
    let u = t.dot(p) / det;
    let q = t.cross(e1);
    let v = way.dot(q) / det;
    let far = e2.dot(q) / det;
    (0.0 <= u && 0.0 <= v && u + v <= 1.0 && 0.0 < far).then_some(far)
}

/// Finds what the pointer is on; a click opens its menu. A hotspot under the pointer goes first.
pub(super) fn point(
    shop: Res<ShopRes>,
    mut ui: ResMut<UiRes>,
    eye: Res<RoomEye>,
    mut pointed: ResMut<Pointed>,
    windows: Query<&Window>,
    all: Query<(&Picks, &Shape, &GlobalTransform)>,
) {
    let ui = &mut ui.0;
    let pressed = std::mem::take(&mut ui.hotspots.pressed);
    let pointer = windows.iter().next().and_then(Window::cursor_position);
    let scene = ui.scene.filter(|_| ui.menu.is_none() && ui.hotspots.pointer && !ui.hotspots.hit);
    let here = pointer.map(|p| Pos2::new(p.x, p.y) / ui.prefs.scale);
    let (Some(scene), Some(here)) = (scene, here) else {
        (pointed.thing, pointed.pointer, ui.hotspots.pointed) = (None, None, None);
        return;
    };
    if !scene.contains(here) {
        (pointed.thing, pointed.pointer, ui.hotspots.pointed) = (None, None, None);
        return;
    }
    if pointed.pointer != pointer || pressed {
        pointed.pointer = pointer;
        let lens = Lens::new(&eye.now, eye.fov(scene.width() / scene.height().max(1.0)), scene);
        let (origin, way) = (eye.now.place(), lens.beyond(&eye.now, here));
        let hits = all.iter().filter_map(|(picks, shape, at)| {
            let back = at.affine().inverse();
            let far = hit(&shape.0, back.transform_point3(origin), back.transform_vector3(way))?;
            Some((far, picks.0))
        });
        pointed.thing = hits.min_by(|a, b| a.0.total_cmp(&b.0)).map(|(_, t)| t);
    }
    ui.hotspots.pointed = pointed.thing.map(|thing| (thing, here));
    let Some(thing) = pointed.thing else { return };
    if pressed && !hands::offers(&shop.0, ui.carrying.as_ref(), thing).is_empty() {
        ui.open_menu(thing, here);
    }
}

/// Draws the outline round what is hovered or has its menu open.
pub(super) fn outline(
    mut commands: Commands,
    ui: Res<UiRes>,
    room: Res<super::Room>,
    palette: Res<Palette>,
    mut pointed: ResMut<Pointed>,
    mut meshes: ResMut<Assets<Mesh>>,
    drawn: Res<Drawn>,
    all: Query<(Entity, &Picks, &Shape)>,
) {
    let ui = &ui.0;
    let wanted = ui.menu.as_ref().map(|m| m.thing).or(ui.hover).or(pointed.thing);
    if pointed.outlined == wanted && pointed.round == room.round {
        pointed.next = (wanted, 0);
        return;
    }
    pointed.next = if pointed.next.0 == wanted { (wanted, pointed.next.1 + 1) } else { (wanted, 0) };
    if drawn.0 == Quality::Low && pointed.round == room.round && pointed.next.1 < BEFORE_OUTLINE {
        return;
    }
    // The hulls of things that were built anew have gone with them.
    for hull in pointed.hulls.drain(..) {
        if let Ok(mut entity) = commands.get_entity(hull) {
            entity.try_despawn();
        }
    }
    (pointed.outlined, pointed.round) = (wanted, room.round);
    let Some(wanted) = wanted.filter(|t| *t != Thing::Car) else { return };
    for (entity, picks, shape) in &all {
        if picks.0 != wanted {
            continue;
        }
        let hull = commands
            .spawn((
                Mesh3d(meshes.add(Arc::as_ref(&shape.0).hull(0.0035).mesh())),
                MeshMaterial3d(palette.outline.clone()),
                bevy::light::NotShadowCaster,
                Hull,
                ChildOf(entity),
            ))
            .id();
        pointed.hulls.push(hull);
    }
}
