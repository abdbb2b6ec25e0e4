//! The mark and the seat in the attempt's file, through the command line.

use std::process::Stdio;
use std::time::{Duration, Instant};

use assess::attempt::Attempt;

use dice::Dice;

use super::{ends_with_code, pinhole, program, root};

/// The job whose marking is quickest.
const JOB: &str = "first-shift/flat-after-the-weekend";
/// Kills in one test.
const KILLS: usize = 6;

#[test]
fn inv_killed_while_marking_the_attempt_stays_whole_and_the_next_marking_comes_to_the_same_line() {
    let home = tempfile::tempdir().unwrap();
    let file = home.path().join("a.attempt");
    // It may have to be built first.
    program();
    let clock = Instant::now();
    let output = pinhole(home.path())
        .args(["text", JOB, "--seed", "5eed", "--seat", "Bench 12", "--script"])
        .arg(root().join("scenarios/first-shift/reference/flat-after-the-weekend.script"))
        .arg("--attempt")
        .arg(&file)
        .output()
        .unwrap();
    let took = clock.elapsed();
    ends_with_code(&output, 0);
    let marked = std::fs::read(&file).unwrap();
    let whole = Attempt::read(&file).unwrap();
    assert_eq!(whole.header.seat.as_deref(), Some("Bench 12"));
    let line = whole.mark.as_ref().expect("the text bench keeps the mark");
    assert!(line.competent && line.parts.len() == 6, "{line:?}");

    // As it was before it was marked: without its last line.
    let cut = marked[..marked.len() - 1].iter().rposition(|b| *b == b'\n').unwrap() + 1;
    std::fs::write(&file, &marked[..cut]).unwrap();
    let mut dice = Dice::new(dice::seed(), 1);
    for i in 0..KILLS {
        let mut child = pinhole(home.path())
            .arg("mark")
            .arg(&file)
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .unwrap();
        std::thread::sleep(Duration::from_secs_f64(took.as_secs_f64() * 0.5 * dice.unit()));
        child.kill().unwrap();
        child.wait().unwrap();
        let kept = Attempt::read(&file).unwrap_or_else(|e| panic!("kill {i}: {e}"));
        assert_eq!(kept.steps, whole.steps, "kill {i}");
        assert!(kept.mark.is_none() || kept.mark == whole.mark, "kill {i}: {:?}", kept.mark);
    }
    let csv = home.path().join("m.csv");
    let output = pinhole(home.path()).arg("mark").arg(&file).arg("--csv").arg(&csv).output().unwrap();
    ends_with_code(&output, 0);
    assert_eq!(std::fs::read(&file).unwrap(), marked, "the same line, to the last byte");
    let table = std::fs::read_to_string(&csv).unwrap();
    let cells =
        |line: usize| table.lines().nth(line).unwrap().split(',').map(str::to_owned).collect::<Vec<_>>();
    let column = cells(0).iter().position(|name| name == "mark_in_file").unwrap();
    assert_eq!(cells(1)[column], "same", "{table}");
    assert!(table.contains("Bench 12"), "{table}");
}

#[test]
fn a_seat_is_one_short_line() {
    let home = tempfile::tempdir().unwrap();
    for bad in ["", "  ", "two\nlines", &"x".repeat(65)] {
        let output = pinhole(home.path()).args(["text", JOB, "--seat", bad]).output().unwrap();
        let text = ends_with_code(&output, 2);
        assert!(text.contains("--seat"), "{text}");
    }
}
