//! What stands on a sheet: symbols and their ports.

use egui::{Pos2, Rect, Vec2};
use sim_core::assembly::PortRef;

/// A port as drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spot {
    /// The port.
    pub port: PortRef,
    /// Where.
    pub at: Pos2,
    /// Which way its line leaves, a unit step.
    pub out: Vec2,
}

/// A symbol as placed.
#[derive(Clone, Debug, PartialEq)]
pub struct Body {
    /// The part.
    pub part: u16,
    /// Index into [`Diagram::places`].
    pub place: usize,
    /// Middle.
    pub at: Pos2,
    /// Quarter turns clockwise.
    pub turn: u8,
    /// What the symbol covers, its ports' stubs left out.
    pub rect: Rect,
    /// What is hit to pick the part.
    pub pick: Rect,
}
