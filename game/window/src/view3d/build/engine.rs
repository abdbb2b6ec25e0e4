//! The engine's top: block, rocker cover, intake manifold with its vacuum fitting, alternator, belt.

use bevy::math::{Quat, Vec3};
use std::f32::consts::{FRAC_PI_2, TAU};

use super::super::materials::{Mat, Sculpt};
use super::super::places;
use super::super::shapes::{bevel_box, cylinder, hose, lathe, ring, sweep};
use super::brake::nipple;
use super::room::bolt;

/// The engine, standing across the car.
pub(in super::super) fn engine() -> Sculpt {
    let mut s = Sculpt::default();
    s.add(Mat::Iron, bevel_box(0.54, 0.34, 0.30, 0.02).at(-1.87, 0.52, -0.10));
    s.add(Mat::Cast, bevel_box(0.56, 0.11, 0.27, 0.012).at(-1.87, 0.735, -0.12));
    s.add(Mat::Iron, bevel_box(0.30, 0.22, 0.28, 0.04).at(-1.48, 0.46, -0.10));
    // Ribs of the head.
    for i in 0..5 {
        s.add(Mat::Cast, bevel_box(0.02, 0.09, 0.02, 0.004).at(-2.07 + 0.10 * i as f32, 0.735, 0.02));
    }
    // Rocker cover, with coils and filler cap.
    s.add(Mat::Nylon, bevel_box(0.54, 0.07, 0.20, 0.025).at(-1.87, 0.815, -0.15));
    s.add(Mat::Nylon, bevel_box(0.48, 0.02, 0.075, 0.008).at(-1.87, 0.852, -0.14));
    for i in 0..4 {
        let x = -2.045 + 0.115 * i as f32;
        s.add(Mat::Nylon, bevel_box(0.055, 0.035, 0.05, 0.008).at(x, 0.868, -0.14));
        s.add(Mat::GreyNylon, bevel_box(0.03, 0.02, 0.03, 0.004).at(x, 0.866, -0.175));
        bolt(&mut s, Vec3::new(x + 0.02, 0.884, -0.125), Vec3::Y, 0.006);
    }
    for x in [-2.10, -1.64] {
        for z in [-0.225, -0.075] {
            bolt(&mut s, Vec3::new(x, 0.848, z), Vec3::Y, 0.0075);
        }
    }
    s.add(
        Mat::Black,
        lathe(&[(0.034, 0.0), (0.034, 0.02), (0.028, 0.026), (0.0, 0.026)]).at(-1.675, 0.848, -0.20),
    );
    s.add(Mat::Black, bevel_box(0.05, 0.014, 0.012, 0.004).at(-1.675, 0.878, -0.20));
    manifold(&mut s);
    alternator(&mut s, Vec3::new(-1.72, 0.66, 0.22));
    belt(&mut s);
    // Dipstick, hoses of the coolant, throttle cable.
    s.add(
        Mat::Zinc,
        hose(
            &[Vec3::new(-1.95, 0.60, 0.08), Vec3::new(-1.96, 0.74, 0.12), Vec3::new(-1.97, 0.86, 0.155)],
            0.004,
        ),
    );
    s.add(Mat::Brown, ring(0.012, 0.003).along(Vec3::X).at(-1.97, 0.873, 0.16));
    // The pad of its earth.
    if let Some(m) = places::fixed_mouth("engine.ground") {
        s.add(Mat::Cast, bevel_box(0.05, 0.04, 0.05, 0.006).at(m.at.x + 0.03, m.at.y - 0.02, m.at.z - 0.02));
        bolt(&mut s, m.at - m.out * 0.01, m.out, 0.009);
    }
    s
}

fn manifold(s: &mut Sculpt) {
    // Plenum along the engine, four runners down to the head, throttle body at its left end.
    let plenum = lathe(&[
        (0.0, 0.0),
        (0.03, 0.0),
        (0.042, 0.012),
        (0.044, 0.03),
        (0.044, 0.40),
        (0.040, 0.425),
        (0.028, 0.435),
        (0.0, 0.435),
    ]);
    s.add(Mat::Cast, plenum.along(Vec3::X).at(-2.075, 0.895, 0.065));
    for i in 0..4 {
        let x = -2.02 + 0.11 * i as f32;
        let runner = [
            Vec3::new(x, 0.900, 0.085),
            Vec3::new(x, 0.86, 0.125),
            Vec3::new(x, 0.79, 0.110),
            Vec3::new(x, 0.735, 0.030),
        ];
        s.add(Mat::Cast, hose(&runner, 0.022));
        s.add(Mat::Cast, bevel_box(0.065, 0.055, 0.012, 0.004).at(x, 0.738, 0.022));
        bolt(s, Vec3::new(x + 0.026, 0.755, 0.028), Vec3::Z, 0.006);
    }
    let throttle = Vec3::new(-1.645, 0.895, 0.065);
    s.add(Mat::Cast, bevel_box(0.012, 0.10, 0.10, 0.006).at(throttle.x, throttle.y, throttle.z));
    s.add(Mat::Cast, cylinder(0.038, 0.055, 0.004).along(Vec3::X).at(throttle.x, throttle.y, throttle.z));
    s.add(
        Mat::Nylon,
        bevel_box(0.05, 0.045, 0.05, 0.008).at(throttle.x + 0.03, throttle.y - 0.055, throttle.z),
    );
    // Air hose to the filter box by the lock.
    let air = [
        throttle + Vec3::X * 0.055,
        throttle + Vec3::new(0.09, 0.01, 0.02),
        throttle + Vec3::new(0.10, 0.015, 0.11),
        throttle + Vec3::new(0.06, 0.01, 0.22),
    ];
    s.add(Mat::Rubber, hose(&air, 0.034));
    for i in 0..5 {
        let t = 0.25 + 0.12 * i as f32;
        let line = super::super::shapes::curve(&air, 8);
        let at = line[((line.len() - 1) as f32 * t) as usize];
        let next = line[(((line.len() - 1) as f32 * t) as usize + 1).min(line.len() - 1)];
        s.add(Mat::Rubber, ring(0.034, 0.004).along(next - at).at(at.x, at.y, at.z));
    }
    s.add(Mat::Nylon, bevel_box(0.26, 0.12, 0.15, 0.02).at(-1.62, 0.885, 0.335));
    s.add(Mat::Nylon, bevel_box(0.27, 0.02, 0.16, 0.008).at(-1.62, 0.925, 0.335));
    for x in [-1.74, -1.50] {
        s.add(Mat::Zinc, bevel_box(0.02, 0.04, 0.006, 0.002).at(x, 0.92, 0.412));
    }
    // The vacuum fitting at its right end.
    if let Some(m) = places::fixed_mouth("engine.manifold") {
        let foot = Vec3::new(-2.055, 0.905, 0.025);
        s.add(
            Mat::Brass,
            lathe(&[(0.014, 0.0), (0.014, 0.012), (0.010, 0.016)])
                .along(m.at - foot)
                .at(foot.x, foot.y, foot.z),
        );
        s.add(Mat::Brass, sweep(&[foot, m.at], 0.0075, 0.0075, 12, Vec3::Y));
        nipple(s, m.at, m.out, 0.0075);
    }
}

fn alternator(s: &mut Sculpt, at: Vec3) {
    let put = |g: super::super::shapes::Geo| g.along(Vec3::X).at(at.x, at.y, at.z);
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
    if let Some(m) = places::fixed_mouth("engine.b_plus") {
        let root = at + Vec3::new(0.07, 0.03, 0.01);
        let stud = m.at - root;
        s.add(Mat::Brass, cylinder(0.005, stud.length(), 0.001).along(stud).at(root.x, root.y, root.z));
        s.add(Mat::Red, bevel_box(0.022, 0.022, 0.022, 0.006).at(m.at.x - 0.012, m.at.y - 0.014, m.at.z));
    }
}

fn belt(s: &mut Sculpt) {
    // Crank, alternator, water pump at the engine's right end.
    let x = -2.18;
    let wheels = [(0.42, -0.06, 0.075), (0.66, 0.22, 0.034), (0.66, -0.06, 0.055)];
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
    s.add(Mat::Iron, cylinder(0.012, 0.44, 0.001).along(Vec3::X).at(x, 0.66, 0.22));
    let mut line = Vec::new();
    for (y, z, r, from, to) in [
        (0.42, -0.06, 0.078, -2.6_f32, -0.2_f32),
        (0.66, 0.22, 0.037, -0.3, 1.7),
        (0.66, -0.06, 0.058, 1.5, 3.3),
    ] {
        for i in 0..=6 {
            let a = from + (to - from) * i as f32 / 6.0;
            line.push(Vec3::new(x, y + r * a.sin(), z + r * a.cos()));
        }
    }
    line.push(line[0]);
    s.add(Mat::Rubber, sweep(&line, 0.010, 0.003, 8, Vec3::Y));
    s.add(
        Mat::Nylon,
        bevel_box(0.02, 0.30, 0.16, 0.02).turned(Quat::from_rotation_z(0.0)).at(-2.148, 0.64, -0.17),
    );
    s.add(
        Mat::Iron,
        cylinder(0.02, 0.02, 0.004)
            .along(Vec3::X)
            .turned(Quat::from_rotation_x(FRAC_PI_2 * 0.0))
            .at(-2.2, 0.42, -0.06),
    );
}
