//! Slips on the command line in words of our own: which word, what would be right, where to look; what was typed is
//! cut short and cannot steer the terminal.

use assess::attempt::SeedError;
use assess::locale::quote::{bare, quoted};
use assess::locale::sentence::{Sentence, Value};
use assess::sentence;
use assess::words::typed::NumberError;
use clap::error::{ContextKind, ContextValue, ErrorKind};

/// What to do about an error of the reader of the command line.
pub(crate) enum Slip {
    /// A page that was asked for.
    Page(String),
    /// A mistake.
    Wrong(Sentence),
}

/// Tells a page from a mistake, and says the mistake.
pub(crate) fn slip(error: &clap::Error) -> Slip {
    if matches!(error.kind(), ErrorKind::DisplayHelp | ErrorKind::DisplayVersion) {
        return Slip::Page(error.render().to_string());
    }
    Slip::Wrong(said(error))
}

fn context(error: &clap::Error, kind: ContextKind) -> Vec<String> {
    match error.get(kind) {
        Some(ContextValue::String(text)) => vec![text.clone()],
        Some(ContextValue::Strings(texts)) => texts.clone(),
        Some(ContextValue::StyledStr(text)) => vec![text.to_string()],
        Some(ContextValue::Number(n)) => vec![n.to_string()],
        _ => Vec::new(),
    }
}

/// Where to look for more: the page of the command that was meant.
fn page() -> Sentence {
    let command = std::env::args_os().skip(1).find_map(|word| {
        let word = word.into_string().ok()?;
        crate::cli::commands().into_iter().find(|c| *c == word)
    });
    let page = match command {
        Some(command) => format!("pinhole {command} --help"),
        None => "pinhole --help".to_owned(),
    };
    sentence!("slip-page", "{page} tells more", page = page)
}

/// What is nearest to what was typed, as the end of a sentence.
fn near(error: &clap::Error, kind: ContextKind) -> Value {
    match context(error, kind).into_iter().next_back() {
        Some(near) => sentence!("slip-near", "; did you mean {near}?", near = bare(&near)).into(),
        None => String::new().into(),
    }
}

/// A value that its own reader refuses.
fn bad_value(error: &clap::Error, option: &str, value: &str) -> Sentence {
    let why = why(error);
    let english = why.to_string();
    // Our own readers say what they read.
    let says = english.starts_with(&bare(value).to_string()) || english.contains(&quoted(value).to_string());
    if says && !value.is_empty() {
        sentence!("slip-why", "{option}: {why}", option = option, why = why)
    } else {
        sentence!(
            "slip-value-why",
            "{option} {value}: {why}",
            option = option,
            value = quoted(value),
            why = why
        )
    }
}

fn said(error: &clap::Error) -> Sentence {
    let first = |kind| context(error, kind).into_iter().next();
    let arg = first(ContextKind::InvalidArg).unwrap_or_default();
    // `--seed <HEX>`: the option and its value's name; `<ATTEMPTS>...`: what is wanted.
    let option = arg.split_whitespace().next().unwrap_or_default().to_owned();
    let value = first(ContextKind::InvalidValue).unwrap_or_default();
    let (page, name) = (page(), bare(&arg));
    match error.kind() {
        ErrorKind::UnknownArgument if option.starts_with('-') => sentence!(
            "slip-no-option",
            "there is no option {option} here{near} ({page})",
            option = quoted(&arg),
            near = near(error, ContextKind::SuggestedArg),
            page = page
        ),
        ErrorKind::UnknownArgument | ErrorKind::TooManyValues => {
            let extra = if value.is_empty() { &arg } else { &value };
            sentence!(
                "slip-too-many",
                "{word} is one word too many ({page})",
                word = quoted(extra),
                page = page
            )
        }
        ErrorKind::InvalidSubcommand => {
            let typed = first(ContextKind::InvalidSubcommand).unwrap_or_default();
            #[cfg(not(feature = "window"))]
            if ["window", "shot"].contains(&typed.as_str()) {
                return crate::without_window(&typed);
            }
            sentence!(
                "slip-no-command",
                "there is no command {typed}{near} ({page})",
                typed = quoted(&typed),
                near = near(error, ContextKind::SuggestedSubcommand),
                page = page
            )
        }
        ErrorKind::InvalidValue if value.is_empty() && arg.starts_with('<') => {
            sentence!("slip-empty", "{name} is empty; name it ({page})", name = name, page = page)
        }
        ErrorKind::InvalidValue if value.is_empty() => needs_value(&arg, page),
        ErrorKind::InvalidValue => sentence!(
            "slip-none-of",
            "{option}: {value} is none of {valid}{near}",
            option = option,
            value = quoted(&value),
            valid = context(error, ContextKind::ValidValue).join(", "),
            near = near(error, ContextKind::SuggestedValue)
        ),
        ErrorKind::ValueValidation => bad_value(error, &option, &value),
        ErrorKind::ArgumentConflict => {
            let other = context(error, ContextKind::PriorArg).join(", ");
            if other == arg {
                sentence!(
                    "slip-twice",
                    "{name} stands twice; once is enough ({page})",
                    name = name,
                    page = page
                )
            } else {
                sentence!(
                    "slip-conflict",
                    "{name} and {other} do not go together ({page})",
                    name = name,
                    other = bare(&other),
                    page = page
                )
            }
        }
        ErrorKind::MissingRequiredArgument => {
            let missing = context(error, ContextKind::InvalidArg).join(", ");
            sentence!("slip-missing", "{name} is missing ({page})", name = bare(&missing), page = page)
        }
        ErrorKind::TooFewValues | ErrorKind::WrongNumberOfValues | ErrorKind::NoEquals => {
            needs_value(&arg, page)
        }
        ErrorKind::InvalidUtf8 => sentence!(
            "slip-not-utf8",
            "a word of the command line is not UTF-8 text; only names of files may be so ({page})",
            page = page
        ),
        _ => sentence!("slip-not-understood", "the command line was not understood ({page})", page = page),
    }
}

fn needs_value(arg: &str, page: Sentence) -> Sentence {
    sentence!("slip-needs-value", "{name} needs a value behind it ({page})", name = bare(arg), page = page)
}

/// Why a value cannot be used: our own readers' sentences, and the library's in words of our own.
fn why(error: &clap::Error) -> Value {
    let Some(source) = std::error::Error::source(error) else { return String::new().into() };
    if let Some(sentence) = source.downcast_ref::<Sentence>() {
        return sentence.clone().into();
    }
    if let Some(error) = source.downcast_ref::<NumberError>() {
        return error.sentence().into();
    }
    if let Some(error) = source.downcast_ref::<SeedError>() {
        return error.sentence().into();
    }
    let why = assess::locale::quote::escaped(&source.to_string());
    // The library's words for whole numbers outside their range: `90000 is not in 0..=86400`.
    match why.split_once(" is not in ").and_then(|(_, range)| range.split_once("..=")) {
        Some((low, high)) => {
            sentence!("slip-range", "expected {low} to {high}", low = low, high = high).into()
        }
        None if why.contains("invalid digit") || why.contains("empty string") => {
            sentence!("slip-whole", "expected a whole number").into()
        }
        None if why.starts_with("number too large") || why.starts_with("number too small") => {
            sentence!("slip-size-of-number", "the number is too large or too small").into()
        }
        None if why.contains("float literal") => {
            sentence!("slip-number", "expected a number such as 12.5").into()
        }
        None => why.into(),
    }
}
