//! The text bench: the workshop in a terminal, in plain words.

mod begin;
mod called;
mod diagram;
mod dial;
mod next;
mod prompt;
pub(crate) mod show;

use std::io::{self, IsTerminal as _, Write};
use std::path::Path;

use anyhow::{Context as _, bail};
use assess::locale::Naming;
use assess::locale::quote;
use assess::pack::Library;
use assess::play::script::{self, ScriptError};
use assess::play::{Session, SessionError};
use assess::words::{self as plain, Ask, Said, Vocabulary};
use sim_core::observe::{Observed, ShownValue};

use crate::Verdict;
use crate::cli::TextArgs;
use crate::mark;
use crate::tongue::say;
use begin::{open, yes};
use front::places::Places;
use front::screen::Screen;
use front::words::Words;
use front::{marking, output, places};
use prompt::{Line, Lines};

/// Runs the text bench.
pub(crate) fn run(
    out: &mut dyn Write,
    words: &Words,
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
    let mut session = match open(out, words, at, &library, args, choose, script.is_some())? {
        Some(session) => session,
        None => return Ok(Verdict::Pass),
    };
    let names = script::vocabulary(&session);
    if let Some(path) = session.path() {
        writeln!(out, "{}", say!(words, "bench-attempt", file = file(path)))?;
    }
    show::card(out, words, &session)?;
    match script {
        Some(text) => play(out, words, &mut session, &text, args.script.as_deref())?,
        None => {
            writeln!(out, "{}", words.say("bench-hint"))?;
            talk(out, words, &library, &mut session, &names)?;
        }
    }
    if session.attempt().is_finished() {
        finish(out, words, &library, &mut session)
    } else {
        if let Some(path) = session.path() {
            writeln!(out, "{}", words.say("bench-not-handed-back"))?;
            // As it was called this time: by name, or by its path under target/.
            let program = std::env::args().next().unwrap_or_else(|| "pinhole".to_owned());
            writeln!(out, "  {program} text --attempt {} --resume", quote::path(path))?;
        }
        Ok(if args.script.is_some() { Verdict::Fail } else { Verdict::Pass })
    }
}

/// A file as it is shown.
fn file(path: &Path) -> String {
    quote::path(path).to_string()
}

/// Plays a script, showing all of it.
fn play(
    out: &mut dyn Write,
    words: &Words,
    session: &mut Session,
    text: &str,
    script: Option<&Path>,
) -> anyhow::Result<()> {
    let names = script::vocabulary(session);
    for (i, full) in text.lines().enumerate() {
        let (line, may_fail) = match full.trim().strip_prefix("try ") {
            Some(rest) => (rest.trim(), true),
            None => (full.trim(), false),
        };
        let place = || script.map_or_else(|| words.say("bench-the-script"), file);
        let view = session.view();
        let said = plain::parse(line, &names, &view.readings)
            .map_err(|source| ScriptError::Words {
                line: i + 1,
                text: line.to_owned(),
                source: Box::new(source),
            })
            .with_context(place)?;
        if said == Said::Nothing {
            continue;
        }
        writeln!(out, "{}{line}", show::prompt(words, &view))?;
        if let Said::Ask(ask) = &said {
            if *ask == Ask::Quit {
                break;
            }
            match ask {
                Ask::Next => next::next(out, words, session)?,
                ask => answer(out, words, session, ask)?,
            }
            continue;
        }
        let Some(action) = script::action_of(session, &said) else { continue };
        let from = view.station;
        let outcome = session.act(&action).with_context(place)?;
        show::outcome(out, words, session, from, &action, &outcome)?;
        if let Some(why) = &outcome.refused
            && !may_fail
        {
            let error =
                ScriptError::Refused { line: i + 1, text: line.to_owned(), why: Box::new(why.clone()) };
            return Err(anyhow::Error::msg(error.told(&show::speech(words, session)))).with_context(place);
        }
    }
    Ok(())
}

/// Talks until the car is handed back, the person leaves or the pipe ends.
fn talk(
    out: &mut dyn Write,
    words: &Words,
    library: &Library,
    session: &mut Session,
    names: &Vocabulary,
) -> anyhow::Result<()> {
    let mut lines = Lines::open(Some(names), session.path())?;
    loop {
        let view = session.view();
        let prompt = show::prompt(words, &view);
        out.flush()?;
        // Words in a pipe are all there; whoever types has to see what comes of it.
        if Screen::new().is_gone() && io::stdin().is_terminal() {
            bail!("{}", words.say("bench-screen-gone"));
        }
        let line = match lines.next(words, &prompt)? {
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
        let said = match plain::parse(&line, names, &view.readings) {
            Ok(said) => said,
            Err(error) => {
                show::not_understood(out, words, &error)?;
                continue;
            }
        };
        match said {
            Said::Nothing => {}
            Said::NoteShown { .. } => {
                show::wrapped(out, "  ", &words.say("bench-note-shown"))?;
            }
            Said::Ask(Ask::Quit) => return Ok(()),
            Said::Ask(Ask::Mark) if session.attempt().is_finished() => {
                finish(out, words, library, session)?;
            }
            Said::Ask(Ask::Next) => next::next(out, words, session)?,
            Said::Ask(ask) => answer(out, words, session, &ask)?,
            Said::Do(action) => {
                if matches!(action, sim_core::action::Action::HandBack)
                    && !ready(out, words, session, &mut lines)?
                {
                    continue;
                }
                let outcome = match session.act(&action) {
                    Ok(outcome) => outcome,
                    // Nothing was done: there is something else to do.
                    Err(SessionError::Beyond(beyond)) => {
                        let why = words.sentence(&beyond.sentence());
                        show::wrapped(out, "  ", &say!(words, "bench-beyond", why = why))?;
                        continue;
                    }
                    Err(error) => return Err(error.into()),
                };
                show::outcome(out, words, session, view.station, &action, &outcome)?;
                let given_up = outcome.reading.as_ref().is_some_and(|r| {
                    matches!(r.what, Observed::Interval { .. }) && matches!(r.shown, ShownValue::Off(_))
                });
                if given_up {
                    show::wrapped(out, "  ", &words.say("bench-given-up"))?;
                }
                if let Some(reading) = &outcome.reading
                    && reading.id == 1
                {
                    let hint = match session.written_as_shown(reading) {
                        Some(written) => say!(words, "bench-first-number", unit = written.unit),
                        None => words.say("bench-first-sense"),
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
fn ready(out: &mut dyn Write, words: &Words, session: &Session, lines: &mut Lines) -> anyhow::Result<bool> {
    if !lines.is_typed() {
        return Ok(true);
    }
    let view = session.view();
    if view.findings.is_empty() {
        show::wrapped(out, "  ", &words.say("bench-no-finding"))?;
    }
    show::not_noted(out, words, session)?;
    yes(words, lines, &format!("  {}", words.say("bench-ask-hand-back")))
}

/// Answers a question to the bench.
fn answer(out: &mut dyn Write, words: &Words, session: &Session, ask: &Ask) -> io::Result<()> {
    match ask {
        Ask::Help(None) => {
            write!(out, "{}", plain::overview(&script::vocabulary(session), words))
        }
        Ask::Help(Some(word)) => match plain::help(word, &script::vocabulary(session), words) {
            Ok(page) => page.lines().try_for_each(|l| writeln!(out, "  {l}")),
            Err(error) => show::not_understood(out, words, &error),
        },
        Ask::Look => show::look(out, words, session),
        Ask::Part(id) => show::part(out, words, session, id),
        Ask::Car => diagram::car(out, words, &session.job().car, &session.view()),
        Ask::Tools(one) => show::tools(out, words, session, one.as_deref()),
        Ask::Store => show::store(out, words, session),
        Ask::Notebook => show::notebook(out, words, session),
        Ask::List => show::not_noted(out, words, session),
        Ask::Record => show::record(out, words, session),
        // Asked and written down before it comes here.
        Ask::Next => Ok(()),
        Ask::Mark => writeln!(out, "  {}", words.say("bench-mark-later")),
        Ask::Quit => Ok(()),
    }
}

/// The mark sheet, on the screen and as a page beside the attempt.
fn finish(
    out: &mut dyn Write,
    words: &Words,
    library: &Library,
    session: &mut Session,
) -> anyhow::Result<Verdict> {
    if session.is_handed_in() {
        writeln!(out, "\n{}", words.say("bench-handed-in"))?;
        if let Some(path) = session.path() {
            show::wrapped(out, "", &words.say("bench-handed-in-what"))?;
            writeln!(out, "  {}", quote::path(path))?;
        }
        return Ok(Verdict::Pass);
    }
    writeln!(out, "\n{}", words.say("bench-marking"))?;
    out.flush()?;
    let evaluation =
        marking::evaluation_of(library, session.attempt()).map_err(|e| match session.path() {
            Some(path) => front::message::about(path)(e),
            None => e,
        })?;
    let sheet = evaluation.sheet(words, Naming::Typed);
    write!(out, "{}", assess::report::terminal::render(&sheet, words))?;
    let kept = session.keep_mark(&sheet);
    if let Some(told) = marking::told(&kept) {
        show::wrapped(out, "", &words.sentence(&told))?;
    }
    if let Some(path) = session.path() {
        let page = output::sheet_output(path).and_then(|output| {
            let page = output.path().to_owned();
            output.write(assess::report::html::render(&sheet, words).as_bytes()).map(|()| page)
        });
        let page = page.with_context(|| say!(words, "bench-page-failed", file = file(path)))?;
        writeln!(out, "\n{}", say!(words, "bench-page", file = file(&page)))?;
    }
    writeln!(out, "{}", words.say("bench-over"))?;
    Ok(mark::verdict(std::slice::from_ref(&sheet)))
}
