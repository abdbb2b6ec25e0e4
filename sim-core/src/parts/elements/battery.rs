//! A lead-acid battery's laws: voltage by charge (row 6.7), and what goes in and out.

use crate::lanes::Real;

/// Open-circuit voltage at charge `z`, V; straight lines between the points of row 6.7 from 0 to 1.
/// Below 0 it collapses: a tenth of the capacity further there is nothing left (common practice, no
/// source).
#[must_use]
#[inline(always)]
pub fn open_circuit_v<R: Real>(z: R) -> R {
    const POINTS: [f64; 5] = [11.89, 12.06, 12.24, 12.45, 12.65];
    /// Charge at which the voltage is gone.
    const DEAD: f64 = -0.1;
    let (zero, one) = (R::all(0.0), R::all(1.0));
    let x = R::choose(one.below(z), one, z) * 4.0;
    let mut v = R::all(POINTS[0]) + x * (POINTS[1] - POINTS[0]);
    for i in 1..4 {
        let from = i as f64;
        let beyond = (x - from) * (POINTS[i + 1] - POINTS[i]) + POINTS[i];
        v = R::choose(R::all(from).at_most(x), beyond, v);
    }
    let gone = one - z / DEAD;
    let low = R::choose(gone.below(zero), zero, gone) * POINTS[0];
    R::choose(z.below(zero), low, v)
}

/// How fast the charge `z` of a battery of `capacity_ah` changes under `ampere` (positive charges), 1/s. The
/// last twentieth takes in less and less; what it does not take makes gas.
#[must_use]
#[inline(always)]
pub fn charge_rate_per_s<R: Real>(capacity_ah: R, z: R, ampere: R) -> R {
    /// Share of the capacity over which acceptance fades out.
    const FADES: f64 = 0.05;
    let (zero, one) = (R::all(0.0), R::all(1.0));
    let share = (one - z) / FADES;
    let share = R::choose(share.below(zero), zero, R::choose(one.below(share), one, share));
    let accepted = R::choose(zero.below(ampere), share, one);
    accepted * ampere / (capacity_ah * 3600.0)
}
