//! Why words could not be read.

use std::path::PathBuf;

use crate::files::FileError;
use crate::locale::quote;

/// What is wrong with the files of words.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum LocaleError {
    /// The folder of languages cannot be read.
    #[error("the languages in {} cannot be read", quote::path(folder))]
    Languages {
        /// The folder.
        folder: PathBuf,
        /// Why.
        source: std::io::Error,
    },
    /// The folder of a language cannot be read.
    #[error("the language {tag:?} in {} cannot be read", quote::path(folder))]
    Language {
        /// Its tag.
        tag: String,
        /// The folder.
        folder: PathBuf,
        /// Why.
        source: std::io::Error,
    },
    /// A file cannot be read.
    #[error(transparent)]
    File(#[from] FileError),
    /// A folder is not named after a language.
    #[error("{tag:?} is no language tag, such as en or de-AT")]
    Tag {
        /// What it is called.
        tag: String,
    },
    /// A control character.
    #[error("{}, line {line}: the control character {} must not stand in words", quote::path(file), found.escape_default())]
    Control {
        /// Where.
        file: PathBuf,
        /// Where in it.
        line: usize,
        /// Which.
        found: char,
    },
    /// The form of a file is broken.
    #[error("{}, line {lines}: not written as words are; expected key = text", quote::path(file))]
    NotWords {
        /// Where.
        file: PathBuf,
        /// Where in it.
        lines: String,
    },
    /// A key has two texts.
    #[error("{}: {key} has its words already, here or in another file", quote::path(file))]
    Twice {
        /// Where.
        file: PathBuf,
        /// Which.
        key: String,
    },
}
