//! Alternator and belt of an engine.

use bevy::math::{Quat, Vec3};
use std::f32::consts::TAU;

use crate::view3d::materials::{Mat, Sculpt};
use crate::view3d::mouth::Mouth;
use crate::view3d::shapes::{Geo, bevel_box, cylinder, lathe, sweep};

/// The alternator about `at`, with its terminal.
pub(super) fn alternator(s: &mut Sculpt, at: Vec3, b_plus: Option<&Mouth>) {
    let put = |g: Geo| g.along(Vec3::X).at(at.x, at.y, at.z);
    s.add(
        Mat::Cast,
        put(lathe(&[(0.0, -0.075), (0.052, -0.075), (0.068, -0.055), (0.070, -0.022), (0.064, -0.018)])),
    );
    s.add(Mat::Iron, put(lathe(&[(0.064, -0.022), (0.066, -0.018), (0.066, 0.018), (0.064, 0.022)])));
    s.add(
        Mat::Cast,
        put(lathe(&[(0.064, 0.018), (0.070, 0.022), (0.068, 0.055), (0.048, 0.078), (0.0, 0.082)])),
    );
    // Slits through which the copper is seen.
    for i in 0..12 {
        let (sin, cos) = (i as f32 / 12.0 * TAU).sin_cos();
        for x in [-0.064, 0.064] {
            s.add(
                Mat::Copper,
                bevel_box(0.012, 0.016, 0.010, 0.002)
                    .turned(Quat::from_rotation_x(-(i as f32) / 12.0 * TAU))
                    .at(at.x + x, at.y + 0.058 * cos, at.z + 0.058 * sin),
            );
        }
    }
    // Pulley.
    s.add(
        Mat::Iron,
        put(lathe(&[
            (0.0, -0.115),
            (0.03, -0.115),
            (0.032, -0.112),
            (0.026, -0.104),
            (0.032, -0.097),
            (0.026, -0.09),
            (0.032, -0.083),
            (0.0, -0.08),
        ])),
    );
    s.add(Mat::Cast, bevel_box(0.05, 0.09, 0.04, 0.008).at(at.x, at.y - 0.05, at.z - 0.06));
    // Terminal B+, with its rubber cap.
    if let Some(m) = b_plus {
        let root = at + Vec3::new(0.07, 0.03, 0.01);
        let stud = m.at - root;
        s.add(Mat::Brass, cylinder(0.005, stud.length(), 0.001).along(stud).at(root.x, root.y, root.z));
        s.add(Mat::Red, bevel_box(0.022, 0.022, 0.022, 0.006).at(m.at.x - 0.012, m.at.y - 0.014, m.at.z));
    }
}

/// Crank, alternator and water pump at the right end, with the belt round them.
pub(super) fn belt(s: &mut Sculpt) {
    let x = -0.31;
    let wheels = [(-0.10, 0.04, 0.075), (0.14, 0.32, 0.034), (0.14, 0.04, 0.055)];
    for (y, z, r) in wheels {
        s.add(
            Mat::Iron,
            lathe(&[
                (0.0, -0.012),
                (r, -0.012),
                (r * 0.93, -0.004),
                (r, 0.0),
                (r * 0.93, 0.004),
                (r, 0.012),
                (r * 0.6, 0.012),
                (r * 0.5, 0.004),
                (0.0, 0.004),
            ])
            .along(-Vec3::X)
            .at(x, y, z),
        );
    }
    s.add(Mat::Iron, cylinder(0.012, 0.44, 0.001).along(Vec3::X).at(x, 0.14, 0.32));
    let mut line = Vec::new();
    for (y, z, r, from, to) in [
        (-0.10, 0.04, 0.078, -2.6_f32, -0.2_f32),
        (0.14, 0.32, 0.037, -0.3, 1.7),
        (0.14, 0.04, 0.058, 1.5, 3.3),
    ] {
        for i in 0..=6 {
            let a = from + (to - from) * i as f32 / 6.0;
            line.push(Vec3::new(x, y + r * a.sin(), z + r * a.cos()));
        }
    }
    line.push(line[0]);
    s.add(Mat::Rubber, sweep(&line, 0.010, 0.003, 8, Vec3::Y));
    s.add(Mat::Nylon, bevel_box(0.02, 0.30, 0.16, 0.02).at(-0.278, 0.12, -0.07));
    s.add(Mat::Iron, cylinder(0.02, 0.02, 0.004).along(Vec3::X).at(-0.33, -0.1, 0.04));
}
