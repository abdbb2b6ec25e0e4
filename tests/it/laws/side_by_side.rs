//! A circuit gets the same bits alone and beside others, whatever stands beside it.

use std::path::Path;
use std::sync::Arc;

use assess::pack::Library;
use assess::speed::marking::Marking;
use assess::speed::{Steps, Stretch, many_drives, run_abreast};
use sim_core::Opened;
use sim_core::action::Action;
use sim_core::air::Day;
use sim_core::car::Car;
use sim_core::circuit::Circuit;
use sim_core::circuit::Pace;
use sim_core::circuit::ensemble::{Ensemble, Errand, Registers, Width};
use sim_core::instrument::InstrumentCard;
use sim_core::units::Tick;
use sim_core::workshop::exchange::side_by_side;
use sim_core::workshop::{Arrival, Outcome, Setup};
use sim_core::world::World;

use super::dice::{Dice, Names};

fn library() -> Library {
    Library::open(&Path::new(env!("CARGO_MANIFEST_DIR")).join("..")).unwrap()
}

/// Everything that a step leaves behind, to the last bit.
fn left(circuit: &Circuit) -> (u64, Vec<u64>, Vec<u64>, usize, u64) {
    let l = circuit.balances();
    (
        circuit.digest(),
        circuit.state().iter().map(|y| y.to_bits()).collect(),
        [l.mass_out_kg, l.enthalpy_out_j, l.heat_in_j, l.work_out_j].map(f64::to_bits).to_vec(),
        circuit.events().len(),
        circuit.steps(),
    )
}

#[test]
fn inv_many_different_cars_driven_side_by_side_end_as_they_do_alone() {
    let drives = many_drives(&library(), 90).unwrap();
    let alone: Vec<_> = drives.iter().map(|d| left(&d.run(Steps::Chosen))).collect();
    let check_in = |which: &[usize], width: Option<Width>, registers: Registers| {
        let some: Vec<Stretch> = which.iter().map(|i| drives[*i].clone()).collect();
        for (i, circuit) in which.iter().zip(run_abreast(&some, width, registers)) {
            assert_eq!(
                alone[*i],
                left(&circuit),
                "car {i} among {} in lanes {width:?} of {registers:?} registers ended otherwise",
                which.len()
            );
        }
    };
    // Where a machine has no wider registers both are the same.
    let check = |which: &[usize], width| {
        check_in(which, width, Registers::Widest);
        check_in(which, width, Registers::Plain);
    };
    let all: Vec<usize> = (0..drives.len()).collect();
    check(&all, None);
    // In another order, in company of another number, alone in its lane.
    check(&(0..drives.len()).rev().step_by(7).collect::<Vec<_>>(), None);
    check(&[3], None);
    // In lanes that are too many, too few, or one only.
    check(&all, Some(Width::Eight));
    check(&all, Some(Width::Four));
    check(&all[..12], Some(Width::One));
}

#[test]
fn inv_an_errand_may_pause_anywhere_and_comes_back_when_something_switched() {
    // More than there are lanes: some wait.
    let drives = many_drives(&library(), 20).unwrap();
    let start = |i: usize| {
        let mut circuit = Box::new(drives[i].start().clone());
        circuit.inputs_mut().key_on = true;
        circuit
    };
    let far = |c: &Circuit| c.tick().plus(12_000);
    // What each should be: stepped alone to the same limit.
    let alone: Vec<_> = (0..drives.len())
        .map(|i| {
            let mut circuit = start(i);
            let to = far(&circuit);
            circuit.run_to(to, Pace::Timed);
            left(&circuit)
        })
        .collect();
    let mut ensemble = Ensemble::<Box<Circuit>>::default();
    let limits: Vec<Tick> = (0..drives.len()).map(|i| far(&start(i))).collect();
    let errand = |circuit: Box<Circuit>, i: usize| {
        let pause = circuit.tick().plus(300 + 170 * i as u64);
        Errand { to: limits[i], pace: Pace::Timed, pause, on_event: i.is_multiple_of(2), circuit }
    };
    for i in 0..drives.len() {
        ensemble.send(i, errand(start(i), i));
    }
    let mut pauses = 0;
    while let Some((i, circuit)) = ensemble.next_back() {
        if circuit.tick() < limits[i] {
            pauses += 1;
            ensemble.send(i, errand(circuit, i));
        } else {
            assert_eq!(alone[i], left(&circuit), "car {i}");
        }
    }
    assert!(drives.len() * 5 < pauses, "only {pauses} pauses: they were to be many");
}

#[test]
fn inv_an_attempt_under_many_hypotheses_side_by_side_ends_as_it_does_one_by_one() {
    let marking = Marking::of(&library()).unwrap();
    let many = 96;
    let one_by_one = marking.run_one_by_one(many);
    assert_eq!(one_by_one, marking.run_side_by_side(many));
    assert_eq!(one_by_one, marking.run_on_all_threads(many));
    let different: std::collections::BTreeSet<u64> = one_by_one.iter().copied().collect();
    assert_eq!(different.len(), many, "every world is another one");
}

/// A world drawn by the dice, with up to two faults of any severity.
fn drawn(car: &Car, kit: &[InstrumentCard], dice: &mut Dice) -> World {
    let faults: Vec<(u16, f64)> = (0..dice.below(3))
        .map(|_| {
            let i = dice.below(car.faults.len());
            let f = &car.faults[i];
            (i as u16, f.severity_min + (f.severity_max - f.severity_min) * dice.unit())
        })
        .collect();
    World::draw(car, kit, &faults, &mut || dice.unit())
}

#[test]
fn inv_whatever_is_done_to_any_car_leaves_the_same_bits_alone_and_side_by_side() {
    /// Cars of each kind, all side by side; what is done to them in all.
    const OF_EACH: u64 = 14;
    const ACTIONS: usize = 12;
    let library = library();
    let mut cars: Vec<(Setup, World)> = Vec::new();
    let mut to_do: Vec<Vec<Action>> = Vec::new();
    for (nth, id) in ["alder", "birch", "cedar"].into_iter().enumerate() {
        let car = library.car(id).unwrap();
        let (kit, spares) = (Arc::clone(library.kit()), library.spares(&car).unwrap());
        let names = Names::of(&car, &kit, &spares);
        for seed in 0..OF_EACH {
            let mut dice = Dice::new(1_000 * nth as u64 + seed);
            let world = drawn(&car, &kit, &mut dice);
            let setup = Setup {
                car: Arc::clone(&car),
                kit: Arc::clone(&kit),
                spares: Arc::clone(&spares),
                day: Day { altitude_m: 500.0 * (seed % 4) as f64, ..Day::STANDARD },
                arrival: Arrival {
                    driven: seed.is_multiple_of(2),
                    stood_min: 30 * (seed % 3) as u32,
                    on_slope: false,
                },
                card: Vec::new(),
            };
            cars.push((setup, world));
            let mut actions = names.preparation(&mut dice);
            actions.extend((0..ACTIONS).map(|_| names.action(&mut dice)));
            to_do.push(actions);
        }
    }
    let told = |workshop: &Opened, outcome: &Outcome| {
        let l = left(workshop.circuit());
        (workshop.digest(), l, outcome.end, outcome.reading.clone(), outcome.refused.is_some())
    };
    let mut alone = Vec::new();
    for ((setup, world), actions) in cars.iter().zip(&to_do) {
        let mut workshop = Opened::of(setup.clone(), world.clone());
        let after = |action| {
            let outcome = workshop.act(action);
            told(&workshop, &outcome)
        };
        alone.push(actions.iter().map(after).collect::<Vec<_>>());
    }
    let mut beside: Vec<Vec<_>> = vec![Vec::new(); cars.len()];
    side_by_side(
        beside.iter_mut().zip(cars.iter().zip(&to_do)),
        async |(all, ((setup, world), actions)), beside| {
            let mut workshop = Opened::of_beside(setup.clone(), world.clone(), beside).await;
            for action in actions {
                let outcome = workshop.act_beside(action, beside).await;
                all.push(told(&workshop, &outcome));
            }
        },
    );
    let mut done = 0;
    for (which, (alone, beside)) in alone.iter().zip(&beside).enumerate() {
        for (n, (alone, beside)) in alone.iter().zip(beside).enumerate() {
            assert_eq!(alone, beside, "car {which} after {:?}", &to_do[which][..=n]);
            done += usize::from(!alone.4);
        }
        assert_eq!(alone.len(), beside.len());
    }
    assert!(3 * OF_EACH as usize * 4 < done, "only {done} actions were done, the rest refused");
}
