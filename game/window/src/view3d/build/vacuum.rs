//! Four-way piece, vacuum switch, check valves, electric vacuum pump.

use bevy::math::{Quat, Vec3};

use super::super::materials::{Mat, Sculpt};
use super::super::places::{PUMP, TEE, TEE_PUMP};
use super::super::shapes::{bevel_box, cylinder, hexagon, hose, lathe, ring};
use super::brake::nipple;
use super::room::bolt;

/// Four-way piece: a body with four nipples.
pub(in super::super) fn tee() -> Sculpt {
    let mut s = Sculpt::default();
    let put = |s: &mut Sculpt, way: Vec3, long: f32| {
        s.add(Mat::Nylon, cylinder(0.0105, long - 0.012, 0.002).along(way).at(TEE.x, TEE.y, TEE.z));
        let collar = TEE + way * (long - 0.034);
        s.add(Mat::Nylon, cylinder(0.0145, 0.006, 0.002).along(way).at(collar.x, collar.y, collar.z));
        nipple(s, TEE + way * long, way, 0.0075);
    };
    s.add(
        Mat::Nylon,
        lathe(&[
            (0.0, -0.024),
            (0.018, -0.024),
            (0.024, -0.016),
            (0.024, 0.016),
            (0.018, 0.024),
            (0.0, 0.024),
        ])
        .along(Vec3::Z)
        .at(TEE.x, TEE.y, TEE.z),
    );
    s.add(Mat::GreyNylon, cylinder(0.014, 0.003, 0.001).along(Vec3::Z).at(TEE.x, TEE.y, TEE.z + 0.024));
    for (way, long) in [(Vec3::X, 0.075), (Vec3::Y, 0.065), (-Vec3::X, 0.07), (TEE_PUMP.normalize(), 0.07)] {
        put(&mut s, way, long);
    }
    s
}

/// Vacuum switch: a diaphragm can with a terminal block.
pub(in super::super) fn switch() -> Sculpt {
    let mut s = Sculpt::default();
    let (x, y, z) = (TEE.x, TEE.y, TEE.z);
    // Rubber sleeve down to the four-way piece, which goes with the switch.
    s.add(Mat::Rubber, cylinder(0.0125, 0.062, 0.002).at(x, y + 0.055, z));
    s.add(Mat::Brass, cylinder(0.008, 0.07, 0.001).at(x, y + 0.10, z));
    s.add(Mat::Brass, hexagon(0.014, 0.014).at(x, y + 0.142, z));
    s.add(
        Mat::Zinc,
        lathe(&[
            (0.0, 0.156),
            (0.026, 0.156),
            (0.033, 0.163),
            (0.037, 0.168),
            (0.037, 0.180),
            (0.033, 0.184),
            (0.026, 0.190),
            (0.0, 0.190),
        ])
        .at(x, y, z),
    );
    s.add(Mat::GreyNylon, lathe(&[(0.026, 0.188), (0.026, 0.214), (0.022, 0.218), (0.0, 0.218)]).at(x, y, z));
    s.add(Mat::GreyNylon, bevel_box(0.12, 0.022, 0.032, 0.005).at(x, y + 0.226, z));
    for dx in [-0.05, 0.05] {
        s.add(Mat::Brass, bevel_box(0.008, 0.026, 0.002, 0.0005).at(x + dx, y + 0.246, z));
    }
    s.add(Mat::Brass, cylinder(0.005, 0.008, 0.001).along(Vec3::Z).at(x, y + 0.205, z + 0.024));
    s
}

/// Check valve about `at`: two shells with an arrow's shape, the flow from store to source along `way`.
pub(in super::super) fn valve(at: Vec3, way: Vec3) -> Sculpt {
    let mut s = Sculpt::default();
    let put = |g: super::super::shapes::Geo| g.along(way).at(at.x, at.y, at.z);
    // The store's half is black, the source's pale: so one sees which way round it sits.
    s.add(
        Mat::Nylon,
        put(lathe(&[
            (0.0, -0.030),
            (0.010, -0.030),
            (0.020, -0.018),
            (0.025, -0.014),
            (0.025, 0.0),
            (0.0, 0.0),
        ])),
    );
    s.add(
        Mat::WhiteNylon,
        put(lathe(&[
            (0.0, 0.0),
            (0.025, 0.0),
            (0.025, 0.012),
            (0.020, 0.017),
            (0.0105, 0.034),
            (0.0, 0.034),
        ])),
    );
    s.add(Mat::Nylon, put(ring(0.0245, 0.003)));
    // Sleeve towards the store, nipple towards the source.
    s.add(
        Mat::Rubber,
        cylinder(0.0135, 0.115, 0.002).along(-way).at(
            at.x - way.x * 0.028,
            at.y - way.y * 0.028,
            at.z - way.z * 0.028,
        ),
    );
    let mouth = at + way * 0.052;
    s.add(
        Mat::WhiteNylon,
        cylinder(0.008, 0.022, 0.001).along(way).at(
            at.x + way.x * 0.032,
            at.y + way.y * 0.032,
            at.z + way.z * 0.032,
        ),
    );
    nipple(&mut s, mouth, way, 0.0075);
    // Arrow on the pale half.
    let side = way.cross(Vec3::Y).normalize_or(Vec3::Z);
    let lift = side.cross(way).normalize_or(Vec3::Y);
    let tip = at + way * 0.008 + lift * 0.0245;
    s.add(
        Mat::Ink,
        bevel_box(0.016, 0.002, 0.004, 0.0005)
            .turned(Quat::from_rotation_arc(Vec3::X, way))
            .at(tip.x, tip.y, tip.z),
    );
    s
}

/// Electric vacuum pump: motor below, vane chamber above, rubber-mounted on a bracket.
pub(in super::super) fn pump() -> Sculpt {
    let mut s = Sculpt::default();
    let p = PUMP;
    let motor = lathe(&[
        (0.0, -0.01),
        (0.020, -0.01),
        (0.024, 0.0),
        (0.046, 0.004),
        (0.052, 0.012),
        (0.052, 0.135),
        (0.049, 0.140),
        (0.0, 0.140),
    ]);
    s.add(Mat::Zinc, motor.at(p.x, p.y, p.z));
    let head = lathe(&[
        (0.062, 0.138),
        (0.066, 0.142),
        (0.066, 0.150),
        (0.060, 0.154),
        (0.060, 0.192),
        (0.066, 0.196),
        (0.066, 0.206),
        (0.058, 0.212),
        (0.030, 0.216),
        (0.0, 0.216),
    ]);
    s.add(Mat::Paint, head.at(p.x, p.y, p.z));
    for i in 0..6 {
        let (sin, cos) = (i as f32 / 6.0 * std::f32::consts::TAU).sin_cos();
        bolt(&mut s, Vec3::new(p.x + 0.050 * cos, p.y + 0.212, p.z + 0.050 * sin), Vec3::Y, 0.006);
        s.add(
            Mat::Paint,
            bevel_box(0.006, 0.04, 0.012, 0.002)
                .turned(Quat::from_rotation_y(-(i as f32) / 6.0 * std::f32::consts::TAU))
                .at(p.x + 0.061 * cos, p.y + 0.173, p.z + 0.061 * sin),
        );
    }
    s.add(Mat::Brass, hexagon(0.014, 0.014).at(p.x, p.y + 0.215, p.z));
    s.add(Mat::Brass, cylinder(0.008, 0.03, 0.001).at(p.x, p.y + 0.225, p.z));
    nipple(&mut s, p + Vec3::Y * 0.27, Vec3::Y, 0.0075);
    // Silencer at its outlet.
    s.add(
        Mat::Nylon,
        lathe(&[(0.0, 0.0), (0.014, 0.0), (0.017, 0.006), (0.017, 0.03), (0.013, 0.036), (0.0, 0.036)])
            .along(Vec3::new(-1.0, 0.0, 0.5))
            .at(p.x - 0.058, p.y + 0.172, p.z + 0.026),
    );
    // Terminal block with both terminals.
    s.add(Mat::GreyNylon, bevel_box(0.035, 0.13, 0.05, 0.006).at(p.x + 0.050, p.y + 0.127, p.z + 0.052));
    for (dy, mat) in [(0.17, Mat::Red), (0.085, Mat::Black)] {
        s.add(mat, bevel_box(0.012, 0.028, 0.04, 0.003).at(p.x + 0.069, p.y + dy, p.z + 0.062));
        s.add(Mat::Brass, bevel_box(0.012, 0.008, 0.012, 0.002).at(p.x + 0.074, p.y + dy, p.z + 0.068));
    }
    // Name plate.
    s.add(Mat::Face, bevel_box(0.045, 0.03, 0.003, 0.001).at(p.x - 0.01, p.y + 0.075, p.z + 0.0515));
    for i in 0..3 {
        s.add(
            Mat::Pencil,
            bevel_box(0.032, 0.003, 0.002, 0.0005).at(
                p.x - 0.01,
                p.y + 0.083 - 0.008 * i as f32,
                p.z + 0.053,
            ),
        );
    }
    // Bracket with rubber mounts, to the lower crossmember.
    s.add(Mat::Iron, bevel_box(0.17, 0.006, 0.10, 0.002).at(p.x, p.y - 0.012, p.z));
    for x in [-0.07, 0.07] {
        s.add(Mat::Rubber, cylinder(0.014, 0.022, 0.003).at(p.x + x, p.y - 0.034, p.z + 0.02));
        bolt(&mut s, Vec3::new(p.x + x, p.y - 0.008, p.z + 0.02), Vec3::Y, 0.007);
    }
    s.add(
        Mat::Iron,
        hose(
            &[
                p + Vec3::new(-0.052, 0.06, 0.0),
                p + Vec3::new(0.0, 0.06, 0.054),
                p + Vec3::new(0.052, 0.06, 0.0),
            ],
            0.004,
        ),
    );
    s
}
