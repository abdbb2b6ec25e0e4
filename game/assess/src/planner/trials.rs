//! Every test of a job, tried in every car there could be.
//!
//! A test shows the same whatever was done before it ([`crate::plan::work`]), so that it is enough to try each by itself, in cars as
//! they came in. They are the marker's own cars ([`crate::infer::hypotheses`]): what tests show together is known, because
//! the same cars stand behind all of them.

use sim_core::observe::Observed;
use sim_core::world::World;

use crate::infer::draws::DRAWS;
use crate::infer::heard::heard;
use crate::infer::hypotheses::{Entry, Hypotheses, Hypothesis, severity_of, world};
use crate::infer::outlook::Coming;
use crate::infer::reading::Noted;
use crate::infer::rows::{self, Car, Told};
use crate::infer::table::Table;
use crate::pack::job::Job;
use crate::plan::cost::{Done, Rehearsal};
use crate::plan::test::Test;
use crate::play::course::{Course, Deed, Looked, Worth};

/// Sound cars: as many as behind a mark.
const SOUND: usize = crate::infer::evidence::SOUND;

/// A test as it is done in a car by itself.
#[derive(Clone, Debug)]
pub struct Trial {
    /// Index into the job's tests.
    pub test: usize,
    /// How long one waits before it, s.
    pub after_s: u32,
    /// What is done, from setting up to the last reading, and what of it is noted.
    course: Course,
    /// The notes that count: index into what is looked at.
    looked: Vec<usize>,
    /// Per hypothesis, per car, per note: what it would show.
    told: Vec<Vec<Vec<Option<Told>>>>,
}

/// All tests that a job's tool board allows, tried in all cars.
#[derive(Clone, Debug)]
pub struct Trials {
    /// What could be wrong.
    pub hypotheses: Hypotheses,
    /// Weight of each hypothesis before the complaint.
    pub priors: Vec<f64>,
    /// The tests, in the order of the job's.
    pub tests: Vec<Trial>,
    /// Some of them after a wait, as asked for: no plan has them.
    pub late: Vec<Trial>,
    /// Per hypothesis: of each car whether it shows the complaint, and where in its range its severity lies.
    cars: Vec<(Vec<bool>, Vec<f64>)>,
}

/// How many cars a hypothesis has here.
fn many(entry: &Entry) -> usize {
    match entry.hypothesis {
        Hypothesis::Inside => SOUND,
        Hypothesis::Fault(_) | Hypothesis::Pair(..) => DRAWS,
        Hypothesis::Other => 0,
    }
}

impl Trials {
    /// Tries all tests of a job, and those that `late` names (index into the job's tests) also after so long a wait, s; `tried`
    /// is told after each how many there are and how many are done, and says whether to go on. `None` when it was stopped.
    pub fn of(job: &Job, late: &[(usize, u32)], tried: impl FnMut(usize, usize) -> bool) -> Option<Self> {
        let hypotheses = Hypotheses::of(&job.car);
        let cars: Vec<usize> = hypotheses.list.iter().map(many).collect();
        Self::in_cars(job, hypotheses, &cars, late, tried)
    }

    /// As [`Self::of`], in so many cars of each hypothesis; of what has none it is not known what it would show.
    pub fn in_cars(
        job: &Job,
        hypotheses: Hypotheses,
        cars: &[usize],
        late: &[(usize, u32)],
        mut tried: impl FnMut(usize, usize) -> bool,
    ) -> Option<Self> {
        let drawn: Vec<Vec<(World, f64)>> = hypotheses
            .list
            .iter()
            .zip(cars)
            .map(|(entry, cars)| {
                let car = |draw: usize| {
                    let at = severity_of(draw);
                    (world(&job.car, &job.kit, entry.hypothesis, draw, at), at)
                };
                (0..*cars).map(car).collect()
            })
            .collect();
        let worlds: Vec<World> = drawn.iter().flatten().map(|(world, _)| world.clone()).collect();
        let came_in = rows::arrive(job, &worlds);
        let mut shows = came_in.iter().map(|car| car.shows);
        let heard = drawn
            .iter()
            .map(|cars| (shows.by_ref().take(cars.len()).collect(), cars.iter().map(|(_, at)| *at).collect()))
            .collect();
        let here: Vec<usize> = (0..job.tests.len()).filter(|t| job.tests[*t].fits(&job.kit)).collect();
        let at_once = here.iter().map(|test| (*test, 0));
        let late = late.iter().filter(|(test, _)| here.contains(test)).copied();
        let all: Vec<(usize, u32)> = at_once.chain(late).collect();
        let mut tests = Vec::new();
        for (n, (test, after_s)) in all.iter().enumerate() {
            tests.push(Trial::of(job, *test, *after_s, &came_in, cars));
            if !tried(n + 1, all.len()) {
                return None;
            }
        }
        let late = tests.split_off(here.len());
        let priors = hypotheses.list.iter().map(|entry| entry.prior).collect();
        Some(Self { hypotheses, priors, tests, late, cars: heard })
    }

    /// Share of the sound cars that raise the complaint.
    #[must_use]
    pub fn sound_shows(&self) -> f64 {
        let shows = self.cars.first().map_or(&[][..], |(shows, _)| shows);
        shows.iter().filter(|shows| **shows).count() as f64 / (shows.len() as f64).max(1.0)
    }

    /// The table of a belief that has heard the complaint and nothing else.
    #[must_use]
    pub fn heard(&self) -> Table {
        let mut table = Table::new(self.hypotheses.classes.len());
        let views = self.hypotheses.list.iter().zip(&self.cars);
        table.views = views.map(|(entry, (shows, at))| heard(*entry, shows, at)).collect();
        table
    }
}

impl Trial {
    fn of(job: &Job, test: usize, after_s: u32, came_in: &[Car], many: &[usize]) -> Self {
        let course = course(job, &job.tests[test], after_s);
        let counts = course.notes.iter().filter(|note| note.worth == Worth::Counts);
        let looked: Vec<usize> = counts.map(|note| note.looked).collect();
        let mut told = said(&course, &looked, came_in.to_vec()).into_iter();
        let told = many.iter().map(|many| told.by_ref().take(*many).collect()).collect();
        Self { test, after_s, course, looked, told }
    }

    /// What a car as it came in would tell at the notes.
    #[must_use]
    pub fn told_by(&self, came_in: &Car) -> Vec<Option<Told>> {
        said(&self.course, &self.looked, vec![came_in.clone()]).into_iter().next().unwrap_or_default()
    }

    /// What is looked at, note by note.
    pub fn looked(&self) -> impl Iterator<Item = &Looked> {
        self.looked.iter().map(|looked| &self.course.looked[*looked])
    }

    /// The notes as they may come when `before` changes of the state were made before the test.
    #[must_use]
    pub fn coming(&self, job: &Job, before: u32) -> Vec<Coming> {
        let one = |(note, looked): (usize, &Looked)| {
            let noted = Noted::of(job, looked);
            let places = self.told.iter().map(|cars| {
                let of = |told: &Vec<Option<Told>>| noted.place(told[note]);
                (!cars.is_empty()).then(|| cars.iter().map(of).collect())
            });
            let order: (u32, Observed) = (before + looked.reading.epoch, looked.reading.what.clone());
            Coming { places: places.collect(), noted, order }
        };
        self.looked().enumerate().map(one).collect()
    }

    /// Changes of the state that it makes before its last reading.
    #[must_use]
    pub fn changes(&self) -> u32 {
        1 + self.looked().map(|looked| looked.reading.epoch).max().unwrap_or(0)
    }
}

/// A test as it goes in a sound car as it came in, after a wait.
fn course(job: &Job, test: &Test, after_s: u32) -> Course {
    let mut rehearsal = Rehearsal::sound(job.setup());
    if 0 < after_s {
        rehearsal.wait(after_s);
    }
    rehearsal.then(test);
    let sound = World::draw(&job.car, &job.kit, &[], &mut || 0.5);
    Course::play(job, &sound, deeds(rehearsal))
}

/// What was done in a rehearsal, as deeds of an attempt.
#[must_use]
pub fn deeds(rehearsal: Rehearsal) -> Vec<Deed> {
    let deed =
        |done: Done| Deed { action: done.action, start: done.start, end: done.end, refused: done.refused };
    rehearsal.deeds.into_iter().map(deed).collect()
}

/// What cars tell at the notes, car by car.
fn said(course: &Course, looked: &[usize], mut cars: Vec<Car>) -> Vec<Vec<Option<Told>>> {
    let mut all: Vec<&mut Car> = cars.iter_mut().collect();
    rows::advance(course, &mut all, course.deeds.len());
    let of = |car: &Car| looked.iter().map(|looked| car.told.get(*looked).copied().flatten()).collect();
    cars.iter().map(of).collect()
}
