//! The room without a renderer: every port can be reached, nothing lies on top of anything else, lines end
//! where their fittings are.

mod cars;
mod shapes;

use std::collections::BTreeSet;

use bevy::math::Vec3;
use egui::{Pos2, Rect};
use sim_core::action::Station;
use sim_core::car::Car;
use sim_core::workshop::{Setup, View};

use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT as _, Queryable as _};

use super::anchors::{APART, spread, things};
use super::camera::{Lens, station};
use super::layout::{Layout, Seen};
use super::materials::Mat;
use super::stands::Stands;
use super::{build, marks, places, plain};
use crate::flow::between_frames;
use crate::shown::{Middle, Page};
use crate::stage::{self, Stage, press};
use crate::state::Ui;
use crate::ui::tests::bench;
use crate::{theme, ui};
use front::hands::{Thing, place, station_of};
use front::shop::Shop;

const STATIONS: [Station; 5] = [Station::Desk, Station::Cab, Station::Bay, Station::Front, Station::Bench];

fn shop() -> Shop {
    bench::shop(bench::JOB)
}

/// The scene between the panels at 1280 × 720.
fn scene() -> Rect {
    Rect::from_min_max(Pos2::new(340.0, 40.0), Pos2::new(1240.0, 470.0))
}

fn parts(shop: &Shop) -> (&Car, &Setup, View) {
    let mut view = shop.view().unwrap().clone();
    view.covers_off = shop.car().unwrap().covers.iter().map(|c| c.id.clone()).collect();
    (shop.car().unwrap(), shop.session().unwrap().workshop().setup(), view)
}

fn stands(shop: &Shop) -> Stands {
    plain::stands(shop.library(), shop.car().unwrap()).0
}

fn spots(shop: &Shop, at: Station) -> std::collections::BTreeMap<Thing, Pos2> {
    let (car, setup, view) = parts(shop);
    let stands = stands(shop);
    let layout = Layout::of(car, &stands, &setup.kit, &Seen::of(&view));
    let eye = station(at);
    let lens = Lens::new(&eye, eye.fov(eye.distance, scene().width() / scene().height()), scene());
    spread(&things(at, car, &setup.kit, &setup.spares, &view, (&stands, &layout)), &lens, scene(), APART)
}

#[test]
fn every_port_part_and_tool_is_on_the_screen_somewhere() {
    let shop = shop();
    let (car, setup, _) = parts(&shop);
    let seen: BTreeSet<Thing> = STATIONS.iter().flat_map(|s| spots(&shop, *s).into_keys()).collect();
    for port in car.assembly.ports() {
        assert!(seen.contains(&Thing::Port(port)), "{} is out of sight", car.assembly.port_name(port));
    }
    let parts = (0..car.assembly.parts.len()).map(|i| Thing::Part(i as u16));
    let covers = (0..car.covers.len()).map(|i| Thing::Cover(i as u16));
    let tools = (0..setup.kit.len()).map(|i| Thing::Instrument(i as u16));
    let spares = (0..setup.spares.len()).map(|i| Thing::Spare(i as u16));
    let others = [
        Thing::Key,
        Thing::Starter,
        Thing::Pedal,
        Thing::Chocks,
        Thing::Extraction,
        Thing::JobCard,
        Thing::DataSheet,
        Thing::Car,
    ];
    for thing in parts.chain(covers).chain(tools).chain(spares).chain(others) {
        assert!(seen.contains(&thing), "{thing:?} is out of sight");
    }
}

#[test]
fn what_is_worked_at_from_a_station_is_in_its_picture() {
    let shop = shop();
    let (car, setup, view) = parts(&shop);
    let stands = stands(&shop);
    let mut missing = Vec::new();
    // Small window with the tray open, large window, narrow window with room and diagram side by side.
    for (width, height) in [(932.0, 452.0), (1_572.0, 812.0), (1_240.0, 430.0), (700.0, 452.0)] {
        let scene = Rect::from_min_size(Pos2::new(348.0, 30.0), egui::vec2(width, height));
        for at in STATIONS {
            for chocked in [false, true] {
                let view = View { chocked, extracted: chocked, ..view.clone() };
                let layout = Layout::of(car, &stands, &setup.kit, &Seen::of(&view));
                let eye = station(at);
                let lens = Lens::new(&eye, eye.fov(eye.distance, width / height), scene);
                for (thing, place) in things(at, car, &setup.kit, &setup.spares, &view, (&stands, &layout)) {
                    // Some things hang into the picture of a station at which they are not worked at.
                    let here = station_of(&shop, thing).unwrap_or(Station::Desk) == at;
                    if here && lens.see(place).is_none() {
                        missing.push(format!("{at:?}, {width} × {height}, chocked {chocked}: {thing:?}"));
                    }
                }
            }
        }
    }
    assert!(missing.is_empty(), "not in the picture:\n{}", missing.join("\n"));
}

#[test]
fn no_two_hotspots_of_a_station_are_nearer_than_a_target() {
    let shop = shop();
    for at in STATIONS {
        let spots: Vec<(Thing, Pos2)> = spots(&shop, at).into_iter().collect();
        for (i, a) in spots.iter().enumerate() {
            for b in &spots[i + 1..] {
                let far = a.1.distance(b.1);
                assert!(APART - 2.0 <= far, "{at:?}: {:?} and {:?} are {far:.1} apart", a.0, b.0);
            }
        }
    }
}

#[test]
fn a_hose_ends_on_its_fitting_and_hangs_off_it_when_opened() {
    let shop = shop();
    let (car, setup, mut view) = parts(&shop);
    let hose = car.assembly.port("hose_b.a").unwrap();
    let stands = stands(&shop);
    let mouth = stands.ports(car.assembly.part_index("booster").unwrap())[0];
    let made = Layout::of(car, &stands, &setup.kit, &Seen::of(&view));
    let on = made.ports[&hose].at.distance(mouth.at);
    assert!((0.05..0.12).contains(&on), "taken hold of {on} m along the hose");
    view.joints_open.push("j_booster".to_owned());
    let open = Layout::of(car, &stands, &setup.kit, &Seen::of(&view));
    assert!(0.02 < open.ports[&hose].at.distance(made.ports[&hose].at));
    assert_eq!(open.ports[&car.assembly.port("booster.vacuum").unwrap()], mouth);
}

#[test]
fn what_is_wholly_taken_off_lies_aside() {
    let shop = shop();
    let (car, setup, mut view) = parts(&shop);
    view.joints_open.extend(["j_valve_m", "j_hose_m"].map(str::to_owned));
    let layout = Layout::of(car, &stands(&shop), &setup.kit, &Seen::of(&view));
    let valve = usize::from(car.assembly.part_index("valve_m").unwrap());
    assert_ne!(layout.aside[valve], Vec3::ZERO);
    assert!(layout.middles[valve].distance(places::TROLLEY) < 0.6);
    let port = car.assembly.port("valve_m.store").unwrap();
    assert!(layout.ports[&port].at.distance(layout.middles[valve]) < 0.12);
}

#[test]
fn the_room_is_light_enough_to_draw() {
    let shop = shop();
    let all = build::standing().into_iter().chain(build::of_job(&shop, &stands(&shop), Default::default()));
    let triangles: usize = all.map(|made| made.triangles()).sum();
    assert!(triangles < 200_000, "{triangles} triangles");
    assert!(20_000 < triangles, "{triangles} triangles: something is not built");
}

#[test]
fn the_tools_on_the_board_can_be_pointed_at_from_the_desk_too() {
    let shop = shop();
    let (_, setup, _) = parts(&shop);
    let seen = spots(&shop, Station::Desk);
    let tools = seen.keys().filter(|t| matches!(t, Thing::Instrument(_))).count();
    assert!(3 * setup.kit.len() <= 4 * tools, "{tools} of {}", setup.kit.len());
}

#[test]
fn marks_keep_near_their_things_where_everything_is_shown_larger() {
    let shop = shop();
    let (car, setup, view) = parts(&shop);
    let stands = stands(&shop);
    let layout = Layout::of(car, &stands, &setup.kit, &Seen::of(&view));
    // What is left of 640 × 360 points: 1280 × 720 pixels at 200 %.
    let scene = Rect::from_min_size(Pos2::new(36.0, 31.0), egui::vec2(604.0, 186.0));
    let apart = super::anchors::apart(2.0);
    assert!(24.0 <= 2.0 * apart, "{apart} points are {} pixels", 2.0 * apart);
    for at in STATIONS {
        let eye = station(at);
        let lens = Lens::new(&eye, eye.fov(eye.distance, scene.width() / scene.height()), scene);
        let all = things(at, car, &setup.kit, &setup.spares, &view, (&stands, &layout));
        let seen = spread(&all, &lens, scene, apart);
        assert!(2 * seen.len() >= all.len().min(12), "{at:?}: {} of {}", seen.len(), all.len());
        for (thing, place) in &all {
            let (Some(mark), Some(home)) = (seen.get(thing), lens.see(*place)) else { continue };
            let edge = scene.shrink(15.0).clamp(home);
            assert!(mark.distance(edge) < 3.0 * apart, "{at:?}: {thing:?} is {:.0} off", mark.distance(edge));
        }
    }
}

#[test]
fn both_instruments_on_the_wall_have_the_face_they_have_in_the_tray() {
    use sim_core::instrument::InstrumentKind;
    let shop = shop();
    let (_, setup, _) = parts(&shop);
    for (card, c) in setup.kit.iter().enumerate() {
        if !matches!(c.kind, InstrumentKind::Barometer { .. } | InstrumentKind::WallThermometer { .. }) {
            continue;
        }
        let printed = crate::ui::dial::printed::Printed::of(&c.kind, Default::default()).expect("a dial");
        assert!(printed.fits_round(), "the tray draws the {} round", c.name);
        let made = build::of_job(&shop, &stands(&shop), Default::default());
        let made = made.iter().find(|m| m.thing == Some(Thing::Instrument(card as u16))).unwrap();
        let needle = |m: &super::made::Made| matches!(m.moves, Some(super::moves::Moves::Needle { .. }));
        assert!(made.parts.iter().any(needle), "the {} has no needle in the room", c.name);
    }
}

#[test]
fn a_needle_stands_at_the_ends_of_its_scale() {
    use super::moves::needle_angle;
    let low = needle_angle(-100.0, -100.0, 0.0);
    let high = needle_angle(0.0, -100.0, 0.0);
    assert!((low - 2.356).abs() < 1e-3 && (high + 2.356).abs() < 1e-3);
    assert!(needle_angle(-50.0, -100.0, 0.0).abs() < 1e-3);
}

/// The panels with the marks of the room, as the app writes them at the end of each frame.
fn workshop(script: &str) -> Harness<'static, Stage> {
    let prefs = front::prefs::Prefs { reduced_motion: true, ..Default::default() };
    let ui = Ui { page: Page::Workshop, prefs, ..Ui::default() };
    let stage = Stage { shop: stage::shop(script), words: stage::words("en"), ui, asked: Vec::new() };
    let mut themed = false;
    let mut harness = Harness::builder().with_size(egui::vec2(1280.0, 720.0)).build_ui_state(
        move |root: &mut egui::Ui, stage: &mut Stage| {
            if !std::mem::replace(&mut themed, true) {
                theme::apply(root.ctx(), 1.0);
            }
            stage.asked.extend(stage.ui.asks.iter().cloned());
            stage.ui.save_prefs = false;
            between_frames(&mut stage.shop, &mut stage.ui, 0.0);
            ui::draw(root, &stage.shop, &stage.words, &mut stage.ui);
            let at = stage.ui.eye;
            let room = stage.ui.scene.and_then(|scene| {
                let setup = stage.shop.session()?.workshop().setup();
                let stands = stands(&stage.shop);
                let layout = Layout::of(&setup.car, &stands, &setup.kit, &Seen::of(stage.shop.view()?));
                let eye = station(at);
                let lens = Lens::new(&eye, eye.fov(eye.distance, scene.width() / scene.height()), scene);
                let apart = super::anchors::apart(stage.ui.prefs.scale);
                marks(&stage.shop, (&stands, &layout), at, &lens, scene, apart)
            });
            stage.ui.marks.set_room(room);
        },
        stage,
    );
    harness.run_steps(4);
    harness
}

/// Everything with the name of a thing of the job that can be clicked inside the room.
fn seen_in_the_room(harness: &Harness<'_, Stage>) -> BTreeSet<String> {
    let stage = harness.state();
    let scene = stage.ui.scene.expect("the room is drawn");
    let names: BTreeSet<String> = front::hands::all_things(&stage.shop)
        .into_iter()
        .map(|thing| stage.words.name(&stage.shop, thing))
        .collect();
    let nodes = harness.root().children_recursive();
    nodes
        .filter(|n| n.accesskit_node().role() == egui::accesskit::Role::Button)
        .filter(|n| scene.contains(n.rect().center()))
        .filter_map(|n| n.accesskit_node().label())
        .filter(|name| names.contains(name))
        .collect()
}

#[test]
fn inv_after_every_other_view_the_room_holds_its_own_things_and_no_others() {
    let mut harness = workshop("cover scuttle off\ncover splash_guard off\nfit gauge tee.2");
    let own = |stage: &Stage| -> BTreeSet<String> {
        let (car, session) = (stage.shop.car().unwrap(), stage.shop.session().unwrap());
        let setup = session.workshop().setup();
        let view = stage.shop.view().unwrap();
        let stands = stands(&stage.shop);
        let layout = Layout::of(car, &stands, &setup.kit, &Seen::of(view));
        let all = things(stage.ui.eye, car, &setup.kit, &setup.spares, view, (&stands, &layout));
        all.into_iter().map(|(thing, _)| stage.words.name(&stage.shop, thing)).collect()
    };
    let others: [(&str, fn(&mut Ui)); 6] = [
        ("the line diagram", |ui| ui.middle = Middle::Diagram),
        ("both", |ui| ui.middle = Middle::Both),
        ("the settings", |ui| ui.page = Page::Settings),
        ("the mark sheet", |ui| ui.page = Page::MarkSheet),
        ("the front desk", |ui| ui.page = Page::FrontDesk),
        ("another place", |ui| ui.eye = Station::Bay),
    ];
    for at in STATIONS {
        for (name, go) in others {
            go(&mut harness.state_mut().ui);
            harness.run_steps(4);
            let ui = &mut harness.state_mut().ui;
            (ui.page, ui.middle, ui.eye) = (Page::Workshop, Middle::Room, at);
            // From the very first frame on.
            for frame in 0..4 {
                harness.run_steps(1);
                let (seen, own) = (seen_in_the_room(&harness), own(harness.state()));
                let ghosts: Vec<&String> = seen.difference(&own).collect();
                assert!(ghosts.is_empty(), "{at:?} after {name}, frame {frame}: {ghosts:?}");
                assert!(frame < 2 || !seen.is_empty(), "{at:?} after {name}: nothing is there");
            }
        }
    }
}

#[test]
fn what_the_line_diagram_has_shown_cannot_be_clicked_from_the_drivers_seat() {
    let mut harness = workshop("");
    press(&mut harness, &[egui::Key::L]);
    let pump = place(&harness.state().shop, "pump").unwrap();
    let there = harness.state().ui.marks.get(pump).expect("the pump is on the line diagram");
    press(&mut harness, &[egui::Key::L, egui::Key::L, egui::Key::Num2]);
    assert_eq!((harness.state().ui.middle, harness.state().ui.eye), (Middle::Room, Station::Cab));
    assert_eq!(harness.state().ui.marks.get(pump), None, "it is not seen from here");
    for pressed in [true, false] {
        harness.event(egui::Event::PointerMoved(there));
        harness.event(egui::Event::PointerButton {
            pos: there,
            button: egui::PointerButton::Primary,
            pressed,
            modifiers: egui::Modifiers::NONE,
        });
        harness.run_steps(2);
    }
    let menu = harness.state().ui.menu.as_ref().map(|menu| menu.thing);
    assert_ne!(menu, Some(pump));
    assert!(harness.query_by_label("Replace it").is_none());
}

#[test]
fn every_place_on_the_shelf_has_its_number() {
    let shop = shop();
    let (car, setup, _) = parts(&shop);
    let shelf = build::spares::shelf(car, &stands(&shop), &setup.spares);
    assert!(!shelf.is_empty() && shelf.len() == setup.spares.len());
    let mut numbers = Vec::new();
    for (i, made) in shelf.iter().enumerate() {
        assert_eq!(made.thing, Some(Thing::Spare(i as u16)));
        // Ink below the board's edge, where the tag hangs, before anything else there.
        let at_tag = |v: &&Vec3| v.y < 0.0;
        let all = |mat: Option<Mat>| -> Vec<Vec3> {
            let geos = made.sculpt.made_of.iter().filter(|(m, _)| mat.is_none_or(|mat| mat == *m));
            geos.flat_map(|(_, geo)| geo.positions.iter().filter(at_tag).copied()).collect()
        };
        let (ink, tag) = (all(Some(Mat::Ink)), all(None));
        let front = |corners: &[Vec3]| corners.iter().map(|v| v.z).fold(f32::NEG_INFINITY, f32::max);
        assert!(!ink.is_empty(), "place {} has no number", i + 1);
        // Strokes of a used part's tag stand a millimetre before it.
        assert!(front(&tag) - front(&ink) < 0.002, "the number of place {} is behind its tag", i + 1);
        let (low, high) =
            ink.iter().fold((f32::INFINITY, f32::NEG_INFINITY), |(l, h), v| (l.min(v.y), h.max(v.y)));
        assert!(0.03 < high - low, "the number of place {} is {} m high", i + 1, high - low);
        numbers.push(ink.iter().map(|v| (v.x.to_bits(), v.y.to_bits())).collect::<Vec<_>>());
    }
    let different: BTreeSet<_> = numbers.iter().collect();
    assert_eq!(different.len(), numbers.len(), "no two places have the same number");
}
