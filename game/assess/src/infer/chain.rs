//! One reading after the other at one severity: how likely each was, given those before it.
//!
//! Where the car stands at a note is normal about the line, with the part of the instrument's error that readings share,
//! with what severities inside the node's cell differ, and with what cars' tolerances spread (these three vary together
//! from note to note). What was shown is a stretch of that line, so that every note leaves of the distribution what lies
//! inside the stretch; of that its mean and variance are kept and carried on to the notes that follow (assumed density
//! filtering: Maybeck, *Stochastic Models, Estimation and Control* 2, 1982; Minka 2001). The spread is known from few
//! cars, so chances are Student's.
//!
//! A note that differs little from one before it ([`crate::infer::after`]) stands where that one stood, but for the difference.
//!
//! Which way a note comes out (pump runs or stands) is counted among the cars near the severity; cars that came out
//! otherwise before say little afterwards. What no car foresees comes about at the rate at which it does in any car of the
//! catalogue, the more often the fewer cars there are.
//!
//! How notes vary together is known from few cars and may be wrong for this one: with the chance [`APART`] a note stands by
//! itself, whatever was noted before. A note that this, or what is not foreseen, or a slip explains best tells nothing about
//! the next one.

use crate::infer::expectation::{After, Expectation, Group};
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
/// A note follows one before it when their difference varies less than this share of what the note itself varies.
const FOLLOWS: f64 = 0.1;
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
    instrument: Option<usize>,
    /// The note whose place on the line stands behind it, itself or one before it, and how that came out; `None` where it was
    /// not foreseen, or is off the line.
    base: Option<(usize, Mode)>,
    /// The instrument's error at the end of its class.
    error: f64,
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
    base: Option<(usize, Mode)>,
    error: f64,
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
    /// The note before it that it is foreseen from, and how that came out.
    base: Option<(usize, Mode)>,
    /// Degrees of freedom behind it.
    freedom: f64,
    /// The instrument's error at the end of its class.
    error: f64,
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
        let share = self.shares(forecast, expected);
        let flat = 1.0 / noted.cells;
        let mut best: Option<Candidate> = None;
        let mut alone = share(Mode::Nowhere) * flat;
        let mut likelihood = 0.0;
        for mode in Mode::ALL {
            let candidate = match (noted.seen, mode) {
                (Seen::Between(low, high), Mode::Low | Mode::High) => {
                    let Some(group) = expected.group(mode) else { continue };
                    on_line(self.foresee(forecast, note, noted, group), noted, (note, mode), low, high)
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
                    base: None,
                    error: 0.0,
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

    /// How probably a note comes out in each way: counted among the cars near the severity. Where it differs little from one
    /// before it, only the cars count that came out there as was seen.
    fn shares<'a>(&self, forecast: &Forecast, expected: &'a Expectation) -> impl Fn(Mode) -> f64 + use<'a> {
        let followed = [Mode::Low, Mode::High].into_iter().find_map(|m| self.followed(expected.group(m)?));
        let counts = |car: usize| followed.is_none_or(|a| forecast.notes[a.note].modes[car] == a.mode);
        let weights = self.weights.iter().enumerate();
        let weights: Vec<f64> = weights.map(|(car, w)| if counts(car) { *w } else { 0.0 }).collect();
        let all: f64 = weights.iter().sum::<f64>() + OF_ALL;
        let cars = (expected.modes.len() as f64).max(1.0);
        move |mode| {
            let is = |m: &Mode| f64::from(u8::from(*m == mode));
            let near: f64 = expected.modes.iter().zip(&weights).map(|(m, w)| is(m) * w).sum();
            let anywhere = expected.modes.iter().map(is).sum::<f64>() / cars;
            let anywhere = (1.0 - UNSEEN) * anywhere + UNSEEN / Mode::ALL.len() as f64;
            (near + OF_ALL * anywhere) / all
        }
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
        let (share, mut left) = (self.shares(forecast, expected), which);
        let mode = Mode::ALL.into_iter().find(|mode| {
            left -= share(*mode);
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

    /// The note before it that a note of this group differs little from, if there is one that was foreseen for itself.
    fn followed<'a>(&self, group: &'a Group) -> Option<&'a After> {
        let (own, shared) = (group.own[self.node], group.shared[self.node]);
        let close = FOLLOWS * (own * own + shared * shared);
        let there = |after: &&After| {
            let is_it =
                |taken: &Taken| taken.note == after.note && taken.base == Some((after.note, after.mode));
            after.variance[self.node] < close && self.notes.iter().any(is_it)
        };
        let by = |a: &&After, b: &&After| a.variance[self.node].total_cmp(&b.variance[self.node]);
        group.after.iter().filter(there).min_by(by)
    }

    /// Where a car of one group stands at a note, given the notes before.
    fn foresee(&self, forecast: &Forecast, note: usize, noted: &Noted, group: &Group) -> Foreseen {
        let (node, within) = (self.node, forecast.width() * forecast.width() / 12.0);
        let of_cars = |group: &Group| {
            let (own, shared, slope) = (group.own[node], group.shared[node], group.slope[node]);
            own * own + shared * shared + within * slope * slope
        };
        let error = group.error * group.error / 3.0;
        let (alone_mean, alone) = (group.mean[node], of_cars(group) + error);
        let followed = self.followed(group);
        let followed =
            followed.and_then(|after| Some((after, forecast.notes[after.note].group(after.mode)?)));
        let (base, of, apart, mut mean) = match followed {
            Some((after, of)) => (after.note, of, after.variance[node], of.mean[node] + after.mean[node]),
            None => (note, group, 0.0, alone_mean),
        };
        let mut variance = of_cars(of) + apart + error;
        let mut row = vec![0.0; self.notes.len()];
        for (before, taken) in self.notes.iter().enumerate() {
            let Some((other_base, mode)) = taken.base else { continue };
            let Some(other) = forecast.notes[other_base].group(mode) else { continue };
            let (of_own, of_shared) = forecast.together(base, other_base);
            let mut together = of_own * of.own[node] * other.own[node]
                + of_shared * of.shared[node] * other.shared[node]
                + within * of.slope[node] * other.slope[node];
            if noted.instrument.is_some() && noted.instrument == taken.instrument {
                together += group.error * taken.error / 3.0;
            }
            together -= taken.row.iter().zip(&row).map(|(a, b)| a * b).sum::<f64>();
            row[before] = together * taken.narrow;
            mean += together * taken.shift;
            variance -= row[before] * row[before];
        }
        let variance = match followed {
            Some(_) => variance.max(apart),
            // Correlations of few cars fit too well when many notes come together: the variance of what is foreseen
            // from other readings grows with their number over the degrees of freedom behind it.
            None => {
                let fitted = 1.0 + self.notes.len() as f64 / group.freedom[node];
                (variance.max(LEAST * alone) * fitted).min(alone)
            }
        };
        Foreseen {
            mean,
            variance: variance.max(1e-14),
            row,
            alone_mean,
            alone,
            base: followed.map(|(after, _)| (after.note, after.mode)),
            freedom: followed.map_or(group.freedom[node], |(after, _)| after.freedom),
            error: group.error,
        }
    }
}

/// Chance of what was seen in one group, given the notes before.
fn on_line(foreseen: Foreseen, noted: &Noted, itself: (usize, Mode), low: f64, high: f64) -> Candidate {
    let width = (foreseen.alone + noted.scatter * noted.scatter).sqrt();
    let mean = foreseen.alone_mean;
    let alone = APART * normal_between((low - mean) / width, (high - mean) / width);
    let total = foreseen.variance + noted.scatter * noted.scatter;
    let (low, high) = ((low - foreseen.mean) / total.sqrt(), (high - foreseen.mean) / total.sqrt());
    let student = |x: f64| normal_of_student(x, foreseen.freedom);
    let chance = (1.0 - APART) * normal_between(student(low), student(high));
    Candidate {
        mode: itself.1,
        chance,
        alone,
        variance: foreseen.variance,
        row: foreseen.row,
        total,
        low,
        high,
        base: Some(foreseen.base.unwrap_or(itself)),
        error: foreseen.error,
    }
}

impl Taken {
    fn of(best: Option<Candidate>, note: usize, noted: &Noted, before: usize) -> Self {
        let nothing = Self {
            note,
            weights: Vec::new(),
            instrument: noted.instrument,
            base: None,
            error: 0.0,
            row: vec![0.0; before],
            shift: 0.0,
            narrow: 0.0,
        };
        let Some(best) = best else { return nothing };
        match best.mode {
            Mode::Beyond | Mode::Dark | Mode::Nowhere => nothing,
            Mode::Low | Mode::High => {
                let (mean, left) = truncated_normal(best.low, best.high);
                let gain = best.variance / best.total;
                let moved = mean * best.total.sqrt() * gain;
                let taken_away = gain * gain * best.total * (1.0 - left);
                Self {
                    base: best.base,
                    error: best.error,
                    row: best.row,
                    shift: moved / best.variance,
                    narrow: taken_away.max(0.0).sqrt() / best.variance,
                    ..nothing
                }
            }
        }
    }
}
