//! Laws that must always hold, whatever the numbers.

pub(crate) mod busy_day;
mod cars;
mod circuit;
mod coefficients;
mod dice;
mod flow_slopes;
mod flow_symmetry;
mod jobs;
mod part_slopes;
mod physics_page;
mod random_actions;
mod side_by_side;
mod specs;
mod ticks;
mod unsound;
