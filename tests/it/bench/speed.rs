//! `pinhole bench`: every case is there with numbers that can be, and bad flags are refused. How fast
//! anything is, no test says.

use super::{ends_with_code, pinhole};

#[test]
fn every_case_is_measured_and_written_twice() {
    let home = tempfile::tempdir().unwrap();
    let output =
        pinhole(home.path()).args(["bench", "--samples", "1", "--csv", "speed.csv"]).output().unwrap();
    let said = ends_with_code(&output, 0);
    let text = std::fs::read_to_string(home.path().join("speed.csv")).unwrap();
    let mut lines = text.lines().map(|line| line.split(',').collect::<Vec<_>>());
    let head = lines.next().unwrap();
    assert_eq!(head, ["case", "how", "quantity", "best", "median", "samples", "beside", "ratio"]);
    let rows: Vec<Vec<&str>> = lines.collect();
    for (case, how) in [
        ("driving", "steps as in use"),
        ("driving", "steps of one tick"),
        ("pull-down", "a hundredth of the error"),
        ("overnight hold", "steps as in use"),
        ("64 cars driving", "one after the other"),
        ("64 cars driving", "on all threads"),
        ("memory", "a circuit with its buffers"),
        ("64 cars driving", "side by side in lanes"),
        ("64 cars driving", "side by side in lanes of plain registers"),
        ("hypothesis runs", "one after the other"),
        ("hypothesis runs", "side by side"),
        ("hypothesis runs", "side by side on all threads"),
    ] {
        assert!(rows.iter().any(|r| r[0] == case && r[1] == how), "{case}, {how}: not in {text}");
        assert!(
            said.lines().any(|line| line.starts_with(case) && line.contains(how)),
            "{case}, {how}: {said}"
        );
    }
    for row in &rows {
        let number = |i: usize| row[i].parse::<f64>().unwrap();
        let (best, median) = (number(3), number(4));
        assert!(best.is_finite() && median.is_finite() && 0.0 < median && median <= best, "{row:?}");
        assert!(row[7].is_empty() == row[6].is_empty(), "a ratio says what it is to: {row:?}");
        assert!(row[7].is_empty() || (number(7).is_finite() && 0.0 < number(7)), "{row:?}");
    }
}

#[test]
fn bad_flags_are_refused_with_what_would_be_right() {
    let home = tempfile::tempdir().unwrap();
    for (args, wanted) in [
        (vec!["bench", "--samples", "0"], "1 to 999"),
        (vec!["bench", "--samples", "many"], "is no whole number; write one from 1 to 999"),
        (vec!["bench", "--window", "--samples", "3"], "do not go together"),
        (vec!["bench", "--window", "--csv", "x.csv"], "do not go together"),
        (vec!["bench", "--samples", "1", "--csv", "no/such/folder/x.csv"], "x.csv"),
    ] {
        let output = pinhole(home.path()).args(&args).output().unwrap();
        let said = ends_with_code(&output, 2);
        assert!(said.contains(wanted), "{args:?}: {said}");
    }
}
