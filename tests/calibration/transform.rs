//! Is what is believed of a severity what it says? The probability integral transform: how much of the belief in the true
//! fault lies below its true severity. Were the belief right, that is as often in one tenth as in any other.

use assess::infer::belief::Belief;
use assess::infer::hypotheses::Hypotheses;
use sim_core::math::ln;

/// Bins.
const BINS: usize = 10;
/// Point of χ² with nine degrees of freedom that is passed once in a hundred (tables, from memory).
const POINT: f64 = 21.67;

/// Share of the belief in `fault` (index into the car's) below `at`, the share of its range at which the severity lies; the
/// belief in a node is spread evenly over its cell. `None` where nothing of it is left.
pub(crate) fn below(hypotheses: &Hypotheses, belief: &Belief, fault: u16, at: f64) -> Option<f64> {
    let cells: Vec<f64> = hypotheses
        .cells()
        .enumerate()
        .filter(|(_, (which, _))| hypotheses.list[*which].fault() == Some(fault))
        .map(|(cell, _)| belief.mass_in(cell..cell + 1))
        .collect();
    let all: f64 = cells.iter().sum();
    let place = at * cells.len() as f64;
    let share = |node: usize| (place - node as f64).clamp(0.0, 1.0);
    let below: f64 = cells.iter().enumerate().map(|(node, mass)| share(node) * mass).sum();
    (0.0 < all).then(|| below / all)
}

/// Where in its range a severity lies, 0 to 1: by ratio when both ends have one sign, as it is drawn.
pub(crate) fn share(min: f64, max: f64, severity: f64) -> f64 {
    if 0.0 < min * max { ln(severity / min) / ln(max / min) } else { (severity - min) / (max - min) }
}

/// A line about all transforms.
pub(crate) fn line(transforms: &[f64]) -> String {
    let mut bins = [0usize; BINS];
    for transform in transforms {
        bins[((transform * BINS as f64) as usize).min(BINS - 1)] += 1;
    }
    let expected = transforms.len() as f64 / BINS as f64;
    let squares: f64 = bins.iter().map(|found| (*found as f64 - expected).powi(2) / expected.max(1e-9)).sum();
    let holds = if squares < POINT { "p > 0.01" } else { "p < 0.01" };
    format!(
        "severity at the end, given the true fault: tenths {bins:?}, chi-square {squares:.1} (1 % point {POINT}): {holds}\n"
    )
}
