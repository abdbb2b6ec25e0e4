//! What a state variable of a part can be, and what bounds one.

use crate::lanes::Real;

/// What a state variable of a part is. Units: kg, J, m, Pa, rad/s, K, share.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Quantity {
    /// Temperature of a winding, K.
    Winding,
    /// Temperature of a case, K.
    Case,
    /// Temperature of a filament, K.
    Filament,
    /// Pointer of a gauge, Pa gauge.
    Pointer,
    /// State of charge, share.
    Charge,
    /// Heat of a fuse strip, (i/I_n)².
    FuseHeat,
    /// Absolute manifold pressure, Pa.
    Manifold,
    /// Speed of a pump, rad/s.
    Speed,
    /// A reckoning of running time, s.
    RunTime,
    /// Travel of a power piston, m.
    Travel,
}

impl Quantity {
    /// Its name in the exported equations.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Winding => "winding",
            Self::Case => "case",
            Self::Filament => "filament",
            Self::Pointer => "pointer",
            Self::Charge => "charge",
            Self::FuseHeat => "fuse_heat",
            Self::Manifold => "manifold",
            Self::Speed => "speed",
            Self::RunTime => "run_time",
            Self::Travel => "travel",
        }
    }

    /// Whether it stands behind the air in the order of elimination: air hangs on it from two sides. All others
    /// are leaves and stand before, in declared order.
    #[must_use]
    pub fn is_hub(self) -> bool {
        self == Self::Travel
    }
}

/// The error a step may make in a variable: so much, and a share of its value.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Allowance {
    /// So much.
    pub absolute: f64,
    /// A share of its value.
    pub share: f64,
}

impl Allowance {
    /// So much whatever the value.
    #[must_use]
    pub const fn of(absolute: f64) -> Self {
        Self { absolute, share: 0.0 }
    }

    /// At a value of this size.
    #[inline(always)]
    #[must_use]
    pub fn at<R: Real>(self, size: R) -> R {
        size * self.share + self.absolute
    }
}

/// What bounds a variable.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bounds {
    /// What it must be above: nought for what cannot be nothing, else minus infinity.
    pub least: f64,
    /// The error a step may make in it.
    pub allowance: Allowance,
}

impl Bounds {
    /// For what cannot be nothing.
    #[must_use]
    pub const fn positive(allowance: Allowance) -> Self {
        Self { least: 0.0, allowance }
    }

    /// For what may be anything.
    #[must_use]
    pub const fn any(allowance: Allowance) -> Self {
        Self { least: f64::NEG_INFINITY, allowance }
    }

    /// Of the temperature of something solid.
    pub const TEMPERATURE: Self = Self::positive(Allowance::of(0.02));
    /// Of a pointer over a dial: 10 Pa, under the bar of 0.05 kPa.
    pub const POINTER: Self = Self::any(Allowance::of(10.0));
    /// Of a pump's speed.
    pub const SPEED: Self = Self::any(Allowance { absolute: 0.05, share: 2e-4 });
}
