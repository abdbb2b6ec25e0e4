//! F: minutes up to the finding, held against the reference plan's.
//!
//! What the reference plan would have taken counts with the lines of the car's record, which are asked for in every job
//! ([`crate::planner::par`]). Only who found the right thing, by evidence, has anything to be economical with. What comes
//! after the finding (repair, release checks) costs nothing here.

use super::Computed;
use super::score;
use crate::locale::{FluentValue, Speech};
use crate::pack::job::Job;
use crate::plan::cost::Minutes;
use crate::planner::par;

/// What a job may take; `None` where the pack gives economy no weight, or the job has no reference plan.
pub(super) fn par(job: &Job) -> Option<Minutes> {
    let tests = job.planned().filter(|_| 0.0 < job.weights.economy)?;
    Some(par::minutes(job, &tests))
}

/// Economy of an attempt.
#[derive(Clone, Copy, Debug)]
pub(super) struct Economy {
    /// The mark, 0 to 1.
    pub(super) share: f64,
    spent: Minutes,
    par: Minutes,
    /// Right finding, and enough evidence.
    counts: bool,
}

/// `None` where there is no par time. `e`: the mark for evidence.
pub(super) fn economy(c: &Computed<'_>, right_class: bool, e: f64) -> Option<Economy> {
    let par = c.par?;
    let whole = (c.course.attended_min, c.course.unattended_min);
    let (attended, unattended) = c.course.to_lock_min.unwrap_or(whole);
    let spent = Minutes { attended, unattended };
    let correctness = if right_class { 1.0 } else { 0.0 };
    let share = score::economy(par.weighed(), spent.weighed(), correctness, e);
    Some(Economy { share, spent, par, counts: right_class && score::E_FOR_ECONOMY <= e })
}

impl Economy {
    /// Why.
    pub(super) fn why(&self, s: &Speech<'_>) -> String {
        let whole = |n: f64| FluentValue::from(s.locale.number(n, 0));
        let values = [
            ("work", whole(self.spent.attended)),
            ("wait", whole(self.spent.unattended)),
            ("planwork", whole(self.par.attended)),
            ("planwait", whole(self.par.unattended)),
        ];
        let mut why = vec![s.say_with("told-economy", &values)];
        if !self.counts {
            why.push(s.say("told-economy-nothing"));
        }
        why.join(" ")
    }
}
