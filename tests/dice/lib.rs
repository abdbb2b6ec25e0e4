//! Random numbers of the tests: one generator for all, and one place where its seed comes from.
//!
//! A test that searches draws a new seed each time ([`seed`]) and prints it; `PINHOLE_TEST_SEED` brings it back. A
//! test that goes through numbered cases takes [`seeds`]. Where the draws only have to be varied and always the
//! same, a fixed seed does ([`Dice::of`]).

use std::ops::Range;

use rand_core::Rng as _;
use rand_pcg::Pcg64;

/// What brings a seed back, or asks for more of them.
pub const VARIABLE: &str = "PINHOLE_TEST_SEED";

/// A die with a seed: PCG XSL RR 128/64 (O'Neill 2014), the same on every machine.
#[derive(Clone, Debug)]
pub struct Dice(Pcg64);

impl Dice {
    /// A die of a seed; another `stream` gives other numbers of the same seed.
    #[must_use]
    pub fn new(seed: u128, stream: u128) -> Self {
        Self(Pcg64::new(seed, stream))
    }

    /// A die of a numbered case.
    #[must_use]
    pub fn of(case: u64) -> Self {
        Self::new(u128::from(case), 1)
    }

    /// 64 random bits.
    pub fn bits(&mut self) -> u64 {
        self.0.next_u64()
    }

    /// From 0 up to 1, in steps of 2⁻⁵³.
    pub fn unit(&mut self) -> f64 {
        (self.bits() >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// From 0 up to `n`, `n` left out; 0 when `n` is 0.
    pub fn below(&mut self, n: usize) -> usize {
        ((self.unit() * n as f64) as usize).min(n.saturating_sub(1))
    }

    /// True once in `n` times.
    pub fn one_in(&mut self, n: usize) -> bool {
        self.below(n) == 0
    }

    /// One of a list.
    ///
    /// # Panics
    /// The list is empty.
    pub fn pick<'a, T>(&mut self, of: &'a [T]) -> &'a T {
        &of[self.below(of.len())]
    }
}

/// A seed for what a test draws: the one asked for (hexadecimal, as it was printed), else a new one; printed.
///
/// # Panics
/// What is asked for is no seed, or the system has no random numbers.
#[must_use]
pub fn seed() -> u128 {
    let fresh = || {
        let mut bytes = [0; 16];
        getrandom::fill(&mut bytes).unwrap_or_else(|e| panic!("no random numbers from the system: {e}"));
        u128::from_le_bytes(bytes)
    };
    told(asked_seed().unwrap_or_else(fresh))
}

/// The seed asked for, else `usual`, for what must not differ from run to run unasked; printed.
///
/// # Panics
/// What is asked for is no seed.
#[must_use]
pub fn seed_or(usual: u128) -> u128 {
    told(asked_seed().unwrap_or(usual))
}

fn told(seed: u128) -> u128 {
    println!("{VARIABLE}={seed:032x}");
    seed
}

fn asked_seed() -> Option<u128> {
    let text = asked()?;
    Some(one(&text).unwrap_or_else(|| panic!("{VARIABLE}={text}: not a hexadecimal number")))
}

/// The numbered cases of a test: those asked for (`7d0..18e70` or one alone, hexadecimal), `None` without.
///
/// # Panics
/// What is asked for is neither.
#[must_use]
pub fn seeds() -> Option<Range<u64>> {
    let text = asked()?;
    let range = range(&text);
    Some(
        range.unwrap_or_else(|| {
            panic!("{VARIABLE}={text}: neither a hexadecimal number nor two of them, a..b")
        }),
    )
}

fn asked() -> Option<String> {
    std::env::var(VARIABLE).ok()
}

fn one(text: &str) -> Option<u128> {
    u128::from_str_radix(text, 16).ok()
}

fn range(text: &str) -> Option<Range<u64>> {
    let number = |text: &str| u64::try_from(one(text)?).ok();
    match text.split_once("..") {
        Some((first, last)) => Some(number(first)?..number(last)?),
        None => number(text).and_then(|n| Some(n..n.checked_add(1)?)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_same_seed_gives_the_same_numbers_and_another_stream_others() {
        let draw = |mut dice: Dice| (0..8).map(|_| dice.bits()).collect::<Vec<_>>();
        assert_eq!(draw(Dice::of(7)), draw(Dice::new(7, 1)));
        assert_ne!(draw(Dice::of(7)), draw(Dice::of(8)));
        assert_ne!(draw(Dice::of(7)), draw(Dice::new(7, 2)));
    }

    #[test]
    fn draws_stay_inside_and_reach_every_side() {
        let mut dice = Dice::of(1);
        let mut sides = [0; 6];
        for _ in 0..6_000 {
            let u = dice.unit();
            assert!((0.0..1.0).contains(&u));
            sides[dice.below(6)] += 1;
        }
        // A fair die is within five standard deviations, 29 each, of a thousand.
        assert!(sides.iter().all(|n| (855..1145).contains(n)), "{sides:?}");
        assert_eq!((dice.below(0), dice.below(1)), (0, 0));
    }

    #[test]
    fn seeds_are_read_as_they_are_printed() {
        assert_eq!(one("000000000000000000000000deadbeef"), Some(0xdead_beef));
        assert_eq!(range("7d0..18e70"), Some(2_000..102_000));
        assert_eq!(range("11"), Some(17..18));
        for wrong in ["", "..", "1..", "x", "-1", "1..g", "ffffffffffffffff", "10000000000000000..2"] {
            assert_eq!(range(wrong), None, "{wrong}");
        }
    }
}
