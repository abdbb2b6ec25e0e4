//! Instruments with a dial: gauge, hand pump, and the face that those on the wall have too.

use bevy::math::{Quat, Vec3};
use bevy::transform::components::Transform;

use crate::ui::dial::printed::{Printed, figure};
use std::f32::consts::{FRAC_PI_2, TAU};

use crate::view3d::figures::figures;
use crate::view3d::made::Made;
use crate::view3d::materials::{Mat, Sculpt};
use crate::view3d::moves::{Moves, NEEDLE_START, NEEDLE_SWEEP};
use crate::view3d::shapes::{Geo, bevel_box, curve, cylinder, hexagon, lathe, plate, ring, sweep};

/// Numbers on a dial in the room, at most: more would not be told apart.
const MOST_NUMBERS: usize = 6;

/// A dial with its needle: marks and numbers as they are printed, the needle a part of its own.
pub(super) fn face(s: &mut Sculpt, parts: &mut Vec<Made>, card: usize, dial: &Printed, r: f32, at: Vec3) {
    let put = |g: Geo| g.along(Vec3::Z).at(at.x, at.y, at.z);
    s.add(
        Mat::Paint,
        put(lathe(&[(0.0, -0.018), (r * 0.9, -0.018), (r * 0.98, -0.010), (r, 0.0), (r, 0.016)])),
    );
    s.add(
        Mat::Brass,
        put(lathe(&[
            (r, 0.010),
            (r * 1.05, 0.012),
            (r * 1.05, 0.020),
            (r * 0.99, 0.025),
            (r * 0.93, 0.022),
            (r * 0.92, 0.012),
        ])),
    );
    s.add(Mat::Face, put(lathe(&[(0.0, 0.008), (r * 0.95, 0.008), (r * 0.95, 0.012), (0.0, 0.012)])));
    let n = dial.divisions();
    // Finer marks than these run together at a glance from the car.
    let every = if 60 < n { 2 } else { 1 };
    for i in (0..=n).filter(|i| i.is_multiple_of(every) || dial.numbered(*i)) {
        let angle = NEEDLE_START - NEEDLE_SWEEP * i as f32 / n as f32;
        let (reach, wide) = if dial.numbered(i) {
            (0.17, 0.028)
        } else if dial.halfway(i) {
            (0.13, 0.020)
        } else {
            (0.09, 0.011)
        };
        let turn = Quat::from_rotation_z(angle);
        let place = at + turn * Vec3::Y * (r * (0.90 - reach * 0.5));
        s.add(
            Mat::Ink,
            bevel_box(r * wide, r * reach, 0.001, 0.0001).turned(turn).at(place.x, place.y, at.z + 0.0125),
        );
    }
    let numbered: Vec<u32> = (0..=n).filter(|i| dial.numbered(*i)).collect();
    let step = numbered.len().div_ceil(MOST_NUMBERS);
    for i in numbered.into_iter().step_by(step) {
        let turn = Quat::from_rotation_z(NEEDLE_START - NEEDLE_SWEEP * i as f32 / n as f32);
        let text = figure(dial.mark(i));
        // Long numbers stand further in, so that they clear the marks beside them.
        let place = at + turn * Vec3::Y * (r * (0.58 - 0.03 * text.chars().count() as f32));
        s.add(Mat::Ink, figures(&text, r * 0.185).at(place.x, place.y, at.z + 0.0128));
    }
    s.add(Mat::Ink, figures(dial.unit, r * 0.15).at(at.x, at.y - r * 0.64, at.z + 0.0128));
    let mut needle = Sculpt::default();
    needle.add(
        Mat::Ink,
        plate(
            &[(-0.035, -0.22), (0.035, -0.22), (0.030, 0.1), (0.010, 0.84), (-0.010, 0.84), (-0.030, 0.1)]
                .map(|(x, y)| (x * r, y * r)),
            0.0016,
        ),
    );
    needle.add(Mat::Brass, cylinder(r * 0.075, 0.004, 0.001).along(Vec3::Z).at(0.0, 0.0, -0.001));
    parts.push(Made {
        home: Transform::from_xyz(at.x, at.y, at.z + 0.0155),
        sculpt: needle,
        moves: Some(Moves::Needle { card, min: dial.own(dial.min) as f32, max: dial.own(dial.max) as f32 }),
        ..Made::default()
    });
}

pub(super) fn gauge(s: &mut Sculpt, rest: &mut Sculpt) {
    s.add(Mat::Brass, bevel_box(0.020, 0.022, 0.018, 0.003).at(0.0, -0.082, 0.0));
    s.add(Mat::Brass, hexagon(0.014, 0.016).at(0.0, -0.108, 0.0));
    s.add(Mat::Brass, cylinder(0.006, 0.03, 0.001).at(0.0, -0.130, 0.0));
    s.add(
        Mat::Zinc,
        ring(0.012, 0.003).along(Vec3::X).turned(Quat::from_rotation_y(FRAC_PI_2)).at(0.0, 0.105, 0.0),
    );
    coil(rest, Mat::Accent, Vec3::new(0.0, -0.132, 0.0), 0.0055);
}

/// A lead or hose in loops, as it hangs from something on the board.
pub(super) fn coil(s: &mut Sculpt, mat: Mat, from: Vec3, radius: f32) {
    let mut line = vec![from + Vec3::Y * 0.01, from - Vec3::Y * 0.012];
    for i in 0..14 {
        let a = i as f32 / 6.0 * TAU + 1.57;
        line.push(from + Vec3::new(0.030 * a.cos(), -0.048 + 0.032 * a.sin(), 0.004 + 0.0012 * i as f32));
    }
    s.add(mat, sweep(&curve(&line, 3), radius, radius, 7, Vec3::Z));
}

pub(in crate::view3d) fn hand_pump(s: &mut Sculpt, rest: &mut Sculpt) {
    // Barrel to the right, dial above it, pistol grip with its lever below.
    s.add(
        Mat::Case,
        lathe(&[
            (0.0, -0.06),
            (0.020, -0.06),
            (0.023, -0.056),
            (0.023, 0.06),
            (0.018, 0.066),
            (0.009, 0.070),
            (0.007, 0.085),
            (0.0, 0.085),
        ])
        .along(Vec3::X)
        .at(0.0, 0.045, 0.0),
    );
    s.add(Mat::Steel, cylinder(0.006, 0.05, 0.001).along(-Vec3::X).at(-0.058, 0.045, 0.0));
    s.add(Mat::Brass, cylinder(0.009, 0.03, 0.001).at(0.018, 0.055, 0.0));
    let grip = plate(&[(-0.055, 0.04), (-0.02, 0.04), (-0.028, -0.10), (-0.062, -0.10)], 0.024);
    s.add(Mat::Rubber, grip.at(0.0, 0.0, 0.0));
    let lever = plate(
        &[
            (-0.01, 0.035),
            (0.012, 0.03),
            (0.030, -0.03),
            (0.028, -0.10),
            (0.016, -0.10),
            (0.014, -0.03),
            (-0.006, 0.012),
        ],
        0.014,
    );
    s.add(Mat::Zinc, lever);
    s.add(Mat::Brass, cylinder(0.006, 0.032, 0.001).along(Vec3::Z).at(-0.002, 0.028, -0.016));
    coil(rest, Mat::Accent, Vec3::new(0.088, 0.03, 0.0), 0.005);
}
