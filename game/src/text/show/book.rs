//! What was written down: notebook and record, and what was looked at and not noted.

use std::io::{self, Write};

use super::reading::{shown_in_words, what, written_as};
use super::{all_of, clock, hanging, sentence, speech, wrapped};
use crate::tongue::{decimal, say};
use assess::play::Session;
use front::words::Words;
use sim_core::action::Action;
use sim_core::car::RecordKind;
use sim_core::observe::Reading;

/// The notebook.
pub(in crate::text) fn notebook(out: &mut dyn Write, words: &Words, session: &Session) -> io::Result<()> {
    let view = session.view();
    if view.notes.is_empty() {
        wrapped(out, "  ", &words.say("bench-nothing-noted"))?;
    }
    for (id, written, record) in &view.notes {
        let Some(reading) = view.readings.iter().find(|r| r.id == *id) else { continue };
        let value = match written {
            Some(w) => written_as(words, w),
            None => shown_in_words(words, session, reading),
        };
        let line = record.as_ref().map_or_else(String::new, |r| format!("  [{r}]"));
        let (time, what) = (clock(words, reading.tick), what(words, &reading.what));
        writeln!(out, "  {id:>3}  {time}  {what}: {value}{line}")?;
    }
    for step in &session.attempt().steps {
        if let (Action::Suspect { text }, None) = (&step.action, &step.refused) {
            let time = clock(words, step.start);
            wrapped(out, "  ", &say!(words, "bench-suspicion", time = time, text = text))?;
        }
    }
    for (i, (units, certainty)) in view.findings.iter().enumerate() {
        let n = i + 1;
        let sure = decimal(words, format!("{certainty:.2}"));
        let text = if *certainty <= 0.0 {
            say!(words, "bench-finding-unknown", n = n)
        } else if units.is_empty() {
            say!(words, "bench-finding-none", n = n, sure = sure)
        } else {
            say!(words, "bench-finding", n = n, units = all_of(words, units), sure = sure)
        };
        writeln!(out, "  {text}")?;
    }
    Ok(())
}

/// Readings that are not noted, without what they showed.
pub(in crate::text) fn not_noted(out: &mut dyn Write, words: &Words, session: &Session) -> io::Result<()> {
    let view = session.view();
    let open: Vec<&Reading> =
        view.readings.iter().filter(|r| view.notes.iter().all(|(id, ..)| *id != r.id)).collect();
    if open.is_empty() {
        return wrapped(out, "  ", &words.say("bench-all-noted"));
    }
    for reading in open {
        let (time, what) = (clock(words, reading.tick), what(words, &reading.what));
        writeln!(out, "  {:>3}  {time}  {what}", reading.id)?;
    }
    wrapped(out, "  ", &words.say("bench-open-readings"))
}

/// The words that lead to a reading a record line asks for.
fn how(words: &Words, kind: RecordKind) -> String {
    words.say(match kind {
        RecordKind::DayPressure => "bench-how-day",
        RecordKind::BatteryVoltage => "bench-how-battery",
        RecordKind::PumpRun => "bench-how-run",
        RecordKind::PumpRest => "bench-how-rest",
        RecordKind::CutOut => "bench-how-cut-out",
        RecordKind::CutIn => "bench-how-cut-in",
        RecordKind::ReleaseBuildUp => "bench-how-build-up",
        RecordKind::ReleaseDrop => "bench-how-drop",
        RecordKind::ReleaseReserve => "bench-how-reserve",
        RecordKind::ReleaseNoRise => "bench-how-no-rise",
        RecordKind::ReleaseRest => "bench-how-rest-after",
        RecordKind::ReleaseYard => "bench-how-yard",
    })
}

/// Lines of the record.
pub(in crate::text) fn record(out: &mut dyn Write, words: &Words, session: &Session) -> io::Result<()> {
    let car = &session.job().car;
    let entries = || {
        let done = session.attempt().steps.iter().filter(|s| s.refused.is_none());
        done.filter_map(|s| s.record.as_ref())
    };
    for item in &car.record {
        let filled = entries().any(|r| r.item == item.id && r.condition_met);
        let mark = if filled { "x" } else { " " };
        let mut text = words.say_or(&format!("{}-record-{}", car.id, item.id), &item.text) + ".";
        let mut add = |more: String| text = format!("{text} {more}");
        if let Some(l) = item.limit.and_then(|i| car.limits.get(usize::from(i))) {
            let limit = sentence(&words.limit(&car.id, &l.id, &l.text));
            add(say!(words, "bench-record-limit", text = limit));
        }
        add(say!(words, "bench-record-how", words = how(words, item.kind)));
        let last = entries().rfind(|r| r.item == item.id).filter(|_| !filled);
        if let Some(unmet) = last.and_then(|r| r.unmet) {
            add(say!(words, "bench-record-unmet", why = speech(words, session).tell(&unmet)));
        }
        hanging(out, &format!("[{mark}] {}", item.id), &text)?;
    }
    wrapped(out, "  ", &words.say("bench-record-fill"))
}
