//! Relay: terminal names are DIN 72552, 85/86 coil, 30 and 87 contact.
//!
//! Not modelled: contact bounce, coil inductance.

use crate::params::part_params;
use crate::parts::elements::{Air, Electric, Pole, Seen, Spec, Specified, Switch, Worth};

part_params! {
    /// Relay with one make contact; ports `30`, `87`, `85`, `86`.
    pub struct Relay {
        /// Coil resistance, ohm.
        coil_ohm: 10.0 ..= 1000.0,
        /// Coil voltage at which it pulls in, V.
        pull_in_v: 2.0 ..= 12.0,
        /// Coil voltage at which it drops out, V.
        drop_out_v: 0.5 ..= 8.0,
        /// Resistance of the closed contact, mΩ.
        contact_mohm: 0.5 ..= 1000.0,
        faults {
            /// Conductance of a weld across the contact, siemens; 0 = none.
            weld_s: 0.0 ..= 1000.0,
            /// Resistance of a burnt contact on top of the sound one, ohm.
            burnt_ohm: 0.0 ..= 1000000.0,
            /// Resistance of a corroded coil terminal, ohm; a million = open.
            coil_open_ohm: 0.0 ..= 1000000.0,
        }
    }
}

impl Specified for Relay {
    const SEEN: Seen = Seen::PIECE;

    fn spec(&self, _: f64) -> Spec {
        let contact =
            Worth::Contact { g: 1.0 / (self.contact_mohm * 1e-3 + self.burnt_ohm), weld: self.weld_s };
        let coil = Worth::Steady(1.0 / (self.coil_ohm + self.coil_open_ohm));
        Spec {
            hangs: false,
            air: Air::NONE,
            electric: Electric::of(vec![
                Pole { a: 0, b: 1, name: "contact", worth: contact },
                Pole { a: 3, b: 2, name: "coil", worth: coil },
            ]),
            states: vec![],
            machines: vec![],
            switches: vec![Switch::Relay {
                coil: 1,
                share: self.coil_ohm / (self.coil_ohm + self.coil_open_ohm),
                pull_in_v: self.pull_in_v,
                drop_out_v: self.drop_out_v,
            }],
        }
    }
}
