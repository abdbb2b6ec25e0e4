//! The `.attempt` file: a header line, then one line of JSON for each action, each chained to the one
//! before by blake3 and on the disk before the next action begins.
//!
//! * A program killed at any moment leaves a file that opens again; at most the action in hand is lost
//!   (a torn last line is dropped).
//! * Anything else that does not fit is an error with its line: an attempt is either whole or refused. [`mend`] keeps
//!   what is whole of a damaged one, and the file says so from then on.
//! * Every number is checked against what its kind can be before anything is done again ([`limits`]).
//! * While a file is in use it is locked, so that two programs cannot write it.
//! * Each opening of the file is a *sitting* and has a line of its own; each action says by which way it came and when
//!   ([`crate::attempt::clock`]). These are labels: no digest, replay or mark looks at them. Files of the form
//!   before (`pinhole-attempt/1`) have none; they are read, and carried on with lines of today.
//! * The last line of a marked attempt holds its mark ([`crate::attempt::marked`]); a file without one is as good.
//! * The chain shows changes made by accident or in passing. It does not stop someone who rewrites the
//!   whole file with this program, or cuts lines off its end; sealed packs (not built yet) are for that.

pub mod clock;
mod json_words;
pub mod limits;
mod litter;
pub mod mark_line;
pub mod marked;
pub mod mend;
mod told;

use crate::sentence;
use std::fs::{File, TryLockError};
use std::io::{self, Seek as _, SeekFrom, Write as _};
use std::path::{Path, PathBuf};

use sim_core::action::Action;
use sim_core::observe::Reading;
use sim_core::units::Tick;
use sim_core::workshop::RecordEntry;

use self::mark_line::MarkLine;
pub use self::told::{Breached, Refused};
use crate::attempt::clock::By;
use crate::files::{self, Doing, FileError};
use crate::locale::quote;
use crate::locale::sentence::{Sentence, Value};

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

/// Longest line that is read, bytes: a night has a digest for each of its minutes.
const LONGEST_LINE: usize = 256 << 10;

/// The 128 bits from which tolerances and instrument errors of an attempt are drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Seed(pub u128);

/// Why a seed was refused.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("{}", self.sentence())]
pub struct SeedError(pub String);

impl SeedError {
    /// What is wrong, for every language.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        sentence!(
            "slip-seed",
            "{typed} is no seed: expected 1 to 32 hexadecimal digits, for example 5eed",
            typed = quote::quoted(&self.0)
        )
    }
}

impl Seed {
    /// From the operating system's randomness.
    ///
    /// # Errors
    /// When the system gives none.
    pub fn random() -> Result<Self, AttemptError> {
        let mut bytes = [0; 16];
        getrandom::fill(&mut bytes).map_err(|source| AttemptError::NoRandomness { source })?;
        Ok(Self(u128::from_le_bytes(bytes)))
    }
}

impl std::str::FromStr for Seed {
    type Err = SeedError;
    fn from_str(text: &str) -> Result<Self, SeedError> {
        let digits = text.trim().trim_start_matches("0x");
        // `from_str_radix` takes a leading plus sign; a seed has none.
        if digits.starts_with('+') {
            return Err(SeedError(text.to_owned()));
        }
        u128::from_str_radix(digits, 16).map(Self).map_err(|_| SeedError(text.to_owned()))
    }
}

impl std::fmt::Display for Seed {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{:032x}", self.0)
    }
}

impl serde::Serialize for Seed {
    fn serialize<S: serde::Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        s.collect_str(self)
    }
}

impl<'de> serde::Deserialize<'de> for Seed {
    fn deserialize<D: serde::Deserializer<'de>>(d: D) -> Result<Self, D::Error> {
        let text = <std::borrow::Cow<'de, str>>::deserialize(d)?;
        text.parse().map_err(serde::de::Error::custom)
    }
}

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
        u64::from_str_radix(&text, 16).map(Self).map_err(serde::de::Error::custom)
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

impl Attempt {
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
    /// The mark, once somebody has marked it. Nothing is computed from it.
    pub mark: Option<MarkLine>,
}

impl Attempt {
    /// Whether the car was handed back.
    #[must_use]
    pub fn is_finished(&self) -> bool {
        self.steps.iter().any(Step::hands_back)
    }

    /// Reads a file.
    ///
    /// # Errors
    /// When it cannot be read or is damaged in any other way than a torn last line.
    pub fn read(path: &Path) -> Result<Self, AttemptError> {
        let mut file = files::open(path)?;
        Ok(parse(&read_all(&mut file, path)?, path)?.attempt)
    }
}

/// What went wrong with an attempt file.
#[derive(Debug, thiserror::Error)]
#[error("{}", self.sentence())]
#[non_exhaustive]
pub enum AttemptError {
    /// The operating system refused.
    Io {
        /// What was being done.
        doing: &'static str,
        /// The file or folder.
        path: PathBuf,
        /// What the system said.
        source: io::Error,
    },
    /// A new attempt must not overwrite an old one.
    Exists {
        /// The file.
        path: PathBuf,
    },
    /// Another program has it.
    InUse {
        /// The file.
        path: PathBuf,
    },
    /// Not a regular file, or too long.
    NotAnAttempt {
        /// The file.
        path: PathBuf,
        /// What is wrong with it.
        what: String,
    },
    /// A number that cannot be.
    OutOfRange {
        /// The file.
        path: PathBuf,
        /// Line, from 1.
        line: usize,
        /// Which number.
        what: &'static str,
        /// What it is.
        value: String,
        /// What it could be.
        bound: String,
    },
    /// A line that does not fit.
    Damaged {
        /// The file.
        path: PathBuf,
        /// Line, from 1.
        line: usize,
        /// What was found, what was expected, and what to do.
        what: String,
    },
    /// The system has no randomness to give.
    NoRandomness {
        /// What the system said.
        source: getrandom::Error,
    },
    /// Our own data could not be written as JSON.
    Form {
        /// What the writer said.
        source: serde_json::Error,
    },
    /// An earlier write failed, so nothing more may happen.
    Stopped {
        /// The file.
        path: PathBuf,
    },
}

/// What to do about a damaged line; nothing can be kept without the first.
fn mend_hint(path: &Path, line: usize) -> Value {
    if line < 2 {
        return String::new().into();
    }
    sentence!(
        "attempt-mend-hint",
        ".\nThe lines before it are whole; keep them with: pinhole mend {file}",
        file = quote::path(path)
    )
    .into()
}

impl AttemptError {
    /// What is wrong, for every language.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        match self {
            Self::Io { doing, path, source } => cannot(doing, path, source),
            Self::Exists { path } => sentence!(
                "bench-exists",
                "{file} exists already; carry it on with --resume, or name another file",
                file = quote::path(path)
            ),
            Self::InUse { path } => sentence!(
                "attempt-in-use",
                "{file} is in use by another program; close that one first",
                file = quote::path(path)
            ),
            Self::NotAnAttempt { path, what } => sentence!(
                "attempt-is-none",
                "{file}: {what}; expected an attempt file written by pinhole",
                file = quote::path(path),
                what = what
            ),
            Self::OutOfRange { path, line, what, value, bound } => sentence!(
                "attempt-out-of-range",
                "{file}, line {line}: {what} is {value}; {bound}{hint}",
                file = quote::path(path),
                line = *line,
                what = *what,
                value = value,
                bound = bound,
                hint = mend_hint(path, *line)
            ),
            Self::Damaged { path, line, what } => sentence!(
                "attempt-damaged",
                "{file}, line {line}: {what}{hint}",
                file = quote::path(path),
                line = *line,
                what = what,
                hint = mend_hint(path, *line)
            ),
            Self::NoRandomness { source } => sentence!(
                "attempt-no-randomness",
                "the system gives no random numbers for a seed ({why}); give one with --seed",
                why = source.to_string()
            ),
            Self::Form { source } => sentence!(
                "attempt-form",
                "this action cannot be written down: {why}",
                why = source.to_string()
            ),
            Self::Stopped { path } => sentence!(
                "attempt-stopped",
                "{file} could not be written before; nothing more is done in it. Make room, then carry the attempt on",
                file = quote::path(path)
            ),
        }
    }

    fn io(doing: &'static str, path: &Path, source: io::Error) -> Self {
        Self::Io { doing, path: path.to_owned(), source }
    }
}

impl From<FileError> for AttemptError {
    fn from(error: FileError) -> Self {
        let what = match &error {
            FileError::NotRegular { what, .. } => format!("is {what}"),
            FileError::TooLarge { bytes, kind, .. } => {
                format!("{bytes} bytes are too many (at most {})", kind.most)
            }
            other => other.to_string(),
        };
        match error {
            FileError::System { path, doing: Doing::Read, source } => {
                Self::Io { doing: "read", path, source }
            }
            FileError::System { path, doing: Doing::Write, source } => {
                Self::Io { doing: "open for writing", path, source }
            }
            FileError::NotRegular { path, .. }
            | FileError::TooLarge { path, .. }
            | FileError::NotText { path, .. }
            | FileError::Outside { path, .. } => Self::NotAnAttempt { path, what },
        }
    }
}

/// What could not be done with a file; `doing` as in [`AttemptError::Io`].
fn cannot(doing: &str, path: &Path, error: &io::Error) -> Sentence {
    let file = quote::path(path);
    let why = files::refusal(error, if doing == "read" { Doing::Read } else { Doing::Write });
    match doing {
        "read" => sentence!("attempt-not-read", "cannot read {file}: {why}", file = file, why = why),
        "make" => sentence!("attempt-not-made", "cannot make {file}: {why}", file = file, why = why),
        "write" => sentence!("attempt-not-written", "cannot write {file}: {why}", file = file, why = why),
        doing => sentence!(
            "attempt-not-done",
            "cannot {doing} {file}: {why}",
            doing = doing,
            file = file,
            why = why
        ),
    }
}

/// Writes an attempt, line by line, each on the disk before it returns.
#[derive(Debug)]
pub struct Writer {
    file: File,
    path: PathBuf,
    chain: blake3::Hash,
    /// Length of the file up to the last whole line.
    good_len: u64,
    stopped: bool,
}

impl Writer {
    /// Makes the file with its header and its first sitting. The file appears whole or not at all, for its owner's
    /// eyes alone.
    ///
    /// # Errors
    /// When it exists, or cannot be made.
    pub fn create(path: &Path, header: &Header, sitting: &Sitting) -> Result<Self, AttemptError> {
        let folder = folder_of(path);
        if path.symlink_metadata().is_ok() {
            return Err(AttemptError::Exists { path: path.to_owned() });
        }
        litter::clear(folder);
        let mut temporary = litter::begin(folder, path)?;
        let chain = blake3::hash(header.schema.as_bytes());
        let (mut text, chain) = chained(header, &chain)?;
        let (line, chain) = chained(&SittingBody { sitting: sitting.clone() }, &chain)?;
        text.push_str(&line);
        temporary
            .write_all(text.as_bytes())
            .and_then(|()| temporary.as_file().sync_all())
            .map_err(|e| AttemptError::io("write", path, e))?;
        lock(temporary.as_file(), path)?;
        let file = temporary.persist_noclobber(path).map_err(|e| {
            if e.error.kind() == io::ErrorKind::AlreadyExists {
                AttemptError::Exists { path: path.to_owned() }
            } else {
                AttemptError::io("make", path, e.error)
            }
        })?;
        sync_folder(folder);
        Ok(Self { file, path: path.to_owned(), chain, good_len: text.len() as u64, stopped: false })
    }

    /// Opens an attempt to carry it on; a torn last line is cut off. The second value tells whether one
    /// was.
    ///
    /// # Errors
    /// When it is in use, cannot be read, or is damaged.
    pub fn open(path: &Path) -> Result<(Self, Attempt, bool), AttemptError> {
        let mut file = files::open_for_writing(path)?;
        lock(&file, path)?;
        let parsed = parse(&read_all(&mut file, path)?, path)?;
        if parsed.torn {
            file.set_len(parsed.good_len)
                .map_err(|e| AttemptError::io("cut the torn last line off", path, e))?;
        }
        file.seek(SeekFrom::Start(parsed.good_len)).map_err(|e| AttemptError::io("read", path, e))?;
        let writer = Self {
            file,
            path: path.to_owned(),
            chain: parsed.chain,
            good_len: parsed.good_len,
            stopped: false,
        };
        Ok((writer, parsed.attempt, parsed.torn))
    }

    /// The file.
    #[must_use]
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// Appends one action and waits until it is on the disk.
    ///
    /// # Errors
    /// When it cannot be written; what was written of the line is taken back, and nothing more is taken.
    pub fn append(&mut self, step: &Step) -> Result<(), AttemptError> {
        self.append_line(step)
    }

    /// Appends the line of a sitting.
    ///
    /// # Errors
    /// As [`Self::append`].
    pub(crate) fn append_sitting(&mut self, sitting: &Sitting) -> Result<(), AttemptError> {
        self.append_line(&SittingBody { sitting: sitting.clone() })
    }

    /// Appends the mark as the last line and waits until it is on the disk.
    ///
    /// # Errors
    /// As [`Self::append`].
    pub(crate) fn append_mark(&mut self, mark: &MarkLine) -> Result<(), AttemptError> {
        self.append_line(&MarkBody { mark: mark.clone() })
    }

    fn append_line<T: serde::Serialize>(&mut self, body: &T) -> Result<(), AttemptError> {
        if self.stopped {
            return Err(AttemptError::Stopped { path: self.path.clone() });
        }
        let (line, chain) = chained(body, &self.chain)?;
        match self.file.write_all(line.as_bytes()).and_then(|()| self.file.sync_data()) {
            Ok(()) => {
                self.chain = chain;
                self.good_len += line.len() as u64;
                Ok(())
            }
            Err(error) => {
                self.stopped = true;
                // Best effort: if even this fails, the torn line is dropped when the file is opened again.
                drop(self.file.set_len(self.good_len));
                Err(AttemptError::io("write", &self.path, error))
            }
        }
    }
}

fn folder_of(path: &Path) -> &Path {
    match path.parent() {
        Some(p) if !p.as_os_str().is_empty() => p,
        _ => Path::new("."),
    }
}

/// The folder's entry on the disk too; where a system cannot sync a folder, the file itself is safe.
fn sync_folder(folder: &Path) {
    if let Ok(dir) = File::open(folder) {
        drop(dir.sync_all());
    }
}

fn lock(file: &File, path: &Path) -> Result<(), AttemptError> {
    // Another program may be looking whether the file is free ([`is_free`]): that takes no time at all.
    const TRIES: u32 = 10;
    const PAUSE: std::time::Duration = std::time::Duration::from_millis(10);
    for _ in 0..TRIES {
        match file.try_lock() {
            Ok(()) => return Ok(()),
            Err(TryLockError::WouldBlock) => std::thread::sleep(PAUSE),
            // Some network folders know no locks; an attempt there is better than none.
            Err(TryLockError::Error(e)) if e.kind() == io::ErrorKind::Unsupported => return Ok(()),
            Err(TryLockError::Error(e)) => return Err(AttemptError::io("lock", path, e)),
        }
    }
    Err(AttemptError::InUse { path: path.to_owned() })
}

/// Whether no program is at work in the file; where a system knows no locks, nobody can tell and it is.
#[must_use]
pub fn is_free(path: &Path) -> bool {
    let Ok(file) = files::open(path) else { return false };
    !matches!(file.try_lock_shared(), Err(TryLockError::WouldBlock))
}

fn read_all(file: &mut File, path: &Path) -> Result<Vec<u8>, AttemptError> {
    Ok(files::read_open(file, path, files::ATTEMPT)?)
}

/// A body as JSON with its place in the chain as the last key, and the new end of the chain.
fn chained<T: serde::Serialize>(
    body: &T,
    chain: &blake3::Hash,
) -> Result<(String, blake3::Hash), AttemptError> {
    let mut text = serde_json::to_string(body).map_err(|source| AttemptError::Form { source })?;
    let next = link(chain, &text);
    // `body` is a struct with at least one field, so the text ends with a brace after a value.
    text.pop();
    text.push_str(&format!("{CHAIN_KEY}{}\"}}\n", next.to_hex()));
    Ok((text, next))
}

/// The last line of a marked attempt.
#[derive(serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
struct MarkBody {
    mark: MarkLine,
}

/// The line of a sitting.
#[derive(serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
struct SittingBody {
    sitting: Sitting,
}

/// The line of a repair.
#[derive(serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
struct RepairBody {
    repair: Repair,
}

/// How the lines begin that are no action's; a line of an action begins with its number.
const MARK_KEY: &str = "{\"mark\":";
const SITTING_KEY: &str = "{\"sitting\":";
const REPAIR_KEY: &str = "{\"repair\":";

const CHAIN_KEY: &str = ",\"chain\":\"";

fn link(chain: &blake3::Hash, body: &str) -> blake3::Hash {
    let mut hasher = blake3::Hasher::new();
    hasher.update(chain.as_bytes());
    hasher.update(body.as_bytes());
    hasher.finalize()
}

/// What the whole lines of a file say, as far as they go.
struct Parsed {
    attempt: Attempt,
    chain: blake3::Hash,
    good_len: u64,
    torn: bool,
}

/// Lines that have been taken in.
#[derive(Default)]
struct Lines {
    header: Option<Header>,
    steps: Vec<Step>,
    sittings: Vec<Sitting>,
    repairs: Vec<Repair>,
    mark: Option<MarkLine>,
    chain: Option<blake3::Hash>,
    tally: limits::Tally,
    /// Bytes of them.
    len: usize,
}

/// Why a line was not taken in.
enum Fault {
    What(String),
    Range(limits::Beyond),
}

impl From<String> for Fault {
    fn from(what: String) -> Self {
        Self::What(what)
    }
}

impl From<limits::Beyond> for Fault {
    fn from(beyond: limits::Beyond) -> Self {
        Self::Range(beyond)
    }
}

impl Fault {
    fn at(self, path: &Path, line: usize) -> AttemptError {
        let path = path.to_owned();
        match self {
            Self::What(what) => AttemptError::Damaged { path, line, what },
            Self::Range(limits::Beyond { what, value, bound }) => {
                AttemptError::OutOfRange { path, line, what, value, bound }
            }
        }
    }
}

fn json<'a, T: serde::Deserialize<'a>>(body: &'a str) -> Result<T, Fault> {
    serde_json::from_str(body).map_err(|e| Fault::What(json_words::said(&e)))
}

impl Lines {
    /// Takes in the next line, with its end. A line that does not fit changes nothing.
    fn take(&mut self, raw: &[u8]) -> Result<(), Fault> {
        if LONGEST_LINE < raw.len() {
            return Err(format!("{} bytes in one line (at most {LONGEST_LINE})", raw.len()).into());
        }
        let text = std::str::from_utf8(&raw[..raw.len() - 1]).map_err(|_| "not text".to_owned())?;
        let (body, said) = text
            .rsplit_once(CHAIN_KEY)
            .and_then(|(head, tail)| Some((format!("{head}}}"), tail.strip_suffix("\"}")?)))
            .ok_or_else(|| "no chain at the end of the line".to_owned())?;
        let chained = |chain: &blake3::Hash| {
            let next = link(chain, &body);
            if next.to_hex().as_str() == said {
                Ok(next)
            } else {
                Err(Fault::What("changed after it was written (its chain does not fit)".to_owned()))
            }
        };
        if let Some(what) = json_words::control_in(&body) {
            return Err(what.into());
        }
        // What the line says comes first: its error tells more than "the chain is broken".
        match (&self.header, &self.chain) {
            (Some(header), Some(chain)) => {
                if self.mark.is_some() {
                    return Err("a line after the mark, which is the last one".to_owned().into());
                }
                let done = self.steps.len() as u32;
                if body.starts_with(MARK_KEY) {
                    let MarkBody { mark } = json(&body)?;
                    if !self.steps.iter().any(Step::hands_back) {
                        return Err("a mark, but the car was not handed back".to_owned().into());
                    }
                    limits::mark(&mark)?;
                    self.chain = Some(chained(chain)?);
                    self.mark = Some(mark);
                } else if body.starts_with(SITTING_KEY) {
                    let SittingBody { sitting } = json(&body)?;
                    limits::sitting(&sitting, done, self.sittings.len())?;
                    self.chain = Some(chained(chain)?);
                    self.sittings.push(sitting);
                } else if body.starts_with(REPAIR_KEY) {
                    let RepairBody { repair } = json(&body)?;
                    limits::repair(&repair, done, self.repairs.len())?;
                    self.chain = Some(chained(chain)?);
                    self.repairs.push(repair);
                } else {
                    let step: Step = json(&body)?;
                    let sat = !self.sittings.is_empty();
                    if !sat && header.schema != SCHEMA_1 {
                        return Err("an action before the first sitting".to_owned().into());
                    }
                    if (step.by.is_some(), step.at_unix_ms.is_some()) != (sat, sat) {
                        let what =
                            "an action says its time and its source from the first sitting on, not before";
                        return Err(what.to_owned().into());
                    }
                    if self.steps.last().is_some_and(Step::hands_back) {
                        return Err("an action after the car was handed back".to_owned().into());
                    }
                    let mut tally = self.tally;
                    tally.take(&step)?;
                    self.chain = Some(chained(chain)?);
                    self.tally = tally;
                    self.steps.push(step);
                }
            }
            _ => {
                let header: Header = json(&body)?;
                limits::header(&header)?;
                if header.seat.as_ref().is_some_and(|seat| LONGEST_SEAT < seat.chars().count()) {
                    return Err(format!("a seat of more than {LONGEST_SEAT} characters").into());
                }
                self.chain = Some(chained(&blake3::hash(header.schema.as_bytes()))?);
                self.header = Some(header);
            }
        }
        self.len += raw.len();
        Ok(())
    }
}

/// Reads lines as far as they are whole; the error is that of the first that is not, with its number.
fn read_lines(bytes: &[u8]) -> (Lines, Option<(usize, Fault)>) {
    let whole = bytes.iter().rposition(|b| *b == b'\n').map_or(0, |i| i + 1);
    let mut lines = Lines::default();
    for (i, raw) in bytes[..whole].split_inclusive(|b| *b == b'\n').enumerate() {
        if let Err(fault) = lines.take(raw) {
            return (lines, Some((i + 1, fault)));
        }
    }
    (lines, None)
}

fn parse(bytes: &[u8], path: &Path) -> Result<Parsed, AttemptError> {
    let (lines, fault) = read_lines(bytes);
    if let Some((line, fault)) = fault {
        return Err(fault.at(path, line));
    }
    let Lines { header: Some(header), steps, sittings, repairs, mark, chain: Some(chain), len, .. } = lines
    else {
        let what = "no whole header; nothing was done in this attempt".to_owned();
        return Err(Fault::What(what).at(path, 1));
    };
    let attempt = Attempt { header, steps, sittings, repairs, mark };
    Ok(Parsed { attempt, chain, good_len: len as u64, torn: len < bytes.len() })
}
