//! The window killed at random moments: the file opens again, replays, and holds every action that was seen to be done.
//!
//! Slow, so only when asked for: `PINHOLE_KILLS=100 cargo test -p game --test window -- --ignored kills`, or
//! `tests/kills.sh`. `PINHOLE_TEST_SEED` chooses the moments.

use std::path::Path;
use std::time::Duration;

use assess::attempt::Attempt;
use assess::pack::Library;
use assess::play;
use assess::play::script;
use assess::words as plain;
use dice::Dice;
use front::ask::Ask;
use front::places::Places;
use front::shop::Shop;
use front::words::Words;

use super::jobs::{Hands as _, Where};
use super::keyboard::Keyboard;
use super::plan;
use super::screen::{Screen, skipped};

const JOB: &str = "first-shift/hum-at-the-lights";

/// What is done until it is killed.
const WORK: [&str; 6] = ["chocks on", "key on", "hum", "key off", "chocks off", "chocks on"];

/// The clock as it is shown.
fn shown_clock(screen: &mut Screen) -> Option<String> {
    screen.nodes().iter().find_map(|n| n.name.strip_prefix("workshop clock ").map(str::to_owned))
}

#[test]
#[ignore = "minutes: run by tests/kills.sh"]
fn kills_lose_no_action_that_was_seen() {
    if skipped(1) {
        return;
    }
    let kills: usize = std::env::var("PINHOLE_KILLS").ok().and_then(|n| n.parse().ok()).unwrap_or(3);
    let root = Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/.."));
    let job = Library::open(root).unwrap().job(JOB).unwrap();
    let words = Words::open(root, &["en".to_owned()]).unwrap();
    let places = Places { data: Some(root.to_owned()), attempts: Some(std::env::temp_dir()) };
    let seed = dice::seed_or(1);
    let mut dice = Dice::new(seed, 1);
    let (mut seen_all, mut kept_all, mut torn) = (0, 0, 0);
    for kill in 0..kills {
        let mut shop = Shop::open(&places).unwrap();
        shop.rehearse(JOB, "1".parse().unwrap()).unwrap();
        let mut screen = Screen::open(JOB, "1");
        let mut seen = 0;
        // So many actions are waited for; the next is under way when it is killed.
        let whole = dice.below(WORK.len() - 1);
        for (n, line) in WORK.iter().take(whole + 1).enumerate() {
            let session = shop.session().unwrap();
            let names = script::vocabulary(session);
            let said = plain::parse(line, &names, &session.view().readings).unwrap();
            let wanted = script::action_of(session, &said).unwrap();
            let (steps, action) = plan::way(&shop, &words, &wanted, Where::Room)
                .unwrap_or_else(|| panic!("no menu leads to {wanted:?}"));
            let before = shown_clock(&mut screen);
            Keyboard.follow(&mut screen, &shop, &words, &steps);
            shop.carry_out([Ask::Do(action)]);
            if n < whole {
                while shown_clock(&mut screen) == before {
                    std::thread::sleep(Duration::from_millis(20));
                }
                seen += 1;
            }
        }
        std::thread::sleep(Duration::from_millis(dice.below(60) as u64));
        let now = shown_clock(&mut screen);
        screen.kill();
        // Seen at the last moment?
        if shop.view().is_some_and(|v| now == Some(clock(v.tick))) {
            seen = whole + 1;
        }
        torn += usize::from(std::fs::read(&screen.attempt).unwrap().last() != Some(&b'\n'));
        let attempt = Attempt::read(&screen.attempt).unwrap_or_else(|e| panic!("kill {kill}: {e}"));
        let kept = attempt.steps.len();
        assert!(seen <= kept, "kill {kill}: {seen} actions seen, {kept} kept");
        play::replay(&attempt, &job).unwrap_or_else(|e| panic!("kill {kill}: {e}"));
        shop.carry_on(&screen.attempt).unwrap_or_else(|e| panic!("kill {kill}: {e}"));
        (seen_all, kept_all) = (seen_all + seen, kept_all + kept);
    }
    println!(
        "Window: {kills} kills, {seen_all} actions seen, {kept_all} kept, {torn} torn lines; all files reopen, no shown \
         action lost, seed {seed:x}"
    );
}

/// Time in the workshop, as the window shows it.
fn clock(tick: sim_core::units::Tick) -> String {
    window::ui::remarks::clock(tick)
}
