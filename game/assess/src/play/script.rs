//! A script: one line of plain words after another, as they would be typed.
//!
//! A script is strict: a line that is not understood or is refused stops it. A line that begins with
//! `try` may be refused.

use crate::sentence;
use sim_core::action::Action;
use sim_core::notice::{Refusal, Told as _};
use sim_core::workshop::Outcome;

use crate::locale::Speech;
use crate::locale::quote::bare;
use crate::locale::sentence::Sentence;
use crate::play::{Session, SessionError};
use crate::words::{self, Said, Vocabulary, WordsError};

/// Why a script stopped.
#[derive(Debug, thiserror::Error)]
#[error("{}", self.sentence())]
#[non_exhaustive]
pub enum ScriptError {
    /// A line was not understood.
    Words {
        /// Line, from 1.
        line: usize,
        /// As written.
        text: String,
        /// Why. Boxed because it is much larger than the rest.
        source: Box<WordsError>,
    },
    /// A line was refused in the workshop.
    Refused {
        /// Line, from 1.
        line: usize,
        /// As written.
        text: String,
        /// Why; [`ScriptError::told`] says it in a language.
        why: Box<Refusal>,
    },
    /// The attempt could not be written.
    Session {
        /// Line, from 1.
        line: usize,
        /// As written.
        text: String,
        /// Why. Boxed because it is much larger than the rest.
        source: Box<SessionError>,
    },
}

impl ScriptError {
    /// What stopped the script, with the workshop's reason in the words of `speech`.
    #[must_use]
    pub fn told(&self, speech: &Speech<'_>) -> String {
        match self {
            Self::Refused { line, text, why } => {
                let values = [
                    ("line", (*line).into()),
                    ("text", bare(text).to_string().into()),
                    ("why", speech.tell(why.as_ref()).into()),
                ];
                speech.say_with("told-script-refused", &values)
            }
            other => other.to_string(),
        }
    }
}

impl ScriptError {
    /// What stopped the script, for every language; what the workshop says is told by [`ScriptError::told`], here is
    /// its kind alone.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        match self {
            Self::Words { line, text, source } => sentence!(
                "script-line",
                "line {line} ({text}): {why}",
                line = *line,
                text = bare(text),
                why = source.sentence()
            ),
            Self::Session { line, text, source } => sentence!(
                "script-line",
                "line {line} ({text}): {why}",
                line = *line,
                text = bare(text),
                why = source.sentence()
            ),
            Self::Refused { line, text, why } => sentence!(
                "script-refused",
                "line {line} ({text}): refused ({kind})",
                line = *line,
                text = bare(text),
                kind = why.telling().key
            ),
        }
    }
}

/// The names a session's lines may use.
#[must_use]
pub fn vocabulary(session: &Session) -> Vocabulary {
    let job = session.job();
    Vocabulary::of(&job.car, &job.kit, &job.spares).with_certainty(job.certainty)
}

/// Turns what a line said into an action, where it means one.
#[must_use]
pub fn action_of(session: &Session, said: &Said) -> Option<Action> {
    match said {
        Said::Do(action) => Some(action.clone()),
        Said::NoteShown { reading, record } => {
            let view = session.view();
            let written =
                view.readings.iter().find(|r| r.id == *reading).and_then(|r| session.written_as_shown(r));
            Some(Action::Note { reading: *reading, written, record: record.clone() })
        }
        Said::Nothing | Said::Ask(_) => None,
    }
}

/// Plays a script in a session. `seen` is called after each line that did something (line number, its
/// text, the action, what came of it). Questions to the bench are passed over.
///
/// # Errors
/// At the first line that is not understood, is refused, or cannot be written.
pub fn play(
    session: &mut Session,
    script: &str,
    mut seen: impl FnMut(usize, &str, &Action, &Outcome),
) -> Result<(), ScriptError> {
    let names = vocabulary(session);
    for (i, full) in script.lines().enumerate() {
        let line = i + 1;
        let (text, may_fail) = match full.trim().strip_prefix("try ") {
            Some(rest) => (rest.trim(), true),
            None => (full.trim(), false),
        };
        let said = words::parse(text, &names, &session.view().readings)
            .map_err(|source| ScriptError::Words { line, text: text.to_owned(), source: Box::new(source) })?;
        let Some(action) = action_of(session, &said) else { continue };
        let outcome = session.act(&action).map_err(|source| ScriptError::Session {
            line,
            text: text.to_owned(),
            source: Box::new(source),
        })?;
        if let Some(why) = &outcome.refused
            && !may_fail
        {
            return Err(ScriptError::Refused { line, text: text.to_owned(), why: Box::new(why.clone()) });
        }
        seen(line, text, &action, &outcome);
    }
    Ok(())
}
