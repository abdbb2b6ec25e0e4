//! Whole jobs in the real window, from the card to the mark, by mouse alone and by keyboard alone, in the room
//! and in the line diagram. What is done is what the job's reference script says; how, the menus say.

use std::path::Path;
use std::time::Duration;

use assess::attempt::Attempt;
use assess::pack::Library;
use assess::play;
use assess::play::script;
use assess::words as plain;
use front::ask::Ask;
use front::places::Places;
use front::shop::Shop;
use front::words::Words;
use sim_core::action::{Action, Written};

use super::keyboard::Keyboard;
use super::mouse::Mouse;
use super::plan::{self, Step};
use super::screen::{Screen, skipped};

/// What fills the middle of the window.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Where {
    Room,
    Diagram,
}

/// A way to use the window.
pub(crate) trait Hands {
    /// Brings room or line diagram into the middle.
    fn turn_to(&mut self, screen: &mut Screen, words: &Words, to: Where);
    /// Goes through menus.
    fn follow(&mut self, screen: &mut Screen, shop: &Shop, words: &Words, steps: &[Step]);
    /// Writes a reading down.
    fn note(
        &mut self,
        screen: &mut Screen,
        shop: &Shop,
        words: &Words,
        reading: u32,
        written: Option<&Written>,
        record: Option<&str>,
    );
    /// Gives a finding.
    fn finding(&mut self, screen: &mut Screen, shop: &Shop, words: &Words, units: &[String], certainty: f64);
    /// Hands the car back.
    fn hand_back(&mut self, screen: &mut Screen, words: &Words);
}

fn root() -> &'static Path {
    Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/.."))
}

/// How long the window may mark.
const MARKING: Duration = Duration::from_secs(300);

/// Seed of the truth: any would do.
const SEED: &str = "5eed";

fn do_job(job: &str, mut hands: impl Hands, place: Where) {
    let library = Library::open(root()).unwrap();
    let checked = library.job(job).unwrap();
    let words = Words::open(root(), &["en".to_owned()]).unwrap();
    let places = Places { data: Some(root().to_owned()), attempts: Some(std::env::temp_dir()) };
    let mut shop = Shop::open(&places).unwrap();
    shop.rehearse(job, SEED.parse().unwrap()).unwrap();
    let mut screen = Screen::open(job, SEED);
    hands.turn_to(&mut screen, &words, place);
    let text = checked.reference.clone().unwrap();
    let mut done = 0;
    for line in text.lines() {
        let session = shop.session().unwrap();
        let names = script::vocabulary(session);
        let said = plain::parse(line.trim(), &names, &session.view().readings).unwrap();
        let Some(wanted) = script::action_of(session, &said) else { continue };
        // No button sets a meter to what it is set to.
        if let Action::SetMeter { instrument, mode } = &wanted
            && session.view().instruments.iter().any(|i| i.id == *instrument && i.mode == Some(*mode))
        {
            continue;
        }
        let action = match &wanted {
            Action::Note { reading, written, record } => {
                hands.note(&mut screen, &shop, &words, *reading, written.as_ref(), record.as_deref());
                wanted.clone()
            }
            Action::Finding { units, certainty } => {
                hands.finding(&mut screen, &shop, &words, units, *certainty);
                wanted.clone()
            }
            Action::HandBack => {
                hands.hand_back(&mut screen, &words);
                wanted.clone()
            }
            other => {
                let (steps, action) = plan::way(&shop, &words, other, place)
                    .unwrap_or_else(|| panic!("no menu leads to {other:?} ({line})"));
                println!("{line}: {steps:?}");
                hands.follow(&mut screen, &shop, &words, &steps);
                action
            }
        };
        done += 1;
        screen.until_actions(done, line);
        shop.carry_out([Ask::Do(action)]);
    }
    let attempt = Attempt::read(&screen.attempt).unwrap();
    assert!(attempt.is_finished());
    // The window's attempt replays bit for bit, and is the one that was done beside it.
    play::replay(&attempt, &checked).unwrap();
    let beside = shop.session().unwrap().attempt();
    for (ours, theirs) in attempt.steps.iter().zip(&beside.steps) {
        assert_eq!(ours.action, theirs.action, "action {} of the window", ours.n);
        assert_eq!(ours.start, theirs.start, "action {} of the window: {:?}", ours.n, ours.action);
        assert_eq!(ours.digest, theirs.digest, "action {} of the window: {:?}", ours.n, ours.action);
        assert_eq!(ours.refused, theirs.refused, "action {} of the window", ours.n);
    }
    let sheet = assess::marks::mark(&attempt, &checked).unwrap();
    let sheet = sheet.sheet(&assess::locale::Locale::built_in(), assess::locale::Naming::Typed);
    let marks = sheet.marks.unwrap();
    println!("{job}: {:.1} of 100", marks.total);
    assert!(marks.competent, "{job} in the window: {:.1}", marks.total);
    // The window has marked it too, on a machine that was busy with the same here, and says the same.
    let verdict = format!("✔ {}", words.say("mark-competent"));
    let points = format!("{} ", words.number(marks.total, 1));
    screen.until_within(MARKING, &format!("{verdict:?} and {points:?}"), |nodes| {
        nodes.iter().any(|n| n.name == verdict) && nodes.iter().any(|n| n.name.starts_with(&points))
    });
}

const HUM: &str = "first-shift/hum-at-the-lights";
const FLAT: &str = "first-shift/flat-after-the-weekend";
const BREAD: &str = "first-shift/before-the-bread-round";

#[test]
#[ignore = "minutes long: cargo test -p game --test window -- --ignored (CI does)"]
fn at_the_car_hum_at_the_lights_by_mouse() {
    if !skipped(1) {
        do_job(HUM, Mouse::default(), Where::Room);
    }
}

#[test]
#[ignore = "minutes long: cargo test -p game --test window -- --ignored (CI does)"]
fn on_the_sheet_hum_at_the_lights_by_keyboard() {
    if !skipped(1) {
        do_job(HUM, Keyboard, Where::Diagram);
    }
}

#[test]
#[ignore = "minutes long: cargo test -p game --test window -- --ignored (CI does)"]
fn on_the_sheet_flat_after_the_weekend_by_mouse() {
    if !skipped(1) {
        do_job(FLAT, Mouse::default(), Where::Diagram);
    }
}

#[test]
#[ignore = "minutes long: cargo test -p game --test window -- --ignored (CI does)"]
fn at_the_car_flat_after_the_weekend_by_keyboard() {
    if !skipped(1) {
        do_job(FLAT, Keyboard, Where::Room);
    }
}

#[test]
#[ignore = "minutes long: cargo test -p game --test window -- --ignored (CI does)"]
fn at_another_car_before_the_bread_round_by_mouse() {
    if !skipped(1) {
        do_job(BREAD, Mouse::default(), Where::Room);
    }
}

#[test]
#[ignore = "minutes long: cargo test -p game --test window -- --ignored (CI does)"]
fn on_another_sheet_before_the_bread_round_by_keyboard() {
    if !skipped(1) {
        do_job(BREAD, Keyboard, Where::Diagram);
    }
}
