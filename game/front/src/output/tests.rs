//! What is there is replaced only by its own kind; one file has one name.

use super::*;

fn said(result: Result<Output, OutputError>) -> String {
    result.map(|o| o.path().to_owned()).unwrap_err().to_string()
}

#[test]
fn what_is_there_is_replaced_only_by_its_own_kind() {
    let dir = tempfile::tempdir().unwrap();
    let at = |name: &str| dir.path().join(name);
    let plan = |name: &str, kind| Outputs::default().plan("--csv", &at(name), kind);
    std::fs::write(at("notes.txt"), "my notes").unwrap();
    std::fs::write(at("a.attempt"), "{\"schema\":\"pinhole-attempt/1\"}").unwrap();
    std::fs::write(at("empty"), "").unwrap();
    std::fs::write(at("old.csv"), "attempt,job,seat\n").unwrap();
    for kind in [Kind::Sheet, Kind::Marks, Kind::MarkTable, Kind::TraceTable, Kind::Drawing, Kind::Picture] {
        assert!(said(plan("notes.txt", kind)).contains("not a"), "{kind:?}");
        assert!(said(plan("a.attempt", kind)).contains("is an attempt"), "{kind:?}");
        plan("empty", kind).unwrap().write(b"").unwrap();
    }
    assert!(said(plan("old.csv", Kind::TraceTable)).contains("old.csv"));
    plan("old.csv", Kind::MarkTable).unwrap().write(b"attempt,job,new\n").unwrap();
    assert_eq!(std::fs::read(at("old.csv")).unwrap(), b"attempt,job,new\n");
    assert!(said(plan("no/such/x", Kind::MarkTable)).contains("no such"));
    assert!(said(plan(".", Kind::MarkTable)).contains("a folder"));
    // Something else came to stand there after it was planned.
    let late = plan("late.csv", Kind::MarkTable).unwrap();
    std::fs::write(at("late.csv"), "mine").unwrap();
    assert!(late.write(b"attempt,job\n").is_err());
    assert_eq!(std::fs::read(at("late.csv")).unwrap(), b"mine");
    let left: Vec<_> = std::fs::read_dir(dir.path())
        .unwrap()
        .map(|e| e.unwrap().file_name().into_string().unwrap())
        .filter(|n| n.starts_with(".pinhole"))
        .collect();
    assert!(left.is_empty(), "{left:?}");
}

#[test]
fn one_file_has_one_name_however_it_is_spelled() {
    let dir = tempfile::tempdir().unwrap();
    let input = dir.path().join("in.csv");
    std::fs::write(&input, "attempt,job\n").unwrap();
    std::fs::create_dir(dir.path().join("sub")).unwrap();
    let mut names = vec![input.clone(), dir.path().join("sub/../in.csv"), dir.path().join("./in.csv")];
    #[cfg(unix)]
    {
        std::os::unix::fs::symlink(&input, dir.path().join("soft.csv")).unwrap();
        names.push(dir.path().join("soft.csv"));
    }
    std::fs::hard_link(&input, dir.path().join("hard.csv")).unwrap();
    names.push(dir.path().join("hard.csv"));
    for name in &names {
        let error = Outputs::beside([&input]).plan("--csv", name, Kind::MarkTable);
        assert!(said(error).contains("is read by this command"), "{}", name.display());
    }
    let mut outputs = Outputs::default();
    drop(outputs.plan("--csv", &dir.path().join("new"), Kind::MarkTable).unwrap());
    let twice = outputs.plan("--json", &dir.path().join("sub/../new"), Kind::Marks);
    assert!(said(twice).contains("--csv goes there already"));
    drop(outputs.plan("--csv", Path::new("-"), Kind::MarkTable).unwrap());
    assert!(outputs.plan("--json", Path::new("/dev/stdout"), Kind::Marks).is_err());
}

#[test]
fn cells_are_harmless() {
    for (text, wanted) in [
        ("=1+1", "'=1+1"),
        ("+49", "'+49"),
        ("-x", "'-x"),
        ("@sum", "'@sum"),
        (" =1", "' =1"),
        ("\tx", "'\\tx"),
        ("\rx", "'\\rx"),
        ("＝1", "'＝1"),
        ("Seat 12", "Seat 12"),
        ("a\u{1b}[2J", "a\\u{1b}[2J"),
        ("", ""),
    ] {
        assert_eq!(cell(text), wanted);
    }
}
