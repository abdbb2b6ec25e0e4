//! Dial gauge on a hose: its volume, its bore, and the lag of its pointer.

use crate::flow::nipple;
use crate::params::part_params;
use crate::parts::elements::{
    Air, Bounds, Chamber, Depth, Electric, Lag, Mouth, Quantity, Seen, Spec, Specified, Start, State, Volume,
};

part_params! {
    /// Dial gauge on a hose; port `stem` (pneumatic).
    pub struct VacuumGauge {
        /// Volume of gauge and hose, cm³.
        volume_cm3: 2.0 ..= 500.0,
        /// Bore of the hose, mm.
        bore_mm: 0.5 ..= 10.0,
        /// Time in which the pointer follows, s.
        lag_s: 0.02 ..= 5.0,
        faults {}
    }
}

impl Specified for VacuumGauge {
    const SEEN: Seen = Seen::PIECE;

    fn spec(&self, _: f64) -> Spec {
        Spec {
            hangs: true,
            air: Air {
                volumes: vec![Volume::small(Depth::Stem, self.volume_cm3)],
                mouths: vec![stem(self.bore_mm)],
                flow_paths: vec![],
            },
            electric: Electric::NONE,
            states: vec![pointer(self.lag_s)],
            machines: vec![],
            switches: vec![],
        }
    }
}

/// The hose of a gauge, which goes into a made joint as a branch.
pub(super) fn stem(bore_mm: f64) -> Mouth {
    Mouth { stem: true, ..Mouth::body(0, nipple::of_bore_mm(bore_mm)) }
}

/// The pointer over the air behind a stem.
pub(super) fn pointer(tau_s: f64) -> State {
    State {
        is: Quantity::Pointer,
        bounds: Bounds::POINTER,
        start: Start::At(0.0),
        follows: Some(Lag::Pressure { chamber: Chamber::Body, tau_s }),
    }
}
