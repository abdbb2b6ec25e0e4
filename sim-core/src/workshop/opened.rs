//! A workshop with its hood open: the one way by which true values leave the core.
//!
//! A person at a car knows what instruments and senses show. So does whoever holds a [`Workshop`]: it tells what can be
//! seen, and nothing of the circuit, of the drawn world or of what is wrong. All of that is told here, and an `Opened`
//! is had in two ways only:
//!
//! - [`Opened::of`]: by whoever brings the hidden numbers along. The marker's hypothetical cars, a trace, a measured
//!   case, practice with the hood open on purpose: what is told was known before.
//! - [`Opened::after`]: of a car that has been handed back. The attempt is over, and so is the secret.
//!
//! There is no way from a workshop at which somebody works. Neither can one be copied and its copy handed back, and an
//! `Opened` lends out its workshop to look at, never to change: nobody can put another one in its place.

use std::ops::Deref;

use super::exchange::{Beside, at_once};
use super::recorder::TraceRow;
use super::watch::Watch;
use super::{Outcome, Setup, Workshop};
use crate::action::Action;
use crate::circuit::Circuit;
use crate::observe::{Observed, Predicted};
use crate::units::Tick;
use crate::world::World;

/// A workshop whose true values may be known.
#[derive(Debug)]
pub struct Opened {
    workshop: Workshop,
    predicted: Option<Predicted>,
}

impl Opened {
    /// Brings a car in whose hidden numbers are known to the caller: `world` is his.
    #[must_use]
    pub fn of(setup: Setup, world: World) -> Self {
        at_once(Self::of_beside(setup, world, None))
    }

    /// As [`Opened::of`], with the circuit run beside others.
    pub async fn of_beside(setup: Setup, world: World, beside: Beside<'_>) -> Self {
        Self { workshop: Workshop::new_beside(setup, world, beside).await, predicted: None }
    }

    /// The car of a finished attempt; `None` when it has not been handed back
    /// ([`View::handed_back`](super::View::handed_back) says so before).
    #[must_use]
    pub fn after(workshop: Workshop) -> Option<Self> {
        workshop.state.handed_back.then_some(Self { workshop, predicted: None })
    }

    /// Shuts the hood again.
    #[must_use]
    pub fn shut(self) -> Workshop {
        self.workshop
    }

    /// The circuit: pressures (absolute), flows, voltages, currents, temperatures of every part.
    #[must_use]
    pub fn circuit(&self) -> &Circuit {
        &self.workshop.circuit
    }

    /// The hidden numbers: tolerances, faults, instrument errors.
    #[must_use]
    pub fn world(&self) -> &World {
        &self.workshop.world
    }

    /// Repair units that are outside limits now (indices into `car.units`, rising): those with a number outside its
    /// tolerance's limit, or at or beyond a fault's lowest severity.
    #[must_use]
    pub fn units_outside_limits(&self) -> Vec<u16> {
        self.workshop.units_outside_limits()
    }

    /// What the model says an observation would be now, in the unit of its scale ([`Workshop::scale`]), before
    /// instrument error and rounding.
    ///
    /// [`Predicted::Blank`] when the instrument is unknown, off, or not connected as `what` says. A time
    /// is found by running a copy of the car on until the interval is over.
    #[must_use]
    pub fn predict(&self, what: &Observed) -> Predicted {
        self.workshop.predict(what)
    }

    /// What the model said before error and rounding when the last action took its reading; `None` when it took none.
    #[must_use]
    pub fn predicted(&self) -> Option<Predicted> {
        self.predicted
    }

    /// As [`Workshop::act`].
    pub fn act(&mut self, action: &Action) -> Outcome {
        at_once(self.act_beside(action, None))
    }

    /// As [`Workshop::replay`].
    pub fn replay(&mut self, action: &Action, end: Tick) -> Outcome {
        at_once(self.replay_beside(action, end, None))
    }

    /// As [`Workshop::act`], with the circuit run beside others.
    pub async fn act_beside(&mut self, action: &Action, beside: Beside<'_>) -> Outcome {
        let (outcome, predicted) = self.workshop.carry_out(action, None, beside).await;
        self.predicted = predicted;
        outcome
    }

    /// As [`Workshop::replay`], with the circuit run beside others.
    pub async fn replay_beside(&mut self, action: &Action, end: Tick, beside: Beside<'_>) -> Outcome {
        let (outcome, predicted) = self.workshop.carry_out(action, Some(end), beside).await;
        self.predicted = predicted;
        outcome
    }

    /// As [`Workshop::run_free`].
    pub fn run_free(&mut self, to: Tick) {
        self.workshop.run_free(to);
    }

    /// As [`Workshop::run_free`], with the circuit run beside others.
    pub async fn run_free_beside(&mut self, to: Tick, beside: Beside<'_>) {
        self.workshop.run_free_beside(to, beside).await;
    }

    /// As [`Workshop::run_free_cut`].
    pub fn run_free_cut(&mut self, to: Tick) {
        self.workshop.run_free_cut(to);
    }

    /// As [`Workshop::take_minute_digests`].
    pub fn take_minute_digests(&mut self) -> Vec<(Tick, u64)> {
        self.workshop.take_minute_digests()
    }

    /// Names of the columns of a trace, unit last: pressures (kPa) are absolute, flows (g/s) and currents (A) go out of
    /// and into the part.
    #[must_use]
    pub fn trace_columns(&self) -> Vec<String> {
        self.workshop.trace_columns()
    }

    /// Records a row now and then every `every` ticks (at least one) until further notice. It shortens steps, so that
    /// rows fall on their times: the bits are no longer those of an attempt.
    pub fn record_every(&mut self, every: u64) {
        self.workshop.record_every(every);
    }

    /// Rows since last asked; `None` when there were too many to keep (100 000).
    pub fn take_rows(&mut self) -> Option<Vec<TraceRow>> {
        self.workshop.take_rows()
    }

    /// Watches from now on what the circuit is told.
    pub fn watch(&mut self) {
        self.workshop.watch();
    }

    /// The stretch watched so far.
    #[must_use]
    pub fn watched(&self) -> Option<&Watch> {
        self.workshop.watch.as_deref()
    }
}

impl Clone for Opened {
    fn clone(&self) -> Self {
        Self { workshop: self.workshop.copy(), predicted: self.predicted }
    }
}

// To look at only: whoever may change the workshop inside could put one there at which somebody works.
impl Deref for Opened {
    type Target = Workshop;
    fn deref(&self) -> &Workshop {
        &self.workshop
    }
}
