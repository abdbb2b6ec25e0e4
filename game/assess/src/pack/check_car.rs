//! From a car as written to a [`Car`]: every name resolved, every number in its range.

use sim_core::assembly::{Assembly, Joint, Part, PortRef};
use sim_core::car::{Car, Cover, Limit, Standing};
use sim_core::circuit::Size;
use sim_core::parts::Domain;

use super::block::Block;
use super::check_catalogue::{faults, tolerances, units};
use super::check_sheet::{limit, record};
use super::checker::Checker;
use super::error::{BadCar, BadName, Named, PackError};
use super::raw::{RawCover, RawJoint, RawVehicle, SCHEMA};
use super::wanted::Wanted;

/// Checks a car whose file is called `id`.
pub(crate) fn car(raw: RawVehicle, id: &str, file: &str) -> Result<Car, Vec<PackError>> {
    let mut check = Checker::new(file);
    check.schema(raw.schema, SCHEMA);
    check.lengths::<RawVehicle>(&[
        ("parts", raw.parts.len()),
        ("joints", raw.joints.len()),
        ("tolerances", raw.tolerances.len()),
        ("covers", raw.covers.len()),
        ("units", raw.units.len()),
        ("faults", raw.faults.len()),
        ("limits", raw.limits.len()),
        ("record", raw.record.len()),
        ("cautions", raw.cautions.len()),
    ])?;
    if raw.id != id {
        check.push(BadName::NotTheFile { id: raw.id.clone(), expected: id.to_owned() });
    }
    check.text("name", &raw.name, Wanted::CarName);
    check.number("altitude_limit_m", raw.altitude_limit_m, RawVehicle::range("altitude_limit_m"));
    check.list("parts", &raw.parts, Wanted::Parts);
    check.list("cautions", &raw.cautions, Wanted::Cautions);
    for (i, c) in raw.cautions.iter().enumerate() {
        check.text(&format!("cautions[{i}]"), c, Wanted::Caution);
    }

    check.names("parts", Named::Part, '_', raw.parts.iter().map(|p| p.id.as_str()));
    check.names("joints", Named::Joint, '_', raw.joints.iter().map(|j| j.id.as_str()));
    check.names("covers", Named::Cover, '_', raw.covers.iter().map(|c| c.id.as_str()));
    check.names("units", Named::Unit, '_', raw.units.iter().map(|u| u.id.as_str()));
    check.names("faults", Named::Fault, '_', raw.faults.iter().map(|f| f.id.as_str()));
    check.names("limits", Named::Limit, '-', raw.limits.iter().map(|l| l.id.as_str()));
    check.names("record", Named::Record, '-', raw.record.iter().map(|i| i.id.as_str()));

    let covers: Vec<&str> = raw.covers.iter().map(|c| c.id.as_str()).collect();
    let mut assembly = Assembly::default();
    let mut stands = Vec::new();
    for (i, p) in raw.parts.iter().enumerate() {
        check.part(&format!("parts[{i}].kind"), &p.kind);
        check.text(&format!("parts[{i}].name"), &p.name, Wanted::PartName);
        if let Some(cover) = &p.behind {
            check.index(&format!("parts[{i}].behind"), Named::Cover, cover, &covers);
        }
        assembly.parts.push(Part { id: p.id.clone(), kind: p.kind });
        stands.push(Standing {
            name: p.name.clone(),
            station: p.station,
            behind: p.behind.clone(),
            bright_metal: p.bright_metal,
            rubber: p.rubber,
            warm: p.warm,
        });
    }
    let (size, most) = (Size::of(&assembly), Size::MOST);
    if most.states < size.states {
        check.push(BadCar::TooManyStates { count: size.states, max: most.states });
    }
    if most.terminals < size.terminals {
        check.push(BadCar::TooManyTerminals { count: size.terminals, max: most.terminals });
    }
    joints(&mut check, &mut assembly, &raw.joints);
    let tolerances = tolerances(&mut check, &assembly, &raw.tolerances);
    let covers = raw.covers.into_iter().enumerate().map(|(i, c)| cover(&mut check, i, c)).collect();
    let units = units(&mut check, &assembly, raw.units);
    let faults = faults(&mut check, &assembly, &tolerances, &units, raw.faults);
    let limits: Vec<Limit> =
        raw.limits.into_iter().enumerate().map(|(i, l)| limit(&mut check, i, l)).collect();
    let record = record(&mut check, &limits, raw.record);
    check.done(Car {
        id: raw.id,
        name: raw.name,
        assembly,
        stands,
        tolerances,
        units,
        faults,
        covers,
        limits,
        record,
        altitude_limit_m: raw.altitude_limit_m,
        cautions: raw.cautions,
    })
}

/// Resolves `part.port`, reporting which half is unknown.
fn port(check: &mut Checker<'_>, assembly: &Assembly, path: &str, name: &str) -> Option<PortRef> {
    if let Some(port) = assembly.port(name) {
        return Some(port);
    }
    let part = name.split_once('.').map_or(name, |(part, _)| part);
    match assembly.part_index(part) {
        Some(i) => {
            let ports = assembly.parts[i as usize].kind.ports();
            let known: Vec<String> = ports.iter().map(|p| format!("{part}.{}", p.name)).collect();
            check.unknown(path, Named::Port, name, known.iter().map(String::as_str));
        }
        None => check.unknown(path, Named::Part, part, assembly.parts.iter().map(|p| p.id.as_str())),
    }
    None
}

fn joints(check: &mut Checker<'_>, assembly: &mut Assembly, raw: &[RawJoint]) {
    let mut taken: Vec<(PortRef, &str)> = Vec::new();
    for (i, j) in raw.iter().enumerate() {
        let path = format!("joints[{i}]");
        let a = port(check, assembly, &format!("{path}.a"), &j.a);
        let b = port(check, assembly, &format!("{path}.b"), &j.b);
        let (Some(a), Some(b)) = (a, b) else { continue };
        if a == b {
            check.push(BadCar::JoinedToItself { path, port: j.a.clone() });
            continue;
        }
        let (da, db) = (assembly.domain(a), assembly.domain(b));
        if da != db {
            check.push(BadCar::DomainMismatch { path, a: (j.a.clone(), da), b: (j.b.clone(), db) });
            continue;
        }
        if da == Domain::Pneumatic {
            for (end, p, name) in [("a", a, &j.a), ("b", b, &j.b)] {
                if let Some((_, first)) = taken.iter().find(|(t, _)| *t == p) {
                    check.push(BadCar::PortTaken {
                        path: format!("{path}.{end}"),
                        port: name.clone(),
                        first: (*first).to_owned(),
                    });
                }
                taken.push((p, &j.id));
            }
        }
        assembly.joints.push(Joint { id: j.id.clone(), a, b, made: true });
    }
}

fn cover(check: &mut Checker<'_>, i: usize, c: RawCover) -> Cover {
    check.text(&format!("covers[{i}].name"), &c.name, Wanted::CoverName);
    check.number(format!("covers[{i}].off_min"), c.off_min, RawCover::range("off_min"));
    check.number(format!("covers[{i}].on_min"), c.on_min, RawCover::range("on_min"));
    Cover { id: c.id, name: c.name, station: c.station, off_min: c.off_min, on_min: c.on_min }
}
