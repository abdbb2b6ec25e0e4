//! Where a car stands: the checked file of its room in the room's own terms. Shapes, hoses, hotspots and tests
//! ask here; what a car is called nobody knows.

use std::collections::BTreeMap;

use assess::room::{CoverStand, Fixture, FixtureShape, LineOf, Room, Shell, Spot, Way, Xyz};
use bevy::math::{EulerRot, Quat, Vec3};
use bevy::transform::components::Transform;
use sim_core::assembly::PortRef;
use sim_core::car::Car;
use sim_core::parts::{Domain, PartKind};

use super::mouth::Mouth;
use super::moves;

/// A part that is no line.
#[derive(Clone, Debug, PartialEq)]
struct Stand {
    home: Transform,
    hold: Vec3,
    own: Vec<Mouth>,
    ports: Vec<Mouth>,
}

/// Where a car stands.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Stands {
    /// The body round it.
    pub(super) shell: Shell,
    /// Where the brake pedal turns.
    pub(super) pedal: Vec3,
    /// The accelerator's pad.
    pub(super) accelerator: Vec3,
    parts: BTreeMap<u16, Stand>,
    ways: BTreeMap<LineOf, Way>,
    covers: Vec<CoverStand>,
    fixtures: Vec<Fixture>,
    /// The part that is the ignition lock.
    lock: Option<u16>,
}

/// A place of a file.
#[must_use]
pub(super) fn vec3((x, y, z): Xyz) -> Vec3 {
    Vec3::new(x as f32, y as f32, z as f32)
}

/// A place with its turn.
#[must_use]
pub(super) fn placed(spot: &Spot) -> Transform {
    let turn = vec3(spot.turn);
    let turn = Quat::from_euler(EulerRot::YXZ, turn.x.to_radians(), turn.y.to_radians(), turn.z.to_radians());
    Transform::from_translation(vec3(spot.at)).with_rotation(turn)
}

/// Whether a port is joined to that of another part that stands, no hose between them.
fn sits(car: &Car, port: PortRef) -> bool {
    let assembly = &car.assembly;
    if assembly.domain(port) != Domain::Pneumatic {
        return false;
    }
    let joint = assembly.joints.iter().find(|j| j.a == port || j.b == port);
    let other = joint.map(|j| if j.a == port { j.b } else { j.a });
    let other = other.and_then(|other| assembly.parts.get(usize::from(other.part)));
    other.is_some_and(|other| !other.kind.is_line())
}

impl Stands {
    /// A room in its own terms.
    #[must_use]
    pub(super) fn of(car: &Car, room: &Room) -> Self {
        let parts = room.parts.iter().map(|stand| {
            let home = placed(&stand.spot);
            let own: Vec<Mouth> = stand
                .ports
                .iter()
                .enumerate()
                .map(|(port, m)| {
                    let mouth = Mouth::new(vec3(m.at), vec3(m.out));
                    let axis = m.axis.map_or(mouth.out, |axis| vec3(axis).normalize_or(Vec3::Y));
                    let sits = sits(car, PortRef { part: stand.part, port: port as u8 });
                    Mouth { axis, sits, ..mouth }
                })
                .collect();
            let ports = own.iter().map(|m| m.placed(&home)).collect();
            let hold = home.transform_point(vec3(stand.hold));
            (stand.part, Stand { home, hold, own, ports })
        });
        let lock = car.assembly.parts.iter().position(|p| matches!(p.kind, PartKind::KeySwitch(_)));
        Self {
            shell: room.shell,
            pedal: vec3(room.pedal),
            accelerator: vec3(room.accelerator),
            parts: parts.collect(),
            ways: room.ways.iter().map(|way| (way.line, way.clone())).collect(),
            covers: room.covers.clone(),
            fixtures: room.fixtures.clone(),
            lock: lock.map(|i| i as u16),
        }
    }

    /// Where a part's body stands; `None` for a line.
    #[must_use]
    pub(super) fn home(&self, part: u16) -> Option<Transform> {
        self.parts.get(&part).map(|s| s.home)
    }

    /// Where a part is pointed at; `None` for a line, which is taken at its middle.
    #[must_use]
    pub(super) fn hold(&self, part: u16) -> Option<Vec3> {
        self.parts.get(&part).map(|s| s.hold)
    }

    /// The ports of a part; none for a line.
    #[must_use]
    pub(super) fn ports(&self, part: u16) -> &[Mouth] {
        self.parts.get(&part).map_or(&[], |s| &s.ports)
    }

    /// A port of a part that stands.
    #[must_use]
    pub(super) fn port(&self, port: PortRef) -> Option<&Mouth> {
        self.ports(port.part).get(usize::from(port.port))
    }

    /// The ports of a part in its own frame; none for a line.
    #[must_use]
    pub(super) fn own_ports(&self, part: u16) -> &[Mouth] {
        self.parts.get(&part).map_or(&[], |s| &s.own)
    }

    /// Way and look of a line.
    #[must_use]
    pub(super) fn way(&self, line: LineOf) -> Option<&Way> {
        self.ways.get(&line)
    }

    /// Points that a line passes between its two fittings, from its end `a` to its end `b`.
    #[must_use]
    pub(super) fn points(&self, line: LineOf) -> Vec<Vec3> {
        self.way(line).map_or_else(Vec::new, |way| way.points.iter().map(|p| vec3(*p)).collect())
    }

    /// What the covers look like, in the order of the car's.
    #[must_use]
    pub(super) fn covers(&self) -> &[CoverStand] {
        &self.covers
    }

    /// Where a cover is, on (`false`) or off (`true`).
    #[must_use]
    pub(super) fn cover(&self, i: usize, off: bool) -> Transform {
        self.covers.get(i).map_or(Transform::IDENTITY, |c| placed(if off { &c.off } else { &c.on }))
    }

    /// What else stands there.
    pub(super) fn fixtures(&self) -> impl Iterator<Item = (FixtureShape, Transform)> + '_ {
        self.fixtures.iter().map(|f| (f.shape, placed(&f.spot)))
    }

    /// Where the ignition lock is.
    #[must_use]
    pub(super) fn lock(&self) -> Option<Transform> {
        self.home(self.lock?)
    }

    /// How far a pulled plug-in unit is from its socket.
    #[must_use]
    pub(super) fn pulled_by(&self, part: u16) -> Vec3 {
        let home = self.home(part).unwrap_or_default();
        moves::pulled(part, home).translation - home.translation
    }
}
