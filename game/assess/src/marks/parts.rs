//! The parts of the mark, each with the sentence that says why.

use super::chart::evidence_sheet;
use super::sheet::{
    Condition, EvidenceSheet, FindingLine, Marks, NoteWorth, PartLine, PlanLine, ReadingLine, RecordLine,
    SwapLine,
};
use super::truth::p_true;
use super::{Computed, count_breaches, economy, hints, record, telling, time, words};
use crate::infer::belief::Belief;
use crate::infer::hypotheses::Class;
use crate::locale::{FluentValue, Speech, test_name};
use crate::marks::score::{self, PartUsed, Parts, Weights};
use crate::pack::job::{PlanStep, ReferencePlan};
use crate::play::course::Finding;

/// So probable *other* must be for the sheet to say that the readings fit nothing that is known.
const FITS_NOTHING: f64 = 0.5;

/// All marks of a finished attempt, in the words of `s`.
pub(crate) fn marks(c: &Computed<'_>, s: &Speech<'_>) -> Marks {
    let lock = c.course.lock();
    let evidence = evidence_sheet(c, lock, s);
    let (findings, v, right_class, v_why) = verdict(c, s);
    let (e, e_why, e_fine) = evidence_part(c, lock, &evidence, s);
    let (swaps, r, r_why) = parts_part(c, s);
    let (q, q_why) = release_part(c, s);
    let (d, d_why) = record_part(c, s);
    let breaches = count_breaches(c.course);
    let economy = economy::economy(c, right_class, e);
    let parts = Parts { v, e, f: economy.map_or(0.0, |economy| economy.share), r, q, d };
    let weights = weights(c, economy.is_some());
    let points = weights.points();
    let total = score::total(parts, weights, breaches, c.job.cut_score);
    let total = (total - time::overrun(c.job, c.course) - score::hints(c.hints.len())).max(0.0);
    let line = |letter: &str, value: f64, weight: f64, why: String| PartLine {
        letter: letter.to_owned(),
        name: s.say(&format!("told-part-{letter}")),
        value,
        weight,
        points: value * weight,
        why,
        fine: String::new(),
    };
    let evidence_line = PartLine { fine: e_fine, ..line("E", e, points.e, e_why) };
    let condition = |asked: &str, met: bool| Condition { asked: s.say(&format!("condition-{asked}")), met };
    let least = |asked: &str, least: f64, met: bool| {
        let n = words::least(s, least);
        Condition { asked: s.say_with(&format!("condition-{asked}-at-least"), &[("n", n.into())]), met }
    };
    Marks {
        competent: score::competent(parts, right_class, breaches, total, c.job.cut_score),
        total,
        cut: c.job.cut_score,
        parts: [line("V", v, points.v, v_why), evidence_line]
            .into_iter()
            .chain(economy.map(|economy| line("F", economy.share, points.f, economy.why(s))))
            .chain([
                line("R", r, points.r, r_why),
                line("Q", q, points.q, q_why),
                line("D", d, points.d, d_why),
            ])
            .chain(time::line(c.job, c.course, s))
            .chain(hints::line(c.job, c.hints, s))
            .collect(),
        deducted: breaches.points(),
        safety: safety_sentence(breaches, c.job.cut_score, s),
        conditions: vec![
            condition("no-critical-breach-of-safety", breaches.critical == 0),
            condition("right-finding-given-before-the-first-repair", right_class),
            least("evidence", score::E_PASS, score::E_PASS <= e),
            least("parts", score::R_PASS, score::R_PASS <= r),
            least("release", score::Q_PASS, score::Q_PASS <= q),
            least("total", c.job.cut_score, c.job.cut_score <= total),
        ],
        truth: each_unit(&c.course.faulty_at_start, s),
        findings,
        swaps,
        evidence,
        trace: c.course.trace.clone(),
        debrief: debrief(c, s),
        plan: plan(c, s),
    }
}

/// The pack's weights; economy is left out where there is no reference plan.
fn weights(c: &Computed<'_>, economy: bool) -> Weights {
    let w = c.job.weights;
    let f = if economy { w.economy } else { 0.0 };
    Weights { v: w.verdict, e: w.evidence, f, r: w.parts, q: w.release, d: w.record }
}

/// The reference plan, test by test.
fn plan(c: &Computed<'_>, s: &Speech<'_>) -> Vec<PlanLine> {
    let ReferencePlan::Tests(steps) = &c.job.plan else { return Vec::new() };
    let line = |step: &PlanStep| {
        let test = c.job.tests.get(step.test)?;
        let name = test_name(c.job, &test.id, s.locale);
        let &PlanStep { worked_min, waited_min, p_true, .. } = step;
        Some(PlanLine { test: name, worked_min, waited_min, p_true })
    };
    steps.iter().filter_map(line).collect()
}

/// Units in words, one by one.
fn each_unit(units: &[u16], s: &Speech<'_>) -> Vec<String> {
    units.iter().map(|unit| s.units(&[*unit])).collect()
}

/// What it was, as the pack tells it; paragraphs as the pack has them.
fn debrief(c: &Computed<'_>, s: &Speech<'_>) -> String {
    let mut said = s.debrief().into_iter();
    let lines = c.job.debrief.lines().map(|line| if line.is_empty() { None } else { said.next() });
    let mut text = lines.map(Option::unwrap_or_default).collect::<Vec<_>>().join("\n");
    if c.job.debrief.ends_with('\n') {
        text.push('\n');
    }
    text
}

/// V with the findings, and whether the locked finding names the right class.
fn verdict(c: &Computed<'_>, s: &Speech<'_>) -> (Vec<FindingLine>, f64, bool, String) {
    let truth = &c.course.faulty_at_start;
    let first_repair = c.course.first_repair.unwrap_or(usize::MAX);
    let earns = |index: usize, finding: &Finding| {
        let full = index == 0 && finding.deed < first_repair;
        let certainty = certainty(c, finding);
        // With no certainty at all nothing is named: the car stays and is referred on.
        let z = if certainty <= 0.0 { 0.0 } else { score::correctness(&finding.units, truth) };
        let v = score::verdict(certainty, z);
        (full, z, if full { v } else { 0.5 * v })
    };
    let lines: Vec<FindingLine> = c
        .course
        .findings
        .iter()
        .enumerate()
        .map(|(index, finding)| {
            let (counts_in_full, correctness, earns) = earns(index, finding);
            FindingLine {
                at_min: c.course.at_min(finding.deed),
                units: each_unit(&finding.units, s),
                certainty: certainty(c, finding),
                counts_in_full,
                correctness,
                earns,
            }
        })
        .collect();
    let best = (0..lines.len()).max_by(|&a, &b| lines[a].earns.total_cmp(&lines[b].earns));
    let Some(best) = best else {
        return (lines, 0.0, false, s.say("told-no-finding"));
    };
    let first = &lines[0];
    let right = first.counts_in_full && first.certainty > 0.0 && first.correctness >= 1.0;
    let mut why = vec![if first.certainty <= 0.0 {
        s.say("told-referred")
    } else {
        let bet = score::Bet::of_certainty(first.certainty);
        let key = if first.correctness >= 1.0 {
            "told-verdict-right"
        } else if first.correctness > 0.0 {
            "told-verdict-part"
        } else {
            "told-verdict-wrong"
        };
        let values: [(&str, FluentValue<'_>); 5] = [
            ("units", s.units(&c.course.findings[0].units).into()),
            ("truth", s.units(truth).into()),
            ("sure", words::certainty(s, first.certainty).into()),
            ("right", words::share(s, bet.right).into()),
            ("wrong", words::share(s, bet.wrong).into()),
        ];
        s.say_with(key, &values)
    }];
    if let Some(fixed) = c.job.certainty.filter(|_| first.certainty > 0.0) {
        why.push(s.say_with("told-sure-fixed", &[("sure", words::certainty(s, fixed).into())]));
    }
    if first.certainty > 0.0 && !first.counts_in_full {
        why.push(s.say("told-after-repair"));
    }
    let later = &lines[best];
    if first.earns < later.earns {
        let values: [(&str, FluentValue<'_>); 3] = [
            ("units", s.units(&c.course.findings[best].units).into()),
            ("n", words::certainty(s, later.certainty).into()),
            ("right", words::share(s, later.earns).into()),
        ];
        why.push(s.say_with("told-later-finding", &values));
    }
    let v = later.earns;
    (lines, v, right, why.join(" "))
}

/// How sure a finding is taken to be: as it was stated, or as the school fixes it; *not found* stays what it is.
fn certainty(c: &Computed<'_>, finding: &Finding) -> f64 {
    let stated = finding.certainty;
    if stated <= 0.0 { stated } else { c.job.certainty.unwrap_or(stated) }
}

/// E: what the notes before the finding were worth, against what could be reached here; why, and the bits
/// behind it.
fn evidence_part(
    c: &Computed<'_>,
    lock: usize,
    sheet: &EvidenceSheet,
    s: &Speech<'_>,
) -> (f64, String, String) {
    let prior = p_true(&c.followed.hypotheses, c.course, &c.followed.start);
    let reached = p_true(&c.followed.hypotheses, c.course, c.followed.belief_before(c.course, lock));
    let reachable = c.reference.map_or(score::TAU, |r| r.p_true);
    let other = p_other(c, c.followed.belief_before(c.course, lock));
    let each = |p: f64| score::evidence(prior, p, reachable);
    let drawn: Vec<f64> = c.fair.before(lock).map(each).collect();
    let e = drawn.iter().sum::<f64>() / (drawn.len() as f64).max(1.0);
    let goal = reachable.min(score::TAU);
    let moved: Vec<(&ReadingLine, f64)> = sheet
        .readings
        .iter()
        .filter_map(|line| match &line.worth {
            NoteWorth::Counts { for_finding: true, toward_truth, .. } => Some((line, *toward_truth)),
            _ => None,
        })
        .collect();
    let percent = |p: f64| FluentValue::from(words::percent(s, p));
    let units = FluentValue::from(s.units(&c.course.faulty_at_start));
    if moved.is_empty() {
        let why = s.say_with("told-no-evidence", &[("units", units), ("p", percent(prior))]);
        return (e, why, String::new());
    }
    let asked = match c.reference {
        Some(r) if reachable < score::TAU && r.planned => "told-asked-plan",
        Some(_) if reachable < score::TAU => "told-asked-reference",
        _ => "told-asked",
    };
    let told = [("units", units), ("p", percent(prior)), ("reached", percent(reached))];
    let mut why = vec![s.say_with("told-evidence", &told), s.say_with(asked, &[("goal", percent(goal))])];
    if 0.005 <= (e - each(reached)).abs() {
        let mean = c.fair.mean_before(lock);
        why.push(
            s.say_with("told-evidence-fair", &[("p", percent(mean)), ("share", words::share(s, e).into())]),
        );
    }
    if FITS_NOTHING <= other {
        why.push(s.say_with("told-fits-nothing", &[("p", percent(other))]));
    }
    why.extend(telling::sentences(sheet, s));
    let worst = moved.iter().min_by(|a, b| a.1.total_cmp(&b.1).then(a.0.number.cmp(&b.0.number)));
    if let Some((line, _)) = worst.filter(|(_, bits)| *bits <= -0.5) {
        let values = [("n", line.number.into()), ("looked", telling::looked(line, s).into())];
        why.push(s.say_with("told-away", &values));
    }
    let each: Vec<String> = moved
        .iter()
        .filter(|(_, bits)| 0.05 <= bits.abs())
        .map(|(line, bits)| {
            let values = [("n", line.number.into()), ("bits", words::signed(s, *bits).into())];
            s.say_with("told-fine-one", &values)
        })
        .collect();
    let bits = words::fixed(s, score::bits(prior, reached), 1);
    let all = words::fixed(s, score::bits(prior, goal), 1);
    let key = if each.is_empty() { "told-fine" } else { "told-fine-each" };
    let values: [(&str, FluentValue<'_>); 4] = [
        ("bits", bits.into()),
        ("all", all.into()),
        ("goal", percent(goal)),
        ("list", each.join("; ").into()),
    ];
    (e, why.join(" "), s.say_with(key, &values))
}

/// How probable it is that something is wrong which is not in the catalogue.
fn p_other(c: &Computed<'_>, belief: &Belief) -> f64 {
    let is_other = |class: usize| c.followed.hypotheses.classes[class] == Class::Other;
    belief.mass_where(|cell| is_other(belief.class_of()[cell]))
}

/// R with the swaps.
fn parts_part(c: &Computed<'_>, s: &Speech<'_>) -> (Vec<SwapLine>, f64, String) {
    let mut used = Vec::new();
    let mut lines = Vec::new();
    for (index, swap) in c.course.swaps.iter().enumerate() {
        let belief = c.followed.belief_before(c.course, swap.deed);
        let p_faulty = belief.mean_of(&c.followed.swapped_faulty[index]);
        used.push(PartUsed { price: swap.price, was_sound: swap.was_sound, p_faulty });
        lines.push(SwapLine {
            at_min: c.course.at_min(swap.deed),
            unit: s.units(&[swap.unit]),
            price: swap.price,
            was_sound: swap.was_sound,
            p_faulty,
        });
    }
    let dearest = c.job.car.units.iter().map(|unit| unit.price).fold(0.0, f64::max);
    let r = score::parts(&used, dearest);
    let wasted: Vec<String> = lines
        .iter()
        .filter(|line| line.was_sound)
        .map(|line| {
            let values: [(&str, FluentValue<'_>); 3] = [
                ("unit", line.unit.as_str().into()),
                ("n", s.locale.number(line.price, 0).into()),
                ("p", words::percent(s, line.p_faulty).into()),
            ];
            s.say_with("told-part-wasted", &values)
        })
        .collect();
    let why = if lines.is_empty() {
        s.say("told-no-part")
    } else if wasted.is_empty() {
        s.say("told-parts-right")
    } else {
        let values = [
            ("list", wasted.join("; ").into()),
            ("n", s.locale.number(dearest, 0).into()),
            ("least", s.locale.number(score::LEAST_WASTE * dearest, 0).into()),
        ];
        s.say_with("told-parts-wasted", &values)
    };
    (lines, r, why)
}

/// Q: release checks and the proof that all is well.
fn release_part(c: &Computed<'_>, s: &Speech<'_>) -> (f64, String) {
    let checks: Vec<_> = record(c.job, c.course, s).into_iter().filter(|line| line.release).collect();
    let passed = checks.iter().filter(|line| line.passed == Some(true)).count();
    let share = if checks.is_empty() { 1.0 } else { passed as f64 / checks.len() as f64 };
    let before = c.followed.start.mean_of(&c.followed.well_at_end);
    let after = c.followed.end().mean_of(&c.followed.well_at_end);
    let proof = score::share_of_way(before, after, score::TAU_RELEASE);
    let stays = c.course.findings.last().is_some_and(|finding| finding.certainty <= 0.0);
    let back_faulty = !stays && !c.course.faulty_at_end.is_empty();
    let q = score::release(share, proof, back_faulty);
    if back_faulty {
        let still = s.units(&c.course.faulty_at_end);
        return (q, s.say_with("told-back-faulty", &[("units", still.into())]));
    }
    let missing: Vec<_> = checks.iter().filter(|line| line.passed != Some(true)).collect();
    let key = if missing.is_empty() { "told-checks" } else { "told-checks-missing" };
    let values: [(&str, FluentValue<'_>); 6] = [
        ("n", passed.into()),
        ("all", checks.len().into()),
        ("lines", lines_with_reasons(&missing, s).into()),
        ("p", words::percent(s, after).into()),
        ("goal", words::percent(s, score::TAU_RELEASE).into()),
        ("before", words::percent(s, before).into()),
    ];
    (q, s.say_with(key, &values))
}

/// Lines of the record, each with what it lacks in brackets.
fn lines_with_reasons(lines: &[&RecordLine], s: &Speech<'_>) -> String {
    let of = |line: &&RecordLine| format!("{} ({})", s.record_short(&line.item), line.why);
    lines.iter().map(of).collect::<Vec<_>>().join(", ")
}

/// D: the record.
fn record_part(c: &Computed<'_>, s: &Speech<'_>) -> (f64, String) {
    let lines = record(c.job, c.course, s);
    let filled = lines.iter().filter(|line| line.filled).count();
    let d = if lines.is_empty() { 1.0 } else { filled as f64 / lines.len() as f64 };
    let missing: Vec<_> = lines.iter().filter(|line| !line.filled).collect();
    if missing.is_empty() {
        return (d, s.say("told-record-full"));
    }
    let values: [(&str, FluentValue<'_>); 3] = [
        ("n", filled.into()),
        ("all", lines.len().into()),
        ("lines", lines_with_reasons(&missing, s).into()),
    ];
    (d, s.say_with("told-record-missing", &values))
}

fn safety_sentence(b: score::Breaches, cut: f64, s: &Speech<'_>) -> String {
    if b == score::Breaches::default() {
        return s.say("told-safe");
    }
    let key = if 0 < b.critical { "told-unsafe-capped" } else { "told-unsafe" };
    let values: [(&str, FluentValue<'_>); 5] = [
        ("critical", b.critical.into()),
        ("major", b.major.into()),
        ("minor", b.minor.into()),
        ("n", s.locale.number(b.points(), 0).into()),
        ("cap", s.locale.number(score::just_under(cut), 1).into()),
    ];
    s.say_with(key, &values)
}
