//! A circuit on its way, and the lane it is in.

use super::super::Pace;
use super::super::trial::Trial;
use crate::units::Tick;

/// A circuit and how far it is to run.
#[derive(Debug)]
pub struct Errand<C> {
    /// The circuit.
    pub circuit: C,
    /// No step goes beyond this tick (when timed); must lie ahead.
    pub to: Tick,
    /// How the clock runs.
    pub pace: Pace,
    /// It comes back at the end of the first step that ends here or later, if not before.
    pub pause: Tick,
    /// It comes back at the end of the first step in which something switched.
    pub on_event: bool,
}

impl<C> Errand<C> {
    /// To `to`, come what may.
    pub fn to(circuit: C, to: Tick, pace: Pace) -> Self {
        Self { circuit, to, pace, pause: to, on_event: false }
    }
}

/// A circuit in its lane.
#[derive(Debug)]
pub(super) struct Runner<C> {
    pub(super) key: usize,
    pub(super) errand: Errand<C>,
    pub(super) trial: Trial,
    /// Events when it set out.
    pub(super) events: usize,
}
