//! What is joined, connected, taken off or pulled: each word may mean a joint, an instrument, a cover or a unit, by its name.

use sim_core::action::Action;
use sim_core::instrument::{Held, InstrumentKind, Measured};
use sim_core::parts::instruments::MeterMode;

use super::{shape, without_fillers};
use crate::locale::quote::{bare, quoted};
use crate::locale::sentence::Sentence;
use crate::sentence;
use crate::words::grammar::MeterWord;
use crate::words::{Vocabulary, WordsError};

pub(super) fn join(words: &[String], names: &Vocabulary) -> Result<Action, WordsError> {
    match words {
        [joint] => Ok(Action::MakeJoint { joint: names.joint(joint)? }),
        // `connect gauge tee.2`
        [first, ..] if names.instrument(first).is_ok() => fit(words, names),
        _ => {
            let problem = sentence!("plain-join-one", "join one joint at a time, by its name");
            Err(shape(problem, &names.example("join <joint>")))
        }
    }
}

pub(super) fn unplug(name: &str, names: &Vocabulary) -> Result<Action, WordsError> {
    match (names.port(name), names.joint(name), names.unit(name)) {
        (Ok(port), ..) if name.contains('.') && !names.is_electrical(&port) => {
            Ok(Action::SetStop { port, stop: None })
        }
        (_, Ok(joint), _) => Ok(Action::OpenJoint { joint }),
        // `unplug relay`: a plug-in unit comes out of its socket as a whole.
        (_, Err(_), Ok(unit)) => Ok(Action::PullUnit { unit }),
        (_, Err(error), Err(_)) => Err(error),
    }
}

pub(super) fn take(words: &[String], names: &Vocabulary) -> Result<Action, WordsError> {
    let named: Vec<&String> =
        words.iter().filter(|w| !matches!(w.to_lowercase().as_str(), "off" | "out" | "away")).collect();
    match named.as_slice() {
        [one] => match (names.instrument(one), names.cover(one), names.unit(one)) {
            (Ok((instrument, _)), ..) => Ok(Action::Unfit { instrument }),
            // `remove scuttle`, `take fuse`
            (_, Ok(cover), _) => Ok(Action::Cover { cover, off: true }),
            (_, _, Ok(unit)) => Ok(Action::PullUnit { unit }),
            (Err(error), ..) => Err(error),
        },
        _ => {
            let problem = sentence!("plain-take-one", "take one instrument at a time");
            Err(shape(problem, "take gauge"))
        }
    }
}

pub(super) fn meter(
    mode: MeterWord,
    instrument: Option<&str>,
    names: &Vocabulary,
) -> Result<Action, WordsError> {
    Ok(Action::SetMeter {
        instrument: names.instrument_or_first(
            instrument,
            sentence!("plain-has-no-multimeter", "this job has no multimeter"),
            |k| matches!(k, InstrumentKind::Multimeter { .. }),
        )?,
        mode: match mode {
            MeterWord::Volt => MeterMode::Volt,
            MeterWord::Ohm => MeterMode::Ohm,
            MeterWord::Amp => MeterMode::Ampere,
            MeterWord::Off => MeterMode::Off,
        },
    })
}

pub(super) fn press(instrument: &str, names: &Vocabulary) -> Result<Action, WordsError> {
    if instrument.eq_ignore_ascii_case("pedal") || instrument.eq_ignore_ascii_case("brake") {
        let problem = sentence!("plain-pedal-word", "the pedal has a word of its own");
        return Err(shape(problem, "pedal press 200"));
    }
    Ok(Action::Press { instrument: names.instrument(instrument)?.0, down: true })
}

pub(super) fn let_go(words: &[String], names: &Vocabulary) -> Result<Action, WordsError> {
    let named: Vec<&String> =
        words.iter().filter(|w| !matches!(w.to_lowercase().as_str(), "go" | "of")).collect();
    match named.as_slice() {
        [one] => Ok(Action::Press { instrument: names.instrument(one)?.0, down: false }),
        _ => Err(shape(sentence!("plain-let-what", "let go of what?"), "let button")),
    }
}

pub(super) fn swap(words: Vec<String>, names: &Vocabulary) -> Result<Action, WordsError> {
    let (unit, spare) = match words.as_slice() {
        [unit] => (names.unit(unit)?, None),
        [unit, spare] => (names.unit(unit)?, Some(spare.as_str())),
        _ => {
            let problem = sentence!("plain-swap", "say the unit and the spare");
            return Err(shape(problem, &names.example("swap <unit> with <spare>")));
        }
    };
    let spare = names.spare(&unit, spare)?;
    Ok(Action::Swap { unit, spare })
}

fn end_name(typed: &str) -> String {
    match typed.to_lowercase().replace('-', "_").as_str() {
        "red" | "plus" | "v" | "vohm" | "v_ohm" => "v_ohm".to_owned(),
        "black" | "minus" | "com" => "com".to_owned(),
        other => other.to_owned(),
    }
}

pub(super) fn fit(words: &[String], names: &Vocabulary) -> Result<Action, WordsError> {
    let words: Vec<String> =
        without_fillers(words.to_vec()).into_iter().filter(|w| !w.eq_ignore_ascii_case("on")).collect();
    let Some((first, rest)) = words.split_first() else {
        let problem = sentence!("plain-fit", "say the instrument and where it goes");
        return Err(shape(problem, &names.example("fit gauge <branch>")));
    };
    let (instrument, kind) = match (names.instrument(first), names.cover(first), names.unit(first)) {
        (Ok(found), ..) => found,
        // `refit scuttle`, `fit fuse`
        (_, Ok(cover), _) if rest.is_empty() => return Ok(Action::Cover { cover, off: false }),
        (_, _, Ok(unit)) if rest.is_empty() => return Ok(Action::PushUnit { unit }),
        (Err(error), ..) => return Err(error),
    };
    let nature = kind.nature();
    let ends = nature.ends;
    if ends.is_empty() {
        let how = match nature.held {
            Held::OnPedal => say_line("pedal prop 150"),
            Held::InOpening => say_line(&names.example("plug <branch_3>")),
            Held::OverHose => say_line(&names.example("clamp <hose>.a")),
            Held::AtEar => say_line(&names.example("hiss <hose>")),
            Held::Nowhere | Held::OnLine | Held::OnWires | Held::AroundWire | Held::AtPart | Held::OnHose => {
                if let Measured::Time { .. } = nature.measured {
                    sentence!(
                        "plain-watch",
                        "the stopwatch is in your pocket; say for example: time rest 900"
                    )
                } else {
                    sentence!("plain-read-in-place", "it is read where it is")
                }
            }
        };
        let problem = sentence!(
            "plain-not-fitted",
            "{it} is not fitted to anything; {how}",
            it = instrument,
            how = how
        );
        return Err(shape(problem, &format!("help {}", bare(first))));
    }
    let to_port = !nature.held.to_parts();
    let mut out: Vec<(String, String)> = Vec::new();
    for word in rest {
        let (end, target) = match word.split_once('=') {
            Some((end, target)) => (end_name(end), target),
            None => {
                let Some(next) = ends.iter().find(|e| out.iter().all(|(used, _)| used != *e)) else {
                    let example = example_fit(&instrument, ends, names);
                    let problem = match ends.len() {
                        1 => sentence!("plain-one-end", "{it} has one end", it = instrument),
                        n => sentence!("plain-ends", "{it} has {n} ends", it = instrument, n = n),
                    };
                    return Err(shape(problem, &example));
                };
                ((*next).to_owned(), word.as_str())
            }
        };
        if !ends.contains(&end.as_str()) {
            return Err(no_end(instrument, &end, ends, names));
        }
        let target = if to_port { names.port(target)? } else { names.part(target)? };
        out.push((end, target));
    }
    if out.is_empty() {
        let example = example_fit(&instrument, ends, names);
        let problem = sentence!("plain-fit-where", "where does {it} go?", it = instrument);
        return Err(shape(problem, &example));
    }
    out.sort();
    Ok(Action::Fit { instrument, ends: out })
}

/// The line that does it.
fn say_line(line: &str) -> Sentence {
    sentence!("plain-say-line", "say: {line}", line = line)
}

/// An end that the instrument does not have.
fn no_end(instrument: String, end: &str, ends: &[&str], names: &Vocabulary) -> WordsError {
    let example = example_fit(&instrument, ends, names);
    let problem = match ends {
        [first, second] => sentence!(
            "plain-no-end-of-two",
            "{it} has no end called {end}; it has {first} and {second}",
            it = instrument,
            end = quoted(end),
            first = *first,
            second = *second
        ),
        ends => sentence!(
            "plain-no-end",
            "{it} has no end called {end}; it has {ends}",
            it = instrument,
            end = quoted(end),
            ends = ends.join(" and ")
        ),
    };
    shape(problem, &example)
}

fn example_fit(instrument: &str, ends: &[&str], names: &Vocabulary) -> String {
    let to = match ends {
        ["v_ohm", "com"] => "red=<live> black=<earth>",
        ["a", "b"] => "<plus> <coil>",
        ["jaw"] => "<wire>.a",
        ["beam"] => "<pump>",
        ["arm"] => "<bend>",
        _ => "<branch>",
    };
    format!("fit {instrument} {}", names.example(to))
}
