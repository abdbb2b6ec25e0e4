//! One file, however its name is spelled.

use std::fs::Metadata;
use std::path::{Path, PathBuf};

/// What a path stands for, whatever its spelling: by the file itself where the system tells, else by its real
/// path.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Identity {
    pub(super) real: PathBuf,
    pub(super) file: Option<(u64, u64)>,
}

impl Identity {
    /// `None` when not even the folder is there.
    pub(super) fn of(path: &Path) -> Option<Self> {
        let real = path.canonicalize().ok().or_else(|| {
            let folder = match path.parent() {
                Some(folder) if !folder.as_os_str().is_empty() => folder,
                _ => Path::new("."),
            };
            Some(folder.canonicalize().ok()?.join(path.file_name()?))
        })?;
        let file = std::fs::metadata(&real).ok().and_then(|meta| number_of(&meta));
        Some(Self { real, file })
    }

    pub(super) fn is(&self, other: &Self) -> bool {
        if self.file.is_some() && self.file == other.file || self.real == other.real {
            return true;
        }
        // These systems' disks mostly do not tell capitals apart.
        let folds = cfg!(any(windows, target_os = "macos"));
        let small = |path: &Path| path.to_string_lossy().to_lowercase();
        folds && small(&self.real) == small(&other.real)
    }
}

/// Device and number of a file.
fn number_of(meta: &Metadata) -> Option<(u64, u64)> {
    #[cfg(unix)]
    {
        use std::os::unix::fs::MetadataExt as _;
        Some((meta.dev(), meta.ino()))
    }
    #[cfg(not(unix))]
    {
        let _: &Metadata = meta;
        None
    }
}
