//! Compile: what the parts of an assembly say of themselves, made into equations.
//!
//! Parts say what they are made of ([`crate::parts::elements`]); joints, stops and open ports say how it hangs
//! together. Out of it come the equations ([`Model`]) and, beside them, which state, way and node is whose
//! ([`Net`]). Nothing here knows a kind of part.

mod air_net;
mod equations;
mod followers;
mod layout;
mod places;
mod poles;
mod specs;
mod switches;
mod wiring;

pub(super) use air_net::Node;
pub(super) use layout::{Layout, Var};
pub(super) use switches::Switch;
pub(super) use wiring::Pole;

use crate::air::Day;
use crate::assembly::Assembly;
use crate::circuit::solve::Model;
use air_net::{AirNet, Edge};
use layout::Volume;
use specs::Specs;
use wiring::Wiring;

/// Which state, way for air, node and contact is whose.
#[derive(Clone, Debug)]
pub(super) struct Net {
    pub(super) layout: Layout,
    pub(super) air: AirNet,
    pub(super) wiring: Wiring,
    /// What truly switches.
    pub(super) switches: Vec<Switch>,
}

/// Compiles an assembly on a day.
pub(super) fn compile(assembly: &Assembly, day: &Day) -> (Net, Model) {
    let specs = Specs::of(assembly, day.pressure().pa());
    let (layout, bounds) = Layout::of(&specs);
    let air = AirNet::of(&specs, &layout);
    let wiring = Wiring::of(&specs);
    let switches = switches::all(&specs, &layout, &wiring);
    let model = equations::of(&specs, &layout, &bounds, &air, &wiring);
    (Net { layout, air, wiring, switches }, model)
}

/// Number of state variables of an assembly.
pub(super) fn n_states(assembly: &Assembly) -> usize {
    Layout::of(&Specs::of(assembly, Day::STANDARD.pressure().pa())).1.len()
}

impl Net {
    /// Whether another differs in numbers only.
    pub(super) fn has_shape_of(&self, other: &Self) -> bool {
        let same_bodies = |(a, b): (&Volume, &Volume)| (a.part, a.chamber) == (b.part, b.chamber);
        let same_ways = |(a, b): (&Edge, &Edge)| {
            (a.a, a.b, a.part) == (b.a, b.b, b.part)
                && a.law.is_like(&b.law)
                && a.soft.is_some() == b.soft.is_some()
        };
        self.layout.vars == other.layout.vars
            && self.air.edges.len() == other.air.edges.len()
            && self.wiring.poles == other.wiring.poles
            && self.wiring.n == other.wiring.n
            && self.layout.volumes.iter().zip(&other.layout.volumes).all(same_bodies)
            && self.air.edges.iter().zip(&other.air.edges).all(same_ways)
    }
}
