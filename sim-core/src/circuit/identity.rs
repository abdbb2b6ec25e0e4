//! What a state variable is, whose it is, and what it is in a part from the shelf.

use super::layout::{Chamber, Var};
use super::{Circuit, Flags};
use crate::air::{GAMMA, R_AIR};
use crate::parts::PartKind;

impl Circuit {
    /// The part a state variable belongs to.
    pub(super) fn owner(&self, i: usize) -> Option<u16> {
        match self.model.layout.vars[i] {
            Var::Surroundings => None,
            Var::Mass(k) | Var::Energy(k) => Some(self.model.layout.volumes[k as usize].part),
            Var::Winding(p)
            | Var::Case(p)
            | Var::Filament(p)
            | Var::Pointer(p)
            | Var::Charge(p)
            | Var::FuseHeat(p)
            | Var::Manifold(p)
            | Var::Speed(p)
            | Var::RunTime(p)
            | Var::Travel(p) => Some(p),
        }
    }

    /// What a state variable is, whatever its place in the layout.
    pub(super) fn identity(&self, i: usize) -> (Var, Option<Chamber>) {
        match self.model.layout.vars[i] {
            Var::Mass(k) => {
                let v = &self.model.layout.volumes[k as usize];
                (Var::Mass(v.part), Some(v.chamber))
            }
            Var::Energy(k) => {
                let v = &self.model.layout.volumes[k as usize];
                (Var::Energy(v.part), Some(v.chamber))
            }
            other => (other, None),
        }
    }

    /// Value of a state variable of a part from the shelf, in a room of `t_room` K.
    pub(super) fn initial(&self, i: usize, t_room: f64) -> f64 {
        let p = self.day.pressure().pa();
        match self.model.layout.vars[i] {
            Var::Surroundings | Var::Winding(_) | Var::Case(_) | Var::Filament(_) => t_room,
            Var::Pointer(_) | Var::FuseHeat(_) | Var::Speed(_) | Var::RunTime(_) | Var::Travel(_) => 0.0,
            Var::Charge(part) => match &self.assembly.parts[part as usize].kind {
                PartKind::Battery(b) => b.charge,
                _ => 0.0,
            },
            Var::Manifold(_) => p,
            Var::Mass(k) => p * self.model.layout.volumes[k as usize].at_rest_m3 / (R_AIR * t_room),
            Var::Energy(k) => p * self.model.layout.volumes[k as usize].at_rest_m3 / (GAMMA - 1.0),
        }
    }
}

/// Discrete state of a part from the shelf.
pub(super) fn initial_flags(kind: &PartKind) -> Flags {
    Flags { closed: matches!(kind, PartKind::VacuumSwitch(_)), ..Flags::default() }
}
