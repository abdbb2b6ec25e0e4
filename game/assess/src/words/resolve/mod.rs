//! From words to the action they mean, with every name looked up.

mod connect;
mod strength;
mod time;

use sim_core::action::{Action, Sense};
use sim_core::assembly::Stop;
use sim_core::instrument::InstrumentKind;
use sim_core::observe::Reading;
use sim_core::parts::engine::EngineState;

use self::connect::{fit, join, let_go, meter, press, swap, take, unplug};
use self::strength::{pedal, stroke};
use self::time::{time, wait};
use super::grammar::{EngineWord, FeelWord, OnOff, Word};
use super::{Ask, Said, Vocabulary, WordsError, notes};
use crate::locale::sentence::Sentence;
use crate::sentence;

fn shape(problem: Sentence, example: &str) -> WordsError {
    WordsError::shape(problem, example)
}

/// Words without meaning of their own.
fn without_fillers(words: Vec<String>) -> Vec<String> {
    words
        .into_iter()
        .filter(|w| {
            !matches!(w.to_lowercase().as_str(), "to" | "at" | "the" | "and" | "from" | "with" | "of" | "by")
        })
        .collect()
}

pub(super) fn resolve(word: Word, names: &Vocabulary, readings: &[Reading]) -> Result<Said, WordsError> {
    let action = match word {
        Word::Card => Action::ReadCard,
        Word::Sheet => Action::ReadSheet,
        Word::Chocks { state } => Action::Chocks(state == OnOff::On),
        Word::Extraction { state } => Action::Extraction(state == OnOff::On),
        Word::Key { state } => Action::Key(state == OnOff::On),
        Word::Engine { state } => Action::Engine(match state {
            EngineWord::Idle => EngineState::WarmIdle,
            EngineWord::Cold => EngineState::ColdIdle,
            EngineWord::Cruise => EngineState::Cruise,
            EngineWord::Overrun => EngineState::Overrun,
            EngineWord::Open => EngineState::WideOpen,
            EngineWord::Stop => EngineState::Stopped,
        }),
        Word::Pedal { what, numbers } => pedal(what, &numbers)?,
        Word::Cover { words } => cover(&words, names)?,
        Word::Open { joint } => Action::OpenJoint { joint: names.joint(&joint)? },
        Word::Join { words } => join(&words, names)?,
        Word::Plug { port } => Action::SetStop { port: names.port(&port)?, stop: Some(Stop::Plug) },
        Word::Clamp { port } => Action::SetStop { port: names.port(&port)?, stop: Some(Stop::Clamp) },
        Word::Free { port } => Action::SetStop { port: names.port(&port)?, stop: None },
        Word::Unplug { name } => unplug(&name, names)?,
        Word::Pull { unit } => Action::PullUnit { unit: names.unit(&unit)? },
        Word::Push { unit } => Action::PushUnit { unit: names.unit(&unit)? },
        Word::Swap { words } => swap(without_fillers(words), names)?,
        Word::Clean { unit } => Action::Clean { unit: names.unit(&unit)? },
        Word::Reform { unit } => Action::Reform { unit: names.unit(&unit)? },
        Word::Fit { words } => fit(&words, names)?,
        Word::Take { words } => take(&words, names)?,
        Word::Meter { mode, instrument } => meter(mode, instrument.as_deref(), names)?,
        Word::Press { instrument } => press(&instrument, names)?,
        Word::Let { words } => let_go(&words, names)?,
        Word::Stroke { words } => stroke(&words, names)?,
        Word::Read { instrument } => Action::Read { instrument: names.instrument(&instrument)?.0 },
        Word::Hiss { part } => Action::Sense(Sense::Hiss { part: names.part(&part)? }),
        Word::Hum => Action::Sense(Sense::Hum),
        Word::Touch { part } => Action::Sense(Sense::Touch { part: names.part(&part)? }),
        Word::Feel { what } => Action::Sense(match what {
            FeelWord::Pedal => Sense::PedalTravel,
            FeelWord::Moved => Sense::PedalMoved,
            FeelWord::Applications => Sense::Applications,
        }),
        Word::Look { what } => return look(what.as_deref(), names),
        Word::Brakes => Action::Sense(Sense::BaseBrakes),
        Word::Drive => Action::Sense(Sense::YardDrive),
        Word::Time { what, max } => time(what, max)?,
        Word::Wait { words } => wait(&words)?,
        Word::Overnight => Action::Overnight,
        Word::Note { words } => return note(&words, names, readings),
        Word::Suspect { words } => Action::Suspect { text: words.join(" ") },
        Word::Finding { words } => {
            let (units, certainty) = notes::finding(&words, names)?;
            let units = units.iter().map(|u| names.unit(u)).collect::<Result<_, _>>()?;
            Action::Finding { units, certainty }
        }
        Word::Hand { .. } | Word::HandBack => Action::HandBack,
        Word::Car => return Ok(Said::Ask(Ask::Car)),
        Word::Tools { instrument } => {
            let one = instrument.map(|i| names.instrument(&i)).transpose()?;
            return Ok(Said::Ask(Ask::Tools(one.map(|i| i.0))));
        }
        Word::Store => return Ok(Said::Ask(Ask::Store)),
        Word::Notebook => return Ok(Said::Ask(Ask::Notebook)),
        Word::List => return Ok(Said::Ask(Ask::List)),
        Word::Record => return Ok(Said::Ask(Ask::Record)),
        Word::Next => return Ok(Said::Ask(Ask::Next)),
        Word::Mark => return Ok(Said::Ask(Ask::Mark)),
        Word::Quit => return Ok(Said::Ask(Ask::Quit)),
    };
    Ok(Said::Do(action))
}

fn cover(words: &[String], names: &Vocabulary) -> Result<Action, WordsError> {
    let is_state = |w: &String| matches!(w.to_lowercase().as_str(), "on" | "off");
    match words {
        [a, b] if is_state(b) => {
            Ok(Action::Cover { cover: names.cover(a)?, off: b.eq_ignore_ascii_case("off") })
        }
        [a, b] if is_state(a) => {
            Ok(Action::Cover { cover: names.cover(b)?, off: a.eq_ignore_ascii_case("off") })
        }
        [a] if !is_state(a) => {
            let cover = names.cover(a)?;
            let example = format!("cover {cover} off");
            let problem = sentence!(
                "plain-cover-off-or-on",
                "say whether the cover {cover} comes off or on",
                cover = cover
            );
            Err(shape(problem, &example))
        }
        _ => {
            let problem = sentence!("plain-which-cover", "say which cover, and off or on");
            Err(shape(problem, &names.example("cover <cover> off")))
        }
    }
}

fn look(what: Option<&str>, names: &Vocabulary) -> Result<Said, WordsError> {
    match what.map(str::to_lowercase).as_deref() {
        None | Some("around" | "round") => Ok(Said::Ask(Ask::Look)),
        Some("brakes" | "brake" | "fluid") => Ok(Said::Do(Action::Sense(Sense::BaseBrakes))),
        Some(name) if names.has_part(name) => Ok(Said::Ask(Ask::Part(names.part(name)?))),
        Some(name) => {
            let (instrument, kind) = names.instrument(name)?;
            Ok(Said::Do(if matches!(kind, InstrumentKind::Lamp) {
                Action::Sense(Sense::Lamp { instrument })
            } else {
                Action::Read { instrument }
            }))
        }
    }
}

fn note(words: &[String], names: &Vocabulary, readings: &[Reading]) -> Result<Said, WordsError> {
    let note = notes::note(words)?;
    let record = note.record.map(|r| names.record(&r)).transpose()?;
    let Some(last) = readings.last() else {
        let problem = sentence!(
            "plain-no-reading-yet",
            "there is no reading to note yet: read, time, feel or hear something first"
        );
        return Err(shape(problem, "read barometer"));
    };
    let id = note.reading.unwrap_or(last.id);
    let Some(reading) = readings.iter().find(|r| r.id == id) else {
        let problem = sentence!(
            "plain-no-reading",
            "there is no reading {id}; so far there are 1 to {last}. If {id} is the value, add its unit",
            id = id,
            last = last.id
        );
        return Err(shape(problem, "note 12.4 V"));
    };
    if note.shown {
        return Ok(Said::NoteShown { reading: id, record });
    }
    if note.written.is_none() && notes::needs_number(reading) {
        let problem = sentence!(
            "plain-reading-is-number",
            "reading {id} is a number: write what you read, with its unit",
            id = id
        );
        return Err(shape(problem, "note -58 kPa"));
    }
    Ok(Said::Do(Action::Note { reading: id, written: note.written, record }))
}
