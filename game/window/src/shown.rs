//! What the window shows.

use assess::locale::sentence::Sentence;

/// Which page fills the window.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Page {
    /// Packs, jobs, attempts to carry on.
    #[default]
    FrontDesk,
    /// The workshop.
    Workshop,
    /// After the hand-back.
    MarkSheet,
    /// Units, size, quality, motion, language.
    Settings,
}

/// What fills the middle of the workshop.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Middle {
    /// The room.
    #[default]
    Room,
    /// The line diagram.
    Diagram,
    /// The room above, the line diagram below.
    Both,
}

/// How much of the room there is to see.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum RoomSeen {
    /// Its shaders are being made, its shapes are on their way to the graphics card.
    #[default]
    Preparing,
    /// All of it.
    Whole,
    /// All but what needs so many shaders that this adapter cannot make.
    Lacking(usize),
}

/// How the car in the room got its places.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub enum Placing {
    /// Its own file says where everything stands.
    #[default]
    ByFile,
    /// It has none: what stands nowhere in particular is laid out as on its line diagram.
    ByDiagram,
    /// It has neither: laid out in a row.
    InARow,
    /// Its file cannot be used, for this reason: laid out as without one.
    Broken(Sentence),
}
