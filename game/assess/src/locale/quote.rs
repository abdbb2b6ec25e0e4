//! Text and numbers from outside as they may stand in a message: cut short, and without anything that a
//! terminal would obey or that would turn letters round.
//!
//! File names, typed words and the texts of packs and attempts can hold any character. Whoever prints one goes
//! through here; whoever reads one asks [`first_unsafe`].

use std::fmt::{self, Write as _};
use std::path::Path;

/// Characters of a quoted text that are shown; the rest is an ellipsis. Enough to recognise what was typed.
pub const LONGEST_QUOTE: usize = 60;
/// Characters of a path that are shown: its beginning and, more telling, its end.
const PATH_HEAD: usize = 30;
const PATH_TAIL: usize = 90;
/// Characters of a list of known names: with the sentence round it, it fits three lines of 100.
const LONGEST_LIST: usize = 200;
/// Likeness (0 to 1) from which a known name is offered for one that is not.
const CLOSE: f64 = 0.78;

/// Whether a character must not stand in a text: controls of a terminal (C0, DEL, C1, so also tab and line
/// feed), separators of lines and paragraphs, and what turns the direction of writing round.
#[must_use]
pub fn is_unsafe(c: char) -> bool {
    c.is_control()
        || matches!(c, '\u{2028}' | '\u{2029}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}' | '\u{fff9}'..='\u{fffb}')
}

/// How many lines a text may have.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lines {
    /// One.
    One,
    /// Several, parted by line feeds.
    Many,
}

/// The first character of `text` that must not stand there ([`is_unsafe`]), with its place in characters,
/// from 1.
#[must_use]
pub fn first_unsafe(text: &str, lines: Lines) -> Option<(usize, char)> {
    text.chars()
        .enumerate()
        .find(|(_, c)| is_unsafe(*c) && !(lines == Lines::Many && *c == '\n'))
        .map(|(i, c)| (i + 1, c))
}

/// A text with a blank for every character that must not stand in it.
#[must_use]
pub fn tidied(text: &str) -> String {
    text.chars().map(|c| if is_unsafe(c) { ' ' } else { c }).collect()
}

fn put(f: &mut impl fmt::Write, c: char) -> fmt::Result {
    if is_unsafe(c) { write!(f, "{}", c.escape_default()) } else { f.write_char(c) }
}

/// A whole message as it may reach a terminal: escapes in place of controls; line feeds stay.
#[must_use]
pub fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        if c == '\n' {
            out.push(c);
        } else {
            // Writing to a String cannot fail.
            put(&mut out, c).unwrap_or_default();
        }
    }
    out
}

/// A text from outside, in quotation marks; see [`quoted`].
#[derive(Clone, Copy, Debug)]
pub struct Quoted<'a>(&'a str, bool);

/// `text` in quotation marks, escaped, at most [`LONGEST_QUOTE`] characters of it.
#[must_use]
pub fn quoted(text: &str) -> Quoted<'_> {
    Quoted(text, true)
}

/// The same without the quotation marks.
#[must_use]
pub fn bare(text: &str) -> Quoted<'_> {
    Quoted(text, false)
}

impl fmt::Display for Quoted<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self(text, marks) = *self;
        if marks {
            f.write_char('"')?;
        }
        let mut chars = text.chars();
        for c in chars.by_ref().take(LONGEST_QUOTE) {
            if marks && c == '"' {
                f.write_char('\\')?;
            }
            put(f, c)?;
        }
        if chars.next().is_some() {
            f.write_char('…')?;
        }
        if marks { f.write_char('"') } else { Ok(()) }
    }
}

/// A path in a message; see [`path`].
#[derive(Clone, Copy, Debug)]
pub struct ShownPath<'a>(&'a Path);

/// A path as it may be shown: whatever is no text or a control as an escape, a long one without its middle.
#[must_use]
pub fn path(path: &Path) -> ShownPath<'_> {
    ShownPath(path)
}

impl fmt::Display for ShownPath<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut all = String::new();
        for chunk in self.0.as_os_str().as_encoded_bytes().utf8_chunks() {
            for c in chunk.valid().chars() {
                put(&mut all, c)?;
            }
            for byte in chunk.invalid() {
                write!(all, "\\x{byte:02x}")?;
            }
        }
        let n = all.chars().count();
        if n <= PATH_HEAD + PATH_TAIL {
            return f.write_str(&all);
        }
        let head: String = all.chars().take(PATH_HEAD).collect();
        let tail: String = all.chars().skip(n - PATH_TAIL).collect();
        write!(f, "{head}…{tail}")
    }
}

/// A number in a message; see [`number`].
#[derive(Clone, Copy, Debug)]
pub struct Number(f64);

/// A number with no more digits than it has (17 at most): very large and very small ones with an exponent, so
/// that 1e300 is not three hundred zeros.
#[must_use]
pub fn number(value: f64) -> Number {
    Number(value)
}

impl fmt::Display for Number {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let size = self.0.abs();
        let plain = !self.0.is_finite() || size <= 0.0 || (1e-5..1e15).contains(&size);
        if plain { write!(f, "{}", self.0) } else { write!(f, "{:e}", self.0) }
    }
}

/// The known name most like `typed`, if one is like it.
#[must_use]
pub fn nearest<'a>(typed: &str, known: &[&'a str]) -> Option<&'a str> {
    // What is longer than any name is like none, and comparing it would take long.
    if LONGEST_QUOTE < typed.chars().count() {
        return None;
    }
    let plain = |s: &str| s.to_lowercase().replace(['-', '_'], "");
    let typed = plain(typed);
    let scored = known.iter().map(|k| (strsim::jaro_winkler(&typed, &plain(k)), *k));
    let best = scored.fold(None, |best: Option<(f64, &'a str)>, this| match best {
        Some(best) if this.0 <= best.0 => Some(best),
        _ => Some(this),
    });
    best.filter(|(score, _)| CLOSE <= *score).map(|(_, k)| k)
}

/// Known names for a message about `typed`: all that fit, and the nearest when it is not among them; and how many
/// more there are.
pub(crate) fn fitting(typed: &str, known: &[&str]) -> (String, usize) {
    let mut text = String::new();
    let mut shown = 0;
    for name in known {
        let name = bare(name).to_string();
        if 0 < shown && LONGEST_LIST < text.chars().count() + 2 + name.chars().count() {
            break;
        }
        if 0 < shown {
            text.push_str(", ");
        }
        text.push_str(&name);
        shown += 1;
    }
    let left = known.len() - shown;
    match nearest(typed, known) {
        Some(near) if 0 < left && !known[..shown].contains(&near) => {
            (format!("{}; {text}", bare(near)), left)
        }
        _ => (text, left),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn controls_and_turned_writing_are_found_and_escaped() {
        for bad in ['\u{1b}', '\t', '\r', '\0', '\u{7f}', '\u{9b}', '\u{202e}', '\u{2066}', '\u{2028}'] {
            let text = format!("ab{bad}c");
            assert_eq!(first_unsafe(&text, Lines::Many), Some((3, bad)));
            assert!(!quoted(&text).to_string().contains(bad), "{bad:?}");
            assert!(!path(Path::new(&text)).to_string().contains(bad), "{bad:?}");
            assert!(!escaped(&text).contains(bad), "{bad:?}");
            assert!(!tidied(&text).contains(bad), "{bad:?}");
        }
        assert_eq!(first_unsafe("a\nb", Lines::Many), None);
        assert_eq!(first_unsafe("a\nb", Lines::One), Some((2, '\n')));
        assert_eq!(first_unsafe("Müller–Ω…", Lines::One), None);
    }

    #[test]
    fn long_texts_and_paths_are_cut() {
        let long = "x".repeat(5_000);
        assert_eq!(quoted(&long).to_string().chars().count(), LONGEST_QUOTE + 3);
        let shown = path(Path::new(&long)).to_string();
        assert_eq!(shown.chars().count(), PATH_HEAD + PATH_TAIL + 1);
        let known: Vec<String> = (0..9_000).map(|i| format!("name_{i}")).collect();
        let known: Vec<&str> = known.iter().map(String::as_str).collect();
        let (text, left) = fitting("name_8999", &known);
        assert!(text.chars().count() < LONGEST_LIST + 60 && text.starts_with("name_8999; name_0"), "{text}");
        assert!(8_900 < left && left < 9_000, "{left}");
    }

    #[test]
    fn numbers_have_no_more_digits_than_they_need() {
        for value in [1e300, -f64::MAX, 5e-324, 1.0 / 3.0, 12.5, 0.0, -47.25, 1e14 + 0.5, f64::NAN] {
            assert!(number(value).to_string().len() <= 24, "{}", number(value));
        }
        assert_eq!(number(1e300).to_string(), "1e300");
        assert_eq!(number(-47.0).to_string(), "-47");
    }

    #[cfg(unix)]
    #[test]
    fn a_name_that_is_no_text_is_shown_with_its_bytes() {
        use std::os::unix::ffi::OsStrExt as _;
        let name = std::ffi::OsStr::from_bytes(b"a\xff\x1b[2Jb");
        assert_eq!(path(Path::new(name)).to_string(), "a\\xff\\u{1b}[2Jb");
    }
}
