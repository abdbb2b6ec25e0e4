//! Whole attempts through the command line: the four jobs done competently, and three ways to fail.

use std::path::Path;

use super::{ends_with_code, pinhole, root};

/// Seed of the worlds of these tests; any other must do as well.
const SEED: &str = "5eed";

/// Plays a script, checks the exit code, replays, marks twice, and gives back the marks.
fn attempt(job: &str, script: &Path, code: i32) -> serde_json::Value {
    let home = tempfile::tempdir().unwrap();
    let file = home.path().join("a.attempt");
    let output = pinhole(home.path())
        .args(["text", job, "--seed", SEED, "--script"])
        .arg(script)
        .arg("--attempt")
        .arg(&file)
        .output()
        .unwrap();
    ends_with_code(&output, code);
    assert!(file.with_extension("html").is_file(), "the mark sheet lies beside the attempt");

    let replay = pinhole(home.path()).arg("replay").arg(&file).output().unwrap();
    let text = ends_with_code(&replay, 0);
    assert!(text.contains("bit for bit"), "{text}");

    let json = home.path().join("mark.json");
    let marked = pinhole(home.path()).arg("mark").arg(&file).arg("--json").arg(&json).output().unwrap();
    ends_with_code(&marked, code);
    serde_json::from_slice(&std::fs::read(&json).unwrap()).unwrap()
}

fn reference(job: &str) -> serde_json::Value {
    let script = root().join(format!("scenarios/first-shift/reference/{job}.script"));
    attempt(&format!("first-shift/{job}"), &script, 0)
}

fn failed(script: &str) -> serde_json::Value {
    attempt("first-shift/hum-at-the-lights", &root().join(format!("tests/scripts/{script}.script")), 1)
}

fn part(marks: &serde_json::Value, letter: &str) -> f64 {
    let parts = marks["marks"]["parts"].as_array().unwrap();
    parts.iter().find(|p| p["letter"] == letter).unwrap()["value"].as_f64().unwrap()
}

fn is_competent(marks: &serde_json::Value) -> bool {
    marks["marks"]["competent"].as_bool().unwrap()
}

#[test]
fn hum_at_the_lights_is_done_competently() {
    assert!(is_competent(&reference("hum-at-the-lights")));
}

#[test]
fn flat_after_the_weekend_is_done_competently() {
    assert!(is_competent(&reference("flat-after-the-weekend")));
}

#[test]
fn hard_first_press_is_done_competently() {
    assert!(is_competent(&reference("hard-first-press")));
}

#[test]
fn new_in_the_mountains_is_done_competently() {
    assert!(is_competent(&reference("new-in-the-mountains")));
}

#[test]
fn a_lucky_guess_is_no_proof() {
    let marks = failed("guess");
    assert!(!is_competent(&marks));
    assert!(0.9 < part(&marks, "V"), "the part was right and said surely: {marks}");
    assert!(part(&marks, "E") < 0.8, "but no reading entitled anyone to it: {marks}");
}

#[test]
fn swapping_part_after_part_does_not_pass() {
    let marks = failed("swapper");
    assert!(!is_competent(&marks));
    assert!(part(&marks, "R") < 0.5, "sound parts were thrown away: {marks}");
}

#[test]
fn a_car_handed_back_without_release_checks_does_not_pass() {
    let marks = failed("no-release");
    assert!(!is_competent(&marks));
    assert!(0.9 < part(&marks, "V") && 0.8 <= part(&marks, "E"), "the fault was found and proved: {marks}");
    assert!(part(&marks, "Q") < 0.8, "{marks}");
}
