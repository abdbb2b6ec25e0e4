//! Front desk and settings.

use egui_kittest::kittest::Queryable as _;

use super::bench::{carry_out, click, press, window};
use crate::shown::Page;
use front::prefs::PressureUnit;

#[test]
fn the_first_job_has_the_focus_and_enter_begins_it() {
    let mut window = window(Page::FrontDesk, "en");
    let first = window.get_by_label_contains("It hums every minute at the lights");
    assert!(first.is_focused());
    window.key_press(egui::Key::Enter);
    carry_out(&mut window);
    assert_eq!(window.state().ui.page, Page::Workshop);
    let job = window.state().shop.job().unwrap().name();
    assert_eq!(job, "first-shift/hum-at-the-lights");
}

#[test]
fn a_job_is_begun_left_and_carried_on() {
    let mut window = window(Page::FrontDesk, "de");
    window.get_by_label_contains("Hartes Pedal beim ersten Tritt am Morgen").click();
    carry_out(&mut window);
    assert_eq!(window.state().shop.job().unwrap().id, "hard-first-press");
    press(&mut window, "bar-leave");
    // It asks first, and one can stay.
    assert_eq!(window.state().ui.page, Page::Workshop);
    press(&mut window, "leave-not");
    assert!(window.state().shop.job().is_some());
    press(&mut window, "bar-leave");
    press(&mut window, "leave-do");
    assert_eq!(window.state().ui.page, Page::FrontDesk);
    assert_eq!(window.state().shop.unfinished().len(), 1);
    window.get_by_label_contains("Fortsetzen: Hartes Pedal beim ersten Tritt am Morgen").click();
    carry_out(&mut window);
    assert_eq!(window.state().ui.page, Page::Workshop);
}

#[test]
fn trouble_with_an_attempt_is_shown_in_words() {
    let mut window = window(Page::FrontDesk, "en");
    let missing = std::path::PathBuf::from("no-such.attempt");
    window.state_mut().ui.ask(front::ask::Ask::CarryOn(missing));
    carry_out(&mut window);
    assert_eq!(window.state().ui.page, Page::FrontDesk);
    window.get_by_label("That did not work");
    window.get_by_label_contains("no-such.attempt");
}

#[test]
fn the_cautions_stand_on_the_front_desk() {
    for (lang, text) in [("en", "The vehicle maker's data"), ("de", "Angaben des Fahrzeugherstellers")] {
        window(Page::FrontDesk, lang).get_by_label_contains(text);
    }
}

#[test]
fn settings_change_at_once() {
    let mut window = window(Page::Settings, "en");
    click(&mut window, "mbar");
    assert_eq!(window.state().ui.prefs.pressure, PressureUnit::Mbar);
    click(&mut window, "150 %");
    assert!((window.state().ui.prefs.scale - 1.5).abs() < 1e-6);
    press(&mut window, "settings-motion-less");
    assert!(window.state().ui.prefs.reduced_motion);
    assert!(!window.state().ui.reload_words);
    click(&mut window, "Deutsch");
    assert_eq!(window.state().ui.prefs.language, "de");
    assert!(window.state().ui.reload_words);
    press(&mut window, "settings-back");
    assert_eq!(window.state().ui.page, Page::FrontDesk);
}
