//! What the workshop tells: why it refuses, what a person in it notices, what was unsafe, what a line of the record
//! lacks. Typed: which of them it is, and the short names and numbers it speaks of. No sentence of any language is
//! here; [`Told::telling`] gives the key under which the files of words have it and what stands in its gaps.
//!
//! A new notice is a variant here and its key in every language (a test asks every language for every key).

mod event;
mod hazard;
mod names;
mod refusal;
mod table;
mod unmet;
mod words;

pub use event::Notice;
pub use hazard::{Gravity, Hazard, Left};
pub use names::{Card, Cover, End, Joint, Part, Port, Spare, TheCover, TheTool, TheUnit, Unit};
pub use refusal::{Reason, Refusal};
pub use unmet::{Unmet, Wanted};
pub use words::{Quantity, Sort, Tool, Word};

/// A key of the files of words with what stands in its gaps, in the order of the variant's fields.
#[derive(Clone, Debug, PartialEq)]
pub struct Telling {
    /// Key, such as `told-cover-in-the-way`.
    pub key: &'static str,
    /// Gaps by name.
    pub gaps: Vec<(&'static str, Gap)>,
}

/// What stands in a gap.
#[derive(Clone, Debug, PartialEq)]
pub enum Gap {
    /// A thing by its short name; where names are typed it is shown as it is typed, else as it is called.
    Typed(Thing, String),
    /// A thing by its short name, always shown as it is called.
    Called(Thing, String),
    /// A word of the language, by its key without `word-`.
    Word(&'static str),
    /// A number.
    Number(f64),
    /// Text that no language changes.
    Verbatim(String),
    /// Lines of the papers that the job's or the car's files bring: which, its running number from 0 or its short name,
    /// and the file's own words for it.
    Paper(Paper, String),
    /// A sentence inside the sentence.
    Telling(Box<Telling>),
    /// Several, one after the other.
    List(Vec<Telling>),
}

/// What a short name belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Thing {
    /// A part of the car.
    Part,
    /// A port of the car or of an instrument, `part.port`.
    Port,
    /// A joint of the car.
    Joint,
    /// A cover.
    Cover,
    /// An instrument.
    Instrument,
    /// A repair unit.
    Unit,
    /// A spare.
    Spare,
    /// An end of an instrument.
    End,
}

/// Which paper a line comes from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Paper {
    /// Line of the job card, from 0.
    Card(usize),
    /// A limit of the data sheet, by its short name.
    Limit(String),
    /// Caution of the car's data sheet, from 0.
    Caution(usize),
}

/// Something that is told.
pub trait Told {
    /// Its key and its gaps.
    fn telling(&self) -> Telling;
}

/// A value that can stand in a gap.
pub(crate) trait InGap {
    fn gap(&self) -> Gap;
}

impl InGap for u32 {
    fn gap(&self) -> Gap {
        Gap::Number(f64::from(*self))
    }
}

impl InGap for f64 {
    fn gap(&self) -> Gap {
        Gap::Number(*self)
    }
}

impl InGap for String {
    fn gap(&self) -> Gap {
        Gap::Verbatim(self.clone())
    }
}

impl<T: Told> InGap for Box<T> {
    fn gap(&self) -> Gap {
        Gap::Telling(Box::new(self.telling()))
    }
}

impl<T: Told> InGap for Vec<T> {
    fn gap(&self) -> Gap {
        Gap::List(self.iter().map(Told::telling).collect())
    }
}

/// Every key with the names of its gaps, of all that the workshop tells: for the tests of the files of words.
#[must_use]
pub fn keys() -> Vec<(&'static str, &'static [&'static str])> {
    [Reason::KEYS, Refusal::KEYS, Notice::KEYS, Hazard::KEYS, Left::KEYS, Unmet::KEYS].concat()
}

/// Every word that can stand in a gap, by its key without `word-`.
#[must_use]
pub fn word_keys() -> Vec<&'static str> {
    [Word::KEYS, Sort::KEYS, Quantity::KEYS, Tool::KEYS, Wanted::KEYS, names::STATION_KEYS].concat()
}
