//! T: time that the job does not give. Within it nothing is lost; there is nothing to earn.
//!
//! Economy (F) will say how much shorter it could have been done. This is the other end: a car is not kept for weeks, and
//! nobody works on it for days.

use super::score::{self, Time};
use super::sheet::PartLine;
use crate::locale::{FluentValue, Speech};
use crate::pack::job::{Job, Symptom};
use crate::play::course::Course;

/// Waiting that every job gives beside its nights, min: some long rests of a pump, a hold.
const WAITING_MIN: f64 = 240.0;
/// A night, min.
const NIGHT_MIN: f64 = 720.0;

/// Nights that the job gives: one for whoever wants to see it in the morning; a complaint of the morning needs one to see it
/// and one to see it cured.
fn nights(job: &Job) -> u32 {
    match job.symptom {
        Symptom::HardPedalAfterNight { .. } => 2,
        Symptom::ShortRest { .. } | Symptom::HumsKeyOff | Symptom::LongRun { .. } => 1,
    }
}

/// Points off for time beyond what the job gives, 0 or more.
pub(super) fn overrun(job: &Job, course: &Course) -> f64 {
    score::overrun(time(job, course))
}

fn time(job: &Job, course: &Course) -> Time {
    Time {
        attended_min: course.attended_min,
        limit_min: job.time_limit_min,
        unattended_min: course.unattended_min,
        waiting_min: WAITING_MIN + NIGHT_MIN * f64::from(nights(job)),
    }
}

/// The line on the sheet; `None` when nothing is lost.
pub(super) fn line(job: &Job, course: &Course, s: &Speech<'_>) -> Option<PartLine> {
    let time = time(job, course);
    let points = score::overrun(time);
    if points <= 0.0 {
        return None;
    }
    let whole = |n: f64| FluentValue::from(s.locale.number(n, 0));
    let mut why = Vec::new();
    if time.limit_min < time.attended_min {
        let values = [
            ("n", whole(time.attended_min)),
            ("all", whole(time.limit_min)),
            ("off", whole(score::TIME_POINTS)),
        ];
        why.push(s.say_with("told-worked-long", &values));
    }
    if time.waiting_min < time.unattended_min {
        let values = [
            ("n", whole(time.unattended_min / 60.0)),
            ("all", whole(time.waiting_min / 60.0)),
            ("nights", nights(job).into()),
            ("off", whole(score::TIME_POINTS)),
        ];
        why.push(s.say_with("told-waited-long", &values));
    }
    Some(PartLine {
        letter: "T".to_owned(),
        name: s.say("told-part-T"),
        value: 0.0,
        weight: 0.0,
        points: -points,
        why: why.join(" "),
        fine: String::new(),
    })
}
