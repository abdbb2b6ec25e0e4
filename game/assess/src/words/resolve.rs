//! From words to the action they mean, with every name looked up.

use crate::sentence;
use sim_core::action::{Action, Cue, Cycle, PedalHold, Sense};
use sim_core::assembly::Stop;
use sim_core::instrument::{Held, InstrumentKind, Measured};
use sim_core::observe::Reading;
use sim_core::parts::engine::EngineState;
use sim_core::parts::instruments::MeterMode;

use super::grammar::{EngineWord, FeelWord, MeterWord, OnOff, PedalWord, TimeWord, Word};
use super::{Ask, Said, Vocabulary, WordsError, notes};
use crate::locale::quote::{bare, quoted};
use crate::locale::sentence::Sentence;
use crate::words::typed;

/// Force of a foot that says nothing else, N.
const FOOT_N: f64 = 200.0;
/// Force of an application that says nothing else, N: a firm stop.
const PUMP_N: f64 = 120.0;
/// Force of the prop that says nothing else, N.
const PROP_N: f64 = 150.0;
/// Most strokes or applications that are read.
const MOST_TIMES: u32 = 1_000;
/// Longest wait of `time` and `wait until` that say nothing else, s.
const PATIENCE_S: u32 = 1_800;

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
        Word::Join { words } => match words.as_slice() {
            [joint] => Action::MakeJoint { joint: names.joint(joint)? },
            // `connect gauge tee.2`
            [first, ..] if names.instrument(first).is_ok() => fit(&words, names)?,
            _ => {
                let problem = sentence!("plain-join-one", "join one joint at a time, by its name");
                return Err(shape(problem, &names.example("join <joint>")));
            }
        },
        Word::Plug { port } => Action::SetStop { port: names.port(&port)?, stop: Some(Stop::Plug) },
        Word::Clamp { port } => Action::SetStop { port: names.port(&port)?, stop: Some(Stop::Clamp) },
        Word::Free { port } => Action::SetStop { port: names.port(&port)?, stop: None },
        Word::Unplug { name } => match (names.port(&name), names.joint(&name), names.unit(&name)) {
            (Ok(port), ..) if name.contains('.') && !names.is_electrical(&port) => {
                Action::SetStop { port, stop: None }
            }
            (_, Ok(joint), _) => Action::OpenJoint { joint },
            // `unplug relay`: a plug-in unit comes out of its socket as a whole.
            (_, Err(_), Ok(unit)) => Action::PullUnit { unit },
            (_, Err(error), Err(_)) => return Err(error),
        },
        Word::Pull { unit } => Action::PullUnit { unit: names.unit(&unit)? },
        Word::Push { unit } => Action::PushUnit { unit: names.unit(&unit)? },
        Word::Swap { words } => swap(without_fillers(words), names)?,
        Word::Clean { unit } => Action::Clean { unit: names.unit(&unit)? },
        Word::Reform { unit } => Action::Reform { unit: names.unit(&unit)? },
        Word::Fit { words } => fit(&words, names)?,
        Word::Take { words } => {
            let named: Vec<&String> = words
                .iter()
                .filter(|w| !matches!(w.to_lowercase().as_str(), "off" | "out" | "away"))
                .collect();
            match named.as_slice() {
                [one] => match (names.instrument(one), names.cover(one), names.unit(one)) {
                    (Ok((instrument, _)), ..) => Action::Unfit { instrument },
                    // `remove scuttle`, `take fuse`
                    (_, Ok(cover), _) => Action::Cover { cover, off: true },
                    (_, _, Ok(unit)) => Action::PullUnit { unit },
                    (Err(error), ..) => return Err(error),
                },
                _ => {
                    let problem = sentence!("plain-take-one", "take one instrument at a time");
                    return Err(shape(problem, "take gauge"));
                }
            }
        }
        Word::Meter { mode, instrument } => Action::SetMeter {
            instrument: names.instrument_or_first(
                instrument.as_deref(),
                sentence!("plain-has-no-multimeter", "this job has no multimeter"),
                |k| matches!(k, InstrumentKind::Multimeter { .. }),
            )?,
            mode: match mode {
                MeterWord::Volt => MeterMode::Volt,
                MeterWord::Ohm => MeterMode::Ohm,
                MeterWord::Amp => MeterMode::Ampere,
                MeterWord::Off => MeterMode::Off,
            },
        },
        Word::Press { instrument } => {
            if instrument.eq_ignore_ascii_case("pedal") || instrument.eq_ignore_ascii_case("brake") {
                let problem = sentence!("plain-pedal-word", "the pedal has a word of its own");
                return Err(shape(problem, "pedal press 200"));
            }
            Action::Press { instrument: names.instrument(&instrument)?.0, down: true }
        }
        Word::Let { words } => {
            let named: Vec<&String> =
                words.iter().filter(|w| !matches!(w.to_lowercase().as_str(), "go" | "of")).collect();
            match named.as_slice() {
                [one] => Action::Press { instrument: names.instrument(one)?.0, down: false },
                _ => return Err(shape(sentence!("plain-let-what", "let go of what?"), "let button")),
            }
        }
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
        Word::Look { what } => match what.as_deref().map(str::to_lowercase).as_deref() {
            None | Some("around" | "round") => return Ok(Said::Ask(Ask::Look)),
            Some("brakes" | "brake" | "fluid") => Action::Sense(Sense::BaseBrakes),
            Some(name) if names.has_part(name) => return Ok(Said::Ask(Ask::Part(names.part(name)?))),
            Some(name) => {
                let (instrument, kind) = names.instrument(name)?;
                if matches!(kind, InstrumentKind::Lamp) {
                    Action::Sense(Sense::Lamp { instrument })
                } else {
                    Action::Read { instrument }
                }
            }
        },
        Word::Brakes => Action::Sense(Sense::BaseBrakes),
        Word::Drive => Action::Sense(Sense::YardDrive),
        Word::Time { what, max } => Action::Time {
            cycle: match what {
                TimeWord::Run => Cycle::PumpRun,
                TimeWord::Rest => Cycle::PumpRest,
            },
            max_s: match max {
                Some(typed) => notes::seconds(&[typed], "time rest 900")?,
                None => PATIENCE_S,
            },
        },
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
        Word::Mark => return Ok(Said::Ask(Ask::Mark)),
        Word::Quit => return Ok(Said::Ask(Ask::Quit)),
    };
    Ok(Said::Do(action))
}

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

fn pedal(what: PedalWord, numbers: &[String]) -> Result<Action, WordsError> {
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

fn swap(words: Vec<String>, names: &Vocabulary) -> Result<Action, WordsError> {
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

fn fit(words: &[String], names: &Vocabulary) -> Result<Action, WordsError> {
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

fn stroke(words: &[String], names: &Vocabulary) -> Result<Action, WordsError> {
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

fn wait(words: &[String]) -> Result<Action, WordsError> {
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
