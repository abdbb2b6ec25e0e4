//! The data sheet of a car and the record that every job asks for.

use sim_core::car::{Limit, RecordItem};

use super::block::Block;
use super::checker::{Checker, known_for};
use super::error::{BadValue, Named};
use super::range::{Range, Unit};
use super::raw::{RawLimit, RawRecord, RawThinAir};
use super::wanted::Wanted;

/// Units of a limit: those of the notebook, and a count.
pub const UNITS: &[&str] = &["kPa", "V", "A", "ohm", "C", "s", "deg", "mm", "times"];

pub(crate) fn limit(check: &mut Checker<'_>, i: usize, l: RawLimit) -> Limit {
    /// Any finite number: the unit decides what is sensible.
    const ANY: Range = Range::new(-1e6, 1e6, Unit::InName);
    let path = format!("limits[{i}]");
    check.text(&format!("{path}.text"), &l.text, Wanted::Limit);
    if !UNITS.contains(&l.unit.as_str()) {
        check.push(BadValue::WrongUnit {
            path: format!("{path}.unit"),
            unit: l.unit.clone(),
            known: known_for(&l.unit, UNITS.iter().copied()),
        });
    }
    for (key, value) in [("min", l.min), ("max", l.max)] {
        if let Some(v) = value {
            check.number(format!("{path}.{key}"), v, ANY);
        }
    }
    match (l.min, l.max) {
        (None, None) => check.push(BadValue::NoBound { path: path.clone() }),
        (Some(low), Some(high)) if high < low => {
            check.push(BadValue::RangeReversed { path: path.clone(), low, high });
        }
        _ => {}
    }
    if let Some(thin) = &l.max_in_thin_air {
        let here = format!("{path}.max_in_thin_air");
        check.number(format!("{here}.p_kpa_abs"), thin.p_kpa_abs, RawThinAir::range("p_kpa_abs"));
        check.number(format!("{here}.max"), thin.max, ANY);
        if l.max.is_none() {
            check.push(BadValue::NoBound { path: here });
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

pub(crate) fn record(check: &mut Checker<'_>, limits: &[Limit], raw: Vec<RawRecord>) -> Vec<RecordItem> {
    let known: Vec<&str> = limits.iter().map(|l| l.id.as_str()).collect();
    raw.into_iter()
        .enumerate()
        .map(|(i, item)| {
            check.text(&format!("record[{i}].text"), &item.text, Wanted::Record);
            let limit =
                item.limit.and_then(|l| check.index(&format!("record[{i}].limit"), Named::Limit, &l, &known));
            RecordItem { id: item.id, text: item.text, kind: item.kind, limit }
        })
        .collect()
}
