//! The mark sheet for people: in a terminal ([`terminal`]) and as one self-contained page ([`html`]).
//!
//! Both show the same numbers and the same sentences; neither computes any mark.

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

/// Points taken off, as a negative number; nothing is 0.
pub(crate) fn taken_off(points: f64) -> String {
    if points <= 0.0 { "0".to_owned() } else { format!("-{points:.0}") }
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
