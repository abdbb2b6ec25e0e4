//! Kinds of things that have names.

use crate::locale::quote::quoted;
use crate::locale::sentence::Sentence;
use crate::sentence;

/// What a name can be a name of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// A part of the car.
    Part,
    /// A port of a part.
    Port,
    /// A joint of two ports.
    Joint,
    /// What is replaced as one.
    Unit,
    /// What is taken off to reach parts.
    Cover,
    /// A line of the record.
    Record,
    /// What the store holds.
    Spare,
    /// What is carried.
    Instrument,
}

impl Kind {
    /// Nothing of this kind has that name.
    pub(super) fn no_such(self, name: &str, hint: &Sentence) -> Sentence {
        let (name, hint) = (quoted(name), hint.clone());
        match self {
            Self::Part => {
                sentence!("plain-no-part", "there is no part called {name}; {hint}", name = name, hint = hint)
            }
            Self::Port => {
                sentence!("plain-no-port", "there is no port called {name}; {hint}", name = name, hint = hint)
            }
            Self::Joint => {
                sentence!(
                    "plain-no-joint",
                    "there is no joint called {name}; {hint}",
                    name = name,
                    hint = hint
                )
            }
            Self::Unit => {
                sentence!("plain-no-unit", "there is no unit called {name}; {hint}", name = name, hint = hint)
            }
            Self::Cover => {
                sentence!(
                    "plain-no-cover",
                    "there is no cover called {name}; {hint}",
                    name = name,
                    hint = hint
                )
            }
            Self::Record => sentence!(
                "plain-no-record",
                "there is no line of the record called {name}; {hint}",
                name = name,
                hint = hint
            ),
            Self::Spare => {
                sentence!(
                    "plain-no-spare",
                    "there is no spare called {name}; {hint}",
                    name = name,
                    hint = hint
                )
            }
            Self::Instrument => sentence!(
                "plain-no-instrument",
                "there is no instrument called {name}; {hint}",
                name = name,
                hint = hint
            ),
        }
    }

    /// The job has nothing of this kind at all.
    pub(super) fn none(self) -> Sentence {
        match self {
            Self::Part => sentence!("plain-has-no-part", "this job has no part"),
            Self::Port => sentence!("plain-has-no-port", "this job has no port"),
            Self::Joint => sentence!("plain-has-no-joint", "this job has no joint"),
            Self::Unit => sentence!("plain-has-no-unit", "this job has no unit"),
            Self::Cover => sentence!("plain-has-no-cover", "this job has no cover"),
            Self::Record => sentence!("plain-has-no-record", "this job has no line of the record"),
            Self::Spare => sentence!("plain-has-no-spare", "this job has no spare"),
            Self::Instrument => sentence!("plain-has-no-instrument", "this job has no instrument"),
        }
    }

    /// What a name is that was typed as if it were a word.
    pub(super) fn a(self) -> Sentence {
        match self {
            Self::Part | Self::Port | Self::Unit | Self::Record | Self::Spare => {
                sentence!("plain-a-part", "a part of the car")
            }
            Self::Joint => sentence!("plain-a-joint", "a joint of the car"),
            Self::Cover => sentence!("plain-a-cover", "a cover"),
            Self::Instrument => sentence!("plain-an-instrument", "an instrument"),
        }
    }
}
