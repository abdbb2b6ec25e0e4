//! Pinhole: sharp-edged hole, Saint-Venant–Wantzel with a discharge coefficient by pressure ratio.
//!
//! ṁ = C_d(r) A p₁ √(2/(R T₁)) Ψ(r),  Ψ = √(γ/(γ−1) (r^{2/γ} − r^{(γ+1)/γ})), constant below the
//! critical ratio; C_d(r) is Perry's polynomial (row 2.16 of the check values), 0.84 deep in vacuum,
//! 0.60 near rest. Above r = [`R_LAMINAR`] a straight line.
//! Not modelled: C_d by Reynolds number; holes under about 0.05 mm are really laminar.

use super::{Flow, Gas, R_LAMINAR};
use crate::air::{GAMMA, R_AIR};
use crate::math;

/// Critical pressure ratio (2/(γ+1))^(γ/(γ−1)) for γ = 1.4.
pub const R_CRITICAL: f64 = 0.528_281_787_717_174_2;

/// Ψ at [`R_LAMINAR`] = 0.999, where the straight line begins (a test holds it against [`wantzel`]).
const PSI_AT_LAMINAR: f64 = 0.03160583128859667;

/// A round hole by its area.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pinhole {
    /// Area, m²; not negative.
    pub area: f64,
    /// Use an ideal hole (C_d = 1) instead of Perry's coefficient.
    pub ideal: bool,
}

impl Pinhole {
    /// A sharp-edged hole of diameter `d_mm`, mm.
    #[must_use]
    pub fn of_diameter_mm(d_mm: f64) -> Self {
        Self { area: std::f64::consts::FRAC_PI_4 * d_mm * d_mm * 1e-6, ideal: false }
    }

    /// Mass flow from `a` to `b`; the same both ways.
    #[must_use]
    #[inline]
    pub fn flow(&self, a: Gas, b: Gas) -> Flow {
        if b.p <= a.p { self.forward(a, b.p) } else { self.forward(b, a.p).reversed() }
    }

    #[inline]
    fn forward(&self, up: Gas, p_down: f64) -> Flow {
        let k = self.area * (2.0 / (R_AIR * up.t)).sqrt();
        let r = p_down / up.p;
        let (phi, slope) = self.phi(r);
        let m = k * up.p * phi;
        Flow { m, dpa: k * (phi - r * slope), dpb: k * slope, dta: -0.5 * m / up.t, dtb: 0.0 }
    }

    /// C_d·Ψ and its slope over r.
    #[inline]
    fn phi(&self, r: f64) -> (f64, f64) {
        if R_LAMINAR <= r {
            let edge = self.cd(R_LAMINAR).0 * PSI_AT_LAMINAR;
            let slope = -edge / (1.0 - R_LAMINAR);
            return (slope * (r - 1.0), slope);
        }
        let (cd, dcd) = self.cd(r);
        let (psi, dpsi) = wantzel(r);
        (cd * psi, dcd * psi + cd * dpsi)
    }

    #[inline]
    fn cd(&self, r: f64) -> (f64, f64) {
        if self.ideal { (1.0, 0.0) } else { perry(r) }
    }
}

/// Discharge coefficient of a sharp-edged hole at pressure ratio `r` (Perry), and its slope.
#[must_use]
#[inline]
pub fn perry(r: f64) -> (f64, f64) {
    let cd = 0.8414 + r * (-0.1002 + r * (0.8415 + r * (-3.9 + r * (4.6001 - r * 1.6827))));
    let slope = -0.1002 + r * (1.683 + r * (-11.7 + r * (18.4004 - r * 8.4135)));
    (cd, slope)
}

/// Ψ at and below the critical ratio: √(γ/(γ−1) (r*^{2/γ} − r*^{(γ+1)/γ})) for γ = 1.4 (row 2.3).
pub const PSI_CHOKED: f64 = 0.484_178_256_096_108_65;

/// Saint-Venant–Wantzel outflow function Ψ at pressure ratio `r`, and its slope; constant when choked.
#[must_use]
#[inline]
pub fn wantzel(r: f64) -> (f64, f64) {
    const E: f64 = GAMMA / (GAMMA - 1.0);
    if r <= R_CRITICAL {
        return (PSI_CHOKED, 0.0);
    }
    // With γ = 7/5 both powers are whole powers of the seventh root: 2/γ = 10/7, (γ+1)/γ = 12/7.
    let q = math::seventh_root(r);
    let q2 = q * q;
    let q4 = q2 * q2;
    let r2 = q4 * q4 * q2;
    let r3 = r2 * q2;
    let psi = (E * (r2 - r3)).sqrt();
    let slope = 0.5 * E * (2.0 / GAMMA * r2 - (GAMMA + 1.0) / GAMMA * r3) / (r * psi);
    (psi, slope)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn inv_the_constants_are_the_functions_values() {
        // Tolerance: rounding of a few operations.
        assert!((wantzel(R_LAMINAR).0 - PSI_AT_LAMINAR).abs() < 1e-12);
        assert!((wantzel(R_CRITICAL * (1.0 + 1e-12)).0 - PSI_CHOKED).abs() < 1e-12);
    }
}
