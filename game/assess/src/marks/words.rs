//! Numbers of the marks as they stand in sentences.

use crate::locale::{Naming, Speech};

/// A probability, the ends named: `under 0.1 %`, `4.2 %`, `63 %`.
pub(super) fn percent(s: &Speech<'_>, p: f64) -> String {
    let n = |p: f64, decimals| s.locale.number(100.0 * p, decimals);
    if p < 0.001 {
        format!("{} {} %", s.word("under"), s.locale.number(0.1, 1))
    } else if p < 0.1 {
        format!("{} %", n(p, 1))
    } else if 0.999 < p {
        format!("{} {} %", s.word("over"), s.locale.number(99.9, 1))
    } else {
        format!("{} %", n(p, 0))
    }
}

/// A share of a part's points; less than nothing has a minus that is one.
pub(super) fn share(s: &Speech<'_>, v: f64) -> String {
    let sign = if v < 0.0 { "−" } else { "" };
    format!("{sign}{} %", s.locale.number(100.0 * v.abs(), 1))
}

/// A stated certainty: as it is typed, or as people say it.
pub(super) fn certainty(s: &Speech<'_>, certainty: f64) -> String {
    match s.naming {
        Naming::Typed => s.locale.number(certainty, 2),
        Naming::Called => format!("{} %", s.locale.number(100.0 * certainty, 0)),
    }
}

/// What is asked at least: where people are spoken to, up to one it is a share of the points.
pub(super) fn least(s: &Speech<'_>, least: f64) -> String {
    match s.naming {
        Naming::Called if least <= 1.0 => format!("{} %", s.locale.number(100.0 * least, 0)),
        Naming::Called | Naming::Typed => s.locale.plain(least),
    }
}

/// A number with so many decimals; in sheets and files its minus is the one that is typed.
pub(super) fn fixed(s: &Speech<'_>, value: f64, decimals: usize) -> String {
    let text = s.locale.number(value, decimals);
    match s.naming {
        Naming::Typed => text.replace('−', "-"),
        Naming::Called => text,
    }
}

/// Bits with their sign; what rounds to nothing has none.
pub(super) fn signed(s: &Speech<'_>, bits: f64) -> String {
    if 0.05 <= bits {
        format!("+{}", s.locale.number(bits, 1))
    } else {
        fixed(s, if bits.abs() < 0.05 { 0.0 } else { bits }, 1)
    }
}

/// A probability in few characters: whole percents, the ends named.
pub(super) fn whole(s: &Speech<'_>, p: f64) -> String {
    if p < 0.005 {
        "<1 %".to_owned()
    } else if 0.995 <= p {
        ">99 %".to_owned()
    } else {
        format!("{} %", s.locale.number(100.0 * p, 0))
    }
}
