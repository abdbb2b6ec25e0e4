//! The mark sheet as one HTML page with everything in it: two printed pages, no outside resource, no script.
//!
//! Text and inks have a contrast of at least 4.5 : 1 on their grounds (tested); right and wrong, up and down are
//! said by a word or a sign, never by colour alone.

use maud::{DOCTYPE, Markup, PreEscaped, html};

use super::{
    classes_after, classes_to_show, counted, fixed, gravity, looked, minutes, percent, plots, signed,
    taken_off, units,
};
use crate::locale::{FluentValue, Locale};
use crate::marks::sheet::{EvidenceSheet, MarkSheet, Marks, NoteWorth, ReadingLine};

/// Ink, quiet ink, accent, ground of bands, rule: as `#rrggbb`.
pub(crate) const COLOURS: [(&str, &str); 5] = [
    ("--ink", "#1c2629"),
    ("--quiet", "#4a5659"),
    ("--accent", "#0b5f59"),
    ("--band", "#eef3f2"),
    ("--rule", "#9fb0ae"),
];

const STYLE: &str = "
*{box-sizing:border-box}
body{margin:0 auto;max-width:190mm;padding:8mm 4mm;background:#fff;color:var(--ink);
 font:10.5pt/1.4 Georgia,'Times New Roman',serif}
h1{font-size:17pt;line-height:1.15;margin:0 0 1mm;font-weight:600}
h2{font-size:11.5pt;margin:5mm 0 1.5mm;padding-bottom:.6mm;border-bottom:1.5pt solid var(--accent);
 color:var(--accent);font-weight:600;break-after:avoid}
p{margin:0 0 1.5mm}
.quiet{color:var(--quiet)}
.head{display:flex;gap:6mm;align-items:flex-start;justify-content:space-between}
.result{border:2pt solid var(--accent);padding:2mm 4mm;text-align:center;min-width:46mm}
.result b{display:block;font-size:20pt;line-height:1.1;font-variant-numeric:tabular-nums}
table{border-collapse:collapse;width:100%;font-size:9.2pt}
th,td{text-align:left;vertical-align:top;padding:.9mm 1.6mm;border-bottom:.5pt solid var(--rule)}
th{font-weight:600;color:var(--quiet)}
td.n,th.n{text-align:right;font-variant-numeric:tabular-nums;white-space:nowrap}
.letter{font-size:13pt;font-weight:600;color:var(--accent)}
.two{columns:2;column-gap:7mm;font-size:9.2pt}
.two p{break-inside:avoid}
ul{margin:0;padding-left:4.5mm}
li{margin:0 0 .7mm}
.chart td,.chart th{padding:.5mm .7mm;text-align:right;font-size:7.6pt;line-height:1.15;
 font-variant-numeric:tabular-nums;white-space:nowrap;border-right:.5pt solid var(--band)}
.chart th:first-child{text-align:left;white-space:normal;min-width:34mm;font-weight:400;color:var(--ink)}
.chart .truth{font-weight:700}
.chart .after{border-left:1.2pt dashed var(--ink)}
.chart td{background-repeat:no-repeat;background-position:0 100%}
svg{display:block;width:100%;height:auto}
figure{margin:0;break-inside:avoid}
figcaption{font-size:8.6pt;color:var(--quiet);margin-bottom:1mm}
.notice{border-left:3pt solid var(--accent);background:var(--band);padding:1.5mm 3mm;font-size:9.2pt}
.break{break-before:page}
.small{font-size:8.6pt;line-height:1.3}
.small p{margin-bottom:.8mm}
@page{size:A4;margin:10mm 11mm}
@media print{
 body{padding:0;max-width:none;font-size:9.2pt;line-height:1.3}
 h1{font-size:15pt} h2{font-size:10.5pt;margin:3mm 0 1mm}
 p{margin-bottom:.9mm} table{font-size:8.2pt} td,th{padding:.5mm 1.3mm}
 .two{font-size:8.2pt} .notice{font-size:8.4pt;padding:1mm 3mm} .small{font-size:7.9pt}
 .chart td,.chart th{font-size:6.8pt;padding:.25mm .35mm}
 svg{max-height:44mm}
}
";

/// Who made the page, in its head: by this an old sheet is told from another page before it is replaced.
pub const GENERATOR: &str = "pinhole mark sheet";

/// The mark sheet as an HTML page.
#[must_use]
pub fn render(sheet: &MarkSheet, words: &Locale) -> String {
    let variables: String =
        COLOURS.iter().map(|(name, value)| format!("{name}:{value};")).collect::<Vec<_>>().concat();
    let page = html! {
        (DOCTYPE)
        html lang=(words.tag()) {
            head {
                meta charset="utf-8";
                meta name="generator" content=(GENERATOR);
                meta name="viewport" content="width=device-width, initial-scale=1";
                title { (words.say("paper-page-title")) ": " (sheet.title) }
                style { (PreEscaped(format!(":root{{{variables}}}{STYLE}"))) }
            }
            body {
                (head(sheet, words))
                @match &sheet.marks {
                    Some(marks) => {
                        (parts(marks, words))
                        (finding(marks, words))
                        (record(sheet, words))
                        (rest(sheet, words))
                        h2 { (words.say("paper-what-it-was")) }
                        div class="small" {
                            @for line in marks.debrief.lines().filter(|line| !line.is_empty()) { p { (line) } }
                        }
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
            }
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
                        td class="n" { (fixed(part.value, 2, words)) }
                        td class="n" {
                            (fixed(part.points, 1, words)) " " (words.say("paper-of")) " "
                            (fixed(part.weight, 1, words))
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

/// Readings along the top, classes down the side.
fn chart(evidence: &EvidenceSheet, words: &Locale) -> Markup {
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

fn figures(marks: &Marks, words: &Locale) -> Markup {
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
        h2 { (words.say("paper-air")) }
        (figure(
            &words.say("paper-air-why"),
            plots::trace(marks, words),
        ))
    }
}

fn readings(marks: &Marks, words: &Locale) -> Markup {
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
                        NoteWorth::Repeat { of } => { b { (words.say_with("paper-repeat", &[("of", (*of).into())])) } }
                    }
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
