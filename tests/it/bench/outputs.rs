//! What the program writes never replaces what it reads, an attempt, or a stranger's file; a full disk leaves the
//! old file whole.

use std::path::{Path, PathBuf};
use std::process::Output;
use std::sync::OnceLock;

use assess::attempt::Attempt;

use super::{ends_with_code, pinhole, program, root};

/// The job whose marking is quickest.
pub(super) const JOB: &str = "first-shift/flat-after-the-weekend";

pub(super) fn reference() -> PathBuf {
    root().join("scenarios/first-shift/reference/flat-after-the-weekend.script")
}

/// A finished and marked attempt, `a.attempt`, with its sheet, in a folder of its own. It is played once for all tests.
pub(super) fn finished() -> tempfile::TempDir {
    static PLAYED: OnceLock<tempfile::TempDir> = OnceLock::new();
    let played = PLAYED.get_or_init(|| {
        let home = tempfile::tempdir().unwrap();
        let output = pinhole(home.path())
            .args(["text", JOB, "--seed", "5eed", "--attempt", "a.attempt", "--script"])
            .arg(reference())
            .output()
            .unwrap();
        ends_with_code(&output, 0);
        home
    });
    let home = tempfile::tempdir().unwrap();
    for name in ["a.attempt", "a.html"] {
        std::fs::copy(played.path().join(name), home.path().join(name)).unwrap();
    }
    home
}

fn run(home: &Path, args: &[&str]) -> Output {
    pinhole(home).args(args).output().unwrap()
}

/// No half-written file is left.
fn no_litter(folder: &Path) {
    for entry in std::fs::read_dir(folder).unwrap() {
        let name = entry.unwrap().file_name().into_string().unwrap();
        assert!(!name.ends_with(".part"), "{name}");
    }
}

#[test]
fn no_output_replaces_an_input_an_attempt_or_a_strangers_file() {
    let home = finished();
    let at = |name: &str| home.path().join(name);
    let attempt = std::fs::read(at("a.attempt")).unwrap();
    std::fs::write(at("notes.txt"), "my notes\n").unwrap();
    std::fs::copy(at("a.attempt"), at("b.attempt")).unwrap();
    std::fs::hard_link(at("a.attempt"), at("hard.csv")).unwrap();
    std::fs::create_dir(at("sub")).unwrap();
    #[cfg(unix)]
    std::os::unix::fs::symlink("a.attempt", at("soft.csv")).unwrap();
    for flag in ["--csv", "--html", "--json"] {
        let mut names = vec![
            ("a.attempt", "is read by this command"),
            ("./sub/../a.attempt", "is read by this command"),
            ("hard.csv", "is read by this command"),
            ("b.attempt", "is an attempt"),
            ("notes.txt", "move it away"),
            ("sub", "a folder"),
            ("no/such/x.csv", "no such file or folder"),
        ];
        if cfg!(unix) {
            names.push(("soft.csv", "is read by this command"));
            names.push(("/dev/full", "a device"));
        }
        for (name, wanted) in names {
            let clock = std::time::Instant::now();
            let text = ends_with_code(&run(home.path(), &["mark", "a.attempt", flag, name]), 2);
            assert!(text.contains(wanted) && text.contains(flag), "{flag} {name}: {text}");
            assert!(!text.contains("MARK SHEET"), "told before the work, after {:?}", clock.elapsed());
        }
    }
    // Two outputs of one name; one kind over another.
    let text =
        ends_with_code(&run(home.path(), &["mark", "a.attempt", "--csv", "x", "--json", "sub/../x"]), 2);
    assert!(text.contains("goes there already"), "{text}");
    let text = ends_with_code(&run(home.path(), &["mark", "a.attempt", "--csv", "a.html"]), 2);
    assert!(text.contains("a.html"), "{text}");
    assert!(!at("x").exists());
    assert_eq!(std::fs::read(at("a.attempt")).unwrap(), attempt);
    assert_eq!(std::fs::read(at("b.attempt")).unwrap(), attempt);
    assert_eq!(std::fs::read(at("notes.txt")).unwrap(), b"my notes\n");

    // Its own kind is replaced, a link to it followed, and standard output takes a table too.
    std::fs::write(at("t.csv"), "attempt,job,seat\nold,,\n").unwrap();
    std::fs::write(at("j.json"), "").unwrap();
    #[cfg(unix)]
    std::os::unix::fs::symlink("t.csv", at("link.csv")).unwrap();
    let table = if cfg!(unix) { "link.csv" } else { "t.csv" };
    let output =
        run(home.path(), &["mark", "a.attempt", "--csv", table, "--json", "j.json", "--html", "a.html"]);
    ends_with_code(&output, 0);
    let table = std::fs::read_to_string(at("t.csv")).unwrap();
    assert!(table.lines().nth(1).unwrap().starts_with("a.attempt,"), "{table}");
    assert!(serde_json::from_slice::<serde_json::Value>(&std::fs::read(at("j.json")).unwrap()).is_ok());
    let output = run(home.path(), &["mark", "a.attempt", "--csv", "-"]);
    assert!(ends_with_code(&output, 0).contains(&table), "the table stands on standard output");
    no_litter(home.path());
}

#[test]
fn an_attempt_has_a_name_of_its_own() {
    let home = tempfile::tempdir().unwrap();
    for name in ["a.html", "a.HTML", "a.csv", "a.json", "x.png"] {
        let text = ends_with_code(&run(home.path(), &["text", JOB, "--attempt", name]), 2);
        assert!(text.contains(name) && text.contains(".attempt"), "{text}");
        assert!(!home.path().join(name).exists());
    }
    // A stranger's page where the sheet would go is told before the job, not after it.
    std::fs::write(home.path().join("b.html"), "<!DOCTYPE html><p>mine").unwrap();
    let text = ends_with_code(&run(home.path(), &["text", JOB, "--attempt", "b.attempt"]), 2);
    assert!(text.contains("b.html") && text.contains("mark sheet"), "{text}");
    assert!(!home.path().join("b.attempt").exists());
    // One that appears later is left alone, and the mark is shown and kept all the same.
    let home = tempfile::tempdir().unwrap();
    ends_with_code(&run(home.path(), &["text", JOB, "--seed", "5eed", "--attempt", "b.attempt"]), 0);
    std::fs::write(home.path().join("b.html"), "mine").unwrap();
    let output = pinhole(home.path())
        .args(["text", "--resume", "--attempt", "b.attempt", "--script"])
        .arg(reference())
        .output()
        .unwrap();
    let text = ends_with_code(&output, 2);
    assert!(text.contains("MARK SHEET") && text.contains("pinhole mark b.attempt --html FILE"), "{text}");
    assert_eq!(std::fs::read(home.path().join("b.html")).unwrap(), b"mine");
    assert!(Attempt::read(&home.path().join("b.attempt")).unwrap().mark.is_some());
    // An attempt that is called so all the same, by another's hand, keeps its journal.
    let home = finished();
    std::fs::rename(home.path().join("a.attempt"), home.path().join("c.html")).unwrap();
    let before = std::fs::read(home.path().join("c.html")).unwrap();
    ends_with_code(&run(home.path(), &["text", "--resume", "--attempt", "c.html"]), 0);
    assert_eq!(std::fs::read(home.path().join("c.html")).unwrap(), before);
    assert!(std::fs::read_to_string(home.path().join("c.html.html")).unwrap().starts_with("<!DOCTYPE html>"));
}

#[test]
fn a_trace_replaces_no_script_and_no_stranger() {
    let home = tempfile::tempdir().unwrap();
    let at = |name: &str| home.path().join(name);
    std::fs::write(at("s.script"), "key on\n").unwrap();
    std::fs::write(at("mine.svg"), "<svg></svg>").unwrap();
    let text = ends_with_code(
        &run(home.path(), &["trace", "alder", "--script", "s.script", "--csv", "./s.script", "--for", "1"]),
        2,
    );
    assert!(text.contains("is read by this command"), "{text}");
    let plot = ["trace", "alder", "--show", "pump.inlet", "--for", "2", "--plot"];
    let text = ends_with_code(&run(home.path(), &[&plot[..], &["mine.svg"]].concat()), 2);
    assert!(text.contains("mine.svg"), "{text}");
    assert_eq!(std::fs::read(at("s.script")).unwrap(), b"key on\n");
    assert_eq!(std::fs::read(at("mine.svg")).unwrap(), b"<svg></svg>");
    for _ in 0..2 {
        ends_with_code(&run(home.path(), &[&plot[..], &["own.svg", "--csv", "own.csv"]].concat()), 0);
    }
    // A script that is refused leaves no half of a table, and the old one whole.
    let before = std::fs::read(at("own.csv")).unwrap();
    std::fs::write(at("s.script"), "key on\nwait 30\nopne x\n").unwrap();
    let args = ["trace", "alder", "--script", "s.script", "--csv", "own.csv", "--for", "1"];
    ends_with_code(&run(home.path(), &args), 2);
    assert_eq!(std::fs::read(at("own.csv")).unwrap(), before);
    no_litter(home.path());
}

#[cfg(unix)]
#[test]
fn a_full_disk_leaves_the_old_file_whole() {
    use std::os::unix::fs::PermissionsExt as _;
    let home = finished();
    let at = |name: &str| home.path().join(name);
    let page = std::fs::read(at("a.html")).unwrap();
    std::fs::set_permissions(at("a.html"), std::fs::Permissions::from_mode(0o640)).unwrap();
    // A limit on file size stands in for the full disk: the write fails in the same place.
    let line = format!(
        "trap '' XFSZ; ulimit -f 4; exec '{}' --data '{}' mark a.attempt --html a.html",
        program().display(),
        root().display(),
    );
    let output = std::process::Command::new("sh")
        .current_dir(home.path())
        .env("HOME", home.path())
        .args(["-c", &line])
        .output()
        .unwrap();
    let text = ends_with_code(&output, 2);
    assert!(text.contains("--html a.html cannot be written") && text.contains("make room"), "{text}");
    assert!(text.contains("MARK SHEET"), "the mark is shown all the same: {text}");
    assert_eq!(std::fs::read(at("a.html")).unwrap(), page);
    no_litter(home.path());
    // With room again it is replaced and keeps its rights.
    ends_with_code(&run(home.path(), &["mark", "a.attempt", "--html", "a.html"]), 0);
    assert_eq!(at("a.html").metadata().unwrap().permissions().mode() & 0o777, 0o640);
    assert!(Attempt::read(&at("a.attempt")).unwrap().mark.is_some());
}

#[cfg(target_os = "linux")]
#[test]
fn a_really_full_disk_leaves_the_old_file_whole() {
    let home = finished();
    let disk = tempfile::tempdir().unwrap();
    let mounted = std::process::Command::new("mount")
        .args(["-t", "tmpfs", "-o", "size=256k", "tmpfs"])
        .arg(disk.path())
        .output()
        .is_ok_and(|o| o.status.success());
    if !mounted {
        println!("skipped: no disk can be mounted here");
        return;
    }
    let page = disk.path().join("a.html");
    std::fs::copy(home.path().join("a.html"), &page).unwrap();
    let old = std::fs::read(&page).unwrap();
    // What is left is filled up.
    drop(std::fs::write(disk.path().join("ballast"), vec![0u8; 1 << 20]));
    let output = pinhole(home.path()).args(["mark", "a.attempt", "--html"]).arg(&page).output().unwrap();
    let kept = std::fs::read(&page).unwrap();
    let left: Vec<_> = std::fs::read_dir(disk.path()).unwrap().map(|e| e.unwrap().file_name()).collect();
    assert!(std::process::Command::new("umount").arg(disk.path()).status().unwrap().success());
    let text = ends_with_code(&output, 2);
    assert!(text.contains("a.html") && text.contains("the disk is full"), "{text}");
    assert_eq!(kept, old);
    assert_eq!(left.len(), 2, "{left:?}");
}
