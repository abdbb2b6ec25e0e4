//! The catalogue of a car: tolerances, repair units, faults, spares.

use sim_core::assembly::Assembly;
use sim_core::car::{Car, FaultDef, RepairUnit, Spare, Tolerance};
use sim_core::params::ParamDef;

use super::block::Block;
use super::checker::{Checker, known_for};
use super::error::{BadCatalogue, BadName, Named, PackError};
use super::range::Range;
use super::raw::{RawFault, RawSpare, RawSpares, RawTolerance, RawUnit, SCHEMA};
use super::wanted::Wanted;

/// Resolves `part.param`, reporting which half is unknown.
fn param(
    check: &mut Checker<'_>,
    assembly: &Assembly,
    path: &str,
    name: &str,
) -> Option<(u16, &'static ParamDef)> {
    let (part, param) = name.split_once('.').unwrap_or((name, ""));
    let Some(i) = assembly.part_index(part) else {
        check.unknown(path, Named::Part, part, assembly.parts.iter().map(|p| p.id.as_str()));
        return None;
    };
    let table = assembly.parts[i as usize].kind.params().table();
    let def = table.iter().find(|d| d.name == param);
    if def.is_none() {
        let known: Vec<String> = table.iter().map(|d| format!("{part}.{}", d.name)).collect();
        check.unknown(path, Named::Param, name, known.iter().map(String::as_str));
    }
    def.map(|d| (i, d))
}

pub(crate) fn tolerances(
    check: &mut Checker<'_>,
    assembly: &Assembly,
    raw: &[RawTolerance],
) -> Vec<Tolerance> {
    let mut out: Vec<Tolerance> = Vec::new();
    for (i, t) in raw.iter().enumerate() {
        let path = format!("tolerances[{i}]");
        if let Some(first) = raw[..i].iter().position(|o| o.param == t.param) {
            check.push(BadName::Duplicate {
                path: format!("{path}.param"),
                what: Named::Param,
                name: t.param.clone(),
                first: format!("tolerances[{first}].param"),
            });
        }
        let Some((_, def)) = param(check, assembly, &format!("{path}.param"), &t.param) else { continue };
        let range = Range::of(def);
        let serviceable = check.pair(&format!("{path}.serviceable"), t.serviceable, range);
        let limit = check.pair(&format!("{path}.limit"), t.limit, range);
        let new = assembly.param(&t.param).unwrap_or_default();
        if !(serviceable && limit) {
            continue;
        }
        if t.serviceable.0 < t.limit.0 || t.limit.1 < t.serviceable.1 {
            check.push(BadCatalogue::ServiceableOutsideLimit {
                path: path.clone(),
                serviceable: t.serviceable,
                limit: t.limit,
            });
        }
        // A new value outside its own range was reported with the part.
        let possible = def.min <= new && new <= def.max;
        if possible && (new < t.limit.0 || t.limit.1 < new) {
            check.push(BadCatalogue::NewOutsideLimit { path, new, limit: t.limit });
        }
        out.push(Tolerance { param: t.param.clone(), new, serviceable: t.serviceable, limit: t.limit });
    }
    out
}

pub(crate) fn units(check: &mut Checker<'_>, assembly: &Assembly, raw: Vec<RawUnit>) -> Vec<RepairUnit> {
    let known: Vec<&str> = assembly.parts.iter().map(|p| p.id.as_str()).collect();
    let mut owner: Vec<(u16, String)> = Vec::new();
    let mut out = Vec::new();
    for (i, u) in raw.into_iter().enumerate() {
        let path = format!("units[{i}]");
        check.text(&format!("{path}.name"), &u.name, Wanted::UnitName);
        check.list(&format!("{path}.parts"), &u.parts, Wanted::UnitParts);
        check.number(format!("{path}.price"), u.price, RawUnit::range("price"));
        check.number(format!("{path}.swap_min"), u.swap_min, RawUnit::range("swap_min"));
        if !(check.most::<RawUnit>("parts", &format!("{path}.parts"), u.parts.len())
            & check.most::<RawUnit>("cleans", &format!("{path}.cleans"), u.cleans.len()))
        {
            continue;
        }
        let mut parts = Vec::new();
        for (k, p) in u.parts.iter().enumerate() {
            let here = format!("{path}.parts[{k}]");
            let Some(idx) = check.index(&here, Named::Part, p, &known) else { continue };
            if let Some((_, first)) = owner.iter().find(|(o, _)| *o == idx) {
                check.push(BadName::Duplicate {
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
            of_unit(check, assembly, &format!("{path}.cleans[{k}]"), name, &u.id, &parts);
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
    check: &mut Checker<'_>,
    assembly: &Assembly,
    path: &str,
    name: &str,
    unit: &str,
    parts: &[u16],
) -> Option<&'static ParamDef> {
    let (part, def) = param(check, assembly, path, name)?;
    // A unit without parts was reported before.
    if parts.contains(&part) || parts.is_empty() {
        return Some(def);
    }
    check.push(BadCatalogue::NotOfUnit {
        path: path.to_owned(),
        param: name.to_owned(),
        unit: unit.to_owned(),
        parts: known_for(name, parts.iter().map(|p| assembly.parts[*p as usize].id.as_str())),
    });
    None
}

pub(crate) fn faults(
    check: &mut Checker<'_>,
    assembly: &Assembly,
    tolerances: &[Tolerance],
    units: &[RepairUnit],
    raw: Vec<RawFault>,
) -> Vec<FaultDef> {
    let known: Vec<&str> = units.iter().map(|u| u.id.as_str()).collect();
    let mut out = Vec::new();
    for (i, f) in raw.into_iter().enumerate() {
        let path = format!("faults[{i}]");
        check.text(&format!("{path}.name"), &f.name, Wanted::FaultName);
        check.number(format!("{path}.commonness"), f.commonness, RawFault::range("commonness"));
        let unit = check.index(&format!("{path}.unit"), Named::Unit, &f.unit, &known);
        let here = format!("{path}.param");
        let def = match unit {
            Some(u) => of_unit(check, assembly, &here, &f.param, &f.unit, &units[u as usize].parts),
            None => param(check, assembly, &here, &f.param).map(|(_, d)| d),
        };
        let (Some(unit), Some(def)) = (unit, def) else { continue };
        let in_range = check.number(format!("{path}.severity_min"), f.severity_min, Range::of(def))
            & check.number(format!("{path}.severity_max"), f.severity_max, Range::of(def));
        let Some(t) = tolerances.iter().find(|t| t.param == f.param) else {
            check.push(BadCatalogue::NoLimit { path: here, param: f.param });
            continue;
        };
        if !in_range {
            continue;
        }
        let (low, high) = t.limit;
        for (key, value) in [("severity_min", f.severity_min), ("severity_max", f.severity_max)] {
            if low <= value && value <= high {
                check.push(BadCatalogue::SeverityInsideLimit {
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
            check.push(BadCatalogue::SeverityOrder { path, min: f.severity_min, max: f.severity_max });
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

/// Checks the spares of `car`, whose file is called `id`.
pub(crate) fn spares(raw: RawSpares, id: &str, car: &Car, file: &str) -> Result<Vec<Spare>, Vec<PackError>> {
    let mut check = Checker::new(file);
    check.schema(raw.schema, SCHEMA);
    if raw.vehicle != id {
        check.push(BadName::NotTheFile { id: raw.vehicle, expected: id.to_owned() });
    }
    check.lengths::<RawSpares>(&[("spares", raw.spares.len())])?;
    check.names("spares", Named::Spare, '_', raw.spares.iter().map(|s| s.id.as_str()));
    let known: Vec<&str> = car.units.iter().map(|u| u.id.as_str()).collect();
    let mut out = Vec::new();
    for (i, s) in raw.spares.into_iter().enumerate() {
        let path = format!("spares[{i}]");
        check.text(&format!("{path}.name"), &s.name, Wanted::SpareName);
        check.number(format!("{path}.price"), s.price, RawSpare::range("price"));
        if !check.most::<RawSpare>("params", &format!("{path}.params"), s.params.len()) {
            continue;
        }
        let Some(unit) = check.index(&format!("{path}.unit"), Named::Unit, &s.unit, &known) else { continue };
        let parts = &car.units[unit as usize].parts;
        for (k, p) in s.params.iter().enumerate() {
            let here = format!("{path}.params[{k}]");
            if let Some(def) =
                of_unit(&mut check, &car.assembly, &format!("{here}.param"), &p.param, &s.unit, parts)
            {
                check.number(format!("{here}.value"), p.value, Range::of(def));
            }
        }
        let params = s.params.into_iter().map(|p| (p.param, p.value)).collect();
        out.push(Spare { id: s.id, name: s.name, unit, price: s.price, params });
    }
    check.done(out)
}
