//! Nothing is done in silence, nothing is refused without its reason, and the strip shows how things stand.

use egui_kittest::kittest::Queryable as _;

use super::bench::{Bench, carry_out, window_with};
use crate::shown::{Middle, Page};

/// A window in which these words have been done, and what was said, sentence by sentence.
fn told(lang: &str, script: &str) -> Vec<String> {
    let window = window_with(Page::Workshop, lang, (1280.0, 900.0), |bench| bench.shop.play(script).unwrap());
    let Bench { shop, words, ui, .. } = window.state();
    super::super::remarks::sentences(shop, words, ui.prefs.pressure)
}

#[test]
fn a_line_that_is_not_filled_says_which_condition_was_not_met_with_its_numbers() {
    // The fuse is pushed in at the gauge, so the pump starts and stops by itself; then half a minute passes.
    let script = "chocks on\npedal pump 12 150\ncover scuttle off\nfit handpump tee.2\npull fuse\nkey on\n\
                  read handpump\npush fuse\nwait until pump stops 60\nwait 36\nread handpump\n\
                  note -60 kPa for cut-out\nkey off\nread handpump\nnote -60 kPa for cut-out\n\
                  read handpump\nnote -60 kPa for battery";
    for (lang, late, off, other) in [
        (
            "en",
            "Not entered for Pump cuts out: within 5 s of the pump's switching; it was 36 s",
            "Not entered for Pump cuts out: the key must be on; it was off",
            "the reading must come from a multimeter across the posts of the battery",
        ),
        (
            "de",
            "höchstens 5 s nach dem Schalten der Pumpe; es waren 36 s",
            "die Zündung muss an sein; sie war aus",
            "abgelesen werden muss: ein Multimeter an beiden Polen der Batterie",
        ),
    ] {
        let said = told(lang, script);
        for sentence in [late, off, other] {
            assert!(said.iter().any(|s| s.contains(sentence)), "{sentence:?} is not in {said:#?}");
        }
    }
}

#[test]
fn every_deed_says_what_came_of_it() {
    let script = "card\nsheet\nchocks on\nkey on\nkey off\npedal pump 12 200\npedal press 250\npedal release\n\
                  cover scuttle off\nopen j_booster\nplug booster.vacuum\nunplug booster.vacuum\nmake j_booster\n\
                  clamp hose_m.a\nunclamp hose_m.a\nfit gauge tee.2\nunfit gauge\n\
                  fit meter battery.plus battery.minus\nmeter volt\npull fuse\npush fuse\nkey on\nengine idle\n\
                  engine stop\nkey off\nswap valve_m valve_m_new\nwait 30\nread barometer\nnote 100 kPa\n\
                  suspect the valve\nfinding valve_m sure 0.80";
    let english = [
        "The job card is read.",
        "The chocks are at the wheels.",
        "Ignition on.",
        "Ignition off.",
        "Pedal pressed 12 times with 200 N.",
        "Your foot holds the pedal with 250 N; it binds you to the driver's seat.",
        "The pedal is free.",
        "Taken off: scuttle panel over the booster.",
        "Open now: joint: ",
        "Plug in: brake booster",
        "Plug out: brake booster",
        "Joined again: joint: ",
        "Clamp on: ",
        "Clamp off: ",
        "Connected: tee-in vacuum gauge – four-way piece: branch 2.",
        "Taken off: tee-in vacuum gauge.",
        "multimeter: set to volts.",
        "Pulled out: ",
        "Pushed in again: ",
        "The engine has started: idles, warm.",
        "The engine stands.",
        "Replaced: check valve towards the engine. Built in: ",
        "Waited 30 s.",
        "Noted, reading 1: ",
        "The thought is written down.",
        "The finding is written down.",
    ];
    let said = told("en", script);
    for sentence in english {
        assert!(said.iter().any(|s| s.contains(sentence)), "{sentence:?} is not in {said:#?}");
    }
    // In German the same, and where one walked.
    let said = told("de", script);
    for sentence in [
        "Zündung an.",
        "Der Fuß hält das Pedal mit 250 N",
        "Abklemmzange ab: ",
        "Der Motor ist angesprungen: Leerlauf, warm.",
        "Ersetzt: Rückschlagventil zum Motor.",
        "Gegangen: Motorraum.",
    ] {
        assert!(said.iter().any(|s| s.contains(sentence)), "{sentence:?} is not in {said:#?}");
    }
}

#[test]
fn the_strip_shows_how_things_stand_at_the_same_place_in_every_view() {
    for (lang, scale) in [("en", 1.0), ("de", 1.0), ("en", 2.0), ("de", 2.0)] {
        let size = (1280.0 / scale, 720.0 / scale);
        let mut window = window_with(Page::Workshop, lang, size, |_| {});
        let say = |w: &egui_kittest::Harness<'_, Bench>, name: &str, state: &str, n: &str| {
            let words = &w.state().words;
            let state = words.say_with(state, &[("n", n.to_owned().into())]);
            words.say_with("standing-item", &[("name", words.say(name).into()), ("state", state.into())])
        };
        let rest = [
            ("standing-key", "standing-off", ""),
            ("standing-engine", "standing-engine-stopped", ""),
            ("standing-pump", "standing-pump-silent", ""),
            ("standing-pedal", "standing-pedal-free", ""),
            ("standing-covers", "standing-covers-on", ""),
            ("standing-clamps", "standing-none", ""),
            ("standing-plugs", "standing-none", ""),
        ];
        let places: Vec<egui::Rect> = rest
            .iter()
            .map(|(name, state, n)| window.get_by_label(&say(&window, name, state, n)).rect())
            .collect();
        let whole = egui::Rect::from_min_size(egui::Pos2::ZERO, egui::vec2(size.0, size.1));
        let find = window.get_by_label(&window.state().words.say("carry-find")).rect();
        assert!(
            places.iter().all(|rect| rect.right() <= find.left()),
            "{lang} at {scale}: {places:?} {find:?}"
        );
        assert!(whole.contains_rect(find), "{lang} at {scale}: {find:?}");
        for rect in &places {
            assert!(whole.contains_rect(*rect), "{lang} at {scale}: {rect:?}");
            assert!(24.0 <= rect.width() && 24.0 <= rect.height(), "{lang} at {scale}: {rect:?}");
        }
        window
            .state_mut()
            .shop
            .play(
                "chocks on\ncover scuttle off\nopen j_booster\nplug booster.vacuum\nclamp hose_m.a\nkey on\n\
                 engine idle\npedal press 200",
            )
            .unwrap();
        window.run_steps(2);
        carry_out(&mut window);
        let now = [
            ("standing-key", "standing-on", ""),
            ("standing-engine", "standing-engine-idle", ""),
            ("standing-pump", "standing-pump-runs", ""),
            ("standing-pedal", "standing-pedal-foot", "200"),
            ("standing-covers", "standing-covers-off", "1"),
            ("standing-clamps", "standing-some", "1"),
            ("standing-plugs", "standing-some", "1"),
        ];
        for middle in [Middle::Room, Middle::Diagram, Middle::Both] {
            window.state_mut().ui.middle = middle;
            window.run_steps(3);
            for ((name, state, n), place) in now.iter().zip(&places) {
                if *name == "standing-pump" && !window.state().shop.view().unwrap().hum {
                    continue;
                }
                let rect = window.get_by_label(&say(&window, name, state, n)).rect();
                assert_eq!(rect, *place, "{lang} at {scale}, {middle:?}: {name}");
            }
        }
    }
}

#[test]
fn the_strip_lists_what_is_off_and_leads_to_it() {
    let mut window = window_with(Page::Workshop, "en", (1280.0, 720.0), |bench| {
        bench.shop.play("cover scuttle off\nclamp hose_m.a").unwrap();
    });
    window.get_by_label("Covers: 1 off").click();
    window.run_steps(3);
    window.get_by_label("scuttle panel over the booster …").click();
    window.run_steps(3);
    assert!(matches!(window.state().ui.menu.as_ref().map(|m| m.thing), Some(front::hands::Thing::Cover(_))));
    window.get_by_label("Refit it");
}
