//! Files under way: how one is begun, and how those of programs that were killed meanwhile are cleared.

use std::fs::File;
use std::path::Path;
use std::time::Duration;

use super::{AttemptError, Task};

const PREFIX: &str = ".begun-";
const SUFFIX: &str = ".part";

/// A beginning that nobody has locked for so long belongs to a program that is gone: it takes milliseconds.
const STALE: Duration = Duration::from_secs(3600);

/// A file in `folder` under a name of its own, for its owner alone; it will be called `path`.
pub(super) fn begin(folder: &Path, path: &Path) -> Result<tempfile::NamedTempFile, AttemptError> {
    // On Unix the builder gives mode 0600 by itself.
    let mut builder = tempfile::Builder::new();
    builder.prefix(PREFIX).suffix(SUFFIX);
    builder.tempfile_in(folder).map_err(|e| AttemptError::io(Task::Make, path, e))
}

/// Removes what programs killed while they began an attempt have left: an hour old and locked by nobody. What
/// cannot be looked at or removed stays; it does no harm.
pub(super) fn clear(folder: &Path) {
    let Ok(entries) = std::fs::read_dir(folder) else { return };
    for entry in entries.filter_map(Result::ok) {
        let name = entry.file_name();
        let ours = name.to_str().is_some_and(|n| n.starts_with(PREFIX) && n.ends_with(SUFFIX));
        let is_stale = || {
            // The entry itself: a link is not followed.
            let meta = entry.metadata().ok().filter(std::fs::Metadata::is_file)?;
            Some(STALE <= meta.modified().ok()?.elapsed().ok()?)
        };
        let is_locked = || File::open(entry.path()).is_ok_and(|f| f.try_lock_shared().is_err());
        if ours && is_stale() == Some(true) && !is_locked() {
            drop(std::fs::remove_file(entry.path()));
        }
    }
}
