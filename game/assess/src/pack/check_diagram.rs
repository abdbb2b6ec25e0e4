//! From a line diagram as written to a [`Diagram`]: every part has a place on each sheet it belongs to.
//!
//! Whether symbols overlap is not seen here: their sizes belong to the window, whose tests look.

use sim_core::car::Car;
use sim_core::parts::PartKind;

use super::checker::Checker;
use super::error::{BadName, BadPlace, Named, PackError};
use super::raw::{RawDiagram, RawPlace, SCHEMA, ranges};
use super::wanted::Wanted;
use crate::diagram::{Diagram, Origin, Place, Sheet, rows};

/// The diagram of a car for which none is written: its parts in rows, held to what a file is held to.
pub(crate) fn in_rows(car: &Car, file: &str) -> Result<Diagram, Vec<PackError>> {
    let steps =
        |(x, y): (i32, i32)| (u32::try_from(x).unwrap_or(u32::MAX), u32::try_from(y).unwrap_or(u32::MAX));
    let place = |placed: rows::Placed| {
        let (part, stands) =
            (&car.assembly.parts[usize::from(placed.part)], &car.stands[usize::from(placed.part)]);
        let point = |(port, at): &(u8, (i32, i32))| {
            (part.kind.ports()[usize::from(*port)].name.to_owned(), steps(*at))
        };
        RawPlace {
            part: part.id.clone(),
            sheet: placed.sheet,
            at: steps(placed.at),
            turn: u32::from(placed.turn),
            side: placed.side,
            label: stands.name.clone(),
            points: placed.points.iter().map(point).collect(),
        }
    };
    let places = rows::places(car).into_iter().map(place).collect();
    let raw = RawDiagram { schema: SCHEMA, vehicle: car.id.clone(), places };
    Ok(Diagram { origin: Origin::Rows, ..diagram(raw, &car.id, car, file)? })
}

/// Checks the diagram of `car`, whose file is called `id`.
pub(crate) fn diagram(raw: RawDiagram, id: &str, car: &Car, file: &str) -> Result<Diagram, Vec<PackError>> {
    let mut check = Checker::new(file);
    check.schema(raw.schema, SCHEMA);
    if raw.vehicle != id {
        check.push(BadName::NotTheFile { id: raw.vehicle.clone(), expected: id.to_owned() });
    }
    check.lengths::<RawDiagram>(&[("places", raw.places.len())])?;
    let known: Vec<&str> = car.assembly.parts.iter().map(|p| p.id.as_str()).collect();
    let mut places: Vec<Place> = Vec::new();
    for (i, raw) in raw.places.iter().enumerate() {
        let path = format!("places[{i}]");
        if !check.most::<RawPlace>("points", &format!("{path}.points"), raw.points.len()) {
            continue;
        }
        let Some(part) = check.index(&format!("{path}.part"), Named::Part, &raw.part, &known) else {
            continue;
        };
        if let Some(first) = places.iter().position(|p| p.part == part && p.sheet == raw.sheet) {
            check.push(BadName::Duplicate {
                path,
                what: Named::Part,
                name: raw.part.clone(),
                first: format!("places[{first}]"),
            });
            continue;
        }
        places.push(place(&mut check, &path, raw, part, &car.assembly.parts[usize::from(part)].kind));
    }
    for (i, part) in car.assembly.parts.iter().enumerate() {
        for sheet in Sheet::ALL {
            let belongs = part.kind.ports().iter().any(|d| d.domain == sheet.domain());
            if belongs && !places.iter().any(|p| usize::from(p.part) == i && p.sheet == sheet) {
                check.push(BadPlace::NotPlaced { what: part.id.clone(), sheet });
            }
        }
    }
    check.done(Diagram { origin: Origin::Drawn, places })
}

fn place(check: &mut Checker<'_>, path: &str, raw: &RawPlace, part: u16, kind: &PartKind) -> Place {
    let steps = |check: &mut Checker<'_>, key: &str, (x, y): (u32, u32)| {
        check.number(format!("{path}.{key}.0"), f64::from(x), ranges::GRID);
        check.number(format!("{path}.{key}.1"), f64::from(y), ranges::GRID);
        (i32::try_from(x).unwrap_or(0), i32::try_from(y).unwrap_or(0))
    };
    let at = steps(check, "at", raw.at);
    check.number(format!("{path}.turn"), f64::from(raw.turn), ranges::TURN);
    check.text(&format!("{path}.label"), &raw.label, Wanted::PartLabel);
    let ports = kind.ports();
    if !ports.iter().any(|d| d.domain == raw.sheet.domain()) {
        check.push(BadPlace::WrongSheet { path: path.to_owned(), part: raw.part.clone(), sheet: raw.sheet });
    }
    let body = matches!(kind, PartKind::Body(_));
    if !body && !raw.points.is_empty() {
        check.push(BadPlace::NoEarthPoints { path: path.to_owned(), part: raw.part.clone() });
    }
    let mut points: Vec<(u8, (i32, i32))> = Vec::new();
    for (k, (name, point)) in raw.points.iter().enumerate() {
        let key = format!("points[{k}].1");
        let point = steps(check, &key, *point);
        match ports.iter().position(|d| d.name == name) {
            Some(port) => points.push((port as u8, point)),
            None => check.unknown(
                &format!("{path}.points[{k}].0"),
                Named::Port,
                name,
                ports.iter().map(|d| d.name),
            ),
        }
    }
    if body {
        for (k, port) in ports.iter().enumerate() {
            if points.iter().filter(|(p, _)| usize::from(*p) == k).count() != 1 {
                let what = format!("{}.{}", raw.part, port.name);
                check.push(BadPlace::NotPlaced { what, sheet: raw.sheet });
            }
        }
    }
    let turn = raw.turn.min(3) as u8;
    Place { part, sheet: raw.sheet, at, turn, side: raw.side, label: raw.label.clone(), points }
}
