//! What would tell most now: the planner's choice in the midst of somebody's attempt.
//!
//! Belief and set-up are those of the attempt: what was noted is taken in, what hangs on the car need not be hung again. The
//! tests are tried in the cars that still matter, the likeliest first, until no more than [`LEFT_OUT`] is left; that is taken to
//! show just anything.
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

/// Share of the belief for which no cars are run.
const LEFT_OUT: f64 = 0.05;

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
    let mut likeliest: Vec<usize> = (0..glance.shares.len()).collect();
    likeliest.sort_by(|a, b| glance.shares[*b].total_cmp(&glance.shares[*a]).then(a.cmp(b)));
    let mut cars = vec![0; glance.cars.len()];
    // Sound cars are always there: the others are held against them.
    cars[0] = glance.cars[0];
    let mut left = 1.0;
    for h in likeliest {
        if left < LEFT_OUT {
            break;
        }
        cars[h] = glance.cars[h];
        left -= glance.shares[h];
    }
    let Some(trials) = Trials::in_cars(job, glance.hypotheses, &cars, &[], tried) else { return Ok(None) };
    let done = course.deeds.iter().map(|deed| (&deed.action, deed.end));
    let work = Rehearsal::after(job.setup(), done);
    let planner = Planner::midway(job, &trials, glance.table, glance.path, work);
    if planner.is_sure() {
        return Ok(Some(Advice::Enough));
    }
    let next = planner.next().map(|choice| job.tests[trials.tests[choice.trial].test].id.clone());
    Ok(Some(next.map_or(Advice::Nothing, Advice::Test)))
}
