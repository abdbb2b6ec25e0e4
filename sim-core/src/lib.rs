//! The core of pinhole: a pure function of (assembly, seed, actions).
//!
//! It knows no file, no clock, no thread, no window. Time is a tick count; every transcendental
//! function comes from `libm`; nothing depends on hash or thread order. Same input, same bits.
#![warn(missing_docs)]
// A kind, a law, an action, a condition that is forgotten must not compile.
#![cfg_attr(not(test), deny(clippy::wildcard_enum_match_arm, clippy::match_wildcard_for_single_variants))]

pub mod action;
pub mod air;
pub mod assembly;
pub mod car;
pub mod circuit;
pub mod coefficients;
pub mod digest;
pub mod flow;
pub mod instrument;
pub mod lanes;
pub mod math;
pub mod notice;
pub mod observe;
pub mod params;
pub mod parts;
pub mod reach;
pub mod units;
pub mod workshop;
pub mod world;

pub use workshop::Opened;
