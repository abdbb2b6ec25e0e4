//! A display of its own, the program on it, and what a screen reader is told of it.

use std::io::{BufRead as _, BufReader, Write as _};
use std::path::PathBuf;
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

use assess::attempt::Attempt;
use window::tree::{Node, SETTLED, Told};

/// Keys of letters and digits that follow each other faster are a word that was typed into no field, and do nothing
/// (the window's `ui/keys/typing.rs`): hands that choose keys are slower.
const BETWEEN_LETTERS: Duration = Duration::from_millis(600);
/// How long anything may take: software rendering on a busy machine.
const PATIENCE: Duration = Duration::from_secs(90);
/// Between two looks.
const GLANCE: Duration = Duration::from_millis(25);
/// Size of the display.
pub(crate) const SIZE: (u32, u32) = (1280, 720);

/// What is missing for a test with a display; `None` when nothing is.
pub(crate) fn missing() -> Option<String> {
    for tool in ["Xvfb", "xdotool"] {
        let found = std::env::var_os("PATH")
            .is_some_and(|path| std::env::split_paths(&path).any(|folder| folder.join(tool).is_file()));
        if !found {
            return Some(format!("{tool} is not installed"));
        }
    }
    window::probe::adapter().err().map(|why| why.to_string())
}

/// Says that `count` tests are left out, and why.
pub(crate) fn skipped(count: u32) -> bool {
    match missing() {
        None => false,
        Some(why) => {
            // Past the harness, which keeps what passing tests print to itself.
            drop(writeln!(std::io::stderr(), "skipped: {count} ({why})"));
            true
        }
    }
}

/// The program on a display of its own. Both end with it.
pub(crate) struct Screen {
    server: Child,
    program: Child,
    display: String,
    tree: PathBuf,
    /// The attempt's file.
    pub(crate) attempt: PathBuf,
    /// Leaving the program is no fault.
    may_be_left: bool,
    /// Keeps the folder.
    _home: tempfile::TempDir,
}

/// A virtual display under a number the server chooses.
fn server() -> (Child, String) {
    let (width, height) = SIZE;
    let mut server = Command::new("Xvfb")
        .args(["-displayfd", "1", "-screen", "0", &format!("{width}x{height}x24"), "-nolisten", "tcp"])
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .unwrap();
    let mut number = String::new();
    BufReader::new(server.stdout.take().unwrap()).read_line(&mut number).unwrap();
    (server, format!(":{}", number.trim()))
}

impl Screen {
    /// Opens the window in a job.
    pub(crate) fn open(job: &str, seed: &str) -> Self {
        let home = tempfile::tempdir().unwrap();
        let (server, display) = server();
        let attempt = home.path().join("done.attempt");
        let tree = home.path().join("tree.json");
        let program = Command::new(env!("CARGO_BIN_EXE_pinhole"))
            .args(["window", job, "--seed", seed])
            .arg("--attempt")
            .arg(&attempt)
            .arg("--tree")
            .arg(&tree)
            .env("DISPLAY", &display)
            .env("HOME", home.path())
            .env("XDG_CONFIG_HOME", home.path())
            .env("XDG_DATA_HOME", home.path())
            .env("LANG", "en_GB.UTF-8")
            .env_remove("LC_ALL")
            .env_remove("WAYLAND_DISPLAY")
            .current_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/.."))
            .spawn()
            .unwrap();
        let mut screen = Self { server, program, display, tree, attempt, may_be_left: false, _home: home };
        screen.until("the window", |nodes| !nodes.is_empty());
        // There is no window manager to give it the keyboard.
        screen.hand(&["search", "--sync", "--onlyvisible", "--name", "pinhole", "windowfocus", "--sync"]);
        screen
    }

    /// Everything with a name, as a screen reader is told it now.
    pub(crate) fn nodes(&mut self) -> Vec<Node> {
        self.told().nodes
    }

    /// The same, for hands that may choose to leave the program.
    pub(crate) fn that_may_be_left(mut self) -> Self {
        self.may_be_left = true;
        self
    }

    /// Whether the program has ended as it should when it is left.
    pub(crate) fn has_ended(&mut self) -> bool {
        self.program.try_wait().unwrap().is_some_and(|status| status.success())
    }

    pub(crate) fn told(&mut self) -> Told {
        if let Some(status) = self.program.try_wait().unwrap() {
            if self.may_be_left && status.success() {
                // Whoever waits for an answer waits no longer.
                return Told { heard: u64::MAX, frames: SETTLED, ..Told::default() };
            }
            panic!("the program ended: {status}");
        }
        std::fs::read(&self.tree)
            .ok()
            .and_then(|bytes| serde_json::from_slice(&bytes).ok())
            .unwrap_or_default()
    }

    /// Waits until what is seen is so.
    pub(crate) fn until(&mut self, what: &str, holds: impl Fn(&[Node]) -> bool) -> Vec<Node> {
        self.until_within(PATIENCE, what, holds)
    }

    /// As [`Self::until`], with patience of its own.
    pub(crate) fn until_within(
        &mut self,
        patience: Duration,
        what: &str,
        holds: impl Fn(&[Node]) -> bool,
    ) -> Vec<Node> {
        let began = Instant::now();
        loop {
            let nodes = self.nodes();
            if holds(&nodes) {
                return nodes;
            }
            if patience < began.elapsed() {
                let names: Vec<String> = nodes.iter().map(|n| format!("{} {:?}", n.role, n.name)).collect();
                panic!("waited for {what}; there is:\n{}", names.join("\n"));
            }
            std::thread::sleep(GLANCE);
        }
    }

    /// Waits for something with this name; the last one, which lies on top.
    pub(crate) fn find(&mut self, name: &str) -> Node {
        let is = |n: &&Node| n.name == name && !n.disabled;
        self.until(&format!("{name:?}"), |nodes| nodes.iter().any(|n| is(&n)))
            .iter()
            .rfind(is)
            .unwrap()
            .clone()
    }

    /// Uses pointer and keyboard.
    pub(crate) fn hand(&self, words: &[&str]) {
        let status = Command::new("xdotool").args(words).env("DISPLAY", &self.display).status().unwrap();
        assert!(status.success(), "xdotool {words:?}");
    }

    /// Uses pointer and keyboard, and waits until the window has taken in `count` of it and shows what came
    /// of it.
    fn hand_seen(&mut self, count: usize, words: &[&str]) {
        let before = self.told().heard;
        self.hand(words);
        let began = Instant::now();
        loop {
            let told = self.told();
            if before.saturating_add(count as u64) <= told.heard && told.frames == SETTLED {
                return;
            }
            assert!(began.elapsed() < PATIENCE, "the window does not answer to {words:?}");
            std::thread::sleep(GLANCE);
        }
    }

    /// Presses a key, or several at once: `ctrl+a`.
    pub(crate) fn key(&mut self, key: &str) {
        if key.len() == 1 {
            std::thread::sleep(BETWEEN_LETTERS);
        }
        self.hand_seen(key.split('+').count(), &["key", "--clearmodifiers", key]);
    }

    /// Presses a key (one, without modifiers) several times, as fast as a hand does.
    pub(crate) fn key_times(&mut self, key: &str, times: usize) {
        let mut words = vec!["key", "--clearmodifiers", "--delay", "30"];
        words.extend(std::iter::repeat_n(key, times));
        self.hand_seen(times, &words);
    }

    /// Types text.
    pub(crate) fn type_in(&mut self, text: &str) {
        self.hand_seen(text.chars().count(), &["type", "--delay", "15", "--", text]);
    }

    /// Turns the wheel there, up or down.
    pub(crate) fn wheel_at(&mut self, x: f64, y: f64, up: bool) {
        self.hand(&["mousemove", &format!("{x:.0}"), &format!("{y:.0}")]);
        self.hand_seen(1, &["click", if up { "4" } else { "5" }]);
    }

    /// Moves the pointer there and clicks.
    pub(crate) fn click_at(&mut self, x: f64, y: f64) {
        self.hand(&["mousemove", &format!("{x:.0}"), &format!("{y:.0}")]);
        // Down and up.
        self.hand_seen(2, &["click", "1"]);
    }

    /// Ends the program where it stands.
    pub(crate) fn kill(&mut self) {
        self.program.kill().unwrap();
        self.program.wait().unwrap();
    }

    /// Number of actions in the attempt's file.
    pub(crate) fn actions(&self) -> usize {
        Attempt::read(&self.attempt).map_or(0, |a| a.steps.len())
    }

    /// Waits until the file holds `n` actions.
    pub(crate) fn until_actions(&mut self, n: usize, doing: &str) {
        let began = Instant::now();
        while self.actions() < n {
            assert!(
                began.elapsed() < PATIENCE,
                "{doing}: nothing came of it; on the screen:\n{}",
                self.names()
            );
            std::thread::sleep(GLANCE);
            self.nodes();
        }
    }

    /// All names, for messages.
    pub(crate) fn names(&mut self) -> String {
        self.nodes().iter().map(|n| format!("{} {:?} {:?}\n", n.role, n.name, n.at)).collect()
    }

    /// Resident memory of the program, MB (Linux).
    pub(crate) fn memory_mb(&self) -> Option<f64> {
        let text = std::fs::read_to_string(format!("/proc/{}/status", self.program.id())).ok()?;
        let line = text.lines().find(|l| l.starts_with("VmRSS:"))?;
        Some(line.split_whitespace().nth(1)?.parse::<f64>().ok()? / 1024.0)
    }

    /// Takes a picture of the display, for a person to look at when something went wrong.
    pub(crate) fn picture(&self, to: &std::path::Path) {
        let done =
            Command::new("import").args(["-window", "root"]).arg(to).env("DISPLAY", &self.display).status();
        drop(done);
    }
}

impl Drop for Screen {
    fn drop(&mut self) {
        if std::thread::panicking() {
            let to = std::env::temp_dir().join(format!("pinhole-window-{}.png", self.program.id()));
            self.picture(&to);
            println!("picture of the display: {}", to.display());
        }
        drop(self.program.kill());
        drop(self.program.wait());
        drop(self.server.kill());
        drop(self.server.wait());
    }
}
