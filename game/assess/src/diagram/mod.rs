//! Where the parts of a car stand on its line diagram. Checked data, made by [`crate::pack`] from
//! `assets/diagrams/*.ron`.
//!
//! It says where, never what: the symbol follows from the part's kind, its ports from the symbol's [`form`], and
//! lines between them are found by the window. What a line carries decides the sheet it is drawn on, so a
//! part with air and current has a place on both. A car that nobody has drawn gets its parts in rows.

mod chains;
pub mod form;
pub(crate) mod rows;

use sim_core::parts::Domain;

pub use chains::{Link, chains};

/// A sheet of the diagram.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Sheet {
    /// Pneumatic circuit, symbols of ISO 1219-1.
    Air,
    /// Electrical circuit, symbols of IEC 60617, terminals of DIN 72552.
    Wiring,
}

impl Sheet {
    /// Both sheets.
    pub const ALL: [Self; 2] = [Self::Air, Self::Wiring];

    /// What its lines carry.
    #[must_use]
    pub fn domain(self) -> Domain {
        match self {
            Self::Air => Domain::Pneumatic,
            Self::Wiring => Domain::Electrical,
        }
    }

    /// As a file writes it.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Air => "air",
            Self::Wiring => "wiring",
        }
    }
}

/// Where a part's name is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Side {
    /// Over the symbol.
    Above,
    /// Under it.
    Below,
    /// To its left.
    Left,
    /// To its right.
    Right,
    /// Over it, to the left: for a symbol with ports on all four sides.
    AboveLeft,
    /// Over it, to the right.
    AboveRight,
    /// Under it, to the left.
    BelowLeft,
    /// Under it, to the right.
    BelowRight,
}

/// A part on a sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct Place {
    /// Index into `Car::assembly.parts`.
    pub part: u16,
    /// The sheet.
    pub sheet: Sheet,
    /// Middle of its symbol: grid steps to the right and down.
    pub at: (i32, i32),
    /// Quarter turns clockwise, 0 to 3.
    pub turn: u8,
    /// Where its name is written.
    pub side: Side,
    /// Its name in a word or two; a language file may say it otherwise.
    pub label: String,
    /// Earth points of a car body: index of the port and where it is.
    pub points: Vec<(u8, (i32, i32))>,
}

/// Who placed the parts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Origin {
    /// Somebody who drew the car: `assets/diagrams/<car>.ron`.
    Drawn,
    /// Nobody: no diagram is written for this car yet, its parts stand in rows.
    Rows,
}

/// A car's line diagram.
#[derive(Clone, Debug, PartialEq)]
pub struct Diagram {
    /// Who placed them.
    pub origin: Origin,
    /// Every part on every sheet it belongs to, in the order in which a hand would follow the circuit.
    pub places: Vec<Place>,
}
