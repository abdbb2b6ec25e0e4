//! Where things stand that stand in the same place in every car, and the boards for all others.

use assess::room::{Fixture, FixtureShape, Spot, Xyz};
use bevy::math::Vec3;
use sim_core::action::Station;

use super::board_fixture;

/// Where the pedal turns.
pub(super) const PEDAL: Xyz = (-1.28, 0.98, -0.80);
/// The accelerator's pad.
pub(super) const ACCELERATOR: Xyz = (-1.46, 0.44, -0.86);
/// Where wires pass the bulkhead.
pub(super) const GROMMET: Xyz = (-1.04, 0.97, -0.62);

/// What stands in every car besides.
pub(super) fn always() -> Vec<Fixture> {
    vec![Fixture { shape: FixtureShape::Grommet, spot: Spot { at: GROMMET, turn: (0.0, 0.0, 0.0) } }]
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
