//! Multimeter: input resistance, fused shunt, or its own source, as its dial is set.

use super::fuse::fuse_heat;
use crate::params::part_params;
use crate::parts::elements::{Air, Electric, Meter, Seen, Spec, Specified, Switch, Worth};

part_params! {
    /// Multimeter; ports `v_ohm` (red) and `com` (black).
    pub struct Multimeter {
        /// Input resistance when measuring voltage, MΩ.
        input_megohm: 0.01 ..= 100.0,
        /// Resistance of the shunt and its leads, mΩ.
        shunt_mohm: 1.0 ..= 1000.0,
        /// Resistance of the two leads, ohm.
        leads_ohm: 0.0 ..= 2.0,
        /// Rating of the fuse in the ampere socket, A.
        fuse_a: 0.1 ..= 30.0,
        /// Open-circuit voltage of the ohm range, V.
        ohm_source_v: 0.1 ..= 9.0,
        /// Source resistance of the ohm range, kΩ.
        ohm_source_kohm: 0.1 ..= 100.0,
        faults {}
    }
}

impl Specified for Multimeter {
    const SEEN: Seen = Seen::PIECE;

    fn spec(&self, _: f64) -> Spec {
        let meter = Meter {
            volt: 1e-6 / self.input_megohm,
            ohm: 1e-3 / self.ohm_source_kohm,
            source_v: self.ohm_source_v,
            source_ohm: self.ohm_source_kohm * 1e3,
            leads_ohm: self.leads_ohm,
            ampere: 1.0 / (self.shunt_mohm * 1e-3 + self.leads_ohm),
        };
        Spec {
            hangs: true,
            air: Air::NONE,
            electric: Electric::one("meter", 0, 1, Worth::Meter(meter)),
            states: vec![fuse_heat(self.fuse_a, true)],
            machines: vec![],
            switches: vec![Switch::Fuse],
        }
    }
}
