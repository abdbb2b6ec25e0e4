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
//! **Width of a prediction.** Sixteen draws stand for a continuum of tolerances; how each is widened, and how
//! readings that err alike are kept from counting twice, stands in [`crate::infer::joint_likelihood`].
//!
//! **Ends.** A value off the scale is the tail beyond its end; a time still running when the trainee's
//! patience ended is everything above it. A cell in which a reading could not have come about at all counts it
//! as any of the scale's cells.
//!
//! **Setting aside.** A cell whose car the model cannot compute any further is followed no longer: from there on each
//! reading counts as a slip in it. The sheet says how many.
//!
//! **Dropping.** A hypothesis (all its draws) whose mass falls below [`DROP_BELOW`] after a note is not
//! simulated any further; from then on every reading counts as a slip in it. The sheet says how many.

use rayon::prelude::*;
use sim_core::Opened;
use sim_core::observe::{Observed, Predicted, Scale};
use sim_core::workshop::exchange::{Beside, side_by_side};
use sim_core::world::World;

use crate::infer::belief::Belief;
use crate::infer::complaint;
use crate::infer::hypotheses::{Cell, Class, Hypotheses};
use crate::infer::joint_likelihood::{self, Drawn, Noted};
use crate::infer::likelihood::{Expected, log_likelihood};
use crate::pack::job::Job;
use crate::play::course::{Course, Deed, Worth};

/// Mass below which a hypothesis is not simulated any further.
pub const DROP_BELOW: f64 = 1e-4;
/// Cars that one thread plays side by side. Neighbours are draws of one hypothesis, so most circuits find others of
/// their shape; few enough that every thread has some.
pub(crate) const BESIDE: usize = 96;

/// A cell's car in the workshop, with what it has said so far.
#[derive(Debug)]
struct Player {
    /// `None` for *other*, and once the hypothesis is dropped.
    workshop: Option<Opened>,
    /// Prediction of each thing looked at (index into `Course::looked`).
    predicted: Vec<Option<Drawn>>,
    /// See [`Followed::swapped_faulty`].
    swapped_faulty: Vec<bool>,
    /// The model could not go on with it.
    set_aside: bool,
}

impl Player {
    /// Follows the car no further when the model cannot; whether that is so.
    fn is_set_aside(&mut self) -> bool {
        if self.workshop.as_ref().is_some_and(|workshop| workshop.fault().is_some()) {
            self.workshop = None;
            self.set_aside = true;
        }
        self.workshop.is_none()
    }
}

/// The cars of all cells as they came in.
#[derive(Debug)]
pub struct Arrivals {
    workshops: Vec<Option<Opened>>,
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
    /// Cells whose car could not be computed to the end.
    pub set_aside: usize,
}

impl Arrivals {
    /// Brings in the car of every cell.
    #[must_use]
    pub fn of(job: &Job, hypotheses: &Hypotheses) -> Self {
        let mut workshops: Vec<Option<Opened>> = hypotheses.cells.iter().map(|_| None).collect();
        let mut seats: Vec<(&mut Option<Opened>, &World)> = workshops
            .iter_mut()
            .zip(&hypotheses.cells)
            .filter_map(|(workshop, cell)| Some((workshop, cell.world.as_ref()?)))
            .collect();
        seats.par_chunks_mut(BESIDE).with_max_len(1).for_each(|together| {
            side_by_side(together, async |(workshop, world), beside| {
                **workshop = Some(Opened::of_beside(job.setup(), (*world).clone(), beside).await);
            });
        });
        Self { workshops }
    }

    /// Belief on the complaint alone: the complaint is simulated in every cell.
    #[must_use]
    pub fn complained(&self, job: &Job, hypotheses: &Hypotheses) -> Belief {
        let shows = |w: &Option<Opened>| w.as_ref().map(|w| complaint::shows(job, w.circuit()));
        let shows: Vec<Option<bool>> = self.workshops.par_iter().with_max_len(1).map(shows).collect();
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
            set_aside: false,
        })
        .collect();
    let mut belief = start.clone();
    let mut entropy = belief.entropy();
    let mut links: Vec<Link> = Vec::new();
    let mut noted: Vec<usize> = Vec::new();
    let mut sums = Sums { dropped: vec![None; hypotheses.list.len()] };
    let mut done = 0;
    for (index, note) in course.notes.iter().enumerate() {
        if note.worth != Worth::Counts || until <= note.deed {
            continue;
        }
        play_all(job, hypotheses, &mut players, course, done..note.deed, &wanted);
        done = note.deed;
        noted.push(note.looked);
        belief = start.clone();
        let logs = sums.log_likelihoods(job, hypotheses, &players, course, &noted);
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
        set_aside: players.iter().filter(|player| player.set_aside).count(),
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
    let mut alive: Vec<(&mut Player, &Cell)> =
        players.iter_mut().zip(&hypotheses.cells).filter(|(player, _)| player.workshop.is_some()).collect();
    alive.par_chunks_mut(BESIDE).with_max_len(1).for_each(|together| {
        side_by_side(together, async |(player, cell), beside| {
            for index in deeds.clone() {
                if player.is_set_aside() {
                    return;
                }
                let Player { workshop: Some(workshop), predicted, swapped_faulty, .. } = &mut **player else {
                    return;
                };
                let deed = &course.deeds[index];
                if deed.refused {
                    continue;
                }
                idle_before(workshop, &course.deeds, index, beside).await;
                if let Some(swap) = course.swaps.get(swapped_faulty.len()).filter(|swap| swap.deed == index) {
                    swapped_faulty.push(workshop.units_outside_limits().contains(&swap.unit));
                }
                done_again(workshop, deed, beside).await;
                let looked = course.looked.binary_search_by_key(&index, |looked| looked.deed);
                if let (Ok(looked), Some(value)) = (looked, workshop.predicted())
                    && wanted[looked]
                    && workshop.fault().is_none()
                {
                    let what = &course.looked[looked].reading.what;
                    predicted[looked] = Some(drawn(job, cell, workshop, what, value));
                }
            }
            // Also after the last: its state is asked for at the end.
            player.is_set_aside();
        });
    });
}

/// Does deed number `index` in a cell's car, with the pause before it.
pub(crate) async fn deed_in(workshop: &mut Opened, deeds: &[Deed], index: usize, beside: Beside<'_>) {
    idle_before(workshop, deeds, index, beside).await;
    done_again(workshop, &deeds[index], beside).await;
}

/// Lets the time pass in which nothing was done before deed number `index`.
async fn idle_before(workshop: &mut Opened, deeds: &[Deed], index: usize, beside: Beside<'_>) {
    let start = deeds[index].start.0;
    let idle = start - deeds[..index].last().map_or(start, |last| last.end.0);
    if 0 < idle {
        workshop.run_free_beside(workshop.tick().plus(idle), beside).await;
    }
}

/// A deed in another car: it takes as long as it took, unless it ends with a cue.
async fn done_again(workshop: &mut Opened, deed: &Deed, beside: Beside<'_>) {
    if deed.action.ends_with_a_cue() {
        workshop.act_beside(&deed.action, beside).await;
    } else {
        let end = workshop.tick().plus(deed.end.0 - deed.start.0);
        workshop.replay_beside(&deed.action, end, beside).await;
    }
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

/// What the readings noted so far say in every cell, from the complaint on.
struct Sums {
    /// Per hypothesis that is simulated no further: the log-likelihoods of its cells when it was dropped, and how many
    /// notes they hold.
    dropped: Vec<Option<(Vec<f64>, usize)>>,
}

impl Sums {
    /// Natural log of the likelihood of all readings noted so far, in every cell.
    fn log_likelihoods(
        &mut self,
        job: &Job,
        hypotheses: &Hypotheses,
        players: &[Player],
        course: &Course,
        noted: &[usize],
    ) -> Vec<f64> {
        let ranges: Vec<std::ops::Range<usize>> = hypotheses.ranges().collect();
        let all: Vec<Vec<f64>> = ranges
            .par_iter()
            .zip(&mut self.dropped)
            .map(|(range, dropped)| {
                let gone = hypotheses.cells[range.start].world.is_some()
                    && players[range.clone()].iter().all(|player| player.workshop.is_none());
                let of = |noted: &[usize]| -> Vec<f64> {
                    if noted.is_empty() {
                        return vec![0.0; range.len()];
                    }
                    let notes: Vec<Noted> =
                        noted.iter().map(|&n| as_noted(job, players, course, range, n)).collect();
                    joint_likelihood::log_likelihoods(&notes)
                };
                if !gone {
                    return of(noted);
                }
                // It was dropped after the note before this one, or set aside since.
                let (before, held) =
                    dropped.get_or_insert_with(|| (of(&noted[..noted.len() - 1]), noted.len() - 1));
                let slips: f64 = noted[*held..]
                    .iter()
                    .map(|&n| {
                        let looked = &course.looked[n];
                        log_likelihood(&looked.scale, looked.reading.shown, Expected::Slip)
                    })
                    .sum();
                before.iter().map(|log| log + slips).collect()
            })
            .collect();
        all.concat()
    }
}

/// A noted reading with what the draws of one hypothesis expect of it.
fn as_noted(
    job: &Job,
    players: &[Player],
    course: &Course,
    range: &std::ops::Range<usize>,
    which: usize,
) -> Noted {
    let looked = &course.looked[which];
    let instrument = match &looked.reading.what {
        Observed::Instrument { instrument, .. } | Observed::Interval { instrument, .. } => {
            job.kit.iter().position(|card| card.id == *instrument)
        }
        Observed::Sense(_) => None,
    };
    Noted {
        shown: looked.reading.shown,
        scale: looked.scale.clone(),
        by_ratio: runs_by_ratio(&looked.reading.what, &looked.scale),
        instrument,
        drawn: players[range.clone()].iter().map(|player| player.predicted[which]).collect(),
    }
}

/// What a draw expects, with the instrument's constant error beside it.
fn drawn(job: &Job, cell: &Cell, workshop: &Opened, what: &Observed, predicted: Predicted) -> Drawn {
    let nothing = Drawn { predicted, error: 0.0, share: 0.0 };
    let Predicted::Value(value) = predicted else { return nothing };
    let (Observed::Instrument { instrument, .. } | Observed::Interval { instrument, .. }) = what else {
        return nothing;
    };
    let card = job.kit.iter().position(|card| card.id == *instrument);
    let errors = cell.world.as_ref().map(|world| world.instrument_errors.as_slice()).unwrap_or_default();
    let share = card.and_then(|card| errors.get(card)).copied().unwrap_or(0.0);
    Drawn { predicted, error: workshop.instrument_error(what, value, 1.0), share }
}

/// Quantities that are positive and span decades: times and resistances.
fn runs_by_ratio(what: &Observed, scale: &Scale) -> bool {
    matches!(what, Observed::Interval { .. }) || matches!(scale, Scale::Numeric { unit: "ohm", .. })
}
