//! What room and hotspots tell each other.

use egui::Pos2;

use front::hands::Thing;

/// What room and hotspots tell each other.
#[derive(Clone, Copy, Debug, Default)]
pub struct State {
    /// No widget needs the arrow keys: they turn the room.
    pub keys: bool,
    /// The pointer is over the room and nothing lies over it there.
    pub pointer: bool,
    /// A hotspot is under the pointer: it goes before the body behind it.
    pub hit: bool,
    /// The names of parts and tools are shown.
    pub names: bool,
    /// The eye is on its way to another station: nothing stands still yet.
    pub glides: bool,
    /// The button went down over the room, and on no hotspot: the body under the pointer is meant.
    pub pressed: bool,
    /// The body under the pointer, and the pointer: written by the room.
    pub pointed: Option<(Thing, Pos2)>,
}
