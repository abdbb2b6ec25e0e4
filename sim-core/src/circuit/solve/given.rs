//! What a circuit is told: by hands and feet, and by what has switched inside.

use crate::parts::elements::{EngineState, MeterMode};

/// What hands do to a part of the circuit.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Hand {
    /// Strokes per second, for a hand pump.
    pub strokes_per_s: f64,
    /// Button held, for a push-button lead.
    pub pressed: bool,
    /// Dial setting, for a multimeter.
    pub mode: MeterMode,
}

/// Lasting states that act on the circuit from outside.
#[derive(Clone, Debug, PartialEq)]
pub struct Inputs {
    /// What the engine does.
    pub engine: EngineState,
    /// Ignition key in position 15.
    pub key_on: bool,
    /// Force on the brake pedal, N.
    pub pedal_n: f64,
    /// Air temperature the surroundings drift to, °C.
    pub surroundings_c: f64,
    /// Per part of the assembly, what hands do to it.
    pub hands: Vec<Hand>,
}

/// Discrete state of a part.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Flags {
    /// Contact of a vacuum switch or relay closed, output of a controller driven.
    pub(crate) closed: bool,
    /// Fuse melted.
    pub(crate) melted: bool,
    /// Pump audible.
    pub(crate) hums: bool,
    /// Controller awake.
    pub(crate) powered: bool,
    /// Controller lets its pump rest.
    pub(crate) resting: bool,
    /// Codes a controller has stored, by bit.
    pub(crate) codes: u8,
}

/// What one circuit is told: by hands and feet, by its contacts and fuses.
#[derive(Clone, Copy)]
pub(crate) struct Given<'a> {
    pub(crate) inputs: &'a Inputs,
    pub(crate) flags: &'a [Flags],
}
