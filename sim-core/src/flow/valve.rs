//! Check-valve law: an ISO 6358 opening that grows with the pressure difference, and a leak back.
//!
//! lift = smoothstep((Δp − p_crack)/p_span), flow only from a to b through the lift; the leak is a
//! pinhole that passes both ways. Both are continuous, with continuous slope, so the step needs no
//! event for a valve. Not modelled: flutter, the mass of the plate.

use super::iso6358::Iso6358;
use super::pinhole::Pinhole;
use super::{Flow, Gas};
use crate::math::smoothstep;

/// A check valve's numbers as its flow law needs them; forward is from a to b.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CheckLaw {
    /// Fully open.
    pub open: Iso6358,
    /// Pressure difference at which it begins to open, Pa.
    pub p_crack: f64,
    /// Further pressure difference to full lift, Pa; positive.
    pub p_span: f64,
    /// Leak past the closed seat.
    pub leak: Pinhole,
    /// Least lift, 0 to 1: a valve held off its seat.
    pub lift_min: f64,
}

impl CheckLaw {
    /// Mass flow from `a` to `b`.
    #[must_use]
    #[inline]
    pub fn flow(&self, a: Gas, b: Gas) -> Flow {
        let (s, ds) = smoothstep((a.p - b.p - self.p_crack) / self.p_span);
        let mut total = if self.leak.area <= 0.0 { Flow::default() } else { self.leak.flow(a, b) };
        let lift = self.lift_min + (1.0 - self.lift_min) * s;
        if 0.0 < lift {
            let full = self.open.flow(a, b);
            let slope = (1.0 - self.lift_min) * ds / self.p_span * full.m;
            let mut through = full.scaled(lift);
            through.dpa += slope;
            through.dpb -= slope;
            total = total.plus(through);
        }
        total
    }
}
