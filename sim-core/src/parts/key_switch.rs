//! Ignition switch: terminal names are DIN 72552, 30 battery plus, 15 switched plus.

use crate::params::part_params;
use crate::parts::elements::{Air, ByHand, Electric, Seen, Spec, Specified, Worth};

part_params! {
    /// Ignition switch; ports `30` and `15`.
    pub struct KeySwitch {
        /// Resistance of the closed contact, mΩ.
        contact_mohm: 0.5 ..= 1000.0,
        faults {
            /// Conductance of a contact that sticks, siemens; 0 = none. Terminal 15 then stays live with the key off.
            sticks_s: 0.0 ..= 1000.0,
        }
    }
}

impl Specified for KeySwitch {
    const SEEN: Seen = Seen { by_hand: Some(ByHand::Key), ..Seen::PIECE };

    fn spec(&self, _: f64) -> Spec {
        let contact = Worth::KeyOn { g: 1.0 / (self.contact_mohm * 1e-3), weld: self.sticks_s };
        Spec {
            hangs: false,
            air: Air::NONE,
            electric: Electric::one("key", 0, 1, contact),
            states: vec![],
            machines: vec![],
            switches: vec![],
        }
    }
}
