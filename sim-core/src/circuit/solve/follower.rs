//! What follows something else with a lag and hardly acts back, its numbers looked up once.

use super::given::Given;
use crate::air::ZERO_CELSIUS_K;
use crate::parts::elements::{EngineState, Filament, MeterMode};

/// Time in which the workshop takes on the air temperature outside, s.
pub(crate) const ROOM_TAU_S: f64 = 5_400.0;

/// A follower.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Follower {
    /// The workshop's temperature.
    Surroundings,
    /// A value told by what the engine does, by its states in declared order.
    Engine { at: [f64; EngineState::ALL.len()], tau_s: f64 },
    /// The running time that the controller of this part reckons with.
    RunTime { part: usize, rest_tau_s: f64 },
    /// The gauge pressure of a volume.
    Pressure { tau_s: f64, volume: usize },
    /// Filament of a lamp.
    Filament { law: Filament, pole: Option<usize> },
    /// Charge of a battery.
    Charge { capacity_ah: f64, pole: Option<usize> },
    /// Heat of a fuse; that of a meter carries current in one mode only.
    FuseHeat { rated_a: f64, pole: Option<usize>, part: usize, in_ampere_mode: bool },
}

impl Follower {
    /// The numbers of its law while `given` holds.
    pub(crate) fn held(&self, given: Given<'_>) -> [f64; 2] {
        let Given { inputs, flags } = given;
        match self {
            Self::Surroundings => [inputs.surroundings_c + ZERO_CELSIUS_K, ROOM_TAU_S],
            Self::Engine { at, tau_s } => [at[inputs.engine.index()], *tau_s],
            Self::RunTime { part, rest_tau_s } => [f64::from(u8::from(flags[*part].closed)), *rest_tau_s],
            Self::Pressure { tau_s, .. } => [0.0, *tau_s],
            Self::Filament { law, .. } => [law.rated_w, law.rated_v],
            Self::Charge { capacity_ah, .. } => [*capacity_ah, 0.0],
            Self::FuseHeat { rated_a, part, in_ampere_mode, .. } => {
                let passes = !in_ampere_mode || inputs.hands[*part].mode == MeterMode::Ampere;
                [f64::from(u8::from(passes)), *rated_a]
            }
        }
    }
}
