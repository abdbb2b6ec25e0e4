//! An error in words that a person can use.

use std::io;
use std::path::Path;

use assess::attempt::AttemptError;
use assess::files::{self, Doing, FileError};
use assess::locale::Locale;
use assess::locale::quote;
use assess::locale::sentence::Sentence;
use assess::play::SessionError;
use assess::play::script::ScriptError;
use assess::words::WordsError;

use crate::output::OutputError;

/// The causes of an error in one sentence; a cause that its parent quotes already is not said twice.
#[must_use]
pub fn message(error: &anyhow::Error) -> String {
    let mut text = String::new();
    for cause in error.chain() {
        let said = match cause.downcast_ref::<io::Error>() {
            // The system's own words, unless they stand there in ours.
            Some(e) if [Doing::Read, Doing::Write].iter().any(|d| text.contains(&files::system(e, *d))) => {
                continue;
            }
            Some(e) => files::system(e, Doing::Write),
            None => cause.to_string(),
        };
        if text.contains(&said) {
            continue;
        }
        if !text.is_empty() {
            text.push_str(": ");
        }
        text.push_str(&said);
    }
    quote::escaped(&text)
}

/// The same in a language; what has no words there is said in English.
#[must_use]
pub fn message_in(words: &Locale, error: &anyhow::Error) -> String {
    // What the parent quotes already is found by the English, which both have.
    let (mut english, mut text) = (String::new(), String::new());
    for cause in error.chain() {
        let (plain, said) = match cause.downcast_ref::<io::Error>() {
            Some(e)
                if [Doing::Read, Doing::Write].iter().any(|d| english.contains(&files::system(e, *d))) =>
            {
                continue;
            }
            Some(e) => (files::system(e, Doing::Write), words.value(&files::refusal(e, Doing::Write))),
            None => (cause.to_string(), in_language(words, cause)),
        };
        if english.contains(&plain) {
            continue;
        }
        if !english.is_empty() {
            english.push_str(": ");
            text.push_str(": ");
        }
        english.push_str(&plain);
        text.push_str(&said);
    }
    quote::escaped(&text)
}

/// A cause whose words are known in every language.
fn in_language(words: &Locale, cause: &(dyn std::error::Error + 'static)) -> String {
    let sentence = cause
        .downcast_ref::<FileError>()
        .map(FileError::sentence)
        .or_else(|| cause.downcast_ref::<AttemptError>().map(AttemptError::sentence))
        .or_else(|| cause.downcast_ref::<OutputError>().map(OutputError::sentence))
        .or_else(|| cause.downcast_ref::<SessionError>().and_then(SessionError::sentence))
        .or_else(|| cause.downcast_ref::<ScriptError>().and_then(ScriptError::sentence))
        .or_else(|| cause.downcast_ref::<WordsError>().map(WordsError::sentence))
        .or_else(|| cause.downcast_ref::<Sentence>().cloned());
    sentence.map_or_else(|| cause.to_string(), |sentence| words.sentence(&sentence))
}

/// An error about a file, with the file's name unless it says it already.
pub fn about<E: Into<anyhow::Error>>(path: &Path) -> impl FnOnce(E) -> anyhow::Error {
    let name = quote::path(path).to_string();
    move |error| {
        let error = error.into();
        if message(&error).contains(&name) { error } else { error.context(name) }
    }
}
