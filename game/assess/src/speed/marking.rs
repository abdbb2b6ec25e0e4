//! The attempt whose runs under hypotheses are counted: some five minutes of work with the pump running,
//! the pedal pressed, a leak-down timed and readings taken.
//!
//! A run brings one of the cars in which an attempt is followed in and does every deed in it, as
//! [`crate::infer::evidence`] does; none stands still, so that each run is a whole one. The arithmetic on beliefs is
//! not in it: it is small beside the runs.

use std::sync::Arc;

use rayon::prelude::*;
use sim_core::Opened;
use sim_core::workshop::exchange::{Beside, at_once, side_by_side};
use sim_core::world::World;

use super::SpeedError;
use crate::attempt::Seed;
use crate::infer::draws::DRAWS;
use crate::infer::hypotheses::every_first_car;
use crate::infer::rows::{BESIDE, deed_in};
use crate::pack::Library;
use crate::pack::job::Job;
use crate::play::course::Deed;
use crate::play::script;
use crate::play::{Begin, Session};

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
        let bench = library.bench()?;
        let job = Arc::new(library.job(&bench.job)?);
        let begin = Begin::rehearsal(Seed(1));
        let mut session = Session::rehearse(Arc::clone(&job), &begin);
        script::play(&mut session, &bench.attempt.join("\n"), |_, _, _, _| {})
            .map_err(|e| SpeedError::Line { line: bench.job, why: e.sentence().into() })?;
        let attended_min = session.view().attended_min;
        let steps = session.into_attempt().steps;
        let deed = |step: crate::attempt::Step| Deed {
            action: step.action,
            start: step.start,
            end: step.end,
            refused: step.refused.is_some(),
        };
        let worlds = every_first_car(&job.car, &job.kit);
        Ok(Self { deeds: steps.into_iter().map(deed).collect(), job, worlds, attended_min })
    }

    /// How many runs a marking of this attempt takes when nothing is dropped.
    #[must_use]
    pub fn worlds(&self) -> usize {
        self.worlds.len()
    }

    /// Does the whole attempt in the car of world number `which`.
    async fn play(&self, which: usize, beside: Beside<'_>) -> Opened {
        let world = self.worlds[which % self.worlds.len()].clone();
        let mut workshop = Opened::of_beside(self.job.setup(), world, beside).await;
        for index in 0..self.deeds.len() {
            if !self.deeds[index].refused {
                deed_in(&mut workshop, &self.deeds, index, beside).await;
            }
        }
        workshop
    }

    /// Which worlds stand for all when only `many` runs are made: whole hypotheses, from all over the list.
    pub fn sample(&self, many: usize) -> Vec<usize> {
        let hypotheses = self.worlds.len() / DRAWS;
        let stride = (hypotheses as f64 * 0.618_034) as usize | 1;
        (0..many).map(|i| i / DRAWS * stride % hypotheses * DRAWS + i % DRAWS).collect()
    }

    /// Runs worlds one after the other; their digests.
    #[must_use]
    pub fn run_one_by_one(&self, many: usize) -> Vec<u64> {
        self.sample(many).into_iter().map(|which| at_once(self.play(which, None)).digest()).collect()
    }

    /// Runs worlds on one thread, as many side by side as a marker does; their digests in the same order.
    #[must_use]
    pub fn run_side_by_side(&self, many: usize) -> Vec<u64> {
        self.sample(many).chunks(BESIDE).flat_map(|together| self.run(together)).collect()
    }

    /// The same on all threads.
    #[must_use]
    pub fn run_on_all_threads(&self, many: usize) -> Vec<u64> {
        self.sample(many)
            .par_chunks(BESIDE)
            .with_max_len(1)
            .flat_map_iter(|together| self.run(together))
            .collect()
    }

    fn run(&self, which: &[usize]) -> Vec<u64> {
        let mut digests = vec![0; which.len()];
        side_by_side(digests.iter_mut().zip(which), async |(digest, which), beside| {
            *digest = self.play(*which, beside).await.digest();
        });
        digests
    }
}
