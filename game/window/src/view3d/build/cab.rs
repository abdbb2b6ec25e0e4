//! What is worked in the cab: pedal, accelerator, key.

use bevy::math::{Quat, Vec3};
use bevy::transform::components::Transform;
use std::f32::consts::FRAC_PI_2;

use super::shell::BULKHEAD_Z;
use crate::view3d::made::Made;
use crate::view3d::materials::{Mat, Sculpt};
use crate::view3d::moves::{Moves, PEDAL_ARM_M};
use crate::view3d::shapes::{bevel_box, cylinder, lathe, plate, ring, sweep};
use front::hands::Thing;

/// The pedal with its box; hangs from its pivot.
pub(super) fn pedal(pivot: Vec3) -> Made {
    let mut made = Made::of(Thing::Pedal, Transform::from_translation(pivot), lever()).moving(Moves::Pedal);
    made.parts.push(Made {
        home: Transform::from_translation(-pivot),
        sculpt: bracket(pivot),
        moves: Some(Moves::AgainstPedal),
        ..Made::default()
    });
    made
}

/// The lever about its pivot.
fn lever() -> Sculpt {
    let mut lever = Sculpt::default();
    let l = PEDAL_ARM_M;
    // Steel strip, bent as such levers are.
    let strip = [
        (0.0, 0.03),
        (0.016, 0.02),
        (0.020, -0.12),
        (-0.004, -0.30),
        (-0.045, -0.40),
        (-0.062, -l),
        (-0.084, -l),
        (-0.078, -0.41),
        (-0.032, -0.27),
        (-0.016, -0.10),
        (-0.014, 0.02),
    ];
    lever.add(Mat::Iron, plate(&strip, 0.011).turned(Quat::from_rotation_y(-FRAC_PI_2)));
    lever.add(Mat::Zinc, cylinder(0.016, 0.06, 0.003).along(Vec3::X).at(-0.03, 0.0, 0.0));
    let pad = Vec3::new(0.0, -l + 0.005, -0.082);
    let tilt = Quat::from_rotation_x(0.55);
    lever.add(Mat::Iron, bevel_box(0.085, 0.065, 0.008, 0.003).turned(tilt).at(pad.x, pad.y, pad.z));
    lever.add(
        Mat::Rubber,
        bevel_box(0.09, 0.07, 0.014, 0.005).turned(tilt).at(pad.x, pad.y + 0.004, pad.z - 0.010),
    );
    for i in 0..5 {
        let along = tilt * Vec3::Y * (-0.024 + 0.012 * i as f32);
        lever.add(
            Mat::Nylon,
            bevel_box(0.078, 0.004, 0.006, 0.001).turned(tilt).at(
                pad.x + along.x,
                pad.y + 0.004 + along.y,
                pad.z - 0.017 + along.z,
            ),
        );
    }
    // Pin and fork of the push rod.
    lever.add(Mat::Steel, cylinder(0.007, 0.05, 0.001).along(Vec3::X).at(-0.025, -0.085, 0.008));
    lever.add(Mat::Zinc, bevel_box(0.028, 0.018, 0.045, 0.004).at(0.0, -0.085, 0.025));
    lever.add(Mat::Zinc, cylinder(0.006, 0.14, 0.001).along(Vec3::new(0.0, 0.12, 1.0)).at(0.0, -0.085, 0.03));
    lever
}

/// The box that the lever hangs in: right cheek whole, left cheek cut open.
fn bracket(p: Vec3) -> Sculpt {
    let mut bracket = Sculpt::default();
    let cheek = [(-0.07, -0.13), (0.165, -0.16), (0.165, 0.09), (-0.03, 0.09), (-0.08, 0.03)];
    let cut = [
        (0.10, -0.15),
        (0.165, -0.16),
        (0.165, 0.09),
        (0.06, 0.09),
        (-0.03, 0.035),
        (-0.03, -0.035),
        (0.03, -0.05),
    ];
    bracket.add(
        Mat::Zinc,
        plate(&cheek, 0.004).turned(Quat::from_rotation_y(-FRAC_PI_2)).at(p.x - 0.04, p.y, p.z),
    );
    bracket.add(
        Mat::Zinc,
        plate(&cut, 0.004).turned(Quat::from_rotation_y(-FRAC_PI_2)).at(p.x + 0.04, p.y, p.z),
    );
    bracket.add(Mat::Zinc, bevel_box(0.09, 0.004, 0.22, 0.001).at(p.x, p.y + 0.09, p.z + 0.06));
    bracket.add(Mat::Steel, cylinder(0.009, 0.10, 0.001).along(Vec3::X).at(p.x - 0.05, p.y, p.z));
    // Boot of the booster's rod.
    let boot = lathe(&[
        (0.045, 0.0),
        (0.045, 0.02),
        (0.034, 0.026),
        (0.038, 0.034),
        (0.03, 0.042),
        (0.034, 0.05),
        (0.024, 0.058),
        (0.026, 0.066),
        (0.012, 0.072),
        (0.0, 0.072),
    ]);
    bracket.add(Mat::Rubber, boot.along(Vec3::NEG_Z).at(p.x, p.y - 0.08, BULKHEAD_Z - 0.036));
    // Stop lamp switch.
    bracket
        .add(Mat::WhiteNylon, cylinder(0.011, 0.05, 0.003).along(Vec3::Z).at(p.x, p.y - 0.04, p.z - 0.085));
    bracket
}

/// The accelerator: starter and throttle are worked here.
pub(super) fn accelerator(a: Vec3) -> Made {
    let mut s = Sculpt::default();
    let top = Vec3::new(a.x + 0.01, a.y + 0.36, BULKHEAD_Z - 0.06);
    s.add(Mat::Nylon, bevel_box(0.06, 0.10, 0.05, 0.01).at(top.x, top.y, top.z + 0.01));
    s.add(
        Mat::Nylon,
        sweep(
            &[top, Vec3::new(a.x, a.y + 0.16, a.z + 0.10), a + Vec3::new(0.0, 0.06, 0.02)],
            0.012,
            0.008,
            10,
            Vec3::X,
        ),
    );
    let tilt = Quat::from_rotation_x(0.42);
    s.add(Mat::Rubber, bevel_box(0.052, 0.15, 0.016, 0.006).turned(tilt).at(a.x, a.y, a.z));
    for i in 0..6 {
        let along = tilt * Vec3::new(0.0, -0.05 + 0.02 * i as f32, -0.010);
        s.add(
            Mat::Nylon,
            bevel_box(0.044, 0.005, 0.004, 0.001).turned(tilt).at(a.x, a.y + along.y, a.z + along.z),
        );
    }
    Made::of(Thing::Starter, Transform::IDENTITY, s).moving(Moves::Accelerator)
}

/// The key in the lock; turns.
pub(super) fn key(lock: Transform) -> Made {
    let mut s = Sculpt::default();
    s.add(Mat::Steel, bevel_box(0.010, 0.004, 0.035, 0.001).at(0.0, 0.0, -0.014));
    s.add(Mat::Black, bevel_box(0.034, 0.013, 0.048, 0.006).at(0.0, 0.0, -0.052));
    s.add(Mat::Face, bevel_box(0.006, 0.002, 0.016, 0.0005).at(0.0, 0.0072, -0.052));
    s.add(Mat::Steel, ring(0.015, 0.0018).along(Vec3::new(0.3, 1.0, 0.0)).at(0.0, -0.006, -0.086));
    // A tag hangs from the ring.
    s.add(Mat::Face, bevel_box(0.030, 0.050, 0.002, 0.001).at(0.002, -0.044, -0.090));
    s.add(Mat::Pencil, bevel_box(0.02, 0.003, 0.003, 0.0005).at(0.002, -0.040, -0.090));
    s.add(Mat::Pencil, bevel_box(0.016, 0.003, 0.003, 0.0005).at(0.0, -0.050, -0.090));
    Made::of(Thing::Key, lock, s).moving(Moves::Key)
}
