//! Cells of a scale: what may be shown at all, and which stretch of the line each stands for.
//!
//! A scale cuts the line into cells: one for each step (a number), one for either end beyond the scale,
//! or one for each level (a sense); and one more, off the line, for a dark display. The stretches meet, so that what a
//! prediction gives to all cells sums to 1.

use sim_core::observe::{Scale, ShownValue};

/// Share of readings that come from something outside the model (looked at the wrong scale, knocked the hose): every cell
/// alike.
pub const SLIP: f64 = 0.01;

/// First and last step of a numeric scale, as whole numbers of its resolution.
fn steps(resolution: f64, min: f64, max: f64) -> (i64, i64) {
    // A hair of slack, so that a scale of 0 to 0.3 in steps of 0.1 has its step 3.
    ((min / resolution - 1e-6).ceil() as i64, (max / resolution + 1e-6).floor() as i64)
}

/// Every cell of a scale, in order.
#[cfg(test)]
fn cells(scale: &Scale) -> Vec<ShownValue> {
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
                    let below = step == 0 && scale.counts_from_nought();
                    let from = if below { f64::NEG_INFINITY } else { (step as f64 - 0.5) * resolution };
                    Some((from, (step as f64 + 0.5) * resolution))
                }
                ShownValue::Off(false) if !scale.counts_from_nought() => Some((f64::NEG_INFINITY, low)),
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::infer::numeric::normal_between;

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
            for mean in [-250.0, -100.6, -60.3, -0.4, 0.0, 0.31, 0.9, 40.0] {
                for sigma in [0.01, 0.7, 30.0] {
                    let share =
                        |(low, high): (f64, f64)| normal_between((low - mean) / sigma, (high - mean) / sigma);
                    let sum: f64 = cells(scale).iter().filter_map(|c| edges(scale, *c)).map(share).sum();
                    assert!((sum - 1.0).abs() < 1e-12, "{mean}, {sigma} on {scale:?}: {sum}");
                }
            }
        }
    }

    #[test]
    fn inv_a_reading_off_the_scale_is_a_tail_not_a_gap() {
        assert_eq!(edges(&DIAL, ShownValue::Off(false)), Some((f64::NEG_INFINITY, -100.5)));
        assert_eq!(edges(&DIAL, ShownValue::Off(true)), Some((0.5, f64::INFINITY)));
        assert_eq!(edges(&DIAL, ShownValue::Blank), None);
    }
}
