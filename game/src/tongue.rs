//! The language of the command line and the text bench: `--lang`, else the settings', else the system's.
//!
//! It decides what is said and never what is recorded: attempts, tables and JSON are the same in every language.

use std::ffi::OsString;
use std::fmt::Display;
use std::path::PathBuf;

use assess::locale::quote;
use assess::sentence;
use front::places::{self, Places};
use front::prefs::Prefs;
use front::words::Words;

/// Says a key with its values: `say!(words, "bench-noted", n = 3, what = text)`.
macro_rules! say {
    ($words:expr, $key:literal $(, $name:ident = $value:expr)* $(,)?) => {
        $words.say_with($key, &[$((stringify!($name), $value.into())),*])
    };
}
pub(crate) use say;

/// What the command line says of the language before it is read as a whole: its own help and its slips are in that
/// language too.
#[derive(Debug, Default, PartialEq)]
struct Wanted {
    lang: Option<String>,
    data: Option<PathBuf>,
}

impl Wanted {
    fn of(args: impl IntoIterator<Item = OsString>) -> Self {
        let mut wanted = Self::default();
        let mut args = args.into_iter().skip(1);
        while let Some(word) = args.next() {
            let Some(word) = word.to_str() else { continue };
            match word.split_once('=').map_or((word, None), |(flag, value)| (flag, Some(value))) {
                ("--", None) => break,
                ("--lang", Some(tag)) => wanted.lang = Some(tag.to_owned()),
                ("--lang", None) => wanted.lang = args.next().and_then(|v| v.into_string().ok()),
                ("--data", Some(folder)) => wanted.data = Some(folder.into()),
                ("--data", None) => wanted.data = args.next().map(PathBuf::from),
                _ => {}
            }
        }
        wanted
    }
}

/// The words of the language that is wanted; and what is wrong when there is no such language, or its files cannot be
/// read: then that is said in the language of the settings or the system, or in the English that is built in.
pub(crate) fn words(args: impl IntoIterator<Item = OsString>) -> (Words, Option<anyhow::Error>) {
    let wanted = Wanted::of(args);
    let places = Places { data: wanted.data, ..Places::default() };
    // A data folder that is not there is told by the command that needs it, in words from elsewhere.
    let elsewhere = || places::data(&Places::default());
    let Ok(root) = places::data(&places).or_else(|_| elsewhere()) else { return (Words::built_in(), None) };
    // A folder of data may come without languages.
    if !root.join("assets/locales").is_dir() {
        return (Words::built_in(), None);
    }
    let prefs = Prefs::load();
    let open = |tag: Option<&str>| Words::open(&root, &prefs.languages_or(tag));
    let else_in = |wrong: anyhow::Error| (open(None).unwrap_or_else(|_| Words::built_in()), Some(wrong));
    let words = match open(wanted.lang.as_deref()) {
        Ok(words) => words,
        Err(error) => return else_in(error),
    };
    match &wanted.lang {
        Some(tag) if !speaks(&words, tag) => else_in(anyhow::Error::new(sentence!(
            "lang-unknown",
            "--lang {tag}: there is no such language; there are {known}",
            tag = quote::bare(tag),
            known = words.tags().join(", ")
        ))),
        _ => (words, None),
    }
}

/// Whether what was found is what was asked for, and not what stands in for it.
fn speaks(words: &Words, asked: &str) -> bool {
    let language = |tag: &str| tag.split(['-', '_']).next().unwrap_or_default().to_lowercase();
    language(words.tag()) == language(asked)
}

/// A number as the language writes it, from one with a point.
pub(crate) fn decimal(words: &Words, number: impl Display) -> String {
    number.to_string().replace('.', &words.say("decimal-mark"))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn wanted(line: &str) -> Wanted {
        Wanted::of(line.split(' ').map(OsString::from))
    }

    #[test]
    fn the_language_is_found_wherever_it_stands() {
        for line in ["pinhole --lang de text", "pinhole text --lang=de", "pinhole --data x text --lang de"] {
            assert_eq!(wanted(line).lang.as_deref(), Some("de"), "{line}");
        }
        assert_eq!(wanted("pinhole text --data x").data, Some("x".into()));
        assert_eq!(wanted("pinhole text -- --lang de"), Wanted::default());
        assert_eq!(wanted("pinhole text --lang"), Wanted::default());
    }
}
