//! What can be wrong with a file: each with file, place, what was found, what was expected.
//!
//! Places: line:column where the text itself is at fault, a key path (`faults[3].severity_min`) where a
//! value is. There is no catch-all; a new kind of mistake gets a variant of its own.

use std::fmt;

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
    /// A car.
    Car,
    /// A pack.
    Pack,
    /// A job.
    Job,
}

impl fmt::Display for Named {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Part => "part",
            Self::Port => "port",
            Self::Param => "parameter",
            Self::Joint => "joint",
            Self::Cover => "cover",
            Self::Unit => "repair unit",
            Self::Fault => "fault",
            Self::Limit => "limit",
            Self::Record => "record line",
            Self::Instrument => "instrument",
            Self::Spare => "spare",
            Self::Car => "car",
            Self::Pack => "pack",
            Self::Job => "job",
        })
    }
}

/// One fault of a file.
#[derive(Debug, thiserror::Error)]
#[non_exhaustive]
pub enum PackError {
    /// The file or folder cannot be read.
    #[error("{file}: cannot be read ({source}); check that it exists and that you may read it")]
    Unreadable {
        /// The file.
        file: String,
        /// What the system said.
        source: std::io::Error,
    },
    /// Larger than any honest file of this kind; it was not read.
    #[error("{file}: {bytes} bytes; at most {max} bytes are read")]
    TooLarge {
        /// The file.
        file: String,
        /// Its size.
        bytes: u64,
        /// Largest size read.
        max: u64,
    },
    /// Not UTF-8 text.
    #[error("{file}: byte {at} is not UTF-8; save the file as UTF-8 text")]
    NotText {
        /// The file.
        file: String,
        /// Offset of the first bad byte.
        at: usize,
    },
    /// Not RON, or a value of the wrong shape.
    #[error("{file}:{line}:{column}: {source}; near `{near}`")]
    Syntax {
        /// The file.
        file: String,
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
        /// The text at that place.
        near: String,
        /// What the parser said.
        source: ron::error::Error,
    },
    /// The text ends before the value does.
    #[error("{file}:{line}:{column}: the file ends in the middle of a value; was it cut off?")]
    Truncated {
        /// The file.
        file: String,
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
    },
    /// A key that is not known there (a wrong unit in a name is a wrong key).
    #[error("{file}:{line}:{column}: `{inside}` has no key `{key}`; known keys: {known}")]
    UnknownKey {
        /// The file.
        file: String,
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
        /// The struct it stands in.
        inside: String,
        /// The key.
        key: String,
        /// Keys that may stand there.
        known: String,
    },
    /// A key that must stand there does not.
    #[error("{file}:{line}:{column}: `{inside}` needs the key `{key}`")]
    MissingKey {
        /// The file.
        file: String,
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
        /// The struct.
        inside: String,
        /// The key.
        key: &'static str,
    },
    /// A key stands twice.
    #[error("{file}:{line}:{column}: the key `{key}` of `{inside}` stands twice")]
    DuplicateKey {
        /// The file.
        file: String,
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
        /// The struct.
        inside: String,
        /// The key.
        key: &'static str,
    },
    /// A word out of a fixed list (a kind of part, a station, a unit state) is not in it.
    #[error("{file}:{line}:{column}: `{word}` is not a {of}; known: {known}")]
    UnknownWord {
        /// The file.
        file: String,
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
        /// The word.
        word: String,
        /// What it should be one of.
        of: String,
        /// Words that may stand there.
        known: String,
    },
    /// Written for another version of the format.
    #[error("{file}: schema: {found}; this program reads schema {expected}")]
    WrongSchema {
        /// The file.
        file: String,
        /// Version in the file.
        found: u32,
        /// Version read here.
        expected: u32,
    },
    /// A number outside its range.
    #[error("{file}: {path} = {value}, allowed {min} to {max}{unit}")]
    OutOfRange {
        /// The file.
        file: String,
        /// Key path.
        path: String,
        /// The value.
        value: f64,
        /// Smallest value allowed.
        min: f64,
        /// Largest value allowed.
        max: f64,
        /// Unit with a leading space, or nothing where the key's name carries it.
        unit: &'static str,
    },
    /// NaN or infinite.
    #[error("{file}: {path} = {value} is not a finite number, allowed {min} to {max}{unit}")]
    NotFinite {
        /// The file.
        file: String,
        /// Key path.
        path: String,
        /// The value.
        value: f64,
        /// Smallest value allowed.
        min: f64,
        /// Largest value allowed.
        max: f64,
        /// Unit with a leading space, or nothing.
        unit: &'static str,
    },
    /// A range whose low end is not below its high end.
    #[error("{file}: {path} = ({low}, {high}): the low end must come first")]
    RangeReversed {
        /// The file.
        file: String,
        /// Key path.
        path: String,
        /// First number.
        low: f64,
        /// Second number.
        high: f64,
    },
    /// A name that stands for nothing.
    #[error("{file}: {path}: there is no {what} called {name:?}; known: {known}")]
    UnknownName {
        /// The file (or folder looked in).
        file: String,
        /// Key path.
        path: String,
        /// What it should name.
        what: Named,
        /// The name.
        name: String,
        /// Names that exist.
        known: String,
    },
    /// The same name twice.
    #[error("{file}: {path}: the {what} {name:?} is already there, at {first}")]
    DuplicateName {
        /// The file.
        file: String,
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
    #[error(
        "{file}: {path} = {name:?} is not a short name: use a to z, 0 to 9, `{joiner}`, beginning with a letter"
    )]
    BadName {
        /// The file.
        file: String,
        /// Key path.
        path: String,
        /// The name.
        name: String,
        /// What may stand between words.
        joiner: char,
    },
    /// The short name inside a file is not the file's name.
    #[error("{file}: id = {id:?}, but the file's name asks for {expected:?}")]
    IdFileMismatch {
        /// The file.
        file: String,
        /// The name inside.
        id: String,
        /// The name it should have.
        expected: String,
    },
    /// More parts than can be computed.
    #[error(
        "{file}: the parts have {count} {what}; at most {max} can be computed: leave out what no job needs"
    )]
    TooMuch {
        /// The file.
        file: String,
        /// Of what.
        what: &'static str,
        /// How many there are.
        count: usize,
        /// How many there may be.
        max: usize,
    },
    /// A text or list that must not be empty.
    #[error("{file}: {path} is empty; {expected}")]
    Empty {
        /// The file.
        file: String,
        /// Key path.
        path: String,
        /// What should stand there.
        expected: &'static str,
    },
    /// Air joined to electricity.
    #[error("{file}: {path} joins {a} ({a_domain}) to {b} ({b_domain}); both must carry the same")]
    DomainMismatch {
        /// The file.
        file: String,
        /// Key path.
        path: String,
        /// One port.
        a: String,
        /// What it carries.
        a_domain: &'static str,
        /// The other port.
        b: String,
        /// What it carries.
        b_domain: &'static str,
    },
    /// A port joined to itself.
    #[error("{file}: {path} joins {port} to itself")]
    JoinedToItself {
        /// The file.
        file: String,
        /// Key path.
        path: String,
        /// The port.
        port: String,
    },
    /// An air port in two joints; only a tee branches air.
    #[error("{file}: {path}: the air port {port} is already joined by {first}; branch air with a Tee")]
    PortTaken {
        /// The file.
        file: String,
        /// Key path.
        path: String,
        /// The port.
        port: String,
        /// The joint that has it.
        first: String,
    },
    /// A switch that closes at deeper vacuum than it opens.
    #[error(
        "{file}: {path}: cut_in_kpa = {cut_in} must lie above cut_out_kpa = {cut_out} (less vacuum), or the pump chatters"
    )]
    SwitchPointsReversed {
        /// The file.
        file: String,
        /// Key path.
        path: String,
        /// Opens at, kPa gauge.
        cut_out: f64,
        /// Closes at, kPa gauge.
        cut_in: f64,
    },
    /// A sound car could be drawn outside its own limit.
    #[error(
        "{file}: {path}: serviceable ({}, {}) reaches outside limit ({}, {})",
        serviceable.0, serviceable.1, limit.0, limit.1
    )]
    ServiceableOutsideLimit {
        /// The file.
        file: String,
        /// Key path.
        path: String,
        /// Serviceable range.
        serviceable: (f64, f64),
        /// Limit.
        limit: (f64, f64),
    },
    /// The new part is outside its limit.
    #[error("{file}: {path}: the new value {new} lies outside limit ({}, {})", limit.0, limit.1)]
    NewOutsideLimit {
        /// The file.
        file: String,
        /// Key path.
        path: String,
        /// Value of the new part.
        new: f64,
        /// Limit.
        limit: (f64, f64),
    },
    /// A fault that changes a number for which no limit is stated.
    #[error("{file}: {path}: {param} has no line under `tolerances`; a fault must breach a stated limit")]
    NoLimit {
        /// The file.
        file: String,
        /// Key path.
        path: String,
        /// The parameter.
        param: String,
    },
    /// A severity that is still inside the limit.
    #[error("{file}: {path} = {value} is inside the limit of {param} ({}, {}); a fault must breach it", limit.0, limit.1)]
    SeverityInsideLimit {
        /// The file.
        file: String,
        /// Key path.
        path: String,
        /// The severity.
        value: f64,
        /// The parameter.
        param: String,
        /// Its limit.
        limit: (f64, f64),
    },
    /// Highest severity not further out than the lowest, on the same side of the limit.
    #[error("{file}: {path}: severity_max = {max} must lie further out than severity_min = {min}")]
    SeverityOrder {
        /// The file.
        file: String,
        /// Key path.
        path: String,
        /// Lowest severity.
        min: f64,
        /// Highest severity.
        max: f64,
    },
    /// A hidden fault of a severity that its catalogue does not have.
    #[error("{file}: {path} = {value}; the catalogue has {fault} from {min} to {max}")]
    SeverityOutsideCatalogue {
        /// The file.
        file: String,
        /// Key path.
        path: String,
        /// The severity.
        value: f64,
        /// The fault.
        fault: String,
        /// Lowest severity.
        min: f64,
        /// Highest severity.
        max: f64,
    },
    /// A number that belongs to a part outside the repair unit it is filed under.
    #[error("{file}: {path}: {param} is not a number of the repair unit {unit:?} (parts: {parts})")]
    NotOfUnit {
        /// The file.
        file: String,
        /// Key path.
        path: String,
        /// The parameter.
        param: String,
        /// The repair unit.
        unit: String,
        /// Parts of that unit.
        parts: String,
    },
    /// An instrument whose circuit side is of another kind than its card.
    #[error("{file}: part: a {kind} needs {expected}, found {found}")]
    WrongPart {
        /// The file.
        file: String,
        /// Kind of the card.
        kind: &'static str,
        /// Part it needs.
        expected: &'static str,
        /// Part found.
        found: &'static str,
    },
    /// A unit that the notebook does not know.
    #[error("{file}: {path} = {unit:?} is not a unit; known: {known}")]
    WrongUnit {
        /// The file.
        file: String,
        /// Key path.
        path: String,
        /// The word.
        unit: String,
        /// Units known.
        known: String,
    },
    /// A data-sheet line with neither a smallest nor a largest value.
    #[error("{file}: {path} has neither `min` nor `max`; a limit needs at least one")]
    NoBound {
        /// The file.
        file: String,
        /// Key path.
        path: String,
    },
    /// A part (or an earth point of a car body) without its place on the line diagram.
    #[error("{file}: places: {what} needs one place on the sheet `{sheet}`")]
    NotPlaced {
        /// The file.
        file: String,
        /// The part, or its port.
        what: String,
        /// The sheet.
        sheet: &'static str,
    },
    /// A part on a sheet whose lines it does not carry.
    #[error("{file}: {path}: {part} has nothing that belongs on the sheet `{sheet}`")]
    WrongSheet {
        /// The file.
        file: String,
        /// Key path.
        path: String,
        /// The part.
        part: String,
        /// The sheet.
        sheet: &'static str,
    },
    /// Earth points of a part that is no car body.
    #[error("{file}: {path}.points: {part} is no car body; its ports follow from its symbol")]
    NoEarthPoints {
        /// The file.
        file: String,
        /// Key path.
        path: String,
        /// The part.
        part: String,
    },
    /// A job for a car at an altitude its data sheet rules out.
    #[error("{file}: day.altitude_m = {altitude_m}: {car} reaches its cut-out up to {limit_m} m")]
    AboveAltitudeLimit {
        /// The file.
        file: String,
        /// Altitude of the job.
        altitude_m: f64,
        /// The car.
        car: String,
        /// Altitude limit of the car, m.
        limit_m: f64,
    },
    /// Each number may be, all together cannot be computed.
    #[error(
        "{file}: {path}: on a trial of an hour this car cannot be computed any further than {at_s} s; look at {part} \
         first: a number of it is far from those around it"
    )]
    NotComputed {
        /// The file.
        file: String,
        /// What of it makes the car.
        path: String,
        /// Second of the trial.
        at_s: f64,
        /// The part whose state changes fastest there.
        part: String,
    },
}

/// Every fault found, in the order of the files.
#[derive(Debug)]
pub struct PackErrors(pub Vec<PackError>);

impl fmt::Display for PackErrors {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (i, e) in self.0.iter().enumerate() {
            if i != 0 {
                f.write_str("\n")?;
            }
            write!(f, "{e}")?;
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
