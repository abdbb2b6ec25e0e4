//! Test lamp: its filament ([`crate::parts::elements::Filament`]) between two leads.

use crate::params::part_params;
use crate::parts::elements::{
    Air, Allowance, Bounds, Electric, Filament, Lag, Quantity, Seen, Spec, Specified, Start, State, Worth,
};

part_params! {
    /// Test lamp with two leads; ports `a` and `b`.
    pub struct TestLamp {
        /// Rated power, W.
        rated_w: 1.0 ..= 100.0,
        /// Rated voltage, V.
        rated_v: 6.0 ..= 24.0,
        faults {}
    }
}

impl TestLamp {
    /// Its filament.
    #[must_use]
    pub const fn filament(&self) -> Filament {
        Filament { rated_w: self.rated_w, rated_v: self.rated_v }
    }
}

impl Specified for TestLamp {
    const SEEN: Seen = Seen::PIECE;

    fn spec(&self, _: f64) -> Spec {
        let law = self.filament();
        Spec {
            hangs: true,
            air: Air::NONE,
            electric: Electric::one("lamp", 0, 1, Worth::Lamp(law)),
            states: vec![State {
                is: Quantity::Filament,
                bounds: Bounds::positive(Allowance::of(3.0)),
                start: Start::Room,
                follows: Some(Lag::Filament { law, pole: 0 }),
            }],
            machines: vec![],
            switches: vec![],
        }
    }
}
