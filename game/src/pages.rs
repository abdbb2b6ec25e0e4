//! The help of the command line in the language shown.
//!
//! The English stands where the options are defined (`cli.rs`, clap's derive). Another language says each page, option
//! and value anew by its key (`cli-text-about`, `cli-text-script-help`); names of commands and options, which are typed,
//! stay. What clap itself adds (headings, defaults, the names of values) is said by keys too.

use clap::{Arg, Command};
use front::words::{FALLBACK, Words};

use crate::tongue;

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
    translated(command, &|key| tongue::find(words, key, &[]))
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
    let names: Vec<String> = arg
        .get_value_names()
        .unwrap_or_default()
        .iter()
        .map(|name| tell(&format!("cli-value-{}", key_part(name))).unwrap_or_else(|| name.to_string()))
        .collect();
    if !names.is_empty() {
        arg = arg.value_names(names);
    }
    let remark = |key: &str, values: &[String]| match (values.is_empty(), tell(key)) {
        (false, Some(word)) => format!(" [{word} {}]", values.join(", ")),
        _ => String::new(),
    };
    let defaults: Vec<String> =
        arg.get_default_values().iter().map(|v| v.to_string_lossy().into_owned()).collect();
    if arg.get_action().takes_values() {
        help += &remark("cli-default", &defaults);
    }
    let values = arg.get_possible_values();
    let values: Vec<_> = values.iter().filter(|_| arg.get_action().takes_values()).collect();
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
    let takes = arg.get_action().takes_values();
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
