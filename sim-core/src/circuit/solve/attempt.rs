//! One step tried: slopes once, the method's stages, and the error that it made.

use super::model::{Model, Numbers};
use super::rosenbrock::{self, From, Work};
use super::scratch::Scratch;
use super::sink::{Entries, NoSlopes};
use crate::lanes::{Mask as _, Real};

/// From this length on a step's increments are taken from the flows once more ([`super::tangent`]), s.
pub(crate) const LONG_S: f64 = 20.0;

/// Where a step of `h` s is long enough for its sums to be taken flow by flow.
fn is_long<R: Real>(h: R) -> R::Mask {
    R::all(LONG_S).at_most(h)
}

impl Model {
    /// f and its slopes at a state from which no step longer than `h` s is tried.
    pub(crate) fn slopes<R: Real>(
        &self,
        numbers: &Numbers<R>,
        y: &[R],
        f: &mut [R],
        jacobian: &mut [R],
        h: R,
        scratch: &mut Scratch<R>,
    ) {
        R::within(
            #[inline(always)]
            || {
                scratch.tangent.kept = is_long(h).any();
                jacobian.fill(R::all(0.0));
            },
        );
        self.eval(numbers, y, f, &mut Entries(jacobian), scratch);
    }

    /// Tries a step into `work`; returns its error (1 = just allowed, ∞ = impossible).
    pub(crate) fn attempt<R: Real>(
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
        if !can.any() {
            return R::all(f64::INFINITY);
        }
        R::within(
            #[inline(always)]
            || self.worst_error(can & self.is_possible(numbers, &work.y_new), y, work),
        )
    }

    /// The largest error of a step to `work.y_new`, as a share of what is allowed; infinite where it cannot be.
    #[inline(always)]
    fn worst_error<R: Real>(&self, can: R::Mask, y: &[R], work: &Work<R>) -> R {
        let mut worst = R::all(0.0);
        for ((allowance, error), (y, y_new)) in
            self.allowances.iter().zip(work.error()).zip(y.iter().zip(&work.y_new))
        {
            worst = worst.larger((*error / allowance.at(y.abs().larger(y_new.abs()))).abs());
        }
        R::choose(can, worst, R::all(f64::INFINITY))
    }
}
