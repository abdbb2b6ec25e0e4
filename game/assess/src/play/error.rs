//! What can go wrong while somebody works on a car, or while it is done again.

use sim_core::units::Tick;
use sim_core::workshop::Workshop;

use crate::attempt::AttemptError;
use crate::attempt::limits::{Beyond, Unknown};
use crate::locale::quote;
use crate::locale::sentence::Sentence;
use crate::sentence;

/// What went wrong with a session.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum SessionError {
    /// The attempt's file.
    #[error(transparent)]
    File(#[from] AttemptError),
    /// The attempt belongs to another job.
    #[error("the attempt is of the job {}, not of {}", quote::quoted(attempt), quote::quoted(job))]
    OtherJob {
        /// Job of the attempt.
        attempt: String,
        /// Job given.
        job: String,
    },
    /// The files behind the job are not those of the attempt.
    #[error(
        "the files of the job {} have changed since the attempt was made (digest {found:.12}…, the attempt \
         has {expected:.12}…); use the pack it was made with",
        quote::quoted(job)
    )]
    JobChanged {
        /// The job.
        job: String,
        /// Digest now.
        found: String,
        /// Digest in the attempt.
        expected: String,
    },
    /// It names things that the job does not have.
    #[error("{0}")]
    Unknown(#[from] Unknown),
    /// A text or number that no attempt can hold, or the attempt has come to the end of what one can hold. Nothing was
    /// done.
    #[error("not done: {0}")]
    Beyond(#[from] Beyond),
    /// Replaying gave something else than what is recorded.
    #[error("{0}")]
    Differs(#[from] Difference),
    /// The model could not go on: nothing is computed from there on, and nothing was written down.
    #[error("{0}")]
    Fault(#[from] Uncomputed),
    /// The attempt is over.
    #[error("the car has been handed back; this attempt is over. Begin a new one with --new")]
    Over,
}

impl SessionError {
    /// What is wrong, for every language, where it is more than the number of an action and what was found there.
    #[must_use]
    pub fn sentence(&self) -> Option<Sentence> {
        match self {
            Self::File(error) => Some(error.sentence()),
            Self::OtherJob { attempt, job } => Some(sentence!(
                "session-other-job",
                "the attempt is of the job {attempt}, not of {job}",
                attempt = quote::quoted(attempt),
                job = quote::quoted(job)
            )),
            Self::Over => Some(sentence!(
                "session-over",
                "the car has been handed back; this attempt is over. Begin a new one with --new"
            )),
            _ => None,
        }
    }
}

/// Where the model could not go on.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error(
    "the model stops at second {:.2} of the work: the numbers of {} are beyond what can be computed. Every action before \
     this one is kept; the author of the pack must mend the car",
    tick.s(),
    part.as_deref().unwrap_or("this car")
)]
pub struct Uncomputed {
    /// Tick of the attempt; 0 for the way to the workshop.
    pub tick: Tick,
    /// Short name of the part to look at first.
    pub part: Option<String>,
}

/// First place where a replay differs from the record.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("action {n} ({action:.60}): {what} is {found:.60}, recorded is {recorded:.60}{hint}")]
pub struct Difference {
    /// Number of the action.
    pub n: u32,
    /// The action in words.
    pub action: String,
    /// What differs.
    pub what: &'static str,
    /// What came out now.
    pub found: String,
    /// What the file says.
    pub recorded: String,
    /// A likely reason.
    pub hint: String,
}

/// An error when the model of `workshop` could not go on.
///
/// # Errors
/// Where it stopped, and which part to look at first.
pub fn computed(workshop: &Workshop) -> Result<(), Uncomputed> {
    let Some(fault) = workshop.fault() else { return Ok(()) };
    let part = fault.part.and_then(|part| workshop.part_name(part)).map(str::to_owned);
    Err(Uncomputed { tick: fault.tick, part })
}
