//! An error in words that a person can use.

use std::io;
use std::path::Path;

use assess::files::{self, Doing};
use assess::quote;

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

/// An error about a file, with the file's name unless it says it already.
pub fn about<E: Into<anyhow::Error>>(path: &Path) -> impl FnOnce(E) -> anyhow::Error {
    let name = quote::path(path).to_string();
    move |error| {
        let error = error.into();
        if message(&error).contains(&name) { error } else { error.context(name) }
    }
}
