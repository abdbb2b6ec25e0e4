//! The flow of a rotary vane pump, whatever turns it: what it sweeps, and what slips back.

use crate::flow::iso6358::{C_PER_MM2, Iso6358};

/// Critical pressure ratio of the slip past vanes (common practice, no source).
const B_SLIP: f64 = 0.3;

/// Volume swept per radian, m³/rad, of a pump that takes in `displacement_cm3` a revolution.
#[must_use]
pub fn swept_m3_per_rad(displacement_cm3: f64) -> f64 {
    displacement_cm3 * 1e-6 / (2.0 * std::f64::consts::PI)
}

/// The slip path from outlet to inlet, by its ideal hole, mm².
#[must_use]
pub fn slip(mm2: f64) -> Iso6358 {
    Iso6358 { c: mm2 * C_PER_MM2, b: B_SLIP }
}
