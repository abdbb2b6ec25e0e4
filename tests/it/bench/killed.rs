//! Killed at any moment the program loses at most the action in hand, whether a script or a pipe tells it what to do.
//! (The window is killed in `game/tests/window/kills.rs`; `tests/kills.sh` does all of it a thousand times.)

use std::io::{Read as _, Write as _};
use std::path::{Path, PathBuf};
use std::process::{Child, Stdio};
use std::time::{Duration, Instant};

use assess::attempt::Attempt;
use assess::pack::Library;
use assess::play;

use dice::Dice;

use super::{ends_with_code, pinhole, program, root};

const JOB: &str = "first-shift/hum-at-the-lights";

/// Kills in one test; `PINHOLE_KILLS` sets another number.
fn kills() -> usize {
    match std::env::var("PINHOLE_KILLS") {
        Ok(text) => text.parse().unwrap_or_else(|_| panic!("PINHOLE_KILLS={text}: expected a number")),
        Err(_) => 30,
    }
}

/// Actions begun, told from what stood on the screen: each line is shown before it is done.
fn begun(screen: &str) -> usize {
    screen.lines().filter(|l| l.contains(" min worked> ")).count()
}

/// By which way the words come.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Way {
    Script,
    Pipe,
}

/// Waits until the file is there (or the program gone).
fn until_there(file: &Path, child: &mut Child) {
    while !file.exists() && child.try_wait().unwrap().is_none() {
        std::thread::sleep(Duration::from_micros(200));
    }
}

/// Reads what it says while it is at work: a full pipe would hold it up.
fn read(child: &mut Child) -> std::thread::JoinHandle<String> {
    let mut stdout = child.stdout.take().unwrap();
    std::thread::spawn(move || {
        let mut screen = Vec::new();
        stdout.read_to_end(&mut screen).unwrap();
        String::from_utf8_lossy(&screen).into_owned()
    })
}

struct Work<'a> {
    home: &'a Path,
    way: Way,
    words: String,
}

impl Work<'_> {
    fn start(&self, name: &str) -> (Child, PathBuf) {
        let file = self.home.join(name);
        let mut command = pinhole(self.home);
        command.args(["text", JOB, "--seed", "5eed", "--attempt"]).arg(&file);
        command.stdout(Stdio::piped()).stderr(Stdio::null());
        if self.way == Way::Script {
            let script = self.home.join("work.script");
            std::fs::write(&script, &self.words).unwrap();
            return (command.arg("--script").arg(script).spawn().unwrap(), file);
        }
        let mut child = command.stdin(Stdio::piped()).spawn().unwrap();
        // It fits into the pipe, so nobody waits here; a program that is gone already takes nothing any more.
        drop(child.stdin.take().unwrap().write_all(self.words.as_bytes()));
        (child, file)
    }
}

fn killed(way: Way) {
    let home = tempfile::tempdir().unwrap();
    let reference = root().join("scenarios/first-shift/reference/hum-at-the-lights.script");
    let reference = std::fs::read_to_string(reference).unwrap();
    let is_work = |line: &&str| {
        let line = line.trim();
        // Everything up to the end, but not the hand-back: marking is not what is tested here. What stands on the
        // dial is noted in scripts only.
        let skipped = line.is_empty() || line.starts_with('#') || line == "hand back";
        !skipped && (way == Way::Script || !line.starts_with("note"))
    };
    // Three times over, so that there is time to kill it in: what is refused then is an action too.
    let again = if way == Way::Script { "try " } else { "" };
    let words: String = (0..3)
        .flat_map(|_| reference.lines().filter(is_work))
        .map(|l| if l.starts_with("try ") { format!("{l}\n") } else { format!("{again}{l}\n") })
        .collect();
    let work = Work { home: home.path(), way, words };
    let library = Library::open(&root()).unwrap();
    let job = library.job(JOB).unwrap();

    // How long does it take to begin, and how long is the work? (The program may have to be built first.)
    program();
    let clock = Instant::now();
    let (mut child, file) = work.start("whole.attempt");
    until_there(&file, &mut child);
    let beginning = clock.elapsed();
    let screen = read(&mut child).join().unwrap();
    child.wait().unwrap();
    let whole = clock.elapsed() - beginning;
    let actions = Attempt::read(&file).unwrap().steps.len();
    // The prompt at the end of the pipe stands there too.
    assert_eq!(begun(&screen), actions, "one line on the screen for each action: {screen}");

    let seed = dice::seed();
    let mut dice = Dice::new(seed, 1);
    let (mut cut_short, mut before_the_file, mut torn_lines) = (0, 0, 0);
    for i in 0..kills() {
        let (mut child, file) = work.start(&format!("killed-{i}.attempt"));
        let screen = read(&mut child);
        // One in eight while it begins; the others at work, however long the machine takes to begin.
        if dice.unit() < 0.125 {
            std::thread::sleep(beginning.mul_f64(dice.unit()));
        } else {
            until_there(&file, &mut child);
            std::thread::sleep(whole.mul_f64(dice.unit()));
        }
        // SIGKILL on Unix: nothing of the program runs any more.
        child.kill().unwrap();
        child.wait().unwrap();
        let begun = begun(&screen.join().unwrap());
        if !file.exists() {
            // The file appears whole, header and all, or not at all; nothing may have been done by then.
            assert_eq!(begun, 0, "kill {i}");
            before_the_file += 1;
            continue;
        }
        torn_lines += usize::from(std::fs::read(&file).unwrap().last() != Some(&b'\n'));
        let attempt = Attempt::read(&file).unwrap_or_else(|e| panic!("kill {i}: {e}"));
        let kept = attempt.steps.len();
        assert!(begun <= kept + 1 && kept <= begun, "kill {i}: {begun} actions begun, {kept} kept");
        play::replay(&attempt, &job).unwrap_or_else(|e| panic!("kill {i}: {e}"));
        let carry_on =
            pinhole(home.path()).args(["text", "--resume", "--attempt"]).arg(&file).output().unwrap();
        let text = ends_with_code(&carry_on, 0);
        assert!(text.contains(&format!("Carried on after {kept} action")), "{text}");
        assert_eq!(Attempt::read(&file).unwrap().sittings.len(), 2, "kill {i}: opened again once");
        cut_short += usize::from(kept < actions);
        std::fs::remove_file(&file).unwrap();
    }
    println!(
        "{way:?}: {} kills, {cut_short} cut short, {before_the_file} before the file was there, {torn_lines} torn lines; \
         all others reopen, no shown action lost, seed {seed:x}",
        kills()
    );
    assert!(kills() / 4 < cut_short, "most kills must fall inside the attempt: {cut_short} of {}", kills());
}

#[test]
fn inv_killed_at_any_moment_a_script_loses_at_most_one_action() {
    killed(Way::Script);
}

#[test]
fn inv_killed_at_any_moment_a_pipe_loses_at_most_one_action() {
    killed(Way::Pipe);
}
