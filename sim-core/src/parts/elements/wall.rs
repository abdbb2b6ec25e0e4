//! The soft wall of a hose: under vacuum it pulls in and the conductance falls; at rest it looks whole.

use crate::lanes::Real;
use crate::math::smoothstep;

/// Vacuum inside at which a soft wall begins to pull in, Pa below the air (common practice, no source).
pub const SOFT_BEGINS_PA: f64 = 15e3;
/// Further vacuum until it has pulled in fully, Pa (common practice, no source).
pub const SOFT_SPAN_PA: f64 = 25e3;

/// Share of its conductance that a soft hose has left while the air inside is `below_pa` under the air
/// outside, and its slope; `collapse` is what it loses once the wall has pulled in fully.
#[must_use]
#[inline(always)]
pub fn open_share<R: Real>(collapse: R, below_pa: R) -> (R, R) {
    let (s, ds) = smoothstep((below_pa - SOFT_BEGINS_PA) / SOFT_SPAN_PA);
    (R::all(1.0) - collapse * s, -collapse * ds / SOFT_SPAN_PA)
}
