//! What can be wrong with a file: each with file, place, what was found, what was expected.
//!
//! Places: line:column where the text itself is at fault, a key path (`faults[3].severity_min`) where a
//! value is. There is no catch-all; a new kind of mistake gets a variant of its own.

use std::fmt;

use super::bounds::MOST_ERRORS;
use crate::files::{Doing, FileError, system};
use crate::locale::quote::{bare, number, quoted};

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
            Self::Line => "hose, wire or joint",
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
    #[error("{file}: cannot be read ({})", system(source, Doing::Read))]
    Unreadable {
        /// The file.
        file: String,
        /// What the system said.
        source: std::io::Error,
    },
    /// A folder, pipe, device or socket under a file's name.
    #[error("{file}: is {what}, not a regular file")]
    NotRegular {
        /// The file.
        file: String,
        /// What it is.
        what: &'static str,
    },
    /// A link that leads out of the data folder; what it leads to was not read.
    #[error("{file}: is a link that leaves the data folder; put the file itself there")]
    LeavesFolder {
        /// The file.
        file: String,
    },
    /// A file whose name no message and no command can take.
    #[error("{file}: the name of this file is no plain text; rename it with a to z, 0 to 9 and `-` or `_`")]
    NotAName {
        /// Folder and name, escaped.
        file: String,
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
    #[error("{file}: line {line}, byte {at} is not UTF-8; save the file as UTF-8 text")]
    NotText {
        /// The file.
        file: String,
        /// Line, from 1.
        line: usize,
        /// Offset of the first bad byte.
        at: usize,
    },
    /// Not RON, or a value of the wrong shape.
    #[error("{file}:{line}:{column}: {expected}{}", near_here(near))]
    Syntax {
        /// The file.
        file: String,
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
        /// The word or sign at that place; empty when there is none that is short.
        near: String,
        /// What should stand there.
        expected: String,
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
    #[error("{file}:{line}:{column}: `{}` has no key `{}`; known keys: {known}", bare(inside), bare(key))]
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
    #[error("{file}:{line}:{column}: `{}` is none of {of}: {known}", bare(word))]
    UnknownWord {
        /// The file.
        file: String,
        /// Line, from 1.
        line: usize,
        /// Column, from 1.
        column: usize,
        /// The word.
        word: String,
        /// What it should be one of, in words.
        of: &'static str,
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
    #[error("{file}: {path} = {}, allowed {} to {}{unit}", number(*value), number(*min), number(*max))]
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
    #[error("{file}: {path} = {value} is not a finite number, allowed {} to {}{unit}", number(*min), number(*max))]
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
    #[error("{file}: {path} = ({}, {}): the low end must come first", number(*low), number(*high))]
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
    #[error("{file}: {path}: there is no {what} called {}; known: {known}", quoted(name))]
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
    #[error("{file}: {path}: the {what} {} is already there, at {first}", quoted(name))]
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
        "{file}: {path} = {} is not a short name: use a to z, 0 to 9, `{joiner}`, beginning with a letter, at \
         most 60",
        quoted(name)
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
    #[error("{file}: id = {}, but the file's name asks for {}", quoted(id), quoted(expected))]
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
    /// A list with more entries than it may have.
    #[error("{file}: {path}: {count} {what}; at most {max} may stand there")]
    TooMany {
        /// The file.
        file: String,
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
    #[error("{file}: {path}: {count} characters; at most {max} may stand there")]
    TooLong {
        /// The file.
        file: String,
        /// Key path.
        path: String,
        /// How many there are.
        count: usize,
        /// How many there may be.
        max: usize,
    },
    /// A control character, or one that turns the direction of writing round.
    #[error(
        "{file}: {path}: character {place} is {}, a control that must not stand in a text{}",
        found.escape_default(),
        if *many { "" } else { " (one line is meant)" }
    )]
    ControlCharacter {
        /// The file.
        file: String,
        /// Key path.
        path: String,
        /// Its place in the text, from 1.
        place: usize,
        /// The character.
        found: char,
        /// Whether several lines are meant.
        many: bool,
    },
    /// More faults than are told one by one.
    #[error("{file}: and {more} more; mend these first")]
    More {
        /// The file.
        file: String,
        /// How many.
        more: usize,
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
    #[error(
        "{file}: {path} joins {} ({a_domain}) to {} ({b_domain}); both must carry the same",
        bare(a),
        bare(b)
    )]
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
        "{file}: {path}: cut_in_kpa = {} must lie above cut_out_kpa = {} (less vacuum), or the pump chatters",
        number(*cut_in), number(*cut_out)
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
        number(serviceable.0), number(serviceable.1), number(limit.0), number(limit.1)
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
    #[error("{file}: {path}: the new value {} lies outside limit ({}, {})", number(*new), number(limit.0), number(limit.1))]
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
    #[error("{file}: {path} = {} is inside the limit of {param} ({}, {}); a fault must breach it", number(*value), number(limit.0), number(limit.1))]
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
    #[error("{file}: {path}: severity_max = {} must lie further out than severity_min = {}", number(*max), number(*min))]
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
    #[error("{file}: {path} = {}; the catalogue has {fault} from {} to {}", number(*value), number(*min), number(*max))]
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
    #[error("{file}: {path}: {param} is not a number of the repair unit {} (parts: {parts})", quoted(unit))]
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
    #[error("{file}: {path} = {} is not a unit; known: {known}", quoted(unit))]
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
    /// A part, a port, a line or a cover without its place in the room.
    #[error("{file}: {list}: {what} is missing; every one of the car's has one entry")]
    NotInRoom {
        /// The file.
        file: String,
        /// The list in which it is missing.
        list: String,
        /// What is missing.
        what: String,
    },
    /// A hose or wire among the parts that stand: it follows its way.
    #[error("{file}: {path}: {part} is a hose or wire and has no place of its own; put it into `ways`")]
    Lies {
        /// The file.
        file: String,
        /// Key path.
        path: String,
        /// The part.
        part: String,
    },
    /// A way of something that is no line.
    #[error(
        "{file}: {path}: {name} is no hose, no wire and no joint between two terminals; only these have a way"
    )]
    NoLine {
        /// The file.
        file: String,
        /// Key path.
        path: String,
        /// The part or joint.
        name: String,
    },
    /// A key of a way that its line cannot have.
    #[error("{file}: {path}: {why}; leave it out")]
    NotOfLine {
        /// The file.
        file: String,
        /// Key path.
        path: String,
        /// What it has instead.
        why: &'static str,
    },
    /// The wire of a joint without its cross-section.
    #[error("{file}: {path}: {joint} is a joint and has no number of its own; write its wire's area_mm2")]
    NoArea {
        /// The file.
        file: String,
        /// Key path.
        path: String,
        /// The joint.
        joint: String,
    },
    /// A way out of no length.
    #[error("{file}: {path} = (0, 0, 0) points nowhere; write a way, for example (0, 1, 0) for upwards")]
    NoDirection {
        /// The file.
        file: String,
        /// Key path.
        path: String,
    },
    /// A job for a car at an altitude its data sheet rules out.
    #[error("{file}: day.altitude_m = {}: {car} reaches its cut-out up to {} m", number(*altitude_m), number(*limit_m))]
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
        // One file tells at most MOST_ERRORS and how many more; of many broken files as many are enough.
        let shown = self.0.len().min(2 * MOST_ERRORS);
        for (i, e) in self.0[..shown].iter().enumerate() {
            if i != 0 {
                f.write_str("\n")?;
            }
            write!(f, "{e}")?;
        }
        match self.0.len() - shown {
            0 => Ok(()),
            more => write!(f, "\nand {more} more"),
        }
    }
}

fn near_here(near: &str) -> String {
    if near.is_empty() { String::new() } else { format!("; near `{}`", bare(near)) }
}

impl PackError {
    /// Why the data file shown as `file` was not read.
    pub(crate) fn of_file(error: FileError, file: &str) -> Self {
        let file = file.to_owned();
        match error {
            FileError::System { source, .. } => Self::Unreadable { file, source },
            FileError::NotRegular { what, .. } => Self::NotRegular { file, what },
            FileError::TooLarge { bytes, kind, .. } => Self::TooLarge { file, bytes, max: kind.most },
            FileError::NotText { line, at, .. } => Self::NotText { file, line, at },
            FileError::Outside { .. } => Self::LeavesFolder { file },
        }
    }
}

impl std::error::Error for PackErrors {}

impl From<PackError> for PackErrors {
    fn from(e: PackError) -> Self {
        Self(vec![e])
    }
}
