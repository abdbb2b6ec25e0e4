//! Where things are on the screen: what belongs to the station the eye is at, projected and held apart so
//! that every one can be hit.

use std::collections::BTreeMap;

use bevy::math::Vec3;
use egui::{Pos2, Rect, Vec2};
use sim_core::action::Station;
use sim_core::car::{Car, Spare};
use sim_core::instrument::InstrumentCard;
use sim_core::workshop::View;

use super::build::tools::hook;
use super::camera::Lens;
use super::layout::Layout;
use super::stands::Stands;
use super::{moves, places};
use front::hands::Thing;

/// Least distance of two hotspots, points: a target's width.
pub(super) const APART: f32 = 26.0;
/// How far inside the scene a hotspot's middle stays, points.
const MARGIN: f32 = 15.0;
/// Rounds of pushing apart.
const ROUNDS: usize = 60;

/// Things of a station and where they are in the room.
#[must_use]
pub(super) fn things(
    at: Station,
    car: &Car,
    kit: &[InstrumentCard],
    spares: &[Spare],
    view: &View,
    (stands, layout): (&Stands, &Layout),
) -> Vec<(Thing, Vec3)> {
    let v = Vec3::new;
    let mut out = Vec::new();
    let bare = |cover: Option<usize>| cover.is_none_or(|c| view.covers_off.contains(&car.covers[c].id));
    let in_use = |name: &str| view.instruments.iter().any(|i| i.at.iter().any(|(_, at)| at == name));
    for (port, mouth) in &layout.ports {
        let places = car.places_of_port(*port);
        let seen = places
            .iter()
            .any(|(s, cover)| *s == at && (bare(*cover) || in_use(&car.assembly.port_name(*port))));
        if seen {
            let unit = car.units.iter().find(|u| u.plug_in && u.parts.contains(&port.part));
            let pulled = unit.is_some_and(|u| view.pulled.contains(&u.id));
            let aside = if pulled { stands.pulled_by(port.part) } else { Vec3::ZERO };
            out.push((Thing::Port(*port), mouth.at + aside));
        }
    }
    for (i, stands) in car.stands.iter().enumerate() {
        let cover = stands.behind.as_ref().and_then(|id| car.covers.iter().position(|c| c.id == *id));
        if stands.station == at && bare(cover) {
            out.push((Thing::Part(i as u16), layout.middles[i]));
        }
    }
    for (i, cover) in car.covers.iter().enumerate() {
        if cover.station == at {
            let off = view.covers_off.contains(&cover.id);
            out.push((Thing::Cover(i as u16), stands.cover(i, off).transform_point(v(0.0, 0.0, 0.02))));
        }
    }
    let mut on_board = 0;
    for (card, c) in kit.iter().enumerate() {
        let hook = hook(&c.kind, &mut on_board);
        match layout.hung.get(&card) {
            Some((station, place)) if *station == at => {
                out.push((Thing::Instrument(card as u16), place.translation))
            }
            // Board and wall are in the picture from the bench and from the desk.
            None if matches!(at, Station::Bench | Station::Desk) => {
                out.push((Thing::Instrument(card as u16), hook));
            }
            _ => {}
        }
    }
    if at == Station::Bench {
        let stand = |i: usize| places::shelf_place(i) + v(0.0, 0.09, 0.1);
        out.extend((0..spares.len()).map(|i| (Thing::Spare(i as u16), stand(i))));
    }
    let chocks = places::chock(true, view.chocked).transform_point(v(0.0, 0.07, 0.0));
    if let Some(car) = places::car_mark(at) {
        out.push((Thing::Car, car));
    }
    match at {
        Station::Desk => out.extend([
            (Thing::JobCard, places::JOB_CARD),
            (Thing::DataSheet, places::DATA_SHEET),
            (Thing::Chocks, chocks),
            (Thing::Extraction, places::extraction(view.extracted)),
        ]),
        Station::Cab => {
            let turned = bevy::math::Quat::from_rotation_x(moves::pedal_angle(view));
            let pad = stands.pedal + turned * v(0.0, -moves::PEDAL_ARM_M, -0.08);
            out.extend(stands.lock().map(|lock| (Thing::Key, lock.transform_point(Vec3::Z * -0.055))));
            out.extend([(Thing::Pedal, pad), (Thing::Starter, stands.accelerator)]);
        }
        Station::Front => out.push((Thing::Chocks, chocks)),
        Station::Bay | Station::Bench => {}
    }
    out
}

/// Least distance of two hotspots where everything is shown `scale` times as large, points. The room is not larger
/// then, so marks that kept their distance in points would leave their things; in pixels it still grows.
#[must_use]
pub(super) fn apart(scale: f32) -> f32 {
    APART / scale.max(1.0).powf(0.6)
}

/// The same on the screen: what is outside the scene falls away, what is too close moves apart. What would have to
/// move too far from its thing is left out: it is found by name, in the menu of its part, in the line diagram, or by
/// going nearer.
#[must_use]
pub(super) fn spread(
    things: &[(Thing, Vec3)],
    lens: &Lens,
    scene: Rect,
    apart: f32,
) -> BTreeMap<Thing, Pos2> {
    let inside = scene.shrink(MARGIN.min(0.6 * apart));
    let mut seen: Vec<(Thing, Pos2)> =
        things.iter().filter_map(|(t, at)| Some((*t, inside.clamp(lens.see(*at)?)))).collect();
    loop {
        let spots = pushed_apart(&seen, inside, apart);
        // The one that had to go furthest, as long as it is too far; bodies before ports, which have no other place.
        let far = spots.iter().zip(&seen).map(|(to, (thing, home))| {
            let port = matches!(thing, Thing::Port(_));
            (to.distance(*home) / apart / if port { FAR_PORT } else { FAR_BODY }, *thing)
        });
        let Some((far, worst)) = far.max_by(|a, b| a.0.total_cmp(&b.0).then(b.1.cmp(&a.1))) else { break };
        if far <= 1.0 {
            return seen.iter().map(|(thing, _)| *thing).zip(spots).collect();
        }
        seen.retain(|(thing, _)| *thing != worst);
    }
    BTreeMap::new()
}

/// How far a mark may go from its thing, in least distances of two: a body's, whose shape is seen and can be
/// clicked, and a port's.
const FAR_BODY: f32 = 1.6;
const FAR_PORT: f32 = 2.4;

/// Where each of these is, none too close to another.
fn pushed_apart(seen: &[(Thing, Pos2)], inside: Rect, apart: f32) -> Vec<Pos2> {
    let mut spots: Vec<(Thing, Pos2)> = seen.to_vec();
    // Ports keep their places longest: one works at them. Bodies give way; they are large anyway.
    let weight = |t: &Thing| if matches!(t, Thing::Port(_)) { 1.0_f32 } else { 3.0 };
    for _ in 0..ROUNDS {
        let mut moved = false;
        for i in 0..spots.len() {
            for j in i + 1..spots.len() {
                let (a, b) = (spots[i], spots[j]);
                let mut d = b.1 - a.1;
                let far = d.length();
                if apart <= far {
                    continue;
                }
                if far < 0.5 {
                    // The same place: apart by their order, always the same way.
                    d = Vec2::angled((i * 7 + j * 3) as f32);
                }
                let (wa, wb) = (weight(&a.0), weight(&b.0));
                let push = d.normalized() * (apart - far + 0.4) / (wa + wb);
                spots[i].1 = inside.clamp(a.1 - push * wa);
                spots[j].1 = inside.clamp(b.1 + push * wb);
                moved = true;
            }
        }
        if !moved {
            break;
        }
    }
    spots.into_iter().map(|(_, at)| at).collect()
}
