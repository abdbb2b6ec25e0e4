//! The booster with master cylinder and fluid tank.

use bevy::math::{Quat, Vec3};
use sim_core::action::Station;
use sim_core::parts::booster::Booster;
use std::f32::consts::{FRAC_PI_2, TAU};

use super::{About, Body, nipple_m};
use crate::view3d::build::bits::{bolt, nipple};
use crate::view3d::materials::{Mat, Sculpt};
use crate::view3d::mouth::Mouth;
use crate::view3d::shapes::{bevel_box, cylinder, hexagon, hose, lathe, ring};

/// How much wider and deeper a booster is than the one that was drawn: its diaphragm says how wide, and its
/// front chamber how deep.
fn size(booster: &Booster) -> (f32, f32) {
    const AREA_CM2: f32 = 533.0;
    const FRONT_L: f32 = 2.4;
    let area = booster.area_cm2 as f32 / AREA_CM2;
    let deep = booster.front_l as f32 / FRONT_L / area;
    (area.sqrt().clamp(0.5, 1.6), deep.clamp(0.6, 1.8))
}

/// Two pressed shells rolled together at the rim; z is its axis, the bulkhead behind it.
impl Body for Booster {
    fn about(&self) -> About {
        About::FIXED.seated((-1.28, 0.93, -0.50), Station::Bay)
    }

    fn mouths(&self) -> Vec<Mouth> {
        let (w, d) = size(self);
        vec![Mouth::new(Vec3::new(-0.135 * w, 0.11 * w, 0.125 * d), Vec3::new(-0.86, 0.30, 0.42))]
    }

    fn hold(&self) -> Vec3 {
        Vec3::new(0.08, -0.06, 0.12)
    }

    fn build(&self, ports: &[Mouth]) -> Sculpt {
        let mut s = Sculpt::default();
        let (w, d) = size(self);
        let profile = [
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
        ]
        .map(|(r, z)| (r * w, z * d));
        s.add(Mat::Paint, lathe(&profile).along(Vec3::Z));
        // Notches of the rim.
        for i in 0..8 {
            let a = (i as f32 + 0.5) / 8.0 * TAU;
            let (sin, cos) = a.sin_cos();
            s.add(
                Mat::Paint,
                bevel_box(0.03, 0.012, 0.03, 0.004).turned(Quat::from_rotation_z(a - FRAC_PI_2)).at(
                    0.158 * w * cos,
                    0.158 * w * sin,
                    0.0,
                ),
            );
        }
        // Ribs pressed into the front.
        s.add(Mat::Paint, ring(0.092 * w, 0.006).along(Vec3::Z).at(0.0, 0.0, 0.104 * d));
        // A plate with numbers.
        s.add(
            Mat::Face,
            bevel_box(0.06, 0.03, 0.003, 0.001).turned(Quat::from_rotation_x(-0.5)).at(
                0.0,
                -0.108 * w,
                0.092 * d,
            ),
        );
        if let [vacuum] = ports {
            fitting(&mut s, vacuum, Vec3::new(-0.098 * w, 0.08 * w, 0.10 * d), nipple_m(self.bore_mm));
        }
        master_cylinder(&mut s, Vec3::Z * (0.118 * d));
        // Studs through the bulkhead.
        for (x, y) in [(-0.045, -0.06), (0.045, -0.06), (-0.045, 0.06), (0.045, 0.06)] {
            bolt(&mut s, Vec3::new(x, y, -0.10 * d - 0.058), Vec3::NEG_Z, 0.008);
        }
        s
    }
}

/// Vacuum fitting with its rubber grommet, out of the shell at `foot`.
fn fitting(s: &mut Sculpt, m: &Mouth, foot: Vec3, bore: f32) {
    s.add(
        Mat::Rubber,
        lathe(&[(0.024, 0.0), (0.022, 0.012), (0.012, 0.014)]).along(Vec3::Z).at(
            foot.x,
            foot.y,
            foot.z - 0.004,
        ),
    );
    s.add(Mat::Nylon, hose(&[foot, foot + Vec3::Z * 0.026, m.at - m.out * 0.03, m.at], bore * 1.2));
    nipple(s, m.at, m.out, bore);
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
    tank(s, at + Vec3::new(0.0, 0.078, 0.085));
    pipes(s, at);
}

/// Fluid tank: what is in it seen through its wall, and its cap.
fn tank(s: &mut Sculpt, t: Vec3) {
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
}

/// Brake pipes.
fn pipes(s: &mut Sculpt, at: Vec3) {
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
