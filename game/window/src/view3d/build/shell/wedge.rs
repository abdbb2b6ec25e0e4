//! A wedge with its bonnet off: a bonnet line that falls to a slanted nose, thin lamps let into it, a plain
//! bumper beam.

use bevy::math::{Quat, Vec3};

use super::wing::{Edge, wing};
use super::{CAR_X, HALF_W, bay};
use crate::view3d::materials::{Mat, Sculpt};
use crate::view3d::shapes::{bevel_box, curve, sweep};

/// The line of the wing's top from the door to the nose: along the car's length, up.
const TOP: [(f32, f32); 7] =
    [(-0.74, 1.0), (-0.34, 0.985), (0.10, 0.955), (0.44, 0.905), (0.60, 0.80), (0.69, 0.64), (0.715, 0.46)];

/// Everything outside.
pub(super) fn outside(s: &mut Sculpt) {
    for side in [-1.0, 1.0] {
        side_of(s, side);
        bay::inner_wing(s, side);
        nose(s, side);
    }
    bay::members(s, Mat::PalePaint);
    bay::radiator(s);
    beam(s);
}

fn side_of(s: &mut Sculpt, side: f32) {
    // The edge of its arch: a flat black lip.
    let edge = Edge { mat: Mat::Nylon, radius: 0.385, out: 0.004, half: (0.016, 0.010) };
    wing(s, side, Mat::PalePaint, &TOP, &[(0.71, 0.36), (0.64, 0.27), (0.41, 0.27)], &edge);
    let x = CAR_X + side * HALF_W;
    // Its shoulder into the bay, falling with the line of the top.
    let rim: Vec<Vec3> = TOP.iter().map(|(z, y)| Vec3::new(x - side * 0.035, y - 0.006, *z)).collect();
    s.add(Mat::PalePaint, sweep(&curve(&rim, 6), 0.046, 0.020, 12, Vec3::Y));
    // A crease along the side.
    let crease = [(-0.72, 0.72), (-0.40, 0.735), (0.36, 0.735), (0.66, 0.66)];
    let crease: Vec<Vec3> = crease.iter().map(|(z, y)| Vec3::new(x + side * 0.008, *y, *z)).collect();
    s.add(Mat::PalePaint, sweep(&curve(&crease, 6), 0.010, 0.012, 8, Vec3::Y));
}

/// The corner of the nose with its lamp.
fn nose(s: &mut Sculpt, side: f32) {
    let x = CAR_X + side * 0.70;
    // Three faces, each slanted more steeply than the one above it.
    let faces: [((f32, f32), (f32, f32)); 3] =
        [((0.44, 0.895), (0.60, 0.79)), ((0.60, 0.79), (0.69, 0.63)), ((0.69, 0.63), (0.71, 0.44))];
    for ((z0, y0), (z1, y1)) in faces {
        let (dz, dy) = (z1 - z0, y1 - y0);
        let long = (dz * dz + dy * dy).sqrt();
        let turn = Quat::from_rotation_x((-dy).atan2(dz));
        let (z, y) = ((z0 + z1) * 0.5, (y0 + y1) * 0.5);
        let face = bevel_box(0.30, 0.020, long + 0.012, 0.006).turned(turn);
        s.add(Mat::PalePaint, face.at(x, y - 0.010, z - 0.006));
    }
    // A thin lamp across the middle face.
    let turn = Quat::from_rotation_x((0.16_f32).atan2(0.09));
    let at = Vec3::new(x - side * 0.012, 0.722, 0.652);
    let out = turn * Vec3::Y;
    s.add(Mat::Black, bevel_box(0.225, 0.012, 0.085, 0.004).turned(turn).at(at.x, at.y, at.z));
    let glass = at + out * 0.006;
    s.add(Mat::Glass, bevel_box(0.205, 0.010, 0.062, 0.004).turned(turn).at(glass.x, glass.y, glass.z));
    for i in 0..3 {
        let cell = glass + Vec3::X * (0.062 * (i as f32 - 1.0)) + out * 0.001;
        s.add(Mat::Steel, bevel_box(0.004, 0.010, 0.060, 0.001).turned(turn).at(cell.x, cell.y, cell.z));
    }
}

/// Bumper beam with a slot, and the lip under it.
fn beam(s: &mut Sculpt) {
    s.add(Mat::PalePaint, bevel_box(1.70, 0.13, 0.07, 0.028).at(CAR_X, 0.385, 0.685));
    s.add(Mat::Nylon, bevel_box(0.90, 0.035, 0.02, 0.006).at(CAR_X, 0.385, 0.715));
    s.add(Mat::Nylon, bevel_box(1.58, 0.05, 0.26, 0.02).at(CAR_X, 0.275, 0.57));
    for side in [-1.0, 1.0] {
        s.add(Mat::Primer, bevel_box(0.06, 0.08, 0.24, 0.01).at(CAR_X + side * 0.50, 0.385, 0.56));
    }
}
