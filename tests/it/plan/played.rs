//! Every test of every car, played.

use std::sync::Arc;

use assess::pack::Library;
use assess::plan::cost::Rehearsal;
use assess::plan::test::Test;
use sim_core::Opened;
use sim_core::air::Day;
use sim_core::car::Car;
use sim_core::workshop::{Arrival, Setup};
use sim_core::world::World;

use crate::rig::library;

/// A car on an ordinary day, with every instrument there is.
pub(super) fn setup(library: &Library, car: &Arc<Car>) -> Setup {
    Setup {
        car: Arc::clone(car),
        kit: Arc::clone(library.kit()),
        spares: library.spares(car).unwrap(),
        day: Day::STANDARD,
        arrival: Arrival { driven: true, stood_min: 30 },
        card: Vec::new(),
    }
}

fn brought_in(setup: &Setup, faults: &[(u16, f64)]) -> Rehearsal {
    let world = World::draw(&setup.car, &setup.kit, faults, &mut || 0.5);
    Rehearsal::of(Opened::of(setup.clone(), world))
}

#[test]
fn explore() {
    let library = library();
    for id in library.cars().unwrap() {
        let car = library.car(&id).unwrap();
        let tests = library.tests(&car).unwrap_or_else(|e| panic!("{e}"));
        let setup = setup(&library, &car);
        let came = brought_in(&setup, &[]);
        for test in tests.iter() {
            let now = std::time::Instant::now();
            let mut r = came.clone();
            r.then(test);
            r.end();
            let m = r.minutes();
            println!("{id} {:24} {:6.1} {:6.1}  {:?}", test.id, m.attended, m.unattended, now.elapsed());
            for (task, why) in &r.refused {
                println!("    REFUSED {}: {why:?}", r.row().tasks()[*task].line.text());
            }
            for (task, why) in &r.breaches {
                println!("    BREACH {}: {why:?}", r.row().tasks()[*task].line.text());
            }
            for n in &r.noted {
                println!("    {:?} -> {:?} {:?} {:?}", n.reading.what, n.reading.shown, n.predicted, n.record_filled);
            }
        }
    }
}
