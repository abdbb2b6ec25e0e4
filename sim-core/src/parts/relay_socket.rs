//! Socket of a relay's load side: terminal numbers are DIN 72552, 30 in, 87 out.
//!
//! The relay's blade of 30 sits in a spring clip. A clip that has gone slack heats itself and lets go when it is warm,
//! τ dθ/dt = (i/I)² − θ, off at θ = 1 and on again at θ = 0.1: a contact that comes and goes (common practice, no
//! source; the time is that of a fuse's strip). A bridge that somebody left between 30 and 87 feeds the load whatever
//! the relay does, also with the relay pulled.

use super::fuse::fuse_heat;
use crate::params::part_params;
use crate::parts::elements::{Air, Electric, Pole, Seen, Spec, Specified, Switch, Worth};

part_params! {
    /// Relay socket; ports `30` and `87` towards the wires, `clip` towards the relay's blade of 30.
    pub struct RelaySocket {
        /// Resistance of the clip, mΩ.
        clip_mohm: 0.1 ..= 100.0,
        faults {
            /// Slackness of the clip, 1/A²: one over the square of the current that it carries for ever; 0 = firm.
            slack_per_a2: 0.0 ..= 1.0,
            /// Conductance of a bridge between 30 and 87, siemens; 0 = none.
            bridge_s: 0.0 ..= 1000.0,
        }
    }
}

/// A firm clip carries this for ever, A: far above what any fuse lets through.
const FIRM_A: f64 = 1_000.0;

impl RelaySocket {
    /// Current that the clip carries for ever, A.
    #[must_use]
    pub fn holds_a(&self) -> f64 {
        1.0 / self.slack_per_a2.max(1.0 / (FIRM_A * FIRM_A)).sqrt()
    }
}

impl Specified for RelaySocket {
    const SEEN: Seen = Seen::PIECE;

    fn spec(&self, _: f64) -> Spec {
        let clip = Worth::Contact { g: 1e3 / self.clip_mohm, weld: 0.0 };
        Spec {
            hangs: false,
            air: Air::NONE,
            electric: Electric::of(vec![
                Pole { a: 0, b: 1, name: "clip", worth: clip },
                Pole { a: 0, b: 2, name: "bridge", worth: Worth::Steady(self.bridge_s) },
            ]),
            states: vec![fuse_heat(self.holds_a(), false)],
            machines: vec![],
            switches: vec![Switch::Slack],
        }
    }
}
