//! What the text bench prints.

mod book;
mod car;
mod outcome;
mod reading;

use std::io::{self, Write};

use crate::tongue::say;
use assess::locale::{Naming, Speech};
use assess::play::Session;
use assess::words::WordsError;
use front::words::Words;
use sim_core::action::Station;
use sim_core::units::Tick;
use sim_core::workshop::View;

pub(super) use self::book::{not_noted, notebook, record};
pub(super) use self::car::{card, look, part, store, tools};
pub(super) use self::outcome::outcome;
pub(crate) use self::reading::{shown, what};

/// Width that fits every terminal.
pub(super) const WIDTH: usize = 78;

/// Writes `text` wrapped to the width, `indent` in front: a mark in it (`•`, `!`) stands only once.
pub(crate) fn wrapped(out: &mut dyn Write, indent: &str, text: &str) -> io::Result<()> {
    let rest = indent.replace(['•', '!'], " ");
    let options = textwrap::Options::new(WIDTH).initial_indent(indent).subsequent_indent(&rest);
    textwrap::wrap(text, options).iter().try_for_each(|line| writeln!(out, "{line}"))
}

/// Writes a short name and, beside it, wrapped text.
pub(in crate::text) fn hanging(out: &mut dyn Write, name: &str, text: &str) -> io::Result<()> {
    let first = format!("  {name:<14} ");
    let rest = " ".repeat(first.chars().count());
    let options = textwrap::Options::new(WIDTH).initial_indent(&first).subsequent_indent(&rest);
    textwrap::wrap(text, options).iter().try_for_each(|line| writeln!(out, "{line}"))
}

/// Time of day in the workshop: work begins at eight.
pub(crate) fn clock(words: &Words, tick: Tick) -> String {
    let s = tick.0 / sim_core::units::TICKS_PER_SECOND;
    let (day, of_day) = ((s + 8 * 3600) / 86_400, (s + 8 * 3600) % 86_400);
    let time = format!("{:02}:{:02}:{:02}", of_day / 3600, of_day / 60 % 60, of_day % 60);
    if day == 0 { time } else { say!(words, "bench-day", n = day + 1, time = time) }
}

/// Where the trainee stands.
pub(in crate::text) fn place(words: &Words, station: Station) -> String {
    words.say(match station {
        Station::Desk => "bench-at-desk",
        Station::Cab => "bench-at-cab",
        Station::Bay => "bench-at-bay",
        Station::Front => "bench-at-front",
        Station::Bench => "bench-at-bench",
    })
}

/// Names one after the other, as one says them.
fn all_of(words: &Words, names: &[impl AsRef<str>]) -> String {
    let names: Vec<&str> = names.iter().map(AsRef::as_ref).collect();
    names.join(&format!(" {} ", words.say("bench-and")))
}

/// The prompt: time, place, minutes worked.
pub(in crate::text) fn prompt(words: &Words, view: &View) -> String {
    let min = format!("{:.0}", view.attended_min);
    let (time, place) = (clock(words, view.tick), place(words, view.station));
    say!(words, "bench-prompt", time = time, place = place, min = min) + " "
}

/// With a capital in front.
fn capital(text: &str) -> String {
    let mut chars = text.chars();
    let first: String = chars.next().map_or_else(String::new, |c| c.to_uppercase().collect());
    first + chars.as_str()
}

/// A sentence: a capital in front, a stop at the end if there is none.
pub(in crate::text) fn sentence(text: &str) -> String {
    let mut out = capital(text);
    if !out.ends_with(['.', '?', '!']) {
        out.push('.');
    }
    out
}

/// Tells why a line was not understood; an example stands on a line of its own, ready to be typed.
pub(in crate::text) fn not_understood(
    out: &mut dyn Write,
    words: &Words,
    error: &WordsError,
) -> io::Result<()> {
    match error {
        WordsError::Shape { problem, example } => {
            wrapped(out, "  ", &sentence(&words.sentence(problem)))?;
            writeln!(out, "  {}  {example}", words.say("bench-example"))
        }
        other => wrapped(out, "  ", &sentence(&words.sentence(&other.sentence()))),
    }
}

/// The language at the job, things named as they are typed.
pub(in crate::text) fn speech<'a>(words: &'a Words, session: &'a Session) -> Speech<'a> {
    Speech::new(words, session.job(), Naming::Typed)
}
