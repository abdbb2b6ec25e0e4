//! The right-hand side and its slopes, evaluated together.

use super::model::{Model, Numbers};
use super::scratch::Scratch;
use super::sink::Sink;
use super::tangent::Follows;
use crate::air::GAMMA;
use crate::lanes::{Mask as _, Real};

impl Model {
    /// f(y) into `f` (state rows, then balances) and slopes into `sink`, under what is held in `scratch`.
    ///
    /// Not inlined into a step: its loops then have the registers to themselves.
    #[inline(never)]
    pub(crate) fn eval<R: Real, S: Sink<R>>(
        &self,
        numbers: &Numbers<R>,
        y: &[R],
        f: &mut [R],
        sink: &mut S,
        scratch: &mut Scratch<R>,
    ) {
        R::within(
            #[inline(always)]
            || {
                f.fill(R::all(0.0));
                if S::WANTED {
                    scratch.tangent.clear();
                }
                self.gases(numbers, y, scratch);
                self.solve_wiring(numbers, y, scratch);
                if S::WANTED {
                    for ((body, &mass), (gas, m3)) in
                        numbers.bodies.iter().zip(&self.mass_at).zip(scratch.gas.iter().zip(&scratch.volume))
                    {
                        scratch.tangent.follows.push(Follows {
                            p_u: R::all(GAMMA - 1.0) / *m3,
                            p_x: -gas.p / *m3 * body.per_travel_m2,
                            t_m: -gas.t / y[mass],
                            t_u: gas.t / y[mass + 1],
                        });
                    }
                }
                self.edges(numbers, y, f, sink, scratch);
                self.walls(numbers, y, f, sink, scratch);
                self.pistons(numbers, y, f, sink, scratch);
                self.rotors(numbers, y, f, sink, scratch);
                self.followers(numbers, y, f, sink, scratch);
            },
        );
    }

    /// What instruments and switches see of state `y`: gas and wiring into `scratch`.
    #[inline(never)]
    pub(crate) fn observe<R: Real>(&self, numbers: &Numbers<R>, y: &[R], scratch: &mut Scratch<R>) {
        R::within(
            #[inline(always)]
            || {
                self.gases(numbers, y, scratch);
                self.solve_wiring(numbers, y, scratch);
            },
        );
    }

    /// Where a state can exist: finite, masses, energies, volumes and temperatures positive.
    #[inline(never)]
    pub(crate) fn is_possible<R: Real>(&self, numbers: &Numbers<R>, y: &[R]) -> R::Mask {
        R::within(
            #[inline(always)]
            || {
                let (zero, infinite) = (R::all(0.0), R::all(f64::INFINITY));
                let mut possible = R::Mask::all(true);
                for (least, v) in self.least.iter().zip(y) {
                    // Not finite fails one of both.
                    possible = possible & R::all(*least).below(*v) & v.below(infinite);
                }
                for k in 0..self.mass_at.len() {
                    possible = possible & zero.below(self.volume_m3(numbers, k, y));
                }
                possible
            },
        )
    }
}
