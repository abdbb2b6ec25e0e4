//! The author's reference attempt, played and marked in a few cars.

use std::sync::Arc;

use sim_core::action::Action;

use super::Scripted;
use crate::attempt::{Attempt, Seed};
use crate::locale::{Locale, Naming};
use crate::marks;
use crate::pack::job::Job;
use crate::play::{Begin, Session, script};

/// Plays it in the cars of these seeds; `None` when the job has none.
pub(super) fn played(job: &Job, seeds: &[u128], mut hear: impl FnMut(usize) -> bool) -> Option<Scripted> {
    let text = job.reference.as_ref()?;
    let mut scripted = Scripted { cars: seeds.len(), competent: 0, p_true: 0.0, claims: 0.0, stopped: None };
    for (n, seed) in seeds.iter().enumerate() {
        match attempt(job, text, Seed(*seed)) {
            Ok(attempt) => {
                let found = attempt.steps.iter().find_map(|step| {
                    if let Action::Finding { certainty, .. } = &step.action { Some(*certainty) } else { None }
                });
                scripted.claims = scripted.claims.max(job.certainty.or(found).unwrap_or_default());
                if let Ok(evaluation) = marks::mark(&attempt, job) {
                    let sheet = evaluation.sheet(&Locale::built_in(), Naming::Typed);
                    scripted.competent += usize::from(sheet.competent() == Some(true));
                    scripted.p_true +=
                        evaluation.p_true_at_finding().unwrap_or_default() / seeds.len() as f64;
                }
            }
            Err(why) => scripted.stopped = Some(why),
        }
        if !hear(n + 1) {
            break;
        }
    }
    Some(scripted)
}

fn attempt(job: &Job, text: &str, seed: Seed) -> Result<Attempt, String> {
    let mut session = Session::rehearse(Arc::new(job.clone()), &Begin::rehearsal(seed));
    script::play(&mut session, text, |_, _, _, _| {}).map_err(|error| error.to_string())?;
    let attempt = session.into_attempt();
    match attempt.is_finished() {
        true => Ok(attempt),
        false => Err("it ends without handing the car back".to_owned()),
    }
}
