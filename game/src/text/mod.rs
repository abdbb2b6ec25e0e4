//! The text bench: the workshop in a terminal, in plain words.

mod diagram;
mod dial;
mod prompt;
pub(crate) mod show;

use std::io::{self, IsTerminal as _, Write};
use std::path::Path;
use std::sync::Arc;

use anyhow::{Context as _, bail};
use assess::attempt::{Attempt, AttemptError, Seed, SeedFrom};
use assess::clock::{By, Opening};
use assess::pack::Library;
use assess::quote;
use assess::script::{self, ScriptError};
use assess::session::{Begin, Session, SessionError};
use assess::words::{self, Ask, Said, Vocabulary};
use sim_core::observe::{Observed, ShownValue};

use crate::Verdict;
use crate::cli::TextArgs;
use crate::mark;
use front::places::Places;
use front::screen::Screen;
use front::{marking, output, places};
use prompt::{Line, Lines};

/// Job that opens when none is named: the first of this pack.
const FIRST_PACK: &str = "first-shift";

/// Runs the text bench.
pub(crate) fn run(
    out: &mut dyn Write,
    at: &Places,
    args: &TextArgs,
    choose: bool,
) -> anyhow::Result<Verdict> {
    let library = Library::open(&places::data(at)?)?;
    let script = match &args.script {
        Some(file) => Some(front::script::read(file)?),
        None => None,
    };
    // Before anything is asked, so that a slip in the name is told at once.
    if let Some(name) = &args.job {
        library.job(name)?;
    }
    let mut session = match open(out, at, &library, args, choose, script.is_some())? {
        Some(session) => session,
        None => return Ok(Verdict::Pass),
    };
    let names = script::vocabulary(&session);
    if let Some(path) = session.path() {
        writeln!(out, "Attempt: {}", quote::path(path))?;
    }
    show::card(out, &session)?;
    match script {
        Some(text) => play(out, &mut session, &text, args.script.as_deref())?,
        None => {
            writeln!(out, "Type help for the words, car for the car, tools for the tools.")?;
            talk(out, &library, &mut session, &names)?;
        }
    }
    if session.attempt().is_finished() {
        finish(out, &library, &mut session)
    } else {
        if let Some(path) = session.path() {
            writeln!(out, "The car is not handed back. Carry on with:")?;
            // As it was called this time: by name, or by its path under target/.
            let program = std::env::args().next().unwrap_or_else(|| "pinhole".to_owned());
            writeln!(out, "  {program} text --attempt {} --resume", quote::path(path))?;
        }
        Ok(if args.script.is_some() { Verdict::Fail } else { Verdict::Pass })
    }
}

/// By which way actions come in.
fn opening(lines: &Lines, scripted: bool) -> Opening {
    Opening::now(match (scripted, lines.is_typed()) {
        (true, _) => By::Script,
        (false, true) => By::Hand,
        (false, false) => By::Pipe,
    })
}

/// Begins or carries on; `None` when the person at the prompt thought better of it.
fn open(
    out: &mut dyn Write,
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
    if let Some(file) = named {
        let carry_on = args.resume
            || (ask && !args.new && yes(&mut lines, &format!("Carry {} on?", quote::path(file)))?);
        if carry_on {
            return resume(out, library, file, args, &opening, ask.then_some(&mut lines)).map(Some);
        }
        if !args.new && !ask {
            bail!("{} exists already; carry it on with --resume, or name another file", quote::path(file));
        }
        if ask && !args.new {
            return Ok(None);
        }
    } else if let Some(file) = args.attempt.as_ref().filter(|_| args.resume) {
        bail!("{}: there is no such attempt to carry on", quote::path(file));
    }
    if args.attempt.is_none() && !args.new {
        let folder = places::attempts(at)?;
        let open_ones = places::unfinished(&folder, args.job.as_deref(), args.seat.as_deref());
        match open_ones.last().map(|one| &one.path) {
            Some(file) if args.resume => {
                return resume(out, library, file, args, &opening, None).map(Some);
            }
            Some(file) if ask => {
                let question = format!("There is an unfinished attempt, {}. Carry it on?", quote::path(file));
                if yes(&mut lines, &question)? {
                    return resume(out, library, file, args, &opening, None).map(Some);
                }
            }
            Some(file) => {
                writeln!(
                    out,
                    "(An unfinished attempt waits in {}; carry it on with --resume.)",
                    quote::path(file)
                )?;
            }
            None if args.resume => {
                bail!("there is no unfinished attempt of yours in {}", quote::path(&folder))
            }
            None => {}
        }
    }
    let name = match &args.job {
        Some(name) => name.clone(),
        None => match pick(out, library, &mut lines, choose && ask)? {
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
        Some(file) => {
            output::new_attempt(file)?;
            Session::start(job, &begin, file)?
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
    library: &Library,
    file: &Path,
    args: &TextArgs,
    opening: &Opening,
    lines: Option<&mut Lines>,
) -> anyhow::Result<Session> {
    if let Some(seat) = &args.seat
        && Attempt::read(file).is_ok_and(|attempt| attempt.header.seat.as_ref() != Some(seat))
    {
        bail!("{} is not of the seat {}", quote::path(file), quote::quoted(seat));
    }
    let carry_on = || {
        Session::resume::<anyhow::Error>(file, opening, |name| {
            if let Some(wanted) = args.job.as_deref()
                && wanted != name
            {
                bail!("{} is an attempt at {}, not at {wanted}", quote::path(file), quote::bare(name));
            }
            Ok(Arc::new(library.job(name)?))
        })
        .map_err(front::message::about(file))
    };
    let (session, torn) = match (carry_on(), lines) {
        (Err(error), Some(lines)) if is_damaged(&error) => {
            show::wrapped(out, "", &front::message::message(&error))?;
            if !yes(lines, "Mend it, and carry on from the last whole action?")? {
                return Err(error);
            }
            crate::mend::file(out, file)?;
            carry_on()?
        }
        (other, _) => other?,
    };
    if torn {
        writeln!(
            out,
            "The last line of the attempt was torn off when the program stopped; that action is lost."
        )?;
    }
    let n = session.attempt().steps.len();
    writeln!(out, "Carried on after {n} action{}.", if n == 1 { "" } else { "s" })?;
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

fn yes(lines: &mut Lines, question: &str) -> anyhow::Result<bool> {
    let mut prompt = format!("{question} [Y/n] ");
    loop {
        let answer = match lines.next(&prompt)? {
            Line::Text(answer) => answer,
            Line::Bad(_) => String::from("?"),
            Line::End => return Ok(false),
        };
        match answer.trim().to_lowercase().as_str() {
            "" | "y" | "yes" => return Ok(true),
            "n" | "no" => return Ok(false),
            _ => prompt = "Type y for yes or n for no. [Y/n] ".to_owned(),
        }
    }
}

/// The job to open: asked for at a terminal, else the first.
fn pick(
    out: &mut dyn Write,
    library: &Library,
    lines: &mut Lines,
    ask: bool,
) -> anyhow::Result<Option<String>> {
    let packs = library.packs()?;
    let first =
        packs.iter().find(|p| p.id == FIRST_PACK).or_else(|| packs.first()).context("there is no pack")?;
    let default = format!("{}/{}", first.id, first.jobs.first().context("the pack has no job")?);
    if !ask {
        return Ok(Some(default));
    }
    let all: Vec<String> =
        packs.iter().flat_map(|p| p.jobs.iter().map(move |j| format!("{}/{j}", p.id))).collect();
    writeln!(out, "Jobs:")?;
    for (i, name) in all.iter().enumerate() {
        writeln!(out, "  {}  {}", i + 1, library.job(name)?.title)?;
    }
    loop {
        let line = match lines.next("Which one? [1] ")? {
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
        writeln!(out, "Type a number from 1 to {}.", all.len())?;
    }
}

/// Plays a script, showing all of it.
fn play(out: &mut dyn Write, session: &mut Session, text: &str, file: Option<&Path>) -> anyhow::Result<()> {
    let names = script::vocabulary(session);
    for (i, full) in text.lines().enumerate() {
        let (line, may_fail) = match full.trim().strip_prefix("try ") {
            Some(rest) => (rest.trim(), true),
            None => (full.trim(), false),
        };
        let place = || file.map_or_else(|| "script".to_owned(), |f| quote::path(f).to_string());
        let view = session.view();
        let said = words::parse(line, &names, &view.readings)
            .map_err(|source| ScriptError::Words { line: i + 1, text: line.to_owned(), source })
            .with_context(place)?;
        if said == Said::Nothing {
            continue;
        }
        writeln!(out, "{}{line}", show::prompt(&view))?;
        if let Said::Ask(ask) = &said {
            if *ask == Ask::Quit {
                break;
            }
            answer(out, session, ask)?;
            continue;
        }
        let Some(action) = script::action_of(session, &said) else { continue };
        let from = view.station;
        let outcome = session.act(&action).with_context(place)?;
        show::outcome(out, session, from, &action, &outcome)?;
        if let Some(why) = &outcome.refused
            && !may_fail
        {
            let why = why.to_string();
            return Err(ScriptError::Refused { line: i + 1, text: line.to_owned(), why }).with_context(place);
        }
    }
    Ok(())
}

/// Talks until the car is handed back, the person leaves or the pipe ends.
fn talk(
    out: &mut dyn Write,
    library: &Library,
    session: &mut Session,
    names: &Vocabulary,
) -> anyhow::Result<()> {
    let mut lines = Lines::open(Some(names), session.path())?;
    loop {
        let view = session.view();
        let prompt = show::prompt(&view);
        out.flush()?;
        // Words in a pipe are all there; whoever types has to see what comes of it.
        if Screen::new().is_gone() && io::stdin().is_terminal() {
            bail!("nothing is shown any more, so nothing more is done; the attempt is kept");
        }
        let line = match lines.next(&prompt)? {
            Line::Text(line) => line,
            Line::Bad(why) => {
                show::wrapped(out, "  ", &why)?;
                continue;
            }
            Line::End => return Ok(()),
        };
        if !lines.is_typed() {
            writeln!(out, "{prompt}{line}")?;
        }
        let said = match words::parse(&line, names, &view.readings) {
            Ok(said) => said,
            Err(error) => {
                show::not_understood(out, &error)?;
                continue;
            }
        };
        match said {
            Said::Nothing => {}
            Said::NoteShown { .. } => {
                show::wrapped(out, "  ", "Write down what you read yourself; note shown is for scripts.")?;
            }
            Said::Ask(Ask::Quit) => return Ok(()),
            Said::Ask(Ask::Mark) if session.attempt().is_finished() => {
                finish(out, library, session)?;
            }
            Said::Ask(ask) => answer(out, session, &ask)?,
            Said::Do(action) => {
                if matches!(action, sim_core::action::Action::HandBack) && !ready(out, session, &mut lines)? {
                    continue;
                }
                let outcome = match session.act(&action) {
                    Ok(outcome) => outcome,
                    // Nothing was done: there is something else to do.
                    Err(SessionError::Beyond(beyond)) => {
                        show::wrapped(out, "  ", &format!("Not done: {beyond}."))?;
                        continue;
                    }
                    Err(error) => return Err(error.into()),
                };
                show::outcome(out, session, view.station, &action, &outcome)?;
                let given_up = outcome.reading.as_ref().is_some_and(|r| {
                    matches!(r.what, Observed::Interval { .. }) && matches!(r.shown, ShownValue::Off(_))
                });
                if given_up {
                    show::wrapped(
                        out,
                        "  ",
                        "(Given up is a reading too: type note to keep it as it stands.)",
                    )?;
                }
                if let Some(reading) = &outcome.reading
                    && reading.id == 1
                {
                    let hint = match session.written_as_shown(reading) {
                        Some(written) => format!(
                            "(Only what you note counts. Write what you read, with its unit: note … {})",
                            written.unit
                        ),
                        None => "(Only what you note counts: type note to keep it.)".to_owned(),
                    };
                    show::wrapped(out, "  ", &hint)?;
                }
                if session.attempt().is_finished() {
                    return Ok(());
                }
            }
        }
    }
}

/// Before the end: what is still missing; at a terminal, asks.
fn ready(out: &mut dyn Write, session: &Session, lines: &mut Lines) -> anyhow::Result<bool> {
    if !lines.is_typed() {
        return Ok(true);
    }
    let view = session.view();
    if view.findings.is_empty() {
        show::wrapped(out, "  ", "You have not given a finding yet (help finding).")?;
    }
    show::not_noted(out, session)?;
    yes(lines, "  Hand the car back now?")
}

/// Answers a question to the bench.
fn answer(out: &mut dyn Write, session: &Session, ask: &Ask) -> io::Result<()> {
    match ask {
        Ask::Help(None) => write!(out, "{}", words::overview()),
        Ask::Help(Some(word)) => match words::help(word) {
            Ok(page) => page.lines().try_for_each(|l| writeln!(out, "  {l}")),
            Err(error) => show::not_understood(out, &error),
        },
        Ask::Look => show::look(out, session),
        Ask::Part(id) => show::part(out, session, id),
        Ask::Car => diagram::car(out, &session.job().car, &session.view()),
        Ask::Tools(one) => show::tools(out, session, one.as_deref()),
        Ask::Store => show::store(out, session),
        Ask::Notebook => show::notebook(out, session),
        Ask::List => show::not_noted(out, session),
        Ask::Record => show::record(out, session),
        Ask::Mark => writeln!(out, "  The mark comes after hand back."),
        Ask::Quit => Ok(()),
    }
}

/// The mark sheet, on the screen and as a page beside the attempt.
fn finish(out: &mut dyn Write, library: &Library, session: &mut Session) -> anyhow::Result<Verdict> {
    if session.is_handed_in() {
        writeln!(out, "\nHanded in.")?;
        if let Some(path) = session.path() {
            show::wrapped(
                out,
                "",
                "This pack tells nothing more here. Whoever set the job marks the attempt's file:",
            )?;
            writeln!(out, "  {}", quote::path(path))?;
        }
        return Ok(Verdict::Pass);
    }
    writeln!(out, "\nThe car is handed back. Marking: your actions are done again under every fault …")?;
    out.flush()?;
    let sheet = marking::sheet_of(library, session.attempt()).map_err(|e| match session.path() {
        Some(path) => front::message::about(path)(e),
        None => e,
    })?;
    write!(out, "{}", assess::report::terminal::render(&sheet))?;
    let kept = session.keep_mark(&sheet);
    if let Some(told) = marking::told(&kept) {
        show::wrapped(out, "", &told)?;
    }
    if let Some(path) = session.path() {
        let page = output::sheet_output(path).and_then(|output| {
            let page = output.path().to_owned();
            output.write(assess::report::html::render(&sheet).as_bytes()).map(|()| page)
        });
        let page = page.with_context(|| {
            let name = quote::path(path);
            format!("the mark stands above and in {name}; for a page: pinhole mark {name} --html FILE")
        })?;
        writeln!(out, "\nThe mark sheet with its plots: {}", quote::path(&page))?;
    }
    writeln!(out, "This job is over. Run the program again for another.")?;
    Ok(mark::verdict(std::slice::from_ref(&sheet)))
}
