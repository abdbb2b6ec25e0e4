//! The reference attempt of each shipped job, played in cars of other tolerances: safe, complete, and the
//! same again in replay.

use assess::attempt::Seed;
use assess::play::script;
use assess::play::{self, Begin, Session};

use super::*;

const SEEDS: [u128; 3] = [1, 0x5eed, u128::MAX];

#[test]
fn every_reference_is_safe_and_fills_the_record_whatever_the_tolerances() {
    for job in LIBRARY.check_all().expect("the shipped files are sound") {
        let job = Arc::new(job);
        let reference = job.reference.clone().expect("every job has a reference");
        for seed in SEEDS {
            let begin = Begin::rehearsal(Seed(seed));
            let mut s = Session::rehearse(Arc::clone(&job), &begin);
            let played = script::play(&mut s, &reference, |line, text, _, out| {
                assert_eq!(out.breaches, [], "{} line {line}: {text}", job.id);
                assert_ne!(out.read_right, Some(false), "{} line {line}: {text}", job.id);
            });
            played.unwrap_or_else(|e| panic!("{} seed {seed:x}: {e}", job.id));
            let record = s.workshop().record_now();
            assert_eq!(record.len(), job.car.record.len(), "{}: every line is filled", job.id);
            for entry in &record {
                assert!(entry.condition_met, "{} seed {seed:x}: {entry:?}", job.id);
                let line = job.car.record.iter().find(|r| r.id == entry.item).expect("a line");
                if line.kind.is_release() {
                    assert_eq!(entry.within_limit, Some(true), "{} seed {seed:x}: {entry:?}", job.id);
                }
            }
            let again = play::replay(s.attempt(), &job).expect("replays");
            assert_eq!(again.digest(), s.workshop().digest());
            let opened = Opened::after(again).expect("it was handed back");
            assert_eq!(opened.units_outside_limits(), [0; 0], "{}: mended", job.id);
        }
    }
}
