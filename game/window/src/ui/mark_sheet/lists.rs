//! What is told in lists: finding against truth, safety, notes, record, what it was.

use assess::marks::sheet::{MarkSheet, Marks, NoteWorth, ReadingLine};
use egui::{Label, RichText};
use sim_core::action::Written;
use sim_core::notice::Gravity;

use super::super::super::state::Ui;
use super::super::super::theme;
use super::super::paper;
use super::state::NotOpened;
use front::prefs::PressureUnit;
use front::shop::Shop;
use front::words::Words;

/// Units in a sentence.
fn units(words: &Words, names: &[String]) -> String {
    if names.is_empty() { words.say("finding-sound") } else { names.join("; ") }
}

/// Finding against truth, and what was replaced.
pub(super) fn finding(page: &mut egui::Ui, words: &Words, marks: &Marks) {
    paper::heading(page, words.say("mark-finding"));
    let was = words.say_with("mark-was", &[("units", units(words, &marks.truth).into())]);
    page.add(Label::new(RichText::new(was).size(16.0)).wrap());
    for finding in &marks.findings {
        let said = if finding.certainty <= 0.0 {
            words.say("finding-unknown")
        } else {
            units(words, &finding.units)
        };
        let values = [
            ("said", said.into()),
            ("percent", words.number(100.0 * finding.certainty, 0).into()),
            ("min", words.number(finding.at_min, 0).into()),
        ];
        let key = if finding.counts_in_full { "mark-said" } else { "mark-said-half" };
        page.add(Label::new(words.say_with(key, &values)).wrap());
    }
    for swap in &marks.swaps {
        let key = if swap.was_sound { "mark-swap-sound" } else { "mark-swap-faulty" };
        let values = [
            ("unit", swap.unit.as_str().into()),
            ("price", words.number(swap.price, 0).into()),
            ("min", words.number(swap.at_min, 0).into()),
            ("percent", words.percent(swap.p_faulty).into()),
        ];
        page.add(Label::new(words.say_with(key, &values)).wrap());
    }
}

/// Breaches of safety.
pub(super) fn breaches(page: &mut egui::Ui, words: &Words, sheet: &MarkSheet) {
    if sheet.breaches.is_empty() {
        return;
    }
    paper::heading(page, words.say("mark-breaches"));
    for breach in &sheet.breaches {
        let key = match breach.gravity {
            Gravity::Minor => "remark-breach-minor",
            Gravity::Major => "remark-breach-major",
            Gravity::Critical => "remark-breach-critical",
        };
        let text = words.say_with(key, &[("text", breach.text.as_str().into())]);
        let min = words.number(breach.at_min, 0);
        let text = words.say_with("mark-minute", &[("min", min.into()), ("text", text.into())]);
        page.add(Label::new(RichText::new(text).color(theme::BREACH)).wrap());
    }
}

/// What a note was of, and what was plugged and clamped for it.
pub(super) fn what(line: &ReadingLine) -> String {
    if line.with.is_empty() { line.what.clone() } else { format!("{}; {}", line.what, line.with.join("; ")) }
}

/// What a note showed; pressures in the unit of the settings.
pub(super) fn shown(words: &Words, line: &ReadingLine, unit: PressureUnit) -> String {
    match &line.value {
        Some((value, of)) => words.written(&Written { value: *value, unit: of.clone() }, unit),
        None => line.shown.clone(),
    }
}

/// Bits with their sign; what rounds to nothing has none.
fn signed(words: &Words, bits: f64) -> String {
    if 0.05 <= bits { format!("+{}", words.number(bits, 1)) } else { words.number(bits, 1) }
}

/// The notes, one by one: what each showed, and how likely what was really wrong was before and after it.
pub(super) fn readings(page: &mut egui::Ui, words: &Words, marks: &Marks, unit: PressureUnit) {
    let evidence = &marks.evidence;
    paper::heading(page, words.say("mark-notes"));
    paper::faint(page, words.say("mark-notes-why"));
    if let Some((p, notes)) = evidence.reference {
        let values = [("percent", words.percent(p).into()), ("n", notes.into())];
        page.add(Label::new(words.say_with("mark-reference", &values)).wrap());
    }
    let mut was = evidence.p_true_at_start(&marks.truth);
    for line in &evidence.readings {
        let (worth, bits) = match &line.worth {
            NoteWorth::Counts { toward_truth, classes, .. } => {
                let now = evidence.p_true(&marks.truth, classes);
                let before = std::mem::replace(&mut was, now);
                let values = [("was", words.percent(before).into()), ("now", words.percent(now).into())];
                (words.say_with("mark-moved", &values), signed(words, *toward_truth))
            }
            NoteWorth::Misread => (words.say("mark-misread"), String::new()),
            NoteWorth::Guessed => (words.say("mark-guessed"), String::new()),
            NoteWorth::StruckOut => (words.say("mark-struck-out"), String::new()),
            NoteWorth::Repeat { of } => {
                (words.say_with("mark-repeat", &[("of", (*of).into())]), String::new())
            }
        };
        let values = [
            ("n", line.number.into()),
            ("min", words.number(line.at_min, 0).into()),
            ("what", what(line).into()),
            ("shown", shown(words, line, unit).into()),
            ("worth", worth.into()),
        ];
        page.horizontal_wrapped(|row| {
            row.label(words.say_with("mark-note", &values));
            if !bits.is_empty() {
                let bits = words.say_with("mark-bits", &[("bits", bits.into())]);
                row.label(RichText::new(bits).small().color(theme::INK_FAINT));
            }
        });
    }
}

/// The record with what is missing.
pub(super) fn record(page: &mut egui::Ui, words: &Words, sheet: &MarkSheet) {
    paper::heading(page, words.say("record-title"));
    for line in &sheet.record {
        let (mark, key, colour) = match (line.filled, line.passed) {
            (true, Some(false)) => ("~", "mark-record-noted", theme::REFUSED),
            (true, _) => ("✔", "mark-record-filled", theme::ACCENT),
            (false, _) => ("✖", "mark-record-missing", theme::BREACH),
        };
        page.horizontal_top(|row| {
            row.label(RichText::new(mark).color(colour));
            let text = words.say_with(key, &[("line", line.text.as_str().into())]);
            let text = if line.why.is_empty() { text } else { format!("{text} — {}", line.why) };
            row.add(Label::new(text).wrap());
        });
    }
}

/// What was looked at and not noted.
pub(super) fn not_noted(page: &mut egui::Ui, shop: &Shop, words: &Words) {
    let Some(view) = shop.view() else { return };
    let open = view.readings.iter().filter(|r| view.notes.iter().all(|(id, ..)| *id != r.id));
    let mut names: Vec<String> = open.map(|r| words.observed(shop, &r.what)).collect();
    names.dedup();
    if names.is_empty() {
        return;
    }
    paper::heading(page, words.say("mark-not-noted"));
    for name in names {
        paper::point(page, name);
    }
}

/// What it was, as the pack tells it.
pub(super) fn debrief(page: &mut egui::Ui, words: &Words, marks: &Marks) {
    paper::heading(page, words.say("mark-debrief"));
    for line in marks.debrief.lines().filter(|l| !l.is_empty()) {
        page.add(Label::new(line).wrap());
    }
}

/// The reference plan, where the job has one.
pub(super) fn plan(page: &mut egui::Ui, words: &Words, marks: &Marks) {
    let plan = assess::report::plan(marks, words);
    if plan.is_empty() {
        return;
    }
    paper::heading(page, words.say("paper-plan"));
    page.add(Label::new(words.say("paper-plan-why")).wrap());
    for line in &plan {
        paper::point(page, line);
    }
}

/// The page beside the attempt: opened by a click with the program the system has for it, or its path copied.
pub(super) fn page_beside(page: &mut egui::Ui, shop: &Shop, words: &Words, ui: &mut Ui) {
    let Some(path) = shop.session().and_then(|s| s.path()).map(|p| p.with_extension("html")) else { return };
    let text = path.display().to_string();
    paper::heading(page, words.say("mark-page"));
    page.add(Label::new(words.say("mark-page-why")).wrap());
    page.add(Label::new(RichText::new(&text).monospace()).wrap());
    page.horizontal_wrapped(|row| {
        if row.add(paper::button(words.say("mark-page-open"))).clicked() {
            ui.open_file = Some(path);
        }
        if row.add(paper::button(words.say("mark-page-copy"))).clicked() {
            row.ctx().copy_text(text);
        }
    });
    match &ui.mark_sheet.opened {
        Some(Err(why)) => {
            let why = match why {
                NotOpened::Missing => words.say("mark-page-missing"),
                NotOpened::System(why) => words.value(why),
            };
            paper::trouble(page, &words.say("mark-page-not-opened"), &why);
        }
        Some(Ok(())) => {
            paper::faint(page, words.say("mark-page-opened"));
        }
        None => {}
    }
}

/// What comes before all of this on a car, and what marked it.
pub(super) fn foot(page: &mut egui::Ui, words: &Words, sheet: &MarkSheet) {
    paper::heading(page, words.say("mark-when"));
    for said in sheet.when.sentences(sheet.attended_min, sheet.unattended_min, words) {
        page.add(Label::new(said).wrap());
    }
    page.add_space(8.0);
    let mut lines = vec![words.say("card-defer")];
    // The first notice is the same sentence.
    lines.extend(sheet.notices.iter().skip(1).cloned());
    paper::caution(page, &words.say("desk-caution"), &lines);
    let values = [
        ("engine", sheet.engine.as_str().into()),
        ("scheme", sheet.scheme.as_str().into()),
        ("seed", sheet.seed.as_str().into()),
    ];
    paper::faint(page, words.say_with("mark-foot", &values));
}
