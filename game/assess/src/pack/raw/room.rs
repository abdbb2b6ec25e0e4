//! A room as written: where everything of a car stands.

use crate::room::Colour;
use crate::room::CoverShape;
use crate::room::End;
use crate::room::FixtureShape;
use crate::room::Shell;

raw! {
    /// Where a car stands in the room: `assets/rooms/<vehicle>.ron`. Metres; x to the right, y up, z towards the
    /// visitor; the car's nose looks along +z. Turns are degrees about y, then x, then z.
    struct RawRoom = "Room" {
        /// Version of the format: 1.
        schema: u32,
        /// Short name of the car, the same as the file's.
        vehicle: String,
        /// The body round it: saloon, wedge.
        shell: Shell,
        /// Where the brake pedal turns.
        pedal: (f64, f64, f64) [-4.0, 4.0, Metre],
        /// Middle of the accelerator's pad.
        accelerator: (f64, f64, f64) [-4.0, 4.0, Metre],
        /// Every part that is no hose and no wire, once.
        parts: Vec<RawStand>,
        /// Every hose, every wire and every joint between two terminals, once.
        ways: Vec<RawWay>,
        /// Every cover, once.
        covers: Vec<RawCoverStand>,
        /// What else stands there; left out = nothing.
        #[serde(default)]
        fixtures: Vec<RawFixture>,
    }
}

raw! {
    /// A part in the room; in `Room.parts`. Its shape follows from its kind and its numbers.
    struct RawStand = "Stand" {
        /// Short name of the part.
        part: String,
        /// Middle of its body.
        at: (f64, f64, f64) [-4.0, 4.0, Metre],
        /// Turned about y, x, z; left out = (0, 0, 0).
        #[serde(default)]
        turn: (f64, f64, f64) [-180.0, 180.0, Degree],
        /// Where it is pointed at, from its middle and turned with it; left out = its middle.
        #[serde(default)]
        hold: (f64, f64, f64) [-4.0, 4.0, Metre],
        /// Every port of it, once.
        ports: Vec<RawMouth>,
    }
}

raw! {
    /// A fitting or terminal; in `Stand.ports`. From the part's middle, and turned with it.
    struct RawMouth = "Mouth" {
        /// The port's name within the part.
        port: String,
        /// Where it ends.
        at: (f64, f64, f64) [-4.0, 4.0, Metre],
        /// The way in which a hose or wire leaves it; any length but none.
        out: (f64, f64, f64) [-10.0, 10.0, InName],
        /// The way in which the fitting itself stands, where a wire leaves it sideways; left out = the way out.
        #[serde(default)]
        axis: Option<(f64, f64, f64)> [-10.0, 10.0, InName],
    }
}

raw! {
    /// The way of a hose or wire; in `Room.ways`. How thick it looks follows from its bore or its area.
    struct RawWay = "Way" {
        /// Short name of the hose or wire, or of a joint between two terminals (a wire that is no part).
        line: String,
        /// Points it passes between its fittings, from its port a to its port b; left out = it goes straight.
        #[serde(default)]
        points: Vec<(f64, f64, f64)> [-4.0, 4.0, Metre],
        /// Colour of a wire: black, red, brown, green, blue, yellow, white, braid (flat, bare copper); left out
        /// = black. A hose has none.
        #[serde(default)]
        colour: Option<Colour>,
        /// How a wire ends: plug, eye (a ring under a nut); left out = plug. A hose has none.
        #[serde(default)]
        end: Option<End>,
        /// Cross-section of a joint's wire; a part has its own.
        #[serde(default)]
        area_mm2: Option<f64> [0.35, 50.0, InName],
    }
}

raw! {
    /// A cover in the room; in `Room.covers`.
    struct RawCoverStand = "CoverStand" {
        /// Short name of the cover.
        cover: String,
        /// What it looks like, as under "Covers and fixtures of a room" below.
        shape: CoverShape,
        /// Where it is, fitted.
        on: RawSpot,
        /// Where it lies, taken off.
        off: RawSpot,
    }
}

raw! {
    /// Where something stands and how it is turned.
    struct RawSpot = "Spot" {
        /// Its middle.
        at: (f64, f64, f64) [-4.0, 4.0, Metre],
        /// Turned about y, x, z; left out = (0, 0, 0).
        #[serde(default)]
        turn: (f64, f64, f64) [-180.0, 180.0, Degree],
    }
}

raw! {
    /// What stands in the car without being a part of its circuits; in `Room.fixtures`.
    struct RawFixture = "Fixture" {
        /// What it is, as under "Covers and fixtures of a room" below.
        shape: FixtureShape,
        /// Its middle.
        at: (f64, f64, f64) [-4.0, 4.0, Metre],
        /// Turned about y, x, z; left out = (0, 0, 0).
        #[serde(default)]
        turn: (f64, f64, f64) [-180.0, 180.0, Degree],
    }
}
