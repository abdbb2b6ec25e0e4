//! From a path to raw values: size, UTF-8, RON, each refused with its place and in words of our own.
//!
//! A message quotes at most one short word or sign of a file, and only of one inside the data folder: what a link
//! leads to, or what is no RON at all, is not read out through an error.

use std::path::Path;

use ron::error::Error as Ron;
use serde::de::DeserializeOwned;

use super::error::{PackError, PackErrors};
use crate::files;
use crate::locale::quote;

/// Largest file read, bytes.
pub const MAX_BYTES: u64 = files::DATA.most;
/// Longest word of a file that is quoted, characters.
const LONGEST_NEAR: usize = 24;

/// Reads a text file of at most [`MAX_BYTES`] that lies inside `root`, a real place.
///
/// # Errors
/// Unreadable, no regular file, outside of `root`, too large, not UTF-8.
pub(crate) fn text(root: &Path, path: &Path, file: &str) -> Result<String, PackErrors> {
    let read = || files::read_text(&files::inside(root, path)?, files::DATA);
    read().map_err(|e| PackError::of_file(e, file).into())
}

/// Parses RON; optional values may be written bare.
///
/// # Errors
/// The first fault of the text, with its place.
pub(crate) fn parse<T: DeserializeOwned>(text: &str, file: &str) -> Result<T, PackErrors> {
    ron::Options::default()
        .with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME)
        .from_str(text)
        .map_err(|e| syntax(e, text, file.to_owned()).into())
}

fn syntax(e: ron::error::SpannedError, text: &str, file: String) -> PackError {
    let (line, column) = (e.span.start.line, e.span.start.col);
    let outer = |o: Option<String>| o.unwrap_or_else(|| "this block".to_owned());
    let whole = matches!(e.code, Ron::MissingStructField { .. } | Ron::TrailingCharacters);
    if !whole && (matches!(e.code, Ron::Eof | Ron::ExpectedStringEnd) || nothing_after(text, e.span.end)) {
        // A text that stops before its brackets close was cut off, whatever token is missed first.
        return PackError::Truncated { file, line, column };
    }
    match e.code {
        Ron::NoSuchStructField { expected, found, outer: o } => {
            let known = quote::listed(&found, expected);
            PackError::UnknownKey { file, line, column, inside: outer(o), key: found, known }
        }
        Ron::MissingStructField { field, outer: o } => {
            PackError::MissingKey { file, line, column, inside: outer(o), key: field }
        }
        Ron::DuplicateStructField { field, outer: o } => {
            PackError::DuplicateKey { file, line, column, inside: outer(o), key: field }
        }
        Ron::NoSuchEnumVariant { expected, found, outer: o } => {
            let known = quote::listed(&found, expected);
            PackError::UnknownWord { file, line, column, word: found, of: words_of(o.as_deref()), known }
        }
        Ron::ExpectedDifferentStructName { expected: block, found } if is_ron(text) => {
            let expected = format!("expected the block `{block}( … )`, found `{}`", quote::bare(&found));
            PackError::Syntax { file, line, column, near: String::new(), expected }
        }
        code => {
            let near = if is_ron(text) { near(text, line, column) } else { String::new() };
            PackError::Syntax { file, line, column, near, expected: expected(&code) }
        }
    }
}

/// Whether a text at least begins as RON does, with a block and its name: only of such a one a word is quoted.
fn is_ron(text: &str) -> bool {
    let mut lines = text.lines().map(str::trim).filter(|l| !l.is_empty() && !l.starts_with("//"));
    let first = lines.next().unwrap_or_default();
    let name = first.split('(').next().unwrap_or_default();
    name.len() < first.len() && name.len() <= LONGEST_NEAR && name.trim().chars().all(char::is_alphanumeric)
}

/// The words of a list, by the name the list has in the program.
fn words_of(list: Option<&str>) -> &'static str {
    match list {
        Some("Station") => "the stations",
        Some("PartKind") => "the kinds of part",
        Some("RecordKind") => "the kinds of record line",
        Some("InstrumentKind") => "the displays",
        Some("Symptom") => "the symptoms",
        Some("Sheet") => "the sheets",
        Some("Side") => "the sides",
        Some("Shell") => "the bodies",
        Some("Colour") => "the colours of a wire",
        Some("End") => "the ends of a wire",
        Some("CoverShape") => "the shapes of a cover",
        Some("FixtureShape") => "the fixtures",
        _ => "the words that may stand here",
    }
}

/// What the parser missed, in words.
fn expected(code: &Ron) -> String {
    let plain = match code {
        Ron::ExpectedArray => "expected a list, [ … ]",
        Ron::ExpectedArrayEnd => "expected a comma or the ] that ends the list",
        Ron::ExpectedBoolean => "expected true or false",
        Ron::ExpectedComma => "expected a comma",
        Ron::ExpectedFloat | Ron::FloatUnderscore | Ron::UnderscoreAtBeginning => "expected a number",
        Ron::ExpectedInteger | Ron::InvalidIntegerDigit { .. } => "expected a whole number",
        Ron::IntegerOutOfBounds => "expected a whole number from 0 to 4294967295",
        Ron::ExpectedMap | Ron::ExpectedMapColon | Ron::ExpectedMapEnd => "expected key: value",
        Ron::ExpectedStructLike | Ron::ExpectedUnit => "expected a block, ( … )",
        Ron::ExpectedStructLikeEnd | Ron::ExpectedOptionEnd => {
            "expected a comma or the ) that ends the block"
        }
        Ron::ExpectedString | Ron::ExpectedChar => "expected a text in quotation marks",
        Ron::ExpectedIdentifier | Ron::InvalidIdentifier(_) | Ron::SuggestRawIdentifier(_) => {
            "expected a key or a word"
        }
        Ron::InvalidEscape(_) => "no such escape in a text; a backslash itself is written twice",
        Ron::UnclosedBlockComment => "a remark /* has no end */",
        Ron::TrailingCharacters => "expected the end of the file",
        Ron::ExceededRecursionLimit => "blocks stand too deep inside one another",
        Ron::ExpectedNamedStructLike(name) => return format!("expected the block `{name}( … )`"),
        Ron::ExpectedStructName(name) => return format!("expected the block `{}( … )`", quote::bare(name)),
        Ron::ExpectedDifferentStructName { expected, .. } => {
            return format!("expected the block `{expected}( … )`");
        }
        Ron::InvalidValueForType { expected, .. } => return format!("expected {}", value(expected)),
        Ron::ExpectedDifferentLength { found, .. } => {
            return format!("{found} values are too few or too many here");
        }
        _ => "this is not written as RON",
    };
    plain.to_owned()
}

/// A form in plain words, as the reading library names it.
pub(crate) fn value(form: &str) -> &'static str {
    match form {
        "f64" | "f32" => "a number",
        "u8" | "u16" | "u32" | "u64" | "usize" | "i32" | "i64" => "a whole number in range",
        "a string" | "a borrowed string" | "string" => "a text in quotation marks",
        "a boolean" => "true or false",
        "a sequence" => "a list, [ … ]",
        f if f.starts_with("struct") || f.starts_with("a map") => "a block of keys with values",
        f if f.starts_with("a tuple") || f.starts_with("tuple") => "values in brackets, (1, 2)",
        f if f.contains("enum") || f.contains("variant") => "one of the words that may stand here",
        _ => "another value",
    }
}

/// The word or sign at a place; nothing when it is longer than a word.
fn near(text: &str, line: usize, column: usize) -> String {
    let here = text.lines().nth(line.saturating_sub(1)).unwrap_or_default();
    let mut rest = here.chars().skip(column.saturating_sub(1)).skip_while(|c| c.is_whitespace()).peekable();
    let in_word = |c: &char| c.is_ascii_alphanumeric() || matches!(c, '_' | '.' | '-' | '+');
    match rest.peek() {
        Some(c) if in_word(c) => {
            let word: String = rest.take_while(in_word).take(LONGEST_NEAR + 1).collect();
            if word.len() <= LONGEST_NEAR { word } else { String::new() }
        }
        Some(c) if c.is_ascii_punctuation() => c.to_string(),
        _ => String::new(),
    }
}

/// Whether only white space follows the place `at`.
fn nothing_after(text: &str, at: ron::error::Position) -> bool {
    let mut rest = text.lines().skip(at.line.saturating_sub(1));
    let here = rest.next().unwrap_or_default();
    here.chars().skip(at.col).all(char::is_whitespace) && rest.all(|l| l.trim().is_empty())
}
