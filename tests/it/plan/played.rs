//! Every test of every car, played in a sound car and in faulty ones.

use std::sync::Arc;

use assess::attempt::Seed;
use assess::plan::cost::Rehearsal;
use assess::plan::standing::Standing;
use assess::play::{Begin, Session, script};
use dice::Dice;
use sim_core::Opened;
use sim_core::observe::ShownValue;

use super::{Bay, notes, troubles};
use crate::rig::{library, world};

#[test]
fn every_test_is_safe_in_a_sound_car_notes_what_it_reads_and_leaves_the_car_as_it_was() {
    for bay in Bay::all() {
        let came_in = bay.with(&[]);
        assert!(25 <= bay.tests.len(), "{}: {} tests", bay.car.id, bay.tests.len());
        for test in bay.tests.iter() {
            let name = format!("{} {}", bay.car.id, test.id);
            let mut done = came_in.clone();
            done.then(test);
            done.end();
            assert_eq!(troubles(&done), [""; 0], "{name}");
            assert!(done.refused.is_empty(), "{name}: {:?}", done.refused);
            assert_eq!(Standing::of(&done.car().view()), Standing::as_it_came(), "{name}");
            assert_eq!(done.noted.len(), notes(test), "{name}");
            for noted in &done.noted {
                assert_ne!(noted.reading.shown, ShownValue::Blank, "{name}: {:?}", noted.reading.what);
                assert_ne!(noted.record_filled, Some(false), "{name}: {:?}", noted.reading.what);
            }
            let minutes = done.minutes();
            assert!(0.0 < minutes.attended && minutes.attended < 45.0, "{name}: {minutes:?}");
        }
    }
}

/// Faults that are always among those that are tried: no current, and a pump that never stops.
const HARD: [&str; 5] =
    ["battery_weak", "relay_welded", "control_wire_open", "pump_coupling", "booster_sticks"];

#[test]
fn no_test_is_refused_in_a_faulty_car_and_each_leaves_it_as_it_was() {
    let mut dice = Dice::new(dice::seed_or(0x9e57), 0);
    for bay in Bay::all() {
        let hard: Vec<usize> =
            (0..bay.car.faults.len()).filter(|f| HARD.contains(&bay.car.faults[*f].id.as_str())).collect();
        let drawn = [*dice.pick(&hard), dice.below(bay.car.faults.len())];
        for fault in drawn {
            let def = &bay.car.faults[fault];
            let severity = def.severity_min + (def.severity_max - def.severity_min) * dice.unit();
            let came_in = bay.with(&[(fault as u16, severity)]);
            for test in bay.tests.iter() {
                let name = format!("{} {} with {} {severity}", bay.car.id, test.id, def.id);
                let mut done = came_in.clone();
                done.then(test);
                done.end();
                for (task, why) in &done.refused {
                    let line = &done.row().tasks()[*task].line;
                    assert!(line.may_be_refused, "{name}: {} is refused: {why:?}", line.text());
                }
                assert_eq!(Standing::of(&done.car().view()), Standing::as_it_came(), "{name}");
            }
        }
    }
}

#[test]
fn a_test_as_a_script_of_the_text_bench_reads_the_same() {
    let library = library();
    for name in ["first-shift/hum-at-the-lights", "first-shift/before-the-bread-round"] {
        let job = Arc::new(library.job(name).unwrap_or_else(|e| panic!("{e}")));
        let begin = Begin::rehearsal(Seed(0x5eed));
        let hidden = world(Session::rehearse(Arc::clone(&job), &begin).attempt(), &job);
        let came_in = Rehearsal::of(Opened::of(job.setup(), hidden));
        assert!(30 <= job.tests_here().count(), "{name}");
        for test in job.tests_here() {
            let mut session = Session::rehearse(Arc::clone(&job), &begin);
            let played = script::play(&mut session, &test.script(), |_, _, _, _| {});
            played.unwrap_or_else(|e| panic!("{name} {}: {e}", test.id));
            let view = session.view();
            let mut done = came_in.clone();
            done.then(test);
            done.end();
            let noted: Vec<_> = view.notes.iter().map(|(id, ..)| *id).collect();
            let wanted: Vec<_> = done.noted.iter().map(|n| n.reading.id).collect();
            assert_eq!(noted, wanted, "{name} {}", test.id);
            assert_eq!(view.readings, done.car().view().readings, "{name} {}", test.id);
            assert_eq!(view.tick, done.car().tick(), "{name} {}", test.id);
        }
    }
}

#[test]
fn every_unit_with_a_fault_has_a_test_that_shows_it() {
    for bay in Bay::all() {
        let sound = bay.with(&[]);
        let shown = |came_in: &Rehearsal, test| {
            let mut done = came_in.clone();
            done.then(test);
            done.noted.iter().map(|n| n.reading.shown).collect::<Vec<_>>()
        };
        let of_sound: Vec<_> = bay.tests.iter().map(|test| shown(&sound, test)).collect();
        for (index, fault) in bay.car.faults.iter().enumerate() {
            let faulty = bay.with(&[(index as u16, fault.severity_max)]);
            let mut tests = bay.tests.iter().zip(&of_sound);
            let found = tests.any(|(test, sound)| {
                let now = shown(&faulty, test);
                now.len() != sound.len() || now.iter().zip(sound).any(|(a, b)| far(*a, *b))
            });
            assert!(found, "{}: no test shows {}", bay.car.id, fault.id);
        }
    }
}

/// Further apart than tolerances and instruments put two sound cars.
fn far(a: ShownValue, b: ShownValue) -> bool {
    match (a, b) {
        (ShownValue::Steps(a), ShownValue::Steps(b)) => {
            20 < a.abs_diff(b) && 3 * a.abs_diff(b) > b.unsigned_abs()
        }
        (a, b) => a != b,
    }
}
