//! A curve through the points nearby: how a reading runs with severity.
//!
//! Locally weighted regression with tricube weights (Cleveland, Journal of the American Statistical Association 74, 1979).
//! Severity runs by ratio, so what a fault does often grows faster the farther one goes: a straight line through points on
//! both sides lies above such a bend everywhere, a car is taken for one with a smaller fault, and the more notes say so the
//! surer it seems. Where there are points enough the curve is therefore a parabola, through more of them. It is laid out in
//! polynomials that are orthogonal over the weighted points (Forsythe, Journal of the Society for Industrial and Applied
//! Mathematics 5, 1957).

/// Share of the points that a straight line goes through.
const SHARE: f64 = 0.45;
/// The same of a parabola.
const SHARE_OF_PARABOLA: f64 = 0.6;
/// Least number of points for a parabola.
const FOR_A_PARABOLA: usize = 12;
/// Least number of points for a line.
const LEAST: usize = 4;
/// The farthest of them keeps some weight.
const BEYOND: f64 = 1.3;
/// Hold on the slope where the points hardly differ in severity; its square holds the bend.
const RIDGE: f64 = 1e-4;
/// No sum of squares, where all points have one severity.
const NOTHING: f64 = 1e-30;

/// The curve at a place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Line {
    /// Value there.
    pub value: f64,
    /// Slope there.
    pub slope: f64,
    /// Variance of the value, as a multiple of one point's variance.
    pub leverage: f64,
}

/// A polynomial at every point, and at the place asked for.
struct Basis {
    of_points: Vec<f64>,
    /// Value and slope at the place.
    there: (f64, f64),
    /// Weighted sum of its squares.
    squares: f64,
    /// What holds it down where there is little of it.
    hold: f64,
}

/// The curve through (`x`, `y`) at `at`; point number `without` is left out.
///
/// Needs at least two points besides that one; with none it is 0 with slope 0 and leverage 1.
#[must_use]
pub fn local(x: &[f64], y: &[f64], at: f64, without: Option<usize>) -> Line {
    let mut far: Vec<f64> = (0..x.len()).filter(|i| Some(*i) != without).map(|i| (x[i] - at).abs()).collect();
    if far.is_empty() {
        return Line { value: 0.0, slope: 0.0, leverage: 1.0 };
    }
    far.sort_by(f64::total_cmp);
    let is_parabola = FOR_A_PARABOLA <= far.len();
    let share = if is_parabola { SHARE_OF_PARABOLA } else { SHARE };
    let many = LEAST.max((share * x.len() as f64).ceil() as usize).min(far.len());
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
    through(&weights, x, y, at, if is_parabola { 2 } else { 1 })
}

/// The polynomial of a degree through weighted points, at `at`.
fn through(weights: &[f64], x: &[f64], y: &[f64], at: f64, degree: usize) -> Line {
    let sum = |f: &dyn Fn(usize) -> f64| weights.iter().enumerate().map(|(i, w)| w * f(i)).sum::<f64>();
    let all = sum(&|_| 1.0);
    let mut bases = vec![Basis { of_points: vec![1.0; x.len()], there: (1.0, 0.0), squares: all, hold: 0.0 }];
    let mut hold = all;
    for k in 0..degree {
        let last = &bases[k];
        let middle = sum(&|i| x[i] * last.of_points[i] * last.of_points[i]) / last.squares.max(NOTHING);
        let before = k.checked_sub(1).map(|k| &bases[k]);
        let back = before.map_or(0.0, |before| last.squares / before.squares.max(NOTHING));
        let next = |x: f64, of_last: f64, of_before: f64| (x - middle) * of_last - back * of_before;
        let of_points: Vec<f64> = (0..x.len())
            .map(|i| next(x[i], last.of_points[i], before.map_or(0.0, |before| before.of_points[i])))
            .collect();
        let (value_before, slope_before) = before.map_or((0.0, 0.0), |before| before.there);
        let there =
            (next(at, last.there.0, value_before), last.there.0 + next(at, last.there.1, slope_before));
        let squares = sum(&|i| of_points[i] * of_points[i]);
        hold *= RIDGE;
        bases.push(Basis { of_points, there, squares, hold });
    }
    let mut line = Line { value: 0.0, slope: 0.0, leverage: 0.0 };
    for basis in &bases {
        let share = sum(&|i| basis.of_points[i] * y[i]) / (basis.squares + basis.hold);
        line.value += share * basis.there.0;
        line.slope += share * basis.there.1;
    }
    let says = |i: usize| {
        let of = |basis: &Basis| basis.of_points[i] * basis.there.0 / (basis.squares + basis.hold);
        weights[i] * bases.iter().map(of).sum::<f64>()
    };
    line.leverage = (0..x.len()).map(|i| says(i) * says(i)).sum();
    line
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
    fn a_level_row_is_level_to_the_last_digits() {
        for many in [6, 20] {
            let x: Vec<f64> = (0..many).map(|i| f64::from(i) / f64::from(many)).collect();
            let line = local(&x, &vec![-60.0; x.len()], 0.97, None);
            assert!((line.value + 60.0).abs() < 1e-9 && line.slope.abs() < 1e-9, "{line:?}");
        }
    }

    #[test]
    fn points_of_one_severity_have_a_middle() {
        let line = local(&[0.5; 14], &[3.0; 14], 0.5, None);
        assert!((line.value - 3.0).abs() < 1e-9 && line.leverage.is_finite(), "{line:?}");
    }

    /// What a line would take for a smaller fault.
    #[test]
    fn a_bend_is_followed_where_there_are_points_enough() {
        let curve = |x: f64| 1.0 + 4.0 * x * x;
        let x: Vec<f64> = (0..16).map(|i| f64::from(i) / 16.0).collect();
        let y: Vec<f64> = x.iter().copied().map(curve).collect();
        for at in [0.0, 0.3, 0.97] {
            let line = local(&x, &y, at, Some(3));
            assert!((line.value - curve(at)).abs() < 0.01, "{at}: {line:?}");
            assert!((line.slope - 8.0 * at).abs() < 0.1, "{at}: {line:?}");
        }
    }

    /// The leverage is what the value moves with each point, squared and added up.
    #[test]
    fn inv_leverage_is_what_each_point_moves() {
        for many in [6, 20] {
            let x: Vec<f64> = (0..many).map(|i| (f64::from(i) + 0.3) / f64::from(many)).collect();
            let y = vec![0.0; x.len()];
            let moved = |i: usize| {
                let mut y = y.clone();
                y[i] = 1.0;
                local(&x, &y, 0.4, None).value
            };
            let moves: f64 = (0..x.len()).map(|i| moved(i) * moved(i)).sum();
            let line = local(&x, &y, 0.4, None);
            assert!((line.leverage - moves).abs() < 1e-12, "{line:?}, {moves}");
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
