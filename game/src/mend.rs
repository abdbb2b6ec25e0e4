//! `pinhole mend`: keeps what is whole of a damaged attempt.

use std::io::Write;
use std::path::Path;

use assess::attempt::clock::Clock;
use assess::attempt::mend;
use assess::locale::quote;
use front::words::Words;

use crate::Verdict;
use crate::cli::MendArgs;
use crate::tongue::say;

/// Runs the command.
pub(crate) fn run(out: &mut dyn Write, words: &Words, args: &MendArgs) -> anyhow::Result<Verdict> {
    if !file(out, words, &args.attempt)? {
        let name = quote::path(&args.attempt).to_string();
        writeln!(out, "{}", say!(words, "mend-nothing", file = name))?;
    }
    Ok(Verdict::Pass)
}

/// Mends a file and says what became of it; whether there was anything to mend.
pub(crate) fn file(out: &mut dyn Write, words: &Words, path: &Path) -> anyhow::Result<bool> {
    let Some(mended) = mend::mend(path, &Clock::system())? else { return Ok(false) };
    let name = |path| quote::path(path).to_string();
    writeln!(out, "{}", say!(words, "mend-why", file = name(path), why = words.sentence(&mended.why)))?;
    let lines = say!(words, "count-lines", n = mended.repair.dropped_lines);
    let bytes = mended.repair.dropped_bytes;
    writeln!(out, "{}", say!(words, "mend-kept", n = mended.actions, lines = lines, bytes = bytes))?;
    writeln!(out, "{}", say!(words, "mend-original", file = name(&mended.original)))?;
    Ok(true)
}
