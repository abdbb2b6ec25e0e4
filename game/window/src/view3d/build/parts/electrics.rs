//! Battery on its tray, fuse, relay, ignition lock, earth points.

use assess::room::{Mouth as Port, Xyz};
use bevy::math::{Quat, Vec3};
use sim_core::action::Station;
use sim_core::parts::electrical::{Battery, Body as CarBody, Fuse, KeySwitch, Relay, RelaySocket};
use std::f32::consts::{FRAC_PI_2, TAU};

use super::{About, Body, Seat};
use crate::view3d::build::bits::bolt;
use crate::view3d::materials::{Mat, Sculpt};
use crate::view3d::mouth::Mouth;
use crate::view3d::shapes::{bevel_box, cylinder, lathe, sweep};

/// How much longer a battery is than one of 50 Ah.
fn longer(battery: &Battery) -> f32 {
    ((battery.capacity_ah as f32) / 50.0).sqrt().clamp(0.5, 2.0)
}

/// Case, lid, posts, tray and clamp; counted from the middle of the lid, the posts towards +z.
impl Body for Battery {
    fn about(&self) -> About {
        About::FIXED.seated((-2.385, 0.81, 0.20), Station::Bay)
    }

    fn mouths(&self) -> Vec<Mouth> {
        let x = 0.075 * longer(self);
        vec![
            Mouth::new(Vec3::new(x, 0.035, 0.03), Vec3::new(0.3, 1.0, 0.0)),
            Mouth::new(Vec3::new(-x, 0.035, 0.03), Vec3::new(-0.2, 1.0, 0.3)),
        ]
    }

    fn hold(&self) -> Vec3 {
        Vec3::new(0.03, -0.06, 0.09)
    }

    fn build(&self, ports: &[Mouth]) -> Sculpt {
        let mut s = Sculpt::default();
        let k = longer(self);
        s.add(Mat::Nylon, bevel_box(0.242 * k, 0.165, 0.175, 0.006).at(0.0, -0.10, 0.0));
        s.add(Mat::Paint, bevel_box(0.246 * k, 0.028, 0.179, 0.008).at(0.0, -0.012, 0.0));
        s.add(Mat::Paint, bevel_box(0.20 * k, 0.012, 0.055, 0.005).at(0.0, 0.004, -0.04));
        for i in 0..6 {
            let x = (-0.075 + 0.03 * i as f32) * k;
            s.add(Mat::Nylon, cylinder(0.011, 0.005, 0.001).at(x, 0.010, -0.04));
        }
        for (port, plus) in ports.iter().zip([true, false]) {
            post(&mut s, port.at.x, port.at.z, plus);
        }
        label(&mut s, k);
        // Tray and hold-down.
        s.add(Mat::Primer, bevel_box(0.27 * k, 0.012, 0.20, 0.004).at(0.0, -0.19, 0.0));
        s.add(Mat::Primer, bevel_box(0.03, 0.20, 0.18, 0.006).at(0.0, -0.29, 0.0));
        s.add(Mat::Iron, bevel_box(0.05, 0.03, 0.02, 0.004).at(0.0, -0.172, 0.095));
        bolt(&mut s, Vec3::new(0.0, -0.157, 0.097), Vec3::Y, 0.007);
        s
    }
}

/// A post in its well with its clamp; plus and minus are told by sign and by colour.
fn post(s: &mut Sculpt, x: f32, z: f32, plus: bool) {
    let mat = if plus { Mat::Red } else { Mat::Black };
    s.add(Mat::Cast, lathe(&[(0.0105, -0.005), (0.0095, 0.022), (0.007, 0.026), (0.0, 0.026)]).at(x, 0.0, z));
    s.add(mat, lathe(&[(0.020, 0.0), (0.020, 0.004), (0.013, 0.005)]).at(x, 0.001, z));
    // Clamp with its bolt.
    let clamp = lathe(&[(0.011, 0.006), (0.0175, 0.006), (0.0175, 0.022), (0.011, 0.022)]);
    s.add(Mat::Zinc, clamp.at(x, 0.0, z));
    s.add(Mat::Zinc, bevel_box(0.014, 0.016, 0.030, 0.003).at(x, 0.014, z + 0.022));
    bolt(s, Vec3::new(x + 0.007, 0.014, z + 0.026), Vec3::X, 0.006);
    s.add(Mat::Face, bevel_box(0.022, 0.002, 0.006, 0.0005).at(x, 0.003, z + 0.058));
    if plus {
        s.add(Mat::Face, bevel_box(0.006, 0.002, 0.022, 0.0005).at(x, 0.003, z + 0.058));
    }
}

/// Label on the front.
fn label(s: &mut Sculpt, k: f32) {
    s.add(Mat::Face, bevel_box(0.16 * k, 0.065, 0.002, 0.0005).at(0.0, -0.10, 0.0885));
    s.add(Mat::CarPaint, bevel_box(0.15 * k, 0.014, 0.002, 0.0005).at(0.0, -0.078, 0.0897));
    for i in 0..3 {
        let line = bevel_box(0.10 - 0.02 * i as f32, 0.004, 0.002, 0.0005);
        s.add(Mat::Pencil, line.at(-0.02, -0.10 - 0.011 * i as f32, 0.0897));
    }
}

/// Colour of a blade fuse by its rating, as the trade has them; the large ones would be orange, which is kept for
/// high voltage, and are green as the 30 A.
fn colour(rating_a: f64) -> Mat {
    const BELOW: [(f64, Mat); 7] = [
        (6.0, Mat::Case),
        (9.0, Mat::Brown),
        (12.0, Mat::Red),
        (17.0, Mat::Rag),
        (22.0, Mat::Yellow),
        (27.0, Mat::Face),
        (f64::INFINITY, Mat::FuseGreen),
    ];
    BELOW.iter().find(|(below, _)| rating_a < *below).map_or(Mat::FuseGreen, |(_, mat)| *mat)
}

/// A blade fuse with its window, its blades towards −z; larger above 30 A.
impl Body for Fuse {
    fn about(&self) -> About {
        About::FACED
    }

    fn mouths(&self) -> Vec<Mouth> {
        vec![
            Mouth::new(Vec3::new(0.0, 0.06, 0.023), Vec3::new(-0.5, 1.0, 0.5)),
            Mouth::new(Vec3::new(0.0, -0.06, 0.023), Vec3::new(0.2, -0.9, 0.7)),
        ]
    }

    fn hold(&self) -> Vec3 {
        Vec3::Z * 0.038
    }

    fn build(&self, _: &[Mouth]) -> Sculpt {
        let mut s = Sculpt::default();
        let k = if 32.0 < self.rating_a { 1.3 } else { 1.0 };
        let mat = colour(self.rating_a);
        s.add(mat, bevel_box(0.026 * k, 0.062 * k, 0.034, 0.004).at(0.0, 0.0, 0.018));
        s.add(mat, bevel_box(0.030 * k, 0.070 * k, 0.012, 0.004).at(0.0, 0.0, 0.038));
        s.add(Mat::Face, bevel_box(0.014, 0.020, 0.002, 0.0005).at(0.0, 0.0, 0.0445));
        s.add(Mat::Ink, bevel_box(0.007, 0.012, 0.002, 0.0003).at(0.0, 0.0, 0.0455));
        for y in [-0.022, 0.022] {
            s.add(Mat::Zinc, bevel_box(0.003, 0.016, 0.03, 0.0005).at(0.0, y * k, -0.008));
        }
        s
    }
}

/// A cube with four blades towards −z, its plan printed on top.
impl Body for Relay {
    fn about(&self) -> About {
        About::FACED
    }

    fn mouths(&self) -> Vec<Mouth> {
        let pin = |x: f32, y: f32, out: Vec3| Mouth::new(Vec3::new(x, y, 0.023), out);
        vec![
            pin(-0.055, 0.06, Vec3::new(-0.5, 0.9, 0.7)),
            pin(0.055, 0.06, Vec3::new(0.8, 0.7, 0.5)),
            pin(0.055, -0.06, Vec3::new(1.0, -0.5, 0.5)),
            pin(-0.055, -0.06, Vec3::new(-0.2, -1.0, 0.5)),
        ]
    }

    fn hold(&self) -> Vec3 {
        Vec3::Z * 0.068
    }

    fn build(&self, _: &[Mouth]) -> Sculpt {
        let mut s = Sculpt::default();
        s.add(Mat::Black, bevel_box(0.066, 0.066, 0.062, 0.006).at(0.0, 0.0, 0.036));
        s.add(Mat::Nylon, bevel_box(0.072, 0.072, 0.010, 0.003).at(0.0, 0.0, 0.006));
        // Its plan, printed on top: coil and contact.
        s.add(Mat::Face, bevel_box(0.050, 0.050, 0.002, 0.0005).at(0.0, 0.0, 0.0675));
        s.add(Mat::Ink, bevel_box(0.016, 0.010, 0.002, 0.0003).at(-0.010, -0.012, 0.0685));
        s.add(Mat::Ink, bevel_box(0.002, 0.040, 0.002, 0.0003).at(-0.010, 0.0, 0.0683));
        s.add(Mat::Ink, bevel_box(0.002, 0.016, 0.002, 0.0003).at(0.012, -0.014, 0.0685));
        let arm = bevel_box(0.002, 0.016, 0.002, 0.0003).turned(Quat::from_rotation_z(0.5));
        s.add(Mat::Ink, arm.at(0.009, 0.004, 0.0685));
        s.add(Mat::Ink, bevel_box(0.002, 0.014, 0.002, 0.0003).at(0.012, 0.017, 0.0685));
        for (x, y, turn) in
            [(-0.02, 0.02, 0.0), (0.02, 0.02, FRAC_PI_2), (-0.02, -0.02, 0.0), (0.02, -0.02, 0.0)]
        {
            let blade = bevel_box(0.008, 0.002, 0.026, 0.0005).turned(Quat::from_rotation_z(turn));
            s.add(Mat::Zinc, blade.at(x, y, -0.010));
        }
        s
    }
}

/// The plate under a relay, a terminal for each wire at its rim, the clip's contact at its side.
impl Body for RelaySocket {
    fn about(&self) -> About {
        About::FACED
    }

    fn mouths(&self) -> Vec<Mouth> {
        let pin = |x: f32, y: f32, out: Vec3| Mouth::new(Vec3::new(x, y, -0.004), out);
        vec![
            pin(-0.075, 0.03, Vec3::new(-0.9, 0.4, 0.4)),
            pin(-0.075, -0.03, Vec3::new(-0.9, -0.4, 0.4)),
            pin(0.075, 0.03, Vec3::new(0.9, 0.4, 0.4)),
        ]
    }

    fn hold(&self) -> Vec3 {
        Vec3::Z * -0.02
    }

    fn build(&self, ports: &[Mouth]) -> Sculpt {
        let mut s = Sculpt::default();
        s.add(Mat::GreyNylon, bevel_box(0.092, 0.092, 0.012, 0.003).at(0.0, 0.0, -0.005));
        for port in ports {
            let x = 0.5 * (port.at.x + 0.04_f32.copysign(port.at.x));
            let y = port.at.y.clamp(-0.04, 0.04);
            s.add(Mat::GreyNylon, bevel_box(0.040, 0.016, 0.008, 0.002).at(x, y, -0.005));
            s.add(Mat::Brass, bevel_box(0.010, 0.012, 0.008, 0.001).at(port.at.x, port.at.y, port.at.z));
        }
        s
    }
}

/// Ignition lock, the key's side towards −z, its back cut open so that both terminals are seen.
impl Body for KeySwitch {
    fn about(&self) -> About {
        About::FIXED.seated((-1.20, 0.92, -1.12), Station::Cab)
    }

    fn mouths(&self) -> Vec<Mouth> {
        vec![
            Mouth::new(Vec3::new(0.0, 0.045, 0.09), Vec3::new(0.1, 0.35, 1.0)),
            Mouth::new(Vec3::new(0.0, -0.04, 0.09), Vec3::new(0.1, -0.35, 1.0)),
        ]
    }

    fn hold(&self) -> Vec3 {
        Vec3::new(0.02, 0.0, 0.04)
    }

    fn build(&self, ports: &[Mouth]) -> Sculpt {
        let mut s = Sculpt::default();
        s.add(
            Mat::Zinc,
            lathe(&[
                (0.0, 0.0),
                (0.017, 0.0),
                (0.021, 0.004),
                (0.021, 0.014),
                (0.018, 0.018),
                (0.018, 0.055),
                (0.0, 0.055),
            ])
            .along(Vec3::Z),
        );
        s.add(
            Mat::Nylon,
            lathe(&[(0.021, 0.006), (0.030, 0.010), (0.032, 0.03), (0.028, 0.048), (0.018, 0.05)])
                .along(Vec3::Z),
        );
        s.add(Mat::GreyNylon, bevel_box(0.05, 0.125, 0.030, 0.006).at(0.0, 0.0, 0.068));
        for port in ports {
            s.add(Mat::Brass, bevel_box(0.010, 0.010, 0.022, 0.001).at(port.at.x, port.at.y, 0.088));
        }
        // Arm to the column.
        let arm = [Vec3::new(-0.02, 0.0, 0.03), Vec3::new(-0.10, 0.035, 0.04)];
        s.add(Mat::Iron, sweep(&arm, 0.018, 0.014, 12, Vec3::Y));
        // A round of small numbers is not drawn: marks round the lock for off and on.
        for (i, a) in [0.0_f32, 0.9].into_iter().enumerate() {
            let (sin, cos) = (a + TAU * 0.25).sin_cos();
            let mark = bevel_box(0.002, 0.006 + 0.003 * i as f32, 0.002, 0.0004);
            s.add(Mat::Face, mark.turned(Quat::from_rotation_z(a)).at(cos * 0.0265, sin * 0.0265, 0.006));
        }
        s
    }
}

/// Earth points, each a stud with a nut, wherever they are.
impl Body for CarBody {
    fn about(&self) -> About {
        let seat = Seat {
            station: Station::Bay,
            at: (0.0, 0.0, 0.0),
            hold: Some((-2.25, 1.0, -0.62)),
            ports: Some(earth_points),
        };
        About { seat: Some(seat), ..About::FIXED }
    }

    fn mouths(&self) -> Vec<Mouth> {
        (0..4).map(|i| Mouth::new(Vec3::X * (-0.12 + 0.08 * i as f32), Vec3::Y)).collect()
    }

    fn build(&self, ports: &[Mouth]) -> Sculpt {
        let mut s = Sculpt::default();
        for m in ports {
            let foot = m.at - m.axis * 0.014;
            s.add(Mat::Zinc, cylinder(0.016, 0.003, 0.001).along(m.axis).at(foot.x, foot.y, foot.z));
            s.add(Mat::Brass, cylinder(0.0045, 0.03, 0.001).along(m.axis).at(foot.x, foot.y, foot.z));
            bolt(&mut s, foot + m.axis * 0.004, m.axis, 0.010);
        }
        s
    }
}

/// Earth points where no file says it: two on the crossmember, one at the bulkhead, one on the inner wing.
fn earth_points() -> Vec<Port> {
    let at = |at: Xyz, out: Xyz, axis: Option<Xyz>| Port { at, out, axis };
    vec![
        at((-1.95, 0.925, 0.465), (0.3, 1.0, 0.2), Some((0.0, 1.0, 0.0))),
        at((-2.26, 0.925, 0.46), (-1.0, 0.5, 0.0), Some((0.0, 1.0, 0.0))),
        at((-1.60, 1.06, -0.60), (-0.5, 0.5, 0.8), None),
        at((-2.44, 0.864, -0.02), (0.3, 1.0, 0.2), None),
    ]
}
