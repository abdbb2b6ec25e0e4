//! Tests that are none, or that do not leave the car as it was.

use crate::locale::quote::bare;
use crate::locale::sentence::Sentence;
use crate::sentence;
use crate::words::WordsError;

/// What is wrong with a test.
#[derive(Debug)]
pub enum BadTest {
    /// A line that means nothing at this car: an unknown word, part, port, joint, instrument, a word too few.
    Line {
        /// Key path.
        path: String,
        /// The line.
        text: String,
        /// Why. Boxed because it is much larger than the rest.
        why: Box<WordsError>,
    },
    /// A line that is no part of a test: a question to the bench, paper, a repair, a finding, the hand-back.
    NoTesting {
        /// Key path.
        path: String,
        /// The line.
        text: String,
    },
    /// A line that changes what stands, and stands so already; or what it needs does not stand.
    Idle {
        /// Key path.
        path: String,
        /// The line.
        text: String,
    },
    /// Something that lasts is still so at the end.
    NotUndone {
        /// Key path.
        path: String,
        /// The line that would undo it.
        line: String,
    },
    /// Nothing is noted.
    NoReading {
        /// Key path.
        path: String,
    },
    /// A note outside the readings.
    NoteElsewhere {
        /// Key path.
        path: String,
    },
    /// A note of what is noted already.
    NothingToNote {
        /// Key path.
        path: String,
    },
    /// A note that knows beforehand what will be read.
    NoteKnows {
        /// Key path.
        path: String,
        /// The line.
        text: String,
    },
    /// A meter that is read without its dial having been set.
    DialOff {
        /// Key path.
        path: String,
        /// The instrument.
        instrument: String,
    },
}

impl BadTest {
    /// What is wrong, for every language.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        match self {
            Self::Line { path, text, why } => sentence!(
                "data-test-line",
                "{path} ({text}): {why}",
                path = path,
                text = bare(text),
                why = why.sentence()
            ),
            Self::NoTesting { path, text } => sentence!(
                "data-test-no-testing",
                "{path} ({text}): a test sets up, does, reads and undoes; leave out questions, paper, repairs and findings",
                path = path,
                text = bare(text)
            ),
            Self::Idle { path, text } => sentence!(
                "data-test-idle",
                "{path} ({text}): it is so already when the test comes there, or what it needs is not so",
                path = path,
                text = bare(text)
            ),
            Self::NotUndone { path, line } => sentence!(
                "data-test-not-undone",
                "{path}: a test leaves the car as it was; it needs the line `{line}`",
                path = path,
                line = bare(line)
            ),
            Self::NoReading { path } => sentence!(
                "data-test-no-reading",
                "{path}: a test notes something; write `note shown` behind what it reads",
                path = path
            ),
            Self::NoteElsewhere { path } => {
                sentence!("data-test-note-elsewhere", "{path}: only `readings` has notes", path = path)
            }
            Self::NothingToNote { path } => sentence!(
                "data-test-nothing-to-note",
                "{path}: that reading is noted already; read, time, feel or hear something first",
                path = path
            ),
            Self::NoteKnows { path, text } => sentence!(
                "data-test-note-knows",
                "{path} ({text}): nobody knows yet what will be read; write `note shown`, or `note shown for` and a \
                 line of the record",
                path = path,
                text = bare(text)
            ),
            Self::DialOff { path, instrument } => sentence!(
                "data-test-dial-off",
                "{path}: {instrument} is read while its dial is off; set it first: `meter volt`",
                path = path,
                instrument = bare(instrument)
            ),
        }
    }
}
