//! The mark sheet as plain text, at most 80 columns, no colour, no control characters.

use std::fmt::Write as _;

use super::{counted, fixed, minutes, percent, taken_off};
use crate::marks::sheet::{MarkSheet, Marks, NoteWorth};

/// Columns.
const WIDTH: usize = 80;

/// The mark sheet in plain text.
#[must_use]
pub fn render(sheet: &MarkSheet) -> String {
    let mut out = Page(String::new());
    let title = format!("MARK SHEET  {}", sheet.title);
    out.line(&title);
    out.line(&"=".repeat(title.chars().count().min(WIDTH)));
    out.para("", &format!("{} · {}", sheet.job, sheet.car));
    out.para(
        "",
        &format!(
            "{} · seat {} · {} of work, {} of waiting",
            sheet.scheme,
            sheet.seat.as_deref().unwrap_or("-"),
            minutes(sheet.attended_min),
            minutes(sheet.unattended_min)
        ),
    );
    for sentence in sheet.when.sentences(sheet.attended_min, sheet.unattended_min) {
        out.para("", &sentence);
    }
    match &sheet.marks {
        None => {
            out.gap();
            out.para("", &sheet.notices[0]);
            out.heading("Record so far");
            record(&mut out, sheet);
        }
        Some(marks) => {
            result(&mut out, marks);
            finding(&mut out, marks);
            out.heading("Record and release checks");
            record(&mut out, sheet);
            evidence(&mut out, marks);
        }
    }
    breaches(&mut out, sheet);
    if !sheet.not_noted.is_empty() {
        out.heading("Looked at but not noted (counts for nothing)");
        out.para("  ", &sheet.not_noted.join("; "));
    }
    if let Some(marks) = &sheet.marks {
        out.heading("What it was");
        for line in marks.debrief.lines() {
            out.para("  ", line);
        }
    }
    out.gap();
    for notice in sheet.notices.iter().skip(usize::from(sheet.marks.is_none())) {
        out.para("", notice);
    }
    out.0
}

/// Text that grows line by line.
struct Page(String);

impl Page {
    fn line(&mut self, text: &str) {
        self.0.push_str(text.trim_end());
        self.0.push('\n');
    }

    fn gap(&mut self) {
        self.0.push('\n');
    }

    fn heading(&mut self, text: &str) {
        self.gap();
        self.line(text);
        self.line(&"-".repeat(text.chars().count()));
    }

    /// Wrapped text, every line indented.
    fn para(&mut self, indent: &str, text: &str) {
        self.hang(indent, indent, text);
    }

    fn hang(&mut self, first: &str, rest: &str, text: &str) {
        let options = textwrap::Options::new(WIDTH).initial_indent(first).subsequent_indent(rest);
        for line in textwrap::wrap(text, options) {
            self.line(&line);
        }
    }
}

fn result(out: &mut Page, marks: &Marks) {
    out.gap();
    let verdict = if marks.competent { "COMPETENT" } else { "NOT YET COMPETENT" };
    out.line(&format!("{verdict}   {} of 100 (cut {:.0})", fixed(marks.total, 1), marks.cut));
    out.gap();
    for part in &marks.parts {
        out.line(&format!(
            "{}  {:<10} {:>6} {:>7} of {:>4.1}   {}",
            part.letter,
            part.name,
            fixed(part.value, 2),
            fixed(part.points, 1),
            part.weight,
            bar(part.value)
        ));
        out.para("     ", &part.why);
        if !part.fine.is_empty() {
            out.para("     ", &format!("({})", part.fine));
        }
    }
    out.line(&format!("S  {:<10} {:>14}", "safety", taken_off(marks.deducted)));
    out.para("     ", &marks.safety);
    out.gap();
    out.line("Competent asks for all of:");
    for condition in &marks.conditions {
        let mark = if condition.met { "met    " } else { "NOT MET" };
        out.line(&format!("  {mark}  {}", condition.asked));
    }
}

/// Twenty columns for 0 to 1.
fn bar(value: f64) -> String {
    let filled = (value.clamp(0.0, 1.0) * 20.0).round() as usize;
    format!("[{}{}]", "#".repeat(filled), ".".repeat(20 - filled))
}

fn finding(out: &mut Page, marks: &Marks) {
    out.heading("Finding");
    out.hang("  was:   ", "         ", &words(&marks.truth));
    for finding in &marks.findings {
        let counts = if finding.counts_in_full { "" } else { ", counts half" };
        let said =
            if finding.certainty <= 0.0 { "not found, refer on".to_owned() } else { words(&finding.units) };
        out.hang(
            "  said:  ",
            "         ",
            &format!("{said}, certainty {:.2}, minute {:.0}{counts}", finding.certainty, finding.at_min),
        );
    }
    for swap in &marks.swaps {
        let state = if swap.was_sound { "was inside its limits" } else { "was outside its limits" };
        out.hang(
            "  fitted: ",
            "          ",
            &format!(
                "{} for {:.0}, minute {:.0}: the old one {state}, the notes made that {} likely",
                swap.unit,
                swap.price,
                swap.at_min,
                percent(if swap.was_sound { 1.0 - swap.p_faulty } else { swap.p_faulty })
            ),
        );
    }
}

fn words(units: &[String]) -> String {
    if units.is_empty() { "everything inside its limits".to_owned() } else { units.join(" and ") }
}

fn record(out: &mut Page, sheet: &MarkSheet) {
    for line in &sheet.record {
        let state = match (line.filled, line.passed) {
            (true, Some(false)) => "noted ",
            (true, _) => "yes   ",
            (false, _) => "MISSING",
        };
        let why = if line.why.is_empty() { String::new() } else { format!(" -- {}", line.why) };
        out.hang(&format!("  {state:<8}"), "          ", &format!("{}{why}", line.text));
    }
}

fn evidence(out: &mut Page, marks: &Marks) {
    let sheet = &marks.evidence;
    out.heading("What the notes told");
    let likely = |p: &[f64]| {
        let best = (0..p.len()).fold(0, |best, class| if p[best] < p[class] { class } else { best });
        format!("{} {}", percent(p[best]), sheet.classes[best].name)
    };
    let start: Vec<f64> = sheet.classes.iter().map(|class| class.start).collect();
    out.para("  ", &format!("On the complaint alone, likeliest: {}.", likely(&start),));
    out.line("  read  min  what and shown                                              truth");
    let mut late = false;
    let mut was = sheet.p_true_at_start(&marks.truth);
    for line in &sheet.readings {
        if !late && !line.before_lock {
            late = true;
            out.line("  ---- finding or first repair: what follows counts for the release only ----");
        }
        let what = format!("{}: {}", line.looked(), line.shown);
        let tail = match &line.worth {
            NoteWorth::Counts { classes, .. } => {
                let now = sheet.p_true(&marks.truth, classes);
                let before = std::mem::replace(&mut was, now);
                format!("{:>5} → {:>5}", percent(before), percent(now))
            }
            NoteWorth::Misread => "misread, counts for nothing".to_owned(),
            NoteWorth::Repeat { of } => format!("same as reading {of}"),
        };
        let mut rows = textwrap::wrap(&what, 50).into_iter();
        let first = rows.next().unwrap_or_default();
        let mut text = String::new();
        // Writing into a String cannot fail.
        write!(text, "  {:>4} {:>5.0}  {first:<50} ", line.number, line.at_min).unwrap_or_default();
        if text.chars().count() + tail.chars().count() <= WIDTH {
            text.push_str(&tail);
            out.line(&text);
            for row in rows {
                out.line(&format!("              {row}"));
            }
        } else {
            out.line(&text);
            for row in rows {
                out.line(&format!("              {row}"));
            }
            out.line(&format!("              ({tail})"));
        }
    }
    out.para("  ", "truth: how likely what was really wrong was before the note, and after it.");
    if let Some((p, notes)) = sheet.reference {
        let notes = counted(notes, "note");
        out.para("  ", &format!("The reference attempt reaches {} here, with {notes}.", percent(p)));
    }
}

fn breaches(out: &mut Page, sheet: &MarkSheet) {
    if sheet.breaches.is_empty() {
        return;
    }
    out.heading("Safety");
    for breach in &sheet.breaches {
        let gravity = format!("{:?}", breach.gravity).to_lowercase();
        out.hang("  ", "    ", &format!("minute {:.0}, {gravity}: {}", breach.at_min, breach.text));
    }
}
