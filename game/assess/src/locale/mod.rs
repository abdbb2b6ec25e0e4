//! Words on the screen, from Fluent files: `assets/locales/<language>/*.ftl`.
//!
//! A folder more is a language more. What a language lacks is said in English; a key that even English
//! lacks shows as itself and is remembered, so that a test can name it. Names of parts, instruments and
//! lines come from the locale files by their short names, else from the data files, as a school that
//! writes its own car writes it in its own language.

use std::borrow::Cow;
use std::collections::BTreeSet;
use std::path::Path;
use std::sync::Mutex;

pub use fluent_bundle::FluentValue;
use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentError, FluentResource};
use fluent_langneg::{NegotiationStrategy, negotiate_languages};
use unic_langid::LanguageIdentifier;

mod error;
pub mod known;
mod looked;
mod named;
mod numbers;
pub mod quote;
mod said;
pub mod sentence;
mod speech;

use crate::files;
pub use error::LocaleError;
pub use looked::mode_key;
pub use named::key_part;
pub use numbers::pretty_unit;
pub use speech::{Naming, Speech, test_name};

/// Language that is always complete.
pub const FALLBACK: &str = "en";

/// English as it is in the program: it speaks when no data folder is found, and files that other programs read are
/// written in it, whatever a school has made of its folder.
const BUILT_IN: [&str; 21] = [
    include_str!("../../../../assets/locales/en/bench.ftl"),
    include_str!("../../../../assets/locales/en/clipboard.ftl"),
    include_str!("../../../../assets/locales/en/commands.ftl"),
    include_str!("../../../../assets/locales/en/damage.ftl"),
    include_str!("../../../../assets/locales/en/data.ftl"),
    include_str!("../../../../assets/locales/en/deeds.ftl"),
    include_str!("../../../../assets/locales/en/desk.ftl"),
    include_str!("../../../../assets/locales/en/diagram.ftl"),
    include_str!("../../../../assets/locales/en/errors.ftl"),
    include_str!("../../../../assets/locales/en/marks.ftl"),
    include_str!("../../../../assets/locales/en/names.ftl"),
    include_str!("../../../../assets/locales/en/offers.ftl"),
    include_str!("../../../../assets/locales/en/pages.ftl"),
    include_str!("../../../../assets/locales/en/plain-words.ftl"),
    include_str!("../../../../assets/locales/en/sentences.ftl"),
    include_str!("../../../../assets/locales/en/settings.ftl"),
    include_str!("../../../../assets/locales/en/sheet.ftl"),
    include_str!("../../../../assets/locales/en/speed.ftl"),
    include_str!("../../../../assets/locales/en/time.ftl"),
    include_str!("../../../../assets/locales/en/tray.ftl"),
    include_str!("../../../../assets/locales/en/window.ftl"),
];

/// The words of a language, English behind it.
pub struct Locale {
    /// Wanted language first.
    bundles: Vec<FluentBundle<FluentResource>>,
    /// Tag of the language shown.
    tag: String,
    /// Tags of all languages there are, sorted.
    tags: Vec<String>,
    /// What each language calls itself, in the order of `tags`.
    own_names: Vec<String>,
    /// Keys asked for that no language has.
    missing: Mutex<BTreeSet<String>>,
}

impl std::fmt::Debug for Locale {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Locale").field("tag", &self.tag).field("tags", &self.tags).finish_non_exhaustive()
    }
}

impl Locale {
    /// Reads the language that fits `wanted` (tags such as `de-AT`, best first) from `root/assets/locales`.
    ///
    /// # Errors
    /// The folder or the English files are missing, or a file does not parse (says which, and where).
    pub fn open(root: &Path, wanted: &[String]) -> Result<Self, LocaleError> {
        let folder = root.join("assets/locales");
        let mut tags = Vec::new();
        let unread = |source| LocaleError::Languages { folder: folder.clone(), source };
        for entry in std::fs::read_dir(&folder).map_err(unread)? {
            let path = entry.map_err(unread)?.path();
            if let Some(name) = path.file_name().and_then(|n| n.to_str())
                && path.is_dir()
            {
                tags.push(name.to_owned());
            }
        }
        tags.sort();
        let known: Vec<LanguageIdentifier> = tags.iter().filter_map(|t| t.parse().ok()).collect();
        let asked: Vec<LanguageIdentifier> = wanted.iter().filter_map(|t| t.parse().ok()).collect();
        let english: LanguageIdentifier = tag_of(FALLBACK)?;
        let best = negotiate_languages(&asked, &known, Some(&english), NegotiationStrategy::Lookup);
        let tag = best.first().map_or_else(|| FALLBACK.to_owned(), ToString::to_string);
        let mut bundles = vec![bundle(&folder, &tag)?];
        if tag != FALLBACK {
            bundles.push(bundle(&folder, FALLBACK)?);
        }
        bundles.push(built_in());
        // A language that cannot be read is offered by its tag; choosing it will say what is wrong.
        let own_names = tags.iter().map(|t| own_name(&folder, t).unwrap_or_else(|| t.clone())).collect();
        Ok(Self { bundles, tag, tags, own_names, missing: Mutex::new(BTreeSet::new()) })
    }

    /// The English that is in the program, and nothing else.
    #[must_use]
    pub fn built_in() -> Self {
        Self {
            bundles: vec![built_in()],
            tag: FALLBACK.to_owned(),
            tags: vec![FALLBACK.to_owned()],
            own_names: vec!["English".to_owned()],
            missing: Mutex::new(BTreeSet::new()),
        }
    }

    /// Tag of the language shown.
    #[must_use]
    pub fn tag(&self) -> &str {
        &self.tag
    }

    /// Tags of all languages there are.
    #[must_use]
    pub fn tags(&self) -> &[String] {
        &self.tags
    }

    /// What each language calls itself, in the order of [`Locale::tags`].
    #[must_use]
    pub fn own_names(&self) -> &[String] {
        &self.own_names
    }

    /// Keys that were asked for and that no language has.
    #[must_use]
    pub fn missing(&self) -> Vec<String> {
        self.missing.lock().map(|m| m.iter().cloned().collect()).unwrap_or_default()
    }

    /// The words of `key`.
    #[must_use]
    pub fn say(&self, key: &str) -> String {
        self.say_with(key, &[])
    }

    /// The words of `key` with values put in.
    #[must_use]
    pub fn say_with(&self, key: &str, values: &[(&str, FluentValue<'_>)]) -> String {
        self.find(key, values).unwrap_or_else(|| {
            if let Ok(mut missing) = self.missing.lock() {
                missing.insert(key.to_owned());
            }
            key.to_owned()
        })
    }

    /// The words of `key`, or `other` when no language has them: for names that also stand in data files.
    #[must_use]
    pub fn say_or(&self, key: &str, other: &str) -> String {
        self.find(key, &[]).unwrap_or_else(|| other.to_owned())
    }

    /// The words of `key` with values put in; `None` when no language has them.
    #[must_use]
    pub fn find(&self, key: &str, values: &[(&str, FluentValue<'_>)]) -> Option<String> {
        let mut args = FluentArgs::new();
        for (name, value) in values {
            args.set(Cow::Owned((*name).to_owned()), value.clone());
        }
        self.bundles.iter().find_map(|bundle| {
            let pattern = bundle.get_message(key)?.value()?;
            let mut errors = Vec::new();
            Some(bundle.format_pattern(pattern, Some(&args), &mut errors).into_owned())
        })
    }
}

/// The words that are in the program.
fn built_in() -> FluentBundle<FluentResource> {
    let mut bundle = FluentBundle::new_concurrent(vec![unic_langid::langid!("en")]);
    bundle.set_use_isolating(false);
    for text in BUILT_IN {
        // The tests hold that they parse.
        let resource = FluentResource::try_new(text.to_owned()).unwrap_or_else(|(parsed, _)| parsed);
        bundle.add_resource_overriding(resource);
    }
    bundle
}

fn tag_of(tag: &str) -> Result<LanguageIdentifier, LocaleError> {
    tag.parse().map_err(|_| LocaleError::Tag { tag: tag.to_owned() })
}

/// What a language calls itself, by its own files.
fn own_name(folder: &Path, tag: &str) -> Option<String> {
    let bundle = bundle(folder, tag).ok()?;
    let pattern = bundle.get_message("language-name")?.value()?;
    Some(bundle.format_pattern(pattern, None, &mut Vec::new()).into_owned())
}

/// Faults of a file that are told; more would not help to mend it.
const MOST_ERRORS: usize = 5;

/// A file of words: inside the folder of languages, of honest size, without control characters, written out or as
/// an escape.
fn read(folder: &Path, file: &Path) -> Result<String, LocaleError> {
    // Where it lies in there: the folder may have been given from where one stands.
    let inside = file.strip_prefix(folder).unwrap_or(file);
    let text = files::read_text_inside(folder, inside, files::LOCALE)?;
    for (i, line) in text.lines().enumerate() {
        let escapes = line.match_indices(['\\']).filter_map(|(at, _)| {
            let rest = &line[at + 1..];
            let digits = rest.strip_prefix('u').and_then(|d| d.get(..4));
            let digits = digits.or_else(|| rest.strip_prefix('U').and_then(|d| d.get(..6)))?;
            char::from_u32(u32::from_str_radix(digits, 16).ok()?)
        });
        if let Some(bad) = line.chars().chain(escapes).find(|c| quote::is_unsafe(*c)) {
            return Err(LocaleError::Control { file: file.to_owned(), line: i + 1, found: bad });
        }
    }
    Ok(text)
}

fn bundle(folder: &Path, tag: &str) -> Result<FluentBundle<FluentResource>, LocaleError> {
    let mut bundle = FluentBundle::new_concurrent(vec![tag_of(tag)?]);
    // Names are put into sentences that are written left to right like the names; marks round them
    // would only be heard by screen readers.
    bundle.set_use_isolating(false);
    let all = folder;
    let folder = folder.join(tag);
    let unread = |source| LocaleError::Language { tag: tag.to_owned(), folder: folder.clone(), source };
    let mut ours: Vec<_> = std::fs::read_dir(&folder)
        .map_err(unread)?
        .collect::<Result<Vec<_>, _>>()
        .map_err(unread)?
        .into_iter()
        .map(|e| e.path())
        .filter(|p| p.extension().is_some_and(|x| x == "ftl"))
        .collect();
    ours.sort();
    for file in ours {
        let text = read(all, &file)?;
        let resource = FluentResource::try_new(text).map_err(|(resource, errors)| {
            let line = |at: usize| {
                let before = resource.source().as_bytes().get(..at).unwrap_or_default();
                1 + before.iter().filter(|b| **b == b'\n').count()
            };
            let lines: Vec<String> =
                errors.iter().take(MOST_ERRORS).map(|e| line(e.pos.start).to_string()).collect();
            LocaleError::NotWords { file: file.clone(), lines: lines.join(", ") }
        })?;
        bundle.add_resource(resource).map_err(|errors| {
            let twice = errors.iter().find_map(|error| match error {
                FluentError::Overriding { id, .. } => Some(id.clone()),
                _ => None,
            });
            LocaleError::Twice { file: file.clone(), key: twice }
        })?;
    }
    Ok(bundle)
}
