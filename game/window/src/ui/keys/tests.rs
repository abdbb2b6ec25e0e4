//! The list of things, the pages, the keys of the time.

use egui::{Key, vec2};
use egui_kittest::kittest::Queryable as _;
use sim_core::action::Station;
use sim_core::notice::{Reason, Refusal};

use crate::stage::{panels, press, type_text};
use front::ask::Pace;
use front::hands::Thing;

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
    // A letter lets no time run: it pauses, or asks.
    press(&mut harness, &[Key::F7, Key::H]);
    assert_eq!(harness.state().shop.pace(), Pace::Hold);
    press(&mut harness, &[Key::H, Key::Enter]);
    assert_eq!(harness.state().shop.pace(), Pace::Hold);
    press(&mut harness, &[Key::Num1]);
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
    assert_eq!(stage.ui.middle, crate::shown::Middle::Room);
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
    press(&mut harness, &[Key::Enter, Key::Num1]);
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
        press(&mut harness, &[Key::Enter, Key::Num1]);
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
    press(&mut harness, &[Key::Enter, Key::Num1]);
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

#[test]
fn the_list_keeps_its_height_and_offers_only_ends_that_fit_best_first() {
    let mut harness = panels("cover scuttle off\nopen j_booster", SMALL);
    press(&mut harness, &[Key::F]);
    type_text(&mut harness, "hose clamps");
    press(&mut harness, &[Key::Enter, Key::Num1, Key::F]);
    let field = |harness: &egui_kittest::Harness<'_, crate::stage::Stage>| {
        let title = harness.state().words.say("find-place");
        harness.get_all_by_label(&title).map(|n| n.rect()).next_back().unwrap()
    };
    let open = field(&harness);
    type_text(&mut harness, "hose");
    assert_eq!(field(&harness), open, "nothing moves while one types");
    // Rubber hose ends and nothing else; the others are counted, with their reasons.
    let stage = harness.state();
    let found = super::find::found(&stage.shop, &stage.words, &stage.ui, "hose");
    assert!(!found.list.is_empty());
    let car = stage.shop.car().unwrap();
    for (thing, name) in &found.list {
        let Thing::Port(port) = thing else { panic!("{name} is no end") };
        assert!(car.stands[usize::from(port.part)].rubber, "{name}");
    }
    harness.get_by_label_contains("others do not go with it: ");
    harness.get_by_label_contains("only an end will do (");
    type_text(&mut harness, " booster end a");
    let stage = harness.state();
    let found = super::find::found(&stage.shop, &stage.words, &stage.ui, "hose booster end a");
    let first = found.list[0].0;
    press(&mut harness, &[Key::Enter]);
    assert_eq!(harness.state().ui.menu.as_ref().map(|m| m.thing), Some(first), "Return takes the first");
}

#[test]
fn every_end_the_list_offers_is_one_the_workshop_takes() {
    use front::hands::{Carry, fits};
    use sim_core::action::Action;
    use sim_core::assembly::Stop;
    // Everything is within reach and open to hands.
    let script = "cover scuttle off\ncover splash_guard off\nopen j_booster\nplug booster.vacuum";
    for (id, end) in [("clamps", "clamp"), ("plugs", "plug"), ("gauge", "stem")] {
        let shop = crate::stage::shop(script);
        let kit = &shop.session().unwrap().workshop().setup().kit;
        let card = kit.iter().position(|c| c.id == id).unwrap() as u16;
        let carry = Carry { card, placed: Vec::new(), left: vec![end.to_owned()] };
        let car = shop.car().unwrap();
        let mut offered = 0;
        for port in car.assembly.ports().filter(|p| usize::from(p.part) < car.assembly.parts.len()) {
            let name = car.assembly.port_name(port);
            let action = match id {
                "clamps" => Action::SetStop { port: name.clone(), stop: Some(Stop::Clamp) },
                "plugs" => Action::SetStop { port: name.clone(), stop: Some(Stop::Plug) },
                _ => Action::Fit { instrument: id.to_owned(), ends: vec![(end.to_owned(), name.clone())] },
            };
            let session = shop.session().unwrap();
            let mut same = assess::play::replay(session.attempt(), session.job()).unwrap();
            let refused = same.act(&action).refused;
            let fit = fits(&shop, &carry, Thing::Port(port));
            // A cover in the way is told by the workshop: the list offers what will do in principle.
            let barred = matches!(refused, Some(Refusal::Cannot(Reason::CoverInTheWay { .. })));
            assert_eq!(fit.is_ok(), refused.is_none() || barred, "{id} at {name}: {fit:?}, {refused:?}");
            offered += usize::from(fit.is_ok());
        }
        assert!(0 < offered, "{id}");
    }
}

#[test]
fn no_letter_and_no_word_does_anything_that_takes_time() {
    let steps = |harness: &egui_kittest::Harness<'_, crate::stage::Stage>| {
        let stage = harness.state();
        (
            stage.shop.session().unwrap().attempt().steps.len(),
            stage.shop.pace(),
            stage.shop.view().unwrap().station,
        )
    };
    let script = "cover scuttle off\nfit gauge tee.2\nfit lamp battery.plus battery.minus";
    let letters = [
        Key::A,
        Key::B,
        Key::C,
        Key::D,
        Key::E,
        Key::F,
        Key::G,
        Key::H,
        Key::I,
        Key::J,
        Key::K,
        Key::L,
        Key::M,
        Key::N,
        Key::O,
        Key::P,
        Key::Q,
        Key::R,
        Key::S,
        Key::T,
        Key::U,
        Key::V,
        Key::W,
        Key::X,
        Key::Y,
        Key::Z,
        Key::Num1,
        Key::Num2,
        Key::Num3,
        Key::Num4,
        Key::Num5,
    ];
    for key in letters {
        let mut harness = panels(script, SMALL);
        let before = steps(&harness);
        press(&mut harness, &[key, Key::Enter, Key::Space, Key::Enter]);
        assert_eq!(steps(&harness), before, "{key:?} and Return");
        let only_pause = |ask: &front::ask::Ask| *ask == front::ask::Ask::Pace(Pace::Hold);
        assert!(harness.state().asked.iter().all(only_pause), "{key:?}: {:?}", harness.state().asked);
    }
    for word in [
        "overnight",
        "key on",
        "wait 60",
        "read gauge",
        "so 1 er",
        "pedal press 100",
        "help 12",
        "fuse",
        "finding",
    ] {
        let mut harness = panels(script, SMALL);
        let before = steps(&harness);
        for c in word.chars() {
            let key =
                if c == ' ' { Key::Space } else { Key::from_name(&c.to_uppercase().to_string()).unwrap() };
            harness.key_press(key);
            harness.run_steps(1);
        }
        for _ in 0..3 {
            harness.key_press(Key::Enter);
            harness.run_steps(1);
        }
        harness.run_steps(3);
        assert_eq!(steps(&harness), before, "{word:?}");
        let menu = harness.state().ui.menu.as_ref();
        assert!(menu.is_none_or(|m| m.neutral && m.form.is_none()), "{word:?} leaves {menu:?} open");
    }
}

#[test]
fn the_night_waits_for_a_deliberate_key() {
    let mut harness = panels("", SMALL);
    press(&mut harness, &[Key::O]);
    harness.get_by_label_contains("Twelve hours");
    press(&mut harness, &[Key::Enter, Key::Space]);
    assert_eq!(harness.state().asked, []);
    assert!(harness.get_by_label_contains("the clock. A number takes a line").is_focused());
    press(&mut harness, &[Key::Tab, Key::Enter]);
    let night = front::ask::Ask::Do(sim_core::action::Action::Overnight);
    assert_eq!(harness.state().asked, [night]);
}
