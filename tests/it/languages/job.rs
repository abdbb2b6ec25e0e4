//! A whole job in German at the text bench, from card to mark sheet: nothing English is left in what is shown, and
//! nothing of the language is in what is recorded.

use std::collections::BTreeSet;
use std::path::Path;
use std::process::Output;

use assess::pack::Library;
use assess::words::{Vocabulary, verbs};

use crate::bench::{ends_with_code, pinhole, root};

const JOB: &str = "first-shift/hum-at-the-lights";

/// Questions that cost nothing, and slips that are allowed, before the job is done.
const BEFORE: &str = "card\nsheet\nlook\ncar\ntools\ntools gauge\nstore\nrecord\nnotebook\nlist\nmark\nhelp\n\
                      look hose_m\nlook pump\ntry engine idle\ntry drive\nsuspect \"Leck?\"\n";

/// English words that are no German ones, no words that are typed and no names.
const ENGLISH: &str = "the is are and of you your not which that this from been has have before after between inside \
                       outside reading readings noted note's it its when where how only says said more most than there \
                       their them they was-shown done wait-for limit limits work minutes desk bench-at finding-was \
                       expected known called nothing something everything must cannot should would could first second";

/// Words that are typed, units, and names that are the same in German.
const TYPED: &str = "kPa kpa ohm deg mm min name volt amp off on until stops starts out lamp pump back over sure none unknown for \
                     with rest run idle cold cruise overrun open stop press prop release pedal moved applications \
                     brakes plus minus red black text mark pinhole attempt html script resume first shift hum at lights \
                     score Alder Bit Test Option Minute Position Transport in an am so die der das";

fn play(home: &Path, lang: &str, script: &Path) -> (String, Output) {
    let output = pinhole(home)
        .args(["--lang", lang, "text", JOB, "--seed", "5eed", "--attempt"])
        .arg(format!("{lang}.attempt"))
        .arg("--script")
        .arg(script)
        .output()
        .unwrap();
    (ends_with_code(&output, 0), output)
}

/// The first English word in a text that is no word of the files or the command line.
pub(super) fn english_in(text: &str) -> Option<&str> {
    /// Keys of data files, words of kinds, names of columns.
    const KEYS: [&str; 4] = ["limit", "limits", "minutes", "readings"];
    let foreign: BTreeSet<&str> = ENGLISH.split_whitespace().filter(|w| !KEYS.contains(w)).collect();
    let typed: BTreeSet<&str> = TYPED.split_whitespace().collect();
    // In a path the words of a name stand for themselves.
    let words = text.split_whitespace().filter(|w| !w.contains(['/', '`', '"', '=']));
    words.flat_map(tokens).find(|t| foreign.contains(t.to_lowercase().as_str()) && !typed.contains(t))
}

/// What is shown, without what was typed.
fn shown(text: &str) -> impl Iterator<Item = &str> {
    text.lines().map(|line| match line.split_once("> ") {
        Some((prompt, _)) if prompt.contains(':') => prompt,
        _ => line,
    })
}

fn tokens(line: &str) -> impl Iterator<Item = &str> {
    line.split(|c: char| !(c.is_alphabetic() || matches!(c, '_' | '\''))).filter(|t| !t.is_empty())
}

/// Everything that may stand in a line of every language.
fn names() -> BTreeSet<String> {
    let library = Library::open(&root()).unwrap();
    let car = library.car("alder").unwrap();
    let spares = library.spares(&car).unwrap();
    let vocabulary = Vocabulary::of(&car, library.kit(), &spares);
    let mut names: BTreeSet<String> = verbs().into_iter().collect();
    for name in vocabulary.names().map(str::to_owned).chain(TYPED.split_whitespace().map(str::to_owned)) {
        names.extend(tokens(&name).map(str::to_owned));
    }
    names
}

#[test]
fn a_whole_job_in_german_leaves_nothing_english() {
    let home = tempfile::tempdir().unwrap();
    let reference = root().join("scenarios/first-shift/reference/hum-at-the-lights.script");
    let mut script = BEFORE.to_owned();
    for verb in verbs() {
        script.push_str(&format!("help {verb}\n"));
    }
    script.push_str(&std::fs::read_to_string(reference).unwrap());
    let file = home.path().join("job.script");
    std::fs::write(&file, script).unwrap();
    let (english, _) = play(home.path(), "en", &file);
    let (german, _) = play(home.path(), "de", &file);

    let names = names();
    let foreign: BTreeSet<&str> = ENGLISH.split_whitespace().collect();
    let told: BTreeSet<&str> = shown(&english).map(str::trim).collect();
    let (mut left, mut lines) = (Vec::new(), 0);
    for line in shown(&german).map(str::trim) {
        lines += 1;
        // Other words that may be typed.
        if line.starts_with("Ebenfalls verstanden:") {
            continue;
        }
        let of_english = tokens(line).find(|t| foreign.contains(t.to_lowercase().as_str()));
        let same = told.contains(line) && tokens(line).any(|t| 2 < t.chars().count() && !names.contains(t));
        if of_english.is_some_and(|t| !names.contains(t)) || same {
            left.push(line);
        }
    }
    assert!(500 < lines, "only {lines} lines were shown");
    assert!(left.is_empty(), "left in English:\n{}", left.join("\n"));
    assert!(german.contains("Bestanden") || german.contains("BESTANDEN"), "{german}");

    // The language is nowhere in what is recorded.
    let recorded = |lang: &str| {
        let text = std::fs::read_to_string(home.path().join(format!("{lang}.attempt"))).unwrap();
        let lines = text.lines().map(|line| {
            let mut line: serde_json::Value = serde_json::from_str(line).unwrap();
            without(&mut line, &["at_unix_ms", "created_unix_s", "chain"]);
            line
        });
        lines.collect::<Vec<_>>()
    };
    let (german, english) = (recorded("de"), recorded("en"));
    assert_eq!(german.len(), english.len());
    for (german, english) in german.iter().zip(&english) {
        assert_eq!(german, english);
    }
}

/// Takes the wall clock, and what hangs on it, out of a line.
fn without(value: &mut serde_json::Value, keys: &[&str]) {
    if let serde_json::Value::Object(map) = value {
        map.retain(|key, _| !keys.contains(&key.as_str()));
        map.values_mut().for_each(|v| without(v, keys));
    }
}

#[test]
fn tables_and_json_are_the_same_in_every_language() {
    let home = tempfile::tempdir().unwrap();
    let script = home.path().join("short.script");
    std::fs::write(&script, "read barometer\nnote shown for day\nfinding hose_m sure 0,80\n").unwrap();
    let file = home.path().join("x.attempt");
    let output = pinhole(home.path())
        .args(["text", JOB, "--seed", "5eed", "--attempt", "x.attempt", "--script", "short.script"])
        .output()
        .unwrap();
    ends_with_code(&output, 1);
    let made = |lang: &str| {
        let (json, csv) = (format!("{lang}.json"), format!("{lang}.csv"));
        let mark = pinhole(home.path())
            .args(["--lang", lang, "mark", "x.attempt", "nosuch.attempt", "--json", &json, "--csv", &csv])
            .output()
            .unwrap();
        let said = ends_with_code(&mark, 2);
        let table = format!("{lang}-trace.csv");
        let trace = pinhole(home.path())
            .args(["--lang", lang, "trace", "alder", "--for", "1", "--csv", &table])
            .output()
            .unwrap();
        ends_with_code(&trace, 0);
        let read = |name: &str| std::fs::read_to_string(home.path().join(name)).unwrap();
        (said, [read(&json), read(&csv), read(&table)])
    };
    let (english, english_files) = made("en");
    let (german, german_files) = made("de");
    assert_eq!(english_files, german_files);
    assert!(english.contains("not finished") && german.contains("nicht abgeschlossen"), "{german}");
    assert!(file.exists());
}

#[test]
fn the_language_is_chosen_by_flag_settings_and_system() {
    let home = tempfile::tempdir().unwrap();
    let settings = home.path().join(".config/pinhole");
    let told = |command: &mut std::process::Command| {
        let output = command.args(["mend", "nosuch.attempt"]).env_remove("LC_ALL").output().unwrap();
        let text = ends_with_code(&output, 2);
        text.split(':').next().unwrap_or_default().to_owned()
    };
    let run = || {
        let mut command = pinhole(home.path());
        command.env_remove("LANGUAGE").env_remove("XDG_CONFIG_HOME");
        command
    };
    assert_eq!(told(run().env("LANG", "en_GB.UTF-8")), "error");
    assert_eq!(told(run().env("LANG", "de_AT.UTF-8")), "Fehler");
    assert_eq!(told(run().env("LANG", "de_AT.UTF-8").args(["--lang", "en"])), "error");
    assert_eq!(told(run().env("LANG", "C")), "error");
    assert_eq!(told(run().env("LANG", "en_GB.UTF-8").args(["--lang", "de-CH"])), "Fehler");
    std::fs::create_dir_all(&settings).unwrap();
    std::fs::write(settings.join("settings.json"), "{\"language\": \"de\"}").unwrap();
    assert_eq!(told(run().env("LANG", "en_GB.UTF-8")), "Fehler");
    // A language that is not there is refused in the one that would be spoken without it.
    let refused = |command: &mut std::process::Command| {
        let output = command.args(["--lang", "xx", "mend", "nosuch.attempt"]).env_remove("LC_ALL").output();
        ends_with_code(&output.unwrap(), 2)
    };
    let text = refused(&mut run());
    assert!(text.contains("--lang xx: diese Sprache gibt es nicht; es gibt de, en"), "{text}");
    std::fs::remove_file(settings.join("settings.json")).unwrap();
    let text = refused(run().env("LANG", "en_GB.UTF-8"));
    assert!(text.contains("--lang xx: there is no such language; there are de, en"), "{text}");
}
