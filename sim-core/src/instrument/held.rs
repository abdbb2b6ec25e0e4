//! How an instrument or tool is put to what it is for, and what that can be.

use crate::parts::{Domain, PartKind};

/// How an instrument is put to what it measures, a tool to what it works on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Held {
    /// Nowhere: it is used where it lies.
    Nowhere,
    /// Its stem on a vacuum line; stays there.
    OnLine,
    /// Its leads on electrical ports.
    OnWires,
    /// Around the wire at an electrical port.
    AroundWire,
    /// Pointed at a part.
    AtPart,
    /// Laid on a hose.
    OnHose,
    /// Into an open end of a vacuum line; stays there.
    InOpening,
    /// Over a rubber hose; stays there.
    OverHose,
    /// Between a part and an ear.
    AtEar,
    /// Between the pedal and the seat.
    OnPedal,
}

impl Held {
    /// What flows through the ports it goes on; `None` when it goes on no port.
    #[must_use]
    pub const fn port(self) -> Option<Domain> {
        match self {
            Self::OnLine | Self::InOpening | Self::OverHose => Some(Domain::Pneumatic),
            Self::OnWires | Self::AroundWire => Some(Domain::Electrical),
            Self::Nowhere | Self::AtPart | Self::OnHose | Self::AtEar | Self::OnPedal => None,
        }
    }

    /// Whether it goes to parts rather than to ports.
    #[must_use]
    pub const fn to_parts(self) -> bool {
        match self {
            Self::AtPart | Self::OnHose | Self::AtEar | Self::OnPedal => true,
            Self::Nowhere
            | Self::OnLine
            | Self::OnWires
            | Self::AroundWire
            | Self::InOpening
            | Self::OverHose => false,
        }
    }

    /// Whether it goes to a part of this kind.
    #[must_use]
    pub fn part(self, kind: &PartKind) -> bool {
        match self {
            Self::AtPart => true,
            Self::OnHose => kind.hose().is_some(),
            Self::AtEar => kind.ports().iter().any(|port| port.domain == Domain::Pneumatic),
            Self::OnPedal => kind.booster().is_some(),
            Self::Nowhere
            | Self::OnLine
            | Self::OnWires
            | Self::AroundWire
            | Self::InOpening
            | Self::OverHose => false,
        }
    }
}
