//! The attempt whose runs under hypotheses are counted: some five minutes of work with the pump running,
//! the pedal pressed, a leak-down timed and readings taken.
//!
//! A run brings the car of one cell of [`Hypotheses`] in and does every deed in it, as
//! [`crate::evidence`] does; nothing is dropped, so that each run is a whole one. The arithmetic on beliefs is
//! not in it: it is small beside the runs.

use std::sync::Arc;

use rayon::prelude::*;
use sim_core::workshop::Workshop;
use sim_core::world::World;

use super::SpeedError;
use crate::attempt::Seed;
use crate::course::Deed;
use crate::evidence::deed_in;
use crate::hypotheses::Hypotheses;
use crate::job::Job;
use crate::pack::Library;
use crate::script;
use crate::session::{Begin, Session};

/// The job it is an attempt at.
const JOB: &str = "first-shift/hum-at-the-lights";
/// Its words.
const SCRIPT: &str = "chocks on
fit gauge valve_m.store
key on
wait until pump stops 60
pedal press 100
wait 2
pedal release
wait 5
pedal press 200
wait 2
pedal release
wait until pump stops 30
read gauge
note shown
";

/// An attempt with the worlds it is run in.
#[derive(Clone, Debug)]
pub struct Marking {
    job: Arc<Job>,
    deeds: Vec<Deed>,
    worlds: Vec<World>,
    /// Minutes of work in the attempt.
    pub attended_min: f64,
}

impl Marking {
    /// The attempt, with every world of every hypothesis.
    ///
    /// # Errors
    /// When the job's files cannot be read or the words do not fit it.
    pub fn of(library: &Library) -> Result<Self, SpeedError> {
        let job = Arc::new(library.job(JOB)?);
        let begin = Begin { seed: Seed(1), scripted: true, seat: None };
        let mut session = Session::rehearse(Arc::clone(&job), &begin);
        script::play(&mut session, SCRIPT, |_, _, _, _| {})
            .map_err(|e| SpeedError::Line { line: JOB.to_owned(), why: e.to_string() })?;
        let attended_min = session.view().attended_min;
        let steps = session.into_attempt().steps;
        let deed = |step: crate::attempt::Step| Deed {
            action: step.action,
            start: step.start,
            end: step.end,
            refused: step.refused.is_some(),
        };
        let worlds = Hypotheses::of(&job.car, &job.kit).cells.into_iter().filter_map(|c| c.world).collect();
        Ok(Self { deeds: steps.into_iter().map(deed).collect(), job, worlds, attended_min })
    }

    /// How many runs a marking of this attempt takes when nothing is dropped.
    #[must_use]
    pub fn worlds(&self) -> usize {
        self.worlds.len()
    }

    /// One run, in world number `which`; gives back the car as it stands then.
    #[must_use]
    pub fn run(&self, which: usize) -> Workshop {
        let mut workshop = Workshop::new(self.job.setup(self.worlds[which % self.worlds.len()].clone()));
        for index in 0..self.deeds.len() {
            if !self.deeds[index].refused {
                deed_in(&mut workshop, &self.deeds, index);
            }
        }
        workshop
    }

    /// Which worlds stand for all when only `many` runs are made.
    pub fn sample(&self, many: usize) -> impl Iterator<Item = usize> + '_ {
        let stride = (self.worlds.len() as f64 * 0.618_034) as usize | 1;
        (0..many).map(move |i| i * stride % self.worlds.len())
    }

    /// Runs worlds one after the other; their digests.
    #[must_use]
    pub fn run_one_by_one(&self, many: usize) -> Vec<u64> {
        self.sample(many).map(|which| self.run(which).digest()).collect()
    }

    /// Runs worlds on all threads; their digests in the same order.
    #[must_use]
    pub fn run_on_all_threads(&self, many: usize) -> Vec<u64> {
        let which: Vec<usize> = self.sample(many).collect();
        which.par_iter().with_max_len(1).map(|&which| self.run(which).digest()).collect()
    }
}
