//! Sums in log space and the normal distribution, the same bits on every machine.
//!
//! Everything goes through `libm`. Sums run in index order, so that the number of threads that filled a
//! vector cannot change a result.

use sim_core::math;

/// Logarithm to the base two; `-inf` for 0.
#[must_use]
pub fn log2(x: f64) -> f64 {
    if x <= 0.0 { f64::NEG_INFINITY } else { libm::log2(x) }
}

/// Natural logarithm; `-inf` for 0 and below.
#[must_use]
pub fn ln(x: f64) -> f64 {
    if x <= 0.0 { f64::NEG_INFINITY } else { math::ln(x) }
}

/// ln Σ eˣ without overflow, in index order; `-inf` for nothing at all.
#[must_use]
pub fn log_sum_exp(xs: impl Iterator<Item = f64> + Clone) -> f64 {
    let top = xs.clone().fold(f64::NEG_INFINITY, f64::max);
    if top == f64::NEG_INFINITY {
        return top;
    }
    top + ln(xs.map(|x| math::exp(x - top)).sum())
}

/// Share of a normal distribution (mean 0, σ 1) between `a` and `b`, a ≤ b; either may be infinite.
///
/// Taken from the side on which both are small, so that far tails keep their digits.
#[must_use]
pub fn normal_between(a: f64, b: f64) -> f64 {
    let upper = |x: f64| 0.5 * libm::erfc(x * std::f64::consts::FRAC_1_SQRT_2);
    let share = if 0.0 < a + b { upper(a) - upper(b) } else { upper(-b) - upper(-a) };
    share.max(0.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn inv_the_normal_shares_add_up() {
        let cuts = [f64::NEG_INFINITY, -40.0, -3.0, -0.2, 0.0, 0.7, 2.0, 38.0, f64::INFINITY];
        let total: f64 = cuts.windows(2).map(|w| normal_between(w[0], w[1])).sum();
        assert!((total - 1.0).abs() < 1e-15, "{total}");
        // One σ either side holds 0.682 689 492 137 086 (standard table).
        assert!((normal_between(-1.0, 1.0) - 0.682_689_492_137_086).abs() < 1e-15);
        // Far out the two sides agree to the last digits, which 1 − Φ could not give.
        assert!((normal_between(8.0, 9.0) / normal_between(-9.0, -8.0) - 1.0).abs() < 1e-12);
    }

    #[test]
    fn inv_log_sum_exp_survives_what_would_underflow() {
        let xs = [-2000.0, -2000.0 + ln(3.0)];
        assert!((log_sum_exp(xs.iter().copied()) - (-2000.0 + ln(4.0))).abs() < 1e-12);
        assert_eq!(log_sum_exp([].iter().copied()), f64::NEG_INFINITY);
    }
}
