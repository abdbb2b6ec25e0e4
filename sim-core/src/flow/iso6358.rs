//! Restriction by sonic conductance C and critical pressure ratio b (ISO 6358).
//!
//! ṁ = C ρ₀ p₁ √(T₀/T₁) ψ,  ψ = 1 for r ≤ b, else √(1 − ((r − b)/(1 − b))²),  r = p₂/p₁,
//! a straight line above r = [`R_LAMINAR`]. Reference air: ρ₀ = 1.185 kg/m³, T₀ = 293.15 K (ISO 8778).
//! Not modelled: inertia of the column, choking by friction along the way.

use super::{Flow, Gas, R_LAMINAR};

/// Reference density ρ₀, kg/m³ (ISO 8778).
pub const RHO_0: f64 = 1.185;
/// Reference temperature T₀, K (ISO 8778).
pub const T_0: f64 = 293.15;
/// Sonic conductance of an ideal hole of 1 mm², m³/(s·Pa): Saint-Venant–Wantzel against ISO 6358.
pub const C_PER_MM2: f64 = 1.991_9e-9;

/// A restriction by its two ISO 6358 numbers.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Iso6358 {
    /// Sonic conductance, m³/(s·Pa); not negative.
    pub c: f64,
    /// Critical pressure ratio, 0 ≤ b < 0.99.
    pub b: f64,
}

impl Iso6358 {
    /// Mass flow from `a` to `b`; the same both ways.
    #[must_use]
    #[inline]
    pub fn flow(&self, a: Gas, b: Gas) -> Flow {
        if b.p <= a.p { self.forward(a, b.p) } else { self.forward(b, a.p).reversed() }
    }

    /// Two restrictions in a row: 1/C² = Σ 1/Cᵢ², b of the tighter one.
    #[must_use]
    pub fn in_series(self, other: Self) -> Self {
        if self.c <= 0.0 || other.c <= 0.0 {
            return Self { c: 0.0, b: self.b };
        }
        let c = 1.0 / (1.0 / (self.c * self.c) + 1.0 / (other.c * other.c)).sqrt();
        Self { c, b: if self.c <= other.c { self.b } else { other.b } }
    }

    #[inline]
    fn forward(&self, up: Gas, p_down: f64) -> Flow {
        let k = self.c * RHO_0 * (T_0 / up.t).sqrt();
        let r = p_down / up.p;
        let (psi, slope) = self.psi(r);
        let m = k * up.p * psi;
        Flow { m, dpa: k * (psi - r * slope), dpb: k * slope, dta: -0.5 * m / up.t, dtb: 0.0 }
    }

    /// ψ(r) and dψ/dr.
    #[inline]
    fn psi(&self, r: f64) -> (f64, f64) {
        if r <= self.b {
            return (1.0, 0.0);
        }
        let root = |r: f64| {
            let x = (r - self.b) / (1.0 - self.b);
            (1.0 - x * x).sqrt()
        };
        if r < R_LAMINAR {
            let psi = root(r);
            let d = 1.0 - self.b;
            (psi, -(r - self.b) / (d * d * psi))
        } else {
            let slope = -root(R_LAMINAR) / (1.0 - R_LAMINAR);
            (slope * (r - 1.0), slope)
        }
    }
}
