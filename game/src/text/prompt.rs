//! The prompt: line editing with history and completion, or plain lines from a pipe.

use std::borrow::Cow;
use std::io::{self, BufRead as _, IsTerminal as _};
use std::path::PathBuf;

use assess::words::{self, Vocabulary};
use rustyline::completion::{Completer, Pair};
use rustyline::error::ReadlineError;
use rustyline::history::FileHistory;
use rustyline::{Config, Context, Editor, Helper, Highlighter, Hinter, Validator};

/// Completes the first word from the words, the others from the names of the job and what the word
/// itself takes.
#[derive(Helper, Highlighter, Hinter, Validator)]
pub(super) struct Names {
    verbs: Vec<String>,
    names: Vec<String>,
}

/// Words that follow certain first words.
const FOLLOWERS: &[(&str, &[&str])] = &[
    ("engine", &["idle", "cold", "cruise", "overrun", "open", "stop"]),
    ("key", &["on", "off"]),
    ("chocks", &["on", "off"]),
    ("extraction", &["on", "off"]),
    ("pedal", &["press", "prop", "release", "pump"]),
    ("meter", &["volt", "ohm", "amp", "off"]),
    ("time", &["run", "rest"]),
    ("feel", &["pedal", "moved", "applications"]),
    ("wait", &["until"]),
    ("look", &["brakes"]),
    ("hand", &["back"]),
    ("finding", &["none", "unknown", "sure"]),
    ("note", &["for"]),
    ("swap", &["with"]),
    ("cover", &["on", "off"]),
    ("until", &["pump stops", "pump starts", "lamp out", "lamp on"]),
];

impl Completer for Names {
    type Candidate = Pair;

    fn complete(&self, line: &str, pos: usize, _: &Context<'_>) -> rustyline::Result<(usize, Vec<Pair>)> {
        let before = line.get(..pos).unwrap_or(line);
        let start = before.rfind([' ', '=']).map_or(0, |i| i + 1);
        let typed = &before[start..];
        let earlier: Vec<&str> = before[..start].split_whitespace().collect();
        let plain = |s: &str| s.to_lowercase().replace('-', "_");
        let wanted = plain(typed);
        let mut found: Vec<String> = Vec::new();
        let mut offer = |word: &str| {
            if plain(word).starts_with(&wanted) && !found.iter().any(|f| f == word) {
                found.push(word.to_owned());
            }
        };
        match earlier.as_slice() {
            [] | ["help"] => self.verbs.iter().for_each(|v| offer(v)),
            [.., last] => {
                for (word, follow) in FOLLOWERS {
                    if word == last || earlier.first() == Some(word) {
                        follow.iter().for_each(|f| offer(f));
                    }
                }
                self.names.iter().for_each(|n| offer(n));
            }
        }
        let pairs = found.into_iter().map(|w| Pair { display: w.clone(), replacement: w }).collect();
        Ok((start, pairs))
    }
}

/// Where lines come from.
pub(super) enum Lines {
    /// Someone types.
    Typed(Box<Editor<Names, FileHistory>>, Option<PathBuf>),
    /// A pipe or a file.
    Piped(io::Lines<io::StdinLock<'static>>),
}

impl Lines {
    /// From the terminal if there is one, else from the pipe.
    pub(super) fn open(vocabulary: Option<&Vocabulary>) -> anyhow::Result<Self> {
        if !io::stdin().is_terminal() || !io::stdout().is_terminal() {
            return Ok(Self::Piped(io::stdin().lock().lines()));
        }
        let config = Config::builder().auto_add_history(true).history_ignore_space(true).build();
        let mut editor: Editor<Names, FileHistory> = Editor::with_config(config)?;
        if let Some(vocabulary) = vocabulary {
            let mut names: Vec<String> = vocabulary.names().map(str::to_owned).collect();
            names.sort();
            names.dedup();
            editor.set_helper(Some(Names { verbs: words::verbs(), names }));
        }
        let history = crate::places::history();
        if let Some(file) = &history {
            // No history yet is no fault.
            drop(editor.load_history(file));
        }
        Ok(Self::Typed(Box::new(editor), history))
    }

    /// Whether someone types.
    pub(super) fn is_typed(&self) -> bool {
        matches!(self, Self::Typed(..))
    }

    /// The next line; `None` at the end.
    pub(super) fn next(&mut self, prompt: &str) -> anyhow::Result<Option<Cow<'static, str>>> {
        match self {
            Self::Typed(editor, history) => match editor.readline(prompt) {
                Ok(line) => {
                    if let Some(file) = history {
                        // A history that cannot be kept must not stop the work.
                        drop(editor.append_history(file));
                    }
                    Ok(Some(line.into()))
                }
                Err(ReadlineError::Eof | ReadlineError::Interrupted) => Ok(None),
                Err(e) => Err(e.into()),
            },
            Self::Piped(lines) => Ok(lines.next().transpose()?.map(Into::into)),
        }
    }
}
