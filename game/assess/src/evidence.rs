//! Evidence: the trainee's own actions, played again under every hypothesis and every draw.
//!
//! [`follow`] replays the deeds in each cell of [`Hypotheses`] from one counted note to the next (in
//! parallel; results stand in cell order and are added up in it, so the number of threads cannot change a bit).
//! At each note it asks every cell what the reading would have been, and moves the belief.
//!
//! **Clock.** Every action takes as long as it took the trainee, except those that end with a cue (wait until
//! the pump stops, time its rest): they end, in each cell, when that cell's car gives the cue. What the trainee did
//! was to wait for the pump and then look; cut at the recorded tick, a car whose pump runs a little shorter would
//! be looked at in the wrong moment of its cycle, and the true hypothesis would suffer most. How long a wait
//! took is evidence only when it was timed and noted, like everything else.
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
//! patience ended is everything above it. A cell in which a reading could not have come about at all counts it
//! as any of the scale's cells.
//!
//! **Dropping.** A hypothesis (all its draws) whose mass falls below [`DROP_BELOW`] after a note is not
//! simulated any further; from then on every reading counts as a slip in it. The sheet says how many.

use rayon::prelude::*;
use sim_core::action::Action;
use sim_core::observe::{Observed, Predicted, Scale};
use sim_core::workshop::Workshop;

use crate::belief::Belief;
use crate::complaint;
use crate::course::{Course, Looked, Worth};
use crate::hypotheses::{Cell, Class, Hypotheses};
use crate::job::Job;
use crate::likelihood::{Expected, log_likelihood};
use crate::numeric::ln;

/// Bandwidth of the kernel, share of the spread: 16^(−1/8).
pub const BANDWIDTH: f64 = 0.7;
/// Floor of the kernel, share of the value.
pub const FLOOR_OF_VALUE: f64 = 0.005;
/// Floor of the kernel, share of the scale's step.
pub const FLOOR_OF_STEP: f64 = 0.5;
/// Mass below which a hypothesis is not simulated any further.
pub const DROP_BELOW: f64 = 1e-4;
/// Interquartile range of a normal distribution, in standard deviations.
const IQR_OF_NORMAL: f64 = 1.349;

/// A cell's car in the workshop, with what it has said so far.
#[derive(Debug)]
struct Player {
    /// `None` for *other*, and once the hypothesis is dropped.
    workshop: Option<Workshop>,
    /// Prediction of the reading last taken of each thing looked at (index into `Course::looked`).
    predicted: Vec<Option<Predicted>>,
    /// See [`Followed::swapped_faulty`].
    swapped_faulty: Vec<bool>,
}

/// The cars of all cells as they came in.
#[derive(Debug)]
pub struct Arrivals {
    workshops: Vec<Option<Workshop>>,
}

/// The belief after one note.
#[derive(Clone, Debug, PartialEq)]
pub struct Link {
    /// Index into the course's notes.
    pub note: usize,
    /// Belief after it.
    pub belief: Belief,
    /// Entropy over the classes after it, bits.
    pub entropy: f64,
    /// Entropy taken away by it, bits; negative when it surprised.
    pub gain: f64,
    /// Hypotheses that were dropped after it.
    pub dropped: usize,
}

/// The belief along an attempt.
#[derive(Clone, Debug, PartialEq)]
pub struct Followed {
    /// Belief on the complaint alone.
    pub start: Belief,
    /// After each note that counts, in the order they were written.
    pub links: Vec<Link>,
    /// Per cell, per swap of the course: whether the unit taken out was outside its limits. Ends where the
    /// cell was dropped; empty for *other*.
    pub swapped_faulty: Vec<Vec<bool>>,
    /// Per cell: whether no unit is outside its limits at the end. A hypothesis that was dropped counts as
    /// cured when nothing was wrong in it or its unit was repaired; *other* never does.
    pub well_at_end: Vec<bool>,
}

impl Arrivals {
    /// Brings in the car of every cell.
    #[must_use]
    pub fn of(job: &Job, hypotheses: &Hypotheses) -> Self {
        let come = |cell: &Cell| cell.world.as_ref().map(|world| Workshop::new(job.setup(world.clone())));
        Self { workshops: hypotheses.cells.par_iter().map(come).collect() }
    }

    /// Belief on the complaint alone: the complaint is simulated in every cell.
    #[must_use]
    pub fn complained(&self, job: &Job, hypotheses: &Hypotheses) -> Belief {
        let shows = |w: &Option<Workshop>| w.as_ref().map(|w| complaint::shows(job, w.circuit()));
        let shows: Vec<Option<bool>> = self.workshops.par_iter().map(shows).collect();
        let cells: Vec<(usize, f64)> = hypotheses.cells.iter().map(|c| (c.class, c.prior)).collect();
        let mut belief = Belief::new(hypotheses.classes.len(), &cells);
        let logs: Vec<f64> = shows.iter().map(|&shows| complaint::log_likelihood(shows)).collect();
        let possible = belief.observe(&logs);
        assert!(possible, "a share of complaints means nothing, so none is impossible");
        belief
    }
}

/// Follows `course` up to but not including deed number `until`, starting from the belief `start`. Stops
/// early when `enough` says so of the belief after a note.
#[must_use]
pub fn follow(
    job: &Job,
    hypotheses: &Hypotheses,
    arrivals: Arrivals,
    start: Belief,
    course: &Course,
    until: usize,
    enough: impl Fn(&Belief) -> bool,
) -> Followed {
    let wanted = wanted(course);
    let mut players: Vec<Player> = arrivals
        .workshops
        .into_iter()
        .map(|workshop| Player {
            workshop,
            predicted: vec![None; course.looked.len()],
            swapped_faulty: Vec::new(),
        })
        .collect();
    let mut belief = start.clone();
    let mut entropy = belief.entropy();
    let mut links: Vec<Link> = Vec::new();
    let mut done = 0;
    for (index, note) in course.notes.iter().enumerate() {
        if note.worth != Worth::Counts || until <= note.deed {
            continue;
        }
        play_all(job, hypotheses, &mut players, course, done..note.deed, &wanted);
        done = note.deed;
        let logs = log_likelihoods(hypotheses, &players, &course.looked[note.looked], note.looked);
        let possible = belief.observe(&logs);
        assert!(possible, "with a slip rate nothing is impossible");
        let after = belief.entropy();
        let dropped = drop_unlikely(hypotheses, &mut players, &belief);
        links.push(Link {
            note: index,
            belief: belief.clone(),
            entropy: after,
            gain: entropy - after,
            dropped,
        });
        entropy = after;
        if enough(&belief) {
            break;
        }
    }
    play_all(job, hypotheses, &mut players, course, done..until, &wanted);
    let repaired = course.repaired_units(job);
    let well = |(player, cell): (&Player, &Cell)| match (&player.workshop, hypotheses.classes[cell.class]) {
        (Some(workshop), _) => workshop.units_outside_limits().is_empty(),
        (None, Class::Inside) => true,
        (None, Class::Unit(unit)) => repaired.contains(&unit),
        (None, Class::Other) => false,
    };
    Followed {
        start,
        links,
        well_at_end: players.iter().zip(&hypotheses.cells).map(well).collect(),
        swapped_faulty: players.into_iter().map(|player| player.swapped_faulty).collect(),
    }
}

impl Followed {
    /// The belief as it stood before deed number `deed`.
    #[must_use]
    pub fn belief_before(&self, course: &Course, deed: usize) -> &Belief {
        let before = self.links.iter().take_while(|link| course.notes[link.note].deed < deed);
        before.last().map_or(&self.start, |link| &link.belief)
    }

    /// The last belief.
    #[must_use]
    pub fn end(&self) -> &Belief {
        self.links.last().map_or(&self.start, |link| &link.belief)
    }
}

/// Which readings are noted and count.
fn wanted(course: &Course) -> Vec<bool> {
    let mut wanted = vec![false; course.looked.len()];
    for note in course.notes.iter().filter(|note| note.worth == Worth::Counts) {
        wanted[note.looked] = true;
    }
    wanted
}

/// Plays some deeds in every cell that is still simulated.
fn play_all(
    job: &Job,
    hypotheses: &Hypotheses,
    players: &mut [Player],
    course: &Course,
    deeds: std::ops::Range<usize>,
    wanted: &[bool],
) {
    players.par_iter_mut().zip(&hypotheses.cells).for_each(|(player, cell)| {
        let Player { workshop: Some(workshop), predicted, swapped_faulty } = player else { return };
        for index in deeds.clone() {
            let deed = &course.deeds[index];
            if deed.refused {
                continue;
            }
            let idle = deed.start.0 - course.deeds[..index].last().map_or(deed.start.0, |last| last.end.0);
            if 0 < idle {
                workshop.run_free(workshop.tick().plus(idle));
            }
            if let Some(swap) = course.swaps.get(swapped_faulty.len()).filter(|swap| swap.deed == index) {
                swapped_faulty.push(workshop.units_outside_limits().contains(&swap.unit));
            }
            let outcome = match &deed.action {
                Action::Time { .. } | Action::WaitUntil { .. } => workshop.act(&deed.action),
                other => workshop.replay(other, workshop.tick().plus(deed.end.0 - deed.start.0)),
            };
            let looked = course.looked.binary_search_by_key(&index, |looked| looked.deed);
            if let (Ok(looked), Some(value)) = (looked, outcome.predicted)
                && wanted[looked]
            {
                let what = &course.looked[looked].reading.what;
                predicted[looked] = Some(with_error(job, cell, workshop, what, value));
            }
        }
    });
}

/// Stops simulating hypotheses that have become very unlikely; gives their number.
fn drop_unlikely(hypotheses: &Hypotheses, players: &mut [Player], belief: &Belief) -> usize {
    let mut dropped = 0;
    for range in hypotheses.ranges() {
        let alive = players[range.clone()].iter().any(|player| player.workshop.is_some());
        if alive && belief.mass_in(range.clone()) < DROP_BELOW {
            players[range].iter_mut().for_each(|player| player.workshop = None);
            dropped += 1;
        }
    }
    dropped
}

/// Natural log of the likelihood of a noted reading in every cell.
fn log_likelihoods(hypotheses: &Hypotheses, players: &[Player], looked: &Looked, which: usize) -> Vec<f64> {
    let by_ratio = runs_by_ratio(&looked.reading.what, &looked.scale);
    let mut logs = Vec::with_capacity(players.len());
    for range in hypotheses.ranges() {
        let dropped = hypotheses.cells[range.start].world.is_some()
            && players[range.clone()].iter().all(|player| player.workshop.is_none());
        let draws: Vec<Option<Predicted>> =
            players[range.clone()].iter().map(|player| player.predicted[which]).collect();
        let expected =
            if dropped { vec![Expected::Slip; draws.len()] } else { widen(&draws, &looked.scale, by_ratio) };
        logs.extend(expected.iter().map(|&e| log_likelihood(&looked.scale, looked.reading.shown, e)));
    }
    logs
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
