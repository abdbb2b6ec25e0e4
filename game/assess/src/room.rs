//! Where a car stands in the room, and what is drawn of it besides its parts. Checked data, made by
//! [`crate::pack`] from `assets/rooms/*.ron`.
//!
//! It says where, hardly ever what: the shape of a part follows from its kind and its numbers, that of a hose
//! from its bore, that of a wire from its area. Metres; x to the right, y up, z towards the visitor; the car's
//! nose looks along +z, and its left side, where the driver sits, is towards the middle of the room. Turns are
//! degrees about y, then x, then z.

use serde::{Deserialize, Serialize};
use sim_core::assembly::{Assembly, PortRef};
use sim_core::parts::Domain;

/// Three numbers along x, y and z.
pub type Xyz = (f64, f64, f64);

/// Where a thing stands and how it is turned.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Spot {
    /// Its middle, m.
    pub at: Xyz,
    /// Turned about y, x, z, degrees.
    pub turn: Xyz,
}

/// A fitting or terminal, in its part's own frame.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mouth {
    /// The place, m.
    pub at: Xyz,
    /// The way in which a hose or wire leaves it; never of no length.
    pub out: Xyz,
    /// The way in which the fitting itself stands, where a wire leaves it sideways.
    pub axis: Option<Xyz>,
}

/// A part that is no line.
#[derive(Clone, Debug, PartialEq)]
pub struct Stand {
    /// Index into `Car::assembly.parts`.
    pub part: u16,
    /// Where its body stands.
    pub spot: Spot,
    /// Where it is pointed at, from its middle and in its own frame, m.
    pub hold: Xyz,
    /// Its ports, in the order of its kind.
    pub ports: Vec<Mouth>,
}

/// Whose way it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum LineOf {
    /// A hose or wire: index into `Car::assembly.parts`.
    Part(u16),
    /// The wire of a joint between two terminals: index into `Car::assembly.joints`.
    Joint(u16),
}

/// A wire's colour. Orange is not among them: it means high voltage, and that alone.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Colour {
    /// Black.
    #[default]
    Black,
    /// Red: plus.
    Red,
    /// Brown: earth.
    Brown,
    /// Green.
    Green,
    /// Blue.
    Blue,
    /// Yellow.
    Yellow,
    /// White.
    White,
    /// A flat braid of bare copper.
    Braid,
}

/// How a wire ends.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum End {
    /// In a plug.
    #[default]
    Plug,
    /// In a ring under a nut.
    Eye,
}

/// The way of a hose or wire.
#[derive(Clone, Debug, PartialEq)]
pub struct Way {
    /// Whose.
    pub line: LineOf,
    /// Points it passes between its two fittings, from its end `a` to its end `b`, m.
    pub points: Vec<Xyz>,
    /// Colour of a wire.
    pub colour: Colour,
    /// Ends of a wire.
    pub end: End,
    /// Cross-section of a joint's wire, mm²; a part has its own.
    pub area_mm2: Option<f64>,
}

/// What a cover looks like: a model with its numbers, m.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum CoverShape {
    /// A louvred tray over the bulkhead: `x` along it, its front wall down at +z.
    Scuttle {
        /// Along x.
        width_m: f64,
        /// Along z.
        depth_m: f64,
        /// Of its walls.
        height_m: f64,
    },
    /// A ribbed plate before something low: its face looks along +z.
    Guard {
        /// Along x.
        width_m: f64,
        /// Along y.
        height_m: f64,
    },
    /// A padded lid on top of an engine.
    Lid {
        /// Along x.
        width_m: f64,
        /// Along z.
        depth_m: f64,
        /// Along y.
        height_m: f64,
    },
}

/// A cover.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CoverStand {
    /// What it looks like.
    pub shape: CoverShape,
    /// Where it is, fitted.
    pub on: Spot,
    /// Where it lies, taken off.
    pub off: Spot,
}

/// What stands in the car without being a part of its circuits.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum FixtureShape {
    /// An open box with sockets for a fuse and a relay; its face looks along +z.
    FuseBox,
    /// A sheet-metal bracket from the bulkhead, its shelf at the middle.
    Bracket,
    /// A clip that holds a loom.
    Clip,
    /// A rubber grommet through the bulkhead.
    Grommet,
    /// A block of painted sheet metal.
    Block {
        /// Along x, y, z.
        size_m: Xyz,
    },
    /// A board that things are laid out on.
    Board {
        /// Along x, y, z.
        size_m: Xyz,
    },
}

/// Something that stands there.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Fixture {
    /// What it is.
    pub shape: FixtureShape,
    /// Where.
    pub spot: Spot,
}

/// The body that stands round it all, a model of the program's own.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Shell {
    /// A saloon, blue.
    Saloon,
    /// A wedge with a falling bonnet line, grey green.
    Wedge,
}

impl Shell {
    /// All of them.
    pub const ALL: [Self; 2] = [Self::Saloon, Self::Wedge];
}

/// A car in the room.
#[derive(Clone, Debug, PartialEq)]
pub struct Room {
    /// The body round it.
    pub shell: Shell,
    /// Where the brake pedal turns, m.
    pub pedal: Xyz,
    /// Middle of the accelerator's pad, m.
    pub accelerator: Xyz,
    /// Every part that is no line, once.
    pub parts: Vec<Stand>,
    /// Every hose, wire and wired joint, once.
    pub ways: Vec<Way>,
    /// Every cover, in the order of `Car::covers`.
    pub covers: Vec<CoverStand>,
    /// What else stands there.
    pub fixtures: Vec<Fixture>,
}

/// The two terminals between which the wire of a joint lies that is no part: those of a joint between two things
/// that stand, or of one more thing at the end of a wire that is joined to another already. `None` for every other
/// joint.
#[must_use]
pub fn wire_of_joint(assembly: &Assembly, joint: u16) -> Option<(PortRef, PortRef)> {
    let own = assembly.joints.get(usize::from(joint))?;
    if assembly.domain(own.a) != Domain::Electrical {
        return None;
    }
    let lies = |p: PortRef| assembly.parts.get(usize::from(p.part)).is_none_or(|p| p.kind.is_line());
    let (end, far) = match (lies(own.a), lies(own.b)) {
        (false, false) => return Some((own.a, own.b)),
        (true, true) => return None,
        (true, false) => (own.a, own.b),
        (false, true) => (own.b, own.a),
    };
    let first = assembly.joints.iter().find(|j| j.a == end || j.b == end)?;
    let other = if first.a == end { first.b } else { first.a };
    (first.id != own.id && !lies(other)).then_some((other, far))
}
