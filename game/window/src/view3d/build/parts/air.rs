//! Four-way piece, vacuum switch and sensor, check valves, reservoir.

use bevy::math::Vec3;
use sim_core::parts::check_valve::CheckValve;
use sim_core::parts::reservoir::Reservoir;
use sim_core::parts::tee::Tee;
use sim_core::parts::vacuum_sensor::VacuumSensor;
use sim_core::parts::vacuum_switch::VacuumSwitch;
use std::f32::consts::PI;

use super::{About, Body, grown, nipple_m};
use crate::view3d::build::bits::{bolt, nipple};
use crate::view3d::materials::{Mat, Sculpt};
use crate::view3d::mouth::Mouth;
use crate::view3d::shapes::{Geo, bevel_box, cylinder, hexagon, hose, lathe, ring};

/// A body with a nipple at each port.
impl Body for Tee {
    fn about(&self) -> About {
        About::LOOSE
    }

    fn mouths(&self) -> Vec<Mouth> {
        let ways = [Vec3::X, Vec3::Y, -Vec3::X, Vec3::Z];
        ways.map(|way| Mouth::new(way * 0.07, way)).to_vec()
    }

    fn build(&self, ports: &[Mouth]) -> Sculpt {
        let mut s = Sculpt::default();
        let k = grown(self.volume_cm3, 6.0);
        let r = nipple_m(self.bore_mm);
        s.add(
            Mat::Nylon,
            lathe(&[
                (0.0, -0.024 * k),
                (0.018 * k, -0.024 * k),
                (0.024 * k, -0.016 * k),
                (0.024 * k, 0.016 * k),
                (0.018 * k, 0.024 * k),
                (0.0, 0.024 * k),
            ])
            .along(Vec3::Z),
        );
        s.add(Mat::GreyNylon, cylinder(0.014 * k, 0.003, 0.001).along(Vec3::Z).at(0.0, 0.0, 0.024 * k));
        for port in ports {
            let (way, long) = (port.at.normalize_or(port.out), port.at.length().max(0.04));
            s.add(Mat::Nylon, cylinder(r * 1.4, long - 0.012, 0.002).along(way));
            let collar = way * (long - 0.034);
            s.add(Mat::Nylon, cylinder(r * 1.93, 0.006, 0.002).along(way).at(collar.x, collar.y, collar.z));
            nipple(&mut s, way * long, way, r);
        }
        s
    }
}

/// A rubber sleeve down to the nipple that it stands on, and a brass fitting: what a switch or a sensor has at
/// its foot.
fn foot(s: &mut Sculpt) {
    s.add(Mat::Rubber, cylinder(0.0125, 0.062, 0.002).at(0.0, -0.105, 0.0));
    s.add(Mat::Brass, cylinder(0.008, 0.07, 0.001).at(0.0, -0.06, 0.0));
    s.add(Mat::Brass, hexagon(0.014, 0.014).at(0.0, -0.018, 0.0));
}

/// A diaphragm can of this volume on its foot.
fn can(s: &mut Sculpt, k: f32) {
    s.add(
        Mat::Zinc,
        lathe(&[
            (0.0, -0.004),
            (0.026 * k, -0.004),
            (0.033 * k, 0.003),
            (0.037 * k, 0.008),
            (0.037 * k, 0.020),
            (0.033 * k, 0.024),
            (0.026 * k, 0.030),
            (0.0, 0.030),
        ]),
    );
}

/// A diaphragm can with a terminal block.
impl Body for VacuumSwitch {
    fn about(&self) -> About {
        About::LOOSE
    }

    fn mouths(&self) -> Vec<Mouth> {
        vec![
            Mouth::new(Vec3::ZERO, Vec3::NEG_Y),
            Mouth::new(Vec3::new(-0.05, 0.095, 0.0), Vec3::new(-0.6, 1.0, 0.1)),
            Mouth::new(Vec3::new(0.05, 0.095, 0.0), Vec3::new(0.6, 1.0, 0.1)),
        ]
    }

    fn hold(&self) -> Vec3 {
        Vec3::new(0.0, 0.045, 0.02)
    }

    fn has_sleeve(&self, port: usize) -> bool {
        port == 0
    }

    fn build(&self, _: &[Mouth]) -> Sculpt {
        let mut s = Sculpt::default();
        foot(&mut s);
        can(&mut s, grown(self.volume_cm3, 3.0));
        s.add(Mat::GreyNylon, lathe(&[(0.026, 0.028), (0.026, 0.054), (0.022, 0.058), (0.0, 0.058)]));
        s.add(Mat::GreyNylon, bevel_box(0.12, 0.022, 0.032, 0.005).at(0.0, 0.066, 0.0));
        for dx in [-0.05, 0.05] {
            s.add(Mat::Brass, bevel_box(0.008, 0.026, 0.002, 0.0005).at(dx, 0.086, 0.0));
        }
        s.add(Mat::Brass, cylinder(0.005, 0.008, 0.001).along(Vec3::Z).at(0.0, 0.045, 0.024));
        s
    }
}

/// A flat black head with a plug of three pins, on the same foot as a switch has.
impl Body for VacuumSensor {
    fn about(&self) -> About {
        About::LOOSE
    }

    fn mouths(&self) -> Vec<Mouth> {
        let pin = |x: f32| Mouth::new(Vec3::new(x, 0.078, 0.0), Vec3::new(x * 6.0, 1.0, 0.15));
        vec![Mouth::new(Vec3::ZERO, Vec3::NEG_Y), pin(-0.06), pin(0.0), pin(0.06)]
    }

    fn hold(&self) -> Vec3 {
        Vec3::new(0.0, 0.03, 0.026)
    }

    fn has_sleeve(&self, port: usize) -> bool {
        port == 0
    }

    fn build(&self, ports: &[Mouth]) -> Sculpt {
        let mut s = Sculpt::default();
        let k = grown(self.volume_cm3, 3.0);
        foot(&mut s);
        s.add(Mat::Nylon, bevel_box(0.066 * k, 0.034, 0.050 * k, 0.006).at(0.0, 0.014, 0.0));
        s.add(Mat::Nylon, bevel_box(0.158, 0.026, 0.030, 0.004).at(0.0, 0.044, 0.0));
        s.add(Mat::Face, bevel_box(0.030, 0.018, 0.002, 0.0005).at(0.0, 0.014, 0.026 * k));
        for port in ports.iter().skip(1) {
            let foot = Vec3::new(port.at.x, 0.056, port.at.z);
            s.add(Mat::GreyNylon, bevel_box(0.030, 0.012, 0.024, 0.003).at(foot.x, foot.y, foot.z));
            s.add(Mat::Brass, bevel_box(0.006, 0.026, 0.002, 0.0005).at(foot.x, foot.y + 0.014, foot.z));
        }
        s
    }
}

/// Two shells, the air passing from the store's half (black, −x) to the source's (pale, +x): so one sees which
/// way round it sits.
impl Body for CheckValve {
    fn about(&self) -> About {
        About::LOOSE
    }

    fn mouths(&self) -> Vec<Mouth> {
        vec![
            Mouth::new(Vec3::new(-0.055, 0.0, 0.0), Vec3::NEG_X),
            Mouth::new(Vec3::new(0.055, 0.0, 0.0), Vec3::X),
        ]
    }

    fn has_sleeve(&self, _port: usize) -> bool {
        true
    }

    fn build(&self, ports: &[Mouth]) -> Sculpt {
        let mut s = Sculpt::default();
        let k = grown(self.volume_cm3, 3.0);
        let r = nipple_m(self.bore_mm);
        let put = |g: Geo| g.along(Vec3::X);
        s.add(
            Mat::Nylon,
            put(lathe(&[
                (0.0, -0.030),
                (0.010, -0.030),
                (0.020 * k, -0.018),
                (0.025 * k, -0.014),
                (0.025 * k, 0.0),
                (0.0, 0.0),
            ])),
        );
        s.add(
            Mat::WhiteNylon,
            put(lathe(&[
                (0.0, 0.0),
                (0.025 * k, 0.0),
                (0.025 * k, 0.012),
                (0.020 * k, 0.017),
                (r * 1.4, 0.034),
                (0.0, 0.034),
            ])),
        );
        s.add(Mat::Nylon, put(ring(0.0245 * k, 0.003)));
        // A sleeve where it sits on another part's nipple, else a nipple for a hose.
        for (port, (way, mat)) in ports.iter().zip([(Vec3::NEG_X, Mat::Nylon), (Vec3::X, Mat::WhiteNylon)]) {
            if port.sits {
                let foot = way * 0.028;
                s.add(Mat::Rubber, cylinder(r * 1.8, 0.115, 0.002).along(way).at(foot.x, 0.0, 0.0));
            } else {
                let foot = way * 0.032;
                s.add(mat, cylinder(r * 1.067, 0.022, 0.001).along(way).at(foot.x, 0.0, 0.0));
                nipple(&mut s, way * 0.052, way, r);
            }
        }
        // Arrow on the pale half.
        s.add(Mat::Ink, bevel_box(0.016, 0.002, 0.004, 0.0005).at(0.008, 0.0245 * k, 0.0));
        s
    }
}

/// Length of a reservoir over its radius.
const SLIM: f32 = 3.4;

/// Radius and length of a reservoir of this volume, m: as large as it is.
fn reservoir_size(volume_l: f64) -> (f32, f32) {
    let r = ((volume_l as f32) * 1e-3 / (PI * SLIM)).cbrt();
    (r, r * SLIM)
}

/// A can of pressed steel lying along x, with a nipple at either end of its top, on two straps.
impl Body for Reservoir {
    fn about(&self) -> About {
        About::LOOSE
    }

    fn mouths(&self) -> Vec<Mouth> {
        let (r, long) = reservoir_size(self.volume_l);
        let at = |side: f32| {
            Mouth::new(Vec3::new(side * long * 0.30, r + 0.035, 0.0), Vec3::new(side * 0.35, 1.0, 0.0))
        };
        vec![at(-1.0), at(1.0)]
    }

    fn build(&self, ports: &[Mouth]) -> Sculpt {
        let mut s = Sculpt::default();
        let (r, long) = reservoir_size(self.volume_l);
        let half = long * 0.5;
        let profile = [
            (0.0, -half),
            (r * 0.62, -half),
            (r * 0.90, -half + r * 0.12),
            (r, -half + r * 0.34),
            (r, -0.006),
            (r * 1.03, -0.004),
            (r * 1.03, 0.004),
            (r, 0.006),
            (r, half - r * 0.34),
            (r * 0.90, half - r * 0.12),
            (r * 0.62, half),
            (0.0, half),
        ];
        s.add(Mat::Paint, lathe(&profile).along(Vec3::X));
        for side in [-1.0, 1.0] {
            let x = side * half * 0.58;
            s.add(Mat::Zinc, ring(r + 0.001, 0.0035).along(Vec3::X).at(x, 0.0, 0.0));
            s.add(Mat::Zinc, bevel_box(0.026, 0.012, r * 1.5, 0.003).at(x, -r - 0.004, 0.0));
            bolt(&mut s, Vec3::new(x, -r + 0.004, r * 0.70), Vec3::Y, 0.007);
        }
        // A plate with its volume.
        s.add(Mat::Face, bevel_box(0.055, 0.028, 0.002, 0.0005).at(0.0, 0.0, r + 0.0005));
        let bore = nipple_m(self.bore_mm);
        for port in ports {
            // Out of the wall, below the mouth; then the way it looks.
            let x = port.at.x.clamp(-half * 0.8, half * 0.8);
            let up = Vec3::new(0.0, port.at.y, port.at.z).normalize_or(Vec3::Y);
            let root = Vec3::X * x + up * (r - 0.004);
            let neck = port.at - port.axis * 0.026;
            s.add(Mat::Zinc, cylinder(bore * 1.7, 0.010, 0.002).along(up).at(root.x, root.y, root.z));
            s.add(Mat::Zinc, hose(&[root, root.lerp(neck, 0.5), neck], bore));
            nipple(&mut s, port.at, port.axis, bore);
        }
        s
    }

    fn hold(&self) -> Vec3 {
        Vec3::new(0.0, 0.0, reservoir_size(self.volume_l).0)
    }
}
