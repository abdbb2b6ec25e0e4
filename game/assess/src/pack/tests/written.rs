//! The text itself: unread, cut off, keys and words that are not known.

use std::path::Path;

use super::{alder, good, only, refused};
use crate::pack::error::{BadValue, Fault, Miswritten, Unread};
use crate::pack::raw::RawVehicle;
use crate::pack::{MAX_BYTES, read};

#[test]
fn unknown_key_names_place_and_known_keys() {
    refused!(
        only(alder("length_m: 0.4", "length_mm: 400.0")),
        Fault::Written { what: Miswritten::UnknownKey { key, .. }, line, .. } if key == "length_mm" && 1 < *line,
        "alder.ron:", "`Hose` has no key `length_mm`", "known keys: bore_mm, length_m"
    );
    refused!(
        only(alder("altitude_limit_m", "altitude_limit_ft")),
        Fault::Written { what: Miswritten::UnknownKey { .. }, .. },
        "`Vehicle`",
        "altitude_limit_ft",
        "altitude_limit_m"
    );
}

#[test]
fn missing_and_doubled_keys_are_named() {
    refused!(
        only(alder("bore_mm: 7.0,", "")),
        Fault::Written { what: Miswritten::MissingKey { key: "bore_mm", .. }, .. },
        "`VacuumPump` needs the key `bore_mm`"
    );
    refused!(
        only(alder("bore_mm: 7.0,", "bore_mm: 7.0, bore_mm: 7.0,")),
        Fault::Written { what: Miswritten::DuplicateKey { key: "bore_mm", .. }, .. },
        "`bore_mm` of `VacuumPump` stands twice"
    );
}

#[test]
fn unknown_words_list_the_known_ones() {
    refused!(
        only(alder("station: front", "station: roof")),
        Fault::Written { what: Miswritten::UnknownWord { word, .. }, .. } if word == "roof",
        "`roof`", "desk, cab, bay, front, bench"
    );
    refused!(
        only(alder("kind: Tee", "kind: Manifold")),
        Fault::Written { what: Miswritten::UnknownWord { .. }, .. },
        "`Manifold`",
        "Hose, Tee, CheckValve"
    );
    refused!(
        only(alder("kind: pump_run", "kind: pump_walk")),
        Fault::Written { what: Miswritten::UnknownWord { .. }, .. },
        "`pump_walk`",
        "pump_rest"
    );
}

#[test]
fn wrong_shapes_say_line_and_column() {
    refused!(
        only(alder("altitude_limit_m: 2000.0", "altitude_limit_m: \"high\"")),
        Fault::Written { what: Miswritten::Syntax { .. }, line: 8, .. },
        "alder.ron:8:",
        "near"
    );
    refused!(
        only(alder("Vehicle(", "Wagon(")),
        Fault::Written { what: Miswritten::Syntax { .. }, .. },
        "Vehicle",
        "Wagon"
    );
    refused!(
        only(alder("parts: [", "parts: {")),
        Fault::Written { what: Miswritten::Syntax { .. }, .. },
        "alder.ron:"
    );
    let text = format!("{}\n)", good("assets/vehicles/alder.ron"));
    let e = only(read::parse::<RawVehicle>(&text, "alder.ron").unwrap_err().0);
    refused!(e, Fault::Written { what: Miswritten::Syntax { .. }, .. }, "alder.ron:");
}

#[test]
fn truncated_anywhere_is_an_error_and_never_a_panic() {
    let text = good("assets/vehicles/alder.ron");
    let text = text.trim_end();
    let (mut cut_off, mut all) = (0, 0);
    for at in (0..text.len()).step_by(97) {
        let Some(part) = text.get(..at) else { continue };
        let e = only(read::parse::<RawVehicle>(part, "alder.ron").unwrap_err().0);
        cut_off += usize::from(matches!(&e.fault, Fault::Written { what: Miswritten::Truncated, .. }));
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
    refused!(text(&path), Fault::Unread(Unread::System { .. }), "x.ron", "cannot be read");
    refused!(
        text(dir.path()),
        Fault::Unread(Unread::NotRegular { what: "a folder", .. }),
        "x.ron",
        "not a regular file"
    );
    std::fs::write(&path, b"Vehicle(\xff\xfe)").unwrap();
    refused!(text(&path), Fault::Unread(Unread::NotText { line: 1, at: 8, .. }), "byte 8", "UTF-8");
    let mut dice = dice::Dice::of(1);
    let noise: Vec<u8> = (0..10_000_000).map(|_| dice.bits() as u8).collect();
    std::fs::write(&path, &noise).unwrap();
    refused!(
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

#[test]
fn another_version_of_the_format_is_refused() {
    refused!(
        only(alder("schema: 1", "schema: 7")),
        Fault::Value(BadValue::Schema { found: 7, expected: 1, .. }),
        "schema: 7",
        "reads schema 1"
    );
}
