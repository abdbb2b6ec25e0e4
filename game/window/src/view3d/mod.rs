//! The room in three dimensions: shapes made in code, moved by what can be seen in the workshop.
//!
//! [`stands`] says where the car stands (from its file, or by [`plain`]), [`places`] where the workshop's own things
//! do, [`layout`] where everything is now, `build` and [`hoses`] what they look
//! like, [`live`] how they move, [`displays`] their digits, [`camera`] from where one sees them, [`anchors`] where that is on the
//! screen, [`pick`] what the pointer is on, [`silhouette`] its outline, [`picture`] when it is drawn. No state of the simulation is kept here.

// A kind of part or instrument that is forgotten must not compile.
#![cfg_attr(not(test), deny(clippy::wildcard_enum_match_arm))]

mod anchors;
mod build;
mod built;
mod camera;
mod clamp;
mod displays;
mod figures;
mod hoses;
mod layout;
mod light;
mod live;
mod made;
mod materials;
mod mouth;
mod moves;
mod pick;
pub(super) mod picture;
mod places;
mod plain;
mod shapes;
mod silhouette;
mod sky;
mod stands;
#[cfg(test)]
mod tests;

use bevy::prelude::*;
use sim_core::action::Station;

use super::marks::RoomMarks;
use super::renderer::Frame;
use super::resources::{ShopRes, UiRes};
use built::Room;
use camera::{Lens, RoomEye};
use front::shop::Shop;
use layout::{Layout, Seen};
use made::OfJob;
use materials::Palette;
use moves::{Home, Moves};
use stands::Stands;

/// How far a mark is from its thing at least when a line ties it to it, points.
const TIED: f32 = 11.0;

/// Lines, plugs, clamps: built anew when a joint changes.
#[derive(Component, Debug)]
struct FollowsJoints;

/// Adds the room.
pub(super) fn plugin(app: &mut App) {
    app.init_resource::<Room>()
        .init_resource::<RoomEye>()
        .init_resource::<pick::Pointed>()
        .init_resource::<picture::Picture>()
        .add_systems(Startup, (stand, light::sun))
        .add_systems(
            Update,
            (
                light::dress_camera,
                bring,
                joints,
                remember_homes,
                live::follow,
                live::glow,
                displays::show,
                camera::follow,
                pick::point,
                pick::outline,
                pick::outline_over,
                // Before the shadows are made ready, and after everything that moves.
                picture::fit,
                picture::rest,
            )
                .chain(),
        )
        .add_systems(Last, anchor);
}

fn stand(
    mut commands: Commands,
    mut meshes: ResMut<Assets<Mesh>>,
    mut materials: ResMut<Assets<StandardMaterial>>,
) {
    let palette = Palette::new(&mut materials);
    for made in build::standing() {
        made::spawn(&mut commands, &mut meshes, &palette, &made, false);
    }
    commands.insert_resource(palette);
}

/// Builds what the open job brings, and clears away what the last one brought.
fn bring(
    mut commands: Commands,
    shop: Res<ShopRes>,
    mut ui: ResMut<UiRes>,
    mut room: ResMut<Room>,
    mut meshes: ResMut<Assets<Mesh>>,
    palette: Res<Palette>,
    old: Query<Entity, (With<OfJob>, Without<ChildOf>)>,
    (frame, mut picture): (Res<Frame>, ResMut<picture::Picture>),
) {
    let unit = ui.0.prefs.pressure;
    let of = shop.0.job().map(|job| (job.car.id.clone(), job.id.clone(), unit));
    if room.of == of {
        return;
    }
    for entity in &old {
        commands.entity(entity).despawn();
    }
    room.of = of;
    room.seen = None;
    room.round += 1;
    picture.begin_anew(*frame);
    room.stands = None;
    let Some(car) = shop.0.car() else { return };
    let (stands, placing) = plain::stands(shop.0.library(), car);
    ui.0.room_placing = placing;
    let stands = room.stands.insert(stands);
    for made in build::of_job(&shop.0, stands, unit) {
        made::spawn(&mut commands, &mut meshes, &palette, &made, true);
    }
}

/// Lays hoses, wires and leads anew when a joint, a stop or an instrument has changed.
fn joints(
    mut commands: Commands,
    shop: Res<ShopRes>,
    mut room: ResMut<Room>,
    mut meshes: ResMut<Assets<Mesh>>,
    palette: Res<Palette>,
    old: Query<Entity, With<FollowsJoints>>,
) {
    let (Some(car), Some(view), Some(session)) = (shop.0.car(), shop.0.view(), shop.0.session()) else {
        return;
    };
    let seen = Seen::of(view);
    if room.seen.as_ref() == Some(&seen) {
        return;
    }
    for entity in &old {
        commands.entity(entity).despawn();
    }
    let kit = &session.workshop().setup().kit;
    let Some(stands) = &room.stands else { return };
    let layout = Layout::of(car, stands, kit, &seen);
    let lines = hoses::all(car, kit, view, (stands, &layout));
    room.layout = layout;
    room.seen = Some(seen);
    room.round += 1;
    for made in lines {
        let entity = made::spawn(&mut commands, &mut meshes, &palette, &made, true);
        commands.entity(entity).insert(FollowsJoints);
    }
}

/// What moves remembers where it stood when it was built.
fn remember_homes(mut commands: Commands, new: Query<(Entity, &Transform), (Added<Moves>, Without<Home>)>) {
    for (entity, transform) in &new {
        commands.entity(entity).insert(Home(*transform));
    }
}

/// Writes where things are on the screen, for hotspots, menus and the tray.
fn anchor(shop: Res<ShopRes>, room: Res<Room>, eye: Res<RoomEye>, mut ui: ResMut<UiRes>) {
    let ui = &mut ui.0;
    let marks = ui.scene.and_then(|scene| {
        let fov = eye.fov(scene.width() / scene.height().max(1.0));
        let apart = anchors::apart(ui.prefs.scale);
        marks(
            &shop.0,
            (room.stands.as_ref()?, &room.layout),
            ui.eye,
            &Lens::new(&eye.now, fov, scene),
            scene,
            apart,
        )
    });
    ui.marks.set_room(marks);
}

/// Where the things of a station are in a picture of the room; `None` when there is no car to look at.
/// Marks stand at least `apart` points from each other.
fn marks(
    shop: &Shop,
    (stands, layout): (&Stands, &Layout),
    at: Station,
    lens: &Lens,
    scene: egui::Rect,
    apart: f32,
) -> Option<RoomMarks> {
    let (car, view, session) = (shop.car()?, shop.view()?, shop.session()?);
    if layout.middles.len() != car.assembly.parts.len() {
        return None;
    }
    let setup = session.workshop().setup();
    let things = anchors::things(at, car, &setup.kit, &setup.spares, view, (stands, layout));
    let spots = anchors::spread(&things, lens, scene, apart);
    // A mark that had to move aside is tied to its thing.
    let homes = things.iter().filter_map(|(thing, place)| Some((*thing, lens.see(*place)?)));
    let homes =
        homes.filter(|(thing, home)| spots.get(thing).is_some_and(|at| TIED < at.distance(*home))).collect();
    Some(RoomMarks { at, scene, spots, homes })
}
