//! Scripts of plain words.

use std::io;
use std::path::Path;

use anyhow::Context as _;
use assess::{files, quote};

/// A script's text, from a file or, for `-`, from standard input.
///
/// # Errors
/// It cannot be read, or is a pipe that was named as a file.
pub fn read(path: &Path) -> anyhow::Result<String> {
    if ["-", "/dev/stdin"].iter().any(|stream| path == Path::new(stream)) {
        return Ok(files::read_stream(io::stdin().lock(), Path::new("standard input"), files::SCRIPT)?);
    }
    match files::read_text(path, files::SCRIPT) {
        Err(files::FileError::NotRegular { what: "a pipe", .. }) => anyhow::bail!(
            "the script {} is a pipe, not a file; to send words through a pipe: … | pinhole text JOB --script -",
            quote::path(path)
        ),
        read => read.context("the script cannot be used"),
    }
}
