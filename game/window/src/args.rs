//! What the command line asks of the window: opened, photographed, measured.

use assess::sentence;
use std::path::PathBuf;

use assess::attempt::Seed;
use assess::locale::quote;
use assess::locale::sentence::Sentence;
use assess::words::typed;
use clap::Args;

/// The window.
#[derive(Args, Debug, Default)]
#[command(
    after_help = "Examples:\n  pinhole window\n  pinhole window first-shift/hum-at-the-lights\n  pinhole window \
                  --attempt my.attempt\n\nWithout a display or a graphics adapter use: pinhole text"
)]
pub struct WindowArgs {
    /// The job, PACK/JOB (else: the front desk)
    #[arg(value_name = "JOB")]
    pub job: Option<String>,
    /// The attempt's file; one that exists is carried on
    #[arg(long, value_name = "FILE")]
    pub attempt: Option<PathBuf>,
    /// Draw tolerances and instrument errors from this (1 to 32 hexadecimal digits)
    #[arg(long, value_name = "HEX", requires = "job")]
    pub seed: Option<Seed>,
    /// Write the accessible tree (role, name, place) here whenever it changes
    #[arg(long, value_name = "FILE")]
    pub tree: Option<PathBuf>,
    /// Language, asked for before all commands; else that of the settings
    #[arg(from_global)]
    pub lang: Option<String>,
}

impl WindowArgs {
    /// The front desk in a language.
    #[must_use]
    pub fn in_language(lang: Option<String>) -> Self {
        Self { lang, ..Self::default() }
    }
}

/// What is measured of the window.
#[derive(Args, Debug)]
pub struct FrameArgs {
    /// With --window: the job that is open meanwhile, PACK/JOB
    #[arg(long, value_name = "JOB", default_value = "first-shift/hum-at-the-lights")]
    pub job: String,
    /// One part only, told as JSON; the program calls itself with it
    #[arg(long, hide = true, requires = "window")]
    pub part: Option<BenchPart>,
}

/// A part of the measurement, in a process of its own.
#[derive(Clone, Copy, Debug, PartialEq, Eq, clap::ValueEnum)]
pub enum BenchPart {
    /// Without a renderer.
    Undrawn,
    /// With the renderer of the window.
    Drawn,
}

impl BenchPart {
    /// As it is written on the command line.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Undrawn => "undrawn",
            Self::Drawn => "drawn",
        }
    }
}

/// What can be photographed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, clap::ValueEnum)]
pub enum ShotScreen {
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
#[derive(Clone, Copy, Debug, PartialEq, Eq, clap::ValueEnum)]
pub enum ShotStation {
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
#[derive(Clone, Copy, Debug, PartialEq, Eq, clap::ValueEnum)]
pub enum ShotQuality {
    /// As on old machines
    Low,
    /// Shadows, ambient occlusion
    High,
}

impl From<ShotQuality> for front::prefs::Quality {
    fn from(quality: ShotQuality) -> Self {
        match quality {
            ShotQuality::Low => Self::Low,
            ShotQuality::High => Self::High,
        }
    }
}

/// A leaf of the clipboard.
#[derive(Clone, Copy, Debug, PartialEq, Eq, clap::ValueEnum)]
pub enum ShotLeaf {
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

impl From<ShotLeaf> for crate::ui::clipboard::Leaf {
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

/// A picture.
#[derive(Args, Debug)]
#[command(
    after_help = "Examples:\n  pinhole shot room --station bay --out bay.png\n  pinhole shot diagram --lang de \
                  --size 1920x1080 --out plan.png\n  pinhole shot room --script my.script --out later.png\n  \
                  pinhole shot mark-sheet --attempt my.attempt --out mark.png"
)]
pub struct ShotArgs {
    /// The screen
    pub screen: ShotScreen,
    /// Where the picture goes (.png)
    #[arg(long, value_name = "FILE")]
    pub out: PathBuf,
    /// Pixels
    #[arg(long, value_name = "WxH", default_value = "1280x720", value_parser = parse_size)]
    pub size: (u32, u32),
    /// Language
    #[arg(long, value_name = "TAG", default_value = "en")]
    pub lang: String,
    /// The job, PACK/JOB
    #[arg(long, value_name = "JOB", default_value = "first-shift/hum-at-the-lights")]
    pub job: String,
    /// An attempt to show instead, done again to its end
    #[arg(long, value_name = "FILE", conflicts_with_all = ["job", "script"])]
    pub attempt: Option<PathBuf>,
    /// Words to play before the picture is taken
    #[arg(long, value_name = "FILE")]
    pub script: Option<PathBuf>,
    /// Where the eye is (else: where the work is)
    #[arg(long)]
    pub station: Option<ShotStation>,
    /// Draw tolerances and instrument errors from this
    #[arg(long, value_name = "HEX", default_value = "1")]
    pub seed: Seed,
    /// Size of everything, 1.0 to 2.0
    #[arg(long, value_name = "FACTOR", default_value_t = 1.0, value_parser = parse_scale)]
    pub scale: f32,
    /// Quality (else: by the adapter)
    #[arg(long)]
    pub quality: Option<ShotQuality>,
    /// Leaf on top of the clipboard
    #[arg(long)]
    pub leaf: Option<ShotLeaf>,
    /// Unit of pressure on the dials: kpa, mbar, inhg
    #[arg(long, value_name = "UNIT", default_value = "kpa", value_parser = parse_unit)]
    pub unit: front::prefs::PressureUnit,
    /// Keys pressed before the picture is taken, one after the other: F,Enter,text=booster
    #[arg(long, value_name = "KEYS", value_delimiter = ',', value_parser = parse_key)]
    pub keys: Vec<egui::Event>,
}

fn parse_unit(text: &str) -> Result<front::prefs::PressureUnit, Sentence> {
    let all = front::prefs::PressureUnit::ALL;
    let found = all.into_iter().find(|u| u.symbol().eq_ignore_ascii_case(text));
    found.ok_or_else(|| sentence!("slip-pressure", "expected kpa, mbar or inhg"))
}

fn parse_key(text: &str) -> Result<egui::Event, Sentence> {
    if let Some(typed) = text.strip_prefix("text=") {
        return Ok(egui::Event::Text(typed.to_owned()));
    }
    let key = egui::Key::from_name(text)
        .ok_or_else(|| sentence!("slip-key", "there is no key {key}", key = quote::quoted(text)))?;
    let modifiers = egui::Modifiers::NONE;
    Ok(egui::Event::Key { key, physical_key: None, pressed: true, repeat: false, modifiers })
}

fn parse_size(text: &str) -> Result<(u32, u32), Sentence> {
    let expected =
        || sentence!("slip-size", "expected WIDTHxHEIGHT, 640x360 to 7680x4320, for example 1280x720");
    let (w, h) = text.split_once('x').ok_or_else(expected)?;
    let (w, h) = (w.parse().map_err(|_| expected())?, h.parse().map_err(|_| expected())?);
    if (640..=7680).contains(&w) && (360..=4320).contains(&h) { Ok((w, h)) } else { Err(expected()) }
}

fn parse_scale(text: &str) -> Result<f32, Sentence> {
    let range = front::prefs::SCALES;
    match typed::number(text).map(|v| v as f32) {
        Ok(scale) if range.contains(&scale) => Ok(scale),
        _ => {
            let (low, high) = (range.start().to_string(), range.end().to_string());
            Err(sentence!("slip-range", "expected {low} to {high}", low = low, high = high))
        }
    }
}
