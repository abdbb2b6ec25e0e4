//! What the readings were worth: chart, figures, table of readings.

use maud::{Markup, PreEscaped, html};

use crate::locale::Locale;
use crate::marks::sheet::{EvidenceSheet, Marks, NoteWorth, ReadingLine};
use crate::marks::telling::telling;
use crate::report::{
    air, classes_after, classes_to_show, counted, fixed, looked, percent, plan_path, plots, signed,
};

/// Readings one under the other, classes along the top.
pub(super) fn chart(evidence: &EvidenceSheet, words: &Locale) -> Markup {
    /// Columns.
    const CLASSES: usize = 7;
    /// What was shown stays on one line when it is shorter, bytes.
    const SHORT: usize = 14;
    let shown = classes_to_show(evidence, 0.02, CLASSES);
    let counted: Vec<&ReadingLine> =
        evidence.readings.iter().filter(|line| classes_after(line).is_some()).collect();
    let settled: Vec<u32> = telling(evidence).iter().map(|telling| telling.line.number).collect();
    let start: Vec<f64> = evidence.classes.iter().map(|class| class.start).collect();
    let steps: Vec<&[f64]> =
        std::iter::once(&start[..]).chain(counted.iter().filter_map(|line| classes_after(line))).collect();
    let for_finding = |line: &ReadingLine| matches!(line.worth, NoteWorth::Counts { for_finding: true, .. });
    let late = counted.iter().position(|line| !for_finding(line));
    html! {
        h2 { (words.say("paper-chart")) }
        p class="quiet small" { (words.say("paper-chart-why")) }
        @if counted.is_empty() { p { (words.say("paper-chart-none")) } }
        @else {
            table class="chart" {
                thead { tr {
                    th { (words.say("paper-reading")) }
                    @for &class in &shown {
                        th class=[truth(evidence, class)] {
                            @if evidence.true_class == Some(class) { "◆ " }
                            (evidence.classes[class].name)
                        }
                    }
                    th { (words.say("paper-others")) }
                    th class="open" { (words.say("paper-bits-open")) }
                } }
                tbody {
                    tr {
                        th class="quiet" { (words.say("paper-complaint-alone")) }
                        (cells(evidence, &shown, steps[0], None, words))
                        td class="open" { (fixed(evidence.start_entropy, 1, words)) }
                    }
                    @for (index, line) in counted.iter().enumerate() {
                        @let row = [
                            settled.contains(&line.number).then_some("settled"),
                            (late == Some(index)).then_some("after"),
                        ];
                        @let row: Vec<&str> = row.into_iter().flatten().collect();
                        tr class=[(!row.is_empty()).then(|| row.join(" "))] {
                            th {
                                @if settled.contains(&line.number) { (if leads_away(line) { "○ " } else { "● " }) }
                                b { (line.number) } " " (looked(line, words)) ": " span class=[(line.shown.len() < SHORT).then_some("whole")] { (line.shown) }
                            }
                            (cells(evidence, &shown, steps[index + 1], Some(steps[index]), words))
                            td class="open" {
                                @if let NoteWorth::Counts { entropy, .. } = line.worth { (fixed(entropy, 1, words)) }
                            }
                        }
                    }
                }
            }
        }
    }
}

/// Whether a reading led away from what it was.
fn leads_away(line: &ReadingLine) -> bool {
    matches!(line.worth, NoteWorth::Counts { toward_truth, .. } if toward_truth < 0.0)
}

fn truth(evidence: &EvidenceSheet, class: usize) -> Option<&'static str> {
    (evidence.true_class == Some(class)).then_some("truth")
}

/// The probabilities of one row: of the classes shown, then of all others together. `before`: those of the row above.
fn cells(
    evidence: &EvidenceSheet,
    shown: &[usize],
    now: &[f64],
    before: Option<&[f64]>,
    words: &Locale,
) -> Markup {
    let others = |p: &[f64]| -> f64 {
        (0..p.len()).filter(|class| !shown.contains(class)).map(|class| p[class]).sum()
    };
    // The bar under the number: its length is the probability.
    let bar = |p: f64| format!("background-size:{:.0}% 100%", 100.0 * p);
    html! {
        @for &class in shown {
            td class=[truth(evidence, class)] style=(bar(now[class])) {
                (before.map_or("", |before| sign(before[class], now[class]))) (tenths(now[class], words))
            }
        }
        td style=(bar(others(now))) {
            (before.map_or("", |before| sign(others(before), others(now)))) (tenths(others(now), words))
        }
    }
}

/// Whether a probability rose or fell so much that it is worth a sign.
fn sign(before: f64, now: f64) -> &'static str {
    if (now - before).abs() < 0.005 || (now - before).abs() < 0.1 * before {
        ""
    } else if before < now {
        "▲ "
    } else {
        "▼ "
    }
}

/// Percent with few characters.
fn tenths(p: f64, words: &Locale) -> String {
    if p < 0.001 {
        "·".to_owned()
    } else if p < 0.0995 {
        fixed(100.0 * p, 1, words)
    } else {
        fixed(100.0 * p, 0, words)
    }
}

pub(super) fn figures(marks: &Marks, words: &Locale) -> Markup {
    let figure = |caption: &str, svg: Result<String, plots::PlotError>| {
        html! {
            figure {
                figcaption { (caption) }
                @match svg { Ok(svg) => (PreEscaped(svg)), Err(error) => p { (words.sentence(&error.sentence())) } }
            }
        }
    };
    html! {
        h2 { (words.say("paper-path")) }
        (figure(
            &words.say("paper-path-why"),
            plots::path(marks, words),
        ))
        @if let Some(svg) = plan_path::beside_plan(marks, words) {
            h2 { (words.say("paper-plan-path")) }
            (figure(&words.say("paper-plan-path-why"), svg))
            p.small { (words.say("paper-plan-plan")) ": "
                @for (index, line) in marks.plan.iter().enumerate() {
                    @if 0 < index { "; " }
                    @let before = index.checked_sub(1).map_or_else(
                        || marks.evidence.p_true_at_start(&marks.truth),
                        |before| marks.plan[before].p_true,
                    );
                    b { (plan_path::letter(index)) } " " (line.test)
                    span class="quiet" { " (" (percent(before)) " → " (percent(line.p_true)) ")" }
                }
            }
        }
        h2 { (words.say("paper-air")) }
        (figure(
            &words.say("paper-air-why"),
            air::trace(marks, words),
        ))
    }
}

pub(super) fn readings(marks: &Marks, words: &Locale) -> Markup {
    let evidence = &marks.evidence;
    let mut was = evidence.p_true_at_start(&marks.truth);
    let moved: Vec<(f64, f64)> = evidence
        .readings
        .iter()
        .map(|line| {
            let now = classes_after(line).map_or(was, |p| evidence.p_true(&marks.truth, p));
            (std::mem::replace(&mut was, now), now)
        })
        .collect();
    html! {
        h2 { (words.say("paper-notes-title")) }
        p class="quiet small" {
            (words.say("paper-notes-why"))
            @if let Some((p, notes)) = evidence.reference {
                " "
                (words.say_with("paper-page-reference", &[
                    ("percent", percent(p).into()),
                    ("notes", counted(notes, "paper-notes", words).into()),
                ]))
            }
        }
        div class="two small" {
            @for (line, (was, now)) in evidence.readings.iter().zip(moved) {
                p {
                    b { (line.number) }
                    span class="quiet" { " · " (words.say("paper-page-min")) " " (fixed(line.at_min, 0, words)) " · " }
                    (looked(line, words)) ": " (line.shown) span class="quiet" { " · " }
                    @match &line.worth {
                        NoteWorth::Counts { toward_truth, .. } => {
                            b { (percent(was)) " → " (percent(now)) }
                            span class="quiet" { " (" (signed(*toward_truth, words)) ")" }
                        }
                        NoteWorth::Misread => { b { (words.say("paper-misread")) } }
                        NoteWorth::Guessed => { b { (words.say("paper-guessed")) } }
                        NoteWorth::StruckOut => { b { (words.say("paper-struck-out")) } }
                        NoteWorth::Repeat { of } => { b { (words.say_with("paper-repeat", &[("of", (*of).into())])) } }
                    }
                }
            }
        }
    }
}
