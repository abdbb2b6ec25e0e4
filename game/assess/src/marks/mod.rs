//! Marks an attempt: `score/1`, first version (economy left out, weights rescaled).
//!
//! The marker sees the attempt and the job, nothing else. It first replays the attempt bit for bit; what
//! does not replay is not marked. `docs/marking.md` says why every rule is as it is.

mod chart;
mod parts;
pub mod sheet;
pub mod telling;
mod truth;
pub mod when;

use std::sync::Arc;

use sim_core::workshop::Gravity;

use crate::attempt::{Attempt, ENGINE};
use crate::belief::Belief;
use crate::course::{Course, Deed, describe};
use crate::evidence::{Arrivals, Followed, follow};
use crate::hypotheses::Hypotheses;
use crate::job::Job;
use crate::score;
use crate::script::{self, ScriptError};
use crate::session::{self, Begin, Session, SessionError};
use sheet::{BreachLine, MarkSheet, RecordLine};
use when::When;

/// Why an attempt could not be marked.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum MarkError {
    /// It is of another job, or does not replay to what it records: it was altered, or made by another
    /// version.
    #[error("the attempt cannot be marked: {0}")]
    DoesNotReplay(#[from] Box<SessionError>),
}

/// Everything that was computed about an attempt, before it becomes words.
pub(crate) struct Computed<'a> {
    pub(crate) job: &'a Job,
    pub(crate) course: &'a Course,
    pub(crate) hypotheses: &'a Hypotheses,
    pub(crate) followed: &'a Followed,
    pub(crate) reference: Option<Reached>,
}

/// What the reference attempt reaches in the same world.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Reached {
    /// Best probability of the true classes along it (it is followed no further than [`score::TAU`]).
    pub(crate) p_true: f64,
    /// Notes it took.
    pub(crate) notes: usize,
}

/// Marks an attempt at `job`. Takes some seconds to a minute: every hypothesis is simulated.
///
/// # Errors
/// When the attempt is of another job or does not replay to what it records (says where).
pub fn mark(attempt: &Attempt, job: &Job) -> Result<MarkSheet, MarkError> {
    session::replay(attempt, job).map_err(Box::new)?;
    let course = course_of(attempt, job);
    let mut sheet = frame(attempt, job, &course);
    if course.handed_back.is_none() {
        sheet.notices.insert(
            0,
            "Not finished: the car was not handed back, so nothing is marked and nothing about the fault \
             is told."
                .to_owned(),
        );
        return Ok(sheet);
    }
    let hypotheses = Hypotheses::of(&job.car, &job.kit);
    let arrivals = Arrivals::of(job, &hypotheses);
    let start = arrivals.complained(job, &hypotheses);
    let end = course.deeds.len();
    let followed = follow(job, &hypotheses, arrivals, start.clone(), &course, end, |_| false);
    let reached = truth::p_true(&hypotheses, &course, followed.belief_before(&course, course.lock()));
    // Who has reached τ has reached all that is asked, whatever the reference attempt would reach.
    let reference = match &job.reference {
        Some(text) if reached < score::TAU => match reference_course(attempt, job, text) {
            Ok(other) => Some(reachable(job, &hypotheses, &course, start, &other)),
            Err(error) => {
                sheet.notices.push(format!(
                    "The job's reference attempt stops on this car ({error}), so all of the evidence up to \
                     {:.0} % is asked. Its author should mend it.",
                    100.0 * score::TAU
                ));
                None
            }
        },
        _ => None,
    };
    if 0 < followed.set_aside {
        sheet.notices.push(format!(
            "{} of the {} cars that this attempt was compared with could not be computed to the end and were set \
             aside. The author of the pack should mend the car.",
            followed.set_aside,
            hypotheses.cells.len()
        ));
    }
    let computed = Computed { job, course: &course, hypotheses: &hypotheses, followed: &followed, reference };
    sheet.marks = Some(parts::marks(&computed));
    Ok(sheet)
}

/// How far the reference attempt gets on the same car.
fn reachable(
    job: &Job,
    hypotheses: &Hypotheses,
    course: &Course,
    start: Belief,
    reference: &Course,
) -> Reached {
    let p_true = |belief: &Belief| truth::p_true(hypotheses, course, belief);
    let enough = |belief: &Belief| score::TAU <= p_true(belief);
    let arrivals = Arrivals::of(job, hypotheses);
    let followed = follow(job, hypotheses, arrivals, start, reference, reference.lock(), enough);
    let best = followed.links.iter().map(|link| p_true(&link.belief)).fold(0.0, f64::max);
    Reached { p_true: best, notes: followed.links.len() }
}

/// The course of a recorded attempt in its own world.
fn course_of(attempt: &Attempt, job: &Job) -> Course {
    let deeds = attempt
        .steps
        .iter()
        .map(|step| Deed {
            action: step.action.clone(),
            start: step.start,
            end: step.end,
            refused: step.refused.is_some(),
        })
        .collect();
    Course::play(job, &session::truth(job, attempt.header.seed), deeds)
}

/// Plays the job's reference script in the world of `attempt`.
fn reference_course(attempt: &Attempt, job: &Job, text: &str) -> Result<Course, ScriptError> {
    let begin = Begin::rehearsal(attempt.header.seed);
    let mut session = Session::rehearse(Arc::new(job.clone()), &begin);
    script::play(&mut session, text, |_, _, _, _| {})?;
    Ok(course_of(&session.into_attempt(), job))
}

/// What stands on every sheet, finished or not.
fn frame(attempt: &Attempt, job: &Job, course: &Course) -> MarkSheet {
    let mut notices = vec![
        "The vehicle maker's data, local rules and licensed practice come before anything on this sheet: \
         it marks an exercise and is no service information."
            .to_owned(),
    ];
    if attempt.header.engine != ENGINE {
        notices.push(format!(
            "Made with version {} of the program and marked with version {ENGINE}; it replays alike.",
            attempt.header.engine
        ));
    }
    if job.time_limit_min < course.attended_min {
        notices.push(format!(
            "Minutes of work: {:.0}, allowed: {:.0}; time is not marked in this version.",
            course.attended_min, job.time_limit_min
        ));
    }
    let when = When::of(attempt);
    MarkSheet {
        scheme: score::SCHEME.to_owned(),
        engine: ENGINE.to_owned(),
        job: job.name(),
        title: job.title.clone(),
        car: job.car.name.clone(),
        job_digest: attempt.header.job_digest.clone(),
        seat: attempt.header.seat.clone(),
        seed: attempt.header.seed.to_string(),
        scripted: when.is_played(),
        when,
        attended_min: course.attended_min,
        unattended_min: course.unattended_min,
        time_limit_min: job.time_limit_min,
        marks: None,
        breaches: breaches(course),
        record: record(job, course),
        not_noted: not_noted(course),
        notices,
    }
}

fn breaches(course: &Course) -> Vec<BreachLine> {
    let line = |(deed, breach): &(usize, sim_core::workshop::Breach)| BreachLine {
        at_min: course.at_min(*deed),
        rule: breach.rule.clone(),
        gravity: breach.gravity,
        text: breach.text.clone(),
    };
    course.breaches.iter().map(line).collect()
}

pub(crate) fn count_breaches(course: &Course) -> score::Breaches {
    let of = |gravity| course.breaches.iter().filter(|(_, b)| b.gravity == gravity).count() as u32;
    score::Breaches { critical: of(Gravity::Critical), major: of(Gravity::Major), minor: of(Gravity::Minor) }
}

/// Every line of the car's record, with what is missing.
pub(crate) fn record(job: &Job, course: &Course) -> Vec<RecordLine> {
    job.car
        .record
        .iter()
        .map(|item| {
            let release = item.kind.is_release();
            let meant =
                |note: &&crate::course::Note| note.record.as_ref().is_some_and(|entry| entry.item == item.id);
            let right = |note: &&crate::course::Note| {
                note.worth != crate::course::Worth::Misread
                    && note.record.as_ref().is_some_and(|entry| entry.condition_met)
            };
            let within = |note: &&crate::course::Note| {
                note.record.as_ref().is_some_and(|entry| entry.within_limit != Some(false))
            };
            let after = |note: &&crate::course::Note| {
                course.last_change.is_none_or(|change| change < course.looked[note.looked].deed)
            };
            let notes: Vec<_> = course.notes.iter().filter(meant).collect();
            let filled = notes.iter().any(right);
            let passed = release.then(|| notes.iter().any(|n| right(n) && after(n) && within(n)));
            // The last note says best what is still missing.
            let unmet = notes.iter().rev().find_map(|note| note.record.as_ref()?.unmet);
            let unmet = unmet.map(|unmet| unmet.to_string());
            let why = if notes.is_empty() {
                "not noted"
            } else if !filled && notes.iter().all(|n| n.worth == crate::course::Worth::Misread) {
                "misread"
            } else if !filled {
                unmet.as_deref().unwrap_or("not the reading or not the condition the line asks for")
            } else if passed == Some(false) && !notes.iter().any(|n| right(n) && after(n)) {
                "done before the last joint was touched"
            } else if passed == Some(false) {
                "outside its limit"
            } else {
                ""
            };
            RecordLine {
                item: item.id.clone(),
                text: item.text.clone(),
                release,
                filled,
                passed,
                why: why.to_owned(),
            }
        })
        .collect()
}

/// What was read or sensed but never noted, each once, without values.
fn not_noted(course: &Course) -> Vec<String> {
    let mut list: Vec<String> = Vec::new();
    for (index, looked) in course.looked.iter().enumerate() {
        let noted = course.notes.iter().any(|note| {
            note.looked == index || course.looked[note.looked].reading.what == looked.reading.what
        });
        let words = describe(&looked.reading.what);
        if !noted && !list.contains(&words) {
            list.push(words);
        }
    }
    list
}
