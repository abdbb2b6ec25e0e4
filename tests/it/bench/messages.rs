//! What wrong input is answered with: what, where, what would be right; short, in our own words, steering nothing.

use std::io::Write as _;
use std::path::Path;
use std::process::{Output, Stdio};

use assess::attempt::Attempt;

use super::csv::rechained;
use super::outputs::finished;
use super::{ends_with_code, pinhole, said};

const JOB: &str = "first-shift/hum-at-the-lights";

/// Words of the libraries, and the system's own numbers: nothing of them reaches a user.
const OWN_SPEECH: [&str; 14] = [
    "variant",
    "identifier",
    "struct ",
    "unknown field",
    "os error",
    "expected one of",
    "invalid type",
    "invalid value",
    "invalid digit",
    "ParseFloat",
    "Utf8Error",
    "Usage:",
    "stream did not contain",
    "For more information",
];

/// An error message is short, clean, and ours.
fn assert_clear(text: &str, of: &str) {
    for own in OWN_SPEECH {
        assert!(!text.contains(own), "{of}: {text}");
    }
    assert!(!text.contains(|c: char| c != '\n' && assess::locale::quote::is_unsafe(c)), "{of}: {text:?}");
    assert!(!text.contains(&"1".repeat(70)) && !text.contains(&"x".repeat(100)), "{of}: {text}");
    let long = text.chars().count();
    assert!(0 < long && long <= 320, "{of}: {long} characters: {text}");
}

#[test]
fn wrong_command_lines_are_answered_clearly() {
    let home = tempfile::tempdir().unwrap();
    std::fs::write(home.path().join("bad.attempt"), "{}\n").unwrap();
    std::fs::write(home.path().join("not-utf8.script"), b"card\nchocks on\n\xff\n").unwrap();
    let (long, digits) = ("x".repeat(500), "1".repeat(301));
    let (long, digits) = (long.as_str(), digits.as_str());
    let mut n = 0;
    let mut check = |args: &[&str], wanted: &[&str]| {
        let output = pinhole(home.path()).args(args).output().unwrap();
        let text = ends_with_code(&output, 2);
        assert_clear(&text, &format!("{args:?}"));
        for w in wanted {
            assert!(text.contains(w), "{args:?}: {w:?} is not in {text}");
        }
        n += 1;
    };
    check(&["texxt"], &["texxt", "did you mean text"]);
    check(&[long], &["no command"]);
    check(&["text", "--sed", "1"], &["--sed", "--seed"]);
    check(&["text", "--seed"], &["--seed", "value"]);
    check(&["text", "--seed", long], &["no seed", "hexadecimal"]);
    check(&["text", "a", "b"], &["\"b\"", "too many"]);
    check(&["text", "--resume", "--new"], &["--resume", "--new", "together"]);
    check(&["text", "--new", "--new"], &["--new", "twice"]);
    check(&["text", long], &["no pack", "first-shift"]);
    check(&["text", "first-shift/x"], &["no job", "first-shift/hum-at-the-lights"]);
    check(&["text", &format!("first-shift/{long}")], &["no job"]);
    check(&["text", "\u{1b}[2J"], &["\\u{1b}"]);
    check(&["text", "--seat", "\u{1b}"], &["--seat", "\\u{1b}", "1 to 64"]);
    check(&["text", "--script", "nosuch"], &["nosuch", "no such file"]);
    check(&["text", JOB, "--script", "not-utf8.script"], &["not-utf8.script, line 3", "UTF-8"]);
    check(&["text", "--attempt", "no/such/a.attempt"], &["no/such/a.attempt", "no such file or folder"]);
    check(&["text", "--attempt", "a.html"], &["a.html", ".attempt"]);
    check(&["text", "--data", long], &["--data", "assets/"]);
    check(&["text", "--resume", "--attempt", "no.attempt"], &["no.attempt"]);
    check(&["mark"], &["ATTEMPTS", "missing"]);
    check(&["mark", ""], &["ATTEMPTS"]);
    check(&["mark", "a", "b", "--html", "x"], &["--html takes one"]);
    check(&["mark", "no.attempt"], &["no.attempt", "no such file"]);
    check(&["mark", long], &["no such name", "…"]);
    check(&["mark", "bad.attempt"], &["bad.attempt, line 1"]);
    check(&["mark", "bad.attempt", "--csv"], &["--csv", "value"]);
    check(&["replay"], &["ATTEMPT", "missing"]);
    check(&["replay", "bad.attempt", "--fault", "x"], &["--fault", "ID=SEVERITY"]);
    check(&["replay", "bad.attempt", "--sound", "--fault", "x=1"], &["together"]);
    check(&["trace", "alder"], &["--csv", "missing"]);
    check(&["trace", long, "--csv", "t"], &["no car", "alder"]);
    for every in ["0", "-1", "3601"] {
        check(&["trace", "alder", "--csv", "t", "--every", every], &["--every", every, "0.01 to 3600"]);
    }
    for flag in ["--every", "--for", "--altitude", "--ambient"] {
        let mut with = |value: &str, wanted: &str| {
            check(&["trace", "alder", "--csv", "t", flag, value], &[flag, wanted]);
        };
        with("nan", "not a finite number");
        with("inf", "not a finite number");
        with("-inf", "not a finite number");
        with("1e999", "too large");
        with("1e300", "too large");
        with(digits, "301 characters; at most 40");
        with("0x10", "not written in tens");
        let none = if flag == "--for" { "no whole number" } else { "no number" };
        with("ten", none);
        with("", none);
    }
    check(&["trace", "alder", "--csv", "t", "--for", "90000"], &["--for", "90000", "0 to 86400"]);
    check(&["trace", "alder", "--csv", "t", "--altitude", "9000"], &["--altitude 9000", "-400 to 4500"]);
    check(&["trace", "alder", "--csv", "t", "--ambient", "-99"], &["--ambient -99", "-30 to 45"]);
    for severity in ["nan", "inf", "1e999", digits, "0x10", "x", ""] {
        check(
            &["trace", "alder", "--csv", "t", "--fault", &format!("hose_b_pinhole={severity}")],
            &["--fault"],
        );
    }
    check(&["trace", "alder", "--csv", "t", "--fault", "hose_b_pinhole=1e8"], &["100000000", "from 0 to 5"]);
    check(&["trace", "alder", "--csv", "t", "--fault", &format!("{long}=1")], &["no fault", "alder"]);
    check(&["trace", "alder", "--plot", "x.gif", "--show", "pump.inlet"], &[".svg or .png"]);
    check(&["trace", "alder", "--plot", "x.svg", "--show", long], &["--show", "its parts are"]);
    check(&["bench", "--samples", "0"], &["--samples", "1 to 999"]);
    check(&["bench", "--samples", "1.5"], &["--samples", "no whole number"]);
    #[cfg(unix)]
    {
        use std::os::unix::ffi::OsStrExt as _;
        let odd = std::ffi::OsStr::from_bytes(b"odd\xff.attempt");
        let text = ends_with_code(&pinhole(home.path()).arg("mark").arg(odd).output().unwrap(), 2);
        assert_clear(&text, "odd");
        assert!(text.contains("odd\\xff.attempt"), "{text}");
        let text = ends_with_code(&pinhole(home.path()).arg("text").arg(odd).output().unwrap(), 2);
        assert!(text.contains("UTF-8"), "{text}");
    }
    println!("{n} wrong command lines");
}

/// Sends bytes to the prompt through a pipe.
fn typed(home: &Path, name: &str, bytes: &[u8]) -> Output {
    let mut child = pinhole(home)
        .args(["text", JOB, "--attempt", name])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    // A refusal may come before all is read.
    drop(child.stdin.take().unwrap().write_all(bytes));
    child.wait_with_output().unwrap()
}

#[test]
fn a_line_that_is_not_text_or_too_long_is_refused_and_the_session_goes_on() {
    let home = tempfile::tempdir().unwrap();
    let mut bytes = b"card\nsuspect \xff\xfe\nchocks on\n".to_vec();
    bytes.extend(vec![b'y'; 100_000]);
    bytes.extend(b"\nkey on\nsuspect \x1b[2Jred\n");
    let text = ends_with_code(&typed(home.path(), "a.attempt", &bytes), 0);
    assert!(text.contains("Line 2 is not UTF-8"), "{text}");
    assert!(text.contains("Line 4 has 100001 bytes; at most 1000"), "{text}");
    assert!(!text.contains('\u{1b}'), "{text:?}");
    let attempt = Attempt::read(&home.path().join("a.attempt")).unwrap();
    assert_eq!(attempt.steps.len(), 4, "card, chocks, key, suspicion: {:?}", attempt.steps);
}

#[test]
fn wrong_words_are_answered_clearly() {
    let home = tempfile::tempdir().unwrap();
    let (long, digits) = ("x".repeat(500), "1".repeat(301));
    let lines: Vec<(String, &str)> = [
        ("wait nan", "not a finite number"),
        ("wait inf", "not a finite number"),
        ("wait 1e999", "too large"),
        ("wait 0x10", "not written in tens"),
        ("wait -5", "0 to 43200"),
        ("wait 99999999", "0 to 43200"),
        ("wait 5 parsecs", "no unit of time (s, min, h)"),
        ("wait DIGITS", "at most 40"),
        ("wait x", "no number"),
        ("time rest nan", "not a finite number"),
        ("time rest DIGITS", "at most 40"),
        ("pedal press nan", "not a finite number"),
        ("pedal press 1e300", "too large"),
        ("pedal press DIGITS", "at most 40"),
        ("pedal press 5000", "between 1 and 700"),
        ("pedal pump 99999999999", "too large"),
        ("pedal pump -1", "0 to 1000"),
        ("pedal pump 1.5", "no whole number"),
        ("pedal pump 31", "between 1 and 30"),
        ("stroke handpump 99999999999", "too large"),
        ("stroke handpump 300", "between 1 and 200"),
        ("LONG", "do not know the word"),
        ("open LONG", "no joint"),
        ("fit LONG", "no instrument"),
        ("fit gauge LONG", "no port"),
        ("touch LONG", "no part"),
        ("key LONG", "on, off"),
        ("help LONG", "help"),
        ("swap LONG", "no unit"),
        ("finding LONG sure 0.8", "no unit"),
        ("finding none sure LONG", "0.40"),
        ("finding none sure nan", "0.40"),
        ("read barometer\nnote nan kPa", "not a finite number"),
        ("note 1e999 kPa", "too large"),
        ("note DIGITS kPa", "at most 40"),
        ("note 0x10 kPa", "not written in tens"),
        ("note 5 LONG", "no unit of this workshop"),
        ("note 100 kPa for LONG", "no line of the record"),
        ("note 5", "reading"),
    ]
    .into_iter()
    .map(|(line, wanted)| (line.replace("LONG", &long).replace("DIGITS", &digits), wanted))
    .collect();
    let all: String = lines.iter().map(|(line, _)| format!("{line}\n")).collect();
    let output = typed(home.path(), "a.attempt", all.as_bytes());
    let text = ends_with_code(&output, 0);
    let answers: Vec<&str> = text.split(" min worked> ").skip(1).collect();
    let mut at = 0;
    for (line, wanted) in &lines {
        at += line.matches('\n').count() + 1;
        // What was typed stands before the answer; of the answer, what was typed is cut out by its length.
        let answer = answers[at - 1].split_once('\n').unwrap().1;
        let answer: Vec<&str> = answer.lines().filter(|l| l.starts_with("  ")).collect();
        let flat = answer.iter().map(|l| l.trim()).collect::<Vec<_>>().join(" ");
        assert!(flat.contains(wanted), "{:.60}: {wanted:?} is not in {flat:?}", line);
        assert_clear(&flat, &format!("{line:.60}"));
    }
    println!("{} wrong lines", lines.len());
}

#[test]
fn an_attempt_that_does_not_fit_names_itself_and_one_line() {
    let home = finished();
    let path = home.path().join("a.attempt");
    let text = std::fs::read_to_string(&path).unwrap();
    let changes: [(&str, &str, &[&str]); 5] = [
        ("\"read_card\"", "\"reed_card\"", &["line 3", "`reed_card` is none of"]),
        ("\"seed_from\":", "\"sead_from\":", &["line 1", "no key `sead_from`", "seed"]),
        ("\"n\":2,", "\"n\":\"two\",", &["line 4", "a whole number"]),
        ("first-shift/flat-after", "first-shift/never-seen", &["no job", "first-shift/never-seen"]),
        ("\"job_digest\":\"", "\"job_digest\":\"0", &["have changed"]),
    ];
    for (from, to, wanted) in changes {
        assert!(text.contains(from), "{from}");
        std::fs::write(&path, rechained(&text, |line| line.replacen(from, to, 1))).unwrap();
        for command in [
            &["mark", "a.attempt"][..],
            &["replay", "a.attempt"],
            &["text", "--resume", "--attempt", "a.attempt"],
        ] {
            let output = pinhole(home.path()).args(command).output().unwrap();
            let answer = ends_with_code(&output, 2);
            assert!(answer.contains("a.attempt"), "{command:?}: {answer}");
            for w in wanted {
                assert!(answer.contains(w), "{command:?}: {w:?} is not in {answer}");
            }
            assert!(answer.matches("line ").count() <= 2 && !answer.contains("column 0"), "{answer}");
            for own in OWN_SPEECH {
                assert!(!answer.contains(own), "{command:?}: {answer}");
            }
        }
    }
}

#[cfg(unix)]
#[test]
fn a_permission_that_is_missing_for_reading_is_called_so() {
    use std::os::unix::fs::PermissionsExt as _;
    let home = finished();
    let path = home.path().join("a.attempt");
    std::fs::set_permissions(&path, std::fs::Permissions::from_mode(0o000)).unwrap();
    if std::fs::File::open(&path).is_ok() {
        println!("skipped: this user may read everything");
    } else {
        let text = said(&pinhole(home.path()).args(["mark", "a.attempt"]).output().unwrap());
        assert!(text.contains("a.attempt") && text.contains("no permission to read it"), "{text}");
    }
    // The words themselves, whoever runs the test.
    let error = std::io::Error::from(std::io::ErrorKind::PermissionDenied);
    let words = assess::files::system(&error, assess::files::Doing::Read);
    assert!(words.contains("read") && !words.contains("write"), "{words}");
}
