//! The mark sheet for people: in a terminal ([`terminal`]) and as one self-contained page ([`html`]).
//!
//! Both show the same numbers and the same sentences; neither computes any mark.

pub mod curves;
pub mod html;
mod plots;
pub mod terminal;

use crate::marks::sheet::{EvidenceSheet, NoteWorth};

/// A probability as it is read: whole percents, the ends named.
pub(crate) fn percent(p: f64) -> String {
    if p < 0.005 {
        "<1 %".to_owned()
    } else if 0.995 <= p {
        ">99 %".to_owned()
    } else {
        format!("{:.0} %", 100.0 * p)
    }
}

/// Bits with their sign; what rounds to nothing has none.
pub(crate) fn signed(bits: f64) -> String {
    if bits.abs() < 0.05 { "0.0".to_owned() } else { format!("{bits:+.1}") }
}

/// A count with its noun: `1 note`, `7 notes`.
#[must_use]
pub fn counted(n: usize, noun: &str) -> String {
    if n == 1 { format!("1 {noun}") } else { format!("{n} {noun}s") }
}

/// Whole minutes: `1 minute`, `42 minutes`.
pub(crate) fn minutes(min: f64) -> String {
    counted(min.round().max(0.0) as usize, "minute")
}

/// A number with so many decimals; what rounds to nothing has no sign.
pub(crate) fn fixed(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    match text.strip_prefix('-') {
        Some(rest) if !rest.contains(|c: char| ('1'..='9').contains(&c)) => rest.to_owned(),
        _ => text,
    }
}

/// Points taken off, as a negative number; nothing is 0.
pub(crate) fn taken_off(points: f64) -> String {
    fixed(-points.max(0.0), 0)
}

/// Classes worth a line of their own: the true one and those that ever had `least`, likeliest at the end
/// first; at most `most`.
pub fn classes_to_show(evidence: &EvidenceSheet, least: f64, most: usize) -> Vec<usize> {
    let steps: Vec<&[f64]> = evidence.readings.iter().filter_map(classes_after).collect();
    let start: Vec<f64> = evidence.classes.iter().map(|class| class.start).collect();
    let last = steps.last().copied().unwrap_or(&start);
    let ever = |class: usize| steps.iter().map(|p| p[class]).fold(start[class], f64::max);
    let mut show: Vec<usize> = (0..start.len())
        .filter(|&class| least <= ever(class) || evidence.true_class == Some(class))
        .collect();
    // The true class always has a line; the others by what they ended with, then by their best.
    show.sort_by(|&a, &b| {
        let truth = |class: usize| evidence.true_class == Some(class);
        truth(b)
            .cmp(&truth(a))
            .then(last[b].total_cmp(&last[a]))
            .then(ever(b).total_cmp(&ever(a)))
            .then(a.cmp(&b))
    });
    show.truncate(most);
    show
}

/// Probabilities after a note, if it counts.
pub fn classes_after(line: &crate::marks::sheet::ReadingLine) -> Option<&[f64]> {
    match &line.worth {
        NoteWorth::Counts { classes, .. } => Some(classes),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::{counted, fixed, minutes, signed, taken_off};

    #[test]
    fn one_of_a_thing_is_not_many() {
        assert_eq!(counted(1, "note"), "1 note");
        assert_eq!(counted(0, "note"), "0 notes");
        assert_eq!(minutes(1.2), "1 minute");
        assert_eq!(minutes(41.6), "42 minutes");
    }

    #[test]
    fn nothing_has_no_sign() {
        assert_eq!(fixed(-0.0, 1), "0.0");
        assert_eq!(fixed(-0.04, 1), "0.0");
        assert_eq!(fixed(-0.06, 1), "-0.1");
        assert_eq!(fixed(-10.0, 0), "-10");
        assert_eq!(fixed(0.004, 2), "0.00");
        assert_eq!(taken_off(0.0), "0");
        assert_eq!(taken_off(-0.0), "0");
        assert_eq!(taken_off(15.0), "-15");
        assert_eq!(signed(-0.01), "0.0");
    }
}
