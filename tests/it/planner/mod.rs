//! What tests would tell, which is next, what a plan takes, and what is wrong with a job.

mod command;
mod flaws;
mod hint;
mod next;
mod par;

use std::sync::{Arc, OnceLock};

use assess::pack::job::Job;
use assess::planner::Trials;

use crate::rig::library;

/// A job with a tool board of these instruments alone: a few tests in a few seconds.
fn with_tools(name: &str, tools: &[&str]) -> Job {
    let mut job = library().job(name).unwrap_or_else(|e| panic!("{e}"));
    Arc::make_mut(&mut job.kit).retain(|card| tools.contains(&card.id.as_str()));
    job
}

/// A short rest of the pump, with a watch and hose clamps: what the engine's check valve is found with.
fn small() -> &'static (Job, Trials) {
    static SMALL: OnceLock<(Job, Trials)> = OnceLock::new();
    SMALL.get_or_init(|| {
        let job = with_tools("first-shift/hum-at-the-lights", &["watch", "clamps"]);
        let trials = Trials::of(&job, &[], |_, _| true).expect("nobody stops it");
        (job, trials)
    })
}

/// Index of a test by its short name among the trials.
fn trial(job: &Job, trials: &Trials, test: &str) -> usize {
    let is = |trial: &assess::planner::trials::Trial| job.tests[trial.test].id == test;
    trials.tests.iter().position(is).unwrap_or_else(|| panic!("no {test}"))
}
