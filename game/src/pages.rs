//! The help of the command line in the language shown.
//!
//! The English stands where the options are defined (`cli.rs`, clap's derive). Another language says each page, option
//! and value anew by its key (`cli-text-about`, `cli-text-script-help`); names of commands and options, which are typed,
//! stay. What clap itself adds (headings, defaults, the names of values) is said by keys too.

use clap::{Arg, Command};
use front::words::{FALLBACK, Words};

/// Key of the pages, options and values of the program itself; commands add their name.
const ROOT: &str = "cli";

/// The words of a key.
type Tell<'a> = &'a dyn Fn(&str) -> Option<String>;

/// The command line with its help in the language of `words`.
pub(crate) fn in_language(command: Command, words: &Words) -> Command {
    // The English is in the program.
    if words.tag() == FALLBACK {
        return command;
    }
    translated(command, &|key| words.translated(key, &[]))
}

fn translated(command: Command, tell: Tell<'_>) -> Command {
    let mut command = page(command, ROOT, tell);
    // From here on clap's own flags and its command `help` are there too.
    command.build();
    own(command, tell)
}

/// `-help` and the like behind the key of a page.
fn key(path: &str, more: &str) -> String {
    format!("{path}-{more}")
}

/// A name as a part of a key.
fn key_part(name: &str) -> String {
    name.to_lowercase().replace(|c: char| !c.is_ascii_alphanumeric() && c != '_', "-")
}

/// A page and those below it.
fn page(mut command: Command, path: &str, tell: Tell<'_>) -> Command {
    let texts =
        [command.get_about(), command.get_long_about(), command.get_after_help()].map(|t| t.is_some());
    let said = |is: bool, more: &str| is.then(|| tell(&key(path, more))).flatten();
    if let Some(about) = said(texts[0], "about") {
        command = command.about(about);
    }
    if let Some(about) = said(texts[1], "long") {
        command = command.long_about(about);
    }
    if let Some(after) = said(texts[2], "after") {
        command = command.after_help(after);
    }
    let heading = |positional: bool| tell(if positional { "cli-arguments" } else { "cli-options" });
    command = command.mut_args(|arg| {
        let heading = heading(arg.is_positional());
        let arg = option(arg, path, tell);
        match heading {
            Some(heading) => arg.help_heading(heading),
            None => arg,
        }
    });
    command.mut_subcommands(|sub| {
        let path = key(path, sub.get_name());
        page(sub, &path, tell)
    })
}

/// An option with its help, its default and its values.
fn option(mut arg: Arg, path: &str, tell: Tell<'_>) -> Arg {
    let path = key(path, &key_part(arg.get_id().as_str()));
    let Some(mut help) = arg.get_help().and_then(|_| tell(&key(&path, "help"))) else { return arg };
    let takes = arg.get_action().takes_values();
    let names: Vec<String> = arg
        .get_value_names()
        .unwrap_or_default()
        .iter()
        .map(|name| tell(&format!("cli-value-{}", key_part(name))).unwrap_or_else(|| name.to_string()))
        .collect();
    if takes && !names.is_empty() {
        arg = arg.value_names(names);
    }
    let remark = |key: &str, values: &[String]| match (values.is_empty(), tell(key)) {
        (false, Some(word)) => format!(" [{word} {}]", values.join(", ")),
        _ => String::new(),
    };
    let defaults: Vec<String> =
        arg.get_default_values().iter().map(|v| v.to_string_lossy().into_owned()).collect();
    if takes {
        help += &remark("cli-default", &defaults);
    }
    let values = arg.get_possible_values();
    let values: Vec<_> = values.iter().filter(|_| takes).collect();
    let told: Vec<String> = values
        .iter()
        .filter_map(|v| {
            v.get_help()?;
            Some(format!("- {}: {}", v.get_name(), tell(&key(&path, v.get_name()))?))
        })
        .collect();
    let long = help.clone();
    let names: Vec<String> = values.iter().map(|v| v.get_name().to_owned()).collect();
    help += &remark("cli-possible-values", &names);
    if let (false, Some(word)) = (told.is_empty(), tell("cli-possible-values")) {
        let mut word = word.chars();
        let word: String =
            word.next().map(|c| c.to_uppercase().collect::<String>() + word.as_str()).unwrap_or_default();
        arg = arg.long_help(format!("{long}\n\n{word}\n{}", told.join("\n")));
    }
    arg.help(help).hide_default_value(takes).hide_possible_values(takes)
}

/// What clap adds by itself, on every page.
fn own(mut command: Command, tell: Tell<'_>) -> Command {
    for (id, key) in [("help", "cli-flag-help"), ("version", "cli-flag-version")] {
        if command.get_arguments().any(|arg| arg.get_id() == id)
            && let Some(help) = tell(key)
        {
            command = command.mut_arg(id, |arg| {
                let arg = match arg.get_long_help().is_some() {
                    true => arg.long_help(help.clone()).help(help),
                    false => arg.help(help),
                };
                match tell("cli-options") {
                    Some(heading) => arg.help_heading(heading),
                    None => arg,
                }
            });
        }
    }
    if let Some(heading) = tell("cli-commands") {
        command = command.subcommand_help_heading(heading);
    }
    if let Some(usage) = tell("cli-usage") {
        let typed = command.render_usage().to_string();
        let mut typed = typed.trim_start_matches("Usage:").trim().to_owned();
        for (english, key) in [("[OPTIONS]", "cli-usage-options"), ("[COMMAND]", "cli-usage-command")] {
            if let Some(word) = tell(key) {
                typed = typed.replace(english, &format!("[{word}]"));
            }
        }
        command = command.override_usage(typed).help_template(format!(
            "{{before-help}}{{about-with-newline}}\n{usage} {{usage}}\n\n{{all-args}}{{after-help}}"
        ));
    }
    command.mut_subcommands(|sub| {
        let sub = match (sub.get_name(), tell("cli-command-help")) {
            ("help", Some(about)) => sub.about(about),
            _ => sub,
        };
        own(sub, tell)
    })
}

#[cfg(test)]
mod tests {
    use std::cell::RefCell;
    use std::collections::BTreeMap;

    use clap::CommandFactory as _;

    use super::*;
    use crate::cli::Cli;

    /// What clap says by itself, in its own words.
    const CLAP: [(&str, &str); 11] = [
        ("cli-usage", "Usage:"),
        ("cli-usage-options", "OPTIONS"),
        ("cli-usage-command", "COMMAND"),
        ("cli-commands", "Commands"),
        ("cli-arguments", "Arguments"),
        ("cli-options", "Options"),
        ("cli-default", "default:"),
        ("cli-possible-values", "possible values:"),
        ("cli-flag-help", "Print help"),
        ("cli-flag-version", "Print version"),
        ("cli-command-help", "Print this message or the help of the given subcommand(s)"),
    ];

    /// Every key with its English.
    fn english(command: &Command, path: &str, out: &mut BTreeMap<String, String>) {
        let texts = [
            ("about", command.get_about()),
            ("long", command.get_long_about()),
            ("after", command.get_after_help()),
        ];
        for (more, text) in texts {
            out.extend(text.map(|text| (key(path, more), text.to_string())));
        }
        for arg in command.get_arguments() {
            let Some(help) = arg.get_help() else { continue };
            let path = key(path, &key_part(arg.get_id().as_str()));
            out.insert(key(&path, "help"), help.to_string());
            let takes = arg.get_action().takes_values();
            for name in arg.get_value_names().unwrap_or_default().iter().filter(|_| takes) {
                out.insert(format!("cli-value-{}", key_part(name)), name.to_string());
            }
            for value in arg.get_possible_values().iter().filter(|_| takes) {
                out.extend(value.get_help().map(|help| (key(&path, value.get_name()), help.to_string())));
            }
        }
        for sub in command.get_subcommands() {
            english(sub, &key(path, sub.get_name()), out);
        }
    }

    fn words(tag: &str) -> Words {
        let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
        Words::open(&root, &[tag.to_owned()]).unwrap()
    }

    /// Keys of the pages in the file of a language.
    fn in_file(tag: &str) -> Vec<String> {
        let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
        let text = std::fs::read_to_string(root.join("assets/locales").join(tag).join("pages.ftl")).unwrap();
        let keys = text.lines().filter(|l| l.starts_with("cli-"));
        keys.filter_map(|l| Some(l.split_once(" =")?.0.to_owned())).collect()
    }

    /// As it is written in a file of words.
    fn entry(key: &str, text: &str) -> String {
        match text.contains('\n') {
            true => text.lines().fold(format!("{key} ="), |all, line| {
                all + "\n" + if line.is_empty() { "" } else { "    " } + line
            }),
            false => format!("{key} = {text}"),
        }
    }

    #[test]
    fn inv_the_english_file_says_what_the_pages_say() {
        let mut wanted: BTreeMap<String, String> =
            CLAP.iter().map(|(k, t)| ((*k).to_owned(), (*t).to_owned())).collect();
        english(&Cli::command(), ROOT, &mut wanted);
        assert!(60 < wanted.len(), "only {} keys", wanted.len());
        let words = words(FALLBACK);
        let wrong: Vec<String> = wanted
            .iter()
            .filter(|(key, text)| words.find(key, &[]).as_ref() != Some(*text))
            .map(|(key, text)| entry(key, text))
            .collect();
        assert!(wrong.is_empty(), "put this into assets/locales/en/pages.ftl:\n{}", wrong.join("\n"));
        // Without the window its pages are not there to be asked.
        if cfg!(feature = "window") {
            let idle: Vec<String> =
                in_file(FALLBACK).into_iter().filter(|k| !wanted.contains_key(k)).collect();
            assert!(idle.is_empty(), "no page asks for {idle:?}");
        }
    }

    #[test]
    fn inv_every_other_language_is_asked_for_every_key_of_the_pages() {
        let mut wanted = BTreeMap::new();
        english(&Cli::command(), ROOT, &mut wanted);
        for tag in words(FALLBACK).tags().iter().filter(|tag| *tag != FALLBACK) {
            let words = words(tag);
            let asked = RefCell::new(Vec::new());
            let tell = |key: &str| {
                asked.borrow_mut().push(key.to_owned());
                words.translated(key, &[])
            };
            let command = translated(Cli::command(), &tell);
            command.clone().debug_assert();
            let (asked, there) = (asked.into_inner(), in_file(tag));
            for key in asked.iter().filter(|key| in_file(FALLBACK).contains(key)) {
                assert!(there.contains(key), "{tag} lacks {key}");
            }
            let unasked: Vec<_> = wanted.keys().filter(|key| !asked.contains(key)).collect();
            assert!(unasked.is_empty(), "nobody asks for {unasked:?}");
            if cfg!(feature = "window") {
                let idle: Vec<_> = there.iter().filter(|key| !asked.contains(key)).collect();
                assert!(idle.is_empty(), "{tag}: nobody asks for {idle:?}");
            }
            // Nothing of clap's own English is left on any page.
            for page in ["pinhole", "text", "trace", "replay", "mark", "mend", "bench"] {
                let mut command = command.clone();
                let sub = match page {
                    "pinhole" => Some(&mut command),
                    sub => command.find_subcommand_mut(sub),
                };
                let text = sub.unwrap().render_long_help().to_string();
                for (_, english) in CLAP {
                    assert!(!text.contains(english), "{tag}, {page}: {english:?} in {text}");
                }
            }
        }
    }

    #[test]
    fn english_is_left_as_it_is() {
        let (mut left, mut given) = (in_language(Cli::command(), &Words::built_in()), Cli::command());
        assert_eq!(left.render_long_help().to_string(), given.render_long_help().to_string());
    }
}
