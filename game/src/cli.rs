//! The command line: what can be asked of `pinhole`, with an example on each page.

use std::path::PathBuf;

use assess::attempt::Seed;
use clap::{Args, Parser, Subcommand};

/// A workshop in which the air is computed and the faults are hidden.
///
/// Learn to find faults in a car's power-brake vacuum circuit: take a job card, measure, find, repair,
/// prove, hand back, and see whether your readings entitled you to your finding.
#[derive(Debug, Parser)]
#[command(
    name = "pinhole",
    version,
    after_help = "Examples:\n  pinhole                                     take a job\n  pinhole text \
                  first-shift/hum-at-the-lights  take this one\n  pinhole mark my.attempt --html mark.html\n\n\
                  Exit codes: 0 done or pass, 1 done but fail, 2 bad input or fault.\n\
                  The vehicle maker's data, local rules and licensed practice come before this program."
)]
pub(crate) struct Cli {
    #[command(flatten)]
    pub(crate) places: Places,
    #[command(subcommand)]
    pub(crate) command: Option<Command>,
}

/// Where things are.
#[derive(Args, Clone, Debug, Default)]
pub(crate) struct Places {
    /// Folder that holds assets/ and scenarios/ (else: PINHOLE_DATA, here and above, beside the program)
    #[arg(long, global = true, value_name = "DIR")]
    pub(crate) data: Option<PathBuf>,
    /// Folder for attempts (else: your own data folder)
    #[arg(long, global = true, value_name = "DIR")]
    pub(crate) attempts: Option<PathBuf>,
}

/// What can be done.
#[derive(Debug, Subcommand)]
pub(crate) enum Command {
    /// Work on a job in the terminal, in plain words
    Text(TextArgs),
    /// Run the model and write every port's pressure, flow, voltage, current, temperature
    Trace(TraceArgs),
    /// Do an attempt again and compare; with --fault: what would the same actions have shown?
    Replay(ReplayArgs),
    /// Mark one attempt or many
    Mark(MarkArgs),
}

#[derive(Args, Debug)]
#[command(
    after_help = "Examples:\n  pinhole text\n  pinhole text first-shift/hum-at-the-lights\n  pinhole text \
                  first-shift/hum-at-the-lights --script my.script --attempt my.attempt\n  pinhole text --resume\n\n\
                  A script holds one line of plain words after another, as they are typed at the prompt;\n\
                  it stops at a line that is refused, unless the line begins with try.\n\
                  Words piped in go on after a refusal, as at the prompt.\n\
                  With a script the exit code is 0 for competent, 1 for not yet competent or unfinished."
)]
pub(crate) struct TextArgs {
    /// The job, PACK/JOB
    #[arg(value_name = "JOB")]
    pub(crate) job: Option<String>,
    /// Read the words from a file
    #[arg(long, value_name = "FILE")]
    pub(crate) script: Option<PathBuf>,
    /// The attempt's file
    #[arg(long, value_name = "FILE")]
    pub(crate) attempt: Option<PathBuf>,
    /// Draw tolerances and instrument errors from this (1 to 32 hexadecimal digits)
    #[arg(long, value_name = "HEX")]
    pub(crate) seed: Option<Seed>,
    /// Begin a new attempt without asking
    #[arg(long, conflicts_with = "resume")]
    pub(crate) new: bool,
    /// Carry the unfinished attempt on without asking
    #[arg(long, conflicts_with_all = ["seed"])]
    pub(crate) resume: bool,
}

#[derive(Args, Debug)]
#[command(
    after_help = "Examples:\n  pinhole trace alder --csv sound.csv --for 120 --script key-on.script\n  \
                  pinhole trace alder --fault hose_b_pinhole=0.3 --for 600 --every 1 --csv leak.csv\n\n\
                  Without a script the key is on and nobody touches anything.\n\
                  Columns: t_s; each port's kPa_abs and g/s (out of the part) or V and A (into the part);\n\
                  case temperatures in C; pedal_N and travel_mm."
)]
pub(crate) struct TraceArgs {
    /// The car
    pub(crate) car: String,
    /// A fault with its severity; may be given more than once
    #[arg(long, value_name = "ID=SEVERITY", value_parser = parse_fault)]
    pub(crate) fault: Vec<(String, f64)>,
    /// Plain words for what is done
    #[arg(long, value_name = "FILE")]
    pub(crate) script: Option<PathBuf>,
    /// Time between two lines, s
    #[arg(long, value_name = "S", default_value_t = 0.1, value_parser = parse_every)]
    pub(crate) every: f64,
    /// How long to go on after the script, s
    #[arg(long = "for", value_name = "S", default_value_t = 60, value_parser = clap::value_parser!(u32).range(0..=86_400))]
    pub(crate) for_s: u32,
    /// Where the table goes
    #[arg(long, value_name = "OUT")]
    pub(crate) csv: PathBuf,
    /// Height above the sea, m
    #[arg(long, value_name = "M", default_value_t = 0.0, allow_negative_numbers = true)]
    pub(crate) altitude: f64,
    /// Air temperature, C
    #[arg(long, value_name = "C", default_value_t = 20.0, allow_negative_numbers = true)]
    pub(crate) ambient: f64,
}

#[derive(Args, Debug)]
#[command(
    after_help = "Examples:\n  pinhole replay my.attempt\n  pinhole replay my.attempt --fault hose_m_hole=0.8\n\n\
                  A what-if is refused while the attempt is unfinished."
)]
pub(crate) struct ReplayArgs {
    /// The attempt
    pub(crate) attempt: PathBuf,
    /// What if this had been the fault? ID=SEVERITY; may be given more than once
    #[arg(long, value_name = "ID=SEVERITY", value_parser = parse_fault, conflicts_with = "sound")]
    pub(crate) fault: Vec<(String, f64)>,
    /// What if nothing had been wrong?
    #[arg(long)]
    pub(crate) sound: bool,
}

#[derive(Args, Debug)]
#[command(
    after_help = "Examples:\n  pinhole mark my.attempt\n  pinhole mark my.attempt --html mark.html\n  pinhole mark \
                  class/*.attempt --csv class.csv --json class.json\n\n\
                  The exit code is 0 when every attempt is competent, 1 when one is not."
)]
pub(crate) struct MarkArgs {
    /// The attempts
    #[arg(required = true)]
    pub(crate) attempts: Vec<PathBuf>,
    /// Write the mark sheet as a page (one attempt only)
    #[arg(long, value_name = "FILE")]
    pub(crate) html: Option<PathBuf>,
    /// Write all numbers as JSON
    #[arg(long, value_name = "FILE")]
    pub(crate) json: Option<PathBuf>,
    /// Write one line an attempt
    #[arg(long, value_name = "FILE")]
    pub(crate) csv: Option<PathBuf>,
}

fn parse_fault(text: &str) -> Result<(String, f64), String> {
    let (id, severity) =
        text.split_once('=').ok_or("expected ID=SEVERITY, for example hose_b_pinhole=0.3")?;
    let severity: f64 = severity.parse().map_err(|_| format!("{severity:?} is no number"))?;
    if severity.is_finite() {
        Ok((id.to_owned(), severity))
    } else {
        Err("the severity must be finite".to_owned())
    }
}

fn parse_every(text: &str) -> Result<f64, String> {
    let s: f64 = text.parse().map_err(|_| format!("{text:?} is no number"))?;
    if (0.01..=3600.0).contains(&s) { Ok(s) } else { Err("expected 0.01 to 3600 s".to_owned()) }
}
