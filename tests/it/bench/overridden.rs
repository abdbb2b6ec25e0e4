//! An instructor's override beside the mark: both are shown, it is clear which holds, and nobody alters either unseen.

use std::path::Path;

use assess::attempt::Attempt;
use assess::attempt::clock::Clock;
use assess::attempt::mend::mend;
use assess::attempt::overrule::{OverrideError, Ruling, overrule};
use serde_json::{Value, json};

use super::chain::{chained_values, values};
use super::outputs::{JOB, finished, reference};
use super::{ends_with_code, pinhole, pinhole_with};

fn run(home: &Path, args: &[&str], code: i32) -> String {
    ends_with_code(&pinhole(home).args(args).output().unwrap(), code)
}

/// A text on one line.
fn flat(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

const NOT_YET: [&str; 7] =
    ["override", "a.attempt", "--by", "K. M.", "--not-yet", "--reason", "word for word the notes of bench 3"];

/// The cells of the only row of a table, by the names of their columns.
fn row(table: &str) -> Vec<(String, String)> {
    let mut csv = csv_lines(table);
    let head = csv.remove(0);
    head.into_iter().zip(csv.remove(0)).collect()
}

/// Lines of a table without quotes inside cells.
fn csv_lines(table: &str) -> Vec<Vec<String>> {
    table
        .lines()
        .map(|line| line.split(',').map(|cell| cell.trim_matches('"').to_owned()).collect())
        .collect()
}

#[test]
fn both_stand_beside_each_other_and_the_last_override_holds() {
    let home = finished();
    let (home, path) = (home.path(), home.path().join("a.attempt"));
    let before = std::fs::read(&path).unwrap();
    let own = Attempt::read(&path).unwrap().mark.unwrap();
    assert!(own.competent);

    let text = run(home, &NOT_YET, 0);
    assert!(text.contains("override 1 stands behind the mark"), "{text}");
    assert!(text.contains(&format!("What holds: not yet competent, {:.1} of 100", own.total)), "{text}");
    let once = std::fs::read(&path).unwrap();
    assert_eq!(&once[..before.len()], before, "the mark and all before it are as they were");
    assert_eq!(once[before.len()..].iter().filter(|b| **b == b'\n').count(), 1, "one line");

    let outputs = ["--csv", "1.csv", "--json", "1.json", "--html", "1.html"];
    let text = run(home, &[&["mark", "a.attempt"], &outputs[..]].concat(), 1);
    let sheet = flat(&text);
    for said in [
        &format!("{:.1} of 100, not yet competent: this holds, as K. M. decided", own.total),
        "K. M.: not yet competent (the last one: it holds). word for word the notes of bench 3",
        "The program's own mark",
        &format!("COMPETENT {:.1} of 100", own.total),
    ] {
        assert!(sheet.contains(said), "{said:?}: {sheet}");
    }
    assert!(!sheet.contains("another mark"), "the mark in the file is the one computed: {sheet}");
    let page = std::fs::read_to_string(home.join("1.html")).unwrap();
    assert!(
        page.contains("Instructor's override") && page.contains("this holds, as K. M. decided"),
        "{page}"
    );
    assert!(page.contains("The program's own mark"), "{page}");
    let json: Value = serde_json::from_slice(&std::fs::read(home.join("1.json")).unwrap()).unwrap();
    assert_eq!(json["marks"]["competent"], json!(true));
    assert_eq!(json["holds"]["competent"], json!(false));
    assert_eq!(json["holds"]["total"], json["marks"]["total"]);
    assert_eq!(json["overrides"][0]["by"], json!("K. M."));
    let table = std::fs::read_to_string(home.join("1.csv")).unwrap();
    let cell = |name: &str| row(&table).into_iter().find(|(head, _)| head == name).unwrap().1;
    assert_eq!((cell("competent"), cell("holds_competent")), ("true".to_owned(), "false".to_owned()));
    assert_eq!((cell("overrides"), cell("mark_in_file")), ("1".to_owned(), "same".to_owned()));
    assert_eq!((cell("override_by"), cell("total")), ("K. M.".to_owned(), cell("holds_total")));
    assert_eq!(cell("override_reason"), "word for word the notes of bench 3");

    // Another one, later: only a total. What it leaves open is the program's own, not the first override's.
    let args =
        ["override", "a.attempt", "--by", "L.", "--total", "71,5", "--reason", "they did it themselves"];
    let text = run(home, &args, 0);
    assert!(text.contains("override 2") && text.contains("What holds: competent, 71.5 of 100"), "{text}");
    let sheet = flat(&run(home, &["mark", "a.attempt"], 0));
    assert!(sheet.contains("71.5 of 100, competent: this holds, as L. decided"), "{sheet}");
    let first = sheet.find("K. M.: not yet competent. word for word").expect("the first stays listed");
    assert!(first < sheet.find("L.: 71.5 of 100 (the last one: it holds)").unwrap(), "{sheet}");
    let attempt = Attempt::read(&path).unwrap();
    assert_eq!(attempt.mark, Some(own));
    assert_eq!(attempt.overrides.len(), 2);
    // Whoever opens the finished attempt sees it too, and does not lose it.
    let text = flat(&run(home, &["text", "--attempt", "a.attempt", "--resume"], 0));
    assert!(text.contains("this holds, as L. decided"), "{text}");
    assert_eq!(Attempt::read(&path).unwrap(), attempt);
    run(home, &["replay", "a.attempt"], 0);
}

#[test]
fn in_german_nothing_of_it_is_english() {
    let home = finished();
    let home = home.path();
    let german = |args: &[&str], code: i32| run(home, &[&["--lang", "de"], args].concat(), code);
    let text =
        german(&["override", "a.attempt", "--by", "KM", "--total", "60", "--reason", "abgeschrieben"], 0);
    assert!(text.contains("Es gilt: bestanden, 60,0 von 100"), "{text}");
    let sheet = flat(&german(&["mark", "a.attempt"], 0));
    assert!(sheet.contains("60,0 von 100, bestanden: das gilt, so hat KM entschieden"), "{sheet}");
    assert!(sheet.contains("Bewertung des Programms"), "{sheet}");
    let error = german(&["override", "a.attempt", "--by", "KM", "--total", "160", "--reason", "x"], 2);
    assert!(error.contains("160 ist keine Punktzahl"), "{error}");
}

#[test]
fn what_is_no_override_is_refused_with_a_reason_and_writes_nothing() {
    let home = finished();
    let (home, path) = (home.path(), home.path().join("a.attempt"));
    let before = std::fs::read(&path).unwrap();
    let long = "x".repeat(1001);
    let tries: [(&[&str], &str); 10] = [
        (&["--by", "KM", "--competent", "--reason", ""], "needs a reason"),
        (&["--by", "KM", "--competent", "--reason", " \u{1b}\t "], "needs a reason"),
        (&["--by", "KM", "--competent", "--reason", &long], "at most 1000"),
        (&["--by", " ", "--competent", "--reason", "x"], "needs a name"),
        (&["--by", &long, "--competent", "--reason", "x"], "at most 64"),
        (&["--by", "KM", "--reason", "x"], "say what shall hold"),
        (&["--by", "KM", "--total", "100.5", "--reason", "x"], "100.5 is no total; expected 0 to 100"),
        (&["--by", "KM", "--total", "-1", "--reason", "x"], "-1 is no total"),
        (&["--by", "KM", "--total", "many", "--reason", "x"], "--total"),
        (&["--by", "KM", "--competent", "--not-yet", "--reason", "x"], "do not go together"),
    ];
    for (args, wanted) in tries {
        let text = run(home, &[&["override", "a.attempt"], args].concat(), 2);
        assert!(text.contains(wanted), "{args:?}: {text}");
    }
    for missing in ["--by", "--reason"] {
        let at = NOT_YET.iter().position(|word| *word == missing).unwrap();
        let args: Vec<&str> =
            NOT_YET.iter().enumerate().filter(|(i, _)| *i != at && *i != at + 1).map(|(_, w)| *w).collect();
        assert!(run(home, &args, 2).contains(missing));
    }
    assert_eq!(std::fs::read(&path).unwrap(), before);
    // Controls in what is said reach neither file nor terminal.
    let args = ["override", "a.attempt", "--by", "K\u{1b}M", "--competent", "--reason", "a\u{202e}b\nc"];
    assert!(!run(home, &args, 0).contains('\u{1b}'));
    let line = Attempt::read(&path).unwrap().overrides.pop().unwrap();
    assert_eq!((line.by.as_str(), line.reason.as_str()), ("K M", "a b c"));
}

#[test]
fn without_a_whole_marked_file_there_is_no_override() {
    let home = finished();
    let (home, path) = (home.path(), home.path().join("a.attempt"));
    let marked = std::fs::read(&path).unwrap();
    let ruling =
        Ruling { competent: Some(false), reason: "x".to_owned(), by: "KM".to_owned(), ..Ruling::default() };
    let refused = |text: &str| {
        let left = std::fs::read(&path).unwrap();
        let error = overrule(&path, &ruling, &Clock::standing(0)).unwrap_err();
        assert!(error.to_string().contains(text), "{error}");
        assert_eq!(std::fs::read(&path).unwrap(), left, "{text}");
        let said = run(home, &NOT_YET, 2);
        assert!(said.contains(text), "{said}");
        error
    };
    // The mark is the last line of it.
    let cut = marked[..marked.len() - 1].iter().rposition(|b| *b == b'\n').unwrap() + 1;
    std::fs::write(&path, &marked[..cut]).unwrap();
    assert!(matches!(refused("holds no mark yet; mark it first"), OverrideError::NotMarked { .. }));
    // A chain that is broken somewhere.
    let mut broken = marked.clone();
    let digit = cut + marked[cut..].windows(8).position(|w| w == b"\"total\":").unwrap() + 8;
    broken[digit] ^= 1;
    std::fs::write(&path, &broken).unwrap();
    assert!(matches!(refused("changed after it was written"), OverrideError::File(_)));
    // Somebody has it open.
    std::fs::write(&path, &marked).unwrap();
    let file = std::fs::File::open(&path).unwrap();
    file.lock().unwrap();
    assert!(matches!(refused("in use"), OverrideError::File(_)));
    drop(file);
    // It may not be written. A super-user may write everything, and then there is nothing to see.
    let mut rights = path.metadata().unwrap().permissions();
    rights.set_readonly(true);
    std::fs::set_permissions(&path, rights).unwrap();
    if std::fs::OpenOptions::new().append(true).open(&path).is_err() {
        assert!(matches!(refused("a.attempt"), OverrideError::File(_)));
    }
    std::fs::remove_file(&path).unwrap();
    assert!(run(home, &NOT_YET, 2).contains("no such file"));
    // The car was not handed back.
    let script = home.join("s.script");
    std::fs::write(&script, "hum\nnote\n").unwrap();
    let args = ["text", JOB, "--attempt", "a.attempt", "--script", "s.script"];
    run(home, &args, 1);
    assert!(matches!(refused("has not been handed back"), OverrideError::NotFinished { .. }));
}

#[test]
fn inv_an_override_that_was_altered_or_stands_elsewhere_is_found() {
    let home = finished();
    let (home, path) = (home.path(), home.path().join("a.attempt"));
    run(home, &NOT_YET, 0);
    run(home, &["override", "a.attempt", "--by", "L.", "--total", "70", "--reason", "second look"], 0);
    let bytes = std::fs::read(&path).unwrap();
    let whole = Attempt::read(&path).unwrap();
    let refused = |bytes: &[u8], wanted: &str| {
        std::fs::write(&path, bytes).unwrap();
        let error = Attempt::read(&path).unwrap_err().to_string();
        assert!(error.contains(wanted), "{wanted:?}: {error}");
        error
    };
    let text = std::str::from_utf8(&bytes).unwrap();
    let first = text.find("{\"override\"").unwrap();
    for (from, to) in
        [("not", "now"), ("K. M.", "K. N."), ("\"competent\":false", "\"competent\":true "), ("70.0", "90.0")]
    {
        let at = first + text[first..].find(from).unwrap();
        let altered = format!("{}{to}{}", &text[..at], &text[at + from.len()..]);
        refused(altered.as_bytes(), "changed after it was written");
    }
    // Chained anew by someone who knows how: the order of the lines and what they say are held all the same.
    let lines = values(&bytes);
    let n = lines.len();
    let with = |change: &dyn Fn(&mut Vec<Value>)| {
        let mut lines = lines.clone();
        change(&mut lines);
        chained_values(&lines)
    };
    refused(&with(&|l| l.swap(n - 3, n - 2)), "an override before the mark");
    refused(&with(&|l| drop(l.remove(n - 3))), "an override before the mark");
    let sitting = lines[1].clone();
    refused(&with(&|l| l.push(sitting.clone())), "a line after the mark");
    let mark = lines[n - 3].clone();
    refused(&with(&|l| l.push(mark.clone())), "a line after the mark");
    for (key, value) in [("reason", json!(" ")), ("by", json!(""))] {
        refused(&with(&|l| l[n - 1]["override"][key] = value.clone()), "an override without a reason");
    }
    let nothing = |l: &mut Vec<Value>| drop(l[n - 1]["override"].as_object_mut().unwrap().remove("total"));
    refused(&with(&nothing), "an override without a reason");
    refused(&with(&|l| l[n - 1]["override"]["total"] = json!(100.5)), "the total of an override is 100.5");
    refused(&with(&|l| l[n - 1]["override"]["at_unix_ms"] = json!(u64::MAX)), "the time of an override");
    refused(
        &with(&|l| l.extend(std::iter::repeat_n(lines[n - 1].clone(), 99))),
        "the number of overrides is 101",
    );
    // A torn one is dropped, as any torn line; a damaged one is mended away, the mark and the first stay.
    for cut in [1, 30] {
        std::fs::write(&path, &bytes[..bytes.len() - cut]).unwrap();
        let read = Attempt::read(&path).unwrap();
        assert_eq!((&read.mark, read.overrides.as_slice()), (&whole.mark, &whole.overrides[..1]));
    }
    let mut damaged = bytes.clone();
    *damaged.last_mut().unwrap() = b'x';
    damaged.push(b'\n');
    std::fs::write(&path, &damaged).unwrap();
    assert!(Attempt::read(&path).is_err());
    let mended = mend(&path, &Clock::standing(5)).unwrap().expect("it is damaged");
    assert_eq!((mended.actions, mended.repair.dropped_lines), (whole.steps.len(), 1));
    let read = Attempt::read(&path).unwrap();
    assert_eq!((&read.mark, read.overrides.as_slice()), (&whole.mark, &whole.overrides[..1]));
    // And another may be given behind the repair.
    run(home, &["override", "a.attempt", "--by", "L.", "--total", "70", "--reason", "second look"], 0);
    assert_eq!(Attempt::read(&path).unwrap().overrides.len(), 2);
}

#[test]
fn a_folder_counts_what_holds() {
    let home = finished();
    let home = home.path();
    std::fs::create_dir(home.join("class")).unwrap();
    std::fs::copy(home.join("a.attempt"), home.join("class/b.attempt")).unwrap();
    run(home, &NOT_YET, 0);
    std::fs::copy(home.join("a.attempt"), home.join("class/a.attempt")).unwrap();
    let text = run(home, &["mark", "class", "--csv", "c.csv", "--json", "c.json"], 1);
    assert!(text.contains("2 attempts: 1 competent, 1 not yet competent"), "{text}");
    assert!(text.contains("decided by K. M.; the program: competent"), "{text}");
    let table = csv_lines(&std::fs::read_to_string(home.join("c.csv")).unwrap());
    let column = |name: &str| table[0].iter().position(|head| head == name).unwrap();
    let cells = |name: &str| [&table[1], &table[2]].map(|row| row[column(name)].clone());
    assert_eq!(cells("competent"), ["true", "true"]);
    assert_eq!(cells("holds_competent"), ["false", "true"]);
    assert_eq!(cells("overrides"), ["1", "0"]);
    let json: Value = serde_json::from_slice(&std::fs::read(home.join("c.json")).unwrap()).unwrap();
    assert_eq!(json[0]["sheet"]["holds"]["competent"], json!(false));
    assert!(json[1]["sheet"].get("holds").is_none() && json[1]["sheet"].get("overrides").is_none());
}

#[test]
fn where_the_file_keeps_no_mark_it_is_marked_first() {
    let home = tempfile::tempdir().unwrap();
    let data = super::bad_input::data();
    let pack = data.path().join("scenarios/first-shift/pack.ron");
    let text = std::fs::read_to_string(&pack).unwrap();
    std::fs::write(&pack, text.replacen("schema: 1,", "schema: 1, after_hand_back: Nothing,", 1)).unwrap();
    let quiet = |args: &[&str], code: i32| {
        ends_with_code(&pinhole_with(home.path(), data.path()).args(args).output().unwrap(), code)
    };
    let script = reference();
    let script = script.to_str().unwrap();
    quiet(&["text", JOB, "--seed", "5eed", "--attempt", "a.attempt", "--script", script], 0);
    let path = home.path().join("a.attempt");
    let handed_in = std::fs::read(&path).unwrap();
    assert_eq!(Attempt::read(&path).unwrap().mark, None);
    quiet(&NOT_YET, 0);
    let attempt = Attempt::read(&path).unwrap();
    assert!(attempt.mark.is_some_and(|mark| mark.competent) && attempt.overrides.len() == 1);
    assert_eq!(&std::fs::read(&path).unwrap()[..handed_in.len()], handed_in);
    let sheet = flat(&quiet(&["mark", "a.attempt", "--csv", "m.csv"], 1));
    assert!(sheet.contains("this holds, as K. M. decided"), "{sheet}");
    let table = std::fs::read_to_string(home.path().join("m.csv")).unwrap();
    let cell = |name: &str| row(&table).into_iter().find(|(head, _)| head == name).unwrap().1;
    assert_eq!(cell("mark_in_file"), "same");
    // Whoever worked on it is told no more than before.
    let again = quiet(&["text", "--attempt", "a.attempt", "--resume"], 0);
    let end = &again[again.find("Handed in.").unwrap()..];
    assert!(!end.contains("K. M.") && !end.contains("competent"), "{end}");
}
