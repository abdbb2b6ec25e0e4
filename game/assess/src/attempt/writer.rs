//! Writing an attempt: each line is on the disk before the next action begins, and nobody else writes meanwhile.

use std::fs::{File, TryLockError};
use std::io::{self, Seek as _, SeekFrom, Write as _};
use std::path::{Path, PathBuf};

use super::chain::chained;
use super::error::{AttemptError, Task};
use super::hint_line::HintLine;
use super::lines::{HintBody, MarkBody, OverrideBody, SittingBody, parse};
use super::litter;
use super::mark_line::MarkLine;
use super::override_line::OverrideLine;
use super::record::{Attempt, Header, Sitting, Step};
use crate::files;

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
            .map_err(|e| AttemptError::io(Task::Write, path, e))?;
        lock(temporary.as_file(), path)?;
        let file = temporary.persist_noclobber(path).map_err(|e| {
            if e.error.kind() == io::ErrorKind::AlreadyExists {
                AttemptError::Exists { path: path.to_owned() }
            } else {
                AttemptError::io(Task::Make, path, e.error)
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
            file.set_len(parsed.good_len).map_err(|e| AttemptError::io(Task::CutTornLine, path, e))?;
        }
        file.seek(SeekFrom::Start(parsed.good_len)).map_err(|e| AttemptError::io(Task::Read, path, e))?;
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

    /// Appends the line of a hint.
    ///
    /// # Errors
    /// As [`Self::append`].
    pub(crate) fn append_hint(&mut self, hint: &HintLine) -> Result<(), AttemptError> {
        self.append_line(&HintBody { hint: hint.clone() })
    }

    /// Appends the mark and waits until it is on the disk.
    ///
    /// # Errors
    /// As [`Self::append`].
    pub(crate) fn append_mark(&mut self, mark: &MarkLine) -> Result<(), AttemptError> {
        self.append_line(&MarkBody { mark: mark.clone() })
    }

    /// Appends an override behind the mark and waits until it is on the disk.
    ///
    /// # Errors
    /// As [`Self::append`].
    pub(super) fn append_override(&mut self, line: &OverrideLine) -> Result<(), AttemptError> {
        self.append_line(&OverrideBody { line: line.clone() })
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
                Err(AttemptError::io(Task::Write, &self.path, error))
            }
        }
    }
}

pub(super) fn folder_of(path: &Path) -> &Path {
    match path.parent() {
        Some(p) if !p.as_os_str().is_empty() => p,
        _ => Path::new("."),
    }
}

/// The folder's entry on the disk too; where a system cannot sync a folder, the file itself is safe.
pub(super) fn sync_folder(folder: &Path) {
    if let Ok(dir) = File::open(folder) {
        drop(dir.sync_all());
    }
}

pub(super) fn lock(file: &File, path: &Path) -> Result<(), AttemptError> {
    // Another program may be looking whether the file is free ([`is_free`]): that takes no time at all.
    const TRIES: u32 = 10;
    const PAUSE: std::time::Duration = std::time::Duration::from_millis(10);
    for _ in 0..TRIES {
        match file.try_lock() {
            Ok(()) => return Ok(()),
            Err(TryLockError::WouldBlock) => std::thread::sleep(PAUSE),
            // Some network folders know no locks; an attempt there is better than none.
            Err(TryLockError::Error(e)) if e.kind() == io::ErrorKind::Unsupported => return Ok(()),
            Err(TryLockError::Error(e)) => return Err(AttemptError::io(Task::Lock, path, e)),
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

pub(super) fn read_all(file: &mut File, path: &Path) -> Result<Vec<u8>, AttemptError> {
    Ok(files::read_open(file, path, files::ATTEMPT)?)
}

impl Attempt {
    /// Reads a file.
    ///
    /// # Errors
    /// When it cannot be read or is damaged in any other way than a torn last line.
    pub fn read(path: &Path) -> Result<Self, AttemptError> {
        let mut file = files::open(path)?;
        Ok(parse(&read_all(&mut file, path)?, path)?.attempt)
    }
}
