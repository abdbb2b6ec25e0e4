//! What tests work on: a shop with a rehearsal, its attempts in a folder that goes with the test.

use std::path::Path;

use assess::attempt::Seed;

use crate::places::Places;
use crate::shop::Shop;

/// The job that tests work on.
pub(crate) const JOB: &str = "first-shift/hum-at-the-lights";

/// A shop with a rehearsal of `job`.
pub(crate) fn shop(job: &str) -> Shop {
    let folder = tempfile::tempdir().unwrap();
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    let mut shop =
        Shop::open(&Places { data: Some(root), attempts: Some(folder.path().to_owned()) }).unwrap();
    shop.rehearse(job, Seed(1)).unwrap();
    shop
}
