//! Files that are broken in many ways, told in German: nothing English is left in what is said, and the program ends
//! with 2.

use std::path::Path;

use assess::locale::Locale;
use assess::pack::{Library, PackErrors};

use super::job::english_in;
use crate::bench::bad_input::{data, edit};
use crate::bench::chain::{bodies, chained, made};
use crate::bench::{ends_with_code, pinhole, pinhole_with, root};

const JOB: &str = "first-shift/hum-at-the-lights";

const JOB_FILE: &str = "scenarios/first-shift/jobs/hum-at-the-lights.ron";
const PACK: &str = "scenarios/first-shift/pack.ron";
const CAR: &str = "assets/vehicles/alder.ron";
const GAUGE: &str = "assets/instruments/gauge.ron";
const SPARES: &str = "assets/spares/alder.ron";
const ROOM: &str = "assets/rooms/alder.ron";
const DIAGRAM: &str = "assets/diagrams/alder.ron";
const TESTS: &str = "assets/tests/alder.ron";

/// File, what is changed in it, to what, and some of what is said.
type Break = (&'static str, &'static str, &'static str, &'static str);

/// Each kind of mistake, and each subject.
const BREAKS: &[Break] = &[
    (
        CAR,
        "length_m: 0.4",
        "length_mm: 400.0",
        "`Hose` hat keinen Schlüssel `length_mm`; bekannte Schlüssel: bore_mm",
    ),
    (CAR, "bore_mm: 7.0,", "", "`VacuumPump` braucht den Schlüssel `bore_mm`"),
    (CAR, "bore_mm: 7.0,", "bore_mm: 7.0, bore_mm: 7.0,", "`bore_mm` von `VacuumPump` steht zweimal da"),
    (CAR, "kind: Tee", "kind: Manifold", "`Manifold` gehört nicht zu den Arten von Teilen: Hose"),
    (CAR, "parts: [", "parts: {", "erwartet wird eine Liste, [ … ]; bei `{`"),
    (CAR, "Vehicle(", "Wagon(", "erwartet wird der Block `Vehicle( … )`, gefunden `Wagon`"),
    (CAR, "schema: 1", "schema: 7", "schema: 7; dieses Programm liest schema 1"),
    (CAR, "price: 320.0", "price: -1.0", "units[0].price = -1, zulässig 0 bis 10000 Werkstattgeld"),
    (
        CAR,
        "altitude_limit_m: 2000.0",
        "altitude_limit_m: NaN",
        "ist keine endliche Zahl, zulässig 0 bis 5000",
    ),
    (CAR, "a: \"tee.2\"", "a: \"tee.9\"", "es gibt keinen Anschluss namens \"tee.9\"; bekannt: tee.1"),
    (
        CAR,
        "id: \"e_strap\"",
        "id: \"e_earth\"",
        "die Verbindung \"e_earth\" gibt es schon, bei joints[17].id",
    ),
    (CAR, "id: \"alder\"", "id: \"elder\"", "aber zum Namen der Datei gehört \"alder\""),
    (CAR, "b: \"switch.vacuum\"", "b: \"switch.p\"", "tee.2 (Luft) mit switch.p (Strom)"),
    (CAR, "b: \"switch.vacuum\"", "b: \"tee.2\"", "mit sich selbst"),
    (CAR, "severity_min: 0.3,", "severity_min: 0.1,", "ein Fehler muss ihn verletzen"),
    (CAR, "name: \"Alder", "name: \"Al\\tder", "ein Steuerzeichen, das in keinem Text stehen darf"),
    (
        CAR,
        "id: \"dead-head\", unit: \"kPa\"",
        "id: \"dead-head\", unit: \"bar\"",
        "ist keine Einheit; bekannt: kPa",
    ),
    (GAUGE, "class: 1.6", "class: 60.0", "zulässig 0.05 bis 10 % der Skala"),
    (GAUGE, "max: 0.0", "max: -100.0", "das untere Ende muss zuerst stehen"),
    (SPARES, "unit: \"tee\"", "unit: \"t\"", "es gibt keine Baugruppe namens \"t\""),
    (TESTS, "\"take gauge\"", "\"take gouge\"", "es gibt kein Messgerät namens \"gouge\""),
    (
        TESTS,
        ", \"take gauge\"",
        "",
        "eine Prüfung lässt das Fahrzeug, wie es war; es fehlt die Zeile `take gauge`",
    ),
    (TESTS, "\"read barometer\", ", "", "es gibt noch keine Ablesung"),
    (TESTS, "\"read barometer\", \"note shown for day\"", "\"read barometer\"", "eine Prüfung notiert etwas"),
    (TESTS, "\"brakes\", \"note shown\"", "\"brakes\", \"note shown\", \"note 1 shown\"", "schon notiert"),
    (TESTS, "\"brakes\", \"note shown\"", "\"brakes\", \"note 3 V\"", "weiß noch niemand"),
    (TESTS, "undo: [\"key off\"", "undo: [\"key on\"", "das ist an dieser Stelle der Prüfung schon so"),
    (
        TESTS,
        "undo: [\"key off\"",
        "undo: [\"note shown\", \"key off\"",
        "Notizen stehen nur unter `readings`",
    ),
    (TESTS, "undo: [\"key off\"", "undo: [\"swap relay\", \"key off\"", "Reparaturen und Befunde weglassen"),
    (TESTS, "\"meter volt\", ", "", "während der Drehschalter auf Aus steht"),
    (TESTS, "id: \"room\"", "id: \"day\"", "die Prüfung \"day\" gibt es schon"),
    (TESTS, "kind: condition", "kind: guess", "`guess` gehört nicht zu den Arten von Prüfungen"),
    (PACK, "title: \"First shift\"", "title: \" \"", "title ist leer; einen Titel hinschreiben"),
    (PACK, "\"tube\"", "\"trumpet\"", "es gibt kein Messgerät namens \"trumpet\""),
    (
        JOB_FILE,
        "severity: 0.23",
        "severity: 5.0",
        "im Fehlerkatalog steht valve_m_leaks_back von 0.06 bis 0.6",
    ),
    (JOB_FILE, "altitude_m: 120.0", "altitude_m: 2500.0", "erreicht die Abschaltschwelle nur bis 2000 m"),
    (JOB_FILE, "hum-at-the-lights.script", "../../x.script", "ein Name, der auf .script endet"),
];

fn german() -> Locale {
    Locale::open(&root(), &["de".to_owned()]).unwrap()
}

#[test]
fn every_kind_of_broken_file_is_told_in_german_and_ends_with_two() {
    let home = tempfile::tempdir().unwrap();
    for (file, from, to, wanted) in BREAKS {
        let data = data();
        edit(data.path(), file, from, to);
        let output =
            pinhole_with(home.path(), data.path()).args(["--lang", "de", "text", JOB]).output().unwrap();
        let said = ends_with_code(&output, 2);
        assert!(said.starts_with("Fehler: ") && said.contains(file) && said.contains(wanted), "{to}: {said}");
        assert_eq!(english_in(&said), None, "{to}: {said}");
    }
}

#[test]
fn a_file_that_is_cut_off_too_long_or_no_text_is_told_in_german() {
    let (words, data) = (german(), data());
    let file = data.path().join(CAR);
    let good = std::fs::read(&file).unwrap();
    let said = || {
        let said = words.sentence(&car(data.path()).unwrap_err().in_one());
        assert_eq!(english_in(&said), None, "{said}");
        said
    };
    std::fs::write(&file, &good[..good.len() / 2]).unwrap();
    assert!(said().contains("mitten in einem Wert"), "{}", said());
    std::fs::write(&file, [b"\xff", &good[..]].concat()).unwrap();
    assert!(said().contains("die Datei als UTF-8-Text speichern"), "{}", said());
    std::fs::write(&file, vec![b' '; 3_000_000]).unwrap();
    assert!(said().contains("gelesen werden höchstens"), "{}", said());
    std::fs::remove_file(&file).unwrap();
    std::fs::create_dir(&file).unwrap();
    assert!(said().contains("ist ein Ordner, keine gewöhnliche Datei"), "{}", said());
    // More than are told one by one.
    std::fs::remove_dir(&file).unwrap();
    let text =
        String::from_utf8(good).unwrap().replace("bore_mm: ", "bore_mm: -").replace("price: ", "price: -");
    std::fs::write(&file, text).unwrap();
    assert!(said().contains("weitere; zuerst diese beheben"), "{}", said());
}

fn car(data: &Path) -> Result<(), PackErrors> {
    Library::open(data)?.car("alder").map(drop)
}

#[test]
fn rooms_and_diagrams_are_told_in_german() {
    let words = german();
    for (file, from, to, wanted) in [
        (ROOM, "cover: \"scuttle\"", "cover: \"hood\"", "es gibt keine Abdeckung namens \"hood\""),
        (ROOM, "shell: saloon", "shell: barge", "`barge` gehört nicht zu den Karosserien"),
        (DIAGRAM, "part: \"pump\"", "part: \"pomp\"", "es gibt kein Teil namens \"pomp\""),
        (DIAGRAM, "turn: 1", "turn: 7", "zulässig 0 bis 3 Vierteldrehungen"),
    ] {
        let data = data();
        edit(data.path(), file, from, to);
        let library = Library::open(data.path()).unwrap();
        let car = library.car("alder").unwrap();
        let errors = if file == ROOM { library.room(&car).err() } else { library.diagram(&car).err() };
        let said = words.sentence(&errors.expect("it is still good").in_one());
        assert!(said.contains(wanted), "{to}: {said}");
        assert_eq!(english_in(&said), None, "{said}");
    }
}

#[test]
fn every_kind_of_damaged_attempt_is_told_in_german_and_ends_with_two() {
    let home = tempfile::tempdir().unwrap();
    let (path, _) = made(home.path());
    let good = std::fs::read(&path).unwrap();
    let changed = |from: &str, to: &str| {
        let bodies: Vec<String> = bodies(&good).iter().map(|body| body.replacen(from, to, 1)).collect();
        chained(&bodies)
    };
    let text = String::from_utf8(good.clone()).unwrap();
    let unchained = |from: &str, to: &str| text.replacen(from, to, 1).into_bytes();
    let long = "x".repeat(300);
    for (name, bytes, wanted) in [
        ("word", changed("\"read_card\"", "\"reed_card\""), "`reed_card` ist keines von: "),
        ("key", changed("\"seed_from\":", "\"sead_from\":"), "den Schlüssel `sead_from` gibt es hier nicht"),
        (
            "form",
            changed("\"n\":2,", "\"n\":\"two\","),
            "erwartet wird eine ganze Zahl im zulässigen Bereich",
        ),
        ("number", changed("\"n\":2,", "\"n\":7,"), "die Nummer der Handlung ist 7; erwartet wird 2"),
        ("name", changed("\"engine\":\"", &format!("\"engine\":\"{long}")), "Bytes lang; höchstens 200"),
        ("digest", changed("\"digest\":\"", "\"digest\":\"z"), "erwartet werden 16 Hexadezimalziffern"),
        (
            "changed",
            unchained("\"n\":2,", "\"n\": 2,"),
            "nach dem Schreiben verändert (die Kette passt nicht)",
        ),
        ("chain", unchained(",\"chain\":", ",\"chan\":"), "am Ende der Zeile fehlt die Kette"),
        ("job", changed("\"job_digest\":\"", "\"job_digest\":\"0"), "haben sich seit dem Versuch geändert"),
        ("empty", Vec::new(), "kein ganzer Kopf; in diesem Versuch wurde nichts getan"),
    ] {
        std::fs::write(&path, &bytes).unwrap();
        for command in [&["mark"][..], &["replay"], &["text", "--resume", "--attempt"]] {
            let output =
                pinhole(home.path()).args(["--lang", "de"]).args(command).arg("a.attempt").output().unwrap();
            let said = ends_with_code(&output, 2);
            assert!(said.contains("a.attempt") && said.contains(wanted), "{name}, {command:?}: {said}");
            assert_eq!(english_in(&said), None, "{name}, {command:?}: {said}");
        }
    }
    // What can be mended says why it had to be.
    std::fs::write(&path, changed("\"n\":2,", "\"n\":7,")).unwrap();
    let output = pinhole(home.path()).args(["--lang", "de", "mend", "a.attempt"]).output().unwrap();
    let said = ends_with_code(&output, 0);
    assert!(said.contains("Zeile 4: die Nummer der Handlung ist 7") && english_in(&said).is_none(), "{said}");
}

#[test]
fn where_a_replay_differs_is_told_in_german() {
    let home = tempfile::tempdir().unwrap();
    let (path, attempt) = made(home.path());
    let (was, is) = (attempt.steps[1].digest.to_string(), format!("{:016x}", attempt.steps[1].digest.0 ^ 1));
    let good = std::fs::read(&path).unwrap();
    let altered: Vec<String> = bodies(&good).iter().map(|body| body.replace(&was, &is)).collect();
    std::fs::write(&path, chained(&altered)).unwrap();
    let output = pinhole(home.path()).args(["--lang", "de", "replay", "a.attempt"]).output().unwrap();
    let said = ends_with_code(&output, 1);
    let wanted = format!("Handlung 2 (chocks on): die Zustandsprüfsumme ist {was}, aufgezeichnet ist {is}");
    assert!(said.contains(&wanted), "{said}");
    let output = pinhole(home.path()).args(["--lang", "de", "mark", "a.attempt"]).output().unwrap();
    let said = ends_with_code(&output, 2);
    assert!(said.contains("der Versuch kann nicht bewertet werden") && said.contains(&wanted), "{said}");
}

#[test]
fn a_what_if_names_its_faults_in_german() {
    let (words, library) = (german(), Library::open(&root()).unwrap());
    for id in library.cars().unwrap() {
        for fault in &library.car(&id).unwrap().faults {
            let named = words.find(&format!("{id}-fault-{}", fault.id), &[]);
            assert!(named.is_some_and(|named| named != fault.name), "{id}: {}", fault.id);
        }
    }
}

#[test]
fn tests_are_listed_in_german_and_every_one_has_its_name() {
    let (words, library) = (german(), Library::open(&root()).unwrap());
    let home = tempfile::tempdir().unwrap();
    let run = |args: &[&str], code| {
        let output = pinhole(home.path()).args(["--lang", "de", "tests"]).args(args).output().unwrap();
        ends_with_code(&output, code)
    };
    for id in library.cars().unwrap() {
        let said = run(&[&id], 0);
        let car = library.car(&id).unwrap();
        for test in library.tests(&car).unwrap().iter() {
            let named = words.find(&format!("{id}-test-{}", test.id), &[]);
            let named = named.unwrap_or_else(|| panic!("{id}: {} has no name", test.id));
            assert!(named != test.name && said.contains(&named), "{id}: {}", test.id);
        }
        let told: Vec<&str> = said.lines().filter(|line| !line.starts_with("  ")).collect();
        assert_eq!(english_in(&told.join("\n")), None, "{said}");
    }
    let said = run(&["alder", "halves-at-tee"], 0);
    for wanted in
        ["30,5 + 9,0 min", "Abdeckungen ab: scuttle", "Vorbereitung", "Zurückstellen", "  clamp hose_b.b"]
    {
        assert!(said.contains(wanted), "{wanted}: {said}");
    }
    let said = run(&["alder", "halves"], 2);
    assert!(said.contains("zu alder gibt es keine Prüfung namens \"halves\"; bekannt: "), "{said}");
}

#[test]
fn pictures_and_speeds_are_refused_and_told_in_german() {
    let home = tempfile::tempdir().unwrap();
    let run = |args: &[&str], code| {
        let output = pinhole(home.path()).args(["--lang", "de"]).args(args).output().unwrap();
        let said = ends_with_code(&output, code);
        assert_eq!(english_in(&said), None, "{args:?}: {said}");
        said
    };
    for (args, wanted) in [
        (
            vec!["trace", "alder", "--plot", "x.gif", "--show", "pump.inlet"],
            "ein Bild endet auf .svg oder .png",
        ),
        (vec!["trace", "alder", "--plot", "x.svg", "--show", "pump.x"], "pump hat pump.inlet_kpa_abs"),
        (vec!["trace", "alder", "--plot", "x.svg", "--show", "nosuch"], "seine Teile sind"),
        (vec!["trace", "elder", "--csv", "x.csv"], "es gibt kein Fahrzeug namens \"elder\""),
        (vec!["text", "second-shift/x"], "es gibt kein Paket namens \"second-shift\""),
    ] {
        let said = run(&args, 2);
        assert!(said.contains(wanted), "{args:?}: {said}");
    }
    run(&["trace", "alder", "--for", "1", "--plot", "x.svg", "--show", "pump.inlet"], 0);
    let picture = std::fs::read_to_string(home.path().join("x.svg")).unwrap();
    assert!(picture.contains("kPa absolut") && !picture.contains("kPa absolute"));
    let said = run(&["bench", "--samples", "1", "--csv", "speed.csv"], 0);
    for wanted in ["Halten über Nacht", "nebeneinander auf allen Threads", "Ein Lauf unter einer Hypothese"]
    {
        assert!(said.contains(wanted), "{wanted}: {said}");
    }
    // The table is for other programs.
    let table = std::fs::read_to_string(home.path().join("speed.csv")).unwrap();
    assert!(table.contains("overnight hold,steps as in use,simulated s per processor s"), "{table}");
}
