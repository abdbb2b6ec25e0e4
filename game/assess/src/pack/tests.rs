//! Tests of the checker.

use std::path::{Path, PathBuf};

use super::Library;

/// The project's root.
fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

#[test]
fn everything_under_assets_and_scenarios_loads() {
    let library = Library::open(&root()).unwrap_or_else(|e| panic!("{e}"));
    let jobs = library.check_all().unwrap_or_else(|e| panic!("{e}"));
    assert!(!jobs.is_empty());
}
