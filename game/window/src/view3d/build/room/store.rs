//! Tool board and shelf.

use crate::view3d::materials::{Mat, Sculpt};
use crate::view3d::places::{self, BOARD, SHELF};
use crate::view3d::shapes::{bevel_box, cylinder};
use bevy::math::Vec3;

pub(super) fn board(s: &mut Sculpt) {
    let at = BOARD;
    s.add(Mat::Board, bevel_box(2.26, 1.02, 0.02, 0.003).at(at.x, at.y, at.z));
    for (w, h, x, y) in [
        (2.32, 0.035, 0.0, 0.52),
        (2.32, 0.035, 0.0, -0.52),
        (0.035, 1.04, 1.145, 0.0),
        (0.035, 1.04, -1.145, 0.0),
    ] {
        s.add(Mat::Oak, bevel_box(w, h, 0.04, 0.004).at(at.x + x, at.y + y, at.z + 0.005));
    }
    // A hook over each place, and the painted shade of what hangs there.
    for i in 0..16 {
        let hook = places::board_hook(i);
        s.add(
            Mat::Zinc,
            cylinder(0.004, 0.03, 0.001).along(Vec3::Z).at(hook.x, hook.y + 0.13, hook.z - 0.03),
        );
        s.add(Mat::Dado, bevel_box(0.17, 0.26, 0.002, 0.0005).at(hook.x, hook.y, at.z + 0.0125));
    }
}

pub(super) fn shelf(s: &mut Sculpt) {
    let (wide, deep) = (1.26, 0.36);
    for i in 0..5 {
        let y = SHELF.y + 0.41 * i as f32;
        s.add(Mat::Oak, bevel_box(wide, 0.024, deep, 0.003).at(SHELF.x + wide * 0.5, y - 0.012, SHELF.z));
        s.add(
            Mat::OakDark,
            bevel_box(wide, 0.03, 0.012, 0.002).at(SHELF.x + wide * 0.5, y - 0.012, SHELF.z + deep * 0.5),
        );
    }
    for x in [0.0, wide] {
        for z in [-0.16, 0.16] {
            s.add(Mat::Iron, bevel_box(0.035, 2.02, 0.035, 0.003).at(SHELF.x + x, 1.01, SHELF.z + z));
        }
    }
    // What always lies on top.
    s.add(Mat::Card, bevel_box(0.36, 0.2, 0.26, 0.004).at(SHELF.x + 0.3, 2.08, SHELF.z));
    s.add(Mat::Card, bevel_box(0.28, 0.14, 0.24, 0.004).at(SHELF.x + 0.75, 2.05, SHELF.z));
}
