//! From a path to raw values: size, UTF-8, RON, each refused with its place and in words of our own.
//!
//! A message quotes at most one short word or sign of a file, and only of one inside the data folder: what a link
//! leads to, or what is no RON at all, is not read out through an error.

use std::path::Path;

use ron::error::Error as Ron;
use serde::de::DeserializeOwned;

use super::error::{Fault, Miswritten, PackError, PackErrors, Unread, Words};
use crate::files;
use crate::locale::known::known;
use crate::locale::quote;
use crate::locale::sentence::Sentence;
use crate::sentence;

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
    read().map_err(|e| PackError::new(file, Unread::from(e)).into())
}

/// Parses RON; optional values may be written bare.
///
/// # Errors
/// The first fault of the text, with its place.
pub(crate) fn parse<T: DeserializeOwned>(text: &str, file: &str) -> Result<T, PackErrors> {
    ron::Options::default()
        .with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME)
        .from_str(text)
        .map_err(|e| syntax(e, text, file).into())
}

fn syntax(e: ron::error::SpannedError, text: &str, file: &str) -> PackError {
    let (line, column) = (e.span.start.line, e.span.start.col);
    let whole = matches!(e.code, Ron::MissingStructField { .. } | Ron::TrailingCharacters);
    let what = if !whole
        && (matches!(e.code, Ron::Eof | Ron::ExpectedStringEnd) || nothing_after(text, e.span.end))
    {
        // A text that stops before its brackets close was cut off, whatever token is missed first.
        Miswritten::Truncated
    } else {
        miswritten(e.code, text, (line, column))
    };
    PackError::new(file, Fault::Written { line, column, what })
}

fn miswritten(code: Ron, text: &str, (line, column): (usize, usize)) -> Miswritten {
    match code {
        Ron::NoSuchStructField { expected, found, outer: inside } => {
            Miswritten::UnknownKey { inside, known: known(&found, expected), key: found }
        }
        Ron::MissingStructField { field: key, outer: inside } => Miswritten::MissingKey { inside, key },
        Ron::DuplicateStructField { field: key, outer: inside } => Miswritten::DuplicateKey { inside, key },
        Ron::NoSuchEnumVariant { expected, found, outer } => {
            let known = known(&found, expected);
            Miswritten::UnknownWord { word: found, of: Words::of(outer.as_deref()), known }
        }
        Ron::ExpectedDifferentStructName { expected: block, found } if is_ron(text) => {
            let expected = sentence!(
                "data-other-block",
                "expected the block `{block}( … )`, found `{found}`",
                block = block,
                found = quote::bare(&found)
            );
            Miswritten::Syntax { near: String::new(), expected }
        }
        code => {
            let near = if is_ron(text) { near(text, line, column) } else { String::new() };
            Miswritten::Syntax { near, expected: expected(&code) }
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

/// What the parser missed, in words.
fn expected(code: &Ron) -> Sentence {
    match code {
        Ron::ExpectedArray => sentence!("data-expected-list", "expected a list, [ … ]"),
        Ron::ExpectedArrayEnd => {
            sentence!("data-expected-end-of-list", "expected a comma or the ] that ends the list")
        }
        Ron::ExpectedBoolean => sentence!("data-expected-bool", "expected true or false"),
        Ron::ExpectedComma => sentence!("data-expected-comma", "expected a comma"),
        Ron::ExpectedFloat | Ron::FloatUnderscore | Ron::UnderscoreAtBeginning => {
            sentence!("data-expected-number", "expected a number")
        }
        Ron::ExpectedInteger | Ron::InvalidIntegerDigit { .. } => {
            sentence!("data-expected-whole", "expected a whole number")
        }
        Ron::IntegerOutOfBounds => {
            sentence!("data-expected-size", "expected a whole number from 0 to 4294967295")
        }
        Ron::ExpectedMap | Ron::ExpectedMapColon | Ron::ExpectedMapEnd => {
            sentence!("data-expected-key-value", "expected key: value")
        }
        Ron::ExpectedStructLike | Ron::ExpectedUnit => {
            sentence!("data-expected-block", "expected a block, ( … )")
        }
        Ron::ExpectedStructLikeEnd | Ron::ExpectedOptionEnd => {
            sentence!("data-expected-end-of-block", "expected a comma or the ) that ends the block")
        }
        Ron::ExpectedString | Ron::ExpectedChar => {
            sentence!("data-expected-text", "expected a text in quotation marks")
        }
        Ron::ExpectedIdentifier | Ron::InvalidIdentifier(_) | Ron::SuggestRawIdentifier(_) => {
            sentence!("data-expected-word", "expected a key or a word")
        }
        Ron::InvalidEscape(_) => {
            sentence!("data-no-such-escape", "no such escape in a text; a backslash itself is written twice")
        }
        Ron::UnclosedBlockComment => sentence!("data-open-remark", "a remark /* has no end */"),
        Ron::TrailingCharacters => sentence!("data-expected-end", "expected the end of the file"),
        Ron::ExceededRecursionLimit => {
            sentence!("data-too-deep", "blocks stand too deep inside one another")
        }
        Ron::ExpectedNamedStructLike(name) => named_block(name),
        Ron::ExpectedStructName(name) => named_block(name),
        Ron::ExpectedDifferentStructName { expected, .. } => named_block(expected),
        Ron::InvalidValueForType { expected, .. } => value(expected),
        Ron::ExpectedDifferentLength { found, .. } => {
            sentence!("data-length", "{found} values are too few or too many here", found = *found)
        }
        _ => sentence!("data-no-ron", "this is not written as RON"),
    }
}

fn named_block(name: &str) -> Sentence {
    sentence!("data-expected-named", "expected the block `{block}( … )`", block = quote::bare(name))
}

/// A form in plain words, as the reading library names it.
fn value(form: &str) -> Sentence {
    match form {
        "f64" | "f32" => sentence!("data-expected-number", "expected a number"),
        "u8" | "u16" | "u32" | "u64" | "usize" | "i32" | "i64" => {
            sentence!("data-expected-in-range", "expected a whole number in range")
        }
        "a string" | "a borrowed string" | "string" => {
            sentence!("data-expected-text", "expected a text in quotation marks")
        }
        "a boolean" => sentence!("data-expected-bool", "expected true or false"),
        "a sequence" => sentence!("data-expected-list", "expected a list, [ … ]"),
        f if f.starts_with("struct") || f.starts_with("a map") => {
            sentence!("data-expected-keys", "expected a block of keys with values")
        }
        f if f.starts_with("a tuple") || f.starts_with("tuple") => {
            sentence!("data-expected-values", "expected values in brackets, (1, 2)")
        }
        f if f.contains("enum") || f.contains("variant") => {
            sentence!("data-expected-listed", "expected one of the words that may stand here")
        }
        _ => sentence!("data-expected-other", "expected another value"),
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
