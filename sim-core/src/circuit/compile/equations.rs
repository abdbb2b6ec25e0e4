//! The equations: everything looked up once, so that a step searches for nothing.

use super::air_net::{AirNet, Edge, Node};
use super::layout::{Layout, StateVar, Volume};
use super::specs::Specs;
use super::unsound::Unsound;
use super::wiring::Wiring;
use super::{followers, places, poles};
use crate::circuit::solve::linear::{MOST, Plan};
use crate::circuit::solve::{
    Body, End, FlowPathAt, FlowPathPlaces, From, Model, N_BALANCES, Network, Numbers, OtherPlaces, PistonAt,
    PoleLaw, Rotor, RotorAt, at_first,
};
use crate::parts::elements::{Bounds, Machine, PistonLaw, Quantity};

pub(super) fn of(
    specs: &Specs<'_>,
    layout: &Layout,
    bounds: &[Bounds],
    air: &AirNet,
    wiring: &Wiring,
) -> Result<Model, Unsound> {
    let n = layout.vars.len();
    if MOST < n + N_BALANCES {
        return Err(Unsound::TooMuch);
    }
    let machines = Machines::of(specs, layout, wiring)?;
    let lines = Lines::of(layout, &machines)?;
    let (flow_paths, in_hands) = lines.flow_paths(&air.edges)?;
    let (poles, branches) = poles::all(specs, layout, wiring, &machines.rotors);
    let body = |v: &Volume| Body {
        at_rest_m3: v.at_rest_m3,
        per_travel_m2: v.per_travel_m2.unwrap_or(0.0),
        h_a: v.w_per_k,
    };
    let numbers = Numbers {
        p_atm: specs.p_atm,
        bodies: layout.volumes.iter().map(body).collect(),
        laws: air.edges.iter().map(|e| e.law).collect(),
        soft: air.edges.iter().filter_map(|e| e.soft).collect(),
        pistons: machines.piston_laws,
        rotors: machines.rotor_laws,
    };
    let mut model = Model {
        n,
        numbers,
        in_hands,
        lively: (0..poles.len()).filter(|i| PoleLaw::is_lively(&poles[*i].law)).collect(),
        least: bounds.iter().map(|b| b.least).collect(),
        allowances: bounds.iter().map(|b| b.allowance).collect(),
        conserved: lines.mass_at.iter().flat_map(|i| [*i, i + 1]).chain(n..n + N_BALANCES).collect(),
        mass_at: lines.mass_at,
        travel_at: lines.travel_at,
        rotors: machines.rotors,
        pistons: machines.pistons,
        manifolds: lines.manifolds.iter().map(|(_, i)| *i).collect(),
        flow_paths,
        network: Network::of(wiring.n, branches).ok_or(Unsound::TooMuch)?,
        poles,
        followers: followers::all(specs, layout, wiring),
        places: OtherPlaces::default(),
        plan: Plan::default(),
    };
    places::find_places(&mut model)?;
    Ok(model)
}

/// A state that the layout has, because the part that speaks of it has it.
fn at(layout: &Layout, var: StateVar) -> Result<usize, Unsound> {
    layout.index(var).ok_or(match var {
        StateVar::Of(_, part) => Unsound::NoState(Some(part)),
        StateVar::Surroundings | StateVar::Mass(_) | StateVar::Energy(_) => Unsound::NoState(None),
    })
}

fn small(i: usize) -> Result<u8, Unsound> {
    u8::try_from(i).map_err(|_| Unsound::TooMuch)
}

/// Pistons and rotors, with their laws.
#[derive(Default)]
struct Machines {
    pistons: Vec<PistonAt>,
    piston_laws: Vec<PistonLaw>,
    rotors: Vec<RotorAt>,
    rotor_laws: Vec<Rotor>,
}

impl Machines {
    fn of(specs: &Specs<'_>, layout: &Layout, wiring: &Wiring) -> Result<Self, Unsound> {
        let mut all = Self::default();
        for (part, spec) in specs.active() {
            let volume = |c| layout.volume_of(part, c).ok_or(Unsound::NoAir(part, c));
            let at = |is| at(layout, StateVar::Of(is, part));
            for machine in &spec.machines {
                match *machine {
                    Machine::Piston { law, front, rear } => {
                        let (front, rear) = (volume(front)?, volume(rear)?);
                        all.pistons.push(PistonAt { part, travel: at(Quantity::Travel)?, front, rear });
                        all.piston_laws.push(law);
                    }
                    Machine::Rotor { motor, compression, compression_p, inlet, pole } => {
                        all.rotors.push(RotorAt {
                            winding: at(Quantity::Winding)?,
                            case: at(Quantity::Case)?,
                            speed: at(Quantity::Speed)?,
                            inlet: volume(inlet)?,
                            pole: wiring.pole_of(part, pole).ok_or(Unsound::NoPole(part))?,
                        });
                        all.rotor_laws.push(Rotor { motor, compression, compression_p });
                    }
                }
            }
        }
        Ok(all)
    }
}

/// What the ends of ways look up.
struct Lines<'a> {
    layout: &'a Layout,
    mass_at: Vec<usize>,
    travel_at: Vec<Option<usize>>,
    /// Per manifold, its part and the index of its pressure.
    manifolds: Vec<(u16, usize)>,
    /// Per piston, its part.
    pistons: Vec<u16>,
}

impl<'a> Lines<'a> {
    fn of(layout: &'a Layout, machines: &Machines) -> Result<Self, Unsound> {
        let travel = |v: &Volume| {
            v.per_travel_m2.map(|_| at(layout, StateVar::Of(Quantity::Travel, v.part))).transpose()
        };
        let manifold = |(i, var): (usize, &StateVar)| match *var {
            StateVar::Of(Quantity::Manifold, part) => Some((part, i)),
            StateVar::Of(..) | StateVar::Surroundings | StateVar::Mass(_) | StateVar::Energy(_) => None,
        };
        let masses = (0..layout.volumes.len()).map(|k| at(layout, StateVar::Mass(k as u16)));
        Ok(Self {
            layout,
            mass_at: masses.collect::<Result<_, _>>()?,
            travel_at: layout.volumes.iter().map(travel).collect::<Result<_, _>>()?,
            manifolds: layout.vars.iter().enumerate().filter_map(manifold).collect(),
            pistons: machines.pistons.iter().map(|p| p.part).collect(),
        })
    }

    /// All ways, and the parts whose hands work them, a way each.
    fn flow_paths(&self, edges: &[Edge]) -> Result<(Vec<FlowPathAt>, Vec<u16>), Unsound> {
        let (mut flow_paths, mut in_hands, mut n_soft) = (Vec::new(), Vec::new(), 0);
        for e in edges {
            let state = match e.law.state() {
                Some(is) => {
                    let i = at(self.layout, StateVar::Of(is, e.part))?;
                    Some((small(i)?, self.places(e, i)))
                }
                None => None,
            };
            let mut hand = None;
            if e.law.is_in_hands() {
                hand = Some(small(in_hands.len())?);
                in_hands.push(e.part);
            }
            let mut soft = None;
            if e.soft.is_some() {
                soft = Some(small(n_soft)?);
                n_soft += 1;
            }
            let piston =
                if e.law.is_lifted() { self.pistons.iter().position(|p| *p == e.part) } else { None };
            let piston = piston.map(small).transpose()?;
            flow_paths.push(FlowPathAt {
                ends: [self.end(e, e.a)?, self.end(e, e.b)?],
                state,
                soft,
                hand,
                piston,
            });
        }
        Ok((flow_paths, in_hands))
    }

    /// Rows of mass and enthalpy: a volume's or the balances'.
    fn rows(&self, node: Node) -> (usize, usize) {
        let n = self.layout.vars.len();
        match node {
            Node::Volume(k) => (self.mass_at[k], self.mass_at[k] + 1),
            Node::Atmosphere | Node::Manifold(_) => (n, n + 1),
        }
    }

    fn places(&self, edge: &Edge, column: usize) -> FlowPathPlaces {
        let (a, b) = (self.rows(edge.a), self.rows(edge.b));
        [a.0, b.0, a.1, b.1].map(|row| at_first(self.layout.vars.len(), row, column))
    }

    fn end(&self, edge: &Edge, node: Node) -> Result<End, Unsound> {
        let (mass, enthalpy) = self.rows(node);
        let n_volumes = self.layout.volumes.len();
        let at = |column| self.places(edge, column);
        let (gas, from) = match node {
            Node::Volume(k) => {
                let travel = self.travel_at[k].map(|i| small(i).map(|s| (s, at(i)))).transpose()?;
                let (by_mass, by_energy) = (at(mass), at(enthalpy));
                (k, From::Volume { k: small(k)?, mass: small(mass)?, travel, by_mass, by_energy })
            }
            Node::Atmosphere => (n_volumes, From::Room(at(0))),
            Node::Manifold(part) => match self.manifolds.iter().position(|(e, _)| *e == part) {
                Some(e) => {
                    let (pressure, by_pressure) = (small(self.manifolds[e].1)?, at(self.manifolds[e].1));
                    (n_volumes + 1 + e, From::Manifold { pressure, by_room: at(0), by_pressure })
                }
                None => (n_volumes, From::Room(at(0))),
            },
        };
        Ok(End { gas: small(gas)?, mass: small(mass)?, enthalpy: small(enthalpy)?, from })
    }
}
