//! What can go wrong with the file of an attempt, in sentences for every language.

use std::io;
use std::path::{Path, PathBuf};

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
        doing: &'static str,
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
        what: String,
    },
    /// A number that cannot be.
    OutOfRange {
        /// The file.
        path: PathBuf,
        /// Line, from 1.
        line: usize,
        /// Which number.
        what: &'static str,
        /// What it is.
        value: String,
        /// What it could be.
        bound: String,
    },
    /// A line that does not fit.
    Damaged {
        /// The file.
        path: PathBuf,
        /// Line, from 1.
        line: usize,
        /// What was found, what was expected, and what to do.
        what: String,
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
            Self::Io { doing, path, source } => cannot(doing, path, source),
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
                what = what
            ),
            Self::OutOfRange { path, line, what, value, bound } => sentence!(
                "attempt-out-of-range",
                "{file}, line {line}: {what} is {value}; {bound}{hint}",
                file = quote::path(path),
                line = *line,
                what = *what,
                value = value,
                bound = bound,
                hint = mend_hint(path, *line)
            ),
            Self::Damaged { path, line, what } => sentence!(
                "attempt-damaged",
                "{file}, line {line}: {what}{hint}",
                file = quote::path(path),
                line = *line,
                what = what,
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

    pub(super) fn io(doing: &'static str, path: &Path, source: io::Error) -> Self {
        Self::Io { doing, path: path.to_owned(), source }
    }
}

impl From<FileError> for AttemptError {
    fn from(error: FileError) -> Self {
        let what = match &error {
            FileError::NotRegular { what, .. } => format!("is {what}"),
            FileError::TooLarge { bytes, kind, .. } => {
                format!("{bytes} bytes are too many (at most {})", kind.most)
            }
            other => other.to_string(),
        };
        match error {
            FileError::System { path, doing: Doing::Read, source } => {
                Self::Io { doing: "read", path, source }
            }
            FileError::System { path, doing: Doing::Write, source } => {
                Self::Io { doing: "open for writing", path, source }
            }
            FileError::NotRegular { path, .. }
            | FileError::TooLarge { path, .. }
            | FileError::NotText { path, .. }
            | FileError::Outside { path, .. } => Self::NotAnAttempt { path, what },
        }
    }
}

/// What could not be done with a file; `doing` as in [`AttemptError::Io`].
fn cannot(doing: &str, path: &Path, error: &io::Error) -> Sentence {
    let file = quote::path(path);
    let why = files::refusal(error, if doing == "read" { Doing::Read } else { Doing::Write });
    match doing {
        "read" => sentence!("attempt-not-read", "cannot read {file}: {why}", file = file, why = why),
        "make" => sentence!("attempt-not-made", "cannot make {file}: {why}", file = file, why = why),
        "write" => sentence!("attempt-not-written", "cannot write {file}: {why}", file = file, why = why),
        doing => sentence!(
            "attempt-not-done",
            "cannot {doing} {file}: {why}",
            doing = doing,
            file = file,
            why = why
        ),
    }
}
