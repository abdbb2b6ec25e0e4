//! What the pointer is on, and the outline round it.
//!
//! A ray against the triangles of what can be picked: some tens of thousand, and only when the pointer
//! moves or the picture does. Bevy's own picking does not know of docked panels; `ui.scene` does.

use std::sync::Arc;

use bevy::prelude::*;
use egui::Pos2;

use super::super::resources::{Drawn, ShopRes, UiRes};
use super::super::state::Ui;
use super::built::Room;
use super::camera::{Lens, RoomEye};
use super::made::{Picks, Shape};
use super::materials::Palette;
use super::shapes::Geo;
use super::silhouette::{self, Asked};
use front::hands::{self, Thing};
use front::prefs::Quality;

/// What the pointer is on in the room.
#[derive(Resource, Debug, Default)]
pub(super) struct Pointed {
    /// The thing.
    pub(super) thing: Option<Thing>,
    pointer: Option<Vec2>,
    /// Outlined things and their hulls.
    hulls: Vec<Entity>,
    outlined: Option<Thing>,
    /// What the outline over the picture was last made for.
    asked: Option<(Thing, Asked)>,
    round: u64,
}

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

/// What is hovered or has its menu open; nobody needs an outline of the car.
fn wanted(ui: &Ui, pointed: &Pointed) -> Option<Thing> {
    let wanted = ui.menu.as_ref().map(|m| m.thing).or(ui.hover).or(pointed.thing);
    wanted.filter(|t| *t != Thing::Car)
}

/// The same outline as lines over the picture, where a processor draws the room.
pub(super) fn outline_over(
    mut ui: ResMut<UiRes>,
    eye: Res<RoomEye>,
    mut pointed: ResMut<Pointed>,
    drawn: Res<Drawn>,
    all: Query<(&Picks, &Shape, &GlobalTransform)>,
) {
    if drawn.0 != Quality::Low {
        return;
    }
    let ui = &mut ui.0;
    let (Some(scene), Some(wanted)) = (ui.scene, wanted(ui, &pointed)) else {
        (pointed.asked, ui.outline) = (None, Vec::new());
        return;
    };
    let shapes: Vec<_> = all.iter().filter(|(picks, ..)| picks.0 == wanted).collect();
    let fov = eye.fov(scene.width() / scene.height().max(1.0));
    let asked = Asked {
        places: shapes.iter().map(|(.., at)| at.affine()).collect(),
        eye: (eye.now.place(), eye.now.target, fov),
        scene,
    };
    let asked = Some((wanted, asked));
    if pointed.asked != asked {
        let shapes: Vec<_> = shapes.iter().map(|(_, shape, at)| (&*shape.0, at.affine())).collect();
        ui.outline = silhouette::outline(&shapes, &Lens::new(&eye.now, fov, scene), scene);
        pointed.asked = asked;
    }
}

/// Draws the outline round what is hovered or has its menu open.
pub(super) fn outline(
    mut commands: Commands,
    ui: Res<UiRes>,
    room: Res<Room>,
    palette: Res<Palette>,
    mut pointed: ResMut<Pointed>,
    mut meshes: ResMut<Assets<Mesh>>,
    drawn: Res<Drawn>,
    all: Query<(Entity, &Picks, &Shape)>,
) {
    let wanted = wanted(&ui.0, &pointed);
    if drawn.0 == Quality::Low || (pointed.outlined == wanted && pointed.round == room.round) {
        return;
    }
    // The hulls of things that were built anew have gone with them.
    for hull in pointed.hulls.drain(..) {
        if let Ok(mut entity) = commands.get_entity(hull) {
            entity.try_despawn();
        }
    }
    (pointed.outlined, pointed.round) = (wanted, room.round);
    let Some(wanted) = wanted else { return };
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
