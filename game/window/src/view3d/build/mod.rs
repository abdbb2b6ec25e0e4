//! Builds the room: what always stands there, and what the job brings (car, kit, spares).

mod bits;
mod cab;
pub(super) mod covers;
pub(super) mod fixtures;
pub(super) mod parts;
mod room;
pub(super) mod shell;
pub(super) mod spares;
pub(super) mod tools;

use bevy::prelude::*;

use super::made::Made;
use super::materials::Sculpt;
use super::moves::Moves;
use super::stands::Stands;
use front::hands::Thing;
use front::prefs::PressureUnit;
use front::shop::Shop;

/// Everything that always stands in the room.
#[must_use]
pub(super) fn standing() -> Vec<Made> {
    room::all()
}

/// Everything that the open job brings, its car standing as `stands` says.
#[must_use]
pub(super) fn of_job(shop: &Shop, stands: &Stands, unit: PressureUnit) -> Vec<Made> {
    let (Some(car), Some(session)) = (shop.car(), shop.session()) else { return Vec::new() };
    let setup = session.workshop().setup();
    let mut out = shell::all(stands.shell);
    for (i, part) in car.assembly.parts.iter().enumerate().filter(|(_, p)| !p.kind.is_line()) {
        let i = i as u16;
        let Some(home) = stands.home(i) else { continue };
        let made = parts::body(&part.kind).build(stands.own_ports(i));
        let plug_in = car.units.iter().any(|u| u.plug_in && u.parts.contains(&i));
        let moves = if plug_in { Moves::PlugIn(i) } else { (parts::body(&part.kind).about().moves)(i) };
        out.push(Made::of(Thing::Part(i), home, made).moving(moves));
    }
    for (i, cover) in stands.covers().iter().enumerate() {
        let made = covers::cover(cover.shape);
        out.push(
            Made::of(Thing::Cover(i as u16), stands.cover(i, false), made).moving(Moves::Cover(i as u16)),
        );
    }
    out.push(cab::pedal(stands.pedal));
    out.push(cab::accelerator(stands.accelerator));
    out.extend(stands.lock().map(cab::key));
    let mut fixed = Sculpt::default();
    for (shape, home) in stands.fixtures() {
        fixed.join(&fixtures::fixture(shape), home);
    }
    out.push(Made::scenery(fixed));
    out.extend(room::chocks());
    out.extend(room::extraction());
    out.extend(room::papers());
    out.extend(tools::kit(&setup.kit, unit));
    out.extend(spares::shelf(car, stands, &setup.spares));
    out
}
