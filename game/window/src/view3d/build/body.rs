//! The car's front, cut: wings, bulkhead, crossmember, cabin floor with the left side open, covers.

use bevy::math::{Quat, Vec3};
use bevy::transform::components::Transform;
use std::f32::consts::{FRAC_PI_2, TAU};

use super::super::made::Made;
use super::super::materials::{Mat, Sculpt};
use super::super::places::{BULKHEAD_Z, CAR_X, GROMMET, WHEEL};
use super::super::shapes::{bevel_box, curve, cylinder, hose, lathe, plate, ring, sweep};
use super::room::bolt;
use front::hands::Thing;

/// Half the car's width.
const HALF_W: f32 = 0.86;

/// Everything that always stands there.
pub(in super::super) fn all() -> Vec<Made> {
    let mut car = Sculpt::default();
    for side in [-1.0, 1.0] {
        wing(&mut car, side);
        wheel(&mut car, side);
        headlight(&mut car, side);
    }
    front(&mut car);
    let mut shell = Sculpt::default();
    bulkhead(&mut shell);
    cabin(&mut shell);
    vec![Made::of(Thing::Car, Transform::IDENTITY, car), Made::scenery(shell)]
}

/// Side of a wing from in front of the wheel to the door, with its arch; x along the car's length.
fn wing_outline() -> Vec<(f32, f32)> {
    let mut out = vec![
        (-0.74, 0.24),
        (-0.74, 0.98),
        (-0.30, 0.965),
        (0.20, 0.925),
        (0.44, 0.86),
        (0.50, 0.70),
        (0.50, 0.34),
        (0.40, 0.30),
    ];
    for i in 0..=14 {
        let a = (i as f32 / 14.0) * 0.5 * TAU * 1.04 - 0.06;
        out.push((0.39 * a.cos(), WHEEL.y + 0.39 * a.sin()));
    }
    out
}

fn wing(s: &mut Sculpt, side: f32) {
    let x = CAR_X + side * HALF_W;
    let skin = plate(&wing_outline(), 0.022).turned(Quat::from_rotation_y(-FRAC_PI_2));
    s.add(Mat::CarPaint, skin.at(x, 0.0, 0.0));
    // Top flange into the bay, its rim rounded.
    let rim = [(-0.74, 0.98), (-0.30, 0.965), (0.20, 0.925), (0.44, 0.86)];
    let line: Vec<Vec3> = rim.iter().map(|(z, y)| Vec3::new(x - side * 0.035, y - 0.004, *z)).collect();
    s.add(Mat::CarPaint, sweep(&curve(&line, 6), 0.046, 0.016, 12, Vec3::Y));
    let inner: Vec<Vec3> = rim.iter().map(|(z, y)| Vec3::new(x - side * 0.10, y - 0.035, *z)).collect();
    s.add(Mat::Primer, sweep(&curve(&inner, 6), 0.035, 0.018, 10, Vec3::Y));
    // Inner wing and the tower of the spring strut.
    s.add(Mat::Primer, bevel_box(0.02, 0.42, 1.10, 0.004).at(x - side * 0.13, 0.70, -0.09));
    s.add(
        Mat::Primer,
        lathe(&[(0.13, 0.0), (0.115, 0.13), (0.09, 0.15), (0.0, 0.15)]).at(
            x - side * 0.17,
            0.70,
            -0.40 + 0.36 * f32::from(u8::from(side < 0.0)),
        ),
    );
    // Edge of the arch.
    let arch: Vec<Vec3> = (0..=14)
        .map(|i| {
            let a = i as f32 / 14.0 * 0.5 * TAU;
            Vec3::new(x + side * 0.006, WHEEL.y + 0.39 * a.sin(), 0.39 * a.cos())
        })
        .collect();
    s.add(Mat::CarPaint, sweep(&arch, 0.014, 0.014, 8, Vec3::Y));
    // Joint of wing and door, a lamp at its side.
    s.add(Mat::Iron, bevel_box(0.024, 0.70, 0.006, 0.001).at(x, 0.60, -0.70));
}

fn wheel(s: &mut Sculpt, side: f32) {
    let at = Vec3::new(CAR_X + side * (HALF_W - 0.10), WHEEL.y, WHEEL.z);
    let out = Vec3::X * side;
    let put = |g: super::super::shapes::Geo| g.along(out).at(at.x, at.y, at.z);
    let tyre = [
        (0.20, -0.085),
        (0.275, -0.095),
        (0.302, -0.08),
        (0.31, -0.04),
        (0.31, 0.04),
        (0.302, 0.08),
        (0.275, 0.095),
        (0.20, 0.085),
    ];
    s.add(Mat::Rubber, put(lathe(&tyre)));
    s.add(
        Mat::Cast,
        put(lathe(&[
            (0.0, 0.03),
            (0.05, 0.03),
            (0.10, 0.015),
            (0.17, 0.045),
            (0.19, 0.075),
            (0.205, 0.08),
            (0.205, 0.09),
            (0.20, 0.088),
        ])),
    );
    s.add(Mat::Iron, put(lathe(&[(0.0, -0.02), (0.14, -0.02), (0.14, 0.0), (0.0, 0.0)])));
    s.add(Mat::Steel, put(cylinder(0.032, 0.05, 0.006)));
    for i in 0..5 {
        let (sin, cos) = (i as f32 / 5.0 * TAU).sin_cos();
        let bolt_at = at + Vec3::new(side * 0.028, sin * 0.062, cos * 0.062);
        bolt(s, bolt_at, out, 0.011);
        let hole = Vec3::new(
            at.x + side * 0.034,
            at.y + (i as f32 / 5.0 * TAU + 0.6).sin() * 0.135,
            at.z + (i as f32 / 5.0 * TAU + 0.6).cos() * 0.135,
        );
        s.add(Mat::Iron, cylinder(0.026, 0.006, 0.001).along(out).at(hole.x, hole.y, hole.z));
    }
}

fn headlight(s: &mut Sculpt, side: f32) {
    let at = Vec3::new(CAR_X + side * 0.70, 0.735, 0.44);
    let shape =
        lathe(&[(0.0, -0.06), (0.06, -0.05), (0.095, 0.0), (0.105, 0.03), (0.10, 0.045), (0.092, 0.045)]);
    s.add(Mat::Steel, shape.along(Vec3::Z).at(at.x, at.y, at.z));
    s.add(
        Mat::Glass,
        lathe(&[(0.097, 0.035), (0.07, 0.055), (0.0, 0.065)]).along(Vec3::Z).at(at.x, at.y, at.z),
    );
    s.add(Mat::CarPaint, ring(0.108, 0.012).along(Vec3::Z).at(at.x, at.y, at.z + 0.032));
}

fn front(s: &mut Sculpt) {
    // Upper crossmember with the lock, lower crossmember, side posts.
    s.add(Mat::CarPaint, bevel_box(1.46, 0.05, 0.075, 0.012).at(CAR_X, 0.885, 0.465));
    s.add(Mat::Zinc, bevel_box(0.07, 0.055, 0.05, 0.006).at(CAR_X, 0.92, 0.46));
    s.add(Mat::Zinc, ring(0.02, 0.005).along(Vec3::X).at(CAR_X, 0.945, 0.46));
    s.add(Mat::Primer, bevel_box(1.50, 0.09, 0.09, 0.012).at(CAR_X, 0.265, 0.43));
    for side in [-1.0, 1.0] {
        s.add(Mat::Primer, bevel_box(0.05, 0.56, 0.06, 0.008).at(CAR_X + side * 0.545, 0.58, 0.44));
        s.add(Mat::CarPaint, bevel_box(0.16, 0.30, 0.03, 0.02).at(CAR_X + side * 0.75, 0.47, 0.47));
        // Longitudinal member.
        s.add(Mat::Primer, bevel_box(0.07, 0.10, 1.1, 0.01).at(CAR_X + side * 0.52, 0.42, -0.1));
        bolt(s, Vec3::new(CAR_X + side * 0.62, 0.912, 0.465), Vec3::Y, 0.010);
    }
    // Radiator, with fins and tanks.
    s.add(Mat::Iron, bevel_box(0.62, 0.42, 0.03, 0.003).at(-2.03, 0.565, 0.40));
    for i in 0..26 {
        s.add(Mat::Cast, bevel_box(0.60, 0.004, 0.036, 0.001).at(-2.03, 0.37 + 0.0156 * i as f32, 0.402));
    }
    for x in [-2.36, -1.70] {
        s.add(Mat::Nylon, bevel_box(0.055, 0.46, 0.05, 0.01).at(x, 0.565, 0.40));
    }
    s.add(
        Mat::Rubber,
        hose(
            &[
                Vec3::new(-1.70, 0.73, 0.37),
                Vec3::new(-1.66, 0.76, 0.30),
                Vec3::new(-1.70, 0.78, 0.18),
                Vec3::new(-1.78, 0.78, 0.10),
            ],
            0.02,
        ),
    );
    // Under-shield lip.
    s.add(Mat::Nylon, bevel_box(1.50, 0.05, 0.12, 0.02).at(CAR_X, 0.205, 0.46));
}

fn bulkhead(s: &mut Sculpt) {
    // Seen from the engine it is primed; towards the cabin it is lined.
    s.add(Mat::Primer, bevel_box(1.50, 0.86, 0.018, 0.003).at(CAR_X, 0.69, BULKHEAD_Z - 0.009));
    s.add(Mat::Cloth, bevel_box(1.50, 0.80, 0.016, 0.003).at(CAR_X, 0.67, BULKHEAD_Z - 0.028));
    s.add(Mat::Primer, bevel_box(1.56, 0.035, 0.10, 0.01).at(CAR_X, 1.125, BULKHEAD_Z - 0.02));
    for x in [-2.30, -1.98, -1.50] {
        s.add(Mat::Primer, bevel_box(0.05, 0.60, 0.02, 0.006).at(x, 0.72, BULKHEAD_Z + 0.006));
    }
    s.add(Mat::Rubber, ring(0.022, 0.008).along(Vec3::Z).at(GROMMET.x, GROMMET.y, BULKHEAD_Z + 0.004));
    s.add(Mat::Rubber, ring(0.022, 0.008).along(Vec3::Z).at(GROMMET.x, GROMMET.y, BULKHEAD_Z - 0.035));
    // Bracket of the four-way piece.
    s.add(Mat::Zinc, bevel_box(0.05, 0.008, 0.15, 0.002).at(-1.86, 0.895, -0.545));
    s.add(Mat::Zinc, bevel_box(0.05, 0.10, 0.008, 0.002).at(-1.86, 0.87, -0.614));
    bolt(s, Vec3::new(-1.86, 0.85, -0.608), Vec3::Z, 0.008);
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
    // Clips of the loom along the top.
    for x in [-1.30, -1.62, -1.92, -2.16] {
        s.add(Mat::Nylon, bevel_box(0.022, 0.035, 0.035, 0.005).at(x, 1.09, -0.592));
    }
}

fn cabin(s: &mut Sculpt) {
    let back = -1.62;
    // Floor with carpet, tunnel, sill; cut faces pale.
    s.add(Mat::Cloth, bevel_box(1.56, 0.03, 1.0, 0.004).at(CAR_X, 0.30, -1.13));
    s.add(
        Mat::Cloth,
        bevel_box(1.48, 0.03, 0.28, 0.004).turned(Quat::from_rotation_x(0.75)).at(CAR_X, 0.385, -0.74),
    );
    s.add(Mat::Cloth, bevel_box(0.26, 0.20, 0.95, 0.05).at(CAR_X, 0.37, -1.14));
    for side in [-1.0, 1.0] {
        s.add(Mat::CarPaint, bevel_box(0.09, 0.14, 0.94, 0.02).at(CAR_X + side * 0.81, 0.27, -1.16));
    }
    s.add(Mat::Section, bevel_box(1.70, 0.05, 0.012, 0.002).at(CAR_X, 0.30, back));
    // Right side closed, pillar on the left.
    let side = [(-0.72, 0.30), (-0.72, 1.0), (-0.95, 1.16), (-1.62, 1.16), (-1.62, 0.30)];
    s.add(
        Mat::CarPaint,
        plate(&side, 0.02).turned(Quat::from_rotation_y(-FRAC_PI_2)).at(CAR_X - HALF_W, 0.0, 0.0),
    );
    s.add(Mat::Section, bevel_box(0.024, 0.86, 0.012, 0.002).at(CAR_X - HALF_W, 0.73, back));
    s.add(Mat::CarPaint, bevel_box(0.06, 0.70, 0.07, 0.02).at(CAR_X + 0.80, 0.66, -0.72));
    for side in [-1.0, 1.0] {
        let foot = Vec3::new(CAR_X + side * 0.78, 1.0, -0.70);
        s.add(
            Mat::CarPaint,
            sweep(&[foot, foot + Vec3::new(-side * 0.02, 0.14, -0.10)], 0.03, 0.022, 10, Vec3::Z),
        );
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
    let put = |g: super::super::shapes::Geo, x: f32, y: f32, z: f32| {
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

/// Scuttle panel over the booster; x along its length.
pub(in super::super) fn scuttle() -> Sculpt {
    let mut s = Sculpt::default();
    s.add(Mat::Nylon, bevel_box(0.94, 0.014, 0.34, 0.005).turned(Quat::from_rotation_x(0.10)));
    s.add(Mat::Nylon, bevel_box(0.94, 0.13, 0.014, 0.005).at(0.0, -0.075, 0.165));
    for x in [-0.465, 0.465] {
        s.add(Mat::Nylon, bevel_box(0.014, 0.12, 0.32, 0.005).at(x, -0.06, 0.0));
    }
    for i in 0..16 {
        s.add(
            Mat::Iron,
            bevel_box(0.020, 0.006, 0.17, 0.002).turned(Quat::from_rotation_x(0.10)).at(
                -0.33 + 0.044 * i as f32,
                0.009,
                -0.02,
            ),
        );
    }
    s.add(
        Mat::Rubber,
        hose(
            &[Vec3::new(-0.47, -0.13, 0.17), Vec3::new(0.0, -0.135, 0.175), Vec3::new(0.47, -0.13, 0.17)],
            0.010,
        ),
    );
    for x in [-0.43, 0.43] {
        s.add(Mat::GreyNylon, cylinder(0.014, 0.008, 0.002).at(x, 0.0, 0.13));
    }
    s
}

/// Splash guard before the pump.
pub(in super::super) fn splash_guard() -> Sculpt {
    let mut s = Sculpt::default();
    let outline = [(-0.33, -0.20), (0.29, -0.20), (0.33, -0.16), (0.33, 0.17), (0.26, 0.22), (-0.33, 0.22)];
    s.add(Mat::Nylon, plate(&outline, 0.010));
    for i in 0..5 {
        s.add(
            Mat::GreyNylon,
            bevel_box(0.50, 0.014, 0.014, 0.005).at(-0.01, -0.12 + 0.065 * i as f32, 0.008),
        );
    }
    for (x, y) in [(-0.30, -0.17), (0.28, -0.17), (-0.30, 0.19), (0.24, 0.19)] {
        s.add(Mat::Zinc, cylinder(0.014, 0.008, 0.003).along(Vec3::Z).at(x, y, 0.004));
        s.add(Mat::Iron, bevel_box(0.016, 0.003, 0.002, 0.0005).at(x, y, 0.013));
    }
    s
}

/// The body's earth points, each a stud with a nut.
pub(in super::super) fn earth_points() -> Sculpt {
    let mut s = Sculpt::default();
    for name in ["body.31a", "body.31b", "body.31c", "body.31d"] {
        let Some(m) = super::super::places::fixed_mouth(name) else { continue };
        let out = if name == "body.31b" { Vec3::Y } else { m.out };
        let foot = m.at - out * 0.014;
        s.add(Mat::Zinc, cylinder(0.016, 0.003, 0.001).along(out).at(foot.x, foot.y, foot.z));
        s.add(Mat::Brass, cylinder(0.0045, 0.03, 0.001).along(out).at(foot.x, foot.y, foot.z));
        bolt(&mut s, foot + out * 0.004, out, 0.010);
    }
    s.add(Mat::Primer, bevel_box(0.05, 0.10, 0.02, 0.004).at(-1.04, 0.40, 0.44));
    s
}
