//! Controller of a pump, and the bench's supply as a part.

use bevy::math::Vec3;
use sim_core::parts::controller::Controller;
use sim_core::parts::electrical::Supply;

use super::{About, Body};
use crate::view3d::build::bits::bolt;
use crate::view3d::materials::{Mat, Sculpt};
use crate::view3d::mouth::Mouth;
use crate::view3d::shapes::{bevel_box, cylinder};

/// From one terminal of the controller to the next, m: far enough apart to hold a probe to each.
const PITCH_M: f32 = 0.034;

/// A flat box with cooling ribs, its face towards +z, and a strip with six terminals along its lower edge.
impl Body for Controller {
    fn about(&self) -> About {
        About::FACED
    }

    fn mouths(&self) -> Vec<Mouth> {
        (0..6)
            .map(|i| {
                let x = PITCH_M * (i as f32 - 2.5);
                Mouth::new(Vec3::new(x, -0.072, 0.020), Vec3::new(x * 2.0, -1.0, 0.6))
            })
            .collect()
    }

    fn hold(&self) -> Vec3 {
        Vec3::new(0.0, 0.01, 0.024)
    }

    fn build(&self, ports: &[Mouth]) -> Sculpt {
        let mut s = Sculpt::default();
        s.add(Mat::Cast, bevel_box(0.19, 0.105, 0.034, 0.006));
        for i in 0..7 {
            let x = -0.072 + 0.024 * i as f32;
            s.add(Mat::Cast, bevel_box(0.006, 0.060, 0.012, 0.002).at(x, 0.018, 0.020));
        }
        for x in [-0.105, 0.105] {
            s.add(Mat::Cast, bevel_box(0.030, 0.030, 0.006, 0.002).at(x, 0.020, -0.014));
            bolt(&mut s, Vec3::new(x + 0.004 * x.signum(), 0.020, -0.010), Vec3::Z, 0.007);
        }
        s.add(Mat::Nylon, bevel_box(0.215, 0.022, 0.040, 0.004).at(0.0, -0.052, 0.006));
        s.add(Mat::Face, bevel_box(0.07, 0.016, 0.002, 0.0005).at(0.0, -0.026, 0.018));
        for port in ports {
            let at = Vec3::new(port.at.x, -0.064, port.at.z);
            s.add(Mat::Brass, bevel_box(0.008, 0.020, 0.003, 0.0008).at(at.x, at.y, at.z));
            s.add(Mat::GreyNylon, bevel_box(0.003, 0.020, 0.024, 0.001).at(at.x + PITCH_M * 0.5, at.y, at.z));
        }
        s
    }
}

/// A bench supply with two posts, its face towards +z.
impl Body for Supply {
    fn about(&self) -> About {
        About::FIXED
    }

    fn mouths(&self) -> Vec<Mouth> {
        [0.035, 0.095].map(|x| Mouth::new(Vec3::new(x, 0.05, 0.155), Vec3::Z)).to_vec()
    }

    fn hold(&self) -> Vec3 {
        Vec3::new(-0.06, 0.135, 0.124)
    }

    fn build(&self, ports: &[Mouth]) -> Sculpt {
        let mut s = Sculpt::default();
        s.add(Mat::Case, bevel_box(0.28, 0.17, 0.24, 0.008).at(0.0, 0.095, 0.0));
        s.add(Mat::GreyNylon, bevel_box(0.27, 0.16, 0.006, 0.002).at(0.0, 0.095, 0.121));
        s.add(Mat::Display, bevel_box(0.10, 0.045, 0.006, 0.001).at(-0.06, 0.135, 0.124));
        for (port, mat) in ports.iter().zip([Mat::Red, Mat::Black]) {
            s.add(mat, cylinder(0.013, 0.025, 0.003).along(Vec3::Z).at(port.at.x, port.at.y, 0.122));
            s.add(Mat::Brass, cylinder(0.005, 0.032, 0.001).along(Vec3::Z).at(port.at.x, port.at.y, 0.122));
        }
        for x in [-0.09, -0.03] {
            s.add(Mat::Black, cylinder(0.018, 0.02, 0.003).along(Vec3::Z).at(x, 0.06, 0.122));
            s.add(Mat::Face, bevel_box(0.003, 0.014, 0.003, 0.0005).at(x, 0.066, 0.142));
        }
        for x in [-0.11, 0.11] {
            s.add(Mat::Rubber, cylinder(0.014, 0.012, 0.002).at(x, 0.0, 0.08));
        }
        s
    }
}
