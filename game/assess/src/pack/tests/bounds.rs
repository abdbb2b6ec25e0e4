//! How much a file may hold, and how many of its faults are told.

use super::{alder, good, only, refused};
use crate::pack::error::{BadCar, BadValue, Fault};
use crate::pack::raw::RawVehicle;
use crate::pack::{bounds, check_car, keys, read};

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
    refused!(
        only(with(&hoses)),
        Fault::Car(BadCar::TooManyStates { max: 200, .. }),
        "alder.ron",
        "state variables",
        "at most 200",
        "leave out"
    );
    refused!(only(with(&wires)), Fault::Car(BadCar::TooManyTerminals { .. }), "electrical ports");
}

#[test]
fn every_list_and_text_has_a_bound_and_none_stands_for_nothing() {
    let of = |key: &str| bounds::TEXTS.iter().any(|(k, ..)| *k == key);
    let mut lists = 0;
    for (block, _, keys) in keys::BLOCKS {
        for key in *keys {
            let form = key.form.replace(' ', "");
            if form.contains("Vec<") {
                assert!(bounds::of_list(block, key.name).is_some(), "{block}.{}", key.name);
                lists += 1;
            }
            if form.contains("String") {
                assert!(of(key.name), "{block}.{}", key.name);
            }
        }
    }
    assert_eq!(lists, bounds::LISTS.len(), "a bound for a list that is not there");
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
    refused!(e, Fault::Value(BadValue::TooMany { max: 200, .. }), "alder.ron: faults: 90", "at most 200");
    let long = "x".repeat(121);
    let e = only(alder("name: \"Alder", &format!("name: \"{long}")));
    refused!(e, Fault::Value(BadValue::TooLong { max: 120, .. }), "name: 1", "at most 120");
}

#[test]
fn the_checker_tells_twenty_faults_and_how_many_more() {
    let text = good("assets/vehicles/alder.ron").replace("bore_mm: ", "bore_mm: -");
    let text = text.replace("length_m: ", "length_m: -").replace("price: ", "price: -");
    let raw = read::parse::<RawVehicle>(&text, "alder.ron").unwrap();
    let errors = check_car::car(raw, "alder", "alder.ron").unwrap_err();
    assert_eq!(errors.len(), 21);
    refused!(errors.last().unwrap(), Fault::More { .. }, "alder.ron: and", "more");
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
        refused!(e, Fault::Value(BadValue::ControlCharacter { place: 3, found: f, .. }) if *f == found, "alder.ron: name: character 3");
    }
}
