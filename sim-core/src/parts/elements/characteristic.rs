//! A sensor's track: a divider whose tap follows the vacuum, as a share of whatever feeds it.

use super::air::Chamber;

/// A sound sensor's signal stays this share of the feed away from both ends.
pub const RAIL: f64 = 0.02;

/// The track of a vacuum sensor.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Characteristic {
    /// Share of the feed with no vacuum.
    pub zero_share: f64,
    /// Further share of the feed at 100 kPa of vacuum.
    pub span_share: f64,
    /// Vacuum it shows too much (positive) or too little, kPa.
    pub drift_kpa: f64,
    /// Resistance from feed to ground, ohm.
    pub ohm: f64,
    /// The body of air that it follows.
    pub chamber: Chamber,
}

impl Characteristic {
    /// Share of the feed it gives with the air inside `below_pa` under the air outside.
    #[must_use]
    pub fn share(&self, below_pa: f64) -> f64 {
        let kpa = below_pa * 1e-3 + self.drift_kpa;
        (self.zero_share + self.span_share * kpa * 0.01).clamp(RAIL, 1.0 - RAIL)
    }

    /// Conductance of the arm between signal and ground (`lower`) or between feed and signal, S.
    #[must_use]
    pub fn arm_s(&self, lower: bool, below_pa: f64) -> f64 {
        let share = self.share(below_pa);
        let of_track = if lower { share } else { 1.0 - share };
        1.0 / (self.ohm * of_track)
    }
}
