//! What can be wrong with a file: each with file, place, what was found, what was expected.
//!
//! Places: line:column where the text itself is at fault, a key path (`faults[3].severity_min`) where a
//! value is. There is no catch-all; a new kind of mistake gets a variant of its own, in the file of its subject.

mod car;
mod catalogue;
mod name;
mod place;
mod test;
mod unread;
mod value;
mod written;

use std::fmt;

pub use car::BadCar;
pub use catalogue::BadCatalogue;
pub use name::{BadName, Named};
pub use place::BadPlace;
pub use test::BadTest;
pub use unread::Unread;
pub use value::BadValue;
pub use written::{Miswritten, Words};

use super::bounds::MOST_ERRORS;
use crate::locale::sentence::Sentence;
use crate::sentence;

/// One fault of a file.
#[derive(Debug, thiserror::Error)]
#[error("{}", self.sentence())]
pub struct PackError {
    /// The file or folder, as shown.
    pub file: String,
    /// What is wrong with it.
    pub fault: Fault,
}

/// What is wrong with a file.
#[derive(Debug)]
#[non_exhaustive]
pub enum Fault {
    /// It was not read.
    Unread(Unread),
    /// It is not written as such a file is.
    Written {
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
        /// What is wrong there.
        what: Miswritten,
    },
    /// A value that no such key can have.
    Value(BadValue),
    /// A name.
    Name(BadName),
    /// Parts and joints of a car, the part of an instrument.
    Car(BadCar),
    /// Limits, repair units, faults and spares of a car; what a job hides.
    Catalogue(BadCatalogue),
    /// Where something stands in the room or on the diagram.
    Place(BadPlace),
    /// A test of a car.
    Test(BadTest),
    /// More faults than are told one by one.
    More {
        /// How many.
        more: usize,
    },
}

macro_rules! faults {
    ($($of:ident($what:ty)),*) => {
        $(impl From<$what> for Fault {
            fn from(what: $what) -> Self {
                Self::$of(what)
            }
        })*
    };
}
faults!(
    Unread(Unread),
    Value(BadValue),
    Name(BadName),
    Car(BadCar),
    Catalogue(BadCatalogue),
    Place(BadPlace),
    Test(BadTest)
);

impl PackError {
    pub(crate) fn new(file: &str, fault: impl Into<Fault>) -> Self {
        Self { file: file.to_owned(), fault: fault.into() }
    }

    /// What is wrong, for every language.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        let file = &self.file;
        let what = match &self.fault {
            Fault::Written { line, column, what } => {
                return sentence!(
                    "data-fault-at",
                    "{file}:{line}:{column}: {what}",
                    file = file,
                    line = *line,
                    column = *column,
                    what = what.sentence()
                );
            }
            Fault::Unread(what) => what.sentence(),
            Fault::Value(what) => what.sentence(),
            Fault::Name(what) => what.sentence(),
            Fault::Car(what) => what.sentence(),
            Fault::Catalogue(what) => what.sentence(),
            Fault::Place(what) => what.sentence(),
            Fault::Test(what) => what.sentence(),
            Fault::More { more } => {
                sentence!("data-more-in-file", "and {more} more; mend these first", more = *more)
            }
        };
        sentence!("data-fault", "{file}: {what}", file = file, what = what)
    }
}

/// Every fault found, in the order of the files.
#[derive(Debug)]
pub struct PackErrors(pub Vec<PackError>);

impl PackErrors {
    /// What is wrong, one sentence a line, for every language. One file tells at most twenty and how many more; of many
    /// broken files twice as many are enough.
    #[must_use]
    pub fn sentences(&self) -> Vec<Sentence> {
        let shown = self.0.len().min(2 * MOST_ERRORS);
        let mut told: Vec<Sentence> = self.0[..shown].iter().map(PackError::sentence).collect();
        match self.0.len() - shown {
            0 => {}
            more => told.push(sentence!("data-more", "and {more} more", more = more)),
        }
        told
    }
}

impl PackErrors {
    /// All of them together, a line each.
    #[must_use]
    pub fn in_one(&self) -> Sentence {
        let mut told = self.sentences().into_iter();
        let first = told.next().unwrap_or_else(|| sentence!("data-all-well", "nothing is wrong"));
        told.fold(first, |all, next| sentence!("data-lines", "{all}\n{next}", all = all, next = next))
    }
}

impl fmt::Display for PackErrors {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (i, said) in self.sentences().iter().enumerate() {
            let end = if i == 0 { "" } else { "\n" };
            write!(f, "{end}{said}")?;
        }
        Ok(())
    }
}

impl std::error::Error for PackErrors {}

impl From<PackError> for PackErrors {
    fn from(e: PackError) -> Self {
        Self(vec![e])
    }
}
