//! Parts and joints that make no car, and the part of an instrument.

use crate::locale::quote::{bare, number};
use crate::locale::sentence::{Sentence, Value};
use crate::sentence;
use sim_core::parts::Domain;

/// What is wrong with parts and joints.
#[derive(Debug)]
pub enum BadCar {
    /// More states than can be computed.
    TooManyStates {
        /// How many there are.
        count: usize,
        /// How many there may be.
        max: usize,
    },
    /// More electrical ports than can be computed.
    TooManyTerminals {
        /// How many there are.
        count: usize,
        /// How many there may be.
        max: usize,
    },
    /// Air joined to electricity.
    DomainMismatch {
        /// Key path.
        path: String,
        /// One port and what it carries.
        a: (String, Domain),
        /// The other.
        b: (String, Domain),
    },
    /// A port joined to itself.
    JoinedToItself {
        /// Key path.
        path: String,
        /// The port.
        port: String,
    },
    /// An air port in two joints; only a tee branches air.
    PortTaken {
        /// Key path.
        path: String,
        /// The port.
        port: String,
        /// The joint that has it.
        first: String,
    },
    /// A switch that closes at deeper vacuum than it opens.
    SwitchPointsReversed {
        /// Key path.
        path: String,
        /// Opens at, kPa gauge.
        cut_out: f64,
        /// Closes at, kPa gauge.
        cut_in: f64,
    },
    /// An instrument whose circuit side is of another kind than its card.
    WrongPart {
        /// Kind of the card.
        kind: &'static str,
        /// Part it needs, if any.
        expected: Option<&'static str>,
        /// Part found, if any.
        found: Option<&'static str>,
    },
    /// Each number may be, all together cannot be computed.
    NotComputed {
        /// What of the file makes the car.
        path: Value,
        /// Second of the trial.
        at_s: f64,
        /// The part whose state changes fastest there.
        part: Option<String>,
    },
}

fn carries(domain: Domain) -> Sentence {
    match domain {
        Domain::Pneumatic => sentence!("data-carries-air", "air"),
        Domain::Electrical => sentence!("data-carries-current", "current"),
    }
}

fn kind_of_part(kind: Option<&'static str>) -> Value {
    kind.map_or_else(|| sentence!("data-no-part-at-all", "nothing").into(), Value::from)
}

impl BadCar {
    /// What is wrong, for every language.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        match self {
            Self::TooManyStates { count, max } => sentence!(
                "data-too-many-states",
                "the parts have {count} state variables; at most {max} can be computed: leave out what no job needs",
                count = *count,
                max = *max
            ),
            Self::TooManyTerminals { count, max } => sentence!(
                "data-too-many-terminals",
                "the parts have {count} electrical ports; at most {max} can be computed: leave out what no job needs",
                count = *count,
                max = *max
            ),
            Self::DomainMismatch { path, a: (a, of_a), b: (b, of_b) } => sentence!(
                "data-mixed-joint",
                "{path} joins {a} ({of_a}) to {b} ({of_b}); both must carry the same",
                path = path,
                a = bare(a),
                of_a = carries(*of_a),
                b = bare(b),
                of_b = carries(*of_b)
            ),
            Self::JoinedToItself { path, port } => {
                sentence!("data-joined-to-itself", "{path} joins {port} to itself", path = path, port = port)
            }
            Self::PortTaken { path, port, first } => sentence!(
                "data-port-taken",
                "{path}: the air port {port} is already joined by {first}; branch air with a Tee",
                path = path,
                port = port,
                first = first
            ),
            Self::SwitchPointsReversed { path, cut_out, cut_in } => sentence!(
                "data-switch-reversed",
                "{path}: cut_in_kpa = {on} must lie above cut_out_kpa = {off} (less vacuum), or the pump chatters",
                path = path,
                on = number(*cut_in),
                off = number(*cut_out)
            ),
            Self::WrongPart { kind, expected, found } => sentence!(
                "data-wrong-part",
                "part: a {kind} needs {expected}, found {found}",
                kind = *kind,
                expected = kind_of_part(*expected),
                found = kind_of_part(*found)
            ),
            Self::NotComputed { path, at_s, part: Some(part) } => sentence!(
                "data-not-computed",
                "{path}: on a trial of an hour this car cannot be computed any further than {s} s; look at {part} \
                 first: a number of it is far from those around it",
                path = path,
                s = *at_s,
                part = part
            ),
            Self::NotComputed { path, at_s, part: None } => sentence!(
                "data-not-computed-at-all",
                "{path}: on a trial of an hour this car cannot be computed any further than {s} s; look at its \
                 numbers: one is far from those around it",
                path = path,
                s = *at_s
            ),
        }
    }
}
