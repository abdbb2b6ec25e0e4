//! The side of a car in front of its door: a skin with the arch of its wheel, the arch's edge, the joint to the door.

use bevy::math::{Quat, Vec3};
use std::f32::consts::{FRAC_PI_2, TAU};

use super::{CAR_X, HALF_W};
use crate::view3d::materials::{Mat, Sculpt};
use crate::view3d::places::WHEEL;
use crate::view3d::shapes::{bevel_box, plate, sweep};

/// Radius of the arch in the skin, m.
const ARCH_M: f32 = 0.39;
/// Straight pieces of an arch.
const PIECES: usize = 14;

/// The edge of an arch.
pub(super) struct Edge {
    pub(super) mat: Mat,
    /// Radius of its middle, m.
    pub(super) radius: f32,
    /// How far it stands out of the skin, m.
    pub(super) out: f32,
    /// Half its width and half its thickness, m.
    pub(super) half: (f32, f32),
}

/// Builds one; `top` is the line of its top from the door to the nose, `under` from there back to the arch: along the
/// car's length, up, m.
pub(super) fn wing(
    s: &mut Sculpt,
    side: f32,
    paint: Mat,
    top: &[(f32, f32)],
    under: &[(f32, f32)],
    edge: &Edge,
) {
    let x = CAR_X + side * HALF_W;
    let mut outline = vec![(-0.74, 0.24)];
    outline.extend(top);
    outline.extend(under);
    outline.extend((0..=PIECES).map(|i| {
        // A little more than half a turn: the skin ends below the axle.
        let a = (i as f32 / PIECES as f32) * 0.5 * TAU * 1.04 - 0.06;
        (ARCH_M * a.cos(), WHEEL.y + ARCH_M * a.sin())
    }));
    let skin = plate(&outline, 0.022).turned(Quat::from_rotation_y(-FRAC_PI_2));
    s.add(paint, skin.at(x, 0.0, 0.0));
    let arch: Vec<Vec3> = (0..=PIECES)
        .map(|i| {
            let (sin, cos) = (i as f32 / PIECES as f32 * 0.5 * TAU).sin_cos();
            Vec3::new(x + side * edge.out, WHEEL.y + edge.radius * sin, edge.radius * cos)
        })
        .collect();
    s.add(edge.mat, sweep(&arch, edge.half.0, edge.half.1, 8, Vec3::Y));
    s.add(Mat::Iron, bevel_box(0.024, 0.70, 0.006, 0.001).at(x, 0.60, -0.70));
}
