//! Each kind of broken file gives its own error, with place, value and expectation; none panics.
//!
//! Most tests take a good file of ours, break one thing in its text and look at what the checker says.

use std::path::{Path, PathBuf};

use super::error::{
    BadCar, BadCatalogue, BadName, BadValue, Fault, Miswritten, Named, PackError, PackErrors, Unread,
};
use super::raw::{RawInstrument, RawJob, RawPack, RawSpares, RawVehicle};
use super::{Library, MAX_BYTES, check_car, check_catalogue, check_instrument, read, reference_page};

/// The project's root.
fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

fn library() -> Library {
    Library::open(&root()).unwrap_or_else(|e| panic!("{e}"))
}

fn good(file: &str) -> String {
    std::fs::read_to_string(root().join(file)).unwrap()
}

/// `text` with `from` changed to `to`; the test itself is broken when `from` is not there.
fn change(text: &str, from: &str, to: &str) -> String {
    assert!(text.contains(from), "the good file no longer has {from:?}");
    text.replacen(from, to, 1)
}

/// What the checker says about Alder with `from` changed to `to`.
fn alder(from: &str, to: &str) -> Vec<PackError> {
    let text = change(&good("assets/vehicles/alder.ron"), from, to);
    match read::parse::<RawVehicle>(&text, "alder.ron") {
        Err(e) => e.0,
        Ok(raw) => check_car::car(raw, "alder", "alder.ron").err().unwrap_or_default(),
    }
}

/// The only fault.
fn only(mut errors: Vec<PackError>) -> PackError {
    assert_eq!(errors.len(), 1, "{errors:#?}");
    errors.remove(0)
}

macro_rules! expect {
    ($error:expr, $pattern:pat $(if $guard:expr)?, $($says:literal),+) => {{
        let e = $error;
        let said = e.to_string();
        assert!(matches!(&e.fault, $pattern $(if $guard)?), "{e:#?}");
        $( assert!(said.contains($says), "{said:?} does not say {:?}", $says); )+
    }};
}

#[test]
fn everything_under_assets_and_scenarios_loads() {
    let library = library();
    let jobs = library.check_all().unwrap_or_else(|e| panic!("{e}"));
    let listed: usize = library.packs().unwrap().iter().map(|p| p.jobs.len()).sum();
    assert_eq!(jobs.len(), listed);
    for job in &jobs {
        assert_ne!(job.digest, [0; 32], "{}", job.name());
        assert!(job.card.last().unwrap().contains("maker's data"), "{}", job.name());
    }
}

#[test]
fn alder_has_the_breadth_it_must_have() {
    let library = library();
    let alder = library.car("alder").unwrap();
    assert!(18 <= alder.faults.len());
    assert!(15 <= alder.tolerances.iter().filter(|t| t.serviceable.0 < t.serviceable.1).count());
    assert!(10 <= library.kit().len());
    let spares = library.spares(&alder).unwrap();
    for (i, unit) in alder.units.iter().enumerate() {
        let new = spares.iter().any(|s| usize::from(s.unit) == i && s.params.is_empty());
        assert!(new, "no new spare for {}", unit.id);
    }
    for fault in &alder.faults {
        assert!(alder.assembly.param(&fault.param).is_some(), "{}", fault.id);
    }
}

#[test]
fn keys_page_is_in_step() {
    let path = root().join("assets/KEYS.md");
    let page = reference_page();
    if std::env::var_os("PINHOLE_WRITE_KEYS").is_some() {
        std::fs::write(&path, &page).unwrap();
    }
    let written = std::fs::read_to_string(&path).unwrap_or_default().replace("\r\n", "\n");
    assert!(
        written == page,
        "assets/KEYS.md is not what the tables say: PINHOLE_WRITE_KEYS=1 cargo test -p assess keys_page"
    );
}

// The text itself.

#[test]
fn unknown_key_names_place_and_known_keys() {
    expect!(
        only(alder("length_m: 0.4", "length_mm: 400.0")),
        Fault::Written { what: Miswritten::UnknownKey { key, .. }, line, .. } if key == "length_mm" && 1 < *line,
        "alder.ron:", "`Hose` has no key `length_mm`", "known keys: bore_mm, length_m"
    );
    expect!(
        only(alder("altitude_limit_m", "altitude_limit_ft")),
        Fault::Written { what: Miswritten::UnknownKey { .. }, .. },
        "`Vehicle`",
        "altitude_limit_ft",
        "altitude_limit_m"
    );
}

#[test]
fn missing_and_doubled_keys_are_named() {
    expect!(
        only(alder("bore_mm: 7.0,", "")),
        Fault::Written { what: Miswritten::MissingKey { key: "bore_mm", .. }, .. },
        "`VacuumPump` needs the key `bore_mm`"
    );
    expect!(
        only(alder("bore_mm: 7.0,", "bore_mm: 7.0, bore_mm: 7.0,")),
        Fault::Written { what: Miswritten::DuplicateKey { key: "bore_mm", .. }, .. },
        "`bore_mm` of `VacuumPump` stands twice"
    );
}

#[test]
fn unknown_words_list_the_known_ones() {
    expect!(
        only(alder("station: front", "station: roof")),
        Fault::Written { what: Miswritten::UnknownWord { word, .. }, .. } if word == "roof",
        "`roof`", "desk, cab, bay, front, bench"
    );
    expect!(
        only(alder("kind: Tee", "kind: Manifold")),
        Fault::Written { what: Miswritten::UnknownWord { .. }, .. },
        "`Manifold`",
        "Hose, Tee, CheckValve"
    );
    expect!(
        only(alder("kind: pump_run", "kind: pump_walk")),
        Fault::Written { what: Miswritten::UnknownWord { .. }, .. },
        "`pump_walk`",
        "pump_rest"
    );
}

#[test]
fn wrong_shapes_say_line_and_column() {
    expect!(
        only(alder("altitude_limit_m: 2000.0", "altitude_limit_m: \"high\"")),
        Fault::Written { what: Miswritten::Syntax { .. }, line: 8, .. },
        "alder.ron:8:",
        "near"
    );
    expect!(
        only(alder("Vehicle(", "Wagon(")),
        Fault::Written { what: Miswritten::Syntax { .. }, .. },
        "Vehicle",
        "Wagon"
    );
    expect!(
        only(alder("parts: [", "parts: {")),
        Fault::Written { what: Miswritten::Syntax { .. }, .. },
        "alder.ron:"
    );
    let text = format!("{}\n)", good("assets/vehicles/alder.ron"));
    let e = only(read::parse::<RawVehicle>(&text, "alder.ron").unwrap_err().0);
    expect!(e, Fault::Written { what: Miswritten::Syntax { .. }, .. }, "alder.ron:");
}

#[test]
fn truncated_anywhere_is_an_error_and_never_a_panic() {
    let text = good("assets/vehicles/alder.ron");
    let text = text.trim_end();
    let (mut cut_off, mut all) = (0, 0);
    for at in (0..text.len()).step_by(97) {
        let Some(part) = text.get(..at) else { continue };
        let e = only(read::parse::<RawVehicle>(part, "alder.ron").unwrap_err().0);
        cut_off += usize::from(matches!(&e.fault, Fault::Written { what: Miswritten::Truncated { .. }, .. }));
        all += 1;
    }
    assert!(all * 9 < cut_off * 10, "{cut_off} of {all} cuts are called cut off");
}

#[test]
fn files_that_are_no_files() {
    let dir = tempfile::tempdir().unwrap();
    let path = dir.path().join("x.ron");
    let home = dir.path().canonicalize().unwrap();
    let text = |path: &Path| only(read::text(&home, path, "x.ron").unwrap_err().0);
    expect!(text(&path), Fault::Unread(Unread::System { .. }), "x.ron", "cannot be read");
    expect!(
        text(dir.path()),
        Fault::Unread(Unread::NotRegular { what: "a folder", .. }),
        "x.ron",
        "not a regular file"
    );
    std::fs::write(&path, b"Vehicle(\xff\xfe)").unwrap();
    expect!(text(&path), Fault::Unread(Unread::NotText { line: 1, at: 8, .. }), "byte 8", "UTF-8");
    let mut dice = dice::Dice::of(1);
    let noise: Vec<u8> = (0..10_000_000).map(|_| dice.bits() as u8).collect();
    std::fs::write(&path, &noise).unwrap();
    expect!(
        text(&path),
        Fault::Unread(Unread::TooLarge { bytes: 10_000_000, max: MAX_BYTES, .. }),
        "10000000 bytes",
        "at most"
    );
    // The same noise, small enough to be parsed.
    let small: String = noise[..200_000].iter().map(|b| char::from(b & 0x7f)).collect();
    assert!(read::parse::<RawVehicle>(&small, "x.ron").is_err());
    let deep = "[".repeat(1_000_000);
    assert!(read::parse::<RawVehicle>(&format!("Vehicle(parts: {deep}"), "x.ron").is_err());
    assert!(read::parse::<RawVehicle>("", "x.ron").is_err());
}

#[test]
fn more_parts_than_can_be_computed_are_refused_with_what_can_be() {
    let hoses: String = (0..120)
        .map(|i| {
            format!(
                "Part(id: \"more_{i}\", name: \"hose\", station: bay, kind: Hose((bore_mm: 9.0, length_m: 0.4, seep_cm3_per_min: 0.03, \
                 bend_fit_deg: 90.0, bend_deg: 90.0))),\n"
            )
        })
        .collect();
    let wires: String = (0..120)
        .map(|i| {
            format!("Part(id: \"more_{i}\", name: \"wire\", station: bay, kind: Wire((area_mm2: 1.5, length_m: 1.0))),\n")
        })
        .collect();
    let with = |more: &str| alder("    parts: [\n", &format!("    parts: [\n{more}"));
    expect!(
        only(with(&hoses)),
        Fault::Car(BadCar::TooManyStates { max: 200, .. }),
        "alder.ron",
        "state variables",
        "at most 200",
        "leave out"
    );
    expect!(only(with(&wires)), Fault::Car(BadCar::TooManyTerminals { .. }), "electrical ports");
}

#[test]
fn every_list_and_text_has_a_bound_and_none_stands_for_nothing() {
    let of = |key: &str| super::bounds::TEXTS.iter().any(|(k, ..)| *k == key);
    let mut lists = 0;
    for (block, _, keys) in super::keys::BLOCKS {
        for key in *keys {
            let form = key.form.replace(' ', "");
            if form.contains("Vec<") {
                assert!(super::bounds::of_list(block, key.name).is_some(), "{block}.{}", key.name);
                lists += 1;
            }
            if form.contains("String") {
                assert!(of(key.name), "{block}.{}", key.name);
            }
        }
    }
    assert_eq!(lists, super::bounds::LISTS.len(), "a bound for a list that is not there");
}

#[test]
fn lists_that_are_too_long_are_refused_before_anything_is_made_of_them() {
    let fault = |i: usize| {
        format!(
            "Fault(id: \"f_{i}\", name: \"f\", unit: \"tee\", param: \"tee.x\", severity_min: 1.0, severity_max: 2.0, commonness: 1.0),"
        )
    };
    let many: String = (0..9_000).map(fault).collect();
    let e = only(alder("    faults: [\n", &format!("    faults: [\n{many}")));
    expect!(e, Fault::Value(BadValue::TooMany { max: 200, .. }), "alder.ron: faults: 90", "at most 200");
    let long = "x".repeat(121);
    let e = only(alder("name: \"Alder", &format!("name: \"{long}")));
    expect!(e, Fault::Value(BadValue::TooLong { max: 120, .. }), "name: 1", "at most 120");
}

#[test]
fn the_checker_tells_twenty_faults_and_how_many_more() {
    let text = good("assets/vehicles/alder.ron").replace("bore_mm: ", "bore_mm: -");
    let text = text.replace("length_m: ", "length_m: -").replace("price: ", "price: -");
    let raw = read::parse::<RawVehicle>(&text, "alder.ron").unwrap();
    let errors = check_car::car(raw, "alder", "alder.ron").unwrap_err();
    assert_eq!(errors.len(), 21);
    expect!(errors.last().unwrap(), Fault::More { .. }, "alder.ron: and", "more");
}

#[test]
fn controls_in_texts_are_named_with_their_place() {
    for (written, found) in [
        ("\\u{1b}[31m", '\u{1b}'),
        ("\\t", '\t'),
        ("\u{202e}", '\u{202e}'),
        ("\u{9b}", '\u{9b}'),
        ("\\n", '\n'),
        ("\u{2028}", '\u{2028}'),
    ] {
        let e = only(alder("name: \"Alder", &format!("name: \"Al{written}der")));
        assert!(!e.to_string().contains(found), "{e}");
        expect!(e, Fault::Value(BadValue::ControlCharacter { place: 3, found: f, .. }) if *f == found, "alder.ron: name: character 3");
    }
}

#[test]
fn nothing_of_the_parsers_own_speech_is_left() {
    for (from, to, wanted) in [
        ("altitude_limit_m: 2000.0", "altitude_limit_m: \"root:secret\"", "expected a number"),
        ("altitude_limit_m: 2000.0", "altitude_limit_m: high", "expected a number"),
        ("parts: [", "parts: {", "expected a list"),
        ("station: front", "station: roof", "is none of the stations: desk"),
        ("kind: Tee", "kind: Manifold", "is none of the kinds of part: Hose"),
        ("schema: 1", "schema: -1", "expected a whole number"),
        ("schema: 1", "schema: 99999999999", "expected a whole number"),
        ("id: \"alder\"", "id: alder", "expected a text in quotation marks"),
        ("rubber: true", "rubber: yes", "expected true or false"),
        ("schema: 1,", "schema: 1", "expected a comma"),
    ] {
        let text = only(alder(from, to)).to_string();
        assert!(text.contains(wanted), "{to}: {text}");
        for own in ["variant", "identifier", "struct", "Expected", "Unexpected", "f64", "u32", "secret"] {
            assert!(!text.contains(own), "{to}: {text}");
        }
        assert!(text.chars().count() <= 300, "{text}");
    }
}

// Numbers.

#[test]
fn numbers_out_of_range_give_path_value_and_range() {
    expect!(
        only(alder("displacement_cm3: 6.0", "displacement_cm3: 600.0")),
        Fault::Value(BadValue::OutOfRange { value, .. }) if *value == 600.0,
        "parts[9].kind.displacement_cm3 = 600", "allowed 1 to 100"
    );
    expect!(
        only(alder("price: 320.0", "price: -1.0")),
        Fault::Value(BadValue::OutOfRange { .. }),
        "units[0].price = -1",
        "0 to 10000 shop money"
    );
    for word in ["NaN", "inf", "-inf"] {
        let errors = alder("altitude_limit_m: 2000.0", &format!("altitude_limit_m: {word}"));
        expect!(
            only(errors),
            Fault::Value(BadValue::NotFinite { .. }),
            "altitude_limit_m",
            "finite",
            "0 to 5000"
        );
    }
}

#[test]
fn limits_and_serviceable_ranges_must_nest() {
    let line = "Tolerance(param: \"pump.slip_mm2\", serviceable: (0.28, 0.38), limit: (0.2, 0.5))";
    let with = |serviceable: &str, limit: &str| {
        let to = format!("Tolerance(param: \"pump.slip_mm2\", serviceable: {serviceable}, limit: {limit})");
        only(alder(line, &to))
    };
    expect!(
        with("(0.28, 0.6)", "(0.2, 0.5)"),
        Fault::Catalogue(BadCatalogue::ServiceableOutsideLimit { .. }),
        "serviceable (0.28, 0.6) reaches outside limit (0.2, 0.5)"
    );
    expect!(
        with("(0.38, 0.28)", "(0.2, 0.5)"),
        Fault::Value(BadValue::RangeReversed { .. }),
        "serviceable = (0.38, 0.28)"
    );
    expect!(
        with("(0.28, 0.3)", "(0.2, 0.31)"),
        Fault::Catalogue(BadCatalogue::NewOutsideLimit { .. }),
        "0.32",
        "(0.2, 0.31)"
    );
    expect!(
        with("(0.28, 0.38)", "(0.2, 50.0)"),
        Fault::Value(BadValue::OutOfRange { .. }),
        "limit.1 = 50",
        "0.01 to 20"
    );
}

#[test]
fn a_fault_must_breach_its_limit() {
    expect!(
        only(alder("severity_min: 0.3,", "severity_min: 0.1,")),
        Fault::Catalogue(BadCatalogue::SeverityInsideLimit { .. }),
        "severity_min = 0.1",
        "pump.wear_mm2 (0, 0.15)"
    );
    expect!(
        only(alder("severity_min: 0.3, severity_max: 1.5", "severity_min: 1.5, severity_max: 0.3")),
        Fault::Catalogue(BadCatalogue::SeverityOrder { .. }),
        "severity_max = 0.3",
        "severity_min = 1.5"
    );
    expect!(
        only(alder("Tolerance(param: \"pump.wear_mm2\", serviceable: (0.0, 0.0), limit: (0.0, 0.15)),", "")),
        Fault::Catalogue(BadCatalogue::NoLimit { .. }),
        "pump.wear_mm2",
        "tolerances"
    );
    expect!(
        only(alder(
            "unit: \"pump\",\n            param: \"pump.wear_mm2\"",
            "unit: \"tee\",\n            param: \"pump.wear_mm2\""
        )),
        Fault::Catalogue(BadCatalogue::NotOfUnit { .. }),
        "pump.wear_mm2",
        "\"tee\""
    );
}

#[test]
fn a_controller_must_start_its_pump_above_where_it_stops_it() {
    let text = change(&good("assets/vehicles/cedar.ron"), "cut_in_kpa: -47.0", "cut_in_kpa: -62.0");
    let raw = read::parse::<RawVehicle>(&text, "cedar.ron").unwrap();
    let errors = check_car::car(raw, "cedar", "cedar.ron").unwrap_err();
    let reversed = |e: &PackError| matches!(&e.fault, Fault::Car(BadCar::SwitchPointsReversed { .. }));
    assert!(errors.iter().any(reversed), "{errors:?}");
}

#[test]
fn a_switch_must_close_above_its_opening_point() {
    let errors = alder("cut_in_kpa: -47.0", "cut_in_kpa: -62.0");
    assert!(errors.iter().any(
        |e| matches!(&e.fault, Fault::Car(BadCar::SwitchPointsReversed { cut_in, .. }) if *cut_in == -62.0)
    ));
}

// Names.

#[test]
fn unknown_names_list_the_known_ones() {
    let named = |from: &str, to: &str, what: Named, known: &str| {
        let e = only(alder(from, to));
        assert!(matches!(&e.fault, Fault::Name(BadName::Unknown { what: w, .. }) if *w == what), "{e:#?}");
        assert!(e.to_string().contains(known), "{e}");
    };
    named("a: \"tee.2\"", "a: \"tee.9\"", Named::Port, "known: tee.1, tee.2, tee.3, tee.4");
    named("a: \"tee.2\"", "a: \"cross.2\"", Named::Part, "joints[2].a: there is no part called \"cross\"");
    named("a: \"tee.2\"", "a: \"tee\"", Named::Port, "known: tee.1");
    named("param: \"pump.slip_mm2\"", "param: \"pump.slip_cm2\"", Named::Param, "pump.slip_mm2");
    named("behind: \"splash_guard\"", "behind: \"undertray\"", Named::Cover, "known: scuttle, splash_guard");
    named("unit: \"valve_m\"", "unit: \"valve_x\"", Named::Unit, "known: booster, hose_b");
    named("parts: [\"relay\"]", "parts: [\"relais\"]", Named::Part, "\"relais\"");
    named("limit: \"cut-out\"", "limit: \"cutout\"", Named::Limit, "dead-head");
}

#[test]
fn names_are_short_and_unique() {
    let errors = alder("id: \"wire_15\", name", "id: \"Wire 15\", name");
    assert!(
        errors
            .iter()
            .any(|e| matches!(&e.fault, Fault::Name(BadName::NotShort { name, .. }) if name == "Wire 15")),
        "{errors:#?}"
    );
    expect!(
        only(alder("id: \"e_strap\"", "id: \"e_earth\"")),
        Fault::Name(BadName::Duplicate { what: Named::Joint, .. }),
        "joints[17].id",
        "\"e_earth\"",
        "joints[15].id"
    );
    expect!(
        only(alder("Tolerance(param: \"valve_m.crack_kpa\"", "Tolerance(param: \"valve_p.crack_kpa\"")),
        Fault::Name(BadName::Duplicate { what: Named::Param, .. }),
        "valve_p.crack_kpa"
    );
    expect!(
        only(alder("id: \"alder\"", "id: \"elder\"")),
        Fault::Name(BadName::NotTheFile { .. }),
        "\"elder\"",
        "\"alder\""
    );
}

#[test]
fn joints_join_what_belongs_together() {
    expect!(
        only(alder("b: \"switch.vacuum\"", "b: \"switch.p\"")),
        Fault::Car(BadCar::DomainMismatch { .. }),
        "tee.2 (air)",
        "switch.p (current)"
    );
    expect!(
        only(alder("b: \"switch.vacuum\"", "b: \"tee.2\"")),
        Fault::Car(BadCar::JoinedToItself { .. }),
        "joints[2]",
        "tee.2"
    );
    expect!(
        only(alder("b: \"switch.vacuum\"", "b: \"hose_b.a\"")),
        Fault::Car(BadCar::PortTaken { .. }),
        "joints[2].b",
        "hose_b.a",
        "j_booster"
    );
}

#[test]
fn units_of_limits_are_those_of_the_notebook() {
    expect!(
        only(alder("id: \"dead-head\", unit: \"kPa\"", "id: \"dead-head\", unit: \"bar\"")),
        Fault::Value(BadValue::WrongUnit { .. }),
        "limits[0].unit = \"bar\"",
        "known: kPa, V, A, ohm"
    );
    expect!(
        only(alder("max: 0.2,", "")),
        Fault::Value(BadValue::NoBound { .. }),
        "limits[9]",
        "`min` nor `max`"
    );
}

#[test]
fn another_version_of_the_format_is_refused() {
    expect!(
        only(alder("schema: 1", "schema: 7")),
        Fault::Value(BadValue::Schema { found: 7, expected: 1, .. }),
        "schema: 7",
        "reads schema 1"
    );
}

#[test]
fn every_fault_of_a_file_is_reported() {
    let mut text = good("assets/vehicles/alder.ron");
    for (from, to) in [
        ("displacement_cm3: 6.0", "displacement_cm3: 600.0"),
        ("b: \"switch.vacuum\"", "b: \"switch.p\""),
        ("price: 320.0", "price: NaN"),
        ("limit: \"cut-out\"", "limit: \"cutout\""),
        ("severity_min: 0.3,", "severity_min: 0.1,"),
    ] {
        text = change(&text, from, to);
    }
    let raw = read::parse::<RawVehicle>(&text, "alder.ron").unwrap();
    let errors = PackErrors(check_car::car(raw, "alder", "alder.ron").unwrap_err());
    assert_eq!(errors.0.len(), 5, "{errors}");
    assert_eq!(errors.to_string().lines().count(), 5);
}

// Instruments, spares, packs, jobs.

#[test]
fn instruments_are_checked() {
    let card = |from: &str, to: &str| {
        let text = change(&good("assets/instruments/gauge.ron"), from, to);
        match read::parse::<RawInstrument>(&text, "gauge.ron") {
            Err(e) => only(e.0),
            Ok(raw) => only(check_instrument::card(raw, "gauge", "gauge.ron").unwrap_err()),
        }
    };
    expect!(
        card("class: 1.6", "class: 60.0"),
        Fault::Value(BadValue::OutOfRange { .. }),
        "kind.dial.class = 60",
        "0.05 to 10 % of span"
    );
    expect!(card("max: 0.0", "max: -100.0"), Fault::Value(BadValue::RangeReversed { .. }), "kind.dial");
    expect!(
        card("lag_s: 0.3", "lag_ms: 300.0"),
        Fault::Written { what: Miswritten::UnknownKey { .. }, .. },
        "lag_ms",
        "lag_s"
    );
    expect!(
        card("volume_cm3: 12.0", "volume_cm3: 0.5"),
        Fault::Value(BadValue::OutOfRange { .. }),
        "part.volume_cm3",
        "2 to 500"
    );
    expect!(
        card(
            "VacuumGauge((volume_cm3: 12.0, bore_mm: 4.0, lag_s: 0.3))",
            "TestLamp((rated_w: 21.0, rated_v: 12.0))"
        ),
        Fault::Car(BadCar::WrongPart { .. }),
        "a Gauge needs VacuumGauge, found TestLamp"
    );
    expect!(card("id: \"gauge\"", "id: \"dial\""), Fault::Name(BadName::NotTheFile { .. }), "\"dial\"");
}

#[test]
fn spares_are_checked() {
    let alder = library().car("alder").unwrap();
    let spares = |from: &str, to: &str| {
        let text = change(&good("assets/spares/alder.ron"), from, to);
        let raw = read::parse::<RawSpares>(&text, "spares.ron").unwrap();
        only(check_catalogue::spares(raw, "alder", &alder, "spares.ron").unwrap_err())
    };
    expect!(
        spares("unit: \"tee\"", "unit: \"t\""),
        Fault::Name(BadName::Unknown { what: Named::Unit, .. }),
        "spares[2].unit"
    );
    expect!(
        spares("pump.wear_mm2\", value: 0.1", "pump.wear_mm2\", value: 99.0"),
        Fault::Value(BadValue::OutOfRange { .. }),
        "99"
    );
    expect!(
        spares("pump.wear_mm2", "tee.crack_mm"),
        Fault::Catalogue(BadCatalogue::NotOfUnit { .. }),
        "tee.crack_mm"
    );
    expect!(
        spares("id: \"tee_new\"", "id: \"booster_new\""),
        Fault::Name(BadName::Duplicate { .. }),
        "booster_new"
    );
}

/// A copy of our files in a folder of its own, with one file changed; what the library then says.
fn copied(file: &str, from: &str, to: &str, job: &str) -> Vec<PackError> {
    let dir = tempfile::tempdir().unwrap();
    copy(&root().join("assets"), &dir.path().join("assets"));
    copy(&root().join("scenarios"), &dir.path().join("scenarios"));
    let path = dir.path().join(file);
    std::fs::write(&path, change(&std::fs::read_to_string(&path).unwrap(), from, to)).unwrap();
    let result = Library::open(dir.path()).and_then(|l| l.job(job));
    result.err().map(|e| e.0).unwrap_or_default()
}

fn copy(from: &Path, to: &Path) {
    std::fs::create_dir_all(to).unwrap();
    for entry in std::fs::read_dir(from).unwrap() {
        let entry = entry.unwrap();
        let target = to.join(entry.file_name());
        if entry.file_type().unwrap().is_dir() {
            copy(&entry.path(), &target);
        } else {
            std::fs::copy(entry.path(), target).unwrap();
        }
    }
}

#[test]
fn jobs_are_checked() {
    const FILE: &str = "scenarios/first-shift/jobs/hum-at-the-lights.ron";
    let job = |from: &str, to: &str| only(copied(FILE, from, to, "first-shift/hum-at-the-lights"));
    expect!(
        job("valve_m_leaks_back", "valve_m_leaks"),
        Fault::Name(BadName::Unknown { what: Named::Fault, .. }),
        "hidden[0].fault",
        "valve_m_stuck_shut"
    );
    expect!(
        job("severity: 0.23", "severity: 5.0"),
        Fault::Catalogue(BadCatalogue::SeverityOutsideCatalogue { .. }),
        "0.06 to 0.6"
    );
    expect!(
        job("severity: 0.23", "severity: NaN"),
        Fault::Value(BadValue::NotFinite { .. }),
        "hidden[0].severity"
    );
    expect!(
        job("vehicle: \"alder\"", "vehicle: \"yew\""),
        Fault::Name(BadName::Unknown { what: Named::Car, .. }),
        "known: alder"
    );
    expect!(
        job("altitude_m: 120.0", "altitude_m: 2500.0"),
        Fault::Catalogue(BadCatalogue::AboveAltitudeLimit { .. }),
        "2500",
        "2000 m"
    );
    expect!(
        job("weather_kpa", "weather_mbar"),
        Fault::Written { what: Miswritten::UnknownKey { .. }, .. },
        "`Day`",
        "weather_kpa"
    );
    expect!(
        job("weather_kpa: 0.4", "weather_kpa: 40.0"),
        Fault::Value(BadValue::OutOfRange { .. }),
        "-6 to 5"
    );
    expect!(
        job("below_s: 120.0", "below_s: -1.0"),
        Fault::Value(BadValue::OutOfRange { .. }),
        "symptom.below_s"
    );
    expect!(
        job("ShortRest", "Squeak"),
        Fault::Written { what: Miswritten::UnknownWord { .. }, .. },
        "Squeak",
        "HumsKeyOff"
    );
    expect!(
        job("hum-at-the-lights.script", "../../x.script"),
        Fault::Name(BadName::NoScript { .. }),
        "reference"
    );
    expect!(
        job("debrief: [", "tools: [\"crystal_ball\"],\n    debrief: ["),
        Fault::Name(BadName::Unknown { what: Named::Instrument, .. }),
        "tools[0]",
        "crystal_ball",
        "handpump"
    );
    expect!(
        job("debrief: [", "spares: [\"moon\"],\n    debrief: ["),
        Fault::Name(BadName::Unknown { what: Named::Spare, .. }),
        "spares[0]",
        "valve_m_new"
    );
    let text = change(&good(FILE), "hazards:", "hazard:");
    expect!(
        only(read::parse::<RawJob>(&text, FILE).unwrap_err().0),
        Fault::Written { what: Miswritten::UnknownKey { .. }, .. },
        "hazards"
    );
}

#[test]
fn packs_are_checked() {
    const FILE: &str = "scenarios/first-shift/pack.ron";
    let pack = |from: &str, to: &str| only(copied(FILE, from, to, "first-shift/hum-at-the-lights"));
    expect!(
        pack("cut_score: 70.0", "cut_score: 170.0"),
        Fault::Value(BadValue::OutOfRange { .. }),
        "1 to 100 of 100"
    );
    expect!(
        pack("\"tube\"", "\"trumpet\""),
        Fault::Name(BadName::Unknown { what: Named::Instrument, .. }),
        "trumpet"
    );
    expect!(
        pack("\"hard-first-press\"", "\"hard-last-press\""),
        Fault::Name(BadName::Unknown { what: Named::Job, .. }),
        "hard-last-press"
    );
    expect!(
        pack("verdict: 30.0", "verdict: -30.0"),
        Fault::Value(BadValue::OutOfRange { .. }),
        "weights.verdict"
    );
    let text = change(&good(FILE), "title: \"First shift\"", "title: \" \"");
    assert!(read::parse::<RawPack>(&text, FILE).is_ok());
    expect!(pack("title: \"First shift\"", "title: \" \""), Fault::Value(BadValue::Empty { .. }), "title");
}

#[test]
fn unknown_packs_jobs_and_cars_are_named() {
    let library = library();
    let job = |name: &str| only(library.job(name).unwrap_err().0);
    expect!(
        job("first-shift/nope"),
        Fault::Name(BadName::Unknown { what: Named::Job, .. }),
        "nope",
        "first-shift/hum-at-the-lights"
    );
    expect!(
        job("last-shift/nope"),
        Fault::Name(BadName::Unknown { what: Named::Pack, .. }),
        "last-shift",
        "first-shift"
    );
    expect!(job("../../etc"), Fault::Name(BadName::Unknown { .. }), "known: first-shift");
    expect!(job(""), Fault::Name(BadName::Unknown { .. }), "first-shift");
    expect!(
        only(library.car("yew").unwrap_err().0),
        Fault::Name(BadName::Unknown { what: Named::Car, .. }),
        "alder"
    );
    let nowhere = Library::open(Path::new("/nowhere/at/all")).unwrap_err();
    expect!(only(nowhere.0), Fault::Unread(Unread::System { .. }), "/nowhere/at/all");
}

#[test]
fn the_digest_covers_every_file_behind_a_job() {
    const JOB: &str = "first-shift/hum-at-the-lights";
    let before = library().job(JOB).unwrap().digest;
    assert_eq!(library().job(JOB).unwrap().digest, before);
    for (file, from, to) in [
        ("scenarios/first-shift/jobs/hum-at-the-lights.ron", "severity: 0.23", "severity: 0.26"),
        ("scenarios/first-shift/pack.ron", "cut_score: 70.0", "cut_score: 71.0"),
        ("assets/vehicles/alder.ron", "price: 320.0", "price: 321.0"),
        ("assets/instruments/gauge.ron", "class: 1.6", "class: 1.0"),
        ("assets/spares/alder.ron", "price: 90.0", "price: 91.0"),
    ] {
        let dir = tempfile::tempdir().unwrap();
        copy(&root().join("assets"), &dir.path().join("assets"));
        copy(&root().join("scenarios"), &dir.path().join("scenarios"));
        let path = dir.path().join(file);
        std::fs::write(&path, change(&std::fs::read_to_string(&path).unwrap(), from, to)).unwrap();
        let after = Library::open(dir.path()).unwrap().job(JOB).unwrap().digest;
        assert_ne!(before, after, "{file}");
    }
}

#[test]
fn a_car_that_nobody_has_drawn_gets_its_parts_in_rows() {
    use crate::diagram::{Origin, Sheet};
    let dir = tempfile::tempdir().unwrap();
    copy(&root().join("assets"), &dir.path().join("assets"));
    copy(&root().join("scenarios"), &dir.path().join("scenarios"));
    for car in library().cars().unwrap() {
        let file = dir.path().join(format!("assets/diagrams/{car}.ron"));
        if file.exists() {
            std::fs::remove_file(&file).unwrap();
        }
        let bare = Library::open(dir.path()).unwrap();
        let car = bare.car(&car).unwrap();
        let diagram = bare.diagram(&car).unwrap_or_else(|e| panic!("{e}"));
        assert_eq!(diagram.origin, Origin::Rows, "{}", car.id);
        let belong = |sheet: Sheet| {
            let parts = car.assembly.parts.iter();
            parts.filter(|p| p.kind.ports().iter().any(|d| d.domain == sheet.domain())).count()
        };
        assert_eq!(diagram.places.len(), Sheet::ALL.map(belong).iter().sum::<usize>(), "{}", car.id);
        // A file that is there and wrong is still said to be wrong.
        std::fs::write(&file, "Diagram(").unwrap();
        assert!(bare.diagram(&car).is_err());
    }
    assert_eq!(library().diagram(&library().car("alder").unwrap()).unwrap().origin, Origin::Drawn);
}

#[test]
fn a_job_added_at_the_end_of_a_pack_leaves_what_was_made_before_valid() {
    const JOB: &str = "first-shift/hum-at-the-lights";
    // The digest of every attempt that was made while the pack had four jobs.
    const OF_FOUR: &str = "89240064a0e0472839c01b5d60b03c1a2aa00533f8103bc13d082915d4699328";
    assert!(library().job(JOB).unwrap().is_of(OF_FOUR));
    let now = library().job(JOB).unwrap();
    assert!(now.is_of(&hex::encode(now.digest)));
    let dir = tempfile::tempdir().unwrap();
    copy(&root().join("assets"), &dir.path().join("assets"));
    copy(&root().join("scenarios"), &dir.path().join("scenarios"));
    let jobs = dir.path().join("scenarios/first-shift/jobs");
    std::fs::copy(jobs.join("hum-at-the-lights.ron"), jobs.join("one-more.ron")).unwrap();
    let path = dir.path().join("scenarios/first-shift/pack.ron");
    let text = std::fs::read_to_string(&path).unwrap();
    let last = library().pack("first-shift").unwrap().jobs.pop().unwrap();
    let longer = change(&text, &format!("\"{last}\""), &format!("\"{last}\", \"one-more\""));
    std::fs::write(&path, &longer).unwrap();
    let grown = Library::open(dir.path()).unwrap().job(JOB).unwrap();
    assert_ne!(grown.digest, now.digest);
    assert!(grown.is_of(&hex::encode(now.digest)) && grown.is_of(OF_FOUR));
    // The job that is new has no time before; and nothing else of the pack may have changed.
    let newest = Library::open(dir.path()).unwrap().job("first-shift/one-more").unwrap();
    assert_eq!(newest.digests_before, Vec::<[u8; 32]>::new());
    std::fs::write(&path, change(&longer, "cut_score: 70.0", "cut_score: 71.0")).unwrap();
    assert!(!Library::open(dir.path()).unwrap().job(JOB).unwrap().is_of(&hex::encode(now.digest)));
}
