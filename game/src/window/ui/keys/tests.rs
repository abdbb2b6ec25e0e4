//! The list of things, the pages, the keys of the time.

use egui::{Key, vec2};
use egui_kittest::kittest::Queryable as _;
use sim_core::action::Station;

use crate::window::ask::Pace;
use crate::window::hands::Thing;
use crate::window::stage::{panels, press, type_text};

const SMALL: egui::Vec2 = vec2(1280.0, 720.0);

#[test]
fn pace_keys_set_the_pace() {
    let mut harness = panels("", SMALL);
    for (key, pace) in
        [(Key::F6, Pace::Live), (Key::F7, Pace::Ten), (Key::F8, Pace::Sixty), (Key::F5, Pace::Hold)]
    {
        press(&mut harness, &[key]);
        assert_eq!(harness.state().shop.pace(), pace);
    }
    press(&mut harness, &[Key::H]);
    assert_eq!(harness.state().shop.pace(), Pace::Live);
}

#[test]
fn the_list_of_things_finds_by_part_of_a_name_and_opens_the_menu() {
    let mut harness = panels("", SMALL);
    press(&mut harness, &[Key::F]);
    type_text(&mut harness, "valve pump store");
    harness.get_by_label("check valve towards the pump: store side");
    press(&mut harness, &[Key::Enter]);
    let menu = harness.state().ui.menu.clone().unwrap();
    assert!(matches!(menu.thing, Thing::Port(_)), "{menu:?}");
    assert_eq!(harness.state().ui.eye, Station::Bay, "the eye goes where the thing is");
    harness.get_by_label("Connect: tee-in vacuum gauge");
}

#[test]
fn letters_typed_into_the_list_are_no_keys() {
    let mut harness = panels("", SMALL);
    press(&mut harness, &[Key::F]);
    press(&mut harness, &[Key::H, Key::L, Key::T]);
    let stage = harness.state();
    assert_eq!(stage.shop.pace(), Pace::Hold);
    assert_eq!(stage.ui.middle, crate::window::state::Middle::Room);
    press(&mut harness, &[Key::Escape]);
    assert!(!harness.state().ui.pages.is_open());
}

#[test]
fn a_gauge_is_connected_by_keyboard_alone() {
    let mut harness = panels("cover scuttle off", SMALL);
    // The tool from the list, then a place for it from the list.
    press(&mut harness, &[Key::F]);
    type_text(&mut harness, "tee-in vacuum gauge");
    press(&mut harness, &[Key::Enter, Key::Num1]);
    let carry = harness.state().ui.carrying.clone().unwrap();
    assert_eq!(carry.left, ["stem"]);
    press(&mut harness, &[Key::F]);
    type_text(&mut harness, "engine store");
    press(&mut harness, &[Key::Enter, Key::Enter]);
    harness.run_steps(3);
    let stage = harness.state();
    assert!(stage.ui.carrying.is_none());
    let gauge = stage.shop.view().unwrap().instruments.iter().find(|i| i.id == "gauge").unwrap();
    assert_eq!(gauge.at, [("stem".to_owned(), "valve_m.store".to_owned())]);
    // Its face is on the tray, and its number is not in the name.
    harness.get_by_label(
        "tee-in vacuum gauge, check valve towards the engine: store side: dial \u{2212}100 to 0 kPa, a mark every 2",
    );
}

#[test]
fn both_leads_of_a_lamp_are_placed_one_after_the_other() {
    let mut harness = panels("", SMALL);
    press(&mut harness, &[Key::F]);
    type_text(&mut harness, "test lamp");
    press(&mut harness, &[Key::Enter, Key::Num1]);
    for (n, place) in ["battery plus", "battery minus"].into_iter().enumerate() {
        assert_eq!(harness.state().ui.carrying.as_ref().unwrap().placed.len(), n);
        press(&mut harness, &[Key::F]);
        type_text(&mut harness, place);
        press(&mut harness, &[Key::Enter, Key::Enter]);
    }
    harness.run_steps(3);
    let lamp = harness.state().shop.view().unwrap().instruments.iter().find(|i| i.id == "lamp").unwrap();
    assert_eq!(lamp.at.len(), 2, "{lamp:?}");
    harness.get_by_label_contains("test lamp 21 W with two leads, lead A at battery: plus post");
}

#[test]
fn a_place_that_is_refused_leaves_the_tool_in_the_hand() {
    // The scuttle panel is on: nothing can be connected at the booster.
    let mut harness = panels("", SMALL);
    press(&mut harness, &[Key::F]);
    type_text(&mut harness, "tee-in vacuum gauge");
    press(&mut harness, &[Key::Enter, Key::Num1, Key::F]);
    type_text(&mut harness, "booster pedal vacuum");
    press(&mut harness, &[Key::Enter, Key::Enter]);
    harness.run_steps(3);
    assert_eq!(harness.state().ui.carrying.as_ref().unwrap().left, ["stem"]);
    harness.get_by_label("Put this note away");
    // Escape puts the note away first, then the tool back.
    press(&mut harness, &[Key::Escape]);
    assert!(harness.state().ui.carrying.is_some());
    press(&mut harness, &[Key::Escape]);
    assert!(harness.state().ui.carrying.is_none());
}

#[test]
fn the_page_of_keys_opens_and_closes() {
    let mut harness = panels("", SMALL);
    press(&mut harness, &[Key::F1]);
    harness.get_by_label("First steps");
    press(&mut harness, &[Key::Escape]);
    assert!(harness.query_by_label("First steps").is_none());
}

#[test]
fn the_log_holds_what_has_faded() {
    let mut harness = panels(
        "chocks on\ncover scuttle off\nfit gauge tee.2\nkey on\nengine idle\nwait 20\nread gauge",
        SMALL,
    );
    press(&mut harness, &[Key::M]);
    harness.get_by_label("What was said");
    let said: Vec<_> =
        harness.get_all_by_label("Looked at: tee-in vacuum gauge at four-way piece: branch 2").collect();
    assert_eq!(said.len(), 2, "once over the room, once in the log");
}
