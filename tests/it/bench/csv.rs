//! Tables: no cell is a formula, and no text steers a terminal.

use std::process::Stdio;

use super::outputs::{JOB, finished};
use super::{ends_with_code, pinhole};

#[test]
fn cells_that_begin_as_formulas_are_harmless() {
    let home = tempfile::tempdir().unwrap();
    let seats = [
        ("=HYPERLINK(\"x\")", "\"'=HYPERLINK(\"\"x\"\")\""),
        ("+1", "'+1"),
        ("-2+3", "'-2+3"),
        ("@A1", "'@A1"),
        ("Bench 12", "Bench 12"),
    ];
    let files: Vec<String> = (0..seats.len()).map(|i| format!("={i}.attempt")).collect();
    for (file, (seat, _)) in files.iter().zip(seats) {
        let output = pinhole(home.path())
            .args(["text", JOB, "--attempt", file, &format!("--seat={seat}")])
            .output()
            .unwrap();
        ends_with_code(&output, 0);
    }
    let output = pinhole(home.path()).arg("mark").args(&files).args(["--csv", "t.csv"]).output().unwrap();
    ends_with_code(&output, 1);
    let table = std::fs::read_to_string(home.path().join("t.csv")).unwrap();
    for (i, (line, (_, cell))) in table.lines().skip(1).zip(seats).enumerate() {
        assert!(line.starts_with(&format!("'={i}.attempt,")), "{line}");
        assert!(line.contains(&format!(",{cell},")), "{line}");
    }
    assert_eq!(table.lines().count(), 1 + seats.len());
}

#[test]
fn a_seat_with_controls_is_refused_when_given_and_when_read() {
    let home = tempfile::tempdir().unwrap();
    for bad in ["a\u{1b}[2J", "a\tb", "a\u{202e}b", "a\u{9b}b", "a\u{2028}b"] {
        let output = pinhole(home.path()).args(["text", JOB, "--seat", bad]).output().unwrap();
        let text = ends_with_code(&output, 2);
        assert!(text.contains("--seat") && !text.contains(|c: char| c.is_control() && c != '\n'), "{text:?}");
        assert!(!text.contains('\u{202e}') && !text.contains('\u{2028}'), "{text:?}");
    }
    // In an attempt by another's hand: chained anew, so that only the text itself is wrong.
    let home = finished();
    let path = home.path().join("a.attempt");
    let text = std::fs::read_to_string(&path).unwrap();
    let evil = rechained(&text, |line| line.replace("\"seat\":null", "\"seat\":\"\\u001b]0;x\\u0007\""));
    std::fs::write(&path, evil).unwrap();
    for command in ["mark", "replay"] {
        let output = pinhole(home.path()).args([command, "a.attempt"]).stdin(Stdio::null()).output().unwrap();
        let text = ends_with_code(&output, 2);
        assert!(text.contains("a.attempt, line 1") && text.contains("control character"), "{text}");
        assert!(!text.contains('\u{1b}'), "{text:?}");
    }
}

/// The lines of an attempt, changed and chained anew as the program would.
pub(super) fn rechained(text: &str, change: impl Fn(&str) -> String) -> String {
    const KEY: &str = ",\"chain\":\"";
    let mut chain = blake3::hash(assess::attempt::SCHEMA.as_bytes());
    let mut out = String::new();
    for line in text.lines() {
        let body = change(&format!("{}}}", line.rsplit_once(KEY).unwrap().0));
        let mut hasher = blake3::Hasher::new();
        hasher.update(chain.as_bytes());
        hasher.update(body.as_bytes());
        chain = hasher.finalize();
        out.push_str(&format!("{}{KEY}{}\"}}\n", body.strip_suffix('}').unwrap(), chain.to_hex()));
    }
    out
}
