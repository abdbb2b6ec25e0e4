//! The table: at each stage of the attempts, what was stated and what was right.

use dice::Dice;

use crate::attempt::Played;
use crate::transform;

/// Stages: notes that count.
const STAGES: [(usize, &str); 5] =
    [(4, "4 notes"), (8, "8 notes"), (12, "12 notes"), (18, "18 notes"), (usize::MAX, "end")];
/// How often the truth is drawn again from what was stated.
const REDRAWS: usize = 10_000;
/// Least number expected of a bin, and of what is not in it.
const EXPECTED: f64 = 5.0;
/// Point of the redrawn sums below which the found one must stay.
const POINT: f64 = 0.998;

/// Prints everything about `played`.
pub(crate) fn of(played: &[Played]) -> String {
    let mut out = format!(
        "{} attempts\n\n| after | attempts | stated, likeliest class | right | z | stated - right | sum of squares (99.8 % point) | \
         P(truth) < 1e-2, 1e-3, 1e-4 | Brier | log score |\n|---|---|---|---|---|---|---|---|---|---|\n",
        played.len()
    );
    for (notes, name) in STAGES {
        let beliefs: Vec<(&[f64], usize)> = played
            .iter()
            .filter_map(|p| {
                Some((p.trail.get(notes.min(p.trail.len().checked_sub(1)?))?.as_slice(), p.true_class))
            })
            .collect();
        out.push_str(&row(name, &beliefs));
    }
    let ends = || played.iter().filter_map(|p| Some(p.trail.last()?[p.true_class]));
    let sure = ends().filter(|p| 0.8 <= *p).count();
    let transforms: Vec<f64> = played.iter().filter_map(|p| p.transform).collect();
    if !transforms.is_empty() {
        out.push('\n');
        out.push_str(&transform::line(&transforms));
    }
    out.push_str(&format!("\ntrue class at 0.8 or more at the end: {sure} of {}\n", ends().count()));
    out
}

fn row(name: &str, beliefs: &[(&[f64], usize)]) -> String {
    let n = beliefs.len() as f64;
    let top: Vec<(f64, bool)> = beliefs
        .iter()
        .filter_map(|(p, truth)| {
            let best = (0..p.len()).max_by(|a, b| p[*a].total_cmp(&p[*b]))?;
            Some((p[best], best == *truth))
        })
        .collect();
    let stated = top.iter().map(|(p, _)| p).sum::<f64>();
    let right = top.iter().filter(|(_, right)| *right).count() as f64;
    let variance = top.iter().map(|(p, _)| p * (1.0 - p)).sum::<f64>();
    let lost = |below: f64| beliefs.iter().filter(|(p, truth)| p[*truth] < below).count();
    let score = beliefs.iter().map(|(p, truth)| p[*truth].max(f64::MIN_POSITIVE).ln()).sum::<f64>();
    let brier = beliefs
        .iter()
        .map(|(p, truth)| {
            p.iter().enumerate().map(|(k, p)| (p - f64::from(u8::from(k == *truth))).powi(2)).sum::<f64>()
        })
        .sum::<f64>();
    let (found, point) = squares(beliefs);
    format!(
        "| {name} | {n} | {:.3} | {:.3} | {:.1} | {:+.3} | {found:.1} ({point:.1}) | {}, {}, {} | {:.3} | {:.2} |\n",
        stated / n,
        right / n,
        (right - stated) / variance.max(1e-12).sqrt(),
        (stated - right) / n,
        lost(1e-2),
        lost(1e-3),
        lost(1e-4),
        brier / n,
        score / n,
    )
}

/// Sum over bins of stated probability of the squared standardised differences, and the point below which it must stay,
/// from [`REDRAWS`] draws of the truth out of what was stated.
fn squares(beliefs: &[(&[f64], usize)]) -> (f64, f64) {
    let mut stated: Vec<(f64, usize, usize)> = beliefs
        .iter()
        .enumerate()
        .flat_map(|(i, (p, _))| p.iter().enumerate().map(move |(k, p)| (*p, i, k)))
        .collect();
    stated.sort_by(|a, b| a.0.total_cmp(&b.0));
    // Bins of ten per cent, merged upwards until enough is expected on either side.
    let mut bins: Vec<Vec<(f64, usize, usize)>> = vec![Vec::new()];
    let enough = |bin: &[(f64, usize, usize)]| {
        let hits = bin.iter().map(|(p, ..)| p).sum::<f64>();
        let misses = bin.iter().map(|(p, ..)| 1.0 - p).sum::<f64>();
        EXPECTED <= hits && EXPECTED <= misses
    };
    for pair in stated.chunk_by(|a, b| (a.0 * 10.0).floor() == (b.0 * 10.0).floor()) {
        if bins.last().is_some_and(|bin| enough(bin)) {
            bins.push(Vec::new());
        }
        if let Some(bin) = bins.last_mut() {
            bin.extend_from_slice(pair);
        }
    }
    if 1 < bins.len() && !bins.last().is_some_and(|bin| enough(bin)) {
        let rest = bins.pop().unwrap_or_default();
        if let Some(bin) = bins.last_mut() {
            bin.extend(rest);
        }
    }
    let sum = |truth: &[usize]| -> f64 {
        bins.iter()
            .map(|bin| {
                let expected = bin.iter().map(|(p, ..)| p).sum::<f64>();
                let variance = bin.iter().map(|(p, ..)| p * (1.0 - p)).sum::<f64>();
                let found = bin.iter().filter(|(_, i, k)| truth[*i] == *k).count() as f64;
                (found - expected).powi(2) / variance.max(1e-9)
            })
            .sum()
    };
    let truth: Vec<usize> = beliefs.iter().map(|(_, truth)| *truth).collect();
    let mut dice = Dice::of(157);
    let mut redrawn: Vec<f64> = (0..REDRAWS)
        .map(|_| {
            let truth: Vec<usize> = beliefs
                .iter()
                .map(|(p, _)| {
                    let mut at = dice.unit() * p.iter().sum::<f64>();
                    p.iter()
                        .position(|p| {
                            at -= p;
                            at < 0.0
                        })
                        .unwrap_or(p.len() - 1)
                })
                .collect();
            sum(&truth)
        })
        .collect();
    redrawn.sort_by(f64::total_cmp);
    (sum(&truth), redrawn.get((POINT * REDRAWS as f64) as usize).copied().unwrap_or(f64::NAN))
}
