//! How an attempt begins: its header, its hidden numbers, its workshop before the first action.

use rand_core::Rng as _;
use sim_core::Opened;
use sim_core::workshop::Workshop;
use sim_core::world::World;

use crate::attempt::clock::{By, Clock, Opening};
use crate::attempt::{ENGINE, Header, SCHEMA, Seed, SeedFrom, Sitting};
use crate::pack::job::Job;

/// Stream of the random numbers of an attempt's truth; another use of the same seed takes another.
const TRUTH_STREAM: u128 = 0x7069_6e68_6f6c_6501;

/// How an attempt is begun.
#[derive(Clone, Debug)]
pub struct Begin {
    /// What tolerances and instrument errors are drawn from.
    pub seed: Seed,
    /// Where it came from.
    pub seed_from: SeedFrom,
    /// Seat in a class.
    pub seat: Option<String>,
    /// Who begins it, with which clock.
    pub opening: Opening,
}

impl Begin {
    /// Played by a program with a given seed, at no time of day: for the marker's reference attempts, pictures and
    /// tests.
    #[must_use]
    pub fn rehearsal(seed: Seed) -> Self {
        let opening = Opening { by: By::Script, clock: Clock::standing(0) };
        Self { seed, seed_from: SeedFrom::Given, seat: None, opening }
    }
}

/// The hidden numbers of an attempt at `job`: the marker's, who opens a car of his own with them.
#[must_use]
pub(crate) fn truth(job: &Job, seed: Seed) -> World {
    let mut rng = rand_pcg::Pcg64::new(seed.0, TRUTH_STREAM);
    // 53 random bits: every double in [0, 1) that is a multiple of 2⁻⁵³.
    let mut u = || (rng.next_u64() >> 11) as f64 * (1.0 / 9_007_199_254_740_992.0);
    World::draw(&job.car, &job.kit, job.answer(), &mut u)
}

/// The workshop of an attempt at `job`, before the first action.
#[must_use]
pub fn workshop(job: &Job, seed: Seed) -> Workshop {
    Workshop::new(job.setup(), truth(job, seed))
}

/// The same with the hood open, for the marker.
pub(super) fn opened(job: &Job, seed: Seed) -> Opened {
    Opened::of(job.setup(), truth(job, seed))
}

pub(super) fn header(job: &Job, begin: &Begin) -> Header {
    Header {
        schema: SCHEMA.to_owned(),
        engine: ENGINE.to_owned(),
        pack: job.pack_id.clone(),
        job: job.name(),
        job_digest: hex::encode(job.digest),
        seat: begin.seat.clone(),
        seed: begin.seed,
        scripted: None,
        created_unix_s: begin.opening.clock.now_ms() / 1000,
        seed_from: Some(begin.seed_from),
    }
}

pub(super) fn sitting(opening: &Opening, after: usize) -> Sitting {
    Sitting {
        after: after as u32,
        by: opening.by,
        at_unix_ms: opening.clock.now_ms(),
        engine: ENGINE.to_owned(),
    }
}
