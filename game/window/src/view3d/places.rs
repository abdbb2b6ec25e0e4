//! Where the workshop's own things stand, whatever car is in it ([`super::stands`] has the car). Metres; x to the
//! right, y up, z towards the visitor; the car's nose looks along +z and its left side, where the driver sits, is
//! towards the middle of the room.

use bevy::math::{Quat, Vec3};
use bevy::transform::components::Transform;
use sim_core::action::Station;

/// Length of a joint along a line: from the fitting's mouth to where the line itself is taken hold of.
pub(super) const JOINT_M: f32 = 0.09;

/// Middle of the trolley's top.
pub(super) const TROLLEY: Vec3 = Vec3::new(-0.46, 0.86, -0.44);
/// Where the stopwatch lies when it has timed something: on the trolley, its face up and towards the car.
pub(super) const WATCH: Transform = Transform {
    translation: Vec3::new(-0.60, 0.905, -0.24),
    // −64° about x.
    rotation: Quat::from_xyzw(-0.529_919, 0.0, 0.0, 0.848_048),
    scale: Vec3::ONE,
};
/// Middle of the bench's top.
pub(super) const BENCH: Vec3 = Vec3::new(0.75, 0.90, -1.98);
/// Middle of the tool board.
pub(super) const BOARD: Vec3 = Vec3::new(0.75, 1.55, -2.36);
/// Middle of the desk's top.
pub(super) const DESK: Vec3 = Vec3::new(1.75, 0.76, 1.05);
/// Left end of the shelf's lowest board.
pub(super) const SHELF: Vec3 = Vec3::new(2.12, 0.34, -2.20);
/// Job card and data sheet on the desk.
pub(super) const JOB_CARD: Vec3 = Vec3::new(1.52, 0.772, 1.02);
/// See [`JOB_CARD`].
pub(super) const DATA_SHEET: Vec3 = Vec3::new(1.92, 0.772, 1.10);
/// Middle of the left front wheel.
pub(super) const WHEEL: Vec3 = Vec3::new(-0.99, 0.31, 0.0);

/// A frame at `at` whose +z looks to `eye`.
pub(super) fn facing(at: Vec3, eye: Vec3) -> Transform {
    Transform::from_translation(at).looking_to(at - eye, Vec3::Y)
}

/// A place on the trolley: what has been taken off lies here.
#[must_use]
pub(super) fn trolley_slot(i: usize) -> Vec3 {
    let (row, column) = ((i / 2) % 4, i % 2);
    TROLLEY + Vec3::new(-0.09 + 0.18 * column as f32, 0.03, 0.20 - 0.135 * row as f32)
}

/// Where something of `station` lies when all its joints are open.
#[must_use]
pub(super) fn laid_aside(station: Station, i: usize) -> Vec3 {
    match station {
        // On the mat in front of the car.
        Station::Front => Vec3::new(-1.98 + 0.25 * i as f32, 0.09, 0.80),
        Station::Desk | Station::Cab | Station::Bay | Station::Bench => trolley_slot(i),
    }
}

/// Where an instrument hangs while it is connected at `station`, `i` others being there before it.
#[must_use]
pub(super) fn parking(station: Station, i: usize) -> Vec3 {
    const BAY: [Vec3; 6] = [
        Vec3::new(-1.72, 1.02, 0.50),
        Vec3::new(-1.40, 1.02, 0.50),
        Vec3::new(-2.02, 1.02, 0.50),
        Vec3::new(-1.08, 1.02, 0.42),
        Vec3::new(-0.90, 1.04, 0.12),
        Vec3::new(-0.90, 1.04, -0.20),
    ];
    const FRONT: [Vec3; 4] = [
        Vec3::new(-1.84, 0.66, 0.50),
        Vec3::new(-0.93, 0.78, 0.55),
        Vec3::new(-2.10, 0.66, 0.50),
        Vec3::new(-2.10, 0.40, 0.52),
    ];
    const CAB: [Vec3; 4] = [
        Vec3::new(-1.00, 1.02, -0.98),
        Vec3::new(-0.96, 0.62, -0.78),
        Vec3::new(-1.00, 0.60, -1.20),
        Vec3::new(-0.98, 1.15, -0.75),
    ];
    match station {
        Station::Bay => BAY[i % BAY.len()],
        Station::Front => FRONT[i % FRONT.len()],
        Station::Cab => CAB[i % CAB.len()],
        Station::Desk => DESK + Vec3::new(-0.3 + 0.25 * i as f32, 0.15, -0.2),
        Station::Bench => BENCH + Vec3::new(-0.4 + 0.25 * i as f32, 0.14, 0.15),
    }
}

/// Height of the foot of the rod that an instrument in use hangs from, m: on the bodywork by its magnet, on
/// the floor before the car; `None` where it lies on a table.
#[must_use]
pub(super) fn stand_foot(station: Station) -> Option<f32> {
    match station {
        Station::Bay => Some(0.84),
        Station::Front => Some(0.0),
        Station::Cab => Some(0.30),
        Station::Desk | Station::Bench => None,
    }
}

/// Where an instrument of the kit hangs when it is not in use: the `i`-th of those on the board.
#[must_use]
pub(super) fn board_hook(i: usize) -> Vec3 {
    const IN_A_ROW: usize = 8;
    let (row, column) = (i / IN_A_ROW, i % IN_A_ROW);
    BOARD + Vec3::new(-0.945 + 0.27 * column as f32, 0.235 - 0.46 * row as f32, 0.045)
}

/// Barometer and thermometer hang on the wall beside the board.
#[must_use]
pub(super) fn wall_hook(barometer: bool) -> Vec3 {
    Vec3::new(-0.62, if barometer { 1.80 } else { 1.38 }, -2.36)
}

/// Lower end of the duct on the wall from which the hose of the exhaust extraction hangs.
pub(super) const EXTRACTION_DUCT: Vec3 = Vec3::new(-1.02, 1.62, -2.31);
/// Mouth of the car's tail pipe.
pub(super) const TAIL_PIPE: Vec3 = Vec3::new(-0.96, 0.20, -1.92);

/// Where one takes hold of the hose of the exhaust extraction.
#[must_use]
pub(super) fn extraction(on: bool) -> Vec3 {
    if on { TAIL_PIPE - Vec3::Z * 0.06 } else { EXTRACTION_DUCT + Vec3::new(0.18, -0.16, 0.06) }
}

/// Where the `i`-th spare stands.
#[must_use]
pub(super) fn shelf_place(i: usize) -> Vec3 {
    const IN_A_ROW: usize = 5;
    let (row, column) = (i / IN_A_ROW, i % IN_A_ROW);
    SHELF + Vec3::new(0.13 + 0.235 * column as f32, 0.41 * (3 - row.min(3)) as f32, 0.02)
}

/// Where a chock is; set, its face lies against the tyre.
#[must_use]
pub(super) fn chock(front: bool, set: bool) -> Transform {
    let side = if front { 1.0 } else { -1.0 };
    let turned = bevy::math::Quat::from_rotation_y(if front { 0.0 } else { std::f32::consts::PI });
    let at = if set {
        Vec3::new(WHEEL.x, 0.0, WHEEL.z + side * 0.243)
    } else {
        Vec3::new(-0.62, 0.0, 0.60 + side * 0.11)
    };
    Transform::from_translation(at).with_rotation(turned)
}

/// Where the car as a whole is pointed at from a station: its paint, where nothing else is.
#[must_use]
pub(super) fn car_mark(at: Station) -> Option<Vec3> {
    match at {
        Station::Desk => Some(Vec3::new(-1.2, 0.95, 0.35)),
        Station::Cab => Some(Vec3::new(-0.95, 0.28, -1.25)),
        Station::Bay => Some(Vec3::new(-0.90, 0.90, 0.36)),
        Station::Front => Some(Vec3::new(-1.05, 0.74, 0.50)),
        Station::Bench => None,
    }
}
