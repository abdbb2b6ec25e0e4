//! What was seen, in words: an instrument, a sense, a time, and the dial beside it.

use super::all_of;
use crate::text::dial;
use crate::tongue::{decimal, say};
use assess::play::Session;
use front::words::Words;
use sim_core::action::{Cycle, Sense, Written};
use sim_core::observe::{Observed, Reading, Scale, ShownValue};

/// What was looked at, in a few words.
pub(crate) fn what(words: &Words, observed: &Observed) -> String {
    match observed {
        Observed::Instrument { instrument, mode, at } => {
            let mut text = instrument.clone();
            if let Some(mode) = mode {
                text = say!(words, "bench-what-mode", it = text, mode = dial::setting(words, *mode));
            }
            if !at.is_empty() {
                let at: Vec<&str> = at.iter().map(|(_, port)| port.as_str()).collect();
                text = say!(words, "bench-what-at", it = text, at = all_of(words, &at));
            }
            text
        }
        Observed::Interval { cycle: Cycle::PumpRun, .. } => words.say("bench-what-run"),
        Observed::Interval { cycle: Cycle::PumpRest, .. } => words.say("bench-what-rest"),
        Observed::Sense(sense) => match sense {
            Sense::Hiss { part } => say!(words, "bench-what-hiss", at = part),
            Sense::Hum => words.say("bench-what-hum"),
            Sense::Touch { part } => say!(words, "bench-what-touch", at = part),
            Sense::PedalTravel => words.say("bench-what-travel"),
            Sense::PedalMoved => words.say("bench-what-moved"),
            Sense::Applications => words.say("bench-what-applications"),
            Sense::Lamp { instrument } => say!(words, "bench-what-lamp", it = instrument),
            Sense::BaseBrakes => words.say("bench-what-brakes"),
            Sense::YardDrive => words.say("bench-what-yard"),
        },
    }
}

/// What a reading showed, in a table.
pub(crate) fn shown(words: &Words, reading: &Reading, scale: &Scale) -> String {
    match (&reading.what, reading.shown) {
        (Observed::Interval { max_s, .. }, ShownValue::Off(_)) => say!(words, "bench-longer", s = *max_s),
        (Observed::Sense(_), shown) => dial::level(words, shown, scale),
        (_, ShownValue::Off(true)) => words.say("bench-short-off"),
        (_, ShownValue::Off(false)) => words.say("bench-short-off-low"),
        (_, ShownValue::Blank | ShownValue::Level(_)) => words.say("bench-dark"),
        (_, shown @ ShownValue::Steps(_)) => dial::level(words, shown, scale),
    }
}

/// How a reading shows itself.
pub(super) fn picture(words: &Words, session: &Session, reading: &Reading) -> String {
    let workshop = session.workshop();
    let scale = workshop.scale(&reading.what);
    match &reading.what {
        Observed::Sense(_) => format!("     {}\n", dial::level(words, reading.shown, &scale)),
        Observed::Interval { max_s, .. } => match reading.shown {
            ShownValue::Off(_) => format!("     [ {} ]\n", say!(words, "bench-longer-given-up", s = *max_s)),
            shown => dial::display(words, shown, &scale),
        },
        Observed::Instrument { instrument, .. } => {
            let kit = &session.job().kit;
            let dial = kit.iter().find(|c| c.id == *instrument).and_then(|c| dial::dial_of(&c.kind));
            let (Some(dial), Scale::Numeric { unit, .. }) = (dial, &scale) else {
                return dial::display(words, reading.shown, &scale);
            };
            let seen = match (reading.shown, scale.number(reading.shown)) {
                (ShownValue::Off(false), _) => dial.min - dial.division,
                (ShownValue::Off(true), _) => dial.max + dial.division,
                (_, Some(number)) => number,
                (_, None) => return dial::display(words, ShownValue::Blank, &scale),
            };
            // The needle itself, if it still stands where it was read; else where it was read.
            let view = workshop.view();
            let needle = view
                .instruments
                .iter()
                .find(|i| i.id == *instrument && i.shown == reading.shown)
                .and_then(|i| i.value)
                .unwrap_or(seen);
            dial::draw(words, &dial, needle, unit)
        }
    }
}

/// A value as somebody wrote it.
pub(super) fn written_as(words: &Words, written: &Written) -> String {
    format!("{} {}", decimal(words, written.value), written.unit)
}

/// A reading that has no number of its own to hide.
pub(super) fn shown_in_words(words: &Words, session: &Session, reading: &Reading) -> String {
    let scale = session.workshop().scale(&reading.what);
    match (&reading.what, reading.shown) {
        (Observed::Sense(_), shown) => dial::level(words, shown, &scale),
        (Observed::Interval { max_s, .. }, ShownValue::Off(_)) => say!(words, "bench-longer", s = *max_s),
        (_, ShownValue::Off(true)) => words.say("bench-off-scale"),
        (_, ShownValue::Off(false)) => words.say("bench-off-scale-low"),
        (_, ShownValue::Blank) => words.say("bench-dark"),
        _ => words.say("bench-not-written"),
    }
}
