//! Pinhole: sharp-edged hole, Saint-Venant–Wantzel with a discharge coefficient by pressure ratio.
//!
//! ṁ = C_d(r) A p₁ √(2/(R T₁)) Ψ(r),  Ψ = √(γ/(γ−1) (r^{2/γ} − r^{(γ+1)/γ})), constant below the
//! critical ratio; C_d(r) is Perry's polynomial (row 2.16 of the check values), 0.84 deep in vacuum,
//! 0.60 near rest. Above r = [`R_LAMINAR`] a straight line.
//! Not modelled: C_d by Reynolds number; holes under about 0.05 mm are really laminar.

use super::{Flow, Gas, R_LAMINAR};
use crate::air::{GAMMA, R_AIR};
use crate::lanes::{Mask as _, Real, Spread};
use crate::math;

/// Critical pressure ratio (2/(γ+1))^(γ/(γ−1)) for γ = 1.4.
pub const R_CRITICAL: f64 = 0.528_281_787_717_174_2;

/// Ψ at [`R_LAMINAR`] = 0.999, where the straight line begins (a test holds it against [`wantzel`]).
const PSI_AT_LAMINAR: f64 = 0.03160583128859667;

/// A round hole by its area.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pinhole<R = f64> {
    /// Area, m²; not negative.
    pub area: R,
    /// Use an ideal hole (C_d = 1) instead of Perry's coefficient.
    pub ideal: bool,
}

impl<R: Real> Spread for Pinhole<R> {
    type One = Pinhole;
    fn all_of(one: &Pinhole) -> Self {
        Self { area: R::all(one.area), ideal: one.ideal }
    }
    fn put_in(&mut self, lane: usize, one: &Pinhole) {
        self.area.put(lane, one.area);
    }
}

impl Pinhole {
    /// A sharp-edged hole of diameter `d_mm`, mm.
    #[must_use]
    pub fn of_diameter_mm(d_mm: f64) -> Self {
        Self { area: std::f64::consts::FRAC_PI_4 * d_mm * d_mm * 1e-6, ideal: false }
    }
}

impl<R: Real> Pinhole<R> {
    /// Mass flow from `a` to `b`; the same both ways.
    #[must_use]
    #[inline(always)]
    pub fn flow(&self, a: Gas<R>, b: Gas<R>) -> Flow<R> {
        let ahead = b.p.at_most(a.p);
        let flow = self.forward(Gas::choose(ahead, a, b), R::choose(ahead, b.p, a.p));
        Flow::choose(ahead, flow, flow.reversed())
    }

    #[inline(always)]
    fn forward(&self, up: Gas<R>, p_down: R) -> Flow<R> {
        let k = self.area * (R::all(2.0) / (up.t * R_AIR)).sqrt();
        let r = p_down / up.p;
        let (phi, slope) = self.phi(r);
        let m = k * up.p * phi;
        Flow { m, dpa: k * (phi - r * slope), dpb: k * slope, dta: m * -0.5 / up.t, dtb: R::all(0.0) }
    }

    /// C_d·Ψ and its slope over r.
    #[inline(always)]
    fn phi(&self, r: R) -> (R, R) {
        let laminar = R::all(R_LAMINAR).at_most(r);
        let (mut phi, mut phi_r) = (R::all(0.0), R::all(0.0));
        if !laminar.every() {
            let (cd, dcd) = self.cd(r);
            let (psi, dpsi) = wantzel(r);
            (phi, phi_r) = (cd * psi, dcd * psi + cd * dpsi);
        }
        if laminar.any() {
            let edge = self.cd(R::all(R_LAMINAR)).0 * PSI_AT_LAMINAR;
            let slope = -edge / (1.0 - R_LAMINAR);
            phi = R::choose(laminar, slope * (r - 1.0), phi);
            phi_r = R::choose(laminar, slope, phi_r);
        }
        (phi, phi_r)
    }

    #[inline(always)]
    fn cd(&self, r: R) -> (R, R) {
        if self.ideal { (R::all(1.0), R::all(0.0)) } else { perry(r) }
    }
}

/// Discharge coefficient of a sharp-edged hole at pressure ratio `r` (Perry), and its slope.
#[must_use]
#[inline(always)]
pub fn perry<R: Real>(r: R) -> (R, R) {
    let cd = r * (r * (r * (r * (r * -1.6827 + 4.6001) + -3.9) + 0.8415) + -0.1002) + 0.8414;
    let slope = r * (r * (r * (r * -8.4135 + 18.4004) + -11.7) + 1.683) + -0.1002;
    (cd, slope)
}

/// Ψ at and below the critical ratio: √(γ/(γ−1) (r*^{2/γ} − r*^{(γ+1)/γ})) for γ = 1.4 (row 2.3).
pub const PSI_CHOKED: f64 = 0.484_178_256_096_108_65;

/// Saint-Venant–Wantzel outflow function Ψ at pressure ratio `r`, and its slope; constant when choked.
#[must_use]
#[inline(always)]
pub fn wantzel<R: Real>(r: R) -> (R, R) {
    const E: f64 = GAMMA / (GAMMA - 1.0);
    let choked = r.at_most(R::all(R_CRITICAL));
    if choked.every() {
        return (R::all(PSI_CHOKED), R::all(0.0));
    }
    // With γ = 7/5 both powers are whole powers of the seventh root: 2/γ = 10/7, (γ+1)/γ = 12/7.
    let q = math::seventh_root(r);
    let q2 = q * q;
    let q4 = q2 * q2;
    let r2 = q4 * q4 * q2;
    let r3 = r2 * q2;
    let psi = ((r2 - r3) * E).sqrt();
    let slope = (r2 * (2.0 / GAMMA) - r3 * ((GAMMA + 1.0) / GAMMA)) * (0.5 * E) / (r * psi);
    (R::choose(choked, R::all(PSI_CHOKED), psi), R::choose(choked, R::all(0.0), slope))
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
