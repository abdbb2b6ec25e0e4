//! Pipes, devices, sockets and folders under a file's name, wherever the program reads one: refused at once, never
//! waited for, never read without end.
#![cfg(unix)]

use std::path::Path;
use std::process::{Command, Output, Stdio};
use std::time::{Duration, Instant};

use super::bad_input::data;
use super::{ends_with_code, pinhole, program};

/// Nobody waits longer for a refusal, even on a busy machine.
const PATIENCE: Duration = Duration::from_secs(60);

/// Runs it; kills it and fails when it does not end.
fn output(command: &mut Command) -> Output {
    let mut child = command.stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
    let clock = Instant::now();
    while child.try_wait().unwrap().is_none() {
        if PATIENCE < clock.elapsed() {
            child.kill().unwrap();
            panic!("{command:?} does not end");
        }
        std::thread::sleep(Duration::from_millis(20));
    }
    child.wait_with_output().unwrap()
}

fn fifo(path: &Path) {
    assert!(Command::new("mkfifo").arg(path).status().unwrap().success());
}

/// Something special of each kind, with what it is called.
fn specials(home: &Path) -> Vec<(String, &'static str)> {
    fifo(&home.join("pipe"));
    std::fs::create_dir(home.join("folder")).unwrap();
    // The file stays when the listener has gone.
    drop(std::os::unix::net::UnixListener::bind(home.join("socket")).unwrap());
    [("pipe", "a pipe"), ("folder", "a folder"), ("socket", "a socket"), ("/dev/zero", "a device")]
        .map(|(name, what)| (name.to_owned(), what))
        .into()
}

#[test]
fn as_attempt_and_as_script() {
    let home = tempfile::tempdir().unwrap();
    for (name, what) in specials(home.path()) {
        let name = name.as_str();
        let mut commands = vec![
            vec!["replay", name],
            vec!["text", "--attempt", name, "--resume"],
            vec!["text", "first-shift/hum-at-the-lights", "--script", name],
            vec!["trace", "alder", "--csv", "t.csv", "--for", "1", "--script", name],
        ];
        // A folder of attempts is marked; `bench::folder` says what of one without any.
        if name != "folder" {
            commands.push(vec!["mark", name]);
        }
        for args in commands {
            let text = ends_with_code(&output(pinhole(home.path()).args(&args)), 2);
            assert!(text.contains(what) && text.contains(name), "{args:?}: {text}");
        }
    }
    // A script comes through a pipe by asking for it, and not without end.
    let mut command = pinhole(home.path());
    command.args(["text", "first-shift/hum-at-the-lights", "--attempt", "x.attempt", "--script", "-"]);
    let text = ends_with_code(&output(command.stdin(std::fs::File::open("/dev/zero").unwrap())), 2);
    assert!(text.contains("standard input") && text.contains("at most 1048576 bytes"), "{text}");
    let mut command = pinhole(home.path());
    command.args(["text", "first-shift/hum-at-the-lights", "--attempt", "x.attempt"]);
    let text = ends_with_code(&output(command.stdin(std::fs::File::open("/dev/zero").unwrap())), 2);
    assert!(text.contains("standard input"), "{text}");
}

#[test]
fn a_script_through_standard_input_is_played() {
    use std::io::Write as _;
    let home = tempfile::tempdir().unwrap();
    let mut child = pinhole(home.path())
        .args(["text", "first-shift/hum-at-the-lights", "--attempt", "x.attempt", "--script", "-"])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    child.stdin.take().unwrap().write_all("\u{feff}card\nchocks on\n".as_bytes()).unwrap();
    let text = ends_with_code(&child.wait_with_output().unwrap(), 1);
    assert!(text.contains("chocks on"), "{text}");
}

#[test]
fn in_the_folder_of_attempts() {
    let home = tempfile::tempdir().unwrap();
    let attempts = home.path().join("kept");
    std::fs::create_dir(&attempts).unwrap();
    fifo(&attempts.join("a.attempt"));
    std::fs::create_dir(attempts.join("b.attempt")).unwrap();
    std::os::unix::fs::symlink("/dev/zero", attempts.join("c.attempt")).unwrap();
    for args in [&["text", "first-shift/hum-at-the-lights"][..], &["text"]] {
        let mut command = pinhole(home.path());
        ends_with_code(&output(command.arg("--attempts").arg(&attempts).args(args)), 0);
    }
}

#[test]
fn as_a_data_file() {
    for file in [
        "assets/vehicles/alder.ron",
        "assets/instruments/gauge.ron",
        "assets/spares/alder.ron",
        "scenarios/first-shift/jobs/hum-at-the-lights.ron",
        "scenarios/first-shift/reference/hum-at-the-lights.script",
    ] {
        let data = data();
        let path = data.path().join(file);
        std::fs::remove_file(&path).unwrap();
        fifo(&path);
        let home = tempfile::tempdir().unwrap();
        let mut command = Command::new(program());
        command.current_dir(home.path()).env("HOME", home.path()).stdin(Stdio::null());
        command.arg("--data").arg(data.path()).args(["text", "first-shift/hum-at-the-lights"]);
        let text = ends_with_code(&output(&mut command), 2);
        let name = Path::new(file).file_name().unwrap().to_str().unwrap();
        assert!(text.contains(name) && text.contains("a pipe"), "{file}: {text}");
    }
}
