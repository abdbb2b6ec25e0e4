//! What was found about the jobs of a pack, as one page with everything in it: for authors, for it names the faults.

use maud::{Markup, html};

use super::html::page;
use super::{fixed, percent};
use crate::locale::{Locale, Naming, Speech, test_name};
use crate::pack::job::Job;
use crate::plan::cost::Minutes;
use crate::prove::{Alike, Planned, Proof};

/// Who made the page, in its head: by this an old page is told from another before it is replaced.
pub const GENERATOR: &str = "pinhole proof";

/// The page. `about`: the pack in a line; `wrong`: what is wrong with the pack as a whole.
#[must_use]
pub fn render(about: &str, wrong: &[String], jobs: &[(&Job, &Proof)], words: &Locale) -> String {
    let title = format!("{}: {about}", words.say("prove-title"));
    let body = html! {
                h1 { (title) }
                p class="notice" { (words.say("prove-secret")) }
                @for line in wrong { p { "✗ " (line) } }
                (overview(jobs, words))
                @for (job, proof) in jobs { (one(job, proof, words)) }
                p class="quiet small" { (words.say("told-sheet-defer")) }
    };
    page(GENERATOR, &title, &body, words)
}

/// All jobs, a line each.
fn overview(jobs: &[(&Job, &Proof)], words: &Locale) -> Markup {
    html! {
        table {
            thead { tr {
                th { (words.say("prove-job")) }
                th { (words.say("prove-verdict")) }
                th class="n" { (words.say("prove-found")) }
                th class="n" { (words.say("prove-par")) }
                th class="n" { (words.say("prove-card-short")) }
                th class="n" { (words.say("prove-confirms-short")) }
            } }
            tbody { @for (_, proof) in jobs { tr {
                td { (proof.job) }
                td { @if proof.passes() { "✓ " (words.say("prove-passes")) } @else { "✗ " (words.say("prove-fails")) } }
                td class="n" { (counted(proof.solved(), words)) }
                td class="n" { (minutes(proof.par, words)) }
                td class="n" { (percent(proof.card)) }
                td class="n" { (percent(proof.confirming.first().map_or(0.0, |c| c.evidence))) }
            } } }
        }
        p class="quiet small" { (words.say("prove-columns")) }
    }
}

fn one(job: &Job, proof: &Proof, words: &Locale) -> Markup {
    let speech = Speech::new(words, job, Naming::Typed);
    html! {
        h2 { (proof.job) " – " (speech.title()) }
        @for flaw in &proof.flaws { p { "✗ " (words.sentence(&flaw.sentence(words))) } }
        @for line in lines(job, proof, words) { p { (line) } }
        table {
            thead { tr {
                th { (words.say("prove-test")) }
                th class="n" { (words.say("prove-adds")) }
                th class="n" { (words.say("prove-expected")) }
                th class="n" { (words.say("prove-after")) }
                th { (words.say("prove-likeliest")) }
            } }
            tbody { @for planned in &proof.plan { tr {
                td { (test_name(job, &planned.test, words)) " " span class="quiet" { "(" (planned.test) ")" } }
                td class="n" { (minutes(planned.minutes, words)) }
                td class="n" { (fixed(planned.expected_bits, 2, words)) }
                td class="n" { (percent(planned.p_true)) }
                td { (unit(job, &planned.likeliest.0, words)) ", " (percent(planned.likeliest.1)) }
            } } }
        }
    }
}

/// What was found about a job, sentence by sentence; without its plan and its flaws.
#[must_use]
pub fn lines(job: &Job, proof: &Proof, words: &Locale) -> Vec<String> {
    let mut lines = Vec::new();
    let truth: Vec<String> = match proof.truth.as_slice() {
        [] => vec![unit(job, "-", words)],
        units => units.iter().map(|id| unit(job, id, words)).collect(),
    };
    lines.push(words.say_with("prove-truth", &[("units", truth.join(", ").into())]));
    let card = [
        ("p", percent(proof.card).into()),
        ("unit", unit(job, &proof.card_likeliest.0, words).into()),
        ("best", percent(proof.card_likeliest.1).into()),
        ("shows", counted(proof.shows, words).into()),
        ("sound", counted(proof.sound_shows, words).into()),
    ];
    lines.push(words.say_with("prove-on-card", &card));
    let mut tests: Vec<usize> = proof.cars.iter().map(|(_, tests)| *tests).collect();
    tests.sort_unstable();
    let median = tests.get(tests.len() / 2).copied().unwrap_or_default();
    let solved = [
        ("n", (proof.solved() * proof.cars.len() as f64).round().into()),
        ("cars", proof.cars.len().into()),
        ("median", median.into()),
        ("most", tests.last().copied().unwrap_or_default().into()),
        ("all", proof.tests.into()),
    ];
    lines.push(words.say_with("prove-solved", &solved));
    let time = [
        ("plan", minutes(proof.minutes, words).into()),
        ("par", minutes(proof.par, words).into()),
        ("gives", fixed(proof.time_limit_min, 0, words).into()),
    ];
    lines.push(words.say_with("prove-time", &time));
    if let Some(best) = proof.confirming.first() {
        let one = |(test, after_min): &(String, f64)| {
            let name = test_name(job, test, words);
            let late = [("test", name.clone().into()), ("n", fixed(*after_min, 0, words).into())];
            if *after_min <= 0.0 { name } else { words.say_with("prove-late", &late) }
        };
        let list = best.tests.iter().map(one).collect::<Vec<_>>().join("; ");
        let values = [("tests", list.into()), ("p", percent(best.evidence).into())];
        lines.push(words.say_with("prove-confirms", &values));
    }
    lines.push(match proof.alike.as_slice() {
        [] => words.say("prove-alike-none"),
        alike => {
            let each: Vec<String> = alike.iter().map(|alike| looks_alike(job, alike, words)).collect();
            words.say_with("prove-alike-each", &[("list", each.join("; ").into())])
        }
    });
    if let Some(script) = &proof.script {
        let values = [
            ("n", script.competent.into()),
            ("all", script.cars.into()),
            ("p", percent(script.p_true).into()),
            ("claims", percent(script.claims).into()),
        ];
        lines.push(words.say_with("prove-script", &values));
    }
    lines
}

fn looks_alike(job: &Job, alike: &Alike, words: &Locale) -> String {
    let faults: Vec<String> = alike
        .faults
        .iter()
        .map(|(fault, from, to)| {
            let number = |x: f64| words.number(x, if x.abs() < 10.0 { 2 } else { 0 });
            format!("{fault} {}–{}", number(*from), number(*to))
        })
        .collect();
    let name = unit(job, &alike.unit, words);
    match faults.is_empty() {
        true => format!("{name} {}", percent(alike.p)),
        false => format!("{name} {} ({})", percent(alike.p), faults.join(", ")),
    }
}

/// A unit by its short name as [`Planned::likeliest`] has it.
fn unit(job: &Job, id: &str, words: &Locale) -> String {
    let speech = Speech::new(words, job, Naming::Typed);
    match id {
        "-" => speech.say("told-sound"),
        "?" => speech.say("told-other"),
        id => job
            .car
            .units
            .iter()
            .position(|unit| unit.id == id)
            .map_or_else(|| id.to_owned(), |unit| speech.units(&[unit as u16])),
    }
}

/// A test of the plan in a line of a terminal.
#[must_use]
pub fn planned(job: &Job, planned: &Planned, words: &Locale) -> String {
    let values = [
        ("test", planned.test.as_str().into()),
        ("min", minutes(planned.minutes, words).into()),
        ("bits", fixed(planned.expected_bits, 2, words).into()),
        ("p", percent(planned.p_true).into()),
        ("unit", unit(job, &planned.likeliest.0, words).into()),
        ("best", percent(planned.likeliest.1).into()),
    ];
    words.say_with("prove-planned", &values)
}

/// A share that was counted, in whole percents.
fn counted(share: f64, words: &Locale) -> String {
    format!("{} %", words.number(100.0 * share, 0))
}

/// Minutes worked, and minutes waited if there are any: `3` or `3 + 30`.
fn minutes(minutes: Minutes, words: &Locale) -> String {
    let attended = fixed(minutes.attended, 1, words);
    match minutes.unattended {
        none if none < 0.05 => attended,
        waited => format!("{attended} + {}", fixed(waited, 0, words)),
    }
}
