//! Small things that many shapes have: bolts and nipples.

use bevy::math::Vec3;

use crate::view3d::materials::{Mat, Sculpt};
use crate::view3d::shapes::{cylinder, hexagon, lathe};

/// A bolt head looking along `out`.
pub(super) fn bolt(s: &mut Sculpt, at: Vec3, out: Vec3, size: f32) {
    s.add(Mat::Zinc, hexagon(size, size * 0.7).along(out).at(at.x, at.y, at.z));
    s.add(Mat::Zinc, cylinder(size * 1.35, size * 0.18, size * 0.05).along(out).at(at.x, at.y, at.z));
}

/// A barbed nipple whose mouth is at `at`.
pub(super) fn nipple(s: &mut Sculpt, at: Vec3, out: Vec3, radius: f32) {
    let r = radius;
    let barb = lathe(&[
        (r * 0.8, -0.026),
        (r * 0.8, -0.022),
        (r * 1.15, -0.02),
        (r * 0.85, -0.012),
        (r * 1.12, -0.010),
        (r * 0.85, -0.002),
        (r * 0.8, 0.0),
        (r * 0.5, 0.0),
        (r * 0.5, -0.01),
        (0.0, -0.01),
    ]);
    s.add(Mat::Nylon, barb.along(out).at(at.x, at.y, at.z));
}
