//! The attempt file by itself: torn lines, changed bytes, locks, full disks.

use std::path::Path;
use std::sync::Arc;

use assess::attempt::clock::{By, Clock, Opening};
use assess::attempt::{Attempt, AttemptError, Seed, Writer};
use assess::pack::Library;
use assess::pack::job::Job;
use assess::play::script;
use assess::play::{Begin, Session, SessionError};

use dice::Dice;

use super::root;

const SCRIPT: &str =
    "card\nchocks on\nread barometer\nnote shown for day\nkey on\nwait until pump stops 60\nhum\nnote\n";

fn job() -> Arc<Job> {
    Arc::new(Library::open(&root()).unwrap().job("first-shift/hum-at-the-lights").unwrap())
}

fn begin() -> Begin {
    Begin::rehearsal(Seed(0x5eed))
}

/// Makes a small attempt.
fn make(path: &Path) -> Attempt {
    let mut session = Session::start(job(), &begin(), path).unwrap();
    script::play(&mut session, SCRIPT, |_, _, _, _| {}).unwrap();
    session.into_attempt()
}

fn resume(path: &Path) -> Result<(Session, bool), SessionError> {
    let opening = Opening { by: By::Script, clock: Clock::standing(0) };
    Session::resume(path, &opening, |_| Ok(job()))
}

#[test]
fn inv_a_torn_file_opens_with_every_whole_line() {
    let home = tempfile::tempdir().unwrap();
    let path = home.path().join("a.attempt");
    let attempt = make(&path);
    assert_eq!(Attempt::read(&path).unwrap(), attempt);
    let bytes = std::fs::read(&path).unwrap();
    let ends: Vec<usize> = (0..bytes.len()).filter(|i| bytes[*i] == b'\n').collect();
    // Header and first sitting appear together or not at all.
    let header_end = ends[1] + 1;
    let mut dice = Dice::new(dice::seed(), 1);
    for _ in 0..300 {
        let cut = header_end + ((bytes.len() - header_end) as f64 * dice.unit()) as usize;
        let torn = home.path().join("torn.attempt");
        std::fs::write(&torn, &bytes[..cut]).unwrap();
        let whole_lines = bytes[..cut].iter().filter(|b| **b == b'\n').count() - 2;
        let read = Attempt::read(&torn).unwrap();
        assert_eq!(read.steps, attempt.steps[..whole_lines], "cut at byte {cut}");
    }
}

#[test]
fn a_torn_file_is_carried_on_and_becomes_whole_again() {
    let home = tempfile::tempdir().unwrap();
    let path = home.path().join("a.attempt");
    let attempt = make(&path);
    let bytes = std::fs::read(&path).unwrap();
    std::fs::write(&path, &bytes[..bytes.len() - 10]).unwrap();
    let (mut session, torn) = resume(&path).unwrap();
    assert!(torn);
    let last = &attempt.steps.last().unwrap().action;
    session.act(last).unwrap();
    drop(session);
    let read = Attempt::read(&path).unwrap();
    assert_eq!(read.steps, attempt.steps, "the same action gives the same line");
    assert_eq!(read.sittings.len(), 2, "and it was opened twice");
    assert!(!resume(&path).unwrap().1, "nothing is torn any more");
}

#[test]
fn inv_a_changed_byte_is_noticed() {
    let home = tempfile::tempdir().unwrap();
    let path = home.path().join("a.attempt");
    make(&path);
    let bytes = std::fs::read(&path).unwrap();
    let mut dice = Dice::new(dice::seed(), 1);
    for _ in 0..300 {
        let at = (bytes.len() as f64 * dice.unit()) as usize;
        let mut changed = bytes.clone();
        changed[at] ^= 1;
        std::fs::write(&path, &changed).unwrap();
        match Attempt::read(&path) {
            Err(error) => {
                let text = error.to_string();
                assert!(text.contains("line"), "{text}");
            }
            // Only the last line end can change unnoticed: then the last line counts as torn.
            Ok(attempt) => assert!(at == bytes.len() - 1, "byte {at}: {attempt:?}"),
        }
    }
}

#[test]
fn a_file_in_use_is_refused_and_an_existing_one_is_kept() {
    let home = tempfile::tempdir().unwrap();
    let path = home.path().join("a.attempt");
    let session = Session::start(job(), &begin(), &path).unwrap();
    assert!(matches!(Writer::open(&path), Err(AttemptError::InUse { .. })));
    drop(session);
    let before = std::fs::read(&path).unwrap();
    let again = Session::start(job(), &begin(), &path);
    assert!(matches!(again, Err(SessionError::File(AttemptError::Exists { .. }))), "{again:?}");
    assert_eq!(std::fs::read(&path).unwrap(), before);
    assert!(resume(&path).is_ok());
    let left: Vec<_> = std::fs::read_dir(home.path()).unwrap().collect();
    assert_eq!(left.len(), 1, "no temporary file is left: {left:?}");
}

#[test]
fn another_seed_or_another_job_does_not_replay() {
    let home = tempfile::tempdir().unwrap();
    let path = home.path().join("a.attempt");
    let mut attempt = make(&path);
    attempt.header.seed = Seed(1);
    let error = assess::play::replay(&attempt, &job()).unwrap_err();
    assert!(matches!(error, SessionError::Differs(_)), "{error}");
    let other = Library::open(&root()).unwrap().job("first-shift/hard-first-press").unwrap();
    let error = assess::play::replay(&attempt, &other).unwrap_err();
    assert!(matches!(error, SessionError::OtherJob { .. }), "{error}");
}
