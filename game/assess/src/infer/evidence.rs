//! Evidence: the trainee's own actions, done again in cars with every fault, and what the readings then say.
//!
//! [`follow`] brings in [`SOUND`] sound cars and [`DRAWS`] cars of each fault, which share their tolerances draw by draw,
//! and does the deeds in them from one counted note to the next ([`crate::infer::rows`]). At each note the forecasts grow
//! ([`crate::infer::forecast`]) and the belief moves ([`crate::infer::table`]).
//!
//! What is unlikely stands still meanwhile, and what is likely is given more cars (`closer`). Where no single fault explains
//! what was noted, two at once are tried (`pairs`).
//!
//! What is recorded runs in hypothesis and draw order, so the number of threads cannot change a bit.

use crate::infer::belief::Belief;
use crate::infer::guests::{Guests, Simulated};
use crate::infer::hypotheses::{Class, Hypotheses};
use crate::infer::reading::Noted;
use crate::infer::rows::{Car, Told};
use crate::infer::run::Run;
pub use crate::infer::run::SOUND;
use crate::infer::table::Table;
use crate::infer::told::Path;
use crate::pack::job::Job;
use crate::play::course::{Course, Worth};

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
}

/// The belief along an attempt.
#[derive(Debug)]
pub struct Followed {
    /// What was held possible: what was asked for, and pairs where no single fault explained what was noted.
    pub hypotheses: Hypotheses,
    /// Belief on the complaint alone.
    pub start: Belief,
    /// After each note that counts, in the order they were written.
    pub links: Vec<Link>,
    /// Per swap of the course, per cell: how probably the unit taken out was outside its limits.
    pub swapped_faulty: Vec<Vec<f64>>,
    /// Per cell: how probably no unit is outside its limits at the end; *other* never is well.
    pub well_at_end: Vec<f64>,
    /// Cars that could not be computed to the end.
    pub set_aside: usize,
    /// Cars that were run.
    pub cars: usize,
    /// Deeds that were done in them.
    pub deeds: usize,
    table: Table,
}

/// Follows an attempt up to (not including) deed number `until`, and stops looking at notes when `enough` says so.
#[must_use]
pub fn follow(
    job: &Job,
    hypotheses: &Hypotheses,
    course: &Course,
    until: usize,
    enough: impl Fn(&Belief) -> bool,
) -> Followed {
    follow_in(job, hypotheses, course, until, enough, &mut Simulated(job))
}

/// As [`follow`], in cars that `host` brings in.
#[must_use]
pub fn follow_in(
    job: &Job,
    hypotheses: &Hypotheses,
    course: &Course,
    until: usize,
    enough: impl Fn(&Belief) -> bool,
    host: &mut dyn Guests,
) -> Followed {
    let mut run = Run::begin(job, hypotheses, course, host);
    run.take_all(until, enough);
    run.look_closer();
    run.end(until)
}

/// An attempt in the midst of it: the table of what was noted, with the cars that came in and no others.
#[derive(Debug)]
pub struct Glance {
    /// What is held possible.
    pub hypotheses: Hypotheses,
    /// The notes so far.
    pub table: Table,
    /// The belief along them.
    pub path: Path,
    /// Share of each hypothesis.
    pub shares: Vec<f64>,
    /// Cars of each.
    pub cars: Vec<usize>,
}

/// Follows an attempt that goes on. What is true of the car is not looked at: two faults at once are tried where the notes
/// call for it, never because they are there.
#[must_use]
pub fn glance(job: &Job, hypotheses: &Hypotheses, course: &Course) -> Glance {
    let blind = Course { faulty_at_start: Vec::new(), ..course.clone() };
    let mut host = Simulated(job);
    let mut run = Run::begin(job, hypotheses, &blind, &mut host);
    run.take_all(blind.deeds.len(), |_| false);
    let shares = run.shares(run.last());
    let cars = run.players.iter().map(|player| player.guests.len()).collect();
    Glance { hypotheses: run.hypotheses, table: run.table, path: run.path, shares, cars }
}

impl Run<'_> {
    /// Takes in the notes that count up to (not including) deed number `until`, until `enough` says so; then two faults at
    /// once, where the notes call for it.
    fn take_all(&mut self, until: usize, enough: impl Fn(&Belief) -> bool) {
        for (index, note) in self.course.notes.iter().enumerate() {
            if note.worth != Worth::Counts || until <= note.deed {
                continue;
            }
            self.take(index);
            if enough(&self.path.last_told()) {
                break;
            }
        }
        if self.asks_for_pairs() {
            self.pair_up();
        }
    }

    /// Does what is left to do, and sums up.
    pub(super) fn end(mut self, until: usize) -> Followed {
        let running = self.running();
        self.advance(&running, until);
        let mut links = Vec::new();
        let beliefs = self.path.told();
        for (note, pair) in self.taken.iter().zip(beliefs.windows(2)) {
            let (before, entropy) = (pair[0].entropy(), pair[1].entropy());
            links.push(Link { note: *note, belief: pair[1].clone(), entropy, gain: before - entropy });
        }
        let repaired = self.course.repaired_units(self.job);
        let well = self.per_cell(
            |class| match class {
                Class::Inside => true,
                Class::Unit(unit) => repaired.contains(&unit),
                Class::Pair(a, b) => repaired.contains(&a) && repaired.contains(&b),
                Class::Other => false,
            },
            Car::is_well,
        );
        let swapped = self.course.swaps.iter().enumerate().map(|(index, swap)| {
            self.per_cell(|class| class.has(swap.unit), |car| car.swapped_faulty.get(index).copied())
        });
        Followed {
            swapped_faulty: swapped.collect(),
            well_at_end: well,
            start: self.path.beliefs[0].clone(),
            links,
            set_aside: self.cars().filter(|car| car.is_set_aside()).count(),
            cars: self.cars().count(),
            deeds: self.deeds,
            hypotheses: self.hypotheses,
            table: self.table,
        }
    }

    fn cars(&self) -> impl Iterator<Item = &Car> {
        self.players.iter().flat_map(|player| player.guests.iter().map(|guest| &guest.car))
    }

    /// How probable something is in each cell: counted among the cars near its severity; for a hypothesis that stands
    /// still, and where no car knows, what its class says.
    fn per_cell(&self, of_class: impl Fn(Class) -> bool, of_car: impl Fn(&Car) -> Option<bool>) -> Vec<f64> {
        let number = |is: bool| f64::from(u8::from(is));
        let mut all = Vec::new();
        for (h, entry) in self.hypotheses.list.iter().enumerate() {
            let rule = number(of_class(self.hypotheses.classes[entry.class]));
            let forecast = self.table.views[h].forecast.as_ref();
            let player = self.players.get(h).filter(|player| player.is_on_its_way());
            let (Some(forecast), Some(player)) = (forecast, player) else {
                all.extend(std::iter::repeat_n(rule, entry.cells()));
                continue;
            };
            for near in &forecast.near {
                let (mut sum, mut weights) = (0.0, 0.0);
                for (weight, guest) in near.iter().zip(&player.guests) {
                    if let Some(is) = of_car(&guest.car) {
                        sum += weight * number(is);
                        weights += weight;
                    }
                }
                all.push(if 0.0 < weights { sum / weights } else { rule });
            }
        }
        all
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

    /// What would have been believed along the first `notes` notes had the instruments and the hand scattered otherwise:
    /// `told` says what each of them would have shown before that in the car in question, `draw` gives a share of the class
    /// for each instrument (−1 to 1) and a standard normal number for each note.
    #[must_use]
    pub fn with_other_scatter(
        &self,
        told: &[Option<Told>],
        instruments: &[f64],
        scatter: &[f64],
    ) -> Vec<Belief> {
        let items = self.table.items.iter().zip(told).zip(scatter);
        let shown: Vec<Noted> = items
            .map(|((item, told), scatter)| {
                let share = item.noted.instrument.and_then(|i| instruments.get(i)).copied().unwrap_or(0.0);
                item.noted
                    .show(*told, share, *scatter)
                    .map_or_else(|| item.noted.clone(), |shown| item.noted.showing(shown))
            })
            .collect();
        self.table.had_shown(shown.iter().collect())
    }
}
