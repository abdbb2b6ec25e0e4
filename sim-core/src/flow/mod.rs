//! Flow laws between two bodies of air, each in its own file, each with its derivatives.
//!
//! Positive from a to b. The circuit's step needs the slopes for its Jacobian, so every law returns a
//! [`Flow`] rather than a bare number. All are written over [`Real`]: for one circuit or for eight side by side.

pub mod iso6358;
pub mod laminar;
pub mod nipple;
pub mod pinhole;
pub mod valve;

use crate::lanes::Real;

/// State of the air on one side of a restriction.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Gas<R = f64> {
    /// Absolute pressure, Pa; positive.
    pub p: R,
    /// Temperature, K; positive.
    pub t: R,
}

impl<R: Real> Gas<R> {
    /// `yes` where the mask says so, `no` elsewhere.
    #[must_use]
    #[inline(always)]
    pub fn choose(mask: R::Mask, yes: Self, no: Self) -> Self {
        Self { p: R::choose(mask, yes.p, no.p), t: R::choose(mask, yes.t, no.t) }
    }
}

/// Mass flow from a to b with its slopes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Flow<R = f64> {
    /// Mass flow, kg/s.
    pub m: R,
    /// ∂m/∂p_a, kg/(s·Pa).
    pub dpa: R,
    /// ∂m/∂p_b, kg/(s·Pa).
    pub dpb: R,
    /// ∂m/∂T_a, kg/(s·K).
    pub dta: R,
    /// ∂m/∂T_b, kg/(s·K).
    pub dtb: R,
}

impl<R: Real> Default for Flow<R> {
    /// Nothing flows.
    #[inline(always)]
    fn default() -> Self {
        let zero = R::all(0.0);
        Self { m: zero, dpa: zero, dpb: zero, dta: zero, dtb: zero }
    }
}

impl<R: Real> Flow<R> {
    /// The same flow seen from the other side: positive from b to a becomes positive from a to b.
    #[must_use]
    #[inline(always)]
    pub fn reversed(self) -> Self {
        Self { m: -self.m, dpa: -self.dpb, dpb: -self.dpa, dta: -self.dtb, dtb: -self.dta }
    }

    /// The flow through `factor` times the opening.
    #[must_use]
    #[inline(always)]
    pub fn scaled(self, factor: R) -> Self {
        Self {
            m: self.m * factor,
            dpa: self.dpa * factor,
            dpb: self.dpb * factor,
            dta: self.dta * factor,
            dtb: self.dtb * factor,
        }
    }

    /// Two openings side by side.
    #[must_use]
    #[inline(always)]
    pub fn plus(self, other: Self) -> Self {
        Self {
            m: self.m + other.m,
            dpa: self.dpa + other.dpa,
            dpb: self.dpb + other.dpb,
            dta: self.dta + other.dta,
            dtb: self.dtb + other.dtb,
        }
    }

    /// `yes` where the mask says so, `no` elsewhere.
    #[must_use]
    #[inline(always)]
    pub fn choose(mask: R::Mask, yes: Self, no: Self) -> Self {
        Self {
            m: R::choose(mask, yes.m, no.m),
            dpa: R::choose(mask, yes.dpa, no.dpa),
            dpb: R::choose(mask, yes.dpb, no.dpb),
            dta: R::choose(mask, yes.dta, no.dta),
            dtb: R::choose(mask, yes.dtb, no.dtb),
        }
    }
}

/// Pressure ratio above which the square-root laws become straight lines, so that the slope stays
/// finite at rest (published practice: 0.995 to 0.999).
pub const R_LAMINAR: f64 = 0.999;
