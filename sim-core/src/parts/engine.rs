//! Intake manifold: a pressure source with its own lag, by what the engine does.
//!
//! At part throttle the engine needs about the same absolute manifold pressure at any altitude, so a
//! gauge there reads about 1 inHg less per 1 000 ft (US Army OD1001, row 4.10).
//! An engine without a throttle (diesel) has all of them near zero. Not modelled: pulses, the throttle body, misfires.

use crate::air::P_SEA_LEVEL_PA;
use crate::flow::iso6358::Iso6358;
use crate::flow::nipple;
use crate::params::part_params;
use crate::parts::elements::{
    Air, Allowance, Behind, Bounds, ByHand, Electric, Lag, Mouth, Passage, Quantity, Seen, Spec, Specified,
    Start, State, Worth,
};

pub use crate::parts::elements::EngineState;

part_params! {
    /// The engine as the circuit sees it: port `manifold` (pneumatic), alternator ports `b_plus`, `ground`.
    pub struct Engine {
        /// Manifold at warm idle, kPa gauge at sea level.
        warm_idle_kpa: -85.0 ..= 0.0,
        /// Manifold at cold fast idle, kPa gauge at sea level.
        cold_idle_kpa: -85.0 ..= 0.0,
        /// Manifold at cruise, kPa gauge at sea level.
        cruise_kpa: -85.0 ..= 0.0,
        /// Manifold on the overrun, kPa gauge at sea level.
        overrun_kpa: -92.0 ..= 0.0,
        /// Manifold with the throttle wide open, kPa gauge.
        wide_open_kpa: -20.0 ..= 0.0,
        /// Time in which the manifold follows, s.
        lag_s: 0.05 ..= 5.0,
        /// Bore of the nipple for the brake hose, mm.
        bore_mm: 2.0 ..= 25.0,
        /// Alternator voltage, V.
        alternator_v: 12.0 ..= 15.5,
        /// Alternator source resistance, ohm.
        alternator_ohm: 0.005 ..= 1.0,
        faults {
            /// Idle vacuum lost to an air leak or late ignition, kPa.
            weak_kpa: 0.0 ..= 50.0,
        }
    }
}

impl Engine {
    /// Absolute manifold pressure it settles at, Pa, on a day of pressure `p_atm` (Pa).
    #[must_use]
    pub fn target_pa(&self, state: EngineState, p_atm: f64) -> f64 {
        let part_throttle =
            |kpa: f64| (P_SEA_LEVEL_PA + (kpa + self.weak_kpa) * 1e3).min(p_atm + self.wide_open_kpa * 1e3);
        match state {
            EngineState::Stopped => p_atm,
            EngineState::ColdIdle => part_throttle(self.cold_idle_kpa),
            EngineState::WarmIdle => part_throttle(self.warm_idle_kpa),
            EngineState::Cruise => part_throttle(self.cruise_kpa),
            EngineState::Overrun => part_throttle(self.overrun_kpa),
            EngineState::WideOpen => p_atm + self.wide_open_kpa * 1e3,
        }
    }

    /// Resistance of the nipple.
    #[must_use]
    pub fn nipple(&self) -> Iso6358 {
        nipple::of_bore_mm(self.bore_mm)
    }
}

impl Specified for Engine {
    const SEEN: Seen = Seen { by_hand: Some(ByHand::Starter), ..Seen::ONE_WAY };

    fn spec(&self, p_atm: f64) -> Spec {
        let alternator = Worth::EngineRuns { g: 1.0 / self.alternator_ohm, emf: self.alternator_v };
        let at = EngineState::ALL.map(|state| self.target_pa(state, p_atm));
        Spec {
            hangs: false,
            air: Air {
                volumes: vec![],
                mouths: vec![Mouth::to(0, Behind::Manifold, Passage::Iso(self.nipple()))],
                flow_paths: vec![],
            },
            electric: Electric::one("alternator", 1, 2, alternator),
            states: vec![State {
                is: Quantity::Manifold,
                // 10 Pa, under the bar of 0.05 kPa.
                bounds: Bounds::positive(Allowance::of(10.0)),
                start: Start::Day,
                follows: Some(Lag::Engine { at, tau_s: self.lag_s }),
            }],
            machines: vec![],
            switches: vec![],
        }
    }
}
