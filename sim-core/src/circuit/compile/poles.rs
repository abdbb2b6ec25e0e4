//! What each two-pole is worth, with the states and air that it follows looked up.

use super::layout::{Layout, StateVar};
use super::specs::Specs;
use super::wiring::Wiring;
use crate::circuit::solve::{Branch, PoleAt, PoleLaw, PoleState, RotorAt};
use crate::parts::elements::{Quantity, Worth};

/// The two-poles in part order, and the branches of the network that they are.
pub(super) fn all(
    specs: &Specs<'_>,
    layout: &Layout,
    wiring: &Wiring,
    rotors: &[RotorAt],
) -> (Vec<PoleAt>, Vec<Branch>) {
    let worths = specs.active().flat_map(|(part, s)| s.electric.poles.iter().map(move |p| (part, p.worth)));
    worths
        .zip(&wiring.poles)
        .map(|((part, worth), pole)| {
            let varies = worth.varies();
            let at = PoleAt { part, law: law(part, &worth, layout, rotors), varies };
            let (node_a, node_b) = (pole.node_a, pole.node_b);
            (at, Branch { node_a, node_b, varies, is_source: worth.is_source() })
        })
        .unzip()
}

fn law(part: u16, worth: &Worth, layout: &Layout, rotors: &[RotorAt]) -> PoleLaw {
    let index = |is| layout.index(StateVar::Of(is, part));
    match *worth {
        Worth::Steady(g) => PoleLaw::Steady(PoleState { g, emf: 0.0 }),
        Worth::Source { g, emf } => PoleLaw::Steady(PoleState { g, emf }),
        Worth::Contact { g, weld } => PoleLaw::Contact { g, weld },
        Worth::Intact(g) => PoleLaw::Intact(g),
        Worth::Awake { g, emf } => PoleLaw::Awake(PoleState { g, emf }),
        Worth::KeyOn { g, weld } => PoleLaw::KeyOn { g, weld },
        Worth::EngineRuns { g, emf } => PoleLaw::EngineRuns(PoleState { g, emf }),
        Worth::Battery(g) => PoleLaw::Battery { g, charge: index(Quantity::Charge) },
        Worth::Motor => {
            let speed = index(Quantity::Speed);
            let rotor = rotors.iter().position(|r| Some(r.speed) == speed);
            rotor.map_or(PoleLaw::Steady(PoleState::default()), PoleLaw::Motor)
        }
        Worth::Characteristic { characteristic, lower } => PoleLaw::Characteristic {
            characteristic,
            lower,
            volume: layout.volume_of(part, characteristic.chamber),
        },
        Worth::Lamp(law) => PoleLaw::Lamp { law, filament: index(Quantity::Filament) },
        Worth::Meter(meter) => PoleLaw::Meter(meter),
        Worth::Pressed(g) => PoleLaw::Pressed(g),
    }
}
