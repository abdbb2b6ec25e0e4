//! Hand vacuum pump with its gauge and a lever that lets air in slowly.

use super::vacuum_gauge::{pointer, stem};
use crate::flow::pinhole::Pinhole;
use crate::params::part_params;
use crate::parts::elements::{
    Air, Chamber, Depth, Electric, FlowPath, Law, Place, Seen, Spec, Specified, Volume,
};

/// Hole of a hand pump's release lever while it is held, mm: it lets a booster's store down by less
/// than a kPa a second, slowly enough to read a gauge by (from memory).
pub const HAND_PUMP_VENT_MM: f64 = 0.4;

part_params! {
    /// Hand vacuum pump with its gauge; port `stem` (pneumatic).
    pub struct HandPump {
        /// Air moved per stroke, cm³.
        stroke_cm3: 2.0 ..= 200.0,
        /// Pressure it can reach, share of the day's pressure.
        ultimate_share: 0.01 ..= 0.5,
        /// Volume of pump, gauge and hose, cm³.
        volume_cm3: 2.0 ..= 500.0,
        /// Bore of the hose, mm.
        bore_mm: 0.5 ..= 10.0,
        /// Time in which the pointer follows, s.
        lag_s: 0.02 ..= 5.0,
        faults {}
    }
}

impl Specified for HandPump {
    const SEEN: Seen = Seen::PIECE;

    fn spec(&self, _: f64) -> Spec {
        let law = Law::Strokes { stroke: self.stroke_cm3 * 1e-6, ultimate: self.ultimate_share };
        let strokes = FlowPath { a: Place::In(Chamber::Body), b: Place::Outside, law, heard: false };
        let hole = Pinhole::of_diameter_mm(HAND_PUMP_VENT_MM);
        Spec {
            hangs: true,
            air: Air {
                volumes: vec![Volume::small(Depth::Stem, self.volume_cm3)],
                mouths: vec![stem(self.bore_mm)],
                flow_paths: vec![strokes, FlowPath::leak(Chamber::Body, Law::Vent { hole })],
            },
            electric: Electric::NONE,
            states: vec![pointer(self.lag_s)],
            machines: vec![],
            switches: vec![],
        }
    }
}
