//! Attackers and honest routes from `tests/attacks`: all of them are played, a few of them marked. The program `attack`
//! marks all.

use std::path::{Path, PathBuf};
use std::sync::{Arc, LazyLock};

use assess::marks::sheet::{Marks, NoteWorth, PartLine};
use assess::pack::Library;
use assess::pack::job::Job;
use tests::attacks::{self, Case, Kind};

static LIBRARY: LazyLock<Library> = LazyLock::new(|| Library::open(&root()).unwrap());

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..")
}

fn all() -> Vec<Case> {
    attacks::read(&root().join("tests/attacks")).unwrap()
}

fn job(case: &Case) -> Arc<Job> {
    Arc::new(LIBRARY.job(&case.job).unwrap())
}

/// The marks of somebody, who came out as he must.
fn marked(name: &str) -> Marks {
    let case = all().into_iter().find(|case| case.name == name).unwrap_or_else(|| panic!("no {name}"));
    let job = job(&case);
    let marked = attacks::mark(&job, &attacks::play(&job, &case).unwrap().attempt).unwrap();
    assert!(
        marked.is_as_wanted(case.kind),
        "{name}: {} {:?} ({})",
        marked.total,
        marked.failed,
        marked.parts
    );
    marked.marks
}

fn part<'a>(marks: &'a Marks, letter: &str) -> Option<&'a PartLine> {
    marks.parts.iter().find(|part| part.letter == letter)
}

#[test]
fn inv_every_attacker_and_every_honest_route_can_still_be_played() {
    let cases = all();
    let count = |kind| cases.iter().filter(|case| case.kind == kind).count();
    assert!(30 <= count(Kind::Attacker) && 30 <= count(Kind::Honest));
    for case in &cases {
        let played = attacks::play(&job(case), case).unwrap();
        if case.kind == Kind::Honest {
            let breaches: Vec<&str> = played.breaches().collect();
            // Who forgets the chocks once and is told is honest too.
            let slip = case.name == "new-forgets-chocks-once" && breaches == ["no_chocks_on_slope"];
            assert!(breaches.is_empty() || slip, "{}: {breaches:?}", case.name);
        }
    }
}

#[test]
fn inv_the_overwriter_has_no_evidence_left_and_is_told_why() {
    let marks = marked("overwriter");
    let e = part(&marks, "E").unwrap();
    assert!(e.value < 0.8, "{e:?}");
    let worths: Vec<_> = marks.evidence.readings.iter().map(|line| &line.worth).collect();
    assert_eq!(worths.iter().filter(|worth| ***worth == NoteWorth::StruckOut).count(), 4);
}

#[test]
fn inv_sound_parts_thrown_in_after_the_right_finding_fail_on_parts_alone() {
    let marks = marked("thrower");
    let failed: Vec<_> = marks.conditions.iter().filter(|c| !c.met).map(|c| c.asked.as_str()).collect();
    assert_eq!(failed, ["parts at least 0.5"]);
    let why = &part(&marks, "R").unwrap().why;
    assert!(why.contains("a sound part that was thrown in counts as"), "{why}");
}

#[test]
fn inv_ten_nights_take_the_total_under_the_cut_and_the_sheet_adds_up() {
    let marks = marked("night-sleeper");
    let time = part(&marks, "T").unwrap();
    assert!(time.points < -50.0 && time.why.contains("Hours of waiting: 120"), "{time:?}");
    let points: f64 = marks.parts.iter().map(|part| part.points).sum();
    assert!((points - marks.deducted - marks.total).abs() < 1e-9, "{points} - {}", marks.total);
}

#[test]
fn inv_honest_slips_and_other_routes_lose_nothing_by_the_rules_against_attacks() {
    for name in ["flat-misread-once", "bread-two-holds"] {
        let marks = marked(name);
        assert!(part(&marks, "T").is_none(), "{name}: in time");
        assert!(marks.deducted <= 0.0, "{name}: {}", marks.deducted);
        assert!(part(&marks, "D").unwrap().value >= 1.0, "{name}: the corrected line is filled");
    }
}
