//! A pack that says `after_hand_back: Nothing`: the trainee is told that it was handed in, and nothing else; whoever
//! holds the pack marks it.

use std::path::{Path, PathBuf};
use std::process::Output;

use assess::attempt::Attempt;
use assess::pack::Library;

use super::{ends_with_code, program, root};

const JOB: &str = "first-shift/flat-after-the-weekend";

/// A copy of the data whose pack tells nothing.
fn quiet_data() -> tempfile::TempDir {
    let data = super::bad_input::data();
    let pack = data.path().join("scenarios/first-shift/pack.ron");
    let text = std::fs::read_to_string(&pack).unwrap();
    std::fs::write(&pack, text.replacen("schema: 1,", "schema: 1, after_hand_back: Nothing,", 1)).unwrap();
    data
}

fn run(home: &Path, data: &Path, args: &[&str]) -> Output {
    std::process::Command::new(program())
        .current_dir(home)
        .env("HOME", home)
        .arg("--data")
        .arg(data)
        .args(args)
        .stdin(std::process::Stdio::null())
        .output()
        .unwrap()
}

/// Everything that would give something away: numbers of the mark, verdict words, the debrief, the fault.
fn assert_tells_nothing(text: &str, job: &assess::pack::job::Job) {
    let low = text.to_lowercase();
    for word in ["mark sheet", "competent", "of 100", "verdict", "what it was", "bits", "what if"] {
        assert!(!low.contains(word), "{word:?}: {text}");
    }
    for line in job.debrief.lines().filter(|l| 20 < l.len()) {
        assert!(!text.contains(line), "{text}");
    }
    for (fault, _) in job.answer() {
        assert!(!low.contains(&job.car.faults[usize::from(*fault)].name.to_lowercase()), "{text}");
    }
}

fn script() -> PathBuf {
    root().join("scenarios/first-shift/reference/flat-after-the-weekend.script")
}

#[test]
fn handed_in_is_all_that_is_told_and_mark_shows_the_mark() {
    let home = tempfile::tempdir().unwrap();
    let data = quiet_data();
    let job = Library::open(data.path()).unwrap().job(JOB).unwrap();
    let script = script();
    let args =
        ["text", JOB, "--seed", "5eed", "--attempt", "a.attempt", "--script", script.to_str().unwrap()];
    let text = ends_with_code(&run(home.path(), data.path(), &args), 0);
    let end = &text[text.rfind("hand back").unwrap()..];
    assert!(end.contains("Handed in."), "{end}");
    assert_tells_nothing(end, &job);
    let names = || {
        let all = std::fs::read_dir(home.path()).unwrap();
        all.map(|e| e.unwrap().file_name().into_string().unwrap()).collect::<Vec<_>>()
    };
    assert_eq!(names(), ["a.attempt"], "no page");
    let bytes = std::fs::read(home.path().join("a.attempt")).unwrap();
    let attempt = Attempt::read(&home.path().join("a.attempt")).unwrap();
    assert!(attempt.is_finished() && attempt.mark.is_none());
    let last = std::str::from_utf8(&bytes).unwrap().lines().last().unwrap();
    assert!(last.contains("hand_back") && !last.contains("breaches"), "{last}");

    // Opened again, replayed, asked what if.
    let again =
        ends_with_code(&run(home.path(), data.path(), &["text", "--attempt", "a.attempt", "--resume"]), 0);
    let end = &again[again.find("Handed in.").unwrap()..];
    assert_tells_nothing(end, &job);
    let replayed = ends_with_code(&run(home.path(), data.path(), &["replay", "a.attempt"]), 0);
    assert!(replayed.contains("are the same"), "{replayed}");
    assert_tells_nothing(&replayed, &job);
    for ask in [vec!["--sound"], vec!["--fault", "hose_b_pinhole=0.3"]] {
        let args: Vec<&str> = ["replay", "a.attempt"].into_iter().chain(ask).collect();
        let refused = ends_with_code(&run(home.path(), data.path(), &args), 2);
        assert!(refused.contains("handed in") && refused.contains("no what-if"), "{refused}");
        assert!(!refused.contains("would have shown"), "{refused}");
    }
    assert_eq!(names(), ["a.attempt"]);

    // Whoever holds the pack sees it; the file that the trainee holds does not change.
    let marked = ends_with_code(
        &run(home.path(), data.path(), &["mark", "a.attempt", "--html", "m.html", "--csv", "m.csv"]),
        0,
    );
    assert!(marked.contains("MARK SHEET") && marked.contains("COMPETENT"), "{marked}");
    assert!(std::fs::read_to_string(home.path().join("m.html")).unwrap().contains("Mark sheet"));
    assert_eq!(std::fs::read(home.path().join("a.attempt")).unwrap(), bytes);
}

#[test]
fn the_key_takes_two_words_and_is_told_when_it_is_another() {
    let data = quiet_data();
    let pack = data.path().join("scenarios/first-shift/pack.ron");
    let text = std::fs::read_to_string(&pack).unwrap();
    std::fs::write(&pack, text.replace("after_hand_back: Nothing", "after_hand_back: Something")).unwrap();
    let error = Library::open(data.path()).unwrap().pack("first-shift").unwrap_err().to_string();
    assert!(error.contains("Something") && error.contains("Everything"), "{error}");
    std::fs::write(&pack, text.replace("after_hand_back: Nothing", "after_hand_back: Everything")).unwrap();
    Library::open(data.path()).unwrap().pack("first-shift").unwrap();
}
