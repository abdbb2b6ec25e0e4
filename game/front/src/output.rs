//! The one way out for files: sheets, tables, pictures.
//!
//! An output never replaces an input of the same command, another output of it, an attempt, or a file that is not
//! of its own kind; whether it may go where it shall is asked before the work ([`Outputs::plan`]), so that nobody
//! waits for a mark to be told that a name is wrong. It is written beside its place and renamed ([`Output::write`],
//! [`Output::begin`]): a full disk or a kill leaves the old file whole. `-` and `/dev/stdout` are standard output.

use assess::sentence;
use std::fs::{File, Metadata, Permissions};
use std::io::{self, BufWriter, Read as _, Write};
use std::path::{Path, PathBuf};

use assess::files::{self, Doing};
use assess::locale::quote;
use assess::locale::sentence::Sentence;
use tempfile::NamedTempFile;

use crate::screen::Screen;

/// How a drawing of ours begins: by this an old one is told from another drawing before it is replaced.
pub const DRAWING_BEGINS: &str = "<!-- pinhole trace -->\n";

/// How an attempt begins.
const ATTEMPT_BEGINS: &[u8] = b"{\"schema\":\"pinhole-attempt";
/// Bytes of an old file that are looked at to tell its kind.
const SNIFFED: u64 = 4_096;

/// What is written, so that an old one can be told from a stranger's file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// The mark sheet as a page.
    Sheet,
    /// Mark sheets as JSON.
    Marks,
    /// A line an attempt.
    MarkTable,
    /// Ports over time.
    TraceTable,
    /// Ports over time as a drawing.
    Drawing,
    /// A picture in points.
    Picture,
    /// A circuit's equations in numbers.
    Circuit,
    /// What `bench` measured.
    SpeedTable,
    /// The accessible tree.
    Tree,
    /// Settings: a broken file of them is replaced at the next change.
    Settings,
}

impl Kind {
    /// In a message.
    fn what(self) -> Sentence {
        match self {
            Self::Sheet => sentence!("kind-sheet", "a mark sheet"),
            Self::Marks => sentence!("kind-marks", "a file of marks in JSON"),
            Self::MarkTable => sentence!("kind-mark-table", "a table of marks"),
            Self::TraceTable => sentence!("kind-trace-table", "a table of a trace"),
            Self::Drawing => sentence!("kind-drawing", "a drawing of a trace"),
            Self::Picture => sentence!("kind-picture", "a PNG picture"),
            Self::Circuit => sentence!("kind-circuit", "a circuit in JSON"),
            Self::SpeedTable => sentence!("kind-speed-table", "a table of speeds"),
            Self::Tree => sentence!("kind-tree", "an accessible tree"),
            Self::Settings => sentence!("kind-settings", "a settings file"),
        }
    }

    /// Whether a file that begins so is one of these, written by this program.
    fn is(self, begins: &[u8]) -> bool {
        // JSON may stand in a list, and on lines of its own.
        let json = |key: &str| {
            let rest = begins.iter().skip_while(|b| b.is_ascii_whitespace() || b"[{".contains(b));
            rest.copied().take(key.len()).eq(key.bytes())
        };
        match self {
            Self::Sheet => {
                let text = String::from_utf8_lossy(begins);
                begins.starts_with(b"<!DOCTYPE html>")
                    && text.contains(&format!("content=\"{}\"", assess::report::html::GENERATOR))
            }
            Self::Marks => json("\"scheme\"") || json("\"attempt\""),
            Self::MarkTable => begins.starts_with(b"attempt,job,"),
            Self::TraceTable => begins.starts_with(b"t_s,"),
            Self::Drawing => begins.starts_with(DRAWING_BEGINS.as_bytes()),
            Self::Picture => begins.starts_with(b"\x89PNG\r\n\x1a\n"),
            Self::Circuit => json("\"circuit\""),
            Self::SpeedTable => begins.starts_with(b"case,how,"),
            Self::Tree => json("\"heard\""),
            Self::Settings => true,
        }
    }
}

/// Why an output may not go where it was to go, or could not be written.
#[derive(Debug, thiserror::Error)]
#[error("{}", self.sentence())]
pub enum OutputError {
    /// It is one of the files the command reads.
    IsInput {
        /// As it was asked for on the command line, or what it is.
        flag: &'static str,
        /// The file.
        path: PathBuf,
    },
    /// Two outputs of one command.
    Twice {
        /// The second.
        flag: &'static str,
        /// The file.
        path: PathBuf,
        /// The first.
        other: &'static str,
    },
    /// An attempt.
    IsAttempt {
        /// As it was asked for.
        flag: &'static str,
        /// The file.
        path: PathBuf,
    },
    /// A file of another kind.
    Foreign {
        /// As it was asked for.
        flag: &'static str,
        /// The file.
        path: PathBuf,
        /// What was to be written.
        kind: Kind,
    },
    /// A new attempt with the ending of something else.
    AttemptName {
        /// The file.
        path: PathBuf,
        /// The ending.
        ending: &'static str,
    },
    /// A folder, a pipe, a device.
    NotAFile {
        /// As it was asked for.
        flag: &'static str,
        /// The file.
        path: PathBuf,
        /// What it is.
        what: &'static str,
    },
    /// A link to nothing.
    BrokenLink {
        /// As it was asked for.
        flag: &'static str,
        /// The file.
        path: PathBuf,
    },
    /// The system refused.
    System {
        /// As it was asked for.
        flag: &'static str,
        /// The file.
        path: PathBuf,
        /// What the system said.
        source: io::Error,
    },
}

impl OutputError {
    /// What is wrong, for every language.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        match self {
            Self::IsInput { flag, path } => sentence!(
                "output-is-input",
                "{flag} {file}: that file is read by this command and would be lost; name another",
                flag = *flag,
                file = quote::path(path)
            ),
            Self::Twice { flag, path, other } => sentence!(
                "output-twice",
                "{flag} {file}: {other} goes there already; name another",
                flag = *flag,
                file = quote::path(path),
                other = *other
            ),
            Self::IsAttempt { flag, path } => sentence!(
                "output-is-attempt",
                "{flag} {file}: that is an attempt, which nothing replaces; name another file",
                flag = *flag,
                file = quote::path(path)
            ),
            Self::Foreign { flag, path, kind } => sentence!(
                "output-foreign",
                "{flag} {file}: a file is there that is not {what} written by pinhole; move it away, or name another",
                flag = *flag,
                file = quote::path(path),
                what = kind.what()
            ),
            Self::AttemptName { path, ending } => sentence!(
                "output-attempt-name",
                "--attempt {file}: what ends in .{ending} is something else; let the name end in .attempt",
                file = quote::path(path),
                ending = *ending
            ),
            Self::NotAFile { flag, path, what } => sentence!(
                "output-no-file",
                "{flag} {file}: that is {what}, not a file; name a file",
                flag = *flag,
                file = quote::path(path),
                what = files::what_in_words(what)
            ),
            Self::BrokenLink { flag, path } => sentence!(
                "output-broken-link",
                "{flag} {file}: that is a link to a file that is not there; name the file itself",
                flag = *flag,
                file = quote::path(path)
            ),
            Self::System { flag, path, source } => sentence!(
                "output-not-written",
                "{flag} {file} cannot be written: {why}",
                flag = *flag,
                file = quote::path(path),
                why = files::refusal(source, Doing::Write)
            ),
        }
    }
}

/// What a path stands for, whatever its spelling: by the file itself where the system tells, else by its real
/// path.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Identity {
    real: PathBuf,
    file: Option<(u64, u64)>,
}

impl Identity {
    /// `None` when not even the folder is there.
    fn of(path: &Path) -> Option<Self> {
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

    fn is(&self, other: &Self) -> bool {
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

/// A temporary file in a folder, with the rights of the file it will replace.
fn beside(folder: &Path, rights: Option<Permissions>) -> io::Result<NamedTempFile> {
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
enum Target {
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
    fn of(path: &Path) -> Option<Self> {
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
    flag: &'static str,
    path: PathBuf,
    target: Target,
}

impl Output {
    /// As it was named.
    pub fn path(&self) -> &Path {
        &self.path
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

/// Endings that the program writes or reads as something else: no attempt is called so, because its mark sheet
/// or another output would then have its name.
const ENDINGS: [&str; 9] = ["html", "htm", "json", "csv", "png", "svg", "script", "ron", "ftl"];

/// Where the mark sheet of an attempt goes: beside it, never onto it.
fn sheet_of(attempt: &Path) -> PathBuf {
    let is_html = attempt.extension().is_some_and(|e| e.eq_ignore_ascii_case("html"));
    if is_html { attempt.with_extension("html.html") } else { attempt.with_extension("html") }
}

/// Whether a new attempt may be called `path`: not as something that is written beside attempts, and so that its
/// mark sheet will have a place.
///
/// # Errors
/// When it may not.
pub fn new_attempt(path: &Path) -> Result<(), OutputError> {
    let ending = path.extension().map(|e| e.to_string_lossy().to_lowercase()).unwrap_or_default();
    if let Some(ending) = ENDINGS.into_iter().find(|e| *e == ending) {
        return Err(OutputError::AttemptName { path: path.to_owned(), ending });
    }
    // Trouble with the folder is told by whoever makes the attempt.
    match sheet_output(path) {
        Err(OutputError::System { .. }) => Ok(()),
        planned => planned.map(drop),
    }
}

/// Where the mark sheet of an attempt goes, if it may go there.
///
/// # Errors
/// When something else stands there, or it cannot be written.
pub fn sheet_output(attempt: &Path) -> Result<Output, OutputError> {
    Outputs::beside([&attempt.to_owned()]).plan("the mark sheet", &sheet_of(attempt), Kind::Sheet)
}

/// A text in a cell of a table, harmless: spreadsheets take what begins with `=`, `+`, `-`, `@`, a tab or a line
/// end for a formula and run it, so an apostrophe goes in front, as OWASP advises on CSV injection; controls are
/// written as escapes. Numbers of ours are not texts and stay as they are.
pub fn cell(text: &str) -> String {
    let plain = quote::escaped(text).replace('\n', "\\n");
    let first = text.trim_start_matches(' ').chars().next();
    // The wide forms are folded to the others by some.
    let dangerous =
        matches!(first, Some('=' | '+' | '-' | '@' | '\t' | '\r' | '\n' | '＝' | '＋' | '－' | '＠'));
    if dangerous { format!("'{plain}") } else { plain }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn said(result: Result<Output, OutputError>) -> String {
        result.map(|o| o.path().to_owned()).unwrap_err().to_string()
    }

    #[test]
    fn what_is_there_is_replaced_only_by_its_own_kind() {
        let dir = tempfile::tempdir().unwrap();
        let at = |name: &str| dir.path().join(name);
        let plan = |name: &str, kind| Outputs::default().plan("--csv", &at(name), kind);
        std::fs::write(at("notes.txt"), "my notes").unwrap();
        std::fs::write(at("a.attempt"), "{\"schema\":\"pinhole-attempt/1\"}").unwrap();
        std::fs::write(at("empty"), "").unwrap();
        std::fs::write(at("old.csv"), "attempt,job,seat\n").unwrap();
        for kind in
            [Kind::Sheet, Kind::Marks, Kind::MarkTable, Kind::TraceTable, Kind::Drawing, Kind::Picture]
        {
            assert!(said(plan("notes.txt", kind)).contains("not a"), "{kind:?}");
            assert!(said(plan("a.attempt", kind)).contains("is an attempt"), "{kind:?}");
            plan("empty", kind).unwrap().write(b"").unwrap();
        }
        assert!(said(plan("old.csv", Kind::TraceTable)).contains("old.csv"));
        plan("old.csv", Kind::MarkTable).unwrap().write(b"attempt,job,new\n").unwrap();
        assert_eq!(std::fs::read(at("old.csv")).unwrap(), b"attempt,job,new\n");
        assert!(said(plan("no/such/x", Kind::MarkTable)).contains("no such"));
        assert!(said(plan(".", Kind::MarkTable)).contains("a folder"));
        // Something else came to stand there after it was planned.
        let late = plan("late.csv", Kind::MarkTable).unwrap();
        std::fs::write(at("late.csv"), "mine").unwrap();
        assert!(late.write(b"attempt,job\n").is_err());
        assert_eq!(std::fs::read(at("late.csv")).unwrap(), b"mine");
        let left: Vec<_> = std::fs::read_dir(dir.path())
            .unwrap()
            .map(|e| e.unwrap().file_name().into_string().unwrap())
            .filter(|n| n.starts_with(".pinhole"))
            .collect();
        assert!(left.is_empty(), "{left:?}");
    }

    #[test]
    fn one_file_has_one_name_however_it_is_spelled() {
        let dir = tempfile::tempdir().unwrap();
        let input = dir.path().join("in.csv");
        std::fs::write(&input, "attempt,job\n").unwrap();
        std::fs::create_dir(dir.path().join("sub")).unwrap();
        let mut names = vec![input.clone(), dir.path().join("sub/../in.csv"), dir.path().join("./in.csv")];
        #[cfg(unix)]
        {
            std::os::unix::fs::symlink(&input, dir.path().join("soft.csv")).unwrap();
            names.push(dir.path().join("soft.csv"));
        }
        std::fs::hard_link(&input, dir.path().join("hard.csv")).unwrap();
        names.push(dir.path().join("hard.csv"));
        for name in &names {
            let error = Outputs::beside([&input]).plan("--csv", name, Kind::MarkTable);
            assert!(said(error).contains("is read by this command"), "{}", name.display());
        }
        let mut outputs = Outputs::default();
        drop(outputs.plan("--csv", &dir.path().join("new"), Kind::MarkTable).unwrap());
        let twice = outputs.plan("--json", &dir.path().join("sub/../new"), Kind::Marks);
        assert!(said(twice).contains("--csv goes there already"));
        drop(outputs.plan("--csv", Path::new("-"), Kind::MarkTable).unwrap());
        assert!(outputs.plan("--json", Path::new("/dev/stdout"), Kind::Marks).is_err());
    }

    #[test]
    fn cells_are_harmless() {
        for (text, wanted) in [
            ("=1+1", "'=1+1"),
            ("+49", "'+49"),
            ("-x", "'-x"),
            ("@sum", "'@sum"),
            (" =1", "' =1"),
            ("\tx", "'\\tx"),
            ("\rx", "'\\rx"),
            ("＝1", "'＝1"),
            ("Seat 12", "Seat 12"),
            ("a\u{1b}[2J", "a\\u{1b}[2J"),
            ("", ""),
        ] {
            assert_eq!(cell(text), wanted);
        }
    }
}
