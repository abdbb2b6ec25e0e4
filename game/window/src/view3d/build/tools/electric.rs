//! Instruments for current: lamp, meters, the lead with a button; and the digits of displays.

use crate::view3d::displays::{self, Display};
use crate::view3d::figures::figures;
use crate::view3d::made::Made;
use crate::view3d::materials::{Mat, Sculpt};
use crate::view3d::moves::{Moves, knob_angle};
use crate::view3d::shapes::{bevel_box, cylinder, hose, lathe, plate, ring, sweep};
use bevy::math::{Quat, Vec3};
use bevy::transform::components::Transform;
use sim_core::parts::instruments::MeterMode;

/// Where the bulb stands on its socket, m.
pub(in crate::view3d) const BULB: Vec3 = Vec3::new(0.0, 0.020, 0.0);

/// The socket of a lamp.
pub(in crate::view3d) fn socket(s: &mut Sculpt) {
    s.add(
        Mat::Nylon,
        lathe(&[(0.0, -0.06), (0.014, -0.06), (0.022, -0.05), (0.024, -0.01), (0.020, 0.0), (0.0, 0.0)])
            .at(0.0, -0.01, 0.0),
    );
    s.add(
        Mat::Brass,
        lathe(&[(0.0, 0.0), (0.016, 0.0), (0.016, 0.028), (0.013, 0.032), (0.0, 0.032)]).at(0.0, -0.01, 0.0),
    );
}

/// Its bulb.
pub(in crate::view3d) fn bulb() -> Sculpt {
    let mut bulb = Sculpt::default();
    bulb.add(
        Mat::Glass,
        lathe(&[(0.012, 0.0), (0.020, 0.014), (0.026, 0.034), (0.023, 0.052), (0.013, 0.064), (0.0, 0.068)]),
    );
    bulb
}

/// Bulb in a socket, and two leads with their clips.
pub(super) fn lamp(s: &mut Sculpt, rest: &mut Sculpt, parts: &mut Vec<Made>, card: usize) {
    socket(s);
    parts.push(Made {
        home: Transform::from_translation(BULB),
        sculpt: bulb(),
        filament: Some(card),
        ..Made::default()
    });
    for (x, mat) in [(-0.014, Mat::Red), (0.014, Mat::Black)] {
        let from = Vec3::new(x, -0.068, 0.0);
        let side = f32::signum(x);
        rest.add(
            mat,
            hose(
                &[
                    from,
                    from + Vec3::new(side * 0.01, -0.03, 0.01),
                    from + Vec3::new(side * 0.045, -0.02, 0.012),
                    from + Vec3::new(side * 0.050, 0.05, 0.008),
                ],
                0.0035,
            ),
        );
        let clip = from + Vec3::new(side * 0.050, 0.05, 0.008);
        rest.add(mat, bevel_box(0.016, 0.034, 0.014, 0.004).at(clip.x, clip.y + 0.015, clip.z));
        rest.add(
            Mat::Zinc,
            plate(
                &[
                    (-0.006, 0.0),
                    (0.006, 0.0),
                    (0.003, 0.030),
                    (0.001, 0.024),
                    (-0.001, 0.030),
                    (-0.003, 0.024),
                ],
                0.006,
            )
            .at(clip.x, clip.y + 0.030, clip.z),
        );
    }
}

/// Middle of a meter's knob, m.
const KNOB_Y: f32 = -0.006;

/// The pointer of a meter's knob.
pub(super) fn knob(card: usize) -> Made {
    let mut s = Sculpt::default();
    s.add(Mat::Face, bevel_box(0.004, 0.022, 0.002, 0.0005).at(0.0, 0.011, 0.0));
    Made {
        home: Transform::from_xyz(0.0, KNOB_Y, 0.0285),
        sculpt: s,
        moves: Some(Moves::Knob(card)),
        ..Made::default()
    }
}

/// The digits of a display, about `at`.
pub(super) fn display(card: usize, at: Vec3, height: f32, digits: usize) -> Made {
    let mut s = Sculpt::default();
    // Eights till it is known what it shows.
    s.add(Mat::Ink, displays::digits(&"8".repeat(digits), digits, height));
    Made {
        home: Transform::from_translation(at),
        sculpt: s,
        display: Some(Display { card, height, digits }),
        ..Made::default()
    }
}

pub(in crate::view3d) fn multimeter(s: &mut Sculpt, rest: &mut Sculpt) {
    s.add(Mat::Case, bevel_box(0.100, 0.185, 0.036, 0.010).at(0.0, 0.01, 0.0));
    s.add(Mat::Rubber, bevel_box(0.112, 0.030, 0.040, 0.010).at(0.0, 0.092, 0.0));
    s.add(Mat::Rubber, bevel_box(0.112, 0.030, 0.040, 0.010).at(0.0, -0.072, 0.0));
    s.add(Mat::Display, bevel_box(0.080, 0.042, 0.004, 0.001).at(0.0, 0.062, 0.019));
    s.add(Mat::Nylon, cylinder(0.024, 0.010, 0.003).along(Vec3::Z).at(0.0, KNOB_Y, 0.018));
    for mode in [MeterMode::Off, MeterMode::Volt, MeterMode::Ohm, MeterMode::Ampere] {
        let turn = Quat::from_rotation_z(knob_angle(mode));
        let at = Vec3::Y * KNOB_Y + turn * Vec3::Y * 0.0285;
        s.add(Mat::Ink, bevel_box(0.002, 0.005, 0.001, 0.0003).turned(turn).at(at.x, at.y, 0.0185));
        let at = Vec3::Y * KNOB_Y + turn * Vec3::Y * 0.0385;
        let sign = match mode {
            MeterMode::Off => "0",
            MeterMode::Volt => "V",
            MeterMode::Ohm => "Ω",
            MeterMode::Ampere => "A",
        };
        s.add(Mat::Ink, figures(sign, 0.012).at(at.x, at.y, 0.0186));
    }
    for (x, mat) in [(-0.035, Mat::Red), (-0.005, Mat::Black), (0.025, Mat::Red)] {
        s.add(mat, ring(0.007, 0.002).along(Vec3::Z).at(x, -0.055, 0.020));
        s.add(Mat::Ink, cylinder(0.005, 0.002, 0.0005).along(Vec3::Z).at(x, -0.055, 0.019));
    }
    for (x, mat, side) in [(-0.005, Mat::Black, -1.0), (0.025, Mat::Red, 1.0)] {
        s.add(mat, cylinder(0.006, 0.022, 0.002).along(Vec3::Z).at(x, -0.055, 0.018));
        let from = Vec3::new(x, -0.055, 0.040);
        let end = Vec3::new(side * 0.075, -0.03, 0.008);
        rest.add(
            mat,
            hose(
                &[
                    from,
                    from + Vec3::new(0.0, -0.035, 0.006),
                    Vec3::new(side * 0.05, -0.12, 0.02),
                    end + Vec3::new(0.0, -0.05, 0.0),
                    end,
                ],
                0.003,
            ),
        );
        rest.add(
            mat,
            lathe(&[(0.0, 0.0), (0.006, 0.0), (0.008, 0.01), (0.006, 0.05), (0.003, 0.056)])
                .at(end.x, end.y, end.z),
        );
        rest.add(Mat::Steel, cylinder(0.0015, 0.025, 0.0003).at(end.x, end.y + 0.055, end.z));
    }
}

pub(super) fn clamp_ammeter(s: &mut Sculpt) {
    // Jaw above, open a little at its tip; lever at the side.
    let arc = |from: f32, to: f32| -> Vec<Vec3> {
        (0..=12)
            .map(|i| {
                let a = from + (to - from) * i as f32 / 12.0;
                Vec3::new(0.034 * a.sin(), 0.085 + 0.040 * a.cos(), 0.0)
            })
            .collect()
    };
    s.add(Mat::Black, sweep(&arc(0.06, 3.0), 0.010, 0.013, 10, Vec3::Z));
    s.add(Mat::Red, sweep(&arc(-0.06, -3.0), 0.010, 0.013, 10, Vec3::Z));
    s.add(Mat::Case, bevel_box(0.072, 0.135, 0.032, 0.012).at(0.0, -0.035, 0.0));
    s.add(Mat::Red, plate(&[(-0.034, 0.03), (-0.034, -0.03), (-0.052, 0.0), (-0.048, 0.035)], 0.016));
    s.add(Mat::Display, bevel_box(0.050, 0.028, 0.003, 0.001).at(0.0, -0.065, 0.0165));
    s.add(Mat::Nylon, cylinder(0.017, 0.008, 0.002).along(Vec3::Z).at(0.0, -0.015, 0.015));
    s.add(Mat::Face, bevel_box(0.003, 0.013, 0.002, 0.0004).at(0.0, -0.009, 0.0235));
}

pub(in crate::view3d) fn push_lead(s: &mut Sculpt, rest: &mut Sculpt) {
    s.add(
        Mat::Case,
        lathe(&[(0.0, -0.08), (0.016, -0.08), (0.021, -0.07), (0.021, 0.05), (0.016, 0.062), (0.0, 0.062)]),
    );
    s.add(Mat::Zinc, lathe(&[(0.017, 0.060), (0.017, 0.066), (0.012, 0.068)]));
    s.add(Mat::Red, lathe(&[(0.0125, 0.062), (0.0125, 0.082), (0.010, 0.085), (0.0, 0.086)]));
    // Fuse seen in a window.
    s.add(Mat::Ink, bevel_box(0.014, 0.040, 0.004, 0.001).at(0.0, 0.0, 0.0195));
    s.add(Mat::Glass, cylinder(0.004, 0.030, 0.001).at(0.0, -0.015, 0.022));
    for y in [-0.017, 0.012] {
        s.add(Mat::Zinc, cylinder(0.0045, 0.006, 0.001).at(0.0, y, 0.022));
    }
    for (x, mat) in [(-0.008, Mat::Red), (0.008, Mat::Black)] {
        let side = f32::signum(x);
        let from = Vec3::new(x, -0.078, 0.0);
        let clip = Vec3::new(side * 0.055, -0.005, 0.006);
        rest.add(
            mat,
            hose(
                &[
                    from,
                    from + Vec3::new(0.0, -0.03, 0.0),
                    Vec3::new(side * 0.045, -0.10, 0.008),
                    clip + Vec3::new(0.0, -0.03, 0.0),
                    clip,
                ],
                0.0035,
            ),
        );
        rest.add(mat, bevel_box(0.014, 0.036, 0.014, 0.004).at(clip.x, clip.y + 0.016, clip.z));
        rest.add(Mat::Zinc, bevel_box(0.008, 0.024, 0.006, 0.002).at(clip.x, clip.y + 0.042, clip.z));
    }
}
