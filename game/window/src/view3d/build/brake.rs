//! Brake booster with master cylinder and tank, pedal box cut open, pedals.

use bevy::math::{Quat, Vec3};
use bevy::transform::components::Transform;
use std::f32::consts::{FRAC_PI_2, TAU};

use super::super::made::Made;
use super::super::materials::{Mat, Sculpt};
use super::super::moves::Moves;
use super::super::places::{self, ACCELERATOR, BOOSTER, BULKHEAD_Z, PEDAL_ARM_M, PEDAL_PIVOT};
use super::super::shapes::{bevel_box, cylinder, hexagon, hose, lathe, plate, ring, sweep};
use super::room::bolt;
use front::hands::Thing;

/// The booster with what is bolted to it.
pub(in super::super) fn booster() -> Sculpt {
    let mut s = Sculpt::default();
    let at = BOOSTER;
    // Two pressed shells rolled together at the rim, seen along +z.
    let shell = lathe(&[
        (0.0, -0.10),
        (0.095, -0.10),
        (0.115, -0.085),
        (0.148, -0.035),
        (0.153, -0.02),
        (0.160, -0.012),
        (0.160, 0.010),
        (0.152, 0.018),
        (0.143, 0.030),
        (0.128, 0.072),
        (0.108, 0.098),
        (0.072, 0.110),
        (0.060, 0.122),
        (0.0, 0.122),
    ]);
    s.add(Mat::Paint, shell.along(Vec3::Z).at(at.x, at.y, at.z));
    // Notches of the rim.
    for i in 0..8 {
        let (sin, cos) = ((i as f32 + 0.5) / 8.0 * TAU).sin_cos();
        s.add(
            Mat::Paint,
            bevel_box(0.03, 0.012, 0.03, 0.004)
                .turned(Quat::from_rotation_z((i as f32 + 0.5) / 8.0 * TAU - FRAC_PI_2))
                .at(at.x + 0.158 * cos, at.y + 0.158 * sin, at.z),
        );
    }
    // Ribs pressed into the front.
    s.add(Mat::Paint, ring(0.092, 0.006).along(Vec3::Z).at(at.x, at.y, at.z + 0.104));
    // A plate with numbers.
    s.add(
        Mat::Face,
        bevel_box(0.06, 0.03, 0.003, 0.001).turned(Quat::from_rotation_x(-0.5)).at(
            at.x,
            at.y - 0.108,
            at.z + 0.092,
        ),
    );
    // Vacuum fitting with its rubber grommet.
    let Some(m) = places::fixed_mouth("booster.vacuum") else { return s };
    let foot = Vec3::new(at.x - 0.098, at.y + 0.08, at.z + 0.10);
    s.add(
        Mat::Rubber,
        lathe(&[(0.024, 0.0), (0.022, 0.012), (0.012, 0.014)]).along(Vec3::Z).at(
            foot.x,
            foot.y,
            foot.z - 0.004,
        ),
    );
    s.add(Mat::Nylon, hose(&[foot, foot + Vec3::Z * 0.026, m.at - m.out * 0.03, m.at], 0.009));
    nipple(&mut s, m.at, m.out, 0.0075);
    master_cylinder(&mut s, at + Vec3::Z * 0.118);
    // Studs through the bulkhead.
    for (x, y) in [(-0.045, -0.06), (0.045, -0.06), (-0.045, 0.06), (0.045, 0.06)] {
        bolt(&mut s, Vec3::new(at.x + x, at.y + y, BULKHEAD_Z - 0.038), Vec3::NEG_Z, 0.008);
    }
    s
}

/// A barbed nipple whose mouth is at `at`.
pub(in super::super) fn nipple(s: &mut Sculpt, at: Vec3, out: Vec3, radius: f32) {
    let r = radius;
    let barb = lathe(&[
        (r * 0.8, -0.026),
        (r * 0.8, -0.022),
        (r * 1.15, -0.02),
        (r * 0.85, -0.012),
        (r * 1.12, -0.010),
        (r * 0.85, -0.002),
        (r * 0.8, 0.0),
        (r * 0.5, 0.0),
        (r * 0.5, -0.01),
        (0.0, -0.01),
    ]);
    s.add(Mat::Nylon, barb.along(out).at(at.x, at.y, at.z));
}

fn master_cylinder(s: &mut Sculpt, at: Vec3) {
    let body = lathe(&[
        (0.0, 0.0),
        (0.038, 0.0),
        (0.038, 0.012),
        (0.024, 0.02),
        (0.022, 0.15),
        (0.026, 0.152),
        (0.026, 0.17),
        (0.020, 0.176),
        (0.0, 0.176),
    ]);
    s.add(Mat::Cast, body.along(Vec3::Z).at(at.x, at.y, at.z));
    s.add(Mat::Cast, bevel_box(0.13, 0.042, 0.014, 0.006).at(at.x, at.y, at.z + 0.01));
    for x in [-0.05, 0.05] {
        s.add(Mat::Zinc, hexagon(0.011, 0.012).along(Vec3::Z).at(at.x + x, at.y, at.z + 0.016));
    }
    // Tank with fluid seen through it, and its cap.
    let t = at + Vec3::new(0.0, 0.078, 0.085);
    s.add(Mat::WhiteNylon, bevel_box(0.085, 0.050, 0.145, 0.016).at(t.x, t.y + 0.012, t.z));
    s.add(Mat::Fluid, bevel_box(0.0865, 0.028, 0.1465, 0.012).at(t.x, t.y - 0.006, t.z));
    s.add(Mat::WhiteNylon, cylinder(0.032, 0.02, 0.004).at(t.x, t.y + 0.034, t.z + 0.022));
    s.add(
        Mat::Black,
        lathe(&[(0.037, 0.0), (0.037, 0.018), (0.033, 0.022), (0.0, 0.022)]).at(
            t.x,
            t.y + 0.048,
            t.z + 0.022,
        ),
    );
    s.add(Mat::Black, bevel_box(0.05, 0.012, 0.012, 0.004).at(t.x, t.y + 0.074, t.z + 0.022));
    for z in [-0.035, 0.04] {
        s.add(Mat::Rubber, cylinder(0.014, 0.03, 0.003).at(t.x, t.y - 0.062, t.z + z));
    }
    s.add(Mat::Black, bevel_box(0.002, 0.003, 0.08, 0.0005).at(t.x + 0.043, t.y + 0.022, t.z));
    // Brake pipes.
    for (z, y) in [(0.06, 0.02), (0.13, 0.05)] {
        let from = at + Vec3::new(0.022, -0.004, z);
        s.add(Mat::Brass, hexagon(0.008, 0.014).along(Vec3::X).at(from.x, from.y, from.z));
        s.add(
            Mat::Zinc,
            hose(
                &[
                    from + Vec3::X * 0.01,
                    from + Vec3::new(0.04, 0.0, 0.0),
                    from + Vec3::new(0.06, -y, -0.02),
                    from + Vec3::new(0.05, -0.2, -0.10),
                    from + Vec3::new(0.05, -0.34, -0.2),
                    from + Vec3::new(0.05, -0.36, -0.6),
                ],
                0.0032,
            ),
        );
    }
}

/// The pedal with its box; hangs from its pivot.
pub(in super::super) fn pedal() -> Made {
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
    let mut made =
        Made::of(Thing::Pedal, Transform::from_translation(PEDAL_PIVOT), lever).moving(Moves::Pedal);
    // The box: right cheek whole, left cheek cut open.
    let mut bracket = Sculpt::default();
    let p = PEDAL_PIVOT;
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
    bracket.add(Mat::Rubber, boot.along(Vec3::NEG_Z).at(BOOSTER.x, BOOSTER.y - 0.03, BULKHEAD_Z - 0.036));
    // Stop lamp switch.
    bracket
        .add(Mat::WhiteNylon, cylinder(0.011, 0.05, 0.003).along(Vec3::Z).at(p.x, p.y - 0.04, p.z - 0.085));
    made.parts.push(Made {
        home: Transform::from_translation(-p),
        sculpt: bracket,
        moves: Some(Moves::AgainstPedal),
        ..Made::default()
    });
    made
}

/// The accelerator: starter and throttle are worked here.
pub(in super::super) fn accelerator() -> Made {
    let mut s = Sculpt::default();
    let a = ACCELERATOR;
    let top = Vec3::new(a.x + 0.01, 0.80, BULKHEAD_Z - 0.06);
    s.add(Mat::Nylon, bevel_box(0.06, 0.10, 0.05, 0.01).at(top.x, top.y, top.z + 0.01));
    s.add(
        Mat::Nylon,
        sweep(
            &[top, Vec3::new(a.x, 0.60, a.z + 0.10), a + Vec3::new(0.0, 0.06, 0.02)],
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
