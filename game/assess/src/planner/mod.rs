//! Which tests to do, and what they take: the reference plan of a job, the test that would tell most now, par time.
//!
//! Every test of a job is tried in every car there could be ([`trials`]); what it would tell, given everything noted so far,
//! for the minutes that it adds, says which is next ([`next`]), also in the midst of somebody's attempt ([`hint`]); what a plan takes with the car's record is par ([`par`]).

pub mod hint;
pub mod next;
pub mod par;
pub mod trials;

pub use next::{Choice, Planner};
pub use trials::Trials;
