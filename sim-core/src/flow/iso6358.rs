//! Restriction by sonic conductance C and critical pressure ratio b (ISO 6358).
//!
//! ṁ = C ρ₀ p₁ √(T₀/T₁) ψ,  ψ = 1 for r ≤ b, else √(1 − ((r − b)/(1 − b))²),  r = p₂/p₁,
//! a straight line above r = [`R_LAMINAR`]. Reference air: ρ₀ = 1.185 kg/m³, T₀ = 293.15 K (ISO 8778).
//! Not modelled: inertia of the column, choking by friction along the way.

use super::{Flow, Gas, R_LAMINAR};
use crate::lanes::{Mask as _, Real, spread};

/// Reference density ρ₀, kg/m³ (ISO 8778).
pub const RHO_0: f64 = 1.185;
/// Reference temperature T₀, K (ISO 8778).
pub const T_0: f64 = 293.15;
/// Sonic conductance of an ideal hole of 1 mm², m³/(s·Pa): Saint-Venant–Wantzel against ISO 6358.
pub const C_PER_MM2: f64 = 1.991_9e-9;

/// A restriction by its two ISO 6358 numbers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Iso6358<R = f64> {
    /// Sonic conductance, m³/(s·Pa); not negative.
    pub c: R,
    /// Critical pressure ratio, 0 ≤ b < 0.99.
    pub b: R,
}

spread!(Iso6358 { c, b });

impl Iso6358 {
    /// Two restrictions in a row: 1/C² = Σ 1/Cᵢ², b of the tighter one.
    #[must_use]
    pub fn in_series(self, other: Self) -> Self {
        if self.c <= 0.0 || other.c <= 0.0 {
            return Self { c: 0.0, b: self.b };
        }
        let c = 1.0 / (1.0 / (self.c * self.c) + 1.0 / (other.c * other.c)).sqrt();
        Self { c, b: if self.c <= other.c { self.b } else { other.b } }
    }
}

impl<R: Real> Iso6358<R> {
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
        let k = self.c * RHO_0 * (R::all(T_0) / up.t).sqrt();
        let r = p_down / up.p;
        let (psi, slope) = self.psi(r);
        let m = k * up.p * psi;
        Flow { m, dpa: k * (psi - r * slope), dpb: k * slope, dta: m * -0.5 / up.t, dtb: R::all(0.0) }
    }

    /// √(1 − ((r − b)/(1 − b))²): ψ between choked and laminar.
    #[inline(always)]
    fn root(&self, r: R) -> R {
        let one = R::all(1.0);
        let x = (r - self.b) / (one - self.b);
        (one - x * x).sqrt()
    }

    /// ψ(r) and dψ/dr.
    #[inline(always)]
    fn psi(&self, r: R) -> (R, R) {
        let (zero, one) = (R::all(0.0), R::all(1.0));
        let (choked, laminar) = (r.at_most(self.b), R::all(R_LAMINAR).at_most(r));
        let d = one - self.b;
        let (mut psi, mut slope) = (one, zero);
        if !(choked | laminar).every() {
            let curved = self.root(r);
            psi = R::choose(choked, one, curved);
            slope = R::choose(choked, zero, -(r - self.b) / (d * d * curved));
        }
        let laminar = laminar & !choked;
        if laminar.any() {
            let straight = -self.root(R::all(R_LAMINAR)) / (1.0 - R_LAMINAR);
            psi = R::choose(laminar, straight * (r - 1.0), psi);
            slope = R::choose(laminar, straight, slope);
        }
        (psi, slope)
    }
}
