//! Ranges of numbers in files.

use sim_core::params::ParamDef;

use crate::locale::quote::number;
use crate::locale::sentence::Sentence;
use crate::sentence;

/// A range of numbers with the unit that is not already in the key's name.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Range {
    /// Smallest value.
    pub min: f64,
    /// Largest value.
    pub max: f64,
    /// Unit of both.
    pub unit: Unit,
}

/// Unit of a number in a file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unit {
    /// The key's name ends in it, or there is none.
    InName,
    /// The workshop's own money.
    ShopMoney,
    /// How common beside the others.
    Weight,
    /// Metres.
    Metre,
    /// Degrees of an angle.
    Degree,
    /// Points of a hundred.
    OfHundred,
    /// Steps of the diagram's grid.
    GridStep,
    /// Turns by 90°.
    QuarterTurn,
    /// Per cent of a dial's span.
    OfSpan,
    /// Per cent of what is shown.
    OfReading,
    /// Counts of a display's last digit.
    Count,
    /// The unit that the instrument shows.
    Instrument,
}

impl Range {
    /// A range.
    #[must_use]
    pub const fn new(min: f64, max: f64, unit: Unit) -> Self {
        Self { min, max, unit }
    }

    /// The range of a part's parameter.
    #[must_use]
    pub const fn of(def: &ParamDef) -> Self {
        Self { min: def.min, max: def.max, unit: Unit::InName }
    }

    /// From where to where, for every language.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        let (min, max) = (number(self.min), number(self.max));
        match self.unit.sentence() {
            None => sentence!("data-range", "{min} to {max}", min = min, max = max),
            Some(unit) => {
                sentence!("data-range-unit", "{min} to {max} {unit}", min = min, max = max, unit = unit)
            }
        }
    }
}

impl Unit {
    /// In words; `None` when the key's name tells.
    #[must_use]
    pub fn sentence(self) -> Option<Sentence> {
        Some(match self {
            Self::InName => return None,
            Self::ShopMoney => sentence!("data-unit-money", "shop money"),
            Self::Weight => sentence!("data-unit-weight", "(relative weight)"),
            Self::Metre => sentence!("data-unit-metre", "m"),
            Self::Degree => sentence!("data-unit-degree", "degrees"),
            Self::OfHundred => sentence!("data-unit-of-hundred", "of 100"),
            Self::GridStep => sentence!("data-unit-grid-step", "grid steps"),
            Self::QuarterTurn => sentence!("data-unit-quarter-turn", "quarter turns"),
            Self::OfSpan => sentence!("data-unit-of-span", "% of span"),
            Self::OfReading => sentence!("data-unit-of-reading", "% of reading"),
            Self::Count => sentence!("data-unit-count", "counts of the last digit"),
            Self::Instrument => sentence!("data-unit-instrument", "in the instrument's unit"),
        })
    }
}
