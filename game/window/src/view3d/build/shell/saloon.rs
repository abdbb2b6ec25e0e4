//! A saloon with its bonnet off: shoulders that round down into a low nose, slim lamps let into the curve, a body-coloured
//! bumper across the whole width.

use bevy::math::{Quat, Vec3};
use std::f32::consts::FRAC_PI_2;
use std::ops::Range;

use super::wing::{Edge, wing};
use super::{CAR_X, HALF_W, bay};
use crate::view3d::materials::{Mat, Sculpt};
use crate::view3d::shapes::{Geo, bevel_box, curve, plate, sweep};

/// The line of the wing's top from the door down to the bumper: along the car's length, up.
const TOP: [(f32, f32); 8] = [
    (-0.74, 0.975),
    (-0.36, 0.965),
    (0.04, 0.940),
    (0.30, 0.895),
    (0.455, 0.835),
    (0.555, 0.745),
    (0.605, 0.620),
    (0.615, 0.500),
];

/// Points of the curve between two of these.
const STEPS: usize = 8;

/// Where on that curve a lamp begins and ends.
const LAMP: Range<usize> = 35..40;

/// Everything outside.
pub(super) fn outside(s: &mut Sculpt) {
    for side in [-1.0, 1.0] {
        side_of(s, side);
        bay::inner_wing(s, side);
        nose(s, side);
    }
    bay::members(s, Mat::CarPaint);
    bay::radiator(s);
    bumper(s);
}

fn side_of(s: &mut Sculpt, side: f32) {
    let line: Vec<Vec3> = TOP.iter().map(|(z, y)| Vec3::new(*z, *y, 0.0)).collect();
    let top: Vec<(f32, f32)> = curve(&line, STEPS).iter().map(|at| (at.x, at.y)).collect();
    // The edge of its arch in the colour of the body.
    let edge = Edge { mat: Mat::CarPaint, radius: 0.39, out: 0.006, half: (0.014, 0.014) };
    wing(s, side, Mat::CarPaint, &top, &[(0.60, 0.33), (0.54, 0.27), (0.41, 0.27)], &edge);
    // Its shoulder into the bay, round all the way down.
    let x = CAR_X + side * HALF_W;
    let line: Vec<Vec3> = TOP.iter().map(|(z, y)| Vec3::new(x - side * 0.040, y - 0.010, *z)).collect();
    s.add(Mat::CarPaint, sweep(&curve(&line, 6), 0.054, 0.026, 14, Vec3::Y));
}

/// A panel that follows a stretch of the curve of the wing's top, `wide` across the car round `x`; its face stands `out`
/// of the curve, its back `deep` behind that, m.
fn panel(stretch: Range<usize>, x: f32, wide: f32, out: f32, deep: f32) -> Geo {
    let line: Vec<Vec3> = TOP.iter().map(|(z, y)| Vec3::new(*z, *y, 0.0)).collect();
    let line = curve(&line, STEPS);
    let last = line.len() - 1;
    let offset = |i: usize, by: f32| {
        let along = line[(i + 1).min(last)] - line[i.saturating_sub(1)];
        let at = line[i] + Vec3::new(-along.y, along.x, 0.0).normalize_or(Vec3::Y) * by;
        (at.x, at.y)
    };
    let stretch = stretch.start..=stretch.end.min(last);
    let mut outline: Vec<(f32, f32)> = stretch.clone().map(|i| offset(i, out)).collect();
    outline.extend(stretch.rev().map(|i| offset(i, out - deep)));
    plate(&outline, wide).turned(Quat::from_rotation_y(-FRAC_PI_2)).at(x, 0.0, 0.0)
}

/// The round corner between shoulder and radiator, with a slim lamp that follows its curve: two clear cells in a dark
/// housing.
fn nose(s: &mut Sculpt, side: f32) {
    let x = CAR_X + side * 0.70;
    s.add(Mat::CarPaint, panel(3 * STEPS..TOP.len() * STEPS, x, 0.30, -0.004, 0.024));
    let at = x - side * 0.040;
    s.add(Mat::Black, panel(LAMP, at, 0.226, 0.003, 0.020));
    for cell in [-0.054, 0.054] {
        s.add(Mat::Glass, panel(LAMP.start + 1..LAMP.end - 1, at + cell, 0.094, 0.008, 0.010));
    }
}

/// A bumper across the whole width, an opening for air in it, and the lip under it all.
fn bumper(s: &mut Sculpt) {
    s.add(Mat::CarPaint, bevel_box(1.72, 0.20, 0.13, 0.045).at(CAR_X, 0.425, 0.590));
    s.add(Mat::Black, bevel_box(0.86, 0.055, 0.02, 0.010).at(CAR_X, 0.395, 0.652));
    s.add(Mat::Nylon, bevel_box(1.60, 0.05, 0.20, 0.02).at(CAR_X, 0.285, 0.540));
}
