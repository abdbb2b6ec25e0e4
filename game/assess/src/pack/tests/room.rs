//! A room is refused with what is wrong, where, and what would be right; everything at once.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use sim_core::car::Car;

use crate::pack::error::{BadValue, Fault, PackError};
use crate::pack::raw::RawRoom;
use crate::pack::{Library, check_room, read};
use crate::room::{LineOf, Room};

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

fn car() -> Arc<Car> {
    Library::open(&root()).and_then(|l| l.car("alder")).unwrap_or_else(|e| panic!("{e}"))
}

fn good() -> String {
    std::fs::read_to_string(root().join("assets/rooms/alder.ron")).unwrap()
}

fn check(text: &str) -> Result<Room, Vec<PackError>> {
    let raw = read::parse::<RawRoom>(text, "alder.ron").map_err(|e| e.0)?;
    check_room::room(raw, &car(), "alder.ron")
}

/// What is said of Alder's room with `from` changed to `to`, one fault a line.
fn said(from: &str, to: &str) -> Vec<String> {
    let text = good();
    assert!(text.contains(from), "the good file no longer has {from:?}");
    let errors = check(&text.replacen(from, to, 1)).expect_err("it is still good");
    errors.iter().map(ToString::to_string).collect()
}

/// The only fault names all of this.
fn only(from: &str, to: &str, says: &[&str]) {
    let said = said(from, to);
    assert_eq!(said.len(), 1, "{said:#?}");
    for word in says {
        assert!(said[0].contains(word), "{:?} does not say {word:?}", said[0]);
    }
}

#[test]
fn every_part_line_and_cover_of_the_car_stands_in_its_room_once() {
    let (room, car) = (check(&good()).unwrap(), car());
    let lines = room.ways.iter().filter(|w| matches!(w.line, LineOf::Part(_))).count();
    assert_eq!(room.parts.len() + lines, car.assembly.parts.len());
    for stand in &room.parts {
        assert_eq!(stand.ports.len(), car.assembly.parts[usize::from(stand.part)].kind.ports().len());
    }
    assert_eq!(room.covers.len(), car.covers.len());
}

#[test]
fn what_is_left_out_is_named_with_its_list() {
    let text = good();
    let without = |from: &str, until: &str| {
        let start = text.find(from).unwrap();
        let end = start + text[start..].find(until).unwrap() + until.len();
        let cut = format!("{}{}", &text[..start], &text[end..]);
        let errors = check(&cut).unwrap_err();
        assert_eq!(errors.len(), 1, "{errors:#?}");
        errors[0].to_string()
    };
    let e = without("Way(line: \"hose_m\"", "]),");
    assert!(e.contains("alder.ron: ways: hose_m is missing"), "{e}");
    let e = without("Mouth(port: \"com\"", "),\n");
    assert!(e.contains("ports: switch.com is missing"), "{e}");
    let e = without("CoverStand(\n            cover: \"scuttle\"", "        ),");
    assert!(e.contains("covers: scuttle is missing"), "{e}");
}

#[test]
fn what_stands_twice_is_named_with_the_first() {
    let said = said("Mouth(port: \"2\"", "Mouth(port: \"1\"");
    assert!(said[0].contains("parts[1].ports[1]") && said[0].contains("parts[1].ports[0]"), "{said:#?}");
    assert!(said[1].contains("tee.2 is missing"), "{said:#?}");
}

#[test]
fn names_that_the_car_does_not_have_list_those_it_has() {
    let said = said("cover: \"splash_guard\"", "cover: \"shield\"");
    assert!(said[0].contains("covers[1].cover") && said[0].contains("splash_guard"), "{said:#?}");
    assert!(said[1].contains("covers: splash_guard is missing"), "{said:#?}");
    let text = good().replacen("line: \"hose_b\"", "line: \"j_booster\"", 1);
    let said: Vec<_> = check(&text).unwrap_err().iter().map(ToString::to_string).collect();
    assert!(said[0].contains("ways[0]") && said[0].contains("no joint between two terminals"), "{said:#?}");
    let text = good().replacen("part: \"tee\"", "part: \"hose_b\"", 1);
    let said: Vec<_> = check(&text).unwrap_err().iter().map(ToString::to_string).collect();
    assert!(said[0].contains("hose_b is a hose or wire") && said[0].contains("`ways`"), "{said:#?}");
}

#[test]
fn numbers_out_of_range_give_path_value_and_range() {
    only("at: (-1.28, 0.93, -0.5)", "at: (-1.28, 40.0, -0.5)", &["parts[0].at.1 = 40", "-4 to 4 m"]);
    only("turn: (90.0, 0.0, 0.0)", "turn: (900.0, 0.0, 0.0)", &["covers[0].off.turn.0 = 900", "degrees"]);
    only("width_m: 0.94", "width_m: 0.0", &["covers[0].shape.width_m = 0", "0.005 to 3"]);
    only("at: (-1.86, 0.895, -0.545)", "at: (-1.86, NaN, -0.545)", &["fixtures[3].at.1"]);
    only("pedal: (-1.28", "pedal: (-12.8", &["pedal.0 = -12.8"]);
    only("area_mm2: 1.5", "area_mm2: 0.001", &["ways", "area_mm2 = 0.001", "0.35 to 50"]);
    only("out: (-0.86, 0.3, 0.42)", "out: (0.0, 0.0, 0.0)", &["parts[0].ports[0].out", "points nowhere"]);
}

#[test]
fn a_line_has_only_the_keys_that_are_its_own() {
    only("Way(line: \"hose_b\",", "Way(line: \"hose_b\", colour: red,", &["ways[0].colour", "black rubber"]);
    only("Way(line: \"strap\",", "Way(line: \"strap\", area_mm2: 16.0,", &["area_mm2", "car's file"]);
    only(", area_mm2: 1.5", "", &["e_key_30 is a joint", "area_mm2"]);
}

#[test]
fn unknown_words_list_the_known_ones() {
    only("shell: saloon", "shell: coupe", &["`coupe`", "the bodies", "saloon, wedge"]);
    only("colour: green", "colour: orange", &["`orange`", "colours of a wire", "black, red"]);
    only("shape: Guard(", "shape: Splash(", &["`Splash`", "shapes of a cover", "Scuttle, Guard, Lid"]);
    only("shape: Grommet", "shape: Rag", &["`Rag`", "fixtures"]);
}

#[test]
fn every_fault_of_a_room_is_told_at_once() {
    let text = good().replace("schema: 1", "schema: 7").replace("vehicle: \"alder\"", "vehicle: \"birch\"");
    let text = text.replace("out: (0.0, 1.0, 0.0)", "out: (0.0, 0.0, 0.0)").replace("0.94", "9.4");
    let errors = check(&text).unwrap_err();
    assert_eq!(errors.len(), 5, "{errors:#?}");
}

#[test]
fn a_room_cut_off_anywhere_is_an_error_and_never_a_panic() {
    let text = good();
    for end in (0..text.trim_end().len() - 1).step_by(97).filter(|end| text.is_char_boundary(*end)) {
        assert!(check(&text[..end]).is_err(), "cut at {end}");
    }
}

#[test]
fn a_list_too_long_is_refused() {
    let clip = "Fixture(shape: Clip, at: (0.0, 0.0, 0.0)),\n".repeat(101);
    let text = good().replacen("fixtures: [", &format!("fixtures: [{clip}"), 1);
    let errors = check(&text).unwrap_err();
    let fault = |e: &PackError| matches!(e.fault, Fault::Value(BadValue::TooMany { max: 100, .. }));
    assert!(errors.len() == 1 && fault(&errors[0]), "{errors:#?}");
}
