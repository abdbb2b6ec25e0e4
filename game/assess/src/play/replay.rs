//! An attempt done again: tick, shown value and state digest are compared, bit for bit.

use sim_core::Opened;
use sim_core::action::Action;
use sim_core::units::Tick;
use sim_core::workshop::{Outcome, Workshop};

use super::begin::opened;
use super::error::{Difference, Differing, SessionError, computed};
use crate::attempt::{Attempt, Breached, ENGINE, Header, Refused, StateDigest, Step, limits};
use crate::pack::job::{AfterHandBack, Job};
use crate::words;

/// Whether an attempt may be carried on or replayed with `job`.
pub(super) fn check_job(header: &Header, job: &Job) -> Result<(), SessionError> {
    if header.job != job.name() {
        return Err(SessionError::OtherJob { attempt: header.job.clone(), job: job.name() });
    }
    if !job.is_of(&header.job_digest) {
        let found = hex::encode(job.digest);
        return Err(SessionError::JobChanged { job: job.name(), found, expected: header.job_digest.clone() });
    }
    Ok(())
}

/// What came of an action, as it is written down, without the labels of time and source.
pub(super) fn step(
    n: u32,
    action: &Action,
    outcome: &Outcome,
    minutes: Vec<(Tick, u64)>,
    digest: u64,
) -> Step {
    Step {
        n,
        by: None,
        at_unix_ms: None,
        action: action.clone(),
        start: outcome.start,
        end: outcome.end,
        refused: outcome.refused.clone().map(Refused::Typed),
        reading: outcome.reading.clone(),
        read_right: outcome.read_right,
        record: outcome.record.clone(),
        breaches: outcome.breaches.iter().cloned().map(Breached::Typed).collect(),
        minutes: minutes.into_iter().map(|(t, d)| (t, StateDigest(d))).collect(),
        digest: StateDigest(digest),
    }
}

/// In a pack that tells nothing after the hand-back, neither the screen nor the journal says what was dangerous about
/// the car as it was handed back: some of that is the answer. The marker finds it out by itself.
pub(super) fn keep_quiet(job: &Job, step: &mut Step, outcome: &mut Outcome) {
    if job.after_hand_back == AfterHandBack::Nothing && step.hands_back() {
        step.breaches.clear();
        outcome.breaches.clear();
        outcome.said.clear();
    }
}

/// Who looks on, under the hood, while an attempt is done again.
pub(crate) trait Watch {
    /// The workshop before an action.
    fn before(&mut self, opened: &Opened);

    /// The workshop after it, and what came of it, told in full.
    fn after(&mut self, recorded: &Step, outcome: &Outcome, opened: &Opened);
}

/// Nobody looks on.
struct Alone;

impl Watch for Alone {
    fn before(&mut self, _: &Opened) {}

    fn after(&mut self, _: &Step, _: &Outcome, _: &Opened) {}
}

/// Does a recorded action again and compares.
fn redo(
    workshop: &mut Opened,
    job: &Job,
    recorded: &Step,
    engine: &str,
    watch: &mut dyn Watch,
) -> Result<Outcome, Difference> {
    if workshop.tick() < recorded.start {
        workshop.run_free_cut(recorded.start);
    }
    watch.before(workshop);
    let mut outcome = workshop.act(&recorded.action);
    let minutes = workshop.take_minute_digests();
    let mut now = step(recorded.n, &recorded.action, &outcome, minutes, workshop.digest());
    watch.after(recorded, &outcome, workshop);
    keep_quiet(job, &mut now, &mut outcome);
    // Labels are nobody's business here.
    (now.by, now.at_unix_ms) = (recorded.by, recorded.at_unix_ms);
    // Files made before it was written down do not say why a note did not fill its line.
    if let (Some(now), Some(then)) = (&mut now.record, &recorded.record)
        && then.unmet.is_none()
    {
        now.unmet = None;
    }
    let differs = |what, found: String, recorded_text: String| Difference {
        n: recorded.n,
        action: words::say(&recorded.action),
        what,
        found,
        recorded: recorded_text,
        engine: (engine != ENGINE).then(|| engine.to_owned()),
    };
    if now.start != recorded.start {
        return Err(differs(Differing::FirstTick, now.start.0.to_string(), recorded.start.0.to_string()));
    }
    let alike = match (&now.refused, &recorded.refused) {
        (Some(now), Some(recorded)) => now.agrees(recorded),
        (None, None) => true,
        (Some(_), None) | (None, Some(_)) => false,
    };
    if !alike {
        return Err(differs(
            Differing::Refusal,
            format!("{:?}", now.refused),
            format!("{:?}", recorded.refused),
        ));
    }
    if now.end != recorded.end {
        return Err(differs(Differing::LastTick, now.end.0.to_string(), recorded.end.0.to_string()));
    }
    if now.reading != recorded.reading {
        return Err(differs(
            Differing::Reading,
            format!("{:?}", now.reading),
            format!("{:?}", recorded.reading),
        ));
    }
    for (a, b) in now.minutes.iter().zip(&recorded.minutes) {
        if a != b {
            let text = |m: &(Tick, StateDigest)| format!("{} @ {}", m.1, m.0.0);
            return Err(differs(Differing::Digest, text(a), text(b)));
        }
    }
    if now.minutes.len() != recorded.minutes.len() {
        let (now, recorded) = (now.minutes.len().to_string(), recorded.minutes.len().to_string());
        return Err(differs(Differing::Minutes, now, recorded));
    }
    if now.digest != recorded.digest {
        return Err(differs(Differing::Digest, now.digest.to_string(), recorded.digest.to_string()));
    }
    let alike = |(now, recorded): (&Breached, &Breached)| now.agrees(recorded);
    if now.breaches.len() == recorded.breaches.len() && now.breaches.iter().zip(&recorded.breaches).all(alike)
    {
        now.breaches.clone_from(&recorded.breaches);
    }
    now.refused.clone_from(&recorded.refused);
    if now != *recorded {
        return Err(differs(Differing::Rest, format!("{now:?}"), format!("{recorded:?}")));
    }
    Ok(outcome)
}

/// Replays a whole attempt in the world it was made in and compares everything that is recorded.
/// Returns the workshop as it stood at the end.
///
/// # Errors
/// When the attempt is of another job, or at the first difference.
pub fn replay(attempt: &Attempt, job: &Job) -> Result<Workshop, SessionError> {
    replay_watched(attempt, job, |_| Alone).map(|(opened, _)| opened.shut())
}

/// As [`replay`], with somebody looking on from the moment the car has come in.
///
/// # Errors
/// As [`replay`].
pub(crate) fn replay_watched<W: Watch>(
    attempt: &Attempt,
    job: &Job,
    watch: impl FnOnce(&Opened) -> W,
) -> Result<(Opened, W), SessionError> {
    check_job(&attempt.header, job)?;
    limits::against(&attempt.steps, job)?;
    let mut workshop = opened(job, attempt.header.seed);
    computed(&workshop)?;
    let mut watch = watch(&workshop);
    for recorded in &attempt.steps {
        let done = redo(&mut workshop, job, recorded, &attempt.header.engine, &mut watch);
        computed(&workshop)?;
        done?;
    }
    Ok((workshop, watch))
}
