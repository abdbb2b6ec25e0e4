//! A permanent-magnet motor with its rotor and two heat nodes: V = i R(T) + K(T) ω, J dω/dt = K i − T.
//!
//! Copper +0.393 %/K (IEC 60228 factor), ferrite magnets −0.20 %/K (from memory). Not modelled: cogging,
//! armature inductance (its time is under 2 ms).

use crate::lanes::{Real, spread};
use crate::math;

/// Temperature coefficient of copper at 20 °C, 1/K (IEC 60228).
pub const ALPHA_COPPER: f64 = 0.003_93;
/// Reversible temperature coefficient of a ferrite magnet, 1/K (from memory).
pub const ALPHA_FERRITE: f64 = -0.002_0;

/// Speed below which dry friction fades out so that a pump at rest stays at rest, rad/s. Small, because a
/// motor that creeps under an ohmmeter's milliamperes would show K²·0.1/T ohms too much.
pub const OMEGA_SMALL: f64 = 0.1;

/// A pump's motor and rotor in numbers as their laws need them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MotorLaw<R = f64> {
    /// Winding and brush resistance at 20 °C, ohm.
    pub winding_ohm: R,
    /// Further resistance of the brushes, whatever the temperature, ohm.
    pub brush_ohm: R,
    /// Motor constant at 20 °C, V·s/rad.
    pub motor_k: R,
    /// Dry friction, N·m.
    pub dry_nm: R,
    /// Viscous friction, N·m·s/rad.
    pub viscous: R,
    /// Moment of inertia, kg·m².
    pub inertia: R,
    /// Heat capacity of the winding, J/K.
    pub winding_j_per_k: R,
    /// Heat capacity of the case, J/K.
    pub case_j_per_k: R,
    /// Heat path winding to case, W/K.
    pub winding_w_per_k: R,
    /// Heat path case to air, W/K.
    pub case_w_per_k: R,
}

spread!(MotorLaw {
    winding_ohm,
    brush_ohm,
    motor_k,
    dry_nm,
    viscous,
    inertia,
    winding_j_per_k,
    case_j_per_k,
    winding_w_per_k,
    case_w_per_k,
});

impl<R: Real> MotorLaw<R> {
    /// Friction torque at speed `omega` (rad/s), N·m, and its slope.
    #[must_use]
    #[inline(always)]
    pub fn friction_torque(&self, omega: R) -> (R, R) {
        let th = math::tanh(omega / OMEGA_SMALL);
        let dry = self.dry_nm;
        (dry * th + self.viscous * omega, dry * (R::all(1.0) - th * th) / OMEGA_SMALL + self.viscous)
    }

    /// Winding resistance at `t_k`, ohm (brushes included).
    #[must_use]
    #[inline(always)]
    pub fn resistance_ohm(&self, t_k: R) -> R {
        self.winding_ohm * ((t_k - 293.15) * ALPHA_COPPER + 1.0) + self.brush_ohm
    }

    /// Motor constant at `t_k`, V·s/rad.
    #[must_use]
    #[inline(always)]
    pub fn motor_constant(&self, t_k: R) -> R {
        self.motor_k * ((t_k - 293.15) * ALPHA_FERRITE + 1.0)
    }
}
