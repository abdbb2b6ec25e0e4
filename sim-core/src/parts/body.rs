//! Car body, terminal 31 (DIN 72552): one piece of metal, which voltages are told against.

use crate::params::part_params;
use crate::parts::elements::{Air, Electric, Seen, Spec, Specified};

part_params! {
    /// Car body: one piece of metal with earth points `31a` to `31d`.
    pub struct Body {
        /// Unused resistance between the points, mΩ; the sheet is taken as one node.
        sheet_mohm: 0.0 ..= 10.0,
        faults {}
    }
}

impl Specified for Body {
    const SEEN: Seen = Seen::SHEET;

    fn spec(&self, _: f64) -> Spec {
        Spec {
            hangs: false,
            air: Air::NONE,
            electric: Electric { poles: vec![], earth: true },
            states: vec![],
            machines: vec![],
            switches: vec![],
        }
    }
}
