//! What the mark sheet remembers.

use std::sync::Arc;

use assess::locale::sentence::Value;
use assess::marks::Evaluation;
use assess::marks::sheet::MarkSheet;
use front::words::Words;

/// State of the page.
#[derive(Debug, Default)]
pub struct State {
    /// The sheet in a language, until another attempt or another language is shown.
    said: Option<Said>,
    /// What came of opening the page beside the attempt: nothing yet, or why not.
    pub opened: Option<Result<(), NotOpened>>,
}

/// A sheet in words.
#[derive(Debug)]
struct Said {
    of: Arc<Evaluation>,
    tag: String,
    sheet: Arc<MarkSheet>,
}

impl State {
    /// The sheet of what was marked, in the language shown.
    pub(super) fn sheet(&mut self, evaluation: &Arc<Evaluation>, words: &Words) -> Arc<MarkSheet> {
        let fresh = |said: &&Said| Arc::ptr_eq(&said.of, evaluation) && said.tag == words.tag();
        if let Some(said) = self.said.as_ref().filter(fresh) {
            return Arc::clone(&said.sheet);
        }
        let sheet = Arc::new(words.sheet(evaluation));
        self.said =
            Some(Said { of: Arc::clone(evaluation), tag: words.tag().to_owned(), sheet: Arc::clone(&sheet) });
        sheet
    }
}

/// Why a file could not be shown.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NotOpened {
    /// It is not there (any more).
    Missing,
    /// The system has no program for it, or refuses.
    System(Value),
}
