//! How long, and until when.

use sim_core::action::{Action, Cue, Cycle};

use super::shape;
use crate::sentence;
use crate::words::grammar::TimeWord;
use crate::words::{WordsError, notes};

/// Longest wait of `time` and `wait until` that say nothing else, s.
const PATIENCE_S: u32 = 1_800;

pub(super) fn time(what: TimeWord, max: Option<String>) -> Result<Action, WordsError> {
    Ok(Action::Time {
        cycle: match what {
            TimeWord::Run => Cycle::PumpRun,
            TimeWord::Rest => Cycle::PumpRest,
        },
        max_s: match max {
            Some(typed) => notes::seconds(&[typed], "time rest 900")?,
            None => PATIENCE_S,
        },
    })
}

pub(super) fn wait(words: &[String]) -> Result<Action, WordsError> {
    const EXAMPLE: &str = "wait until pump stops 120";
    let Some((first, rest)) = words.split_first() else {
        return Err(shape(sentence!("plain-how-long", "how long?"), "wait 30"));
    };
    if !matches!(first.to_lowercase().as_str(), "until" | "for" | "till") {
        return Ok(Action::Wait { s: notes::seconds(words, "wait 30")? });
    }
    if first.eq_ignore_ascii_case("for")
        && rest.first().is_some_and(|w| w.starts_with(|c: char| c.is_ascii_digit()))
    {
        return Ok(Action::Wait { s: notes::seconds(rest, "wait 30")? });
    }
    let cut = rest.iter().position(|w| w.starts_with(|c: char| c.is_ascii_digit())).unwrap_or(rest.len());
    let (what, max) = rest.split_at(cut);
    let what: Vec<String> = what
        .iter()
        .map(|w| w.to_lowercase())
        .filter(|w| !matches!(w.as_str(), "the" | "is" | "goes" | "max" | "at" | "most" | "lights" | "up"))
        .collect();
    let cue = match what.iter().map(String::as_str).collect::<Vec<_>>().as_slice() {
        ["pump", "stops" | "stop" | "stopped" | "off"] => Cue::PumpStops,
        ["pump", "starts" | "start" | "runs" | "on"] => Cue::PumpStarts,
        ["lamp", "out" | "off"] => Cue::LampOut,
        ["lamp", "on" | "glows" | "lit"] | ["lamp"] => Cue::LampOn,
        _ => {
            let problem = sentence!(
                "plain-wait-until",
                "you can wait until pump stops, pump starts, lamp out or lamp on"
            );
            return Err(shape(problem, EXAMPLE));
        }
    };
    let max_s = if max.is_empty() { PATIENCE_S } else { notes::seconds(max, EXAMPLE)? };
    Ok(Action::WaitUntil { cue, max_s })
}
