//! Vacuum sensor: a ratiometric voltage, its share of the feed grows with the vacuum.
//!
//! v_signal/v_feed = zero + span · (p_air − p)/100 kPa, kept between [`RAIL`] and 1 − [`RAIL`]: a divider
//! between `plus` and `minus`, so that the share holds whatever the feed is. It compares against the air of
//! the day (its back is open). Not modelled: its own current beyond the divider's, noise, temperature.

use crate::flow::nipple;
use crate::params::part_params;
use crate::parts::elements::{
    Air, Chamber, Characteristic, Depth, Electric, FlowPath, Mouth, Pole, Seen, Spec, Specified, Volume,
    Worth,
};

pub use crate::parts::elements::RAIL;

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

impl VacuumSensor {
    /// Its track.
    #[must_use]
    pub fn characteristic(&self) -> Characteristic {
        Characteristic {
            zero_share: self.zero_share,
            span_share: self.span_share,
            drift_kpa: self.drift_kpa,
            ohm: self.track_ohm,
            chamber: Chamber::Body,
        }
    }
}

impl Specified for VacuumSensor {
    const SEEN: Seen = Seen::PIECE;

    fn spec(&self, _: f64) -> Spec {
        let arm = |lower| Worth::Characteristic { characteristic: self.characteristic(), lower };
        Spec {
            hangs: false,
            air: Air {
                volumes: vec![Volume::small(Depth::End, self.volume_cm3)],
                mouths: vec![Mouth::body(0, nipple::of_bore_mm(self.bore_mm))],
                flow_paths: FlowPath::hole(Chamber::Body, self.diaphragm_mm).into_iter().collect(),
            },
            electric: Electric::of(vec![
                Pole { a: 1, b: 2, name: "sensor_upper", worth: arm(false) },
                Pole { a: 2, b: 3, name: "sensor_lower", worth: arm(true) },
            ]),
            states: vec![],
            machines: vec![],
            switches: vec![],
        }
    }
}
