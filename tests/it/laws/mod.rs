//! Laws that must always hold, whatever the numbers.

mod flow_slopes;
mod flow_symmetry;
mod part_slopes;
mod ticks;
