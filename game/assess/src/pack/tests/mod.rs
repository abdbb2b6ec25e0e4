//! Each kind of broken file gives its own error, with place, value and expectation; none panics.
//!
//! Most tests take a good file of ours, break one thing in its text and look at what the checker says.

mod bounds;
mod cars;
mod jobs;
mod library;
mod room;
mod testing;
mod written;

use std::path::{Path, PathBuf};

use crate::pack::error::PackError;
use crate::pack::raw::RawVehicle;
use crate::pack::{Library, check_car, read};

/// The project's root.
fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

fn library() -> Library {
    Library::open(&root()).unwrap_or_else(|e| panic!("{e}"))
}

fn good(file: &str) -> String {
    std::fs::read_to_string(root().join(file)).unwrap()
}

/// `text` with `from` changed to `to`; the test itself is broken when `from` is not there.
fn change(text: &str, from: &str, to: &str) -> String {
    assert!(text.contains(from), "the good file no longer has {from:?}");
    text.replacen(from, to, 1)
}

/// What the checker says about Alder with `from` changed to `to`.
fn alder(from: &str, to: &str) -> Vec<PackError> {
    let text = change(&good("assets/vehicles/alder.ron"), from, to);
    match read::parse::<RawVehicle>(&text, "alder.ron") {
        Err(e) => e.0,
        Ok(raw) => check_car::car(raw, "alder", "alder.ron").err().unwrap_or_default(),
    }
}

/// The only fault.
fn only(mut errors: Vec<PackError>) -> PackError {
    assert_eq!(errors.len(), 1, "{errors:#?}");
    errors.remove(0)
}

macro_rules! refused {
    ($error:expr, $pattern:pat $(if $guard:expr)?, $($says:literal),+) => {{
        let e = $error;
        let said = e.to_string();
        assert!(matches!(&e.fault, $pattern $(if $guard)?), "{e:#?}");
        $( assert!(said.contains($says), "{said:?} does not say {:?}", $says); )+
    }};
}

/// A copy of our files in a folder of its own, with one file changed; what the library then says.
fn copied(file: &str, from: &str, to: &str, job: &str) -> Vec<PackError> {
    let dir = tempfile::tempdir().unwrap();
    copy(&root().join("assets"), &dir.path().join("assets"));
    copy(&root().join("scenarios"), &dir.path().join("scenarios"));
    let path = dir.path().join(file);
    std::fs::write(&path, change(&std::fs::read_to_string(&path).unwrap(), from, to)).unwrap();
    let result = Library::open(dir.path()).and_then(|l| l.job(job));
    result.err().map(|e| e.0).unwrap_or_default()
}

fn copy(from: &Path, to: &Path) {
    std::fs::create_dir_all(to).unwrap();
    for entry in std::fs::read_dir(from).unwrap() {
        let entry = entry.unwrap();
        let target = to.join(entry.file_name());
        if entry.file_type().unwrap().is_dir() {
            copy(&entry.path(), &target);
        } else {
            std::fs::copy(entry.path(), target).unwrap();
        }
    }
}

use refused;
