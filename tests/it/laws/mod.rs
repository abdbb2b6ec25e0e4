//! Laws that must always hold, whatever the numbers.

pub(crate) mod busy_day;
mod circuit;
mod flow_slopes;
mod flow_symmetry;
mod part_slopes;
mod ticks;
