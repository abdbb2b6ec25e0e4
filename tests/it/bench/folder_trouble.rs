//! A folder of attempts in which something is wrong, or whose marking is killed: each attempt that cannot be marked has a
//! line that says why, the others are marked all the same, and what was killed goes on to the same bytes.
//! (A full disk stands in `bench::folder`.)

use std::io::{BufRead as _, BufReader};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::time::Duration;

use dice::Dice;
use serde_json::{Value, json};

use super::chain::{chained_values, made, values};
use super::outputs::finished;
use super::{ends_with_code, pinhole};

/// `class` in `home`: finished attempts (dear to mark) between unfinished ones (quick).
fn class(home: &Path, finished: usize) {
    let folder = home.join("class");
    std::fs::create_dir(&folder).unwrap();
    let short = tempfile::tempdir().unwrap();
    let (unfinished, _) = made(short.path());
    for i in 0..finished {
        std::fs::copy(&unfinished, folder.join(format!("{i}-begun.attempt"))).unwrap();
        std::fs::copy(home.join("a.attempt"), folder.join(format!("{i}-done.attempt"))).unwrap();
    }
    std::fs::copy(&unfinished, folder.join(format!("{finished}-begun.attempt"))).unwrap();
}

fn command(home: &Path, args: &[&str]) -> Command {
    let mut command = pinhole(home);
    command.env("RAYON_NUM_THREADS", "1").arg("mark").args(args);
    command
}

fn mark(home: &Path, args: &[&str], code: i32) -> String {
    ends_with_code(&command(home, args).output().unwrap(), code)
}

/// The row of an attempt in `t.csv`, by the names of its columns.
fn row(home: &Path, attempt: &str) -> impl Fn(&str) -> String {
    let text = std::fs::read_to_string(home.join("t.csv")).unwrap();
    let head: Vec<String> = text.lines().next().unwrap().split(',').map(str::to_owned).collect();
    let line = text.lines().find(|l| l.starts_with(attempt)).unwrap_or_else(|| panic!("{attempt}: {text}"));
    // The error is the last cell and alone may hold commas.
    let cells: Vec<String> = line.splitn(head.len(), ',').map(str::to_owned).collect();
    move |column| cells[head.iter().position(|h| h == column).unwrap()].clone()
}

/// Kills it after `lines` more lines of progress and a moment; gives the lines that were seen. None when it ended first.
fn killed_after(child: &mut Child, lines: usize, moment: Duration) -> Option<Vec<String>> {
    let mut progress = BufReader::new(child.stderr.take().unwrap()).lines();
    let mut seen: Vec<String> = progress.by_ref().take(lines).map(Result::unwrap).collect();
    std::thread::sleep(moment);
    child.kill().unwrap();
    let status = child.wait().unwrap();
    seen.extend(progress.map_while(Result::ok));
    (status.code().is_none()).then_some(seen)
}

#[test]
fn inv_killed_again_and_again_it_goes_on_to_the_bytes_of_one_that_was_never_stopped() {
    let home = finished();
    let home = home.path();
    class(home, 2);
    let bytes = |name: &str| std::fs::read(home.join(name)).unwrap();
    mark(home, &["class", "--results", "whole", "--csv", "whole.csv", "--json", "whole.json"], 1);

    let seed = dice::seed();
    let mut dice = Dice::new(seed, 1);
    let (mut kept, mut kills) = (0, 0);
    // A dear one is at work when the quick one before it has been told; each round gets at least one further.
    while kept < 5 {
        let mut child = command(home, &["class", "--csv", "k.csv", "--json", "k.json"])
            .stdout(Stdio::null())
            .stderr(Stdio::piped())
            .spawn()
            .unwrap();
        let moment = Duration::from_millis((dice.unit() * 300.0) as u64);
        let Some(seen) = killed_after(&mut child, kept + 1, moment) else { break };
        kills += 1;
        let stood = seen.iter().filter(|line| line.contains("marked before")).count();
        assert_eq!(stood, kept, "seed {seed:x}: a row that was told was lost, or one more stands: {seen:?}");
        assert!(!home.join("k.csv").exists(), "no table before all is marked");
        // What was written down and not told any more counts too.
        let rows = std::fs::read_to_string(home.join("class/marks/marks-1-of-1.results")).unwrap();
        let whole = rows.split_inclusive('\n').filter(|line| line.ends_with('\n'));
        kept = whole.filter(|line| line.starts_with("{\"attempt\"")).count();
        assert!(seen.len() <= kept, "seed {seed:x}: {} told, {kept} kept", seen.len());
    }
    // While two dear ones are left, none can end before it is killed.
    assert!(2 <= kills, "{kills} kills, seed {seed:x}");
    let text = mark(home, &["class", "--csv", "k.csv", "--json", "k.json"], 1);
    assert!(kept <= text.matches("marked before").count(), "{text}");
    assert!(bytes("whole.csv") == bytes("k.csv"), "table, seed {seed:x}");
    assert!(bytes("whole.json") == bytes("k.json"), "sheets, seed {seed:x}");
}

/// `class/NAME.attempt`, an unfinished attempt altered and chained anew.
fn altered(home: &Path, name: &str, alter: impl FnOnce(&mut Vec<Value>)) {
    let short = tempfile::tempdir().unwrap();
    let (path, _) = made(short.path());
    let mut lines = values(&std::fs::read(path).unwrap());
    alter(&mut lines);
    std::fs::write(home.join(format!("class/{name}.attempt")), chained_values(&lines)).unwrap();
}

#[test]
fn a_pack_a_job_or_a_file_that_is_missing_is_told_in_its_row_and_stops_no_other() {
    let home = tempfile::tempdir().unwrap();
    let home = home.path();
    class(home, 0);
    altered(home, "1-pack", |lines| {
        lines[0]["pack"] = json!("second-shift");
        lines[0]["job"] = json!("second-shift/hum-at-the-lights");
    });
    altered(home, "2-job", |lines| lines[0]["job"] = json!("first-shift/no-such-job"));
    altered(home, "3-digest", |lines| lines[0]["job_digest"] = json!("0".repeat(64)));
    std::fs::create_dir(home.join("class/4-folder.attempt")).unwrap();
    std::fs::write(home.join("class/5-empty.attempt"), "").unwrap();
    let mut wrong = vec![
        ("1-pack", "second-shift"),
        ("2-job", "no-such-job"),
        ("3-digest", "use the pack it was made with"),
        ("4-folder", "a folder"),
        ("5-empty", "5-empty.attempt"),
    ];
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt as _;
        std::os::unix::fs::symlink("nowhere", home.join("class/6-gone.attempt")).unwrap();
        wrong.push(("6-gone", "no such file"));
        let locked = home.join("class/7-locked.attempt");
        std::fs::copy(home.join("class/0-begun.attempt"), &locked).unwrap();
        std::fs::set_permissions(&locked, std::fs::Permissions::from_mode(0o000)).unwrap();
        // Who may read everything (root) reads it all the same; then there is nothing to be told.
        if std::fs::File::open(&locked).is_err() {
            wrong.push(("7-locked", "permission"));
        }
    }
    std::fs::copy(home.join("class/0-begun.attempt"), home.join("class/9-begun.attempt")).unwrap();
    let text = mark(home, &["class", "--csv", "t.csv"], 2);
    assert!(text.contains(&format!("{} cannot be marked", wrong.len())), "{text}");
    for (name, why) in wrong {
        let cell = row(home, name);
        let error = cell("error");
        assert!(error.contains("cannot be marked: ") && error.contains(why), "{name}: {error}");
        assert_eq!(cell("finished"), "", "{name}");
    }
    for name in ["0-begun", "9-begun"] {
        assert_eq!(row(home, name)("finished"), "false", "{name}");
        assert_eq!(row(home, name)("error"), "", "{name}");
    }
}

#[test]
fn attempts_and_results_of_another_version_say_so_and_stop_no_other() {
    let home = tempfile::tempdir().unwrap();
    let home = home.path();
    class(home, 0);
    // One that comes out the same today, and one that does not.
    altered(home, "1-older", |lines| lines[0]["engine"] = json!("0.0.9"));
    altered(home, "2-differs", |lines| {
        lines[0]["engine"] = json!("0.0.9");
        lines[2]["digest"] = json!("0123456789abcdef");
    });
    let shard =
        |k: &str| mark(home, &["class", "--shard", k, "--results", "shards"], if k == "3/3" { 2 } else { 1 });
    let text = mark(home, &["class", "--csv", "t.csv", "--json", "t.json"], 2);
    assert!(text.contains("2 not finished, 1 cannot be marked"), "{text}");
    let error = row(home, "2-differs")("error");
    assert!(error.contains("0.0.9") && error.contains(env!("CARGO_PKG_VERSION")), "{error}");
    let sheets: Value = serde_json::from_slice(&std::fs::read(home.join("t.json")).unwrap()).unwrap();
    let notices = |i: usize| sheets[i]["sheet"]["notices"].to_string();
    assert!(!notices(0).contains("0.0.9") && notices(1).contains("0.0.9"), "{}", notices(1));

    // Rows that another version wrote (their keys are others) are not taken for this one's.
    let kept = home.join("class/marks/marks-1-of-1.results");
    let text = std::fs::read_to_string(&kept).unwrap();
    let key = serde_json::from_str::<Value>(text.lines().nth(1).unwrap()).unwrap()["key"].clone();
    std::fs::write(&kept, text.replace(key.as_str().unwrap(), &"0".repeat(64))).unwrap();
    let said = mark(home, &["class", "--csv", "again.csv"], 2);
    assert_eq!(said.matches("marked before").count(), 1, "the other unfinished one: {said}");
    let read = |name: &str| std::fs::read(home.join(name)).unwrap();
    assert!(read("t.csv") == read("again.csv"));

    // Shards of two versions are not mixed.
    for k in ["1/3", "2/3", "3/3"] {
        shard(k);
    }
    let kept = home.join("shards/marks-2-of-3.results");
    let text = std::fs::read_to_string(&kept).unwrap();
    let now = format!("\"engine\":\"{}\"}}\n", env!("CARGO_PKG_VERSION"));
    let older = text.strip_suffix(&now).unwrap();
    std::fs::write(&kept, format!("{older}\"engine\":\"0.0.9\"}}\n")).unwrap();
    let error = mark(home, &["--collect", "shards", "--csv", "c.csv"], 2);
    assert!(error.contains("0.0.9") && error.contains("one version"), "{error}");
    assert!(!home.join("c.csv").exists());
    shard("2/3");
    mark(home, &["--collect", "shards", "--csv", "c.csv"], 2);
    assert!(read("t.csv") == read("c.csv"));
}
