//! What the page of settings remembers.

/// State of the page.
#[derive(Debug, Default)]
pub struct State {
    /// Why the settings could not be kept.
    pub trouble: Option<String>,
}
