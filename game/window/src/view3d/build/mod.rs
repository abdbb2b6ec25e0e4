//! Builds the room: what always stands there, and what the job brings (car parts, kit, spares).

pub(super) mod body;
pub(super) mod brake;
pub(super) mod electrics;
pub(super) mod engine;
pub(super) mod room;
pub(super) mod spares;
pub(super) mod tools;
pub(super) mod vacuum;

use bevy::prelude::*;

use super::made::Made;
use super::materials::{Mat, Sculpt};
use super::moves::Moves;
use super::places;
use front::hands::{Thing, reach};
use front::prefs::PressureUnit;
use front::shop::Shop;

/// Everything that always stands in the room.
#[must_use]
pub(super) fn standing() -> Vec<Made> {
    let mut out = room::all();
    out.extend(body::all());
    out
}

/// Everything that the open job brings.
#[must_use]
pub(super) fn of_job(shop: &Shop, unit: PressureUnit) -> Vec<Made> {
    let (Some(car), Some(session)) = (shop.car(), shop.session()) else { return Vec::new() };
    let setup = session.workshop().setup();
    let mut out = Vec::new();
    for (i, part) in car.assembly.parts.iter().enumerate() {
        let thing = Thing::Part(i as u16);
        let moves = Moves::Part(i as u16);
        let made = match part.id.as_str() {
            "booster" => brake::booster(),
            "tee" => vacuum::tee(),
            "switch" => vacuum::switch(),
            "valve_m" => vacuum::valve(places::TEE - Vec3::X * 0.215, -Vec3::X),
            "valve_p" => {
                let way = places::TEE_PUMP.normalize();
                vacuum::valve(places::TEE + way * 0.23, way)
            }
            "pump" => vacuum::pump(),
            "engine" => engine::engine(),
            "battery" => electrics::battery(),
            "fuse" => electrics::fuse(),
            "relay" => electrics::relay(),
            "key" => electrics::lock(),
            "body" => body::earth_points(),
            _ if reach::is_line(&part.kind) => continue,
            _ => {
                let mut s = Sculpt::default();
                s.add(Mat::GreyNylon, super::shapes::bevel_box(0.08, 0.06, 0.06, 0.006));
                s
            }
        };
        let moves = match part.id.as_str() {
            "engine" => Moves::Engine,
            "pump" => Moves::Pump(i as u16),
            "fuse" | "relay" => Moves::PlugIn(i as u16),
            _ => moves,
        };
        out.push(Made::of(thing, Transform::IDENTITY, made).moving(moves));
    }
    for (i, cover) in car.covers.iter().enumerate() {
        let sculpt = match cover.id.as_str() {
            "scuttle" => body::scuttle(),
            _ => body::splash_guard(),
        };
        let home = places::cover(&cover.id, false);
        out.push(Made::of(Thing::Cover(i as u16), home, sculpt).moving(Moves::Cover(i as u16)));
    }
    out.push(brake::pedal());
    out.push(brake::accelerator());
    out.push(electrics::key());
    let mut fixed = electrics::fuse_box_case();
    fixed.join(&electrics::lock_marks(), Transform::IDENTITY);
    out.push(Made::scenery(fixed));
    out.extend(room::chocks());
    out.extend(room::extraction());
    out.extend(room::papers());
    out.extend(tools::kit(&setup.kit, unit));
    out.extend(spares::shelf(car, &setup.spares));
    out
}
