//! Every number of an attempt is checked against what its kind can be before anything is done again, also when the
//! file was chained anew; unknown and repeated keys are refused; one bad file does not stop the others.

use std::path::Path;
use std::time::Instant;

use assess::attempt::{Attempt, AttemptError};
use serde_json::{Value, json};

use super::chain::{bodies, chained, chained_values, made, values};
use super::{ends_with_code, pinhole};

/// Line of the first action: header and sitting stand before it.
const FIRST: usize = 2;

fn written(home: &Path, name: &str, bytes: &[u8]) -> std::path::PathBuf {
    let path = home.join(name);
    std::fs::write(&path, bytes).unwrap();
    path
}

/// The line (from 0) of the first action of a kind.
fn line_of(lines: &[Value], kind: &str) -> usize {
    let is = |v: &Value| v["action"] == kind || v["action"].get(kind).is_some();
    lines.iter().position(is).unwrap_or_else(|| panic!("no {kind}"))
}

#[test]
fn every_number_is_checked_against_its_own_kind() {
    let home = tempfile::tempdir().unwrap();
    let (path, _) = made(home.path());
    let good = values(&std::fs::read(path).unwrap());
    let (wait, until, note) = (line_of(&good, "wait"), line_of(&good, "wait_until"), line_of(&good, "note"));
    let (pedal, read) = (line_of(&good, "pedal"), line_of(&good, "read"));
    let far = 1_000_000_000_000_000_u64;
    type Change = Box<dyn Fn(&mut Value)>;
    let set = |at: &'static str, to: Value| -> Change {
        Box::new(move |v: &mut Value| *v.pointer_mut(at).unwrap() = to.clone())
    };
    let cases: Vec<(usize, Change, &[&str])> = vec![
        (FIRST, set("/start", json!(far)), &["pause", "1000000000000000", "at most 4320000"]),
        (FIRST, set("/start", json!(u64::MAX)), &["pause", "at most"]),
        (FIRST, set("/end", json!(far)), &["last tick", "1000000000000000", "at most 86400000"]),
        (FIRST, set("/end", json!(5_000_000)), &["length of the action", "5000000", "at most"]),
        (FIRST, set("/n", json!(7)), &["action number", "7", "expected 1"]),
        (FIRST, set("/at_unix_ms", json!(u64::MAX)), &["time of an action", "at most 253402300799999"]),
        (FIRST, set("/digest", json!("xyz")), &["line 3"]),
        (wait, set("/action/wait/s", json!(0)), &["time to wait", "expected 1 to 43200"]),
        (wait, set("/action/wait/s", json!(4_000_000_000_u32)), &["time to wait", "4000000000"]),
        (wait, set("/action/wait/s", json!(1e15)), &["line"]),
        (until, set("/action/wait_until/max_s", json!(7201)), &["longest time to wait", "7201", "1 to 7200"]),
        (pedal, set("/action/pedal/foot/force_n", json!(1e9)), &["force on the pedal", "1 to 700"]),
        (note, set("/action/note/reading", json!(9)), &["reading that is noted", "9", "expected 1 to 1"]),
        (read, set("/reading/id", json!(2)), &["number of a reading", "expected 1"]),
        (read, set("/reading/tick", json!(0)), &["tick of a reading", "expected"]),
        (read, set("/reading/shown", json!({"steps": i64::MAX})), &["what a reading showed"]),
        (1, set("/sitting/after", json!(3)), &["before a sitting", "expected 0"]),
        (0, set("/created_unix_s", json!(u64::MAX)), &["time it was begun", "at most"]),
        (0, set("/schema", json!("pinhole-attempt/9")), &["schema", "pinhole-attempt/2"]),
    ];
    for (line, change, wanted) in &cases {
        let mut lines = good.clone();
        change(&mut lines[*line]);
        let bad = written(home.path(), "bad.attempt", &chained_values(&lines));
        let error = Attempt::read(&bad).unwrap_err();
        let text = error.to_string();
        assert!(text.contains("bad.attempt") && text.contains(&format!("line {}", line + 1)), "{text}");
        assert!(wanted.iter().all(|w| text.contains(w)), "{wanted:?}: {text}");
        assert!(text.lines().count() <= 3, "{text}");
        assert!(*line == 0 || text.contains("pinhole mend"), "{text}");
    }
    // Typed, not only told.
    let mut lines = good.clone();
    lines[FIRST]["start"] = json!(far);
    let bad = written(home.path(), "bad.attempt", &chained_values(&lines));
    assert!(matches!(
        Attempt::read(&bad),
        Err(AttemptError::OutOfRange { line: 3, ref beyond, .. }) if beyond.value.to_string() == far.to_string()
    ));
}

#[test]
fn times_add_up_to_no_more_than_an_attempt_may_take() {
    let home = tempfile::tempdir().unwrap();
    let (path, _) = made(home.path());
    let lines = values(&std::fs::read(path).unwrap());
    let night = |n: u64, start: u64| {
        let mut line = lines[FIRST].clone();
        line["n"] = json!(n);
        line["action"] = json!("overnight");
        line["start"] = json!(start);
        line["end"] = json!(start + 12 * 360_000);
        line.as_object_mut().unwrap().remove("minutes");
        line
    };
    // Thirty nights one after the other: fifteen days.
    let mut nights = lines[..FIRST].to_vec();
    nights.extend((0..30).map(|n| night(n + 1, n * 12 * 360_000)));
    let bad = written(home.path(), "bad.attempt", &chained_values(&nights));
    let text = Attempt::read(&bad).unwrap_err().to_string();
    assert!(text.contains("last tick of an action") && text.contains("line 23"), "{text}");
    // The clock runs on by itself for ten hours, three times.
    let mut idle = lines[..FIRST].to_vec();
    idle.extend((0..3).map(|n| {
        let mut line = lines[FIRST].clone();
        let start = (n + 1) * 3_600_000 + n * 100;
        (line["n"], line["start"], line["end"]) = (json!(n + 1), json!(start), json!(start + 100));
        line.as_object_mut().unwrap().remove("minutes");
        line
    }));
    let bad = written(home.path(), "bad.attempt", &chained_values(&idle));
    let text = Attempt::read(&bad).unwrap_err().to_string();
    assert!(text.contains("nobody did anything") && text.contains("line 5"), "{text}");
}

#[test]
fn unknown_and_repeated_keys_are_refused_everywhere() {
    let home = tempfile::tempdir().unwrap();
    let (path, _) = made(home.path());
    let bytes = std::fs::read(path).unwrap();
    let good = values(&bytes);
    // An unknown key in every object there is, one at a time.
    let mut places = Vec::new();
    for (line, value) in good.iter().enumerate() {
        objects(value, String::new(), &mut |at| places.push((line, at)));
    }
    assert!(40 < places.len(), "{} objects", places.len());
    for (line, at) in &places {
        let mut lines = good.clone();
        let object = lines[*line].pointer_mut(at).unwrap().as_object_mut().unwrap();
        object.insert("colour".to_owned(), json!(1));
        let bad = written(home.path(), "bad.attempt", &chained_values(&lines));
        let error = Attempt::read(&bad);
        assert!(error.is_err(), "line {line} at {at:?}: {}", lines[*line]);
    }
    // Every key twice, one at a time.
    let text = bodies(&bytes);
    let mut twice = 0;
    for (line, body) in text.iter().enumerate() {
        for (at, _) in body.match_indices("\":") {
            let from = body[..at].rfind('"').unwrap();
            let key = &body[from..at + 2];
            let mut lines = text.clone();
            lines[line] = format!("{}{key}1,{}", &body[..from], &body[from..]);
            let bad = written(home.path(), "bad.attempt", &chained(&lines));
            assert!(Attempt::read(&bad).is_err(), "{}", lines[line]);
            twice += 1;
        }
    }
    assert!(100 < twice, "{twice} keys");
}

/// Tells the place of every object.
fn objects(value: &Value, at: String, seen: &mut impl FnMut(String)) {
    match value {
        Value::Object(fields) => {
            for (key, value) in fields {
                objects(value, format!("{at}/{key}"), seen);
            }
            seen(at);
        }
        Value::Array(items) => {
            for (i, value) in items.iter().enumerate() {
                objects(value, format!("{at}/{i}"), seen);
            }
        }
        _ => {}
    }
}

#[test]
fn names_that_the_job_does_not_have_are_told_before_anything_is_done_again() {
    let home = tempfile::tempdir().unwrap();
    let (path, _) = made(home.path());
    let mut lines = values(&std::fs::read(path).unwrap());
    let read = line_of(&lines, "read");
    lines[read]["action"]["read"]["instrument"] = json!("oscilloscope");
    let bad = written(home.path(), "bad.attempt", &chained_values(&lines));
    for command in ["replay", "mark"] {
        let output = pinhole(home.path()).arg(command).arg(&bad).output().unwrap();
        let text = ends_with_code(&output, 2);
        assert!(text.contains("oscilloscope") && text.contains("action 3"), "{text}");
    }
}

#[test]
fn one_bad_file_does_not_stop_the_marking_of_a_class() {
    let home = tempfile::tempdir().unwrap();
    let (path, _) = made(home.path());
    let mut lines = values(&std::fs::read(&path).unwrap());
    lines[FIRST]["start"] = json!(1_000_000_000_000_000_u64);
    written(home.path(), "crafted.attempt", &chained_values(&lines));
    written(home.path(), "noise.attempt", &[0xff; 4000]);
    std::fs::create_dir(home.path().join("folder.attempt")).unwrap();
    let clock = Instant::now();
    let output = pinhole(home.path())
        .args(["mark", "crafted.attempt", "noise.attempt", "folder.attempt", "none.attempt", "a.attempt"])
        .args(["--csv", "class.csv", "--json", "class.json"])
        .output()
        .unwrap();
    // Without the check it would not end at all.
    assert!(clock.elapsed().as_secs() < 120);
    let text = ends_with_code(&output, 2);
    assert!(text.contains("a.attempt: not finished"), "{text}");
    let stderr = String::from_utf8_lossy(&output.stderr);
    for bad in ["crafted.attempt", "noise.attempt", "folder.attempt", "none.attempt"] {
        assert!(stderr.lines().any(|l| l.starts_with("error: ") && l.contains(bad)), "{bad}: {stderr}");
    }
    let table = std::fs::read_to_string(home.path().join("class.csv")).unwrap();
    let rows: Vec<&str> = table.lines().filter(|l| l.contains(".attempt")).collect();
    assert_eq!(table.lines().next().unwrap().split(',').next_back(), Some("error"));
    assert!(rows.iter().any(|r| r.starts_with("crafted.attempt,,") && r.contains("pause")), "{table}");
    assert!(
        rows.iter().any(|r| r.starts_with("a.attempt,first-shift/hum-at-the-lights,") && r.ends_with(','))
    );
    let json: Value =
        serde_json::from_str(&std::fs::read_to_string(home.path().join("class.json")).unwrap()).unwrap();
    let rows = json.as_array().unwrap();
    assert_eq!(rows.len(), 5);
    assert_eq!(rows[0]["attempt"], "crafted.attempt");
    assert!(rows[0]["error"].as_str().unwrap().contains("line 3"));
    assert_eq!(rows[4]["job"], "first-shift/hum-at-the-lights");
    // Alone it is told as before.
    for command in [
        vec!["mark", "crafted.attempt"],
        vec!["replay", "crafted.attempt"],
        vec!["text", "--attempt", "crafted.attempt", "--resume"],
    ] {
        let text = ends_with_code(&pinhole(home.path()).args(command).output().unwrap(), 2);
        assert!(text.contains("crafted.attempt, line 3: the pause before an action"), "{text}");
    }
}

#[test]
fn what_an_attempt_cannot_hold_is_not_done_at_all() {
    let home = tempfile::tempdir().unwrap();
    let path = home.path().join("long.attempt");
    let begin = assess::play::Begin::rehearsal(assess::attempt::Seed(1));
    let mut session = assess::play::Session::start(super::chain::job(), &begin, &path).unwrap();
    let suspect = |n: usize| sim_core::action::Action::Suspect { text: "x".repeat(n) };
    session.act(&suspect(4000)).unwrap();
    let before = session.view();
    let error = session.act(&suspect(4001)).unwrap_err().to_string();
    assert!(error.contains("the suspicion is 4001 bytes long") && error.contains("at most 4000"), "{error}");
    assert_eq!(session.view(), before, "no time has passed");
    session.act(&sim_core::action::Action::ReadCard).unwrap();
    assert_eq!(Attempt::read(&path).unwrap().steps.len(), 2);
}
