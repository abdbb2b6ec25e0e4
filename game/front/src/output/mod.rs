//! The one way out for files: sheets, tables, pictures.
//!
//! An output never replaces an input of the same command, another output of it, an attempt, or a file that is not
//! of its own kind; whether it may go where it shall is asked before the work ([`Outputs::plan`]), so that nobody
//! waits for a mark to be told that a name is wrong. It is written beside its place and renamed ([`Output::write`],
//! [`Output::begin`]): a full disk or a kill leaves the old file whole. `-` and `/dev/stdout` are standard output.

mod cell;
mod draft;
mod error;
mod identity;
mod kind;
mod sheet;
#[cfg(test)]
mod tests;

use std::fs::Metadata;
use std::io::{self, Read as _};
use std::path::{Path, PathBuf};

use assess::files;

pub use self::cell::cell;
pub use self::draft::{Draft, Output};
use self::draft::{Target, beside};
pub use self::error::OutputError;
use self::identity::Identity;
use self::kind::{ATTEMPT_BEGINS, SNIFFED};
pub use self::kind::{DRAWING_BEGINS, Kind};
pub use self::sheet::{new_attempt, sheet_output};

/// The files of one command: what it reads, what it will write.
#[derive(Debug, Default)]
pub struct Outputs {
    inputs: Vec<Identity>,
    planned: Vec<(&'static str, Identity)>,
}

impl Outputs {
    /// Files that this command reads, and that no output may replace.
    pub fn beside<'p>(inputs: impl IntoIterator<Item = &'p PathBuf>) -> Self {
        let inputs = inputs.into_iter().filter_map(|path| Identity::of(path)).collect();
        Self { inputs, planned: Vec::new() }
    }

    /// Asks whether a file of `kind` may be written to `path`, which was given with `flag`. Nothing is written.
    ///
    /// # Errors
    /// When it would replace what it must not replace, or its folder is not there.
    pub fn plan(&mut self, flag: &'static str, path: &Path, kind: Kind) -> Result<Output, OutputError> {
        let keep = || path.to_owned();
        let system = |source| OutputError::System { flag, path: keep(), source };
        let target = match Target::of(path) {
            Some(stream) => {
                let real = match stream {
                    Target::StandardOutput => PathBuf::from("-"),
                    _ => keep(),
                };
                self.take(flag, path, Identity { real, file: None })?;
                return Ok(Output { flag, path: keep(), target: stream });
            }
            None => path,
        };
        let old = match std::fs::metadata(target) {
            Ok(meta) => Some(meta),
            Err(e) if e.kind() == io::ErrorKind::NotFound => {
                if target.symlink_metadata().is_ok() {
                    return Err(OutputError::BrokenLink { flag, path: keep() });
                }
                None
            }
            Err(e) => return Err(system(e)),
        };
        let identity = Identity::of(target).ok_or_else(|| system(io::ErrorKind::NotFound.into()))?;
        if self.inputs.iter().any(|input| input.is(&identity)) {
            return Err(OutputError::IsInput { flag, path: keep() });
        }
        let real = identity.real.clone();
        self.take(flag, path, identity)?;
        if let Some(old) = &old {
            may_replace(flag, path, kind, old)?;
        }
        let folder = real.parent().unwrap_or(Path::new("/")).to_owned();
        if !std::fs::metadata(&folder).map_err(system)?.is_dir() {
            return Err(system(io::ErrorKind::NotADirectory.into()));
        }
        // Whether a file can be made there is known for certain only when one is.
        drop(beside(&folder, None).map_err(system)?);
        let target = Target::File { real, kind, folder };
        Ok(Output { flag, path: keep(), target })
    }

    fn take(&mut self, flag: &'static str, path: &Path, identity: Identity) -> Result<(), OutputError> {
        if let Some((other, _)) = self.planned.iter().find(|(_, planned)| planned.is(&identity)) {
            return Err(OutputError::Twice { flag, path: path.to_owned(), other });
        }
        self.planned.push((flag, identity));
        Ok(())
    }
}

/// Whether what is there may be replaced by something of `kind`.
fn may_replace(flag: &'static str, path: &Path, kind: Kind, old: &Metadata) -> Result<(), OutputError> {
    let keep = || path.to_owned();
    if !old.is_file() {
        return Err(OutputError::NotAFile { flag, path: keep(), what: files::what_it_is(old) });
    }
    if old.permissions().readonly() {
        let source = io::ErrorKind::PermissionDenied.into();
        return Err(OutputError::System { flag, path: keep(), source });
    }
    if old.len() == 0 {
        return Ok(());
    }
    let mut begins = Vec::new();
    let looked = files::open(path)
        .map_err(|e| io::Error::other(e.to_string()))
        .and_then(|file| file.take(SNIFFED).read_to_end(&mut begins));
    match looked {
        Ok(_) if begins.starts_with(ATTEMPT_BEGINS) => Err(OutputError::IsAttempt { flag, path: keep() }),
        Ok(_) if kind.is(&begins) => Ok(()),
        // What cannot be looked at is not ours to replace.
        Ok(_) | Err(_) => Err(OutputError::Foreign { flag, path: keep(), kind }),
    }
}
