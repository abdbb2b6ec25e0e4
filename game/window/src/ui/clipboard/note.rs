//! A note half written.

/// A note being written.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct NoteForm {
    /// Number of the reading.
    pub reading: u32,
    /// What was typed: a number, perhaps with its unit.
    pub(super) typed: String,
    /// Unit that was picked.
    pub(super) unit: Option<&'static str>,
    /// Line of the record.
    pub(super) record: Option<String>,
    /// Key of what is wrong with it.
    pub(super) wrong: Option<&'static str>,
    /// It has had the focus.
    pub(super) begun: bool,
    /// It takes the place of what was written before.
    pub(super) anew: bool,
    /// How often the reading had been noted when it was opened.
    pub(super) noted_before: Option<usize>,
}

impl NoteForm {
    /// An empty form for reading `n`.
    #[must_use]
    pub fn new(n: u32) -> Self {
        Self { reading: n, ..Self::default() }
    }

    /// A form for reading `n`, noted before for `line`: a slip of the pen is struck out and written anew.
    pub(super) fn anew(n: u32, line: Option<&str>) -> Self {
        Self { record: line.map(str::to_owned), anew: true, ..Self::new(n) }
    }

    /// The form as it is opened again.
    pub(super) fn again(self) -> Self {
        Self { begun: false, ..self }
    }

    /// Whether anything is written in it.
    pub(super) fn is_begun(&self) -> bool {
        !self.typed.trim().is_empty()
    }

    /// What is written in it so far.
    pub(super) fn typed(&self) -> &str {
        self.typed.trim()
    }
}
