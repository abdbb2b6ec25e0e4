//! Short names of things, each with what it belongs to.

use super::{Gap, InGap, Thing};
use crate::action::Station;

macro_rules! names {
    ($( $(#[$doc:meta])* $name:ident: $how:ident($thing:ident) ),+ $(,)?) => {
        $(
            $(#[$doc])*
            #[derive(Clone, Debug, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
            #[serde(transparent)]
            pub struct $name(pub String);

            impl From<&str> for $name {
                fn from(name: &str) -> Self {
                    Self(name.to_owned())
                }
            }

            impl From<String> for $name {
                fn from(name: String) -> Self {
                    Self(name)
                }
            }

            impl InGap for $name {
                fn gap(&self) -> Gap {
                    Gap::$how(Thing::$thing, self.0.clone())
                }
            }
        )+
    };
}

names! {
    /// A part of the car.
    Part: Typed(Part),
    /// A port, `part.port`.
    Port: Typed(Port),
    /// A joint of the car.
    Joint: Typed(Joint),
    /// A cover.
    Cover: Typed(Cover),
    /// A cover, as it is called.
    TheCover: Called(Cover),
    /// An instrument.
    Card: Typed(Instrument),
    /// An instrument, as it is called.
    TheTool: Called(Instrument),
    /// A repair unit.
    Unit: Typed(Unit),
    /// A repair unit, as it is called.
    TheUnit: Called(Unit),
    /// A spare.
    Spare: Typed(Spare),
    /// An end of an instrument.
    End: Typed(End),
}

/// Keys of the stations, without `word-`.
pub(super) const STATION_KEYS: &[&str] =
    &["desk", "driver-s-seat", "engine-bay", "front-of-the-car", "bench"];

impl InGap for Station {
    fn gap(&self) -> Gap {
        Gap::Word(match self {
            Self::Desk => "desk",
            Self::Cab => "driver-s-seat",
            Self::Bay => "engine-bay",
            Self::Front => "front-of-the-car",
            Self::Bench => "bench",
        })
    }
}
