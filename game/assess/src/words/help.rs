//! Help: an overview by what one wants to do, and a page for each word (clap's own, from the grammar).

use clap::CommandFactory as _;

use super::WordsError;
use super::grammar::Line;
use super::names::similar;

/// Words by what they are for, in the order in which a job usually needs them.
const GROUPS: &[(&str, &[&str])] = &[
    ("Paper", &["card", "sheet", "record", "notebook", "list", "note", "suspect", "finding"]),
    ("Look round (free)", &["look", "car", "tools", "store", "help"]),
    ("States that last", &["chocks", "extraction", "key", "engine", "pedal"]),
    ("Time", &["time", "wait", "overnight"]),
    ("Senses", &["hum", "hiss", "touch", "feel", "look", "brakes", "drive"]),
    ("Instruments", &["fit", "take", "read", "meter", "press", "let", "stroke"]),
    ("Hands on", &["cover", "open", "join", "plug", "clamp", "free", "pull", "push"]),
    ("Put right", &["swap", "clean", "reform"]),
    ("End", &["hand back", "mark", "quit"]),
];

/// The overview: every word in groups, at most 80 columns wide.
#[must_use]
pub fn overview() -> String {
    let mut text = String::new();
    for (title, words) in GROUPS {
        text.push_str(&format!("  {title:<18} {}\n", words.join("  ")));
    }
    text.push_str(
        "\nhelp WORD tells more, with examples. Names such as hose_m, tee.2 or valve_m_new\n\
         may be typed with - or _, and the Tab key completes them. Work and waiting\n\
         cost workshop minutes, papers one each. Only what you note counts as evidence.\n\
         Sleeves and glasses are taken as worn: no word for them.\n",
    );
    text
}

/// The page of one word.
///
/// # Errors
/// When there is no such word, with the nearest ones.
pub fn help(word: &str) -> Result<String, WordsError> {
    let mut line = Line::command().term_width(80);
    let wanted = word.to_lowercase();
    match line.find_subcommand_mut(&wanted) {
        Some(found) => {
            let about = found.get_about().map(ToString::to_string).unwrap_or_default();
            let after = found.get_after_help().map(ToString::to_string).unwrap_or_default();
            let usage = found.render_usage().to_string().replace("Usage: ", "");
            let aliases: Vec<&str> = found.get_all_aliases().collect();
            let mut text = format!("{about}.\n\n  {}\n", usage.to_lowercase());
            for arg in found.get_arguments() {
                let values: Vec<String> = arg
                    .get_possible_values()
                    .iter()
                    .filter_map(|v| v.get_help().map(|h| format!("    {:<14}{h}", v.get_name())))
                    .collect();
                if values.is_empty() {
                    if let Some(help) = arg.get_help() {
                        text.push_str(&format!("    {:<14}{help}\n", arg.get_id().as_str()));
                    }
                } else {
                    text.push_str(&(values.join("\n") + "\n"));
                }
            }
            text.push_str(&format!("\n{after}\n"));
            if !aliases.is_empty() {
                text.push_str(&format!("Also understood: {}\n", aliases.join(", ")));
            }
            Ok(text)
        }
        None => {
            let words = verbs();
            let near = similar(&wanted, words.iter().map(String::as_str));
            let hint = if near.is_empty() {
                "type help to see all words".to_owned()
            } else {
                format!("did you mean {}?", near.join(" or "))
            };
            Err(WordsError::UnknownWord { word: word.to_owned(), hint })
        }
    }
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
pub(super) fn example(word: &str) -> Option<String> {
    let line = Line::command();
    let after = line.find_subcommand(word)?.get_after_help()?.to_string();
    let rest = after.split_once(':')?.1;
    let first = rest.lines().map(str::trim).find(|l| !l.is_empty())?;
    // Cut the explanation beside it and the alternatives after it.
    let cut = first.split(" · ").next()?.split("   ").next()?;
    Some(cut.trim().to_owned())
}
