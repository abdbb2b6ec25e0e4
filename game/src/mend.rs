//! `pinhole mend`: keeps what is whole of a damaged attempt.

use std::io::Write;
use std::path::Path;

use assess::attempt::mend;
use assess::clock::Clock;
use assess::quote;

use crate::Verdict;
use crate::cli::MendArgs;

/// Runs the command.
pub(crate) fn run(out: &mut dyn Write, args: &MendArgs) -> anyhow::Result<Verdict> {
    if !file(out, &args.attempt)? {
        writeln!(out, "{}: nothing is wrong with it; nothing was changed.", quote::path(&args.attempt))?;
    }
    Ok(Verdict::Pass)
}

/// Mends a file and says what became of it; whether there was anything to mend.
pub(crate) fn file(out: &mut dyn Write, path: &Path) -> anyhow::Result<bool> {
    let Some(mended) = mend::mend(path, &Clock::system())? else { return Ok(false) };
    let lines = mended.repair.dropped_lines;
    writeln!(out, "{}: {}", quote::path(path), mended.why)?;
    writeln!(
        out,
        "Mended: {} actions are kept, {lines} line{} ({} bytes) dropped; the mark sheet will say so.",
        mended.actions,
        if lines == 1 { "" } else { "s" },
        mended.repair.dropped_bytes
    )?;
    writeln!(out, "The damaged file is kept as {}", quote::path(&mended.original))?;
    Ok(true)
}
