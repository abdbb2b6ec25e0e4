//! Sizes and languages changed again and again: what was drawn for the last one is given back.

use super::screen::{Screen, skipped};

/// Clicks a button by its name.
fn press(screen: &mut Screen, name: &str) {
    let node = screen.find(name);
    let [left, top, right, bottom] = node.at;
    screen.click_at((left + right) * 0.5, (top + bottom) * 0.5);
}

/// Sizes at which all of them are in sight.
const SIZES: [&str; 4] = ["125 %", "150 %", "125 %", "100 %"];
/// How often every size is chosen.
const ROUNDS: u32 = 6;

#[test]
fn sizes_chosen_again_and_again_take_no_more_memory() {
    if skipped(1) {
        return;
    }
    let mut screen = Screen::open("first-shift/hum-at-the-lights", "1");
    press(&mut screen, "Settings");
    let mut after_first = None;
    for round in 1..=ROUNDS {
        for size in SIZES {
            press(&mut screen, size);
        }
        let memory = screen.memory_mb();
        println!("sizes: round {round}, {memory:?} MB");
        after_first = after_first.or(memory);
    }
    if let (Some(first), Some(last)) = (after_first, screen.memory_mb()) {
        // A twentieth and 20 MB: what the allocator keeps.
        assert!(last < first * 1.05 + 20.0, "{first} MB after every size once, {last} MB at the end");
    }
}
