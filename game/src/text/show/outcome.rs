//! What came of an action.

use std::io::{self, Write};

use super::car::{card, sheet};
use super::reading::{picture, shown_in_words, what, written_as};
use super::{all_of, sentence, speech, wrapped};
use crate::text::called;
use crate::tongue::{decimal, say};
use assess::play::Session;
use front::words::Words;
use sim_core::action::{Action, Station, Written};
use sim_core::notice::Gravity;
use sim_core::workshop::Outcome;

/// Where one has walked.
fn walk(words: &Words, to: Station) -> String {
    words.say(match to {
        Station::Desk => "bench-walk-desk",
        Station::Cab => "bench-walk-cab",
        Station::Bay => "bench-walk-bay",
        Station::Front => "bench-walk-front",
        Station::Bench => "bench-walk-bench",
    })
}

/// A breach of safety, with how grave it is.
fn safety(words: &Words, gravity: Gravity, text: &str) -> String {
    match gravity {
        Gravity::Minor => say!(words, "bench-safety-minor", text = text),
        Gravity::Major => say!(words, "bench-safety-major", text = text),
        Gravity::Critical => say!(words, "bench-safety-critical", text = text),
    }
}

/// Tells what came of an action.
pub(in crate::text) fn outcome(
    out: &mut dyn Write,
    words: &Words,
    session: &Session,
    from: Station,
    action: &Action,
    outcome: &Outcome,
) -> io::Result<()> {
    if let Some(why) = &outcome.refused {
        let why = sentence(&speech(words, session).tell(why));
        return wrapped(out, "  ", &say!(words, "bench-refused", why = why));
    }
    let now = session.view().station;
    if now != from {
        writeln!(out, "  {}", walk(words, now))?;
    }
    // What is on paper is the same lines as in `said`, laid out.
    if *action == Action::ReadCard {
        card(out, words, session)?;
    } else if *action == Action::ReadSheet {
        sheet(out, words, session)?;
    } else {
        for line in &outcome.said {
            wrapped(out, "  ", &speech(words, session).tell(line))?;
        }
    }
    if let Some(reading) = &outcome.reading {
        let what = what(words, &reading.what);
        writeln!(out, "  {}", say!(words, "bench-reading", n = reading.id, what = what))?;
        write!(out, "{}", picture(words, session, reading))?;
    }
    if let Action::Finding { units, certainty } = action {
        wrapped(out, "  ", &found(words, session, units, *certainty))?;
    }
    if let Action::Note { written, record, .. } = action {
        noted(out, words, session, action, written.as_ref(), record.as_deref(), outcome)?;
    }
    for breach in &outcome.breaches {
        wrapped(out, "  ! ", &safety(words, breach.gravity(), &speech(words, session).tell(breach)))?;
    }
    let silent = outcome.said.is_empty() && outcome.reading.is_none() && outcome.breaches.is_empty();
    if silent && !matches!(action, Action::Note { .. }) {
        // Whoever types wants to see that something was done, and what it cost.
        let s = (outcome.end.0 - outcome.start.0) / sim_core::units::TICKS_PER_SECOND;
        match s {
            0..60 => writeln!(out, "  {}", words.say("bench-done"))?,
            _ => {
                let min = format!("{:.0}", s as f64 / 60.0);
                writeln!(out, "  {}", say!(words, "bench-done-min", min = min))?;
            }
        }
    }
    Ok(())
}

/// A finding, said back.
fn found(words: &Words, session: &Session, units: &[String], certainty: f64) -> String {
    let car = &session.job().car;
    let names: Vec<String> = units
        .iter()
        .map(|id| car.units.iter().find(|u| u.id == *id).map_or(id.clone(), |u| called::unit(words, car, u)))
        .collect();
    let sure = decimal(words, format!("{certainty:.2}"));
    match (certainty <= 0.0, names.is_empty()) {
        (true, _) => words.say("bench-found-unknown"),
        (false, true) => say!(words, "bench-found-none", sure = sure),
        (false, false) => say!(words, "bench-found", units = all_of(words, &names), sure = sure),
    }
}

fn noted(
    out: &mut dyn Write,
    words: &Words,
    session: &Session,
    action: &Action,
    written: Option<&Written>,
    record: Option<&str>,
    outcome: &Outcome,
) -> io::Result<()> {
    let Action::Note { reading, .. } = action else { return Ok(()) };
    let view = session.view();
    let Some(found) = view.readings.iter().find(|r| r.id == *reading) else { return Ok(()) };
    let value = match written {
        Some(w) => written_as(words, w),
        None => shown_in_words(words, session, found),
    };
    let what = what(words, &found.what);
    writeln!(out, "  {}", say!(words, "bench-noted", n = *reading, what = what, value = value))?;
    if let (Some(item), Some(entry)) = (record, &outcome.record) {
        let text = match entry.unmet {
            None => say!(words, "bench-entered", line = item),
            Some(unmet) => {
                say!(words, "bench-not-entered", line = item, why = speech(words, session).tell(&unmet))
            }
        };
        wrapped(out, "  ", &text)?;
    }
    Ok(())
}
