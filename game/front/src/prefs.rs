//! What a person sets once: units, text size, quality, motion, language. Kept in a file of their own.

use std::path::PathBuf;

use assess::files::{self, Doing};
use assess::locale::quote;
use assess::sentence;

use crate::output::{Kind, Outputs};

/// Unit of pressure on every dial and in every field.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PressureUnit {
    /// Kilopascal.
    #[default]
    Kpa,
    /// Millibar.
    Mbar,
    /// Inch of mercury.
    Inhg,
}

impl PressureUnit {
    /// Every unit.
    pub const ALL: [Self; 3] = [Self::Kpa, Self::Mbar, Self::Inhg];

    /// As it is written, and as the words understand it.
    #[must_use]
    pub fn symbol(self) -> &'static str {
        match self {
            Self::Kpa => "kPa",
            Self::Mbar => "mbar",
            Self::Inhg => "inHg",
        }
    }

    /// How many of it are one kilopascal.
    #[must_use]
    pub fn per_kpa(self) -> f64 {
        match self {
            Self::Kpa => 1.0,
            Self::Mbar => 10.0,
            Self::Inhg => 1_000.0 / sim_core::units::PA_PER_INHG,
        }
    }
}

/// How much the picture may cost.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, serde::Serialize, serde::Deserialize,
)]
#[serde(rename_all = "snake_case")]
pub enum Quality {
    /// The program chooses by the graphics adapter.
    #[default]
    Auto,
    /// For software rendering and old machines.
    Low,
    /// Shadows, ambient occlusion.
    High,
}

/// Settings.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
#[serde(default)]
pub struct Prefs {
    /// Language tag; empty = the system's.
    pub language: String,
    /// Unit of pressure.
    pub pressure: PressureUnit,
    /// Size of everything, 1.0 to 2.0.
    pub scale: f32,
    /// Picture.
    pub quality: Quality,
    /// No gliding, no shaking.
    pub reduced_motion: bool,
}

impl Default for Prefs {
    fn default() -> Self {
        Self {
            language: String::new(),
            pressure: PressureUnit::default(),
            scale: 1.0,
            quality: Quality::default(),
            reduced_motion: false,
        }
    }
}

/// Range of [`Prefs::scale`].
pub const SCALES: std::ops::RangeInclusive<f32> = 1.0..=2.0;

impl Prefs {
    /// Reads the settings; a missing or broken file gives the usual ones (it is written anew at the next
    /// change, and nothing else depends on it).
    #[must_use]
    pub fn load() -> Self {
        let read = || files::read_text(&file()?, files::SETTINGS).ok();
        let mut prefs: Self = read().and_then(|text| serde_json::from_str(&text).ok()).unwrap_or_default();
        if !SCALES.contains(&prefs.scale) {
            prefs.scale = 1.0;
        }
        prefs
    }

    /// Writes the settings.
    ///
    /// # Errors
    /// The file cannot be written.
    pub fn save(&self) -> anyhow::Result<()> {
        let file = file()
            .ok_or_else(|| sentence!("prefs-no-own", "this system names no folder for your settings"))?;
        if let Some(folder) = file.parent() {
            std::fs::create_dir_all(folder).map_err(|e| {
                sentence!(
                    "prefs-not-made",
                    "{folder} cannot be made: {why}",
                    folder = quote::path(folder),
                    why = files::refusal(&e, Doing::Write)
                )
            })?;
        }
        let text = serde_json::to_string_pretty(self)?;
        let output = Outputs::default().plan("the settings", &file, Kind::Settings)?;
        Ok(output.write(text.as_bytes())?)
    }

    /// Languages wanted, best first.
    #[must_use]
    pub fn languages(&self) -> Vec<String> {
        if self.language.is_empty() {
            sys_locale::get_locales().collect()
        } else {
            vec![self.language.clone()]
        }
    }
}

impl Prefs {
    /// The language asked for by name, else [`Prefs::languages`].
    #[must_use]
    pub fn languages_or(&self, asked: Option<&str>) -> Vec<String> {
        asked.map_or_else(|| self.languages(), |tag| vec![tag.to_owned()])
    }
}

fn file() -> Option<PathBuf> {
    let dirs = directories::ProjectDirs::from("", "", "pinhole")?;
    Some(dirs.config_dir().join("settings.json"))
}
