//! How likely what was shown would have been: cells of a scale under a normal error.
//!
//! A scale cuts the line into cells: one for each step (a number), one for either end beyond the scale,
//! or one for each level (a sense); and one more, off the line, for a dark display. Every cell's share
//! under a prediction is a difference of the normal distribution at its edges, so the shares of all
//! cells sum to 1 whatever the prediction.
//!
//! L = (1 − ε) · P(cell | μ, σ) + ε / (number of cells)
//!
//! The slip rate ε stands for what no model covers (looked at the wrong scale, knocked the hose). A
//! hypothesis of which nothing is known (`other`) has L = 1 / (number of cells).

use sim_core::observe::{Predicted, Scale, ShownValue};

use crate::infer::numeric::{ln, normal_between};

/// Share of readings that come from something outside the model.
pub const SLIP: f64 = 0.01;

/// What one cell of the belief expects of a reading, in the scale's unit, instrument error included.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Expected {
    /// Normal with this middle and standard deviation (0 allowed: certain).
    Near {
        /// Middle.
        mean: f64,
        /// Standard deviation, ≥ 0.
        sigma: f64,
    },
    /// At least this much: a time that was still running when nobody waited any longer.
    Beyond(f64),
    /// A dark display.
    Blank,
    /// Nothing is known: every cell of the scale alike.
    Anything,
    /// Nothing of this can come from the model any more: only a slip explains it.
    Slip,
}

impl Expected {
    /// From what the model says, with the instrument's error added and a width given.
    #[must_use]
    pub fn from_model(predicted: Predicted, error: f64, sigma: f64) -> Self {
        match predicted {
            Predicted::Value(value) => Self::Near { mean: value + error, sigma },
            Predicted::Beyond(value) => Self::Beyond(value),
            Predicted::Blank => Self::Blank,
        }
    }
}

/// First and last step of a numeric scale, as whole numbers of its resolution.
fn steps(resolution: f64, min: f64, max: f64) -> (i64, i64) {
    // A hair of slack, so that a scale of 0 to 0.3 in steps of 0.1 has its step 3.
    ((min / resolution - 1e-6).ceil() as i64, (max / resolution + 1e-6).floor() as i64)
}

/// Every cell of a scale, in order (for the law that they sum to 1, and for charts).
#[must_use]
pub fn cells(scale: &Scale) -> Vec<ShownValue> {
    match scale {
        Scale::Numeric { resolution, min, max, .. } => {
            let (first, last) = steps(*resolution, *min, *max);
            std::iter::once(ShownValue::Off(false))
                .chain((first..=last).map(ShownValue::Steps))
                .chain([ShownValue::Off(true), ShownValue::Blank])
                .collect()
        }
        Scale::Ordinal { levels, .. } => {
            (0..levels.len()).map(|l| ShownValue::Level(l as u8)).chain([ShownValue::Blank]).collect()
        }
    }
}

/// Number of cells of a scale.
#[must_use]
pub fn cell_count(scale: &Scale) -> f64 {
    match scale {
        Scale::Numeric { resolution, min, max, .. } => {
            let (first, last) = steps(*resolution, *min, *max);
            (last - first + 1).max(1) as f64 + 3.0
        }
        Scale::Ordinal { levels, .. } => levels.len() as f64 + 1.0,
    }
}

/// Edges of the cell of what was shown, in the scale's unit; `None` for a dark display and for anything
/// that is not on this scale.
#[must_use]
pub fn edges(scale: &Scale, shown: ShownValue) -> Option<(f64, f64)> {
    match (scale, shown) {
        (Scale::Numeric { resolution, min, max, .. }, shown) => {
            let (first, last) = steps(*resolution, *min, *max);
            let low = (first as f64 - 0.5) * resolution;
            let high = (last as f64 + 0.5) * resolution;
            match shown {
                ShownValue::Steps(step) if (first..=last).contains(&step) => {
                    Some(((step as f64 - 0.5) * resolution, (step as f64 + 0.5) * resolution))
                }
                ShownValue::Off(false) => Some((f64::NEG_INFINITY, low)),
                ShownValue::Off(true) => Some((high, f64::INFINITY)),
                _ => None,
            }
        }
        (Scale::Ordinal { levels, thresholds, .. }, ShownValue::Level(level)) => {
            let level = usize::from(level);
            (level < levels.len()).then(|| {
                let low = level.checked_sub(1).and_then(|i| thresholds.get(i));
                let high = thresholds.get(level);
                (*low.unwrap_or(&f64::NEG_INFINITY), *high.unwrap_or(&f64::INFINITY))
            })
        }
        _ => None,
    }
}

/// Probability of a cell before slips.
#[must_use]
pub fn cell_probability(scale: &Scale, shown: ShownValue, expected: Expected) -> f64 {
    if expected == Expected::Anything {
        return 1.0 / cell_count(scale);
    }
    let Some((low, high)) = edges(scale, shown) else {
        return if shown == ShownValue::Blank && expected == Expected::Blank { 1.0 } else { 0.0 };
    };
    match expected {
        Expected::Near { mean, sigma } if 0.0 < sigma => {
            normal_between((low - mean) / sigma, (high - mean) / sigma)
        }
        Expected::Near { mean, .. } => f64::from(u8::from(low <= mean && mean < high)),
        // A time that ran beyond the end of the watch's patience is shown as "still running".
        Expected::Beyond(_) => f64::from(u8::from(high == f64::INFINITY)),
        Expected::Blank | Expected::Anything | Expected::Slip => 0.0,
    }
}

/// Natural log of the likelihood of what was shown, slips mixed in; never `-inf`.
#[must_use]
pub fn log_likelihood(scale: &Scale, shown: ShownValue, expected: Expected) -> f64 {
    let flat = 1.0 / cell_count(scale);
    ln((1.0 - SLIP) * cell_probability(scale, shown, expected) + SLIP * flat)
}

#[cfg(test)]
mod tests {
    use super::*;

    const DIAL: Scale =
        Scale::Numeric { unit: "kPa", resolution: 1.0, min: -100.0, max: 0.0, scatter: 0.0, by_eye: true };
    const HISS: Scale =
        Scale::Ordinal { levels: &["none", "faint", "loud"], thresholds: &[0.3, 0.9], scatter: 0.1 };

    #[test]
    fn inv_cells_of_a_scale_sum_to_one() {
        let odd =
            Scale::Numeric { unit: "V", resolution: 0.1, min: -0.3, max: 0.3, scatter: 0.0, by_eye: false };
        assert_eq!(cells(&odd).len(), 7 + 3, "−0.3 … 0.3 are seven steps");
        for scale in [&DIAL, &HISS, &odd] {
            assert_eq!(cells(scale).len() as f64, cell_count(scale));
            let near = [-250.0, -100.6, -60.3, -0.4, 0.0, 0.31, 0.9, 40.0];
            let expected = near
                .iter()
                .flat_map(|&mean| [0.0, 0.01, 0.7, 30.0].map(|sigma| Expected::Near { mean, sigma }))
                .chain([Expected::Blank, Expected::Anything, Expected::Beyond(600.0)]);
            for expected in expected {
                if *scale == HISS && matches!(expected, Expected::Beyond(_)) {
                    continue; // A sense has no patience that could end; the sum is 1 by its top level.
                }
                let sum: f64 = cells(scale).iter().map(|&c| cell_probability(scale, c, expected)).sum();
                assert!((sum - 1.0).abs() < 1e-12, "{expected:?} on {scale:?}: {sum}");
                let with_slips: f64 = cells(scale)
                    .iter()
                    .map(|&c| sim_core::math::exp(log_likelihood(scale, c, expected)))
                    .sum();
                assert!((with_slips - 1.0).abs() < 1e-12, "{expected:?}: {with_slips}");
            }
        }
    }

    #[test]
    fn inv_a_reading_off_the_scale_is_a_tail_not_a_gap() {
        let at = |mean| Expected::Near { mean, sigma: 2.0 };
        let off = |mean| cell_probability(&DIAL, ShownValue::Off(false), at(mean));
        assert!(0.999 < off(-110.0));
        assert!(off(-95.0) < 0.01);
        assert!(off(-95.0) < off(-99.0));
    }

    #[test]
    fn inv_nothing_is_impossible() {
        for shown in cells(&DIAL) {
            assert!(log_likelihood(&DIAL, shown, Expected::Blank).is_finite());
            assert!(log_likelihood(&DIAL, shown, Expected::Near { mean: 1e6, sigma: 0.0 }).is_finite());
        }
    }
}
