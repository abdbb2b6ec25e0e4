//! What the readings were worth: chart, figures, table of readings.

use maud::{Markup, PreEscaped, html};

use crate::locale::Locale;
use crate::marks::sheet::{EvidenceSheet, Marks, NoteWorth, ReadingLine};
use crate::report::{
    classes_after, classes_to_show, counted, fixed, looked, percent, plan_path, plots, signed,
};

/// Readings along the top, classes down the side.
pub(super) fn chart(evidence: &EvidenceSheet, words: &Locale) -> Markup {
    /// Readings in one table; more are set below.
    const COLUMNS: usize = 24;
    /// Rows.
    const CLASSES: usize = 8;
    let shown = classes_to_show(evidence, 0.02, CLASSES);
    let counted: Vec<&ReadingLine> =
        evidence.readings.iter().filter(|line| classes_after(line).is_some()).collect();
    let blocks: Vec<&[&ReadingLine]> = counted.chunks(COLUMNS).collect();
    html! {
        h2 { (words.say("paper-chart")) }
        p class="quiet small" {
            (words.say("paper-chart-why"))
        }
        @if blocks.is_empty() { p { (words.say("paper-chart-none")) } }
        @for (number, block) in blocks.iter().enumerate() {
            table class="chart" {
                thead { tr {
                    th { (words.say("paper-reading")) }
                    @if number == 0 { th { "c" } }
                    @for line in *block { th { (line.number) } }
                } }
                tbody {
                    @for &class in &shown {
                        tr class=[(evidence.true_class == Some(class)).then_some("truth")] {
                            th {
                                @if evidence.true_class == Some(class) { "◆ " }
                                (evidence.classes[class].name)
                            }
                            @if number == 0 { td { (tenths(evidence.classes[class].start, words)) } }
                            @for column in 0..block.len() {
                                (cell(evidence, &counted, number * COLUMNS + column, class, words))
                            }
                        }
                    }
                    tr {
                        th { (words.say("paper-others")) }
                        @if number == 0 {
                            td { (tenths(others(&shown, |class| evidence.classes[class].start, evidence), words)) }
                        }
                        @for line in *block {
                            @let p = classes_after(line).unwrap_or_default();
                            td { (tenths(others(&shown, |class| p.get(class).copied().unwrap_or(0.0), evidence), words)) }
                        }
                    }
                    tr {
                        th class="quiet" { (words.say("paper-bits-open")) }
                        @if number == 0 { td { (fixed(evidence.start_entropy, 1, words)) } }
                        @for line in *block {
                            td { @if let NoteWorth::Counts { entropy, .. } = line.worth { (fixed(entropy, 1, words)) } }
                        }
                    }
                }
            }
        }
    }
}

fn others(shown: &[usize], p: impl Fn(usize) -> f64, evidence: &EvidenceSheet) -> f64 {
    (0..evidence.classes.len()).filter(|class| !shown.contains(class)).map(p).sum()
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

fn cell(
    evidence: &EvidenceSheet,
    counted: &[&ReadingLine],
    index: usize,
    class: usize,
    words: &Locale,
) -> Markup {
    let Some(line) = counted.get(index).copied() else { return html! { td {} } };
    let p = classes_after(line).map_or(0.0, |p| p[class]);
    let previous = index.checked_sub(1).and_then(|before| counted.get(before).copied());
    let before = previous.and_then(classes_after).map_or(evidence.classes[class].start, |p| p[class]);
    let sign = if (p - before).abs() < 0.005 || (p - before).abs() < 0.1 * before {
        ""
    } else if before < p {
        "▲"
    } else {
        "▼"
    };
    let for_finding = |line: &ReadingLine| matches!(line.worth, NoteWorth::Counts { for_finding: true, .. });
    let first_after = !for_finding(line) && previous.is_none_or(for_finding);
    // The bar behind the number: its height is the probability.
    let bar =
        format!("background-image:linear-gradient(#cfe3e0,#cfe3e0);background-size:100% {:.0}%", 100.0 * p);
    html! { td class=[first_after.then_some("after")] style=(bar) { (sign) (tenths(p, words)) } }
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
            p.plan { (words.say("paper-plan-plan")) ": "
                @for (index, line) in marks.plan.iter().enumerate() {
                    @if 0 < index { "; " }
                    b { (plan_path::letter(index)) } " " (line.test)
                }
            }
        }
        h2 { (words.say("paper-air")) }
        (figure(
            &words.say("paper-air-why"),
            plots::trace(marks, words),
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
