//! The mark sheet as one HTML page with everything in it: two printed pages, no outside resource, no script.
//!
//! Text and inks have a contrast of at least 4.5 : 1 on their grounds (tested); right and wrong, up and down are
//! said by a word or a sign, never by colour alone.

mod evidence;
mod style;

use maud::{DOCTYPE, Markup, PreEscaped, html};

use self::evidence::{chart, figures, readings};
use self::style::{COLOURS, STYLE};
use super::{fixed, gravity, holding, minutes, overrides, percent, plan, taken_off, units};
use crate::locale::{FluentValue, Locale};
use crate::marks::sheet::{MarkSheet, Marks};

/// Who made the page, in its head: by this an old sheet is told from another page before it is replaced.
pub const GENERATOR: &str = "pinhole mark sheet";

/// The mark sheet as an HTML page.
#[must_use]
pub fn render(sheet: &MarkSheet, words: &Locale) -> String {
    let title = format!("{}: {}", words.say("paper-page-title"), sheet.title);
    let body = html! {
                (head(sheet, words))
                @match &sheet.marks {
                    Some(marks) => {
                        (override_of(sheet, words))
                        (parts(marks, words))
                        (finding(marks, words))
                        (record(sheet, words))
                        (rest(sheet, words))
                        h2 { (words.say("paper-what-it-was")) }
                        div class="small" {
                            @for line in marks.debrief.lines().filter(|line| !line.is_empty()) { p { (line) } }
                        }
                        (plan_of(marks, words))
                        (foot(sheet, words))
                        div class="break" {}
                        (chart(&marks.evidence, words))
                        (figures(marks, words))
                        (readings(marks, words))
                    }
                    None => {
                        p class="notice" { (sheet.notices[0]) }
                        (record(sheet, words))
                        (rest(sheet, words))
                        (foot(sheet, words))
                    }
                }
    };
    page(GENERATOR, &title, &body, words)
}

/// A page with everything in it: no outside resource, no script. `generator` tells an old one from a stranger's.
pub(super) fn page(generator: &str, title: &str, body: &Markup, words: &Locale) -> String {
    let variables: String =
        COLOURS.iter().map(|(name, value)| format!("{name}:{value};")).collect::<Vec<_>>().concat();
    let page = html! {
        (DOCTYPE)
        html lang=(words.tag()) {
            head {
                meta charset="utf-8";
                meta name="generator" content=(generator);
                meta name="viewport" content="width=device-width, initial-scale=1";
                title { (title) }
                style { (PreEscaped(format!(":root{{{variables}}}{STYLE}"))) }
            }
            body { (body) }
        }
    };
    page.into_string()
}

fn head(sheet: &MarkSheet, words: &Locale) -> Markup {
    html! {
        div class="head" {
            div {
                h1 { (sheet.title) }
                p class="quiet" {
                    (words.say_with("paper-page-line", &[
                        ("scheme", sheet.scheme.as_str().into()),
                        ("job", sheet.job.as_str().into()),
                        ("car", sheet.car.as_str().into()),
                    ])) br;
                    (words.say_with("paper-page-seat", &[
                        ("seat", sheet.seat.as_deref().unwrap_or("–").into()),
                        ("work", minutes(sheet.attended_min, words).into()),
                        ("wait", minutes(sheet.unattended_min, words).into()),
                    ]))
                }
                p class="quiet small" {
                    @for sentence in sheet.when.sentences(sheet.attended_min, sheet.unattended_min, words) {
                        (sentence) " "
                    }
                }
            }
            @if let Some(marks) = &sheet.marks {
                div class="result" {
                    @if sheet.holds.is_some() { span class="small" { (words.say("override-own")) } br; }
                    @if marks.competent { "✓ " (words.say("paper-competent")) } @else { "✗ " (words.say("paper-not-yet")) }
                    b { (fixed(marks.total, 1, words)) }
                    (words.say_with("paper-page-cut", &[("cut", fixed(marks.cut, 0, words).into())]))
                }
            } @else {
                div class="result" { (words.say("paper-not-finished")) }
            }
        }
    }
}

/// What holds where an instructor has overridden the mark; the program's own stays beside it.
fn override_of(sheet: &MarkSheet, words: &Locale) -> Markup {
    html! {
        @if let Some(holds) = &sheet.holds {
            h2 { (words.say("override-title")) }
            p { b { (holding(holds, words)) } }
            ul {
                @for line in overrides(&sheet.overrides, words) { li { (line) } }
            }
        }
    }
}

/// The reference plan, where the job has one.
fn plan_of(marks: &Marks, words: &Locale) -> Markup {
    let plan = plan(marks, words);
    html! {
        @if !plan.is_empty() {
            h2 { (words.say("paper-plan")) }
            p class="quiet small" { (words.say("paper-plan-why")) }
            ol class="small" { @for line in &plan { li { (line) } } }
        }
    }
}

fn parts(marks: &Marks, words: &Locale) -> Markup {
    html! {
        h2 { (words.say("paper-marks")) }
        table {
            thead { tr { th {}
                th { (words.say("paper-part")) }
                th class="n" { (words.say("paper-value")) }
                th class="n" { (words.say("paper-points")) }
                th { (words.say("paper-why")) }
             } }
            tbody {
                @for part in &marks.parts {
                    tr {
                        td class="letter" { (part.letter) }
                        td { (part.name) }
                        @if part.weight <= 0.0 {
                            td class="n" {}
                            td class="n" { (taken_off(-part.points, words)) }
                        } @else {
                            td class="n" { (fixed(part.value, 2, words)) }
                            td class="n" {
                                (fixed(part.points, 1, words)) " " (words.say("paper-of")) " "
                                (fixed(part.weight, 1, words))
                            }
                        }
                        td {
                            (part.why)
                            @if !part.fine.is_empty() { br; span class="quiet small" { (part.fine) } }
                        }
                    }
                }
                tr {
                    td class="letter" { "S" }
                    td { (words.say("paper-safety")) }
                    td class="n" {}
                    td class="n" { (taken_off(marks.deducted, words)) }
                    td { (marks.safety) }
                }
            }
        }
        h2 { (words.say("paper-page-asks")) }
        div class="two" {
            @for condition in &marks.conditions {
                p {
                    @if condition.met { "✓ " (words.say("paper-met")) } @else { "✗ " (words.say("paper-not-met")) }
                    ": " (condition.asked)
                }
            }
        }
    }
}

fn finding(marks: &Marks, words: &Locale) -> Markup {
    html! {
        h2 { (words.say("paper-finding-and-repair")) }
        p { (words.say("paper-it-was")) " " b { (units(&marks.truth, words)) } "." }
        @for finding in &marks.findings {
            p {
                (words.say_with(if finding.counts_in_full { "paper-page-said" } else { "paper-page-said-half" }, &[
                    ("min", fixed(finding.at_min, 0, words).into()),
                    ("said", if finding.certainty <= 0.0 {
                        words.say("paper-referred").into()
                    } else {
                        units(&finding.units, words).into()
                    }),
                    ("sure", fixed(finding.certainty, 2, words).into()),
                    ("earns", fixed(finding.earns, 2, words).into()),
                ]))
            }
        }
        @for swap in &marks.swaps {
            p {
                (words.say_with("paper-page-swap", &[
                    ("min", fixed(swap.at_min, 0, words).into()),
                    ("unit", swap.unit.as_str().into()),
                    ("price", fixed(swap.price, 0, words).into()),
                ]))
                " "
                @if swap.was_sound {
                    b { (words.say("paper-page-was-sound")) }
                } @else {
                    (words.say("paper-page-was-faulty"))
                }
                (words.say_with("paper-page-swap-notes", &[("percent", percent(swap.p_faulty).into())]))
            }
        }
    }
}

fn record(sheet: &MarkSheet, words: &Locale) -> Markup {
    html! {
        h2 { (words.say("paper-record")) }
        div class="two" {
            @for line in &sheet.record {
                p {
                    @match (line.filled, line.passed) {
                        (true, Some(false)) => { "~ " (words.say("paper-noted")) ": " },
                        (true, Some(true) | None) => "✓ ",
                        (false, _) => { "✗ " (words.say("paper-missing")) ": " },
                    }
                    (line.text)
                    @if !line.why.is_empty() { " — " (line.why) }
                }
            }
        }
    }
}

fn rest(sheet: &MarkSheet, words: &Locale) -> Markup {
    html! {
        @if !sheet.not_noted.is_empty() {
            h2 { (words.say("paper-not-noted")) }
            p { (sheet.not_noted.join("; ")) }
        }
        @if !sheet.breaches.is_empty() {
            h2 { (words.say("paper-safety-title")) }
            ul {
                @for breach in &sheet.breaches {
                    li {
                        (words.say_with("paper-page-breach", &[
                            ("min", fixed(breach.at_min, 0, words).into()),
                            ("gravity", gravity(breach.gravity, words).into()),
                            ("text", FluentValue::from(breach.text.as_str())),
                        ]))
                    }
                }
            }
        }
    }
}

fn foot(sheet: &MarkSheet, words: &Locale) -> Markup {
    html! {
        h2 { (words.say("paper-before-use")) }
        @for notice in sheet.notices.iter().skip(usize::from(sheet.marks.is_none())) {
            p class="notice" { (notice) }
        }
        p class="quiet" {
            (words.say_with("paper-page-foot", &[
                ("engine", sheet.engine.as_str().into()),
                ("seed", sheet.seed.as_str().into()),
                ("files", FluentValue::from(&sheet.job_digest[..16.min(sheet.job_digest.len())])),
            ]))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::report::plots;

    /// Relative luminance and contrast as WCAG 2.2 defines them (from memory).
    fn luminance(rgb: [u8; 3]) -> f64 {
        let linear = rgb.map(|c| {
            let c = f64::from(c) / 255.0;
            if c <= 0.04045 { c / 12.92 } else { ((c + 0.055) / 1.055).powf(2.4) }
        });
        0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]
    }

    fn contrast(a: [u8; 3], b: [u8; 3]) -> f64 {
        let (a, b) = (luminance(a), luminance(b));
        (a.max(b) + 0.05) / (a.min(b) + 0.05)
    }

    fn parse(hex: &str) -> [u8; 3] {
        let bytes = hex::decode(hex.trim_start_matches('#')).unwrap();
        [bytes[0], bytes[1], bytes[2]]
    }

    #[test]
    fn inv_every_ink_is_legible_on_every_ground() {
        // Against the table in the project's notes: blue 0072B2 on white is 5.19.
        assert!((contrast(parse("#0072b2"), [255; 3]) - 5.19).abs() < 0.005);
        let named = |name: &str| COLOURS.iter().find(|(n, _)| *n == name).map(|(_, v)| parse(v)).unwrap();
        let mut inks = vec![named("--ink"), named("--quiet"), named("--accent")];
        inks.extend(plots::LINE_INKS.iter().chain([&plots::INK]).map(|c| [c.0, c.1, c.2]));
        for ground in [[255; 3], named("--band"), parse("#cfe3e0")] {
            for ink in &inks {
                assert!(4.5 <= contrast(*ink, ground), "{ink:?} on {ground:?}: {}", contrast(*ink, ground));
            }
        }
    }
}
