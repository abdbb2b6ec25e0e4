//! Nothing moves under a pointer, and nothing that was ticked or written is lost by a click beside it.

use egui::Rect;
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT as _, Queryable as _};

use super::bench::{Bench, carry_out, click, nodes, press, window_with};
use crate::shown::Page;

/// Everything that can be clicked, with its place.
fn places(window: &Harness<'_, Bench>, of: impl Fn(&str) -> bool) -> Vec<(String, Rect)> {
    nodes(window)
        .iter()
        .filter(|n| n.accesskit_node().data().supports_action(egui::accesskit::Action::Click))
        .filter_map(|n| Some((n.accesskit_node().label()?, n.rect())))
        .filter(|(name, _)| of(name))
        .collect()
}

/// Nothing of what was there has gone elsewhere.
fn assert_steady(before: &[(String, Rect)], after: &[(String, Rect)], what: &str) {
    assert!(!before.is_empty());
    for (name, rect) in before {
        let there = after.iter().filter(|(n, _)| n == name).any(|(_, r)| (r.min - rect.min).length() < 0.6);
        assert!(there, "{what}: {name:?} was at {rect:?}; now {:?}", after.iter().find(|(n, _)| n == name));
    }
}

#[test]
fn the_list_of_the_finding_stands_still_and_not_found_keeps_the_ticks() {
    for lang in ["en", "de"] {
        let mut window = window_with(Page::Workshop, lang, (1280.0, 720.0), |_| {});
        press(&mut window, "leaf-finding");
        let say = |window: &Harness<'_, Bench>, key: &str| window.state().words.say(key);
        let (unit, other) = {
            let Bench { shop, words, .. } = window.state();
            (words.unit(shop, "valve_m"), words.unit(shop, "pump"))
        };
        let unknown = say(&window, "finding-unknown");
        let sure = window.state().words.say_with("finding-sure", &[("percent", "80 %".into())]);
        let all = |_: &str| true;
        let steady = |window: &mut Harness<'_, Bench>, names: &[&String]| {
            let before = places(window, all);
            for name in names {
                window.get_all_by_label(name).last().unwrap().click();
                carry_out(window);
                assert_steady(&before, &places(window, all), &format!("{lang}, after {name:?}"));
            }
        };
        for unit in [&unit, &other] {
            window.get_all_by_label(unit).last().unwrap().scroll_to_me();
            window.run_steps(10);
            steady(&mut window, &[unit]);
        }
        // Scrolled to the end, as whoever gives a finding has it.
        let end = say(&window, "bar-hand-back");
        window.get_all_by_label(&end).last().unwrap().scroll_to_me();
        window.run_steps(10);
        steady(&mut window, &[&sure, &unknown, &unknown, &sure, &unknown, &sure]);
        // Not found was taken and untaken; the ticks are there as before.
        click(&mut window, &unknown);
        window.get_by_label(&say(&window, "finding-kept"));
        click(&mut window, &unknown);
        press(&mut window, "finding-do");
        press(&mut window, "finding-confirm-do");
        let findings = &window.state().shop.view().unwrap().findings;
        let [(units, certainty)] = findings.as_slice() else { panic!("{findings:?}") };
        assert_eq!(units.len(), 2, "{lang}: {units:?}");
        assert!((certainty - 0.8).abs() < 1e-9);
    }
}

#[test]
fn everything_inside_keeps_the_ticks_too() {
    let mut window = window_with(Page::Workshop, "en", (1280.0, 720.0), |_| {});
    press(&mut window, "leaf-finding");
    click(&mut window, "check valve towards the engine");
    press(&mut window, "finding-sound");
    press(&mut window, "finding-sound");
    click(&mut window, "95 % sure");
    press(&mut window, "finding-do");
    press(&mut window, "finding-confirm-do");
    assert_eq!(window.state().shop.view().unwrap().findings, [(vec!["valve_m".to_owned()], 0.95)]);
}

#[test]
fn a_tool_in_the_hand_moves_nothing() {
    for (lang, size) in [("en", (1280.0, 720.0)), ("de", (1280.0, 720.0)), ("de", (640.0, 360.0))] {
        let mut window = window_with(Page::Workshop, lang, size, |_| {});
        let scene = window.state().ui.scene.unwrap();
        let before = places(&window, |_| true);
        let card = {
            let kit = &window.state().shop.session().unwrap().workshop().setup().kit;
            kit.iter().position(|c| c.id == "meter").unwrap() as u16
        };
        window.state_mut().ui.carrying = Some(front::hands::Carry {
            card,
            placed: vec![("v_ohm".to_owned(), "wire_plus.a".to_owned())],
            left: vec!["com".to_owned()],
        });
        window.run_steps(4);
        assert_eq!(window.state().ui.scene.unwrap(), scene, "{lang} {size:?}: the room");
        assert_steady(&before, &places(&window, |_| true), &format!("{lang} {size:?}"));
        window.get_by_label_contains(&window.state().words.say("carry-back"));
    }
}

#[test]
fn a_reading_moves_nothing_on_the_tray() {
    let mut window = window_with(Page::Workshop, "en", (1280.0, 720.0), |bench| {
        bench.shop.play("cover scuttle off\nfit gauge tee.2\nfit lamp battery.plus battery.minus").unwrap();
    });
    let before =
        places(&window, |name| name.contains("gauge") || name.contains("lamp") || name.contains("In use"));
    let read = "tee-in vacuum gauge: Read it";
    window.get_by_label(read).click();
    carry_out(&mut window);
    window.get_by_label_contains("is held; let it go");
    assert_steady(&before, &places(&window, |_| true), "read");
    window.get_by_label("Reading 1 is held; let it go").click();
    carry_out(&mut window);
    assert_steady(&before, &places(&window, |_| true), "let go");
}

#[test]
fn the_board_stands_still_when_a_tool_is_used() {
    let mut window = window_with(Page::Workshop, "en", (1280.0, 720.0), |_| {});
    let names: Vec<String> = {
        let Bench { shop, words, .. } = window.state();
        let kit = &shop.session().unwrap().workshop().setup().kit;
        kit.iter().map(|c| words.instrument(shop, &c.id)).collect()
    };
    let before = places(&window, |name| names.iter().any(|n| n == name));
    window.state_mut().shop.play("cover scuttle off\nfit gauge tee.2").unwrap();
    window.run_steps(2);
    carry_out(&mut window);
    press(&mut window, "tray-board");
    assert_steady(&before, &places(&window, |_| true), "a tool is used");
}
