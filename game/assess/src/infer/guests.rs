//! Cars that come in, and who brings them.
//!
//! The marker simulates them ([`Simulated`]). To try out which cars are worth having, they may as well come from a table of
//! cars that were run before: everything else is the same code.

use sim_core::world::World;

use crate::infer::hypotheses::{Hypothesis, world};
use crate::infer::rows::{self, Car};
use crate::pack::job::Job;

/// A car that is asked for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Asked {
    /// What is wrong with it; of *other* there are no cars.
    pub hypothesis: Hypothesis,
    /// Number of the draw that its tolerances come from.
    pub draw: usize,
    /// Severity of its (first) fault, share of the range.
    pub at: f64,
}

/// A car that came in.
#[derive(Clone, Debug)]
pub struct Guest {
    /// The car.
    pub car: Car,
    /// Number of the draw that its tolerances come from.
    pub draw: usize,
    /// Severity, share of the range.
    pub at: f64,
}

/// Who brings cars in.
pub trait Guests {
    /// Brings in a car for each that is asked for, in the same order.
    fn bring_in(&mut self, asked: &[Asked]) -> Vec<Guest>;
}

/// Cars as they are drawn.
#[derive(Clone, Copy, Debug)]
pub struct Simulated<'a>(pub &'a Job);

impl Guests for Simulated<'_> {
    fn bring_in(&mut self, asked: &[Asked]) -> Vec<Guest> {
        let of = |asked: &Asked| world(&self.0.car, &self.0.kit, asked.hypothesis, asked.draw, asked.at);
        let worlds: Vec<World> = asked.iter().map(of).collect();
        let came = rows::arrive(self.0, &worlds).into_iter().zip(asked);
        came.map(|(car, asked)| Guest { car, draw: asked.draw, at: asked.at }).collect()
    }
}
