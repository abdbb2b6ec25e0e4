//! Distribution piece: one small volume with up to four nipples.

use crate::flow::iso6358::Iso6358;
use crate::flow::nipple;
use crate::params::part_params;
use crate::parts::elements::{Air, Chamber, Depth, Electric, FlowPath, Mouth, Seen, Spec, Specified, Volume};

part_params! {
    /// A tee or four-way piece; ports `1` to `4`, all pneumatic.
    pub struct Tee {
        /// Bore of each nipple, mm.
        bore_mm: 1.0 ..= 30.0,
        /// Volume of the air inside, cm³.
        volume_cm3: 2.0 ..= 500.0,
        faults {
            /// Diameter of a crack in the body, as a hole, mm.
            crack_mm: 0.0 ..= 5.0,
        }
    }
}

impl Tee {
    /// The resistance of one nipple.
    #[must_use]
    pub fn nipple(&self) -> Iso6358 {
        nipple::of_bore_mm(self.bore_mm)
    }
}

impl Specified for Tee {
    const SEEN: Seen = Seen::PIECE;

    fn spec(&self, _: f64) -> Spec {
        Spec {
            hangs: false,
            air: Air {
                volumes: vec![Volume::small(Depth::Meeting, self.volume_cm3)],
                mouths: (0..4).map(|port| Mouth::body(port, self.nipple())).collect(),
                flow_paths: FlowPath::hole(Chamber::Body, self.crack_mm).into_iter().collect(),
            },
            electric: Electric::NONE,
            states: vec![],
            machines: vec![],
            switches: vec![],
        }
    }
}
