//! Laws of the hint: it is the planner's choice, knows nothing that the trainee does not, and counts.

use std::path::Path;
use std::sync::Arc;

use assess::attempt::clock::{By, Opening};
use assess::attempt::hint_line::Advice;
use assess::attempt::{Attempt, Seed};
use assess::locale::Naming;
use assess::marks::mark;
use assess::marks::score::HINT_POINTS;
use assess::pack::job::Job;
use assess::plan::cost::Rehearsal;
use assess::planner::Planner;
use assess::planner::hint::advice;
use assess::play::{Begin, NoHint, Session, SessionError, script};
use sim_core::action::Action;

use super::small;

const SEED: Seed = Seed(0x5eed);

fn begun(job: &Job) -> Session {
    Session::rehearse(Arc::new(job.clone()), &Begin::rehearsal(SEED))
}

/// Does tests of the car's list at the attempt's own car.
fn with_tests(job: &Job, tests: &[&str]) -> Session {
    let mut work = Rehearsal::sound(job.setup());
    for id in tests {
        work.then(job.tests.iter().find(|test| test.id == *id).unwrap_or_else(|| panic!("no {id}")));
    }
    let mut session = begun(job);
    for done in &work.deeds {
        let action = match &done.action {
            // What this car shows is written, not what a sound one does.
            Action::Note { reading, record, .. } => {
                let shown = session.view().readings.into_iter().find(|shown| shown.id == *reading).unwrap();
                let written = session.written_as_shown(&shown);
                Action::Note { reading: *reading, written, record: record.clone() }
            }
            action => action.clone(),
        };
        session.act(&action).unwrap_or_else(|e| panic!("{e}"));
    }
    session
}

fn advised(session: &Session) -> Advice {
    advice(session.attempt(), session.job(), |_, _| true).expect("it replays").expect("nobody stops it")
}

#[test]
fn inv_a_hint_is_the_planners_choice_and_knows_only_what_was_noted() {
    let (job, trials) = small();
    let id = |trial: usize| job.tests[trials.tests[trial].test].id.clone();
    let first = Planner::new(job, trials).next().expect("something tells something");
    assert_eq!(advised(&begun(job)), Advice::Test(id(first.trial)));
    // Nothing noted: whatever is hidden, it is the same.
    let mut other = job.clone();
    let hidden = job.car.faults.iter().position(|fault| fault.id == "socket_slack").expect("it is known");
    other.set_answer(vec![(hidden as u16, job.car.faults[hidden].severity_max)]);
    assert_eq!(advised(&begun(&other)), Advice::Test(id(first.trial)));
    // What was done is done: the run and the rest are timed, the clamp is next.
    let later = advised(&with_tests(job, &["run", "run-and-rest"]));
    assert_eq!(later, Advice::Test("rest-engine-clamped".to_owned()));
    // It can be stopped.
    assert_eq!(advice(begun(job).attempt(), job, |_, _| false).expect("it replays"), None);
}

#[test]
fn a_hint_that_can_do_no_more_says_so() {
    let (job, _) = small();
    let done = with_tests(job, &["run", "run-and-rest", "rest-engine-clamped"]);
    assert_eq!(advised(&done), Advice::Enough);
}

fn resumed(path: &Path, job: &Arc<Job>) -> Session {
    Session::resume::<SessionError>(path, &Opening::now(By::Hand), |_| Ok(Arc::clone(job))).unwrap().0
}

/// Three points each, in the file, in the chain, and no more than the pack gives.
#[test]
fn inv_hints_are_written_down_counted_and_limited() {
    /// Sums of points.
    const ROUNDING: f64 = 1e-9;
    let home = tempfile::tempdir().unwrap();
    let job = crate::rig::library().job("first-shift/flat-after-the-weekend").map(Arc::new).unwrap();
    let play = |path: &Path, hints: usize| {
        let mut session = Session::start(Arc::clone(&job), &Begin::rehearsal(SEED), path).unwrap();
        for _ in 0..hints {
            session.hint(Advice::Test("relay-out".to_owned())).unwrap();
        }
        script::play(&mut session, job.reference.as_deref().unwrap(), |_, _, _, _| {}).unwrap();
    };
    let (with, without) = (home.path().join("with.attempt"), home.path().join("without.attempt"));
    play(&with, 2);
    play(&without, 0);
    let sheet = |path: &Path| {
        let attempt = Attempt::read(path).unwrap();
        mark(&attempt, &job).unwrap().sheet(&crate::told::english(), Naming::Typed).marks.unwrap()
    };
    let (asked, alone) = (sheet(&with), sheet(&without));
    assert!(
        (alone.total - asked.total - 2.0 * HINT_POINTS).abs() < ROUNDING,
        "{} {}",
        alone.total,
        asked.total
    );
    let line = asked.parts.iter().find(|part| part.letter == "H").expect("it is told");
    assert!((line.points + 2.0 * HINT_POINTS).abs() < ROUNDING && line.why.contains("relay"), "{line:?}");
    assert!(!alone.parts.iter().any(|part| part.letter == "H"));
    // Another word in the file is an altered file.
    let text = std::fs::read_to_string(&with).unwrap().replacen("\"relay-out\"", "\"meter-run\"", 1);
    std::fs::write(&with, text).unwrap();
    assert!(Attempt::read(&with).unwrap_err().to_string().contains("changed"));
}

#[test]
fn a_pack_gives_so_many_hints_and_none_after_a_repair() {
    let home = tempfile::tempdir().unwrap();
    let path = home.path().join("a.attempt");
    let job = crate::rig::library().job("first-shift/flat-after-the-weekend").map(Arc::new).unwrap();
    let mut session = Session::start(Arc::clone(&job), &Begin::rehearsal(SEED), &path).unwrap();
    assert_eq!(session.hints_left(), 3, "what a pack gives that does not say");
    session.hint(Advice::Nothing).unwrap();
    session.hint(Advice::Enough).unwrap();
    drop(session);
    // Carried on, they are still counted.
    let mut session = resumed(&path, &job);
    assert_eq!(session.hints_left(), 1);
    // Nothing was noted since: it stands, and need not be asked for again.
    assert_eq!(session.standing_hint(), Some(&Advice::Enough));
    script::play(&mut session, "hum\nnote\n", |_, _, _, _| {}).unwrap();
    assert_eq!(session.standing_hint(), None);
    session.hint(Advice::Nothing).unwrap();
    let refused = |session: &mut Session| match session.hint(Advice::Nothing) {
        Err(SessionError::NoHint(why)) => why,
        other => panic!("{other:?}"),
    };
    assert_eq!(refused(&mut session), NoHint::AllAsked { given: 3 });
    assert_eq!(session.attempt().hints.len(), 3);
    let mut none = (*job).clone();
    none.hints = 0;
    assert_eq!(refused(&mut begun(&none)), NoHint::NoneGiven);
    let mut repaired = begun(&job);
    script::play(&mut repaired, "swap relay with relay_new\n", |_, _, _, _| {}).unwrap();
    assert_eq!(refused(&mut repaired), NoHint::Repaired);
}
