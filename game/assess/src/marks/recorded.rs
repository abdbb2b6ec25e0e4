//! An attempt that another version of the program made and that comes out otherwise today: marked from its recording.
//!
//! From the file come the actions with their ticks, refusals, readings, whether they were read right, what they filled in the
//! record, and breaches of safety. What no file holds comes from the job and from today's model, which is run along with the
//! recorded actions, each as long as it took then: scales, plugs and clamps, which units were outside their limits, the last
//! change, minutes. The sheet says which is which, because nothing of the first could be checked by doing it again.

use sim_core::Opened;

use super::deeds;
use super::sheet::Recording;
use crate::attempt::{Attempt, ENGINE};
use crate::locale::{FluentValue, Speech};
use crate::pack::job::Job;
use crate::play::course::{Course, Taking};
use crate::play::{self, Uncomputed};

/// The course of an attempt as it is recorded; it comes out otherwise today from action `differs_at` on.
///
/// # Errors
/// When today's model cannot go on along the recorded actions.
pub(super) fn course(
    attempt: &Attempt,
    job: &Job,
    differs_at: u32,
) -> Result<(Course, Recording), Uncomputed> {
    let mut workshop = Opened::of(job.setup(), play::truth(job, attempt.header.seed));
    let mut taking = Taking::new(&workshop);
    let mut refused_today = Vec::new();
    for (index, recorded) in attempt.steps.iter().enumerate() {
        if workshop.tick() < recorded.start {
            workshop.run_free_cut(recorded.start);
        }
        taking.before(&workshop);
        let done = recorded.refused.is_none();
        let today = done.then(|| workshop.replay(&recorded.action, recorded.end));
        if today.as_ref().is_some_and(|outcome| outcome.refused.is_some()) {
            refused_today.push(recorded.n);
        }
        taking.after_then(index, recorded, job, today.as_ref(), &workshop);
        play::computed(&workshop)?;
    }
    let course = taking.end(&workshop, deeds(attempt));
    Ok((course, Recording { engines: attempt.engines(), differs_at, refused_today }))
}

/// What the sheet says of it.
pub(super) fn notices(recording: &Recording, s: &Speech<'_>) -> Vec<String> {
    let values: [(&str, FluentValue<'_>); 3] = [
        ("made", recording.engines.join(", ").into()),
        ("now", ENGINE.into()),
        ("n", recording.differs_at.into()),
    ];
    let mut said =
        vec![s.say_with("told-recorded", &values), s.say("told-recorded-then"), s.say("told-recorded-today")];
    if !recording.refused_today.is_empty() {
        let list: Vec<String> = recording.refused_today.iter().map(u32::to_string).collect();
        said.push(s.say_with("told-recorded-refused", &[("list", list.join(", ").into())]));
    }
    said
}
