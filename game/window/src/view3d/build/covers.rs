//! Covers: named models with numbers.

use assess::room::CoverShape;
use bevy::math::{Quat, Vec3};

use crate::view3d::materials::{Mat, Sculpt};
use crate::view3d::shapes::{bevel_box, cylinder, hose, plate};

/// A cover about its middle.
pub(in crate::view3d) fn cover(shape: CoverShape) -> Sculpt {
    match shape {
        CoverShape::Scuttle { width_m, depth_m, height_m } => {
            scuttle(Vec3::new(width_m as f32, height_m as f32, depth_m as f32))
        }
        CoverShape::Guard { width_m, height_m } => guard(width_m as f32, height_m as f32),
        CoverShape::Lid { width_m, depth_m, height_m } => {
            lid(Vec3::new(width_m as f32, height_m as f32, depth_m as f32))
        }
    }
}

/// From one louvre to the next, m.
const LOUVRE_M: f32 = 0.044;
/// Louvres and ribs at most: a cover of three metres has no more.
const MOST: f32 = 40.0;

/// A louvred tray, x along its length.
fn scuttle(size: Vec3) -> Sculpt {
    let (w, h, d) = (size.x, size.y, size.z);
    let mut s = Sculpt::default();
    s.add(Mat::Nylon, bevel_box(w, 0.014, d, 0.005).turned(Quat::from_rotation_x(0.10)));
    s.add(Mat::Nylon, bevel_box(w, h, 0.014, 0.005).at(0.0, -h * 0.5 - 0.01, d * 0.5 - 0.005));
    for side in [-1.0, 1.0] {
        let x = side * (w * 0.5 - 0.005);
        s.add(Mat::Nylon, bevel_box(0.014, h - 0.01, d - 0.02, 0.005).at(x, 0.005 - h * 0.5, 0.0));
    }
    let louvres = ((w - 0.28) / LOUVRE_M).round().clamp(0.0, MOST);
    for i in 0..=louvres as u32 {
        s.add(
            Mat::Iron,
            bevel_box(0.020, 0.006, d * 0.5, 0.002).turned(Quat::from_rotation_x(0.10)).at(
                LOUVRE_M * (i as f32 - louvres * 0.5),
                0.009,
                -0.02,
            ),
        );
    }
    let lip = |x: f32| Vec3::new(x, -h, d * 0.5);
    s.add(Mat::Rubber, hose(&[lip(-w * 0.5), lip(0.0) + Vec3::new(0.0, -0.005, 0.005), lip(w * 0.5)], 0.010));
    for side in [-1.0, 1.0] {
        let x = side * (w * 0.5 - 0.04);
        s.add(Mat::GreyNylon, cylinder(0.014, 0.008, 0.002).at(x, 0.0, d * 0.5 - 0.04));
    }
    s
}

/// A ribbed plate with two corners cut, screwed on at four places.
fn guard(w: f32, h: f32) -> Sculpt {
    const RIBS: u8 = 5;
    let mut s = Sculpt::default();
    let (half, low, high) = (w * 0.5, 0.01 - h * 0.5, 0.01 + h * 0.5);
    let cut = (0.04_f32).min(w.min(h) * 0.2);
    let outline = [
        (-half, low),
        (half - cut, low),
        (half, low + cut),
        (half, high - cut * 1.25),
        (half - cut * 1.75, high),
        (-half, high),
    ];
    s.add(Mat::Nylon, plate(&outline, 0.010));
    for i in 0..RIBS {
        let y = low + h * 0.19 + (h * 0.62) * f32::from(i) / f32::from(RIBS - 1);
        s.add(Mat::GreyNylon, bevel_box(w * 0.76, 0.014, 0.014, 0.005).at(-0.01, y, 0.008));
    }
    let edge = (0.03_f32).min(cut);
    for (x, y) in [
        (edge - half, low + edge),
        (half - cut - 0.01, low + edge),
        (edge - half, high - edge),
        (half - cut * 1.75 - 0.02, high - edge),
    ] {
        s.add(Mat::Zinc, cylinder(0.014, 0.008, 0.003).along(Vec3::Z).at(x, y, 0.004));
        s.add(Mat::Iron, bevel_box(0.016, 0.003, 0.002, 0.0005).at(x, y, 0.013));
    }
    s
}

/// A padded lid: a tray upside down with grooves and a filler's hole.
fn lid(size: Vec3) -> Sculpt {
    const GROOVES: u8 = 4;
    let (w, h, d) = (size.x, size.y, size.z);
    let mut s = Sculpt::default();
    s.add(Mat::Nylon, bevel_box(w, h, d, (0.02_f32).min(h * 0.4)));
    for i in 0..GROOVES {
        let x = w * (-0.33 + 0.22 * f32::from(i));
        s.add(Mat::GreyNylon, bevel_box(0.012, 0.006, d * 0.8, 0.002).at(x, h * 0.5, 0.0));
    }
    s.add(Mat::GreyNylon, bevel_box(w * 0.5, 0.006, d * 0.16, 0.002).at(0.0, h * 0.5 + 0.001, d * 0.28));
    for (x, z) in [(-0.42, -0.38), (0.42, -0.38), (-0.42, 0.38), (0.42, 0.38)] {
        s.add(Mat::Zinc, cylinder(0.012, 0.006, 0.002).at(w * x, h * 0.5, d * z));
    }
    s
}
