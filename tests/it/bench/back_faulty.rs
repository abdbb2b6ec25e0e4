//! What is said of a car that goes back with a fault in it: nothing for the release, and no more than that.

use super::{ends_with_code, pinhole, root};

/// The job whose marking is quickest.
const JOB: &str = "first-shift/flat-after-the-weekend";

#[test]
fn only_the_release_is_lost_and_the_sheet_says_so() {
    let home = tempfile::tempdir().unwrap();
    let reference = root().join("scenarios/first-shift/reference/flat-after-the-weekend.script");
    let whole = std::fs::read_to_string(reference).unwrap();
    // The finding is right; nothing is put right, and only what the record asks for is noted.
    let (found, _) = whole.split_once("swap relay").unwrap();
    let script = home.path().join("s.script");
    std::fs::write(&script, format!("{found}chocks off\nextraction off\nhand back\n")).unwrap();
    let output =
        pinhole(home.path()).args(["text", JOB, "--seed", "5eed", "--script"]).arg(&script).output().unwrap();
    let text = ends_with_code(&output, 1);
    let flat = text.split_whitespace().collect::<Vec<_>>().join(" ");
    for sentence in [
        "NOT YET COMPETENT",
        "V verdict 1.00",
        "E evidence 1.00",
        "Q release 0.00",
        "The car went back with a fault in it: relay of the pump. That earns nothing for the release, \
         whatever was checked, and the job is not passed; the other parts keep their points.",
    ] {
        assert!(flat.contains(sentence), "{sentence:?} is not in {text}");
    }
    assert!(!flat.contains("nothing else counts"), "{text}");
}
