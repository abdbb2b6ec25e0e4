//! From a room as written to a [`Room`]: every part stands, every port has its mouth, every line its way,
//! every cover its two places, and nothing else does.
//!
//! Whether bodies run through one another is not seen here: their shapes belong to the window, whose tests look.

use sim_core::car::Car;
use sim_core::parts::PartKind;

use super::block::Block;
use super::error::{Named, PackError};
use super::range::Range;
use super::raw::{RawCoverStand, RawFixture, RawMouth, RawRoom, RawSpot, RawStand, RawWay, SCHEMA, ranges};
use super::report::Report;
use crate::room::{
    CoverShape, CoverStand, Fixture, FixtureShape, LineOf, Mouth, Room, Spot, Stand, Way, Xyz, wire_of_joint,
};

/// Checks the room of `car`.
pub(crate) fn room(raw: RawRoom, car: &Car, file: &str) -> Result<Room, Vec<PackError>> {
    let mut r = Report::new(file);
    r.schema(raw.schema, SCHEMA);
    if raw.vehicle != car.id {
        r.push(PackError::IdFileMismatch {
            file: r.file(),
            id: raw.vehicle.clone(),
            expected: car.id.clone(),
        });
    }
    r.lengths::<RawRoom>(&[
        ("parts", raw.parts.len()),
        ("ways", raw.ways.len()),
        ("covers", raw.covers.len()),
        ("fixtures", raw.fixtures.len()),
    ])?;
    xyz(&mut r, "pedal", raw.pedal, RawRoom::range("pedal"));
    xyz(&mut r, "accelerator", raw.accelerator, RawRoom::range("accelerator"));
    let room = Room {
        shell: raw.shell,
        pedal: raw.pedal,
        accelerator: raw.accelerator,
        parts: stands(&mut r, car, &raw.parts),
        ways: ways(&mut r, car, &raw.ways),
        covers: covers(&mut r, car, &raw.covers),
        fixtures: raw.fixtures.iter().enumerate().map(|(i, f)| fixture(&mut r, i, f)).collect(),
    };
    r.done(room)
}

/// Three numbers, each inside `range`.
fn xyz(r: &mut Report<'_>, path: &str, (x, y, z): Xyz, range: Range) -> Xyz {
    for (i, value) in [x, y, z].into_iter().enumerate() {
        r.number(&format!("{path}.{i}"), value, range);
    }
    (x, y, z)
}

/// A way: three numbers that are not all nothing.
fn way(r: &mut Report<'_>, path: &str, to: Xyz, range: Range) -> Xyz {
    const SHORTEST: f64 = 1e-3;
    let (x, y, z) = xyz(r, path, to, range);
    if x.abs().max(y.abs()).max(z.abs()) < SHORTEST {
        r.push(PackError::NoDirection { file: r.file(), path: path.to_owned() });
    }
    to
}

/// One thing of a list, which must be known and stand there once; `None` when it is not or does not.
fn once(
    r: &mut Report<'_>,
    (list, key): (&str, &str),
    i: usize,
    (what, name, known): (Named, &str, &[&str]),
    seen: &mut [Option<usize>],
) -> Option<usize> {
    let found = usize::from(r.index(&format!("{list}[{i}].{key}"), what, name, known)?);
    let place = seen.get_mut(found)?;
    if let Some(first) = *place {
        r.push(PackError::DuplicateName {
            file: r.file(),
            path: format!("{list}[{i}]"),
            what,
            name: name.to_owned(),
            first: format!("{list}[{first}]"),
        });
        return None;
    }
    *place = Some(i);
    Some(found)
}

fn missing(r: &mut Report<'_>, list: &str, what: &str) {
    r.push(PackError::NotInRoom { file: r.file(), list: list.to_owned(), what: what.to_owned() });
}

fn stands(r: &mut Report<'_>, car: &Car, raw: &[RawStand]) -> Vec<Stand> {
    let parts = &car.assembly.parts;
    let known: Vec<&str> = parts.iter().filter(|p| !p.kind.is_line()).map(|p| p.id.as_str()).collect();
    let mut seen = vec![None; known.len()];
    let mut out = Vec::new();
    for (i, raw) in raw.iter().enumerate() {
        let path = format!("parts[{i}]");
        if parts.iter().any(|p| p.id == raw.part && p.kind.is_line()) {
            r.push(PackError::Lies { file: r.file(), path, part: raw.part.clone() });
            continue;
        }
        if once(r, ("parts", "part"), i, (Named::Part, &raw.part, &known), &mut seen).is_none() {
            continue;
        }
        let Some(part) = car.assembly.part_index(&raw.part) else { continue };
        let spot = spot(r, &path, raw.at, raw.turn);
        let hold = xyz(r, &format!("{path}.hold"), raw.hold, RawStand::range("hold"));
        let ports = mouths(r, &path, raw, &parts[usize::from(part)].kind);
        out.push(Stand { part, spot, hold, ports });
    }
    for (name, _) in known.iter().zip(&seen).filter(|(_, seen)| seen.is_none()) {
        missing(r, "parts", name);
    }
    out
}

/// The ports of a part in the order of its kind; some are left out when anything is wrong with them.
fn mouths(r: &mut Report<'_>, path: &str, raw: &RawStand, kind: &PartKind) -> Vec<Mouth> {
    if !r.most::<RawStand>("ports", &format!("{path}.ports"), raw.ports.len()) {
        return Vec::new();
    }
    let known: Vec<&str> = kind.ports().iter().map(|d| d.name).collect();
    let mut seen = vec![None; known.len()];
    let list = format!("{path}.ports");
    let mut found: Vec<Option<Mouth>> = vec![None; known.len()];
    for (k, port) in raw.ports.iter().enumerate() {
        let Some(i) = once(r, (&list, "port"), k, (Named::Port, &port.port, &known), &mut seen) else {
            continue;
        };
        let path = format!("{list}[{k}]");
        let at = xyz(r, &format!("{path}.at"), port.at, RawMouth::range("at"));
        let out = way(r, &format!("{path}.out"), port.out, RawMouth::range("out"));
        let axis = port.axis.map(|axis| way(r, &format!("{path}.axis"), axis, RawMouth::range("axis")));
        found[i] = Some(Mouth { at, out, axis });
    }
    for (name, _) in known.iter().zip(&found).filter(|(_, found)| found.is_none()) {
        missing(r, &list, &format!("{}.{name}", raw.part));
    }
    found.into_iter().flatten().collect()
}

/// Everything that has a way: name, what it is.
fn lines(car: &Car) -> Vec<(&str, LineOf)> {
    let assembly = &car.assembly;
    let parts = assembly.parts.iter().enumerate().filter(|(_, p)| p.kind.is_line());
    let joints = assembly.joints.iter().enumerate();
    let joints = joints.filter(|(i, _)| wire_of_joint(assembly, *i as u16).is_some());
    let parts = parts.map(|(i, p)| (p.id.as_str(), LineOf::Part(i as u16)));
    parts.chain(joints.map(|(i, j)| (j.id.as_str(), LineOf::Joint(i as u16)))).collect()
}

fn ways(r: &mut Report<'_>, car: &Car, raw: &[RawWay]) -> Vec<Way> {
    let lines = lines(car);
    let known: Vec<&str> = lines.iter().map(|(name, _)| *name).collect();
    let mut seen = vec![None; known.len()];
    let mut out = Vec::new();
    for (i, raw) in raw.iter().enumerate() {
        let path = format!("ways[{i}]");
        let name = &raw.line;
        let elsewhere =
            car.assembly.part_index(name).is_some() || car.assembly.joints.iter().any(|j| j.id == *name);
        if elsewhere && !known.contains(&name.as_str()) {
            r.push(PackError::NoLine { file: r.file(), path, name: name.clone() });
            continue;
        }
        let Some(found) = once(r, ("ways", "line"), i, (Named::Line, name, &known), &mut seen) else {
            continue;
        };
        if !r.most::<RawWay>("points", &format!("{path}.points"), raw.points.len()) {
            continue;
        }
        for (k, point) in raw.points.iter().enumerate() {
            xyz(r, &format!("{path}.points[{k}]"), *point, RawWay::range("points"));
        }
        let line = lines[found].1;
        looks(r, &path, car, line, raw);
        out.push(Way {
            line,
            points: raw.points.clone(),
            colour: raw.colour.unwrap_or_default(),
            end: raw.end.unwrap_or_default(),
            area_mm2: raw.area_mm2,
        });
    }
    for (name, _) in known.iter().zip(&seen).filter(|(_, seen)| seen.is_none()) {
        missing(r, "ways", name);
    }
    out
}

/// Colour, end and area belong to wires, and an area only to those that are no part.
fn looks(r: &mut Report<'_>, path: &str, car: &Car, line: LineOf, raw: &RawWay) {
    let refuse = |r: &mut Report<'_>, key: &str, why| {
        r.push(PackError::NotOfLine { file: r.file(), path: format!("{path}.{key}"), why });
    };
    match line {
        LineOf::Part(part) => {
            if car.assembly.parts[usize::from(part)].kind.hose().is_some() {
                let why = "a hose is black rubber and ends in clips";
                for (key, _) in [("colour", raw.colour.is_some()), ("end", raw.end.is_some())]
                    .into_iter()
                    .filter(|(_, there)| *there)
                {
                    refuse(r, key, why);
                }
            }
            if raw.area_mm2.is_some() {
                refuse(r, "area_mm2", "a part has its size from the car's file");
            }
        }
        LineOf::Joint(_) => match raw.area_mm2 {
            Some(area) => {
                r.number(&format!("{path}.area_mm2"), area, RawWay::range("area_mm2"));
            }
            None => {
                r.push(PackError::NoArea { file: r.file(), path: path.to_owned(), joint: raw.line.clone() });
            }
        },
    }
}

fn covers(r: &mut Report<'_>, car: &Car, raw: &[RawCoverStand]) -> Vec<CoverStand> {
    let known: Vec<&str> = car.covers.iter().map(|c| c.id.as_str()).collect();
    let mut seen = vec![None; known.len()];
    let mut found: Vec<Option<CoverStand>> = vec![None; known.len()];
    for (i, raw) in raw.iter().enumerate() {
        let Some(cover) = once(r, ("covers", "cover"), i, (Named::Cover, &raw.cover, &known), &mut seen)
        else {
            continue;
        };
        let path = format!("covers[{i}]");
        for (key, size) in cover_sizes(&raw.shape) {
            r.number(&format!("{path}.shape.{key}"), size, ranges::SIZE_M);
        }
        let RawCoverStand { on, off, shape, .. } = raw;
        let on = spot(r, &format!("{path}.on"), on.at, on.turn);
        let off = spot(r, &format!("{path}.off"), off.at, off.turn);
        found[cover] = Some(CoverStand { shape: *shape, on, off });
    }
    for (name, _) in known.iter().zip(&found).filter(|(_, found)| found.is_none()) {
        missing(r, "covers", name);
    }
    found.into_iter().flatten().collect()
}

fn cover_sizes(shape: &CoverShape) -> Vec<(&'static str, f64)> {
    match *shape {
        CoverShape::Scuttle { width_m, depth_m, height_m }
        | CoverShape::Lid { width_m, depth_m, height_m } => {
            vec![("width_m", width_m), ("depth_m", depth_m), ("height_m", height_m)]
        }
        CoverShape::Guard { width_m, height_m } => vec![("width_m", width_m), ("height_m", height_m)],
    }
}

fn fixture(r: &mut Report<'_>, i: usize, raw: &RawFixture) -> Fixture {
    let path = format!("fixtures[{i}]");
    match raw.shape {
        FixtureShape::Block { size_m } | FixtureShape::Board { size_m } => {
            xyz(r, &format!("{path}.shape.size_m"), size_m, ranges::SIZE_M);
        }
        FixtureShape::FuseBox | FixtureShape::Bracket | FixtureShape::Clip | FixtureShape::Grommet => {}
    }
    Fixture { shape: raw.shape, spot: spot(r, &path, raw.at, raw.turn) }
}

fn spot(r: &mut Report<'_>, path: &str, at: Xyz, turn: Xyz) -> Spot {
    xyz(r, &format!("{path}.at"), at, RawSpot::range("at"));
    xyz(r, &format!("{path}.turn"), turn, RawSpot::range("turn"));
    Spot { at, turn }
}
