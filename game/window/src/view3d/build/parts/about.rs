//! How a part of a kind stands about, besides its shape.

use assess::room::{Mouth, Xyz};
use sim_core::action::Station;

use crate::view3d::moves::Moves;

/// What a kind says of how it stands about: one of the constants, with what is its own.
#[derive(Clone, Copy, Debug)]
pub(in crate::view3d) struct About {
    /// How a part moves that is not pulled from a socket, by its number.
    pub(in crate::view3d) moves: fn(u16) -> Moves,
    /// Whether it is laid aside when nothing holds it any more.
    pub(in crate::view3d) laid_aside: bool,
    /// Whether it has a face that looks along z, to be turned to the eye when it lies on a board.
    pub(in crate::view3d) has_a_face: bool,
    /// The place that it has in any car.
    pub(in crate::view3d) seat: Option<Seat>,
}

impl About {
    /// A thing that is laid aside when nothing holds it.
    pub(super) const LOOSE: Self =
        Self { moves: Moves::Part, laid_aside: true, has_a_face: false, seat: None };
    /// A thing that is too big or too firmly bolted to be laid aside; a line.
    pub(super) const FIXED: Self = Self { laid_aside: false, ..Self::LOOSE };
    /// A thing with a face, which has a socket that it is pulled from, or hangs on the board.
    pub(super) const FACED: Self = Self { has_a_face: true, ..Self::FIXED };

    /// In the same place in any car.
    pub(super) const fn seated(self, at: Xyz, station: Station) -> Self {
        Self { seat: Some(Seat { station, at, hold: None, ports: None }), ..self }
    }
}

/// A place that a kind of part has in any car.
#[derive(Clone, Copy, Debug)]
pub(in crate::view3d) struct Seat {
    /// From where one reaches it.
    pub(in crate::view3d) station: Station,
    /// Where it stands.
    pub(in crate::view3d) at: Xyz,
    /// Where it is pointed at, if that is not where its kind says.
    pub(in crate::view3d) hold: Option<Xyz>,
    /// Ports that are not where its kind has them.
    pub(in crate::view3d) ports: Option<fn() -> Vec<Mouth>>,
}
