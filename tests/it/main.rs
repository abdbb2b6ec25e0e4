//! One test binary: folders by subject.
//!
//! The first syllable of a test's name tells the kind of truth: `val_` a published value, `reg_` our own
//! or a computed number, `inv_` a law that must always hold.
#![expect(clippy::unwrap_used, reason = "a test that panics has failed, and that is what it should do")]

mod bench;
mod cars;
mod fuzz;
mod house;
mod languages;
mod laws;
mod marks;
mod parts;
mod plan;
mod planner;
mod published;
mod rig;
mod told;
mod words;
mod workshop;
