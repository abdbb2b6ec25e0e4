//! Laminar leak: crack, porous rubber, bad seal. ṁ = k (p_a² − p_b²), k in kg/(s·Pa²).
//!
//! Falls differently from a pinhole on a leak-down curve: a pinhole into a deep vacuum is choked and
//! steady, a seep slows down from the start. Not modelled: temperature of the leaking air (k is taken
//! at 20 °C).

use super::{Flow, Gas};
use crate::lanes::Real;

/// Mass flow through a laminar leak of coefficient `k`, kg/(s·Pa²).
#[must_use]
#[inline(always)]
pub fn flow<R: Real>(k: R, a: Gas<R>, b: Gas<R>) -> Flow<R> {
    let zero = R::all(0.0);
    Flow { m: k * (a.p * a.p - b.p * b.p), dpa: k * 2.0 * a.p, dpb: k * -2.0 * b.p, dta: zero, dtb: zero }
}

/// Coefficient k of a seep that passes `cm3_per_min` of free air (20 °C, 101.325 kPa) into a perfect
/// vacuum, kg/(s·Pa²).
#[must_use]
pub fn coefficient(cm3_per_min: f64) -> f64 {
    const RHO: f64 = crate::air::P_SEA_LEVEL_PA / (crate::air::R_AIR * 293.15);
    let m = cm3_per_min * 1e-6 / 60.0 * RHO;
    m / (crate::air::P_SEA_LEVEL_PA * crate::air::P_SEA_LEVEL_PA)
}
