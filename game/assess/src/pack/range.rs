//! Ranges of numbers in files.

use sim_core::params::ParamDef;

/// A range of numbers with the unit that is not already in the key's name.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Range {
    /// Smallest value.
    pub min: f64,
    /// Largest value.
    pub max: f64,
    /// Unit with a leading space, or nothing.
    pub unit: &'static str,
}

impl Range {
    /// A range.
    #[must_use]
    pub const fn new(min: f64, max: f64, unit: &'static str) -> Self {
        Self { min, max, unit }
    }
    /// The range of a part's parameter.
    #[must_use]
    pub const fn of(def: &ParamDef) -> Self {
        Self { min: def.min, max: def.max, unit: "" }
    }
}
