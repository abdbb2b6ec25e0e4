//! The only door to transcendental functions: `libm`, so that every machine computes the same bits.
//!
//! `sqrt` is exactly rounded by IEEE 754 and therefore needs no wrapper.

use crate::lanes::Real;

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

/// Seventh root of `x` from 0.5 to 1, to a few units in the last place: a start to 4·10⁻⁴, then two steps of
/// Halley, each of which cubes the error. Several times as fast as [`pow`].
#[inline(always)]
#[must_use]
pub fn seventh_root<R: Real>(x: R) -> R {
    // The parabola through three Chebyshev points of [0.52, 1].
    let start = x * (R::all(0.344_784_401_148_048_1) - x * 0.105_459_934_951_502_4) + 0.760_430_830_479_456_3;
    halley(halley(start, x), x)
}

/// One step of Halley's from `q` towards the seventh root of `x`.
#[inline(always)]
fn halley<R: Real>(q: R, x: R) -> R {
    let q3 = q * q * q;
    let q7 = q3 * q3 * q;
    q * (q7 * 3.0 + x * 4.0) / (q7 * 4.0 + x * 3.0)
}

/// Hyperbolic tangent.
#[must_use]
pub fn tanh<R: Real>(x: R) -> R {
    x.each(libm::tanh)
}

/// A step from 0 (x ≤ 0) to 1 (x ≥ 1) with continuous slope, and its slope.
#[must_use]
#[inline(always)]
pub fn smoothstep<R: Real>(x: R) -> (R, R) {
    let (zero, one) = (R::all(0.0), R::all(1.0));
    let (low, high) = (x.at_most(zero), one.at_most(x));
    let s = x * x * (R::all(3.0) - x * 2.0);
    let ds = x * 6.0 * (one - x);
    (R::choose(low, zero, R::choose(high, one, s)), R::choose(low | high, zero, ds))
}

/// Cube root.
#[must_use]
pub fn cbrt(x: f64) -> f64 {
    libm::cbrt(x)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn inv_a_seventh_root_to_the_seventh_is_what_it_was_of() {
        for i in 0..=5_000 {
            let x = 0.5 + f64::from(i) * 1e-4;
            let q = seventh_root(x);
            // Two units in the last place of the root, sevenfold in its power, and the rounding of seven products.
            assert!((pow(q, 7.0) / x - 1.0).abs() < 16.0 * f64::EPSILON, "{x}: {q}");
        }
    }
}
