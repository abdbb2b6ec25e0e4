//! Files and folders that are not read at all.

use std::io;

use crate::files::{Doing, FileError, refusal, what_in_words};
use crate::locale::sentence::Sentence;
use crate::sentence;

/// Why a file or folder was not read.
#[derive(Debug)]
pub enum Unread {
    /// The system refused.
    System {
        /// What it said.
        source: io::Error,
    },
    /// A folder, pipe, device or socket under a file's name.
    NotRegular {
        /// What it is.
        what: &'static str,
    },
    /// A link that leads out of the data folder; what it leads to was not read.
    LeavesFolder,
    /// A file whose name no message and no command can take.
    NotAName,
    /// Larger than any honest file of this kind.
    TooLarge {
        /// Its size.
        bytes: u64,
        /// Largest size read.
        max: u64,
    },
    /// Not UTF-8 text.
    NotText {
        /// Line, from 1.
        line: usize,
        /// Offset of the first bad byte.
        at: usize,
    },
    /// A folder with more files than it may hold.
    TooManyFiles {
        /// How many there are.
        count: usize,
        /// How many there may be.
        max: usize,
    },
    /// A folder with more packs than it may hold.
    TooManyPacks {
        /// How many there are.
        count: usize,
        /// How many there may be.
        max: usize,
    },
}

impl Unread {
    /// Why, for every language.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        match self {
            Self::System { source } => {
                sentence!("data-not-read", "cannot be read ({why})", why = refusal(source, Doing::Read))
            }
            Self::NotRegular { what } => {
                sentence!("data-not-regular", "is {what}, not a regular file", what = what_in_words(what))
            }
            Self::LeavesFolder => sentence!(
                "data-leaves-folder",
                "is a link that leaves the data folder; put the file itself there"
            ),
            Self::NotAName => sentence!(
                "data-not-a-name",
                "the name of this file is no plain text; rename it with a to z, 0 to 9 and `-` or `_`"
            ),
            Self::TooLarge { bytes, max } => sentence!(
                "data-too-large",
                "{bytes} bytes; at most {max} bytes are read",
                bytes = *bytes,
                max = *max
            ),
            Self::NotText { line, at } => sentence!(
                "data-not-text",
                "line {line}, byte {at} is not UTF-8; save the file as UTF-8 text",
                line = *line,
                at = *at
            ),
            Self::TooManyFiles { count, max } => sentence!(
                "data-too-many-files",
                "{count} files in this folder; at most {max} may stand there",
                count = *count,
                max = *max
            ),
            Self::TooManyPacks { count, max } => sentence!(
                "data-too-many-packs",
                "{count} packs in this folder; at most {max} may stand there",
                count = *count,
                max = *max
            ),
        }
    }
}

impl From<FileError> for Unread {
    fn from(error: FileError) -> Self {
        match error {
            FileError::System { source, .. } => Self::System { source },
            FileError::NotRegular { what, .. } => Self::NotRegular { what },
            FileError::TooLarge { bytes, kind, .. } => Self::TooLarge { bytes, max: kind.most },
            FileError::NotText { line, at, .. } => Self::NotText { line, at },
            FileError::Outside { .. } => Self::LeavesFolder,
        }
    }
}
