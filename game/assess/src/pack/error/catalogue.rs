//! The catalogue of a car: limits, repair units, faults; and what a job hides out of it.

use crate::locale::quote::{number, quoted};
use crate::locale::sentence::{Sentence, Value};
use crate::sentence;

/// What is wrong with a catalogue, or with what is taken out of it.
#[derive(Debug)]
pub enum BadCatalogue {
    /// A sound car could be drawn outside its own limit.
    ServiceableOutsideLimit {
        /// Key path.
        path: String,
        /// Serviceable range.
        serviceable: (f64, f64),
        /// Limit.
        limit: (f64, f64),
    },
    /// The new part is outside its limit.
    NewOutsideLimit {
        /// Key path.
        path: String,
        /// Value of the new part.
        new: f64,
        /// Limit.
        limit: (f64, f64),
    },
    /// A fault that changes a number for which no limit is stated.
    NoLimit {
        /// Key path.
        path: String,
        /// The parameter.
        param: String,
    },
    /// A severity that is still inside the limit.
    SeverityInsideLimit {
        /// Key path.
        path: String,
        /// The severity.
        value: f64,
        /// The parameter.
        param: String,
        /// Its limit.
        limit: (f64, f64),
    },
    /// Highest severity not further out than the lowest, on the same side of the limit.
    SeverityOrder {
        /// Key path.
        path: String,
        /// Lowest severity.
        min: f64,
        /// Highest severity.
        max: f64,
    },
    /// A hidden fault of a severity that its catalogue does not have.
    SeverityOutsideCatalogue {
        /// Key path.
        path: String,
        /// The severity.
        value: f64,
        /// The fault.
        fault: String,
        /// Lowest severity.
        min: f64,
        /// Highest severity.
        max: f64,
    },
    /// A number that belongs to a part outside the repair unit it is filed under.
    NotOfUnit {
        /// Key path.
        path: String,
        /// The parameter.
        param: String,
        /// The repair unit.
        unit: String,
        /// Parts of that unit.
        parts: Value,
    },
    /// A job for a car at an altitude its data sheet rules out.
    AboveAltitudeLimit {
        /// Altitude of the job, m.
        altitude_m: f64,
        /// The car.
        car: String,
        /// Altitude limit of the car, m.
        limit_m: f64,
    },
}

impl BadCatalogue {
    /// What is wrong, for every language.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        match self {
            Self::ServiceableOutsideLimit { path, serviceable, limit } => sentence!(
                "data-serviceable-outside",
                "{path}: serviceable ({low}, {high}) reaches outside limit ({min}, {max})",
                path = path,
                low = number(serviceable.0),
                high = number(serviceable.1),
                min = number(limit.0),
                max = number(limit.1)
            ),
            Self::NewOutsideLimit { path, new, limit } => sentence!(
                "data-new-outside",
                "{path}: the new value {new} lies outside limit ({min}, {max})",
                path = path,
                new = number(*new),
                min = number(limit.0),
                max = number(limit.1)
            ),
            Self::NoLimit { path, param } => sentence!(
                "data-no-stated-limit",
                "{path}: {param} has no line under `tolerances`; a fault must breach a stated limit",
                path = path,
                param = param
            ),
            Self::SeverityInsideLimit { path, value, param, limit } => sentence!(
                "data-severity-inside",
                "{path} = {value} is inside the limit of {param} ({min}, {max}); a fault must breach it",
                path = path,
                value = number(*value),
                param = param,
                min = number(limit.0),
                max = number(limit.1)
            ),
            Self::SeverityOrder { path, min, max } => sentence!(
                "data-severity-order",
                "{path}: severity_max = {max} must lie further out than severity_min = {min}",
                path = path,
                max = number(*max),
                min = number(*min)
            ),
            Self::SeverityOutsideCatalogue { path, value, fault, min, max } => sentence!(
                "data-severity-outside",
                "{path} = {value}; the catalogue has {fault} from {min} to {max}",
                path = path,
                value = number(*value),
                fault = fault,
                min = number(*min),
                max = number(*max)
            ),
            Self::NotOfUnit { path, param, unit, parts } => sentence!(
                "data-not-of-unit",
                "{path}: {param} is not a number of the repair unit {unit} (parts: {parts})",
                path = path,
                param = param,
                unit = quoted(unit),
                parts = parts
            ),
            Self::AboveAltitudeLimit { altitude_m, car, limit_m } => sentence!(
                "data-too-high",
                "day.altitude_m = {altitude}: {car} reaches its cut-out up to {limit} m",
                altitude = number(*altitude_m),
                car = car,
                limit = number(*limit_m)
            ),
        }
    }
}
