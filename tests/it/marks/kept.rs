//! The mark as the last line of the attempt's file.

use std::path::Path;

use assess::attempt::clock::{By, Opening};
use assess::attempt::mark_line::MarkLine;
use assess::attempt::marked::{Kept, keep_in};
use assess::attempt::{Attempt, AttemptError, Seed};
use assess::play::script;
use assess::play::{self, Begin, Session};

use super::attempts::{job, sheet};

/// The attempt that [`sheet`] marks, in a file; still open.
fn play(path: &Path) -> Session {
    let begin = Begin::rehearsal(Seed(0x5eed));
    let mut session = Session::start(job(), &begin, path).unwrap();
    let text = job().reference.clone().unwrap();
    script::play(&mut session, &text, |_, _, _, _| {}).unwrap();
    session
}

/// A file with its mark, its bytes, and where the line of the mark begins.
fn marked(home: &tempfile::TempDir) -> (std::path::PathBuf, Vec<u8>, usize) {
    let path = home.path().join("a.attempt");
    let mut session = play(&path);
    let before = std::fs::read(&path).unwrap();
    assert_eq!(session.keep_mark(sheet()).unwrap(), Some(Kept::Written));
    drop(session);
    let bytes = std::fs::read(&path).unwrap();
    assert_eq!(&bytes[..before.len()], before);
    (path, bytes, before.len())
}

#[test]
fn inv_a_mark_is_written_once_and_changes_nothing_else() {
    let home = tempfile::tempdir().unwrap();
    let (path, bytes, at) = marked(&home);
    let line = std::str::from_utf8(&bytes[at..]).unwrap();
    assert!(line.starts_with("{\"mark\":{\"scheme\":\"score/2\"") && line.lines().count() == 1, "{line}");
    let attempt = Attempt::read(&path).unwrap();
    assert_eq!(attempt.mark, MarkLine::of(sheet()));
    play::replay(&attempt, &job()).unwrap();
    // Again, from outside and by carrying on.
    assert_eq!(keep_in(&path, &attempt, sheet()).unwrap(), Some(Kept::Same));
    let (mut session, torn) =
        Session::resume::<play::SessionError>(&path, &Opening::now(By::Hand), |_| Ok(job())).unwrap();
    assert!(!torn);
    assert_eq!(session.keep_mark(sheet()).unwrap(), Some(Kept::Same));
    drop(session);
    // By someone who read the file before it was marked.
    let unmarked = Attempt { mark: None, ..attempt };
    assert_eq!(keep_in(&path, &unmarked, sheet()).unwrap(), Some(Kept::Same));
    assert_eq!(std::fs::read(&path).unwrap(), bytes);
}

#[test]
fn inv_a_torn_mark_is_dropped_and_written_again_to_the_same_bytes() {
    let home = tempfile::tempdir().unwrap();
    let (path, bytes, at) = marked(&home);
    let whole = Attempt::read(&path).unwrap();
    for cut in (at..bytes.len()).step_by(11).chain([bytes.len() - 1]) {
        std::fs::write(&path, &bytes[..cut]).unwrap();
        let attempt = Attempt::read(&path).unwrap();
        assert_eq!(attempt.mark, None, "cut at byte {cut}");
        assert_eq!(attempt.steps, whole.steps, "cut at byte {cut}");
        assert_eq!(keep_in(&path, &attempt, sheet()).unwrap(), Some(Kept::Written));
        assert_eq!(std::fs::read(&path).unwrap(), bytes, "cut at byte {cut}");
    }
}

#[test]
fn another_mark_stays_and_is_told() {
    let home = tempfile::tempdir().unwrap();
    let (path, bytes, _) = marked(&home);
    let attempt = Attempt::read(&path).unwrap();
    let mut better = sheet().clone();
    better.marks.as_mut().unwrap().total -= 30.0;
    let kept = keep_in(&path, &attempt, &better).unwrap().unwrap();
    let told = kept.notice().expect("it is told").to_string();
    assert!(matches!(kept, Kept::Differs { .. }) && told.contains("altered"), "{told}");
    let mut newer = sheet().clone();
    newer.engine = "9.9.9".to_owned();
    let mut older = attempt.clone();
    older.mark.as_mut().unwrap().engine = "0.0.9".to_owned();
    let told = keep_in(&path, &older, &newer).unwrap().unwrap().notice().expect("it is told").to_string();
    assert!(told.contains("0.0.9") && !told.contains("altered"), "{told}");
    assert_eq!(std::fs::read(&path).unwrap(), bytes);
}

#[test]
fn a_file_in_use_or_changed_is_left_alone() {
    let home = tempfile::tempdir().unwrap();
    let path = home.path().join("a.attempt");
    let session = play(&path);
    let attempt = session.attempt().clone();
    let before = std::fs::read(&path).unwrap();
    assert!(matches!(keep_in(&path, &attempt, sheet()), Err(AttemptError::InUse { .. })));
    drop(session);
    let mut other = attempt.clone();
    other.steps.pop();
    let error = keep_in(&path, &other, sheet()).unwrap_err().to_string();
    assert!(error.contains("changed while"), "{error}");
    let mut unfinished = sheet().clone();
    unfinished.marks = None;
    assert_eq!(keep_in(&path, &attempt, &unfinished).unwrap(), None);
    assert_eq!(std::fs::read(&path).unwrap(), before);
}

#[test]
fn a_mark_stands_only_at_the_end_of_a_finished_attempt() {
    let home = tempfile::tempdir().unwrap();
    let (path, bytes, at) = marked(&home);
    let text = std::str::from_utf8(&bytes).unwrap();
    let lines: Vec<&str> = text.lines().collect();
    let header_and_mark = format!("{}\n{}", lines[0], &text[at..]);
    std::fs::write(&path, header_and_mark).unwrap();
    let error = Attempt::read(&path).unwrap_err().to_string();
    assert!(error.contains("line 2") && error.contains("not handed back"), "{error}");
    std::fs::write(&path, format!("{text}{}\n", lines[1])).unwrap();
    let error = Attempt::read(&path).unwrap_err().to_string();
    assert!(error.contains("after the mark"), "{error}");
    // A digit changed in it does not fit its chain.
    let mut changed = bytes.clone();
    let digit = at + text[at..].find("\"total\":").unwrap() + 8;
    changed[digit] ^= 1;
    std::fs::write(&path, changed).unwrap();
    let error = Attempt::read(&path).unwrap_err().to_string();
    assert!(error.contains("changed after it was written"), "{error}");
}
