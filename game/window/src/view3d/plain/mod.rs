//! A car whose room nobody has written: what every car has stands where it stands in any, everything else lies
//! on boards, in the order of the line diagram or, without one, in a row. Every port has its mouth, every line
//! its way; the window says that it is so.

mod seats;
mod ways;

use assess::diagram::{Diagram, Origin, Sheet};
use assess::locale::sentence::Sentence;
use assess::pack::{Library, PackError};
use assess::room::{CoverShape, CoverStand, Fixture, FixtureShape, Mouth, Room, Shell, Spot, Stand, Xyz};
use bevy::math::{Quat, Vec3};
use sim_core::action::Station;
use sim_core::car::Car;
use sim_core::parts::PartKind;

use super::build::parts::body;
use super::stands::Stands;
use crate::shown::Placing;
use seats::Board;

/// Where a car stands, and how that was found out.
#[must_use]
pub(super) fn stands(library: &Library, car: &Car) -> (Stands, Placing) {
    let without = |broken: Option<Sentence>| {
        // One that was laid in rows for want of a file says no more than the car's file.
        let diagram = library.diagram(car).ok().filter(|d| d.origin != Origin::Rows);
        let placing = match (broken, &diagram) {
            (Some(why), _) => Placing::Broken(why),
            (None, Some(_)) => Placing::ByDiagram,
            (None, None) => Placing::InARow,
        };
        (Stands::of(car, &room(car, diagram.as_ref())), placing)
    };
    if !library.has_room(&car.id) {
        return without(None);
    }
    match library.room(car) {
        Ok(room) => (Stands::of(car, &room), Placing::ByFile),
        // The first fault is enough for a line; `PackErrors` tells the others to whoever asks the checker.
        Err(why) => without(why.0.first().map(PackError::sentence)),
    }
}

/// A room for a car that has none.
#[must_use]
pub(super) fn room(car: &Car, diagram: Option<&Diagram>) -> Room {
    let mut parts = Vec::new();
    let mut fixtures = seats::always();
    let mut taken: Vec<&'static str> = Vec::new();
    let mut laid: Vec<(Station, Vec<u16>)> = Vec::new();
    for (i, part) in car.assembly.parts.iter().enumerate().filter(|(_, p)| !p.kind.is_line()) {
        let station = car.stands.get(i).map_or(Station::Bay, |s| s.station);
        let kind = part.kind.name();
        match body(&part.kind).about().seat.filter(|seat| seat.station == station && !taken.contains(&kind)) {
            Some(seat) => {
                taken.push(kind);
                let ports = seat.ports.map_or_else(|| own_ports(&part.kind), |ports| ports());
                let hold = seat.hold.unwrap_or_else(|| xyz(body(&part.kind).hold()));
                let spot = Spot { at: seat.at, turn: (0.0, 0.0, 0.0) };
                parts.push(Stand { part: i as u16, spot, hold, ports });
            }
            None => match laid.iter_mut().find(|(s, _)| *s == station) {
                Some((_, parts)) => parts.push(i as u16),
                None => laid.push((station, vec![i as u16])),
            },
        }
    }
    for (station, mut list) in laid {
        let board = Board::at(station);
        let grid = board.grid(list.len());
        as_on_the_diagram(&mut list, diagram, grid.0);
        for (n, part) in list.iter().enumerate() {
            let kind = &car.assembly.parts[usize::from(*part)].kind;
            parts.push(lying(*part, kind, &board, board.place(n, grid)));
        }
        fixtures.extend(board.shown());
    }
    let ways = ways::all(car, &parts);
    let covers = covers(car);
    Room {
        shell: Shell::Saloon,
        pedal: seats::PEDAL,
        accelerator: seats::ACCELERATOR,
        parts,
        ways,
        covers,
        fixtures,
    }
}

fn xyz(v: Vec3) -> Xyz {
    (f64::from(v.x), f64::from(v.y), f64::from(v.z))
}

/// The ports of a kind where nobody has said otherwise.
fn own_ports(kind: &PartKind) -> Vec<Mouth> {
    let mouths = body(kind).mouths().into_iter();
    mouths.map(|m| Mouth { at: xyz(m.at), out: xyz(m.out), axis: Some(xyz(m.axis)) }).collect()
}

/// Order of reading on the line diagram: row by row from above, each from the left. Rows are as long as those of
/// the board. Parts that are not on it keep their order, behind the others.
fn as_on_the_diagram(list: &mut [u16], diagram: Option<&Diagram>, columns: usize) {
    let Some(diagram) = diagram else { return };
    let place = |part: u16| {
        let on = |sheet| diagram.places.iter().find(|p| p.part == part && p.sheet == sheet);
        Sheet::ALL.into_iter().enumerate().find_map(|(n, sheet)| on(sheet).map(|p| (n, p.at)))
    };
    let row = |part: &u16| place(*part).map_or((usize::MAX, 0), |(sheet, at)| (sheet, at.1));
    let across = |part: &u16| place(*part).map_or(i32::MAX, |(_, at)| at.0);
    list.sort_by_key(|part| (row(part), across(part)));
    for row in list.chunks_mut(columns.max(1)) {
        row.sort_by_key(across);
    }
}

/// A part that lies on a board about `place`, its foot on it.
fn lying(part: u16, kind: &PartKind, board: &Board, place: Vec3) -> Stand {
    let body = body(kind);
    let turn = if body.about().has_a_face { board.tilt_deg } else { 0.0 };
    let turned = Quat::from_rotation_x(turn.to_radians());
    let (low, _) = body.build(&body.mouths()).whole().turned(turned).bounds();
    let at = place - Vec3::Y * low.y;
    let spot = Spot { at: xyz(at), turn: (0.0, f64::from(turn), 0.0) };
    Stand { part, spot, hold: xyz(body.hold()), ports: own_ports(kind) }
}

/// Each cover by where one works on it; further ones of a station beside the first.
fn covers(car: &Car) -> Vec<CoverStand> {
    let mut before: Vec<Station> = Vec::new();
    let mut out = Vec::new();
    for cover in &car.covers {
        let n = before.iter().filter(|s| **s == cover.station).count() as f64;
        before.push(cover.station);
        let spot = |(x, y, z): Xyz, turn: Xyz| Spot { at: (x, y, z), turn };
        let still = (0.0, 0.0, 0.0);
        let (shape, on, off) = match cover.station {
            Station::Bay => (
                CoverShape::Scuttle { width_m: 0.94, depth_m: 0.34, height_m: 0.13 },
                spot((-1.52, 1.24 + 0.16 * n, -0.46), still),
                spot((-0.95 - 0.05 * n, 1.10, -0.05), (90.0, 0.0, 0.0)),
            ),
            Station::Front => (
                CoverShape::Guard { width_m: 0.66, height_m: 0.42 },
                spot((-1.37, 0.46, 0.53 + 0.05 * n), still),
                spot((-2.18, 0.27, 0.72 + 0.05 * n), (0.0, -24.0, 0.0)),
            ),
            Station::Cab => (
                CoverShape::Guard { width_m: 0.34, height_m: 0.24 },
                spot((-1.02, 0.62 - 0.26 * n, -0.90), (90.0, 0.0, 0.0)),
                spot((-1.72, 0.60, -1.0 - 0.10 * n), (90.0, -24.0, 0.0)),
            ),
            Station::Desk | Station::Bench => (
                CoverShape::Lid { width_m: 0.30, depth_m: 0.24, height_m: 0.04 },
                spot((0.45, 1.06, -1.90), still),
                spot((0.05 - 0.10 * n, 0.95, -1.90), still),
            ),
        };
        out.push(CoverStand { shape, on, off });
    }
    out
}

/// A board with what it is drawn as.
fn board_fixture(at: Vec3, size: Vec3) -> Fixture {
    Fixture {
        shape: FixtureShape::Board { size_m: xyz(size) },
        spot: Spot { at: xyz(at), turn: (0.0, 0.0, 0.0) },
    }
}
