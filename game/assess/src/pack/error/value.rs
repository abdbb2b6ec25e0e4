//! Values that no such key can have: numbers, texts, lists, units.

use crate::locale::quote::{number, quoted};
use crate::locale::sentence::{Sentence, Value};
use crate::pack::range::Range;
use crate::pack::wanted::Wanted;
use crate::sentence;

/// What is wrong with a value.
#[derive(Debug)]
pub enum BadValue {
    /// Written for another version of the format.
    Schema {
        /// Version in the file.
        found: u32,
        /// Version read here.
        expected: u32,
    },
    /// A number outside its range.
    OutOfRange {
        /// Key path.
        path: Value,
        /// The value.
        value: f64,
        /// What is allowed.
        range: Range,
    },
    /// NaN or infinite.
    NotFinite {
        /// Key path.
        path: Value,
        /// The value.
        value: f64,
        /// What is allowed.
        range: Range,
    },
    /// A range whose low end is not below its high end.
    RangeReversed {
        /// Key path.
        path: String,
        /// First number.
        low: f64,
        /// Second number.
        high: f64,
    },
    /// A list with more entries than it may have.
    TooMany {
        /// Key path.
        path: String,
        /// The key.
        what: &'static str,
        /// How many there are.
        count: usize,
        /// How many there may be.
        max: usize,
    },
    /// A text with more characters than it may have.
    TooLong {
        /// Key path.
        path: String,
        /// How many there are.
        count: usize,
        /// How many there may be.
        max: usize,
    },
    /// A control character, or one that turns the direction of writing round.
    ControlCharacter {
        /// Key path.
        path: String,
        /// Its place in the text, from 1.
        place: usize,
        /// The character.
        found: char,
        /// Whether several lines are meant.
        many: bool,
    },
    /// A text or list that must not be empty.
    Empty {
        /// Key path.
        path: String,
        /// What should stand there.
        expected: Wanted,
    },
    /// A unit that the notebook does not know.
    WrongUnit {
        /// Key path.
        path: String,
        /// The word.
        unit: String,
        /// Units known.
        known: Value,
    },
    /// A data-sheet line with neither a smallest nor a largest value.
    NoBound {
        /// Key path.
        path: String,
    },
    /// A number between the steps of certainty.
    NoStep {
        /// Key path.
        path: String,
        /// The value.
        value: f64,
    },
    /// A way out of no length.
    NoDirection {
        /// Key path.
        path: String,
    },
}

impl BadValue {
    /// What is wrong, for every language.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        match self {
            Self::Schema { found, expected } => sentence!(
                "data-wrong-schema",
                "schema: {found}; this program reads schema {expected}",
                found = *found,
                expected = *expected
            ),
            Self::OutOfRange { path, value, range } => sentence!(
                "data-out-of-range",
                "{path} = {value}, allowed {range}",
                path = path,
                value = number(*value),
                range = range.sentence()
            ),
            Self::NotFinite { path, value, range } => sentence!(
                "data-not-finite",
                "{path} = {value} is not a finite number, allowed {range}",
                path = path,
                value = *value,
                range = range.sentence()
            ),
            Self::RangeReversed { path, low, high } => sentence!(
                "data-range-reversed",
                "{path} = ({low}, {high}): the low end must come first",
                path = path,
                low = number(*low),
                high = number(*high)
            ),
            Self::TooMany { path, what, count, max } => sentence!(
                "data-too-many",
                "{path}: {count} {what}; at most {max} may stand there",
                path = path,
                count = *count,
                what = *what,
                max = *max
            ),
            Self::TooLong { path, count, max } => sentence!(
                "data-too-long",
                "{path}: {count} characters; at most {max} may stand there",
                path = path,
                count = *count,
                max = *max
            ),
            Self::ControlCharacter { path, place, found, many: true } => sentence!(
                "data-control",
                "{path}: character {place} is {found}, a control that must not stand in a text",
                path = path,
                place = *place,
                found = found.escape_default().to_string()
            ),
            Self::ControlCharacter { path, place, found, many: false } => sentence!(
                "data-control-one-line",
                "{path}: character {place} is {found}, a control that must not stand in a text (one line is meant)",
                path = path,
                place = *place,
                found = found.escape_default().to_string()
            ),
            Self::Empty { path, expected } => sentence!(
                "data-empty",
                "{path} is empty; {expected}",
                path = path,
                expected = expected.sentence()
            ),
            Self::WrongUnit { path, unit, known } => sentence!(
                "data-wrong-unit",
                "{path} = {unit} is not a unit; known: {known}",
                path = path,
                unit = quoted(unit),
                known = known
            ),
            Self::NoBound { path } => sentence!(
                "data-no-bound",
                "{path} has neither `min` nor `max`; a limit needs at least one",
                path = path
            ),
            Self::NoStep { path, value } => sentence!(
                "data-no-step",
                "{path} = {value} is no step of certainty; write 0.40, 0.60, 0.80 or 0.95",
                path = path,
                value = number(*value)
            ),
            Self::NoDirection { path } => sentence!(
                "data-no-direction",
                "{path} = (0, 0, 0) points nowhere; write a way, for example (0, 1, 0) for upwards",
                path = path
            ),
        }
    }
}
