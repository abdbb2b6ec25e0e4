//! Air in a part: bodies, mouths (a port's way from the joint to its air), ways within and to the open.

use crate::flow::iso6358::Iso6358;
use crate::flow::laminar;
use crate::flow::pinhole::Pinhole;
use crate::flow::valve::CheckLaw;

use super::law::Law;

/// Which body of air of a part.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Chamber {
    /// The only one.
    Body,
    /// Of two, the one towards the vacuum.
    Front,
    /// Of two, the one that air is let into.
    Rear,
}

/// How deep in the network a body of air lies, leaves first: eliminated in this order the slopes fill in hardly
/// at all.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Depth {
    /// On a stem of its own: gauge, hand pump.
    Stem,
    /// At one end of a branch: switch, sensor.
    End,
    /// At the inlet of a pump.
    Inlet,
    /// A line between two others.
    Line,
    /// The body of a valve in a line.
    Valve,
    /// Where lines meet.
    Meeting,
    /// A store, or what hangs on one.
    Store,
    /// What everything hangs on.
    Hub,
}

/// Heat transfer from still air to a wall, W/(m²·K): free convection in a small housing.
const H_WALL: f64 = 5.0;

/// Heat transfer to a wall of so many m², W/K.
#[must_use]
pub fn wall_w_per_k(surface_m2: f64) -> f64 {
    H_WALL * surface_m2
}

/// A body of air.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Volume {
    /// Which one of the part's.
    pub chamber: Chamber,
    /// Its place in the order of elimination.
    pub depth: Depth,
    /// Volume at rest, m³.
    pub m3: f64,
    /// Change per metre of the travel of the part's piston, m², if one moves its wall.
    pub per_travel_m2: Option<f64>,
    /// Heat transfer to the wall, W/K.
    pub w_per_k: f64,
}

impl Volume {
    /// The only body of a part, with fixed walls of `surface_m2`.
    #[must_use]
    pub fn body(depth: Depth, m3: f64, surface_m2: f64) -> Self {
        Self { chamber: Chamber::Body, depth, m3, per_travel_m2: None, w_per_k: wall_w_per_k(surface_m2) }
    }

    /// A small only body; its surface is that of a cube.
    #[must_use]
    pub fn small(depth: Depth, cm3: f64) -> Self {
        Self::body(depth, cm3 * 1e-6, 6.0 * 1e-4 * crate::math::cbrt(cm3 * cm3))
    }
}

/// What lies behind a pneumatic port.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Behind {
    /// A body of air of the part.
    Chamber(Chamber),
    /// A manifold, whose pressure is the state [`super::Quantity::Manifold`] of the part.
    Manifold,
}

/// A port's way from the joint's plane to what lies behind it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Passage {
    /// A restriction.
    Iso(Iso6358),
    /// A valve seat at the port itself: forward is into the part.
    Seat(CheckLaw),
}

/// A gap at a made joint, by its area, m²: with the engine still, and while it shakes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gap {
    /// Engine still.
    pub still: f64,
    /// Engine running.
    pub shaking: f64,
}

/// A pneumatic port.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Mouth {
    /// Number of the port.
    pub port: u8,
    /// What lies behind it.
    pub behind: Behind,
    /// The way there.
    pub passage: Passage,
    /// A gap that a made joint has here.
    pub gap: Option<Gap>,
    /// Of a wall that can pull in: what the way's conductance loses once it has done so fully; 0 = a sound one.
    pub collapse: Option<f64>,
    /// Whether it is an instrument's stem, which goes into a made joint as a branch.
    pub stem: bool,
}

impl Mouth {
    /// A sound way to what lies `behind`.
    #[must_use]
    pub fn to(port: u8, behind: Behind, passage: Passage) -> Self {
        Self { port, behind, passage, gap: None, collapse: None, stem: false }
    }

    /// A sound way to the only body of the part.
    #[must_use]
    pub fn body(port: u8, passage: Iso6358) -> Self {
        Self::to(port, Behind::Chamber(Chamber::Body), Passage::Iso(passage))
    }
}

/// Where a way within a part begins or ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// The air outside.
    Outside,
    /// A body of air of the part.
    In(Chamber),
}

/// A flow path that belongs to a part alone.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FlowPath {
    /// Side a.
    pub a: Place,
    /// Side b.
    pub b: Place,
    /// What lies between.
    pub law: Law,
    /// Whether air that rushes through it is heard at the part.
    pub heard: bool,
}

impl FlowPath {
    /// From the open into a body, heard.
    #[must_use]
    pub fn leak(inner: Chamber, law: Law) -> Self {
        Self { a: Place::Outside, b: Place::In(inner), law, heard: true }
    }

    /// A sharp-edged hole to the open; none of no size.
    #[must_use]
    pub fn hole(inner: Chamber, d_mm: f64) -> Option<Self> {
        (0.0 < d_mm).then(|| Self::leak(inner, Law::Hole(Pinhole::of_diameter_mm(d_mm))))
    }

    /// A seep from the open, cm³ of free air a minute into a perfect vacuum; none of no size.
    #[must_use]
    pub fn seep(inner: Chamber, cm3_per_min: f64) -> Option<Self> {
        (0.0 < cm3_per_min).then(|| Self::leak(inner, Law::Seep(laminar::coefficient(cm3_per_min))))
    }

    /// The suction of a rotary pump from its inlet, `swept` m³ a radian, and its slip back; nobody hears them: the
    /// outlet is open to the air behind a silencer.
    #[must_use]
    pub fn pumped(inlet: Chamber, swept: f64, slip: Iso6358) -> [Self; 2] {
        let (a, b) = (Place::In(inlet), Place::Outside);
        [
            Self { a, b, law: Law::Suction { swept }, heard: false },
            Self { a: b, b: a, law: Law::Iso(slip), heard: false },
        ]
    }
}

/// All air of a part.
#[derive(Clone, Debug, PartialEq)]
pub struct Air {
    /// Bodies.
    pub volumes: Vec<Volume>,
    /// One for each pneumatic port.
    pub mouths: Vec<Mouth>,
    /// Ways within and to the open.
    pub flow_paths: Vec<FlowPath>,
}

impl Air {
    /// No air at all.
    pub const NONE: Self = Self { volumes: Vec::new(), mouths: Vec::new(), flow_paths: Vec::new() };
}
