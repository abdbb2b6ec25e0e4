//! From a line diagram as written to a [`Diagram`]: every part has a place on each sheet it belongs to.
//!
//! Whether symbols overlap is not seen here: their sizes belong to the window, whose tests look.

use sim_core::car::Car;
use sim_core::parts::PartKind;

use super::error::{Named, PackError};
use super::raw::{RawDiagram, RawPlace, SCHEMA, ranges};
use super::report::Report;
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
    let mut r = Report::new(file);
    r.schema(raw.schema, SCHEMA);
    if raw.vehicle != id {
        r.push(PackError::IdFileMismatch {
            file: r.file(),
            id: raw.vehicle.clone(),
            expected: id.to_owned(),
        });
    }
    r.lengths::<RawDiagram>(&[("places", raw.places.len())])?;
    let known: Vec<&str> = car.assembly.parts.iter().map(|p| p.id.as_str()).collect();
    let mut places: Vec<Place> = Vec::new();
    for (i, raw) in raw.places.iter().enumerate() {
        let path = format!("places[{i}]");
        if !r.most::<RawPlace>("points", &format!("{path}.points"), raw.points.len()) {
            continue;
        }
        let Some(part) = r.index(&format!("{path}.part"), Named::Part, &raw.part, &known) else { continue };
        if let Some(first) = places.iter().position(|p| p.part == part && p.sheet == raw.sheet) {
            r.push(PackError::DuplicateName {
                file: r.file(),
                path,
                what: Named::Part,
                name: raw.part.clone(),
                first: format!("places[{first}]"),
            });
            continue;
        }
        places.push(place(&mut r, &path, raw, part, &car.assembly.parts[usize::from(part)].kind));
    }
    for (i, part) in car.assembly.parts.iter().enumerate() {
        for sheet in Sheet::ALL {
            let belongs = part.kind.ports().iter().any(|d| d.domain == sheet.domain());
            if belongs && !places.iter().any(|p| usize::from(p.part) == i && p.sheet == sheet) {
                r.push(PackError::NotPlaced { file: r.file(), what: part.id.clone(), sheet: sheet.name() });
            }
        }
    }
    r.done(Diagram { origin: Origin::Drawn, places })
}

fn place(r: &mut Report<'_>, path: &str, raw: &RawPlace, part: u16, kind: &PartKind) -> Place {
    let steps = |r: &mut Report<'_>, key: &str, (x, y): (u32, u32)| {
        r.number(&format!("{path}.{key}.0"), f64::from(x), ranges::GRID);
        r.number(&format!("{path}.{key}.1"), f64::from(y), ranges::GRID);
        (i32::try_from(x).unwrap_or(0), i32::try_from(y).unwrap_or(0))
    };
    let at = steps(r, "at", raw.at);
    r.number(&format!("{path}.turn"), f64::from(raw.turn), ranges::TURN);
    r.text(&format!("{path}.label"), &raw.label, "write the part's name in a word or two");
    let ports = kind.ports();
    if !ports.iter().any(|d| d.domain == raw.sheet.domain()) {
        r.push(PackError::WrongSheet {
            file: r.file(),
            path: path.to_owned(),
            part: raw.part.clone(),
            sheet: raw.sheet.name(),
        });
    }
    let body = matches!(kind, PartKind::Body(_));
    if !body && !raw.points.is_empty() {
        r.push(PackError::NoEarthPoints { file: r.file(), path: path.to_owned(), part: raw.part.clone() });
    }
    let mut points: Vec<(u8, (i32, i32))> = Vec::new();
    for (k, (name, point)) in raw.points.iter().enumerate() {
        let key = format!("points[{k}].1");
        let point = steps(r, &key, *point);
        match ports.iter().position(|d| d.name == name) {
            Some(port) => points.push((port as u8, point)),
            None => {
                r.unknown(&format!("{path}.points[{k}].0"), Named::Port, name, ports.iter().map(|d| d.name))
            }
        }
    }
    if body {
        for (k, port) in ports.iter().enumerate() {
            if points.iter().filter(|(p, _)| usize::from(*p) == k).count() != 1 {
                let what = format!("{}.{}", raw.part, port.name);
                r.push(PackError::NotPlaced { file: r.file(), what, sheet: raw.sheet.name() });
            }
        }
    }
    let turn = raw.turn.min(3) as u8;
    Place { part, sheet: raw.sheet, at, turn, side: raw.side, label: raw.label.clone(), points }
}
