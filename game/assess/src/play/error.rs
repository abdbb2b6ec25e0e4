//! What can go wrong while somebody works on a car, or while it is done again.

use sim_core::units::Tick;
use sim_core::workshop::Workshop;

use crate::attempt::limits::{Beyond, Unknown};
use crate::attempt::{AttemptError, ENGINE};
use crate::locale::quote;
use crate::locale::sentence::Sentence;
use crate::sentence;

/// What went wrong with a session.
#[derive(Debug, thiserror::Error)]
#[error("{}", self.sentence())]
#[non_exhaustive]
pub enum SessionError {
    /// The attempt's file.
    File(#[from] AttemptError),
    /// The attempt belongs to another job.
    OtherJob {
        /// Job of the attempt.
        attempt: String,
        /// Job given.
        job: String,
    },
    /// The files behind the job are not those of the attempt.
    JobChanged {
        /// The job.
        job: String,
        /// Digest now.
        found: String,
        /// Digest in the attempt.
        expected: String,
    },
    /// It names things that the job does not have.
    Unknown(#[from] Unknown),
    /// A text or number that no attempt can hold, or the attempt has come to the end of what one can hold. Nothing was
    /// done.
    Beyond(#[from] Beyond),
    /// Replaying gave something else than what is recorded.
    Differs(#[from] Difference),
    /// The model could not go on: nothing is computed from there on, and nothing was written down.
    Fault(#[from] Uncomputed),
    /// The attempt is over.
    Over,
    /// No hint can be had.
    NoHint(NoHint),
}

/// Why no hint can be had. Nothing is written down then, and nothing counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoHint {
    /// The pack gives none.
    NoneGiven,
    /// All that it gives were asked for.
    AllAsked {
        /// How many it gives.
        given: u32,
    },
    /// Something has been repaired: the tests were tried in cars as they came in.
    Repaired,
}

impl NoHint {
    fn sentence(self) -> Sentence {
        match self {
            Self::NoneGiven => sentence!("session-no-hints", "in this pack nobody says what would tell most"),
            Self::AllAsked { given } => sentence!(
                "session-hints-asked",
                "all hints of this pack were asked for ({given})",
                given = given
            ),
            Self::Repaired => {
                sentence!("session-hint-repaired", "something was repaired; from there on there are no hints")
            }
        }
    }
}

impl SessionError {
    /// What is wrong, for every language.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        match self {
            Self::File(error) => error.sentence(),
            Self::OtherJob { attempt, job } => sentence!(
                "session-other-job",
                "the attempt is of the job {attempt}, not of {job}",
                attempt = quote::quoted(attempt),
                job = quote::quoted(job)
            ),
            Self::JobChanged { job, found, expected } => sentence!(
                "session-job-changed",
                "the files of the job {job} have changed since the attempt was made (digest {found}…, the attempt has \
                 {expected}…); use the pack it was made with",
                job = quote::quoted(job),
                found = cut(found, DIGITS),
                expected = cut(expected, DIGITS)
            ),
            Self::Unknown(unknown) => unknown.sentence(),
            Self::Beyond(beyond) => {
                sentence!("session-beyond", "not done: {why}", why = beyond.sentence())
            }
            Self::Differs(difference) => difference.sentence(),
            Self::Fault(uncomputed) => uncomputed.sentence(),
            Self::NoHint(why) => why.sentence(),
            Self::Over => sentence!(
                "session-over",
                "the car has been handed back; this attempt is over. Begin a new one with --new"
            ),
        }
    }
}

/// Where the model could not go on.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("{}", self.sentence())]
pub struct Uncomputed {
    /// Tick of the attempt; 0 for the way to the workshop.
    pub tick: Tick,
    /// Short name of the part to look at first.
    pub part: Option<String>,
}

impl Uncomputed {
    /// Where, and what to look at, for every language.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        let s = format!("{:.2}", self.tick.s());
        match &self.part {
            Some(part) => sentence!(
                "session-uncomputed",
                "the model stops at second {s} of the work: the numbers of {part} are beyond what can be computed. \
                 Every action before this one is kept; the author of the pack must mend the car",
                s = s,
                part = part
            ),
            None => sentence!(
                "session-uncomputed-car",
                "the model stops at second {s} of the work: the numbers of this car are beyond what can be computed. \
                 Every action before this one is kept; the author of the pack must mend the car",
                s = s
            ),
        }
    }
}

/// First place where a replay differs from the record.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("{}", self.sentence())]
pub struct Difference {
    /// Number of the action.
    pub n: u32,
    /// The action in words.
    pub action: String,
    /// What differs.
    pub what: Differing,
    /// What came out now.
    pub found: String,
    /// What the file says.
    pub recorded: String,
    /// Version that made the attempt, when it was another one.
    pub engine: Option<String>,
}

/// What of an action differs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Differing {
    /// The tick at which it began.
    FirstTick,
    /// Why it was refused, or that it was.
    Refusal,
    /// The tick at which it ended.
    LastTick,
    /// What was shown.
    Reading,
    /// The digest of the state, at its end or at a minute before.
    Digest,
    /// How many digests of minutes there are.
    Minutes,
    /// What else is recorded.
    Rest,
}

impl Differing {
    fn sentence(self) -> Sentence {
        match self {
            Self::FirstTick => sentence!("differs-first-tick", "its first tick"),
            Self::Refusal => sentence!("differs-refusal", "its refusal"),
            Self::LastTick => sentence!("differs-last-tick", "its last tick"),
            Self::Reading => sentence!("differs-reading", "the reading"),
            Self::Digest => sentence!("differs-digest", "the state digest"),
            Self::Minutes => sentence!("differs-minutes", "the number of minute digests"),
            Self::Rest => sentence!("differs-rest", "the notes, record or breaches"),
        }
    }
}

impl Difference {
    /// Where it is, what was found and what is recorded, for every language.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        let (action, found) = (cut(&self.action, SHOWN), cut(&self.found, SHOWN));
        let recorded = cut(&self.recorded, SHOWN);
        match &self.engine {
            None => sentence!(
                "session-differs",
                "action {n} ({action}): {what} is {found}, recorded is {recorded}",
                n = self.n,
                action = action,
                what = self.what.sentence(),
                found = found,
                recorded = recorded
            ),
            Some(engine) => sentence!(
                "session-differs-version",
                "action {n} ({action}): {what} is {found}, recorded is {recorded} (the attempt was made with version \
                 {then}, this is {now})",
                n = self.n,
                action = action,
                what = self.what.sentence(),
                found = found,
                recorded = recorded,
                then = engine,
                now = ENGINE
            ),
        }
    }
}

/// Digits of a digest that are shown: enough to tell two apart.
const DIGITS: usize = 12;
/// Characters of an action or a value that are shown.
const SHOWN: usize = 60;

fn cut(text: &str, most: usize) -> String {
    text.chars().take(most).collect()
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
