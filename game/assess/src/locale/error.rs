//! Why words could not be read.

use std::path::PathBuf;

use crate::files::FileError;
use crate::locale::quote::{self, bare, quoted};
use crate::locale::sentence::Sentence;
use crate::sentence;

/// What is wrong with the files of words.
#[derive(Debug, thiserror::Error)]
#[error("{}", self.sentence())]
#[non_exhaustive]
pub enum LocaleError {
    /// The folder of languages cannot be read.
    Languages {
        /// The folder.
        folder: PathBuf,
        /// Why.
        source: std::io::Error,
    },
    /// The folder of a language cannot be read.
    Language {
        /// Its tag.
        tag: String,
        /// The folder.
        folder: PathBuf,
        /// Why.
        source: std::io::Error,
    },
    /// A file cannot be read.
    File(#[from] FileError),
    /// A folder is not named after a language.
    Tag {
        /// What it is called.
        tag: String,
    },
    /// A control character.
    Control {
        /// Where.
        file: PathBuf,
        /// Where in it.
        line: usize,
        /// Which.
        found: char,
    },
    /// The form of a file is broken.
    NotWords {
        /// Where.
        file: PathBuf,
        /// Where in it.
        lines: String,
    },
    /// A key has two texts.
    Twice {
        /// Where.
        file: PathBuf,
        /// Which, where it is known.
        key: Option<String>,
    },
}

impl LocaleError {
    /// What is wrong, for whoever has another language to say it in; why the system refused is told by the source.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        match self {
            Self::Languages { folder, .. } => sentence!(
                "lang-no-folder",
                "the languages in {folder} cannot be read",
                folder = quote::path(folder)
            ),
            Self::Language { tag, folder, .. } => sentence!(
                "lang-not-read",
                "the language {tag} in {folder} cannot be read",
                tag = quoted(tag),
                folder = quote::path(folder)
            ),
            Self::File(error) => error.sentence(),
            Self::Tag { tag } => {
                sentence!("lang-no-tag", "{tag} is no language tag, such as en or de-AT", tag = quoted(tag))
            }
            Self::Control { file, line, found } => sentence!(
                "lang-control",
                "{file}, line {line}: the control character {found} must not stand in words",
                file = quote::path(file),
                line = *line,
                found = found.escape_default().to_string()
            ),
            Self::NotWords { file, lines } => sentence!(
                "lang-not-words",
                "{file}, line {lines}: not written as words are; expected key = text",
                file = quote::path(file),
                lines = lines
            ),
            Self::Twice { file, key: Some(key) } => sentence!(
                "lang-twice",
                "{file}: {key} has its words already, here or in another file",
                file = quote::path(file),
                key = bare(key)
            ),
            Self::Twice { file, key: None } => sentence!(
                "lang-some-twice",
                "{file}: a key has its words already, here or in another file",
                file = quote::path(file)
            ),
        }
    }
}
