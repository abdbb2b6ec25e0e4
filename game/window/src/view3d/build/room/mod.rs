//! The workshop itself, which belongs to no car: walls, furniture, and what tells that people work here.

mod bench;
mod desk;
mod floor;
mod store;
mod walls;

pub(in crate::view3d) use desk::papers;
pub(in crate::view3d) use floor::{chocks, extraction};

use crate::view3d::made::Made;
use crate::view3d::materials::Sculpt;

/// Everything that always stands there.
pub(in crate::view3d) fn all() -> Vec<Made> {
    let mut furniture = Sculpt::default();
    bench::bench(&mut furniture);
    store::board(&mut furniture);
    store::shelf(&mut furniture);
    desk::desk(&mut furniture);
    floor::trolley(&mut furniture);
    floor::story(&mut furniture);
    let mut shell = Made::scenery(walls::shell());
    shell.shadowless = true;
    vec![shell, Made::scenery(furniture)]
}
