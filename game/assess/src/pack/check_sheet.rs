//! The data sheet of a car and the record that every job asks for.

use sim_core::car::{Limit, RecordItem};

use super::block::Block;
use super::error::{Named, PackError};
use super::range::Range;
use super::raw::{RawLimit, RawRecord, RawThinAir};
use super::report::{Report, known_for};

/// Units of a limit: those of the notebook, and a count.
pub const UNITS: &[&str] = &["kPa", "V", "A", "ohm", "C", "s", "deg", "mm", "times"];

pub(crate) fn limit(r: &mut Report<'_>, i: usize, l: RawLimit) -> Limit {
    /// Any finite number: the unit decides what is sensible.
    const ANY: Range = Range::new(-1e6, 1e6, "");
    let path = format!("limits[{i}]");
    r.text(&format!("{path}.text"), &l.text, "say what is measured and how");
    if !UNITS.contains(&l.unit.as_str()) {
        r.push(PackError::WrongUnit {
            file: r.file(),
            path: format!("{path}.unit"),
            unit: l.unit.clone(),
            known: known_for(&l.unit, UNITS.iter().copied()),
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

pub(crate) fn record(r: &mut Report<'_>, limits: &[Limit], raw: Vec<RawRecord>) -> Vec<RecordItem> {
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
