//! From a path to raw values: size, UTF-8, RON, each refused with its place.

use std::io::Read as _;
use std::path::Path;

use serde::de::DeserializeOwned;

use super::error::{PackError, PackErrors};

/// Largest file read, bytes. The largest of ours has some 30 kB.
pub const MAX_BYTES: u64 = 2_000_000;

/// Reads a text file of at most [`MAX_BYTES`].
///
/// # Errors
/// Unreadable, too large, not UTF-8.
pub(crate) fn text(path: &Path, file: &str) -> Result<String, PackErrors> {
    let unreadable = |source| PackErrors::from(PackError::Unreadable { file: file.to_owned(), source });
    // Looked at before it is opened: opening a pipe would wait for its other end.
    let meta = std::fs::metadata(path).map_err(unreadable)?;
    if !meta.is_file() {
        return Err(unreadable(std::io::Error::new(std::io::ErrorKind::InvalidInput, "not a regular file")));
    }
    if MAX_BYTES < meta.len() {
        return Err(PackErrors::from(PackError::TooLarge {
            file: file.to_owned(),
            bytes: meta.len(),
            max: MAX_BYTES,
        }));
    }
    // The file may have grown since: never take more than the limit.
    let mut bytes = Vec::new();
    let handle = std::fs::File::open(path).map_err(unreadable)?;
    handle.take(MAX_BYTES + 1).read_to_end(&mut bytes).map_err(unreadable)?;
    if MAX_BYTES < bytes.len() as u64 {
        return Err(PackErrors::from(PackError::TooLarge {
            file: file.to_owned(),
            bytes: bytes.len() as u64,
            max: MAX_BYTES,
        }));
    }
    String::from_utf8(bytes)
        .map_err(|e| PackError::NotText { file: file.to_owned(), at: e.utf8_error().valid_up_to() }.into())
}

/// Parses RON; optional values may be written bare.
///
/// # Errors
/// The first fault of the text, with its place.
pub(crate) fn parse<T: DeserializeOwned>(text: &str, file: &str) -> Result<T, PackErrors> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    ron::Options::default()
        .with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME)
        .from_str(text)
        .map_err(|e| syntax(e, text, file.to_owned()).into())
}

fn syntax(e: ron::error::SpannedError, text: &str, file: String) -> PackError {
    use ron::error::Error as Ron;
    let (line, column) = (e.span.start.line, e.span.start.col);
    let outer = |o: Option<String>| o.unwrap_or_else(|| "this block".to_owned());
    let whole = matches!(e.code, Ron::MissingStructField { .. } | Ron::TrailingCharacters);
    if !whole && (matches!(e.code, Ron::Eof | Ron::ExpectedStringEnd) || nothing_after(text, e.span.end)) {
        // A text that stops before its brackets close was cut off, whatever token is missed first.
        return PackError::Truncated { file, line, column };
    }
    match e.code {
        Ron::NoSuchStructField { expected, found, outer: o } => PackError::UnknownKey {
            file,
            line,
            column,
            inside: outer(o),
            key: found,
            known: expected.join(", "),
        },
        Ron::MissingStructField { field, outer: o } => {
            PackError::MissingKey { file, line, column, inside: outer(o), key: field }
        }
        Ron::DuplicateStructField { field, outer: o } => {
            PackError::DuplicateKey { file, line, column, inside: outer(o), key: field }
        }
        Ron::NoSuchEnumVariant { expected, found, outer: o } => PackError::UnknownWord {
            file,
            line,
            column,
            word: found,
            of: o.unwrap_or_else(|| "known word".to_owned()),
            known: expected.join(", "),
        },
        source => {
            let near = text.lines().nth(line.saturating_sub(1)).unwrap_or_default();
            let near: String = near.chars().skip(column.saturating_sub(1)).take(40).collect();
            PackError::Syntax { file, line, column, near, source }
        }
    }
}

/// Whether only white space follows the place `at`.
fn nothing_after(text: &str, at: ron::error::Position) -> bool {
    let mut rest = text.lines().skip(at.line.saturating_sub(1));
    let here = rest.next().unwrap_or_default();
    here.chars().skip(at.col).all(char::is_whitespace) && rest.all(|l| l.trim().is_empty())
}
