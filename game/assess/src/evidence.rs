//! Evidence: the trainee's own actions, played again under every hypothesis and every draw.
//!
//! 1. [`Table::play`] replays the deeds in each cell of [`Hypotheses`] (in parallel; results are collected
//!    in cell order, so the number of threads cannot change a bit) and keeps, for each noted reading, what the
//!    model says it would have been, and which units were outside their limits at each swap and at the end.
//! 2. [`Table::chain`] is arithmetic on that table: the belief after the complaint and after every note.
//!
//! **Width of a prediction.** Sixteen draws stand for a continuum of tolerances, so each prediction is given
//! a kernel: σ² = scatter² + max(0.7 · s, floor)². s is the spread of the hypothesis' sixteen predictions of
//! that reading, the smaller of standard deviation and interquartile range / 1.349 (Silverman 1986, so
//! that two clusters do not smear into one another); 0.7 = 16^(−1/8) is Scott's rule for sixteen points when
//! about four unknowns matter to a reading. Times and resistances spread by ratio, so s is taken of their
//! logarithms and scaled by each prediction. The floor, half a step or 0.5 % of the value, stands for the
//! error the stepping may make.
//!
//! **Ends.** A value off the scale is the tail beyond its end; a time still running when the trainee's
//! patience ended is everything above it. Nothing is dropped: a cell in which a reading could not have come
//! about at all keeps the slip rate.

use rayon::prelude::*;
use sim_core::observe::{Observed, Predicted, Scale};
use sim_core::workshop::Workshop;

use crate::belief::Belief;
use crate::complaint;
use crate::course::{Course, Worth};
use crate::hypotheses::{Cell, Hypotheses};
use crate::job::Job;
use crate::likelihood::{Expected, log_likelihood};
use crate::numeric::ln;

/// Bandwidth of the kernel, share of the spread: 16^(−1/8).
pub const BANDWIDTH: f64 = 0.7;
/// Floor of the kernel, share of the value.
pub const FLOOR_OF_VALUE: f64 = 0.005;
/// Floor of the kernel, share of the scale's step.
pub const FLOOR_OF_STEP: f64 = 0.5;
/// Interquartile range of a normal distribution, in standard deviations.
const IQR_OF_NORMAL: f64 = 1.349;

/// What one cell says about an attempt.
#[derive(Clone, Debug, PartialEq)]
pub struct CellRun {
    /// Per note of the course: the model's prediction with the instrument's error, where there is one.
    pub predicted: Vec<Option<Predicted>>,
    /// Per swap of the course: whether the unit taken out was outside its limits.
    pub swapped_faulty: Vec<bool>,
    /// Whether no unit is outside its limits at the end.
    pub well_at_end: bool,
}

/// The table of everything the cells say; later everything is arithmetic.
#[derive(Clone, Debug, PartialEq)]
pub struct Table {
    /// Per cell; `None` for *other*.
    pub runs: Vec<Option<CellRun>>,
}

/// The belief after one note.
#[derive(Clone, Debug, PartialEq)]
pub struct Link {
    /// Index into the course's notes.
    pub note: usize,
    /// Probability of each class after it.
    pub classes: Vec<f64>,
    /// Entropy over the classes after it, bits.
    pub entropy: f64,
    /// Entropy taken away by it, bits; negative when it surprised.
    pub gain: f64,
}

/// The belief along an attempt.
#[derive(Clone, Debug, PartialEq)]
pub struct Chain {
    /// Probability of each class on the complaint alone.
    pub start: Vec<f64>,
    /// Entropy on the complaint alone, bits.
    pub start_entropy: f64,
    /// After each note that counts, in the order they were written.
    pub links: Vec<Link>,
    /// Belief after each of the links (same order), for statements about cells.
    pub beliefs: Vec<Belief>,
    /// Belief on the complaint alone.
    pub start_belief: Belief,
}

/// Which cells show the symptom of the job; `None` for *other*.
#[must_use]
pub fn complaints(job: &Job, hypotheses: &Hypotheses) -> Vec<Option<bool>> {
    let shows = |cell: &Cell| cell.world.as_ref().map(|world| complaint::shows(job, world));
    hypotheses.cells.par_iter().map(shows).collect()
}

/// Belief on the complaint alone.
#[must_use]
pub fn belief_on_complaint(hypotheses: &Hypotheses, complaints: &[Option<bool>]) -> Belief {
    let cells: Vec<(usize, f64)> = hypotheses.cells.iter().map(|cell| (cell.class, cell.prior)).collect();
    let mut belief = Belief::new(hypotheses.classes.len(), &cells);
    let logs: Vec<f64> = complaints.iter().map(|&shows| complaint::log_likelihood(shows)).collect();
    let possible = belief.observe(&logs);
    assert!(possible, "a share of complaints means nothing, so none is impossible");
    belief
}

impl Table {
    /// Replays `course` in every cell, up to but not including deed number `until`.
    #[must_use]
    pub fn play(job: &Job, hypotheses: &Hypotheses, course: &Course, until: usize) -> Self {
        let wanted = wanted_deeds(course);
        let run = |cell: &Cell| play_cell(job, course, until, &wanted, cell);
        Self { runs: hypotheses.cells.par_iter().map(run).collect() }
    }

    /// The belief after every note that counts and was written before deed number `until`.
    #[must_use]
    pub fn chain(&self, hypotheses: &Hypotheses, start: &Belief, course: &Course, until: usize) -> Chain {
        let mut belief = start.clone();
        let mut entropy = belief.entropy();
        let mut chain = Chain {
            start: belief.classes(),
            start_entropy: entropy,
            links: Vec::new(),
            beliefs: Vec::new(),
            start_belief: start.clone(),
        };
        for (index, note) in course.notes.iter().enumerate() {
            if note.worth != Worth::Counts || until <= note.deed {
                continue;
            }
            let likelihood = self.log_likelihoods(hypotheses, course, index);
            let possible = belief.observe(&likelihood);
            assert!(possible, "with a slip rate nothing is impossible");
            let after = belief.entropy();
            chain.links.push(Link {
                note: index,
                classes: belief.classes(),
                entropy: after,
                gain: entropy - after,
            });
            chain.beliefs.push(belief.clone());
            entropy = after;
        }
        chain
    }

    /// Natural log of the likelihood of a note's reading in every cell.
    #[must_use]
    pub fn log_likelihoods(&self, hypotheses: &Hypotheses, course: &Course, note: usize) -> Vec<f64> {
        let looked = &course.looked[course.notes[note].looked];
        let mut logs = Vec::with_capacity(self.runs.len());
        let mut first = 0;
        while first < self.runs.len() {
            let hypothesis = hypotheses.cells[first].hypothesis;
            let mut last = first;
            while last < self.runs.len() && hypotheses.cells[last].hypothesis == hypothesis {
                last += 1;
            }
            let draws: Vec<Option<Predicted>> = self.runs[first..last]
                .iter()
                .map(|run| run.as_ref().and_then(|run| run.predicted[note]))
                .collect();
            let expected = widen(&draws, &looked.scale, runs_by_ratio(&looked.reading.what, &looked.scale));
            logs.extend(expected.iter().map(|&e| log_likelihood(&looked.scale, looked.reading.shown, e)));
            first = last;
        }
        logs
    }
}

impl Chain {
    /// The belief as it stood before deed number `deed`.
    #[must_use]
    pub fn belief_before(&self, course: &Course, deed: usize) -> &Belief {
        let links = self.links.iter().zip(&self.beliefs);
        let before = links.take_while(|(link, _)| course.notes[link.note].deed < deed);
        before.last().map_or(&self.start_belief, |(_, belief)| belief)
    }

    /// The last belief.
    #[must_use]
    pub fn end(&self) -> &Belief {
        self.beliefs.last().unwrap_or(&self.start_belief)
    }
}

/// Deeds whose reading is noted and counts.
fn wanted_deeds(course: &Course) -> Vec<bool> {
    let mut wanted = vec![false; course.deeds.len()];
    for note in course.notes.iter().filter(|note| note.worth == Worth::Counts) {
        wanted[course.looked[note.looked].deed] = true;
    }
    wanted
}

fn play_cell(job: &Job, course: &Course, until: usize, wanted: &[bool], cell: &Cell) -> Option<CellRun> {
    let world = cell.world.as_ref()?;
    let mut workshop = Workshop::new(job.setup(world.clone()));
    let mut by_deed: Vec<Option<Predicted>> = vec![None; course.deeds.len()];
    let mut swapped_faulty = Vec::new();
    for (index, deed) in course.deeds.iter().enumerate().take(until) {
        if deed.refused {
            continue;
        }
        if let Some(swap) = course.swaps.get(swapped_faulty.len()).filter(|swap| swap.deed == index) {
            swapped_faulty.push(workshop.units_outside_limits().contains(&swap.unit));
        }
        if workshop.tick() < deed.start {
            workshop.run_free(deed.start);
        }
        let predicted = workshop.replay(&deed.action, deed.end).predicted;
        if wanted[index] {
            let what = course.looked.iter().find(|l| l.deed == index).map(|l| &l.reading.what);
            by_deed[index] = what.zip(predicted).map(|(what, p)| with_error(job, cell, &workshop, what, p));
        }
    }
    let predicted = course.notes.iter().map(|note| by_deed[course.looked[note.looked].deed]).collect();
    Some(CellRun { predicted, swapped_faulty, well_at_end: workshop.units_outside_limits().is_empty() })
}

/// Adds the instrument's constant error, as this cell drew it.
fn with_error(
    job: &Job,
    cell: &Cell,
    workshop: &Workshop,
    what: &Observed,
    predicted: Predicted,
) -> Predicted {
    let Predicted::Value(value) = predicted else { return predicted };
    let (Observed::Instrument { instrument, .. } | Observed::Interval { instrument, .. }) = what else {
        return predicted;
    };
    let card = job.kit.iter().position(|card| card.id == *instrument);
    let errors = cell.world.as_ref().map(|world| world.instrument_errors.as_slice()).unwrap_or_default();
    let share = card.and_then(|card| errors.get(card)).copied().unwrap_or(0.0);
    Predicted::Value(value + workshop.instrument_error(what, value, share))
}

/// Quantities that are positive and span decades: times and resistances.
fn runs_by_ratio(what: &Observed, scale: &Scale) -> bool {
    matches!(what, Observed::Interval { .. }) || matches!(scale, Scale::Numeric { unit: "ohm", .. })
}

/// Gives one hypothesis' predictions of one reading their widths.
fn widen(draws: &[Option<Predicted>], scale: &Scale, by_ratio: bool) -> Vec<Expected> {
    let (scatter, step) = match scale {
        Scale::Numeric { scatter, resolution, .. } => (*scatter, *resolution),
        Scale::Ordinal { scatter, .. } => (*scatter, 0.0),
    };
    // A ratio needs something positive; a tenth of a step is as good as nothing.
    let log = |value: f64| ln(value.max(0.1 * step).max(1e-9));
    let values: Vec<f64> = draws
        .iter()
        .filter_map(|draw| match draw {
            Some(Predicted::Value(value)) => Some(if by_ratio { log(*value) } else { *value }),
            _ => None,
        })
        .collect();
    let spread = spread(&values);
    draws
        .iter()
        .map(|draw| match draw {
            Some(Predicted::Value(value)) => {
                let scaled = if by_ratio { spread * value.abs() } else { spread };
                let floor = (FLOOR_OF_STEP * step).max(FLOOR_OF_VALUE * value.abs());
                let kernel = (BANDWIDTH * scaled).max(floor);
                Expected::Near { mean: *value, sigma: (scatter * scatter + kernel * kernel).sqrt() }
            }
            Some(other) => Expected::from_model(*other, 0.0, 0.0),
            // *Other*, or a reading that could not have come about in this cell: nothing is known.
            None => Expected::Anything,
        })
        .collect()
}

/// The smaller of standard deviation and interquartile range / 1.349; 0 for fewer than two values.
fn spread(values: &[f64]) -> f64 {
    let n = values.len() as f64;
    if n < 2.0 {
        return 0.0;
    }
    let mean = values.iter().sum::<f64>() / n;
    let deviation = (values.iter().map(|v| (v - mean) * (v - mean)).sum::<f64>() / (n - 1.0)).sqrt();
    let mut sorted = values.to_vec();
    sorted.sort_by(f64::total_cmp);
    let quantile = |q: f64| {
        let at = q * (n - 1.0);
        let below = at.floor() as usize;
        let above = (below + 1).min(sorted.len() - 1);
        sorted[below] + (at - at.floor()) * (sorted[above] - sorted[below])
    };
    deviation.min((quantile(0.75) - quantile(0.25)) / IQR_OF_NORMAL)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn spread_is_robust_and_exact_on_a_normal_shape() {
        assert_eq!(spread(&[3.0]), 0.0);
        assert_eq!(spread(&[2.0; 16]), 0.0);
        // Two clusters of 13 and 3: the bulk has no spread, and the few must not lend it any.
        let clusters: Vec<f64> = (0..16).map(|i| if i < 13 { 0.0 } else { 50.0 }).collect();
        assert_eq!(spread(&clusters), 0.0);
        // Even steps 0 … 15: IQR 7.5 / 1.349 = 5.56 against σ 4.76, so σ it is.
        let even: Vec<f64> = (0..16).map(f64::from).collect();
        assert!((spread(&even) - (272.0f64 / 12.0).sqrt()).abs() < 1e-12);
    }
}
