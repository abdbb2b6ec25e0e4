//! The first way in which the belief was computed (`score/1`), kept to be held against: two bands of severity, sixteen draws in
//! each, a normal kernel round each draw that knows what varies together among the sixteen, hypotheses below one in ten
//! thousand dropped for good. Its cars come from a table of [`crate::dump`], so it judges the same notes as today's marker.

use assess::infer::belief::Belief;
use assess::infer::complaint;
use assess::infer::hypotheses::{Hypotheses, Hypothesis};
use assess::infer::likelihood::{SLIP, cell_count, edges};
use assess::infer::numeric::{ln, normal_between};
use assess::infer::rows::Told;
use assess::pack::job::Job;
use assess::play::course::Looked;
use sim_core::observe::{Observed, Predicted, Scale, ShownValue};

/// Draws of a band.
pub(crate) const DRAWS: usize = 16;
/// Mass below which a hypothesis was not followed any further.
const DROP_BELOW: f64 = 1e-4;
/// Floor of the kernel, share of the value.
const FLOOR_OF_VALUE: f64 = 0.005;
/// Floor of the kernel, share of the scale's step.
const FLOOR_OF_STEP: f64 = 0.5;
/// Interquartile range of a normal distribution, in standard deviations.
const IQR_OF_NORMAL: f64 = 1.349;
/// Bandwidth of a reading that is no number in every draw.
const BANDWIDTH: f64 = 0.7;

/// A car of the table: its fault and where in its range that stands, whether it would have been complained of, and what it would
/// show at each note.
pub(crate) struct Drawn {
    pub(crate) fault: Option<u16>,
    pub(crate) at: f64,
    pub(crate) shows: bool,
    pub(crate) told: Vec<Option<Told>>,
    /// Share of each instrument's class that its error was drawn at, −1 to 1.
    pub(crate) shares: Vec<f64>,
}

/// A note with what the draws of one hypothesis expect of it.
struct Noted<'a> {
    scale: &'a Scale,
    shown: ShownValue,
    by_ratio: bool,
    instrument: Option<usize>,
    drawn: Vec<Option<(Told, f64)>>,
}

/// Probability of each class on the complaint and after each note.
pub(crate) fn trail(job: &Job, looked: &[&Looked], cars: &[Drawn]) -> Vec<Vec<f64>> {
    let hypotheses = Hypotheses::of(&job.car);
    let mut groups: Vec<(usize, f64, Vec<&Drawn>)> = Vec::new();
    for entry in &hypotheses.list {
        let of = |band: std::ops::Range<f64>| {
            let is = |car: &&Drawn| car.fault == entry.fault() && band.contains(&car.at);
            cars.iter().filter(is).take(DRAWS).collect::<Vec<_>>()
        };
        match entry.hypothesis {
            Hypothesis::Inside => groups.push((entry.class, entry.prior, of(0.0..1.0))),
            Hypothesis::Fault(_) => {
                groups.push((entry.class, entry.prior / 2.0, of(0.0..0.5)));
                groups.push((entry.class, entry.prior / 2.0, of(0.5..1.0)));
            }
            Hypothesis::Other | Hypothesis::Pair(..) => {
                groups.push((entry.class, entry.prior, vec![]));
            }
        }
    }
    let class_of: Vec<usize> =
        groups.iter().flat_map(|(class, _, cars)| vec![*class; cars.len().max(1)]).collect();
    let start: Vec<Vec<f64>> = groups
        .iter()
        .map(|(_, prior, cars)| {
            let cell = |shows| ln(prior / cars.len().max(1) as f64) + complaint::log_likelihood(shows);
            if cars.is_empty() {
                vec![cell(None)]
            } else {
                cars.iter().map(|car| cell(Some(car.shows))).collect()
            }
        })
        .collect();
    // Of a hypothesis that was dropped: its logs then, and what slips add from there on.
    let mut dropped: Vec<Option<Vec<f64>>> = vec![None; groups.len()];
    let mut trail = Vec::new();
    for many in 0..=looked.len() {
        let mut masses = Vec::new();
        for (group, (_, _, cars)) in groups.iter().enumerate() {
            let logs = if let (Some(logs), Some(last)) = (&mut dropped[group], looked[..many].last()) {
                let slip = ln(SLIP / cell_count(&last.scale));
                logs.iter_mut().for_each(|log| *log += slip);
                logs.clone()
            } else if cars.is_empty() {
                let flat = |looked: &&Looked| -ln(cell_count(&looked.scale));
                vec![looked[..many].iter().map(flat).sum::<f64>()]
            } else {
                let notes: Vec<Noted<'_>> =
                    (0..many).map(|note| noted(job, looked[note], cars, note)).collect();
                log_likelihoods(&notes, cars.len())
            };
            masses.push(logs);
        }
        let all: Vec<f64> =
            masses.iter().flatten().zip(start.iter().flatten()).map(|(log, start)| log + start).collect();
        let belief = Belief::of_masses(hypotheses.classes.len(), class_of.clone(), &all);
        trail.push(belief.classes());
        let mut first = 0;
        for (group, (_, _, cars)) in groups.iter().enumerate() {
            let cells = first..first + cars.len().max(1);
            first = cells.end;
            if !cars.is_empty() && dropped[group].is_none() && 0 < many && belief.mass_in(cells) < DROP_BELOW
            {
                dropped[group] = Some(masses[group].clone());
            }
        }
    }
    trail
}

fn noted<'a>(job: &Job, looked: &'a Looked, cars: &[&Drawn], note: usize) -> Noted<'a> {
    let what = &looked.reading.what;
    let instrument = match what {
        Observed::Instrument { instrument, .. } | Observed::Interval { instrument, .. } => {
            job.kit.iter().position(|card| card.id == *instrument)
        }
        Observed::Sense(_) => None,
    };
    let share = |car: &Drawn| instrument.map_or(0.0, |instrument| car.shares[instrument]);
    Noted {
        scale: &looked.scale,
        shown: looked.reading.shown,
        by_ratio: matches!(what, Observed::Interval { .. })
            || matches!(looked.scale, Scale::Numeric { unit: "ohm", .. }),
        instrument,
        drawn: cars.iter().map(|car| Some((car.told[note]?, share(car)))).collect(),
    }
}

impl Noted<'_> {
    fn step(&self) -> f64 {
        match self.scale {
            Scale::Numeric { resolution, .. } => *resolution,
            Scale::Ordinal { .. } => 0.0,
        }
    }

    fn scatter(&self) -> f64 {
        match self.scale {
            Scale::Numeric { scatter, .. } | Scale::Ordinal { scatter, .. } => *scatter,
        }
    }

    fn transformed(&self, value: f64) -> f64 {
        if self.by_ratio { ln(value.max(0.1 * self.step()).max(1e-9)) } else { value }
    }

    fn value(&self) -> f64 {
        self.scale.number(self.shown).unwrap_or(0.0)
    }

    /// The predictions as numbers, when every draw has one and a step of the scale was shown.
    fn numbers(&self) -> Option<Vec<f64>> {
        if !matches!((self.shown, self.scale), (ShownValue::Steps(_), Scale::Numeric { .. })) {
            return None;
        }
        let number = |drawn: &Option<(Told, f64)>| match drawn {
            Some((Told { predicted: Predicted::Value(value), .. }, _)) => Some(self.transformed(*value)),
            _ => None,
        };
        self.drawn.iter().map(number).collect()
    }

    fn error(&self) -> f64 {
        let error = self.drawn.iter().flatten().map(|(told, _)| told.error.abs()).fold(0.0, f64::max);
        if self.by_ratio { error / self.value().abs().max(self.step()) } else { error }
    }

    /// Chance of what was shown where a car stands normally about a middle.
    fn chance(&self, mean: f64, sigma: f64, transformed: bool) -> f64 {
        let Some((low, high)) = edges(self.scale, self.shown) else { return 0.0 };
        let edge = |x: f64| if transformed && self.by_ratio { self.transformed(x) } else { x };
        normal_between((edge(low) - mean) / sigma, (edge(high) - mean) / sigma)
    }

    /// Natural log of the likelihood by itself, per draw.
    fn alone(&self) -> Vec<f64> {
        let with_error = |(told, share): &(Told, f64)| match told.predicted {
            Predicted::Value(value) => Some(value + told.error * share),
            Predicted::Beyond(_) | Predicted::Blank => None,
        };
        let values: Vec<f64> =
            self.drawn.iter().flatten().filter_map(with_error).map(|value| self.transformed(value)).collect();
        let (_, _, width) = spread(&values);
        let flat = 1.0 / cell_count(self.scale);
        let chance = |drawn: &Option<(Told, f64)>| match drawn {
            None => flat,
            Some(drawn) => match (with_error(drawn), drawn.0.predicted) {
                (Some(value), _) => {
                    let scaled = if self.by_ratio { width * value.abs() } else { width };
                    let floor = (FLOOR_OF_STEP * self.step()).max(FLOOR_OF_VALUE * value.abs());
                    let kernel = (BANDWIDTH * scaled).max(floor).max(1e-12);
                    self.chance(value, (self.scatter() * self.scatter() + kernel * kernel).sqrt(), false)
                }
                (None, Predicted::Blank) => f64::from(u8::from(self.shown == ShownValue::Blank)),
                (None, _) => {
                    let open = edges(self.scale, self.shown).is_some_and(|(_, high)| high == f64::INFINITY);
                    f64::from(u8::from(open))
                }
            },
        };
        self.drawn.iter().map(|drawn| ln((1.0 - SLIP) * chance(drawn) + SLIP * flat)).collect()
    }
}

/// Mean, standard deviation, and the smaller of that and interquartile range / 1.349 (Silverman 1986).
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

/// Correlations of rows, drawn towards 0 (Schäfer and Strimmer 2005: λ = Σ Var(r) / Σ r²).
fn correlations(rows: &[Vec<f64>]) -> Vec<Vec<f64>> {
    let t = rows.len();
    let n = rows.first().map_or(0.0, |row| row.len() as f64);
    let mut r = vec![vec![1.0; t]; t];
    let (mut variance, mut square) = (0.0, 0.0);
    for i in 0..t {
        for j in 0..i {
            let products: Vec<f64> = rows[i].iter().zip(&rows[j]).map(|(a, b)| a * b).collect();
            let mean = products.iter().sum::<f64>() / n;
            let scatter: f64 = products.iter().map(|p| (p - mean) * (p - mean)).sum();
            r[i][j] = n / (n - 1.0) * mean;
            r[j][i] = r[i][j];
            variance += n / (n - 1.0).powi(3) * scatter;
            square += r[i][j] * r[i][j];
        }
    }
    let keep = if 0.0 < square { 1.0 - (variance / square).clamp(0.0, 1.0) } else { 0.0 };
    for (i, row) in r.iter_mut().enumerate() {
        for (_, r) in row.iter_mut().enumerate().filter(|(j, _)| *j != i) {
            *r *= keep;
        }
    }
    r
}

/// Natural log of the likelihood of all notes together, per draw.
fn log_likelihoods(notes: &[Noted<'_>], draws: usize) -> Vec<f64> {
    let mut logs = vec![0.0; draws];
    let (mut together, mut values): (Vec<&Noted<'_>>, Vec<Vec<f64>>) = (Vec::new(), Vec::new());
    for note in notes {
        match note.numbers() {
            Some(numbers) => {
                together.push(note);
                values.push(numbers);
            }
            None => logs.iter_mut().zip(note.alone()).for_each(|(log, alone)| *log += alone),
        }
    }
    let (centres, covariance) = kernels(&together, &values, draws);
    for (draw, log) in logs.iter_mut().enumerate() {
        *log += chain(&together, &centres, &covariance, draw);
    }
    logs
}

/// Where each kernel stands (Scott 1992, West 1993), and its matrix: draws, instrument errors, scatter.
fn kernels(notes: &[&Noted<'_>], values: &[Vec<f64>], draws: usize) -> (Vec<Vec<f64>>, Vec<Vec<f64>>) {
    let t = notes.len();
    let stats: Vec<(f64, f64, f64)> = values.iter().map(|v| spread(v)).collect();
    let standard = |(row, (mean, deviation, _)): (&Vec<f64>, &(f64, f64, f64))| {
        row.iter().map(|v| if 0.0 < *deviation { (v - mean) / deviation } else { 0.0 }).collect()
    };
    let r = correlations(&values.iter().zip(&stats).map(standard).collect::<Vec<Vec<f64>>>());
    let all: f64 = r.iter().flatten().map(|r| r * r).sum();
    let directions = if 0.0 < all { (t * t) as f64 / all } else { 1.0 };
    let h = (draws as f64).powf(-1.0 / (directions + 4.0));
    let mut covariance = vec![vec![0.0; t]; t];
    let mut centres = Vec::new();
    for (i, note) in notes.iter().enumerate() {
        let (mean, deviation, width) = stats[i];
        let share = if 0.0 < deviation { width / deviation } else { 0.0 };
        let pull = (1.0 - h * h * share * share).max(0.0).sqrt();
        centres.push(values[i].iter().map(|v| mean + pull * (v - mean)).collect());
        for j in 0..t {
            covariance[i][j] = h * h * width * stats[j].2 * r[i][j];
        }
        let at = note.value();
        let per = if note.by_ratio { 1.0 / at.abs().max(note.step()) } else { 1.0 };
        let floor = (FLOOR_OF_STEP * note.step()).max(FLOOR_OF_VALUE * at.abs()) * per;
        covariance[i][i] += (note.scatter() * per).powi(2) + (floor * floor - covariance[i][i]).max(0.0);
    }
    for (i, a) in notes.iter().enumerate() {
        for (j, b) in notes.iter().enumerate() {
            if a.instrument.is_some() && a.instrument == b.instrument {
                covariance[i][j] += a.error() * b.error() / 3.0;
            }
        }
    }
    (centres, covariance)
}

/// One reading after the other, each given those before it that were no slips: a Cholesky factor that grows by a row a reading.
fn chain(notes: &[&Noted<'_>], centres: &[Vec<f64>], covariance: &[Vec<f64>], draw: usize) -> f64 {
    let (mut taken, mut factor, mut solved): (Vec<usize>, Vec<Vec<f64>>, Vec<f64>) =
        (Vec::new(), Vec::new(), Vec::new());
    let mut total = 0.0;
    for (i, note) in notes.iter().enumerate() {
        let mut row = Vec::with_capacity(taken.len() + 1);
        for (k, &before) in taken.iter().enumerate() {
            let dot: f64 = (0..k).map(|l| row[l] * factor[k][l]).sum();
            row.push((covariance[i][before] - dot) / factor[k][k]);
        }
        let explained: f64 = row.iter().map(|v: &f64| v * v).sum();
        let own = covariance[i][i];
        let sigma = (own - explained).max(1e-6 * own).max(1e-24).sqrt();
        let shift: f64 = row.iter().zip(&solved).map(|(a, b)| a * b).sum();
        let p = note.chance(centres[i][draw] + shift, sigma, true);
        let flat = SLIP / cell_count(note.scale);
        total += ln((1.0 - SLIP) * p + flat);
        if flat < (1.0 - SLIP) * p {
            solved.push((note.transformed(note.value()) - centres[i][draw] - shift) / sigma);
            row.push(sigma);
            factor.push(row);
            taken.push(i);
        }
    }
    total
}
