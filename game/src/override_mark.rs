//! `pinhole override`: an instructor says that another total or verdict holds of a marked attempt.

use std::io::Write;

use assess::attempt::clock::Clock;
use assess::attempt::overrule::{self, OverrideError, Overruled, Ruling};
use assess::attempt::{Attempt, marked};
use assess::locale::{Naming, quote};
use assess::pack::Library;
use assess::pack::job::AfterHandBack;
use assess::report;
use front::marking::{evaluation_at, job_of};
use front::message::about;
use front::places::Places;
use front::words::Words;

use crate::Verdict;
use crate::cli::OverrideArgs;
use crate::mark_table::result_in_words;
use crate::text::show;
use crate::tongue::say;

/// Runs the command.
pub(crate) fn run(
    out: &mut dyn Write,
    words: &Words,
    at: &Places,
    args: &OverrideArgs,
) -> anyhow::Result<Verdict> {
    let ruling = Ruling {
        total: args.total,
        competent: (args.competent || args.not_yet).then_some(args.competent),
        reason: args.reason.clone(),
        by: args.by.clone(),
    };
    let overrule = || overrule::overrule(&args.attempt, &ruling, &Clock::system());
    let Overruled { mark, line, before } = match overrule() {
        Err(OverrideError::NotMarked { .. }) if keeps_quiet(out, words, at, args)? => overrule()?,
        other => other?,
    };
    let file = quote::path(&args.attempt).to_string();
    writeln!(out, "{}", say!(words, "override-written", file = file, n = before + 1))?;
    let own = result_in_words(words, mark.competent, mark.total);
    let holds =
        result_in_words(words, line.competent.unwrap_or(mark.competent), line.total.unwrap_or(mark.total));
    writeln!(out, "{}", say!(words, "override-was", mark = own))?;
    writeln!(out, "{}", say!(words, "override-now", mark = holds))?;
    for line in report::overrides(std::slice::from_ref(&line), words) {
        show::wrapped(out, "  ", &line)?;
    }
    Ok(Verdict::Pass)
}

/// Marks an attempt in a pack that tells nothing after the hand-back, whose file holds no mark so far; `false` in any other
/// pack, where somebody marks it first and looks.
fn keeps_quiet(out: &mut dyn Write, words: &Words, at: &Places, args: &OverrideArgs) -> anyhow::Result<bool> {
    let path = &args.attempt;
    let library = Library::open(&front::places::data(at)?)?;
    let attempt = Attempt::read(path)?;
    let job = job_of(&library, &attempt).map_err(about(path))?;
    if job.after_hand_back == AfterHandBack::Everything {
        return Ok(false);
    }
    writeln!(out, "{}", words.say("bench-marking"))?;
    out.flush()?;
    let sheet = evaluation_at(&attempt, &job).map_err(about(path))?.sheet(words, Naming::Typed);
    marked::keep_in(path, &attempt, &sheet)?;
    Ok(true)
}
