//! Vacuum switch: closed with no vacuum, opens at its cut-out, closes again at its cut-in.
//!
//! It compares against the atmosphere of the day. The contact is the circuit's discrete state; a welded
//! contact is a bridge beside it. Not modelled: bounce, arcing, a frozen port.

use crate::flow::nipple;
use crate::params::part_params;
use crate::parts::elements::{
    Air, Chamber, Depth, Electric, FlowPath, Mouth, Seen, Spec, Specified, Switch, Volume, Worth,
};

part_params! {
    /// A vacuum switch; ports `vacuum` (pneumatic), `p` and `com` (electrical; the contact lies between).
    pub struct VacuumSwitch {
        /// Opens at this gauge pressure, kPa (negative).
        cut_out_kpa: -95.0 ..= -5.0,
        /// Closes again at this gauge pressure, kPa (negative, above the cut-out).
        cut_in_kpa: -94.0 ..= -2.0,
        /// Resistance of the closed contact, ohm.
        contact_ohm: 0.001 ..= 5.0,
        /// Volume behind the diaphragm, cm³.
        volume_cm3: 2.0 ..= 50.0,
        /// Bore of the nipple, mm.
        bore_mm: 0.5 ..= 10.0,
        faults {
            /// Shift of both points, kPa; negative = opens and closes at deeper vacuum.
            drift_kpa: -40.0 ..= 40.0,
            /// Conductance of a weld across the contact, siemens; 0 = none.
            weld_s: 0.0 ..= 1000.0,
            /// Resistance of a burnt contact on top of the sound one, ohm.
            burnt_ohm: 0.0 ..= 1000000.0,
            /// Leak of the diaphragm to the air, as a hole, mm.
            diaphragm_mm: 0.0 ..= 3.0,
        }
    }
}

impl VacuumSwitch {
    /// Gauge pressure at which the contact opens, Pa.
    #[must_use]
    pub fn opens_at_pa(&self) -> f64 {
        (self.cut_out_kpa + self.drift_kpa) * 1e3
    }

    /// Gauge pressure at which the contact closes, Pa.
    #[must_use]
    pub fn closes_at_pa(&self) -> f64 {
        (self.cut_in_kpa + self.drift_kpa) * 1e3
    }
}

impl Specified for VacuumSwitch {
    const SEEN: Seen = Seen::PIECE;

    fn spec(&self, _: f64) -> Spec {
        let contact = Worth::Contact { g: 1.0 / (self.contact_ohm + self.burnt_ohm), weld: self.weld_s };
        Spec {
            hangs: false,
            air: Air {
                volumes: vec![Volume::small(Depth::End, self.volume_cm3)],
                mouths: vec![Mouth::body(0, nipple::of_bore_mm(self.bore_mm))],
                flow_paths: FlowPath::hole(Chamber::Body, self.diaphragm_mm).into_iter().collect(),
            },
            electric: Electric::one("contact", 1, 2, contact),
            states: vec![],
            machines: vec![],
            switches: vec![Switch::Vacuum {
                chamber: Chamber::Body,
                opens_at_pa: self.opens_at_pa(),
                closes_at_pa: self.closes_at_pa(),
            }],
        }
    }
}
