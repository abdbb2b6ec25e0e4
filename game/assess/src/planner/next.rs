//! Which test next: what tells most about what is to be repaired, for the minutes that it takes.
//!
//! A test is worth the information that it would give on average, given everything that was noted before
//! ([`crate::infer::outlook`]), for the minutes that it adds to the work: what stands already is not set up again, what hangs
//! in the way is put away first ([`crate::plan::cost`]). Test by test the best is taken; where two tests share a set-up that neither
//! pays for alone, the two together are looked at. This is a *reference plan*, never called optimal: nobody has looked at
//! all rows of tests.

use rayon::prelude::*;

use super::trials::{Trial, Trials};
use crate::infer::belief::Belief;
use crate::infer::outlook::{Coming, expected_gain};
use crate::infer::reading::Noted;
use crate::infer::rows::Told;
use crate::infer::table::Table;
use crate::infer::told::Path;
use crate::pack::job::Job;
use crate::plan::cost::{Minutes, Rehearsal};

/// So probable the likeliest class must be before nobody looks further (own choice, with the reasons of the marks).
pub const SURE: f64 = 0.90;
/// Drawings of what a test might show.
const SAMPLES: usize = 32;
/// Less information is none, bits.
const LEAST_BITS: f64 = 0.02;
/// A test never counts for less than this, min: the hand has to go there.
const LEAST_MIN: f64 = 0.05;
/// The best tests by themselves, of which pairs are looked at.
const PAIRED: usize = 5;

/// A test that could be next.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Choice {
    /// Index into the trials.
    pub trial: usize,
    /// Information that it gives on average, bits.
    pub bits: f64,
    /// What it adds to the work.
    pub minutes: Minutes,
}

impl Choice {
    /// Bits for a minute, as economy counts minutes.
    #[must_use]
    pub fn worth(&self) -> f64 {
        self.bits / self.minutes.weighed().max(LEAST_MIN)
    }
}

/// Tests one after the other, with what they showed.
#[derive(Clone, Debug)]
pub struct Planner<'a> {
    job: &'a Job,
    trials: &'a Trials,
    table: Table,
    /// What is believed along the notes.
    path: Path,
    /// As told, the last.
    told: Belief,
    work: Rehearsal,
    changes: u32,
    done: Vec<usize>,
}

impl<'a> Planner<'a> {
    /// On the complaint alone, in front of the car as it came in.
    #[must_use]
    pub fn new(job: &'a Job, trials: &'a Trials) -> Self {
        let mut table = trials.heard();
        let path = table.path();
        let work = Rehearsal::sound(job.setup());
        let told = path.last_told();
        Self { job, trials, table, path, told, work, changes: 0, done: Vec::new() }
    }

    /// In the midst of an attempt: what was noted stands in `table`, believed was what stands in `path` along it; `work` is a sound car
    /// in which the same was done.
    #[must_use]
    pub fn midway(job: &'a Job, trials: &'a Trials, table: Table, path: Path, work: Rehearsal) -> Self {
        let told = path.last_told();
        let changes = table.items.iter().map(|item| 1 + item.order.0).max().unwrap_or(0);
        Self { job, trials, table, path, told, work, changes, done: Vec::new() }
    }

    /// What is believed now.
    #[must_use]
    pub fn belief(&self) -> &Belief {
        &self.told
    }

    /// Tests done so far, indices into the trials.
    #[must_use]
    pub fn done(&self) -> &[usize] {
        &self.done
    }

    /// Minutes of all tests so far, everything put away at the end.
    #[must_use]
    pub fn minutes(&self) -> Minutes {
        ended(self.work.clone())
    }

    /// The likeliest class is as probable as the search asks for.
    #[must_use]
    pub fn is_sure(&self) -> bool {
        self.told.classes().into_iter().any(|p| SURE <= p)
    }

    /// All tests that would tell something, the one that is worth most first.
    #[must_use]
    pub fn choices(&self) -> Vec<Choice> {
        let now = self.minutes();
        let left: Vec<usize> = (0..self.trials.tests.len()).filter(|t| !self.done.contains(t)).collect();
        let one = |trial: &usize| {
            let bits = self.bits(&[*trial]);
            (LEAST_BITS <= bits).then(|| Choice {
                trial: *trial,
                bits,
                minutes: ended(self.after(&[*trial])) - now,
            })
        };
        let mut choices: Vec<Choice> = left.par_iter().with_max_len(1).filter_map(one).collect();
        choices.sort_by(|a, b| b.worth().total_cmp(&a.worth()).then(a.trial.cmp(&b.trial)));
        choices
    }

    /// The test to do next; `None` when none tells anything.
    #[must_use]
    pub fn next(&self) -> Option<Choice> {
        let choices = self.choices();
        let best = *choices.first()?;
        let now = self.minutes();
        // The most telling ones, whatever they cost: it is they that a shared set-up makes worth while.
        let mut telling = choices;
        telling.sort_by(|a, b| b.bits.total_cmp(&a.bits).then(a.trial.cmp(&b.trial)));
        telling.truncate(PAIRED);
        let pairs: Vec<(Choice, Choice)> = telling
            .iter()
            .flat_map(|first| telling.iter().map(move |second| (*first, *second)))
            .filter(|(first, second)| first.trial != second.trial)
            .collect();
        let worth = |(first, second): &(Choice, Choice)| {
            let row = [first.trial, second.trial];
            let minutes = (ended(self.after(&row)) - now).weighed();
            // Not more together than one by one: no set-up is shared.
            let apart = first.minutes.weighed() + second.minutes.weighed();
            if apart <= minutes { 0.0 } else { self.bits(&row) / minutes.max(LEAST_MIN) }
        };
        let worths: Vec<f64> = pairs.par_iter().with_max_len(1).map(worth).collect();
        let pair = (0..pairs.len()).fold(None, |found: Option<usize>, pair| match found {
            Some(before) if worths[pair] <= worths[before] => Some(before),
            _ => Some(pair),
        });
        match pair {
            Some(pair) if best.worth() < worths[pair] => Some(pairs[pair].0),
            _ => Some(best),
        }
    }

    /// Does a test, in a car that tells this at its notes; `share` of the class by which each instrument of the kit errs.
    pub fn take(&mut self, trial: usize, told: &[Option<Told>], share: &[f64]) {
        let trials = self.trials;
        self.note(&trials.tests[trial], told, share);
        self.look();
        self.work = self.after(&[trial]);
        self.done.push(trial);
    }

    /// Takes in what many trials tell, with instruments that do not err; what they cost is not asked.
    pub fn take_all<'b>(&mut self, told: impl Iterator<Item = (&'b Trial, &'b [Option<Told>])>) {
        for (trial, told) in told {
            self.note(trial, told, &[]);
        }
        self.look();
    }

    fn note(&mut self, trying: &Trial, told: &[Option<Told>], share: &[f64]) {
        for (coming, told) in trying.coming(self.job, self.changes).into_iter().zip(told) {
            let off = coming.noted.instrument.and_then(|i| share.get(i)).copied().unwrap_or(0.0);
            // What cannot be read is not noted.
            let Some(shown) = coming.noted.show(*told, off, 0.0) else { continue };
            let noted: Noted = coming.noted.showing(shown);
            self.table.take_in(&Coming { noted, ..coming }, &self.trials.priors);
        }
        self.changes += trying.changes();
    }

    /// Looks at the belief along all notes.
    fn look(&mut self) {
        self.path = self.table.path();
        self.told = self.path.last_told();
    }

    /// Bits that tests would give, one after the other.
    fn bits(&self, row: &[usize]) -> f64 {
        let mut changes = self.changes;
        let mut coming = Vec::new();
        for trial in row {
            let trial = &self.trials.tests[*trial];
            coming.extend(trial.coming(self.job, changes));
            changes += trial.changes();
        }
        expected_gain(&self.table, self.path.last(), &self.trials.priors, &coming, SAMPLES)
    }

    /// The work with further tests behind.
    fn after(&self, row: &[usize]) -> Rehearsal {
        let mut work = self.work.clone();
        for trial in row {
            work.then(&self.job.tests[self.trials.tests[*trial].test]);
        }
        work
    }
}

fn ended(mut work: Rehearsal) -> Minutes {
    work.end();
    work.minutes()
}
