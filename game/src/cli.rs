//! The command line: what can be asked of `pinhole`, with an example on each page.

use std::path::PathBuf;

use assess::attempt::{LONGEST_SEAT, Seed};
use assess::{quote, typed};
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
pub struct Places {
    /// Folder that holds assets/ and scenarios/ (else: PINHOLE_DATA, here and above, beside the program)
    #[arg(long, global = true, value_name = "DIR")]
    pub data: Option<PathBuf>,
    /// Folder for attempts (else: your own data folder)
    #[arg(long, global = true, value_name = "DIR")]
    pub attempts: Option<PathBuf>,
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
    /// Keep what is whole of a damaged attempt
    Mend(MendArgs),
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
                  class/*.attempt --csv class.csv --json class.json\n\n\
                  The first mark of an attempt is written into its file as the last line, when the file may be written\n\
                  and no program has it open; a later mark is compared with it.\n\
                  The exit code is 0 when every attempt is competent, 1 when one is not, 2 when a file could not be\n\
                  marked: it is named, and the others are marked all the same.\n\
                  A pack that says after_hand_back: Nothing shows its marks here alone, and its attempts' files keep\n\
                  none."
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

#[derive(Args, Debug)]
#[command(after_help = "Example:\n  pinhole mend my.attempt\n\n\
                  The whole actions before the damage stay, the rest is dropped, and the mark sheet says so from\n\
                  then on. The damaged file is kept beside it under a name of its own.")]
pub(crate) struct MendArgs {
    /// The damaged attempt
    pub(crate) attempt: PathBuf,
}

#[cfg(feature = "window")]
#[derive(Args, Debug, Default)]
#[command(
    after_help = "Examples:\n  pinhole window\n  pinhole window first-shift/hum-at-the-lights\n  pinhole window \
                  --attempt my.attempt\n\nWithout a display or a graphics adapter use: pinhole text"
)]
pub(crate) struct WindowArgs {
    /// The job, PACK/JOB (else: the front desk)
    #[arg(value_name = "JOB")]
    pub(crate) job: Option<String>,
    /// The attempt's file; one that exists is carried on
    #[arg(long, value_name = "FILE")]
    pub(crate) attempt: Option<PathBuf>,
    /// Draw tolerances and instrument errors from this (1 to 32 hexadecimal digits)
    #[arg(long, value_name = "HEX", requires = "job")]
    pub(crate) seed: Option<Seed>,
    /// Write the accessible tree (role, name, place) here whenever it changes
    #[arg(long, value_name = "FILE")]
    pub(crate) tree: Option<PathBuf>,
}

/// What is measured.
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
    /// With --window: the job that is open meanwhile, PACK/JOB
    #[cfg(feature = "window")]
    #[arg(long, value_name = "JOB", default_value = "first-shift/hum-at-the-lights")]
    pub(crate) job: String,
    /// One part only, told as JSON; the program calls itself with it
    #[cfg(feature = "window")]
    #[arg(long, hide = true, requires = "window")]
    pub(crate) part: Option<BenchPart>,
}

/// A part of the measurement, in a process of its own.
#[cfg(feature = "window")]
#[derive(Clone, Copy, Debug, PartialEq, Eq, clap::ValueEnum)]
pub(crate) enum BenchPart {
    /// Without a renderer.
    Undrawn,
    /// With the renderer of the window.
    Drawn,
}

#[cfg(feature = "window")]
impl BenchPart {
    /// As it is written on the command line.
    pub(crate) const fn name(self) -> &'static str {
        match self {
            Self::Undrawn => "undrawn",
            Self::Drawn => "drawn",
        }
    }
}

/// What can be photographed.
#[cfg(feature = "window")]
#[derive(Clone, Copy, Debug, PartialEq, Eq, clap::ValueEnum)]
pub(crate) enum ShotScreen {
    /// Packs and jobs
    FrontDesk,
    /// The workshop, room in the middle
    Room,
    /// The workshop, line diagram in the middle
    Diagram,
    /// The workshop, room and line diagram
    Both,
    /// The mark sheet
    MarkSheet,
    /// The settings
    Settings,
}

/// A station of the room.
#[cfg(feature = "window")]
#[derive(Clone, Copy, Debug, PartialEq, Eq, clap::ValueEnum)]
pub(crate) enum ShotStation {
    /// The desk with the job card
    Desk,
    /// The driver's seat
    Cab,
    /// The open bonnet
    Bay,
    /// Low in front of the car
    Front,
    /// The bench
    Bench,
}

#[cfg(feature = "window")]
impl From<ShotStation> for sim_core::action::Station {
    fn from(station: ShotStation) -> Self {
        match station {
            ShotStation::Desk => Self::Desk,
            ShotStation::Cab => Self::Cab,
            ShotStation::Bay => Self::Bay,
            ShotStation::Front => Self::Front,
            ShotStation::Bench => Self::Bench,
        }
    }
}

/// Quality of the picture.
#[cfg(feature = "window")]
#[derive(Clone, Copy, Debug, PartialEq, Eq, clap::ValueEnum)]
pub(crate) enum ShotQuality {
    /// As on old machines
    Low,
    /// Shadows, ambient occlusion
    High,
}

#[cfg(feature = "window")]
impl From<ShotQuality> for crate::window::prefs::Quality {
    fn from(quality: ShotQuality) -> Self {
        match quality {
            ShotQuality::Low => Self::Low,
            ShotQuality::High => Self::High,
        }
    }
}

#[cfg(feature = "window")]
#[derive(Clone, Copy, Debug, PartialEq, Eq, clap::ValueEnum)]
pub(crate) enum ShotLeaf {
    /// The job card
    Card,
    /// The data sheet
    Sheet,
    /// Notebook and record
    Notebook,
    /// Suspicions
    Suspicions,
    /// The finding
    Finding,
}

#[cfg(feature = "window")]
impl From<ShotLeaf> for crate::window::ui::clipboard::Leaf {
    fn from(leaf: ShotLeaf) -> Self {
        match leaf {
            ShotLeaf::Card => Self::Card,
            ShotLeaf::Sheet => Self::Sheet,
            ShotLeaf::Notebook => Self::Notebook,
            ShotLeaf::Suspicions => Self::Suspicions,
            ShotLeaf::Finding => Self::Finding,
        }
    }
}

#[cfg(feature = "window")]
#[derive(Args, Debug)]
#[command(
    after_help = "Examples:\n  pinhole shot room --station bay --out bay.png\n  pinhole shot diagram --lang de \
                  --size 1920x1080 --out plan.png\n  pinhole shot room --script my.script --out later.png\n  \
                  pinhole shot mark-sheet --attempt my.attempt --out mark.png"
)]
pub(crate) struct ShotArgs {
    /// The screen
    pub(crate) screen: ShotScreen,
    /// Where the picture goes (.png)
    #[arg(long, value_name = "FILE")]
    pub(crate) out: PathBuf,
    /// Pixels
    #[arg(long, value_name = "WxH", default_value = "1280x720", value_parser = parse_size)]
    pub(crate) size: (u32, u32),
    /// Language
    #[arg(long, value_name = "TAG", default_value = "en")]
    pub(crate) lang: String,
    /// The job, PACK/JOB
    #[arg(long, value_name = "JOB", default_value = "first-shift/hum-at-the-lights")]
    pub(crate) job: String,
    /// An attempt to show instead, done again to its end
    #[arg(long, value_name = "FILE", conflicts_with_all = ["job", "script"])]
    pub(crate) attempt: Option<PathBuf>,
    /// Words to play before the picture is taken
    #[arg(long, value_name = "FILE")]
    pub(crate) script: Option<PathBuf>,
    /// Where the eye is (else: where the work is)
    #[arg(long)]
    pub(crate) station: Option<ShotStation>,
    /// Draw tolerances and instrument errors from this
    #[arg(long, value_name = "HEX", default_value = "1")]
    pub(crate) seed: Seed,
    /// Size of everything, 1.0 to 2.0
    #[arg(long, value_name = "FACTOR", default_value_t = 1.0, value_parser = parse_scale)]
    pub(crate) scale: f32,
    /// Quality (else: by the adapter)
    #[arg(long)]
    pub(crate) quality: Option<ShotQuality>,
    /// Leaf on top of the clipboard
    #[arg(long)]
    pub(crate) leaf: Option<ShotLeaf>,
    /// Unit of pressure on the dials: kpa, mbar, inhg
    #[arg(long, value_name = "UNIT", default_value = "kpa", value_parser = parse_unit)]
    pub(crate) unit: crate::window::prefs::PressureUnit,
    /// Keys pressed before the picture is taken, one after the other: F,Enter,text=booster
    #[arg(long, value_name = "KEYS", value_delimiter = ',', value_parser = parse_key)]
    pub(crate) keys: Vec<egui::Event>,
}

#[cfg(feature = "window")]
fn parse_unit(text: &str) -> Result<crate::window::prefs::PressureUnit, String> {
    let all = crate::window::prefs::PressureUnit::ALL;
    let found = all.into_iter().find(|u| u.symbol().eq_ignore_ascii_case(text));
    found.ok_or_else(|| "expected kpa, mbar or inhg".to_owned())
}

#[cfg(feature = "window")]
fn parse_key(text: &str) -> Result<egui::Event, String> {
    if let Some(typed) = text.strip_prefix("text=") {
        return Ok(egui::Event::Text(typed.to_owned()));
    }
    let key = egui::Key::from_name(text).ok_or_else(|| format!("there is no key {}", quote::quoted(text)))?;
    let modifiers = egui::Modifiers::NONE;
    Ok(egui::Event::Key { key, physical_key: None, pressed: true, repeat: false, modifiers })
}

#[cfg(feature = "window")]
fn parse_size(text: &str) -> Result<(u32, u32), String> {
    let expected = || "expected WIDTHxHEIGHT, 640x360 to 7680x4320, for example 1280x720".to_owned();
    let (w, h) = text.split_once('x').ok_or_else(expected)?;
    let (w, h) = (w.parse().map_err(|_| expected())?, h.parse().map_err(|_| expected())?);
    if (640..=7680).contains(&w) && (360..=4320).contains(&h) { Ok((w, h)) } else { Err(expected()) }
}

#[cfg(feature = "window")]
fn parse_scale(text: &str) -> Result<f32, String> {
    let range = crate::window::prefs::SCALES;
    match number(text).map(|v| v as f32) {
        Ok(scale) if range.contains(&scale) => Ok(scale),
        _ => Err(format!("expected {} to {}", range.start(), range.end())),
    }
}

fn parse_seat(text: &str) -> Result<String, String> {
    let name = text.trim();
    let fits = !name.is_empty() && name.chars().count() <= LONGEST_SEAT && !name.contains(quote::is_unsafe);
    if fits {
        Ok(name.to_owned())
    } else {
        Err(format!("expected 1 to {LONGEST_SEAT} characters on one line, for example 12"))
    }
}

fn parse_fault(text: &str) -> Result<(String, f64), String> {
    let (id, severity) =
        text.split_once('=').ok_or("expected ID=SEVERITY, for example hose_b_pinhole=0.3")?;
    Ok((id.to_owned(), number(severity)?))
}

fn parse_samples(text: &str) -> Result<usize, String> {
    typed::whole(text, 1..=999).map(|n| n as usize)
}

fn parse_every(text: &str) -> Result<f64, String> {
    let s = number(text)?;
    if (0.01..=3600.0).contains(&s) { Ok(s) } else { Err("expected 0.01 to 3600 s".to_owned()) }
}

fn number(text: &str) -> Result<f64, String> {
    typed::number(text).map_err(|e| e.to_string())
}

fn parse_seconds(text: &str) -> Result<u32, String> {
    typed::whole(text, 0..=86_400)
}
