//! The free-form words: notes, findings, times.

use crate::sentence;
use sim_core::action::{Written, certainty_of};
use sim_core::observe::{Observed, Reading};

use super::WordsError;
use super::names::Vocabulary;
use crate::locale::quote::quoted;
use crate::locale::sentence::Sentence;
use crate::words::typed::{self, split_unit};

/// A note before its names are looked up.
#[derive(Debug, PartialEq)]
pub(super) struct NoteWords {
    pub(super) reading: Option<u32>,
    pub(super) written: Option<Written>,
    pub(super) shown: bool,
    pub(super) record: Option<String>,
}

fn shape(problem: Sentence, example: &str) -> WordsError {
    WordsError::shape(problem, example)
}

/// Units as people type them, and as they are kept.
fn unit(typed: &str) -> Option<&'static str> {
    Some(match typed.to_lowercase().as_str() {
        "kpa" => "kPa",
        "v" | "volt" | "volts" => "V",
        "a" | "amp" | "amps" | "ampere" => "A",
        "ohm" | "ohms" | "Ω" | "ω" => "ohm",
        "c" | "°c" | "degc" | "celsius" => "C",
        "s" | "sec" | "seconds" | "second" => "s",
        "deg" | "°" | "degrees" | "degree" => "deg",
        "mm" => "mm",
        "n" => "N",
        _ => return None,
    })
}

/// A number as a trainee may type it; a line that works is the example when it is none.
pub(super) fn number(typed: &str, example: &str) -> Result<f64, WordsError> {
    typed::number(typed).map_err(|e| shape(e.sentence(), example))
}

/// Reads what follows `note`.
pub(super) fn note(words: &[String]) -> Result<NoteWords, WordsError> {
    const EXAMPLE: &str = "note 7 -58 kPa for cut-out";
    let mut note = NoteWords { reading: None, written: None, shown: false, record: None };
    let (head, record) = match words.iter().position(|w| w.eq_ignore_ascii_case("for")) {
        Some(i) => (&words[..i], &words[i + 1..]),
        None => (words, &[][..]),
    };
    match record {
        [] if head.len() == words.len() => {}
        [one] => note.record = Some(one.clone()),
        [] => {
            return Err(shape(sentence!("plain-note-for", "after for, say the line of the record"), EXAMPLE));
        }
        many => note.record = Some(many.join("-")),
    }
    let mut rest = head;
    if let [first, more @ ..] = rest {
        let id = first.trim_start_matches('#');
        let whole = id.parse::<u32>().ok();
        let next_is_value = more
            .first()
            .is_some_and(|w| w.eq_ignore_ascii_case("shown") || typed::number(split_unit(w).0).is_ok());
        if let Some(id) = whole.filter(|_| first.starts_with('#') || more.is_empty() || next_is_value) {
            note.reading = Some(id);
            rest = more;
        }
    }
    match rest {
        [] => {}
        [one] if one.eq_ignore_ascii_case("shown") => note.shown = true,
        [one] => {
            let (value, unit_typed) = split_unit(one);
            let value = number(value, EXAMPLE)?;
            if unit_typed.is_empty() {
                return Err(shape(
                    sentence!(
                        "plain-note-no-unit",
                        "write {typed} with its unit (kPa, V, A, ohm, C, s, deg, mm)",
                        typed = one
                    ),
                    EXAMPLE,
                ));
            }
            note.written = Some(Written { value, unit: known_unit(unit_typed)? });
        }
        [value, unit_typed] => {
            note.written = Some(Written { value: number(value, EXAMPLE)?, unit: known_unit(unit_typed)? });
        }
        _ => {
            return Err(shape(
                sentence!(
                    "plain-note-is",
                    "a note is: number of the reading if it is not the last, value and unit, for and a line of the record"
                ),
                EXAMPLE,
            ));
        }
    }
    Ok(note)
}

fn known_unit(typed: &str) -> Result<String, WordsError> {
    unit(typed).map(str::to_owned).ok_or_else(|| {
        shape(
            sentence!(
                "plain-no-such-unit",
                "{typed} is no unit of this workshop (kPa, V, A, ohm, C, s, deg, mm)",
                typed = quoted(typed)
            ),
            "note -58 kPa",
        )
    })
}

/// A note without a value is for a sense; a reading of a number must be written down.
pub(super) fn needs_number(reading: &Reading) -> bool {
    matches!(reading.shown, sim_core::observe::ShownValue::Steps(_))
        && !matches!(reading.what, Observed::Sense(_))
}

/// Reads what follows `finding`: units and certainty; no units means everything inside limits. Where the school fixes the
/// certainty it need not be said, and no other can be.
pub(super) fn finding(words: &[String], names: &Vocabulary) -> Result<(Vec<String>, f64), WordsError> {
    let example = names.example("finding <unit> sure 0.80");
    let example = example.as_str();
    let words: Vec<String> = words
        .iter()
        .flat_map(|w| match typed::number(w.trim_end_matches('%')) {
            // `0,80` is a number, `hose,pump` two units.
            Ok(_) => vec![w.clone()],
            Err(_) => w.split(',').map(str::to_owned).collect(),
        })
        .filter(|w| !w.is_empty() && !matches!(w.to_lowercase().as_str(), "and" | "is" | "the"))
        .collect();
    let at = words
        .iter()
        .position(|w| matches!(w.to_lowercase().as_str(), "sure" | "certain" | "certainty" | "at"));
    let (units, tail) = match at {
        Some(i) => (&words[..i], Some(&words[i + 1..])),
        None => (&words[..], None),
    };
    let lower: Vec<String> = units.iter().map(|u| u.to_lowercase()).collect();
    if matches!(lower.first().map(String::as_str), Some("unknown" | "refer" | "not-found" | "notfound")) {
        return Ok((Vec::new(), 0.0));
    }
    let units = match lower.iter().map(String::as_str).collect::<Vec<_>>().as_slice() {
        [] => {
            let problem = sentence!("plain-which-unit", "say which unit is outside its limits, or none");
            return Err(shape(problem, example));
        }
        ["none" | "nothing" | "sound" | "healthy" | "inside"] => Vec::new(),
        _ => units.to_vec(),
    };
    let steps = || sentence!("plain-how-sure", "say how sure you are: sure 0.40, 0.60, 0.80 or 0.95");
    if let Some(fixed) = names.certainty() {
        let is_other = |tail: &[String]| !matches!(tail, [typed] if certainty(typed) == Some(fixed));
        if tail.is_some_and(is_other) {
            let problem = sentence!(
                "plain-sure-fixed",
                "the school fixes how sure a finding is, at {fixed}: give it without sure",
                fixed = format!("{fixed:.2}")
            );
            return Err(shape(problem, names.example("finding <unit>").as_str()));
        }
        return Ok((units, fixed));
    }
    let Some([typed]) = tail else { return Err(shape(steps(), example)) };
    let sure = certainty(typed).ok_or_else(|| {
        let problem = sentence!(
            "plain-no-step",
            "{typed} is no step of certainty: {steps}",
            typed = quoted(typed),
            steps = steps()
        );
        shape(problem, example)
    })?;
    Ok((units, sure))
}

/// A certainty as it is typed: `0.80`, `80%`, `80`.
fn certainty(typed: &str) -> Option<f64> {
    let number = match typed.strip_suffix('%') {
        Some(percent) => typed::number(percent).map(|v| v / 100.0),
        None => typed::number(typed).map(|v| if 1.0 < v { v / 100.0 } else { v }),
    };
    number.ok().and_then(certainty_of)
}

/// Longest time that is read, s: the longest wait there is.
const LONGEST_S: f64 = 43_200.0;

/// A time in whole seconds: `90`, `90s`, `10min`, `2h`, `1.5 h`.
pub(super) fn seconds(words: &[String], example: &str) -> Result<u32, WordsError> {
    let text = words.concat().to_lowercase();
    let (value, unit_typed) = split_unit(&text);
    let value = number(value, example)?;
    let factor = match unit_typed {
        "" | "s" | "sec" | "second" | "seconds" => 1.0,
        "m" | "min" | "mins" | "minute" | "minutes" => 60.0,
        "h" | "hour" | "hours" => 3600.0,
        _ => {
            let problem = sentence!(
                "plain-no-unit-of-time",
                "{typed} is no unit of time (s, min, h)",
                typed = quoted(unit_typed)
            );
            return Err(shape(problem, example));
        }
    };
    let s = (value * factor).round();
    if (0.0..=LONGEST_S).contains(&s) {
        Ok(s as u32)
    } else {
        let typed = words.join(" ");
        let problem = sentence!(
            "plain-no-time",
            "{typed} is no time from 0 to {most} s",
            typed = quoted(&typed),
            most = LONGEST_S
        );
        Err(shape(problem, example))
    }
}
