//! What came of an action, and what can be seen, in sentences.

use std::io::{self, Write};

use assess::session::Session;
use assess::words::WordsError;
use sim_core::action::{Action, Cycle, PedalHold, Sense, Station, Written};
use sim_core::assembly::Stop;
use sim_core::car::RecordKind;
use sim_core::observe::{Observed, Reading, Scale, ShownValue};
use sim_core::parts::engine::EngineState;
use sim_core::units::Tick;
use sim_core::workshop::{Gravity, Outcome, View};

use super::dial;

/// Width that fits every terminal.
pub(super) const WIDTH: usize = 78;

/// Writes `text` wrapped to the width, `indent` in front: a mark in it (`•`, `!`) stands only once.
pub(crate) fn wrapped(out: &mut dyn Write, indent: &str, text: &str) -> io::Result<()> {
    let rest = indent.replace(['•', '!'], " ");
    let options = textwrap::Options::new(WIDTH).initial_indent(indent).subsequent_indent(&rest);
    textwrap::wrap(text, options).iter().try_for_each(|line| writeln!(out, "{line}"))
}

/// Writes a short name and, beside it, wrapped text.
pub(super) fn hanging(out: &mut dyn Write, name: &str, text: &str) -> io::Result<()> {
    let first = format!("  {name:<14} ");
    let rest = " ".repeat(first.chars().count());
    let options = textwrap::Options::new(WIDTH).initial_indent(&first).subsequent_indent(&rest);
    textwrap::wrap(text, options).iter().try_for_each(|line| writeln!(out, "{line}"))
}

/// Time of day in the workshop: work begins at eight.
pub(crate) fn clock(tick: Tick) -> String {
    let s = tick.0 / sim_core::units::TICKS_PER_SECOND;
    let (day, of_day) = ((s + 8 * 3600) / 86_400, (s + 8 * 3600) % 86_400);
    let time = format!("{:02}:{:02}:{:02}", of_day / 3600, of_day / 60 % 60, of_day % 60);
    if day == 0 { time } else { format!("day {} {time}", day + 1) }
}

/// Where the trainee stands.
pub(super) fn place(station: Station) -> &'static str {
    match station {
        Station::Desk => "desk",
        Station::Cab => "cab",
        Station::Bay => "bonnet",
        Station::Front => "front",
        Station::Bench => "bench",
    }
}

/// The prompt: time, place, minutes worked.
pub(super) fn prompt(view: &View) -> String {
    format!("{} {} {:.0} min worked> ", clock(view.tick), place(view.station), view.attended_min)
}

/// What was looked at, in a few words.
pub(crate) fn what(observed: &Observed) -> String {
    match observed {
        Observed::Instrument { instrument, mode, at } => {
            let mut text = instrument.clone();
            if let Some(mode) = mode {
                text.push_str(&format!(" ({})", dial::setting(*mode)));
            }
            if !at.is_empty() {
                text.push_str(" at ");
                text.push_str(&at.iter().map(|(_, port)| port.as_str()).collect::<Vec<_>>().join(" and "));
            }
            text
        }
        Observed::Interval { cycle: Cycle::PumpRun, .. } => "pump runs, by stopwatch".to_owned(),
        Observed::Interval { cycle: Cycle::PumpRest, .. } => "pump rests, by stopwatch".to_owned(),
        Observed::Sense(sense) => match sense {
            Sense::Hiss { part } => format!("hiss at {part}"),
            Sense::Hum => "hum".to_owned(),
            Sense::Touch { part } => format!("touch of {part}"),
            Sense::PedalTravel => "pedal under the foot".to_owned(),
            Sense::PedalMoved => "movement of the held pedal".to_owned(),
            Sense::Applications => "assisted applications".to_owned(),
            Sense::Lamp { instrument } => format!("glow of {instrument}"),
            Sense::BaseBrakes => "base brakes".to_owned(),
            Sense::YardDrive => "slow drive in the yard".to_owned(),
        },
    }
}

/// What a reading showed, in a table.
pub(crate) fn shown(reading: &Reading, scale: &Scale) -> String {
    match (&reading.what, reading.shown) {
        (Observed::Interval { max_s, .. }, ShownValue::Off(_)) => format!("more than {max_s} s"),
        (Observed::Sense(_), shown) => dial::level(shown, scale),
        (_, ShownValue::Off(high)) => if high { "off scale" } else { "off scale, low" }.to_owned(),
        (_, ShownValue::Blank | ShownValue::Level(_)) => "dark".to_owned(),
        (_, shown @ ShownValue::Steps(_)) => dial::level(shown, scale),
    }
}

/// How a reading shows itself.
fn picture(session: &Session, reading: &Reading) -> String {
    let workshop = session.workshop();
    let scale = workshop.scale(&reading.what);
    match &reading.what {
        Observed::Sense(_) => format!("     {}\n", dial::level(reading.shown, &scale)),
        Observed::Interval { max_s, .. } => match reading.shown {
            ShownValue::Off(_) => format!("     [ more than {max_s} s: given up ]\n"),
            shown => dial::display(shown, &scale),
        },
        Observed::Instrument { instrument, .. } => {
            let kit = &session.job().kit;
            let dial = kit.iter().find(|c| c.id == *instrument).and_then(|c| dial::dial_of(&c.kind));
            let (Some(dial), Scale::Numeric { unit, resolution, .. }) = (dial, &scale) else {
                return dial::display(reading.shown, &scale);
            };
            let seen = match reading.shown {
                ShownValue::Steps(n) => n as f64 * resolution,
                ShownValue::Off(false) => dial.min - dial.division,
                ShownValue::Off(true) => dial.max + dial.division,
                ShownValue::Level(_) | ShownValue::Blank => return dial::display(ShownValue::Blank, &scale),
            };
            // The needle itself, if it still stands where it was read; else where it was read.
            let view = workshop.view();
            let needle = view
                .instruments
                .iter()
                .find(|i| i.id == *instrument && i.shown == reading.shown)
                .and_then(|i| i.value)
                .unwrap_or(seen);
            dial::draw(&dial, needle, unit)
        }
    }
}

fn gravity(gravity: Gravity) -> &'static str {
    match gravity {
        Gravity::Minor => "minor",
        Gravity::Major => "major",
        Gravity::Critical => "CRITICAL",
    }
}

/// A sentence: a capital in front, a stop at the end if there is none.
pub(super) fn sentence(text: &str) -> String {
    let mut chars = text.chars();
    let mut out: String = chars.next().map_or_else(String::new, |c| c.to_uppercase().collect());
    out.push_str(chars.as_str());
    if !out.ends_with(['.', '?', '!']) {
        out.push('.');
    }
    out
}

/// Tells why a line was not understood; an example stands on a line of its own, ready to be typed.
pub(super) fn not_understood(out: &mut dyn Write, error: &WordsError) -> io::Result<()> {
    match error {
        WordsError::Shape { problem, example } => {
            wrapped(out, "  ", &sentence(problem))?;
            writeln!(out, "  For example:  {example}")
        }
        other => wrapped(out, "  ", &sentence(&other.to_string())),
    }
}

/// Tells what came of an action.
pub(super) fn outcome(
    out: &mut dyn Write,
    session: &Session,
    from: Station,
    action: &Action,
    outcome: &Outcome,
) -> io::Result<()> {
    if let Some(why) = &outcome.refused {
        return wrapped(out, "  ", &format!("Not done. {}", sentence(&why.to_string())));
    }
    let now = session.view().station;
    if now != from {
        writeln!(out, "  (You walk to the {}: 20 s.)", place(now))?;
    }
    match action {
        // The same lines as in `said`, laid out.
        Action::ReadCard => card(out, session)?,
        Action::ReadSheet => sheet(out, session)?,
        _ => {
            for line in &outcome.said {
                wrapped(out, "  ", line)?;
            }
        }
    }
    if let Some(reading) = &outcome.reading {
        writeln!(out, "  Reading {}: {}", reading.id, what(&reading.what))?;
        write!(out, "{}", picture(session, reading))?;
    }
    if let Action::Finding { units, certainty } = action {
        let names: Vec<&str> = units
            .iter()
            .map(|id| {
                session.job().car.units.iter().find(|u| u.id == *id).map_or(id.as_str(), |u| u.name.as_str())
            })
            .collect();
        let text = match (*certainty <= 0.0, names.is_empty()) {
            (true, _) => "Found: nothing; the car stays and is referred on.".to_owned(),
            (false, true) => format!("Found: everything inside its limits, sure {certainty:.2}."),
            (false, false) => format!("Found: {}, sure {certainty:.2}.", names.join(" and ")),
        };
        wrapped(out, "  ", &text)?;
    }
    if let Action::Note { written, record, .. } = action {
        noted(out, session, action, written.as_ref(), record.as_deref(), outcome)?;
    }
    for breach in &outcome.breaches {
        wrapped(out, "  ! ", &format!("Safety ({}): {}", gravity(breach.gravity), breach.text))?;
    }
    let silent = outcome.said.is_empty() && outcome.reading.is_none() && outcome.breaches.is_empty();
    if silent && !matches!(action, Action::Note { .. }) {
        // Whoever types wants to see that something was done, and what it cost.
        let s = (outcome.end.0 - outcome.start.0) / sim_core::units::TICKS_PER_SECOND;
        match s {
            0..60 => writeln!(out, "  Done.")?,
            _ => writeln!(out, "  Done; it took {:.0} min.", s as f64 / 60.0)?,
        }
    }
    Ok(())
}

fn noted(
    out: &mut dyn Write,
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
        Some(w) => format!("{} {}", w.value, w.unit),
        None => shown_in_words(session, found),
    };
    writeln!(out, "  Noted: reading {reading}, {}: {value}", what(&found.what))?;
    if let (Some(item), Some(entry)) = (record, &outcome.record) {
        let text = match entry.unmet {
            None => format!("Entered in the record for {item}."),
            Some(unmet) => format!("It does not fill the line {item} of the record: {unmet}."),
        };
        wrapped(out, "  ", &text)?;
    }
    Ok(())
}

/// A reading that has no number of its own to hide.
pub(super) fn shown_in_words(session: &Session, reading: &Reading) -> String {
    let scale = session.workshop().scale(&reading.what);
    match (&reading.what, reading.shown) {
        (Observed::Sense(_), shown) => dial::level(shown, &scale),
        (Observed::Interval { max_s, .. }, ShownValue::Off(_)) => format!("more than {max_s} s"),
        (_, ShownValue::Off(true)) => "off the scale".to_owned(),
        (_, ShownValue::Off(false)) => "off the scale, low".to_owned(),
        (_, ShownValue::Blank) => "dark".to_owned(),
        _ => "not written down".to_owned(),
    }
}

/// The job card.
pub(super) fn card(out: &mut dyn Write, session: &Session) -> io::Result<()> {
    let job = session.job();
    writeln!(out, "┌─ {} ─ {}", job.title, job.name())?;
    for (i, line) in job.card.iter().enumerate() {
        if i > 0 {
            writeln!(out, "│")?;
        }
        wrapped(out, "│ ", line)?;
    }
    writeln!(out, "└{}", "─".repeat(WIDTH - 1))
}

/// The car's data sheet.
fn sheet(out: &mut dyn Write, session: &Session) -> io::Result<()> {
    let car = &session.job().car;
    writeln!(out, "┌─ Data sheet ─ {}", car.name)?;
    for limit in &car.limits {
        wrapped(out, "│ • ", &limit.text)?;
    }
    wrapped(
        out,
        "│ ",
        &format!(
            "Above {} m the pump may not reach its cut-out: gauge limits are for the day's pressure.",
            car.altitude_limit_m
        ),
    )?;
    for caution in &car.cautions {
        wrapped(out, "│ ! ", caution)?;
    }
    writeln!(out, "└{}", "─".repeat(WIDTH - 1))
}

/// What is open, fitted and on.
pub(super) fn look(out: &mut dyn Write, session: &Session) -> io::Result<()> {
    let view = session.view();
    let engine = match view.engine {
        EngineState::Stopped => "stands",
        EngineState::ColdIdle => "runs at fast cold idle",
        EngineState::WarmIdle => "idles, warm",
        EngineState::Cruise => "cruises",
        EngineState::Overrun => "is on the overrun",
        EngineState::WideOpen => "pulls with the throttle wide open",
    };
    let pedal = match view.pedal {
        PedalHold::Released => "free".to_owned(),
        PedalHold::Foot { force_n } => format!("held by your foot with {force_n} N"),
        PedalHold::Prop { force_n } => format!("held by the prop with {force_n} N"),
    };
    wrapped(
        out,
        "  ",
        &format!(
            "You stand at the {}. Key {}; the engine {engine}; pedal {pedal}; chocks {}; extraction {}; {}.",
            place(view.station),
            if view.key_on { "on" } else { "off" },
            if view.chocked { "in place" } else { "away" },
            if view.extracted { "on the exhaust" } else { "on the wall" },
            if view.hum { "the pump hums" } else { "no hum" }
        ),
    )?;
    let list = |out: &mut dyn Write, title: &str, items: &[String]| {
        if items.is_empty() { Ok(()) } else { wrapped(out, "  ", &format!("{title}: {}.", items.join(", "))) }
    };
    list(out, "Covers off", &view.covers_off)?;
    list(out, "Open joints", &view.joints_open)?;
    list(out, "Pulled out", &view.pulled)?;
    let stops: Vec<String> = view
        .stops
        .iter()
        .map(|(port, stop)| match stop {
            Stop::Plug => format!("plug on {port}"),
            Stop::Clamp => format!("clamp at {port}"),
        })
        .collect();
    list(out, "Stops", &stops)?;
    let fitted: Vec<String> = view
        .instruments
        .iter()
        .filter(|i| !i.at.is_empty())
        .map(|i| {
            let at: Vec<&str> = i.at.iter().map(|(_, port)| port.as_str()).collect();
            format!("{} at {}", i.id, at.join(" and "))
        })
        .collect();
    list(out, "Fitted", &fitted)?;
    wrapped(
        out,
        "  ",
        &format!("{:.0} minutes worked, {:.0} waited.", view.attended_min, view.unattended_min),
    )
}

/// One part, looked at.
pub(super) fn part(out: &mut dyn Write, session: &Session, id: &str) -> io::Result<()> {
    let car = &session.job().car;
    let view = session.view();
    let found = car.assembly.parts.iter().zip(&car.stands).find(|(part, _)| part.id == id);
    let Some((part, stands)) = found else { return Ok(()) };
    let behind = match &stands.behind {
        Some(cover) if !view.covers_off.contains(cover) => format!(", behind {cover}"),
        _ => String::new(),
    };
    let made_of = match (stands.rubber, stands.bright_metal) {
        (true, _) => " Rubber: it may be clamped.",
        (false, true) => " Bright metal.",
        (false, false) => "",
    };
    wrapped(out, "  ", &format!("{} ({}{behind}).{made_of}", sentence(&stands.name), place(stands.station)))?;
    for joint in &car.assembly.joints {
        let (a, b) = (car.assembly.port_name(joint.a), car.assembly.port_name(joint.b));
        if [&a, &b].iter().any(|port| port.split('.').next() == Some(id)) {
            let open = if view.joints_open.contains(&joint.id) { ", open" } else { "" };
            writeln!(out, "  {:<14} {a} to {b}{open}", joint.id)?;
        }
    }
    if let Some(unit) =
        car.units.iter().find(|u| u.parts.iter().any(|p| car.assembly.parts[usize::from(*p)].id == part.id))
    {
        writeln!(out, "  Repair unit {}; {:.0} min to replace.", unit.id, unit.swap_min)?;
    }
    Ok(())
}

/// The tool board, or one tool.
pub(super) fn tools(out: &mut dyn Write, session: &Session, one: Option<&str>) -> io::Result<()> {
    let view = session.view();
    for card in session.job().kit.iter().filter(|c| one.is_none_or(|id| c.id == id)) {
        let fitted = view.instruments.iter().any(|i| i.id == card.id && !i.at.is_empty());
        let cost =
            if 0.0 < card.fit_min { format!(", {} min to connect", card.fit_min) } else { String::new() };
        writeln!(out, "  {:<12} {}{cost}{}", card.id, card.name, if fitted { "  (fitted)" } else { "" })?;
        wrapped(out, "               ", &card.help)?;
        if one.is_some()
            && let Some(dial) = dial::dial_of(&card.kind)
        {
            let text = format!(
                "Dial {} to {}, one mark is {}, class {} (it may be wrong by {:.1} anywhere on the dial).",
                dial.min,
                dial.max,
                dial.division,
                dial.class,
                dial.class / 100.0 * (dial.max - dial.min)
            );
            wrapped(out, "               ", &text)?;
        }
    }
    Ok(())
}

/// Spares, and what can be mended.
pub(super) fn store(out: &mut dyn Write, session: &Session) -> io::Result<()> {
    let job = session.job();
    writeln!(out, "  {:<13} {:<14} {:>6} {:>4}  what", "unit", "spare", "price", "min")?;
    for spare in job.spares.iter() {
        let Some(unit) = job.car.units.get(usize::from(spare.unit)) else { continue };
        writeln!(
            out,
            "  {:<13} {:<14} {:>6.2} {:>4.0}  {}",
            unit.id, spare.id, spare.price, unit.swap_min, spare.name
        )?;
    }
    let names = |can: &dyn Fn(&sim_core::car::RepairUnit) -> bool| {
        job.car.units.iter().filter(|u| can(u)).map(|u| u.id.clone()).collect::<Vec<_>>().join(", ")
    };
    wrapped(out, "  ", &format!("Can be cleaned: {}.", names(&|u| !u.cleans.is_empty())))?;
    wrapped(out, "  ", &format!("Can be re-formed: {}.", names(&|u| u.reforms)))?;
    wrapped(out, "  ", &format!("Can be pulled and pushed: {}.", names(&|u| u.plug_in)))
}

/// The notebook.
pub(super) fn notebook(out: &mut dyn Write, session: &Session) -> io::Result<()> {
    let view = session.view();
    if view.notes.is_empty() {
        wrapped(out, "  ", "Nothing noted yet.")?;
    }
    for (id, written, record) in &view.notes {
        let Some(reading) = view.readings.iter().find(|r| r.id == *id) else { continue };
        let value = match written {
            Some(w) => format!("{} {}", w.value, w.unit),
            None => shown_in_words(session, reading),
        };
        let line = record.as_ref().map_or_else(String::new, |r| format!("  [{r}]"));
        writeln!(out, "  {id:>3}  {}  {}: {value}{line}", clock(reading.tick), what(&reading.what))?;
    }
    for step in &session.attempt().steps {
        if let (Action::Suspect { text }, None) = (&step.action, &step.refused) {
            wrapped(out, "  ", &format!("{}  suspicion: {text}", clock(step.start)))?;
        }
    }
    for (i, (units, certainty)) in view.findings.iter().enumerate() {
        let text = if *certainty <= 0.0 {
            "not found, refer on".to_owned()
        } else if units.is_empty() {
            format!("everything inside its limits, sure {certainty:.2}")
        } else {
            format!("{}, sure {certainty:.2}", units.join(" and "))
        };
        writeln!(out, "  finding {}: {text}", i + 1)?;
    }
    Ok(())
}

/// Readings that are not noted, without what they showed.
pub(super) fn not_noted(out: &mut dyn Write, session: &Session) -> io::Result<()> {
    let view = session.view();
    let open: Vec<&Reading> =
        view.readings.iter().filter(|r| view.notes.iter().all(|(id, ..)| *id != r.id)).collect();
    if open.is_empty() {
        return wrapped(out, "  ", "Every reading is in the notebook.");
    }
    for reading in open {
        writeln!(out, "  {:>3}  {}  {}", reading.id, clock(reading.tick), what(&reading.what))?;
    }
    wrapped(out, "  ", "Not noted, so not counted. Note one with: note NUMBER VALUE UNIT.")
}

/// The words that lead to a reading a record line asks for.
fn how(kind: RecordKind) -> &'static str {
    match kind {
        RecordKind::DayPressure => "read barometer",
        RecordKind::BatteryVoltage => {
            "fit meter red=battery.plus black=battery.minus, meter volt, read meter"
        }
        RecordKind::PumpRun => "pedal pump 12 200, key on, time run",
        RecordKind::PumpRest => "time rest 900, foot off the pedal",
        RecordKind::CutOut => "stand by the gauge, wait until pump starts, wait until pump stops, read gauge",
        RecordKind::CutIn => "stand by the gauge, wait until pump starts, read gauge",
        RecordKind::ReleaseBuildUp => "pedal pump 12 200 with the key off, key on, time run",
        RecordKind::ReleaseDrop => {
            "pedal pump 12 200 with the key off, pedal press 150, key on, engine idle, wait 10, feel moved"
        }
        RecordKind::ReleaseReserve => "key off, engine stopped, pedal pump 12 200, feel applications",
        RecordKind::ReleaseNoRise => "pedal press 150, engine stop, wait 30, feel moved",
        RecordKind::ReleaseRest => "let the pump fill the store, time rest 900",
        RecordKind::ReleaseYard => "brakes, chocks off, extraction off, drive",
    }
}

/// Lines of the record.
pub(super) fn record(out: &mut dyn Write, session: &Session) -> io::Result<()> {
    let entries = || {
        let done = session.attempt().steps.iter().filter(|s| s.refused.is_none());
        done.filter_map(|s| s.record.as_ref())
    };
    for item in &session.job().car.record {
        let filled = entries().any(|r| r.item == item.id && r.condition_met);
        let mark = if filled { "x" } else { " " };
        let limit = item.limit.and_then(|i| session.job().car.limits.get(usize::from(i)));
        let limit = limit.map_or_else(String::new, |l| format!(" Limit: {}", sentence(&l.text)));
        let last = entries().rfind(|r| r.item == item.id).filter(|_| !filled);
        let unmet = last.and_then(|r| r.unmet).map_or_else(String::new, |why| format!(" Not filled: {why}."));
        let text = format!("{}.{limit} How: {}.{unmet}", item.text, how(item.kind));
        hanging(out, &format!("[{mark}] {}", item.id), &text)?;
    }
    wrapped(
        out,
        "  ",
        "Fill a line with: note VALUE UNIT for LINE. Release checks come after the last change: of a joint, \
         a plug or clamp, a unit, or an instrument in a vacuum line.",
    )
}
