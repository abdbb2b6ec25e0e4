//! The binary `pinhole` on top of `front` and `window`: command line and text bench. Every error becomes one clear
//! message and an exit code, never a panic.

mod bench;
mod cli;
mod many;
mod mark;
mod mark_table;
mod mend;
mod override_mark;
mod pages;
mod prove;
mod replay;
mod slips;
mod test_list;
mod text;
mod tongue;
mod trace;
mod trace_circuit;
mod trace_plot;

use std::io::{self, Write as _};
use std::process::ExitCode;

use clap::{CommandFactory as _, FromArgMatches as _};
use cli::{Cli, Command, TextArgs};
use front::message::message_in;
use front::screen::{self, Screen};
use front::words::Words;
use slips::Slip;
use tongue::say;

/// How it ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Verdict {
    /// Done, or pass: exit code 0.
    Pass,
    /// Done, but fail: exit code 1.
    Fail,
    /// Done as far as possible; what could not be done has been said: exit code 2.
    Trouble,
}

/// Reads the command line, does what it says, tells how it ended. The exit code is that of what was done, whether
/// or not anybody read what was shown; a full disk behind standard output makes it 2, after the work.
#[must_use]
pub fn main() -> ExitCode {
    let (words, wrong) = tongue::words(std::env::args_os());
    let command = pages::in_language(Cli::command(), &words);
    let parsed = command.try_get_matches().and_then(|matches| Cli::from_arg_matches(&matches));
    let ended = match parsed {
        Ok(cli) => wrong.map_or_else(|| run(&words, &cli), Err).map_err(|error| message_in(&words, &error)),
        Err(error) => match slips::slip(&error) {
            Slip::Page(page) => {
                // A screen never fails; what does is told at the end.
                write!(Screen::new(), "{page}").map(|()| Verdict::Pass).map_err(|e| e.to_string())
            }
            Slip::Wrong(said) => Err(words.sentence(&said)),
        },
    };
    let trouble = screen::trouble().map(|said| words.sentence(&said));
    for said in [ended.as_ref().err(), trouble.as_ref()].into_iter().flatten() {
        // Standard error may be closed too; then the exit code alone must do.
        drop(writeln!(io::stderr(), "{}", say!(words, "error-is", what = said)));
    }
    match ended {
        Ok(_) if trouble.is_some() => ExitCode::from(2),
        Ok(Verdict::Pass) => ExitCode::SUCCESS,
        Ok(Verdict::Fail) => ExitCode::from(1),
        Ok(Verdict::Trouble) | Err(_) => ExitCode::from(2),
    }
}

fn run(words: &Words, cli: &Cli) -> anyhow::Result<Verdict> {
    let mut out = Screen::new();
    let verdict = match &cli.command {
        None => {
            #[cfg(feature = "window")]
            match window::run(&cli.places, &window::args::WindowArgs::in_language(cli.lang.clone()))? {
                Ok(()) => return Ok(Verdict::Pass),
                Err(why) => writeln!(
                    out,
                    "{}",
                    say!(words, "bench-no-window", why = words.sentence(&why.sentence()))
                )?,
            }
            let args = TextArgs {
                job: None,
                script: None,
                attempt: None,
                seed: None,
                seat: None,
                new: false,
                resume: false,
            };
            text::run(&mut out, words, &cli.places, &args, true)?
        }
        Some(Command::Text(args)) => text::run(&mut out, words, &cli.places, args, args.job.is_none())?,
        Some(Command::Replay(args)) => replay::run(&mut out, words, &cli.places, args)?,
        Some(Command::Trace(args)) => trace::run(&mut out, words, &cli.places, args)?,
        Some(Command::Mark(args)) => mark::run(&mut out, words, &cli.places, args)?,
        Some(Command::Override(args)) => override_mark::run(&mut out, words, &cli.places, args)?,
        Some(Command::Mend(args)) => mend::run(&mut out, words, args)?,
        Some(Command::Prove(args)) => prove::run(&mut out, words, &cli.places, args)?,
        Some(Command::Tests(args)) => test_list::run(&mut out, words, &cli.places, args)?,
        #[cfg(feature = "window")]
        Some(Command::Window(args)) => {
            window::run(&cli.places, args)?.map_err(|why| why.sentence())?;
            Verdict::Pass
        }
        #[cfg(feature = "window")]
        Some(Command::Shot(args)) => {
            window::shot::run(&cli.places, args)?;
            Verdict::Pass
        }
        Some(Command::Bench(args)) if args.window => {
            #[cfg(feature = "window")]
            window::bench::run(&mut out, words, &cli.places, &args.in_window)?;
            #[cfg(not(feature = "window"))]
            anyhow::bail!(without_window("--window"));
            #[cfg(feature = "window")]
            Verdict::Pass
        }
        Some(Command::Bench(args)) => {
            bench::run(&mut out, words, &cli.places, args)?;
            Verdict::Pass
        }
    };
    out.flush()?;
    Ok(verdict)
}

/// Why what was asked for is not there.
#[cfg(not(feature = "window"))]
pub(crate) fn without_window(typed: &str) -> assess::locale::sentence::Sentence {
    assess::sentence!(
        "slip-without-window",
        "{typed}: this program was built without the window (feature window)",
        typed = typed
    )
}
