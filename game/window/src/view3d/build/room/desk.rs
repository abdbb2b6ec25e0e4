//! The desk with its papers.

use crate::view3d::made::Made;
use crate::view3d::materials::{Mat, Sculpt};
use crate::view3d::places::{self, DESK};
use crate::view3d::shapes::{bevel_box, cylinder, hose, lathe};
use bevy::math::{Quat, Vec3};
use bevy::transform::components::Transform;
use front::hands::Thing;
use std::f32::consts::FRAC_PI_2;

pub(super) fn desk(s: &mut Sculpt) {
    let at = DESK;
    s.add(Mat::Oak, bevel_box(1.3, 0.035, 0.68, 0.005).at(at.x, at.y - 0.0175, at.z));
    for (x, z) in [(-0.6, -0.3), (0.6, -0.3), (-0.6, 0.3), (0.6, 0.3)] {
        s.add(Mat::Iron, bevel_box(0.045, 0.73, 0.045, 0.004).at(at.x + x, 0.365, at.z + z));
    }
    s.add(Mat::OakDark, bevel_box(1.2, 0.08, 0.02, 0.003).at(at.x, at.y - 0.075, at.z - 0.28));
    s.add(Mat::GreyNylon, bevel_box(0.36, 0.5, 0.5, 0.006).at(at.x + 0.38, 0.46, at.z));
    // Pencil, lamp, a mug with pencils.
    s.add(
        Mat::Oak,
        cylinder(0.004, 0.16, 0.001).along(Vec3::new(1.0, 0.0, 0.35)).at(
            at.x - 0.06,
            at.y + 0.005,
            at.z + 0.17,
        ),
    );
    let foot = Vec3::new(at.x + 0.54, at.y, at.z - 0.2);
    s.add(Mat::Paint, cylinder(0.075, 0.016, 0.005).at(foot.x, foot.y, foot.z));
    s.add(
        Mat::Zinc,
        hose(&[foot, foot + Vec3::new(0.02, 0.2, 0.0), foot + Vec3::new(-0.1, 0.36, 0.08)], 0.007),
    );
    let shade = lathe(&[(0.015, 0.06), (0.035, 0.055), (0.08, 0.0), (0.077, 0.0), (0.03, 0.05)]);
    s.add(Mat::Paint, shade.at(foot.x - 0.1, foot.y + 0.31, foot.z + 0.08));
    let cup = Vec3::new(at.x - 0.5, at.y, at.z - 0.2);
    s.add(
        Mat::Case,
        lathe(&[(0.0, 0.0), (0.036, 0.0), (0.036, 0.09), (0.032, 0.09), (0.032, 0.01), (0.0, 0.01)])
            .at(cup.x, cup.y, cup.z),
    );
    for (x, z, mat) in [(0.012, 0.0, Mat::Oak), (-0.01, 0.012, Mat::Red), (0.0, -0.014, Mat::Iron)] {
        s.add(
            mat,
            cylinder(0.004, 0.15, 0.001).along(Vec3::new(x * 4.0, 1.0, z * 4.0)).at(
                cup.x + x * 0.6,
                cup.y + 0.01,
                cup.z + z * 0.6,
            ),
        );
    }
    // A folder and a stool.
    s.add(
        Mat::CarPaint,
        bevel_box(0.24, 0.035, 0.31, 0.004).turned(Quat::from_rotation_y(-0.15)).at(
            at.x + 0.45,
            at.y + 0.018,
            at.z + 0.12,
        ),
    );
    let stool = Vec3::new(at.x - 0.05, 0.0, at.z + 0.75);
    s.add(Mat::OakDark, cylinder(0.17, 0.03, 0.008).at(stool.x, 0.5, stool.z));
    for k in 0..4 {
        let (sin, cos) = (k as f32 * FRAC_PI_2 + 0.78).sin_cos();
        s.add(
            Mat::Iron,
            cylinder(0.013, 0.52, 0.002).along(Vec3::new(-cos * 0.12, 1.0, -sin * 0.12)).at(
                stool.x + cos * 0.18,
                0.0,
                stool.z + sin * 0.18,
            ),
        );
    }
}

/// Job card and data sheet.
pub(in crate::view3d) fn papers() -> Vec<Made> {
    let mut card = Sculpt::default();
    card.add(Mat::OakDark, bevel_box(0.235, 0.008, 0.33, 0.003));
    card.add(Mat::Paper, bevel_box(0.21, 0.003, 0.297, 0.0005).at(0.0, 0.006, 0.01));
    card.add(Mat::Zinc, bevel_box(0.09, 0.014, 0.03, 0.004).at(0.0, 0.012, -0.145));
    lines(&mut card, 9, 0.15);
    let mut sheet = Sculpt::default();
    sheet.add(Mat::Face, bevel_box(0.21, 0.004, 0.297, 0.0005));
    sheet.add(Mat::Pencil, bevel_box(0.17, 0.0012, 0.012, 0.0003).at(0.0, 0.0025, -0.12));
    for (i, w) in [0.06, 0.09, 0.05, 0.08, 0.06, 0.07, 0.09, 0.05].iter().enumerate() {
        let z = -0.09 + 0.026 * i as f32;
        sheet.add(Mat::Pencil, bevel_box(*w, 0.001, 0.005, 0.0003).at(-0.085 + w * 0.5, 0.0025, z));
        sheet.add(Mat::Pencil, bevel_box(0.03, 0.001, 0.005, 0.0003).at(0.06, 0.0025, z));
    }
    let flat =
        |at: Vec3, turn: f32| Transform::from_translation(at).with_rotation(Quat::from_rotation_y(turn));
    vec![
        Made::of(Thing::JobCard, flat(places::JOB_CARD, 0.45), card),
        Made::of(Thing::DataSheet, flat(places::DATA_SHEET, 0.25), sheet),
    ]
}

fn lines(s: &mut Sculpt, n: usize, wide: f32) {
    for i in 0..n {
        let w = wide * (0.65 + 0.35 * ((i * 7 + 3) % 5) as f32 / 4.0);
        s.add(
            Mat::Pencil,
            bevel_box(w, 0.001, 0.004, 0.0003).at(-0.085 + w * 0.5, 0.008, -0.09 + 0.026 * i as f32),
        );
    }
}
