//! Plain words for everything that can be done in the workshop, and back again.
//!
//! A typed line is split as a shell would split it (shlex) and read by clap as a small command line of
//! its own. The text bench, `--script` files and the reference attempts of the packs all speak it.
//! Names are looked up here, so that a slip of the finger never becomes a line of the attempt.

mod examples;
mod grammar;
mod help;
mod kind;
mod names;
mod notes;
mod resolve;
mod say;
pub mod typed;

use crate::sentence;
use clap::Parser as _;
use clap::error::{ContextKind, ContextValue, ErrorKind};
use sim_core::action::Action;
use sim_core::observe::Reading;

use crate::locale::quote::{bare, quoted};
use crate::locale::sentence::Sentence;
pub use help::{help, help_keys, overview, verbs};
pub use kind::Kind;
pub use names::Vocabulary;
pub use say::say;

/// Longest line that is understood, characters.
pub const LONGEST_LINE: usize = 1_000;
/// Longest suspicion, characters: a page.
pub const LONGEST_SUSPICION: usize = 1_000;

/// What a line means.
#[derive(Clone, Debug, PartialEq)]
pub enum Said {
    /// An empty line or a comment.
    Nothing,
    /// Something to do in the workshop.
    Do(Action),
    /// Note a reading as it was shown: scripts only.
    NoteShown {
        /// Running number of the reading.
        reading: u32,
        /// Line of the record.
        record: Option<String>,
    },
    /// A question to the bench itself; costs no time and, but for [`Ask::Next`], leaves no trace.
    Ask(Ask),
}

/// Questions to the bench.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Ask {
    /// All words, or one.
    Help(Option<String>),
    /// What is open, fitted and on.
    Look,
    /// Parts, ports and joints.
    Car,
    /// The tool board, or one tool.
    Tools(Option<String>),
    /// Spares and repairs.
    Store,
    /// What is noted.
    Notebook,
    /// What is not noted yet.
    List,
    /// Lines of the record.
    Record,
    /// What one part looks like, where it is and what it is joined to.
    Part(String),
    /// Which test would tell most now; it is written down and counts.
    Next,
    /// The mark sheet.
    Mark,
    /// Leave.
    Quit,
}

/// Why a line was not understood. Nothing has happened then.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[error("{}", self.sentence())]
#[non_exhaustive]
pub enum WordsError {
    /// The first word is none of ours.
    UnknownWord {
        /// The word.
        word: String,
        /// Did you mean, or where to look.
        hint: Sentence,
    },
    /// A name that this job does not have.
    NoSuch {
        /// Part, port, joint, unit, …
        kind: Kind,
        /// As typed.
        name: String,
        /// Did you mean, or what there is.
        hint: Sentence,
    },
    /// Longer than any line that means something.
    TooLong {
        /// How many.
        count: usize,
    },
    /// The words do not make a line.
    Shape {
        /// What is missing, too much or out of place.
        problem: Sentence,
        /// A line that works.
        example: String,
    },
}

impl WordsError {
    /// What was not understood, for every language.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        match self {
            Self::UnknownWord { word, hint } => sentence!(
                "plain-unknown-word",
                "I do not know the word {word}; {hint}",
                word = quoted(word),
                hint = hint.clone()
            ),
            Self::NoSuch { kind, name, hint } => kind.no_such(name, hint),
            Self::TooLong { count } => sentence!(
                "plain-too-long",
                "a line of {count} characters; at most {most} are read",
                count = *count,
                most = LONGEST_LINE
            ),
            Self::Shape { problem, example } => sentence!(
                "plain-shape",
                "{problem}; for example: {example}",
                problem = problem.clone(),
                example = example
            ),
        }
    }

    fn shape(problem: Sentence, example: impl Into<String>) -> Self {
        Self::Shape { problem, example: example.into() }
    }
}

/// Reads one line. `readings` are the readings of the attempt so far (for `note`).
///
/// # Errors
/// Says which word was not understood and gives the nearest that would be.
pub fn parse(line: &str, names: &Vocabulary, readings: &[Reading]) -> Result<Said, WordsError> {
    let line = line.trim();
    let count = line.chars().count();
    if LONGEST_LINE < count {
        return Err(WordsError::TooLong { count });
    }
    if let Some((word, text)) = line.split_once(char::is_whitespace)
        && word.eq_ignore_ascii_case("suspect")
        && !is_help(text.trim())
    {
        return Ok(Said::Do(Action::Suspect { text: free_text(text.trim()) }));
    }
    // `#7` is reading 7; any other `#` begins a remark.
    let numbered: Vec<&str> = line
        .split_whitespace()
        .map(|w| match w.strip_prefix('#') {
            Some(id) if id.starts_with(|c: char| c.is_ascii_digit()) => id,
            _ => w,
        })
        .collect();
    let line = numbered.join(" ");
    // An apostrophe is no opening quote: then split at blanks.
    let tokens = shlex::split(&line).unwrap_or_else(|| line.split_whitespace().map(str::to_owned).collect());
    let Some(first) = tokens.first() else { return Ok(Said::Nothing) };
    if first.starts_with('#') {
        return Ok(Said::Nothing);
    }
    if is_help(first) {
        return Ok(Said::Ask(Ask::Help(tokens.get(1).cloned())));
    }
    if tokens.iter().any(|t| is_help(t)) {
        return Ok(Said::Ask(Ask::Help(Some(first.clone()))));
    }
    let tokens = rephrase(tokens, names)?;
    let line = grammar::Line::try_parse_from(&tokens).map_err(|e| plain_error(&tokens, &e, names))?;
    resolve::resolve(line.word, names, readings)
}

/// What people say before they know the words: `turn the key off`, `start engine`, `go to the bay`.
fn rephrase(tokens: Vec<String>, names: &Vocabulary) -> Result<Vec<String>, WordsError> {
    let mut tokens: Vec<String> = tokens
        .into_iter()
        .filter(|t| !matches!(t.to_lowercase().as_str(), "the" | "please" | "my"))
        .collect();
    let lower = |i: usize, tokens: &[String]| tokens.get(i).map(|t| t.to_lowercase()).unwrap_or_default();
    if 1 < tokens.len() && matches!(lower(0, &tokens).as_str(), "turn" | "switch" | "set" | "do") {
        tokens.remove(0);
    }
    let (first, second) = (lower(0, &tokens), lower(1, &tokens));
    let shape = |problem: Sentence, example: &str| Err(WordsError::shape(problem, example));
    match (first.as_str(), second.as_str()) {
        ("start" | "stop", "engine") | ("press" | "release" | "pump", "pedal" | "brake") => tokens.swap(0, 1),
        ("off" | "on", "key" | "ignition" | "chocks" | "extraction") => tokens.swap(0, 1),
        ("check", "brakes" | "fluid") => {
            tokens.remove(0);
        }
        ("go" | "walk" | "move" | "enter" | "sit", _) => {
            let problem =
                sentence!("plain-walk", "you walk by yourself to where the work is; just say what to do");
            return shape(problem, "read barometer");
        }
        ("measure" | "test" | "check" | "inspect", _) => {
            let problem = sentence!(
                "plain-say-how",
                "say how: fit an instrument and read it, time the pump, or feel, hear and look"
            );
            return shape(problem, &names.example("fit gauge <hose>.a"));
        }
        ("where" | "status" | "state" | "time?", _) => tokens = vec!["look".to_owned()],
        _ => {}
    }
    match tokens.first_mut() {
        Some(first) => *first = first.to_lowercase(),
        None => return shape(sentence!("plain-no-line", "that is no whole line"), "help"),
    }
    Ok(tokens)
}

fn is_help(token: &str) -> bool {
    matches!(token.to_lowercase().as_str(), "help" | "?" | "--help" | "-h")
}

/// Text as it stands, without the quotes round the whole of it.
fn free_text(text: &str) -> String {
    match shlex::split(text).as_deref() {
        Some([one]) if text.starts_with(['"', '\'']) => one.clone(),
        _ => text.to_owned(),
    }
}

/// clap's findings in the words of the workshop.
fn plain_error(tokens: &[String], error: &clap::Error, names: &Vocabulary) -> WordsError {
    let word = tokens.first().cloned().unwrap_or_default();
    let text = |kind: ContextKind| match error.get(kind) {
        Some(ContextValue::String(s)) => Some(s.clone()),
        Some(ContextValue::Strings(s)) => Some(s.join(", ")),
        _ => None,
    };
    let example = help::example(&word, names).unwrap_or_else(|| "help".to_owned());
    let named = word.clone();
    let word = bare(&word);
    let problem = match error.kind() {
        ErrorKind::InvalidSubcommand => {
            if let Some((what, example)) = names.as_first_word(&named) {
                let problem = sentence!(
                    "plain-is-a-name",
                    "{word} is {what}: say what to do with it",
                    word = word,
                    what = what.a()
                );
                return WordsError::shape(problem, example);
            }
            // Of clap's suggestions only the closest: it is generous.
            let verbs = help::verbs();
            let near = names::similar(&named, verbs.iter().map(String::as_str));
            let near = match (near.first(), text(ContextKind::SuggestedSubcommand)) {
                (Some(near), _) => Some((*near).to_owned()),
                (None, Some(list)) => list.rsplit(", ").next().map(str::to_owned),
                (None, None) => None,
            };
            let hint = match near {
                Some(near) => {
                    sentence!(
                        "plain-did-you-mean-word",
                        "did you mean {near}? (help shows all words)",
                        near = near
                    )
                }
                None => help::all_words(),
            };
            return WordsError::UnknownWord { word: named, hint };
        }
        ErrorKind::InvalidValue => {
            let valid = text(ContextKind::ValidValue).unwrap_or_default();
            match text(ContextKind::InvalidValue) {
                Some(value) if !value.is_empty() => match text(ContextKind::SuggestedValue) {
                    Some(near) => sentence!(
                        "plain-not-taken-near",
                        "{word} does not take {value}: did you mean {near}?",
                        word = word,
                        value = quoted(&value),
                        near = near
                    ),
                    None => sentence!(
                        "plain-not-taken",
                        "{word} does not take {value}: say one of {valid}",
                        word = word,
                        value = quoted(&value),
                        valid = valid
                    ),
                },
                _ => sentence!(
                    "plain-one-more",
                    "{word} needs one more word: one of {valid}",
                    word = word,
                    valid = valid
                ),
            }
        }
        ErrorKind::MissingRequiredArgument | ErrorKind::TooFewValues => {
            sentence!("plain-not-enough", "{word} alone is not enough", word = word)
        }
        ErrorKind::UnknownArgument | ErrorKind::TooManyValues => {
            let what = text(ContextKind::InvalidArg).or_else(|| tokens.last().cloned()).unwrap_or_default();
            sentence!(
                "plain-too-much",
                "{word} does not understand {what}",
                word = word,
                what = quoted(&what)
            )
        }
        _ => sentence!("plain-not-understood", "{word} was not understood", word = word),
    };
    WordsError::shape(problem, example)
}
