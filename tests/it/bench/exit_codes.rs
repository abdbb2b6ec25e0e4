//! The exit code is that of what was done, whoever reads what is shown.
#![cfg(unix)]

use std::fs::File;
use std::path::Path;
use std::process::{Command, Stdio};

use assess::attempt::Attempt;

use super::outputs::{JOB, finished, reference};
use super::pinhole;

/// What stands behind standard output.
#[derive(Clone, Copy, Debug, PartialEq)]
enum Reader {
    /// Gone before the first word.
    Gone,
    /// Gone after three lines.
    Head,
    /// A full disk.
    Full,
}

/// Runs the command with such a reader; exit code and what it said on standard error.
fn ended(command: &mut Command, reader: Reader) -> (Option<i32>, String) {
    let mut child = match reader {
        Reader::Full => {
            let full = File::options().write(true).open("/dev/full").unwrap();
            command.stdout(full).stderr(Stdio::piped()).spawn().unwrap()
        }
        _ => command.stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap(),
    };
    match reader {
        Reader::Gone => drop(child.stdout.take()),
        Reader::Head => {
            use std::io::BufRead as _;
            let out = child.stdout.take().unwrap();
            assert_eq!(std::io::BufReader::new(out).lines().take(3).count(), 3);
        }
        Reader::Full => {}
    }
    let output = child.wait_with_output().unwrap();
    let said = String::from_utf8_lossy(&output.stderr).into_owned();
    assert!(!said.contains("panicked"), "{said}");
    (output.status.code(), said)
}

fn script(home: &Path, name: &str, text: &str) {
    std::fs::write(home.join(name), text).unwrap();
}

#[test]
fn a_closed_reader_changes_no_verdict() {
    let home = finished();
    let all = std::fs::read_to_string(reference()).unwrap();
    // Handed back at once: not yet competent.
    script(home.path(), "fail.script", "card\nchocks on\nfinding none sure 0.95\nhand back\n");
    script(home.path(), "unfinished.script", &all.replace("hand back", ""));
    std::fs::write(home.path().join("bad.attempt"), "nothing\n").unwrap();
    for (script, code, reader) in [
        (reference(), 0, Reader::Head),
        (home.path().join("fail.script"), 1, Reader::Gone),
        (home.path().join("unfinished.script"), 1, Reader::Head),
    ] {
        let stem = script.file_stem().unwrap().to_str().unwrap().to_owned();
        let file = home.path().join(format!("{stem}.attempt"));
        let mut command = pinhole(home.path());
        command.args(["text", JOB, "--seed", "5eed", "--script"]).arg(&script).arg("--attempt").arg(&file);
        let (found, said) = ended(&mut command, reader);
        assert_eq!(found, Some(code), "{stem} {reader:?}: {said}");
        let attempt = Attempt::read(&file).unwrap();
        assert_eq!(attempt.is_finished(), stem != "unfinished", "the whole script was played");
        assert_eq!(attempt.mark.is_some(), attempt.is_finished(), "and marked");
    }
    let mark = |file: &str, reader| ended(pinhole(home.path()).args(["mark", file]), reader);
    assert_eq!(mark("fail.attempt", Reader::Gone).0, Some(1));
    assert_eq!(mark("bad.attempt", Reader::Gone).0, Some(2));
    let replay = ended(pinhole(home.path()).args(["replay", "a.attempt"]), Reader::Gone);
    assert_eq!(replay, (Some(0), String::new()));
}

#[test]
fn a_full_disk_behind_standard_output_is_an_error_after_the_work() {
    let home = tempfile::tempdir().unwrap();
    let mut command = pinhole(home.path());
    command.args(["text", JOB, "--seed", "5eed", "--attempt", "a.attempt", "--script"]).arg(reference());
    let (code, said) = ended(&mut command, Reader::Full);
    assert_eq!(code, Some(2), "{said}");
    assert!(said.contains("standard output") && said.contains("the disk is full"), "{said}");
    let attempt = Attempt::read(&home.path().join("a.attempt")).unwrap();
    assert!(attempt.is_finished() && attempt.mark.is_some_and(|m| m.competent), "done, kept and marked");
    for args in [&["mark", "a.attempt"][..], &["replay", "a.attempt"], &["--help"], &["text", "--help"]] {
        let (code, said) = ended(pinhole(home.path()).args(args), Reader::Full);
        assert_eq!(code, Some(2), "{args:?}: {said}");
        assert!(said.contains("standard output"), "{args:?}: {said}");
    }
}

#[test]
fn words_from_a_pipe_are_done_to_the_end_when_nobody_reads() {
    use std::io::Write as _;
    let home = tempfile::tempdir().unwrap();
    let mut child = pinhole(home.path())
        .args(["text", JOB, "--attempt", "p.attempt"])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    drop(child.stdout.take());
    child.stdin.take().unwrap().write_all(b"card\nchocks on\nfinding none sure 0.95\nhand back\n").unwrap();
    let output = child.wait_with_output().unwrap();
    let text = String::from_utf8_lossy(&output.stderr);
    assert_eq!(output.status.code(), Some(1), "{text}");
    assert!(Attempt::read(&home.path().join("p.attempt")).unwrap().is_finished());
}
