//! Random clicks and keys in the real window: no panic, no stuck state, memory flat.
//!
//! Twenty minutes are too long for every run: `PINHOLE_SOAK_S` says how many seconds; without it, twenty.
//! `PINHOLE_TEST_SEED` chooses the hands, `PINHOLE_SOAK_PICTURES` a folder for a picture of every moment at
//! which memory stood clearly higher than ever before.

use std::time::{Duration, Instant};

use dice::Dice;

use super::screen::{SIZE, Screen, skipped};

const KEYS: [&str; 34] = [
    "1", "2", "3", "4", "5", "6", "9", "a", "b", "c", "e", "f", "h", "k", "l", "m", "n", "o", "p", "r", "s",
    "t", "u", "w", "Tab", "Return", "Escape", "space", "Down", "Up", "Left", "Right", "F1", "F8",
];

/// How much more memory than ever before is told, with the hand that brought it, MB.
const RISE_MB: f64 = 8.0;

#[test]
fn random_hands_break_nothing() {
    if skipped(1) {
        return;
    }
    let seconds = std::env::var("PINHOLE_SOAK_S").ok().and_then(|s| s.parse().ok()).unwrap_or(20);
    println!("soak: {seconds} s");
    let mut dice = Dice::new(dice::seed_or(1), 1);
    let open = || Screen::open("first-shift/hum-at-the-lights", "1").that_may_be_left();
    let mut screen = open();
    let mut left = 0u32;
    let began = Instant::now();
    let mut opened = began;
    let mut early: Option<f64> = None;
    let mut highest = 0.0f64;
    let mut hands = 0u32;
    let mut next_line = Duration::from_secs(30);
    while began.elapsed() < Duration::from_secs(seconds) {
        let mut place = || (dice.below(SIZE.0 as usize).to_string(), dice.below(SIZE.1 as usize).to_string());
        let ((x, y), (x2, y2)) = (place(), place());
        let button = if dice.one_in(2) { "1" } else { "3" };
        let wheel = if button == "1" { "4" } else { "5" };
        let key = *dice.pick(&KEYS);
        let hand = match dice.below(10) {
            0..5 => vec!["mousemove", &x, &y, "click", "1"],
            5 => vec!["mousemove", &x, &y, "click", wheel],
            6 => vec!["mousemove", &x, &y, "mousedown", button, "mousemove", &x2, &y2, "mouseup", button],
            _ => vec!["key", key],
        };
        if hand[0] == "key" {
            screen.key(key);
        } else {
            screen.hand(&hand);
        }
        hands += 1;
        // Ends the test when the program has ended, unless hands found the way out: then it is opened again.
        screen.nodes();
        if screen.has_ended() {
            screen = open();
            left += 1;
            (opened, early, highest) = (Instant::now(), None, 0.0);
        }
        let memory = screen.memory_mb().unwrap_or_default();
        if highest + RISE_MB < memory {
            println!("soak: {memory:.0} MB after {hand:?}, hand {hands}");
            if let Some(folder) = std::env::var_os("PINHOLE_SOAK_PICTURES") {
                screen.picture(&std::path::Path::new(&folder).join(format!("{memory:04.0}.png")));
            }
            highest = memory;
        }
        if next_line < began.elapsed() {
            next_line += Duration::from_secs(30);
            println!(
                "soak: {:.0} s, {hands} hands, {memory:.0} MB, {:?}",
                began.elapsed().as_secs_f64(),
                screen.told().held
            );
        }
        if early.is_none() && Duration::from_secs(seconds / 4) < opened.elapsed() {
            early = screen.memory_mb();
        }
    }
    let late = screen.memory_mb();
    println!(
        "soak: {hands} hands, left and opened again {left} times, memory {early:?} MB after a quarter of that time, {late:?} MB at the end"
    );
    if screen.has_ended() {
        screen = open();
    }
    // It still answers: a tree newer than a resize of nothing, within the patience of `until`.
    screen.key("Escape");
    screen.until("an answer", |nodes| !nodes.is_empty());
    if let (Some(early), Some(late)) = (early, late) {
        // A tenth and 40 MB of slack: caches of glyphs and pictures fill up once.
        assert!(late < early * 1.1 + 40.0, "{early} MB grew to {late} MB");
    }
}
