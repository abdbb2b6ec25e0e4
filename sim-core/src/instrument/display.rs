//! What an instrument shows its value on: its unit and range, its scale, and how far it errs.
//!
//! Dials: error = class percent of the span (EN 837-1, row in the check values), read by eye to half a
//! division. Digits: percent of reading + counts.

use super::kind::{Dial, DigitalRange};
use crate::observe::Scale;

/// A dial or a row of digits, in a unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Display<'a> {
    /// A dial read by eye.
    Dial(&'static str, &'a Dial),
    /// Digits that show values of both signs.
    Signed(&'static str, &'a DigitalRange),
    /// Digits from nought up.
    Unsigned(&'static str, &'a DigitalRange),
}

impl Display<'_> {
    /// Whether it is a row of digits.
    #[must_use]
    pub fn is_digital(&self) -> bool {
        match self {
            Self::Dial(..) => false,
            Self::Signed(..) | Self::Unsigned(..) => true,
        }
    }

    /// Its unit.
    #[must_use]
    pub fn unit(&self) -> &'static str {
        match self {
            Self::Dial(unit, _) | Self::Signed(unit, _) | Self::Unsigned(unit, _) => unit,
        }
    }

    /// The scale of a single reading whose scatter is `scatter`, one σ.
    #[must_use]
    pub fn scale(&self, scatter: f64) -> Scale {
        let digits = |unit, d: &DigitalRange, min| Scale::Numeric {
            unit,
            resolution: d.resolution,
            min,
            max: d.max,
            scatter,
            by_eye: false,
        };
        match *self {
            Self::Dial(unit, d) => Scale::Numeric {
                unit,
                resolution: 0.5 * d.division,
                min: d.min,
                max: d.max,
                scatter: 0.0,
                by_eye: true,
            },
            Self::Signed(unit, d) => digits(unit, d, -d.max),
            Self::Unsigned(unit, d) => digits(unit, d, 0.0),
        }
    }

    /// The largest constant error that its class allows at a true value, in its unit.
    #[must_use]
    pub fn error(&self, value: f64) -> f64 {
        match self {
            Self::Dial(_, d) => d.class * 0.01 * (d.max - d.min),
            Self::Signed(_, d) | Self::Unsigned(_, d) => {
                d.percent * 0.01 * value.abs() + d.counts * d.resolution
            }
        }
    }
}
