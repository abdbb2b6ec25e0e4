//! The tray as a person and a screen reader meet it.

use egui::accesskit::Role;
use egui::{Key, vec2};
use egui_kittest::kittest::{NodeT as _, Queryable as _};
use sim_core::action::{Action, Cue};
use sim_core::observe::ShownValue;

use super::super::dial::printed::Printed;
use crate::stage::{panels, press};
use crate::theme;
use front::ask::Ask;
use front::prefs::PressureUnit;

const SMALL: egui::Vec2 = vec2(1280.0, 720.0);
/// With the engine's vacuum on the gauge.
const DRAWN: &str = "chocks on\ncover scuttle off\nfit gauge tee.2\nkey on\nengine idle\nwait 20";

#[test]
fn a_card_reads_and_the_reading_waits_to_be_noted() {
    let mut harness = panels(DRAWN, SMALL);
    harness.get_by_label("tee-in vacuum gauge: Read it").click();
    harness.run_steps(4);
    assert_eq!(harness.state().shop.view().unwrap().readings.len(), 1);
    harness.get_by_label("Note the reading").click();
    harness.run_steps(4);
    // The clipboard has taken it and asks what was read.
    assert_eq!(harness.state().ui.tray.to_note, None);
    let field = harness.state().words.say("note-what");
    harness.get_by_label(&field);
}

#[test]
fn a_dial_tells_a_listener_half_a_division_and_never_its_number_by_name() {
    let mut harness = panels(DRAWN, SMALL);
    for pressure in PressureUnit::ALL {
        harness.state_mut().ui.prefs.pressure = pressure;
        harness.run_steps(2);
        let stage = harness.state();
        let view = stage.shop.view().unwrap();
        let gauge = view.instruments.iter().find(|i| i.id == "gauge").unwrap();
        let kit = &stage.shop.session().unwrap().workshop().setup().kit;
        let printed = Printed::of(&kit[gauge.card].kind, pressure).unwrap();
        let value = printed.printed(gauge.value.unwrap());
        let node = harness.get_by_label_contains("tee-in vacuum gauge, four-way piece: branch 2: dial");
        assert!(node.accesskit_node().label().unwrap().contains(pressure.symbol()));
        // Read back what a listener hears.
        let heard = node.accesskit_node().data().description().unwrap().replace('\u{2212}', "-");
        let numbers: Vec<f64> =
            heard.split([' ', ',']).filter_map(|w| w.trim_end_matches('.').parse().ok()).collect();
        let read = numbers.iter().sum::<f64>() / numbers.len() as f64;
        assert!((read - value).abs() <= 0.25 * printed.division + 1e-9, "{heard:?} for {value}");
    }
}

#[test]
fn the_meter_is_set_on_its_card() {
    let mut harness = panels("fit meter battery.plus battery.minus", SMALL);
    harness.get_by_label(
        "multimeter, the COM lead at battery: minus post, the V Ω lead at battery: plus post: off, dark",
    );
    harness.get_by_label("multimeter: volts").click();
    harness.run_steps(4);
    let stage = harness.state();
    assert!(matches!(stage.asked[..], [Ask::Do(Action::SetMeter { .. })]), "{:?}", stage.asked);
    let meter = stage.shop.view().unwrap().instruments.iter().find(|i| i.id == "meter").unwrap();
    assert!(matches!(meter.shown, ShownValue::Steps(_)), "{meter:?}");
    // Digits are digits for everybody.
    let digits = meter.scale.as_ref().and_then(|scale| scale.characters(meter.shown)).unwrap();
    harness.get_by_label_contains(&format!("volts, {digits} V"));
}

#[test]
fn waiting_until_the_lamp_is_out_goes_by_keyboard() {
    let mut harness = panels("fit lamp battery.plus battery.minus", SMALL);
    press(&mut harness, &[Key::U, Key::Num4, Key::Tab, Key::Enter]);
    harness.run_steps(3);
    let until = Action::WaitUntil { cue: Cue::LampOut, max_s: 120 };
    assert_eq!(harness.state().asked, [Ask::Do(until)]);
}

#[test]
fn a_stated_wait_passes_in_the_workshop() {
    let mut harness = panels("", SMALL);
    press(&mut harness, &[Key::W, Key::Tab, Key::Enter]);
    harness.run_steps(3);
    assert_eq!(harness.state().asked, [Ask::Do(Action::Wait { s: 60 })]);
    harness.get_by_label("workshop clock 0:01:00");
}

#[test]
fn a_wait_is_stated_by_clicks_alone() {
    let mut harness = panels("", SMALL);
    let mut click = |label: &str| {
        harness.get_all_by_label(label).last().unwrap().click();
        harness.run_steps(4);
    };
    // The field on top is the one the pad writes into: its number is replaced by the first digit.
    for label in ["Wait …", "2", "5", "take the last one back", "4", "Do it"] {
        click(label);
    }
    assert_eq!(harness.state().asked, [Ask::Do(Action::Wait { s: 24 * 60 })]);
    let mut harness = panels("chocks on\nextraction on", SMALL);
    harness.state_mut().ui.open_menu(front::hands::Thing::Pedal, egui::pos2(600.0, 300.0));
    harness.run_steps(4);
    let mut click = |label: &str| {
        harness.get_all_by_label(label).last().unwrap().click();
        harness.run_steps(4);
    };
    click("Press it several times");
    click("7");
    // The second field is taken by a click into it.
    click("Force");
    click("3");
    click("0");
    click("0");
    click("Do it");
    assert_eq!(harness.state().asked, [Ask::Do(Action::PumpPedal { times: 7, force_n: 300.0 })]);
}

#[test]
fn a_stopwatch_that_was_stopped_in_vain_shows_its_time_and_says_so() {
    let mut harness = panels("time rest 10", SMALL);
    harness.get_by_label("stopwatch, at hand: 10.0 s, given up");
    assert!(harness.query_by_label_contains("OL").is_none());
    harness.run_steps(1);
}

#[test]
fn a_tool_from_the_board_is_in_the_hand_and_the_banner_says_so() {
    let mut harness = panels("", SMALL);
    harness.get_by_label("tee-in vacuum gauge").click();
    harness.run_steps(4);
    harness.get_by_label("In the hand: tee-in vacuum gauge, the hose.");
    harness.get_by_label("Put it back (Esc)").click();
    harness.run_steps(3);
    assert!(harness.state().ui.carrying.is_none());
}

#[test]
fn the_wall_instruments_come_and_go_with_their_switch() {
    let mut harness = panels("", SMALL);
    let barometer = "barometer on the wall, on the wall: dial 60 to 110 kPa, a mark every 0.5";
    assert!(harness.query_by_label(barometer).is_none());
    harness.get_by_label("Barometer, thermometer").click();
    harness.run_steps(3);
    harness.get_by_label(barometer);
}

#[test]
fn inv_everything_to_click_is_large_enough() {
    let scripts = [
        "",
        "chocks on\ncover scuttle off\nfit gauge tee.2\nfit lamp battery.plus battery.minus\nfit meter battery.plus battery.minus",
    ];
    for script in scripts {
        for keys in [&[][..], &[Key::P][..], &[Key::F][..], &[Key::W][..]] {
            let mut harness = panels(script, SMALL);
            press(&mut harness, keys);
            let small: Vec<String> = harness
                .root()
                .children_recursive()
                // Text that can be marked and copied is no button, and a bar is not the only way to scroll
                // or to widen a panel.
                .filter(|node| {
                    let role = node.accesskit_node().role();
                    !matches!(role, Role::Label | Role::ScrollBar | Role::Unknown | Role::Splitter)
                })
                .filter(|node| node.accesskit_node().data().supports_action(egui::accesskit::Action::Click))
                // The edge of a panel is there to drag; folding it away has a button.
                .filter(|node| node.accesskit_node().label().is_some() || node.rect().height() < 100.0)
                .filter(|node| {
                    let size = node.rect().size();
                    size.x < 24.0 || size.y < 24.0
                })
                .map(|node| format!("{:?} {}", node.accesskit_node().label(), node.rect().size()))
                .collect();
            assert!(small.is_empty(), "{small:?} after {keys:?}; the least is {} pt", theme::TARGET);
        }
    }
}
