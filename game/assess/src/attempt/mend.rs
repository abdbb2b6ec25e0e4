//! Mends a damaged attempt: the whole lines before the damage become the attempt, a line in the chain says what was
//! dropped, and the damaged file is kept beside it under a new name.
//!
//! At every moment a file of the attempt's name is there, the damaged one or the mended one. What follows the first
//! line that does not fit is dropped, whole or not: its chain hangs on the line that is lost. A mark and overrides before
//! the damage stay: what an instructor said cannot be computed anew.

use std::ffi::OsString;
use std::fs::OpenOptions;
use std::io::{self, Write as _};
use std::path::{Path, PathBuf};

use super::chain::chained;
use super::clock::Clock;
use super::error::{AttemptError, Task};
use super::lines::{RepairBody, read_lines};
use super::litter;
use super::record::{ENGINE, Repair};
use super::writer::{folder_of, lock, read_all, sync_folder};
use crate::files;
use crate::locale::sentence::Sentence;
use crate::sentence;

/// What became of a damaged file.
#[derive(Clone, Debug, PartialEq)]
pub struct Mended {
    /// Actions that were kept.
    pub actions: usize,
    /// What stands in the chain about it.
    pub repair: Repair,
    /// Where the damaged file is kept.
    pub original: PathBuf,
    /// What was wrong, with its line.
    pub why: Sentence,
}

/// Mends the file; `None` when nothing is wrong with it (a torn last line is no damage: it is dropped when the attempt
/// is carried on).
///
/// # Errors
/// When it is in use, cannot be read or written, or its first line is damaged: then nothing can be kept.
pub fn mend(path: &Path, clock: &Clock) -> Result<Option<Mended>, AttemptError> {
    let mut file = files::open(path)?;
    lock(&file, path)?;
    let bytes = read_all(&mut file, path)?;
    let (kept, fault) = read_lines(&bytes);
    let Some((line, fault)) = fault else { return Ok(None) };
    let error = fault.at(path, line);
    let (Some(_), Some(chain)) = (&kept.header, &kept.chain) else { return Err(error) };

    let dropped = &bytes[kept.len..];
    let ends = dropped.iter().filter(|b| **b == b'\n').count() as u64;
    let repair = Repair {
        after: kept.steps.len() as u32,
        dropped_lines: ends + u64::from(dropped.last().is_some_and(|b| *b != b'\n')),
        dropped_bytes: dropped.len() as u64,
        at_unix_ms: clock.now_ms(),
        engine: ENGINE.to_owned(),
    };
    let (text, _) = chained(&RepairBody { repair: repair.clone() }, chain)?;
    let folder = folder_of(path);
    let mut whole = litter::begin(folder, path)?;
    whole
        .write_all(&bytes[..kept.len])
        .and_then(|()| whole.write_all(text.as_bytes()))
        .and_then(|()| whole.as_file().sync_all())
        .map_err(|e| AttemptError::io(Task::WriteBeside, path, e))?;
    let original = keep_original(path, &bytes)?;
    whole.persist(path).map_err(|e| AttemptError::io(Task::Write, path, e.error))?;
    sync_folder(folder);
    let why = match &error {
        AttemptError::Damaged { line, what, .. } => at_line(*line, what.clone()),
        AttemptError::OutOfRange { line, beyond, .. } => at_line(*line, beyond.sentence()),
        other => other.sentence(),
    };
    Ok(Some(Mended { actions: kept.steps.len(), repair, original, why }))
}

fn at_line(line: usize, what: Sentence) -> Sentence {
    sentence!("mended-line", "line {line}: {what}", line = line, what = what)
}

/// Gives the damaged file a second name that nothing has yet; where a disk knows no second names, a copy.
fn keep_original(path: &Path, bytes: &[u8]) -> Result<PathBuf, AttemptError> {
    const MOST: u32 = 999;
    for n in 1..=MOST {
        let mut name: OsString = path.as_os_str().to_owned();
        name.push(format!(".damaged-{n}"));
        let name = PathBuf::from(name);
        let kept = match std::fs::hard_link(path, &name) {
            Err(e) if e.kind() != io::ErrorKind::AlreadyExists => copy(&name, bytes),
            other => other,
        };
        match kept {
            Ok(()) => return Ok(name),
            Err(e) if e.kind() == io::ErrorKind::AlreadyExists => {}
            Err(e) => return Err(AttemptError::io(Task::KeepDamaged, &name, e)),
        }
    }
    Err(AttemptError::NotAnAttempt {
        path: path.to_owned(),
        what: sentence!(
            "attempt-many-damaged",
            "{most} damaged files of this name are kept already; move some away",
            most = MOST
        ),
    })
}

fn copy(name: &Path, bytes: &[u8]) -> io::Result<()> {
    let mut options = OpenOptions::new();
    options.write(true).create_new(true);
    #[cfg(unix)]
    {
        use std::os::unix::fs::OpenOptionsExt as _;
        options.mode(0o600);
    }
    let mut file = options.open(name)?;
    file.write_all(bytes)?;
    file.sync_all()
}
