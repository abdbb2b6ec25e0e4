//! The mark sheet as one HTML page with everything in it: two printed pages, no outside resource, no script.
//!
//! Text and inks have a contrast of at least 4.5 : 1 on their grounds (tested); right and wrong, up and down are
//! said by a word or a sign, never by colour alone.

use maud::{DOCTYPE, Markup, PreEscaped, html};

use super::{classes_after, classes_to_show, counted, fixed, minutes, percent, plots, signed, taken_off};
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
pub fn render(sheet: &MarkSheet) -> String {
    let variables: String =
        COLOURS.iter().map(|(name, value)| format!("{name}:{value};")).collect::<Vec<_>>().concat();
    let page = html! {
        (DOCTYPE)
        html lang="en" {
            head {
                meta charset="utf-8";
                meta name="generator" content=(GENERATOR);
                meta name="viewport" content="width=device-width, initial-scale=1";
                title { "Mark sheet: " (sheet.title) }
                style { (PreEscaped(format!(":root{{{variables}}}{STYLE}"))) }
            }
            body {
                (head(sheet))
                @match &sheet.marks {
                    Some(marks) => {
                        (parts(marks))
                        (finding(marks))
                        (record(sheet))
                        (rest(sheet))
                        h2 { "What it was" }
                        div class="small" {
                            @for line in marks.debrief.lines().filter(|line| !line.is_empty()) { p { (line) } }
                        }
                        (foot(sheet))
                        div class="break" {}
                        (chart(&marks.evidence))
                        (figures(marks))
                        (readings(marks))
                    }
                    None => {
                        p class="notice" { (sheet.notices[0]) }
                        (record(sheet))
                        (rest(sheet))
                        (foot(sheet))
                    }
                }
            }
        }
    };
    page.into_string()
}

fn head(sheet: &MarkSheet) -> Markup {
    html! {
        div class="head" {
            div {
                h1 { (sheet.title) }
                p class="quiet" {
                    "Mark sheet " (sheet.scheme) " · job " (sheet.job) " · " (sheet.car) br;
                    "seat " (sheet.seat.as_deref().unwrap_or("–")) " · "
                    (minutes(sheet.attended_min)) " of work, "
                    (minutes(sheet.unattended_min)) " of waiting"
                }
                p class="quiet small" {
                    @for sentence in sheet.when.sentences(sheet.attended_min, sheet.unattended_min) {
                        (sentence) " "
                    }
                }
            }
            @if let Some(marks) = &sheet.marks {
                div class="result" {
                    @if marks.competent { "✓ competent" } @else { "✗ not yet competent" }
                    b { (fixed(marks.total, 1)) }
                    "of 100, cut " (format!("{:.0}", marks.cut))
                }
            } @else {
                div class="result" { "not finished" }
            }
        }
    }
}

fn parts(marks: &Marks) -> Markup {
    html! {
        h2 { "Marks" }
        table {
            thead { tr { th {} th { "part" } th class="n" { "value" } th class="n" { "points" } th { "why" } } }
            tbody {
                @for part in &marks.parts {
                    tr {
                        td class="letter" { (part.letter) }
                        td { (part.name) }
                        td class="n" { (fixed(part.value, 2)) }
                        td class="n" { (format!("{} of {:.1}", fixed(part.points, 1), part.weight)) }
                        td {
                            (part.why)
                            @if !part.fine.is_empty() { br; span class="quiet small" { (part.fine) } }
                        }
                    }
                }
                tr {
                    td class="letter" { "S" }
                    td { "safety" }
                    td class="n" {}
                    td class="n" { (taken_off(marks.deducted)) }
                    td { (marks.safety) }
                }
            }
        }
        h2 { "Competent asks for all of this" }
        div class="two" {
            @for condition in &marks.conditions {
                p { @if condition.met { "✓ met: " } @else { "✗ not met: " } (condition.asked) }
            }
        }
    }
}

fn words(units: &[String]) -> String {
    if units.is_empty() { "everything inside its limits".to_owned() } else { units.join(" and ") }
}

fn finding(marks: &Marks) -> Markup {
    html! {
        h2 { "Finding and repair" }
        p { "It was: " b { (words(&marks.truth)) } "." }
        @for finding in &marks.findings {
            p {
                "Minute " (format!("{:.0}", finding.at_min)) ": said “"
                @if finding.certainty <= 0.0 { "not found, refer on" } @else { (words(&finding.units)) }
                "” with certainty " (format!("{:.2}", finding.certainty))
                @if !finding.counts_in_full { " (counts half)" }
                ", earns " (fixed(finding.earns, 2)) "."
            }
        }
        @for swap in &marks.swaps {
            p {
                "Minute " (format!("{:.0}", swap.at_min)) ": replaced the " (swap.unit) " for "
                (format!("{:.0}", swap.price)) "; the old one "
                @if swap.was_sound { b { "was inside its limits" } } @else { "was outside its limits" }
                ". The notes until then gave " (percent(swap.p_faulty)) " that it was faulty."
            }
        }
    }
}

fn record(sheet: &MarkSheet) -> Markup {
    html! {
        h2 { "Record and release checks" }
        div class="two" {
            @for line in &sheet.record {
                p {
                    @match (line.filled, line.passed) {
                        (true, Some(false)) => "~ noted: ",
                        (true, _) => "✓ ",
                        (false, _) => "✗ missing: ",
                    }
                    (line.text)
                    @if !line.why.is_empty() { " — " (line.why) }
                }
            }
        }
    }
}

/// Readings along the top, classes down the side.
fn chart(evidence: &EvidenceSheet) -> Markup {
    /// Readings in one table; more are set below.
    const COLUMNS: usize = 24;
    /// Rows.
    const CLASSES: usize = 8;
    let shown = classes_to_show(evidence, 0.02, CLASSES);
    let counted: Vec<&ReadingLine> =
        evidence.readings.iter().filter(|line| classes_after(line).is_some()).collect();
    let blocks: Vec<&[&ReadingLine]> = counted.chunks(COLUMNS).collect();
    html! {
        h2 { "How each note moved each possibility" }
        p class="quiet small" {
            "Probability in percent after each note; ▲ it rose, ▼ it fell by more than a tenth of itself and half a \
             percent. The column “c” is the complaint alone; right of the dashed line come notes after the finding or \
             the first repair, which count for the release only. ◆ marks what it was."
        }
        @if blocks.is_empty() { p { "Nothing was noted that counts." } }
        @for (number, block) in blocks.iter().enumerate() {
            table class="chart" {
                thead { tr {
                    th { "reading" }
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
                            @if number == 0 { td { (tenths(evidence.classes[class].start)) } }
                            @for (column, line) in block.iter().enumerate() {
                                (cell(evidence, &counted, number * COLUMNS + column, line, class))
                            }
                        }
                    }
                    tr {
                        th { "all others together" }
                        @if number == 0 {
                            td { (tenths(others(&shown, |class| evidence.classes[class].start, evidence))) }
                        }
                        @for line in *block {
                            @let p = classes_after(line).unwrap_or_default();
                            td { (tenths(others(&shown, |class| p.get(class).copied().unwrap_or(0.0), evidence))) }
                        }
                    }
                    tr {
                        th class="quiet" { "bits still open" }
                        @if number == 0 { td { (format!("{:.1}", evidence.start_entropy)) } }
                        @for line in *block {
                            td { @if let NoteWorth::Counts { entropy, .. } = line.worth { (format!("{entropy:.1}")) } }
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
fn tenths(p: f64) -> String {
    if p < 0.001 {
        "·".to_owned()
    } else if p < 0.0995 {
        format!("{:.1}", 100.0 * p)
    } else {
        format!("{:.0}", 100.0 * p)
    }
}

fn cell(
    evidence: &EvidenceSheet,
    counted: &[&ReadingLine],
    index: usize,
    line: &ReadingLine,
    class: usize,
) -> Markup {
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
    html! { td class=[first_after.then_some("after")] style=(bar) { (sign) (tenths(p)) } }
}

fn figures(marks: &Marks) -> Markup {
    let figure = |caption: &str, svg: Result<String, plots::PlotError>| {
        html! {
            figure {
                figcaption { (caption) }
                @match svg { Ok(svg) => (PreEscaped(svg)), Err(error) => p { (error) } }
            }
        }
    };
    html! {
        h2 { "Path of certainty" }
        (figure(
            "Probability of the likeliest possibilities after each note; lines carry their names at the right.",
            plots::path(marks),
        ))
        h2 { "What the air was really doing" }
        (figure(
            "Line: true pressure in the vacuum store. Rings: what your gauge showed there, with the number of the \
             reading.",
            plots::trace(marks),
        ))
    }
}

fn readings(marks: &Marks) -> Markup {
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
        h2 { "Notes" }
        p class="quiet small" {
            "Number and minute of the reading, what it was, what was shown, and how likely what was really wrong was \
             before it and after it; in brackets the same in bits, of which one doubles (minus: halves)."
            @if let Some((p, notes)) = evidence.reference {
                " The reference attempt reaches " (percent(p)) " on this very car, with " (counted(notes, "note")) "."
            }
        }
        div class="two small" {
            @for (line, (was, now)) in evidence.readings.iter().zip(moved) {
                p {
                    b { (line.number) } span class="quiet" { " · min " (format!("{:.0}", line.at_min)) " · " }
                    (line.looked()) ": " (line.shown) span class="quiet" { " · " }
                    @match &line.worth {
                        NoteWorth::Counts { toward_truth, .. } => {
                            b { (percent(was)) " → " (percent(now)) }
                            span class="quiet" { " (" (signed(*toward_truth)) ")" }
                        }
                        NoteWorth::Misread => { b { "misread, counts for nothing" } }
                        NoteWorth::Repeat { of } => { b { "same as reading " (of) } }
                    }
                }
            }
        }
    }
}

fn rest(sheet: &MarkSheet) -> Markup {
    html! {
        @if !sheet.not_noted.is_empty() {
            h2 { "Looked at but not noted (counts for nothing)" }
            p { (sheet.not_noted.join("; ")) }
        }
        @if !sheet.breaches.is_empty() {
            h2 { "Safety" }
            ul {
                @for breach in &sheet.breaches {
                    li {
                        "Minute " (format!("{:.0}", breach.at_min)) ", "
                        (format!("{:?}", breach.gravity).to_lowercase()) ": " (breach.text)
                    }
                }
            }
        }
    }
}

fn foot(sheet: &MarkSheet) -> Markup {
    html! {
        h2 { "Before you use any of this on a car" }
        @for notice in sheet.notices.iter().skip(usize::from(sheet.marks.is_none())) {
            p class="notice" { (notice) }
        }
        p class="quiet" {
            "Program " (sheet.engine) " · seed " (sheet.seed) " · files " (&sheet.job_digest[..16.min(sheet.job_digest.len())])
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
