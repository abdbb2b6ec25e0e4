//! What the JSON library finds wrong with a line of an attempt, in words for people: keys and words are named with
//! those that are known, values by their form; nothing of the library's own speech, no second line number.

use serde_json::error::Category;

use super::record::NO_DIGEST;
use super::seed::NO_SEED;
use crate::locale::known::known;
use crate::locale::quote::{self, Lines, bare};
use crate::locale::sentence::Sentence;
use crate::sentence;

/// The error in a sentence without a place in the file: the caller names file and line.
#[must_use]
pub(crate) fn said(error: &serde_json::Error) -> Sentence {
    let column = error.column();
    match error.classify() {
        Category::Eof => return sentence!("json-cut-off", "the line ends in the middle of a value"),
        Category::Syntax | Category::Io => {
            return sentence!("json-no-json", "column {column} is not written as JSON", column = column);
        }
        Category::Data => {}
    }
    let text = error.to_string();
    let text = text.rsplit_once(" at line ").map_or(text.as_str(), |(head, _)| head);
    let mut ticked = text.split('`').skip(1).step_by(2);
    let first = ticked.next().unwrap_or_default();
    let names: Vec<&str> = ticked.collect();
    let list = || known(first, &names);
    let expected = text.rsplit_once("expected ").map_or("", |(_, form)| form);
    if text.starts_with("unknown field") {
        sentence!(
            "json-unknown-key",
            "there is no key `{key}` here; known keys: {known}",
            key = bare(first),
            known = list()
        )
    } else if text.starts_with("unknown variant") {
        sentence!("json-unknown-word", "`{word}` is none of: {known}", word = bare(first), known = list())
    } else if text.starts_with("missing field") {
        sentence!("json-missing-key", "the key `{key}` is missing", key = bare(first))
    } else if text.starts_with("duplicate field") {
        sentence!("json-key-twice", "the key `{key}` stands twice", key = bare(first))
    } else if text.starts_with("invalid type") || text.starts_with("invalid value") {
        sentence!(
            "json-other-form",
            "column {column}: expected {form}",
            column = column,
            form = form(expected)
        )
    } else if text.starts_with("invalid length") {
        sentence!("json-length", "column {column}: a list has too few or too many entries", column = column)
    } else if text == NO_DIGEST {
        sentence!("json-digest", "column {column}: expected 16 hexadecimal digits", column = column)
    } else if text == NO_SEED {
        sentence!("json-seed", "column {column}: expected 1 to 32 hexadecimal digits", column = column)
    } else {
        // No reader of ours says anything else.
        sentence!("json-no-value", "column {column} holds no value that can stand there", column = column)
    }
}

/// A form in plain words, as the reading library names it.
fn form(form: &str) -> Sentence {
    match form {
        "f64" => sentence!("json-number", "a number"),
        "u8" | "u16" | "u32" | "u64" | "usize" | "i64" => sentence!("json-whole", "a whole number in range"),
        "a boolean" => sentence!("json-bool", "true or false"),
        "a string" | "a borrowed string" => sentence!("json-text", "a text"),
        f if f.starts_with("a sequence") || f.starts_with("a tuple") || f.starts_with("tuple") => {
            sentence!("json-list", "a list")
        }
        f if f.starts_with("struct") || f.starts_with("a map") => sentence!("json-block", "a block of keys"),
        _ => sentence!("json-other", "another value"),
    }
}

/// The first control character in a text of a line of JSON, wherever it stands, as a sentence: escapes in JSON
/// can hold any. `None` when there is none.
#[must_use]
pub(crate) fn control_in(line: &str) -> Option<Sentence> {
    // Without an escape and without letters beyond ASCII there can be none: JSON itself forbids them.
    if !line.contains('\\') && line.bytes().all(|b| (0x20..0x7f).contains(&b)) {
        return None;
    }
    let value: serde_json::Value = serde_json::from_str(line).ok()?;
    let found = find(&value)?;
    Some(sentence!(
        "json-control",
        "a text holds the control character {found}, which no text may",
        found = found.escape_default().to_string()
    ))
}

fn find(value: &serde_json::Value) -> Option<char> {
    let of_text = |text: &str| quote::first_unsafe(text, Lines::One).map(|(_, c)| c);
    match value {
        serde_json::Value::String(text) => of_text(text),
        serde_json::Value::Array(all) => all.iter().find_map(find),
        serde_json::Value::Object(all) => {
            all.iter().find_map(|(key, value)| of_text(key).or_else(|| find(value)))
        }
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[derive(Debug, serde::Deserialize)]
    #[serde(rename_all = "snake_case", deny_unknown_fields)]
    #[expect(dead_code, reason = "only read")]
    struct Thing {
        n: u32,
        kind: Kind,
    }

    #[derive(Debug, serde::Deserialize)]
    #[serde(rename_all = "snake_case")]
    enum Kind {
        Hose,
        Tee,
    }

    #[test]
    fn nothing_of_the_librarys_own_speech_is_left() {
        for (text, wanted) in [
            ("{\"n\":1,\"kind\":\"hose\",\"x\":1}", "no key `x` here; known keys: n, kind"),
            ("{\"n\":1,\"kind\":\"hoose\"}", "`hoose` is none of: hose, tee"),
            ("{\"n\":1}", "`kind` is missing"),
            ("{\"n\":1,\"n\":2}", "`n` stands twice"),
            ("{\"n\":\"one\"}", "expected a whole number"),
            ("{\"n\":-1}", "expected a whole number"),
            ("[1]", "too few or too many"),
            ("{\"n\":1", "middle of a value"),
            ("{n:1}", "not written as JSON"),
        ] {
            let said = said(&serde_json::from_str::<Thing>(text).unwrap_err()).to_string();
            assert!(said.contains(wanted), "{text}: {said}");
            for own in ["variant", "identifier", "struct", "field", "line", "invalid", "u32"] {
                assert!(!said.replace("the line ends", "").contains(own), "{text}: {said}");
            }
        }
    }

    #[test]
    fn controls_are_found_in_every_text() {
        assert_eq!(control_in("{\"a\":\"b\"}"), None);
        assert_eq!(control_in("{\"a\":\"Müller \\u00b5\"}"), None);
        for bad in
            ["{\"a\":\"\\u001b[2J\"}", "{\"a\":[{\"b\":\"\\t\"}]}", "{\"a\":\"\u{202e}\"}", "{\"\\u007f\":1}"]
        {
            assert!(control_in(bad).is_some(), "{bad}");
        }
    }
}
