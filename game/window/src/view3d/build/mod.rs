//! Builds the room: what always stands there, and what the job brings (car parts, kit, spares).

pub(super) mod body;
pub(super) mod brake;
pub(super) mod electrics;
pub(super) mod engine;
pub(super) mod room;
pub(super) mod spares;
pub(super) mod tools;
pub(super) mod vacuum;

use std::sync::Arc;

use bevy::light::NotShadowCaster;
use bevy::prelude::*;

use super::displays::{Display, Shows};
use super::live::Moves;
use super::materials::{Mat, Palette, Sculpt};
use super::places;
use super::shapes::Geo;
use front::hands::{Thing, reach};
use front::prefs::PressureUnit;
use front::shop::Shop;

/// What a thing in the room is, to pick it.
#[derive(Component, Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Picks(pub(super) Thing);

/// Its shape, to pick and to outline it.
#[derive(Component, Clone, Debug)]
pub(super) struct Shape(pub(super) Arc<Geo>);

/// Brought by the job: goes when the job goes.
#[derive(Component, Debug)]
pub(super) struct OfJob;

/// The filament of the lamp with this card.
#[derive(Component, Debug)]
pub(super) struct Filament(pub(super) usize);

/// A thing as it is built.
#[derive(Clone, Debug, Default)]
pub(super) struct Made {
    /// What it is, if it can be picked.
    pub(super) thing: Option<Thing>,
    /// Where it stands.
    pub(super) home: Transform,
    /// Its shapes.
    pub(super) sculpt: Sculpt,
    /// How it moves.
    pub(super) moves: Option<Moves>,
    /// Parts of it that move by themselves; their places are against its own.
    pub(super) parts: Vec<Made>,
    /// It is the lamp's filament (card).
    pub(super) filament: Option<usize>,
    /// It is the digits of a display.
    pub(super) display: Option<Display>,
    /// The sun passes it (walls of the room).
    pub(super) shadowless: bool,
}

impl Made {
    /// Scenery: nothing to pick.
    pub(super) fn scenery(sculpt: Sculpt) -> Self {
        Self { sculpt, ..Self::default() }
    }

    /// A thing to pick, standing at `home`.
    pub(super) fn of(thing: Thing, home: Transform, sculpt: Sculpt) -> Self {
        Self { thing: Some(thing), home, sculpt, ..Self::default() }
    }

    /// The same thing, moving.
    pub(super) fn moving(self, moves: Moves) -> Self {
        Self { moves: Some(moves), ..self }
    }

    /// Triangles in all.
    #[cfg(test)]
    pub(super) fn triangles(&self) -> usize {
        let own: usize = self.sculpt.made_of.iter().map(|(_, g)| g.triangles()).sum();
        own + self.parts.iter().map(Self::triangles).sum::<usize>()
    }
}

/// Everything that always stands in the room.
#[must_use]
pub(super) fn standing() -> Vec<Made> {
    let mut out = room::all();
    out.extend(body::all());
    out
}

/// Everything that the open job brings.
#[must_use]
pub(super) fn of_job(shop: &Shop, unit: PressureUnit) -> Vec<Made> {
    let (Some(car), Some(session)) = (shop.car(), shop.session()) else { return Vec::new() };
    let setup = session.workshop().setup();
    let mut out = Vec::new();
    for (i, part) in car.assembly.parts.iter().enumerate() {
        let thing = Thing::Part(i as u16);
        let moves = Moves::Part(i as u16);
        let made = match part.id.as_str() {
            "booster" => brake::booster(),
            "tee" => vacuum::tee(),
            "switch" => vacuum::switch(),
            "valve_m" => vacuum::valve(places::TEE - Vec3::X * 0.215, -Vec3::X),
            "valve_p" => {
                let way = places::TEE_PUMP.normalize();
                vacuum::valve(places::TEE + way * 0.23, way)
            }
            "pump" => vacuum::pump(),
            "engine" => engine::engine(),
            "battery" => electrics::battery(),
            "fuse" => electrics::fuse(),
            "relay" => electrics::relay(),
            "key" => electrics::lock(),
            "body" => body::earth_points(),
            _ if reach::is_line(&part.kind) => continue,
            _ => {
                let mut s = Sculpt::default();
                s.add(Mat::GreyNylon, super::shapes::bevel_box(0.08, 0.06, 0.06, 0.006));
                s
            }
        };
        let moves = match part.id.as_str() {
            "engine" => Moves::Engine,
            "pump" => Moves::Pump(i as u16),
            "fuse" | "relay" => Moves::PlugIn(i as u16),
            _ => moves,
        };
        out.push(Made::of(thing, Transform::IDENTITY, made).moving(moves));
    }
    for (i, cover) in car.covers.iter().enumerate() {
        let sculpt = match cover.id.as_str() {
            "scuttle" => body::scuttle(),
            _ => body::splash_guard(),
        };
        let home = places::cover(&cover.id, false);
        out.push(Made::of(Thing::Cover(i as u16), home, sculpt).moving(Moves::Cover(i as u16)));
    }
    out.push(brake::pedal());
    out.push(brake::accelerator());
    out.push(electrics::key());
    let mut fixed = electrics::fuse_box_case();
    fixed.join(&electrics::lock_marks(), Transform::IDENTITY);
    out.push(Made::scenery(fixed));
    out.extend(room::chocks());
    out.extend(room::extraction());
    out.extend(room::papers());
    out.extend(tools::kit(&setup.kit, unit));
    out.extend(spares::shelf(car, &setup.spares));
    out
}

/// Puts a thing into the world.
pub(super) fn spawn(
    commands: &mut Commands,
    meshes: &mut Assets<Mesh>,
    palette: &Palette,
    made: &Made,
    job: bool,
) -> Entity {
    let mut root = commands.spawn((made.home, Visibility::default()));
    if let Some(thing) = made.thing {
        root.insert((Picks(thing), Shape(Arc::new(made.sculpt.whole()))));
    }
    if let Some(moves) = made.moves {
        root.insert(moves);
    }
    if job {
        root.insert(OfJob);
    }
    let root = root.id();
    for (mat, geo) in &made.sculpt.made_of {
        let mut child =
            commands.spawn((Mesh3d(meshes.add(geo.mesh())), MeshMaterial3d(palette.of(*mat)), ChildOf(root)));
        if made.shadowless {
            child.insert(NotShadowCaster);
        }
        if let Some(card) = made.filament {
            child.insert(Filament(card));
        }
        if let Some(display) = made.display {
            child.insert((display, Shows::default(), Visibility::Hidden));
        }
    }
    for part in &made.parts {
        let child = spawn(commands, meshes, palette, part, false);
        commands.entity(child).insert(ChildOf(root));
    }
    root
}
