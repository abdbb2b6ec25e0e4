//! Names: of things that are not there, that are there twice, that cannot be names.

use crate::locale::quote::quoted;
use crate::locale::sentence::{Sentence, Value};
use crate::sentence;

/// What a name in a file stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Named {
    /// A part of the car.
    Part,
    /// A port of a part.
    Port,
    /// A parameter of a part.
    Param,
    /// A joint.
    Joint,
    /// A cover.
    Cover,
    /// A hose, a wire or a joint.
    Line,
    /// A repair unit.
    Unit,
    /// A fault of the car's catalogue.
    Fault,
    /// A line of the data sheet.
    Limit,
    /// A line of the record.
    Record,
    /// An instrument.
    Instrument,
    /// A spare.
    Spare,
    /// A test of a car.
    Test,
    /// A car.
    Car,
    /// A pack.
    Pack,
    /// A job.
    Job,
}

/// What is wrong with a name.
#[derive(Debug)]
pub enum BadName {
    /// It stands for nothing.
    Unknown {
        /// Key path.
        path: Value,
        /// What it should name.
        what: Named,
        /// The name.
        name: String,
        /// Names that exist.
        known: Value,
    },
    /// The same name twice.
    Duplicate {
        /// Key path of the second.
        path: String,
        /// What it names.
        what: Named,
        /// The name.
        name: String,
        /// Key path of the first.
        first: String,
    },
    /// A short name in letters that commands and paths cannot take.
    NotShort {
        /// Key path.
        path: String,
        /// The name.
        name: String,
        /// What may stand between words.
        joiner: char,
    },
    /// The name of the reference attempt is no such name and `.script`.
    NoScript {
        /// The name.
        name: String,
    },
    /// The short name inside a file is not the file's name.
    NotTheFile {
        /// The name inside.
        id: String,
        /// The name it should have.
        expected: String,
    },
}

impl Named {
    /// There is none of this name.
    fn none_called(self, name: &str) -> Sentence {
        let name = quoted(name);
        match self {
            Self::Part => sentence!("data-no-part", "there is no part called {name}", name = name),
            Self::Port => sentence!("data-no-port", "there is no port called {name}", name = name),
            Self::Param => sentence!("data-no-param", "there is no parameter called {name}", name = name),
            Self::Joint => sentence!("data-no-joint", "there is no joint called {name}", name = name),
            Self::Cover => sentence!("data-no-cover", "there is no cover called {name}", name = name),
            Self::Line => {
                sentence!("data-no-line", "there is no hose, wire or joint called {name}", name = name)
            }
            Self::Unit => sentence!("data-no-unit", "there is no repair unit called {name}", name = name),
            Self::Fault => sentence!("data-no-fault", "there is no fault called {name}", name = name),
            Self::Limit => sentence!("data-no-limit", "there is no limit called {name}", name = name),
            Self::Record => {
                sentence!("data-no-record", "there is no record line called {name}", name = name)
            }
            Self::Instrument => {
                sentence!("data-no-instrument", "there is no instrument called {name}", name = name)
            }
            Self::Spare => sentence!("data-no-spare", "there is no spare called {name}", name = name),
            Self::Test => sentence!("data-no-test", "there is no test called {name}", name = name),
            Self::Car => sentence!("data-no-car", "there is no car called {name}", name = name),
            Self::Pack => sentence!("data-no-pack", "there is no pack called {name}", name = name),
            Self::Job => sentence!("data-no-job", "there is no job called {name}", name = name),
        }
    }

    /// One of this name is there.
    fn already_there(self, name: &str) -> Sentence {
        let name = quoted(name);
        match self {
            Self::Part => sentence!("data-twice-part", "the part {name} is already there", name = name),
            Self::Port => sentence!("data-twice-port", "the port {name} is already there", name = name),
            Self::Param => {
                sentence!("data-twice-param", "the parameter {name} is already there", name = name)
            }
            Self::Joint => sentence!("data-twice-joint", "the joint {name} is already there", name = name),
            Self::Cover => sentence!("data-twice-cover", "the cover {name} is already there", name = name),
            Self::Line => {
                sentence!("data-twice-line", "the hose, wire or joint {name} is already there", name = name)
            }
            Self::Unit => {
                sentence!("data-twice-unit", "the repair unit {name} is already there", name = name)
            }
            Self::Fault => sentence!("data-twice-fault", "the fault {name} is already there", name = name),
            Self::Limit => sentence!("data-twice-limit", "the limit {name} is already there", name = name),
            Self::Record => {
                sentence!("data-twice-record", "the record line {name} is already there", name = name)
            }
            Self::Instrument => {
                sentence!("data-twice-instrument", "the instrument {name} is already there", name = name)
            }
            Self::Spare => sentence!("data-twice-spare", "the spare {name} is already there", name = name),
            Self::Test => sentence!("data-twice-test", "the test {name} is already there", name = name),
            Self::Car => sentence!("data-twice-car", "the car {name} is already there", name = name),
            Self::Pack => sentence!("data-twice-pack", "the pack {name} is already there", name = name),
            Self::Job => sentence!("data-twice-job", "the job {name} is already there", name = name),
        }
    }
}

impl BadName {
    /// What is wrong, for every language.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        match self {
            Self::Unknown { path, what, name, known } => sentence!(
                "data-unknown-name",
                "{path}: {none}; known: {known}",
                path = path,
                none = what.none_called(name),
                known = known
            ),
            Self::Duplicate { path, what, name, first } => sentence!(
                "data-name-twice",
                "{path}: {there}, at {first}",
                path = path,
                there = what.already_there(name),
                first = first
            ),
            Self::NotShort { path, name, joiner } => sentence!(
                "data-bad-name",
                "{path} = {name} is not a short name: use a to z, 0 to 9, `{joiner}`, beginning with a letter, at \
                 most 60",
                path = path,
                name = quoted(name),
                joiner = joiner.to_string()
            ),
            Self::NoScript { name } => sentence!(
                "data-bad-script",
                "reference (a name ending in .script) = {name} is not a short name: use a to z, 0 to 9, `-`, \
                 beginning with a letter, at most 60",
                name = quoted(name)
            ),
            Self::NotTheFile { id, expected } => sentence!(
                "data-not-the-file",
                "id = {id}, but the file's name asks for {expected}",
                id = quoted(id),
                expected = quoted(expected)
            ),
        }
    }
}
