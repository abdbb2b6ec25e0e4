//! A trainee at the diagram: the same deeds by mouse and by keyboard, found by their names.

use egui::{Key, Modifiers};
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT as _, Queryable as _};
use sim_core::assembly::Stop;

use super::super::camera::Shown;
use super::{Window, harness, window};
use crate::marks::RoomMarks;
use crate::shown::Middle;
use front::hands::{Carry, Thing};

fn thing(w: &Harness<'_, Window>, find: impl Fn(&sim_core::car::Car) -> Thing) -> (Thing, String) {
    let state = w.state();
    let thing = find(state.shop.car().unwrap());
    (thing, state.words.name(&state.shop, thing))
}

fn port(w: &Harness<'_, Window>, name: &str) -> String {
    thing(w, |car| Thing::Port(car.assembly.port(name).unwrap())).1
}

fn joint(w: &Harness<'_, Window>, id: &str) -> String {
    let find = |car: &sim_core::car::Car| car.assembly.joints.iter().position(|j| j.id == id).unwrap();
    thing(w, |car| Thing::Joint(find(car) as u16)).1
}

/// The words of the menu line with this key.
fn line(w: &Harness<'_, Window>, key: &str) -> String {
    w.state().words.say(key)
}

/// Clicks the thing called `name`, then the first line of its menu that begins with `line`.
fn by_mouse(w: &mut Harness<'_, Window>, name: &str, line: &str) {
    w.get_by_label(name).click();
    w.run_steps(3);
    // A long menu scrolls.
    press_line(w, line, |node| node.scroll_to_me());
    press_line(w, line, |node| node.click());
}

/// The same with the focus and Return.
fn by_keyboard(w: &mut Harness<'_, Window>, name: &str, line: &str) {
    w.get_by_label(name).focus();
    w.run_steps(2);
    w.key_press(Key::Enter);
    w.run_steps(3);
    press_line(w, line, |node| node.focus());
    w.key_press(Key::Enter);
    w.run_steps(3);
}

fn press_line(w: &mut Harness<'_, Window>, line: &str, press: impl Fn(&egui_kittest::Node<'_>)) {
    {
        let lines: Vec<_> = w.get_all_by_role(egui::accesskit::Role::Button).collect();
        let found = lines.iter().find(|n| n.accesskit_node().label().is_some_and(|l| l.starts_with(line)));
        let labels: Vec<_> = lines.iter().filter_map(|n| n.accesskit_node().label()).collect();
        press(found.unwrap_or_else(|| panic!("no line {line:?} in {labels:?}")));
    }
    w.run_steps(3);
}

type Way = fn(&mut Harness<'_, Window>, &str, &str);

fn works(way: Way) {
    let mut w = harness(window("en"), (1280.0, 1100.0));
    w.run_steps(3);
    // The key.
    let (name, on) = (line(&w, "name-key"), line(&w, "offer-key-on"));
    way(&mut w, &name, &on);
    assert!(w.state().shop.view().unwrap().key_on);
    // The cover over the tee, a joint, a plug, a gauge.
    let cover = w.state().words.say_with("diagram-cover-on", &[("cover", cover_name(&w).into())]);
    let off = line(&w, "offer-cover-off");
    way(&mut w, &cover, &off);
    assert_eq!(w.state().shop.view().unwrap().covers_off, ["scuttle"]);
    let (name, open) = (joint(&w, "j_valve_m"), line(&w, "offer-open-this"));
    way(&mut w, &name, &open);
    assert_eq!(w.state().shop.view().unwrap().joints_open, ["j_valve_m"]);
    let (name, plug) = (port(&w, "tee.3"), line(&w, "offer-plug"));
    way(&mut w, &name, &plug);
    assert_eq!(w.state().shop.view().unwrap().stops, [("tee.3".to_owned(), Stop::Plug)]);
    let gauge = {
        let state = w.state();
        let kit = &state.shop.session().unwrap().workshop().setup().kit;
        let card = kit.iter().position(|c| c.id == "gauge").unwrap();
        let it = state.words.name(&state.shop, Thing::Instrument(card as u16));
        state.words.say_with("offer-fit", &[("it", it.into())])
    };
    let name = port(&w, "valve_m.store");
    way(&mut w, &name, &gauge);
    let fitted = |w: &Harness<'_, Window>| {
        w.state().shop.view().unwrap().instruments.iter().find(|i| i.id == "gauge").unwrap().at.clone()
    };
    assert_eq!(fitted(&w), [("stem".to_owned(), "valve_m.store".to_owned())]);
}

fn cover_name(w: &Harness<'_, Window>) -> String {
    let scuttle = |car: &sim_core::car::Car| car.covers.iter().position(|c| c.id == "scuttle").unwrap();
    thing(w, |car| Thing::Cover(scuttle(car) as u16)).1
}

#[test]
fn key_cover_joint_plug_and_gauge_by_mouse() {
    works(by_mouse);
}

#[test]
fn key_cover_joint_plug_and_gauge_by_keyboard() {
    works(by_keyboard);
}

#[test]
fn every_thing_of_the_car_is_a_named_widget() {
    let mut w = harness(window("en"), (1280.0, 720.0));
    w.run_steps(3);
    let state = w.state();
    let car = state.shop.car().unwrap();
    let mut all: Vec<Thing> = (0..car.assembly.parts.len()).map(|i| Thing::Part(i as u16)).collect();
    all.extend(car.assembly.ports().map(Thing::Port));
    all.extend((0..car.assembly.joints.len()).map(|i| Thing::Joint(i as u16)));
    all.extend([Thing::Key, Thing::Starter, Thing::Pedal, Thing::Car, Thing::JobCard, Thing::DataSheet]);
    for thing in all {
        let name = state.words.name(&state.shop, thing);
        assert!(!name.is_empty());
        assert!(0 < w.query_all_by_label(&name).count(), "{thing:?} {name:?} is not there");
    }
}

#[test]
fn tab_walks_along_the_circuit_and_the_board_follows() {
    let mut w = harness(window("en"), (1280.0, 480.0));
    w.state_mut().ui.diagram.shown = Shown::One(assess::diagram::Sheet::Air);
    w.run_steps(3);
    let order = ["booster.vacuum", "hose_b.a", "hose_b.b", "tee.1"].map(|p| port(&w, p));
    w.get_by_label(&order[0]).focus();
    w.run_steps(2);
    let mut seen = vec![order[0].clone()];
    for _ in 0..12 {
        w.key_press(Key::Tab);
        w.run_steps(2);
        let all = w.get_all_by_role(egui::accesskit::Role::Button);
        seen.extend(all.filter(|n| n.is_focused()).filter_map(|n| n.accesskit_node().label()));
    }
    let places: Vec<usize> = order.iter().map(|n| seen.iter().position(|s| s == n).unwrap()).collect();
    assert!(places.is_sorted(), "{seen:?}");
    // What has the focus can be seen, however little room there is.
    let hover = w.state().ui.hover.expect("something has the focus");
    assert!(w.state().ui.marks.get(hover).is_some(), "{hover:?} has the focus and is out of sight");
}

#[test]
fn the_wheel_magnifies_and_fit_brings_back() {
    let mut w = harness(window("en"), (1280.0, 720.0));
    w.run_steps(3);
    let before = w.state().ui.diagram.camera;
    let middle = egui::pos2(640.0, 250.0);
    w.hover_at(middle);
    w.run_steps(1);
    let delta = egui::vec2(0.0, 120.0);
    w.event(egui::Event::MouseWheel {
        unit: egui::MouseWheelUnit::Point,
        delta,
        phase: egui::TouchPhase::Move,
        modifiers: Modifiers::NONE,
    });
    w.run_steps(8);
    let after = w.state().ui.diagram.camera;
    assert!(before.zoom < after.zoom && after.moved, "{after:?}");
    w.get_by_label("Fit").click();
    w.run_steps(3);
    assert_eq!(w.state().ui.diagram.camera, before);
}

#[test]
fn what_is_in_the_hand_goes_where_one_clicks() {
    let mut w = harness(window("en"), (1280.0, 720.0));
    w.run_steps(3);
    let card = w.state().shop.session().unwrap().workshop().setup().kit.iter().position(|c| c.id == "gauge");
    let carry = Carry { card: card.unwrap() as u16, placed: Vec::new(), left: vec!["stem".to_owned()] };
    w.state_mut().ui.carrying = Some(carry);
    // The banner of what is in the hand takes room; the sheet comes to rest after it.
    w.run_steps(12);
    let name = port(&w, "valve_m.store");
    w.get_by_label(&name).click();
    w.run_steps(3);
    let end = w.state().words.say_or("lead-stem", "stem");
    let put = w.state().words.say_with("offer-place-end", &[("end", end.into()), ("it", name.into())]);
    press_line(&mut w, &put, |node| node.click());
    let view = w.state().shop.view().unwrap();
    let at = &view.instruments.iter().find(|i| i.id == "gauge").unwrap().at;
    assert_eq!(*at, [("stem".to_owned(), "valve_m.store".to_owned())]);
    assert!(w.state().ui.carrying.is_none());
}

#[test]
fn beside_the_room_the_rooms_anchors_stay() {
    let mut w = harness(window("en"), (1280.0, 900.0));
    w.state_mut().ui.middle = Middle::Both;
    let (thing, _) = thing(&w, |car| Thing::Port(car.assembly.port("tee.2").unwrap()));
    let here = egui::pos2(5.0, 7.0);
    w.run_steps(1);
    let (at, scene) = (w.state().ui.eye, w.state().ui.scene.unwrap());
    let (spots, homes) = ([(thing, here)].into(), [].into());
    w.state_mut().ui.marks.set_room(Some(RoomMarks { at, scene, spots, homes }));
    w.run_steps(3);
    assert_eq!(w.state().ui.marks.get(thing), Some(here));
    let (other, _) = self::thing(&w, |car| Thing::Port(car.assembly.port("tee.3").unwrap()));
    assert!(w.state().ui.marks.get(other).is_some(), "what the room does not show is the diagram's");
}

#[test]
fn nothing_hidden_is_written_on_the_board() {
    let mut w = harness(window("en"), (1280.0, 720.0));
    w.run_steps(3);
    let units = ["kPa", "Ω", " V", "°C"];
    let state = w.state();
    let (car, view) = (state.shop.car().unwrap(), state.shop.view().unwrap());
    let diagram = state.shop.library().diagram(car).unwrap();
    for sheet in assess::diagram::Sheet::ALL {
        let plan = super::super::Plan::new(car, &diagram, sheet);
        for text in super::super::written(&w.ctx, car, view, &state.words, &diagram, &plan).texts {
            assert!(!units.iter().any(|u| text.text.contains(u)), "{:?}", text.text);
        }
    }
}

#[test]
fn the_extraction_is_hung_on_and_taken_off_under_the_diagram() {
    let mut w = harness(window("de"), (2000.0, 1100.0));
    w.run_steps(3);
    for (key, offer, on) in [
        ("diagram-extraction-off", "offer-extraction-on", true),
        ("diagram-extraction-on", "offer-extraction-off", false),
    ] {
        let it = line(&w, "name-extraction");
        let label = w.state().words.say_with(key, &[("extraction", it.into())]);
        let offer = line(&w, offer);
        by_mouse(&mut w, &label, &offer);
        assert_eq!(w.state().shop.view().unwrap().extracted, on);
    }
}
