//! Fuse: a heated strip, τ dθ/dt = (i/I_n)² − θ, that melts at θ = 1.30²: between the 1.10 I_n it must carry
//! for ever and the 1.35 I_n (conventional tripping current, ISO 8820-3) at which it must melt within minutes.

use crate::params::part_params;
use crate::parts::elements::{
    Air, Allowance, Bounds, Electric, FUSE_MELTS_AT, Lag, Quantity, Seen, Spec, Specified, Start, State,
    Switch, Worth,
};

part_params! {
    /// Blade fuse; ports `a` and `b`.
    pub struct Fuse {
        /// Rated current, A.
        rating_a: 1.0 ..= 100.0,
        /// Resistance, mΩ.
        mohm: 0.2 ..= 500.0,
        faults {
            /// Resistance of a corroded holder on top, ohm.
            corroded_ohm: 0.0 ..= 1000.0,
        }
    }
}

impl Specified for Fuse {
    const SEEN: Seen = Seen::PIECE;

    fn spec(&self, _: f64) -> Spec {
        Spec {
            hangs: false,
            air: Air::NONE,
            electric: Electric::one(
                "fuse",
                0,
                1,
                Worth::Intact(1.0 / (self.mohm * 1e-3 + self.corroded_ohm)),
            ),
            states: vec![fuse_heat(self.rating_a, false)],
            machines: vec![],
            switches: vec![Switch::Fuse],
        }
    }
}

/// The heat of a fuse strip in the first two-pole of a part; of a meter it carries current in one mode only.
pub(super) fn fuse_heat(rated_a: f64, in_ampere_mode: bool) -> State {
    State {
        is: Quantity::FuseHeat,
        // Close to melting it matters when.
        bounds: Bounds::any(Allowance { absolute: 0.002 * FUSE_MELTS_AT, share: 1e-3 }),
        start: Start::At(0.0),
        follows: Some(Lag::FuseHeat { rated_a, pole: 0, in_ampere_mode }),
    }
}
