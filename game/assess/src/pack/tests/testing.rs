//! Tests of a car: lines that mean nothing at it, things that are not undone, readings that are not noted.

use sim_core::notice::Tool;

use super::{change, copied, good, library, only, refused};
use crate::pack::check_tests;
use crate::pack::error::{BadName, BadTest, BadValue, Fault, Miswritten, Named, PackError};
use crate::pack::raw::RawTests;
use crate::pack::read;
use crate::plan::test::{Phase, Step, Test};
use crate::words::{Kind, WordsError};

const FILE: &str = "alder.ron";

/// What the checker makes of this file of tests for Alder.
fn checked(text: &str) -> Result<std::sync::Arc<Vec<Test>>, Vec<PackError>> {
    let library = library();
    let car = library.car("alder").unwrap();
    let spares = library.spares(&car).unwrap();
    let raw = read::parse::<RawTests>(text, FILE).map_err(|e| e.0)?;
    check_tests::tests(raw, "alder", (&car, library.kit(), &spares), FILE)
}

/// The same of a file with one test of these four parts.
fn parts(parts: [&str; 4]) -> Result<std::sync::Arc<Vec<Test>>, Vec<PackError>> {
    let [set_up, stimulus, readings, undo] = parts;
    checked(&format!(
        "Tests(schema: 1, vehicle: \"alder\", tests: [Test(id: \"t\", name: \"t\", kind: air, set_up: [{set_up}], \
         stimulus: [{stimulus}], readings: [{readings}], undo: [{undo}])])"
    ))
}

/// The only thing that is wrong with it.
fn wrong(of: [&str; 4]) -> PackError {
    only(parts(of).unwrap_err())
}

const READ: &str = "\"read barometer\", \"note shown\"";

#[test]
fn lines_that_mean_nothing_at_the_car_say_which_name_is_unknown() {
    for (line, kind, near) in [
        ("clamp hose_x.a", Kind::Port, "hose_b.a"),
        ("hiss hose_x", Kind::Part, "hose_b"),
        ("open j_tea", Kind::Joint, "j_tee"),
        ("fit gorge tee.1", Kind::Instrument, "gauge"),
        ("pull relais", Kind::Unit, "relay"),
        ("cover scuttel off", Kind::Cover, "scuttle"),
    ] {
        let e = wrong(["", &format!("\"{line}\""), READ, ""]);
        let what = match &e.fault {
            Fault::Test(BadTest::Line { why, .. }) => match &**why {
                WordsError::NoSuch { kind, .. } => *kind,
                other => panic!("{line}: {other}"),
            },
            other => panic!("{line}: {other:?}"),
        };
        assert_eq!(what, kind, "{line}");
        let said = e.to_string();
        assert!(
            said.contains("tests[0].stimulus[0]") && said.contains(line) && said.contains(near),
            "{said}"
        );
    }
    refused!(
        wrong(["", "", "\"read barometer\", \"note shown for tomorrow\"", ""]),
        Fault::Test(BadTest::Line { .. }),
        "tests[0].readings[1]",
        "no line of the record called \"tomorrow\""
    );
    refused!(
        wrong(["", "\"dance\"", READ, ""]),
        Fault::Test(BadTest::Line { why, .. }) if matches!(**why, WordsError::UnknownWord { .. }),
        "tests[0].stimulus[0] (dance)"
    );
    refused!(
        wrong(["", "\"wait until pump sings\"", READ, ""]),
        Fault::Test(BadTest::Line { why, .. }) if matches!(**why, WordsError::Shape { .. }),
        "for example: wait until pump stops 120"
    );
}

#[test]
fn a_set_up_without_its_undo_names_the_line_that_is_missing() {
    for (line, missing) in [
        ("cover scuttle off", "cover scuttle on"),
        ("open j_tee", "join j_tee"),
        ("clamp hose_m.a", "free hose_m.a"),
        ("pull relay", "push relay"),
        ("fit gauge tee.1", "take gauge"),
        ("meter volt", "meter off meter"),
        ("key on", "key off"),
        ("chocks on", "chocks off"),
        ("extraction on", "extraction off"),
        ("pedal prop 100", "pedal release"),
        ("press button", "let button"),
    ] {
        refused!(
            wrong([&format!("\"{line}\""), "", READ, ""]),
            Fault::Test(BadTest::NotUndone { line, .. }) if line == missing,
            "tests[0].undo",
            "as it was"
        );
        parts([&format!("\"{line}\""), "", READ, &format!("\"{missing}\"")]).unwrap();
    }
    // Key and engine: the key stops both.
    parts(["\"key on\", \"try engine idle\"", "", READ, "\"key off\""]).unwrap();
}

#[test]
fn lines_that_change_nothing_where_they_stand_are_told() {
    for lines in [
        ["\"key off\"", ""],
        ["\"engine idle\"", ""],
        ["\"take gauge\"", ""],
        ["\"cover scuttle off\", \"cover scuttle off\"", "\"cover scuttle on\""],
        ["\"pedal prop 100\", \"pedal pump 3\"", "\"pedal release\""],
        ["\"chocks on\", \"drive\"", "\"chocks off\""],
    ] {
        let errors = parts([lines[0], "", READ, lines[1]]).unwrap_err();
        assert!(matches!(&errors[0].fault, Fault::Test(BadTest::Idle { .. })), "{lines:?}: {errors:?}");
        assert!(errors[0].to_string().contains("tests[0].set_up["), "{errors:?}");
    }
}

#[test]
fn a_test_reads_notes_and_knows_nothing_beforehand() {
    refused!(
        wrong(["", "", "\"read barometer\"", ""]),
        Fault::Test(BadTest::NoReading { .. }),
        "tests[0].readings",
        "note shown"
    );
    refused!(wrong(["", "", "", ""]), Fault::Test(BadTest::NoReading { .. }), "tests[0].readings");
    refused!(
        wrong(["", "\"hum\", \"note\"", READ, ""]),
        Fault::Test(BadTest::NoteElsewhere { .. }),
        "tests[0].stimulus[1]"
    );
    refused!(
        wrong(["", "", "\"hum\", \"note\", \"note\"", ""]),
        Fault::Test(BadTest::NothingToNote { .. }),
        "tests[0].readings[2]"
    );
    refused!(
        wrong(["", "", "\"note shown\"", ""]),
        Fault::Test(BadTest::Line { .. }),
        "tests[0].readings[0]",
        "no reading to note yet"
    );
    refused!(
        wrong(["", "", "\"read barometer\", \"note 101 kPa\"", ""]),
        Fault::Test(BadTest::NoteKnows { .. }),
        "tests[0].readings[1] (note 101 kPa)"
    );
    refused!(
        wrong(["\"fit meter battery.plus battery.minus\"", "", "\"read meter\", \"note shown\"", "\"take meter\""]),
        Fault::Test(BadTest::DialOff { instrument, .. }) if instrument == "meter",
        "tests[0].readings[0]",
        "meter volt"
    );
    // Two that move are read before either is noted.
    let two = "\"read barometer\", \"read thermometer\", \"note 1 shown for day\", \"note 2 shown\"";
    let tests = parts(["", "", two, ""]).unwrap();
    assert_eq!(tests[0].readings[2].step, Step::Note { reading: 1, record: Some("day".into()) });
    assert_eq!(tests[0].readings[3].step, Step::Note { reading: 2, record: None });
    // What may be refused may have nothing to be noted.
    let tests = parts(["", "", "\"try feel moved\", \"note\", \"hum\", \"note\"", ""]).unwrap();
    let may: Vec<bool> = tests[0].lines_of(Phase::Readings).iter().map(|l| l.may_be_refused).collect();
    assert_eq!(may, [true, true, false, false]);
}

#[test]
fn what_is_no_testing_is_told() {
    for line in [
        "card",
        "sheet",
        "swap relay with relay_new",
        "clean fuse",
        "reform hose_b",
        "finding none sure 0.95",
        "suspect \\\"a leak\\\"",
        "hand back",
        "help",
        "look",
        "# remark",
        "",
    ] {
        let errors = parts(["", &format!("\"{line}\""), READ, ""]).unwrap_err();
        let told = errors.iter().any(|e| matches!(&e.fault, Fault::Test(BadTest::NoTesting { .. })));
        assert!(told, "{line}: {errors:?}");
    }
}

#[test]
fn the_file_itself_is_held_to_its_form() {
    let file = || good("assets/tests/alder.ron");
    refused!(
        only(checked(&change(&file(), "id: \"room\"", "id: \"day\"")).unwrap_err()),
        Fault::Name(BadName::Duplicate { what: Named::Test, .. }),
        "tests[1].id",
        "the test \"day\" is already there",
        "tests[0].id"
    );
    refused!(
        only(checked(&change(&file(), "vehicle: \"alder\"", "vehicle: \"elder\"")).unwrap_err()),
        Fault::Name(BadName::NotTheFile { .. }),
        "elder"
    );
    refused!(
        only(checked(&change(&file(), "kind: condition", "kind: guess")).unwrap_err()),
        Fault::Written { what: Miswritten::UnknownWord { .. }, .. },
        "the kinds of test",
        "condition, air, electric, by_ear, by_eye"
    );
    refused!(
        only(checked(&change(&file(), "set_up:", "setup:")).unwrap_err()),
        Fault::Written { what: Miswritten::UnknownKey { .. }, .. },
        "`Test` has no key `setup`"
    );
    let many = format!("set_up: [{}", "\"hum\", ".repeat(61));
    refused!(
        only(checked(&change(&file(), "set_up: [", &many)).unwrap_err()),
        Fault::Value(BadValue::TooMany { max: 60, .. }),
        "at most 60"
    );
    refused!(
        only(checked("Tests(schema: 1, vehicle: \"alder\", tests: [])").unwrap_err()),
        Fault::Value(BadValue::Empty { .. }),
        "tests is empty"
    );
    // It is asked for where a job is.
    let e = only(copied(
        "assets/tests/alder.ron",
        "\"take gauge\"",
        "\"take gouge\"",
        "first-shift/hum-at-the-lights",
    ));
    refused!(e, Fault::Test(BadTest::Line { .. }), "assets/tests/alder.ron", "gouge");
}

#[test]
fn what_a_test_needs_is_taken_from_its_lines() {
    let library = library();
    let tests = library.tests(&library.car("alder").unwrap()).unwrap();
    let of = |id: &str| &tests.iter().find(|t| t.id == id).unwrap().access;
    let halves = of("halves-at-booster");
    assert_eq!(halves.covers, ["scuttle"]);
    assert_eq!(halves.instruments, ["gauge", "gauge_b"]);
    assert_eq!(halves.tools, [Tool::Clamp]);
    assert_eq!(of("relay-in-hand").units, ["relay"]);
    assert_eq!(of("hose-b-held").joints, ["j_booster", "j_tee"]);
    assert_eq!(of("run").tools, [Tool::Stopwatch]);
    // A tool board without one gauge, and without clamps.
    let kit: Vec<_> =
        library.kit().iter().filter(|c| c.id != "gauge_b" && c.id != "clamps").cloned().collect();
    assert_eq!(halves.lacks(&kit), (vec!["gauge_b".to_owned()], vec![Tool::Clamp]));
    assert!(!tests.iter().find(|t| t.id == "halves-at-tee").unwrap().fits(&kit));
    assert!(tests.iter().find(|t| t.id == "hold").unwrap().fits(&kit));
}
