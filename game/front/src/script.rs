//! Scripts of plain words.

use std::io;
use std::path::Path;

use assess::locale::quote;
use assess::{files, sentence};

/// A script's text, from a file or, for `-`, from standard input.
///
/// # Errors
/// It cannot be read, or is a pipe that was named as a file.
pub fn read(path: &Path) -> anyhow::Result<String> {
    if ["-", "/dev/stdin"].iter().any(|stream| path == Path::new(stream)) {
        return Ok(files::read_stream(io::stdin().lock(), Path::new("standard input"), files::SCRIPT)?);
    }
    match files::read_text(path, files::SCRIPT) {
        Err(files::FileError::NotRegular { what: "a pipe", .. }) => Err(anyhow::Error::new(sentence!(
            "script-pipe",
            "the script {file} is a pipe, not a file; to send words through a pipe: … | pinhole text JOB --script -",
            file = quote::path(path)
        ))),
        Err(error) => Err(anyhow::Error::new(sentence!(
            "script-unusable",
            "the script cannot be used: {why}",
            why = error.sentence()
        ))),
        Ok(text) => Ok(text),
    }
}
