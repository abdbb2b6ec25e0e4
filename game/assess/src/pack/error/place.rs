//! Places on the line diagram and in the room.

use crate::diagram::Sheet;
use crate::locale::sentence::Sentence;
use crate::sentence;

/// What is wrong with a place.
#[derive(Debug)]
pub enum BadPlace {
    /// A part (or an earth point of a car body) without its place on the line diagram.
    NotPlaced {
        /// The part, or its port.
        what: String,
        /// The sheet.
        sheet: Sheet,
    },
    /// A part on a sheet whose lines it does not carry.
    WrongSheet {
        /// Key path.
        path: String,
        /// The part.
        part: String,
        /// The sheet.
        sheet: Sheet,
    },
    /// Earth points of a part that is no car body.
    NoEarthPoints {
        /// Key path.
        path: String,
        /// The part.
        part: String,
    },
    /// A part, a port, a line or a cover without its place in the room.
    NotInRoom {
        /// The list in which it is missing.
        list: String,
        /// What is missing.
        what: String,
    },
    /// A hose or wire among the parts that stand: it follows its way.
    Lies {
        /// Key path.
        path: String,
        /// The part.
        part: String,
    },
    /// A way of something that is no line.
    NoLine {
        /// Key path.
        path: String,
        /// The part or joint.
        name: String,
    },
    /// Colour or end of a hose.
    HoseLooks {
        /// Key path.
        path: String,
    },
    /// The cross-section of a part.
    PartHasArea {
        /// Key path.
        path: String,
    },
    /// The wire of a joint without its cross-section.
    NoArea {
        /// Key path.
        path: String,
        /// The joint.
        joint: String,
    },
}

impl BadPlace {
    /// What is wrong, for every language.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        match self {
            Self::NotPlaced { what, sheet } => sentence!(
                "data-not-placed",
                "places: {what} needs one place on the sheet `{sheet}`",
                what = what,
                sheet = sheet.name()
            ),
            Self::WrongSheet { path, part, sheet } => sentence!(
                "data-wrong-sheet",
                "{path}: {part} has nothing that belongs on the sheet `{sheet}`",
                path = path,
                part = part,
                sheet = sheet.name()
            ),
            Self::NoEarthPoints { path, part } => sentence!(
                "data-no-earth-points",
                "{path}.points: {part} is no car body; its ports follow from its symbol",
                path = path,
                part = part
            ),
            Self::NotInRoom { list, what } => sentence!(
                "data-not-in-room",
                "{list}: {what} is missing; every one of the car's has one entry",
                list = list,
                what = what
            ),
            Self::Lies { path, part } => sentence!(
                "data-lies",
                "{path}: {part} is a hose or wire and has no place of its own; put it into `ways`",
                path = path,
                part = part
            ),
            Self::NoLine { path, name } => sentence!(
                "data-no-way",
                "{path}: {name} is no hose, no wire and no joint between two terminals; only these have a way",
                path = path,
                name = name
            ),
            Self::HoseLooks { path } => sentence!(
                "data-hose-looks",
                "{path}: a hose is black rubber and ends in clips; leave it out",
                path = path
            ),
            Self::PartHasArea { path } => sentence!(
                "data-part-has-area",
                "{path}: a part has its size from the car's file; leave it out",
                path = path
            ),
            Self::NoArea { path, joint } => sentence!(
                "data-no-area",
                "{path}: {joint} is a joint and has no number of its own; write its wire's area_mm2",
                path = path,
                joint = joint
            ),
        }
    }
}
