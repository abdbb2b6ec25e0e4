//! Bulkhead and cab: floor, dashboard, seat, steering; the left side open.

use bevy::math::{Quat, Vec3};
use std::f32::consts::FRAC_PI_2;

use super::{BULKHEAD_Z, CAR_X, HALF_W};
use crate::view3d::materials::{Mat, Sculpt};

use crate::view3d::shapes::{Geo, bevel_box, cylinder, hose, plate, ring, sweep};

/// The wall between engine and cab.
pub(super) fn bulkhead(s: &mut Sculpt) {
    // Seen from the engine it is primed; towards the cabin it is lined.
    s.add(Mat::Primer, bevel_box(1.50, 0.86, 0.018, 0.003).at(CAR_X, 0.69, BULKHEAD_Z - 0.009));
    s.add(Mat::Cloth, bevel_box(1.50, 0.80, 0.016, 0.003).at(CAR_X, 0.67, BULKHEAD_Z - 0.028));
    s.add(Mat::Primer, bevel_box(1.56, 0.035, 0.10, 0.01).at(CAR_X, 1.125, BULKHEAD_Z - 0.02));
    for x in [-2.30, -1.98, -1.50] {
        s.add(Mat::Primer, bevel_box(0.05, 0.60, 0.02, 0.006).at(x, 0.72, BULKHEAD_Z + 0.006));
    }
    // Heater intake and a plate, so that the wall is not bare.
    s.add(Mat::Nylon, cylinder(0.055, 0.03, 0.006).along(Vec3::Z).at(-2.32, 0.80, BULKHEAD_Z));
    s.add(Mat::Face, bevel_box(0.10, 0.06, 0.003, 0.001).at(-2.12, 0.98, BULKHEAD_Z + 0.002));
    for i in 0..4 {
        s.add(
            Mat::Pencil,
            bevel_box(0.07 - 0.01 * (i % 2) as f32, 0.004, 0.003, 0.0005).at(
                -2.12,
                0.998 - 0.012 * i as f32,
                BULKHEAD_Z + 0.003,
            ),
        );
    }
}

/// What of the cab is left.
pub(super) fn cabin(s: &mut Sculpt, paint: Mat) {
    let back = -1.62;
    // Floor with carpet, tunnel, sill; cut faces pale.
    s.add(Mat::Cloth, bevel_box(1.56, 0.03, 1.0, 0.004).at(CAR_X, 0.30, -1.13));
    s.add(
        Mat::Cloth,
        bevel_box(1.48, 0.03, 0.28, 0.004).turned(Quat::from_rotation_x(0.75)).at(CAR_X, 0.385, -0.74),
    );
    s.add(Mat::Cloth, bevel_box(0.26, 0.20, 0.95, 0.05).at(CAR_X, 0.37, -1.14));
    for side in [-1.0, 1.0] {
        s.add(paint, bevel_box(0.09, 0.14, 0.94, 0.02).at(CAR_X + side * 0.81, 0.27, -1.16));
    }
    s.add(Mat::Section, bevel_box(1.70, 0.05, 0.012, 0.002).at(CAR_X, 0.30, back));
    // Right side closed, pillar on the left.
    let side = [(-0.72, 0.30), (-0.72, 1.0), (-0.95, 1.16), (-1.62, 1.16), (-1.62, 0.30)];
    s.add(paint, plate(&side, 0.02).turned(Quat::from_rotation_y(-FRAC_PI_2)).at(CAR_X - HALF_W, 0.0, 0.0));
    s.add(Mat::Section, bevel_box(0.024, 0.86, 0.012, 0.002).at(CAR_X - HALF_W, 0.73, back));
    s.add(paint, bevel_box(0.06, 0.70, 0.07, 0.02).at(CAR_X + 0.80, 0.66, -0.72));
    for side in [-1.0, 1.0] {
        let foot = Vec3::new(CAR_X + side * 0.78, 1.0, -0.70);
        s.add(paint, sweep(&[foot, foot + Vec3::new(-side * 0.02, 0.14, -0.10)], 0.03, 0.022, 10, Vec3::Z));
        s.add(
            Mat::Section,
            bevel_box(0.058, 0.008, 0.05, 0.002).turned(Quat::from_rotation_x(0.6)).at(
                foot.x - side * 0.02,
                foot.y + 0.142,
                foot.z - 0.102,
            ),
        );
    }
    // Dashboard, cut off short on the driver's side so that the pedals are seen.
    s.add(Mat::Nylon, bevel_box(0.92, 0.20, 0.28, 0.05).at(-2.06, 1.02, -0.84));
    s.add(Mat::Section, bevel_box(0.012, 0.17, 0.24, 0.02).at(-1.602, 1.02, -0.84));
    s.add(Mat::Nylon, bevel_box(0.36, 0.10, 0.012, 0.01).at(-2.1, 1.0, -0.985));
    for i in 0..5 {
        s.add(Mat::GreyNylon, bevel_box(0.15, 0.006, 0.02, 0.002).at(-1.75, 0.98 + 0.017 * i as f32, -0.984));
    }
    s.add(
        Mat::Zinc,
        hose(
            &[Vec3::new(-2.55, 0.96, -0.80), Vec3::new(-1.75, 0.96, -0.80), Vec3::new(-0.98, 0.96, -0.80)],
            0.022,
        ),
    );
    seat(s);
    steering(s);
}

fn seat(s: &mut Sculpt) {
    s.add(Mat::Cloth, bevel_box(0.46, 0.14, 0.40, 0.05).at(-1.32, 0.50, -1.50));
    s.add(Mat::Rag, bevel_box(0.34, 0.10, 0.34, 0.04).at(-1.32, 0.535, -1.48));
    // The back, leant, with its two struts for the head.
    let lean = Quat::from_rotation_x(-0.22);
    let back = Vec3::new(-1.32, 0.80, -1.76);
    let put = |g: Geo, x: f32, y: f32, z: f32| {
        let at = back + lean * Vec3::new(x, y, z);
        g.turned(lean).at(at.x, at.y, at.z)
    };
    s.add(Mat::Cloth, put(bevel_box(0.46, 0.56, 0.12, 0.05), 0.0, 0.0, 0.0));
    s.add(Mat::Rag, put(bevel_box(0.32, 0.44, 0.12, 0.04), 0.0, -0.02, 0.015));
    for x in [-0.06, 0.06] {
        s.add(Mat::Steel, put(cylinder(0.006, 0.07, 0.001), x, 0.27, 0.0));
    }
    s.add(Mat::Cloth, put(bevel_box(0.26, 0.14, 0.09, 0.04), 0.0, 0.39, 0.0));
    s.add(Mat::Iron, bevel_box(0.36, 0.10, 0.34, 0.01).at(-1.32, 0.37, -1.50));
}

fn steering(s: &mut Sculpt) {
    let foot = Vec3::new(-1.32, 0.72, -0.66);
    let hub = Vec3::new(-1.32, 1.06, -1.30);
    let axis = (hub - foot).normalize();
    s.add(Mat::Iron, sweep(&[foot, hub], 0.016, 0.016, 12, Vec3::Y));
    let tube = foot.lerp(hub, 0.42);
    s.add(Mat::GreyNylon, sweep(&[tube, foot.lerp(hub, 0.86)], 0.042, 0.05, 14, Vec3::Y));
    s.add(Mat::Nylon, ring(0.175, 0.014).along(axis).at(hub.x, hub.y, hub.z));
    s.add(
        Mat::Nylon,
        cylinder(0.05, 0.035, 0.01).along(axis).at(
            hub.x - axis.x * 0.02,
            hub.y - axis.y * 0.02,
            hub.z - axis.z * 0.02,
        ),
    );
    let across = Vec3::X;
    let down = axis.cross(across).normalize();
    for d in [across, -across, if down.y < 0.0 { down } else { -down }] {
        s.add(Mat::Nylon, sweep(&[hub + d * 0.03, hub + d * 0.172], 0.016, 0.008, 10, axis));
    }
    // Stalk, on the left.
    s.add(
        Mat::Nylon,
        hose(
            &[
                hub - axis * 0.09 + across * 0.03,
                hub - axis * 0.08 + across * 0.12,
                hub - axis * 0.075 + across * 0.19,
            ],
            0.009,
        ),
    );
}
