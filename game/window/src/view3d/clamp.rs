//! A hose clamp, on the board and on a hose.

use bevy::math::Vec3;

use super::materials::{Mat, Sculpt};
use super::shapes::{bevel_box, cylinder};

/// A hose clamp: two bars, a screw with a wing.
pub(super) fn clamp_shape(s: &mut Sculpt) {
    for x in [-0.014, 0.014] {
        s.add(Mat::Accent, bevel_box(0.010, 0.13, 0.016, 0.004).at(x, 0.0, 0.0));
    }
    s.add(Mat::Accent, bevel_box(0.038, 0.012, 0.016, 0.004).at(0.0, -0.062, 0.0));
    s.add(Mat::Steel, cylinder(0.004, 0.058, 0.001).along(Vec3::X).at(-0.022, 0.045, 0.0));
    s.add(Mat::Steel, bevel_box(0.005, 0.034, 0.010, 0.002).at(0.038, 0.045, 0.0));
}
