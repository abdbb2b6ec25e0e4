//! Tests as technicians think in them, and what a row of them is as work in a car: its lines, its minutes.
//!
//! A test (set-up, stimulus, readings, undo) is data of the car (`assets/tests/<car>.ron`, checked by
//! [`crate::pack`]). Here it becomes actions in a car in which something stands already: what is set up is not set up
//! again, what the next test cannot have about is put away before it, and the end finds the car as it was. What it
//! costs is asked of the workshop itself, with a sound car in it: no table of minutes stands here.
//! Not here: what a test would tell (the belief), and so which test is next ([`crate::planner`]).

pub mod cost;
pub mod standing;
pub mod test;
pub mod work;
