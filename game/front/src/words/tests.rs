//! Every language says the same things, with the same values, and says everything that is asked for.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use assess::locale::{Naming, Speech};
use assess::pack::Library;
use sim_core::action::Sense;
use sim_core::notice::{self, Hazard, Left, Reason, Word};
use sim_core::observe::{Observed, Scale};

use super::{FALLBACK, Words};
use crate::rehearsal::{JOB, shop};
use crate::shop::Told;

/// Names that a data file has too: English may leave them out. Of each car, by what is named.
const OF_A_CAR: [&str; 10] =
    ["name", "part-", "cover-", "unit-", "fault-", "spare-", "limit-", "record-", "caution-", "test-"];
/// The same of everything else.
const NAMED_IN_DATA: [&str; 6] = ["instrument-", "pack-", "job-", "level-", "refused-", "said-"];

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

/// Each message of a language with the names of the values it takes.
fn messages(tag: &str) -> BTreeMap<String, BTreeSet<String>> {
    let mut out = BTreeMap::new();
    for entry in std::fs::read_dir(root().join("assets/locales").join(tag)).unwrap() {
        let path = entry.unwrap().path();
        let mut key = String::new();
        for line in std::fs::read_to_string(&path).unwrap().lines() {
            if line.starts_with('#') {
                continue;
            }
            if let Some((name, _)) = line.split_once(" =").filter(|_| line.starts_with(char::is_alphabetic)) {
                key = name.to_owned();
                assert!(out.insert(key.clone(), BTreeSet::new()).is_none(), "{tag}: {key} is there twice");
            }
            let Some(values) = out.get_mut(&key) else { continue };
            for (at, _) in line.match_indices('$') {
                let name = line[at + 1..].split(|c: char| !c.is_alphanumeric() && c != '_').next();
                values.insert(name.unwrap_or_default().to_owned());
            }
        }
    }
    out
}

/// Short names of all cars.
fn cars() -> Vec<String> {
    Library::open(&root()).unwrap().cars().unwrap()
}

fn in_data(key: &str) -> bool {
    NAMED_IN_DATA.iter().any(|family| key.starts_with(family))
        || cars().iter().any(|car| {
            let of_it = key.strip_prefix(car.as_str()).and_then(|rest| rest.strip_prefix('-'));
            of_it.is_some_and(|name| OF_A_CAR.iter().any(|family| name.starts_with(family)))
        })
}

fn languages() -> Vec<String> {
    Words::open(&root(), &[]).unwrap().tags().to_vec()
}

#[test]
fn inv_every_language_has_the_same_keys_and_values() {
    let english = messages(FALLBACK);
    for tag in languages() {
        let other = messages(&tag);
        for (key, values) in &english {
            let found = other.get(key).unwrap_or_else(|| panic!("{tag} lacks {key}"));
            // A language may leave out what it says otherwise, but has no more than there is.
            let may_leave = key.starts_with("told-");
            assert!(found == values || (may_leave && found.is_subset(values)), "{tag}: values of {key}");
        }
        for key in other.keys().filter(|k| !in_data(k)) {
            assert!(english.contains_key(key), "{tag} has {key}, English does not");
        }
    }
}

/// All sources of a folder.
fn sources(folder: &Path, out: &mut Vec<String>) {
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            sources(&path, out);
        } else if path.extension().is_some_and(|x| x == "rs")
            && path.file_name().is_some_and(|n| n != "tests.rs")
        {
            out.push(std::fs::read_to_string(&path).unwrap());
        }
    }
}

/// Text between quotes that could be a key.
fn literals(text: &str) -> impl Iterator<Item = &str> {
    text.split('"').skip(1).filter(|t| {
        t.contains('-')
            && t.starts_with(|c: char| c.is_ascii_lowercase())
            && t.chars().all(|c| c.is_ascii_alphanumeric() || matches!(c, '-' | '_' | '{' | '}'))
    })
}

#[test]
fn inv_every_key_that_is_asked_for_is_there_and_none_is_idle() {
    let mut texts = Vec::new();
    let folders = ["game/front/src", "game/window/src", "game/src", "game/assess/src", "sim-core/src/notice"];
    for folder in folders {
        sources(&root().join(folder), &mut texts);
    }
    let english = messages(FALLBACK);
    let mut asked = BTreeSet::new();
    for text in &texts {
        asked.extend(literals(text).map(str::to_owned));
        for call in ["say(", "say_with(", "offer(", "about("] {
            for (at, _) in text.match_indices(call) {
                let Some(rest) = text[at + call.len()..].trim_start().strip_prefix('"') else { continue };
                let key = rest.split('"').next().unwrap_or_default();
                assert!(english.contains_key(key), "{key} is asked for, but English lacks it");
            }
        }
    }
    asked.extend(notice::word_keys().iter().map(|word| format!("word-{word}")));
    let in_sentences = |text: &str| {
        let words = text.split("word(\"").skip(1).filter_map(|rest| rest.split('"').next());
        words.map(|word| format!("word-{word}")).collect::<Vec<_>>()
    };
    asked.extend(texts.iter().flat_map(|text| in_sentences(text)));
    // Keys that are put together: what stands before the first brace.
    let built: Vec<&str> = asked
        .iter()
        .filter_map(|k| k.split_once('{'))
        .map(|(head, _)| head)
        .filter(|h| !h.is_empty())
        .collect();
    let mut idle = Vec::new();
    // The last two are asked for by names of commands and words: `game/src/pages.rs` and `tests/it/languages` hold them.
    let mut own: Vec<String> = ["language-name", "short-", "cli-", "help-word-"].map(str::to_owned).to_vec();
    own.extend(cars().iter().map(|car| format!("{car}-short-")));
    for key in english.keys().filter(|k| !in_data(k)) {
        let used = asked.contains(key)
            || built.iter().any(|head| key.starts_with(head))
            || own.iter().any(|head| key.starts_with(head.as_str()));
        if !used {
            idle.push(key);
        }
    }
    assert!(idle.is_empty(), "nobody asks for {idle:?}");
}

#[test]
fn inv_german_has_every_name_of_the_car() {
    let shop = shop(JOB);
    let german = messages("de");
    let (car, session) = (shop.car().unwrap(), shop.session().unwrap());
    let setup = session.workshop().setup();
    let mut wanted: Vec<String> = vec![format!("{}-name", car.id)];
    let mut want = |key: String| wanted.push(key);
    for part in &car.assembly.parts {
        want(format!("{}-part-{}", car.id, part.id));
        for end in part.kind.ports() {
            want(format!("end-{}-{}", part.kind.name().to_lowercase(), end.name));
        }
    }
    car.covers.iter().for_each(|c| want(format!("{}-cover-{}", car.id, c.id)));
    car.units.iter().for_each(|u| want(format!("{}-unit-{}", car.id, u.id)));
    car.faults.iter().for_each(|f| want(format!("{}-fault-{}", car.id, f.id)));
    setup.spares.iter().for_each(|s| want(format!("{}-spare-{}", car.id, s.id)));
    car.limits.iter().for_each(|l| want(format!("{}-limit-{}", car.id, l.id)));
    (1..=car.cautions.len()).for_each(|n| want(format!("{}-caution-{n}", car.id)));
    for line in &car.record {
        want(format!("{}-record-{}", car.id, line.id));
    }
    for (card, c) in setup.kit.iter().enumerate() {
        want(format!("instrument-{}", c.id));
        if !c.help.is_empty() {
            want(format!("instrument-{}-help", c.id));
        }
        session.workshop().ends_of(card).iter().for_each(|end| want(format!("lead-{end}")));
    }
    let tests = &session.job().tests;
    assert!(!tests.is_empty());
    tests.iter().for_each(|t| want(format!("{}-test-{}", car.id, t.id)));
    for pack in shop.packs() {
        want(format!("pack-{}", pack.id));
        pack.jobs.iter().flatten().for_each(|j| want(format!("job-{}", j.name.replace('/', "-"))));
    }
    let root = root();
    let library = assess::pack::Library::open(&root).unwrap();
    for summary in shop.packs().iter().flat_map(|p| p.jobs.iter().flatten()) {
        let job = library.job(&summary.name).unwrap();
        let name = summary.name.replace('/', "-");
        let cautions = job.cautions().count();
        (1..=job.card.len() - cautions).for_each(|n| wanted.push(format!("job-{name}-says-{n}")));
        // The last caution is the program's own.
        (1..cautions).for_each(|n| wanted.push(format!("job-{name}-caution-{n}")));
        let told = job.debrief.lines().filter(|l| !l.is_empty()).count();
        (1..=told).for_each(|n| wanted.push(format!("job-{name}-debrief-{n}")));
    }
    for key in &wanted {
        assert!(german.contains_key(key), "German lacks {key}");
    }
    for key in german.keys().filter(|k| k.starts_with("job-")) {
        assert!(wanted.contains(key), "no job has anything for {key}");
    }
    // And nothing is translated that the car does not have.
    for key in german.keys().filter(|k| k.starts_with("alder-") && !k.starts_with("alder-short-")) {
        assert!(wanted.contains(key), "the car has nothing for {key}");
    }
}

#[test]
fn inv_german_has_every_level_of_every_sense() {
    let shop = shop(JOB);
    let german = messages("de");
    let workshop = shop.session().unwrap().workshop();
    let part = || workshop.setup().car.assembly.parts[0].id.clone();
    let rubber = workshop.setup().car.stands.iter().position(|s| s.rubber).unwrap();
    let senses = [
        Sense::Hiss { part: part() },
        Sense::Hum,
        Sense::Touch { part: part() },
        Sense::Touch { part: workshop.setup().car.assembly.parts[rubber].id.clone() },
        Sense::PedalMoved,
        Sense::Applications,
        Sense::Lamp { instrument: "lamp".to_owned() },
        Sense::BaseBrakes,
        Sense::YardDrive,
    ];
    for sense in senses {
        let Scale::Ordinal { levels, .. } = workshop.scale(&Observed::Sense(sense.clone())) else {
            panic!("{sense:?} is no sense in levels");
        };
        for level in levels {
            let key = format!("level-{level}");
            assert!(german.contains_key(&key), "German lacks {key}");
        }
    }
}

#[test]
fn numbers_are_written_as_the_language_writes_them() {
    use crate::prefs::PressureUnit;
    let words = |tag: &str| Words::open(&root(), &[tag.to_owned()]).unwrap();
    assert_eq!(words("de").number(-12.63, 2), "−12,63");
    assert_eq!(words("en").number(-12.63, 2), "−12.63");
    assert_eq!(words("de").number(-0.01, 1), "0,0");
    assert_eq!(words("en").pressure(-58.0, PressureUnit::Kpa), "−58 kPa");
    assert_eq!(words("en").pressure(-58.5, PressureUnit::Mbar), "−585 mbar");
    assert_eq!(words("en").pressure(-58.0, PressureUnit::Inhg), "−17.1 inHg");
    assert_eq!(words("en").plain(12.63), "12.63");
    assert_eq!(words("en").plain(55.8), "55.8");
}

#[test]
fn inv_every_language_says_every_notice() {
    let keys = notice::keys();
    assert!(140 < keys.len(), "only {} notices: are they all listed?", keys.len());
    for tag in languages() {
        let told = messages(&tag);
        for (key, gaps) in &keys {
            let values = told.get(*key).unwrap_or_else(|| panic!("{tag} lacks {key}"));
            // How things are named can always be asked.
            let values: Vec<_> = values.iter().filter(|v| *v != "naming").collect();
            let unknown: Vec<_> = values.iter().filter(|v| !gaps.contains(&v.as_str())).collect();
            assert!(unknown.is_empty(), "{tag}: {key} puts in {unknown:?}; it has {gaps:?}");
            // English says all that there is to say.
            assert!(tag != FALLBACK || values.len() == gaps.len(), "{key} leaves out some of {gaps:?}");
        }
        for word in notice::word_keys() {
            assert!(told.contains_key(&format!("word-{word}")), "{tag} lacks word-{word}");
        }
    }
}

#[test]
fn what_the_workshop_says_is_said_in_german() {
    let mut shop = shop(JOB);
    let words = |tag: &str| Words::open(&root(), &[tag.to_owned()]).unwrap();
    let (english, german) = (words("en"), words("de"));
    shop.play("card\nkey off\nopen j_booster\nfit gauge tee.2\nstroke handpump 5\nhand back\nkey on\nkey on")
        .unwrap();
    let told: Vec<_> = shop.remarks().iter().filter(|r| r.told != Told::Nothing).collect();
    assert!(6 < told.len(), "{told:?}");
    for remark in told {
        let (english, german) = (english.remark(&shop, remark), german.remark(&shop, remark));
        assert_ne!(german, english, "left in English");
        assert!(!german.is_empty() && !english.is_empty());
    }
    let cover = Told::Refusal(Reason::CoverInTheWay { cover: "scuttle".into(), id: "scuttle".into() }.into());
    assert_eq!(
        german.told(&shop, &cover),
        "im Weg: Wasserkastenabdeckung über dem Bremskraftverstärker – zuerst abnehmen"
    );
    let left = vec![
        Left::Stop { stop: Word::Plug, at: "tee.2".into() },
        Left::Joint { joint: "j_tee".into() },
        Left::Pulled { unit: "relay".into() },
    ];
    let left = Told::Hazard(Hazard::BackWithThings { left });
    assert_eq!(
        german.told(&shop, &left),
        "Das Fahrzeug wurde übergeben, obwohl etwas daran geblieben oder offen war: Stopfen: \
         Kreuzstück: Abgang 2; offene Verbindung: Verbindung: Formschlauch vom Bremskraftverstärker zum \
         Kreuzstück: Ende B – Kreuzstück: Abgang 1; abgezogen: Relais der Pumpe."
    );
    // Where names are typed, they stand as they are typed.
    let typed = |words: &Words, told: &Told| {
        let job = shop.job().unwrap();
        let Told::Hazard(hazard) = told else { panic!("{told:?}") };
        Speech::new(words, job, Naming::Typed).tell(hazard)
    };
    assert_eq!(
        typed(&english, &left),
        "You handed the car back with things left on it or undone: a plug at tee.2; open joint j_tee; relay of \
         the pump pulled out."
    );
    assert!(typed(&german, &left).contains("offene Verbindung: j_tee"), "{}", typed(&german, &left));
}

/// A copy of the languages, changed.
fn opened_with(change: impl FnOnce(&std::path::Path)) -> String {
    let home = tempfile::tempdir().unwrap();
    for tag in ["en", "de"] {
        let folder = home.path().join("assets/locales").join(tag);
        std::fs::create_dir_all(&folder).unwrap();
        for entry in std::fs::read_dir(root().join("assets/locales").join(tag)).unwrap() {
            let entry = entry.unwrap();
            std::fs::copy(entry.path(), folder.join(entry.file_name())).unwrap();
        }
    }
    change(home.path());
    let error = Words::open(home.path(), &["de".to_owned()]).unwrap_err();
    let said = format!("{error:#}");
    assert!(!said.contains(|c: char| c != '\n' && assess::locale::quote::is_unsafe(c)), "{said:?}");
    said
}

#[test]
fn words_with_controls_or_from_elsewhere_are_refused() {
    const FILE: &str = "assets/locales/de/window.ftl";
    for text in ["a = x\u{1b}[2J\n", "a = {\"\\u001B\"}\n", "a = \u{202e}x\n", "a = {\"\\U00202E\"}\n"] {
        let said = opened_with(|home| std::fs::write(home.join(FILE), format!("b = ok\n{text}")).unwrap());
        assert!(said.contains("window.ftl, line 2") && said.contains("control character"), "{said}");
    }
    let said = opened_with(|home| std::fs::write(home.join(FILE), vec![b'#'; 2 << 20]).unwrap());
    assert!(said.contains("window.ftl") && said.contains("at most 1048576 bytes"), "{said}");
    let said = opened_with(|home| std::fs::write(home.join(FILE), b"a = b\nc = \xff\n").unwrap());
    assert!(said.contains("window.ftl, line 2") && said.contains("UTF-8"), "{said}");
    let said = opened_with(|home| std::fs::write(home.join(FILE), "a = b\nsecret here\n").unwrap());
    assert!(said.contains("window.ftl, line 2") && said.contains("key = text"), "{said}");
    assert!(!said.contains("secret"), "{said}");
    let said = opened_with(|home| std::fs::write(home.join(FILE), "a = b\na = c\n").unwrap());
    assert!(said.contains("window.ftl: a has its words already"), "{said}");
    #[cfg(unix)]
    {
        let away = tempfile::tempdir().unwrap();
        std::fs::write(away.path().join("x"), "secret = x\nno words\n").unwrap();
        let replaced = |by: &std::path::Path| {
            opened_with(|home| {
                std::fs::remove_file(home.join(FILE)).unwrap();
                std::os::unix::fs::symlink(by, home.join(FILE)).unwrap();
            })
        };
        let said = replaced(&away.path().join("x"));
        assert!(
            said.contains("window.ftl") && said.contains("leaves") && !said.contains("no words"),
            "{said}"
        );
        let said = replaced(std::path::Path::new("/dev/zero"));
        assert!(said.contains("window.ftl"), "{said}");
        let said = opened_with(|home| {
            std::fs::remove_file(home.join(FILE)).unwrap();
            assert!(std::process::Command::new("mkfifo").arg(home.join(FILE)).status().unwrap().success());
        });
        assert!(said.contains("window.ftl") && said.contains("a pipe"), "{said}");
    }
}
