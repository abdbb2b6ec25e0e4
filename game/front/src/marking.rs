//! An attempt is marked, whoever asks.

use assess::sentence;
use std::panic::{AssertUnwindSafe, catch_unwind};

use assess::attempt::marked::Kept;
use assess::attempt::{Attempt, AttemptError};
use assess::locale::sentence::Sentence;
use assess::marks::Evaluation;
use assess::pack::Library;
use assess::pack::job::Job;

/// Marks one attempt.
///
/// # Errors
/// As [`job_of`] and [`evaluation_at`].
pub fn evaluation_of(library: &Library, attempt: &Attempt) -> anyhow::Result<Evaluation> {
    evaluation_at(attempt, &job_of(library, attempt)?)
}

/// The job that an attempt is of.
///
/// # Errors
/// It is in no pack here, or faulty.
pub fn job_of(library: &Library, attempt: &Attempt) -> anyhow::Result<Job> {
    Ok(library.job(&attempt.header.job)?)
}

/// A mistake of this program that one attempt brings out must not take the others along: the marker changes nothing
/// outside itself, so it can be left where it stopped.
///
/// # Errors
/// It is of another job, does not replay, or brings out a mistake of this program.
pub fn evaluation_at(attempt: &Attempt, job: &Job) -> anyhow::Result<Evaluation> {
    let marked = catch_unwind(AssertUnwindSafe(|| assess::marks::mark(attempt, job)));
    match marked {
        Ok(evaluation) => Ok(evaluation?),
        Err(_) => Err(anyhow::Error::new(sentence!(
            "marker-stopped",
            "the marker stopped in the middle, which is a mistake of this program; report it with the file"
        ))),
    }
}

/// What to say about the mark in the file; `None` when it stands there as it should.
#[must_use]
pub fn told(kept: &Result<Option<Kept>, AttemptError>) -> Option<Sentence> {
    match kept {
        Ok(kept) => kept.as_ref().and_then(Kept::notice),
        Err(error) => Some(sentence!(
            "kept-not",
            "The mark was not written into the attempt's file: {why}.",
            why = error.sentence()
        )),
    }
}
