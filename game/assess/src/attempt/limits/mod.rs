//! What the numbers of an attempt can be, each by its own kind: checked before anything is done again, so that no
//! file can make a replay run for ever.
//!
//! * An action that was done lasts no longer than such an action can ([`longest`]); one that was refused, not at all.
//! * Between two actions the window's clock may run on by itself, but not for days ([`LONGEST_PAUSE`],
//!   [`LONGEST_FREE`]).
//! * All of an attempt together has a budget ([`LONGEST_ATTEMPT`], [`MOST_ACTIONS`]).
//!
//! Whoever works keeps a little under the budget ([`room_for`]), so that the car can always be handed back.

mod actions;
mod beyond;
mod lines;
mod names;
mod quantity;
mod tally;

use sim_core::units::TICKS_PER_SECOND;

pub use actions::{action, free_until, longest, room_for};
pub use beyond::{Beyond, Bound};
pub(super) use lines::{header, hint, mark, override_line, repair, sitting};
pub use names::{Unknown, against};
pub use quantity::Quantity;
pub(crate) use tally::Tally;

const HOUR: u64 = 3600 * TICKS_PER_SECOND;

/// Actions in an attempt at most; a thorough job takes a hundred.
pub const MOST_ACTIONS: u32 = 5_000;
/// Simulated time of an attempt at most, ticks: ten days.
pub const LONGEST_ATTEMPT: u64 = 240 * HOUR;
/// How long the clock may run on between two actions, ticks: twelve hours.
pub const LONGEST_PAUSE: u64 = 12 * HOUR;
/// How long it may run on by itself in all of an attempt, ticks: a day.
pub const LONGEST_FREE: u64 = 24 * HOUR;

/// Actions and time kept for setting the car right and handing it back.
const KEPT_ACTIONS: u32 = 100;
const KEPT_TIME: u64 = 24 * HOUR;

/// Sittings, and repairs, in a file.
const MOST_SITTINGS: usize = 5_000;
/// Most hints in an attempt: more than any pack gives.
const MOST_HINTS: usize = 100;
/// Overrides of a mark in a file.
pub(super) const MOST_OVERRIDES: usize = 100;
/// Longest name of a thing, bytes.
const LONGEST_NAME: usize = 200;
/// Longest text that a person writes down, bytes.
pub const LONGEST_TEXT: usize = 4_000;
/// Longest list in an action.
const LONGEST_LIST: usize = 200;
/// Breaches of safety in one action at most.
const MOST_BREACHES: usize = 100;
