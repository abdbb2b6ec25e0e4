//! What moves and warms by forces and torques: the states of its part are moved together.

use super::air::Chamber;
use super::motor::MotorLaw;
use super::piston::PistonLaw;

/// A machine of a part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Machine {
    /// A power piston between two chambers; it moves [`super::Quantity::Travel`].
    Piston {
        /// Its laws.
        law: PistonLaw,
        /// The chamber that its travel makes smaller.
        front: Chamber,
        /// The chamber that its travel makes larger.
        rear: Chamber,
    },
    /// A motor that turns a pump; it moves [`super::Quantity::Speed`], [`super::Quantity::Winding`] and
    /// [`super::Quantity::Case`].
    Rotor {
        /// Its laws.
        motor: MotorLaw,
        /// Compression torque against the atmosphere with a perfect vacuum at the inlet, N·m.
        compression: f64,
        /// Its slope over the inlet pressure, N·m/Pa.
        compression_p: f64,
        /// The air at the inlet.
        inlet: Chamber,
        /// Number of the motor's two-pole in the part.
        pole: u8,
    },
}
