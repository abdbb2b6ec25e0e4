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
mod unsound;
mod wiring;

pub(super) use air_net::Node;
pub(super) use layout::{Layout, StateVar};
pub(super) use switches::Switch;
pub(super) use unsound::Unsound;
pub(super) use wiring::Pole;

use crate::air::Day;
use crate::assembly::Assembly;
use crate::circuit::solve::Model;
use air_net::{AirNet, Edge};
use layout::Volume;
use specs::Specs;
use wiring::Wiring;

/// Which state, flow path, node and contact is whose.
#[derive(Clone, Debug, Default)]
pub(super) struct Net {
    pub(super) layout: Layout,
    pub(super) air: AirNet,
    pub(super) wiring: Wiring,
    /// What truly switches.
    pub(super) switches: Vec<Switch>,
}

/// Compiles an assembly on a day.
pub(super) fn compile(assembly: &Assembly, day: &Day) -> Result<(Net, Model), Unsound> {
    of(&Specs::of(assembly, day.pressure().pa()))
}

/// The same parts, each by itself and none taking part: nothing but the room is left to compute.
pub(super) fn bare(assembly: &Assembly, day: &Day) -> (Net, Model) {
    let apart = Assembly { joints: Vec::new(), ..assembly.clone() };
    of(&Specs::idle(&apart, day.pressure().pa())).unwrap_or_default()
}

fn of(specs: &Specs<'_>) -> Result<(Net, Model), Unsound> {
    let (layout, bounds) = Layout::of(specs);
    let air = AirNet::of(specs, &layout)?;
    let wiring = Wiring::of(specs);
    let switches = switches::all(specs, &layout, &wiring);
    let model = equations::of(specs, &layout, &bounds, &air, &wiring)?;
    Ok((Net { layout, air, wiring, switches }, model))
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::assembly::PortRef;
    use crate::circuit::run::slopes::assembly;

    fn compiled(change: impl FnOnce(&mut Specs<'_>)) -> Option<Unsound> {
        let assembly = assembly();
        let mut specs = Specs::of(&assembly, Day::STANDARD.pressure().pa());
        change(&mut specs);
        of(&specs).err()
    }

    #[test]
    fn what_a_part_speaks_of_and_has_not_is_told() {
        assert_eq!(compiled(|_| {}), None);
        let (parts, mut told) = (assembly().parts, 0);
        for (i, part) in parts.iter().enumerate() {
            if part.kind.spec(0.0).air.mouths.is_empty() {
                continue;
            }
            let why = compiled(|specs| specs.parts[i].air.mouths.clear());
            assert!(
                matches!(why, Some(Unsound::NoMouth(PortRef { part, .. })) if usize::from(part) == i),
                "{}: {why:?}",
                part.id
            );
            // Whatever else is left out is told, or nothing has spoken of it.
            for why in [
                compiled(|specs| specs.parts[i].states.clear()),
                compiled(|specs| specs.parts[i].air.volumes.clear()),
                compiled(|specs| specs.parts[i].electric.poles.clear()),
            ] {
                let part = why.and_then(Unsound::part);
                assert!(why.is_none() || part == Some(i as u16), "{why:?}");
                told += usize::from(why.is_some());
            }
        }
        assert!(3 <= told, "{told}");
    }
}
