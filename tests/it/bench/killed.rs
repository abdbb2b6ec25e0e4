//! Killed at any moment the program loses at most the action in hand.

use std::io::Read as _;
use std::process::Stdio;
use std::time::{Duration, Instant};

use assess::attempt::Attempt;
use assess::pack::Library;
use assess::session;

use super::{ends_with_code, pinhole, root, test_seed, uniform};

/// Kills in one test.
const KILLS: usize = 50;

/// Actions begun, told from what stood on the screen: each line of the script is shown before it is done.
fn begun(screen: &str) -> usize {
    screen.lines().filter(|l| l.contains(" min worked> ")).count()
}

#[test]
fn inv_killed_at_any_moment_loses_at_most_one_action() {
    let home = tempfile::tempdir().unwrap();
    // Everything up to the end, but not the hand-back: marking is not what is tested here.
    let script =
        std::fs::read_to_string(root().join("scenarios/first-shift/reference/hum-at-the-lights.script"));
    let script = script.unwrap().replace("hand back", "");
    let script_file = home.path().join("work.script");
    std::fs::write(&script_file, &script).unwrap();
    let start = |name: &str| {
        let file = home.path().join(name);
        let child = pinhole(home.path())
            .args(["text", "first-shift/hum-at-the-lights", "--seed", "5eed", "--script"])
            .arg(&script_file)
            .arg("--attempt")
            .arg(&file)
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .unwrap();
        (child, file)
    };
    let library = Library::open(&root()).unwrap();
    let job = library.job("first-shift/hum-at-the-lights").unwrap();

    // How long does all of it take?
    let clock = Instant::now();
    let (mut child, file) = start("whole.attempt");
    let mut screen = String::new();
    child.stdout.take().unwrap().read_to_string(&mut screen).unwrap();
    child.wait().unwrap();
    let whole = clock.elapsed();
    let actions = Attempt::read(&file).unwrap().steps.len();
    assert_eq!(begun(&screen), actions, "one line on the screen for each action");

    let mut u = uniform(test_seed());
    let (mut cut_short, mut before_the_file) = (0, 0);
    for i in 0..KILLS {
        let (mut child, file) = start(&format!("killed-{i}.attempt"));
        std::thread::sleep(Duration::from_secs_f64(whole.as_secs_f64() * u()));
        // SIGKILL on Unix: nothing of the program runs any more.
        child.kill().unwrap();
        let mut screen = Vec::new();
        child.stdout.take().unwrap().read_to_end(&mut screen).unwrap();
        child.wait().unwrap();
        let begun = begun(&String::from_utf8_lossy(&screen));
        if !file.exists() {
            // The file appears whole, header and all, or not at all; nothing may have been done by then.
            assert_eq!(begun, 0, "kill {i}");
            before_the_file += 1;
            continue;
        }
        let attempt = Attempt::read(&file).unwrap_or_else(|e| panic!("kill {i}: {e}"));
        let kept = attempt.steps.len();
        assert!(begun <= kept + 1 && kept <= begun, "kill {i}: {begun} actions begun, {kept} kept");
        session::replay(&attempt, &job).unwrap_or_else(|e| panic!("kill {i}: {e}"));
        let carry_on =
            pinhole(home.path()).args(["text", "--resume", "--attempt"]).arg(&file).output().unwrap();
        let text = ends_with_code(&carry_on, 0);
        assert!(text.contains(&format!("Carried on after {kept} action")), "{text}");
        cut_short += usize::from(kept < actions);
    }
    println!("{KILLS} kills: {cut_short} cut short, {before_the_file} before the file was there");
    assert!(KILLS / 4 < cut_short, "most kills must fall inside the attempt: {cut_short} of {KILLS}");
}
