//! Vacuum reservoir: one volume with two nipples, of sheet metal or plastic, between source and booster.
//!
//! It keeps vacuum for a few applications more; tees beside it are parts of their own. Not modelled: water that gathers in it, the give of its shell.

use crate::flow::iso6358::Iso6358;
use crate::flow::nipple;
use crate::params::part_params;
use crate::parts::elements::{Air, Chamber, Depth, Electric, FlowPath, Mouth, Seen, Spec, Specified, Volume};

part_params! {
    /// A reservoir; ports `1` and `2`, both pneumatic.
    pub struct Reservoir {
        /// Volume of the air inside, L.
        volume_l: 0.1 ..= 40.0,
        /// Inner surface that warms the air, m².
        surface_m2: 0.01 ..= 5.0,
        /// Bore of each nipple, mm.
        bore_mm: 1.0 ..= 30.0,
        /// Seep of a sound reservoir into a perfect vacuum, cm³ of free air a minute.
        seep_cm3_per_min: 0.0 ..= 20.0,
        faults {
            /// Diameter of a hole rusted through, mm.
            rust_mm: 0.0 ..= 5.0,
        }
    }
}

impl Reservoir {
    /// The resistance of one nipple.
    #[must_use]
    pub fn nipple(&self) -> Iso6358 {
        nipple::of_bore_mm(self.bore_mm)
    }
}

impl Specified for Reservoir {
    const SEEN: Seen = Seen::PIECE;

    fn spec(&self, _: f64) -> Spec {
        let flow_paths = [
            FlowPath::hole(Chamber::Body, self.rust_mm),
            FlowPath::seep(Chamber::Body, self.seep_cm3_per_min),
        ];
        Spec {
            hangs: false,
            air: Air {
                volumes: vec![Volume::body(Depth::Store, self.volume_l * 1e-3, self.surface_m2)],
                mouths: (0..2).map(|port| Mouth::body(port, self.nipple())).collect(),
                flow_paths: flow_paths.into_iter().flatten().collect(),
            },
            electric: Electric::NONE,
            states: vec![],
            machines: vec![],
            switches: vec![],
        }
    }
}
