//! What an attempt consists of, as it stands in its file: header, sittings, steps, hints, repairs, mark, overrides.

use sim_core::action::Action;
use sim_core::observe::Reading;
use sim_core::units::Tick;
use sim_core::workshop::RecordEntry;

use super::clock::By;
use super::hint_line::HintLine;
use super::mark_line::MarkLine;
use super::override_line::OverrideLine;
use super::seed::Seed;
use super::told::{Breached, Refused};

/// Name and version of the file's form.
pub const SCHEMA: &str = "pinhole-attempt/3";

/// The form before: refusals and breaches of safety in English sentences.
pub const SCHEMA_2: &str = "pinhole-attempt/2";

/// The form before that: no sittings, no times, and the header says whether it was begun by a script.
pub const SCHEMA_1: &str = "pinhole-attempt/1";

/// Version of the program and of its model: another one may compute other bits.
pub const ENGINE: &str = env!("CARGO_PKG_VERSION");

/// Longest name of a seat, characters.
pub const LONGEST_SEAT: usize = 64;

/// What the reader of a digest says of one that is none; [`super::json_words`] says it in every language.
pub(super) const NO_DIGEST: &str = "no digest";

/// A digest of the whole state, written as 16 hexadecimal digits (JSON numbers end at 2⁵³).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct StateDigest(pub u64);

impl std::fmt::Display for StateDigest {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{:016x}", self.0)
    }
}

impl serde::Serialize for StateDigest {
    fn serialize<S: serde::Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        s.collect_str(self)
    }
}

impl<'de> serde::Deserialize<'de> for StateDigest {
    fn deserialize<D: serde::Deserializer<'de>>(d: D) -> Result<Self, D::Error> {
        let text = <std::borrow::Cow<'de, str>>::deserialize(d)?;
        u64::from_str_radix(&text, 16).map(Self).map_err(|_| serde::de::Error::custom(NO_DIGEST))
    }
}

/// First line of the file.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Header {
    /// [`SCHEMA`].
    pub schema: String,
    /// Version of the program that wrote it.
    pub engine: String,
    /// Pack.
    pub pack: String,
    /// Job, `pack/job`.
    pub job: String,
    /// blake3 over all files behind the job, hexadecimal.
    pub job_digest: String,
    /// Seat in a class, if any.
    pub seat: Option<String>,
    /// What tolerances and instrument errors were drawn from.
    pub seed: Seed,
    /// In files of [`SCHEMA_1`]: begun by a script. Today each action says by which way it came.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub scripted: Option<bool>,
    /// When it was begun, seconds since 1970 (UTC). Nothing is computed from it.
    pub created_unix_s: u64,
    /// Where the seed came from; not in files of [`SCHEMA_1`].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub seed_from: Option<SeedFrom>,
}

/// Where a seed came from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum SeedFrom {
    /// Whoever began the attempt named it: the same hidden numbers may have been seen before.
    Given,
    /// Drawn by the system.
    Drawn,
}

/// One opening of the file. Its line stands before the first action that was done in it.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Sitting {
    /// Actions in the file before it.
    pub after: u32,
    /// The way its actions come in.
    pub by: By,
    /// When, ms since 1970 (UTC).
    pub at_unix_ms: u64,
    /// Version of the program.
    pub engine: String,
}

/// The file was damaged and has been mended: what follows the whole lines was dropped.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Repair {
    /// Actions that were kept.
    pub after: u32,
    /// Lines that were dropped, a torn one counted.
    pub dropped_lines: u64,
    /// Bytes that were dropped.
    pub dropped_bytes: u64,
    /// When, ms since 1970 (UTC).
    pub at_unix_ms: u64,
    /// Version of the program.
    pub engine: String,
}

/// One action with what came of it.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Step {
    /// Running number, from 1.
    pub n: u32,
    /// By which way it came in; not recorded in files of [`SCHEMA_1`].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub by: Option<By>,
    /// When it was asked for, ms since 1970 (UTC). A label: nothing is computed from it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at_unix_ms: Option<u64>,
    /// What was done.
    pub action: Action,
    /// Tick at which it began.
    pub start: Tick,
    /// Tick at which it ended.
    pub end: Tick,
    /// Why it was refused, if it was; no time has passed then.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub refused: Option<Refused>,
    /// What was shown.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub reading: Option<Reading>,
    /// For a note: whether it agrees with what was shown.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub read_right: Option<bool>,
    /// For a note: how it filled the record.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub record: Option<RecordEntry>,
    /// Breaches of safety.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub breaches: Vec<Breached>,
    /// State digests at the first step end after each simulated minute since the action before.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub minutes: Vec<(Tick, StateDigest)>,
    /// State digest at the end of the action.
    pub digest: StateDigest,
}

impl Step {
    /// Whether the car was handed back by it.
    pub(crate) fn hands_back(&self) -> bool {
        matches!(self.action, Action::HandBack) && self.refused.is_none()
    }
}

/// A whole attempt as it stands in a file (or would).
#[derive(Clone, Debug, PartialEq)]
pub struct Attempt {
    /// What was attempted.
    pub header: Header,
    /// What was done.
    pub steps: Vec<Step>,
    /// When the file was opened to work in it; empty in files of [`SCHEMA_1`] that nobody carried on since.
    pub sittings: Vec<Sitting>,
    /// When it was mended, if ever.
    pub repairs: Vec<Repair>,
    /// Hints that were asked for.
    pub hints: Vec<HintLine>,
    /// The mark, once somebody has marked it. Nothing is computed from it.
    pub mark: Option<MarkLine>,
    /// What instructors said of the mark, in the order of time; the last holds.
    pub overrides: Vec<OverrideLine>,
}

impl Attempt {
    /// Whether the car was handed back.
    #[must_use]
    pub fn is_finished(&self) -> bool {
        self.steps.iter().any(Step::hands_back)
    }

    /// The version of the program that made action `n`.
    fn engine_of(&self, n: u32) -> &str {
        let sitting = self.sittings.iter().rev().find(|sitting| sitting.after < n);
        sitting.map_or(&self.header.engine, |sitting| &sitting.engine)
    }

    /// Whether action `n` may come out otherwise today than is recorded, with nothing altered: another version of the program
    /// made it, and this one has not opened the attempt since (it would have done it again and compared).
    #[must_use]
    pub fn may_differ(&self, n: u32) -> bool {
        let opened_since = self.sittings.iter().filter(|sitting| n <= sitting.after);
        self.engine_of(n) != ENGINE && opened_since.into_iter().all(|sitting| sitting.engine != ENGINE)
    }

    /// The versions of the program that it was made with, each once, in the order of the file.
    #[must_use]
    pub fn engines(&self) -> Vec<String> {
        let mut engines = vec![self.header.engine.clone()];
        for sitting in &self.sittings {
            if !engines.contains(&sitting.engine) {
                engines.push(sitting.engine.clone());
            }
        }
        engines
    }

    /// Number of actions that no person did there and then: from a script or a pipe. `None` when it is not recorded
    /// ([`SCHEMA_1`]) and not even the header says that it was begun by a script.
    #[must_use]
    pub fn played_actions(&self) -> Option<usize> {
        let played = |step: &&Step| match step.by {
            Some(by) => !by.is_person(),
            None => self.header.scripted == Some(true),
        };
        let unknown = self.header.scripted == Some(false) && self.steps.iter().any(|step| step.by.is_none());
        (!unknown).then(|| self.steps.iter().filter(played).count())
    }
}
