//! From a car as written to a [`Car`]: every name resolved, every number in its range.

use sim_core::assembly::{Assembly, Joint, Part, PortRef};
use sim_core::car::{Car, Cover, FaultDef, Limit, RecordItem, RepairUnit, Spare, Standing, Tolerance};
use sim_core::params::ParamDef;
use sim_core::parts::Domain;

use super::error::{Named, PackError};
use super::raw::{
    Block, RawCover, RawFault, RawJoint, RawLimit, RawRecord, RawSpare, RawSpares, RawThinAir, RawTolerance,
    RawUnit, RawVehicle,
};
use super::report::{Range, Report, join};

/// Version of the format read here.
pub(crate) const SCHEMA: u32 = 1;

/// Units of a limit: those of the notebook, and a count.
pub const UNITS: &[&str] = &["kPa", "V", "A", "ohm", "C", "s", "deg", "mm", "times"];

/// Checks a car whose file is called `id`.
pub(crate) fn car(raw: RawVehicle, id: &str, file: &str) -> Result<Car, Vec<PackError>> {
    let mut r = Report::new(file);
    r.schema(raw.schema, SCHEMA);
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

/// Resolves `part.param`, reporting which half is unknown.
pub(crate) fn param(
    r: &mut Report<'_>,
    assembly: &Assembly,
    path: &str,
    name: &str,
) -> Option<(u16, &'static ParamDef)> {
    let (part, param) = name.split_once('.').unwrap_or((name, ""));
    let Some(i) = assembly.part_index(part) else {
        r.unknown(path, Named::Part, part, assembly.parts.iter().map(|p| p.id.as_str()));
        return None;
    };
    let table = assembly.parts[i as usize].kind.params().table();
    let def = table.iter().find(|d| d.name == param);
    if def.is_none() {
        let known: Vec<String> = table.iter().map(|d| format!("{part}.{}", d.name)).collect();
        r.unknown(path, Named::Param, name, known.iter().map(String::as_str));
    }
    def.map(|d| (i, d))
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

fn tolerances(r: &mut Report<'_>, assembly: &Assembly, raw: &[RawTolerance]) -> Vec<Tolerance> {
    let mut out: Vec<Tolerance> = Vec::new();
    for (i, t) in raw.iter().enumerate() {
        let path = format!("tolerances[{i}]");
        if let Some(first) = raw[..i].iter().position(|o| o.param == t.param) {
            r.push(PackError::DuplicateName {
                file: r.file(),
                path: format!("{path}.param"),
                what: Named::Param,
                name: t.param.clone(),
                first: format!("tolerances[{first}].param"),
            });
        }
        let Some((_, def)) = param(r, assembly, &format!("{path}.param"), &t.param) else { continue };
        let range = Range::of(def);
        let serviceable = r.pair(&format!("{path}.serviceable"), t.serviceable, range);
        let limit = r.pair(&format!("{path}.limit"), t.limit, range);
        let new = assembly.param(&t.param).unwrap_or_default();
        if !(serviceable && limit) {
            continue;
        }
        if t.serviceable.0 < t.limit.0 || t.limit.1 < t.serviceable.1 {
            r.push(PackError::ServiceableOutsideLimit {
                file: r.file(),
                path: path.clone(),
                serviceable: t.serviceable,
                limit: t.limit,
            });
        }
        // A new value outside its own range was reported with the part.
        let possible = def.min <= new && new <= def.max;
        if possible && (new < t.limit.0 || t.limit.1 < new) {
            r.push(PackError::NewOutsideLimit { file: r.file(), path, new, limit: t.limit });
        }
        out.push(Tolerance { param: t.param.clone(), new, serviceable: t.serviceable, limit: t.limit });
    }
    out
}

fn cover(r: &mut Report<'_>, i: usize, c: RawCover) -> Cover {
    r.text(&format!("covers[{i}].name"), &c.name, "write the cover's name in words");
    r.number(&format!("covers[{i}].off_min"), c.off_min, RawCover::range("off_min"));
    r.number(&format!("covers[{i}].on_min"), c.on_min, RawCover::range("on_min"));
    Cover { id: c.id, name: c.name, station: c.station, off_min: c.off_min, on_min: c.on_min }
}

fn units(r: &mut Report<'_>, assembly: &Assembly, raw: Vec<RawUnit>) -> Vec<RepairUnit> {
    let known: Vec<&str> = assembly.parts.iter().map(|p| p.id.as_str()).collect();
    let mut owner: Vec<(u16, String)> = Vec::new();
    let mut out = Vec::new();
    for (i, u) in raw.into_iter().enumerate() {
        let path = format!("units[{i}]");
        r.text(&format!("{path}.name"), &u.name, "write the unit's name in words");
        r.list(&format!("{path}.parts"), &u.parts, "a repair unit has at least one part");
        r.number(&format!("{path}.price"), u.price, RawUnit::range("price"));
        r.number(&format!("{path}.swap_min"), u.swap_min, RawUnit::range("swap_min"));
        let mut parts = Vec::new();
        for (k, p) in u.parts.iter().enumerate() {
            let here = format!("{path}.parts[{k}]");
            let Some(idx) = r.index(&here, Named::Part, p, &known) else { continue };
            if let Some((_, first)) = owner.iter().find(|(o, _)| *o == idx) {
                r.push(PackError::DuplicateName {
                    file: r.file(),
                    path: here.clone(),
                    what: Named::Part,
                    name: p.clone(),
                    first: first.clone(),
                });
            }
            owner.push((idx, here));
            parts.push(idx);
        }
        for (k, name) in u.cleans.iter().enumerate() {
            of_unit(r, assembly, &format!("{path}.cleans[{k}]"), name, &u.id, &parts);
        }
        out.push(RepairUnit {
            id: u.id,
            name: u.name,
            parts,
            price: u.price,
            swap_min: u.swap_min,
            plug_in: u.plug_in,
            cleans: u.cleans,
            reforms: u.reforms,
        });
    }
    out
}

/// Resolves a number and holds that it belongs to one of the unit's parts.
fn of_unit(
    r: &mut Report<'_>,
    assembly: &Assembly,
    path: &str,
    name: &str,
    unit: &str,
    parts: &[u16],
) -> Option<&'static ParamDef> {
    let (part, def) = param(r, assembly, path, name)?;
    // A unit without parts was reported before.
    if parts.contains(&part) || parts.is_empty() {
        return Some(def);
    }
    r.push(PackError::NotOfUnit {
        file: r.file(),
        path: path.to_owned(),
        param: name.to_owned(),
        unit: unit.to_owned(),
        parts: join(parts.iter().map(|p| assembly.parts[*p as usize].id.as_str())),
    });
    None
}

fn faults(
    r: &mut Report<'_>,
    assembly: &Assembly,
    tolerances: &[Tolerance],
    units: &[RepairUnit],
    raw: Vec<RawFault>,
) -> Vec<FaultDef> {
    let known: Vec<&str> = units.iter().map(|u| u.id.as_str()).collect();
    let mut out = Vec::new();
    for (i, f) in raw.into_iter().enumerate() {
        let path = format!("faults[{i}]");
        r.text(&format!("{path}.name"), &f.name, "write the fault's name in words");
        r.number(&format!("{path}.commonness"), f.commonness, RawFault::range("commonness"));
        let unit = r.index(&format!("{path}.unit"), Named::Unit, &f.unit, &known);
        let here = format!("{path}.param");
        let def = match unit {
            Some(u) => of_unit(r, assembly, &here, &f.param, &f.unit, &units[u as usize].parts),
            None => param(r, assembly, &here, &f.param).map(|(_, d)| d),
        };
        let (Some(unit), Some(def)) = (unit, def) else { continue };
        let in_range = r.number(&format!("{path}.severity_min"), f.severity_min, Range::of(def))
            & r.number(&format!("{path}.severity_max"), f.severity_max, Range::of(def));
        let Some(t) = tolerances.iter().find(|t| t.param == f.param) else {
            r.push(PackError::NoLimit { file: r.file(), path: here, param: f.param });
            continue;
        };
        if !in_range {
            continue;
        }
        let (low, high) = t.limit;
        for (key, value) in [("severity_min", f.severity_min), ("severity_max", f.severity_max)] {
            if low <= value && value <= high {
                r.push(PackError::SeverityInsideLimit {
                    file: r.file(),
                    path: format!("{path}.{key}"),
                    value,
                    param: f.param.clone(),
                    limit: t.limit,
                });
            }
        }
        let ordered = if high < f.severity_min {
            f.severity_min <= f.severity_max
        } else {
            // Below the limit, or inside it, which was reported just now.
            f.severity_max <= f.severity_min || low <= f.severity_min
        };
        if !ordered {
            r.push(PackError::SeverityOrder {
                file: r.file(),
                path,
                min: f.severity_min,
                max: f.severity_max,
            });
        }
        out.push(FaultDef {
            id: f.id,
            name: f.name,
            unit,
            param: f.param,
            severity_min: f.severity_min,
            severity_max: f.severity_max,
            commonness: f.commonness,
        });
    }
    out
}

fn limit(r: &mut Report<'_>, i: usize, l: RawLimit) -> Limit {
    /// Any finite number: the unit decides what is sensible.
    const ANY: Range = Range::new(-1e6, 1e6, "");
    let path = format!("limits[{i}]");
    r.text(&format!("{path}.text"), &l.text, "say what is measured and how");
    if !UNITS.contains(&l.unit.as_str()) {
        r.push(PackError::WrongUnit {
            file: r.file(),
            path: format!("{path}.unit"),
            unit: l.unit.clone(),
            known: join(UNITS.iter().copied()),
        });
    }
    for (key, value) in [("min", l.min), ("max", l.max)] {
        if let Some(v) = value {
            r.number(&format!("{path}.{key}"), v, ANY);
        }
    }
    match (l.min, l.max) {
        (None, None) => r.push(PackError::NoBound { file: r.file(), path: path.clone() }),
        (Some(low), Some(high)) if high < low => {
            r.push(PackError::RangeReversed { file: r.file(), path: path.clone(), low, high });
        }
        _ => {}
    }
    if let Some(thin) = &l.max_in_thin_air {
        let here = format!("{path}.max_in_thin_air");
        r.number(&format!("{here}.p_kpa_abs"), thin.p_kpa_abs, RawThinAir::range("p_kpa_abs"));
        r.number(&format!("{here}.max"), thin.max, ANY);
        if l.max.is_none() {
            r.push(PackError::NoBound { file: r.file(), path: here });
        }
    }
    Limit {
        id: l.id,
        text: l.text,
        min: l.min,
        max: l.max,
        unit: l.unit,
        scales_with_day: l.scales_with_day,
        max_in_thin_air: l.max_in_thin_air.map(|t| (t.p_kpa_abs, t.max)),
    }
}

fn record(r: &mut Report<'_>, limits: &[Limit], raw: Vec<RawRecord>) -> Vec<RecordItem> {
    let known: Vec<&str> = limits.iter().map(|l| l.id.as_str()).collect();
    raw.into_iter()
        .enumerate()
        .map(|(i, item)| {
            r.text(
                &format!("record[{i}].text"),
                &item.text,
                "say what is recorded and under which condition",
            );
            let limit =
                item.limit.and_then(|l| r.index(&format!("record[{i}].limit"), Named::Limit, &l, &known));
            RecordItem { id: item.id, text: item.text, kind: item.kind, limit }
        })
        .collect()
}

/// Checks the spares of `car`, whose file is called `id`.
pub(crate) fn spares(raw: RawSpares, id: &str, car: &Car, file: &str) -> Result<Vec<Spare>, Vec<PackError>> {
    let mut r = Report::new(file);
    r.schema(raw.schema, SCHEMA);
    if raw.vehicle != id {
        r.push(PackError::IdFileMismatch { file: r.file(), id: raw.vehicle, expected: id.to_owned() });
    }
    r.names("spares", Named::Spare, '_', raw.spares.iter().map(|s| s.id.as_str()));
    let known: Vec<&str> = car.units.iter().map(|u| u.id.as_str()).collect();
    let mut out = Vec::new();
    for (i, s) in raw.spares.into_iter().enumerate() {
        let path = format!("spares[{i}]");
        r.text(&format!("{path}.name"), &s.name, "write the spare's name in words");
        r.number(&format!("{path}.price"), s.price, RawSpare::range("price"));
        let Some(unit) = r.index(&format!("{path}.unit"), Named::Unit, &s.unit, &known) else { continue };
        let parts = &car.units[unit as usize].parts;
        for (k, p) in s.params.iter().enumerate() {
            let here = format!("{path}.params[{k}]");
            if let Some(def) =
                of_unit(&mut r, &car.assembly, &format!("{here}.param"), &p.param, &s.unit, parts)
            {
                r.number(&format!("{here}.value"), p.value, Range::of(def));
            }
        }
        let params = s.params.into_iter().map(|p| (p.param, p.value)).collect();
        out.push(Spare { id: s.id, name: s.name, unit, price: s.price, params });
    }
    r.done(out)
}
