//! A step is tried, judged by its error, and taken or tried again shorter.
//!
//! Whole ticks first: 2^e of them, shorter while the error is too large or something switches on the way. When
//! one tick is too long it is taken in parts that grow and shrink with the error, and what switches switches at its
//! end. A model that goes on for seconds in nothing but the smallest parts of ticks computes no car: that is a fault, as
//! when not even the smallest part can be taken. Nothing here looks at how the numbers were worked out, alone or beside others.

use super::control::{self, E_MIN};
use super::switching::After;
use super::{Circuit, Event, Fault, Pace};
use crate::units::{TICK_S, Tick};

/// Smallest parts in a tick.
const PARTS: u32 = 1 << -E_MIN;

/// Parts of a tick from this size down (2⁻⁶ of it, 0.16 ms) are rare: a port opens, a relay pulls in.
const STRAINED: i8 = -6;
/// So many of them in a row are no moment but a state: a minute at least. A whole tick halves what was counted; whole
/// days of sound and faulty cars never come to a hundredth of this (a test holds that).
const MOST_STRAIN: u32 = 400_000;

/// A step under trial.
#[derive(Clone, Copy, Debug)]
pub(super) struct Trial {
    /// Its length is 2^e ticks.
    e: i8,
    /// While e < 0, how much of the tick is done.
    done: u32,
}

/// What became of an attempt.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Judged {
    /// It is tried again, shorter, from the same slopes.
    Again,
    /// Whole ticks: good, unless something switches on the way.
    Whole,
    /// A part of a tick: the next one begins where it ended (taken), or where it began.
    Part { taken: bool },
}

impl Trial {
    /// Length of the next attempt, s.
    pub(super) fn h(&self) -> f64 {
        if 0 <= self.e {
            self.ticks() as f64 * TICK_S
        } else {
            f64::from(self.size()) / f64::from(PARTS) * TICK_S
        }
    }

    fn ticks(&self) -> u64 {
        1 << self.e
    }

    fn size(&self) -> u32 {
        PARTS >> -self.e
    }

    /// Whether a tick in parts has come to its end.
    pub(super) fn is_over(&self) -> bool {
        self.done == PARTS
    }
}

impl Circuit {
    /// The step to try first; see [`Circuit::step`].
    pub(super) fn begin(&self, limit: Tick, pace: Pace) -> Trial {
        assert!(self.tick < limit, "the clock only runs forward");
        let e_max = match pace {
            Pace::Free => control::E_FREE,
            Pace::Timed => control::exponent_within(limit.0 - self.tick.0),
        };
        Trial { e: self.e.min(e_max).max(E_MIN), done: 0 }
    }

    /// Judges an attempt by its error.
    pub(super) fn judge(&mut self, trial: &mut Trial, err: f64) -> Judged {
        if 0 <= trial.e {
            if err <= 1.0 {
                return Judged::Whole;
            }
            trial.e = (trial.e - control::halvings(err)).max(E_MIN);
            return Judged::Again;
        }
        if trial.e <= STRAINED {
            self.strain += 1;
            self.most_strain = self.most_strain.max(self.strain);
        }
        let strained = MOST_STRAIN < self.strain;
        if 1.0 < err && E_MIN < trial.e && !strained {
            trial.e = (trial.e - control::halvings(err)).max(E_MIN);
            return Judged::Again;
        }
        let taken = err.is_finite() && !strained;
        if !taken {
            // Not even the smallest part, or nothing else for too long: stand still rather than go on with nonsense, and say so.
            self.fails();
            trial.done = PARTS;
            return Judged::Part { taken };
        }
        trial.done += trial.size();
        // A larger part begins where it ends on the tick.
        let (e, done) = (trial.e, trial.done);
        let fits = |n: &i8| e + n < 0 && done % (trial.size() << n) == 0;
        trial.e += (1..=control::doublings(err)).rev().find(fits).unwrap_or(0);
        Judged::Part { taken }
    }

    /// How near it has come to a fault by strain so far, as a share; for tests.
    #[must_use]
    pub fn strain(&self) -> f64 {
        f64::from(self.most_strain) / f64::from(MOST_STRAIN)
    }

    /// Notes that and where the model cannot go on.
    fn fails(&mut self) {
        if self.fault.is_some() {
            return;
        }
        let fastest = (0..self.model.n)
            .filter(|i| self.net.layout.owner(*i).is_some())
            .map(|i| {
                (
                    i,
                    (self.f.get(i).copied().unwrap_or(0.0) / self.model.allowances[i].at(self.y[i].abs()))
                        .abs(),
                )
            })
            .filter(|(_, rate)| !rate.is_nan())
            .max_by(|a, b| a.1.total_cmp(&b.1));
        self.cannot_go_on(fastest.and_then(|(i, _)| self.net.layout.owner(i)));
    }

    /// Stands still from now on; `part` is the one to look at.
    pub(super) fn cannot_go_on(&mut self, part: Option<u16>) {
        if self.fault.is_some() {
            return;
        }
        self.fault = Some(Fault { tick: self.tick, part });
        self.events.push((self.tick, Event::Fault));
    }

    /// Whether something switches on the way of a step that can be shorter: it is then tried at half the length,
    /// to find the tick.
    pub(super) fn finds_switching(&self, trial: &mut Trial, after: &After) -> bool {
        let switches = after.switches && 0 < trial.e;
        if switches {
            trial.e -= 1;
        }
        switches
    }

    /// The clock moves on by whole ticks, after an attempt of error `err`. Says whether anything switched.
    pub(super) fn end_whole(&mut self, trial: Trial, err: f64, after: After) -> bool {
        // By the step taken and nothing else: a live run that looks for the tick of a switch and its
        // replay that is told where to end then remember the same.
        self.e = (trial.e + control::doublings(err)).min(control::E_MAX);
        self.strain /= 2;
        self.tick = self.tick.plus(trial.ticks());
        self.switch_to(after)
    }

    /// The clock moves on by a tick that was taken in parts. Says whether anything switched.
    pub(super) fn end_parts(&mut self, trial: Trial, after: After) -> bool {
        self.e = trial.e + 1;
        self.tick = self.tick.plus(1);
        self.switch_to(after)
    }
}
