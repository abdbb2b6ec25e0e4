//! A thing as it is built, and how it is put into the world.

use std::sync::Arc;

use bevy::light::NotShadowCaster;
use bevy::prelude::*;

use super::displays::{Display, Shows};
use super::materials::{Palette, Sculpt};
use super::moves::Moves;
use super::shapes::Geo;
use front::hands::Thing;

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
