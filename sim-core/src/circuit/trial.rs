//! A step is tried, judged by its error, and taken or tried again shorter.
//!
//! Whole ticks first: 2^e of them, shorter while the error is too large or something switches on the way. When
//! one tick is too long it is taken in parts that grow and shrink with the error, and what switches switches at its
//! end. A model that goes on for seconds in nothing but the smallest parts of ticks computes no car: that is a fault, as
//! when not even the smallest part can be taken. Nothing here looks at how the numbers were worked out, alone or beside others.

use super::control::{self, E_MIN};
use super::model::{Entries, Model, NoSlopes, Numbers, Scratch};
use super::rosenbrock::{self, From, Work};
use super::switching::After;
use super::{Circuit, Event, Fault, Pace};
use crate::lanes::{Mask as _, Real};
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
            .filter(|i| self.owner(*i).is_some())
            .map(|i| {
                (
                    i,
                    (self.f.get(i).copied().unwrap_or(0.0) / self.model.allowances[i].at(self.y[i].abs()))
                        .abs(),
                )
            })
            .filter(|(_, rate)| !rate.is_nan())
            .max_by(|a, b| a.1.total_cmp(&b.1));
        self.fault = Some(Fault { tick: self.tick, part: fastest.and_then(|(i, _)| self.owner(i)) });
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

/// Where a step of `h` s is long enough for its sums to be taken flow by flow.
fn is_long<R: Real>(h: R) -> R::Mask {
    R::all(control::LONG_S).at_most(h)
}

impl Model {
    /// f and its slopes at a state from which no step longer than `h` s is tried.
    pub(super) fn slopes<R: Real>(
        &self,
        numbers: &Numbers<R>,
        y: &[R],
        f: &mut [R],
        jacobian: &mut [R],
        h: R,
        scratch: &mut Scratch<R>,
    ) {
        scratch.tangent.kept = is_long(h).any();
        jacobian.fill(R::all(0.0));
        self.eval(numbers, y, f, &mut Entries(jacobian), scratch);
    }

    /// Tries a step into `work`; returns its error (1 = just allowed, ∞ = impossible).
    pub(super) fn attempt<R: Real>(
        &self,
        numbers: &Numbers<R>,
        from: From<'_, R>,
        scratch: &mut Scratch<R>,
        work: &mut Work<R>,
    ) -> R {
        // Evaluations at the stages leave the tangent alone; it is lent out while they use the rest.
        let tangent = std::mem::take(&mut scratch.tangent);
        let along = |k: &_, out: &mut _| self.along(numbers, &tangent, k, out);
        let (y, at) = (from.y, is_long(from.h));
        let conserved = rosenbrock::Conserved { rows: &self.conserved, along: &along, at };
        let can = rosenbrock::step(&self.plan, from, work, at.any().then_some(conserved), |stage, out| {
            let possible = self.is_possible(numbers, stage);
            if possible.any() {
                self.eval(numbers, stage, out, &mut NoSlopes, scratch);
            }
            possible
        });
        scratch.tangent = tangent;
        let infinite = R::all(f64::INFINITY);
        if !can.any() {
            return infinite;
        }
        let can = can & self.is_possible(numbers, &work.y_new);
        let mut worst = R::all(0.0);
        for ((allowance, error), (y, y_new)) in
            self.allowances.iter().zip(work.error()).zip(y.iter().zip(&work.y_new))
        {
            worst = worst.larger((*error / allowance.at(y.abs().larger(y_new.abs()))).abs());
        }
        R::choose(can, worst, infinite)
    }
}
