//! Check-valve law: an ISO 6358 opening that grows with the pressure difference, and a leak back.
//!
//! lift = smoothstep((Δp − p_crack)/p_span), flow only from a to b through the lift; the leak is a
//! pinhole that passes both ways. Both are continuous, with continuous slope, so the step needs no
//! event for a valve. Not modelled: flutter, the mass of the plate.

use super::iso6358::Iso6358;
use super::pinhole::Pinhole;
use super::{Flow, Gas};
use crate::lanes::{Mask as _, Real, spread};
use crate::math::smoothstep;

/// A check valve's numbers as its flow law needs them; forward is from a to b.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CheckLaw<R = f64> {
    /// Fully open.
    pub open: Iso6358<R>,
    /// Pressure difference at which it begins to open, Pa.
    pub p_crack: R,
    /// Further pressure difference to full lift, Pa; positive.
    pub p_span: R,
    /// Leak past the closed seat.
    pub leak: Pinhole<R>,
    /// Least lift, 0 to 1: a valve held off its seat.
    pub lift_min: R,
}

spread!(CheckLaw { open, p_crack, p_span, leak, lift_min });

impl<R: Real> CheckLaw<R> {
    /// Mass flow from `a` to `b`.
    #[must_use]
    #[inline(always)]
    pub fn flow(&self, a: Gas<R>, b: Gas<R>) -> Flow<R> {
        let (zero, one) = (R::all(0.0), R::all(1.0));
        let (s, ds) = smoothstep((a.p - b.p - self.p_crack) / self.p_span);
        let mut total = Flow::default();
        let leaks = zero.below(self.leak.area);
        if leaks.any() {
            total = Flow::choose(leaks, self.leak.flow(a, b), total);
        }
        let lift = self.lift_min + (one - self.lift_min) * s;
        let lifted = zero.below(lift);
        if lifted.any() {
            let full = self.open.flow(a, b);
            let slope = (one - self.lift_min) * ds / self.p_span * full.m;
            let mut through = full.scaled(lift);
            through.dpa += slope;
            through.dpb -= slope;
            total = Flow::choose(lifted, total.plus(through), total);
        }
        total
    }
}
