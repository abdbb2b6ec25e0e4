//! Planted flaws: the prover finds each, and what is sound passes. All of them in a pack: `tests/prover.sh`.

use std::sync::Arc;

use assess::pack::job::Symptom;
use assess::prove::confirming::only_confirms;
use assess::prove::{Flaw, Proof, prove};

use super::with_tools;
use crate::bench::bad_input::{copy_tree, data, edit};
use crate::bench::{pinhole_with, root};
use crate::rig::library;

#[test]
fn what_looks_at_the_complaint_alone_from_the_seat_only_confirms_it() {
    let job = library().job("first-shift/hum-at-the-lights").unwrap_or_else(|e| panic!("{e}"));
    let is = |symptom, id: &str| only_confirms(symptom, job.tests.iter().find(|test| test.id == id).unwrap());
    let short = Symptom::ShortRest { below_s: 100.0 };
    assert!(is(Symptom::HumsKeyOff, "hum-key-off") && !is(Symptom::HumsKeyOff, "run-and-rest"));
    assert!(is(short, "run-and-rest") && is(short, "hum-key-on") && !is(short, "reserve"));
    let long = Symptom::LongRun { above_s: 10.5 };
    assert!(is(long, "run") && !is(long, "run-and-rest"));
    let hard = Symptom::HardPedalAfterNight { above_kpa_gauge: -15.0 };
    assert!(is(hard, "reserve") && !is(hard, "run"));
    for test in ["rest-engine-clamped", "hold", "hiss-store", "pump-case", "relay-out", "current", "day"] {
        assert!(![Symptom::HumsKeyOff, short, hard].into_iter().any(|s| is(s, test)), "{test}");
    }
}

fn has(proof: &Proof, is: impl Fn(&Flaw) -> bool) -> bool {
    proof.flaws.iter().any(is)
}

/// A welded relay that alone of all faults hums with the key off: whoever hears it for himself, and guesses, is right.
/// With nothing but an ear and a watch, in a tenth of a minute, and without a reference attempt.
#[test]
fn a_job_that_is_settled_by_confirming_the_complaint_is_found_out() {
    let mut job = with_tools("first-shift/flat-after-the-weekend", &["watch"]);
    let car = Arc::make_mut(&mut job.car);
    let relay =
        car.faults.iter().position(|fault| fault.id == "relay_welded").expect("it is in the catalogue");
    // Everything that could hum but the relay is gone.
    let keep = |id: &str| !["key_sticks", "socket_bridged", "socket_slack"].contains(&id);
    assert!(keep(&car.faults[relay].id));
    car.faults.retain(|fault| keep(&fault.id));
    job.reference = None;
    job.time_limit_min = 0.1;
    let proof = prove(&job, 2, &mut |_| true).expect("nobody stops it");
    let confirming =
        |flaw: &Flaw| matches!(flaw, Flaw::GuessableByConfirming { evidence, .. } if 0.8 <= *evidence);
    assert!(has(&proof, confirming), "{:?}", proof.flaws);
    assert!(has(&proof, |flaw| *flaw == Flaw::NoScript), "{:?}", proof.flaws);
    assert!(has(&proof, |flaw| matches!(flaw, Flaw::TooLong { .. })), "{:?}", proof.flaws);
    assert_eq!(proof.truth, ["relay"]);
}

/// A complaint that the hidden fault does not cause, and no spare for it.
#[test]
fn a_complaint_that_is_not_caused_is_found_out() {
    let mut job = with_tools("first-shift/hum-at-the-lights", &[]);
    job.symptom = Symptom::HumsKeyOff;
    Arc::make_mut(&mut job.spares).clear();
    job.reference = None;
    let proof = prove(&job, 2, &mut |_| true).expect("nobody stops it");
    assert!(
        has(&proof, |flaw| matches!(flaw, Flaw::SymptomNotCaused { shows } if *shows < 0.1)),
        "{:?}",
        proof.flaws
    );
    assert!(
        has(&proof, |flaw| matches!(flaw, Flaw::NoSpare { unit } if unit == "valve_m")),
        "{:?}",
        proof.flaws
    );
    assert!(has(&proof, |flaw| matches!(flaw, Flaw::NotSolvable { .. })), "{:?}", proof.flaws);
}

/// Whoever stops it gets nothing, and nothing is kept.
#[test]
fn a_prover_that_is_stopped_says_so() {
    let job = with_tools("first-shift/hum-at-the-lights", &[]);
    assert_eq!(prove(&job, 2, &mut |_| false), None);
}

/// What is wrong with each job of the test pack.
const PLANTED: [(&str, &str); 9] = [
    ("guessed-from-the-card", "the card alone makes the fault"),
    ("confirmed-and-guessed", "only sees for himself what the customer said"),
    ("without-a-gauge", "the fault is found in only"),
    ("in-no-time", "the job gives 5: give more time"),
    ("another-complaint", "raise the complaint: change the complaint's numbers"),
    ("no-spare", "there is neither a spare nor a way to mend it"),
    ("no-script", "there is no reference attempt"),
    ("script-stops", "the reference attempt stops"),
    ("script-boasts", "the reference attempt says it is 95 % sure"),
];

#[test]
#[ignore = "ten minutes: tests/prover.sh"]
fn the_prover_finds_every_planted_flaw_of_a_pack() {
    let (data, home) = (data(), tempfile::tempdir().unwrap());
    copy_tree(&root().join("tests/prover/planted"), &data.path().join("scenarios/planted"));
    // A welded relay is what nearly every such car has: the card alone gives it away.
    edit(
        data.path(),
        "assets/vehicles/alder.ron",
        "param: \"relay.weld_s\", severity_min: 5.0, severity_max: 200.0, commonness: 3.0",
        "param: \"relay.weld_s\", severity_min: 5.0, severity_max: 200.0, commonness: 30.0",
    );
    let output =
        pinhole_with(home.path(), data.path()).args(["prove", "planted", "--cars", "5"]).output().unwrap();
    let said = String::from_utf8(output.stdout).unwrap().split_whitespace().collect::<Vec<_>>().join(" ");
    println!("{said}");
    for (job, wanted) in PLANTED {
        let of = said
            .split(&format!("planted/{job}: "))
            .nth(1)
            .unwrap_or_else(|| panic!("{job} is not in {said}"));
        let of = of.split(" planted/").next().unwrap();
        println!("{job}: {}", if of.contains(wanted) { "found" } else { "NOT FOUND" });
        assert!(of.contains(wanted), "{job}: {wanted:?} is not in {of}");
    }
    assert_eq!(output.status.code(), Some(1));
}
