//! A wire with its two crimps.

use crate::params::part_params;
use crate::parts::elements::{Air, Electric, Seen, Spec, Specified, Worth};

part_params! {
    /// A wire with its two crimps; ports `a` and `b`.
    pub struct Wire {
        /// Length, m.
        length_m: 0.05 ..= 20.0,
        /// Cross-section, mm².
        area_mm2: 0.35 ..= 50.0,
        faults {
            /// Resistance of a corroded crimp or bolt, ohm; a million = open.
            corroded_ohm: 0.0 ..= 1000000.0,
        }
    }
}

impl Wire {
    /// Resistance at 20 °C, ohm: copper 17.241 Ω·mm²/km (row 6.1), and 15 % more for strands thinner and
    /// longer than the nominal area says: what the class 5 limits of IEC 60228 (row 6.3) hold, within 2 %.
    #[must_use]
    pub fn resistance_ohm(&self) -> f64 {
        const RHO_OHM_MM2_PER_M: f64 = 17.241e-3;
        const STRANDING: f64 = 1.15;
        RHO_OHM_MM2_PER_M * STRANDING * self.length_m / self.area_mm2 + self.corroded_ohm
    }
}

impl Specified for Wire {
    const SEEN: Seen = Seen::LINE;

    fn spec(&self, _: f64) -> Spec {
        Spec {
            hangs: false,
            air: Air::NONE,
            electric: Electric::one("wire", 0, 1, Worth::Steady(1.0 / self.resistance_ohm())),
            states: vec![],
            machines: vec![],
            switches: vec![],
        }
    }
}
