//! The grid of a sheet.

use egui::{Pos2, Vec2, pos2, vec2};

/// A grid step, points at the size the diagram opens at: two steps are the least target.
pub(super) const STEP: f32 = 12.0;

/// A place of the grid in sheet points.
#[must_use]
pub(super) fn grid((x, y): (i32, i32)) -> Pos2 {
    pos2(x as f32 * STEP, y as f32 * STEP)
}

/// A vector turned by quarters clockwise.
#[must_use]
pub(super) fn turned(v: Vec2, turn: u8) -> Vec2 {
    match turn % 4 {
        0 => v,
        1 => vec2(-v.y, v.x),
        2 => -v,
        _ => vec2(v.y, -v.x),
    }
}
