//! What every body has round the engine: inner wings, members, radiator.

use bevy::math::Vec3;

use super::{CAR_X, HALF_W};
use crate::view3d::build::bits::bolt;
use crate::view3d::materials::{Mat, Sculpt};
use crate::view3d::shapes::{bevel_box, curve, hose, lathe, ring, sweep};

/// Inner wing with the tower of the spring strut, and the flange that the wing is bolted to.
pub(super) fn inner_wing(s: &mut Sculpt, side: f32) {
    let x = CAR_X + side * HALF_W;
    let rim = [(-0.74, 0.98), (-0.30, 0.965), (0.20, 0.925), (0.44, 0.86)];
    let inner: Vec<Vec3> = rim.iter().map(|(z, y)| Vec3::new(x - side * 0.10, y - 0.035, *z)).collect();
    s.add(Mat::Primer, sweep(&curve(&inner, 6), 0.035, 0.018, 10, Vec3::Y));
    s.add(Mat::Primer, bevel_box(0.02, 0.42, 1.10, 0.004).at(x - side * 0.13, 0.70, -0.09));
    s.add(
        Mat::Primer,
        lathe(&[(0.13, 0.0), (0.115, 0.13), (0.09, 0.15), (0.0, 0.15)]).at(
            x - side * 0.17,
            0.70,
            -0.40 + 0.36 * f32::from(u8::from(side < 0.0)),
        ),
    );
}

/// Upper crossmember with the lock, lower crossmember, side posts, longitudinal members.
pub(super) fn members(s: &mut Sculpt, paint: Mat) {
    s.add(paint, bevel_box(1.46, 0.05, 0.075, 0.012).at(CAR_X, 0.885, 0.465));
    s.add(Mat::Zinc, bevel_box(0.07, 0.055, 0.05, 0.006).at(CAR_X, 0.92, 0.46));
    s.add(Mat::Zinc, ring(0.02, 0.005).along(Vec3::X).at(CAR_X, 0.945, 0.46));
    s.add(Mat::Primer, bevel_box(1.50, 0.09, 0.09, 0.012).at(CAR_X, 0.265, 0.43));
    for side in [-1.0, 1.0] {
        s.add(Mat::Primer, bevel_box(0.05, 0.56, 0.06, 0.008).at(CAR_X + side * 0.545, 0.58, 0.44));
        s.add(Mat::Primer, bevel_box(0.07, 0.10, 1.1, 0.01).at(CAR_X + side * 0.52, 0.42, -0.1));
        bolt(s, Vec3::new(CAR_X + side * 0.62, 0.912, 0.465), Vec3::Y, 0.010);
    }
}

/// Radiator with fins and tanks, and its hose.
pub(super) fn radiator(s: &mut Sculpt) {
    s.add(Mat::Iron, bevel_box(0.62, 0.42, 0.03, 0.003).at(-2.03, 0.565, 0.40));
    for i in 0..26 {
        s.add(Mat::Cast, bevel_box(0.60, 0.004, 0.036, 0.001).at(-2.03, 0.37 + 0.0156 * i as f32, 0.402));
    }
    for x in [-2.36, -1.70] {
        s.add(Mat::Nylon, bevel_box(0.055, 0.46, 0.05, 0.01).at(x, 0.565, 0.40));
    }
    s.add(
        Mat::Rubber,
        hose(
            &[
                Vec3::new(-1.70, 0.73, 0.37),
                Vec3::new(-1.66, 0.76, 0.30),
                Vec3::new(-1.70, 0.78, 0.18),
                Vec3::new(-1.78, 0.78, 0.10),
            ],
            0.02,
        ),
    );
}
