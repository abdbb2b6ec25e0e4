//! A line through the points nearby: how a reading runs with severity.
//!
//! Locally weighted regression with tricube weights (Cleveland, Journal of the American Statistical Association 74, 1979).

/// Share of the points that the line at a place goes through.
const SHARE: f64 = 0.45;
/// Least number of them.
const LEAST: usize = 4;
/// The farthest of them keeps some weight.
const BEYOND: f64 = 1.3;
/// Hold on the slope where the points hardly differ in severity.
const RIDGE: f64 = 1e-4;

/// The line at a place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Line {
    /// Value there.
    pub value: f64,
    /// Slope there.
    pub slope: f64,
    /// Variance of the value, as a multiple of one point's variance.
    pub leverage: f64,
}

/// The line through (`x`, `y`) at `at`; point number `without` is left out.
///
/// Needs at least two points besides that one; with none it is 0 with slope 0 and leverage 1.
#[must_use]
pub fn local(x: &[f64], y: &[f64], at: f64, without: Option<usize>) -> Line {
    let mut far: Vec<f64> = (0..x.len()).filter(|i| Some(*i) != without).map(|i| (x[i] - at).abs()).collect();
    if far.is_empty() {
        return Line { value: 0.0, slope: 0.0, leverage: 1.0 };
    }
    far.sort_by(f64::total_cmp);
    let many = LEAST.max((SHARE * x.len() as f64).ceil() as usize).min(far.len());
    let reach = BEYOND * far[many - 1] + 1e-9;
    let weight = |i: usize| {
        let share = (x[i] - at).abs() / reach;
        if Some(i) == without || 1.0 <= share {
            return 0.0;
        }
        let rest = 1.0 - share * share * share;
        rest * rest * rest
    };
    let weights: Vec<f64> = (0..x.len()).map(weight).collect();
    let sum = |f: &dyn Fn(usize) -> f64| weights.iter().enumerate().map(|(i, w)| w * f(i)).sum::<f64>();
    let all = sum(&|_| 1.0);
    let (mean_x, mean_y) = (sum(&|i| x[i]) / all, sum(&|i| y[i]) / all);
    let spread = sum(&|i| (x[i] - mean_x) * (x[i] - mean_x)) + RIDGE * all;
    let slope = sum(&|i| (x[i] - mean_x) * (y[i] - mean_y)) / spread;
    let squares = weights.iter().map(|w| w * w).sum::<f64>() / (all * all);
    Line {
        value: mean_y + slope * (at - mean_x),
        slope,
        leverage: squares + (at - mean_x) * (at - mean_x) / spread,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_straight_row_is_found_wherever_one_looks() {
        let x: Vec<f64> = (0..16).map(|i| f64::from(i) / 16.0).collect();
        let y: Vec<f64> = x.iter().map(|x| 3.0 - 2.0 * x).collect();
        for at in [0.0, 0.3, 0.97] {
            let line = local(&x, &y, at, Some(3));
            // The ridge bends it by about its own size.
            assert!((line.value - (3.0 - 2.0 * at)).abs() < 0.01, "{line:?}");
            assert!((line.slope + 2.0).abs() < 0.05, "{line:?}");
        }
    }

    #[test]
    fn a_point_left_out_says_nothing() {
        let x = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6];
        let (mut a, mut b) = ([1.0; 6], [1.0; 6]);
        a[2] = 50.0;
        b[2] = -7.0;
        assert_eq!(local(&x, &a, 0.3, Some(2)), local(&x, &b, 0.3, Some(2)));
    }
}
