//! The only door to transcendental functions: `libm`, so that every machine computes the same bits.
//!
//! `sqrt` is exactly rounded by IEEE 754 and therefore needs no wrapper.

/// eˣ.
#[must_use]
pub fn exp(x: f64) -> f64 {
    libm::exp(x)
}

/// Natural logarithm.
#[must_use]
pub fn ln(x: f64) -> f64 {
    libm::log(x)
}

/// Logarithm to the base ten.
#[must_use]
pub fn log10(x: f64) -> f64 {
    libm::log10(x)
}

/// xʸ.
#[must_use]
pub fn pow(x: f64, y: f64) -> f64 {
    libm::pow(x, y)
}

/// Hyperbolic tangent.
#[must_use]
pub fn tanh(x: f64) -> f64 {
    libm::tanh(x)
}

/// A step from 0 (x ≤ 0) to 1 (x ≥ 1) with continuous slope, and its slope.
#[must_use]
pub fn smoothstep(x: f64) -> (f64, f64) {
    if x <= 0.0 {
        (0.0, 0.0)
    } else if 1.0 <= x {
        (1.0, 0.0)
    } else {
        (x * x * (3.0 - 2.0 * x), 6.0 * x * (1.0 - x))
    }
}

/// Cube root.
#[must_use]
pub fn cbrt(x: f64) -> f64 {
    libm::cbrt(x)
}
