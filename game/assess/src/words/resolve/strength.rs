//! How often and how hard: the pedal, the hand pump.

use sim_core::action::{Action, PedalHold};
use sim_core::instrument::InstrumentKind;

use super::shape;
use crate::locale::quote::quoted;
use crate::locale::sentence::Sentence;
use crate::sentence;
use crate::words::grammar::PedalWord;
use crate::words::{Vocabulary, WordsError, notes, typed};

/// Force of a foot that says nothing else, N.
const FOOT_N: f64 = 200.0;
/// Force of an application that says nothing else, N: a firm stop.
const PUMP_N: f64 = 120.0;
/// Force of the prop that says nothing else, N.
const PROP_N: f64 = 150.0;
/// Most strokes or applications that are read.
const MOST_TIMES: u32 = 1_000;

fn force(typed: &str) -> Result<f64, WordsError> {
    let example = "pedal press 200";
    let (value, unit) = typed::split_unit(typed);
    let force = notes::number(value, example)?;
    match unit {
        "" | "n" | "N" => Ok(force),
        _ => {
            let problem = sentence!("plain-no-force", "{typed} is no force in N", typed = quoted(typed));
            Err(shape(problem, example))
        }
    }
}

/// How often something is done; the workshop says what is too often.
fn times_of(typed: &str, say: impl FnOnce(Sentence) -> Sentence, example: &str) -> Result<u32, WordsError> {
    typed::whole(typed, 0..=MOST_TIMES).map_err(|why| shape(say(why.sentence()), example))
}

fn applications(why: Sentence) -> Sentence {
    sentence!("plain-number-of-applications", "number of applications: {why}", why = why)
}

fn strokes(why: Sentence) -> Sentence {
    sentence!("plain-number-of-strokes", "number of strokes: {why}", why = why)
}

pub(super) fn pedal(what: PedalWord, numbers: &[String]) -> Result<Action, WordsError> {
    let numbers: Vec<&String> = numbers
        .iter()
        .filter(|w| !matches!(w.to_lowercase().as_str(), "n" | "times" | "x" | "with"))
        .collect();
    Ok(match (what, numbers.as_slice()) {
        (PedalWord::Press, []) => Action::Pedal(PedalHold::Foot { force_n: FOOT_N }),
        (PedalWord::Press, [f]) => Action::Pedal(PedalHold::Foot { force_n: force(f)? }),
        (PedalWord::Prop, []) => Action::Pedal(PedalHold::Prop { force_n: PROP_N }),
        (PedalWord::Prop, [f]) => Action::Pedal(PedalHold::Prop { force_n: force(f)? }),
        (PedalWord::Release, []) => Action::Pedal(PedalHold::Released),
        (PedalWord::Pump, [times, more @ ..]) if more.len() <= 1 => Action::PumpPedal {
            times: times_of(times, applications, "pedal pump 5")?,
            force_n: match more {
                [f] => force(f)?,
                _ => PUMP_N,
            },
        },
        (PedalWord::Pump, []) => {
            return Err(shape(sentence!("plain-how-many-times", "how many times?"), "pedal pump 5"));
        }
        _ => {
            let problem = sentence!("plain-pedal-many", "too many words after pedal");
            return Err(shape(problem, "pedal press 200"));
        }
    })
}

pub(super) fn stroke(words: &[String], names: &Vocabulary) -> Result<Action, WordsError> {
    let mut times = None;
    let mut instrument = None;
    for w in words {
        if w.starts_with(|c: char| c.is_ascii_digit() || matches!(c, '-' | '+')) {
            times = Some(times_of(w, strokes, "stroke handpump 10")?);
        } else if !w.eq_ignore_ascii_case("times") {
            instrument = Some(w.as_str());
        }
    }
    let times = times.ok_or_else(|| {
        let problem = sentence!("plain-how-many-strokes", "how many strokes?");
        shape(problem, "stroke handpump 10")
    })?;
    let none = sentence!("plain-has-no-hand-pump", "this job has no hand pump");
    let instrument =
        names.instrument_or_first(instrument, none, |k| matches!(k, InstrumentKind::HandPump { .. }))?;
    Ok(Action::Stroke { instrument, times })
}
