//! Which faults a single test of a car tells apart: the tests are done in cars of each fault, and what they showed is
//! held against each other. No belief is asked: this is about the tests.

use std::fmt::Write as _;

use anyhow::Context as _;
use assess::infer::hypotheses::severity;
use assess::pack::Library;
use assess::plan::cost::Rehearsal;
use assess::plan::test::Test;
use dice::Dice;
use sim_core::Opened;
use sim_core::air::Day;
use sim_core::car::Car;
use sim_core::observe::ShownValue;
use sim_core::workshop::{Arrival, Setup};
use sim_core::world::World;

/// Where in its range a severity lies at which a fault is tried.
const SEVERITIES: [f64; 3] = [0.0, 0.5, 1.0];

/// Lowest and highest of what each note of a test showed.
type Shown = Vec<(f64, f64)>;

/// Something that may be wrong, as the tests show it: per test, at each severity.
struct Seen {
    name: String,
    /// Repair unit; `None`: nothing is wrong.
    unit: Option<u16>,
    at: Vec<Vec<Shown>>,
}

/// Prints which faults of `car` no single test tells apart. `draws` cars are drawn of each.
///
/// # Errors
/// No such car, or a file of it is wrong.
pub(crate) fn of(library: &Library, car: &str, draws: usize, seed: u64) -> anyhow::Result<String> {
    let car = library.car(car)?;
    let tests = library.tests(&car)?;
    let setup = Setup {
        car: std::sync::Arc::clone(&car),
        kit: std::sync::Arc::clone(library.kit()),
        spares: library.spares(&car)?,
        day: Day::STANDARD,
        arrival: Arrival { driven: true, stood_min: 30, on_slope: false },
        card: Vec::new(),
    };
    let mut dice = Dice::of(seed);
    let mut seen = vec![Seen {
        name: "nothing wrong".to_owned(),
        unit: None,
        at: vec![shown(&setup, &tests, &[], draws, &mut dice)],
    }];
    for (index, fault) in car.faults.iter().enumerate() {
        let at = SEVERITIES.map(|share| {
            let severity = severity(fault.severity_min, fault.severity_max, share);
            shown(&setup, &tests, &[(index as u16, severity)], draws, &mut dice)
        });
        seen.push(Seen { name: fault.id.clone(), unit: Some(fault.unit), at: at.into() });
    }
    table(&car, &tests, &seen).context("a table")
}

/// What every test shows in `draws` cars.
fn shown(setup: &Setup, tests: &[Test], faults: &[(u16, f64)], draws: usize, dice: &mut Dice) -> Vec<Shown> {
    let mut all: Vec<Shown> = vec![Vec::new(); tests.len()];
    for _ in 0..draws {
        let world = World::draw(&setup.car, &setup.kit, faults, &mut || dice.unit());
        let came_in = Rehearsal::of(Opened::of(setup.clone(), world));
        for (test, all) in tests.iter().zip(&mut all) {
            let mut rehearsal = came_in.clone();
            rehearsal.then(test);
            for (n, noted) in rehearsal.noted.iter().enumerate() {
                let value = place(noted.reading.shown);
                match all.get_mut(n) {
                    Some((low, high)) => (*low, *high) = (low.min(value), high.max(value)),
                    None => all.push((value, value)),
                }
            }
        }
    }
    all
}

/// What was shown on one line: numbers and levels by their own, what is none far outside.
fn place(shown: ShownValue) -> f64 {
    match shown {
        ShownValue::Steps(n) => n as f64,
        ShownValue::Level(level) => f64::from(level),
        ShownValue::Off(false) => -1e12,
        ShownValue::Off(true) => 1e12,
        ShownValue::Blank => 2e12,
    }
}

/// Whether a note of the test shows something else in all cars of one kind than in all of the other; by two steps of the
/// scale at least, where it has steps.
fn tells(a: &Shown, b: &Shown) -> bool {
    a.len() != b.len() || a.iter().zip(b).any(|(a, b)| a.1 < b.0 || b.1 < a.0)
}

fn table(car: &Car, tests: &[Test], seen: &[Seen]) -> anyhow::Result<String> {
    let mut out = String::new();
    let unit = |seen: &Seen| seen.unit.map_or("-", |unit| car.units[usize::from(unit)].id.as_str());
    // Indices of the tests that tell `a` at one severity from `b` at any.
    let telling = |a: &Seen, level: usize, b: &Seen| -> Vec<usize> {
        let from_all = |t: &usize| b.at.iter().all(|b| tells(&a.at[level][*t], &b[*t]));
        (0..tests.len()).filter(from_all).collect()
    };
    writeln!(out, "{}: {} tests, {} faults\n", car.id, tests.len(), seen.len() - 1)?;
    let mut useful = vec![false; tests.len()];
    for (level, share) in SEVERITIES.iter().enumerate() {
        writeln!(out, "at {:.0} % of the range of severity:", 100.0 * share)?;
        for a in seen.iter().filter(|seen| seen.unit.is_some()) {
            let sound = telling(a, level, &seen[0]);
            sound.iter().for_each(|t| useful[*t] = true);
            let alike: Vec<&str> = seen
                .iter()
                .skip(1)
                .filter(|b| b.unit != a.unit && telling(a, level, b).is_empty())
                .map(unit)
                .collect();
            let mut units = alike.clone();
            units.sort_unstable();
            units.dedup();
            let alike = if units.is_empty() {
                String::new()
            } else {
                format!("; not told from {}", units.join(", "))
            };
            writeln!(
                out,
                "  {:<22} {:<11} {:>2} tests tell it from a sound car{alike}",
                a.name,
                unit(a),
                sound.len()
            )?;
        }
    }
    let idle: Vec<&str> =
        tests.iter().zip(&useful).filter(|(_, useful)| !**useful).map(|(test, _)| test.id.as_str()).collect();
    writeln!(out, "\ntests that tell no fault from a sound car: {}", idle.join(", "))?;
    Ok(out)
}
