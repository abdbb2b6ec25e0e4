//! Where everything stands in the state vector.
//!
//! Every part of the assembly owns its variables whether it is joined or not, so that opening and
//! making joints keeps its air, heat and charge. Instruments that hang on the board own none.
//! The order puts leaves before hubs: eliminated in this order the Jacobian fills in hardly at all.

use super::specs::Specs;
use crate::parts::elements::{Allowance, Bounds, Chamber, Depth, Quantity, Start};

/// What a state variable is. Units: kg, J, and those of [`Quantity`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum StateVar {
    /// Temperature of the surroundings, K.
    Surroundings,
    /// A state of a part.
    Of(Quantity, u16),
    /// Mass in a volume, kg; volumes are numbered as in [`Layout::volumes`].
    Mass(u16),
    /// Internal energy in a volume, J.
    Energy(u16),
}

impl StateVar {
    /// Its place in the order of elimination.
    fn order(self) -> (u8, u16, u16) {
        match self {
            Self::Surroundings => (0, 0, 0),
            Self::Of(is, part) if is.is_hub() => (3, is as u16, part),
            Self::Of(is, part) => (1, is as u16, part),
            // `Mass` and `Energy` of one volume stay side by side.
            Self::Mass(k) => (2, k, 0),
            Self::Energy(k) => (2, k, 1),
        }
    }
}

/// Of a mass or an energy: some 8 Pa on pressures, well under the bar of 0.05 kPa after many steps.
const OF_AIR: Bounds = Bounds::positive(Allowance { absolute: 0.0, share: 2e-4 });

/// A body of air.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Volume {
    /// The part it belongs to.
    pub(crate) part: u16,
    /// Which one of the part's.
    pub(crate) chamber: Chamber,
    /// Volume at rest, m³.
    pub(crate) at_rest_m3: f64,
    /// Change per metre of travel of the part's piston, m², if that moves its wall.
    pub(crate) per_travel_m2: Option<f64>,
    /// Heat transfer to the wall, W/K.
    pub(crate) w_per_k: f64,
}

/// The state vector's plan.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Layout {
    /// Variables in order.
    pub(crate) vars: Vec<StateVar>,
    /// Per variable, what it is in a part from the shelf.
    pub(crate) starts: Vec<Start>,
    /// Bodies of air, leaves before hubs.
    pub(crate) volumes: Vec<Volume>,
}

impl Layout {
    /// The layout, and what bounds each variable.
    pub(super) fn of(specs: &Specs<'_>) -> (Self, Vec<Bounds>) {
        let mut volumes: Vec<(Depth, Volume)> = Vec::new();
        let mut vars = vec![(StateVar::Surroundings, Bounds::TEMPERATURE, Start::Room)];
        for (part, spec) in specs.active() {
            volumes.extend(spec.air.volumes.iter().map(|v| {
                let volume = Volume {
                    part,
                    chamber: v.chamber,
                    at_rest_m3: v.m3,
                    per_travel_m2: v.per_travel_m2,
                    w_per_k: v.w_per_k,
                };
                (v.depth, volume)
            }));
            vars.extend(spec.states.iter().map(|s| (StateVar::Of(s.is, part), s.bounds, s.start)));
        }
        volumes.sort_by_key(|(depth, v)| (*depth, v.part));
        let volumes: Vec<Volume> = volumes.into_iter().map(|(_, v)| v).collect();
        for k in 0..volumes.len() as u16 {
            vars.push((StateVar::Mass(k), OF_AIR, Start::Day));
            vars.push((StateVar::Energy(k), OF_AIR, Start::Day));
        }
        vars.sort_by_key(|(v, ..)| v.order());
        let layout = Self {
            vars: vars.iter().map(|v| v.0).collect(),
            starts: vars.iter().map(|v| v.2).collect(),
            volumes,
        };
        (layout, vars.iter().map(|v| v.1).collect())
    }

    pub(crate) fn index(&self, var: StateVar) -> Option<usize> {
        self.vars.iter().position(|v| *v == var)
    }

    pub(crate) fn volume_of(&self, part: u16, chamber: Chamber) -> Option<usize> {
        self.volumes.iter().position(|v| v.part == part && v.chamber == chamber)
    }

    /// Name of a volume of the part called `id`.
    pub(crate) fn air_name(&self, k: usize, id: &str) -> String {
        match self.volumes[k].chamber {
            Chamber::Body => id.to_owned(),
            Chamber::Front => format!("{id}.front"),
            Chamber::Rear => format!("{id}.rear"),
        }
    }

    /// The part a state variable belongs to.
    pub(crate) fn owner(&self, i: usize) -> Option<u16> {
        match self.vars[i] {
            StateVar::Surroundings => None,
            StateVar::Mass(k) | StateVar::Energy(k) => Some(self.volumes[usize::from(k)].part),
            StateVar::Of(_, part) => Some(part),
        }
    }

    /// What a state variable is, whatever its place in the layout: a volume's by its part and chamber.
    pub(crate) fn identity(&self, i: usize) -> (StateVar, Option<Chamber>) {
        let volume = |k: u16| &self.volumes[usize::from(k)];
        match self.vars[i] {
            StateVar::Mass(k) => (StateVar::Mass(volume(k).part), Some(volume(k).chamber)),
            StateVar::Energy(k) => (StateVar::Energy(volume(k).part), Some(volume(k).chamber)),
            var @ (StateVar::Surroundings | StateVar::Of(..)) => (var, None),
        }
    }
}
