//! What stands about: trolley, chocks, the exhaust extraction, bin and broom.

use super::bench::rag;
use crate::view3d::made::Made;
use crate::view3d::materials::{Mat, Sculpt};
use crate::view3d::moves::Moves;
use crate::view3d::places::{self, BENCH, TROLLEY};
use crate::view3d::shapes::{bevel_box, cylinder, hose, lathe, plate, ring};
use bevy::math::{Quat, Vec3};
use bevy::transform::components::Transform;
use front::hands::Thing;
use std::f32::consts::FRAC_PI_2;

pub(super) fn trolley(s: &mut Sculpt) {
    let at = TROLLEY;
    s.add(Mat::Oak, bevel_box(0.46, 0.03, 0.66, 0.005).at(at.x, at.y - 0.015, at.z));
    // A lip, so that nothing rolls off.
    for x in [-0.225, 0.225] {
        s.add(Mat::OakDark, bevel_box(0.014, 0.035, 0.66, 0.003).at(at.x + x, at.y + 0.008, at.z));
    }
    for (x, z) in [(-0.2, -0.29), (0.2, -0.29), (-0.2, 0.29), (0.2, 0.29)] {
        s.add(Mat::Iron, bevel_box(0.03, 0.74, 0.03, 0.003).at(at.x + x, 0.46, at.z + z));
        s.add(
            Mat::Rubber,
            cylinder(0.045, 0.025, 0.006).along(Vec3::X).at(at.x + x - 0.012, 0.045, at.z + z),
        );
        s.add(Mat::Zinc, bevel_box(0.03, 0.05, 0.03, 0.003).at(at.x + x, 0.085, at.z + z));
    }
    s.add(Mat::GreyNylon, bevel_box(0.43, 0.018, 0.62, 0.003).at(at.x, 0.26, at.z));
    s.add(Mat::Case, bevel_box(0.24, 0.15, 0.34, 0.008).at(at.x + 0.03, 0.345, at.z - 0.08));
}

/// What tells that people work here.
pub(super) fn story(s: &mut Sculpt) {
    // A fender cover with a rag on the left wing, a bucket, a broom, an extinguisher.
    rag(
        s,
        Transform::from_xyz(TROLLEY.x + 0.12, TROLLEY.y + 0.012, TROLLEY.z - 0.24)
            .with_rotation(Quat::from_rotation_y(1.2)),
    );
    let bin = Vec3::new(1.95, 0.0, -1.2);
    s.add(
        Mat::Case,
        lathe(&[
            (0.0, 0.0),
            (0.13, 0.0),
            (0.16, 0.42),
            (0.167, 0.42),
            (0.167, 0.44),
            (0.15, 0.44),
            (0.12, 0.02),
            (0.0, 0.02),
        ])
        .at(bin.x, bin.y, bin.z),
    );
    let red = Vec3::new(-0.62, 0.42, -2.31);
    s.add(
        Mat::Red,
        lathe(&[
            (0.0, 0.0),
            (0.062, 0.0),
            (0.067, 0.01),
            (0.067, 0.34),
            (0.045, 0.40),
            (0.02, 0.42),
            (0.0, 0.42),
        ])
        .at(red.x, red.y, red.z),
    );
    s.add(Mat::Black, bevel_box(0.03, 0.05, 0.10, 0.008).at(red.x, red.y + 0.44, red.z + 0.02));
    s.add(
        Mat::Black,
        hose(
            &[
                red + Vec3::new(0.02, 0.43, 0.0),
                red + Vec3::new(0.1, 0.36, 0.02),
                red + Vec3::new(0.08, 0.1, 0.02),
            ],
            0.01,
        ),
    );
    s.add(Mat::Face, bevel_box(0.075, 0.10, 0.004, 0.001).at(red.x, red.y + 0.2, red.z + 0.066));
    // Broom in the corner.
    s.add(Mat::Oak, cylinder(0.013, 1.4, 0.003).along(Vec3::new(-0.06, 1.0, -0.12)).at(3.5, 0.06, -2.1));
    s.add(Mat::OakDark, bevel_box(0.34, 0.035, 0.06, 0.008).at(3.5, 0.08, -2.1));
    s.add(Mat::Iron, bevel_box(0.33, 0.06, 0.05, 0.004).at(3.5, 0.035, -2.1));
    // Duct of the exhaust extraction, and the tail pipe it is for.
    let duct = places::EXTRACTION_DUCT;
    s.add(Mat::Zinc, cylinder(0.065, 1.05, 0.004).at(duct.x, duct.y, duct.z));
    s.add(Mat::Iron, cylinder(0.072, 0.05, 0.006).at(duct.x, duct.y - 0.02, duct.z));
    s.add(Mat::Case, bevel_box(0.03, 0.05, 0.09, 0.004).at(duct.x + 0.17, duct.y - 0.16, duct.z));
    let tail = places::TAIL_PIPE;
    s.add(Mat::Iron, cylinder(0.032, 0.75, 0.004).along(Vec3::Z).at(tail.x, tail.y, tail.z));
    // Mat in front of the car.
    s.add(Mat::Rubber, bevel_box(1.5, 0.012, 0.55, 0.005).at(-1.6, 0.006, 0.86));
    // Socket outlets over the bench.
    for x in [-0.1, 0.1] {
        s.add(Mat::Face, bevel_box(0.075, 0.075, 0.012, 0.004).at(BENCH.x + 0.95 + x, 1.0, -2.39));
        s.add(
            Mat::GreyNylon,
            cylinder(0.02, 0.008, 0.002).along(Vec3::Z).at(BENCH.x + 0.95 + x, 1.0, -2.385),
        );
    }
}

/// The two chocks.
pub(in crate::view3d) fn chocks() -> Vec<Made> {
    [true, false]
        .into_iter()
        .map(|front| {
            let mut s = Sculpt::default();
            let wedge = plate(
                &[
                    (-0.10, 0.0),
                    (0.11, 0.0),
                    (0.11, 0.03),
                    (0.045, 0.135),
                    (0.02, 0.135),
                    (-0.07, 0.035),
                    (-0.10, 0.02),
                ],
                0.15,
            );
            s.add(Mat::Rubber, wedge.turned(Quat::from_rotation_y(-FRAC_PI_2)));
            for x in [-0.045, 0.045] {
                let stripe = plate(&[(0.048, 0.134), (0.112, 0.034), (0.115, 0.036), (0.051, 0.138)], 0.03);
                s.add(Mat::Face, stripe.turned(Quat::from_rotation_y(-FRAC_PI_2)).at(x, 0.0, 0.0));
            }
            s.add(
                Mat::Zinc,
                ring(0.022, 0.004).turned(Quat::from_rotation_z(FRAC_PI_2)).at(0.08, 0.06, 0.03),
            );
            Made::of(Thing::Chocks, places::chock(front, false), s).moving(Moves::Chock(front))
        })
        .collect()
}

/// The hose of the exhaust extraction, hung up and on the tail pipe: one of the two is out of sight.
pub(in crate::view3d) fn extraction() -> Vec<Made> {
    let (duct, tail) = (places::EXTRACTION_DUCT, places::TAIL_PIPE);
    let off = |x: f32, y: f32, z: f32| duct + Vec3::new(x, y, z);
    let hung = [
        duct,
        off(0.0, -0.35, 0.03),
        off(0.03, -0.78, 0.05),
        off(0.10, -0.90, 0.06),
        off(0.17, -0.78, 0.06),
        off(0.19, -0.45, 0.05),
        off(0.18, -0.20, 0.03),
    ];
    let laid = [
        duct,
        off(0.02, -0.55, 0.04),
        off(0.05, -1.15, 0.09),
        Vec3::new(tail.x + 0.10, 0.09, duct.z + 0.22),
        Vec3::new(tail.x + 0.02, 0.12, tail.z - 0.20),
        tail - Vec3::Z * 0.10,
    ];
    let made = |line: &[Vec3], out: Vec3, on: bool| {
        let mut s = Sculpt::default();
        s.add(Mat::Nylon, hose(line, 0.052));
        let end = line.last().copied().unwrap_or(duct);
        // The funnel, and the ring by which it is taken hold of.
        let funnel =
            lathe(&[(0.0, 0.0), (0.055, 0.0), (0.075, 0.13), (0.068, 0.13), (0.05, 0.01), (0.0, 0.01)]);
        s.add(Mat::Rubber, funnel.along(out).at(end.x, end.y, end.z));
        s.add(Mat::Zinc, cylinder(0.060, 0.02, 0.003).along(out).at(end.x, end.y, end.z));
        Made::of(Thing::Extraction, Transform::IDENTITY, s).moving(Moves::Extraction(on))
    };
    vec![made(&hung, Vec3::Y, false), made(&laid, Vec3::Z, true)]
}
