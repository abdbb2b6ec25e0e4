//! Shapes made in code: lathe, sweep, bevelled box, plate.

mod boxes;
mod geo;
mod lathe;
mod lines;
mod plate;

use bevy::math::Vec2;

pub(super) use self::boxes::bevel_box;
pub(super) use self::geo::Geo;
pub(super) use self::lathe::{cylinder, hexagon, lathe, ring};
pub(super) use self::lines::{curve, hose, ribbon, sweep};
pub(super) use self::plate::plate;

/// Profile corners blunter than this are shaded smooth (cosine of 35°).
const SMOOTH_COS: f32 = 0.82;

/// Normal of a side at its corner with `other`: that of both where the corner is blunt.
fn smooth(own: Vec2, other: Vec2) -> Vec2 {
    if SMOOTH_COS < other.dot(own) { (own + other).normalize_or(own) } else { own }
}
