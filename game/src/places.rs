//! Where data and attempts are.

use std::path::{Path, PathBuf};

use anyhow::{Context as _, bail};
use assess::attempt::Attempt;
use assess::files::{self, Doing};
use assess::quote;

use crate::cli::Places;

/// Environment variable that names the data folder.
const DATA_VARIABLE: &str = "PINHOLE_DATA";

fn is_data(folder: &Path) -> bool {
    folder.join("assets").is_dir() && folder.join("scenarios").is_dir()
}

/// The folder with `assets/` and `scenarios/`.
pub(crate) fn data(places: &Places) -> anyhow::Result<PathBuf> {
    let expectation = "expected a folder that holds assets/ and scenarios/";
    if let Some(folder) = &places.data {
        if is_data(folder) {
            return Ok(folder.clone());
        }
        bail!("--data {}: {expectation}", quote::path(folder));
    }
    if let Some(folder) = std::env::var_os(DATA_VARIABLE).map(PathBuf::from) {
        if is_data(&folder) {
            return Ok(folder);
        }
        bail!("{DATA_VARIABLE}={}: {expectation}", quote::path(&folder));
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
    candidates.push(PathBuf::from(concat!(env!("CARGO_MANIFEST_DIR"), "/..")));
    candidates.into_iter().find(|c| is_data(c)).with_context(|| {
        format!("the data files were not found; {expectation}: name it with --data or {DATA_VARIABLE}")
    })
}

/// This user's folder for what the program keeps.
fn own() -> anyhow::Result<PathBuf> {
    let dirs = directories::ProjectDirs::from("", "", "pinhole")
        .context("this system names no folder for your data; name one with --attempts")?;
    Ok(dirs.data_dir().to_owned())
}

/// The folder for attempts, made when it is not there.
pub(crate) fn attempts(places: &Places) -> anyhow::Result<PathBuf> {
    let folder = match &places.attempts {
        Some(folder) => folder.clone(),
        None => own()?.join("attempts"),
    };
    std::fs::create_dir_all(&folder).map_err(|e| {
        let why = files::system(&e, Doing::Write);
        let name = quote::path(&folder);
        anyhow::anyhow!("the folder for attempts {name} cannot be made: {why}; name another with --attempts")
    })?;
    Ok(folder)
}

/// File for the history of the prompt; `None` when it cannot be had.
pub(crate) fn history() -> Option<PathBuf> {
    let folder = own().ok()?;
    std::fs::create_dir_all(&folder).ok()?;
    Some(folder.join("history.txt"))
}

/// Attempts in a folder that can be carried on, oldest first. Files that cannot be read are passed over.
pub(crate) fn unfinished(folder: &Path, job: Option<&str>) -> Vec<PathBuf> {
    let Ok(entries) = std::fs::read_dir(folder) else { return Vec::new() };
    let mut found: Vec<(std::time::SystemTime, PathBuf)> = entries
        .filter_map(Result::ok)
        .map(|e| e.path())
        .filter(|p| p.extension().is_some_and(|x| x == "attempt"))
        .filter(|p| Attempt::read(p).is_ok_and(|a| !a.is_finished() && job.is_none_or(|j| j == a.header.job)))
        .filter_map(|p| Some((p.metadata().ok()?.modified().ok()?, p)))
        .collect();
    found.sort();
    found.into_iter().map(|(_, p)| p).collect()
}

/// A name in `folder` that no attempt has yet, for a new one at the job called `job`.
pub(crate) fn free_attempt(folder: &Path, job: &str) -> PathBuf {
    (1u32..)
        .map(|n| folder.join(format!("{job}-{n:03}.attempt")))
        .find(|p| p.symlink_metadata().is_err())
        .unwrap_or_else(|| folder.join(format!("{job}.attempt")))
}
