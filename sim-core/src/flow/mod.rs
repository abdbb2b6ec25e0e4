//! Flow laws between two bodies of air, each in its own file, each with its derivatives.
//!
//! Positive from a to b. The circuit's step needs the slopes for its Jacobian, so every law returns a
//! [`Flow`] rather than a bare number.

pub mod iso6358;
pub mod laminar;
pub mod pinhole;
pub mod valve;

/// State of the air on one side of a restriction.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gas {
    /// Absolute pressure, Pa; positive.
    pub p: f64,
    /// Temperature, K; positive.
    pub t: f64,
}

/// Mass flow from a to b with its slopes.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Flow {
    /// Mass flow, kg/s.
    pub m: f64,
    /// ∂m/∂p_a, kg/(s·Pa).
    pub dpa: f64,
    /// ∂m/∂p_b, kg/(s·Pa).
    pub dpb: f64,
    /// ∂m/∂T_a, kg/(s·K).
    pub dta: f64,
    /// ∂m/∂T_b, kg/(s·K).
    pub dtb: f64,
}

impl Flow {
    /// The same flow seen from the other side: positive from b to a becomes positive from a to b.
    #[must_use]
    #[inline]
    pub fn reversed(self) -> Self {
        Self { m: -self.m, dpa: -self.dpb, dpb: -self.dpa, dta: -self.dtb, dtb: -self.dta }
    }

    /// The flow through `factor` times the opening.
    #[must_use]
    #[inline]
    pub fn scaled(self, factor: f64) -> Self {
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
    #[inline]
    pub fn plus(self, other: Self) -> Self {
        Self {
            m: self.m + other.m,
            dpa: self.dpa + other.dpa,
            dpb: self.dpb + other.dpb,
            dta: self.dta + other.dta,
            dtb: self.dtb + other.dtb,
        }
    }
}

/// Pressure ratio above which the square-root laws become straight lines, so that the slope stays
/// finite at rest (published practice: 0.995 to 0.999).
pub const R_LAMINAR: f64 = 0.999;
