//! Instruments as parts of a car: what a file builds in for good. They look as on the tool board, their
//! displays off.

use bevy::math::Vec3;
use sim_core::parts::instruments::{HandPump, Multimeter, PushLead, TestLamp, VacuumGauge};

use super::{About, Body, nipple_m};
use crate::view3d::build::bits::nipple;
use crate::view3d::build::tools::{dials, electric};
use crate::view3d::materials::{Mat, Sculpt};
use crate::view3d::mouth::Mouth;
use crate::view3d::shapes::{cylinder, hexagon, lathe};

/// Bore of an instrument's stem, mm.
const STEM_MM: f64 = 6.0;

/// A round case with a blank face, of this radius.
fn case(s: &mut Sculpt, r: f32, at: Vec3) {
    let put = |profile: &[(f32, f32)]| lathe(profile).along(Vec3::Z).at(at.x, at.y, at.z);
    s.add(Mat::Paint, put(&[(0.0, -0.018), (r * 0.9, -0.018), (r, 0.0), (r, 0.016)]));
    s.add(Mat::Brass, put(&[(r, 0.010), (r * 1.05, 0.014), (r * 1.0, 0.024), (r * 0.92, 0.012)]));
    s.add(Mat::Face, put(&[(0.0, 0.010), (r * 0.95, 0.010), (r * 0.95, 0.012), (0.0, 0.012)]));
}

/// Two leads' ends, side by side below.
fn pair(x: f32, y: f32, z: f32) -> Vec<Mouth> {
    [-x, x].map(|x| Mouth::new(Vec3::new(x, y, z), Vec3::NEG_Y)).to_vec()
}

impl Body for VacuumGauge {
    fn about(&self) -> About {
        About::FACED
    }

    fn mouths(&self) -> Vec<Mouth> {
        vec![Mouth::new(Vec3::Y * -0.13, Vec3::NEG_Y)]
    }

    fn build(&self, ports: &[Mouth]) -> Sculpt {
        let mut s = Sculpt::default();
        case(&mut s, 0.080, Vec3::Y * 0.012);
        s.add(Mat::Brass, hexagon(0.014, 0.016).at(0.0, -0.108, 0.0));
        s.add(Mat::Brass, cylinder(0.006, 0.03, 0.001).at(0.0, -0.130, 0.0));
        for port in ports {
            nipple(&mut s, port.at, port.axis, nipple_m(STEM_MM));
        }
        s
    }
}

impl Body for HandPump {
    fn about(&self) -> About {
        About::FACED
    }

    fn mouths(&self) -> Vec<Mouth> {
        vec![Mouth::new(Vec3::new(0.085, 0.045, 0.0), Vec3::X)]
    }

    fn build(&self, ports: &[Mouth]) -> Sculpt {
        let mut s = Sculpt::default();
        case(&mut s, 0.050, Vec3::new(0.018, 0.105, 0.006));
        dials::hand_pump(&mut s, &mut Sculpt::default());
        for port in ports {
            nipple(&mut s, port.at, port.axis, nipple_m(STEM_MM));
        }
        s
    }
}

impl Body for TestLamp {
    fn about(&self) -> About {
        About::FACED
    }

    fn mouths(&self) -> Vec<Mouth> {
        pair(0.014, -0.075, 0.0)
    }

    fn build(&self, _: &[Mouth]) -> Sculpt {
        let mut s = Sculpt::default();
        electric::socket(&mut s);
        s.join(&electric::bulb(), bevy::transform::components::Transform::from_translation(electric::BULB));
        s
    }
}

impl Body for Multimeter {
    fn about(&self) -> About {
        About::FACED
    }

    fn mouths(&self) -> Vec<Mouth> {
        pair(0.015, -0.075, 0.03)
    }

    fn build(&self, _: &[Mouth]) -> Sculpt {
        let mut s = Sculpt::default();
        electric::multimeter(&mut s, &mut Sculpt::default());
        s
    }
}

impl Body for PushLead {
    fn about(&self) -> About {
        About::FACED
    }

    fn mouths(&self) -> Vec<Mouth> {
        pair(0.012, -0.10, 0.0)
    }

    fn build(&self, _: &[Mouth]) -> Sculpt {
        let mut s = Sculpt::default();
        electric::push_lead(&mut s, &mut Sculpt::default());
        s
    }
}
