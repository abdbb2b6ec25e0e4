//! Fused lead with a push button.

use super::fuse::fuse_heat;
use crate::params::part_params;
use crate::parts::elements::{Air, Electric, Seen, Spec, Specified, Switch, Worth};

part_params! {
    /// Fused lead with a push button; ports `a` and `b`, joined while the button is pressed.
    pub struct PushLead {
        /// Resistance while pressed, mΩ.
        mohm: 1.0 ..= 1000.0,
        /// Rating of its fuse, A.
        fuse_a: 1.0 ..= 40.0,
        faults {}
    }
}

impl Specified for PushLead {
    const SEEN: Seen = Seen::PIECE;

    fn spec(&self, _: f64) -> Spec {
        Spec {
            hangs: true,
            air: Air::NONE,
            electric: Electric::one("push_lead", 0, 1, Worth::Pressed(1.0 / (self.mohm * 1e-3))),
            states: vec![fuse_heat(self.fuse_a, false)],
            machines: vec![],
            switches: vec![Switch::Fuse],
        }
    }
}
