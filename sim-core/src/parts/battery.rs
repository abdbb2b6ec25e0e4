//! Battery: open-circuit voltage by charge (row 6.7), internal resistance.
//!
//! Not modelled: surface charge and diffusion, its temperature.

use crate::params::part_params;
use crate::parts::elements::{
    self, Air, Allowance, Bounds, Electric, Lag, Quantity, Seen, Spec, Specified, Start, State, Worth,
};

part_params! {
    /// Lead-acid battery; ports `plus` and `minus`.
    pub struct Battery {
        /// Capacity, A·h.
        capacity_ah: 5.0 ..= 200.0,
        /// State of charge, share of capacity.
        charge: 0.0 ..= 1.0,
        /// Internal resistance, mΩ.
        internal_mohm: 1.0 ..= 500.0,
        faults {
            /// Further internal resistance of an aged battery, mΩ.
            aged_mohm: 0.0 ..= 2000.0,
        }
    }
}

impl Battery {
    /// Open-circuit voltage at charge `z`, V; see [`crate::parts::elements::open_circuit_v`].
    #[must_use]
    pub fn open_circuit_v(z: f64) -> f64 {
        elements::open_circuit_v(z)
    }
}

impl Specified for Battery {
    const SEEN: Seen = Seen::PIECE;

    fn spec(&self, _: f64) -> Spec {
        Spec {
            hangs: false,
            air: Air::NONE,
            electric: Electric::one(
                "battery",
                0,
                1,
                Worth::Battery(1e3 / (self.internal_mohm + self.aged_mohm)),
            ),
            states: vec![State {
                is: Quantity::Charge,
                bounds: Bounds::any(Allowance::of(1e-6)),
                start: Start::At(self.charge),
                follows: Some(Lag::Charge { capacity_ah: self.capacity_ah, pole: 0 }),
            }],
            machines: vec![],
            switches: vec![],
        }
    }
}
