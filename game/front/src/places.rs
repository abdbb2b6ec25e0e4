//! Where data and attempts are.

use assess::sentence;
use std::path::{Path, PathBuf};

use anyhow::bail;
use assess::attempt::{Attempt, AttemptError};
use assess::files::{self, Doing};
use assess::locale::quote;
use assess::play::{Session, SessionError};
use clap::Args;

/// Where things are.
#[derive(Args, Clone, Debug, Default)]
pub struct Places {
    /// Folder that holds assets/ and scenarios/ (else: PINHOLE_DATA, here and above, beside the program)
    #[arg(long, global = true, value_name = "DIR")]
    pub data: Option<PathBuf>,
    /// Folder for attempts (else: your own data folder)
    #[arg(long, global = true, value_name = "DIR")]
    pub attempts: Option<PathBuf>,
}

/// Environment variable that names the data folder.
const DATA_VARIABLE: &str = "PINHOLE_DATA";

fn is_data(folder: &Path) -> bool {
    folder.join("assets").is_dir() && folder.join("scenarios").is_dir()
}

/// The folder with `assets/` and `scenarios/`.
pub fn data(places: &Places) -> anyhow::Result<PathBuf> {
    let wrong = |name: String| {
        anyhow::Error::new(sentence!(
            "places-no-data",
            "{name}: expected a folder that holds assets/ and scenarios/",
            name = name
        ))
    };
    if let Some(folder) = &places.data {
        if is_data(folder) {
            return Ok(folder.clone());
        }
        return Err(wrong(format!("--data {}", quote::path(folder))));
    }
    if let Some(folder) = std::env::var_os(DATA_VARIABLE).map(PathBuf::from) {
        if is_data(&folder) {
            return Ok(folder);
        }
        return Err(wrong(format!("{DATA_VARIABLE}={}", quote::path(&folder))));
    }
    let mut candidates: Vec<PathBuf> = Vec::new();
    if let Ok(here) = std::env::current_dir() {
        candidates.extend(here.ancestors().map(Path::to_owned));
    }
    if let Ok(program) = std::env::current_exe() {
        candidates.extend(program.ancestors().skip(1).map(Path::to_owned));
        candidates.extend(program.parent().map(|bin| bin.join("../share/pinhole")));
    }
    // The source tree the program was built from, for `cargo run` from anywhere.
    candidates.push(PathBuf::from(concat!(env!("CARGO_MANIFEST_DIR"), "/../..")));
    candidates.into_iter().find(|c| is_data(c)).ok_or_else(|| {
        anyhow::Error::new(sentence!(
            "places-none",
            "the data files were not found; expected a folder that holds assets/ and scenarios/: name it with --data or {variable}",
            variable = DATA_VARIABLE
        ))
    })
}

/// This user's folder for what the program keeps.
fn own() -> anyhow::Result<PathBuf> {
    let dirs = directories::ProjectDirs::from("", "", "pinhole").ok_or_else(|| {
        sentence!("places-no-own", "this system names no folder for your data; name one with --attempts")
    })?;
    Ok(dirs.data_dir().to_owned())
}

/// The folder for what was proved about packs.
pub fn proofs() -> anyhow::Result<PathBuf> {
    Ok(own()?.join("proofs"))
}

/// The folder for attempts, made when it is not there, for this user alone.
pub fn attempts(places: &Places) -> anyhow::Result<PathBuf> {
    let folder = match &places.attempts {
        Some(folder) => folder.clone(),
        None => own()?.join("attempts"),
    };
    let mut builder = std::fs::DirBuilder::new();
    builder.recursive(true);
    #[cfg(unix)]
    {
        use std::os::unix::fs::DirBuilderExt as _;
        builder.mode(0o700);
    }
    builder.create(&folder).map_err(|e| {
        anyhow::Error::new(sentence!(
            "places-no-attempts",
            "the folder for attempts {folder} cannot be made: {why}; name another with --attempts",
            folder = quote::path(&folder),
            why = files::refusal(&e, Doing::Write)
        ))
    })?;
    Ok(folder)
}

/// File for the history of the prompt, beside the attempt: what was typed there belongs to nobody else. `None` when it
/// cannot be had.
pub fn history(attempt: &Path) -> Option<PathBuf> {
    let file = attempt.parent()?.join(".pinhole-history");
    let mut options = std::fs::OpenOptions::new();
    options.append(true).create(true);
    #[cfg(unix)]
    {
        use std::os::unix::fs::{OpenOptionsExt as _, PermissionsExt as _};
        // A link could lead anywhere.
        if file.symlink_metadata().is_ok_and(|meta| !meta.is_file()) {
            return None;
        }
        options.mode(0o600);
        let opened = options.open(&file).ok()?;
        opened.set_permissions(std::fs::Permissions::from_mode(0o600)).ok()?;
    }
    #[cfg(not(unix))]
    options.open(&file).ok()?;
    Some(file)
}

/// Whether a file belongs to this user.
#[cfg(unix)]
fn is_own(path: &Path) -> bool {
    use std::os::unix::fs::MetadataExt as _;
    path.metadata().is_ok_and(|meta| meta.uid() == rustix::process::geteuid().as_raw())
}

#[cfg(not(unix))]
fn is_own(_: &Path) -> bool {
    true
}

/// An attempt that can be carried on.
#[derive(Clone, Debug, PartialEq)]
pub struct Unfinished {
    /// The file.
    pub path: PathBuf,
    /// Job, `pack/job`.
    pub job: String,
    /// Actions done so far.
    pub actions: usize,
}

/// Attempts in a folder that this user can carry on, oldest first: his own, of that job and that seat if they are
/// given, in which no program is at work. Files that cannot be read are passed over.
pub fn unfinished(folder: &Path, job: Option<&str>, seat: Option<&str>) -> Vec<Unfinished> {
    let Ok(entries) = std::fs::read_dir(folder) else { return Vec::new() };
    let mut found: Vec<(std::time::SystemTime, Unfinished)> = entries
        .filter_map(Result::ok)
        .map(|e| e.path())
        .filter(|p| p.extension().is_some_and(|x| x == "attempt") && p.is_file() && is_own(p))
        .filter(|p| assess::attempt::is_free(p))
        .filter_map(|path| {
            let attempt = Attempt::read(&path).ok().filter(|a| !a.is_finished())?;
            let wanted = |mine: Option<&str>, its: &str| mine.is_none_or(|mine| mine == its);
            let fits = wanted(job, &attempt.header.job)
                && wanted(seat, attempt.header.seat.as_deref().unwrap_or_default());
            let changed = path.metadata().ok()?.modified().ok()?;
            let (job, actions) = (attempt.header.job, attempt.steps.len());
            fits.then_some((changed, Unfinished { path, job, actions }))
        })
        .collect();
    found.sort_by(|a, b| (a.0, &a.1.path).cmp(&(b.0, &b.1.path)));
    found.into_iter().map(|(_, one)| one).collect()
}

/// Begins an attempt at the job called `job` in `folder`, under the first name that no attempt has, whoever else begins
/// one there at the same moment.
pub fn begin_in(
    folder: &Path,
    job: &str,
    mut begin: impl FnMut(&Path) -> Result<Session, SessionError>,
) -> anyhow::Result<Session> {
    const MOST: u32 = 99_999;
    for n in 1..=MOST {
        let path = folder.join(format!("{job}-{n:03}.attempt"));
        // Nor may a stranger's page stand where its mark sheet will go.
        if path.symlink_metadata().is_ok() || crate::output::new_attempt(&path).is_err() {
            continue;
        }
        match begin(&path) {
            // Someone was quicker.
            Err(SessionError::File(AttemptError::Exists { .. })) => {}
            other => return Ok(other?),
        }
    }
    bail!(sentence!(
        "places-full",
        "{folder} holds {most} attempts at {job}; name another folder with --attempts",
        folder = quote::path(folder),
        most = MOST,
        job = job
    ))
}
