//! What would tell most now: the planner's choice in the midst of somebody's attempt.
//!
//! Belief and set-up are those of the attempt: what was noted is taken in, what hangs on the car need not be hung again. The
//! tests are tried in the cars that still matter ([`LEAST`]); what else is possible is taken to show just anything.
//!
//! It is worked out from what the trainee has noted, never from what is hidden: of two cars in which the same was done and
//! noted, it says the same.

use super::next::Planner;
use super::trials::Trials;
use crate::attempt::Attempt;
use crate::attempt::hint_line::Advice;
use crate::infer::evidence::glance;
use crate::infer::hypotheses::Hypotheses;
use crate::marks;
use crate::marks::MarkError;
use crate::pack::job::Job;
use crate::plan::cost::Rehearsal;

/// A hypothesis with less than this gets no cars: it cannot change much what a test tells.
const LEAST: f64 = 0.01;

/// Works out a hint; takes some seconds. `tried` is told how many tests there are and how many were tried, and says whether to go
/// on; `None` when it was stopped.
///
/// # Errors
/// When the attempt does not replay to what it records.
pub fn advice(
    attempt: &Attempt,
    job: &Job,
    tried: impl FnMut(usize, usize) -> bool,
) -> Result<Option<Advice>, MarkError> {
    let course = marks::course(attempt, job)?;
    let glance = glance(job, &Hypotheses::of(&job.car), &course);
    // Sound cars are always there: the others are held against them.
    let cars = glance.cars.iter().zip(&glance.shares).enumerate();
    let cars: Vec<usize> =
        cars.map(|(h, (cars, share))| if h == 0 || LEAST <= *share { *cars } else { 0 }).collect();
    let Some(trials) = Trials::in_cars(job, glance.hypotheses, &cars, &[], tried) else { return Ok(None) };
    let done = course.deeds.iter().map(|deed| (&deed.action, deed.end));
    let work = Rehearsal::after(job.setup(), done);
    let planner = Planner::midway(job, &trials, glance.table, glance.belief, work);
    if planner.is_sure() {
        return Ok(Some(Advice::Enough));
    }
    let next = planner.next().map(|choice| job.tests[trials.tests[choice.trial].test].id.clone());
    Ok(Some(next.map_or(Advice::Nothing, Advice::Test)))
}
