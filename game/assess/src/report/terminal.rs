//! The mark sheet as plain text, at most 80 columns, no colour, no control characters.

use std::fmt::Write as _;

use super::{counted, fixed, gravity, holding, looked, minutes, overrides, percent, taken_off, units};
use crate::locale::{FluentValue, Locale};
use crate::marks::sheet::{MarkSheet, Marks, NoteWorth};

/// Columns.
const WIDTH: usize = 80;

/// The mark sheet in plain text.
#[must_use]
pub fn render(sheet: &MarkSheet, words: &Locale) -> String {
    let mut out = Page(String::new());
    let title = format!("{}  {}", words.say("paper-head"), sheet.title);
    out.line(&title);
    out.line(&"=".repeat(title.chars().count().min(WIDTH)));
    out.para("", &format!("{} · {}", sheet.job, sheet.car));
    out.para(
        "",
        &words.say_with(
            "paper-line",
            &[
                ("scheme", sheet.scheme.as_str().into()),
                ("seat", sheet.seat.as_deref().unwrap_or("-").into()),
                ("work", minutes(sheet.attended_min, words).into()),
                ("wait", minutes(sheet.unattended_min, words).into()),
            ],
        ),
    );
    for sentence in sheet.when.sentences(sheet.attended_min, sheet.unattended_min, words) {
        out.para("", &sentence);
    }
    match &sheet.marks {
        None => {
            out.gap();
            out.para("", &sheet.notices[0]);
            out.heading(&words.say("paper-record-so-far"));
            record(&mut out, sheet, words);
        }
        Some(marks) => {
            override_of(&mut out, sheet, words);
            result(&mut out, marks, words);
            finding(&mut out, marks, words);
            out.heading(&words.say("paper-record"));
            record(&mut out, sheet, words);
            evidence(&mut out, marks, words);
        }
    }
    breaches(&mut out, sheet, words);
    if !sheet.not_noted.is_empty() {
        out.heading(&words.say("paper-not-noted"));
        out.para("  ", &sheet.not_noted.join("; "));
    }
    if let Some(marks) = &sheet.marks {
        out.heading(&words.say("paper-what-it-was"));
        for line in marks.debrief.lines() {
            out.para("  ", line);
        }
        let plan = super::plan(marks, words);
        if !plan.is_empty() {
            out.heading(&words.say("paper-plan"));
            out.para("  ", &words.say("paper-plan-why"));
            plan.iter().for_each(|line| out.para("  ", line));
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

/// What holds where an instructor has overridden the mark, before the program's own.
fn override_of(out: &mut Page, sheet: &MarkSheet, words: &Locale) {
    let Some(holds) = &sheet.holds else { return };
    out.heading(&words.say("override-title"));
    out.para("", &holding(holds, words));
    for line in overrides(&sheet.overrides, words) {
        out.hang("  ", "    ", &line);
    }
    out.heading(&words.say("override-own"));
}

fn result(out: &mut Page, marks: &Marks, words: &Locale) {
    let of = words.say("paper-of");
    out.gap();
    let verdict = words.say(if marks.competent { "paper-competent-loud" } else { "paper-not-yet-loud" });
    let values = [("total", fixed(marks.total, 1, words).into()), ("cut", fixed(marks.cut, 0, words).into())];
    out.line(&format!("{verdict}   {}", words.say_with("paper-total", &values)));
    out.gap();
    for part in &marks.parts {
        if part.weight <= 0.0 {
            out.line(&format!("{}  {:<10} {:>14}", part.letter, part.name, taken_off(-part.points, words)));
            out.para("     ", &part.why);
            continue;
        }
        out.line(&format!(
            "{}  {:<10} {:>6} {:>7} {of} {:>4}   {}",
            part.letter,
            part.name,
            fixed(part.value, 2, words),
            fixed(part.points, 1, words),
            fixed(part.weight, 1, words),
            bar(part.value)
        ));
        out.para("     ", &part.why);
        if !part.fine.is_empty() {
            out.para("     ", &format!("({})", part.fine));
        }
    }
    out.line(&format!("S  {:<10} {:>14}", words.say("paper-safety"), taken_off(marks.deducted, words)));
    out.para("     ", &marks.safety);
    out.gap();
    out.line(&words.say("paper-asks"));
    for condition in &marks.conditions {
        let mark = words.say(if condition.met { "paper-met" } else { "paper-not-met-loud" });
        out.line(&format!("  {mark:<7}  {}", condition.asked));
    }
}

/// Twenty columns for 0 to 1.
fn bar(value: f64) -> String {
    let filled = (value.clamp(0.0, 1.0) * 20.0).round() as usize;
    format!("[{}{}]", "#".repeat(filled), ".".repeat(20 - filled))
}

fn finding(out: &mut Page, marks: &Marks, words: &Locale) {
    out.heading(&words.say("paper-finding"));
    out.hang(&format!("  {:<6} ", words.say("paper-was")), "         ", &units(&marks.truth, words));
    for finding in &marks.findings {
        let key = if finding.counts_in_full { "paper-said-line" } else { "paper-said-half" };
        let said =
            if finding.certainty <= 0.0 { words.say("paper-referred") } else { units(&finding.units, words) };
        let values: [(&str, FluentValue<'_>); 3] = [
            ("said", said.into()),
            ("sure", fixed(finding.certainty, 2, words).into()),
            ("min", fixed(finding.at_min, 0, words).into()),
        ];
        out.hang(&format!("  {:<6} ", words.say("paper-said")), "         ", &words.say_with(key, &values));
    }
    for swap in &marks.swaps {
        let key = if swap.was_sound { "paper-swap-sound" } else { "paper-swap-faulty" };
        let likely = if swap.was_sound { 1.0 - swap.p_faulty } else { swap.p_faulty };
        let values: [(&str, FluentValue<'_>); 4] = [
            ("unit", swap.unit.as_str().into()),
            ("price", fixed(swap.price, 0, words).into()),
            ("min", fixed(swap.at_min, 0, words).into()),
            ("percent", percent(likely).into()),
        ];
        out.hang(
            &format!("  {:<7} ", words.say("paper-fitted")),
            "          ",
            &words.say_with(key, &values),
        );
    }
}

fn record(out: &mut Page, sheet: &MarkSheet, words: &Locale) {
    for line in &sheet.record {
        let state = match (line.filled, line.passed) {
            (true, Some(false)) => "paper-noted",
            (true, Some(true) | None) => "paper-yes",
            (false, _) => "paper-missing-loud",
        };
        let state = words.say(state);
        let why = if line.why.is_empty() { String::new() } else { format!(" -- {}", line.why) };
        out.hang(&format!("  {state:<8}"), "          ", &format!("{}{why}", line.text));
    }
}

fn evidence(out: &mut Page, marks: &Marks, words: &Locale) {
    let sheet = &marks.evidence;
    out.heading(&words.say("paper-told"));
    let likely = |p: &[f64]| {
        let best = (0..p.len()).fold(0, |best, class| if p[best] < p[class] { class } else { best });
        format!("{} {}", percent(p[best]), sheet.classes[best].name)
    };
    let start: Vec<f64> = sheet.classes.iter().map(|class| class.start).collect();
    out.para("  ", &words.say_with("paper-likeliest", &[("likely", likely(&start).into())]));
    out.line(&format!(
        "  {:>4} {:>4}  {:<50} {:>14}",
        words.say("paper-read"),
        words.say("paper-min"),
        words.say("paper-what-and-shown"),
        words.say("paper-truth"),
    ));
    let mut late = false;
    let mut was = sheet.p_true_at_start(&marks.truth);
    for line in &sheet.readings {
        if !late && !line.before_lock {
            late = true;
            out.line(&format!("  ---- {} ----", words.say("paper-late")));
        }
        let what = format!("{}: {}", looked(line, words), line.shown);
        let tail = match &line.worth {
            NoteWorth::Counts { classes, .. } => {
                let now = sheet.p_true(&marks.truth, classes);
                let before = std::mem::replace(&mut was, now);
                format!("{:>5} → {:>5}", percent(before), percent(now))
            }
            NoteWorth::Misread => words.say("paper-misread"),
            NoteWorth::Guessed => words.say("paper-guessed"),
            NoteWorth::StruckOut => words.say("paper-struck-out"),
            NoteWorth::Repeat { of } => words.say_with("paper-repeat", &[("of", (*of).into())]),
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
    out.para("  ", &words.say("paper-truth-why"));
    if let Some((p, notes)) = sheet.reference {
        let notes = counted(notes, "paper-notes", words);
        let values = [("percent", percent(p).into()), ("notes", notes.into())];
        out.para("  ", &words.say_with("paper-reference", &values));
    }
}

fn breaches(out: &mut Page, sheet: &MarkSheet, words: &Locale) {
    if sheet.breaches.is_empty() {
        return;
    }
    out.heading(&words.say("paper-safety-title"));
    for breach in &sheet.breaches {
        let values: [(&str, FluentValue<'_>); 3] = [
            ("min", fixed(breach.at_min, 0, words).into()),
            ("gravity", gravity(breach.gravity, words).into()),
            ("text", breach.text.as_str().into()),
        ];
        out.hang("  ", "    ", &words.say_with("paper-breach", &values));
    }
}
