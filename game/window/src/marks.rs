//! Where things are on the screen. Room and line diagram each write their own marks, and each set belongs to
//! the view it was written for: what is not drawn, or was drawn for another station or another cut of the
//! window, has no marks, so that nothing can be seen or clicked that is not there.

use std::collections::BTreeMap;

use egui::{Pos2, Rect};
use sim_core::action::Station;

use front::hands::Thing;

/// The marks of the room, as it was drawn last.
#[derive(Clone, Debug, PartialEq)]
pub struct RoomMarks {
    /// Station whose things they are.
    pub at: Station,
    /// What the panels left of the window.
    pub scene: Rect,
    /// Where each thing is.
    pub spots: BTreeMap<Thing, Pos2>,
    /// Where in the picture things are whose mark had to move aside.
    pub homes: BTreeMap<Thing, Pos2>,
}

/// The marks of both views.
#[derive(Debug, Default)]
pub struct Marks {
    room: Option<RoomMarks>,
    sheet: BTreeMap<Thing, Pos2>,
}

impl Marks {
    /// The room was drawn, or was not (`None`).
    pub fn set_room(&mut self, room: Option<RoomMarks>) {
        self.room = room;
    }

    /// The room is not drawn as it was: for another station, or not at all (`None`).
    pub fn keep_room(&mut self, eye: Option<Station>) {
        self.room.take_if(|room| eye != Some(room.at));
    }

    /// The marks of the room that is drawn into `scene`.
    #[must_use]
    pub fn room(&self, scene: Rect) -> Option<&RoomMarks> {
        // Edges of panels are rounded; a mark that is off by less than a point is where its thing is.
        self.room.as_ref().filter(|room| {
            (room.scene.min - scene.min).length() < 1.0 && (room.scene.max - scene.max).length() < 1.0
        })
    }

    /// The line diagram is drawn anew, or not at all.
    pub fn clear_sheet(&mut self) {
        self.sheet.clear();
    }

    /// A thing is on the line diagram; where it was met first counts.
    pub fn put_on_sheet(&mut self, thing: Thing, at: Pos2) {
        self.sheet.entry(thing).or_insert(at);
    }

    /// Where a thing is seen: in the room, else on the line diagram.
    #[must_use]
    pub fn get(&self, thing: Thing) -> Option<Pos2> {
        let room = self.room.as_ref().and_then(|room| room.spots.get(&thing));
        room.or_else(|| self.sheet.get(&thing)).copied()
    }

    /// Nothing is drawn that has marks.
    pub fn clear(&mut self) {
        *self = Self::default();
    }
}
