//! The bodies that can stand round a car: models of the program's own, none like any that is built.
//!
//! All of them share bulkhead, cab and track, so that the stations' eyes see the same from the same places.

mod bay;
mod cabin;
mod saloon;
mod wedge;
mod wheel;
mod wing;

use assess::room::Shell;
use bevy::transform::components::Transform;

use crate::view3d::made::Made;
use crate::view3d::materials::{Mat, Sculpt};
use front::hands::Thing;

/// The car's middle line, m.
pub(super) const CAR_X: f32 = -1.75;
/// Half the car's width, m.
pub(super) const HALF_W: f32 = 0.86;
/// The bulkhead's face towards the engine, m.
pub(super) const BULKHEAD_Z: f32 = -0.62;

/// A body, and what of it cannot be picked.
pub(in crate::view3d) fn all(shell: Shell) -> Vec<Made> {
    let mut car = Sculpt::default();
    let paint = match shell {
        Shell::Saloon => {
            saloon::outside(&mut car);
            Mat::CarPaint
        }
        Shell::Wedge => {
            wedge::outside(&mut car);
            Mat::PalePaint
        }
    };
    for side in [-1.0, 1.0] {
        wheel::wheel(&mut car, side);
    }
    let mut inside = Sculpt::default();
    cabin::bulkhead(&mut inside);
    cabin::cabin(&mut inside, paint);
    vec![Made::of(Thing::Car, Transform::IDENTITY, car), Made::scenery(inside)]
}
