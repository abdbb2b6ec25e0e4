//! A damaged attempt is mended by the program: the whole lines stay, the chain and the sheet say what was dropped, and
//! the damaged file is kept.

use assess::attempt::clock::Clock;
use assess::attempt::mend::mend;
use assess::attempt::{Attempt, AttemptError};
use assess::marks;
use assess::play;

use super::chain::{job, made};
use dice::Dice;

use super::{ends_with_code, pinhole};

#[test]
fn inv_whatever_byte_is_damaged_the_whole_actions_before_it_are_kept() {
    let home = tempfile::tempdir().unwrap();
    let (path, attempt) = made(home.path());
    let bytes = std::fs::read(&path).unwrap();
    let header_end = bytes.iter().position(|b| *b == b'\n').unwrap() + 1;
    let mut dice = Dice::new(dice::seed(), 1);
    for n in 0..200 {
        let at = header_end + ((bytes.len() - header_end) as f64 * dice.unit()) as usize;
        let mut damaged = bytes.clone();
        damaged[at] ^= 1 << (dice.unit() * 8.0) as u32;
        let path = home.path().join(format!("d{n}.attempt"));
        std::fs::write(&path, &damaged).unwrap();
        let line = damaged[..at].iter().filter(|b| **b == b'\n').count();
        let Err(error) = Attempt::read(&path) else {
            // The last line's end alone can go unseen: it is then a torn line.
            assert_eq!(at, bytes.len() - 1);
            continue;
        };
        assert!(error.to_string().contains("pinhole mend"), "{error}");
        let mended = mend(&path, &Clock::standing(1_767_323_045_000)).unwrap().expect("it is damaged");
        let read = Attempt::read(&path).unwrap();
        assert_eq!(read.repairs, std::slice::from_ref(&mended.repair));
        // Line 0 is the header, line 1 the sitting.
        let kept = line.saturating_sub(2);
        assert_eq!(read.steps, attempt.steps[..kept], "byte {at}");
        assert_eq!(std::fs::read(&mended.original).unwrap(), damaged);
        let whole: usize = damaged.split_inclusive(|b| *b == b'\n').take(line).map(<[u8]>::len).sum();
        assert_eq!(mended.repair.dropped_bytes, (damaged.len() - whole) as u64);
        assert_eq!(mend(&path, &Clock::standing(0)).unwrap(), None, "nothing is left to mend");
    }
}

#[test]
fn a_mended_attempt_is_carried_on_and_its_sheet_says_so() {
    let home = tempfile::tempdir().unwrap();
    let (path, attempt) = made(home.path());
    let mut bytes = std::fs::read(&path).unwrap();
    let fifth = (0..bytes.len()).filter(|i| bytes[*i] == b'\n').nth(5).unwrap();
    bytes[fifth + 20] = b'#';
    std::fs::write(&path, &bytes).unwrap();
    // Nobody is told to cut lines.
    for args in [vec!["replay", "a.attempt"], vec!["text", "--attempt", "a.attempt", "--resume"]] {
        let text = ends_with_code(&pinhole(home.path()).args(args).output().unwrap(), 2);
        assert!(text.contains("pinhole mend a.attempt") && !text.contains("cut it"), "{text}");
        assert!(text.contains("a.attempt, line 7"), "{text}");
    }
    let text = ends_with_code(&pinhole(home.path()).args(["mend", "a.attempt"]).output().unwrap(), 0);
    assert!(text.contains("4 actions are kept") && text.contains("a.attempt.damaged-1"), "{text}");
    assert_eq!(std::fs::read(home.path().join("a.attempt.damaged-1")).unwrap(), bytes);
    let text = ends_with_code(&pinhole(home.path()).args(["mend", "a.attempt"]).output().unwrap(), 0);
    assert!(text.contains("nothing is wrong"), "{text}");
    let output = pinhole(home.path()).args(["text", "--attempt", "a.attempt", "--resume"]).output().unwrap();
    assert!(ends_with_code(&output, 0).contains("Carried on after 4 actions."));
    let read = Attempt::read(&path).unwrap();
    assert_eq!(read.steps, attempt.steps[..4]);
    play::replay(&read, &job()).unwrap();
    let sheet = crate::told::sheet(marks::mark(&read, &job()).unwrap());
    let page = assess::report::terminal::render(&sheet, &crate::told::english()).replace('\n', " ");
    assert!(page.contains("The file was damaged and was mended"), "{page}");
    assert!(page.contains("what followed action 4 was dropped"), "{page}");
}

#[test]
fn without_its_first_line_nothing_can_be_kept_and_nothing_is_changed() {
    let home = tempfile::tempdir().unwrap();
    let (path, _) = made(home.path());
    let mut bytes = std::fs::read(&path).unwrap();
    bytes[3] ^= 1;
    std::fs::write(&path, &bytes).unwrap();
    assert!(matches!(mend(&path, &Clock::standing(0)), Err(AttemptError::Damaged { line: 1, .. })));
    let text = ends_with_code(&pinhole(home.path()).args(["mend", "a.attempt"]).output().unwrap(), 2);
    assert!(text.contains("line 1"), "{text}");
    assert_eq!(std::fs::read(&path).unwrap(), bytes);
    assert_eq!(std::fs::read_dir(home.path()).unwrap().count(), 1, "nothing is left beside it");
}

#[cfg(unix)]
#[test]
fn attempts_folder_and_mended_files_are_for_their_owner_alone() {
    use std::os::unix::fs::PermissionsExt as _;
    let home = tempfile::tempdir().unwrap();
    let mode = |name: &str| home.path().join(name).metadata().unwrap().permissions().mode() & 0o777;
    let text = pinhole(home.path()).args(["--attempts", "mine", "text"]).output().unwrap();
    ends_with_code(&text, 0);
    assert_eq!(mode("mine"), 0o700);
    let name = "mine/hum-at-the-lights-001.attempt";
    assert_eq!(mode(name), 0o600);
    let mut bytes = std::fs::read(home.path().join(name)).unwrap();
    bytes.extend(b"damaged\n");
    std::fs::write(home.path().join(name), bytes).unwrap();
    ends_with_code(&pinhole(home.path()).args(["mend", name]).output().unwrap(), 0);
    assert_eq!(mode(name), 0o600);
    assert_eq!(mode(&format!("{name}.damaged-1")), 0o600);
}
