//! A note as the belief takes it: what was shown is a stretch of a line on which every car has its place.
//!
//! The line is the scale's own unit, or its logarithm for what is positive and spans decades (times, resistances). A
//! number is the stretch that rounds to it, an end of the scale is everything beyond it, a level of a sense is what lies
//! between its thresholds, a time that was still running is everything above. A dark display is off the line.

use sim_core::observe::{Observed, Predicted, Scale, ShownValue};

use crate::infer::likelihood::{cell_count, edges};
use crate::infer::numeric::ln;
use crate::infer::rows::Told;
use crate::pack::job::Job;
use crate::play::course::Looked;

/// What the stepping may be off and no draw shows: share of the scale's step.
const FLOOR_OF_STEP: f64 = 0.1;
/// The same for senses, in their own unit.
const FLOOR_OF_SENSE: f64 = 0.03;
/// The same, share of the value.
const FLOOR_OF_VALUE: f64 = 0.002;
/// The same on the line of logarithms.
const FLOOR_BY_RATIO: f64 = 0.005;

/// What was shown.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Seen {
    /// Something on the line, from here to there; either may be infinite.
    Between(f64, f64),
    /// A dark display.
    Dark,
}

/// Where a car stands at a note.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Place {
    /// On the line.
    At(f64),
    /// Its time would have gone on beyond anybody's patience.
    Beyond,
    /// Its display would be dark.
    Dark,
    /// The reading could not have come about in it.
    Nowhere,
}

/// A note.
#[derive(Clone, Debug, PartialEq)]
pub struct Noted {
    /// What was shown.
    pub seen: Seen,
    /// Cells that the scale has: what a slip may show.
    pub cells: f64,
    /// Scatter of a single reading on the line, one σ.
    pub scatter: f64,
    /// Readings with the same instrument (index into the kit) share its error; `None` for senses.
    pub instrument: Option<usize>,
    /// The scale.
    scale: Scale,
    /// The line is the logarithm of the unit.
    by_ratio: bool,
}

impl Noted {
    /// What was looked at and shown.
    #[must_use]
    pub fn of(job: &Job, looked: &Looked) -> Self {
        let what = &looked.reading.what;
        let instrument = match what {
            Observed::Instrument { instrument, .. } | Observed::Interval { instrument, .. } => {
                job.kit.iter().position(|card| card.id == *instrument)
            }
            Observed::Sense(_) => None,
        };
        let by_ratio = matches!(what, Observed::Interval { .. })
            || matches!(looked.scale, Scale::Numeric { unit: "ohm", .. });
        let scatter = match &looked.scale {
            Scale::Numeric { scatter, .. } | Scale::Ordinal { scatter, .. } => *scatter,
        };
        let mut noted = Self {
            seen: Seen::Dark,
            cells: cell_count(&looked.scale),
            scatter,
            instrument,
            scale: looked.scale.clone(),
            by_ratio,
        };
        noted.seen = noted.seen(looked.reading.shown);
        if by_ratio && let Some(value) = noted.scale.number(looked.reading.shown) {
            noted.scatter = scatter / value.abs().max(noted.step());
        }
        noted
    }

    /// A dial gauge at which `seen` was seen, for laws of the belief.
    #[cfg(test)]
    pub(super) fn of_gauge(seen: (f64, f64)) -> Self {
        let scale = Scale::Numeric {
            unit: "kPa",
            resolution: 1.0,
            min: -100.0,
            max: 0.0,
            scatter: 0.0,
            by_eye: true,
        };
        let seen = Seen::Between(seen.0, seen.1);
        Self { seen, cells: cell_count(&scale), scatter: 0.0, instrument: Some(0), scale, by_ratio: false }
    }

    /// The same look with something else shown.
    #[must_use]
    pub fn showing(&self, shown: ShownValue) -> Self {
        self.having_seen(self.seen(shown))
    }

    /// The same look with something else seen.
    #[must_use]
    pub fn having_seen(&self, seen: Seen) -> Self {
        Self { seen, ..self.clone() }
    }

    fn seen(&self, shown: ShownValue) -> Seen {
        match edges(&self.scale, shown) {
            Some((low, high)) => Seen::Between(self.edge(low), self.edge(high)),
            None => Seen::Dark,
        }
    }

    /// What the line is a line of: readings on the same one can be taken from each other. `None` for senses.
    #[must_use]
    pub fn line(&self) -> Option<(&'static str, bool)> {
        match self.scale {
            Scale::Numeric { unit, .. } => Some((unit, self.by_ratio)),
            Scale::Ordinal { .. } => None,
        }
    }

    fn step(&self) -> f64 {
        match self.scale {
            Scale::Numeric { resolution, .. } => resolution,
            Scale::Ordinal { .. } => 0.0,
        }
    }

    /// Smallest value that a logarithm is taken of: a tenth of a step is as good as nothing.
    fn least(&self) -> f64 {
        (0.1 * self.step()).max(1e-9)
    }

    fn on_line(&self, value: f64) -> f64 {
        if self.by_ratio { ln(value.max(self.least())) } else { value }
    }

    /// An edge of what was shown: as good as nothing is no edge.
    fn edge(&self, value: f64) -> f64 {
        if !self.by_ratio {
            value
        } else if value <= self.least() {
            f64::NEG_INFINITY
        } else {
            ln(value)
        }
    }

    /// Where a car stands, with the instrument's error at the end of its class there.
    #[must_use]
    pub fn place(&self, told: Option<Told>) -> (Place, f64) {
        match told.map(|told| (told.predicted, told.error)) {
            Some((Predicted::Value(value), error)) => {
                let per = if self.by_ratio { 1.0 / value.abs().max(self.step()) } else { 1.0 };
                (Place::At(self.on_line(value)), (error * per).abs())
            }
            Some((Predicted::Beyond(_), _)) => (Place::Beyond, 0.0),
            Some((Predicted::Blank, _)) => (Place::Dark, 0.0),
            None => (Place::Nowhere, 0.0),
        }
    }

    /// What is seen where a car's place, hand and instrument together, is `place` on the line.
    #[must_use]
    pub fn at(&self, place: f64) -> Seen {
        let value = if self.by_ratio { sim_core::math::exp(place) } else { place };
        self.seen(self.scale.show(value))
    }

    /// What is seen of a time that goes on beyond anybody's patience.
    #[must_use]
    pub fn beyond(&self) -> Seen {
        self.seen(ShownValue::Off(true))
    }

    /// What the model itself may be off round `mean` on the line, one σ.
    #[must_use]
    pub fn floor(&self, mean: f64) -> f64 {
        match self.scale {
            Scale::Ordinal { .. } => FLOOR_OF_SENSE,
            Scale::Numeric { .. } if self.by_ratio => FLOOR_BY_RATIO,
            Scale::Numeric { resolution, .. } => {
                (FLOOR_OF_STEP * resolution).max(FLOOR_OF_VALUE * mean.abs())
            }
        }
    }

    /// What would be shown for a place, `share` (−1 to 1) of the instrument's class and `scatter` standard deviations off;
    /// `None` where nothing can be shown.
    #[must_use]
    pub fn show(&self, told: Option<Told>, share: f64, scatter: f64) -> Option<ShownValue> {
        let told = told?;
        let sigma = match &self.scale {
            Scale::Numeric { scatter, .. } | Scale::Ordinal { scatter, .. } => *scatter,
        };
        Some(match told.predicted {
            Predicted::Value(value) => self.scale.show(value + share * told.error + sigma * scatter),
            Predicted::Beyond(_) => ShownValue::Off(true),
            Predicted::Blank => ShownValue::Blank,
        })
    }
}
