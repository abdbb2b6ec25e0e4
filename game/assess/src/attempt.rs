//! The `.attempt` file: a header line, then one line of JSON for each action, each chained to the one
//! before by blake3 and on the disk before the next action begins.
//!
//! * A program killed at any moment leaves a file that opens again; at most the action in hand is lost
//!   (a torn last line is dropped).
//! * Anything else that does not fit is an error with its line: an attempt is either whole or refused.
//! * While a file is in use it is locked, so that two programs cannot write it.
//! * The last line of a marked attempt holds its mark ([`crate::marked`]); a file without one is as good.
//! * The chain shows changes made by accident or in passing. It does not stop someone who rewrites the
//!   whole file with this program; sealed packs (not built yet) are for that.

use std::fs::{File, TryLockError};
use std::io::{self, Seek as _, SeekFrom, Write as _};
use std::path::{Path, PathBuf};

use sim_core::action::Action;
use sim_core::observe::Reading;
use sim_core::units::Tick;
use sim_core::workshop::{Breach, RecordEntry};

use crate::files::{self, Doing, FileError};
use crate::marked::MarkLine;
use crate::{json_words, quote};

/// Name and version of the file's form.
pub const SCHEMA: &str = "pinhole-attempt/1";

/// Version of the program and of its model: another one may compute other bits.
pub const ENGINE: &str = env!("CARGO_PKG_VERSION");

/// Longest name of a seat, characters.
pub const LONGEST_SEAT: usize = 64;

/// Longest line that is read, bytes.
const LONGEST_LINE: usize = 4 << 20;

/// The 128 bits from which tolerances and instrument errors of an attempt are drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Seed(pub u128);

/// Why a seed was refused.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("{} is no seed: expected 1 to 32 hexadecimal digits, for example 5eed", quote::quoted(_0))]
pub struct SeedError(pub String);

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
    /// Played from a script: `note shown` may have been used.
    pub scripted: bool,
    /// When it was begun, seconds since 1970 (UTC). Nothing is computed from it.
    pub created_unix_s: u64,
}

/// One action with what came of it.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Step {
    /// Running number, from 1.
    pub n: u32,
    /// What was done.
    pub action: Action,
    /// Tick at which it began.
    pub start: Tick,
    /// Tick at which it ended.
    pub end: Tick,
    /// Why it was refused, if it was; no time has passed then.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub refused: Option<String>,
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
    pub breaches: Vec<Breach>,
    /// State digests at the first step end after each simulated minute since the action before.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub minutes: Vec<(Tick, StateDigest)>,
    /// State digest at the end of the action.
    pub digest: StateDigest,
}

impl Step {
    /// Whether the car was handed back by it.
    fn hands_back(&self) -> bool {
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
#[non_exhaustive]
pub enum AttemptError {
    /// The operating system refused.
    #[error("cannot {doing} {}: {}", quote::path(path), plain(doing, source))]
    Io {
        /// What was being done.
        doing: &'static str,
        /// The file or folder.
        path: PathBuf,
        /// What the system said.
        source: io::Error,
    },
    /// A new attempt must not overwrite an old one.
    #[error("{} exists already; carry it on with --resume, or name another file", quote::path(path))]
    Exists {
        /// The file.
        path: PathBuf,
    },
    /// Another program has it.
    #[error("{} is in use by another program; close that one first", quote::path(path))]
    InUse {
        /// The file.
        path: PathBuf,
    },
    /// Not a regular file, or too long.
    #[error("{}: {what}; expected an attempt file written by pinhole", quote::path(path))]
    NotAnAttempt {
        /// The file.
        path: PathBuf,
        /// What is wrong with it.
        what: String,
    },
    /// A line that does not fit.
    #[error("{}, line {line}: {what}", quote::path(path))]
    Damaged {
        /// The file.
        path: PathBuf,
        /// Line, from 1.
        line: usize,
        /// What was found, what was expected, and what to do.
        what: String,
    },
    /// The system has no randomness to give.
    #[error("the system gives no random numbers for a seed ({source}); give one with --seed")]
    NoRandomness {
        /// What the system said.
        source: getrandom::Error,
    },
    /// Our own data could not be written as JSON.
    #[error("this action cannot be written down: {source}")]
    Form {
        /// What the writer said.
        source: serde_json::Error,
    },
    /// An earlier write failed, so nothing more may happen.
    #[error(
        "{} could not be written before; nothing more is done in it. Make room, then carry the attempt on",
        quote::path(path)
    )]
    Stopped {
        /// The file.
        path: PathBuf,
    },
}

impl AttemptError {
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

/// The system's errors that a user can do something about, in plain words.
fn plain(doing: &str, error: &io::Error) -> String {
    files::system(error, if doing == "read" { Doing::Read } else { Doing::Write })
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
    /// Makes the file with its header. The file appears whole or not at all.
    ///
    /// # Errors
    /// When it exists, or cannot be made.
    pub fn create(path: &Path, header: &Header) -> Result<Self, AttemptError> {
        let folder = match path.parent() {
            Some(p) if !p.as_os_str().is_empty() => p,
            _ => Path::new("."),
        };
        if path.symlink_metadata().is_ok() {
            return Err(AttemptError::Exists { path: path.to_owned() });
        }
        let mut builder = tempfile::Builder::new();
        builder.prefix(".begun-").suffix(".part");
        #[cfg(unix)]
        {
            use std::os::unix::fs::PermissionsExt as _;
            builder.permissions(std::fs::Permissions::from_mode(0o666));
        }
        let mut temporary = builder.tempfile_in(folder).map_err(|e| AttemptError::io("make", path, e))?;
        let chain = blake3::hash(SCHEMA.as_bytes());
        let (line, chain) = chained(header, &chain)?;
        temporary
            .write_all(line.as_bytes())
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
        // The folder's entry too; where a system cannot sync a folder, the file itself is safe.
        if let Ok(dir) = File::open(folder) {
            drop(dir.sync_all());
        }
        Ok(Self { file, path: path.to_owned(), chain, good_len: line.len() as u64, stopped: false })
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

fn lock(file: &File, path: &Path) -> Result<(), AttemptError> {
    match file.try_lock() {
        Ok(()) => Ok(()),
        Err(TryLockError::WouldBlock) => Err(AttemptError::InUse { path: path.to_owned() }),
        // Some network folders know no locks; an attempt there is better than none.
        Err(TryLockError::Error(e)) if e.kind() == io::ErrorKind::Unsupported => Ok(()),
        Err(TryLockError::Error(e)) => Err(AttemptError::io("lock", path, e)),
    }
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

/// How the line of the mark begins; a line of an action begins with its number.
const MARK_KEY: &str = "{\"mark\":";

const CHAIN_KEY: &str = ",\"chain\":\"";

fn link(chain: &blake3::Hash, body: &str) -> blake3::Hash {
    let mut hasher = blake3::Hasher::new();
    hasher.update(chain.as_bytes());
    hasher.update(body.as_bytes());
    hasher.finalize()
}

struct Parsed {
    attempt: Attempt,
    chain: blake3::Hash,
    good_len: u64,
    torn: bool,
}

fn parse(bytes: &[u8], path: &Path) -> Result<Parsed, AttemptError> {
    let good_len = bytes.iter().rposition(|b| *b == b'\n').map_or(0, |i| i + 1);
    let torn = good_len < bytes.len();
    let damaged = |line: usize, what: String| AttemptError::Damaged { path: path.to_owned(), line, what };
    let mut chain = blake3::hash(SCHEMA.as_bytes());
    let mut header = None;
    let mut steps: Vec<Step> = Vec::new();
    let mut mark = None;
    for (i, raw) in bytes[..good_len].split_inclusive(|b| *b == b'\n').enumerate() {
        let line = i + 1;
        let repair = if line == 1 {
            "expected the header of an attempt"
        } else {
            "the lines before it are whole: copy the file, cut it before this line, and carry it on"
        };
        if LONGEST_LINE < raw.len() {
            return Err(damaged(line, format!("{} bytes in one line; {repair}", raw.len())));
        }
        let text = std::str::from_utf8(&raw[..raw.len() - 1])
            .map_err(|_| damaged(line, format!("not text; {repair}")))?;
        let (body, said) = text
            .rsplit_once(CHAIN_KEY)
            .and_then(|(head, tail)| Some((format!("{head}}}"), tail.strip_suffix("\"}")?)))
            .ok_or_else(|| damaged(line, format!("no chain at the end of the line; {repair}")))?;
        if let Some(what) = json_words::control_in(&body) {
            return Err(damaged(line, format!("{what}; {repair}")));
        }
        // What the line says comes first: its error tells more than "the chain is broken".
        if line == 1 {
            let h: Header = serde_json::from_str(&body)
                .map_err(|e| damaged(line, format!("{}; {repair}", json_words::said(&e))))?;
            if h.schema != SCHEMA {
                return Err(damaged(
                    line,
                    format!("schema {}, expected {SCHEMA:?}", quote::quoted(&h.schema)),
                ));
            }
            if h.seat.as_ref().is_some_and(|seat| LONGEST_SEAT < seat.chars().count()) {
                return Err(damaged(line, format!("a seat of more than {LONGEST_SEAT} characters")));
            }
            header = Some(h);
        } else if mark.is_some() {
            return Err(damaged(line, format!("a line after the mark, which is the last one; {repair}")));
        } else if body.starts_with(MARK_KEY) {
            let m: MarkBody = serde_json::from_str(&body)
                .map_err(|e| damaged(line, format!("{}; {repair}", json_words::said(&e))))?;
            if !steps.iter().any(Step::hands_back) {
                return Err(damaged(line, format!("a mark, but the car was not handed back; {repair}")));
            }
            mark = Some(m.mark);
        } else {
            let step: Step = serde_json::from_str(&body)
                .map_err(|e| damaged(line, format!("{}; {repair}", json_words::said(&e))))?;
            let expected = steps.len() as u32 + 1;
            if step.n != expected {
                return Err(damaged(
                    line,
                    format!("action number {}, expected {expected}; {repair}", step.n),
                ));
            }
            let last_end = steps.last().map_or(Tick(0), |s| s.end);
            if step.start < last_end || step.end < step.start {
                return Err(damaged(
                    line,
                    format!("ticks {} to {} after tick {}; {repair}", step.start.0, step.end.0, last_end.0),
                ));
            }
            steps.push(step);
        }
        chain = link(&chain, &body);
        if chain.to_hex().as_str() != said {
            return Err(damaged(
                line,
                format!("changed after it was written (its chain does not fit); {repair}"),
            ));
        }
    }
    let header =
        header.ok_or_else(|| damaged(1, "no whole header; nothing was done in this attempt".to_owned()))?;
    Ok(Parsed { attempt: Attempt { header, steps, mark }, chain, good_len: good_len as u64, torn })
}
