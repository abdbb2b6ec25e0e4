//! What is said while one works: noticed, refused, done, read.

use assess::locale::sentence::Sentence;
use sim_core::notice::{Gravity, Hazard, Notice, Refusal, Unmet};
use sim_core::observe::Reading;
use sim_core::units::Tick;

use crate::deed::Deed;

/// What kind of remark it is.
#[derive(Clone, Debug, PartialEq)]
pub enum RemarkKind {
    /// Something a person in the workshop notices.
    Noticed,
    /// Why an action was refused, and what to do.
    Refused,
    /// A breach of safety, with what should have been done.
    Breach(Gravity),
    /// What came of something that was done.
    Done(Deed),
    /// A reading or sense was taken.
    Read(Reading),
    /// A line of the record was filled, or not.
    Record {
        /// Short name of the line.
        item: String,
        /// The condition it asks for that was not met.
        unmet: Option<Unmet>,
    },
    /// The machine the program runs on fails: disk full, file locked.
    Trouble,
}

/// What was told.
#[derive(Clone, Debug, PartialEq)]
pub enum Told {
    /// Nothing more than its kind says: a deed, a reading, a line of the record.
    Nothing,
    /// Something a person in the workshop notices.
    Notice(Notice),
    /// Why an action was refused.
    Refusal(Refusal),
    /// A breach of safety.
    Hazard(Hazard),
    /// Something about the program, by its key and what stands in its gaps.
    Keyed(&'static str, Vec<(&'static str, String)>),
    /// What the machine the program runs on says.
    Said(Sentence),
}

/// Something that was said.
#[derive(Clone, Debug, PartialEq)]
pub struct Remark {
    /// Attempt tick at which it was said.
    pub tick: Tick,
    /// Kind.
    pub kind: RemarkKind,
    /// What was told.
    pub told: Told,
    /// Running number, from 1.
    pub n: u64,
}

/// Everything that was said in a job, oldest first.
#[derive(Debug, Default)]
pub(super) struct Remarks {
    all: Vec<Remark>,
    said: u64,
}

impl Remarks {
    pub(super) fn all(&self) -> &[Remark] {
        &self.all
    }

    pub(super) fn say(&mut self, tick: Tick, kind: RemarkKind, told: Told) {
        self.said += 1;
        self.all.push(Remark { tick, kind, told, n: self.said });
    }
}
