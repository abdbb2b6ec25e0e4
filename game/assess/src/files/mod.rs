//! The one way in for files: regular files only, opened without waiting, read up to a limit.
//!
//! A pipe, a device or a socket under a file's name would block the program for ever or never end. So a path is
//! looked at, opened so that nothing waits, and the *open* file is looked at again, because a name can come to
//! stand for something else between the two. What is read has a limit by its kind, and the limit is in the
//! message.

use std::fs::{File, Metadata, OpenOptions};
use std::io::{self, Read as _};
use std::path::{Path, PathBuf};

mod error;

pub use self::error::{Doing, FileError, refusal, system, what_in_words};

/// A kind of file, with the most that is read of one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Kind {
    /// In a message: `a script`.
    pub what: &'static str,
    /// Most bytes.
    pub most: u64,
}

/// Car, instrument, spares, diagram, pack, job, reference script: the largest of ours has some 30 kB.
pub const DATA: Kind = Kind { what: "a data file", most: 2_000_000 };
/// An attempt: more than one of as many actions as it may have.
pub const ATTEMPT: Kind = Kind { what: "an attempt", most: 32 << 20 };
/// A script of plain words: a long job has some hundred lines.
pub const SCRIPT: Kind = Kind { what: "a script", most: 1 << 20 };
/// A file of words of a language: the largest of ours has some 15 kB.
pub const LOCALE: Kind = Kind { what: "a file of words", most: 1 << 20 };
/// What a person has set once.
pub const SETTINGS: Kind = Kind { what: "a settings file", most: 64 << 10 };
/// What was typed at the prompt.
pub const HISTORY: Kind = Kind { what: "a history", most: 4 << 20 };
/// Letters for pictures.
pub const FONT: Kind = Kind { what: "a font", most: 32 << 20 };

/// What something that is no regular file is, in a message.
#[must_use]
pub fn what_it_is(meta: &Metadata) -> &'static str {
    if meta.is_dir() {
        return "a folder";
    }
    #[cfg(unix)]
    {
        use std::os::unix::fs::FileTypeExt as _;
        let kind = meta.file_type();
        if kind.is_fifo() {
            return "a pipe";
        }
        if kind.is_socket() {
            return "a socket";
        }
        if kind.is_char_device() || kind.is_block_device() {
            return "a device";
        }
    }
    "something else"
}

fn regular(meta: &Metadata, path: &Path) -> Result<(), FileError> {
    if meta.is_file() {
        return Ok(());
    }
    Err(FileError::NotRegular { path: path.to_owned(), what: what_it_is(meta) })
}

fn open_as(path: &Path, doing: Doing) -> Result<File, FileError> {
    let refused = |source| FileError::system(path, doing, source);
    // First by its name: opening some devices does something already.
    regular(&std::fs::metadata(path).map_err(refused)?, path)?;
    let mut options = OpenOptions::new();
    options.read(true).write(doing == Doing::Write);
    #[cfg(unix)]
    {
        use std::os::unix::fs::OpenOptionsExt as _;
        options.custom_flags(libc::O_NONBLOCK | libc::O_NOCTTY);
    }
    let file = options.open(path).map_err(refused)?;
    regular(&file.metadata().map_err(refused)?, path)?;
    Ok(file)
}

/// Opens a regular file for reading; never waits.
///
/// # Errors
/// When it is not there, may not be read, or is no regular file.
pub fn open(path: &Path) -> Result<File, FileError> {
    open_as(path, Doing::Read)
}

/// Opens a regular file that is there for reading and writing; never waits.
///
/// # Errors
/// As [`open`], and when it may not be written.
pub fn open_for_writing(path: &Path) -> Result<File, FileError> {
    open_as(path, Doing::Write)
}

/// Reads from where an open file stands to its end, at most what its kind allows.
///
/// # Errors
/// When it cannot be read or is too long.
pub fn read_open(file: &mut File, path: &Path, kind: Kind) -> Result<Vec<u8>, FileError> {
    let refused = |source| FileError::system(path, Doing::Read, source);
    let length = file.metadata().map_err(refused)?.len();
    let too_large = |bytes| FileError::TooLarge { path: path.to_owned(), bytes, kind };
    if kind.most < length {
        return Err(too_large(length));
    }
    let mut bytes = Vec::with_capacity(usize::try_from(length).unwrap_or_default());
    // It may grow while it is read, and some files say that they have no length.
    file.take(kind.most + 1).read_to_end(&mut bytes).map_err(refused)?;
    if kind.most < bytes.len() as u64 {
        return Err(too_large(bytes.len() as u64));
    }
    Ok(bytes)
}

/// Reads a regular file.
///
/// # Errors
/// When it is none, cannot be read or is too long.
pub fn read(path: &Path, kind: Kind) -> Result<Vec<u8>, FileError> {
    read_open(&mut open(path)?, path, kind)
}

/// Reads a regular file of UTF-8 text, without the byte order mark some editors put in front.
///
/// # Errors
/// As [`read`], and when it is not UTF-8.
pub fn read_text(path: &Path, kind: Kind) -> Result<String, FileError> {
    text_of(read(path, kind)?, path)
}

/// Bytes of `path` as text.
///
/// # Errors
/// When they are not UTF-8.
pub fn text_of(bytes: Vec<u8>, path: &Path) -> Result<String, FileError> {
    let text = String::from_utf8(bytes).map_err(|e| {
        let at = e.utf8_error().valid_up_to();
        let line = 1 + e.as_bytes()[..at].iter().filter(|b| **b == b'\n').count();
        FileError::NotText { path: path.to_owned(), line, at }
    })?;
    Ok(match text.strip_prefix('\u{feff}') {
        Some(rest) => rest.to_owned(),
        None => text,
    })
}

/// Reads text from a stream (standard input) that ends some time, at most what its kind allows.
///
/// # Errors
/// When it cannot be read, is too long or is not UTF-8; `name` stands for it in the message.
pub fn read_stream(from: impl io::Read, name: &Path, kind: Kind) -> Result<String, FileError> {
    let mut bytes = Vec::new();
    from.take(kind.most + 1)
        .read_to_end(&mut bytes)
        .map_err(|source| FileError::system(name, Doing::Read, source))?;
    if kind.most < bytes.len() as u64 {
        return Err(FileError::TooLarge { path: name.to_owned(), bytes: bytes.len() as u64, kind });
    }
    text_of(bytes, name)
}

/// The real place of `path`, which must lie inside `folder` (itself a real place, as
/// [`Path::canonicalize`] gives it): links inside it are followed, links that leave it are refused.
///
/// # Errors
/// When there is no such file, or it lies outside.
pub fn inside(folder: &Path, path: &Path) -> Result<PathBuf, FileError> {
    let real = path.canonicalize().map_err(|source| FileError::system(path, Doing::Read, source))?;
    if real.starts_with(folder) {
        return Ok(real);
    }
    Err(FileError::Outside { path: path.to_owned(), folder: folder.to_owned() })
}

/// Reads the text file `name` of the folder `root`; it must lie inside it.
///
/// # Errors
/// As [`inside`] and [`read_text`].
pub fn read_text_inside(root: &Path, name: &Path, kind: Kind) -> Result<String, FileError> {
    read_text(&real_inside(root, name)?, kind)
}

/// The same for bytes.
///
/// # Errors
/// As [`inside`] and [`read`].
pub fn read_inside(root: &Path, name: &Path, kind: Kind) -> Result<Vec<u8>, FileError> {
    read(&real_inside(root, name)?, kind)
}

fn real_inside(root: &Path, name: &Path) -> Result<PathBuf, FileError> {
    let real = root.canonicalize().map_err(|source| FileError::system(root, Doing::Read, source))?;
    inside(&real, &root.join(name))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_regular_files_up_to_the_limit() {
        let dir = tempfile::tempdir().unwrap();
        let path = dir.path().join("x");
        let kind = Kind { what: "a test", most: 4 };
        let said = |path: &Path| read(path, kind).unwrap_err().to_string();
        assert!(said(&path).contains("no such file"));
        assert!(said(dir.path()).contains("a folder"));
        std::fs::write(&path, "1234").unwrap();
        assert_eq!(read(&path, kind).unwrap(), b"1234");
        std::fs::write(&path, "12345").unwrap();
        assert!(said(&path).contains("at most 4 bytes are read of a test"), "{}", said(&path));
        std::fs::write(&path, b"a\n\xff").unwrap();
        let error = read_text(&path, kind).unwrap_err();
        assert!(matches!(error, FileError::NotText { line: 2, at: 2, .. }), "{error}");
        std::fs::write(&path, "\u{feff}a").unwrap();
        assert_eq!(read_text(&path, kind).unwrap(), "a");
    }

    #[cfg(unix)]
    #[test]
    fn devices_and_endless_files_are_refused_at_once() {
        for path in ["/dev/zero", "/dev/null", "/dev/full"] {
            let error = read(Path::new(path), DATA).unwrap_err();
            assert!(matches!(error, FileError::NotRegular { what: "a device", .. }), "{error}");
        }
        let dir = tempfile::tempdir().unwrap();
        let socket = dir.path().join("s");
        let listener = std::os::unix::net::UnixListener::bind(&socket).unwrap();
        let error = read(&socket, DATA).unwrap_err();
        assert!(matches!(error, FileError::NotRegular { what: "a socket", .. }), "{error}");
        drop(listener);
        let error = read_stream(io::repeat(b'x'), Path::new("-"), SCRIPT).unwrap_err();
        assert!(matches!(error, FileError::TooLarge { .. }), "{error}");
    }

    #[cfg(unix)]
    #[test]
    fn links_may_not_leave_the_folder() {
        let dir = tempfile::tempdir().unwrap();
        let home = dir.path().canonicalize().unwrap();
        let folder = home.join("data");
        std::fs::create_dir(&folder).unwrap();
        std::fs::write(home.join("secret"), "s").unwrap();
        std::fs::write(folder.join("own"), "o").unwrap();
        std::os::unix::fs::symlink("../secret", folder.join("out")).unwrap();
        std::os::unix::fs::symlink("own", folder.join("in")).unwrap();
        assert_eq!(inside(&folder, &folder.join("in")).unwrap(), folder.join("own"));
        assert!(matches!(inside(&folder, &folder.join("out")), Err(FileError::Outside { .. })));
        assert!(matches!(inside(&folder, &folder.join("../secret")), Err(FileError::Outside { .. })));
    }
}
