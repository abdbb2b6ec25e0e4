//! The nipple of a part: the short way of a given bore from its joint to its air.
//!
//! C = 0.8 of what an ideal hole of its bore has, b = 0.4: the edges round and the way short, between a
//! sharp-edged hole (0.6 to 0.84, b about 0.5) and a long tube. Common practice, no source.

use super::iso6358::{C_PER_MM2, Iso6358};

/// Share of an ideal hole's conductance that a nipple has (common practice, no source).
pub const SHARE_OF_IDEAL: f64 = 0.8;
/// Critical pressure ratio of a nipple, and of a valve's opening (common practice, no source).
pub const B_SHORT_WAY: f64 = 0.4;

/// The restriction of a nipple of `bore_mm`, mm.
#[must_use]
pub fn of_bore_mm(bore_mm: f64) -> Iso6358 {
    let area = std::f64::consts::FRAC_PI_4 * bore_mm * bore_mm;
    Iso6358 { c: SHARE_OF_IDEAL * area * C_PER_MM2, b: B_SHORT_WAY }
}
