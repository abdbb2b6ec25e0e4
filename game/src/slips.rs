//! Slips on the command line in words of our own: which word, what would be right, where to look; what was typed is
//! cut short and cannot steer the terminal.

use assess::quote::{bare, quoted};
use clap::error::{ContextKind, ContextValue, ErrorKind};

/// What to do about an error of the reader of the command line.
pub(crate) enum Slip {
    /// A page that was asked for.
    Page(String),
    /// A mistake.
    Wrong(String),
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
fn page() -> String {
    let command = std::env::args_os().skip(1).find_map(|word| {
        let word = word.into_string().ok()?;
        crate::cli::commands().into_iter().find(|c| *c == word)
    });
    match command {
        Some(command) => format!("pinhole {command} --help tells more"),
        None => "pinhole --help tells more".to_owned(),
    }
}

fn said(error: &clap::Error) -> String {
    let first = |kind| context(error, kind).into_iter().next();
    let arg = first(ContextKind::InvalidArg).unwrap_or_default();
    // `--seed <HEX>`: the option and its value's name; `<ATTEMPTS>...`: what is wanted.
    let option = arg.split_whitespace().next().unwrap_or_default().to_owned();
    let value = first(ContextKind::InvalidValue).unwrap_or_default();
    let near = |kind| {
        let near = context(error, kind).into_iter().next_back();
        near.map_or(String::new(), |near| format!("; did you mean {}?", bare(&near)))
    };
    let page = page();
    match error.kind() {
        ErrorKind::UnknownArgument if option.starts_with('-') => {
            format!("there is no option {} here{} ({page})", quoted(&arg), near(ContextKind::SuggestedArg))
        }
        ErrorKind::UnknownArgument | ErrorKind::TooManyValues => {
            let extra = if value.is_empty() { &arg } else { &value };
            format!("{} is one word too many ({page})", quoted(extra))
        }
        ErrorKind::InvalidSubcommand => {
            let typed = first(ContextKind::InvalidSubcommand).unwrap_or_default();
            if cfg!(not(feature = "window")) && ["window", "shot"].contains(&typed.as_str()) {
                return format!("{typed}: this program was built without the window (feature window)");
            }
            format!(
                "there is no command {}{} ({page})",
                quoted(&typed),
                near(ContextKind::SuggestedSubcommand)
            )
        }
        ErrorKind::InvalidValue if value.is_empty() && arg.starts_with('<') => {
            format!("{} is empty; name it ({page})", bare(&arg))
        }
        ErrorKind::InvalidValue if value.is_empty() => {
            format!("{} needs a value behind it ({page})", bare(&arg))
        }
        ErrorKind::InvalidValue => {
            let valid = context(error, ContextKind::ValidValue).join(", ");
            let near = near(ContextKind::SuggestedValue);
            format!("{option}: {} is none of {valid}{near}", quoted(&value))
        }
        ErrorKind::ValueValidation => {
            let why = std::error::Error::source(error).map(ToString::to_string).unwrap_or_default();
            let why = assess::quote::escaped(&why);
            // The library's words for whole numbers outside their range: `90000 is not in 0..=86400`.
            let why = match why.split_once(" is not in ").and_then(|(_, range)| range.split_once("..=")) {
                Some((low, high)) => format!("expected {low} to {high}"),
                None if why.contains("invalid digit") || why.contains("empty string") => {
                    "expected a whole number".to_owned()
                }
                None if why.starts_with("number too large") || why.starts_with("number too small") => {
                    "the number is too large or too small".to_owned()
                }
                None if why.contains("float literal") => "expected a number such as 12.5".to_owned(),
                None => why,
            };
            // Our own readers say what they read.
            let says =
                why.starts_with(&bare(&value).to_string()) || why.contains(&quoted(&value).to_string());
            if says && !value.is_empty() {
                format!("{option}: {why}")
            } else {
                format!("{option} {}: {why}", quoted(&value))
            }
        }
        ErrorKind::ArgumentConflict => {
            let other = context(error, ContextKind::PriorArg).join(", ");
            if other == arg {
                format!("{} stands twice; once is enough ({page})", bare(&arg))
            } else {
                format!("{} and {} do not go together ({page})", bare(&arg), bare(&other))
            }
        }
        ErrorKind::MissingRequiredArgument => {
            let missing = context(error, ContextKind::InvalidArg).join(", ");
            format!("{} is missing ({page})", bare(&missing))
        }
        ErrorKind::TooFewValues | ErrorKind::WrongNumberOfValues | ErrorKind::NoEquals => {
            format!("{} needs a value behind it ({page})", bare(&arg))
        }
        ErrorKind::InvalidUtf8 => {
            format!("a word of the command line is not UTF-8 text; only names of files may be so ({page})")
        }
        _ => format!("the command line was not understood ({page})"),
    }
}
