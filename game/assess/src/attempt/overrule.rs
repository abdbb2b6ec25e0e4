//! An instructor overrides a mark: another total or verdict holds from then on, with reasons, as a second record beside the
//! first.
//!
//! The mark in the file is not touched. Each override is a line of its own behind it, chained like the others, so whoever
//! alters one later is found out; several may be given over time, all stay, the last holds. What an override leaves open
//! (only a verdict, say) stays as the program's own mark has it.

use std::path::{Path, PathBuf};

use super::clock::Clock;
use super::error::AttemptError;
use super::limits::MOST_OVERRIDES;
use super::mark_line::MarkLine;
use super::override_line::OverrideLine;
use super::record::{ENGINE, LONGEST_SEAT};
use super::writer::Writer;
use crate::locale::quote;
use crate::locale::sentence::Sentence;
use crate::sentence;

/// Longest reason, characters: a page.
pub const LONGEST_REASON: usize = 1_000;
/// Longest name or initials, characters.
pub const LONGEST_BY: usize = LONGEST_SEAT;

/// What an instructor wants to be held.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Ruling {
    /// Another total, 0 to 100.
    pub total: Option<f64>,
    /// Another verdict: competent, or not yet.
    pub competent: Option<bool>,
    /// Why.
    pub reason: String,
    /// Name or initials.
    pub by: String,
}

/// What stands in the file afterwards.
#[derive(Clone, Debug, PartialEq)]
pub struct Overruled {
    /// The program's own mark, as it was.
    pub mark: MarkLine,
    /// The new line.
    pub line: OverrideLine,
    /// Overrides before it.
    pub before: usize,
}

/// Why an override was not written; the file is as it was.
#[derive(Debug, thiserror::Error)]
#[error("{}", self.sentence())]
#[non_exhaustive]
pub enum OverrideError {
    /// The attempt's file: damaged, in use, may not be written.
    File(#[from] AttemptError),
    /// The car was not handed back, so there is nothing to override.
    NotFinished {
        /// The file.
        path: PathBuf,
    },
    /// Nobody has marked it, or its file keeps no mark.
    NotMarked {
        /// The file.
        path: PathBuf,
    },
    /// Neither a total nor a verdict.
    Nothing,
    /// A total that cannot be.
    Total {
        /// The number.
        value: f64,
    },
    /// No reason.
    NoReason,
    /// A reason longer than a page.
    LongReason {
        /// Characters.
        count: usize,
    },
    /// Nobody's name.
    NoName,
    /// A name longer than names are.
    LongName {
        /// Characters.
        count: usize,
    },
    /// As many as a file may hold.
    TooMany {
        /// The file.
        path: PathBuf,
    },
}

impl OverrideError {
    /// What is wrong, for every language.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        match self {
            Self::File(error) => error.sentence(),
            Self::NotFinished { path } => sentence!(
                "override-not-finished",
                "{file}: the car has not been handed back, so there is no mark to override",
                file = quote::path(path)
            ),
            Self::NotMarked { path } => sentence!(
                "override-not-marked",
                "{file} holds no mark yet; mark it first with: pinhole mark {file}",
                file = quote::path(path)
            ),
            Self::Nothing => sentence!(
                "override-nothing",
                "say what shall hold: --total and a number from 0 to 100, --competent or --not-yet"
            ),
            Self::Total { value } => sentence!(
                "override-total",
                "{value} is no total; expected 0 to 100",
                value = quote::number(*value)
            ),
            Self::NoReason => {
                sentence!("override-no-reason", "an override needs a reason; give it with --reason")
            }
            Self::LongReason { count } => sentence!(
                "override-long-reason",
                "a reason of {count} characters; at most {most} are kept",
                count = *count,
                most = LONGEST_REASON
            ),
            Self::NoName => {
                sentence!("override-no-name", "an override needs a name or initials; give them with --by")
            }
            Self::LongName { count } => sentence!(
                "override-long-name",
                "a name of {count} characters; at most {most} are kept",
                count = *count,
                most = LONGEST_BY
            ),
            Self::TooMany { path } => sentence!(
                "override-too-many",
                "{file} holds {most} overrides already; no more fit into it",
                file = quote::path(path),
                most = MOST_OVERRIDES
            ),
        }
    }
}

impl Ruling {
    /// As a line, if it is one. Texts are kept as they can be read again: without controls.
    fn line(&self, clock: &Clock) -> Result<OverrideLine, OverrideError> {
        if self.total.is_none() && self.competent.is_none() {
            return Err(OverrideError::Nothing);
        }
        if let Some(value) = self.total.filter(|total| !(0.0..=100.0).contains(total)) {
            return Err(OverrideError::Total { value });
        }
        let tidy = |text: &str| quote::tidied(text).trim().to_owned();
        let (reason, by) = (tidy(&self.reason), tidy(&self.by));
        match (reason.chars().count(), by.chars().count()) {
            (0, _) => Err(OverrideError::NoReason),
            (_, 0) => Err(OverrideError::NoName),
            (count, _) if LONGEST_REASON < count => Err(OverrideError::LongReason { count }),
            (_, count) if LONGEST_BY < count => Err(OverrideError::LongName { count }),
            _ => Ok(OverrideLine {
                total: self.total,
                competent: self.competent,
                reason,
                by,
                at_unix_ms: clock.now_ms(),
                engine: ENGINE.to_owned(),
            }),
        }
    }
}

/// Writes an override behind the mark of the attempt in a file.
///
/// # Errors
/// When the ruling says nothing, has no reason or name, or a total that cannot be; when the file is damaged, in use, may
/// not be written, or holds no mark. Nothing is written then.
pub fn overrule(path: &Path, ruling: &Ruling, clock: &Clock) -> Result<Overruled, OverrideError> {
    let line = ruling.line(clock)?;
    let (mut writer, attempt, _) = Writer::open(path)?;
    let path = || path.to_owned();
    if !attempt.is_finished() {
        return Err(OverrideError::NotFinished { path: path() });
    }
    let Some(mark) = attempt.mark else { return Err(OverrideError::NotMarked { path: path() }) };
    let before = attempt.overrides.len();
    if MOST_OVERRIDES <= before {
        return Err(OverrideError::TooMany { path: path() });
    }
    writer.append_override(&line)?;
    Ok(Overruled { mark, line, before })
}
