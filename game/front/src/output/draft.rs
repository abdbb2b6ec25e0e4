//! What is being written: beside its place, then renamed.

use std::fs::{File, Permissions};
use std::io::{self, BufWriter, Write};
use std::path::{Path, PathBuf};

use tempfile::NamedTempFile;

use super::error::OutputError;
use super::kind::Kind;
use super::may_replace;
use crate::screen::Screen;

/// A temporary file in a folder, with the rights of the file it will replace.
pub(super) fn beside(folder: &Path, rights: Option<Permissions>) -> io::Result<NamedTempFile> {
    let mut builder = tempfile::Builder::new();
    builder.prefix(".pinhole-").suffix(".part");
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt as _;
        // As any program makes a file: less what the user takes away from all (umask).
        builder.permissions(Permissions::from_mode(0o666));
    }
    let temporary = builder.tempfile_in(folder)?;
    if let Some(rights) = rights {
        temporary.as_file().set_permissions(rights)?;
    }
    Ok(temporary)
}

/// Where an output goes.
#[derive(Clone, Debug)]
pub(super) enum Target {
    StandardOutput,
    StandardError,
    /// A pipe that the shell made, or the device that forgets everything.
    Stream,
    File {
        real: PathBuf,
        kind: Kind,
        folder: PathBuf,
    },
}

impl Target {
    /// Places that are no files and may be written all the same.
    pub(super) fn of(path: &Path) -> Option<Self> {
        let text = path.to_str()?;
        match text {
            "-" | "/dev/stdout" | "/dev/fd/1" | "/proc/self/fd/1" => Some(Self::StandardOutput),
            "/dev/stderr" | "/dev/fd/2" | "/proc/self/fd/2" => Some(Self::StandardError),
            "/dev/null" => Some(Self::Stream),
            _ if text.starts_with("/dev/fd/") || text.starts_with("/proc/self/fd/") => Some(Self::Stream),
            _ => None,
        }
    }
}

/// A file that may be written.
#[derive(Clone, Debug)]
#[must_use]
pub struct Output {
    pub(super) flag: &'static str,
    pub(super) path: PathBuf,
    pub(super) target: Target,
}

impl Output {
    /// As it was named.
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// Whether it goes to standard output: nothing else may be said there then.
    #[must_use]
    pub const fn is_standard_output(&self) -> bool {
        matches!(self.target, Target::StandardOutput)
    }

    fn error(&self, source: io::Error) -> OutputError {
        OutputError::System { flag: self.flag, path: self.path.clone(), source }
    }

    /// Writes it whole.
    ///
    /// # Errors
    /// When it cannot be written; what was there before is then still there.
    pub fn write(self, bytes: &[u8]) -> Result<(), OutputError> {
        let mut draft = self.begin()?;
        let written = draft.write_all(bytes);
        draft.end(written)
    }

    /// Begins to write it bit by bit; nothing is there before [`Draft::end`].
    ///
    /// # Errors
    /// When the file beside it cannot be made.
    pub fn begin(self) -> Result<Draft, OutputError> {
        let to = match &self.target {
            Target::StandardOutput => To::Screen(Screen::raw()),
            Target::StandardError => To::Errors(io::stderr()),
            Target::Stream => {
                let stream = std::fs::OpenOptions::new().append(true).open(&self.path);
                To::Stream(BufWriter::new(stream.map_err(|e| self.error(e))?))
            }
            Target::File { real, folder, .. } => {
                let rights = std::fs::metadata(real).ok().map(|meta| meta.permissions());
                To::Beside(BufWriter::new(beside(folder, rights).map_err(|e| self.error(e))?))
            }
        };
        Ok(Draft { output: self, to })
    }
}

/// An output that is being written.
#[derive(Debug)]
pub struct Draft {
    output: Output,
    to: To,
}

#[derive(Debug)]
enum To {
    Screen(Screen),
    Errors(io::Stderr),
    Stream(BufWriter<File>),
    Beside(BufWriter<NamedTempFile>),
}

impl Draft {
    /// As it was named.
    pub fn path(&self) -> &Path {
        &self.output.path
    }

    /// Puts what was written in its place, unless it could not be `written`.
    ///
    /// # Errors
    /// When not all of it could be written, or something else has come to stand there meanwhile.
    pub fn end(self, written: io::Result<()>) -> Result<(), OutputError> {
        let Self { output, to } = self;
        written.map_err(|e| output.error(e))?;
        match to {
            To::Screen(mut screen) => screen.flush().map_err(|e| output.error(e)),
            To::Errors(mut errors) => errors.flush().map_err(|e| output.error(e)),
            To::Stream(mut stream) => match stream.flush() {
                // As with standard output: whoever has gone misses nothing.
                Err(e) if e.kind() == io::ErrorKind::BrokenPipe => Ok(()),
                done => done.map_err(|e| output.error(e)),
            },
            To::Beside(buffer) => {
                let temporary = buffer.into_inner().map_err(|e| output.error(e.into_error()))?;
                temporary.as_file().sync_all().map_err(|e| output.error(e))?;
                let Target::File { real, kind, .. } = &output.target else { return Ok(()) };
                // Hours may have passed since it was planned.
                if let Ok(meta) = std::fs::symlink_metadata(real) {
                    may_replace(output.flag, real, *kind, &meta)?;
                }
                temporary.persist(real).map(|_| ()).map_err(|e| output.error(e.error))
            }
        }
    }
}

impl Write for Draft {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        match &mut self.to {
            To::Screen(screen) => screen.write(bytes),
            To::Errors(errors) => errors.write(bytes),
            To::Stream(stream) => match stream.write(bytes) {
                Err(e) if e.kind() == io::ErrorKind::BrokenPipe => Ok(bytes.len()),
                done => done,
            },
            To::Beside(file) => file.write(bytes),
        }
    }

    fn flush(&mut self) -> io::Result<()> {
        // Files are flushed at the end; a table must not cost a system call a row.
        Ok(())
    }
}
