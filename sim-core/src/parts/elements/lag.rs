//! What follows something else with a lag and hardly acts back.

use super::air::Chamber;
use super::filament::Filament;
use super::told::EngineState;

/// What a state variable follows, with the numbers of its law. A pole is named by its number in the part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Lag {
    /// A value told by what the engine does.
    Engine {
        /// Where it settles, by [`EngineState`] in declared order.
        at: [f64; EngineState::ALL.len()],
        /// Time in which it follows, s.
        tau_s: f64,
    },
    /// Time itself while the part's output is driven; fades while not.
    RunTime {
        /// Time in which it fades, s.
        rest_tau_s: f64,
    },
    /// The gauge pressure of a body of air.
    Pressure {
        /// The body.
        chamber: Chamber,
        /// Time in which it follows, s.
        tau_s: f64,
    },
    /// The heat that a filament across this pole makes and loses.
    Filament {
        /// The filament.
        law: Filament,
        /// The pole.
        pole: u8,
    },
    /// What goes through this pole in and out of a battery.
    Charge {
        /// Capacity, A·h.
        capacity_ah: f64,
        /// The pole.
        pole: u8,
    },
    /// The square of what goes through this pole.
    FuseHeat {
        /// Rated current, A.
        rated_a: f64,
        /// The pole.
        pole: u8,
        /// Whether the pole carries it only while a meter is set to amperes.
        in_ampere_mode: bool,
    },
}
