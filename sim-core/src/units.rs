//! Pressures that cannot be mixed up, and the tick.
//!
//! Gauge against absolute pressure is *the* error of a vacuum program, so they are different types:
//! [`AbsPressure`] (above a perfect vacuum), [`GaugePressure`] (against the atmosphere of the day) and
//! [`PressureDiff`] (between two points). SI inside; units only in constructors and getters.
//!
//! ```compile_fail
//! use sim_core::units::{AbsPressure, GaugePressure};
//! let wrong = AbsPressure::from_kpa(35.0) - GaugePressure::from_kpa(-66.0); // does not compile
//! ```

use std::ops::{Add, Neg, Sub};

/// Pascals in one inch of mercury, conventional (NIST SP 811, appendix B).
pub const PA_PER_INHG: f64 = 3_386.389;

/// Absolute pressure, Pa; positive.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct AbsPressure(f64);

/// Pressure against the atmosphere of the day, Pa; negative means vacuum.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct GaugePressure(f64);

/// Difference of two pressures, Pa.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct PressureDiff(f64);

macro_rules! pressure_units {
    ($t:ident) => {
        impl $t {
            /// From pascals.
            #[must_use]
            pub const fn from_pa(pa: f64) -> Self {
                Self(pa)
            }
            /// From kilopascals.
            #[must_use]
            pub const fn from_kpa(kpa: f64) -> Self {
                Self(kpa * 1e3)
            }
            /// In pascals.
            #[must_use]
            pub const fn pa(self) -> f64 {
                self.0
            }
            /// In kilopascals.
            #[must_use]
            pub const fn kpa(self) -> f64 {
                self.0 * 1e-3
            }
            /// In millibars.
            #[must_use]
            pub const fn mbar(self) -> f64 {
                self.0 * 1e-2
            }
            /// In inches of mercury (conventional).
            #[must_use]
            pub const fn inhg(self) -> f64 {
                self.0 / PA_PER_INHG
            }
        }
    };
}
pressure_units!(AbsPressure);
pressure_units!(GaugePressure);
pressure_units!(PressureDiff);

impl AbsPressure {
    /// This pressure as a gauge open to `ambient` shows it.
    #[must_use]
    pub fn gauge(self, ambient: AbsPressure) -> GaugePressure {
        GaugePressure(self.0 - ambient.0)
    }
}

impl GaugePressure {
    /// The absolute pressure behind a gauge reading on a day with pressure `ambient`.
    #[must_use]
    pub fn absolute(self, ambient: AbsPressure) -> AbsPressure {
        AbsPressure(self.0 + ambient.0)
    }
}

impl Sub for AbsPressure {
    type Output = PressureDiff;
    fn sub(self, other: Self) -> PressureDiff {
        PressureDiff(self.0 - other.0)
    }
}

impl Add<PressureDiff> for AbsPressure {
    type Output = Self;
    fn add(self, diff: PressureDiff) -> Self {
        Self(self.0 + diff.0)
    }
}

impl Neg for PressureDiff {
    type Output = Self;
    fn neg(self) -> Self {
        Self(-self.0)
    }
}

/// Simulated time as a whole number of ticks of 1/100 s.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, serde::Serialize, serde::Deserialize,
)]
pub struct Tick(pub u64);

/// Ticks in a second.
pub const TICKS_PER_SECOND: u64 = 100;

/// Length of a tick, s.
pub const TICK_S: f64 = 0.01;

impl Tick {
    /// The first tick at or after `s` seconds (0.07 s, which is not a binary number, is tick 7).
    #[must_use]
    pub fn from_s(s: f64) -> Self {
        /// What rounding of `s` and of the product may add, ticks.
        const ROUNDING: f64 = 1e-6;
        Self((s * TICKS_PER_SECOND as f64 - ROUNDING).ceil() as u64)
    }
    /// In seconds.
    #[must_use]
    pub fn s(self) -> f64 {
        self.0 as f64 * TICK_S
    }
    /// Later by `ticks`.
    #[must_use]
    pub fn plus(self, ticks: u64) -> Self {
        Self(self.0 + ticks)
    }
}
