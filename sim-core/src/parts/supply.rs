//! Bench supply: a voltage behind a resistance.

use crate::params::part_params;
use crate::parts::elements::{Air, Electric, Seen, Spec, Specified, Worth};

part_params! {
    /// Bench supply; ports `plus` and `minus`.
    pub struct Supply {
        /// Voltage, V.
        volt: 0.0 ..= 20.0,
        /// Source resistance, mΩ.
        source_mohm: 0.1 ..= 1000.0,
        faults {}
    }
}

impl Specified for Supply {
    const SEEN: Seen = Seen::PIECE;

    fn spec(&self, _: f64) -> Spec {
        let source = Worth::Source { g: 1e3 / self.source_mohm, emf: self.volt };
        Spec {
            hangs: false,
            air: Air::NONE,
            electric: Electric::one("supply", 0, 1, source),
            states: vec![],
            machines: vec![],
            switches: vec![],
        }
    }
}
