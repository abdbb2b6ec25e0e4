//! How the bench begins: a new attempt, or one that is carried on.

use std::io::Write;
use std::path::Path;
use std::sync::Arc;

use anyhow::{Context as _, bail};
use assess::attempt::clock::{By, Opening};
use assess::attempt::{Attempt, AttemptError, Seed, SeedFrom};
use assess::locale::quote;
use assess::pack::Library;
use assess::play::{Begin, Session, SessionError};

use super::prompt::{Line, Lines};
use super::{file, show};
use crate::cli::TextArgs;
use crate::tongue::say;
use front::places::Places;
use front::words::Words;
use front::{output, places};

/// Job that opens when none is named: the first of this pack.
const FIRST_PACK: &str = "first-shift";

/// By which way actions come in.
fn opening(lines: &Lines, scripted: bool) -> Opening {
    Opening::now(match (scripted, lines.is_typed()) {
        (true, _) => By::Script,
        (false, true) => By::Hand,
        (false, false) => By::Pipe,
    })
}

/// Begins or carries on; `None` when the person at the prompt thought better of it.
pub(super) fn open(
    out: &mut dyn Write,
    words: &Words,
    at: &Places,
    library: &Library,
    args: &TextArgs,
    choose: bool,
    scripted: bool,
) -> anyhow::Result<Option<Session>> {
    let mut lines = Lines::open(None, None)?;
    let ask = lines.is_typed() && !scripted;
    let opening = opening(&lines, scripted);
    let named = args.attempt.as_ref().filter(|f| f.exists());
    if let Some(path) = named {
        let question = || say!(words, "bench-ask-carry-on", file = file(path));
        let carry_on = args.resume || (ask && !args.new && yes(words, &mut lines, &question())?);
        if carry_on {
            return resume(out, words, library, path, args, &opening, ask.then_some(&mut lines)).map(Some);
        }
        if !args.new && !ask {
            bail!("{}", say!(words, "bench-exists", file = file(path)));
        }
        if ask && !args.new {
            return Ok(None);
        }
    } else if let Some(path) = args.attempt.as_ref().filter(|_| args.resume) {
        bail!("{}", say!(words, "bench-no-such-attempt", file = file(path)));
    }
    if args.attempt.is_none() && !args.new {
        let folder = places::attempts(at)?;
        let open_ones = places::unfinished(&folder, args.job.as_deref(), args.seat.as_deref());
        match open_ones.last().map(|one| &one.path) {
            Some(path) if args.resume => {
                return resume(out, words, library, path, args, &opening, None).map(Some);
            }
            Some(path) if ask => {
                let question = say!(words, "bench-ask-unfinished", file = file(path));
                if yes(words, &mut lines, &question)? {
                    return resume(out, words, library, path, args, &opening, None).map(Some);
                }
            }
            Some(path) => writeln!(out, "{}", say!(words, "bench-unfinished", file = file(path)))?,
            None if args.resume => bail!("{}", say!(words, "bench-none-unfinished", folder = file(&folder))),
            None => {}
        }
    }
    let name = match &args.job {
        Some(name) => name.clone(),
        None => match pick(out, words, library, &mut lines, choose && ask)? {
            Some(name) => name,
            None => return Ok(None),
        },
    };
    let job = Arc::new(library.job(&name)?);
    let (seed, seed_from) = match args.seed {
        Some(seed) => (seed, SeedFrom::Given),
        None => (Seed::random()?, SeedFrom::Drawn),
    };
    let begin = Begin { seed, seed_from, seat: args.seat.clone(), opening };
    let session = match &args.attempt {
        Some(path) => {
            output::new_attempt(path)?;
            Session::start(job, &begin, path)?
        }
        None => {
            let start = |path: &Path| Session::start(Arc::clone(&job), &begin, path);
            places::begin_in(&places::attempts(at)?, &job.id, start)?
        }
    };
    Ok(Some(session))
}

/// Carries an attempt on; a damaged one is mended first, if whoever sits at the prompt wants that.
fn resume(
    out: &mut dyn Write,
    words: &Words,
    library: &Library,
    path: &Path,
    args: &TextArgs,
    opening: &Opening,
    lines: Option<&mut Lines>,
) -> anyhow::Result<Session> {
    if let Some(seat) = &args.seat
        && Attempt::read(path).is_ok_and(|attempt| attempt.header.seat.as_ref() != Some(seat))
    {
        let seat = quote::quoted(seat).to_string();
        bail!("{}", say!(words, "bench-other-seat", file = file(path), seat = seat));
    }
    let carry_on = || {
        Session::resume::<anyhow::Error>(path, opening, |name| {
            if let Some(wanted) = args.job.as_deref()
                && wanted != name
            {
                let name = quote::bare(name).to_string();
                bail!("{}", say!(words, "bench-other-job", file = file(path), job = name, wanted = wanted));
            }
            Ok(Arc::new(library.job(name)?))
        })
        .map_err(front::message::about(path))
    };
    let (session, torn) = match (carry_on(), lines) {
        (Err(error), Some(lines)) if is_damaged(&error) => {
            show::wrapped(out, "", &front::message::message_in(words, &error))?;
            if !yes(words, lines, &words.say("bench-ask-mend"))? {
                return Err(error);
            }
            crate::mend::file(out, words, path)?;
            carry_on()?
        }
        (other, _) => other?,
    };
    if torn {
        writeln!(out, "{}", words.say("bench-torn"))?;
    }
    writeln!(out, "{}", say!(words, "bench-carried-on", n = session.attempt().steps.len()))?;
    Ok(session)
}

/// Whether mending could help; nothing can be kept without the first line.
fn is_damaged(error: &anyhow::Error) -> bool {
    let file = error.downcast_ref::<SessionError>();
    let line = match file {
        Some(SessionError::File(
            AttemptError::Damaged { line, .. } | AttemptError::OutOfRange { line, .. },
        )) => *line,
        _ => 0,
    };
    1 < line
}

/// Asks until the answer is yes or no, in the words of the language or in English.
pub(super) fn yes(words: &Words, lines: &mut Lines, question: &str) -> anyhow::Result<bool> {
    let mut prompt = format!("{question} {} ", words.say("bench-yes-no"));
    let [yes, yes_long, no, no_long] =
        ["bench-yes", "bench-yes-long", "bench-no", "bench-no-long"].map(|key| words.say(key));
    loop {
        let answer = match lines.next(words, &prompt)? {
            Line::Text(answer) => answer,
            Line::Bad(_) => String::from("?"),
            Line::End => return Ok(false),
        };
        match answer.trim().to_lowercase().as_str() {
            "" | "y" | "yes" => return Ok(true),
            "n" | "no" => return Ok(false),
            other if [&yes, &yes_long].contains(&&other.to_owned()) => return Ok(true),
            other if [&no, &no_long].contains(&&other.to_owned()) => return Ok(false),
            _ => prompt = format!("{} ", words.say("bench-yes-or-no")),
        }
    }
}

/// The job to open: asked for at a terminal, else the first.
fn pick(
    out: &mut dyn Write,
    words: &Words,
    library: &Library,
    lines: &mut Lines,
    ask: bool,
) -> anyhow::Result<Option<String>> {
    let packs = library.packs()?;
    let first = packs.iter().find(|p| p.id == FIRST_PACK).or_else(|| packs.first());
    let first = first.with_context(|| words.say("bench-no-pack"))?;
    let job = first.jobs.first().with_context(|| words.say("bench-no-job"))?;
    let default = format!("{}/{job}", first.id);
    if !ask {
        return Ok(Some(default));
    }
    let all: Vec<String> =
        packs.iter().flat_map(|p| p.jobs.iter().map(move |j| format!("{}/{j}", p.id))).collect();
    writeln!(out, "{}", words.say("bench-jobs"))?;
    for (i, name) in all.iter().enumerate() {
        writeln!(out, "  {}  {}", i + 1, words.job(name, &library.job(name)?.title))?;
    }
    loop {
        let line = match lines.next(words, &format!("{} ", words.say("bench-which-job")))? {
            Line::Text(line) => line,
            Line::Bad(why) => why,
            Line::End => return Ok(None),
        };
        let typed = line.trim();
        if typed.is_empty() {
            return Ok(all.first().cloned());
        }
        if let Some(found) = typed.parse::<usize>().ok().and_then(|n| all.get(n.checked_sub(1)?)) {
            return Ok(Some(found.clone()));
        }
        writeln!(out, "{}", say!(words, "bench-number-of-job", n = all.len()))?;
    }
}
