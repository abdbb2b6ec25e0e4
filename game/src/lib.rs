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
mod places;
mod replay;
mod text;
mod trace;
mod trace_circuit;
mod trace_plot;
#[cfg(feature = "window")]
pub mod window;

use std::io::{self, Write as _};
use std::process::ExitCode;

use clap::Parser as _;
pub use cli::Places;
use cli::{Cli, Command, TextArgs};

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

/// Reads the command line, does what it says, tells how it ended.
#[must_use]
pub fn main() -> ExitCode {
    // Exits by itself on --help (0) and on a slip (2).
    let cli = Cli::parse();
    match run(&cli) {
        Ok(Verdict::Pass) => ExitCode::SUCCESS,
        Ok(Verdict::Fail) => ExitCode::from(1),
        Ok(Verdict::Trouble) => ExitCode::from(2),
        // Whoever read the output has gone: nobody is left to tell.
        Err(error) if is_broken_pipe(&error) => ExitCode::SUCCESS,
        Err(error) => {
            // Standard error may be closed too; then the exit code alone must do.
            drop(writeln!(io::stderr(), "error: {}", message(&error)));
            ExitCode::from(2)
        }
    }
}

/// The causes of an error in one sentence; a cause that its parent quotes already is not said twice.
fn message(error: &anyhow::Error) -> String {
    let mut text = String::new();
    for cause in error.chain() {
        let said = cause.to_string();
        if text.contains(&said) {
            continue;
        }
        if !text.is_empty() {
            text.push_str(": ");
        }
        text.push_str(&said);
    }
    text
}

fn is_broken_pipe(error: &anyhow::Error) -> bool {
    error.downcast_ref::<io::Error>().is_some_and(|e| e.kind() == io::ErrorKind::BrokenPipe)
}

fn run(cli: &Cli) -> anyhow::Result<Verdict> {
    let mut out = io::stdout();
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
