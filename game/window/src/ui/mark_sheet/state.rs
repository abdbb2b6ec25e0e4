//! What the mark sheet remembers.

/// State of the page.
#[derive(Debug, Default)]
pub struct State {
    /// What came of opening the page beside the attempt: nothing yet, or why not.
    pub opened: Option<Result<(), NotOpened>>,
}

/// Why a file could not be shown.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NotOpened {
    /// It is not there (any more).
    Missing,
    /// The system has no program for it; in its words.
    System(String),
}
