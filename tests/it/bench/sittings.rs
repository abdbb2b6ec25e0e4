//! When and by which way an attempt was done: in the chain, on the sheet, in the table; and nowhere in the mark.

use std::process::Stdio;

use assess::attempt::clock::{By, Clock};
use assess::attempt::{Attempt, Seed, SeedFrom};
use assess::marks;
use assess::play::script;
use assess::play::{self, Begin, Session, SessionError};
use serde_json::{Value, json};

use super::chain::{SHORT, chained_values, job, made, ticking, values};
use super::{ends_with_code, pinhole, root};

/// 2026-01-02 03:04:05 UTC.
const BEGUN: u64 = 1_767_323_045_000;
const HOUR: u64 = 3_600_000;

fn play(session: &mut Session, text: &str) {
    script::play(session, text, |_, _, _, _| {}).unwrap();
}

/// Half an attempt by hand, half by script an hour later.
fn in_two_sittings(path: &std::path::Path) -> Attempt {
    let begin =
        Begin { seed: Seed(7), seed_from: SeedFrom::Drawn, seat: None, opening: ticking(BEGUN, By::Hand) };
    let mut session = Session::start(job(), &begin, path).unwrap();
    play(&mut session, "card\nchocks on\nwait 600\n");
    drop(session);
    let later = ticking(BEGUN + HOUR, By::Script);
    let (mut session, _) = Session::resume::<SessionError>(path, &later, |_| Ok(job())).unwrap();
    play(&mut session, "key on\nwait 5\n");
    session.into_attempt()
}

#[test]
fn every_action_says_when_and_by_which_way_it_came_and_the_chain_holds_it() {
    let home = tempfile::tempdir().unwrap();
    let path = home.path().join("a.attempt");
    let attempt = in_two_sittings(&path);
    assert_eq!(Attempt::read(&path).unwrap(), attempt);
    let ways: Vec<By> = attempt.steps.iter().filter_map(|s| s.by).collect();
    assert_eq!(ways, [By::Hand, By::Hand, By::Hand, By::Script, By::Script]);
    let sat: Vec<(u32, By)> = attempt.sittings.iter().map(|s| (s.after, s.by)).collect();
    assert_eq!(sat, [(0, By::Hand), (3, By::Script)]);
    assert_eq!(attempt.steps[3].at_unix_ms, Some(BEGUN + HOUR + 1000));
    // A changed label breaks the chain, and so does a changed source.
    let text = std::fs::read_to_string(&path).unwrap();
    for (from, to) in [("\"by\":\"script\"", "\"by\":\"hand\""), ("\"at_unix_ms\":1", "\"at_unix_ms\":2")] {
        std::fs::write(&path, text.replacen(from, to, 1)).unwrap();
        let error = Attempt::read(&path).unwrap_err().to_string();
        assert!(error.contains("changed after it was written"), "{error}");
    }
}

#[test]
fn the_sheet_tells_it_in_plain_words() {
    let home = tempfile::tempdir().unwrap();
    let attempt = in_two_sittings(&home.path().join("a.attempt"));
    let sheet = crate::told::sheet(marks::mark(&attempt, &job()).unwrap());
    assert!(sheet.scripted, "some of it was");
    assert_eq!((sheet.when.played_actions, sheet.when.actions), (Some(2), 5));
    // Three seconds and two: the hour between the sittings is no work.
    assert_eq!(sheet.when.wall_s, Some(5.0));
    let page = assess::report::terminal::render(&sheet, &crate::told::english()).replace('\n', " ");
    for said in [
        "Begun 2026-01-02 03:04:06 UTC, last action 2026-01-02 04:04:07 UTC.",
        "minutes of work and 10 of waiting in 5.0 s of wall clock; the file was opened again once.",
        "2 of 5 actions came from a script or a pipe.",
        "The seed was drawn by the system.",
    ] {
        assert!(page.contains(said), "{said:?}: {page}");
        assert!(assess::report::html::render(&sheet, &crate::told::english()).contains(said), "{said:?}");
    }
}

#[test]
fn a_clock_that_goes_back_is_shown_and_not_refused() {
    let home = tempfile::tempdir().unwrap();
    let path = home.path().join("a.attempt");
    in_two_sittings(&path);
    let earlier = ticking(BEGUN - 24 * HOUR, By::Window);
    let (mut session, _) = Session::resume::<SessionError>(&path, &earlier, |_| Ok(job())).unwrap();
    play(&mut session, "wait 5\n");
    drop(session);
    let sheet = crate::told::sheet(marks::mark(&Attempt::read(&path).unwrap(), &job()).unwrap());
    let page = assess::report::terminal::render(&sheet, &crate::told::english()).replace('\n', " ");
    assert!(page.contains("clock went back by 25 h 0 min"), "{page}");
    assert!(page.contains("opened again 2 times"), "{page}");
}

#[test]
fn inv_labels_change_no_digest_no_replay_and_no_mark() {
    let home = tempfile::tempdir().unwrap();
    let path = home.path().join("a.attempt");
    let attempt = in_two_sittings(&path);
    let mut lines = values(&std::fs::read(&path).unwrap());
    for line in &mut lines {
        for at in ["/at_unix_ms", "/sitting/at_unix_ms"] {
            if let Some(ms) = line.pointer_mut(at) {
                *ms = json!(5);
            }
        }
        for at in ["/by", "/sitting/by"] {
            if let Some(by) = line.pointer_mut(at) {
                *by = json!("pipe");
            }
        }
    }
    std::fs::write(&path, chained_values(&lines)).unwrap();
    let other = Attempt::read(&path).unwrap();
    assert_ne!(other, attempt);
    let digests = |a: &Attempt| a.steps.iter().map(|s| s.digest).collect::<Vec<_>>();
    assert_eq!(digests(&other), digests(&attempt));
    play::replay(&other, &job()).unwrap();
    let sheet = |a: &Attempt| {
        let mut sheet = crate::told::sheet(marks::mark(a, &job()).unwrap());
        let labels = (sheet.scripted, sheet.when.clone());
        (sheet.scripted, sheet.when) = (false, marks::when::When::of(&attempt));
        (sheet, labels)
    };
    let (one, label_one) = sheet(&attempt);
    let (two, label_two) = sheet(&other);
    assert_eq!(one, two);
    assert_ne!(label_one, label_two);
}

/// As [`super::chain::made`], in the form before: no sittings, no labels, another header.
fn old_form(home: &std::path::Path) -> Vec<Value> {
    let (path, _) = made(home);
    let mut lines = values(&std::fs::read(path).unwrap());
    lines.remove(1);
    lines[0]["schema"] = json!("pinhole-attempt/1");
    lines[0].as_object_mut().unwrap().remove("seed_from");
    lines[0]["scripted"] = json!(false);
    for line in &mut lines[1..] {
        let line = line.as_object_mut().unwrap();
        line.remove("by");
        line.remove("at_unix_ms");
    }
    lines
}

#[test]
fn files_of_the_form_before_are_read_and_carried_on() {
    let home = tempfile::tempdir().unwrap();
    let lines = old_form(home.path());
    let path = home.path().join("old.attempt");
    std::fs::write(&path, chained_values(&lines)).unwrap();
    let attempt = Attempt::read(&path).unwrap();
    let steps = attempt.steps.len();
    let page = assess::report::terminal::render(
        &crate::told::sheet(marks::mark(&attempt, &job()).unwrap()),
        &crate::told::english(),
    )
    .replace('\n', " ");
    assert!(page.contains("by the wall clock and how often the file was opened is not recorded"), "{page}");
    assert!(page.contains("Whether it was done by hand is not recorded"), "{page}");
    let opening = ticking(BEGUN, By::Script);
    let (mut session, _) = Session::resume::<SessionError>(&path, &opening, |_| Ok(job())).unwrap();
    play(&mut session, "wait 5\n");
    drop(session);
    let carried = Attempt::read(&path).unwrap();
    assert_eq!((carried.steps.len(), carried.sittings.len()), (steps + 1, 1));
    play::replay(&carried, &job()).unwrap();
    let output = pinhole(home.path()).args(["mark", "old.attempt", "--csv", "m.csv"]).output().unwrap();
    ends_with_code(&output, 1);
    let table = std::fs::read_to_string(home.path().join("m.csv")).unwrap();
    assert!(table.contains(",2026-01-02 03:04:06 UTC,,,,14,,,0,"), "not recorded is empty: {table}");
}

/// The cells of the one row of a table, by the names of its columns.
fn cells(table: &str) -> Vec<(String, String)> {
    let mut rows = table.lines().map(|l| l.split(',').map(str::to_owned).collect::<Vec<_>>());
    let (head, row) = (rows.next().unwrap(), rows.next().unwrap());
    head.into_iter().zip(row).collect()
}

#[test]
fn begun_by_pipe_and_carried_on_by_script_says_both_in_the_table() {
    let home = tempfile::tempdir().unwrap();
    let mut child = pinhole(home.path())
        .args(["text", "first-shift/hum-at-the-lights", "--attempt", "a.attempt"])
        .stdin(Stdio::piped())
        .stdout(Stdio::null())
        .spawn()
        .unwrap();
    std::io::Write::write_all(&mut child.stdin.take().unwrap(), b"card\nchocks on\n").unwrap();
    assert!(child.wait().unwrap().success());
    let script = home.path().join("s.script");
    std::fs::write(&script, SHORT.replace("card\nchocks on\n", "")).unwrap();
    let output = pinhole(home.path())
        .args(["text", "--attempt", "a.attempt", "--resume", "--script"])
        .arg(&script)
        .output()
        .unwrap();
    ends_with_code(&output, 1);
    let attempt = Attempt::read(&home.path().join("a.attempt")).unwrap();
    let sat: Vec<By> = attempt.sittings.iter().map(|s| s.by).collect();
    assert_eq!(sat, [By::Pipe, By::Script]);
    assert_eq!(attempt.header.seed_from, Some(SeedFrom::Drawn));
    let output =
        pinhole(home.path()).args(["mark", "a.attempt", "--csv", "m.csv", "--json", "m.json"]).output();
    ends_with_code(&output.unwrap(), 1);
    let cells = cells(&std::fs::read_to_string(home.path().join("m.csv")).unwrap());
    let cell = |name: &str| cells.iter().find(|(n, _)| n == name).unwrap().1.clone();
    assert_eq!(cell("scripted"), "true");
    assert_eq!(cell("scripted_actions"), cell("actions"));
    assert_eq!((cell("seed_given").as_str(), cell("sittings").as_str()), ("false", "2"));
    assert!(cell("begun").ends_with(" UTC") && cell("begun") <= cell("ended"), "{cells:?}");
    assert!(cell("wall_min").parse::<f64>().unwrap() < 5.0);
    let json: Value =
        serde_json::from_str(&std::fs::read_to_string(home.path().join("m.json")).unwrap()).unwrap();
    assert_eq!((&json["scripted"], &json["when"]["sittings"]), (&json!(true), &json!(2)));
    // The machine's clock is the label: not before this test was written, not after it ends.
    let now = Clock::system().now_ms();
    assert!(attempt.steps.iter().all(|s| s.at_unix_ms.is_some_and(|ms| BEGUN < ms && ms <= now)));
    assert!(root().is_dir());
}

/// What is typed at a terminal is done by hand, and its history lies beside the attempt, for its owner alone.
#[cfg(unix)]
#[test]
fn what_is_typed_is_by_hand_and_its_history_stays_beside_the_attempt() {
    use std::os::unix::fs::PermissionsExt as _;
    let has = |tool: &str| {
        std::env::var_os("PATH")
            .is_some_and(|path| std::env::split_paths(&path).any(|f| f.join(tool).is_file()))
    };
    if !has("script") {
        println!("skipped: 1 (script, which lends a terminal, is not installed)");
        return;
    }
    let home = tempfile::tempdir().unwrap();
    let line = format!(
        "'{}' --data '{}' --attempts mine text first-shift/hum-at-the-lights",
        super::program().display(),
        root().display()
    );
    let mut child = std::process::Command::new("script")
        .args(["-qec", &line, "/dev/null"])
        .current_dir(home.path())
        .env("HOME", home.path().join("home"))
        .env("TERM", "xterm")
        .env_remove("XDG_DATA_HOME")
        .stdin(Stdio::piped())
        .stdout(Stdio::null())
        .spawn()
        .unwrap();
    std::io::Write::write_all(&mut child.stdin.take().unwrap(), b"card\nquit\n").unwrap();
    assert!(child.wait().unwrap().success());
    let attempt = Attempt::read(&home.path().join("mine/hum-at-the-lights-001.attempt")).unwrap();
    assert_eq!(attempt.steps.iter().map(|s| s.by).collect::<Vec<_>>(), [Some(By::Hand)]);
    let history = home.path().join("mine/.pinhole-history");
    assert_eq!(history.metadata().unwrap().permissions().mode() & 0o777, 0o600);
    assert!(std::fs::read_to_string(history).unwrap().contains("card"));
    assert!(!home.path().join("home").exists(), "nothing is kept elsewhere");
}
