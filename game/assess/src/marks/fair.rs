//! What the same work would have shown on average: the instruments' errors and the scatter of the hand are drawn anew.
//!
//! Whether a gauge happened to err towards the truth or away from it is no merit of who read it. So the evidence is
//! marked by the mean over [`REDRAWS`] such draws, for the same actions in the same car.

use rayon::prelude::*;
use sim_core::world::World;

use super::truth::p_true;
use crate::infer::draws::Draw;
use crate::infer::evidence::{Followed, Link};
use crate::infer::numeric::normal;
use crate::infer::rows::{self, Told};
use crate::pack::job::Job;
use crate::play::course::{Course, Note, Worth};

/// How often instruments and hand are drawn anew.
pub(crate) const REDRAWS: usize = 32;

/// Probability of what is true along an attempt, under each drawing.
#[derive(Clone, Debug)]
pub(crate) struct Fair {
    /// Per drawing: on the complaint alone, then after each note.
    paths: Vec<Vec<f64>>,
    /// Per note: index of its deed.
    deeds: Vec<usize>,
}

/// What the true car `world` shows at everything that was looked at up to the last note that counts, no instrument between.
pub(crate) fn shown_in(job: &Job, done: &Course, world: &World) -> Vec<Option<Told>> {
    let counts = |note: &&Note| note.worth == Worth::Counts;
    let until = done.notes.iter().filter(counts).map(|note| note.deed + 1).max().unwrap_or(0);
    let mut cars = rows::arrive(job, std::slice::from_ref(world));
    rows::advance(done, &mut cars.iter_mut().collect::<Vec<_>>(), until);
    cars.pop().map_or_else(Vec::new, |car| car.told)
}

/// Follows the notes of `followed`, an attempt of course `done`, in the true car, which shows `shown` there. `truth`: the attempt
/// that says what is true.
pub(crate) fn along(
    job: &Job,
    truth: &Course,
    done: &Course,
    shown: &[Option<Told>],
    followed: &Followed,
) -> Fair {
    let deeds: Vec<usize> = followed.links.iter().map(|link| done.notes[link.note].deed).collect();
    let of_note = |link: &Link| shown.get(done.notes[link.note].looked).copied().flatten();
    let told: Vec<Option<Told>> = followed.links.iter().map(of_note).collect();
    let path = |redraw: usize| {
        let mut draw = Draw::new(redraw);
        let instruments: Vec<f64> = job.kit.iter().map(|_| 2.0 * draw.next_u() - 1.0).collect();
        let scatter: Vec<f64> = told.iter().map(|_| normal(draw.next_u(), draw.next_u())).collect();
        let beliefs = followed.with_other_scatter(&told, &instruments, &scatter);
        beliefs.iter().map(|belief| p_true(&followed.hypotheses, truth, belief)).collect()
    };
    Fair { paths: (0..REDRAWS).into_par_iter().with_max_len(1).map(path).collect(), deeds }
}

impl Fair {
    /// Probabilities of what is true before deed number `deed`, one a drawing.
    pub(crate) fn before(&self, deed: usize) -> impl Iterator<Item = f64> + '_ {
        let notes = self.deeds.iter().take_while(|noted| **noted < deed).count();
        self.paths.iter().map(move |path| path[notes.min(path.len() - 1)])
    }

    /// Mean probability of what is true before deed number `deed`.
    pub(crate) fn mean_before(&self, deed: usize) -> f64 {
        self.before(deed).sum::<f64>() / self.paths.len() as f64
    }

    /// Best mean probability of what is true along the way.
    pub(crate) fn best(&self) -> f64 {
        let after = |notes: usize| self.paths.iter().map(|p| p[notes]).sum::<f64>() / self.paths.len() as f64;
        (1..=self.deeds.len()).map(after).fold(0.0, f64::max)
    }
}
