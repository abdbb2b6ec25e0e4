//! One reading after the other at one severity: how likely each was, given those before it.
//!
//! Where the car stands at a note is normal about the line, with the part of the instrument's error that readings share,
//! with what severities inside the node's cell differ, and with what cars' tolerances spread (these three vary together
//! from note to note). What was shown is a stretch of that line, so that every note leaves of the distribution what lies
//! inside the stretch; of that its mean and variance are kept and carried on to the notes that follow (assumed density
//! filtering: Maybeck, *Stochastic Models, Estimation and Control* 2, 1982; Minka 2001). The spread is known from few
//! cars, so chances are Student's.
//!
//! Which way a note comes out (pump runs or stands) is counted among the cars near the severity; cars that came out
//! otherwise before say little afterwards. What no car foresees comes about at the rate at which it does in any car of the
//! catalogue, the more often the fewer cars there are.
//!
//! How notes vary together is known from few cars and may be wrong for this one: with the chance [`APART`] a note stands by
//! itself, whatever was noted before. A note that this, or what is not foreseen, or a slip explains best tells nothing about
//! the next one.

use crate::infer::expectation::{Expectation, Group};
use crate::infer::forecast::Forecast;
use crate::infer::likelihood::SLIP;
use crate::infer::modes::Mode;
use crate::infer::numeric::{ln, normal, normal_between, normal_of_student, truncated_normal};
use crate::infer::reading::{Noted, Seen};

/// What a car still says that came out otherwise than what was seen.
const OTHERWISE: f64 = 0.1;
/// So many cars all severities weigh beside those nearby.
const OF_ALL: f64 = 0.5;
/// Share of what no car showed.
const UNSEEN: f64 = 0.02;
/// So many cars what is not foreseen weighs.
const NOT_FORESEEN: f64 = 0.2;
/// Least share of a note's variance that the notes before it may leave.
const LEAST: f64 = 0.02;
/// Share of the notes that stand by themselves.
const APART: f64 = 0.2;

/// The notes so far, at one severity.
#[derive(Clone, Debug)]
pub struct Chain {
    /// Index of the node.
    node: usize,
    /// What each car still says.
    weights: Vec<f64>,
    notes: Vec<Taken>,
    /// How many notes stay when it turns back.
    stays: usize,
}

/// A note that was taken in.
#[derive(Clone, Debug)]
struct Taken {
    /// Index of the note.
    note: usize,
    /// What each car said before it.
    weights: Vec<f64>,
    /// The way it came out; `None` for a slip.
    mode: Option<Mode>,
    instrument: Option<usize>,
    /// Shares of the notes before it in where this one stood.
    row: Vec<f64>,
    /// How far it moved what was expected, per covariance.
    shift: f64,
    /// How much it narrowed what was expected: root of the variance taken away, per covariance.
    narrow: f64,
}

/// How one group stands to what was seen.
struct Candidate {
    mode: Mode,
    /// Chance given the notes before.
    chance: f64,
    /// Chance by itself.
    alone: f64,
    variance: f64,
    row: Vec<f64>,
    total: f64,
    low: f64,
    high: f64,
}

/// Where a car of one group stands at a note.
struct Foreseen {
    /// Middle, given the notes before.
    mean: f64,
    /// Variance, given the notes before; without the scatter of a single reading.
    variance: f64,
    /// Shares of the notes before it.
    row: Vec<f64>,
    /// Middle, whatever was noted before.
    alone_mean: f64,
    /// Variance, whatever was noted before.
    alone: f64,
}

impl Chain {
    /// Before the first note.
    #[must_use]
    pub fn new(forecast: &Forecast, node: usize) -> Self {
        Self { node, weights: forecast.near[node].clone(), notes: Vec::new(), stays: 0 }
    }

    /// Forgets all but the first `many` notes.
    pub fn truncate(&mut self, many: usize) {
        if let Some(first) = self.notes.get(many) {
            self.weights.clone_from(&first.weights);
            self.notes.truncate(many);
        }
    }

    /// So that it turns back to here.
    #[must_use]
    pub fn marked(self) -> Self {
        Self { stays: self.notes.len(), ..self }
    }

    /// Forgets what came after it was marked.
    pub fn turn_back(&mut self) {
        self.truncate(self.stays);
    }

    /// Takes note number `note` of `forecast` in and gives the natural log of its likelihood. `anywhere`: chance of what
    /// was seen in any car of the catalogue.
    pub fn take(&mut self, forecast: &Forecast, note: usize, noted: &Noted, anywhere: f64) -> f64 {
        let expected = &forecast.notes[note];
        let share = |mode: Mode| self.share(expected, mode);
        let flat = 1.0 / noted.cells;
        let mut best: Option<Candidate> = None;
        let mut alone = share(Mode::Nowhere) * flat;
        let mut likelihood = 0.0;
        for mode in Mode::ALL {
            let candidate = match (noted.seen, mode) {
                (Seen::Between(low, high), Mode::Low | Mode::High) => {
                    let Some(group) = expected.group(mode) else { continue };
                    on_line(
                        self.foresee(forecast, note, noted, group),
                        noted,
                        mode,
                        group.freedom[self.node],
                        low,
                        high,
                    )
                }
                (Seen::Between(_, f64::INFINITY), Mode::Beyond) | (Seen::Dark, Mode::Dark) => Candidate {
                    mode,
                    chance: 1.0,
                    alone: 0.0,
                    variance: 0.0,
                    row: Vec::new(),
                    total: 0.0,
                    low: 0.0,
                    high: 0.0,
                },
                (Seen::Between(..), Mode::Beyond | Mode::Dark | Mode::Nowhere)
                | (Seen::Dark, Mode::Low | Mode::High | Mode::Beyond | Mode::Nowhere) => continue,
            };
            let candidate = Candidate { chance: candidate.chance * share(mode), ..candidate };
            alone += candidate.alone * share(mode);
            likelihood += candidate.chance;
            if best.as_ref().is_none_or(|best| best.chance < candidate.chance) {
                best = Some(candidate);
            }
        }
        let not_foreseen = NOT_FORESEEN / (expected.modes.len() as f64 + 1.0);
        let foreseen = (1.0 - SLIP) * (1.0 - not_foreseen);
        let otherwise = foreseen * alone + (1.0 - SLIP) * not_foreseen * anywhere + SLIP * flat;
        let best = best.filter(|best| otherwise < foreseen * best.chance);
        let weights = self.weights.clone();
        if let Some(best) = &best {
            for (weight, mode) in self.weights.iter_mut().zip(&expected.modes) {
                if *mode != best.mode {
                    *weight *= OTHERWISE;
                }
            }
        }
        self.notes.push(Taken { weights, ..Taken::of(best, note, noted, self.notes.len()) });
        ln(foreseen * likelihood + otherwise)
    }

    /// How probably a note comes out in this way: counted among the cars near the severity.
    fn share(&self, expected: &Expectation, mode: Mode) -> f64 {
        let all: f64 = self.weights.iter().sum::<f64>() + OF_ALL;
        let is = |m: &Mode| f64::from(u8::from(*m == mode));
        let near: f64 = expected.modes.iter().zip(&self.weights).map(|(m, w)| is(m) * w).sum();
        let anywhere = expected.modes.iter().map(is).sum::<f64>() / (expected.modes.len() as f64).max(1.0);
        let anywhere = (1.0 - UNSEEN) * anywhere + UNSEEN / Mode::ALL.len() as f64;
        (near + OF_ALL * anywhere) / all
    }

    /// What note number `note` might show, drawn as it is foreseen after the notes before; `None` where it would not come
    /// about. `next` gives even numbers in (0, 1), four of which are taken.
    pub fn draw(
        &self,
        forecast: &Forecast,
        note: usize,
        noted: &Noted,
        next: &mut impl FnMut() -> f64,
    ) -> Option<Seen> {
        let expected = &forecast.notes[note];
        let (which, apart, normal) = (next(), next(), normal(next(), next()));
        let mut left = which;
        let mode = Mode::ALL.into_iter().find(|mode| {
            left -= self.share(expected, *mode);
            left < 0.0
        });
        match mode.unwrap_or(Mode::Nowhere) {
            mode @ (Mode::Low | Mode::High) => {
                let foreseen = self.foresee(forecast, note, noted, expected.group(mode)?);
                let (mean, variance) = if apart < APART {
                    (foreseen.alone_mean, foreseen.alone)
                } else {
                    (foreseen.mean, foreseen.variance)
                };
                Some(noted.at(mean + (variance + noted.scatter * noted.scatter).sqrt() * normal))
            }
            Mode::Beyond => Some(noted.beyond()),
            Mode::Dark => Some(Seen::Dark),
            Mode::Nowhere => None,
        }
    }

    /// Where a car of one group stands at a note, given the notes before.
    fn foresee(&self, forecast: &Forecast, note: usize, noted: &Noted, group: &Group) -> Foreseen {
        let within = forecast.width() * forecast.width() / 12.0;
        let (sigma, slope) = (group.own[self.node], group.slope[self.node]);
        let alone = sigma * sigma
            + group.shared[self.node] * group.shared[self.node]
            + group.error * group.error / 3.0
            + within * slope * slope;
        let alone_mean = group.mean[self.node];
        let (mut mean, mut variance) = (alone_mean, alone);
        let mut row = vec![0.0; self.notes.len()];
        for (before, taken) in self.notes.iter().enumerate() {
            let Some(other) = taken.mode.and_then(|mode| forecast.notes[taken.note].group(mode)) else {
                continue;
            };
            let (of_own, of_shared) = forecast.together(note, taken.note);
            let mut together = of_own * sigma * other.own[self.node]
                + of_shared * group.shared[self.node] * other.shared[self.node]
                + within * slope * other.slope[self.node];
            if noted.instrument.is_some() && noted.instrument == taken.instrument {
                together += group.error * other.error / 3.0;
            }
            together -= taken.row.iter().zip(&row).map(|(a, b)| a * b).sum::<f64>();
            row[before] = together * taken.narrow;
            mean += together * taken.shift;
            variance -= row[before] * row[before];
        }
        // Correlations of few cars fit too well when many notes come together: the variance of what is foreseen from
        // other readings grows with their number over the degrees of freedom behind it.
        let fitted = 1.0 + self.notes.len() as f64 / group.freedom[self.node];
        let variance = (variance.max(LEAST * alone) * fitted).min(alone).max(1e-14);
        Foreseen { mean, variance, row, alone_mean, alone }
    }
}

/// Chance of what was seen in one group, given the notes before.
fn on_line(foreseen: Foreseen, noted: &Noted, mode: Mode, freedom: f64, low: f64, high: f64) -> Candidate {
    let width = (foreseen.alone + noted.scatter * noted.scatter).sqrt();
    let mean = foreseen.alone_mean;
    let alone = APART * normal_between((low - mean) / width, (high - mean) / width);
    let total = foreseen.variance + noted.scatter * noted.scatter;
    let (low, high) = ((low - foreseen.mean) / total.sqrt(), (high - foreseen.mean) / total.sqrt());
    let student = |x: f64| normal_of_student(x, freedom);
    let chance = (1.0 - APART) * normal_between(student(low), student(high));
    Candidate { mode, chance, alone, variance: foreseen.variance, row: foreseen.row, total, low, high }
}

impl Taken {
    fn of(best: Option<Candidate>, note: usize, noted: &Noted, before: usize) -> Self {
        let instrument = noted.instrument;
        let nothing = |mode| Self {
            note,
            weights: Vec::new(),
            mode,
            instrument,
            row: vec![0.0; before],
            shift: 0.0,
            narrow: 0.0,
        };
        let Some(best) = best else { return nothing(None) };
        match best.mode {
            Mode::Beyond | Mode::Dark | Mode::Nowhere => nothing(Some(best.mode)),
            Mode::Low | Mode::High => {
                let (mean, left) = truncated_normal(best.low, best.high);
                let gain = best.variance / best.total;
                let moved = mean * best.total.sqrt() * gain;
                let taken_away = gain * gain * best.total * (1.0 - left);
                Self {
                    note,
                    weights: Vec::new(),
                    mode: Some(best.mode),
                    instrument,
                    row: best.row,
                    shift: moved / best.variance,
                    narrow: taken_away.max(0.0).sqrt() / best.variance,
                }
            }
        }
    }
}
