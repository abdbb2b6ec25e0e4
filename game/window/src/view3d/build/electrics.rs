//! Battery on its tray, fuse and relay box with a visible fuse and relay, ignition lock and key.

use bevy::math::{Quat, Vec3};
use bevy::transform::components::Transform;
use std::f32::consts::{FRAC_PI_2, TAU};

use super::super::made::Made;
use super::super::materials::{Mat, Sculpt};
use super::super::moves::Moves;
use super::super::places::{self, BATTERY, LOCK};
use super::super::shapes::{bevel_box, cylinder, lathe, ring, sweep};
use super::room::bolt;
use front::hands::Thing;

/// Battery with tray and clamp; the fuse box's case stands beside it.
pub(in super::super) fn battery() -> Sculpt {
    let mut s = Sculpt::default();
    let b = BATTERY;
    s.add(Mat::Nylon, bevel_box(0.242, 0.165, 0.175, 0.006).at(b.x, b.y - 0.10, b.z));
    s.add(Mat::Paint, bevel_box(0.246, 0.028, 0.179, 0.008).at(b.x, b.y - 0.012, b.z));
    s.add(Mat::Paint, bevel_box(0.20, 0.012, 0.055, 0.005).at(b.x, b.y + 0.004, b.z - 0.04));
    for i in 0..6 {
        s.add(
            Mat::Nylon,
            cylinder(0.011, 0.005, 0.001).at(b.x - 0.075 + 0.03 * i as f32, b.y + 0.010, b.z - 0.04),
        );
    }
    // Posts in their wells; plus and minus are told by sign and by colour.
    for (dx, mat, plus) in [(0.075, Mat::Red, true), (-0.075, Mat::Black, false)] {
        let (x, z) = (b.x + dx, b.z + 0.03);
        s.add(
            Mat::Cast,
            lathe(&[(0.0105, -0.005), (0.0095, 0.022), (0.007, 0.026), (0.0, 0.026)]).at(x, b.y, z),
        );
        s.add(mat, lathe(&[(0.020, 0.0), (0.020, 0.004), (0.013, 0.005)]).at(x, b.y + 0.001, z));
        // Clamp with its bolt.
        s.add(
            Mat::Zinc,
            lathe(&[(0.011, 0.006), (0.0175, 0.006), (0.0175, 0.022), (0.011, 0.022)]).at(x, b.y, z),
        );
        s.add(Mat::Zinc, bevel_box(0.014, 0.016, 0.030, 0.003).at(x, b.y + 0.014, z + 0.022));
        bolt(&mut s, Vec3::new(x + 0.007, b.y + 0.014, z + 0.026), Vec3::X, 0.006);
        let sign = Vec3::new(x, b.y + 0.003, z + 0.058);
        s.add(Mat::Face, bevel_box(0.022, 0.002, 0.006, 0.0005).at(sign.x, sign.y, sign.z));
        if plus {
            s.add(Mat::Face, bevel_box(0.006, 0.002, 0.022, 0.0005).at(sign.x, sign.y, sign.z));
        }
    }
    // Label on the front.
    s.add(Mat::Face, bevel_box(0.16, 0.065, 0.002, 0.0005).at(b.x, b.y - 0.10, b.z + 0.0885));
    s.add(Mat::CarPaint, bevel_box(0.15, 0.014, 0.002, 0.0005).at(b.x, b.y - 0.078, b.z + 0.0897));
    for i in 0..3 {
        s.add(
            Mat::Pencil,
            bevel_box(0.10 - 0.02 * i as f32, 0.004, 0.002, 0.0005).at(
                b.x - 0.02,
                b.y - 0.10 - 0.011 * i as f32,
                b.z + 0.0897,
            ),
        );
    }
    // Tray and hold-down.
    s.add(Mat::Primer, bevel_box(0.27, 0.012, 0.20, 0.004).at(b.x, b.y - 0.19, b.z));
    s.add(Mat::Primer, bevel_box(0.03, 0.20, 0.18, 0.006).at(b.x, b.y - 0.29, b.z));
    s.add(Mat::Iron, bevel_box(0.05, 0.03, 0.02, 0.004).at(b.x, b.y - 0.172, b.z + 0.095));
    bolt(&mut s, Vec3::new(b.x, b.y - 0.157, b.z + 0.097), Vec3::Y, 0.007);
    s
}

/// The box in which fuse and relay sit, in the box's own frame.
fn case(s: &mut Sculpt) {
    s.add(Mat::GreyNylon, bevel_box(0.36, 0.26, 0.05, 0.010).at(0.0, 0.0, -0.026));
    for (w, h, x, y) in [
        (0.36, 0.010, 0.0, 0.126),
        (0.36, 0.010, 0.0, -0.126),
        (0.010, 0.26, 0.176, 0.0),
        (0.010, 0.26, -0.176, 0.0),
    ] {
        s.add(Mat::GreyNylon, bevel_box(w, h, 0.024, 0.003).at(x, y, 0.008));
    }
    // Other fuses in a row, small; a spare socket.
    for i in 0..5 {
        let y = 0.085 - 0.04 * i as f32;
        let mat = [Mat::Red, Mat::Case, Mat::Rag, Mat::Face, Mat::Brown][i];
        s.add(Mat::Nylon, bevel_box(0.026, 0.020, 0.010, 0.002).at(-0.055, y, 0.004));
        s.add(mat, bevel_box(0.020, 0.008, 0.016, 0.002).at(-0.055, y, 0.012));
    }
    // Sockets of the pump's fuse and relay.
    s.add(Mat::Nylon, bevel_box(0.052, 0.15, 0.014, 0.004).at(-0.115, 0.005, 0.004));
    s.add(Mat::Nylon, bevel_box(0.15, 0.165, 0.014, 0.006).at(0.06, 0.0, 0.004));
    for (x, y) in
        [(-0.115, 0.065), (-0.115, -0.055), (0.005, 0.06), (0.115, 0.06), (0.005, -0.06), (0.115, -0.06)]
    {
        s.add(Mat::Brass, bevel_box(0.012, 0.012, 0.018, 0.002).at(x, y, 0.020));
        s.add(Mat::Zinc, cylinder(0.005, 0.004, 0.001).along(Vec3::Z).at(x, y, 0.029));
    }
    // Lid, open, standing behind.
    s.add(
        Mat::Nylon,
        bevel_box(0.36, 0.20, 0.012, 0.008).turned(Quat::from_rotation_x(0.85)).at(0.0, 0.205, 0.065),
    );
    s.add(
        Mat::Face,
        bevel_box(0.24, 0.12, 0.002, 0.0005).turned(Quat::from_rotation_x(0.85)).at(0.0, 0.200, 0.0725),
    );
    for i in 0..4 {
        let along = Quat::from_rotation_x(0.85) * Vec3::Y * (0.038 - 0.025 * i as f32);
        s.add(
            Mat::Pencil,
            bevel_box(0.18, 0.005, 0.002, 0.0003).turned(Quat::from_rotation_x(0.85)).at(
                0.0,
                0.2005 + along.y,
                0.0735 + along.z,
            ),
        );
    }
}

/// The pump's fuse: a blade fuse with its window, in the box's frame when plugged in.
pub(in super::super) fn fuse() -> Sculpt {
    let mut own = Sculpt::default();
    own.add(Mat::FuseGreen, bevel_box(0.026, 0.062, 0.034, 0.004).at(0.0, 0.0, 0.018));
    own.add(Mat::FuseGreen, bevel_box(0.030, 0.070, 0.012, 0.004).at(0.0, 0.0, 0.038));
    own.add(Mat::Face, bevel_box(0.014, 0.020, 0.002, 0.0005).at(0.0, 0.0, 0.0445));
    own.add(Mat::Ink, bevel_box(0.007, 0.012, 0.002, 0.0003).at(0.0, 0.0, 0.0455));
    for y in [-0.022, 0.022] {
        own.add(Mat::Zinc, bevel_box(0.003, 0.016, 0.03, 0.0005).at(0.0, y, -0.008));
    }
    let mut s = Sculpt::default();
    s.join(&own, places::fuse_box() * Transform::from_xyz(-0.115, 0.005, 0.012));
    s
}

/// The pump's relay, in the box's frame when plugged in.
pub(in super::super) fn relay() -> Sculpt {
    let mut own = Sculpt::default();
    own.add(Mat::Black, bevel_box(0.066, 0.066, 0.062, 0.006).at(0.0, 0.0, 0.036));
    own.add(Mat::Nylon, bevel_box(0.072, 0.072, 0.010, 0.003).at(0.0, 0.0, 0.006));
    // Its plan, printed on top: coil and contact.
    own.add(Mat::Face, bevel_box(0.050, 0.050, 0.002, 0.0005).at(0.0, 0.0, 0.0675));
    own.add(Mat::Ink, bevel_box(0.016, 0.010, 0.002, 0.0003).at(-0.010, -0.012, 0.0685));
    own.add(Mat::Ink, bevel_box(0.002, 0.040, 0.002, 0.0003).at(-0.010, 0.0, 0.0683));
    own.add(Mat::Ink, bevel_box(0.002, 0.016, 0.002, 0.0003).at(0.012, -0.014, 0.0685));
    own.add(
        Mat::Ink,
        bevel_box(0.002, 0.016, 0.002, 0.0003).turned(Quat::from_rotation_z(0.5)).at(0.009, 0.004, 0.0685),
    );
    own.add(Mat::Ink, bevel_box(0.002, 0.014, 0.002, 0.0003).at(0.012, 0.017, 0.0685));
    for (x, y, turn) in [(-0.02, 0.02, 0.0), (0.02, 0.02, FRAC_PI_2), (-0.02, -0.02, 0.0), (0.02, -0.02, 0.0)]
    {
        own.add(
            Mat::Zinc,
            bevel_box(0.008, 0.002, 0.026, 0.0005).turned(Quat::from_rotation_z(turn)).at(x, y, -0.010),
        );
    }
    let mut s = Sculpt::default();
    s.join(&own, places::fuse_box() * Transform::from_xyz(0.06, 0.0, 0.012));
    s
}

/// The case of the box, which belongs to nothing that can be replaced.
pub(in super::super) fn fuse_box_case() -> Sculpt {
    let mut own = Sculpt::default();
    case(&mut own);
    let mut s = Sculpt::default();
    s.join(&own, places::fuse_box());
    // Foot on the inner wing.
    s.add(Mat::Primer, bevel_box(0.14, 0.30, 0.12, 0.01).at(-2.42, 0.76, -0.20));
    s
}

/// Ignition lock, its back cut open so that both terminals are seen.
pub(in super::super) fn lock() -> Sculpt {
    let mut s = Sculpt::default();
    let l = LOCK;
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
        .along(Vec3::Z)
        .at(l.x, l.y, l.z),
    );
    s.add(
        Mat::Nylon,
        lathe(&[(0.021, 0.006), (0.030, 0.010), (0.032, 0.03), (0.028, 0.048), (0.018, 0.05)])
            .along(Vec3::Z)
            .at(l.x, l.y, l.z),
    );
    s.add(Mat::GreyNylon, bevel_box(0.05, 0.125, 0.030, 0.006).at(l.x, l.y, l.z + 0.068));
    for y in [0.045, -0.04] {
        s.add(Mat::Brass, bevel_box(0.010, 0.010, 0.022, 0.001).at(l.x, l.y + y, l.z + 0.088));
    }
    // Arm to the column.
    s.add(
        Mat::Iron,
        sweep(
            &[l + Vec3::new(-0.02, 0.0, 0.03), l + Vec3::new(-0.10, 0.035, 0.04)],
            0.018,
            0.014,
            12,
            Vec3::Y,
        ),
    );
    s
}

/// The key in the lock; turns.
pub(in super::super) fn key() -> Made {
    let mut s = Sculpt::default();
    s.add(Mat::Steel, bevel_box(0.010, 0.004, 0.035, 0.001).at(0.0, 0.0, -0.014));
    s.add(Mat::Black, bevel_box(0.034, 0.013, 0.048, 0.006).at(0.0, 0.0, -0.052));
    s.add(Mat::Face, bevel_box(0.006, 0.002, 0.016, 0.0005).at(0.0, 0.0072, -0.052));
    s.add(Mat::Steel, ring(0.015, 0.0018).along(Vec3::new(0.3, 1.0, 0.0)).at(0.0, -0.006, -0.086));
    // A tag hangs from the ring.
    s.add(Mat::Face, bevel_box(0.030, 0.050, 0.002, 0.001).at(0.002, -0.044, -0.090));
    s.add(Mat::Pencil, bevel_box(0.02, 0.003, 0.003, 0.0005).at(0.002, -0.040, -0.090));
    s.add(Mat::Pencil, bevel_box(0.016, 0.003, 0.003, 0.0005).at(0.0, -0.050, -0.090));
    Made::of(Thing::Key, Transform::from_translation(LOCK), s).moving(Moves::Key)
}

/// A round of small numbers is not drawn: marks round the lock for off and on.
pub(in super::super) fn lock_marks() -> Sculpt {
    let mut s = Sculpt::default();
    for (i, a) in [0.0_f32, 0.9].into_iter().enumerate() {
        let (sin, cos) = (a + TAU * 0.25).sin_cos();
        let long = 0.006 + 0.003 * i as f32;
        s.add(
            Mat::Face,
            bevel_box(0.002, long, 0.002, 0.0004).turned(Quat::from_rotation_z(a)).at(
                LOCK.x + cos * 0.0265,
                LOCK.y + sin * 0.0265,
                LOCK.z + 0.006,
            ),
        );
    }
    s
}
