//! The parts of the mark, each with the sentence that says why.

use super::chart::evidence_sheet;
use super::sheet::{
    Condition, EvidenceSheet, FindingLine, Marks, NoteWorth, PartLine, ReadingLine, SwapLine,
};
use super::truth::p_true;
use super::{Computed, count_breaches, record, telling};
use crate::course::Finding;
use crate::report::{fixed, signed};
use crate::score::{self, PartUsed, Parts, Weights};

/// All marks of a finished attempt.
pub(crate) fn marks(c: &Computed<'_>) -> Marks {
    let lock = c.course.lock();
    let evidence = evidence_sheet(c, lock);
    let (findings, v, right_class, v_why) = verdict(c);
    let (e, e_why, e_fine) = evidence_part(c, lock, &evidence);
    let (swaps, r, r_why) = parts_part(c);
    let (q, q_why) = release_part(c);
    let (d, d_why) = record_part(c);
    let breaches = count_breaches(c.course);
    let parts = Parts { v, e, f: 0.0, r, q, d };
    let weights = weights(c);
    let points = weights.points();
    let total = score::total(parts, weights, breaches, c.job.cut_score);
    let line = |letter: &str, name: &str, value: f64, weight: f64, why: String| PartLine {
        letter: letter.to_owned(),
        name: name.to_owned(),
        value,
        weight,
        points: value * weight,
        why,
        fine: String::new(),
    };
    let evidence_line = PartLine { fine: e_fine, ..line("E", "evidence", e, points.e, e_why) };
    let condition = |asked: String, met: bool| Condition { asked, met };
    Marks {
        competent: score::competent(parts, right_class, breaches, total, c.job.cut_score),
        total,
        cut: c.job.cut_score,
        parts: vec![
            line("V", "verdict", v, points.v, v_why),
            evidence_line,
            line("R", "parts", r, points.r, r_why),
            line("Q", "release", q, points.q, q_why),
            line("D", "record", d, points.d, d_why),
        ],
        deducted: breaches.points(),
        safety: safety_sentence(breaches, c.job.cut_score),
        conditions: vec![
            condition("no critical breach of safety".to_owned(), breaches.critical == 0),
            condition("right finding, given before the first repair".to_owned(), right_class),
            condition(format!("evidence at least {}", score::E_PASS), score::E_PASS <= e),
            condition(format!("parts at least {}", score::R_PASS), score::R_PASS <= r),
            condition(format!("release at least {}", score::Q_PASS), score::Q_PASS <= q),
            condition(format!("total at least {}", c.job.cut_score), c.job.cut_score <= total),
        ],
        truth: units_in_words(c, &c.course.faulty_at_start),
        findings,
        swaps,
        evidence,
        trace: c.course.trace.clone(),
        debrief: c.job.debrief.clone(),
    }
}

/// The pack's weights; economy is left out until there is a planner.
fn weights(c: &Computed<'_>) -> Weights {
    let w = c.job.weights;
    Weights { v: w.verdict, e: w.evidence, f: 0.0, r: w.parts, q: w.release, d: w.record }
}

fn units_in_words(c: &Computed<'_>, units: &[u16]) -> Vec<String> {
    units.iter().map(|&unit| c.job.car.units[usize::from(unit)].name.clone()).collect()
}

/// "the pump and the relay", or that nothing is wrong.
fn list(names: &[String]) -> String {
    match names {
        [] => "everything inside its limits".to_owned(),
        [one] => one.clone(),
        [head @ .., last] => format!("{} and {last}", head.join(", ")),
    }
}

fn percent(p: f64) -> String {
    if p < 0.001 {
        "under 0.1 %".to_owned()
    } else if p < 0.1 {
        format!("{:.1} %", 100.0 * p)
    } else if 0.999 < p {
        "over 99.9 %".to_owned()
    } else {
        format!("{:.0} %", 100.0 * p)
    }
}

/// A share of a part's points; less than nothing has a minus that is one.
fn share(v: f64) -> String {
    format!("{}{:.1} %", if v < 0.0 { "−" } else { "" }, 100.0 * v.abs())
}

/// V with the findings, and whether the locked finding names the right class.
fn verdict(c: &Computed<'_>) -> (Vec<FindingLine>, f64, bool, String) {
    let truth = &c.course.faulty_at_start;
    let first_repair = c.course.first_repair.unwrap_or(usize::MAX);
    let earns = |index: usize, finding: &Finding| {
        let full = index == 0 && finding.deed < first_repair;
        // With no certainty at all nothing is named: the car stays and is referred on.
        let z = if finding.certainty <= 0.0 { 0.0 } else { score::correctness(&finding.units, truth) };
        let v = score::verdict(finding.certainty, z);
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
                units: units_in_words(c, &finding.units),
                certainty: finding.certainty,
                counts_in_full,
                correctness,
                earns,
            }
        })
        .collect();
    let Some(best) = lines.iter().max_by(|a, b| a.earns.total_cmp(&b.earns)) else {
        return (lines, 0.0, false, "No finding was given, so there is no verdict.".to_owned());
    };
    let first = &lines[0];
    let right = first.counts_in_full && first.certainty > 0.0 && first.correctness >= 1.0;
    let late = if first.counts_in_full { "" } else { " It came after the first repair and counts half." };
    let mut why = if first.certainty <= 0.0 {
        "You said: not found, refer the car on. That earns nothing and costs nothing.".to_owned()
    } else {
        let judged = if first.correctness >= 1.0 {
            "and that is right".to_owned()
        } else if first.correctness > 0.0 {
            format!("of which only part is right: it was {}", list(&units_in_words(c, truth)))
        } else {
            format!("but it was {}", list(&units_in_words(c, truth)))
        };
        let bet = score::Bet::of_certainty(first.certainty);
        format!(
            "You said “{}” with certainty {:.2}, {judged}. At that certainty a right finding earns {} of these \
             points, and a wrong one {}.{late}",
            list(&first.units),
            first.certainty,
            share(bet.right),
            share(bet.wrong)
        )
    };
    if first.earns < best.earns {
        why.push_str(&format!(
            " A later finding, “{}” with {:.2}, counts half and earns {}: that is taken.",
            list(&best.units),
            best.certainty,
            share(best.earns)
        ));
    }
    let v = best.earns;
    (lines, v, right, why)
}

/// E: what the notes before the finding were worth, against what could be reached here; why, and the bits
/// behind it.
fn evidence_part(c: &Computed<'_>, lock: usize, sheet: &EvidenceSheet) -> (f64, String, String) {
    let prior = p_true(c.hypotheses, c.course, &c.followed.start);
    let reached = p_true(c.hypotheses, c.course, c.followed.belief_before(c.course, lock));
    let reachable = c.reference.map_or(score::TAU, |r| r.p_true);
    let e = score::evidence(prior, reached, reachable);
    let goal = reachable.min(score::TAU);
    let moved: Vec<(&ReadingLine, f64)> = sheet
        .readings
        .iter()
        .filter_map(|line| match &line.worth {
            NoteWorth::Counts { for_finding: true, toward_truth, .. } => Some((line, *toward_truth)),
            _ => None,
        })
        .collect();
    let truth = list(&units_in_words(c, &c.course.faulty_at_start));
    if moved.is_empty() {
        let why = format!(
            "Nothing was noted before the finding or the first repair, so only the complaint speaks for it: on \
             that alone “{truth}” has {}.",
            percent(prior)
        );
        return (e, why, String::new());
    }
    let asked = match c.reference {
        Some(_) if reachable < score::TAU => {
            "are asked, which is what the reference attempt reaches on this very car"
        }
        _ => "are asked, and no more",
    };
    let mut why = format!(
        "On the complaint alone “{truth}” had {}; what you noted before the finding brought it to {}. {} {asked}.",
        percent(prior),
        percent(reached),
        percent(goal)
    );
    for sentence in telling::sentences(sheet) {
        why.push(' ');
        why.push_str(&sentence);
    }
    let worst = moved.iter().min_by(|a, b| a.1.total_cmp(&b.1).then(a.0.number.cmp(&b.0.number)));
    if let Some((line, _)) = worst.filter(|(_, bits)| *bits <= -0.5) {
        why.push_str(&format!(
            " Reading {} ({}) pointed away from what it was.",
            line.number,
            telling::looked(line)
        ));
    }
    let each: Vec<String> = moved
        .iter()
        .filter(|(_, bits)| 0.05 <= bits.abs())
        .map(|(line, bits)| format!("reading {} {}", line.number, signed(*bits)))
        .collect();
    let mut fine = format!(
        "In bits: {} of the {:.1} that lead to {}",
        fixed(score::bits(prior, reached), 1),
        score::bits(prior, goal),
        percent(goal)
    );
    if !each.is_empty() {
        fine.push_str(&format!("; {}", each.join("; ")));
    }
    fine.push('.');
    (e, why, fine)
}

/// R with the swaps.
fn parts_part(c: &Computed<'_>) -> (Vec<SwapLine>, f64, String) {
    let mut used = Vec::new();
    let mut lines = Vec::new();
    for (index, swap) in c.course.swaps.iter().enumerate() {
        let belief = c.followed.belief_before(c.course, swap.deed);
        let p_faulty = belief.mass_where(|cell| c.followed.swapped_faulty[cell].get(index) == Some(&true));
        used.push(PartUsed { price: swap.price, was_sound: swap.was_sound, p_faulty });
        lines.push(SwapLine {
            at_min: c.course.at_min(swap.deed),
            unit: c.job.car.units[usize::from(swap.unit)].name.clone(),
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
            format!(
                "{} for {:.0} was inside its limits, and your notes until then made it {} likely that it was not",
                line.unit,
                line.price,
                percent(line.p_faulty)
            )
        })
        .collect();
    let why = if lines.is_empty() {
        "No part was replaced.".to_owned()
    } else if wasted.is_empty() {
        "Every part taken out was outside its limits.".to_owned()
    } else {
        format!("{}. The dearest part of the car costs {dearest:.0}.", wasted.join("; "))
    };
    (lines, r, why)
}

/// Q: release checks and the proof that all is well.
fn release_part(c: &Computed<'_>) -> (f64, String) {
    let checks: Vec<_> = record(c.job, c.course).into_iter().filter(|line| line.release).collect();
    let passed = checks.iter().filter(|line| line.passed == Some(true)).count();
    let share = if checks.is_empty() { 1.0 } else { passed as f64 / checks.len() as f64 };
    let well = |cell: usize| c.followed.well_at_end[cell];
    let before = c.followed.start.mass_where(well);
    let after = c.followed.end().mass_where(well);
    let proof = score::share_of_way(before, after, score::TAU_RELEASE);
    let stays = c.course.findings.last().is_some_and(|finding| finding.certainty <= 0.0);
    let back_faulty = !stays && !c.course.faulty_at_end.is_empty();
    let q = score::release(share, proof, back_faulty);
    if back_faulty {
        let still = list(&units_in_words(c, &c.course.faulty_at_end));
        let why = format!(
            "The car went back with a fault in it: {still}. That earns nothing for the release, whatever was \
             checked, and the job is not passed; the other parts keep their points."
        );
        return (q, why);
    }
    let missing: Vec<String> = checks
        .iter()
        .filter(|line| line.passed != Some(true))
        .map(|line| format!("{} ({})", line.item, line.why))
        .collect();
    let mut why = format!(
        "Release checks done after the last change and inside their limits: {passed} of {}",
        checks.len()
    );
    if !missing.is_empty() {
        why.push_str(&format!("; missing: {}", missing.join(", ")));
    }
    why.push_str(&format!(
        ". All notes together make it {} likely that the car is now well ({} is asked; on the complaint \
         alone what was done would have cured it with {}).",
        percent(after),
        percent(score::TAU_RELEASE),
        percent(before)
    ));
    (q, why)
}

/// D: the record.
fn record_part(c: &Computed<'_>) -> (f64, String) {
    let lines = record(c.job, c.course);
    let filled = lines.iter().filter(|line| line.filled).count();
    let d = if lines.is_empty() { 1.0 } else { filled as f64 / lines.len() as f64 };
    let missing: Vec<String> = lines
        .iter()
        .filter(|line| !line.filled)
        .map(|line| format!("{} ({})", line.item, line.why))
        .collect();
    let why = if missing.is_empty() {
        "Every line of the record is filled, with value, unit and condition.".to_owned()
    } else {
        format!(
            "Lines of the record that are filled: {filled} of {}; missing: {}.",
            lines.len(),
            missing.join(", ")
        )
    };
    (d, why)
}

fn safety_sentence(b: score::Breaches, cut: f64) -> String {
    if b == score::Breaches::default() {
        return "No breach of safety was seen.".to_owned();
    }
    let mut text = format!(
        "Breaches of safety: {} critical, {} major, {} minor; {:.0} points off",
        b.critical,
        b.major,
        b.minor,
        b.points()
    );
    if 0 < b.critical {
        text.push_str(&format!(
            ", and a critical breach caps the total at {:.1}: not yet competent",
            score::just_under(cut)
        ));
    }
    text.push('.');
    text
}
