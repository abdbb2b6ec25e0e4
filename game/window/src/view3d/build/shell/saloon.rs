//! A saloon with its bonnet off: shoulders that round down into a low nose, slim lamps let into the curve, a body-coloured
//! bumper across the whole width.

use bevy::math::{Quat, Vec3};
use std::f32::consts::{FRAC_PI_2, TAU};

use super::{CAR_X, HALF_W, bay};
use crate::view3d::materials::{Mat, Sculpt};
use crate::view3d::places::WHEEL;
use crate::view3d::shapes::{bevel_box, curve, plate, sweep};

/// The line of the wing's top from the door down to the bumper: along the car's length, up.
const TOP: [(f32, f32); 8] = [
    (-0.74, 0.975),
    (-0.36, 0.965),
    (0.04, 0.940),
    (0.30, 0.895),
    (0.46, 0.830),
    (0.56, 0.735),
    (0.605, 0.620),
    (0.615, 0.500),
];

/// Where on that line a lamp begins and ends, from the top.
const LAMP: (usize, usize) = (4, 6);

/// Everything outside.
pub(super) fn outside(s: &mut Sculpt) {
    for side in [-1.0, 1.0] {
        wing(s, side);
        bay::inner_wing(s, side);
        nose(s, side);
    }
    bay::members(s, Mat::CarPaint);
    bay::radiator(s);
    bumper(s);
}

/// Side of a wing, with the arch of its wheel; x along the car's length.
fn wing_outline() -> Vec<(f32, f32)> {
    let mut out = vec![(-0.74, 0.24)];
    let line: Vec<Vec3> = TOP.iter().map(|(z, y)| Vec3::new(*z, *y, 0.0)).collect();
    out.extend(curve(&line, 4).iter().map(|at| (at.x, at.y)));
    out.extend([(0.60, 0.33), (0.54, 0.27), (0.41, 0.27)]);
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
    // Its shoulder into the bay, round all the way down.
    let line: Vec<Vec3> = TOP.iter().map(|(z, y)| Vec3::new(x - side * 0.040, y - 0.010, *z)).collect();
    s.add(Mat::CarPaint, sweep(&curve(&line, 6), 0.054, 0.026, 14, Vec3::Y));
    // Edge of the arch, in the colour of the body.
    let arch: Vec<Vec3> = (0..=14)
        .map(|i| {
            let a = i as f32 / 14.0 * 0.5 * TAU;
            Vec3::new(x + side * 0.006, WHEEL.y + 0.39 * a.sin(), 0.39 * a.cos())
        })
        .collect();
    s.add(Mat::CarPaint, sweep(&arch, 0.014, 0.014, 8, Vec3::Y));
    // Joint of wing and door.
    s.add(Mat::Iron, bevel_box(0.024, 0.70, 0.006, 0.001).at(x, 0.60, -0.70));
}

/// The round corner between shoulder and radiator, with its lamp.
fn nose(s: &mut Sculpt, side: f32) {
    /// Half of its width, m.
    const HALF: f32 = 0.155;
    let x = CAR_X + side * 0.70;
    let line: Vec<Vec3> = TOP.iter().skip(3).map(|(z, y)| Vec3::new(x, y - 0.016, z - 0.004)).collect();
    s.add(Mat::CarPaint, sweep(&curve(&line, 6), HALF, 0.026, 18, Vec3::Y));
    lamp(s, side, x);
}

/// A slim lamp that follows the curve: dark housing, clear cover, two cells behind it.
fn lamp(s: &mut Sculpt, side: f32, x: f32) {
    let (from, to) = (TOP[LAMP.0], TOP[LAMP.1]);
    let (dz, dy) = (to.0 - from.0, to.1 - from.1);
    let turn = Quat::from_rotation_x((-dy).atan2(dz));
    let out = turn * Vec3::Y;
    // The chord lies inside the curve: out by the curve's rise.
    let at = Vec3::new(x - side * 0.006, (from.1 + to.1) * 0.5, (from.0 + to.0) * 0.5) + out * 0.022;
    s.add(Mat::Black, bevel_box(0.262, 0.020, 0.088, 0.009).turned(turn).at(at.x, at.y, at.z));
    let glass = at + out * 0.007;
    s.add(Mat::Glass, bevel_box(0.240, 0.014, 0.066, 0.006).turned(turn).at(glass.x, glass.y, glass.z));
    for cell in [-0.055, 0.055] {
        let at = glass + Vec3::X * cell - out * 0.002;
        s.add(Mat::Steel, bevel_box(0.072, 0.010, 0.034, 0.004).turned(turn).at(at.x, at.y, at.z));
    }
}

/// A bumper across the whole width, an opening for air in it, and the lip under it all.
fn bumper(s: &mut Sculpt) {
    s.add(Mat::CarPaint, bevel_box(1.72, 0.20, 0.13, 0.045).at(CAR_X, 0.425, 0.590));
    s.add(Mat::Black, bevel_box(0.86, 0.055, 0.02, 0.010).at(CAR_X, 0.395, 0.652));
    s.add(Mat::Nylon, bevel_box(1.60, 0.05, 0.20, 0.02).at(CAR_X, 0.285, 0.540));
}
