//! What a part from the shelf brings: the values of its states, and its contacts.

use super::super::compile::{Net, StateVar};
use super::super::solve::Flags;
use super::Circuit;
use crate::air::{GAMMA, R_AIR};
use crate::parts::elements::Start;

impl Circuit {
    /// Value of a state variable of a part from the shelf, in a room of `t_room` K.
    pub(super) fn initial(&self, i: usize, t_room: f64) -> f64 {
        let p = self.day.pressure().pa();
        let at_rest_m3 = |k: u16| self.net.layout.volumes[usize::from(k)].at_rest_m3;
        match self.net.layout.vars[i] {
            StateVar::Mass(k) => p * at_rest_m3(k) / (R_AIR * t_room),
            StateVar::Energy(k) => p * at_rest_m3(k) / (GAMMA - 1.0),
            StateVar::Surroundings | StateVar::Of(..) => match self.net.layout.starts[i] {
                Start::Room => t_room,
                Start::Day => p,
                Start::At(value) => value,
            },
        }
    }
}

/// Discrete state of a part from the shelf.
pub(super) fn flags(net: &Net, part: usize) -> Flags {
    let closed = net.switches.iter().any(|s| s.part() == part && s.is_closed_at_first());
    Flags { closed, ..Flags::default() }
}
