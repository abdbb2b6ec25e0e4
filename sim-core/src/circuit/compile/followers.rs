//! What follows something else with a lag, with the air and two-poles that it follows looked up.

use super::layout::{Layout, StateVar};
use super::specs::Specs;
use super::wiring::Wiring;
use crate::circuit::solve::Follower;
use crate::parts::elements::Lag;

/// All of an assembly, each with its row; what a machine moves is not among them.
pub(super) fn all(specs: &Specs<'_>, layout: &Layout, wiring: &Wiring) -> Vec<(usize, Follower)> {
    let of = |var: &StateVar| match *var {
        StateVar::Surroundings => Some(Follower::Surroundings),
        StateVar::Of(is, part) => follower(part, specs.state(part, is)?.follows?, layout, wiring),
        StateVar::Mass(_) | StateVar::Energy(_) => None,
    };
    layout.vars.iter().enumerate().filter_map(|(row, var)| Some((row, of(var)?))).collect()
}

fn follower(part: u16, lag: Lag, layout: &Layout, wiring: &Wiring) -> Option<Follower> {
    let pole = |pole| wiring.pole_of(part, pole);
    Some(match lag {
        Lag::Engine { at, tau_s } => Follower::Engine { at, tau_s },
        Lag::RunTime { rest_tau_s } => Follower::RunTime { part: usize::from(part), rest_tau_s },
        Lag::Pressure { chamber, tau_s } => {
            Follower::Pressure { tau_s, volume: layout.volume_of(part, chamber)? }
        }
        Lag::Filament { law, pole: p } => Follower::Filament { law, pole: pole(p) },
        Lag::Charge { capacity_ah, pole: p } => Follower::Charge { capacity_ah, pole: pole(p) },
        Lag::FuseHeat { rated_a, pole: p, in_ampere_mode } => {
            Follower::FuseHeat { rated_a, pole: pole(p), part: usize::from(part), in_ampere_mode }
        }
    })
}
