//! A folder of attempts: alone, in shards, stopped and gone on with, always the same bytes.

use std::path::Path;

use super::outputs::finished;
use super::{ends_with_code, pinhole, root};

/// A finished attempt, two that are not finished, and a file that is none.
fn folder(home: &Path) {
    let of = home.join("class");
    std::fs::create_dir(&of).unwrap();
    std::fs::copy(home.join("a.attempt"), of.join("a.attempt")).unwrap();
    // An unfinished one is quick to mark.
    let script = home.join("s.script");
    std::fs::write(&script, "hum\nnote\n").unwrap();
    for (name, job) in [("b", "flat-after-the-weekend"), ("c", "hum-at-the-lights")] {
        let job = format!("first-shift/{job}");
        let attempt = of.join(format!("{name}.attempt"));
        let output = pinhole(home)
            .args(["text", &job, "--seed", "1", "--script"])
            .arg(&script)
            .arg("--attempt")
            .arg(attempt)
            .output()
            .unwrap();
        ends_with_code(&output, 1);
    }
    std::fs::write(of.join("d.attempt"), "no attempt\n").unwrap();
    std::fs::write(of.join("notes.txt"), "mine").unwrap();
}

fn mark(home: &Path, threads: usize, args: &[&str], code: i32) -> String {
    let output =
        pinhole(home).env("RAYON_NUM_THREADS", threads.to_string()).arg("mark").args(args).output().unwrap();
    ends_with_code(&output, code)
}

#[test]
fn inv_the_same_bytes_alone_in_shards_on_one_thread_and_many_and_after_a_stop() {
    let home = finished();
    let home = home.path();
    folder(home);
    let bytes = |name: &str| std::fs::read(home.join(name)).unwrap();
    let before = bytes("class/a.attempt");
    let text = mark(home, 1, &["class", "--csv", "1.csv", "--json", "1.json"], 2);
    assert!(
        text.contains("4 attempts: 1 competent, 0 not yet competent, 2 not finished, 1 cannot"),
        "{text}"
    );
    assert_eq!(bytes("class/a.attempt"), before, "nothing is written into an attempt");
    let table = String::from_utf8(bytes("1.csv")).unwrap();
    let row = table.lines().find(|line| line.starts_with("d.attempt")).unwrap();
    assert!(row.contains("cannot be marked: "), "{row}");

    // Again: all that could be marked stands there.
    let text = mark(home, 2, &["class", "--csv", "2.csv", "--json", "2.json"], 2);
    assert_eq!(text.matches("marked before").count(), 3, "{text}");
    for k in 1..=3 {
        let shard = format!("{k}/3");
        // Before all shards are done nothing can be put together.
        let error = mark(home, 1, &["--collect", if k == 1 { "class" } else { "shards" }], 2);
        assert!(error.contains("shard") || error.contains("no file of results"), "{error}");
        // The first holds a.attempt and d.attempt, which is none.
        let code = if k == 1 { 2 } else { 1 };
        mark(home, 3, &["class", "--shard", &shard, "--results", "shards"], code);
    }
    mark(home, 1, &["--collect", "shards", "--csv", "3.csv", "--json", "3.json"], 2);
    // Stopped in the middle: half a line is dropped, the rows before it stay.
    let kept = home.join("class/marks/marks-1-of-1.results");
    let whole = std::fs::read(&kept).unwrap();
    let cut = whole.iter().position(|b| *b == b'\n').unwrap() + 40;
    std::fs::write(&kept, &whole[..cut]).unwrap();
    mark(home, 2, &["class", "--csv", "4.csv", "--json", "4.json"], 2);
    for n in 2..=4 {
        assert!(bytes("1.csv") == bytes(&format!("{n}.csv")), "table {n}");
        assert!(bytes("1.json") == bytes(&format!("{n}.json")), "sheets {n}");
    }
}

#[test]
fn a_folder_that_cannot_be_marked_or_kept_says_why() {
    let home = tempfile::tempdir().unwrap();
    let home = home.path();
    std::fs::create_dir(home.join("empty")).unwrap();
    assert!(mark(home, 1, &["empty"], 2).contains("no file that ends in .attempt"));
    std::fs::write(home.join("empty/x.attempt"), "x\n").unwrap();
    for shard in ["0/2", "3/2", "1", "a/b"] {
        assert!(mark(home, 1, &["empty", "--shard", shard], 2).contains("K/N"), "{shard}");
    }
    assert!(mark(home, 1, &["empty", "empty", "--shard", "1/2"], 2).contains("name the folder alone"));
    std::fs::create_dir(home.join("strange")).unwrap();
    let kept = home.join("strange/marks-1-of-1.results");
    std::fs::write(&kept, "my notes\n").unwrap();
    assert!(mark(home, 1, &["empty", "--results", "strange"], 2).contains("move it away"));
    assert_eq!(std::fs::read(&kept).unwrap(), b"my notes\n");
    assert!(mark(home, 1, &["--collect", "empty"], 2).contains("no file of results"));
}

#[cfg(unix)]
#[test]
fn a_full_disk_loses_no_row() {
    let home = finished();
    let home = home.path();
    std::fs::create_dir(home.join("class")).unwrap();
    for name in ["a", "b"] {
        std::fs::write(home.join(format!("class/{name}.attempt")), "no attempt\n").unwrap();
    }
    std::fs::copy(home.join("a.attempt"), home.join("class/c.attempt")).unwrap();
    // A limit on file size stands in for the full disk: a sheet does not fit, two short rows do.
    let line = format!(
        "trap '' XFSZ; ulimit -f 4; RAYON_NUM_THREADS=1 exec '{}' --data '{}' mark class",
        super::program().display(),
        root().display(),
    );
    let output = std::process::Command::new("sh")
        .current_dir(home)
        .env("HOME", home)
        .env("LC_ALL", "C")
        .args(["-c", &line])
        .output()
        .unwrap();
    let text = ends_with_code(&output, 2);
    assert!(text.contains("what is marked already is kept"), "{text}");
    let kept = std::fs::read_to_string(home.join("class/marks/marks-1-of-1.results")).unwrap();
    assert_eq!(kept.lines().count(), 3, "a head and two rows: {kept}");
    assert!(kept.ends_with('\n'));
    let text = mark(home, 2, &["class"], 2);
    assert!(text.contains("3 attempts: 1 competent") && text.contains("2 cannot be marked"), "{text}");
}
