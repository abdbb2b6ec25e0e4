//! How things move, and by how much.

use std::f32::consts::TAU;

use bevy::prelude::*;
use sim_core::parts::instruments::MeterMode;
use sim_core::workshop::View;

/// Length of the pedal lever, m: travel at the pad over this is the angle.
pub(super) const PEDAL_ARM_M: f32 = 0.46;

/// Needle at the lower end of its scale, and how far it turns, rad.
pub(super) const NEEDLE_START: f32 = 2.356;
pub(super) const NEEDLE_SWEEP: f32 = 4.712;

/// How a thing moves.
#[derive(Component, Clone, Copy, Debug, PartialEq)]
pub(super) enum Moves {
    /// A part that may be laid aside.
    Part(u16),
    /// The vacuum pump: shakes while it runs.
    Pump(u16),
    /// The engine: trembles while it runs.
    Engine,
    /// A fuse or relay: lies beside its box when it is pulled.
    PlugIn(u16),
    /// A cover: on, or leant aside.
    Cover(u16),
    /// A chock (the front one or the rear one).
    Chock(bool),
    /// A hose of the exhaust extraction: the one that lies to the tail pipe (`true`) or the one on the hook.
    Extraction(bool),
    /// The brake pedal's lever.
    Pedal,
    /// The pedal's box: a child of the lever that does not turn with it.
    AgainstPedal,
    /// The accelerator.
    Accelerator,
    /// The ignition key.
    Key,
    /// The pointer of a meter's knob (card).
    Knob(usize),
    /// An instrument: on the board, or hung up near its ends.
    Instrument(usize),
    /// Hose and leads of an instrument as they hang on the board (card).
    OnBoard(usize),
    /// A needle.
    Needle {
        /// Card.
        card: usize,
        /// Lower end of its scale.
        min: f32,
        /// Upper end.
        max: f32,
    },
}

/// Where a thing stood when it was built.
#[derive(Component, Clone, Copy, Debug)]
pub(super) struct Home(pub(super) Transform);

/// Angle of the pedal lever about x, rad.
#[must_use]
pub(super) fn pedal_angle(view: &View) -> f32 {
    -(view.pedal_seen_mm as f32 * 1e-3 / PEDAL_ARM_M)
}

/// Angle of a needle about z, rad.
#[must_use]
pub(super) fn needle_angle(value: f32, min: f32, max: f32) -> f32 {
    // A pin at both ends of the scale stops it a little beyond.
    let share = ((value - min) / (max - min)).clamp(-0.03, 1.03);
    NEEDLE_START - NEEDLE_SWEEP * share
}

/// Where a meter's knob points, rad anticlockwise from above: as in the tray.
#[must_use]
pub(super) fn knob_angle(mode: MeterMode) -> f32 {
    TAU * match mode {
        MeterMode::Off => 0.25,
        MeterMode::Volt => 0.09,
        MeterMode::Ohm => -0.09,
        MeterMode::Ampere => -0.25,
    }
}

/// Where a pulled fuse or relay lies: on the rim of its box, below where it sat.
#[must_use]
pub(super) fn pulled(part: u16, home: Transform) -> Transform {
    let side = home.rotation * Vec3::new(0.16 + 0.02 * f32::from(part % 3), -0.175, 0.02);
    Transform { translation: home.translation + side * 0.9, ..home }
}
