//! Floor, walls, windows, lamps under the ceiling.

use crate::view3d::materials::{Mat, Sculpt};
use bevy::math::{Quat, Vec3};
use bevy::transform::components::Transform;
use std::f32::consts::FRAC_PI_2;

use crate::view3d::shapes::{bevel_box, cylinder};

pub(super) fn shell() -> Sculpt {
    let mut s = Sculpt::default();
    s.add(Mat::Floor, bevel_box(7.4, 0.1, 7.0, 0.001).at(0.1, -0.05, 0.9));
    let wall = |s: &mut Sculpt, x: f32, z: f32, w: f32, d: f32| {
        s.add(Mat::Wall, bevel_box(w, 2.1, d, 0.001).at(x, 2.05, z));
        s.add(Mat::Dado, bevel_box(w + 0.01, 1.0, d + 0.01, 0.001).at(x, 0.5, z));
    };
    wall(&mut s, 0.1, -2.45, 7.4, 0.1);
    wall(&mut s, -3.45, 0.9, 0.1, 7.0);
    wall(&mut s, 3.75, 0.9, 0.1, 7.0);
    wall(&mut s, 0.1, 4.35, 7.4, 0.1);
    s.add(Mat::Wall, bevel_box(7.4, 0.1, 7.0, 0.001).at(0.1, 3.12, 0.9));
    // Skirting.
    s.add(Mat::Iron, bevel_box(7.3, 0.09, 0.02, 0.004).at(0.1, 0.045, -2.385));
    // Window in the left wall, and one behind the car.
    for (at, turned) in [(Vec3::new(-3.39, 1.75, 0.2), FRAC_PI_2), (Vec3::new(-2.1, 1.85, -2.39), 0.0)] {
        let to = Transform::from_translation(at).with_rotation(Quat::from_rotation_y(turned));
        let mut w = Sculpt::default();
        w.add(Mat::Tube, bevel_box(1.5, 0.95, 0.01, 0.001));
        for x in [-0.75, -0.25, 0.25, 0.75] {
            w.add(Mat::Iron, bevel_box(0.035, 1.0, 0.05, 0.004).at(x, 0.0, 0.01));
        }
        for y in [-0.49, 0.0, 0.49] {
            w.add(Mat::Iron, bevel_box(1.55, 0.035, 0.05, 0.004).at(0.0, y, 0.01));
        }
        w.add(Mat::Oak, bevel_box(1.62, 0.035, 0.14, 0.006).at(0.0, -0.53, 0.04));
        s.join(&w, to);
    }
    // Lines on the floor: the car's bay.
    for x in [-2.85, -0.12] {
        s.add(Mat::Marking, bevel_box(0.06, 0.004, 3.6, 0.001).at(x, 0.001, -0.3));
    }
    s.add(Mat::Marking, bevel_box(2.79, 0.004, 0.06, 0.001).at(-1.485, 0.001, 1.5));
    // Drain in the floor.
    for i in 0..9 {
        s.add(Mat::Iron, bevel_box(1.9, 0.006, 0.012, 0.002).at(-1.5, 0.0, 1.16 + 0.018 * i as f32));
    }
    // Lamps under the ceiling.
    for (x, z) in [(0.75, -1.2), (-1.6, 0.3), (1.6, 1.6)] {
        s.add(Mat::Tube, bevel_box(1.3, 0.03, 0.10, 0.01).at(x, 2.60, z));
        s.add(Mat::GreyNylon, bevel_box(1.36, 0.05, 0.16, 0.01).at(x, 2.64, z));
        for end in [-0.55, 0.55] {
            s.add(Mat::Iron, cylinder(0.005, 0.42, 0.001).at(x + end, 2.65, z));
        }
    }
    s
}
