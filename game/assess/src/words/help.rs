//! Help: an overview by what one wants to do, and a page for each word (clap's own, from the grammar).

use crate::sentence;
use clap::{Command, CommandFactory as _};

use super::WordsError;
use super::grammar::Line;
use super::names::{Vocabulary, did_you_mean, similar};
use crate::locale::Locale;
use crate::locale::sentence::Sentence;

/// Words by what they are for, in the order in which a job usually needs them: key of the title, title, words.
const GROUPS: &[(&str, &str, &[&str])] = &[
    ("help-group-paper", "Paper", &["card", "sheet", "record", "notebook", "list", "note", "suspect"]),
    ("help-group-look", "Look round (free)", &["look", "car", "tools", "store", "help"]),
    ("help-group-states", "States that last", &["chocks", "extraction", "key", "engine", "pedal"]),
    ("help-group-time", "Time", &["time", "wait", "overnight"]),
    ("help-group-senses", "Senses", &["hum", "hiss", "touch", "feel", "look", "brakes", "drive"]),
    ("help-group-instruments", "Instruments", &["fit", "take", "read", "meter", "press", "let", "stroke"]),
    ("help-group-hands", "Hands on", &["cover", "open", "join", "plug", "clamp", "free", "pull", "push"]),
    ("help-group-right", "Put right", &["swap", "clean", "reform"]),
    ("help-group-end", "End", &["next", "finding", "hand back", "mark", "quit"]),
];

/// What stands under the overview.
const FOOT: (&str, &str) = (
    "help-foot",
    "help WORD tells more, with examples. Names such as <hose>, <branch> or <spare>\n\
     may be typed with - or _, and the Tab key completes them. Work and waiting\n\
     cost workshop minutes, papers one each. Only what you note counts as evidence.\n\
     Sleeves and glasses are taken as worn: no word for them.",
);

/// Above the other words that are understood.
const ALSO: (&str, &str) = ("help-also", "Also understood:");

/// How the page of a word is asked for in another language: its own key, or that of one of its arguments or values.
fn key(word: &str, more: &[&str]) -> String {
    let parts: Vec<&str> = ["help-word", word].into_iter().chain(more.iter().copied()).collect();
    parts.join("-")
}

fn said(locale: &Locale, key: &str, english: &str) -> String {
    locale.translated(key, &[]).unwrap_or_else(|| english.to_owned())
}

/// The overview: every word in groups, at most 80 columns wide. The words themselves are the same in every language.
#[must_use]
pub fn overview(names: &Vocabulary, locale: &Locale) -> String {
    let mut text = String::new();
    for (key, title, words) in GROUPS {
        let title = said(locale, key, title);
        text.push_str(&format!("  {title:<18} {}\n", words.join("  ")));
    }
    text.push_str(&format!("\n{}\n", names.example(&said(locale, FOOT.0, FOOT.1))));
    text
}

/// The page of one word, with examples from the car at hand.
///
/// # Errors
/// When there is no such word, with the nearest ones.
pub fn help(word: &str, names: &Vocabulary, locale: &Locale) -> Result<String, WordsError> {
    let mut line = Line::command().term_width(80);
    let wanted = word.to_lowercase();
    let Some(found) = line.find_subcommand_mut(&wanted) else {
        let words = verbs();
        let near = similar(&wanted, words.iter().map(String::as_str));
        let hint = if near.is_empty() { all_words() } else { did_you_mean(&near) };
        return Err(WordsError::UnknownWord { word: word.to_owned(), hint });
    };
    let name = found.get_name().to_owned();
    let called = |id: &str| said(locale, &key_of_argument(id), id);
    *found = std::mem::replace(found, Command::new("")).mut_args(|arg| match arg.is_positional() {
        true => {
            let called = called(arg.get_id().as_str());
            arg.value_name(called)
        }
        false => arg,
    });
    let say = |more: &[&str], english: Option<String>| {
        locale.translated(&key(&name, more), &[]).or(english).unwrap_or_default()
    };
    let about = say(&[], found.get_about().map(ToString::to_string));
    let after = names.example(&say(&["after"], found.get_after_help().map(ToString::to_string)));
    let usage = found.render_usage().to_string().replace("Usage: ", "").to_lowercase();
    let aliases: Vec<&str> = found.get_all_aliases().collect();
    let mut text = format!("{about}.\n\n  {usage}\n");
    for arg in found.get_arguments() {
        let id = arg.get_id().as_str();
        let values: Vec<String> = arg
            .get_possible_values()
            .iter()
            .filter_map(|v| {
                let help = say(&[id, v.get_name()], Some(v.get_help()?.to_string()));
                Some(format!("    {:<14}{help}", v.get_name()))
            })
            .collect();
        if !values.is_empty() {
            text.push_str(&(values.join("\n") + "\n"));
        } else if let Some(help) = arg.get_help() {
            // clap's own flag is the same on every page.
            let help = match id {
                "help" => said(locale, "help-flag", &help.to_string()),
                _ => say(&[id], Some(help.to_string())),
            };
            let id = called(id);
            text.push_str(&format!("    {id:<14}{help}\n"));
        }
    }
    text.push_str(&format!("\n{after}\n"));
    if !aliases.is_empty() {
        text.push_str(&format!("{} {}\n", said(locale, ALSO.0, ALSO.1), aliases.join(", ")));
    }
    Ok(text)
}

/// What stands for an argument where a word is explained.
fn key_of_argument(id: &str) -> String {
    format!("help-arg-{id}")
}

/// Where all words are shown.
pub(super) fn all_words() -> Sentence {
    sentence!("plain-all-words", "type help to see all words")
}

/// Every key of the help, with its English: what another language is asked for.
#[must_use]
pub fn help_keys() -> Vec<(String, String)> {
    let mut keys: Vec<(String, String)> =
        GROUPS.iter().map(|(key, title, _)| ((*key).to_owned(), (*title).to_owned())).collect();
    keys.extend([FOOT, ALSO, ("help-flag", "Print help")].map(|(k, e)| (k.to_owned(), e.to_owned())));
    for word in Line::command().get_subcommands().filter(|c| !c.is_hide_set()) {
        let name = word.get_name();
        for arg in word.get_positionals().map(|arg| arg.get_id().as_str()) {
            keys.push((key_of_argument(arg), arg.to_owned()));
        }
        let mut add = |more: &[&str], english: Option<String>| {
            keys.extend(english.map(|english| (key(name, more), english)));
        };
        add(&[], word.get_about().map(ToString::to_string));
        add(&["after"], word.get_after_help().map(ToString::to_string));
        for arg in word.get_arguments() {
            let id = arg.get_id().as_str();
            let values = arg.get_possible_values();
            let told: Vec<_> = values.iter().filter_map(|v| Some((v.get_name(), v.get_help()?))).collect();
            if told.is_empty() {
                add(&[id], arg.get_help().map(ToString::to_string));
            }
            for (value, help) in told {
                add(&[id, value], Some(help.to_string()));
            }
        }
    }
    keys
}

/// Every first word, for completion.
#[must_use]
pub fn verbs() -> Vec<String> {
    let mut words: Vec<String> = Line::command()
        .get_subcommands()
        .filter(|c| !c.is_hide_set())
        .map(|c| c.get_name().to_owned())
        .collect();
    words.push("help".to_owned());
    words.sort();
    words
}

/// The first example of a word's page.
pub(super) fn example(word: &str, names: &Vocabulary) -> Option<String> {
    let line = Line::command();
    let after = line.find_subcommand(word)?.get_after_help()?.to_string();
    let rest = after.split_once(':')?.1;
    let first = rest.lines().map(str::trim).find(|l| !l.is_empty())?;
    // Cut the explanation beside it and the alternatives after it.
    let cut = first.split(" · ").next()?.split("   ").next()?;
    Some(names.example(cut.trim()))
}
