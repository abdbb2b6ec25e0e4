//! What can go wrong with the file of an attempt, in sentences for every language.

use std::io;
use std::path::{Path, PathBuf};

use crate::attempt::limits::Beyond;
use crate::files::{self, Doing, FileError};
use crate::locale::quote;
use crate::locale::sentence::{Sentence, Value};
use crate::sentence;

/// What went wrong with an attempt file.
#[derive(Debug, thiserror::Error)]
#[error("{}", self.sentence())]
#[non_exhaustive]
pub enum AttemptError {
    /// The operating system refused.
    Io {
        /// What was being done.
        doing: Task,
        /// The file or folder.
        path: PathBuf,
        /// What the system said.
        source: io::Error,
    },
    /// A new attempt must not overwrite an old one.
    Exists {
        /// The file.
        path: PathBuf,
    },
    /// Another program has it.
    InUse {
        /// The file.
        path: PathBuf,
    },
    /// Not a regular file, or too long.
    NotAnAttempt {
        /// The file.
        path: PathBuf,
        /// What is wrong with it.
        what: Sentence,
    },
    /// A number that cannot be.
    OutOfRange {
        /// The file.
        path: PathBuf,
        /// Line, from 1.
        line: usize,
        /// Which, what it is, what it could be.
        beyond: Beyond,
    },
    /// A line that does not fit.
    Damaged {
        /// The file.
        path: PathBuf,
        /// Line, from 1.
        line: usize,
        /// What was found, and what was expected.
        what: Sentence,
    },
    /// The system has no randomness to give.
    NoRandomness {
        /// What the system said.
        source: getrandom::Error,
    },
    /// Our own data could not be written as JSON.
    Form {
        /// What the writer said.
        source: serde_json::Error,
    },
    /// An earlier write failed, so nothing more may happen.
    Stopped {
        /// The file.
        path: PathBuf,
    },
}

/// What to do about a damaged line; nothing can be kept without the first.
fn mend_hint(path: &Path, line: usize) -> Value {
    if line < 2 {
        return String::new().into();
    }
    sentence!(
        "attempt-mend-hint",
        ".\nThe lines before it are whole; keep them with: pinhole mend {file}",
        file = quote::path(path)
    )
    .into()
}

impl AttemptError {
    /// What is wrong, for every language.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        match self {
            Self::Io { doing, path, source } => cannot(*doing, path, source),
            Self::Exists { path } => sentence!(
                "bench-exists",
                "{file} exists already; carry it on with --resume, or name another file",
                file = quote::path(path)
            ),
            Self::InUse { path } => sentence!(
                "attempt-in-use",
                "{file} is in use by another program; close that one first",
                file = quote::path(path)
            ),
            Self::NotAnAttempt { path, what } => sentence!(
                "attempt-is-none",
                "{file}: {what}; expected an attempt file written by pinhole",
                file = quote::path(path),
                what = what.clone()
            ),
            Self::OutOfRange { path, line, beyond } => sentence!(
                "attempt-out-of-range",
                "{file}, line {line}: {beyond}{hint}",
                file = quote::path(path),
                line = *line,
                beyond = beyond.sentence(),
                hint = mend_hint(path, *line)
            ),
            Self::Damaged { path, line, what } => sentence!(
                "attempt-damaged",
                "{file}, line {line}: {what}{hint}",
                file = quote::path(path),
                line = *line,
                what = what.clone(),
                hint = mend_hint(path, *line)
            ),
            Self::NoRandomness { source } => sentence!(
                "attempt-no-randomness",
                "the system gives no random numbers for a seed ({why}); give one with --seed",
                why = source.to_string()
            ),
            Self::Form { source } => sentence!(
                "attempt-form",
                "this action cannot be written down: {why}",
                why = source.to_string()
            ),
            Self::Stopped { path } => sentence!(
                "attempt-stopped",
                "{file} could not be written before; nothing more is done in it. Make room, then carry the attempt on",
                file = quote::path(path)
            ),
        }
    }

    pub(super) fn io(doing: Task, path: &Path, source: io::Error) -> Self {
        Self::Io { doing, path: path.to_owned(), source }
    }
}

impl From<FileError> for AttemptError {
    fn from(error: FileError) -> Self {
        let what = error.about_it();
        match error {
            FileError::System { path, doing: Doing::Read, source } => {
                Self::Io { doing: Task::Read, path, source }
            }
            FileError::System { path, doing: Doing::Write, source } => {
                Self::Io { doing: Task::OpenForWriting, path, source }
            }
            FileError::NotRegular { path, .. }
            | FileError::TooLarge { path, .. }
            | FileError::NotText { path, .. }
            | FileError::Outside { path, .. } => Self::NotAnAttempt { path, what },
        }
    }
}

/// What was to be done with a file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Task {
    /// Read it.
    Read,
    /// Make it.
    Make,
    /// Write it.
    Write,
    /// Open it for writing.
    OpenForWriting,
    /// Write another beside it.
    WriteBeside,
    /// Cut off its torn last line.
    CutTornLine,
    /// Lock it.
    Lock,
    /// Keep a damaged file under this name.
    KeepDamaged,
}

/// What could not be done with a file.
fn cannot(task: Task, path: &Path, error: &io::Error) -> Sentence {
    let file = quote::path(path);
    let why = files::refusal(error, if task == Task::Read { Doing::Read } else { Doing::Write });
    match task {
        Task::Read => sentence!("attempt-not-read", "cannot read {file}: {why}", file = file, why = why),
        Task::Make => sentence!("attempt-not-made", "cannot make {file}: {why}", file = file, why = why),
        Task::Write => sentence!("attempt-not-written", "cannot write {file}: {why}", file = file, why = why),
        Task::OpenForWriting => {
            sentence!("attempt-not-opened", "cannot open for writing {file}: {why}", file = file, why = why)
        }
        Task::WriteBeside => {
            sentence!("attempt-nothing-beside", "cannot write beside {file}: {why}", file = file, why = why)
        }
        Task::CutTornLine => sentence!(
            "attempt-not-cut",
            "cannot cut the torn last line off {file}: {why}",
            file = file,
            why = why
        ),
        Task::Lock => sentence!("attempt-not-locked", "cannot lock {file}: {why}", file = file, why = why),
        Task::KeepDamaged => sentence!(
            "attempt-not-kept",
            "cannot keep the damaged file as {file}: {why}",
            file = file,
            why = why
        ),
    }
}
