//! Why an assembly cannot be made into equations.

use crate::assembly::PortRef;
use crate::parts::elements::Chamber;

/// Why an assembly cannot be made into equations: a part speaks of something that it does not say it has, or there is
/// more than can be computed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Unsound {
    /// A pneumatic port without a mouth.
    NoMouth(PortRef),
    /// A state that the part does not have; `None` for one that is no part's.
    NoState(Option<u16>),
    /// A body of air that the part does not have.
    NoAir(u16, Chamber),
    /// A two-pole that the part does not have.
    NoPole(u16),
    /// More state variables, nodes or ways than the equations have places for.
    TooMuch,
}

impl Unsound {
    /// The part to look at, as an index into the assembly.
    pub(crate) fn part(self) -> Option<u16> {
        match self {
            Self::NoMouth(port) => Some(port.part),
            Self::NoState(part) => part,
            Self::NoAir(part, _) | Self::NoPole(part) => Some(part),
            Self::TooMuch => None,
        }
    }
}
