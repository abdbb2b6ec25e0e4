//! Everything of the binary `pinhole`: command line, text bench, window. A library only so that panels can
//! be tested from outside. Every error becomes one clear message and an exit code, never a panic.

#![cfg_attr(
    feature = "window",
    expect(
        clippy::too_many_arguments,
        clippy::type_complexity,
        reason = "Bevy's systems take what they need as arguments, and say it in types"
    )
)]

mod bench;
mod cli;
mod mark;
mod mend;
mod output;
mod places;
mod replay;
mod screen;
mod slips;
mod text;
mod trace;
mod trace_circuit;
mod trace_plot;
#[cfg(feature = "window")]
pub mod window;

use std::io::{self, Write as _};
use std::path::Path;
use std::process::ExitCode;

use anyhow::Context as _;
use assess::files::{self, Doing};
use assess::quote;
use clap::Parser as _;
pub use cli::Places;
use cli::{Cli, Command, TextArgs};
use screen::Screen;
use slips::Slip;

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
    let ended = match Cli::try_parse() {
        Ok(cli) => run(&cli).map_err(|error| message(&error)),
        Err(error) => match slips::slip(&error) {
            Slip::Page(page) => {
                // A screen never fails; what does is told at the end.
                write!(Screen::new(), "{page}").map(|()| Verdict::Pass).map_err(|e| e.to_string())
            }
            Slip::Wrong(said) => Err(said),
        },
    };
    let trouble = screen::trouble();
    for said in [ended.as_ref().err(), trouble.as_ref()].into_iter().flatten() {
        // Standard error may be closed too; then the exit code alone must do.
        drop(writeln!(io::stderr(), "error: {said}"));
    }
    match ended {
        Ok(_) if trouble.is_some() => ExitCode::from(2),
        Ok(Verdict::Pass) => ExitCode::SUCCESS,
        Ok(Verdict::Fail) => ExitCode::from(1),
        Ok(Verdict::Trouble) | Err(_) => ExitCode::from(2),
    }
}

/// The causes of an error in one sentence; a cause that its parent quotes already is not said twice.
fn message(error: &anyhow::Error) -> String {
    let mut text = String::new();
    for cause in error.chain() {
        let said = match cause.downcast_ref::<io::Error>() {
            // The system's own words, unless they stand there in ours.
            Some(e) if [Doing::Read, Doing::Write].iter().any(|d| text.contains(&files::system(e, *d))) => {
                continue;
            }
            Some(e) => files::system(e, Doing::Write),
            None => cause.to_string(),
        };
        if text.contains(&said) {
            continue;
        }
        if !text.is_empty() {
            text.push_str(": ");
        }
        text.push_str(&said);
    }
    quote::escaped(&text)
}

/// An error about a file, with the file's name unless it says it already.
pub(crate) fn about<E: Into<anyhow::Error>>(path: &Path) -> impl FnOnce(E) -> anyhow::Error {
    let name = quote::path(path).to_string();
    move |error| {
        let error = error.into();
        if message(&error).contains(&name) { error } else { error.context(name) }
    }
}

/// A script's text, from a file or, for `-`, from standard input.
pub(crate) fn script(path: &Path) -> anyhow::Result<String> {
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

fn run(cli: &Cli) -> anyhow::Result<Verdict> {
    let mut out = Screen::new();
    let verdict = match &cli.command {
        None => {
            #[cfg(feature = "window")]
            match window::run(&cli.places, &cli::WindowArgs::default())? {
                Ok(()) => return Ok(Verdict::Pass),
                Err(why) => writeln!(out, "No window: {why}. Here is the text bench.")?,
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
            text::run(&mut out, &cli.places, &args, true)?
        }
        Some(Command::Text(args)) => text::run(&mut out, &cli.places, args, args.job.is_none())?,
        Some(Command::Replay(args)) => replay::run(&mut out, &cli.places, args)?,
        Some(Command::Trace(args)) => trace::run(&mut out, &cli.places, args)?,
        Some(Command::Mark(args)) => mark::run(&mut out, &cli.places, args)?,
        Some(Command::Mend(args)) => mend::run(&mut out, args)?,
        #[cfg(feature = "window")]
        Some(Command::Window(args)) => {
            window::run(&cli.places, args)??;
            Verdict::Pass
        }
        #[cfg(feature = "window")]
        Some(Command::Shot(args)) => {
            window::shot::run(&cli.places, args)?;
            Verdict::Pass
        }
        Some(Command::Bench(args)) if args.window => {
            #[cfg(feature = "window")]
            window::bench::run(&mut out, &cli.places, args)?;
            #[cfg(not(feature = "window"))]
            anyhow::bail!("--window: this program was built without the window (feature window)");
            #[cfg(feature = "window")]
            Verdict::Pass
        }
        Some(Command::Bench(args)) => {
            bench::run(&mut out, &cli.places, args)?;
            Verdict::Pass
        }
    };
    out.flush()?;
    Ok(verdict)
}
