//! A circuit gets the same bits alone and beside others, whatever stands beside it.

use std::path::Path;

use assess::pack::Library;
use assess::speed::marking::Marking;
use assess::speed::{Steps, Stretch, many_drives, run_abreast};
use sim_core::circuit::Circuit;
use sim_core::circuit::Pace;
use sim_core::circuit::ensemble::{Ensemble, Errand};
use sim_core::lanes::Four;
use sim_core::units::Tick;

fn library() -> Library {
    Library::open(&Path::new(env!("CARGO_MANIFEST_DIR")).join("..")).unwrap()
}

/// Everything that a step leaves behind, to the last bit.
fn left(circuit: &Circuit) -> (u64, Vec<u64>, Vec<u64>, usize, u64) {
    let l = circuit.ledgers();
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
    let check = |which: &[usize]| {
        let some: Vec<Stretch> = which.iter().map(|i| drives[*i].clone()).collect();
        for (i, circuit) in which.iter().zip(run_abreast::<Four>(&some)) {
            assert_eq!(alone[*i], left(&circuit), "car {i} among {} ended otherwise", which.len());
        }
    };
    check(&(0..drives.len()).collect::<Vec<_>>());
    // In another order, in company of another number, alone in its lane.
    check(&(0..drives.len()).rev().step_by(7).collect::<Vec<_>>());
    check(&[3]);
    // One lane is a lane too.
    let one = run_abreast::<f64>(&drives[..12]);
    for (i, circuit) in one.iter().enumerate() {
        assert_eq!(alone[i], left(circuit), "car {i} in the only lane");
    }
}

#[test]
fn inv_an_errand_may_pause_anywhere_and_comes_back_when_something_switched() {
    let drives = many_drives(&library(), 8).unwrap();
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
    let mut ensemble = Ensemble::<Box<Circuit>, Four>::default();
    let limits: Vec<Tick> = (0..drives.len()).map(|i| far(&start(i))).collect();
    let errand = |circuit: Box<Circuit>, i: usize| {
        let pause = circuit.tick().plus(300 + 170 * i as u64);
        Errand { to: limits[i], pace: Pace::Timed, pause, on_event: i % 2 == 0, circuit }
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
    assert!(8 * 5 < pauses, "only {pauses} pauses: they were to be many");
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
