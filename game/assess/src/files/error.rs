//! Why a file was not read or written, in sentences for every language.

use std::io;
use std::path::{Path, PathBuf};

use super::Kind;
use crate::locale::quote;
use crate::locale::sentence::{Sentence, Value};
use crate::sentence;

/// What was to be done with a file when the system refused.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Doing {
    /// Reading.
    Read,
    /// Writing, making, renaming.
    Write,
}

/// Why a file was not read.
#[derive(Debug, thiserror::Error)]
#[error("{}", self.sentence())]
#[non_exhaustive]
pub enum FileError {
    /// The operating system refused.
    System {
        /// The file.
        path: PathBuf,
        /// What was to be done.
        doing: Doing,
        /// What the system said.
        source: io::Error,
    },
    /// A folder, pipe, device or socket.
    NotRegular {
        /// The file.
        path: PathBuf,
        /// What it is.
        what: &'static str,
    },
    /// Longer than any honest file of its kind; the rest was not read.
    TooLarge {
        /// The file.
        path: PathBuf,
        /// Its size, as far as it was looked at.
        bytes: u64,
        /// Its kind.
        kind: Kind,
    },
    /// Not UTF-8.
    NotText {
        /// The file.
        path: PathBuf,
        /// Line of the first bad byte, from 1.
        line: usize,
        /// Offset of the first bad byte.
        at: usize,
    },
    /// A link that leads out of the folder it belongs to.
    Outside {
        /// The file.
        path: PathBuf,
        /// The folder it should be in.
        folder: PathBuf,
    },
}

impl FileError {
    pub(super) fn system(path: &Path, doing: Doing, source: io::Error) -> Self {
        Self::System { path: path.to_owned(), doing, source }
    }

    /// What is wrong, for every language.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        match self {
            Self::System { path, doing: Doing::Read, source } => sentence!(
                "file-not-read",
                "{file} cannot be read: {why}",
                file = quote::path(path),
                why = refusal(source, Doing::Read)
            ),
            Self::System { path, doing: Doing::Write, source } => sentence!(
                "file-not-written",
                "{file} cannot be written: {why}",
                file = quote::path(path),
                why = refusal(source, Doing::Write)
            ),
            Self::NotRegular { path, what } => sentence!(
                "file-not-regular",
                "{file} is {what}, not a regular file; name a file",
                file = quote::path(path),
                what = what_in_words(what)
            ),
            Self::TooLarge { path, bytes, kind } => sentence!(
                "file-too-large",
                "{file}: {bytes} bytes or more; at most {most} bytes are read of {what}",
                file = quote::path(path),
                bytes = *bytes,
                most = kind.most,
                what = kind.what
            ),
            Self::NotText { path, line, .. } => sentence!(
                "file-not-text",
                "{file}, line {line}: not UTF-8 text; save the file as UTF-8",
                file = quote::path(path),
                line = *line
            ),
            Self::Outside { path, folder } => sentence!(
                "file-outside",
                "{file} is a link that leaves {folder}; put the file itself there",
                file = quote::path(path),
                folder = quote::path(folder)
            ),
        }
    }
}

impl FileError {
    /// What is wrong with the file, without its name.
    #[must_use]
    pub(crate) fn about_it(&self) -> Sentence {
        match self {
            Self::NotRegular { what, .. } => sentence!("file-is", "is {what}", what = what_in_words(what)),
            Self::TooLarge { bytes, kind, .. } => sentence!(
                "file-bytes",
                "{bytes} bytes are too many (at most {most})",
                bytes = *bytes,
                most = kind.most
            ),
            other => other.sentence(),
        }
    }
}

/// The system's errors that a user can do something about, in plain words.
#[must_use]
pub fn system(error: &io::Error, doing: Doing) -> String {
    refusal(error, doing).to_string()
}

/// The same for every language; other errors in the system's own words.
#[must_use]
pub fn refusal(error: &io::Error, doing: Doing) -> Value {
    let known = match error.kind() {
        io::ErrorKind::NotFound => sentence!("system-not-found", "there is no such file or folder"),
        io::ErrorKind::PermissionDenied if doing == Doing::Read => {
            sentence!("system-no-reading", "no permission to read it; ask whoever owns it")
        }
        io::ErrorKind::PermissionDenied => {
            sentence!("system-no-writing", "no permission to write there; choose a folder you may write in")
        }
        io::ErrorKind::StorageFull => sentence!("system-full", "the disk is full; make room, then go on"),
        io::ErrorKind::QuotaExceeded => {
            sentence!("system-quota", "your share of the disk is used up; make room")
        }
        io::ErrorKind::FileTooLarge => {
            sentence!("system-limit", "the file may not grow any more; make room or lift the limit")
        }
        io::ErrorKind::ReadOnlyFilesystem => {
            sentence!("system-read-only", "the disk is read-only; choose another folder")
        }
        io::ErrorKind::IsADirectory => sentence!("system-folder", "that is a folder; name a file"),
        io::ErrorKind::NotADirectory => {
            sentence!("system-no-folder", "a file stands where a folder should be")
        }
        io::ErrorKind::InvalidFilename => {
            sentence!("system-name", "the system takes no such name (too long?)")
        }
        io::ErrorKind::BrokenPipe => sentence!("system-pipe", "nobody reads it any more"),
        _ => return quote::escaped(&error.to_string()).into(),
    };
    known.into()
}

/// What a path leads to, by [`what_it_is`], for every language.
#[must_use]
pub fn what_in_words(what: &str) -> Value {
    match what {
        "a folder" => sentence!("what-folder", "a folder").into(),
        "a pipe" => sentence!("what-pipe", "a pipe").into(),
        "a socket" => sentence!("what-socket", "a socket").into(),
        "a device" => sentence!("what-device", "a device").into(),
        "something else" => sentence!("what-else", "something else").into(),
        other => other.into(),
    }
}
