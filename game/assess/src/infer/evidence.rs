//! Evidence: the trainee's own actions, done again in cars with every fault, and what the readings then say.
//!
//! [`follow`] brings in [`SOUND`] sound cars and [`DRAWS`] cars of each fault, which share their tolerances draw by draw,
//! and does the deeds in them from one counted note to the next ([`crate::infer::rows`]). At each note the forecasts grow
//! ([`crate::infer::forecast`]) and the belief moves ([`crate::infer::table`]).
//!
//! **Standing still.** A hypothesis whose share falls below [`STANDS`] is done no further: it keeps its share. What it could
//! have gained since, had it foreseen every note as well as the best cell of all, is reckoned along; as soon as that could
//! make its share [`ROUSED`], its cars go on from where they stood and it is as if it had never stood still.
//!
//! **More cars** go where the belief lies: a hypothesis that has [`CLOSER`] of it before the finding or at the end is given
//! [`DRAWS`] more cars, [`ROUNDS`] times.
//!
//! What is recorded runs in hypothesis and draw order, so the number of threads cannot change a bit.

use sim_core::world::World;

use crate::infer::belief::Belief;
use crate::infer::draws::DRAWS;
use crate::infer::forecast::Forecast;
use crate::infer::heard::heard;
use crate::infer::hypotheses::{Class, Hypotheses, Hypothesis, world};
use crate::infer::marginal::Marginal;
use crate::infer::reading::{Noted, Place};
use crate::infer::rows::{self, Car, Told};
use crate::infer::table::{Item, Table, View};
use crate::pack::job::Job;
use crate::play::course::{Course, Worth};

/// Sound cars.
pub const SOUND: usize = 64;
/// Share below which a hypothesis stands still.
pub const STANDS: f64 = 3e-4;
/// Share that a hypothesis which stands still must not be able to have.
pub const ROUSED: f64 = 0.01;
/// Share of the belief that is worth more cars.
pub const CLOSER: f64 = 0.03;
/// How often a hypothesis may be given more cars; with the first they are no more than the sound ones.
pub const ROUNDS: usize = 2;
/// The cars of one hypothesis.
#[derive(Debug)]
struct Player {
    fault: Option<u16>,
    cars: Vec<Car>,
    /// Severity of each car, share of its range.
    at: Vec<f64>,
    stands: Option<Standing>,
}

/// A hypothesis that stands still.
#[derive(Clone, Copy, Debug)]
struct Standing {
    /// Its share when it stopped.
    share: f64,
    /// After how many notes.
    after: usize,
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
}

/// The belief along an attempt.
#[derive(Debug)]
pub struct Followed {
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
    table: Table,
}

/// Brings in the cars `draws` of every hypothesis of `faults`.
fn bring_in(job: &Job, faults: &[(Option<u16>, std::ops::Range<usize>)]) -> Vec<Vec<(Car, f64)>> {
    let drawn: Vec<(World, f64)> = faults
        .iter()
        .flat_map(|(fault, draws)| draws.clone().map(|draw| world(&job.car, &job.kit, *fault, draw)))
        .collect();
    let (worlds, at): (Vec<World>, Vec<f64>) = drawn.into_iter().unzip();
    let mut cars = rows::arrive(job, &worlds).into_iter().zip(at);
    faults.iter().map(|(_, draws)| cars.by_ref().take(draws.len()).collect()).collect()
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
    let mut run = Run::begin(job, hypotheses, course);
    for (index, note) in course.notes.iter().enumerate() {
        if note.worth != Worth::Counts || until <= note.deed {
            continue;
        }
        run.take(index);
        if enough(run.last()) {
            break;
        }
    }
    run.look_closer();
    run.end(until)
}

/// An attempt on its way through all cars.
struct Run<'a> {
    job: &'a Job,
    course: &'a Course,
    hypotheses: &'a Hypotheses,
    /// Without *other*.
    players: Vec<Player>,
    table: Table,
    /// Index into the course's notes of each note taken.
    taken: Vec<usize>,
    beliefs: Vec<Belief>,
    could_gain: Vec<f64>,
}

impl<'a> Run<'a> {
    fn begin(job: &'a Job, hypotheses: &'a Hypotheses, course: &'a Course) -> Self {
        let asked: Vec<(Option<u16>, std::ops::Range<usize>)> = hypotheses
            .list
            .iter()
            .filter_map(|entry| match entry.hypothesis {
                Hypothesis::Inside => Some((None, 0..SOUND)),
                Hypothesis::Fault(fault) => Some((Some(fault), 0..DRAWS)),
                Hypothesis::Other => None,
            })
            .collect();
        let players: Vec<Player> = bring_in(job, &asked)
            .into_iter()
            .zip(&asked)
            .map(|(cars, (fault, _))| {
                let (cars, at) = cars.into_iter().unzip();
                Player { fault: *fault, cars, at, stands: None }
            })
            .collect();
        let table = Table::new(hypotheses.classes.len());
        let mut run = Self {
            job,
            course,
            hypotheses,
            players,
            table,
            taken: Vec::new(),
            beliefs: Vec::new(),
            could_gain: Vec::new(),
        };
        run.table.views = (0..hypotheses.list.len()).map(|h| run.view(h)).collect();
        run.look();
        run
    }

    /// A hypothesis that has heard the complaint and taken no note yet.
    fn view(&self, h: usize) -> View {
        let player = self.players.get(h);
        let shows: Vec<bool> = player.iter().flat_map(|player| &player.cars).map(|car| car.shows).collect();
        heard(self.hypotheses.list[h], &shows, player.map_or(&[], |player| &player.at))
    }

    /// The last belief.
    fn last(&self) -> &Belief {
        &self.beliefs[self.beliefs.len() - 1]
    }

    /// Which hypotheses are on their way.
    fn running(&self) -> Vec<usize> {
        (0..self.players.len()).filter(|h| self.players[*h].stands.is_none()).collect()
    }

    /// Takes the next note in.
    fn take(&mut self, note: usize) {
        let running = self.running();
        self.advance(&running, self.course.notes[note].deed);
        self.taken.push(note);
        let looked = &self.course.looked[self.course.notes[note].looked];
        let noted = Noted::of(self.job, looked);
        let item = self.taken.len() - 1;
        self.forecast(&running, item, &noted);
        let faults = running.iter().filter(|h| 0 < **h);
        let forecasts: Vec<&Forecast> =
            faults.filter_map(|h| self.table.views[*h].forecast.as_ref()).collect();
        let common = Forecast::common(&forecasts, item);
        let order = (looked.reading.epoch, looked.reading.what.clone());
        let marginal = self.marginal(&running, &noted, item);
        let mut of_sound: Option<Vec<f64>> = None;
        // Sound cars come first.
        for h in &running {
            if let Some(forecast) = &mut self.table.views[*h].forecast {
                let drawn = forecast.draw_towards(&common, of_sound.as_deref());
                of_sound.get_or_insert_with(|| drawn.to_vec());
            }
        }
        let of_sound = of_sound.unwrap_or_default();
        self.table.items.push(Item { noted, marginal, common, of_sound, order });
        self.look();
        while self.rouse() {}
        self.stand_still();
    }

    /// Does the deeds before `until` in the cars of some hypotheses.
    fn advance(&mut self, which: &[usize], until: usize) {
        let players = self.players.iter_mut().enumerate().filter(|(h, _)| which.contains(h));
        let mut cars: Vec<&mut Car> = players.flat_map(|(_, player)| player.cars.iter_mut()).collect();
        rows::advance(self.course, &mut cars, until);
    }

    /// Where the cars of a hypothesis stand at a note, with the instrument's error there.
    fn places(&self, h: usize, item: usize, noted: &Noted) -> Vec<(Place, f64)> {
        let looked = self.course.notes[self.taken[item]].looked;
        self.players[h].cars.iter().map(|car| noted.place(car.told.get(looked).copied().flatten())).collect()
    }

    /// Lets the forecasts of some hypotheses take a note in.
    fn forecast(&mut self, which: &[usize], item: usize, noted: &Noted) {
        let beside: Vec<Place> = self.places(0, item, noted).into_iter().map(|(place, _)| place).collect();
        let places: Vec<Vec<(Place, f64)>> = which.iter().map(|h| self.places(*h, item, noted)).collect();
        // Sound cars are always among those who are there, or were before: they never stand still.
        let (sound, faults) = self.table.views.split_at_mut(1);
        let Some(sound) = sound.first_mut().and_then(|view| view.forecast.as_mut()) else { return };
        for (h, places) in which.iter().zip(&places) {
            match h.checked_sub(1) {
                None => sound.take(noted, places, None),
                Some(fault) => {
                    if let Some(forecast) = faults.get_mut(fault).and_then(|view| view.forecast.as_mut()) {
                        forecast.take(noted, places, Some((sound, &beside)));
                    }
                }
            }
        }
    }

    fn marginal(&self, running: &[usize], noted: &Noted, item: usize) -> Marginal {
        let cars = running.iter().flat_map(|h| {
            let places = self.places(*h, item, noted);
            let weight = self.hypotheses.list[*h].prior / places.len() as f64;
            places.into_iter().map(move |(place, error)| (weight, place, error))
        });
        Marginal::of(noted, cars.collect())
    }

    /// Looks at the belief along all notes.
    fn look(&mut self) {
        let path = self.table.path();
        self.beliefs = path.beliefs;
        self.could_gain = path.could_gain;
    }

    /// The share of each hypothesis in a belief.
    fn shares(&self, belief: &Belief) -> Vec<f64> {
        let mut shares = vec![0.0; self.hypotheses.list.len()];
        for (cell, (h, _)) in self.hypotheses.cells().enumerate() {
            shares[h] += belief.mass_in(cell..cell + 1);
        }
        shares
    }

    /// Lets hypotheses stand still that have become very unlikely; never the sound cars, which the others are held
    /// against.
    fn stand_still(&mut self) {
        let shares = self.shares(self.last());
        let after = self.taken.len();
        for (player, share) in self.players.iter_mut().zip(shares).skip(1) {
            if player.stands.is_none() && share < STANDS {
                player.stands = Some(Standing { share, after });
            }
        }
    }

    /// Lets hypotheses go on that could have come to matter; whether there were any.
    fn rouse(&mut self) -> bool {
        let could = |standing: Standing| {
            let gain: f64 = self.could_gain[standing.after..].iter().sum();
            standing.share * sim_core::math::exp(gain)
        };
        let roused: Vec<(usize, Standing)> = self
            .players
            .iter()
            .enumerate()
            .filter_map(|(h, player)| Some((h, player.stands?)))
            .filter(|(_, standing)| ROUSED < could(*standing))
            .collect();
        let Some(last) = self.taken.last().copied() else { return false };
        let which: Vec<usize> = roused.iter().map(|(h, _)| *h).collect();
        self.advance(&which, self.course.notes[last].deed);
        for (h, standing) in &roused {
            self.players[*h].stands = None;
            self.catch_up(*h, standing.after);
        }
        if !roused.is_empty() {
            self.look();
        }
        !roused.is_empty()
    }

    /// Lets a hypothesis take in the notes from number `from` on; its cars have done the deeds.
    fn catch_up(&mut self, h: usize, from: usize) {
        for item in from..self.table.items.len() {
            let noted = self.table.items[item].noted.clone();
            self.forecast(&[h], item, &noted);
            if let Some(forecast) = &mut self.table.views[h].forecast {
                let Item { common, of_sound, .. } = &self.table.items[item];
                forecast.draw_towards(common, Some(of_sound));
            }
        }
    }

    /// Gives more cars to the hypotheses in which the belief lies.
    fn look_closer(&mut self) {
        let lock = self.course.lock();
        let before_lock = self.taken.iter().filter(|note| self.course.notes[**note].deed < lock).count();
        let Some(last) = self.taken.last().copied() else { return };
        for _ in 0..ROUNDS {
            let (then, now) = (self.shares(&self.beliefs[before_lock]), self.shares(self.last()));
            let close: Vec<usize> = (1..self.players.len())
                .filter(|h| self.players[*h].stands.is_none() && CLOSER <= then[*h].max(now[*h]))
                .collect();
            let asked: Vec<(Option<u16>, std::ops::Range<usize>)> = close
                .iter()
                .map(|h| {
                    let player = &self.players[*h];
                    (player.fault, player.cars.len()..(player.cars.len() + DRAWS).min(SOUND))
                })
                .collect();
            for (h, new) in close.iter().zip(bring_in(self.job, &asked)) {
                let player = &mut self.players[*h];
                for (car, at) in new {
                    player.cars.push(car);
                    player.at.push(at);
                }
            }
            self.advance(&close, self.course.notes[last].deed);
            for h in close {
                self.table.views[h] = self.view(h);
                self.catch_up(h, 0);
            }
            self.look();
        }
    }

    /// Does what is left to do, and sums up.
    fn end(mut self, until: usize) -> Followed {
        let running = self.running();
        self.advance(&running, until);
        let mut links = Vec::new();
        for (note, pair) in self.taken.iter().zip(self.beliefs.windows(2)) {
            let (before, entropy) = (pair[0].entropy(), pair[1].entropy());
            links.push(Link { note: *note, belief: pair[1].clone(), entropy, gain: before - entropy });
        }
        let repaired = self.course.repaired_units(self.job);
        let well = self.per_cell(
            |class| match class {
                Class::Inside => true,
                Class::Unit(unit) => repaired.contains(&unit),
                Class::Other => false,
            },
            Car::is_well,
        );
        let swapped = self.course.swaps.iter().enumerate().map(|(index, swap)| {
            self.per_cell(
                |class| class == Class::Unit(swap.unit),
                |car| car.swapped_faulty.get(index).copied(),
            )
        });
        Followed {
            swapped_faulty: swapped.collect(),
            well_at_end: well,
            start: self.beliefs[0].clone(),
            links,
            set_aside: self.cars().filter(|car| car.is_set_aside()).count(),
            cars: self.cars().count(),
            table: self.table,
        }
    }

    fn cars(&self) -> impl Iterator<Item = &Car> {
        self.players.iter().flat_map(|player| &player.cars)
    }

    /// How probable something is in each cell: counted among the cars near its severity; for a hypothesis that stands
    /// still, and where no car knows, what its class says.
    fn per_cell(&self, of_class: impl Fn(Class) -> bool, of_car: impl Fn(&Car) -> Option<bool>) -> Vec<f64> {
        let number = |is: bool| f64::from(u8::from(is));
        let mut all = Vec::new();
        for (h, entry) in self.hypotheses.list.iter().enumerate() {
            let rule = number(of_class(self.hypotheses.classes[entry.class]));
            let forecast = self.table.views[h].forecast.as_ref();
            let player = self.players.get(h).filter(|player| player.stands.is_none());
            let (Some(forecast), Some(player)) = (forecast, player) else {
                all.extend(std::iter::repeat_n(rule, entry.cells()));
                continue;
            };
            for near in &forecast.near {
                let (mut sum, mut weights) = (0.0, 0.0);
                for (weight, car) in near.iter().zip(&player.cars) {
                    if let Some(is) = of_car(car) {
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
