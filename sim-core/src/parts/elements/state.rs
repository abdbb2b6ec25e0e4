//! State variables of a part.

use super::lag::Lag;
use super::quantity::{Bounds, Quantity};

/// What a variable is in a part from the shelf.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Start {
    /// The temperature of the room.
    Room,
    /// The air of the day.
    Day,
    /// A number of the part's own.
    At(f64),
}

/// A state variable of a part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct State {
    /// What it is; a part has one of each at most.
    pub is: Quantity,
    /// What bounds it.
    pub bounds: Bounds,
    /// What it is in a part from the shelf.
    pub start: Start,
    /// What it follows with a lag; nothing where a machine of the part moves it.
    pub follows: Option<Lag>,
}
