//! Fuzzers: files and words that were altered at random are refused with an error or loaded whole; nothing panics,
//! nothing runs for ever, memory stays small.
//!
//! `PINHOLE_FUZZ_CASES` sets how many cases all families share (2 000 by default, in the ordinary tests);
//! `PINHOLE_TEST_SEED` the seed, which is printed. `tests/fuzz.sh` runs many and prints the table.

mod attempts;
mod packs;
mod run;
mod typed;

use run::Family;

/// Cases of all families together.
fn cases() -> usize {
    match std::env::var("PINHOLE_FUZZ_CASES") {
        Ok(text) => text.parse().unwrap_or_else(|_| panic!("PINHOLE_FUZZ_CASES={text}: expected a number")),
        Err(_) => 2_000,
    }
}

/// So many per cent of all cases, at least one.
fn share(percent: usize) -> usize {
    (cases() * percent / 100).max(1)
}

#[test]
fn inv_flipped_bits_are_refused_or_harmless() {
    Family { name: "bit flips", cases: share(25) }.run(attempts::flipped);
}

#[test]
fn inv_truncated_files_are_refused_or_whole_as_far_as_they_go() {
    Family { name: "truncations", cases: share(10) }.run(attempts::cut);
}

#[test]
fn inv_files_altered_and_chained_anew_are_refused_or_replay() {
    Family { name: "re-chained", cases: share(25) }.run(attempts::rechained);
}

#[test]
fn inv_altered_data_files_are_refused_or_can_be_worked_with() {
    Family { name: "data files", cases: share(15) }.run(packs::altered);
}

#[test]
fn inv_whatever_is_typed_is_understood_or_refused() {
    Family { name: "typed words", cases: share(25) }.run(typed::line);
}
