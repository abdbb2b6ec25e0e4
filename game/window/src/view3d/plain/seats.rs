//! Where things stand that stand in the same place in every car, and the boards for all others.

use assess::room::{Fixture, FixtureShape, Mouth, Spot, Xyz};
use bevy::math::Vec3;
use sim_core::action::Station;
use sim_core::parts::PartKind;

use super::board_fixture;

/// Where the pedal turns.
pub(super) const PEDAL: Xyz = (-1.28, 0.98, -0.80);
/// The accelerator's pad.
pub(super) const ACCELERATOR: Xyz = (-1.46, 0.44, -0.86);
/// Where wires pass the bulkhead.
pub(super) const GROMMET: Xyz = (-1.04, 0.97, -0.62);

/// A place that a kind of part has in any car.
pub(super) struct Seat {
    pub(super) station: Station,
    pub(super) spot: Spot,
    pub(super) hold: Xyz,
    /// Ports that are not where its kind has them.
    pub(super) ports: Option<Vec<Mouth>>,
}

/// The seat of a kind, if it has one.
pub(super) fn seat(kind: &PartKind) -> Option<Seat> {
    let still = (0.0, 0.0, 0.0);
    let own = |at: Xyz, station: Station| {
        let hold = super::xyz(super::body(kind).hold());
        Some(Seat { station, spot: Spot { at, turn: still }, hold, ports: None })
    };
    match kind {
        PartKind::Booster(_) => own((-1.28, 0.93, -0.50), Station::Bay),
        PartKind::Engine(_) => own((-1.87, 0.52, -0.10), Station::Bay),
        PartKind::EnginePump(_) => own((-1.586, 0.775, -0.13), Station::Bay),
        PartKind::Battery(_) => own((-2.385, 0.81, 0.20), Station::Bay),
        PartKind::KeySwitch(_) => own((-1.20, 0.92, -1.12), Station::Cab),
        PartKind::Body(_) => Some(Seat {
            station: Station::Bay,
            spot: Spot { at: still, turn: still },
            hold: (-2.25, 1.0, -0.62),
            ports: Some(earth_points()),
        }),
        PartKind::Hose(_)
        | PartKind::Wire(_)
        | PartKind::Tee(_)
        | PartKind::CheckValve(_)
        | PartKind::VacuumSwitch(_)
        | PartKind::VacuumPump(_)
        | PartKind::Reservoir(_)
        | PartKind::VacuumSensor(_)
        | PartKind::Controller(_)
        | PartKind::Supply(_)
        | PartKind::Fuse(_)
        | PartKind::Relay(_)
        | PartKind::VacuumGauge(_)
        | PartKind::HandPump(_)
        | PartKind::TestLamp(_)
        | PartKind::Multimeter(_)
        | PartKind::PushLead(_) => None,
    }
}

/// Two on the crossmember, one at the bulkhead, one on the inner wing.
fn earth_points() -> Vec<Mouth> {
    let at = |at: Xyz, out: Xyz, axis: Option<Xyz>| Mouth { at, out, axis };
    vec![
        at((-1.95, 0.925, 0.465), (0.3, 1.0, 0.2), Some((0.0, 1.0, 0.0))),
        at((-2.26, 0.925, 0.46), (-1.0, 0.5, 0.0), Some((0.0, 1.0, 0.0))),
        at((-1.60, 1.06, -0.60), (-0.5, 0.5, 0.8), None),
        at((-2.44, 0.864, -0.02), (0.3, 1.0, 0.2), None),
    ]
}

/// What stands in every car besides.
pub(super) fn always() -> Vec<Fixture> {
    vec![Fixture { shape: FixtureShape::Grommet, spot: Spot { at: GROMMET, turn: (0.0, 0.0, 0.0) } }]
}

/// Whether a shape has a face that looks along z, to be turned to the eye when it lies on a board.
pub(super) fn has_a_face(kind: &PartKind) -> bool {
    match kind {
        PartKind::Fuse(_)
        | PartKind::Relay(_)
        | PartKind::Controller(_)
        | PartKind::VacuumGauge(_)
        | PartKind::HandPump(_)
        | PartKind::TestLamp(_)
        | PartKind::Multimeter(_)
        | PartKind::PushLead(_) => true,
        PartKind::Hose(_)
        | PartKind::Wire(_)
        | PartKind::Tee(_)
        | PartKind::CheckValve(_)
        | PartKind::VacuumSwitch(_)
        | PartKind::VacuumPump(_)
        | PartKind::Booster(_)
        | PartKind::Engine(_)
        | PartKind::Reservoir(_)
        | PartKind::EnginePump(_)
        | PartKind::VacuumSensor(_)
        | PartKind::Battery(_)
        | PartKind::Supply(_)
        | PartKind::KeySwitch(_)
        | PartKind::Body(_) => false,
    }
}

/// A board that things are laid out on.
pub(super) struct Board {
    middle: Vec3,
    size: Vec3,
    /// Whether it is there to be seen; the bench is a board of its own.
    seen: bool,
    /// How far a thing with a face is turned to the eye, about x.
    pub(super) tilt_deg: f32,
}

impl Board {
    /// The board of a station.
    pub(super) fn at(station: Station) -> Self {
        let v = Vec3::new;
        let board =
            |middle: Vec3, size: Vec3, seen: bool, tilt_deg: f32| Self { middle, size, seen, tilt_deg };
        match station {
            // Across the left half of the bay, before the booster.
            Station::Bay => board(v(-1.30, 0.975, 0.13), v(0.66, 0.02, 0.62), true, -60.0),
            // On the mat before the car.
            Station::Front => board(v(-1.45, 0.055, 0.68), v(0.90, 0.02, 0.22), true, -35.0),
            // On the floor of the cab.
            Station::Cab => board(v(-1.10, 0.33, -1.10), v(0.22, 0.02, 0.60), true, -45.0),
            Station::Desk => board(v(1.55, 0.75, 0.85), v(0.60, 0.02, 0.20), false, -45.0),
            Station::Bench => board(v(0.55, 0.89, -1.85), v(1.20, 0.02, 0.25), false, -20.0),
        }
    }

    /// Columns and rows for so many things.
    pub(super) fn grid(&self, things: usize) -> (usize, usize) {
        let things = things.max(1);
        let wide = (things as f32 * self.size.x / self.size.z).sqrt().round().max(1.0) as usize;
        let columns = wide.min(things);
        (columns, things.div_ceil(columns))
    }

    /// On top of it, the `n`-th place; the first row is the furthest from the eye.
    pub(super) fn place(&self, n: usize, (columns, rows): (usize, usize)) -> Vec3 {
        let share = |i: usize, of: usize| (i as f32 + 0.5) / of.max(1) as f32 - 0.5;
        self.middle
            + Vec3::new(
                self.size.x * share(n % columns.max(1), columns),
                self.size.y * 0.5,
                self.size.z * share(n / columns.max(1), rows),
            )
    }

    /// The board itself.
    pub(super) fn shown(&self) -> Option<Fixture> {
        self.seen.then(|| board_fixture(self.middle, self.size))
    }
}
