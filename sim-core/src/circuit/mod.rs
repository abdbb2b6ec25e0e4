//! The circuit: an assembly compiled to volumes, restrictions, a nodal network and heat nodes, and the
//! clock that steps it.
//!
//! Three rooms, each on top of the one before: [`solve`] holds the equations, their slopes and one step of the
//! method and knows neither parts nor joints; [`compile`] makes equations of what the parts of an assembly say
//! of themselves ([`crate::parts::elements`]) and knows no kind of part; [`run`] steps one circuit or many, switches,
//! and answers questions.

mod compile;
mod run;
mod solve;

pub use run::{Balances, Circuit, Event, Fault, Pace, Size, ensemble, export};
pub use solve::{Coefficients, Hand, Inputs, RODAS3};
