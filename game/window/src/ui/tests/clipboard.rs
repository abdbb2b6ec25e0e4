//! The clipboard: reading papers, noting, finding, handing back.

use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use sim_core::action::Action;

use super::bench::{Bench, click, press, window, window_with};
use crate::shown::Page;
use crate::ui::clipboard::Leaf;
use front::prefs::PressureUnit;

/// A reading of the barometer waits to be noted.
fn read(lang: &str) -> Harness<'static, Bench> {
    window_with(Page::Workshop, lang, (1280.0, 720.0), |bench| {
        bench.shop.play("read barometer\nhum").unwrap();
        bench.ui.clipboard.show_leaf(Leaf::Notebook, &bench.shop);
    })
}

fn notes(window: &Harness<'_, Bench>) -> Vec<(u32, Option<sim_core::action::Written>, Option<String>)> {
    window.state().shop.view().unwrap().notes.clone()
}

/// Types into the field of the note form.
fn type_number(window: &mut Harness<'_, Bench>, text: &str) {
    let label = window.state().words.say("note-what");
    window.get_by_label(&label).type_text(text);
    window.run_steps(2);
}

#[test]
fn a_number_is_noted_as_it_is_typed() {
    for lang in ["en", "de"] {
        let mut window = read(lang);
        let label = window.state().words.say_with("notebook-note-number", &[("n", 1.into())]);
        click(&mut window, &label);
        type_number(&mut window, "100,2 kPa");
        press(&mut window, "note-do");
        let notes = notes(&window);
        assert_eq!(notes.len(), 1, "{lang}");
        let written = notes[0].1.clone().unwrap();
        assert_eq!((written.value, written.unit.as_str()), (100.2, "kPa"));
    }
}

#[test]
fn a_number_is_noted_by_clicks_alone() {
    for (lang, mark) in [("en", "decimal point"), ("de", "Komma")] {
        let mut window = read(lang);
        let label = window.state().words.say_with("notebook-note-number", &[("n", 1.into())]);
        click(&mut window, &label);
        // A slip is taken back; the sign goes on and off.
        for key in ["1", "0", "9"] {
            click(&mut window, key);
        }
        press(&mut window, "pad-back");
        for key in ["0", mark, "2"] {
            click(&mut window, key);
        }
        press(&mut window, "pad-sign");
        press(&mut window, "pad-sign");
        click(&mut window, "kPa");
        press(&mut window, "note-do");
        let notes = notes(&window);
        assert_eq!(notes.len(), 1, "{lang}");
        let written = notes[0].1.clone().unwrap();
        assert_eq!((written.value, written.unit.as_str()), (100.2, "kPa"));
    }
}

#[test]
fn a_pressure_in_another_unit_reaches_the_notebook_in_kpa() {
    let mut window = read("en");
    window.state_mut().ui.prefs.pressure = PressureUnit::Mbar;
    click(&mut window, "Note reading 1 …");
    type_number(&mut window, "1002");
    window.get_by_label("mbar").click();
    window.run_steps(2);
    press(&mut window, "note-do");
    let written = notes(&window)[0].1.clone().unwrap();
    assert_eq!((written.value, written.unit.as_str()), (100.2, "kPa"));
    window.get_by_label("1002 mbar");
}

#[test]
fn a_number_without_a_unit_is_not_noted() {
    let mut window = read("en");
    click(&mut window, "Note reading 1 …");
    type_number(&mut window, "100");
    press(&mut window, "note-do");
    assert!(notes(&window).is_empty());
    window.get_by_label_contains("A number without its unit");
}

#[test]
fn a_sense_is_noted_with_one_click_and_the_reading_shows_no_number() {
    let mut window = read("en");
    assert!(window.query_by_label_contains("kPa").is_none(), "the barometer's number is for the eye");
    click(&mut window, "Note reading 2");
    assert_eq!(notes(&window), vec![(2, None, None)]);
}

#[test]
fn a_slip_of_the_pen_is_struck_out_and_written_anew() {
    let mut window = read("en");
    for (button, typed) in [("Note reading 1 …", "10.02 kPa"), ("Write reading 1 anew …", "100.2 kPa")] {
        click(&mut window, button);
        type_number(&mut window, typed);
        press(&mut window, "note-do");
    }
    let written: Vec<f64> = notes(&window).into_iter().map(|(_, w, _)| w.unwrap().value).collect();
    assert_eq!(written, [10.02, 100.2], "the attempt keeps both");
    window.get_by_label("struck out");
    // What was sensed can be put to another line, or to none.
    click(&mut window, "Note reading 2");
    click(&mut window, "Write reading 2 anew …");
    press(&mut window, "note-do");
    assert_eq!(notes(&window).last(), Some(&(2, None, None)));
    assert_eq!(notes(&window).len(), 4);
}

#[test]
fn the_tray_opens_the_form_for_a_reading() {
    let mut window = read("en");
    window.state_mut().ui.clipboard.show_leaf_for_test(Leaf::Card);
    window.state_mut().ui.clipboard.note_reading(1);
    window.run_steps(3);
    let label = window.state().words.say("note-what");
    assert!(window.get_by_label(&label).is_focused());
}

#[test]
fn the_data_sheet_must_be_fetched_once() {
    let mut window = window(Page::Workshop, "en");
    press(&mut window, "leaf-sheet");
    assert!(window.query_by_label_contains("Relay in the hand").is_none());
    press(&mut window, "sheet-read");
    window.get_by_label_contains("Relay in the hand");
    let steps = &window.state().shop.session().unwrap().attempt().steps;
    assert!(steps.iter().any(|s| s.action == Action::ReadSheet && s.refused.is_none()));
}

#[test]
fn a_finding_is_asked_about_once_more() {
    for (lang, unit, sure) in [
        ("en", "check valve towards the engine", "80 % sure"),
        ("de", "Rückschlagventil zum Motor", "zu 80 % sicher"),
    ] {
        let mut window = window(Page::Workshop, lang);
        press(&mut window, "leaf-finding");
        click(&mut window, unit);
        click(&mut window, sure);
        press(&mut window, "finding-do");
        assert!(window.state().shop.view().unwrap().findings.is_empty());
        press(&mut window, "finding-confirm-do");
        let findings = window.state().shop.view().unwrap().findings.clone();
        assert_eq!(findings, vec![(vec!["valve_m".to_owned()], 0.8)], "{lang}");
    }
}

#[test]
fn handing_back_says_what_is_missing_and_asks() {
    let mut window = read("en");
    press(&mut window, "bar-hand-back");
    assert!(window.state().ui.asks.is_empty());
    window.get_by_label_contains("No finding is given");
    window.get_by_label_contains("2 readings were looked at but not noted");
    window.get_by_label_contains("Release checks open");
    press(&mut window, "back-not");
    assert!(window.query_by_label("Hand the car back?").is_none());
    press(&mut window, "bar-hand-back");
    press(&mut window, "back-do");
    let steps = window.state().shop.session().unwrap().attempt().steps.clone();
    let last = steps.last().unwrap();
    assert_eq!(last.action, Action::HandBack);
    assert!(last.refused.is_some(), "without a finding the workshop refuses");
}

#[test]
fn a_suspicion_is_written_down() {
    let mut window = window(Page::Workshop, "en");
    press(&mut window, "leaf-suspicions");
    let label = window.state().words.say("suspicion-prompt");
    window.get_by_label(&label).focus();
    window.run_steps(2);
    window.get_by_label(&label).type_text("the valve towards the engine");
    window.run_steps(2);
    press(&mut window, "suspicion-do");
    window.get_by_label("the valve towards the engine");
}

#[test]
fn the_clipboard_folds_away_by_key_and_button() {
    let mut window = window(Page::Workshop, "en");
    window.key_press(egui::Key::C);
    window.run_steps(2);
    assert_eq!(window.state().ui.clipboard.folded, Some(true));
    press(&mut window, "clipboard-open");
    assert_eq!(window.state().ui.clipboard.folded, Some(false));
    press(&mut window, "clipboard-fold");
    assert_eq!(window.state().ui.clipboard.folded, Some(true));
}

/// Where the school fixes how sure a finding is, the leaf says so and asks nothing.
#[test]
fn a_fixed_certainty_is_said_and_not_asked_for() {
    for lang in ["en", "de"] {
        let mut window = window_with(Page::Workshop, lang, (1280.0, 720.0), |bench| {
            let mut job = (**bench.shop.job().unwrap()).clone();
            job.certainty = Some(0.60);
            bench.shop.rehearse_as(job, assess::attempt::Seed(1));
        });
        press(&mut window, "leaf-finding");
        let words = &window.state().words;
        let say = |key: &str, n: &str| words.say_with(key, &[("percent", format!("{n} %").into())]);
        window.get_by_label(&say("finding-fixed", "60"));
        for n in ["40", "60", "80", "95"] {
            assert!(window.query_by_label(&say("finding-sure", n)).is_none(), "{lang} {n}");
        }
        let unit = words.unit(&window.state().shop, "valve_m");
        click(&mut window, &unit);
        press(&mut window, "finding-do");
        press(&mut window, "finding-confirm-do");
        assert_eq!(
            window.state().shop.view().unwrap().findings,
            [(vec!["valve_m".to_owned()], 0.60)],
            "{lang}"
        );
    }
}
