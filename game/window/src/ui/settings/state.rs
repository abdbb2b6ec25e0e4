//! What the page of settings remembers.

use assess::locale::sentence::Sentence;

/// State of the page.
#[derive(Debug, Default)]
pub struct State {
    /// Why the settings could not be kept.
    pub trouble: Option<Sentence>,
}
