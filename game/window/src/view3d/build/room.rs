//! The workshop itself: floor, walls, window, bench with vice and supply, tool board, shelf, desk,
//! trolley, lamp overhead, and what tells that people work here.

use bevy::math::{Quat, Vec3};
use bevy::transform::components::Transform;
use std::f32::consts::FRAC_PI_2;

use super::super::made::Made;
use super::super::materials::{Mat, Sculpt};
use super::super::moves::Moves;
use super::super::places::{self, BENCH, BOARD, DESK, SHELF, TROLLEY};
use super::super::shapes::{bevel_box, cylinder, hexagon, hose, lathe, plate, ring, sweep};
use front::hands::Thing;

/// Everything.
pub(in super::super) fn all() -> Vec<Made> {
    let mut furniture = Sculpt::default();
    bench(&mut furniture);
    board(&mut furniture);
    shelf(&mut furniture);
    desk(&mut furniture);
    trolley(&mut furniture);
    story(&mut furniture);
    let mut shell = Made::scenery(shell());
    shell.shadowless = true;
    vec![shell, Made::scenery(furniture)]
}

fn shell() -> Sculpt {
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

fn bench(s: &mut Sculpt) {
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

fn rag(s: &mut Sculpt, to: Transform) {
    let mut v = Sculpt::default();
    let fold = [(-0.11, 0.0), (-0.05, 0.012), (0.0, 0.003), (0.05, 0.014), (0.11, 0.0)];
    let line: Vec<Vec3> = fold.iter().map(|(x, y)| Vec3::new(*x, *y, 0.0)).collect();
    v.add(Mat::Rag, sweep(&super::super::shapes::curve(&line, 5), 0.075, 0.006, 10, Vec3::Y));
    v.add(
        Mat::Rag,
        sweep(&super::super::shapes::curve(&line, 5), 0.05, 0.006, 10, Vec3::Y)
            .turned(Quat::from_rotation_y(0.6))
            .at(0.02, 0.012, 0.01),
    );
    s.join(&v, to);
}

fn board(s: &mut Sculpt) {
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

fn shelf(s: &mut Sculpt) {
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

fn desk(s: &mut Sculpt) {
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

fn trolley(s: &mut Sculpt) {
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
fn story(s: &mut Sculpt) {
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
pub(in super::super) fn chocks() -> Vec<Made> {
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
pub(in super::super) fn extraction() -> Vec<Made> {
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

/// Job card and data sheet.
pub(in super::super) fn papers() -> Vec<Made> {
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

/// A bolt head looking along `out`.
pub(in super::super) fn bolt(s: &mut Sculpt, at: Vec3, out: Vec3, size: f32) {
    s.add(Mat::Zinc, hexagon(size, size * 0.7).along(out).at(at.x, at.y, at.z));
    s.add(Mat::Zinc, cylinder(size * 1.35, size * 0.18, size * 0.05).along(out).at(at.x, at.y, at.z));
}
