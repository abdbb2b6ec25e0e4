//! What the menus remember.

use egui::{Id, Pos2};

use front::hands::{Carry, Thing};
use front::shop::Told;

/// What the menus remember.
#[derive(Debug, Default)]
pub struct State {
    /// The list of further lines that is open, by the key of the line that opened it.
    pub(super) further: Option<&'static str>,
    /// The same for the menu that opens next.
    pub(super) wanted: Option<&'static str>,
    /// Things one came from, newest last.
    pub(super) trail: Vec<Thing>,
    /// What had the focus before a menu opened, if anything; `None` while no menu is open.
    pub(super) focus: Option<Option<Id>>,
    pub(super) waiting: Option<Waiting>,
    pub(super) note: Option<Note>,
}

/// Something was asked for and has not been answered yet.
#[derive(Clone, Debug)]
pub(super) struct Waiting {
    /// Where the hands were.
    pub(super) thing: Thing,
    /// The same on the screen.
    pub(super) at: Pos2,
    /// Number of the last remark before.
    pub(super) after: u64,
    /// What was in the hand: it stays there when the deed is refused.
    pub(super) carry: Option<Carry>,
}

/// A refusal at its place.
#[derive(Clone, Debug)]
pub(super) struct Note {
    pub(super) thing: Thing,
    pub(super) at: Pos2,
    pub(super) told: Told,
    /// Things done so far: with the next one the note goes.
    pub(super) steps: usize,
}
