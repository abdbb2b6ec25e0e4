//! Electric vacuum pump, and the vane pump that the camshaft turns.

use bevy::math::{Quat, Vec3};
use sim_core::action::Station;
use sim_core::parts::engine_pump::EnginePump;
use sim_core::parts::vacuum_pump::VacuumPump;
use std::f32::consts::TAU;

use super::{About, Body, grown, nipple_m};
use crate::view3d::build::bits::{bolt, nipple};
use crate::view3d::materials::{Mat, Sculpt};
use crate::view3d::mouth::Mouth;
use crate::view3d::moves::Moves;
use crate::view3d::shapes::{Geo, bevel_box, cylinder, hexagon, hose, lathe, sweep};

/// Motor below, vane chamber above, rubber-mounted on a bracket; y is its axis, its foot at nought.
impl Body for VacuumPump {
    fn about(&self) -> About {
        About { moves: Moves::Pump, ..About::LOOSE }
    }

    fn mouths(&self) -> Vec<Mouth> {
        vec![
            Mouth::new(Vec3::new(0.0, 0.27, 0.0), Vec3::Y),
            Mouth::new(Vec3::new(0.075, 0.17, 0.07), Vec3::new(1.0, 0.15, 0.35)),
            Mouth::new(Vec3::new(0.075, 0.085, 0.07), Vec3::new(1.0, -0.25, 0.35)),
        ]
    }

    fn hold(&self) -> Vec3 {
        Vec3::new(0.0, 0.10, 0.06)
    }

    fn build(&self, ports: &[Mouth]) -> Sculpt {
        let mut s = Sculpt::default();
        motor(&mut s);
        head(&mut s, grown(self.displacement_cm3, 6.0));
        let inlet = ports.first().map_or(Vec3::Y * 0.27, |p| p.at);
        s.add(Mat::Brass, hexagon(0.014, 0.014).at(0.0, 0.215, 0.0));
        s.add(Mat::Brass, cylinder(0.008, 0.03, 0.001).at(0.0, 0.225, 0.0));
        nipple(&mut s, inlet, ports.first().map_or(Vec3::Y, |p| p.axis), nipple_m(self.bore_mm));
        terminals(&mut s);
        plate(&mut s);
        bracket(&mut s);
        s
    }
}

fn motor(s: &mut Sculpt) {
    s.add(
        Mat::Zinc,
        lathe(&[
            (0.0, -0.01),
            (0.020, -0.01),
            (0.024, 0.0),
            (0.046, 0.004),
            (0.052, 0.012),
            (0.052, 0.135),
            (0.049, 0.140),
            (0.0, 0.140),
        ]),
    );
}

/// The vane chamber, `k` times as wide as one of 6 cm³ a turn.
fn head(s: &mut Sculpt, k: f32) {
    s.add(
        Mat::Paint,
        lathe(&[
            (0.062 * k, 0.138),
            (0.066 * k, 0.142),
            (0.066 * k, 0.150),
            (0.060 * k, 0.154),
            (0.060 * k, 0.192),
            (0.066 * k, 0.196),
            (0.066 * k, 0.206),
            (0.058 * k, 0.212),
            (0.030 * k, 0.216),
            (0.0, 0.216),
        ]),
    );
    for i in 0..6 {
        let (sin, cos) = (i as f32 / 6.0 * TAU).sin_cos();
        bolt(s, Vec3::new(0.050 * k * cos, 0.212, 0.050 * k * sin), Vec3::Y, 0.006);
        s.add(
            Mat::Paint,
            bevel_box(0.006, 0.04, 0.012, 0.002).turned(Quat::from_rotation_y(-(i as f32) / 6.0 * TAU)).at(
                0.061 * k * cos,
                0.173,
                0.061 * k * sin,
            ),
        );
    }
    // Silencer at its outlet.
    s.add(
        Mat::Nylon,
        lathe(&[(0.0, 0.0), (0.014, 0.0), (0.017, 0.006), (0.017, 0.03), (0.013, 0.036), (0.0, 0.036)])
            .along(Vec3::new(-1.0, 0.0, 0.5))
            .at(-0.058 * k, 0.172, 0.026 * k),
    );
}

/// The block with both terminals.
fn terminals(s: &mut Sculpt) {
    s.add(Mat::GreyNylon, bevel_box(0.035, 0.13, 0.05, 0.006).at(0.050, 0.127, 0.052));
    for (dy, mat) in [(0.17, Mat::Red), (0.085, Mat::Black)] {
        s.add(mat, bevel_box(0.012, 0.028, 0.04, 0.003).at(0.069, dy, 0.062));
        s.add(Mat::Brass, bevel_box(0.012, 0.008, 0.012, 0.002).at(0.074, dy, 0.068));
    }
}

/// A plate with numbers.
fn plate(s: &mut Sculpt) {
    s.add(Mat::Face, bevel_box(0.045, 0.03, 0.003, 0.001).at(-0.01, 0.075, 0.0515));
    for i in 0..3 {
        s.add(Mat::Pencil, bevel_box(0.032, 0.003, 0.002, 0.0005).at(-0.01, 0.083 - 0.008 * i as f32, 0.053));
    }
}

/// Bracket with rubber mounts, to the lower crossmember.
fn bracket(s: &mut Sculpt) {
    s.add(Mat::Iron, bevel_box(0.17, 0.006, 0.10, 0.002).at(0.0, -0.012, 0.0));
    for x in [-0.07, 0.07] {
        s.add(Mat::Rubber, cylinder(0.014, 0.022, 0.003).at(x, -0.034, 0.02));
        bolt(s, Vec3::new(x, -0.008, 0.02), Vec3::Y, 0.007);
    }
    s.add(
        Mat::Iron,
        hose(
            &[Vec3::new(-0.052, 0.06, 0.0), Vec3::new(0.0, 0.06, 0.054), Vec3::new(0.052, 0.06, 0.0)],
            0.004,
        ),
    );
}

/// Radius and depth of the chamber of a pump that takes in so much a turn, m: a little more than it sweeps,
/// drawn a quarter larger than it is.
fn chamber(displacement_cm3: f64) -> (f32, f32) {
    const FULL: f32 = 1.5;
    const LARGER: f32 = 1.25;
    let r = (displacement_cm3 as f32 * 1e-6 * FULL / (std::f32::consts::PI * 0.9)).cbrt() * LARGER;
    (r, r * 0.9)
}

/// A flat chamber flanged to the end of the head; x is its axis, the flange at nought.
impl Body for EnginePump {
    fn about(&self) -> About {
        // It shakes with the engine that turns it.
        About { moves: |_| Moves::Engine, ..About::FIXED }.seated((-1.586, 0.775, -0.13), Station::Bay)
    }

    fn mouths(&self) -> Vec<Mouth> {
        let (r, deep) = chamber(self.displacement_cm3);
        vec![Mouth::new(Vec3::new(deep * 0.55 + 0.012, r + 0.045, 0.0), Vec3::new(0.25, 1.0, 0.0))]
    }

    fn hold(&self) -> Vec3 {
        let (_, deep) = chamber(self.displacement_cm3);
        Vec3::X * (deep + 0.02)
    }

    fn build(&self, ports: &[Mouth]) -> Sculpt {
        let mut s = Sculpt::default();
        let (r, deep) = chamber(self.displacement_cm3);
        let put = |g: Geo| g.along(Vec3::X);
        // Flange with three ears, chamber, cover with its screws.
        s.add(Mat::Cast, put(lathe(&[(0.0, 0.0), (r * 1.05, 0.0), (r * 1.05, 0.010), (0.0, 0.010)])));
        for i in 0..3 {
            let (sin, cos) = (i as f32 / 3.0 * TAU + 0.5).sin_cos();
            let ear = Vec3::new(0.005, r * 1.12 * cos, r * 1.12 * sin);
            s.add(Mat::Cast, put(cylinder(0.016, 0.011, 0.002)).at(0.0, ear.y, ear.z));
            bolt(&mut s, Vec3::new(0.011, ear.y, ear.z), Vec3::X, 0.008);
        }
        s.add(
            Mat::Cast,
            put(lathe(&[
                (r * 0.94, 0.008),
                (r, 0.014),
                (r, deep),
                (r * 1.06, deep + 0.003),
                (r * 1.06, deep + 0.010),
                (r * 0.98, deep + 0.016),
                (r * 0.5, deep + 0.018),
                (0.0, deep + 0.018),
            ])),
        );
        for i in 0..6 {
            let (sin, cos) = (i as f32 / 6.0 * TAU + 0.2).sin_cos();
            bolt(&mut s, Vec3::new(deep + 0.014, r * 0.88 * cos, r * 0.88 * sin), Vec3::X, 0.0055);
        }
        // Ribs of the cover, a plate.
        s.add(Mat::Cast, bevel_box(0.008, r * 1.3, 0.010, 0.002).at(deep + 0.019, 0.0, 0.0));
        s.add(Mat::Cast, bevel_box(0.008, 0.010, r * 1.3, 0.002).at(deep + 0.019, 0.0, 0.0));
        // Oil feed from the head.
        s.add(
            Mat::Zinc,
            hose(
                &[
                    Vec3::new(0.0, -r * 0.7, r * 0.8),
                    Vec3::new(deep * 0.5, -r * 0.85, r * 0.9),
                    Vec3::new(deep * 0.8, -r * 0.5, r * 0.95),
                ],
                0.004,
            ),
        );
        // Inlet.
        let bore = nipple_m(self.bore_mm);
        if let [inlet] = ports {
            let root = Vec3::new(deep * 0.55, r * 0.96, 0.0);
            let neck = inlet.at - inlet.axis * 0.026;
            s.add(Mat::Brass, hexagon(bore * 1.8, 0.012).at(root.x, root.y, root.z));
            s.add(Mat::Brass, sweep(&[root, neck], bore, bore, 12, Vec3::X));
            nipple(&mut s, inlet.at, inlet.axis, bore);
        }
        s
    }
}
