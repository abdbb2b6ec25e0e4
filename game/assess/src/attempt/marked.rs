//! The mark in the attempt's file: the line behind the hand-back, chained like the others.
//!
//! It is written once, by whoever marks the finished attempt first, and never again: a later marking by the
//! same version of the program must come to the same line, so it is compared. A difference means that the
//! file was rewritten, or that another version marked it; the line that stands there stays, and the marker
//! says so. Nothing is computed from the line. A file without it is whole.
//!
//! A program killed while it writes the line leaves a torn one, which is dropped like any other when the
//! file is opened again; the next marking writes it.

use crate::sentence;
use std::path::Path;

use crate::attempt::mark_line::{MarkLine, PartPoints};
use crate::attempt::{Attempt, AttemptError, ENGINE, Writer};
use crate::locale::sentence::Sentence;
use crate::marks::sheet::MarkSheet;

/// What became of a mark.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
pub enum Kept {
    /// It stands in the file now.
    Written,
    /// It stood there already, to the last digit.
    Same,
    /// Another one stands there, and stays.
    Differs {
        /// The one in the file.
        found: Box<MarkLine>,
        /// The one just computed.
        now: Box<MarkLine>,
    },
}

impl MarkLine {
    /// What is kept of a sheet; `None` when the car was not handed back.
    #[must_use]
    pub fn of(sheet: &MarkSheet) -> Option<Self> {
        let marks = sheet.marks.as_ref()?;
        let points = |part: &crate::marks::sheet::PartLine| PartPoints {
            part: part.letter.clone(),
            points: part.points,
        };
        Some(Self {
            scheme: sheet.scheme.clone(),
            engine: sheet.engine.clone(),
            job_digest: sheet.job_digest.clone(),
            total: marks.total,
            competent: marks.competent,
            parts: marks.parts.iter().map(points).collect(),
            deducted: marks.deducted,
        })
    }

    fn in_words(&self) -> Sentence {
        let total = format!("{:.1}", self.total);
        match self.competent {
            true => sentence!("kept-competent", "{total}, competent", total = total),
            false => sentence!("kept-not-yet", "{total}, not yet competent", total = total),
        }
    }
}

impl Kept {
    /// What to tell; `None` when there is nothing to tell.
    #[must_use]
    pub fn notice(&self) -> Option<Sentence> {
        let Self::Differs { found, now } = self else { return None };
        let why = if found.engine == ENGINE && found.scheme == now.scheme {
            sentence!(
                "kept-altered",
                "this version of the program gives the same mark each time, so the file was altered"
            )
        } else {
            sentence!(
                "kept-other-version",
                "it was marked with version {then} by {before}, this is version {version} by {scheme}",
                then = &found.engine,
                before = &found.scheme,
                version = ENGINE,
                scheme = &now.scheme
            )
        };
        Some(sentence!(
            "kept-differs",
            "The file carries another mark ({found}; now {now}): {why}. The mark in the file was left as it is.",
            found = found.in_words(),
            now = now.in_words(),
            why = why
        ))
    }
}

/// Writes `line` through `writer`, or compares it with the mark that stands there.
pub(crate) fn keep(
    writer: &mut Writer,
    found: Option<&MarkLine>,
    line: &MarkLine,
) -> Result<Kept, AttemptError> {
    if let Some(kept) = compare(found, line) {
        return Ok(kept);
    }
    writer.append_mark(line)?;
    Ok(Kept::Written)
}

fn compare(found: Option<&MarkLine>, line: &MarkLine) -> Option<Kept> {
    let found = found?;
    Some(if found == line {
        Kept::Same
    } else {
        Kept::Differs { found: Box::new(found.clone()), now: Box::new(line.clone()) }
    })
}

/// Writes the mark of an attempt that was read from `path` into that file, or compares it with the one that
/// stands there. `None` for a sheet without marks.
///
/// # Errors
/// When the file is in use, may not be written, or is no longer the attempt that was marked. The mark is then
/// merely not kept.
pub fn keep_in(path: &Path, attempt: &Attempt, sheet: &MarkSheet) -> Result<Option<Kept>, AttemptError> {
    let Some(line) = MarkLine::of(sheet) else { return Ok(None) };
    // To compare, nothing need be opened for writing.
    if let Some(kept) = compare(attempt.mark.as_ref(), &line) {
        return Ok(Some(kept));
    }
    let (mut writer, now, _) = Writer::open(path)?;
    if now.header != attempt.header || now.steps != attempt.steps {
        return Err(AttemptError::NotAnAttempt {
            path: path.to_owned(),
            what: sentence!("attempt-changed", "changed while it was being marked"),
        });
    }
    // Another marker may have been quicker.
    keep(&mut writer, now.mark.as_ref(), &line).map(Some)
}
