//! Vacuum sensor: a ratiometric voltage, its share of the feed grows with the vacuum.
//!
//! v_signal/v_feed = zero + span · (p_air − p)/100 kPa, kept between [`RAIL`] and 1 − [`RAIL`]: a divider
//! between `plus` and `minus`, so that the share holds whatever the feed is. It compares against the air of
//! the day (its back is open). Not modelled: its own current beyond the divider's, noise, temperature.

use crate::params::part_params;

part_params! {
    /// A vacuum sensor; ports `vacuum` (pneumatic), `plus`, `signal` and `minus` (electrical).
    pub struct VacuumSensor {
        /// Share of the feed with no vacuum.
        zero_share: 0.02 ..= 0.5,
        /// Further share of the feed at 100 kPa of vacuum.
        span_share: 0.1 ..= 0.95,
        /// Resistance of the divider from feed to ground, ohm.
        track_ohm: 100.0 ..= 20000.0,
        /// Volume behind the diaphragm, cm³.
        volume_cm3: 2.0 ..= 50.0,
        /// Bore of the nipple, mm.
        bore_mm: 0.5 ..= 10.0,
        faults {
            /// Vacuum it shows too much (positive) or too little, kPa.
            drift_kpa: -60.0 ..= 60.0,
            /// Leak of the diaphragm to the air, as a hole, mm.
            diaphragm_mm: 0.0 ..= 3.0,
        }
    }
}

/// A sound sensor's signal stays this share of the feed away from both ends.
pub const RAIL: f64 = 0.02;

impl VacuumSensor {
    /// Share of the feed it gives with the air inside `below_pa` under the air outside.
    #[must_use]
    pub fn share(&self, below_pa: f64) -> f64 {
        let kpa = below_pa * 1e-3 + self.drift_kpa;
        (self.zero_share + self.span_share * kpa * 0.01).clamp(RAIL, 1.0 - RAIL)
    }
}
