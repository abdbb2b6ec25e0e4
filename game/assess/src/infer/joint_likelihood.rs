//! All readings of an attempt together, under one hypothesis: a kernel round each draw that knows what
//! varies together.
//!
//! Sixteen draws of some seventy unknowns are few. Were each reading widened on its own, five readings of one
//! switch would count as five proofs, and after thirty readings only the luckiest draw of each hypothesis would be
//! left: the belief would tell draws apart, not faults. So the readings that are numbers are taken as one point in as
//! many dimensions, and each draw m gets a normal kernel with a full matrix (in logarithms for times and resistances):
//!
//! y | m ~ N(c_m, h² S + E + R)
//!
//! * S: how the hypothesis' sixteen predictions vary and vary together. Correlations are drawn towards 0 as far as
//!   sixteen points cannot know them (Schäfer and Strimmer 2005, equation for correlations, target identity). The
//!   scale of each reading is the smaller of standard deviation and interquartile range / 1.349 (Silverman 1986).
//! * h = 16^(−1/(d + 4)) (Scott 1992), d the number of directions in which the predictions vary: (Σ r²)/T counts how
//!   many readings say the same, so d = T² / Σᵢⱼ rᵢⱼ².
//! * c_m: the draw's prediction, drawn towards their mean by √(1 − h²) so that kernels and draws together are as wide
//!   as the draws (West 1993).
//! * E: the constant error of each instrument, evenly spread over its class (variance a third of its square): one
//!   number for all readings with it, known without drawing it.
//! * R: the scatter of each reading, half a step for what rounding hides, and the stepping's error.
//!
//! What is no number in every draw (a level, a time that ran out, a needle at its stop) is widened on its own, as
//! before; so is everything in a hypothesis in which the reading could not have come about.
//!
//! A reading that a draw can explain only as a slip tells nothing about the next one there.

use sim_core::observe::{Predicted, Scale, ShownValue};

use crate::infer::likelihood::{Expected, SLIP, cell_count, edges};
use crate::infer::numeric::{ln, normal_between};

/// Floor of the kernel, share of the value: the error the stepping may make.
pub const FLOOR_OF_VALUE: f64 = 0.005;
/// Floor of the kernel, share of the scale's step.
pub const FLOOR_OF_STEP: f64 = 0.5;
/// Interquartile range of a normal distribution, in standard deviations.
const IQR_OF_NORMAL: f64 = 1.349;

/// What one draw expects of one reading.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Drawn {
    /// What the model says, no instrument between.
    pub predicted: Predicted,
    /// The instrument's error at the end of its class, in the scale's unit; 0 for senses.
    pub error: f64,
    /// The share of it that this draw drew, −1 to 1.
    pub share: f64,
}

/// A noted reading with what the draws of one hypothesis expect of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Noted {
    /// What was shown.
    pub shown: ShownValue,
    /// On which scale.
    pub scale: Scale,
    /// A time or a resistance: spreads by ratio.
    pub by_ratio: bool,
    /// Readings with the same instrument share its error.
    pub instrument: Option<usize>,
    /// Per draw; `None` where the reading could not have come about.
    pub drawn: Vec<Option<Drawn>>,
}

/// Smallest value that a logarithm is taken of: a tenth of a step is as good as nothing.
fn transformed(value: f64, noted: &Noted) -> f64 {
    if !noted.by_ratio {
        return value;
    }
    let step = match noted.scale {
        Scale::Numeric { resolution, .. } => resolution,
        Scale::Ordinal { .. } => 0.0,
    };
    ln(value.max(0.1 * step).max(1e-9))
}

/// The predictions as numbers, when every draw has one and a step of the scale was shown.
fn numbers(noted: &Noted) -> Option<Vec<f64>> {
    if !matches!((noted.shown, &noted.scale), (ShownValue::Steps(_), Scale::Numeric { .. })) {
        return None;
    }
    noted
        .drawn
        .iter()
        .map(|d| match d {
            Some(Drawn { predicted: Predicted::Value(value), .. }) => Some(transformed(*value, noted)),
            _ => None,
        })
        .collect()
}

/// Mean, standard deviation, and spread: the smaller of standard deviation and interquartile range / 1.349.
fn spread(values: &[f64]) -> (f64, f64, f64) {
    let n = values.len() as f64;
    let mean = values.iter().sum::<f64>() / n.max(1.0);
    if n < 2.0 {
        return (mean, 0.0, 0.0);
    }
    let deviation = (values.iter().map(|v| (v - mean) * (v - mean)).sum::<f64>() / (n - 1.0)).sqrt();
    let mut sorted = values.to_vec();
    sorted.sort_by(f64::total_cmp);
    let quantile = |q: f64| {
        let at = q * (n - 1.0);
        let below = at.floor() as usize;
        let above = (below + 1).min(sorted.len() - 1);
        sorted[below] + (at - at.floor()) * (sorted[above] - sorted[below])
    };
    (mean, deviation, deviation.min((quantile(0.75) - quantile(0.25)) / IQR_OF_NORMAL))
}

/// Correlations of rows (one row a reading, one column a draw), drawn towards 0: Schäfer and Strimmer 2005,
/// λ = Σ Var(r) / Σ r² over the pairs, between 0 and 1.
fn correlations(standardised: &[Vec<f64>]) -> Vec<Vec<f64>> {
    let t = standardised.len();
    let n = standardised.first().map_or(0.0, |row| row.len() as f64);
    let mut r = vec![vec![0.0; t]; t];
    let (mut variance, mut square) = (0.0, 0.0);
    for i in 0..t {
        r[i][i] = 1.0;
        for j in 0..i {
            let products: Vec<f64> =
                standardised[i].iter().zip(&standardised[j]).map(|(a, b)| a * b).collect();
            let mean = products.iter().sum::<f64>() / n;
            let scatter: f64 = products.iter().map(|p| (p - mean) * (p - mean)).sum();
            r[i][j] = n / (n - 1.0) * mean;
            variance += n / ((n - 1.0) * (n - 1.0) * (n - 1.0)) * scatter;
            square += r[i][j] * r[i][j];
            r[j][i] = r[i][j];
        }
    }
    let keep = if 0.0 < square { 1.0 - (variance / square).clamp(0.0, 1.0) } else { 0.0 };
    for (i, row) in r.iter_mut().enumerate() {
        for (j, r) in row.iter_mut().enumerate() {
            if i != j {
                *r *= keep;
            }
        }
    }
    r
}

/// Readings that are numbers in every draw, with the matrix of their kernel.
struct Numbers {
    /// Indices into the notes.
    which: Vec<usize>,
    /// Per reading, per draw: centre of the kernel.
    centres: Vec<Vec<f64>>,
    /// Kernel, instrument errors, scatter.
    covariance: Vec<Vec<f64>>,
}

fn gather(notes: &[Noted]) -> Numbers {
    let (which, values): (Vec<usize>, Vec<Vec<f64>>) =
        notes.iter().enumerate().filter_map(|(i, note)| Some((i, numbers(note)?))).unzip();
    let t = which.len();
    let stats: Vec<(f64, f64, f64)> = values.iter().map(|v| spread(v)).collect();
    let standardised: Vec<Vec<f64>> = values
        .iter()
        .zip(&stats)
        .map(|(row, (mean, deviation, _))| {
            row.iter().map(|v| if 0.0 < *deviation { (v - mean) / deviation } else { 0.0 }).collect()
        })
        .collect();
    let r = correlations(&standardised);
    let draws = values.first().map_or(1.0, |v| v.len() as f64);
    let all: f64 = r.iter().flatten().map(|r| r * r).sum();
    let directions = if 0.0 < all { (t * t) as f64 / all } else { 1.0 };
    let h = sim_core::math::pow(draws, -1.0 / (directions + 4.0));
    let mut covariance = vec![vec![0.0; t]; t];
    let mut centres = Vec::with_capacity(t);
    for i in 0..t {
        let note = &notes[which[i]];
        let (mean, deviation, width) = stats[i];
        let share = if 0.0 < deviation { width / deviation } else { 0.0 };
        let pull = (1.0 - h * h * share * share).max(0.0).sqrt();
        centres.push(values[i].iter().map(|v| mean + pull * (v - mean)).collect());
        for j in 0..t {
            covariance[i][j] = h * h * width * stats[j].2 * r[i][j];
        }
        let Scale::Numeric { scatter, resolution, .. } = note.scale else { continue };
        let at = shown_value(note);
        let per = if note.by_ratio { 1.0 / at.abs().max(resolution) } else { 1.0 };
        let floor = (FLOOR_OF_STEP * resolution).max(FLOOR_OF_VALUE * at.abs()) * per;
        covariance[i][i] += (scatter * per) * (scatter * per) + (floor * floor - covariance[i][i]).max(0.0);
    }
    for i in 0..t {
        for j in 0..t {
            let (a, b) = (&notes[which[i]], &notes[which[j]]);
            if a.instrument.is_some() && a.instrument == b.instrument {
                covariance[i][j] += error_of(a) * error_of(b) / 3.0;
            }
        }
    }
    Numbers { which, centres, covariance }
}

/// The instrument's error at the end of its class at what was shown, in the transformed unit.
fn error_of(note: &Noted) -> f64 {
    let error = note.drawn.iter().flatten().map(|d| d.error.abs()).fold(0.0, f64::max);
    if note.by_ratio {
        let step = if let Scale::Numeric { resolution, .. } = note.scale { resolution } else { 1.0 };
        error / shown_value(note).abs().max(step)
    } else {
        error
    }
}

/// What was shown, as a number of the scale's unit.
fn shown_value(note: &Noted) -> f64 {
    note.scale.number(note.shown).unwrap_or(0.0)
}

/// Natural log of the likelihood of all notes together, per draw of one hypothesis.
#[must_use]
pub fn log_likelihoods(notes: &[Noted]) -> Vec<f64> {
    let n = notes.first().map_or(0, |note| note.drawn.len());
    let together = gather(notes);
    let alone: Vec<usize> = (0..notes.len()).filter(|i| !together.which.contains(i)).collect();
    let mut logs = vec![0.0; n];
    for index in alone {
        for (log, expected) in logs.iter_mut().zip(widen(&notes[index])) {
            *log +=
                crate::infer::likelihood::log_likelihood(&notes[index].scale, notes[index].shown, expected);
        }
    }
    for (draw, log) in logs.iter_mut().enumerate() {
        *log += chain(notes, &together, draw);
    }
    logs
}

/// One reading after the other, each given those before it that were no slips: a Cholesky factor that grows by a
/// row a reading.
fn chain(notes: &[Noted], numbers: &Numbers, draw: usize) -> f64 {
    let mut taken: Vec<usize> = Vec::new();
    let mut factor: Vec<Vec<f64>> = Vec::new();
    // The residuals of the readings taken, solved forward: what is left of each when the others are known.
    let mut solved: Vec<f64> = Vec::new();
    let mut total = 0.0;
    for (i, &index) in numbers.which.iter().enumerate() {
        let note = &notes[index];
        let mut row = Vec::with_capacity(taken.len() + 1);
        for (k, &before) in taken.iter().enumerate() {
            let dot: f64 = (0..k).map(|l| row[l] * factor[k][l]).sum();
            row.push((numbers.covariance[i][before] - dot) / factor[k][k]);
        }
        let explained: f64 = row.iter().map(|v: &f64| v * v).sum();
        let own = numbers.covariance[i][i];
        // Rounding may leave a hair below 0 when a reading repeats another; a thousandth is below any scatter.
        let sigma = (own - explained).max(1e-6 * own).max(1e-24).sqrt();
        let shift: f64 = row.iter().zip(&solved).map(|(a, b)| a * b).sum();
        let mean = numbers.centres[i][draw] + shift;
        let p = probability(note, mean, sigma);
        let flat = SLIP / cell_count(&note.scale);
        let likelihood = (1.0 - SLIP) * p + flat;
        total += ln(likelihood);
        if flat < (1.0 - SLIP) * p {
            let residual = transformed(shown_value(note), note) - numbers.centres[i][draw];
            solved.push((residual - shift) / sigma);
            row.push(sigma);
            factor.push(row);
            taken.push(i);
        }
    }
    total
}

/// Chance of the step that was shown.
fn probability(note: &Noted, mean: f64, sigma: f64) -> f64 {
    let Some((low, high)) = edges(&note.scale, note.shown) else { return 0.0 };
    let (low, high) =
        if note.by_ratio { (transformed(low, note), transformed(high, note)) } else { (low, high) };
    normal_between((low - mean) / sigma, (high - mean) / sigma)
}

/// Predictions of one reading on its own, with their widths: what is no number in every draw.
fn widen(note: &Noted) -> Vec<Expected> {
    /// Bandwidth for sixteen points when about four unknowns matter: 16^(−1/8).
    const BANDWIDTH: f64 = 0.7;
    let (scatter, step) = match &note.scale {
        Scale::Numeric { scatter, resolution, .. } => (*scatter, *resolution),
        Scale::Ordinal { scatter, .. } => (*scatter, 0.0),
    };
    let with_error = |d: &Drawn| match d.predicted {
        Predicted::Value(value) => Predicted::Value(value + d.error * d.share),
        other => other,
    };
    let values: Vec<f64> = note
        .drawn
        .iter()
        .flatten()
        .filter_map(|d| match with_error(d) {
            Predicted::Value(value) => Some(transformed(value, note)),
            _ => None,
        })
        .collect();
    let (_, _, width) = spread(&values);
    note.drawn
        .iter()
        .map(|draw| match draw.as_ref().map(with_error) {
            Some(Predicted::Value(value)) => {
                let scaled = if note.by_ratio { width * value.abs() } else { width };
                let floor = (FLOOR_OF_STEP * step).max(FLOOR_OF_VALUE * value.abs());
                let kernel = (BANDWIDTH * scaled).max(floor);
                Expected::Near { mean: value, sigma: (scatter * scatter + kernel * kernel).sqrt() }
            }
            Some(other) => Expected::from_model(other, 0.0, 0.0),
            // *Other*, or a reading that could not have come about in this cell: nothing is known.
            None => Expected::Anything,
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    const DIAL: Scale =
        Scale::Numeric { unit: "kPa", resolution: 1.0, min: -100.0, max: 0.0, scatter: 0.3, by_eye: true };

    /// Sixteen even steps from `middle` − `half` to `middle` + `half`, in an order of their own.
    fn draws(middle: f64, half: f64, stride: usize) -> Vec<Option<Drawn>> {
        (0..16)
            .map(|i| {
                let u = ((i * stride) % 16) as f64 / 7.5 - 1.0;
                Some(Drawn { predicted: Predicted::Value(middle + half * u), error: 0.0, share: 0.0 })
            })
            .collect()
    }

    fn note(shown: i64, drawn: Vec<Option<Drawn>>) -> Noted {
        Noted { shown: ShownValue::Steps(shown), scale: DIAL, by_ratio: false, instrument: None, drawn }
    }

    fn evidence(notes: &[Noted]) -> f64 {
        let logs = log_likelihoods(notes);
        crate::infer::numeric::log_sum_exp(logs.iter().copied()) - ln(logs.len() as f64)
    }

    #[test]
    fn spread_is_robust_and_exact_on_a_normal_shape() {
        assert_eq!(spread(&[3.0]).2, 0.0);
        assert_eq!(spread(&[2.0; 16]).2, 0.0);
        // Two clusters of 13 and 3: the bulk has no spread, and the few must not lend it any.
        let clusters: Vec<f64> = (0..16).map(|i| if i < 13 { 0.0 } else { 50.0 }).collect();
        assert_eq!(spread(&clusters).2, 0.0);
        // Even steps 0 … 15: IQR 7.5 / 1.349 = 5.56 against σ 4.76, so σ it is.
        let even: Vec<f64> = (0..16).map(f64::from).collect();
        assert!((spread(&even).2 - (272.0f64 / 12.0).sqrt()).abs() < 1e-12);
    }

    /// The same thing looked at ten times tells hardly more than once, and never turns against a hypothesis that it fits.
    #[test]
    fn inv_a_repeated_reading_is_not_ten_proofs() {
        let near = |times: usize| evidence(&vec![note(-58, draws(-60.0, 6.0, 1)); times]);
        let far = |times: usize| evidence(&vec![note(-58, draws(-50.0, 6.0, 1)); times]);
        let once = near(1) - far(1);
        let often = near(10) - far(10);
        assert!(0.0 < once);
        // Ten proofs would be ten times as much.
        assert!(often < 3.0 * once, "{once} once, {often} ten times");
        assert!(0.5 * once < often, "{once} once, {often} ten times");
    }

    /// Two gauges' worth of error: a reading that fits with an error of the gauge fits again with the same error.
    #[test]
    fn inv_an_instruments_error_is_one_number() {
        let shared = |shown: i64, middle: f64| Noted {
            instrument: Some(0),
            drawn: (0..16)
                .map(|_| Some(Drawn { predicted: Predicted::Value(middle), error: 1.6, share: 0.0 }))
                .collect(),
            ..note(shown, Vec::new())
        };
        // Both two too high: one error explains both, so the second costs less than the first.
        let first = evidence(&[shared(-58, -60.0)]);
        let both = evidence(&[shared(-58, -60.0), shared(-48, -50.0)]);
        assert!(first < both - first, "first {first}, second {}", both - first);
        // One too high, one too low: no error of one gauge does that.
        let torn = evidence(&[shared(-58, -60.0), shared(-52, -50.0)]);
        assert!(torn < both);
    }

    /// Kernels and draws together are as wide as the draws: the mean share of a cell over draws of a normal
    /// shape is that of the normal distribution itself.
    #[test]
    fn inv_kernels_do_not_blur() {
        // Quantiles of a normal distribution with σ = 5 at the middles of sixteen strata.
        let z = [1.862, 1.318, 1.010, 0.776, 0.579, 0.402, 0.237, 0.078];
        let drawn: Vec<Option<Drawn>> = z
            .iter()
            .flat_map(|z| [-60.0 + 5.0 * z, -60.0 - 5.0 * z])
            .map(|v| Some(Drawn { predicted: Predicted::Value(v), error: 0.0, share: 0.0 }))
            .collect();
        for shown in [-66, -63, -60, -57, -54] {
            let got = sim_core::math::exp(evidence(&[note(shown, drawn.clone())]));
            let x = (f64::from(shown as i32) + 60.0) / 5.0;
            let fair = normal_between(x - 0.1, x + 0.1);
            // Sixteen points stand for a normal distribution to about a tenth.
            assert!((got / fair - 1.0).abs() < 0.12, "{shown}: {got} against {fair}");
        }
    }

    /// Many readings that tell nothing about the fault must not move the belief between two hypotheses that
    /// share their draws, however many and however unlucky the car.
    #[test]
    fn inv_idle_readings_are_idle() {
        let strides = [1, 3, 5, 7, 9, 11, 13, 15];
        let idle: Vec<Noted> = strides
            .iter()
            .enumerate()
            .map(|(i, &s)| note(-70 + 5 * i as i64 + 3, draws(-70.0 + 5.0 * i as f64, 5.0, s)))
            .collect();
        let with = |middle: f64| {
            let mut notes = idle.clone();
            notes.push(note(-20, draws(middle, 4.0, 3)));
            evidence(&notes)
        };
        let alone = |middle: f64| evidence(&[note(-20, draws(middle, 4.0, 3))]);
        let told = with(-20.0) - with(-26.0);
        let fair = alone(-20.0) - alone(-26.0);
        assert!((told - fair).abs() < 1.0, "{told} against {fair} nats");
    }
}
