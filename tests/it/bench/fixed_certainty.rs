//! A pack that says `certainty: 0.80`: nobody is asked how sure a finding is, and the sheet says who fixed it.

use std::path::Path;
use std::sync::Arc;

use assess::attempt::{Attempt, Seed};
use assess::marks;
use assess::pack::Library;
use assess::pack::job::Job;
use assess::play::{Begin, Session, script};
use sim_core::action::Action;

use super::{ends_with_code, pinhole_with, root};

const JOB: &str = "first-shift/flat-after-the-weekend";

/// A copy of the data whose pack fixes the certainty.
fn fixed_data() -> tempfile::TempDir {
    let data = super::bad_input::data();
    let pack = data.path().join("scenarios/first-shift/pack.ron");
    let text = std::fs::read_to_string(&pack).unwrap();
    std::fs::write(&pack, text.replacen("schema: 1,", "schema: 1, certainty: 0.80,", 1)).unwrap();
    data
}

/// Plays a script in a new attempt; what was said.
fn play(home: &Path, data: &Path, script: &str, code: i32) -> String {
    std::fs::write(home.join("s.script"), script).unwrap();
    drop(std::fs::remove_file(home.join("a.attempt")));
    let args = ["text", JOB, "--seed", "5eed", "--attempt", "a.attempt", "--script", "s.script"];
    ends_with_code(&pinhole_with(home, data).args(args).output().unwrap(), code)
}

#[test]
fn the_fixed_certainty_is_taken_and_said_and_another_is_refused() {
    let (home, data) = (tempfile::tempdir().unwrap(), fixed_data());
    let reference = root().join("scenarios/first-shift/reference/flat-after-the-weekend.script");
    let reference = std::fs::read_to_string(reference).unwrap();
    let stated = reference.lines().find(|line| line.starts_with("finding")).unwrap();
    assert!(stated.ends_with("sure 0.95"), "{stated}");

    // As the reference says it: another certainty than the school's.
    let text = play(home.path(), data.path(), &reference, 2);
    assert!(text.contains("the school fixes how sure a finding is, at 0.80: give it without sure"), "{text}");

    let silent = reference.replace(stated, stated.split(" sure").next().unwrap());
    let text = play(home.path(), data.path(), &silent, 0);
    let sheet = text[text.find("MARK SHEET").unwrap()..].split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(sheet.contains("the school has fixed at 0.80"), "{sheet}");
    assert!(!sheet.contains("reference attempt stops"), "{sheet}");
    let attempt = Attempt::read(&home.path().join("a.attempt")).unwrap();
    let given = attempt.steps.iter().find_map(|step| match &step.action {
        Action::Finding { certainty, .. } => Some(*certainty),
        _ => None,
    });
    assert_eq!(given, Some(0.80));
    // 2 r - r² of a right finding at 0.80, in the file as on the sheet.
    let v = &attempt.mark.unwrap().parts[0];
    assert!((v.points - 0.96 * 100.0 * 30.0 / 90.0).abs() < 1e-9, "{v:?}");

    // Not found can always be said.
    play(home.path(), data.path(), "card\nfinding unknown\n", 1);
    let attempt = Attempt::read(&home.path().join("a.attempt")).unwrap();
    assert!(
        matches!(attempt.steps.last().unwrap().action, Action::Finding { certainty, .. } if certainty <= 0.0)
    );
}

/// An attempt in which somebody stated another certainty all the same is marked with the school's.
#[test]
fn a_stated_certainty_is_worth_the_fixed_one() {
    let free = Library::open(&root()).unwrap().job(JOB).unwrap();
    assert_eq!(free.certainty, None);
    let mut session = Session::rehearse(Arc::new(free.clone()), &Begin::rehearsal(Seed(0x5eed)));
    script::play(&mut session, &free.reference.clone().unwrap(), |_, _, _, _| {}).unwrap();
    let attempt = session.into_attempt();
    let verdict = |job: &Job| {
        let marks = crate::told::sheet(marks::mark(&attempt, job).unwrap()).marks.unwrap();
        (marks.parts[0].value, marks.findings[0].certainty, marks.parts[0].why.clone())
    };
    let (value, certainty, why) = verdict(&free);
    assert!((value - (2.0 * 0.95 - 0.95 * 0.95)).abs() < 1e-12 && !why.contains("school"), "{value} {why}");
    assert!((certainty - 0.95).abs() < 1e-12);
    let mut fixed = free.clone();
    fixed.certainty = Some(0.60);
    let (value, certainty, why) = verdict(&fixed);
    assert!((value - (2.0 * 0.60 - 0.60 * 0.60)).abs() < 1e-12, "{value}");
    assert!((certainty - 0.60).abs() < 1e-12 && why.contains("the school has fixed at 0.60"), "{why}");
}
