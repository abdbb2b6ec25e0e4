//! A front wheel.

use bevy::math::Vec3;
use std::f32::consts::TAU;

use super::{CAR_X, HALF_W};
use crate::view3d::build::bits::bolt;
use crate::view3d::materials::{Mat, Sculpt};
use crate::view3d::places::WHEEL;
use crate::view3d::shapes::{Geo, cylinder, lathe};

pub(super) fn wheel(s: &mut Sculpt, side: f32) {
    let at = Vec3::new(CAR_X + side * (HALF_W - 0.10), WHEEL.y, WHEEL.z);
    let out = Vec3::X * side;
    let put = |g: Geo| g.along(out).at(at.x, at.y, at.z);
    let tyre = [
        (0.20, -0.085),
        (0.275, -0.095),
        (0.302, -0.08),
        (0.31, -0.04),
        (0.31, 0.04),
        (0.302, 0.08),
        (0.275, 0.095),
        (0.20, 0.085),
    ];
    s.add(Mat::Rubber, put(lathe(&tyre)));
    s.add(
        Mat::Cast,
        put(lathe(&[
            (0.0, 0.03),
            (0.05, 0.03),
            (0.10, 0.015),
            (0.17, 0.045),
            (0.19, 0.075),
            (0.205, 0.08),
            (0.205, 0.09),
            (0.20, 0.088),
        ])),
    );
    s.add(Mat::Iron, put(lathe(&[(0.0, -0.02), (0.14, -0.02), (0.14, 0.0), (0.0, 0.0)])));
    s.add(Mat::Steel, put(cylinder(0.032, 0.05, 0.006)));
    for i in 0..5 {
        let (sin, cos) = (i as f32 / 5.0 * TAU).sin_cos();
        let bolt_at = at + Vec3::new(side * 0.028, sin * 0.062, cos * 0.062);
        bolt(s, bolt_at, out, 0.011);
        let hole = Vec3::new(
            at.x + side * 0.034,
            at.y + (i as f32 / 5.0 * TAU + 0.6).sin() * 0.135,
            at.z + (i as f32 / 5.0 * TAU + 0.6).cos() * 0.135,
        );
        s.add(Mat::Iron, cylinder(0.026, 0.006, 0.001).along(out).at(hole.x, hole.y, hole.z));
    }
}
