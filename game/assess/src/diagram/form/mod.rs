//! The form of each kind's symbol: where its ports are and what it covers, in grid steps about its middle.
//!
//! Lines and letters of a symbol are the window's. Its form is here, because places are chosen by it: a car
//! without a drawing is laid out by these sizes.

mod air;
mod both;
mod wiring;

use sim_core::parts::PartKind;

use super::Sheet;

/// Which way a line leaves a port.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Way {
    /// To the right.
    Right,
    /// Down.
    Down,
    /// To the left.
    Left,
    /// Up.
    Up,
}

impl Way {
    /// All four, clockwise.
    pub const ALL: [Self; 4] = [Self::Right, Self::Down, Self::Left, Self::Up];

    /// A step that way: to the right and down.
    #[must_use]
    pub fn step(self) -> (i32, i32) {
        match self {
            Self::Right => (1, 0),
            Self::Down => (0, 1),
            Self::Left => (-1, 0),
            Self::Up => (0, -1),
        }
    }

    /// After quarter turns clockwise.
    #[must_use]
    pub fn turned(self, turn: u8) -> Self {
        Self::ALL[(self as usize + usize::from(turn)) % 4]
    }
}

/// A place turned by quarters clockwise about the symbol's middle.
#[must_use]
pub fn turned<T: std::ops::Neg<Output = T> + Copy>((x, y): (T, T), turn: u8) -> (T, T) {
    match turn % 4 {
        0 => (x, y),
        1 => (-y, x),
        2 => (-x, -y),
        _ => (y, -x),
    }
}

/// A rectangle about a symbol's middle, grid steps.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Area {
    /// Its left side; negative is left of the middle.
    pub left: f32,
    /// Its upper side; negative is over the middle.
    pub top: f32,
    /// Its right side.
    pub right: f32,
    /// Its lower side.
    pub bottom: f32,
}

impl Area {
    /// By its sides.
    const fn new(left: f32, top: f32, right: f32, bottom: f32) -> Self {
        Self { left, top, right, bottom }
    }

    /// After quarter turns clockwise.
    #[must_use]
    pub fn turned(self, turn: u8) -> Self {
        let (a, b) = (turned((self.left, self.top), turn), turned((self.right, self.bottom), turn));
        Self { left: a.0.min(b.0), top: a.1.min(b.1), right: a.0.max(b.0), bottom: a.1.max(b.1) }
    }
}

/// A port of a symbol.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FormPort {
    /// Its name within the part.
    pub name: &'static str,
    /// Where it is, grid steps.
    pub at: (i32, i32),
    /// Which way its line leaves.
    pub out: Way,
}

/// Where a symbol's ports are and what it covers.
#[derive(Clone, Debug, PartialEq)]
pub struct Form {
    /// Its ports.
    pub ports: Vec<FormPort>,
    /// What the symbol covers, the stubs to its ports left out.
    pub body: Area,
    /// What is hit to pick the part.
    pub pick: Area,
}

/// What a kind of part says of its symbols.
trait Formed {
    /// On the sheet of air; `None` for what has no air.
    const AIR: Option<Outline> = None;
    /// On the sheet of wiring; `None` for what carries no current.
    const WIRING: Option<Outline> = None;
}

/// A form as a kind says it.
struct Outline {
    ports: &'static [(&'static str, (i32, i32), Way)],
    body: Area,
    pick: Area,
}

impl Outline {
    /// By its ports and what it covers, which is what is hit to pick the part.
    const fn new(ports: &'static [(&'static str, (i32, i32), Way)], body: Area) -> Self {
        Self { ports, body, pick: body }
    }

    /// Picked elsewhere.
    const fn picked(self, pick: Area) -> Self {
        Self { pick, ..self }
    }
}

/// The form of a part's symbol on a sheet; `None` when the kind has nothing to draw there.
///
/// A car body has a form without ports: its earth points are where the diagram puts them.
#[must_use]
pub fn form(kind: &PartKind, sheet: Sheet) -> Option<Form> {
    fn of<T: Formed>(_: &T, sheet: Sheet) -> Option<Form> {
        let Outline { ports, body, pick } = match sheet {
            Sheet::Air => T::AIR,
            Sheet::Wiring => T::WIRING,
        }?;
        let ports = ports.iter().map(|&(name, at, out)| FormPort { name, at, out }).collect();
        Some(Form { ports, body, pick })
    }
    // A new kind does not compile before it says what its form is.
    sim_core::with_kind!(kind, part => of(part, sheet))
}
