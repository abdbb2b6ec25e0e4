//! Files beside an attempt: its mark sheet, and a new attempt itself.

use std::path::{Path, PathBuf};

use super::Outputs;
use super::draft::Output;
use super::error::OutputError;
use super::kind::Kind;

/// Endings that the program writes or reads as something else: no attempt is called so, because its mark sheet
/// or another output would then have its name.
const ENDINGS: [&str; 9] = ["html", "htm", "json", "csv", "png", "svg", "script", "ron", "ftl"];

/// Where the mark sheet of an attempt goes: beside it, never onto it.
fn sheet_of(attempt: &Path) -> PathBuf {
    let is_html = attempt.extension().is_some_and(|e| e.eq_ignore_ascii_case("html"));
    if is_html { attempt.with_extension("html.html") } else { attempt.with_extension("html") }
}

/// Whether a new attempt may be called `path`: not as something that is written beside attempts, and so that its
/// mark sheet will have a place.
///
/// # Errors
/// When it may not.
pub fn new_attempt(path: &Path) -> Result<(), OutputError> {
    let ending = path.extension().map(|e| e.to_string_lossy().to_lowercase()).unwrap_or_default();
    if let Some(ending) = ENDINGS.into_iter().find(|e| *e == ending) {
        return Err(OutputError::AttemptName { path: path.to_owned(), ending });
    }
    // Trouble with the folder is told by whoever makes the attempt.
    match sheet_output(path) {
        Err(OutputError::System { .. }) => Ok(()),
        planned => planned.map(drop),
    }
}

/// Where the mark sheet of an attempt goes, if it may go there.
///
/// # Errors
/// When something else stands there, or it cannot be written.
pub fn sheet_output(attempt: &Path) -> Result<Output, OutputError> {
    Outputs::beside([&attempt.to_owned()]).plan("the mark sheet", &sheet_of(attempt), Kind::Sheet)
}
