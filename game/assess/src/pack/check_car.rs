//! From a car as written to a [`Car`]: every name resolved, every number in its range.

use sim_core::assembly::{Assembly, Joint, Part, PortRef};
use sim_core::car::{Car, Cover, Limit, Standing};
use sim_core::circuit::Size;
use sim_core::parts::Domain;

use super::block::Block;
use super::check_catalogue::{faults, tolerances, units};
use super::check_sheet::{limit, record};
use super::error::{Named, PackError};
use super::raw::{RawCover, RawJoint, RawVehicle, SCHEMA};
use super::report::Report;

/// Checks a car whose file is called `id`.
pub(crate) fn car(raw: RawVehicle, id: &str, file: &str) -> Result<Car, Vec<PackError>> {
    let mut r = Report::new(file);
    r.schema(raw.schema, SCHEMA);
    r.lengths::<RawVehicle>(&[
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
        r.push(PackError::IdFileMismatch { file: r.file(), id: raw.id.clone(), expected: id.to_owned() });
    }
    r.text("name", &raw.name, "write the car's name in words");
    r.number("altitude_limit_m", raw.altitude_limit_m, RawVehicle::range("altitude_limit_m"));
    r.list("parts", &raw.parts, "a car has parts");
    r.list("cautions", &raw.cautions, "a data sheet has cautions");
    for (i, c) in raw.cautions.iter().enumerate() {
        r.text(&format!("cautions[{i}]"), c, "write the caution as a sentence");
    }

    r.names("parts", Named::Part, '_', raw.parts.iter().map(|p| p.id.as_str()));
    r.names("joints", Named::Joint, '_', raw.joints.iter().map(|j| j.id.as_str()));
    r.names("covers", Named::Cover, '_', raw.covers.iter().map(|c| c.id.as_str()));
    r.names("units", Named::Unit, '_', raw.units.iter().map(|u| u.id.as_str()));
    r.names("faults", Named::Fault, '_', raw.faults.iter().map(|f| f.id.as_str()));
    r.names("limits", Named::Limit, '-', raw.limits.iter().map(|l| l.id.as_str()));
    r.names("record", Named::Record, '-', raw.record.iter().map(|i| i.id.as_str()));

    let covers: Vec<&str> = raw.covers.iter().map(|c| c.id.as_str()).collect();
    let mut assembly = Assembly::default();
    let mut stands = Vec::new();
    for (i, p) in raw.parts.iter().enumerate() {
        r.part(&format!("parts[{i}].kind"), &p.kind);
        r.text(&format!("parts[{i}].name"), &p.name, "write the part's name in words");
        if let Some(cover) = &p.behind {
            r.index(&format!("parts[{i}].behind"), Named::Cover, cover, &covers);
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
    for (what, count, max) in
        [("state variables", size.states, most.states), ("electrical ports", size.terminals, most.terminals)]
    {
        if max < count {
            r.push(PackError::TooMuch { file: r.file(), what, count, max });
        }
    }
    joints(&mut r, &mut assembly, &raw.joints);
    let tolerances = tolerances(&mut r, &assembly, &raw.tolerances);
    let covers = raw.covers.into_iter().enumerate().map(|(i, c)| cover(&mut r, i, c)).collect();
    let units = units(&mut r, &assembly, raw.units);
    let faults = faults(&mut r, &assembly, &tolerances, &units, raw.faults);
    let limits: Vec<Limit> = raw.limits.into_iter().enumerate().map(|(i, l)| limit(&mut r, i, l)).collect();
    let record = record(&mut r, &limits, raw.record);
    r.done(Car {
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
fn port(r: &mut Report<'_>, assembly: &Assembly, path: &str, name: &str) -> Option<PortRef> {
    if let Some(port) = assembly.port(name) {
        return Some(port);
    }
    let part = name.split_once('.').map_or(name, |(part, _)| part);
    match assembly.part_index(part) {
        Some(i) => {
            let ports = assembly.parts[i as usize].kind.ports();
            let known: Vec<String> = ports.iter().map(|p| format!("{part}.{}", p.name)).collect();
            r.unknown(path, Named::Port, name, known.iter().map(String::as_str));
        }
        None => r.unknown(path, Named::Part, part, assembly.parts.iter().map(|p| p.id.as_str())),
    }
    None
}

fn joints(r: &mut Report<'_>, assembly: &mut Assembly, raw: &[RawJoint]) {
    let domain = |d: Domain| match d {
        Domain::Pneumatic => "air",
        Domain::Electrical => "current",
    };
    let mut taken: Vec<(PortRef, &str)> = Vec::new();
    for (i, j) in raw.iter().enumerate() {
        let path = format!("joints[{i}]");
        let a = port(r, assembly, &format!("{path}.a"), &j.a);
        let b = port(r, assembly, &format!("{path}.b"), &j.b);
        let (Some(a), Some(b)) = (a, b) else { continue };
        if a == b {
            r.push(PackError::JoinedToItself { file: r.file(), path, port: j.a.clone() });
            continue;
        }
        let (da, db) = (assembly.domain(a), assembly.domain(b));
        if da != db {
            r.push(PackError::DomainMismatch {
                file: r.file(),
                path,
                a: j.a.clone(),
                a_domain: domain(da),
                b: j.b.clone(),
                b_domain: domain(db),
            });
            continue;
        }
        if da == Domain::Pneumatic {
            for (end, p, name) in [("a", a, &j.a), ("b", b, &j.b)] {
                if let Some((_, first)) = taken.iter().find(|(t, _)| *t == p) {
                    r.push(PackError::PortTaken {
                        file: r.file(),
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

fn cover(r: &mut Report<'_>, i: usize, c: RawCover) -> Cover {
    r.text(&format!("covers[{i}].name"), &c.name, "write the cover's name in words");
    r.number(&format!("covers[{i}].off_min"), c.off_min, RawCover::range("off_min"));
    r.number(&format!("covers[{i}].on_min"), c.on_min, RawCover::range("on_min"));
    Cover { id: c.id, name: c.name, station: c.station, off_min: c.off_min, on_min: c.on_min }
}
