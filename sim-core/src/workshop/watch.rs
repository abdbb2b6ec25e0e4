//! A watch over what the circuit is told: keys, feet, hands, each with its tick, since the last change of
//! its structure. For traces: with the circuit as it stood then, the stretch can be run again, here or in
//! another program. An attempt never uses it, and it changes no step.

use super::Workshop;
use crate::circuit::{Circuit, Inputs};
use crate::units::Tick;

/// The stretch since the last change of joints, stops, numbers or parts.
#[derive(Clone, Debug)]
pub struct Watch {
    /// The circuit as it stood when the stretch began.
    pub start: Circuit,
    /// From which circuit tick on it was told what.
    pub told: Vec<(Tick, Inputs)>,
}

impl Workshop {
    /// See [`super::Opened::watch`].
    pub(super) fn watch(&mut self) {
        self.watch = Some(Box::new(Watch { start: self.circuit.copy(), told: Vec::new() }));
    }

    /// Before a step: what holds during it.
    pub(super) fn look(&mut self) {
        let Some(watch) = &mut self.watch else { return };
        if watch.start.changes() != self.circuit.changes() {
            watch.start = self.circuit.copy();
            watch.told.clear();
        }
        if watch.told.last().is_none_or(|(_, inputs)| inputs != self.circuit.inputs()) {
            watch.told.push((self.circuit.tick(), self.circuit.inputs().clone()));
        }
    }
}
