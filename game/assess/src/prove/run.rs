//! A job proved by doing it.

use rayon::prelude::*;
use sim_core::Opened;
use sim_core::world::World;

use super::{Confirming, Planned, Proof, alike, confirming, flaws, script};
use crate::attempt::{Breached, ENGINE, Seed};
use crate::infer::belief::Belief;
use crate::infer::draws::Draw;
use crate::infer::hypotheses::{Class, Hypotheses};
use crate::infer::rows::{self, Car};
use crate::marks::score;
use crate::pack::job::Job;
use crate::plan::cost::Rehearsal;
use crate::plan::test::Test;
use crate::planner::trials::Trial;
use crate::planner::{Planner, Trials, par};
use crate::play;

/// Cars in which a job is proved, unless somebody asks for fewer.
pub const CARS: usize = 20;
/// Cars in which the author's reference attempt is marked, at most.
const SCRIPTED: usize = 3;
/// A plan that has not found it after so many tests will not.
const MOST_TESTS: usize = 16;

/// How far the proving is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stage {
    /// So many of all tests were tried in every car.
    Tried(usize, usize),
    /// So many tests the reference plan has.
    Planned(usize),
    /// So many of all drawn cars were done.
    Done(usize, usize),
    /// So many of all cars the reference attempt was played in.
    Played(usize, usize),
}

/// Proves a job in `cars` drawn cars. `hear` is told how far it is and says whether to go on; `None` when it was stopped.
#[must_use]
pub fn prove(job: &Job, cars: usize, hear: &mut dyn FnMut(Stage) -> bool) -> Option<Proof> {
    let late = confirming::late(job);
    let trials = Trials::of(job, &late, |n, all| hear(Stage::Tried(n, all)))?;
    let middle = World::draw(&job.car, &job.kit, job.answer(), &mut || 0.5);
    let truth = Truth::of(job, &trials.hypotheses, &middle);
    let came_in = rows::arrive(job, std::slice::from_ref(&middle)).into_iter().next()?;
    let (plan, planned) = reference(job, &trials, &truth, &came_in, hear)?;
    let tests: Vec<&Test> = plan.done().iter().map(|trial| &job.tests[trials.tests[*trial].test]).collect();
    let done = drawn(job, &trials, &truth, plan.done(), cars, hear)?;
    let seeds: Vec<u128> = (1..=cars.min(SCRIPTED) as u128).collect();
    let mut stopped = false;
    let script = script::played(job, &seeds, |n| {
        stopped |= !hear(Stage::Played(n, seeds.len()));
        !stopped
    });
    if stopped {
        return None;
    }
    let card = Planner::new(job, &trials);
    let mut proof = Proof {
        job: job.name(),
        digest: hex::encode(job.digest),
        engine: ENGINE.to_owned(),
        scheme: score::SCHEME.to_owned(),
        truth: truth.units.iter().map(|unit| job.car.units[usize::from(*unit)].id.clone()).collect(),
        tests: trials.tests.len(),
        minutes: plan.minutes(),
        par: par::minutes(job, &tests),
        plan: planned,
        time_limit_min: job.time_limit_min,
        shows: done.iter().filter(|done| done.shows).count() as f64 / (done.len() as f64).max(1.0),
        cars: done.iter().map(|done| (done.p_true, done.tests)).collect(),
        sound_shows: trials.sound_shows(),
        card: truth.p(card.belief()),
        card_likeliest: likeliest(job, &trials.hypotheses, card.belief()),
        confirming: confirmed(job, &trials, &truth, &came_in),
        alike: exhausted(job, &trials, &truth, &came_in),
        script,
        flaws: Vec::new(),
    };
    proof.flaws = flaws::of(job, &proof, &dangers(job, &middle, &tests));
    Some(proof)
}

/// What is true of a job's car.
struct Truth {
    /// Units outside their limits.
    units: Vec<u16>,
    /// Their classes; that of everything inside limits where there are none.
    classes: Vec<usize>,
}

impl Truth {
    fn of(job: &Job, hypotheses: &Hypotheses, world: &World) -> Self {
        let units = Opened::of(job.setup(), world.clone()).units_outside_limits();
        let is_true = |class: &Class| match class {
            Class::Inside => units.is_empty(),
            Class::Unit(unit) => units.contains(unit),
            // The planner tries single faults: with one of two it is satisfied.
            Class::Pair(..) | Class::Other => false,
        };
        let classes = hypotheses.classes.iter().enumerate().filter(|(_, class)| is_true(class));
        Self { classes: classes.map(|(index, _)| index).collect(), units }
    }

    fn p(&self, belief: &Belief) -> f64 {
        belief.mass_where(|cell| self.classes.contains(&belief.class_of()[cell]))
    }
}

/// The likeliest class by name.
fn likeliest(job: &Job, hypotheses: &Hypotheses, belief: &Belief) -> (String, f64) {
    let classes = belief.classes();
    let best =
        (0..classes.len()).fold(0, |best, class| if classes[best] < classes[class] { class } else { best });
    (alike::name_of(job, hypotheses.classes[best]), classes[best])
}

/// The reference plan: in the middle car, with instruments that do not err.
fn reference<'a>(
    job: &'a Job,
    trials: &'a Trials,
    truth: &Truth,
    came_in: &Car,
    hear: &mut dyn FnMut(Stage) -> bool,
) -> Option<(Planner<'a>, Vec<Planned>)> {
    let mut plan = Planner::new(job, trials);
    let mut planned = Vec::new();
    while truth.p(plan.belief()) < score::TAU && planned.len() < MOST_TESTS {
        let Some(next) = plan.next() else { break };
        let trial = &trials.tests[next.trial];
        plan.take(next.trial, &trial.told_by(came_in), &[]);
        planned.push(Planned {
            test: job.tests[trial.test].id.clone(),
            expected_bits: next.bits,
            minutes: next.minutes,
            p_true: truth.p(plan.belief()),
            likeliest: likeliest(job, &trials.hypotheses, plan.belief()),
        });
        if !hear(Stage::Planned(planned.len())) {
            return None;
        }
    }
    Some((plan, planned))
}

/// A drawn car that was done.
struct Done {
    p_true: f64,
    tests: usize,
    shows: bool,
}

/// Does the job in cars as attempts draw them: the reference plan first, then on as long as it is not found.
fn drawn(
    job: &Job,
    trials: &Trials,
    truth: &Truth,
    row: &[usize],
    cars: usize,
    hear: &mut dyn FnMut(Stage) -> bool,
) -> Option<Vec<Done>> {
    let worlds: Vec<World> = (1..=cars).map(|seed| play::truth(job, Seed(seed as u128))).collect();
    let mut all = Vec::new();
    for (n, car) in rows::arrive(job, &worlds).iter().enumerate() {
        let mut draw = Draw::new(n);
        let off: Vec<f64> = job.kit.iter().map(|_| 2.0 * draw.next_u() - 1.0).collect();
        let mut plan = Planner::new(job, trials);
        let mut row = row.iter().copied();
        while truth.p(plan.belief()) < score::TAU && plan.done().len() < MOST_TESTS {
            let Some(next) = row.next().or_else(|| plan.next().map(|next| next.trial)) else { break };
            plan.take(next, &trials.tests[next].told_by(car), &off);
        }
        all.push(Done { p_true: truth.p(plan.belief()), tests: plan.done().len(), shows: car.shows });
        if !hear(Stage::Done(n + 1, cars)) {
            return None;
        }
    }
    Some(all)
}

/// What tests that only confirm the complaint are worth in the middle car, each by itself, at once and after a wait, and
/// all of them together; the most telling first.
fn confirmed(job: &Job, trials: &Trials, truth: &Truth, came_in: &Car) -> Vec<Confirming> {
    let only = |trial: &&Trial| confirming::only_confirms(job.symptom, &job.tests[trial.test]);
    let single: Vec<&Trial> = trials.tests.iter().chain(&trials.late).filter(only).collect();
    let told: Vec<_> = single.par_iter().with_max_len(1).map(|trial| trial.told_by(came_in)).collect();
    let mut rows: Vec<Vec<usize>> = (0..single.len()).map(|n| vec![n]).collect();
    if 1 < single.len() {
        rows.push((0..single.len()).collect());
    }
    let one = |row: &Vec<usize>| {
        let mut plan = Planner::new(job, trials);
        let before = truth.p(plan.belief());
        plan.take_all(row.iter().map(|n| (single[*n], told[*n].as_slice())));
        let tests =
            row.iter().map(|n| (job.tests[single[*n].test].id.clone(), f64::from(single[*n].after_s) / 60.0));
        let evidence = score::evidence(before, truth.p(plan.belief()), score::TAU);
        Confirming { tests: tests.collect(), evidence }
    };
    let mut all: Vec<Confirming> = rows.par_iter().with_max_len(1).map(one).collect();
    all.sort_by(|a, b| b.evidence.total_cmp(&a.evidence));
    all
}

/// What still looks like the truth when every test was done in the middle car.
fn exhausted(job: &Job, trials: &Trials, truth: &Truth, came_in: &Car) -> Vec<super::Alike> {
    let mut plan = Planner::new(job, trials);
    let told: Vec<_> = trials.tests.par_iter().with_max_len(1).map(|trial| trial.told_by(came_in)).collect();
    plan.take_all(trials.tests.iter().zip(told.iter().map(Vec::as_slice)));
    alike::in_belief(job, &trials.hypotheses, &truth.classes, plan.belief())
}

/// What is dangerous when the plan is carried out in the job's own car: test and rule.
fn dangers(job: &Job, world: &World, tests: &[&Test]) -> Vec<(String, String)> {
    let mut work = Rehearsal::of(Opened::of(job.setup(), world.clone()));
    work.all(tests);
    let of = |(task, hazard): &(usize, sim_core::notice::Hazard)| {
        let test = work.row().tasks()[*task].test.map_or("", |test| tests[test].id.as_str());
        (test.to_owned(), Breached::Typed(hazard.clone()).rule().to_owned())
    };
    let mut all: Vec<(String, String)> = work.breaches.iter().map(of).collect();
    all.dedup();
    all
}
