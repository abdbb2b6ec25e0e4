//! Where everything stands in the room, by the short names of the car file. One place for shapes, hoses,
//! hotspots and tests. Metres; x to the right, y up, z towards the visitor; the car's nose looks along +z
//! and its left side, where the driver sits, is towards the middle of the room.
//!
//! A car whose names are not in here still works: its parts get places on the trolley, in a row.

use bevy::math::{Quat, Vec3};
use bevy::transform::components::Transform;
use sim_core::action::Station;

/// A fitting or terminal: where it is, and where a hose or wire leaves it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Mouth {
    /// The place.
    pub(super) at: Vec3,
    /// The way out, unit length.
    pub(super) out: Vec3,
}

/// Length of a joint along a line: from the fitting's mouth to where the line itself is taken hold of.
pub(super) const JOINT_M: f32 = 0.09;

/// Middle of the four-way piece.
pub(super) const TEE: Vec3 = Vec3::new(-1.86, 0.93, -0.47);
/// Its branch towards the pump.
pub(super) const TEE_PUMP: Vec3 = Vec3::new(0.74, -0.10, 0.66);
/// Middle of the booster's shell; its axis is z.
pub(super) const BOOSTER: Vec3 = Vec3::new(-1.28, 0.93, -0.50);
/// The bulkhead's face towards the engine.
pub(super) const BULKHEAD_Z: f32 = -0.62;
/// Foot of the vacuum pump, its axis is y.
pub(super) const PUMP: Vec3 = Vec3::new(-1.42, 0.30, 0.36);
/// Middle of the battery's lid.
pub(super) const BATTERY: Vec3 = Vec3::new(-2.385, 0.81, 0.20);
/// The ignition lock's face, its axis is z.
pub(super) const LOCK: Vec3 = Vec3::new(-1.20, 0.92, -1.12);
/// Where the pedal turns.
pub(super) const PEDAL_PIVOT: Vec3 = Vec3::new(-1.28, 0.98, -0.80);
/// Length of the pedal lever, m: travel at the pad over this is the angle.
pub(super) const PEDAL_ARM_M: f32 = 0.46;
/// Where the wires pass the bulkhead.
pub(super) const GROMMET: Vec3 = Vec3::new(-1.04, 0.97, -0.62);
/// The car's middle line.
pub(super) const CAR_X: f32 = -1.75;
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
/// The accelerator's pad.
pub(super) const ACCELERATOR: Vec3 = Vec3::new(-1.46, 0.44, -0.86);
/// Middle of the left front wheel.
pub(super) const WHEEL: Vec3 = Vec3::new(-0.99, 0.31, 0.0);

/// The fuse and relay box: its lid's middle, x to its right, z out of it.
pub(super) fn fuse_box() -> Transform {
    let out = Vec3::new(0.34, 0.74, 0.58).normalize();
    Transform::from_xyz(-2.37, 0.95, -0.20).looking_to(-out, Vec3::Y)
}

/// A frame at `at` whose +z looks to `eye`.
pub(super) fn facing(at: Vec3, eye: Vec3) -> Transform {
    Transform::from_translation(at).looking_to(at - eye, Vec3::Y)
}

fn mouth(at: Vec3, out: Vec3) -> Mouth {
    Mouth { at, out: out.normalize_or(Vec3::Y) }
}

fn in_box(x: f32, y: f32, out: Vec3) -> Mouth {
    let frame = fuse_box();
    mouth(frame.transform_point(Vec3::new(x, y, 0.035)), frame.rotation * out)
}

/// Fitting or terminal of a thing that stands in one place (`part.port`); lines have none of their own.
#[must_use]
pub(super) fn fixed_mouth(name: &str) -> Option<Mouth> {
    let pump_way = TEE_PUMP.normalize();
    let v = Vec3::new;
    Some(match name {
        "booster.vacuum" => mouth(BOOSTER + v(-0.135, 0.11, 0.125), v(-0.86, 0.30, 0.42)),
        "tee.1" => mouth(TEE + v(0.075, 0.0, 0.0), Vec3::X),
        "tee.2" => mouth(TEE + v(0.0, 0.065, 0.0), Vec3::Y),
        "tee.3" => mouth(TEE - v(0.07, 0.0, 0.0), -Vec3::X),
        "tee.4" => mouth(TEE + pump_way * 0.07, pump_way),
        "switch.vacuum" => mouth(TEE + v(0.0, 0.16, 0.0), -Vec3::Y),
        "switch.p" => mouth(TEE + v(-0.05, 0.255, 0.0), v(-0.6, 1.0, 0.1)),
        "switch.com" => mouth(TEE + v(0.05, 0.255, 0.0), v(0.6, 1.0, 0.1)),
        "valve_m.store" => mouth(TEE - v(0.165, 0.0, 0.0), Vec3::X),
        "valve_m.source" => mouth(TEE - v(0.265, 0.0, 0.0), v(-1.0, 0.0, 0.15)),
        "valve_p.store" => mouth(TEE + pump_way * 0.175, -pump_way),
        "valve_p.source" => mouth(TEE + pump_way * 0.285, pump_way),
        "engine.manifold" => mouth(v(-2.10, 0.915, -0.02), v(-0.80, 0.15, -0.58)),
        "engine.b_plus" => mouth(v(-1.60, 0.77, 0.25), v(0.6, 0.8, 0.1)),
        "engine.ground" => mouth(v(-2.19, 0.78, 0.10), v(-0.8, 0.6, 0.0)),
        "pump.inlet" => mouth(PUMP + v(0.0, 0.27, 0.0), Vec3::Y),
        "pump.plus" => mouth(PUMP + v(0.075, 0.17, 0.07), v(1.0, 0.15, 0.35)),
        "pump.minus" => mouth(PUMP + v(0.075, 0.085, 0.07), v(1.0, -0.25, 0.35)),
        "battery.plus" => mouth(BATTERY + v(0.075, 0.035, 0.03), v(0.3, 1.0, 0.0)),
        "battery.minus" => mouth(BATTERY + v(-0.075, 0.035, 0.03), v(-0.2, 1.0, 0.3)),
        "fuse.a" => in_box(-0.115, 0.065, v(-0.5, 1.0, 0.5)),
        "fuse.b" => in_box(-0.115, -0.055, v(0.2, -0.9, 0.7)),
        "relay.30" => in_box(0.005, 0.06, v(-0.5, 0.9, 0.7)),
        "relay.87" => in_box(0.115, 0.06, v(0.8, 0.7, 0.5)),
        "relay.86" => in_box(0.005, -0.06, v(-0.2, -1.0, 0.5)),
        "relay.85" => in_box(0.115, -0.06, v(1.0, -0.5, 0.5)),
        "key.30" => mouth(LOCK + v(0.0, 0.045, 0.09), v(0.1, 0.35, 1.0)),
        "key.15" => mouth(LOCK + v(0.0, -0.04, 0.09), v(0.1, -0.35, 1.0)),
        "body.31a" => mouth(v(-1.04, 0.40, 0.46), v(-0.4, 0.1, 1.0)),
        "body.31b" => mouth(v(-2.26, 0.925, 0.46), v(-1.0, 0.5, 0.0)),
        "body.31c" => mouth(v(-1.60, 1.06, BULKHEAD_Z + 0.02), v(-0.5, 0.5, 0.8)),
        "body.31d" => mouth(v(-2.44, 0.864, -0.02), v(0.3, 1.0, 0.2)),
        _ => return None,
    })
}

/// Points that a line passes between its two fittings, from its end `a` to its end `b` (a joint without a
/// line of its own: from its first port to its second).
#[must_use]
pub(super) fn way(id: &str) -> Vec<Vec3> {
    let v = Vec3::new;
    match id {
        "hose_b" => vec![v(-1.60, 1.055, -0.40)],
        "hose_m" => vec![v(-2.235, 0.965, -0.40), v(-2.25, 0.985, -0.22)],
        "hose_p" => vec![v(-1.50, 0.90, -0.10), v(-1.44, 0.87, 0.10), v(-1.41, 0.78, 0.28)],
        "wire_plus" => vec![v(-2.44, 0.93, 0.11)],
        "wire_pump" => vec![
            v(-2.13, 1.00, -0.44),
            v(-2.00, 1.085, -0.585),
            v(-1.15, 1.095, -0.585),
            v(-1.05, 0.98, -0.45),
            v(-1.06, 0.88, -0.10),
            v(-1.08, 0.80, 0.24),
            v(-1.16, 0.58, 0.42),
        ],
        "wire_earth" => vec![v(-1.20, 0.33, 0.49)],
        "strap" => vec![v(-2.465, 0.925, 0.33), v(-2.40, 0.955, 0.42)],
        "wire_15" => vec![
            v(-1.12, 0.87, -0.84),
            GROMMET + v(0.0, -0.02, -0.03),
            GROMMET + v(-0.02, 0.0, 0.035),
            v(-1.15, 1.08, -0.58),
            v(-2.02, 1.07, -0.58),
            v(-2.20, 0.97, -0.44),
            v(-2.27, 0.90, -0.30),
        ],
        "wire_switch" => vec![v(-2.10, 0.98, -0.37), v(-2.03, 1.10, -0.55), v(-1.95, 1.22, -0.52)],
        "e_key_30" => vec![
            v(-2.40, 0.90, 0.07),
            v(-2.53, 0.95, -0.10),
            v(-2.52, 1.02, -0.40),
            v(-2.35, 1.085, -0.58),
            v(-1.15, 1.105, -0.595),
            GROMMET + v(-0.02, 0.02, 0.04),
            GROMMET + v(0.0, 0.0, -0.03),
            v(-1.13, 1.00, -0.84),
        ],
        "e_relay_30" => vec![],
        "e_switch_com" => vec![v(-1.73, 1.23, -0.50), v(-1.66, 1.17, -0.56)],
        "e_alternator" => vec![v(-1.60, 0.87, 0.34), v(-1.85, 0.85, 0.385), v(-2.18, 0.88, 0.36)],
        "e_engine" => vec![v(-2.31, 0.895, 0.06)],
        _ => Vec::new(),
    }
}

/// Middle of a part's body, for its hotspot; lines are taken at their middle instead.
#[must_use]
pub(super) fn part_middle(id: &str) -> Option<Vec3> {
    let v = Vec3::new;
    Some(match id {
        "booster" => BOOSTER + v(0.08, -0.06, 0.12),
        "tee" => TEE + v(0.0, 0.0, 0.01),
        "switch" => TEE + v(0.0, 0.205, 0.02),
        "valve_m" => TEE - v(0.215, 0.0, 0.0),
        "valve_p" => TEE + TEE_PUMP.normalize() * 0.23,
        "engine" => v(-1.88, 0.87, -0.12),
        "pump" => PUMP + v(0.0, 0.10, 0.06),
        "battery" => BATTERY + v(0.03, -0.06, 0.09),
        "fuse" => fuse_box().transform_point(v(-0.115, 0.005, 0.05)),
        "relay" => fuse_box().transform_point(v(0.06, 0.0, 0.08)),
        "key" => LOCK + v(0.02, 0.0, 0.04),
        "body" => v(-2.25, 1.00, BULKHEAD_Z),
        _ => return None,
    })
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
        _ => trolley_slot(i),
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

/// Where a cover is, on (`false`) or off (`true`).
#[must_use]
pub(super) fn cover(id: &str, off: bool) -> Transform {
    use std::f32::consts::FRAC_PI_2;
    let turn = bevy::math::Quat::from_euler;
    let order = bevy::math::EulerRot::YXZ;
    match (id, off) {
        ("scuttle", false) => Transform::from_xyz(-1.52, 1.24, -0.46),
        // Laid on the left wing, where one sees it from the bay.
        ("scuttle", true) => {
            Transform::from_xyz(-0.95, 1.10, -0.05).with_rotation(turn(order, FRAC_PI_2, 0.0, 0.0))
        }
        ("splash_guard", false) => Transform::from_xyz(-1.37, 0.46, 0.53),
        // Leant against the radiator.
        ("splash_guard", true) => {
            Transform::from_xyz(-2.18, 0.27, 0.72).with_rotation(turn(order, 0.0, -0.42, 0.0))
        }
        (_, off) => Transform::from_xyz(-0.46, if off { 0.3 } else { 1.2 }, -0.2),
    }
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
