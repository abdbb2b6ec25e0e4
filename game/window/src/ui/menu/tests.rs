//! Menus by keyboard alone, refusals at their place, forms.

use egui::{Key, vec2};
use egui_kittest::kittest::Queryable as _;
use sim_core::action::{Action, PedalHold};

use crate::stage::{panels, press, type_text};
use front::ask::Ask;
use front::hands::{Thing, place};

const SMALL: egui::Vec2 = vec2(1280.0, 720.0);

#[test]
fn the_pedal_is_held_by_keyboard_alone_with_a_force_that_was_typed() {
    let mut harness = panels("", SMALL);
    press(&mut harness, &[Key::P, Key::Num1]);
    harness.get_by_label("Do it");
    // A letter opened it: the focus rests, and Return does nothing yet.
    press(&mut harness, &[Key::Enter]);
    harness.get_by_label("Do it");
    assert_eq!(harness.state().asked, []);
    // In the field its number is selected: what is typed replaces it.
    press(&mut harness, &[Key::Tab]);
    type_text(&mut harness, "250");
    press(&mut harness, &[Key::Enter]);
    harness.run_steps(3);
    let stage = harness.state();
    assert_eq!(stage.shop.view().unwrap().pedal, PedalHold::Foot { force_n: 250.0 });
    assert!(stage.ui.menu.is_none());
}

#[test]
fn arrows_choose_a_line_and_escape_leaves_the_menu() {
    let mut harness = panels("", SMALL);
    press(&mut harness, &[Key::P, Key::ArrowDown, Key::ArrowDown]);
    assert!(harness.get_by_label("Set the pedal prop").is_focused());
    press(&mut harness, &[Key::ArrowUp, Key::ArrowUp]);
    assert!(harness.get_by_label("Tell how many were assisted").is_focused(), "the list goes round");
    press(&mut harness, &[Key::Escape]);
    assert!(harness.state().ui.menu.is_none());
    assert!(harness.query_by_label("Set the pedal prop").is_none());
}

#[test]
fn the_focus_goes_back_where_it_was() {
    let mut harness = panels("", SMALL);
    harness.get_by_label("Overnight …").focus();
    harness.run_steps(2);
    press(&mut harness, &[Key::Enter]);
    assert!(harness.state().ui.menu.is_some());
    harness.get_by_label_contains("Twelve hours");
    press(&mut harness, &[Key::Escape]);
    assert!(harness.get_by_label("Overnight …").is_focused());
    assert_eq!(harness.state().asked, []);
}

#[test]
fn a_refusal_says_why_where_the_hands_were_and_goes_with_the_next_deed() {
    let mut harness = panels("", SMALL);
    let booster = place(&harness.state().shop, "booster").unwrap();
    harness.state_mut().ui.open_menu(booster, egui::pos2(400.0, 200.0));
    harness.run_steps(3);
    harness.get_by_label("Touch it").click();
    harness.run_steps(4);
    let why = "Not like this: the scuttle panel over the booster is in the way: take it off first";
    // Once at the place, once among the remarks.
    let notes: Vec<egui::Rect> = harness.get_all_by_label(why).map(|n| n.rect()).collect();
    let near = |r: &egui::Rect| (r.left() - 400.0).abs() < 60.0 && r.y_range().contains(200.0);
    assert!(notes.iter().any(near), "{notes:?}");
    press(&mut harness, &[Key::K, Key::Num1]);
    assert!(harness.query_by_label("Put this note away").is_none());
    assert!(harness.state().shop.view().unwrap().key_on);
}

#[test]
fn a_note_is_put_away_by_escape() {
    let mut harness = panels("", SMALL);
    harness.state_mut().ui.open_menu(Thing::Pedal, egui::pos2(400.0, 200.0));
    harness.run_steps(3);
    // Nothing was pumped: that cannot be told.
    harness.get_by_label("Tell how many were assisted").click();
    harness.run_steps(4);
    harness.get_by_label("Put this note away");
    press(&mut harness, &[Key::Escape]);
    assert!(harness.query_by_label("Put this note away").is_none());
}

#[test]
fn a_menu_stands_beside_its_thing_and_inside_the_window() {
    for at in [egui::pos2(60.0, 60.0), egui::pos2(1240.0, 680.0), egui::pos2(640.0, 360.0)] {
        let mut harness = panels("", SMALL);
        harness.state_mut().ui.open_menu(Thing::Starter, at);
        harness.run_steps(4);
        let line = harness.get_by_label("Start the engine, warm").rect();
        assert!(!line.expand(8.0).contains(at), "{line:?} covers {at:?}");
        assert!(egui::Rect::from_min_size(egui::Pos2::ZERO, SMALL).contains_rect(line), "{line:?}");
    }
}

#[test]
fn spares_are_a_list_of_their_own_and_one_step_leads_back() {
    let mut harness = panels("", SMALL);
    let pump = place(&harness.state().shop, "pump").unwrap();
    harness.state_mut().ui.open_menu(pump, egui::pos2(400.0, 200.0));
    harness.run_steps(3);
    assert!(harness.query_by_label("Replace with: electric vacuum pump, new").is_none());
    harness.get_by_label("Replace it").click();
    harness.run_steps(3);
    harness.get_by_label("Replace with: electric vacuum pump, new");
    harness.get_by_label("Replace with: electric vacuum pump, used, of unknown wear");
    press(&mut harness, &[Key::ArrowLeft]);
    harness.get_by_label("Touch it");
}

#[test]
fn taking_a_unit_to_the_bench_stops_at_what_is_refused() {
    // The splash guard is on: the pump's hose cannot be pulled off, so nothing after it is tried.
    let mut harness = panels("", SMALL);
    let pump = place(&harness.state().shop, "pump").unwrap();
    harness.state_mut().ui.open_menu(pump, egui::pos2(400.0, 200.0));
    harness.run_steps(3);
    harness.get_by_label("Take it to the bench: open all its joints").click();
    harness.run_steps(4);
    let stage = harness.state();
    assert!(matches!(&stage.asked[..], [Ask::DoAll(actions)] if 2 <= actions.len()));
    let steps = &stage.shop.session().unwrap().attempt().steps;
    let opened: Vec<&Action> =
        steps.iter().map(|s| &s.action).filter(|a| matches!(a, Action::OpenJoint { .. })).collect();
    assert_eq!(opened.len(), 1, "{opened:?}");
    assert!(stage.shop.view().unwrap().joints_open.is_empty());
}
