//! An engine standing across the car: block, head, what is on top of it, intake with its vacuum fitting,
//! alternator, belt. One whose idle makes vacuum has a throttle and ignition coils; one that makes none has
//! neither, but injectors fed from a rail.

use bevy::math::Vec3;
use sim_core::action::Station;
use sim_core::parts::engine::Engine;

use super::alternator::{alternator, belt};
use super::{About, Body, nipple_m};
use crate::view3d::build::bits::{bolt, nipple};
use crate::view3d::materials::{Mat, Sculpt};
use crate::view3d::mouth::Mouth;
use crate::view3d::moves::Moves;
use crate::view3d::shapes::{bevel_box, curve, cylinder, hose, lathe, plate, ring, sweep};

/// Below this gauge pressure at warm idle, kPa, something throttles the intake.
const THROTTLED_KPA: f64 = -10.0;

/// Counted from the middle of the block.
impl Body for Engine {
    fn about(&self) -> About {
        About { moves: |_| Moves::Engine, ..About::FIXED }.seated((-1.87, 0.52, -0.10), Station::Bay)
    }

    fn mouths(&self) -> Vec<Mouth> {
        vec![
            Mouth::new(Vec3::new(-0.23, 0.395, 0.08), Vec3::new(-0.80, 0.15, -0.58)),
            Mouth::new(Vec3::new(0.27, 0.25, 0.35), Vec3::new(0.7, 0.25, 0.5)),
            Mouth::new(Vec3::new(-0.32, 0.26, 0.20), Vec3::new(-0.8, 0.6, 0.0)),
        ]
    }

    fn hold(&self) -> Vec3 {
        Vec3::new(-0.01, 0.35, -0.02)
    }

    fn build(&self, ports: &[Mouth]) -> Sculpt {
        let mut s = Sculpt::default();
        let throttled = self.warm_idle_kpa < THROTTLED_KPA;
        block(&mut s);
        cover(&mut s);
        if throttled {
            coils(&mut s);
        } else {
            injectors(&mut s);
        }
        manifold(&mut s);
        let mouth = Vec3::new(0.225, 0.375, 0.165);
        if throttled {
            throttle(&mut s, mouth);
        } else {
            elbow(&mut s, mouth);
        }
        air_filter(&mut s, mouth);
        alternator(&mut s, Vec3::new(0.15, 0.14, 0.32), ports.get(1));
        belt(&mut s);
        dipstick(&mut s);
        if let Some(m) = ports.first() {
            fitting(&mut s, m, nipple_m(self.bore_mm));
        }
        // The pad of its earth.
        if let Some(m) = ports.get(2) {
            let at = m.at + Vec3::new(0.03, -0.02, -0.02);
            s.add(Mat::Cast, bevel_box(0.05, 0.04, 0.05, 0.006).at(at.x, at.y, at.z));
            bolt(&mut s, m.at - m.out * 0.01, m.out, 0.009);
        }
        s
    }

    /// Its gasket set: nobody has an engine on the shelf.
    fn spare(&self, _: &[Mouth]) -> Sculpt {
        gaskets()
    }
}

/// Block, head with its ribs, gearbox.
fn block(s: &mut Sculpt) {
    s.add(Mat::Iron, bevel_box(0.54, 0.34, 0.30, 0.02));
    s.add(Mat::Cast, bevel_box(0.56, 0.11, 0.27, 0.012).at(0.0, 0.215, -0.02));
    s.add(Mat::Iron, bevel_box(0.30, 0.22, 0.28, 0.04).at(0.39, -0.06, 0.0));
    for i in 0..5 {
        s.add(Mat::Cast, bevel_box(0.02, 0.09, 0.02, 0.004).at(-0.2 + 0.10 * i as f32, 0.215, 0.12));
    }
}

/// Rocker cover with its filler cap.
fn cover(s: &mut Sculpt) {
    s.add(Mat::Nylon, bevel_box(0.54, 0.07, 0.20, 0.025).at(0.0, 0.295, -0.05));
    s.add(Mat::Nylon, bevel_box(0.48, 0.02, 0.075, 0.008).at(0.0, 0.332, -0.04));
    for x in [-0.23, 0.23] {
        for z in [-0.125, 0.025] {
            bolt(s, Vec3::new(x, 0.328, z), Vec3::Y, 0.0075);
        }
    }
    s.add(
        Mat::Black,
        lathe(&[(0.034, 0.0), (0.034, 0.02), (0.028, 0.026), (0.0, 0.026)]).at(0.195, 0.328, -0.1),
    );
    s.add(Mat::Black, bevel_box(0.05, 0.014, 0.012, 0.004).at(0.195, 0.358, -0.1));
}

fn coils(s: &mut Sculpt) {
    for i in 0..4 {
        let x = -0.175 + 0.115 * i as f32;
        s.add(Mat::Nylon, bevel_box(0.055, 0.035, 0.05, 0.008).at(x, 0.348, -0.04));
        s.add(Mat::GreyNylon, bevel_box(0.03, 0.02, 0.03, 0.004).at(x, 0.346, -0.075));
        bolt(s, Vec3::new(x + 0.02, 0.364, -0.025), Vec3::Y, 0.006);
    }
}

/// Injectors in a row, each with its pipe from the rail behind them.
fn injectors(s: &mut Sculpt) {
    let rail = Vec3::new(-0.20, 0.352, -0.125);
    s.add(Mat::Steel, cylinder(0.013, 0.36, 0.003).along(Vec3::X).at(rail.x, rail.y, rail.z));
    s.add(Mat::Brass, cylinder(0.010, 0.022, 0.002).along(Vec3::NEG_X).at(rail.x, rail.y, rail.z));
    for i in 0..4 {
        let x = -0.175 + 0.10 * i as f32;
        s.add(Mat::Steel, cylinder(0.017, 0.030, 0.003).at(x, 0.335, -0.030));
        s.add(Mat::GreyNylon, bevel_box(0.030, 0.026, 0.036, 0.006).at(x, 0.372, -0.024));
        bolt(s, Vec3::new(x + 0.030, 0.344, -0.030), Vec3::Y, 0.006);
        let pipe = [
            Vec3::new(x, 0.364, -0.040),
            Vec3::new(x + 0.004, 0.398, -0.070),
            Vec3::new(x + 0.012, 0.396, -0.105),
            Vec3::new(x + 0.014, 0.364, -0.124),
        ];
        s.add(Mat::Zinc, hose(&pipe, 0.0042));
        s.add(Mat::Zinc, cylinder(0.008, 0.014, 0.002).at(x + 0.014, 0.358, -0.124));
    }
}

/// Plenum along the engine, four runners down to the head.
fn manifold(s: &mut Sculpt) {
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
    s.add(Mat::Cast, plenum.along(Vec3::X).at(-0.205, 0.375, 0.165));
    for i in 0..4 {
        let x = -0.15 + 0.11 * i as f32;
        let runner = [
            Vec3::new(x, 0.38, 0.185),
            Vec3::new(x, 0.34, 0.225),
            Vec3::new(x, 0.27, 0.21),
            Vec3::new(x, 0.215, 0.13),
        ];
        s.add(Mat::Cast, hose(&runner, 0.022));
        s.add(Mat::Cast, bevel_box(0.065, 0.055, 0.012, 0.004).at(x, 0.218, 0.122));
        bolt(s, Vec3::new(x + 0.026, 0.235, 0.128), Vec3::Z, 0.006);
    }
}

/// Throttle body at the plenum's left end.
fn throttle(s: &mut Sculpt, at: Vec3) {
    s.add(Mat::Cast, bevel_box(0.012, 0.10, 0.10, 0.006).at(at.x, at.y, at.z));
    s.add(Mat::Cast, cylinder(0.038, 0.055, 0.004).along(Vec3::X).at(at.x, at.y, at.z));
    s.add(Mat::Nylon, bevel_box(0.05, 0.045, 0.05, 0.008).at(at.x + 0.03, at.y - 0.055, at.z));
}

/// A plain neck where nothing throttles.
fn elbow(s: &mut Sculpt, at: Vec3) {
    s.add(
        Mat::Cast,
        lathe(&[(0.044, -0.02), (0.040, 0.01), (0.034, 0.03), (0.034, 0.06), (0.0, 0.06)])
            .along(Vec3::X)
            .at(at.x, at.y, at.z),
    );
    s.add(Mat::Zinc, ring(0.036, 0.004).along(Vec3::X).at(at.x + 0.05, at.y, at.z));
}

/// Air hose from the intake to the filter box behind the lock.
fn air_filter(s: &mut Sculpt, from: Vec3) {
    let air = [
        from + Vec3::X * 0.055,
        from + Vec3::new(0.09, 0.01, 0.02),
        from + Vec3::new(0.10, 0.015, 0.11),
        from + Vec3::new(0.06, 0.01, 0.22),
    ];
    s.add(Mat::Rubber, hose(&air, 0.034));
    let line = curve(&air, 8);
    for i in 0..5 {
        let t = 0.25 + 0.12 * i as f32;
        let n = ((line.len() - 1) as f32 * t) as usize;
        let (at, next) = (line[n], line[(n + 1).min(line.len() - 1)]);
        s.add(Mat::Rubber, ring(0.034, 0.004).along(next - at).at(at.x, at.y, at.z));
    }
    s.add(Mat::Nylon, bevel_box(0.26, 0.12, 0.15, 0.02).at(0.25, 0.365, 0.435));
    s.add(Mat::Nylon, bevel_box(0.27, 0.02, 0.16, 0.008).at(0.25, 0.405, 0.435));
    for x in [0.13, 0.37] {
        s.add(Mat::Zinc, bevel_box(0.02, 0.04, 0.006, 0.002).at(x, 0.4, 0.512));
    }
}

fn dipstick(s: &mut Sculpt) {
    s.add(
        Mat::Zinc,
        hose(
            &[Vec3::new(-0.08, 0.08, 0.18), Vec3::new(-0.09, 0.22, 0.22), Vec3::new(-0.1, 0.34, 0.255)],
            0.004,
        ),
    );
    s.add(Mat::Brown, ring(0.012, 0.003).along(Vec3::X).at(-0.1, 0.353, 0.26));
}

/// The vacuum fitting at the plenum's right end.
fn fitting(s: &mut Sculpt, m: &Mouth, bore: f32) {
    let foot = Vec3::new(-0.185, 0.385, 0.125);
    s.add(
        Mat::Brass,
        lathe(&[(0.014, 0.0), (0.014, 0.012), (0.010, 0.016)]).along(m.at - foot).at(foot.x, foot.y, foot.z),
    );
    s.add(Mat::Brass, sweep(&[foot, m.at], bore, bore, 12, Vec3::Y));
    nipple(s, m.at, m.out, bore);
}

/// Gasket set of the intake.
fn gaskets() -> Sculpt {
    let mut s = Sculpt::default();
    s.add(
        Mat::Case,
        plate(&[(-0.12, -0.03), (0.12, -0.03), (0.12, 0.03), (-0.12, 0.03)], 0.003).at(0.0, 0.05, 0.0),
    );
    for i in 0..4 {
        let x = -0.084 + 0.056 * i as f32;
        s.add(Mat::Copper, ring(0.018, 0.0025).along(Vec3::Z).at(x, 0.05, 0.002));
        s.add(Mat::Ink, cylinder(0.017, 0.001, 0.0002).along(Vec3::Z).at(x, 0.05, 0.0015));
    }
    for x in [-0.112, 0.112] {
        s.add(Mat::Ink, cylinder(0.004, 0.001, 0.0002).along(Vec3::Z).at(x, 0.05, 0.0016));
    }
    s
}
