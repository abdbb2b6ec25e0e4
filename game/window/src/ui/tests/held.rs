//! What is being read stands still, and time with it, until it is noted, struck out or let go; and no reading is
//! lost by the next.

use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT as _, Queryable as _};
use sim_core::action::Action;
use sim_core::observe::ShownValue;

use super::bench::{Bench, carry_out, click, press, window_with};
use crate::flow::between_frames;
use crate::shown::Page;
use crate::ui::clipboard::Leaf;
use front::ask::{Ask, Pace};

/// An empty store, a gauge at it, and the pump at work: the needle moves.
const MOVES: &str = "chocks on\ncover scuttle off\npedal pump 12 200\nfit gauge tee.2\nkey on";

fn at(script: &str) -> Harness<'static, Bench> {
    window_with(Page::Workshop, "en", (1280.0, 720.0), |bench| {
        bench.shop.play(script).unwrap();
        bench.ui.clipboard.show_leaf(Leaf::Notebook, &bench.shop);
    })
}

/// A second on the wall clock goes by, in frames.
fn a_second(window: &mut Harness<'_, Bench>) {
    for _ in 0..5 {
        let bench = window.state_mut();
        between_frames(&mut bench.shop, &mut bench.ui, 0.2);
        window.run_steps(1);
    }
}

/// Where the gauge's needle is drawn, kPa.
fn needle(window: &Harness<'_, Bench>) -> f64 {
    let view = window.state().shop.view().unwrap();
    view.instruments.iter().find(|i| i.id == "gauge").and_then(|i| i.value).unwrap()
}

fn tick(window: &Harness<'_, Bench>) -> u64 {
    window.state().shop.view().unwrap().tick.0
}

/// What a listener hears of every face of the gauge on the screen.
fn heard(window: &Harness<'_, Bench>) -> Vec<String> {
    let faces = window.get_all_by_label_contains("tee-in vacuum gauge, four-way piece: branch 2: dial");
    faces.filter_map(|n| n.accesskit_node().data().description().map(str::to_owned)).collect()
}

#[test]
fn a_needle_that_moves_stands_still_from_the_reading_until_it_is_noted() {
    let mut window = at(MOVES);
    window.state_mut().ui.ask(Ask::Pace(Pace::Live));
    carry_out(&mut window);
    let before = needle(&window);
    a_second(&mut window);
    assert!((needle(&window) - before).abs() > 1.0, "it moves: {before} {}", needle(&window));

    window.get_by_label("tee-in vacuum gauge: Read it").click();
    carry_out(&mut window);
    let (reading, number) = {
        let shop = &window.state().shop;
        let reading = shop.view().unwrap().readings.last().unwrap().clone();
        let number = shop.session().unwrap().workshop().scale(&reading.what).number(reading.shown).unwrap();
        (reading, number)
    };
    let stood = tick(&window);
    for _ in 0..3 {
        a_second(&mut window);
        assert_eq!(needle(&window), number, "the dial shows what the attempt has");
        assert_eq!(tick(&window), stood, "time stands");
    }
    window.get_by_label("Reading 1 is held; let it go");
    window.get_by_label("Time stands: reading 1 is held");

    // The form shows the same face; what is seen there is what counts.
    click(&mut window, "Note reading 1 …");
    a_second(&mut window);
    let faces = heard(&window);
    assert_eq!(faces.len(), 2, "in the tray and in the form: {faces:?}");
    assert_eq!(faces[0], faces[1]);
    assert_eq!((needle(&window), tick(&window)), (number, stood));
    let field = window.state().words.say("note-what");
    window.get_by_label(&field).type_text(&format!("{number} kPa"));
    window.run_steps(2);
    press(&mut window, "note-do");
    let step = window.state().shop.session().unwrap().attempt().steps.last().unwrap().clone();
    assert!(matches!(step.action, Action::Note { reading: 1, .. }), "{step:?}");
    assert_eq!(step.read_right, Some(true), "{reading:?}");

    // Then both go on, at the pace they had.
    assert_eq!(window.state().shop.pace(), Pace::Live);
    let (noted, before) = (tick(&window), needle(&window));
    a_second(&mut window);
    assert!(noted < tick(&window));
    assert_ne!(needle(&window), before);
}

#[test]
fn a_reading_is_let_go_by_hand_by_escape_by_running_time_and_by_the_next_deed() {
    let lets: [(&str, fn(&mut Harness<'static, Bench>)); 4] = [
        ("by hand", |w| click(w, "Reading 1 is held; let it go")),
        ("by escape", |w| w.key_press(egui::Key::Escape)),
        ("by running time", |w| w.state_mut().ui.ask(Ask::Pace(Pace::Ten))),
        ("by the next deed", |w| w.state_mut().ui.ask(Ask::Do(Action::Wait { s: 2 }))),
    ];
    for (how, let_go) in lets {
        let mut window = at(&format!("{MOVES}\nread gauge"));
        assert_eq!(window.state().shop.held(), Some(1), "{how}");
        let_go(&mut window);
        carry_out(&mut window);
        assert_eq!(window.state().shop.held(), None, "{how}");
        assert_eq!(window.state().shop.frozen(), None, "{how}");
        window.state_mut().ui.ask(Ask::Pace(Pace::Live));
        carry_out(&mut window);
        let before = tick(&window);
        a_second(&mut window);
        assert!(before < tick(&window), "{how}");
        // It is not lost: it waits in the notebook with its face.
        window.get_by_label("Note reading 1 …");
    }
}

#[test]
fn an_open_form_holds_an_older_reading_and_keeps_what_is_written() {
    let mut window = at(&format!("{MOVES}\nread gauge\nwait 3\nread gauge\nwait 1"));
    assert_eq!(window.state().shop.held(), None);
    click(&mut window, "Note reading 1 …");
    let shop = &window.state().shop;
    let first = shop.view().unwrap().readings[0].clone();
    let number = shop.session().unwrap().workshop().scale(&first.what).number(first.shown).unwrap();
    assert_eq!(shop.held(), Some(1));
    assert_eq!(needle(&window), number, "the older reading, not what the dial shows by now");
    let field = window.state().words.say("note-what");
    window.get_by_label(&field).type_text("-58");
    window.run_steps(2);
    press(&mut window, "form-cancel");
    assert_eq!(window.state().shop.held(), None, "left is let go");
    window.get_by_label("begun: -58");
    click(&mut window, "Note reading 2 …");
    click(&mut window, "Note reading 1 …");
    let value = window.get_all_by_label(&field).filter_map(|n| n.accesskit_node().value()).next_back();
    assert_eq!(value.as_deref(), Some("-58"), "what was written stands there again");
}

#[test]
fn meters_lamps_and_stopwatches_are_held_as_they_were_read() {
    let scripts = [
        ("meter", "fit meter battery.plus battery.minus\nmeter volt\nread meter"),
        ("lamp", "fit lamp battery.plus battery.minus\nwait 2\nread lamp"),
        ("watch", "chocks on\npedal pump 12 200\nkey on\ntime run 60"),
        ("barometer", "read barometer"),
    ];
    for (id, script) in scripts {
        let mut window = at(script);
        let shop = &window.state().shop;
        let view = shop.view().unwrap();
        let reading = view.readings.last().unwrap().clone();
        let card = view.instruments.iter().position(|i| i.id == id).unwrap();
        assert_eq!(shop.frozen(), Some(card), "{id}");
        assert_eq!(view.instruments[card].shown, reading.shown, "{id}");
        assert_ne!(reading.shown, ShownValue::Blank, "{id}");
        window.state_mut().ui.ask(Ask::Do(Action::Wait { s: 1 }));
        carry_out(&mut window);
        assert_eq!(window.state().shop.frozen(), None, "{id}");
    }
}

/// Two runs of the pump, timed one after the other and neither noted.
const TWO_RUNS: &str = "chocks on\npedal pump 12 200\nkey on\ntime run 60\nkey off\npedal pump 6 200\nkey on\ntime run 60\nwait 1";

#[test]
fn every_stopwatch_run_stays_in_the_notebook_until_it_is_noted_or_struck_out() {
    let mut window = at(TWO_RUNS);
    let times: Vec<String> = {
        let shop = &window.state().shop;
        let workshop = shop.session().unwrap().workshop();
        let view = shop.view().unwrap();
        assert_eq!(view.readings.len(), 2);
        let scale = |i: usize| workshop.scale(&view.readings[i].what);
        (0..2)
            .map(|i| {
                super::super::dial::display::characters(view.readings[i].shown, Some(&scale(i))).unwrap()
            })
            .collect()
    };
    assert_ne!(times[0], times[1], "two runs of their own");
    for (i, time) in times.iter().enumerate() {
        click(&mut window, &format!("Note reading {} …", i + 1));
        let faces: Vec<String> = window
            .get_all_by_label_contains("stopwatch, ")
            .filter_map(|n| n.accesskit_node().label())
            .collect();
        assert!(faces.iter().all(|f| f.contains(&format!("{time} s"))), "{faces:?} for {time}");
        press(&mut window, "form-cancel");
    }
    // Struck out it waits no more; nothing moves by it, and it can be taken back.
    window.get_by_label("Strike reading 1 out").scroll_to_me();
    window.run_steps(10);
    let place = window.get_by_label("Strike reading 1 out").rect();
    window.get_by_label("Strike reading 1 out").click();
    carry_out(&mut window);
    let back = window.get_by_label("Take back that reading 1 is struck out").rect();
    assert!((back.left_top() - place.left_top()).length() < 2.0, "{place:?} {back:?}");
    press(&mut window, "bar-hand-back");
    window.get_by_label_contains("One reading was looked at but not noted");
    press(&mut window, "back-not");
    click(&mut window, "Take back that reading 1 is struck out");
    press(&mut window, "bar-hand-back");
    window.get_by_label_contains("2 readings were looked at but not noted");
    press(&mut window, "back-not");
}

#[test]
fn readings_that_wait_are_there_when_the_attempt_is_carried_on() {
    let mut window = window_with(Page::FrontDesk, "en", (1280.0, 720.0), |bench| {
        bench.shop.begin(super::bench::JOB, None, None).unwrap();
        bench.shop.play(TWO_RUNS).unwrap();
        bench.shop.carry_out([Ask::Leave]);
        let path = bench.shop.unfinished()[0].path.clone();
        bench.ui.ask(Ask::CarryOn(path));
    });
    carry_out(&mut window);
    press(&mut window, "leaf-notebook");
    for n in [1, 2] {
        window.get_by_label(&format!("Note reading {n} …"));
        window.get_by_label(&format!("Strike reading {n} out"));
    }
}
