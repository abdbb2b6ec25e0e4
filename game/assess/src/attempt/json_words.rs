//! What the JSON library finds wrong with a line of an attempt, in words for people: keys and words are named with
//! those that are known, values by their form; nothing of the library's own speech, no second line number.

use serde_json::error::Category;

use crate::locale::quote::{self, Lines, bare};

/// The error in a sentence without a place in the file: the caller names file and line.
#[must_use]
pub(crate) fn said(error: &serde_json::Error) -> String {
    let column = error.column();
    match error.classify() {
        Category::Eof => return "the line ends in the middle of a value".to_owned(),
        Category::Syntax | Category::Io => return format!("column {column} is not written as JSON"),
        Category::Data => {}
    }
    let text = error.to_string();
    let text = text.rsplit_once(" at line ").map_or(text.as_str(), |(head, _)| head);
    let mut ticked = text.split('`').skip(1).step_by(2);
    let first = ticked.next().unwrap_or_default();
    let known: Vec<&str> = ticked.collect();
    let list = || quote::listed(first, &known);
    let expected = text.rsplit_once("expected ").map_or("", |(_, form)| form);
    if text.starts_with("unknown field") {
        format!("there is no key `{}` here; known keys: {}", bare(first), list())
    } else if text.starts_with("unknown variant") {
        format!("`{}` is none of: {}", bare(first), list())
    } else if text.starts_with("missing field") {
        format!("the key `{}` is missing", bare(first))
    } else if text.starts_with("duplicate field") {
        format!("the key `{}` stands twice", bare(first))
    } else if text.starts_with("invalid type") || text.starts_with("invalid value") {
        format!("column {column}: expected {}", form(expected))
    } else if text.starts_with("invalid length") {
        format!("column {column}: a list has too few or too many entries")
    } else {
        // Said by our own readers of seeds and digests.
        let own = quote::escaped(text);
        own.chars().take(160).collect()
    }
}

/// A form in plain words, as the reading library names it.
fn form(form: &str) -> &'static str {
    match form {
        "f64" => "a number",
        "u8" | "u16" | "u32" | "u64" | "usize" | "i64" => "a whole number in range",
        "a boolean" => "true or false",
        "a string" | "a borrowed string" => "a text",
        f if f.starts_with("a sequence") || f.starts_with("a tuple") || f.starts_with("tuple") => "a list",
        f if f.starts_with("struct") || f.starts_with("a map") => "a block of keys",
        _ => "another value",
    }
}

/// The first control character in a text of a line of JSON, wherever it stands, as a sentence: escapes in JSON
/// can hold any. `None` when there is none.
#[must_use]
pub(crate) fn control_in(line: &str) -> Option<String> {
    // Without an escape and without letters beyond ASCII there can be none: JSON itself forbids them.
    if !line.contains('\\') && line.bytes().all(|b| (0x20..0x7f).contains(&b)) {
        return None;
    }
    let value: serde_json::Value = serde_json::from_str(line).ok()?;
    let found = find(&value)?;
    Some(format!("a text holds the control character {}, which no text may", found.escape_default()))
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
            let said = said(&serde_json::from_str::<Thing>(text).unwrap_err());
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
