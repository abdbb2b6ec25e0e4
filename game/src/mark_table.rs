//! What `pinhole mark` says of an attempt in a line: for people, and as a row of the table.

use assess::attempt::mark_line::MarkLine;
use assess::attempt::{Attempt, SeedFrom};
use assess::marks::sheet::MarkSheet;
use assess::marks::when::utc;
use front::output::cell;
use front::words::Words;

use crate::tongue::{decimal, say};

/// Competent or not, with the total.
pub(crate) fn in_a_line(words: &Words, sheet: &MarkSheet) -> String {
    let Some(marks) = &sheet.marks else { return words.say("mark-line-unfinished") };
    let own = result_in_words(words, marks.competent, marks.total);
    match &sheet.holds {
        None => own,
        Some(held) => {
            let holds = result_in_words(words, held.competent, held.total);
            say!(words, "mark-line-override", holds = holds, by = held.by.as_str(), own = own)
        }
    }
}

/// A verdict with its total.
pub(crate) fn result_in_words(words: &Words, competent: bool, total: f64) -> String {
    let total = decimal(words, format!("{total:.1}"));
    match competent {
        true => say!(words, "mark-line-competent", total = total),
        false => say!(words, "mark-line-not-yet", total = total),
    }
}

/// Letters of the parts, in the order of the table; F is empty where economy does not count, T where no time was lost, H where
/// no hint was asked for.
const LETTERS: [&str; 8] = ["V", "E", "F", "R", "Q", "D", "T", "H"];

/// Heads of the table.
pub(crate) fn head() -> Vec<&'static str> {
    let mut head = vec!["attempt", "job", "seat", "finished", "competent", "total", "cut"];
    head.extend(LETTERS);
    head.extend(["deducted", "attended_min", "unattended_min", "job_digest", "mark_in_file"]);
    head.extend(["begun", "ended", "wall_min", "scripted", "scripted_actions", "actions", "seed_given"]);
    head.extend(["sittings", "mended"]);
    head.extend(["overrides", "holds_competent", "holds_total", "override_by", "override_reason"]);
    head.extend(["from_recording", "error"]);
    head
}

/// Cells of an attempt that was marked.
pub(crate) fn cells_of(name: &str, sheet: &MarkSheet, in_file: &str) -> Vec<String> {
    let mut row = vec![cell(name)];
    row.extend(marks(sheet, in_file));
    row.extend(when(sheet));
    row.extend(overrides(sheet));
    row.push(sheet.recording.is_some().to_string());
    row.push(String::new());
    row
}

/// Cells of what holds, and of the override by which it does; the program's own mark stands before.
fn overrides(sheet: &MarkSheet) -> Vec<String> {
    let last = sheet.overrides.last();
    vec![
        sheet.overrides.len().to_string(),
        sheet.competent().map_or_else(String::new, |competent| competent.to_string()),
        sheet.total().map_or_else(String::new, |total| total.to_string()),
        last.map_or_else(String::new, |line| cell(&line.by)),
        last.map_or_else(String::new, |line| cell(&line.reason)),
    ]
}

/// Cells of one that could not be: the last says why.
pub(crate) fn cells_of_error(name: &str, why: &str) -> Vec<String> {
    let mut row = vec![cell(name)];
    row.extend(std::iter::repeat_n(String::new(), head().len() - 2));
    row.push(cell(why));
    row
}

/// Whether the file carries this mark, another, or none, where nothing is written into it.
pub(crate) fn in_file(attempt: &Attempt, sheet: &MarkSheet) -> &'static str {
    match &attempt.mark {
        None => "none",
        found if *found == MarkLine::of(sheet) => "same",
        Some(_) => "differs",
    }
}

/// Cells from the job to the mark in the file.
fn marks(sheet: &MarkSheet, in_file: &str) -> Vec<String> {
    let mut row = vec![
        cell(&sheet.job),
        cell(sheet.seat.as_deref().unwrap_or_default()),
        sheet.marks.is_some().to_string(),
    ];
    match &sheet.marks {
        Some(m) => {
            row.extend([m.competent.to_string(), m.total.to_string(), m.cut.to_string()]);
            for letter in LETTERS {
                let part = m.parts.iter().find(|p| p.letter == letter);
                row.push(part.map_or_else(String::new, |p| p.points.to_string()));
            }
            row.push(m.deducted.to_string());
        }
        None => row.extend(std::iter::repeat_n(String::new(), 3 + LETTERS.len() + 1)),
    }
    row.extend([
        sheet.attended_min.to_string(),
        sheet.unattended_min.to_string(),
        cell(&sheet.job_digest),
        in_file.to_owned(),
    ]);
    row
}

/// Cells of the wall clock and of how it was done; empty where it is not recorded.
fn when(sheet: &MarkSheet) -> Vec<String> {
    let when = &sheet.when;
    let or_empty = |text: Option<String>| text.unwrap_or_default();
    vec![
        utc(when.begun_unix_ms),
        or_empty(when.ended_unix_ms.map(utc)),
        or_empty(when.wall_s.map(|s| (s / 60.0).to_string())),
        or_empty(when.played_actions.map(|n| (0 < n).to_string())),
        or_empty(when.played_actions.map(|n| n.to_string())),
        when.actions.to_string(),
        or_empty(when.seed_from.map(|from| (from == SeedFrom::Given).to_string())),
        or_empty(when.sittings.map(|n| n.to_string())),
        when.repairs.len().to_string(),
    ]
}
