//! An error in words that a person can use.

use std::error::Error;
use std::io;
use std::path::Path;

use assess::attempt::limits::{Beyond, Unknown};
use assess::attempt::overrule::OverrideError;
use assess::attempt::{AttemptError, SeedError};
use assess::files::{self, Doing, FileError};
use assess::locale::quote;
use assess::locale::sentence::{Sentence, Value};
use assess::locale::{Locale, LocaleError};
use assess::marks::MarkError;
use assess::pack::{PackError, PackErrors};
use assess::play::script::ScriptError;
use assess::play::{Difference, SessionError, Uncomputed};
use assess::sentence;
use assess::speed::SpeedError;
use assess::words::WordsError;

use crate::output::OutputError;

/// The causes of an error in one sentence, for every language; a cause that its parent quotes already is not said
/// twice.
#[must_use]
pub fn sentence(error: &anyhow::Error) -> Sentence {
    let mut told: Option<Sentence> = None;
    for cause in error.chain() {
        // What the parent quotes already is found by the English.
        let english = told.as_ref().map(ToString::to_string).unwrap_or_default();
        let said = match cause.downcast_ref::<io::Error>() {
            // The system's own words, unless they stand there in ours.
            Some(e)
                if [Doing::Read, Doing::Write].iter().any(|d| english.contains(&files::system(e, *d))) =>
            {
                continue;
            }
            Some(e) => as_it_is(files::refusal(e, Doing::Write)),
            None => known(cause).unwrap_or_else(|| as_it_is(cause.to_string())),
        };
        if english.contains(&said.to_string()) {
            continue;
        }
        told = Some(match told {
            None => said,
            Some(what) => sentence!("error-because", "{what}: {why}", what = what, why = said),
        });
    }
    told.unwrap_or_else(|| as_it_is(String::new()))
}

/// A text or a sentence as it is.
fn as_it_is(text: impl Into<Value>) -> Sentence {
    sentence!("error-as-it-is", "{text}", text = text.into())
}

/// The same in English.
#[must_use]
pub fn message(error: &anyhow::Error) -> String {
    quote::escaped(&sentence(error).to_string())
}

/// The same in a language.
#[must_use]
pub fn message_in(words: &Locale, error: &anyhow::Error) -> String {
    quote::escaped(&words.sentence(&sentence(error)))
}

macro_rules! first_of {
    ($cause:expr; $($known:ty: $said:expr),* $(,)?) => {
        None$(.or_else(|| $cause.downcast_ref::<$known>().map($said)))*
    };
}

/// A cause whose words are known in every language.
fn known(cause: &(dyn Error + 'static)) -> Option<Sentence> {
    first_of!(
        cause;
        Sentence: Clone::clone,
        FileError: FileError::sentence,
        AttemptError: AttemptError::sentence,
        OverrideError: OverrideError::sentence,
        SeedError: SeedError::sentence,
        Beyond: Beyond::sentence,
        Unknown: Unknown::sentence,
        SessionError: SessionError::sentence,
        Difference: Difference::sentence,
        Uncomputed: Uncomputed::sentence,
        ScriptError: ScriptError::sentence,
        WordsError: WordsError::sentence,
        PackErrors: PackErrors::in_one,
        PackError: PackError::sentence,
        MarkError: MarkError::sentence,
        SpeedError: SpeedError::sentence,
        LocaleError: LocaleError::sentence,
        OutputError: OutputError::sentence,
        Because: |because| because.said.clone(),
    )
}

/// An error with what it kept from being done.
#[derive(Debug, thiserror::Error)]
#[error("{said}")]
struct Because {
    said: Sentence,
    source: anyhow::Error,
}

/// Puts what an error kept from being done before it.
pub fn because<E: Into<anyhow::Error>>(said: Sentence) -> impl FnOnce(E) -> anyhow::Error {
    move |error| Because { said, source: error.into() }.into()
}

/// An error about a file, with the file's name unless it says it already.
pub fn about<E: Into<anyhow::Error>>(path: &Path) -> impl FnOnce(E) -> anyhow::Error {
    let name = quote::path(path).to_string();
    move |error| {
        let error = error.into();
        if message(&error).contains(&name) { error } else { error.context(name) }
    }
}
