//! What stands in a car without being a part of its circuits: named models.

use assess::room::FixtureShape;
use bevy::math::{Quat, Vec3};

use super::bits::bolt;
use crate::view3d::materials::{Mat, Sculpt};
use crate::view3d::shapes::{bevel_box, cylinder, ring};

/// A fixture about its middle.
pub(in crate::view3d) fn fixture(shape: FixtureShape) -> Sculpt {
    let size = |(x, y, z): (f64, f64, f64)| Vec3::new(x as f32, y as f32, z as f32);
    let mut s = Sculpt::default();
    match shape {
        FixtureShape::FuseBox => fuse_box(&mut s),
        FixtureShape::Bracket => bracket(&mut s),
        FixtureShape::Clip => {
            s.add(Mat::Nylon, bevel_box(0.022, 0.035, 0.035, 0.005));
        }
        FixtureShape::Grommet => {
            for z in [0.004, -0.035] {
                s.add(Mat::Rubber, ring(0.022, 0.008).along(Vec3::Z).at(0.0, 0.0, z));
            }
        }
        FixtureShape::Block { size_m } => block(&mut s, size(size_m)),
        FixtureShape::Board { size_m } => board(&mut s, size(size_m)),
    }
    s
}

fn block(s: &mut Sculpt, size: Vec3) {
    let bevel = (size.min_element() * 0.2).min(0.01);
    s.add(Mat::Primer, bevel_box(size.x, size.y, size.z, bevel));
}

/// An oak board with a rim, so that nothing rolls off.
fn board(s: &mut Sculpt, size: Vec3) {
    s.add(Mat::Oak, bevel_box(size.x, size.y, size.z, 0.004));
    for side in [-1.0, 1.0] {
        s.add(
            Mat::OakDark,
            bevel_box(0.012, size.y + 0.012, size.z, 0.003).at(side * (size.x * 0.5), 0.0, 0.0),
        );
    }
}

/// A shelf at the bulkhead with its flange below it.
fn bracket(s: &mut Sculpt) {
    s.add(Mat::Zinc, bevel_box(0.05, 0.008, 0.15, 0.002));
    s.add(Mat::Zinc, bevel_box(0.05, 0.10, 0.008, 0.002).at(0.0, -0.025, -0.069));
    bolt(s, Vec3::new(0.0, -0.045, -0.063), Vec3::Z, 0.008);
}

/// The box in which fuse and relay sit: other fuses in a row, sockets, its lid open.
fn fuse_box(s: &mut Sculpt) {
    s.add(Mat::GreyNylon, bevel_box(0.36, 0.26, 0.05, 0.010).at(0.0, 0.0, -0.026));
    for (w, h, x, y) in [
        (0.36, 0.010, 0.0, 0.126),
        (0.36, 0.010, 0.0, -0.126),
        (0.010, 0.26, 0.176, 0.0),
        (0.010, 0.26, -0.176, 0.0),
    ] {
        s.add(Mat::GreyNylon, bevel_box(w, h, 0.024, 0.003).at(x, y, 0.008));
    }
    // Other fuses in a row, small; a spare socket.
    for i in 0..5 {
        let y = 0.085 - 0.04 * i as f32;
        let mat = [Mat::Red, Mat::Case, Mat::Rag, Mat::Face, Mat::Brown][i];
        s.add(Mat::Nylon, bevel_box(0.026, 0.020, 0.010, 0.002).at(-0.055, y, 0.004));
        s.add(mat, bevel_box(0.020, 0.008, 0.016, 0.002).at(-0.055, y, 0.012));
    }
    // Sockets of a fuse and a relay.
    s.add(Mat::Nylon, bevel_box(0.052, 0.15, 0.014, 0.004).at(-0.115, 0.005, 0.004));
    s.add(Mat::Nylon, bevel_box(0.15, 0.165, 0.014, 0.006).at(0.06, 0.0, 0.004));
    for (x, y) in
        [(-0.115, 0.065), (-0.115, -0.055), (0.005, 0.06), (0.115, 0.06), (0.005, -0.06), (0.115, -0.06)]
    {
        s.add(Mat::Brass, bevel_box(0.012, 0.012, 0.018, 0.002).at(x, y, 0.020));
        s.add(Mat::Zinc, cylinder(0.005, 0.004, 0.001).along(Vec3::Z).at(x, y, 0.029));
    }
    // Lid, open, standing behind.
    s.add(
        Mat::Nylon,
        bevel_box(0.36, 0.20, 0.012, 0.008).turned(Quat::from_rotation_x(0.85)).at(0.0, 0.205, 0.065),
    );
    s.add(
        Mat::Face,
        bevel_box(0.24, 0.12, 0.002, 0.0005).turned(Quat::from_rotation_x(0.85)).at(0.0, 0.200, 0.0725),
    );
    for i in 0..4 {
        let along = Quat::from_rotation_x(0.85) * Vec3::Y * (0.038 - 0.025 * i as f32);
        s.add(
            Mat::Pencil,
            bevel_box(0.18, 0.005, 0.002, 0.0003).turned(Quat::from_rotation_x(0.85)).at(
                0.0,
                0.2005 + along.y,
                0.0735 + along.z,
            ),
        );
    }
}
