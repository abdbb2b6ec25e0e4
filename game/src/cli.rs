//! The command line: what can be asked of `pinhole`, with an example on each page.

use assess::sentence;
use std::path::PathBuf;

use assess::attempt::{LONGEST_SEAT, Seed};
use assess::locale::quote;
use assess::locale::sentence::Sentence;
use assess::words::typed;
use assess::words::typed::NumberError;
use clap::{Args, Parser, Subcommand};
use front::places::Places;
#[cfg(feature = "window")]
use window::args::{ShotArgs, WindowArgs};

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
    /// Language of what is said, such as en or de (else: that of your settings, else of your system)
    #[arg(long, global = true, value_name = "TAG")]
    pub(crate) lang: Option<String>,
    #[command(subcommand)]
    pub(crate) command: Option<Command>,
}

/// Every command's name.
pub(crate) fn commands() -> Vec<String> {
    use clap::CommandFactory as _;
    Cli::command().get_subcommands().map(|c| c.get_name().to_owned()).collect()
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
    /// Say that another total or verdict holds of a marked attempt, with reasons
    Override(OverrideArgs),
    /// Keep what is whole of a damaged attempt
    Mend(MendArgs),
    /// Prove that the jobs of a pack can be done and not guessed, with their reference plans
    Prove(ProveArgs),
    /// List what can be tried at a car or in a job, with its minutes and what it needs
    Tests(TestsArgs),
    /// Open the window, on the front desk or in a job
    #[cfg(feature = "window")]
    Window(WindowArgs),
    /// Take a picture of a screen, without a display
    #[cfg(feature = "window")]
    Shot(ShotArgs),
    /// Measure the model's speed on this machine, or what the window costs
    Bench(BenchArgs),
}

#[derive(Args, Debug)]
#[command(
    after_help = "Examples:\n  pinhole text\n  pinhole text first-shift/hum-at-the-lights\n  pinhole text \
                  first-shift/hum-at-the-lights --script my.script --attempt my.attempt\n  pinhole text --resume\n\n\
                  A script holds one line of plain words after another, as they are typed at the prompt;\n\
                  it stops at a line that is refused, unless the line begins with try. --script - reads it from\n\
                  standard input.\n\
                  Words piped in go on after a refusal, as at the prompt.\n\
                  With a script the exit code is 0 for competent, 1 for not yet competent or unfinished; where the\n\
                  pack tells nothing after the hand-back, 0 for handed in."
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
    /// Who works on it, as the class knows them: a number or a name, kept in the attempt's file; with --resume,
    /// whose attempt is carried on
    #[arg(long, value_name = "NAME", value_parser = parse_seat)]
    pub(crate) seat: Option<String>,
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
                  pinhole trace alder --fault hose_b_pinhole=0.3 --for 600 --every 1 --csv leak.csv\n  \
                  pinhole trace alder --show booster.vacuum --show pump.plus_into_a --plot run.png\n\n\
                  Without a script the key is on and nobody touches anything.\n\
                  Columns: t_s; each port's kPa_abs and g/s (out of the part) or V and A (into the part);\n\
                  case temperatures in C; pedal_N and travel_mm.\n\n\
                  --circuit begins at the last change of joints, stops or parts; the run is done again\n\
                  from there, without the table's rows, and timed."
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
    #[arg(long, value_name = "S", default_value_t = 0.1, value_parser = parse_every, allow_hyphen_values = true)]
    pub(crate) every: f64,
    /// How long to go on after the script, s
    #[arg(long = "for", value_name = "S", default_value_t = 60, value_parser = parse_seconds, allow_hyphen_values = true)]
    pub(crate) for_s: u32,
    /// Where the table goes
    #[arg(long, value_name = "OUT", required_unless_present_any = ["circuit", "plot"])]
    pub(crate) csv: Option<PathBuf>,
    /// A picture of what --show names, over time (.svg or .png)
    #[arg(long, value_name = "FILE", requires = "show")]
    pub(crate) plot: Option<PathBuf>,
    /// A port (its pressure or voltage) or a column of the table; may be given more than once
    #[arg(long, value_name = "PORT", requires = "plot")]
    pub(crate) show: Vec<String>,
    /// Where the circuit's equations go as numbers, with this run's states, for another solver
    #[arg(long, value_name = "FILE")]
    pub(crate) circuit: Option<PathBuf>,
    /// The circuit's stretch begins when the script is done, and lasts --for
    #[arg(long, requires = "circuit")]
    pub(crate) circuit_after_script: bool,
    /// Height above the sea, m
    #[arg(long, value_name = "M", default_value_t = 0.0, allow_hyphen_values = true, value_parser = number)]
    pub(crate) altitude: f64,
    /// Air temperature, C
    #[arg(long, value_name = "C", default_value_t = 20.0, allow_hyphen_values = true, value_parser = number)]
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
                  class/*.attempt --csv class.csv --json class.json\n  pinhole mark class --csv class.csv\n  pinhole mark class \
                  --shard 2/4 --results shards\n  pinhole mark --collect shards --csv class.csv\n\n\
                  The first mark of an attempt is written into its file behind the hand-back, when the file may be written\n\
                  and no program has it open; a later mark is compared with it.\n\
                  The exit code is 0 when every attempt is competent, 1 when one is not, 2 when a file could not be\n\
                  marked: it is named, and the others are marked all the same. Where an instructor has overridden a\n\
                  mark, that decision counts.\n\
                  A pack that says after_hand_back: Nothing shows its marks here alone, and its attempts' files keep\n\
                  none.\n\n\
                  A folder is marked on all cores. Results are kept as they come, so that whoever stops it goes on by\n\
                  running it again; the attempts themselves are left as they are, and keep no mark. With --shard each\n\
                  machine marks its part, and --collect puts them together to the bytes that one machine would write."
)]
pub(crate) struct MarkArgs {
    /// The attempts, or one folder of them
    #[arg(required_unless_present = "collect")]
    pub(crate) attempts: Vec<PathBuf>,
    /// Of a folder: every Nth attempt in the order of their names, from the Kth on, for machines that share the work
    #[arg(long, value_name = "K/N", value_parser = parse_shard)]
    pub(crate) shard: Option<Shard>,
    /// Of a folder: where the results are kept as they come (else: marks in the folder)
    #[arg(long, value_name = "DIR")]
    pub(crate) results: Option<PathBuf>,
    /// Put the results of all shards together; nothing is marked
    #[arg(long, value_name = "DIR", conflicts_with_all = ["attempts", "shard", "results", "html"])]
    pub(crate) collect: Option<PathBuf>,
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

#[derive(Args, Debug)]
#[command(
    after_help = "Examples:\n  pinhole override my.attempt --by KM --not-yet --reason \"the other bench's notes, word for word\"\n  \
                  pinhole override my.attempt --by KM --total 75 --competent --reason \"the gauge hung wrong\"\n\n\
                  For instructors. The program's own mark is never changed: the override is a second record behind\n\
                  it, and the mark sheet shows both and says which holds. What is not said stays as the program's\n\
                  mark has it. Several may be given over time: all stay, the last holds. Each is chained like the rest\n\
                  of the file.\n\
                  In a pack that says after_hand_back: Nothing the attempt is marked first, and its file then holds\n\
                  the mark too."
)]
pub(crate) struct OverrideArgs {
    /// The marked attempt
    pub(crate) attempt: PathBuf,
    /// Your name or initials
    #[arg(long, value_name = "NAME")]
    pub(crate) by: String,
    /// Why
    #[arg(long, value_name = "TEXT", allow_hyphen_values = true)]
    pub(crate) reason: String,
    /// The total that holds, 0 to 100
    #[arg(long, value_name = "N", allow_hyphen_values = true, value_parser = number)]
    pub(crate) total: Option<f64>,
    /// Competent holds
    #[arg(long, conflicts_with = "not_yet")]
    pub(crate) competent: bool,
    /// Not yet competent holds
    #[arg(long)]
    pub(crate) not_yet: bool,
}

#[derive(Args, Debug)]
#[command(
    after_help = "Examples:\n  pinhole prove first-shift\n  pinhole prove first-shift/hum-at-the-lights --cars 5\n  pinhole prove \
                  first-shift --html proof.html --write-plans\n\n\
                  For authors and instructors: what is shown names the hidden faults.\n\
                  Every test that a job's tool board allows is tried in every car there could be; the planner then does\n\
                  the job in cars as attempts draw them. A job takes some minutes. What was proved is kept and not\n\
                  proved again until its files change, so that whoever stops it goes on by running it again.\n\
                  The exit code is 0 when every job passes, 1 when one does not, 2 when one could not be proved."
)]
pub(crate) struct ProveArgs {
    /// The pack, or one of its jobs as PACK/JOB
    #[arg(value_name = "PACK-OR-JOB")]
    pub(crate) of: String,
    /// In how many drawn cars each job is done (1 to 200)
    #[arg(long, value_name = "N", default_value = "20", value_parser = parse_cars, allow_hyphen_values = true)]
    pub(crate) cars: usize,
    /// Where what was proved is kept (else: proofs in your own data folder)
    #[arg(long, value_name = "DIR")]
    pub(crate) results: Option<PathBuf>,
    /// Write what was found as a page
    #[arg(long, value_name = "FILE")]
    pub(crate) html: Option<PathBuf>,
    /// Write all numbers as JSON
    #[arg(long, value_name = "FILE")]
    pub(crate) json: Option<PathBuf>,
    /// Write the reference plans into the pack
    #[arg(long)]
    pub(crate) write_plans: bool,
}

#[derive(Args, Debug)]
#[command(after_help = "Example:\n  pinhole mend my.attempt\n\n\
                  The whole actions before the damage stay, the rest is dropped, and the mark sheet says so from\n\
                  then on. The damaged file is kept beside it under a name of its own.")]
pub(crate) struct MendArgs {
    /// The damaged attempt
    pub(crate) attempt: PathBuf,
}

/// What is measured.
#[derive(Args, Debug)]
#[command(
    after_help = "Examples:\n  pinhole tests alder\n  pinhole tests first-shift/hum-at-the-lights\n  pinhole tests \
                  alder hold\n\n\
                  Minutes are those of a sound car as it came in, with everything put back at the end: worked, and after\n\
                  the plus those in which nobody is needed. In a job they are of its day, and a test for which its tool\n\
                  board lacks something has none."
)]
pub(crate) struct TestsArgs {
    /// The car, or a job as PACK/JOB
    #[arg(value_name = "CAR-OR-JOB")]
    pub(crate) of: String,
    /// One of its tests, to be shown line by line
    #[arg(value_name = "TEST")]
    pub(crate) test: Option<String>,
}

#[derive(Args, Debug)]
#[command(
    after_help = "Examples:\n  pinhole bench\n  pinhole bench --samples 21 --csv speed.csv\n  pinhole bench --window\n\n\
                  Without --window: simulated seconds per processor second for driving, pull-down, overnight hold\n\
                  and many cars, memory of a circuit, runs under hypotheses a second; about a minute.\n\
                  With it: needs a graphics adapter, a software one will do, and no display.\n\
                  Measure a release build on a quiet machine."
)]
pub(crate) struct BenchArgs {
    /// How often each case is measured
    #[arg(long, value_name = "N", default_value = "9", value_parser = parse_samples, allow_hyphen_values = true, conflicts_with = "window")]
    pub(crate) samples: usize,
    /// Write the table with all digits
    #[arg(long, value_name = "FILE", conflicts_with = "window")]
    pub(crate) csv: Option<PathBuf>,
    /// The window: processor time of a frame, time to the first frame, memory
    #[arg(long)]
    pub(crate) window: bool,
    #[cfg(feature = "window")]
    #[command(flatten)]
    pub(crate) in_window: window::args::FrameArgs,
}

/// One part of the work: the `k`th of `n`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Shard {
    /// From 1.
    pub(crate) k: u32,
    /// How many there are.
    pub(crate) n: u32,
}

impl std::fmt::Display for Shard {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{}/{}", self.k, self.n)
    }
}

fn parse_shard(text: &str) -> Result<Shard, Sentence> {
    let part = |t: &str| t.parse::<u32>().ok().filter(|n| (1..=99_999).contains(n));
    let shard = text.split_once('/').and_then(|(k, n)| Some(Shard { k: part(k)?, n: part(n)? }));
    shard
        .filter(|s| s.k <= s.n)
        .ok_or_else(|| sentence!("slip-shard", "expected K/N with K from 1 to N, for example 2/4"))
}

fn parse_seat(text: &str) -> Result<String, Sentence> {
    let name = text.trim();
    let fits = !name.is_empty() && name.chars().count() <= LONGEST_SEAT && !name.contains(quote::is_unsafe);
    if fits {
        Ok(name.to_owned())
    } else {
        Err(sentence!(
            "slip-seat",
            "expected 1 to {most} characters on one line, for example 12",
            most = LONGEST_SEAT
        ))
    }
}

fn parse_fault(text: &str) -> Result<(String, f64), Sentence> {
    let wrong = || sentence!("slip-fault", "expected ID=SEVERITY, for example hose_b_pinhole=0.3");
    let (id, severity) = text.split_once('=').ok_or_else(wrong)?;
    Ok((id.to_owned(), number(severity)?))
}

fn parse_samples(text: &str) -> Result<usize, NumberError> {
    typed::whole(text, 1..=999).map(|n| n as usize)
}

fn parse_cars(text: &str) -> Result<usize, NumberError> {
    typed::whole(text, 1..=200).map(|n| n as usize)
}

fn parse_every(text: &str) -> Result<f64, Sentence> {
    let s = number(text)?;
    let wrong = || sentence!("slip-every", "expected 0.01 to 3600 s");
    if (0.01..=3600.0).contains(&s) { Ok(s) } else { Err(wrong()) }
}

fn number(text: &str) -> Result<f64, Sentence> {
    typed::number(text).map_err(|e| e.sentence())
}

fn parse_seconds(text: &str) -> Result<u32, NumberError> {
    typed::whole(text, 0..=86_400)
}
