//! Why a file may not be written, or was not.

use std::io;
use std::path::PathBuf;

use assess::files::{self, Doing};
use assess::locale::quote;
use assess::locale::sentence::Sentence;
use assess::sentence;

use super::kind::Kind;

/// Why an output may not go where it was to go, or could not be written.
#[derive(Debug, thiserror::Error)]
#[error("{}", self.sentence())]
pub enum OutputError {
    /// It is one of the files the command reads.
    IsInput {
        /// As it was asked for on the command line, or what it is.
        flag: &'static str,
        /// The file.
        path: PathBuf,
    },
    /// Two outputs of one command.
    Twice {
        /// The second.
        flag: &'static str,
        /// The file.
        path: PathBuf,
        /// The first.
        other: &'static str,
    },
    /// An attempt.
    IsAttempt {
        /// As it was asked for.
        flag: &'static str,
        /// The file.
        path: PathBuf,
    },
    /// A file of another kind.
    Foreign {
        /// As it was asked for.
        flag: &'static str,
        /// The file.
        path: PathBuf,
        /// What was to be written.
        kind: Kind,
    },
    /// A new attempt with the ending of something else.
    AttemptName {
        /// The file.
        path: PathBuf,
        /// The ending.
        ending: &'static str,
    },
    /// A folder, a pipe, a device.
    NotAFile {
        /// As it was asked for.
        flag: &'static str,
        /// The file.
        path: PathBuf,
        /// What it is.
        what: &'static str,
    },
    /// A link to nothing.
    BrokenLink {
        /// As it was asked for.
        flag: &'static str,
        /// The file.
        path: PathBuf,
    },
    /// The system refused.
    System {
        /// As it was asked for.
        flag: &'static str,
        /// The file.
        path: PathBuf,
        /// What the system said.
        source: io::Error,
    },
}

impl OutputError {
    /// What is wrong, for every language.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        match self {
            Self::IsInput { flag, path } => sentence!(
                "output-is-input",
                "{flag} {file}: that file is read by this command and would be lost; name another",
                flag = *flag,
                file = quote::path(path)
            ),
            Self::Twice { flag, path, other } => sentence!(
                "output-twice",
                "{flag} {file}: {other} goes there already; name another",
                flag = *flag,
                file = quote::path(path),
                other = *other
            ),
            Self::IsAttempt { flag, path } => sentence!(
                "output-is-attempt",
                "{flag} {file}: that is an attempt, which nothing replaces; name another file",
                flag = *flag,
                file = quote::path(path)
            ),
            Self::Foreign { flag, path, kind } => sentence!(
                "output-foreign",
                "{flag} {file}: a file is there that is not {what} written by pinhole; move it away, or name another",
                flag = *flag,
                file = quote::path(path),
                what = kind.what()
            ),
            Self::AttemptName { path, ending } => sentence!(
                "output-attempt-name",
                "--attempt {file}: what ends in .{ending} is something else; let the name end in .attempt",
                file = quote::path(path),
                ending = *ending
            ),
            Self::NotAFile { flag, path, what } => sentence!(
                "output-no-file",
                "{flag} {file}: that is {what}, not a file; name a file",
                flag = *flag,
                file = quote::path(path),
                what = files::what_in_words(what)
            ),
            Self::BrokenLink { flag, path } => sentence!(
                "output-broken-link",
                "{flag} {file}: that is a link to a file that is not there; name the file itself",
                flag = *flag,
                file = quote::path(path)
            ),
            Self::System { flag, path, source } => sentence!(
                "output-not-written",
                "{flag} {file} cannot be written: {why}",
                flag = *flag,
                file = quote::path(path),
                why = files::refusal(source, Doing::Write)
            ),
        }
    }
}
