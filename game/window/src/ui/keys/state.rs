//! What lies over the workshop because a key opened it.

use super::typing::Typing;

/// The list as it is being searched.
#[derive(Debug, Default)]
pub(super) struct Find {
    pub(super) typed: String,
    pub(super) chosen: usize,
    /// A line was chosen with the arrows.
    pub(super) moved: bool,
    /// Opened already: the field has had its focus.
    pub(super) begun: bool,
    /// What had the focus before.
    pub(super) focus: Option<egui::Id>,
}

/// Pages that a key opens over the workshop.
#[derive(Debug, Default)]
pub struct State {
    /// The list of things.
    pub(super) find: Option<Find>,
    /// The page of keys.
    pub(super) help: bool,
    /// The log of all remarks.
    pub(super) log: bool,
    /// Letters that came one after the other with no field to go to.
    pub(super) typing: Typing,
}

impl State {
    /// Whether a page lies over the workshop.
    #[must_use]
    pub fn is_open(&self) -> bool {
        self.find.is_some() || self.help || self.log
    }

    /// Opens the list of things.
    pub fn open_find(&mut self) {
        self.find = Some(Find::default());
    }

    /// Opens the page of keys.
    pub fn open_help(&mut self) {
        self.help = true;
    }

    /// Opens the log.
    pub fn open_log(&mut self) {
        self.log = true;
    }
}
