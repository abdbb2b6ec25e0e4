//! Texts that are not written as such a file is: no RON, or keys and words that are not known.

use crate::locale::quote::bare;
use crate::locale::sentence::{Sentence, Value};
use crate::sentence;

/// What is wrong at a place of a text.
#[derive(Debug)]
pub enum Miswritten {
    /// Not RON, or a value of the wrong shape.
    Syntax {
        /// The word or sign at that place; empty when there is none that is short.
        near: String,
        /// What should stand there.
        expected: Sentence,
    },
    /// The text ends before the value does.
    Truncated,
    /// A key that is not known there (a wrong unit in a name is a wrong key).
    UnknownKey {
        /// The struct it stands in.
        inside: Option<String>,
        /// The key.
        key: String,
        /// Keys that may stand there.
        known: Value,
    },
    /// A key that must stand there does not.
    MissingKey {
        /// The struct.
        inside: Option<String>,
        /// The key.
        key: &'static str,
    },
    /// A key stands twice.
    DuplicateKey {
        /// The struct.
        inside: Option<String>,
        /// The key.
        key: &'static str,
    },
    /// A word out of a fixed list (a kind of part, a station, a unit state) is not in it.
    UnknownWord {
        /// The word.
        word: String,
        /// What it should be one of.
        of: Words,
        /// Words that may stand there.
        known: Value,
    },
}

/// A fixed list of words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Words {
    /// Places to stand.
    Stations,
    /// Kinds of part.
    Parts,
    /// Kinds of record line.
    RecordLines,
    /// Kinds of test.
    Tests,
    /// Kinds of instrument.
    Displays,
    /// What the customer notices.
    Symptoms,
    /// Sheets of the diagram.
    Sheets,
    /// Where a name stands beside its symbol.
    Sides,
    /// Bodies of cars.
    Bodies,
    /// Colours of wires.
    Colours,
    /// Ends of wires.
    Ends,
    /// Shapes of covers.
    Covers,
    /// What else stands in a car.
    Fixtures,
    /// Some other list.
    Other,
}

impl Words {
    /// By the name that the list has in the program.
    pub(crate) fn of(list: Option<&str>) -> Self {
        match list {
            Some("Station") => Self::Stations,
            Some("PartKind") => Self::Parts,
            Some("RecordKind") => Self::RecordLines,
            Some("TestKind") => Self::Tests,
            Some("InstrumentKind") => Self::Displays,
            Some("Symptom") => Self::Symptoms,
            Some("Sheet") => Self::Sheets,
            Some("Side") => Self::Sides,
            Some("Shell") => Self::Bodies,
            Some("Colour") => Self::Colours,
            Some("End") => Self::Ends,
            Some("CoverShape") => Self::Covers,
            Some("FixtureShape") => Self::Fixtures,
            _ => Self::Other,
        }
    }

    fn sentence(self) -> Sentence {
        match self {
            Self::Stations => sentence!("data-words-stations", "the stations"),
            Self::Parts => sentence!("data-words-parts", "the kinds of part"),
            Self::RecordLines => sentence!("data-words-record", "the kinds of record line"),
            Self::Tests => sentence!("data-words-tests", "the kinds of test"),
            Self::Displays => sentence!("data-words-displays", "the displays"),
            Self::Symptoms => sentence!("data-words-symptoms", "the symptoms"),
            Self::Sheets => sentence!("data-words-sheets", "the sheets"),
            Self::Sides => sentence!("data-words-sides", "the sides"),
            Self::Bodies => sentence!("data-words-bodies", "the bodies"),
            Self::Colours => sentence!("data-words-colours", "the colours of a wire"),
            Self::Ends => sentence!("data-words-ends", "the ends of a wire"),
            Self::Covers => sentence!("data-words-covers", "the shapes of a cover"),
            Self::Fixtures => sentence!("data-words-fixtures", "the fixtures"),
            Self::Other => sentence!("data-words-other", "the words that may stand here"),
        }
    }
}

/// The name of a block, as it stands in the file; one without a name is this one.
fn block(inside: Option<&str>) -> Value {
    match inside {
        Some(name) => bare(name).into(),
        None => sentence!("data-this-block", "this block").into(),
    }
}

impl Miswritten {
    /// What is wrong, for every language.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        match self {
            Self::Syntax { near, expected } if near.is_empty() => expected.clone(),
            Self::Syntax { near, expected } => sentence!(
                "data-syntax-near",
                "{expected}; near `{near}`",
                expected = expected.clone(),
                near = bare(near)
            ),
            Self::Truncated => {
                sentence!("data-truncated", "the file ends in the middle of a value; was it cut off?")
            }
            Self::UnknownKey { inside, key, known } => sentence!(
                "data-unknown-key",
                "`{inside}` has no key `{key}`; known keys: {known}",
                inside = block(inside.as_deref()),
                key = bare(key),
                known = known
            ),
            Self::MissingKey { inside, key } => sentence!(
                "data-missing-key",
                "`{inside}` needs the key `{key}`",
                inside = block(inside.as_deref()),
                key = *key
            ),
            Self::DuplicateKey { inside, key } => sentence!(
                "data-key-twice",
                "the key `{key}` of `{inside}` stands twice",
                key = *key,
                inside = block(inside.as_deref())
            ),
            Self::UnknownWord { word, of, known } => sentence!(
                "data-unknown-word",
                "`{word}` is none of {of}: {known}",
                word = bare(word),
                of = of.sentence(),
                known = known
            ),
        }
    }
}
