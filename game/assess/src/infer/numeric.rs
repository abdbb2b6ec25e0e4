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

/// A standard normal number from two even ones in (0, 1) (Box and Muller, Annals of Mathematical Statistics 29, 1958).
#[must_use]
pub fn normal(u: f64, v: f64) -> f64 {
    (-2.0 * ln(u)).sqrt() * libm::cos(std::f64::consts::TAU * v)
}

/// Density of the normal distribution (mean 0, σ 1).
fn density(x: f64) -> f64 {
    const ROOT: f64 = 0.398_942_280_401_432_7;
    if x.is_finite() { ROOT * math::exp(-0.5 * x * x) } else { 0.0 }
}

/// Mean and variance of a normal distribution (mean 0, σ 1) of which only what lies between `a` and `b` is left, a ≤ b.
///
/// Where so little is left that its digits are gone, it sits in the middle, or at the edge that is nearer.
#[must_use]
pub fn truncated_normal(a: f64, b: f64) -> (f64, f64) {
    /// Less than this is no share that could be divided by.
    const LEAST: f64 = 1e-12;
    /// Variance that is left then.
    const HAIR: f64 = 1e-6;
    let share = normal_between(a, b);
    let edge = |x: f64| if x.is_finite() { x * density(x) } else { 0.0 };
    if LEAST < share {
        let mean = (density(a) - density(b)) / share;
        let variance = 1.0 + (edge(a) - edge(b)) / share - mean * mean;
        if 0.0 < variance && mean.is_finite() {
            return (mean.clamp(a, b), variance.clamp(1e-9, 1.0));
        }
    }
    let middle = match (a.is_finite(), b.is_finite()) {
        (true, true) => 0.5 * (a + b),
        (true, false) => a,
        (false, true) => b,
        (false, false) => 0.0,
    };
    (middle, HAIR)
}

/// The quantile of the normal distribution that stands where `t` stands in Student's with `nu` degrees of freedom
/// (Wallace, Annals of Mathematical Statistics 30, 1959).
#[must_use]
pub fn normal_of_student(t: f64, nu: f64) -> f64 {
    if !t.is_finite() {
        return t;
    }
    let size = (nu * math::ln(1.0 + t * t / nu)).sqrt() * (8.0 * nu + 1.0) / (8.0 * nu + 3.0);
    size.copysign(t)
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

    /// Symmetric cuts leave the mean; one σ either side leaves the variance 1 − 2 φ(1) / 0.682 689 = 0.291 125 (standard
    /// formula of the doubly truncated normal).
    #[test]
    fn val_truncated_normal() {
        let (mean, variance) = truncated_normal(-1.0, 1.0);
        assert!(mean.abs() < 1e-15 && (variance - 0.291_125_1).abs() < 1e-6, "{mean} {variance}");
        // Half a normal distribution: mean √(2/π), variance 1 − 2/π.
        let (mean, variance) = truncated_normal(0.0, f64::INFINITY);
        assert!((mean - 0.797_884_560_8).abs() < 1e-9 && (variance - 0.363_380_227_6).abs() < 1e-9);
        assert_eq!(truncated_normal(f64::NEG_INFINITY, f64::INFINITY), (0.0, 1.0));
        // A narrow cut is even.
        let (mean, variance) = truncated_normal(0.3, 0.301);
        assert!((mean - 0.3005).abs() < 1e-6 && variance < 1e-6);
        assert_eq!(truncated_normal(40.0, 41.0).0, 40.5);
    }

    /// Upper 97.5 % points of Student's distribution (standard table: 12.706, 2.571, 2.086 at 1, 5, 20) stand at 1.960.
    #[test]
    fn val_student_beside_the_normal() {
        // Wallace's formula is good to some per cent at one degree of freedom, better beyond.
        for (nu, t, tolerance) in [(1.0, 12.706, 0.15), (5.0, 2.571, 0.02), (20.0, 2.086, 0.005)] {
            let z = normal_of_student(t, nu);
            assert!((z - 1.960).abs() < tolerance, "{nu}: {z}");
            assert_eq!(normal_of_student(-t, nu), -z);
        }
        assert_eq!(normal_of_student(f64::INFINITY, 3.0), f64::INFINITY);
    }
}
