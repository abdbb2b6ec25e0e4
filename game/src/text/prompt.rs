//! The prompt: line editing with history and completion, or plain lines from a pipe.

use std::io::{self, BufRead as _, IsTerminal as _, Read as _};
use std::path::{Path, PathBuf};

use anyhow::{Context as _, bail};
use assess::files;
use assess::words::{self as plain, Vocabulary};
use front::words::Words;
use rustyline::completion::{Completer, Pair};
use rustyline::error::ReadlineError;
use rustyline::history::FileHistory;
use rustyline::{Config, Context, Editor, Helper, Highlighter, Hinter, Validator};

use crate::tongue::say;

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
    Piped(io::StdinLock<'static>, u64),
}

/// What came when a line was asked for.
pub(super) enum Line {
    /// A line.
    Text(String),
    /// Something that is no line of text; carries what to say about it.
    Bad(String),
    /// Nothing more comes.
    End,
}

/// Longest line from a pipe that is kept, bytes; what it says is limited besides ([`plain::LONGEST_LINE`]).
const LONGEST_KEPT: u64 = 8 * plain::LONGEST_LINE as u64;

impl Lines {
    /// From the terminal if there is one, else from the pipe. What is typed is kept beside the attempt, if there is one
    /// and a history can be had there.
    pub(super) fn open(vocabulary: Option<&Vocabulary>, attempt: Option<&Path>) -> anyhow::Result<Self> {
        if !io::stdin().is_terminal() || !io::stdout().is_terminal() {
            return Ok(Self::Piped(io::stdin().lock(), 0));
        }
        let config = Config::builder().auto_add_history(true).history_ignore_space(true).build();
        let mut editor: Editor<Names, FileHistory> = Editor::with_config(config)?;
        if let Some(vocabulary) = vocabulary {
            let mut names: Vec<String> = vocabulary.names().map(str::to_owned).collect();
            names.sort();
            names.dedup();
            editor.set_helper(Some(Names { verbs: plain::verbs(), names }));
        }
        // A pipe under its name would wait for ever.
        let usable = |file: &PathBuf| files::read(file, files::HISTORY).is_ok();
        let history = attempt.and_then(front::places::history).filter(usable);
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

    /// The next line.
    ///
    /// # Errors
    /// When the terminal or the pipe cannot be read, or sends what never becomes a line.
    pub(super) fn next(&mut self, words: &Words, prompt: &str) -> anyhow::Result<Line> {
        match self {
            Self::Typed(editor, history) => match editor.readline(prompt) {
                Ok(line) => {
                    if let Some(file) = history {
                        // A history that cannot be kept must not stop the work.
                        drop(editor.append_history(file));
                    }
                    Ok(Line::Text(line))
                }
                Err(ReadlineError::Eof | ReadlineError::Interrupted) => Ok(Line::End),
                Err(ReadlineError::Io(e)) if e.kind() == io::ErrorKind::InvalidData => {
                    Ok(Line::Bad(words.say("bench-not-text")))
                }
                Err(e) => Err(e).with_context(|| words.say("bench-terminal")),
            },
            Self::Piped(pipe, line) => {
                *line += 1;
                piped(words, pipe, *line)
            }
        }
    }
}

/// The next line of a pipe.
fn piped(words: &Words, pipe: &mut io::StdinLock<'static>, line: u64) -> anyhow::Result<Line> {
    let mut bytes = Vec::new();
    let read = pipe.take(LONGEST_KEPT).read_until(b'\n', &mut bytes);
    if let Err(e) = read {
        let why = words.value(&files::refusal(&e, files::Doing::Read));
        bail!("{}", say!(words, "bench-input", why = why));
    }
    if bytes.is_empty() {
        return Ok(Line::End);
    }
    if bytes.len() as u64 == LONGEST_KEPT && !bytes.ends_with(b"\n") {
        let mut passed = LONGEST_KEPT;
        loop {
            bytes.clear();
            let more = pipe.take(LONGEST_KEPT).read_until(b'\n', &mut bytes).unwrap_or(0);
            passed += more as u64;
            if more == 0 || bytes.ends_with(b"\n") {
                break;
            }
            if files::SCRIPT.most < passed {
                bail!("{}", say!(words, "bench-endless", line = line, bytes = passed));
            }
        }
        let most = plain::LONGEST_LINE;
        return Ok(Line::Bad(say!(words, "bench-line-long", line = line, bytes = passed, most = most)));
    }
    match String::from_utf8(bytes) {
        Ok(text) => Ok(Line::Text(text.trim_end_matches(['\n', '\r']).to_owned())),
        Err(_) => Ok(Line::Bad(say!(words, "bench-line-not-text", line = line))),
    }
}
