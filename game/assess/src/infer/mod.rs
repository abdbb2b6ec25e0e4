//! What the readings of an attempt say about the car: hypotheses with their severities, Monte Carlo samples of everything
//! unknown, the likelihood of what was shown, and the belief that follows from it.

pub mod after;
pub mod belief;
pub mod chain;
mod closer;
pub mod complaint;
pub mod draws;
pub mod evidence;
pub mod expectation;
mod fitted;
pub mod forecast;
pub mod guests;
pub mod heard;
pub mod hypotheses;
pub mod likelihood;
pub mod line;
pub mod marginal;
pub mod modes;
pub mod numeric;
pub mod outlook;
mod pairs;
pub mod reading;
pub mod rows;
mod run;
pub mod table;
pub mod told;
