//! The bench with vice, supply and lamp.

use crate::view3d::materials::{Mat, Sculpt};
use crate::view3d::places::BENCH;
use crate::view3d::shapes::{bevel_box, curve, cylinder, hose, lathe, ring, sweep};
use bevy::math::{Quat, Vec3};
use bevy::transform::components::Transform;
use std::f32::consts::FRAC_PI_2;

pub(super) fn bench(s: &mut Sculpt) {
    let at = BENCH;
    s.add(Mat::Oak, bevel_box(2.1, 0.055, 0.66, 0.006).at(at.x, at.y - 0.0275, at.z));
    s.add(Mat::OakDark, bevel_box(2.0, 0.09, 0.03, 0.004).at(at.x, at.y - 0.10, at.z + 0.28));
    for (x, z) in [(-0.98, -0.27), (0.98, -0.27), (-0.98, 0.27), (0.98, 0.27)] {
        s.add(Mat::Iron, bevel_box(0.06, 0.85, 0.06, 0.006).at(at.x + x, 0.42, at.z + z));
    }
    s.add(Mat::OakDark, bevel_box(1.95, 0.03, 0.5, 0.004).at(at.x, 0.22, at.z));
    // Drawers.
    s.add(Mat::GreyNylon, bevel_box(0.52, 0.56, 0.54, 0.006).at(at.x + 0.66, 0.56, at.z));
    for i in 0..4 {
        let y = 0.36 + 0.135 * i as f32;
        s.add(Mat::Case, bevel_box(0.48, 0.122, 0.02, 0.006).at(at.x + 0.66, y, at.z + 0.275));
        s.add(Mat::Zinc, bevel_box(0.16, 0.014, 0.02, 0.005).at(at.x + 0.66, y + 0.03, at.z + 0.292));
    }
    // Boxes below.
    s.add(Mat::Card, bevel_box(0.34, 0.24, 0.32, 0.004).at(at.x - 0.55, 0.36, at.z));
    s.add(Mat::Case, bevel_box(0.30, 0.17, 0.26, 0.01).at(at.x - 0.12, 0.325, at.z + 0.05));
    s.add(Mat::Iron, bevel_box(0.14, 0.02, 0.03, 0.008).at(at.x - 0.12, 0.43, at.z + 0.05));
    vice(s, Vec3::new(at.x - 0.72, at.y, at.z + 0.20));
    supply(s, Vec3::new(at.x + 0.80, at.y, at.z - 0.08));
    // A lamp on an arm.
    let foot = Vec3::new(at.x + 0.38, at.y, at.z - 0.22);
    s.add(Mat::Paint, cylinder(0.07, 0.02, 0.005).at(foot.x, foot.y, foot.z));
    let arm = [foot, foot + Vec3::new(0.05, 0.22, 0.05), foot + Vec3::new(-0.06, 0.36, 0.22)];
    s.add(Mat::Zinc, hose(&[arm[0], arm[0].lerp(arm[1], 0.5), arm[1]], 0.008));
    s.add(Mat::Zinc, hose(&[arm[1], arm[1].lerp(arm[2], 0.5), arm[2]], 0.007));
    let shade = lathe(&[(0.012, 0.07), (0.03, 0.065), (0.075, 0.0), (0.072, 0.0), (0.027, 0.06)]);
    s.add(Mat::Paint, shade.turned(Quat::from_rotation_x(-0.35)).at(arm[2].x, arm[2].y - 0.06, arm[2].z));
    // A rag, a pencil, a mug.
    rag(
        s,
        Transform::from_xyz(at.x - 0.36, at.y + 0.012, at.z + 0.12).with_rotation(Quat::from_rotation_y(0.4)),
    );
    s.add(
        Mat::WhiteNylon,
        lathe(&[
            (0.0, 0.0),
            (0.034, 0.0),
            (0.038, 0.006),
            (0.038, 0.088),
            (0.034, 0.088),
            (0.034, 0.012),
            (0.0, 0.012),
        ])
        .at(at.x + 0.52, at.y, at.z + 0.12),
    );
    s.add(
        Mat::WhiteNylon,
        ring(0.022, 0.005).turned(Quat::from_rotation_x(FRAC_PI_2)).at(
            at.x + 0.572,
            at.y + 0.045,
            at.z + 0.12,
        ),
    );
}

fn vice(s: &mut Sculpt, at: Vec3) {
    let mut v = Sculpt::default();
    v.add(Mat::CarPaint, bevel_box(0.17, 0.03, 0.17, 0.008).at(0.0, 0.015, 0.0));
    v.add(Mat::CarPaint, lathe(&[(0.07, 0.03), (0.05, 0.05), (0.048, 0.075), (0.0, 0.075)]));
    v.add(Mat::CarPaint, bevel_box(0.10, 0.075, 0.15, 0.012).at(0.0, 0.11, -0.02));
    v.add(Mat::CarPaint, bevel_box(0.16, 0.06, 0.03, 0.008).at(0.0, 0.165, -0.02));
    v.add(Mat::CarPaint, bevel_box(0.16, 0.12, 0.035, 0.008).at(0.0, 0.135, 0.085));
    v.add(Mat::CarPaint, bevel_box(0.055, 0.05, 0.20, 0.008).at(0.0, 0.10, 0.10));
    v.add(Mat::Steel, bevel_box(0.16, 0.03, 0.012, 0.002).at(0.0, 0.18, 0.0));
    v.add(Mat::Steel, bevel_box(0.16, 0.03, 0.012, 0.002).at(0.0, 0.18, 0.062));
    v.add(Mat::Steel, cylinder(0.013, 0.10, 0.002).along(Vec3::Z).at(0.0, 0.10, 0.18));
    v.add(Mat::Steel, cylinder(0.022, 0.03, 0.004).along(Vec3::Z).at(0.0, 0.10, 0.25));
    v.add(Mat::Steel, cylinder(0.007, 0.22, 0.002).along(Vec3::new(1.0, 0.25, 0.0)).at(-0.105, 0.073, 0.265));
    s.join(&v, Transform::from_translation(at));
}

fn supply(s: &mut Sculpt, at: Vec3) {
    let mut v = Sculpt::default();
    v.add(Mat::Case, bevel_box(0.28, 0.17, 0.24, 0.008).at(0.0, 0.095, 0.0));
    v.add(Mat::GreyNylon, bevel_box(0.27, 0.16, 0.006, 0.002).at(0.0, 0.095, 0.121));
    v.add(Mat::Display, bevel_box(0.10, 0.045, 0.006, 0.001).at(-0.06, 0.135, 0.124));
    for (x, mat) in [(0.035, Mat::Red), (0.095, Mat::Black)] {
        v.add(mat, cylinder(0.013, 0.025, 0.003).along(Vec3::Z).at(x, 0.05, 0.122));
        v.add(Mat::Brass, cylinder(0.005, 0.032, 0.001).along(Vec3::Z).at(x, 0.05, 0.122));
    }
    for x in [-0.09, -0.03] {
        v.add(Mat::Black, cylinder(0.018, 0.02, 0.003).along(Vec3::Z).at(x, 0.06, 0.122));
        v.add(Mat::Face, bevel_box(0.003, 0.014, 0.003, 0.0005).at(x, 0.066, 0.142));
    }
    for x in [-0.11, 0.11] {
        v.add(Mat::Rubber, cylinder(0.014, 0.012, 0.002).at(x, 0.0, 0.08));
    }
    s.join(&v, Transform::from_translation(at));
}

pub(super) fn rag(s: &mut Sculpt, to: Transform) {
    let mut v = Sculpt::default();
    let fold = [(-0.11, 0.0), (-0.05, 0.012), (0.0, 0.003), (0.05, 0.014), (0.11, 0.0)];
    let line: Vec<Vec3> = fold.iter().map(|(x, y)| Vec3::new(*x, *y, 0.0)).collect();
    v.add(Mat::Rag, sweep(&curve(&line, 5), 0.075, 0.006, 10, Vec3::Y));
    v.add(
        Mat::Rag,
        sweep(&curve(&line, 5), 0.05, 0.006, 10, Vec3::Y)
            .turned(Quat::from_rotation_y(0.6))
            .at(0.02, 0.012, 0.01),
    );
    s.join(&v, to);
}
