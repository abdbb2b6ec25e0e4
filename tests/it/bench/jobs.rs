//! Whole attempts through the command line: the shipped jobs done competently, and four ways to fail.

use std::path::{Path, PathBuf};

use super::{ends_with_code, pinhole, root};

/// Seed of the worlds of these tests; any other must do as well.
const SEED: &str = "5eed";

/// A played attempt with the sheet that was shown.
struct Played {
    home: tempfile::TempDir,
    file: PathBuf,
    sheet: String,
}

/// Plays a script from card to mark sheet, checks the exit code, and replays the attempt.
fn play(job: &str, script: &Path, code: i32) -> Played {
    let home = tempfile::tempdir().unwrap();
    let file = home.path().join("a.attempt");
    let output = pinhole(home.path())
        .args(["text", job, "--seed", SEED, "--script"])
        .arg(script)
        .arg("--attempt")
        .arg(&file)
        .output()
        .unwrap();
    let text = ends_with_code(&output, code);
    let sheet =
        text.split_once("MARK SHEET").unwrap_or_else(|| panic!("no mark sheet in {text}")).1.to_owned();
    let page = std::fs::read_to_string(file.with_extension("html")).unwrap();
    // Self-contained: plots inside, nothing fetched. (The name space of SVG is a name, not a fetch.)
    assert!(page.contains("<svg"));
    for fetch in ["src=\"http", "href=\"http", "url(http", "@import", "<script src"] {
        assert!(!page.contains(fetch), "the page fetches something: {fetch}");
    }

    let replay = pinhole(home.path()).arg("replay").arg(&file).output().unwrap();
    let text = ends_with_code(&replay, 0);
    assert!(text.contains("bit for bit"), "{text}");
    Played { home, file, sheet }
}

fn reference(job: &str) -> Played {
    let script = root().join(format!("scenarios/first-shift/reference/{job}.script"));
    let played = play(&format!("first-shift/{job}"), &script, 0);
    assert!(played.sheet.contains("\nCOMPETENT "), "{}", played.sheet);
    played
}

fn failed(script: &str) -> Played {
    failed_at("hum-at-the-lights", script)
}

fn failed_at(job: &str, script: &str) -> Played {
    let script = root().join(format!("tests/scripts/{script}.script"));
    let played = play(&format!("first-shift/{job}"), &script, 1);
    assert!(played.sheet.contains("\nNOT YET COMPETENT "), "{}", played.sheet);
    played
}

/// Value of a part of the mark, from its line on the sheet: `V  verdict      1.00    33.2 of …`.
fn part(played: &Played, letter: &str) -> f64 {
    let line = played.sheet.lines().find(|l| l.starts_with(&format!("{letter}  "))).unwrap();
    line.split_whitespace().nth(2).unwrap().parse().unwrap()
}

#[test]
fn flat_after_the_weekend_is_done_competently() {
    reference("flat-after-the-weekend");
}

#[test]
fn hard_first_press_is_done_competently() {
    reference("hard-first-press");
}

#[test]
fn new_in_the_mountains_is_done_competently() {
    reference("new-in-the-mountains");
}

#[test]
fn before_the_bread_round_is_done_competently_and_the_hose_is_proved() {
    let played = reference("before-the-bread-round");
    assert!(0.9 <= part(&played, "E"), "{}", played.sheet);
    assert!(played.sheet.contains("gauge_b at valve_b.store with a clamp at hose_b.a"), "{}", played.sheet);
}

#[test]
fn a_new_booster_on_the_old_hose_does_not_pass() {
    let played = failed_at("before-the-bread-round", "street-garage");
    assert!(part(&played, "V") <= 0.0, "it was not the booster: {}", played.sheet);
    assert!(part(&played, "E") < 0.5, "nothing was measured: {}", played.sheet);
    assert!(part(&played, "R") < 0.5, "a sound booster was thrown away: {}", played.sheet);
}

#[test]
fn every_job_of_the_pack_is_played_here() {
    let pack = assess::pack::Library::open(&root()).unwrap().pack("first-shift").unwrap();
    let tests = std::fs::read_to_string(root().join("tests/it/bench/jobs.rs")).unwrap();
    for job in pack.jobs {
        assert!(tests.contains(&format!("reference(\"{job}\")")), "{job}");
    }
}

#[test]
fn hum_at_the_lights_is_done_competently_and_marked_again_to_the_same_bytes() {
    let played = reference("hum-at-the-lights");
    let mark = |name: &str| {
        let (json, html) = (played.home.path().join(format!("{name}.json")), played.home.path().join(name));
        let output = pinhole(played.home.path())
            .arg("mark")
            .arg(&played.file)
            .arg("--json")
            .arg(&json)
            .arg("--html")
            .arg(&html)
            .output()
            .unwrap();
        ends_with_code(&output, 0);
        (std::fs::read(json).unwrap(), std::fs::read(html).unwrap())
    };
    let (json, html) = mark("once");
    assert_eq!(html, std::fs::read(played.file.with_extension("html")).unwrap());
    let sheet: serde_json::Value = serde_json::from_slice(&json).unwrap();
    assert_eq!(sheet["marks"]["competent"], true);
    // One thread or many: the same bytes.
    let json_again = played.home.path().join("again.json");
    let output = pinhole(played.home.path())
        .env("RAYON_NUM_THREADS", "1")
        .arg("mark")
        .arg(&played.file)
        .arg("--json")
        .arg(&json_again)
        .output()
        .unwrap();
    ends_with_code(&output, 0);
    assert_eq!(json, std::fs::read(json_again).unwrap());

    // What if: had the hose been holed instead, the rest with the engine's hose clamped would differ.
    let what_if = pinhole(played.home.path())
        .arg("replay")
        .arg(&played.file)
        .args(["--fault", "hose_b_pinhole=0.4"])
        .output()
        .unwrap();
    let text = ends_with_code(&what_if, 0);
    let line = text.lines().find(|l| l.contains("more than 900 s")).unwrap();
    assert!(line.starts_with('*'), "{text}");
}

#[test]
fn a_lucky_guess_is_no_proof() {
    let played = failed("guess");
    assert!(0.9 < part(&played, "V"), "the part was right and said surely: {}", played.sheet);
    assert!(part(&played, "E") < 0.8, "but no reading entitled anyone to it: {}", played.sheet);
}

#[test]
fn swapping_part_after_part_does_not_pass() {
    let played = failed("swapper");
    assert!(part(&played, "R") < 0.5, "sound parts were thrown away: {}", played.sheet);
}

#[test]
fn a_car_handed_back_without_release_checks_does_not_pass() {
    let played = failed("no-release");
    assert!(0.9 < part(&played, "V"), "the fault was found: {}", played.sheet);
    assert!(0.8 <= part(&played, "E"), "and proved: {}", played.sheet);
    assert!(part(&played, "Q") < 0.8, "{}", played.sheet);
}

#[test]
fn a_line_of_the_record_that_is_not_filled_says_which_condition_was_not_met() {
    let home = tempfile::tempdir().unwrap();
    let (file, script) = (home.path().join("a.attempt"), home.path().join("a.script"));
    let lines = "key on\nfit meter battery.plus battery.minus\nmeter volt\nread meter\nnote shown for battery\n\
                 record\nkey off\nunfit meter\nfinding none sure 0.40\nhand back\n";
    std::fs::write(&script, lines).unwrap();
    let output = pinhole(home.path())
        .args(["text", "first-shift/hum-at-the-lights", "--seed", SEED, "--script"])
        .arg(&script)
        .arg("--attempt")
        .arg(&file)
        .output()
        .unwrap();
    let text = ends_with_code(&output, 1).split_whitespace().collect::<Vec<_>>().join(" ");
    // When it is noted, in the list of the record, and on the mark sheet.
    for said in [
        "It does not fill the line battery of the record: the key must be off; it was on.",
        "Not filled: the key must be off; it was on.",
        "battery voltage across its posts, key off -- the key must be off; it was on",
    ] {
        assert!(text.contains(said), "{said:?} is not in {text}");
    }
    let journal = std::fs::read_to_string(&file).unwrap();
    assert!(journal.contains(r#""unmet":"key_on""#), "{journal}");
}
