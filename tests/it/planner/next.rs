//! Laws of the planner: information is never more than there is, and comes out on average as it was expected.

use assess::infer::hypotheses::{severity_of, world};
use assess::infer::rows::{self, Car};
use assess::planner::Planner;
use sim_core::world::World;

use super::{small, trial};

/// Drawings of the expectation and of the cars here are few.
const FEW: f64 = 0.02;

/// The job's own car, every tolerance in the middle.
fn middle() -> Car {
    let (job, _) = small();
    let world = World::draw(&job.car, &job.kit, job.answer(), &mut || 0.5);
    rows::arrive(job, &[world]).remove(0)
}

#[test]
fn inv_a_test_tells_something_and_never_more_than_is_unknown() {
    let (job, trials) = small();
    let plan = Planner::new(job, trials);
    let choices = plan.choices();
    assert!(3 <= choices.len(), "{choices:?}");
    let unknown = plan.belief().entropy();
    for choice in &choices {
        assert!(0.0 < choice.bits && choice.bits <= unknown + FEW, "{choice:?} of {unknown} bits");
        assert!(0.0 < choice.minutes.attended, "{choice:?}");
    }
    assert!(choices.windows(2).all(|pair| pair[1].worth() <= pair[0].worth()), "{choices:?}");
}

/// The run and the rest were timed; timing the run once more is the same watch at the same car.
#[test]
fn what_was_measured_once_tells_little_the_second_time() {
    let (job, trials) = small();
    let (both, run) = (trial(job, trials, "run-and-rest"), trial(job, trials, "run"));
    let mut plan = Planner::new(job, trials);
    let bits = |plan: &Planner<'_>| plan.choices().iter().find(|c| c.trial == run).map_or(0.0, |c| c.bits);
    let before = bits(&plan);
    plan.take(both, &trials.tests[both].told_by(&middle()), &[]);
    let after = bits(&plan);
    assert!(0.2 < before && after < 0.3 * before, "{before} bits, then {after}");
    assert!(!plan.choices().iter().any(|c| c.trial == both), "what is done is not chosen again");
}

/// The reference plan of this job: time the run (a minute's work), then the rest with the engine's hose clamped, then the rest
/// without. A technician would do just that, in this order or with the last two the other way round (common practice, no source).
#[test]
fn reg_the_plan_for_a_leaking_engine_valve() {
    let (job, trials) = small();
    let car = middle();
    let mut plan = Planner::new(job, trials);
    let mut names = Vec::new();
    while !plan.is_sure() && names.len() < 6 {
        let next = plan.next().expect("something tells something");
        plan.take(next.trial, &trials.tests[next.trial].told_by(&car), &[]);
        names.push(job.tests[trials.tests[next.trial].test].id.as_str());
    }
    assert_eq!(names, ["run", "rest-engine-clamped", "run-and-rest"]);
    let classes = plan.belief().classes();
    let best = (0..classes.len()).max_by(|a, b| classes[*a].total_cmp(&classes[*b])).unwrap();
    let unit = job.car.faults[usize::from(job.answer()[0].0)].unit;
    assert_eq!(trials.hypotheses.classes[best], assess::infer::hypotheses::Class::Unit(unit));
}

/// Cars drawn as the belief has them: the entropy that a test leaves in them is, on average, what was expected of it.
#[test]
fn inv_what_is_expected_comes_about_on_average() {
    /// Cars.
    const CARS: usize = 64;
    /// Their mean scatters by 0.1 bits (one bit's spread among 64 cars); the forecast is a model of the cars, not the cars.
    const TOLERANCE: f64 = 0.3;
    let (job, trials) = small();
    let start = Planner::new(job, trials);
    let masses: Vec<f64> = trials
        .hypotheses
        .list
        .iter()
        .scan(0, |cell, entry| {
            let cells = *cell..*cell + entry.cells();
            *cell = cells.end;
            Some(start.belief().mass_in(cells))
        })
        .collect();
    let mut worlds = Vec::new();
    for n in 0..CARS {
        let mut left = (n as f64 + 0.5) / CARS as f64 * masses.iter().sum::<f64>();
        let found = trials.hypotheses.list.iter().zip(&masses).find(|(_, mass)| {
            left -= **mass;
            left < 0.0
        });
        let hypothesis = found.expect("a share of the whole").0.hypothesis;
        // Other draws than those that the forecast is made of.
        let draw = 1000 + n;
        worlds.push(world(&job.car, &job.kit, hypothesis, draw, severity_of(draw)));
    }
    let cars = rows::arrive(job, &worlds);
    let both = trial(job, trials, "run-and-rest");
    let expected = start.choices().iter().find(|c| c.trial == both).map_or(0.0, |c| c.bits);
    let (mut told, mut weights) = (0.0, 0.0);
    for car in &cars {
        // Who does not complain so does not come in: one complaint in twenty is of such a car.
        let weight = if car.shows { 0.95 } else { 0.05 };
        let mut plan = start.clone();
        plan.take(both, &trials.tests[both].told_by(car), &[]);
        told += weight * (start.belief().entropy() - plan.belief().entropy());
        weights += weight;
    }
    let told = told / weights;
    println!("expected {expected} bits, came about {told}");
    assert!((told - expected).abs() < TOLERANCE, "expected {expected} bits, came about {told}");
}
