//! A saloon with its bonnet off: wings, lamps, front.

use bevy::math::{Quat, Vec3};
use std::f32::consts::{FRAC_PI_2, TAU};

use super::{CAR_X, HALF_W, bay};
use crate::view3d::materials::{Mat, Sculpt};
use crate::view3d::places::WHEEL;
use crate::view3d::shapes::{bevel_box, curve, lathe, plate, ring, sweep};

/// Everything outside.
pub(super) fn outside(s: &mut Sculpt) {
    for side in [-1.0, 1.0] {
        wing(s, side);
        bay::inner_wing(s, side);
        headlight(s, side);
    }
    bay::members(s, Mat::CarPaint);
    bay::radiator(s);
    front(s);
}

/// Side of a wing from in front of the wheel to the door, with its arch; x along the car's length.
fn wing_outline() -> Vec<(f32, f32)> {
    let mut out = vec![
        (-0.74, 0.24),
        (-0.74, 0.98),
        (-0.30, 0.965),
        (0.20, 0.925),
        (0.44, 0.86),
        (0.50, 0.70),
        (0.50, 0.34),
        (0.40, 0.30),
    ];
    for i in 0..=14 {
        let a = (i as f32 / 14.0) * 0.5 * TAU * 1.04 - 0.06;
        out.push((0.39 * a.cos(), WHEEL.y + 0.39 * a.sin()));
    }
    out
}

fn wing(s: &mut Sculpt, side: f32) {
    let x = CAR_X + side * HALF_W;
    let skin = plate(&wing_outline(), 0.022).turned(Quat::from_rotation_y(-FRAC_PI_2));
    s.add(Mat::CarPaint, skin.at(x, 0.0, 0.0));
    // Top flange into the bay, its rim rounded.
    let rim = [(-0.74, 0.98), (-0.30, 0.965), (0.20, 0.925), (0.44, 0.86)];
    let line: Vec<Vec3> = rim.iter().map(|(z, y)| Vec3::new(x - side * 0.035, y - 0.004, *z)).collect();
    s.add(Mat::CarPaint, sweep(&curve(&line, 6), 0.046, 0.016, 12, Vec3::Y));
    // Edge of the arch.
    let arch: Vec<Vec3> = (0..=14)
        .map(|i| {
            let a = i as f32 / 14.0 * 0.5 * TAU;
            Vec3::new(x + side * 0.006, WHEEL.y + 0.39 * a.sin(), 0.39 * a.cos())
        })
        .collect();
    s.add(Mat::CarPaint, sweep(&arch, 0.014, 0.014, 8, Vec3::Y));
    // Joint of wing and door, a lamp at its side.
    s.add(Mat::Iron, bevel_box(0.024, 0.70, 0.006, 0.001).at(x, 0.60, -0.70));
}

fn headlight(s: &mut Sculpt, side: f32) {
    let at = Vec3::new(CAR_X + side * 0.70, 0.735, 0.44);
    let shape =
        lathe(&[(0.0, -0.06), (0.06, -0.05), (0.095, 0.0), (0.105, 0.03), (0.10, 0.045), (0.092, 0.045)]);
    s.add(Mat::Steel, shape.along(Vec3::Z).at(at.x, at.y, at.z));
    s.add(
        Mat::Glass,
        lathe(&[(0.097, 0.035), (0.07, 0.055), (0.0, 0.065)]).along(Vec3::Z).at(at.x, at.y, at.z),
    );
    s.add(Mat::CarPaint, ring(0.108, 0.012).along(Vec3::Z).at(at.x, at.y, at.z + 0.032));
}

/// Corners below the lamps, and the lip under it all.
fn front(s: &mut Sculpt) {
    for side in [-1.0, 1.0] {
        s.add(Mat::CarPaint, bevel_box(0.16, 0.30, 0.03, 0.02).at(CAR_X + side * 0.75, 0.47, 0.47));
    }
    s.add(Mat::Nylon, bevel_box(1.50, 0.05, 0.12, 0.02).at(CAR_X, 0.205, 0.46));
}
