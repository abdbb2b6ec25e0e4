//! What the clipboard remembers.

use std::collections::{BTreeMap, BTreeSet};

use assess::attempt::Header;
use sim_core::observe::Reading;
use sim_core::workshop::View;

use super::super::space::Space;
use super::made_up::FindingForm;
use super::note::NoteForm;
use front::shop::Shop;

/// A leaf of the clipboard.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Leaf {
    /// What the customer said, the day's cautions.
    #[default]
    Card,
    /// Limits of the car.
    Sheet,
    /// Readings and the record.
    Notebook,
    /// Free thoughts.
    Suspicions,
    /// What it is.
    Finding,
}

impl Leaf {
    /// Every leaf with the key of its name, first on top.
    pub const ALL: [(Self, &'static str); 5] = [
        (Self::Card, "leaf-card"),
        (Self::Sheet, "leaf-sheet"),
        (Self::Notebook, "leaf-notebook"),
        (Self::Suspicions, "leaf-suspicions"),
        (Self::Finding, "leaf-finding"),
    ];
}

/// State of the panel.
#[derive(Debug, Default)]
pub struct State {
    /// Leaf on top.
    pub leaf: Leaf,
    /// Folded away or not, by hand; not said yet: it lies open where there is room beside it, and where there is
    /// none until the first thing is done, so that the cautions are seen.
    pub folded: Option<bool>,
    /// The attempt that what is half written belongs to.
    pub(super) of: Option<Header>,
    /// A note being written.
    pub(super) note: Option<NoteForm>,
    /// Notes half written and put aside, by their reading.
    pub(super) drafts: BTreeMap<u32, NoteForm>,
    /// Readings that the trainee struck out: they wait for no note any more. Window memory; the attempt has
    /// them all.
    pub(super) struck: BTreeSet<u32>,
    /// Line of the record chosen for a sense that is not noted yet: reading, line.
    pub(super) sense_line: Option<(u32, String)>,
    /// A suspicion being written.
    pub(super) suspicion: String,
    /// A finding being made up.
    pub(super) finding: FindingForm,
    /// Whether the car shall be handed back is being asked.
    pub(super) handing_back: bool,
    /// Whether the job shall be left is being asked.
    pub(super) leaving: bool,
}

impl State {
    /// Opens the notebook with the form to note reading `n`.
    pub fn note_reading(&mut self, n: u32) {
        self.folded = Some(false);
        self.leaf = Leaf::Notebook;
        if self.writing() != Some(n) {
            self.open_form(NoteForm::new(n));
        }
    }

    /// The reading whose form is open.
    #[must_use]
    pub fn writing(&self) -> Option<u32> {
        self.note.as_ref().map(|form| form.reading)
    }

    /// Closes the form, if one is open; what was written in it stands there again when it is opened anew.
    pub fn put_aside(&mut self) {
        if let Some(form) = self.note.take().filter(NoteForm::is_begun) {
            self.drafts.insert(form.reading, form);
        }
    }

    /// Opens a form, or the one that was put aside half written.
    pub(super) fn open_form(&mut self, form: NoteForm) {
        self.put_aside();
        self.note = Some(self.drafts.remove(&form.reading).map_or(form, NoteForm::again));
    }

    /// Readings that wait to be noted, oldest first: neither noted nor struck out.
    pub fn waiting<'v>(&self, view: &'v View) -> impl DoubleEndedIterator<Item = &'v Reading> {
        let noted = |r: &&Reading| view.notes.iter().all(|(id, ..)| *id != r.id);
        view.readings.iter().filter(noted).filter(|r| !self.struck.contains(&r.id))
    }

    /// Whether only its strip is shown.
    #[must_use]
    pub fn is_folded(&self, space: Space, shop: &Shop) -> bool {
        let begun = || shop.session().is_some_and(|s| !s.attempt().steps.is_empty());
        self.folded.unwrap_or_else(|| space.narrow && begun())
    }

    /// Puts a leaf on top, for the attempt that is open in `shop`.
    pub fn show_leaf(&mut self, leaf: Leaf, shop: &Shop) {
        self.of = shop.session().map(|s| s.attempt().header.clone());
        self.leaf = leaf;
    }

    /// Puts a leaf on top.
    #[cfg(test)]
    pub(crate) fn show_leaf_for_test(&mut self, leaf: Leaf) {
        self.leaf = leaf;
    }

    /// Asks whether the car shall be handed back, and says what is still missing.
    pub fn ask_hand_back(&mut self) {
        self.handing_back = true;
    }

    /// Asks whether the job shall be left.
    pub fn ask_leave(&mut self) {
        self.leaving = true;
    }
}
