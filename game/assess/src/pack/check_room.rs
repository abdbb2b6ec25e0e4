//! From a room as written to a [`Room`]: every part stands, every port has its mouth, every line its way,
//! every cover its two places, and nothing else does.
//!
//! Whether bodies run through one another is not seen here: their shapes belong to the window, whose tests look.

use sim_core::car::Car;
use sim_core::parts::PartKind;

use super::block::Block;
use super::checker::Checker;
use super::error::{BadName, BadPlace, BadValue, Named, PackError};
use super::range::Range;
use super::raw::{RawCoverStand, RawFixture, RawMouth, RawRoom, RawSpot, RawStand, RawWay, SCHEMA, ranges};
use crate::room::{
    CoverShape, CoverStand, Fixture, FixtureShape, LineOf, Mouth, Room, Spot, Stand, Way, Xyz, wire_of_joint,
};

/// Checks the room of `car`.
pub(crate) fn room(raw: RawRoom, car: &Car, file: &str) -> Result<Room, Vec<PackError>> {
    let mut check = Checker::new(file);
    check.schema(raw.schema, SCHEMA);
    if raw.vehicle != car.id {
        check.push(BadName::NotTheFile { id: raw.vehicle.clone(), expected: car.id.clone() });
    }
    check.lengths::<RawRoom>(&[
        ("parts", raw.parts.len()),
        ("ways", raw.ways.len()),
        ("covers", raw.covers.len()),
        ("fixtures", raw.fixtures.len()),
    ])?;
    xyz(&mut check, "pedal", raw.pedal, RawRoom::range("pedal"));
    xyz(&mut check, "accelerator", raw.accelerator, RawRoom::range("accelerator"));
    let room = Room {
        shell: raw.shell,
        pedal: raw.pedal,
        accelerator: raw.accelerator,
        parts: stands(&mut check, car, &raw.parts),
        ways: ways(&mut check, car, &raw.ways),
        covers: covers(&mut check, car, &raw.covers),
        fixtures: raw.fixtures.iter().enumerate().map(|(i, f)| fixture(&mut check, i, f)).collect(),
    };
    check.done(room)
}

/// Three numbers, each inside `range`.
fn xyz(check: &mut Checker<'_>, path: &str, (x, y, z): Xyz, range: Range) -> Xyz {
    for (i, value) in [x, y, z].into_iter().enumerate() {
        check.number(format!("{path}.{i}"), value, range);
    }
    (x, y, z)
}

/// A way: three numbers that are not all nothing.
fn way(check: &mut Checker<'_>, path: &str, to: Xyz, range: Range) -> Xyz {
    const SHORTEST: f64 = 1e-3;
    let (x, y, z) = xyz(check, path, to, range);
    if x.abs().max(y.abs()).max(z.abs()) < SHORTEST {
        check.push(BadValue::NoDirection { path: path.to_owned() });
    }
    to
}

/// One thing of a list, which must be known and stand there once; `None` when it is not or does not.
fn once(
    check: &mut Checker<'_>,
    (list, key): (&str, &str),
    i: usize,
    (what, name, known): (Named, &str, &[&str]),
    seen: &mut [Option<usize>],
) -> Option<usize> {
    let found = usize::from(check.index(&format!("{list}[{i}].{key}"), what, name, known)?);
    let place = seen.get_mut(found)?;
    if let Some(first) = *place {
        check.push(BadName::Duplicate {
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

fn missing(check: &mut Checker<'_>, list: &str, what: &str) {
    check.push(BadPlace::NotInRoom { list: list.to_owned(), what: what.to_owned() });
}

fn stands(check: &mut Checker<'_>, car: &Car, raw: &[RawStand]) -> Vec<Stand> {
    let parts = &car.assembly.parts;
    let known: Vec<&str> = parts.iter().filter(|p| !p.kind.is_line()).map(|p| p.id.as_str()).collect();
    let mut seen = vec![None; known.len()];
    let mut out = Vec::new();
    for (i, raw) in raw.iter().enumerate() {
        let path = format!("parts[{i}]");
        if parts.iter().any(|p| p.id == raw.part && p.kind.is_line()) {
            check.push(BadPlace::Lies { path, part: raw.part.clone() });
            continue;
        }
        if once(check, ("parts", "part"), i, (Named::Part, &raw.part, &known), &mut seen).is_none() {
            continue;
        }
        let Some(part) = car.assembly.part_index(&raw.part) else { continue };
        let spot = spot(check, &path, raw.at, raw.turn);
        let hold = xyz(check, &format!("{path}.hold"), raw.hold, RawStand::range("hold"));
        let ports = mouths(check, &path, raw, &parts[usize::from(part)].kind);
        out.push(Stand { part, spot, hold, ports });
    }
    for (name, _) in known.iter().zip(&seen).filter(|(_, seen)| seen.is_none()) {
        missing(check, "parts", name);
    }
    out
}

/// The ports of a part in the order of its kind; some are left out when anything is wrong with them.
fn mouths(check: &mut Checker<'_>, path: &str, raw: &RawStand, kind: &PartKind) -> Vec<Mouth> {
    if !check.most::<RawStand>("ports", &format!("{path}.ports"), raw.ports.len()) {
        return Vec::new();
    }
    let known: Vec<&str> = kind.ports().iter().map(|d| d.name).collect();
    let mut seen = vec![None; known.len()];
    let list = format!("{path}.ports");
    let mut found: Vec<Option<Mouth>> = vec![None; known.len()];
    for (k, port) in raw.ports.iter().enumerate() {
        let Some(i) = once(check, (&list, "port"), k, (Named::Port, &port.port, &known), &mut seen) else {
            continue;
        };
        let path = format!("{list}[{k}]");
        let at = xyz(check, &format!("{path}.at"), port.at, RawMouth::range("at"));
        let out = way(check, &format!("{path}.out"), port.out, RawMouth::range("out"));
        let axis = port.axis.map(|axis| way(check, &format!("{path}.axis"), axis, RawMouth::range("axis")));
        found[i] = Some(Mouth { at, out, axis });
    }
    for (name, _) in known.iter().zip(&found).filter(|(_, found)| found.is_none()) {
        missing(check, &list, &format!("{}.{name}", raw.part));
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

fn ways(check: &mut Checker<'_>, car: &Car, raw: &[RawWay]) -> Vec<Way> {
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
            check.push(BadPlace::NoLine { path, name: name.clone() });
            continue;
        }
        let Some(found) = once(check, ("ways", "line"), i, (Named::Line, name, &known), &mut seen) else {
            continue;
        };
        if !check.most::<RawWay>("points", &format!("{path}.points"), raw.points.len()) {
            continue;
        }
        for (k, point) in raw.points.iter().enumerate() {
            xyz(check, &format!("{path}.points[{k}]"), *point, RawWay::range("points"));
        }
        let line = lines[found].1;
        looks(check, &path, car, line, raw);
        out.push(Way {
            line,
            points: raw.points.clone(),
            colour: raw.colour.unwrap_or_default(),
            end: raw.end.unwrap_or_default(),
            area_mm2: raw.area_mm2,
        });
    }
    for (name, _) in known.iter().zip(&seen).filter(|(_, seen)| seen.is_none()) {
        missing(check, "ways", name);
    }
    out
}

/// Colour, end and area belong to wires, and an area only to those that are no part.
fn looks(check: &mut Checker<'_>, path: &str, car: &Car, line: LineOf, raw: &RawWay) {
    match line {
        LineOf::Part(part) => {
            if car.assembly.parts[usize::from(part)].kind.hose().is_some() {
                for (key, _) in [("colour", raw.colour.is_some()), ("end", raw.end.is_some())]
                    .into_iter()
                    .filter(|(_, there)| *there)
                {
                    check.push(BadPlace::HoseLooks { path: format!("{path}.{key}") });
                }
            }
            if raw.area_mm2.is_some() {
                check.push(BadPlace::PartHasArea { path: format!("{path}.area_mm2") });
            }
        }
        LineOf::Joint(_) => match raw.area_mm2 {
            Some(area) => {
                check.number(format!("{path}.area_mm2"), area, RawWay::range("area_mm2"));
            }
            None => {
                check.push(BadPlace::NoArea { path: path.to_owned(), joint: raw.line.clone() });
            }
        },
    }
}

fn covers(check: &mut Checker<'_>, car: &Car, raw: &[RawCoverStand]) -> Vec<CoverStand> {
    let known: Vec<&str> = car.covers.iter().map(|c| c.id.as_str()).collect();
    let mut seen = vec![None; known.len()];
    let mut found: Vec<Option<CoverStand>> = vec![None; known.len()];
    for (i, raw) in raw.iter().enumerate() {
        let Some(cover) = once(check, ("covers", "cover"), i, (Named::Cover, &raw.cover, &known), &mut seen)
        else {
            continue;
        };
        let path = format!("covers[{i}]");
        for (key, size) in cover_sizes(&raw.shape) {
            check.number(format!("{path}.shape.{key}"), size, ranges::SIZE_M);
        }
        let RawCoverStand { on, off, shape, .. } = raw;
        let on = spot(check, &format!("{path}.on"), on.at, on.turn);
        let off = spot(check, &format!("{path}.off"), off.at, off.turn);
        found[cover] = Some(CoverStand { shape: *shape, on, off });
    }
    for (name, _) in known.iter().zip(&found).filter(|(_, found)| found.is_none()) {
        missing(check, "covers", name);
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

fn fixture(check: &mut Checker<'_>, i: usize, raw: &RawFixture) -> Fixture {
    let path = format!("fixtures[{i}]");
    match raw.shape {
        FixtureShape::Block { size_m } | FixtureShape::Board { size_m } => {
            xyz(check, &format!("{path}.shape.size_m"), size_m, ranges::SIZE_M);
        }
        FixtureShape::FuseBox | FixtureShape::Bracket | FixtureShape::Clip | FixtureShape::Grommet => {}
    }
    Fixture { shape: raw.shape, spot: spot(check, &path, raw.at, raw.turn) }
}

fn spot(check: &mut Checker<'_>, path: &str, at: Xyz, turn: Xyz) -> Spot {
    xyz(check, &format!("{path}.at"), at, RawSpot::range("at"));
    xyz(check, &format!("{path}.turn"), turn, RawSpot::range("turn"));
    Spot { at, turn }
}
