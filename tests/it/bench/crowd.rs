//! Many programs in one folder: each gets a file of its own, nobody is sent to a neighbour's, what killed starts left
//! is cleared.

use std::collections::BTreeSet;
use std::io::{BufRead as _, BufReader, Write as _};
use std::path::PathBuf;
use std::process::{Child, Stdio};
use std::time::{Duration, SystemTime};

use assess::attempt::Attempt;

use super::{ends_with_code, pinhole, said};

const JOB: &str = "first-shift/hum-at-the-lights";

/// Programs at once.
const CROWD: usize = 8;

/// Starts a program that stays at the prompt until its input ends.
fn start(home: &std::path::Path, args: &[&str]) -> Child {
    pinhole(home)
        .args(["--attempts", "class", "text", JOB])
        .args(args)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap()
}

#[test]
fn programs_started_at_once_in_one_folder_each_get_a_file_of_their_own() {
    let home = tempfile::tempdir().unwrap();
    for round in 1..=3 {
        let mut crowd: Vec<Child> = (0..CROWD).map(|_| start(home.path(), &[])).collect();
        let mut files = BTreeSet::new();
        // All of them are at work before the first one leaves.
        for child in &mut crowd {
            let mut first = String::new();
            let stdout = child.stdout.as_mut().unwrap();
            BufReader::with_capacity(1, stdout).read_line(&mut first).unwrap();
            // Their own files are in use, and those of the rounds before are left unfinished: who is not at a
            // terminal is told of one of these, never of one in use.
            if first.contains("unfinished attempt waits") {
                assert!(1 < round, "{first}");
                first.clear();
                BufReader::with_capacity(1, child.stdout.as_mut().unwrap()).read_line(&mut first).unwrap();
            }
            let file = first.trim().strip_prefix("Attempt: ").unwrap_or_else(|| panic!("{first:?}"));
            assert!(files.insert(PathBuf::from(file)), "{file} twice");
        }
        for mut child in crowd {
            child.stdin.take().unwrap().write_all(b"card\n").unwrap();
            ends_with_code(&child.wait_with_output().unwrap(), 0);
        }
        assert_eq!(files.len(), CROWD);
        for file in files {
            assert_eq!(Attempt::read(&home.path().join(&file)).unwrap().steps.len(), 1, "{}", file.display());
        }
    }
    let left = std::fs::read_dir(home.path().join("class")).unwrap().count();
    assert_eq!(left, 3 * CROWD, "nothing else is left there");
}

#[test]
fn resume_takes_what_is_of_the_seat_and_not_in_use() {
    let home = tempfile::tempdir().unwrap();
    let run = |args: &[&str]| {
        let output = pinhole(home.path()).args(["--attempts", "class", "text"]).args(args).output().unwrap();
        (output.status.code(), said(&output))
    };
    run(&[JOB, "--seat", "3"]);
    run(&[JOB, "--seat", "4"]);
    let (code, text) = run(&["--resume", "--seat", "3"]);
    assert!(code == Some(0) && text.contains("lights-001.attempt"), "{text}");
    // In use: there is nothing to carry on for this seat.
    let mut busy = pinhole(home.path())
        .args(["--attempts", "class", "text", "--resume", "--seat", "3"])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .unwrap();
    let mut first = String::new();
    BufReader::new(busy.stdout.as_mut().unwrap()).read_line(&mut first).unwrap();
    assert!(first.contains("Carried on"), "{first}");
    let (code, text) = run(&["--resume", "--seat", "3"]);
    assert!(code == Some(2) && text.contains("no unfinished attempt of yours"), "{text}");
    let (_, text) = run(&["--resume"]);
    assert!(text.contains("lights-002.attempt"), "{text}");
    let (code, text) = run(&["--resume", "--seat", "3", "--attempt", "class/hum-at-the-lights-002.attempt"]);
    assert!(code == Some(2) && text.contains("not of the seat"), "{text}");
    busy.kill().unwrap();
    busy.wait().unwrap();
}

#[test]
fn what_killed_starts_left_is_cleared_after_an_hour() {
    let home = tempfile::tempdir().unwrap();
    let folder = home.path().join("class");
    std::fs::create_dir(&folder).unwrap();
    let hours_ago = |h: u64| SystemTime::now() - Duration::from_secs(3600 * h + 60);
    let make = |name: &str, age_h: u64| {
        let file = std::fs::File::create(folder.join(name)).unwrap();
        file.set_modified(hours_ago(age_h)).unwrap();
        file
    };
    make(".begun-old.part", 1);
    make(".begun-young.part", 0);
    make("mine.part", 30);
    make(".begun-notes", 30);
    let busy = make(".begun-busy.part", 30);
    busy.lock().unwrap();
    let output = pinhole(home.path()).args(["--attempts", "class", "text", JOB]).output().unwrap();
    ends_with_code(&output, 0);
    let mut left: Vec<String> =
        std::fs::read_dir(&folder).unwrap().map(|e| e.unwrap().file_name().into_string().unwrap()).collect();
    left.sort();
    assert_eq!(
        left,
        [
            ".begun-busy.part",
            ".begun-notes",
            ".begun-young.part",
            "hum-at-the-lights-001.attempt",
            "mine.part"
        ]
    );
}
