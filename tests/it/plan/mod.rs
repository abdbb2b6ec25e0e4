//! Tests of the cars as data and as work: played, shared, undone, told.

mod played;
mod shared;
mod told;

use std::sync::Arc;

use assess::pack::Library;
use assess::plan::cost::Rehearsal;
use assess::plan::test::{Step, Test};
use sim_core::Opened;
use sim_core::air::Day;
use sim_core::car::Car;
use sim_core::workshop::{Arrival, Setup};
use sim_core::world::World;

use crate::rig::library;

/// A car with its tests, on an ordinary day, with every instrument there is.
struct Bay {
    car: Arc<Car>,
    tests: Arc<Vec<Test>>,
    setup: Setup,
}

impl Bay {
    /// All cars.
    fn all() -> Vec<Self> {
        let library = library();
        let cars = library.cars().unwrap_or_else(|e| panic!("{e}"));
        cars.iter().map(|id| Self::of(&library, id)).collect()
    }

    fn of(library: &Library, id: &str) -> Self {
        let car = library.car(id).unwrap_or_else(|e| panic!("{e}"));
        let setup = Setup {
            car: Arc::clone(&car),
            kit: Arc::clone(library.kit()),
            spares: library.spares(&car).unwrap_or_else(|e| panic!("{e}")),
            day: Day::STANDARD,
            arrival: Arrival { driven: true, stood_min: 30, on_slope: false },
            card: Vec::new(),
        };
        let tests = library.tests(&car).unwrap_or_else(|e| panic!("{e}"));
        Self { car, tests, setup }
    }

    /// The car comes in: tolerances and instruments in the middle.
    fn with(&self, faults: &[(u16, f64)]) -> Rehearsal {
        let world = World::draw(&self.car, &self.setup.kit, faults, &mut || 0.5);
        Rehearsal::of(Opened::of(self.setup.clone(), world))
    }

    fn test(&self, id: &str) -> &Test {
        self.tests.iter().find(|t| t.id == id).unwrap_or_else(|| panic!("{} has no {id}", self.car.id))
    }
}

/// Lines of a test that note something.
fn notes(test: &Test) -> usize {
    test.lines().filter(|(_, line)| matches!(line.step, Step::Note { .. })).count()
}

/// What went wrong in a row of tests, in words.
fn troubles(rehearsal: &Rehearsal) -> Vec<String> {
    let line = |task: &usize| rehearsal.row().tasks()[*task].line.text();
    let refused = rehearsal.refused.iter();
    let refused = refused.filter(|(task, _)| !rehearsal.row().tasks()[*task].line.may_be_refused);
    let refused = refused.map(|(task, why)| format!("{} is refused: {why:?}", line(task)));
    let breaches =
        rehearsal.breaches.iter().map(|(task, what)| format!("{} is unsafe: {what:?}", line(task)));
    refused.chain(breaches).collect()
}
