//! What the readings of an attempt say about the car: hypotheses with their severities, Monte Carlo samples of everything
//! unknown, the likelihood of what was shown, and the belief that follows from it.

pub mod belief;
pub mod complaint;
pub mod draws;
pub mod evidence;
pub mod hypotheses;
pub mod joint_likelihood;
pub mod likelihood;
pub mod numeric;
