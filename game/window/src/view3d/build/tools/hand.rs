//! What is held to a thing: infrared thermometer, stopwatch, angle finder, rule, prop, plugs, clamps, tube.

use bevy::math::{Quat, Vec3};
use bevy::transform::components::Transform;

use crate::view3d::clamp::clamp_shape;
use std::f32::consts::TAU;

use crate::view3d::materials::{Mat, Sculpt};
use crate::view3d::shapes::{Geo, bevel_box, curve, cylinder, hose, lathe, plate, sweep};

pub(super) fn infrared(s: &mut Sculpt) {
    s.add(Mat::Case, bevel_box(0.150, 0.056, 0.044, 0.012).at(0.0, 0.055, 0.0));
    s.add(
        Mat::Black,
        lathe(&[
            (0.0, 0.0),
            (0.022, 0.0),
            (0.024, 0.004),
            (0.020, 0.022),
            (0.015, 0.022),
            (0.012, 0.012),
            (0.0, 0.012),
        ])
        .along(-Vec3::X)
        .at(-0.07, 0.058, 0.0),
    );
    s.add(Mat::Glass, cylinder(0.011, 0.004, 0.001).along(-Vec3::X).at(-0.080, 0.058, 0.0));
    s.add(Mat::Rubber, plate(&[(0.02, 0.03), (0.072, 0.03), (0.085, -0.09), (0.040, -0.095)], 0.036));
    s.add(Mat::Red, plate(&[(0.012, 0.03), (0.026, 0.03), (0.030, -0.005), (0.020, -0.010)], 0.014));
    s.add(Mat::Display, bevel_box(0.040, 0.028, 0.003, 0.001).at(0.035, 0.060, 0.0225));
}

pub(super) fn stopwatch(s: &mut Sculpt) {
    let put = |g: Geo| g.along(Vec3::Z);
    s.add(
        Mat::Steel,
        put(lathe(&[
            (0.0, -0.014),
            (0.058, -0.014),
            (0.066, -0.006),
            (0.066, 0.008),
            (0.060, 0.014),
            (0.054, 0.012),
        ])),
    );
    s.add(Mat::Face, put(cylinder(0.057, 0.012, 0.001)));
    s.add(Mat::Display, bevel_box(0.076, 0.032, 0.003, 0.001).at(0.0, 0.0, 0.0125));
    for i in 0..60 {
        let a = i as f32 / 60.0 * TAU;
        let turn = Quat::from_rotation_z(a);
        let long = if i % 5 == 0 { 0.008 } else { 0.004 };
        let at = turn * Vec3::Y * 0.050;
        s.add(Mat::Ink, bevel_box(0.0012, long, 0.001, 0.0002).turned(turn).at(at.x, at.y, 0.0125));
    }
    for (a, long, mat) in [(0.0_f32, 0.026, Mat::Steel), (0.62, 0.018, Mat::Steel), (-0.62, 0.018, Mat::Red)]
    {
        let way = Vec3::new(a.sin(), a.cos(), 0.0);
        s.add(Mat::Steel, cylinder(0.006, long, 0.001).along(way).at(way.x * 0.062, way.y * 0.062, 0.0));
        s.add(
            mat,
            cylinder(0.010, 0.010, 0.002).along(way).at(way.x * (0.062 + long), way.y * (0.062 + long), 0.0),
        );
    }
    s.add(
        Mat::Black,
        hose(
            &[
                Vec3::new(-0.01, 0.095, 0.0),
                Vec3::new(-0.03, 0.125, 0.0),
                Vec3::new(0.0, 0.135, 0.0),
                Vec3::new(0.03, 0.125, 0.0),
                Vec3::new(0.01, 0.095, 0.0),
            ],
            0.003,
        ),
    );
}

pub(super) fn angle_finder(s: &mut Sculpt) {
    let mut outline: Vec<(f32, f32)> = (0..=20)
        .map(|i| {
            let a = i as f32 / 20.0 * std::f32::consts::PI;
            (0.080 * a.cos(), -0.03 + 0.080 * a.sin())
        })
        .collect();
    outline.extend([(-0.080, -0.045), (0.080, -0.045)]);
    s.add(Mat::Zinc, plate(&outline, 0.003));
    for i in 0..=18 {
        let a = i as f32 / 18.0 * std::f32::consts::PI;
        let long = if i % 3 == 0 { 0.014 } else { 0.008 };
        let way = Vec3::new(a.cos(), a.sin(), 0.0);
        let at = way * (0.075 - long * 0.5);
        s.add(
            Mat::Ink,
            bevel_box(long, 0.0014, 0.001, 0.0002).turned(Quat::from_rotation_z(a)).at(
                at.x,
                at.y - 0.03,
                0.0018,
            ),
        );
    }
    let arm = bevel_box(0.016, 0.19, 0.003, 0.0008).at(0.0, 0.06, 0.0).turned(Quat::from_rotation_z(-0.6));
    s.add(Mat::Steel, arm.at(0.0, -0.03, 0.004));
    s.add(Mat::Brass, cylinder(0.010, 0.010, 0.002).along(Vec3::Z).at(0.0, -0.03, 0.0));
}

pub(super) fn rule(s: &mut Sculpt) {
    let turn = Quat::from_rotation_z(0.0);
    s.add(Mat::Steel, bevel_box(0.032, 0.255, 0.0025, 0.0006).turned(turn));
    for i in 0..=50 {
        let long = if i % 10 == 0 {
            0.016
        } else if i % 5 == 0 {
            0.011
        } else {
            0.006
        };
        s.add(
            Mat::Ink,
            bevel_box(long, 0.0011, 0.001, 0.0002).at(
                -0.016 + long * 0.5,
                -0.118 + 0.0047 * i as f32,
                0.0014,
            ),
        );
    }
    s.add(Mat::Brass, bevel_box(0.046, 0.020, 0.010, 0.003).at(0.0, -0.02, 0.003));
    s.add(Mat::Brass, cylinder(0.006, 0.010, 0.002).along(Vec3::X).at(0.022, -0.02, 0.003));
}

pub(super) fn prop(s: &mut Sculpt) {
    // A telescopic rod with a fork for the pedal, a pad for the seat and a screw with a scale.
    s.add(Mat::Zinc, cylinder(0.010, 0.15, 0.002).at(0.0, -0.12, 0.0));
    s.add(Mat::Steel, cylinder(0.0065, 0.13, 0.001).at(0.0, 0.0, 0.0));
    s.add(
        Mat::Black,
        lathe(&[(0.0, 0.0), (0.017, 0.0), (0.019, 0.006), (0.017, 0.030), (0.012, 0.034)])
            .at(0.0, 0.006, 0.0),
    );
    s.add(Mat::Rubber, bevel_box(0.062, 0.012, 0.030, 0.004).at(0.0, -0.122, 0.0));
    s.add(
        Mat::Iron,
        plate(
            &[
                (-0.030, 0.125),
                (-0.020, 0.125),
                (-0.016, 0.108),
                (0.016, 0.108),
                (0.020, 0.125),
                (0.030, 0.125),
                (0.022, 0.096),
                (-0.022, 0.096),
            ],
            0.018,
        ),
    );
    for i in 0..7 {
        s.add(Mat::Ink, bevel_box(0.012, 0.0014, 0.001, 0.0002).at(0.0, 0.048 + 0.007 * i as f32, 0.0068));
    }
}

pub(super) fn plugs(s: &mut Sculpt) {
    s.add(Mat::OakDark, bevel_box(0.16, 0.075, 0.02, 0.004).at(0.0, -0.03, 0.0));
    s.add(
        Mat::Zinc,
        hose(&[Vec3::new(-0.06, 0.005, 0.0), Vec3::new(0.0, 0.10, 0.0), Vec3::new(0.06, 0.005, 0.0)], 0.002),
    );
    for (i, x) in [-0.058, -0.02, 0.018, 0.056].iter().enumerate() {
        let r = 0.010 + 0.002 * i as f32;
        let plug = lathe(&[
            (0.0, 0.0),
            (r * 1.35, 0.0),
            (r * 1.35, 0.008),
            (r, 0.010),
            (r * 0.72, 0.038),
            (0.0, 0.040),
        ]);
        s.add(Mat::Accent, plug.along(Vec3::Z).at(*x, -0.03, 0.010));
    }
}

pub(super) fn clamps(s: &mut Sculpt) {
    for (x, turn) in [(-0.036, 0.10_f32), (0.036, -0.06)] {
        let mut c = Sculpt::default();
        clamp_shape(&mut c);
        s.join(&c, Transform::from_xyz(x, -0.01, 0.0).with_rotation(Quat::from_rotation_z(turn)));
    }
}

pub(super) fn tube(s: &mut Sculpt) {
    let mut line = vec![Vec3::new(-0.055, 0.085, 0.0)];
    for i in 0..=16 {
        let a = i as f32 / 8.0 * TAU + 2.4;
        line.push(Vec3::new(0.058 * a.cos(), 0.005 + 0.062 * a.sin(), 0.004 + 0.0016 * i as f32));
    }
    line.push(Vec3::new(0.055, -0.095, 0.02));
    s.add(Mat::Rubber, sweep(&curve(&line, 4), 0.0065, 0.0065, 9, Vec3::Z));
    s.add(
        Mat::WhiteNylon,
        lathe(&[(0.006, 0.0), (0.009, 0.004), (0.013, 0.016), (0.010, 0.024), (0.0, 0.027)])
            .along(Vec3::new(-0.3, 1.0, 0.0))
            .at(-0.056, 0.088, 0.0),
    );
    s.add(
        Mat::Brass,
        lathe(&[(0.006, 0.0), (0.008, 0.01), (0.020, 0.036), (0.020, 0.038), (0.017, 0.036), (0.006, 0.012)])
            .along(Vec3::new(0.15, -1.0, 0.1))
            .at(0.055, -0.095, 0.02),
    );
}
