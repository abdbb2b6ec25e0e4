//! What came of an action, and what can be seen, in sentences.

use std::io::{self, Write};

use assess::locale::{Naming, Speech};
use assess::play::Session;
use assess::words::WordsError;
use front::words::Words;
use sim_core::action::{Action, Cycle, PedalHold, Sense, Station, Written};
use sim_core::assembly::Stop;
use sim_core::car::RecordKind;
use sim_core::notice::Gravity;
use sim_core::observe::{Observed, Reading, Scale, ShownValue};
use sim_core::parts::engine::EngineState;
use sim_core::units::Tick;
use sim_core::workshop::{Outcome, View};

use super::{called, dial};
use crate::tongue::{decimal, say};

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
pub(crate) fn clock(words: &Words, tick: Tick) -> String {
    let s = tick.0 / sim_core::units::TICKS_PER_SECOND;
    let (day, of_day) = ((s + 8 * 3600) / 86_400, (s + 8 * 3600) % 86_400);
    let time = format!("{:02}:{:02}:{:02}", of_day / 3600, of_day / 60 % 60, of_day % 60);
    if day == 0 { time } else { say!(words, "bench-day", n = day + 1, time = time) }
}

/// Where the trainee stands.
pub(super) fn place(words: &Words, station: Station) -> String {
    words.say(match station {
        Station::Desk => "bench-at-desk",
        Station::Cab => "bench-at-cab",
        Station::Bay => "bench-at-bay",
        Station::Front => "bench-at-front",
        Station::Bench => "bench-at-bench",
    })
}

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

/// Names one after the other, as one says them.
fn all_of(words: &Words, names: &[impl AsRef<str>]) -> String {
    let names: Vec<&str> = names.iter().map(AsRef::as_ref).collect();
    names.join(&format!(" {} ", words.say("bench-and")))
}

/// The prompt: time, place, minutes worked.
pub(super) fn prompt(words: &Words, view: &View) -> String {
    let min = format!("{:.0}", view.attended_min);
    let (time, place) = (clock(words, view.tick), place(words, view.station));
    say!(words, "bench-prompt", time = time, place = place, min = min) + " "
}

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
fn picture(words: &Words, session: &Session, reading: &Reading) -> String {
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

/// A breach of safety, with how grave it is.
fn safety(words: &Words, gravity: Gravity, text: &str) -> String {
    match gravity {
        Gravity::Minor => say!(words, "bench-safety-minor", text = text),
        Gravity::Major => say!(words, "bench-safety-major", text = text),
        Gravity::Critical => say!(words, "bench-safety-critical", text = text),
    }
}

/// With a capital in front.
fn capital(text: &str) -> String {
    let mut chars = text.chars();
    let first: String = chars.next().map_or_else(String::new, |c| c.to_uppercase().collect());
    first + chars.as_str()
}

/// A sentence: a capital in front, a stop at the end if there is none.
pub(super) fn sentence(text: &str) -> String {
    let mut out = capital(text);
    if !out.ends_with(['.', '?', '!']) {
        out.push('.');
    }
    out
}

/// Tells why a line was not understood; an example stands on a line of its own, ready to be typed.
pub(super) fn not_understood(out: &mut dyn Write, words: &Words, error: &WordsError) -> io::Result<()> {
    match error {
        WordsError::Shape { problem, example } => {
            wrapped(out, "  ", &sentence(&words.sentence(problem)))?;
            writeln!(out, "  {}  {example}", words.say("bench-example"))
        }
        other => wrapped(out, "  ", &sentence(&words.sentence(&other.sentence()))),
    }
}

/// The language at the job, things named as they are typed.
pub(super) fn speech<'a>(words: &'a Words, session: &'a Session) -> Speech<'a> {
    Speech::new(words, session.job(), Naming::Typed)
}

/// Tells what came of an action.
pub(super) fn outcome(
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

/// A value as somebody wrote it.
fn written_as(words: &Words, written: &Written) -> String {
    format!("{} {}", decimal(words, written.value), written.unit)
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

/// The job card.
pub(super) fn card(out: &mut dyn Write, words: &Words, session: &Session) -> io::Result<()> {
    let job = session.job();
    writeln!(out, "┌─ {} ─ {}", words.job(&job.name(), &job.title), job.name())?;
    for (i, line) in called::card_lines(words, job).iter().enumerate() {
        if i > 0 {
            writeln!(out, "│")?;
        }
        wrapped(out, "│ ", line)?;
    }
    writeln!(out, "└{}", "─".repeat(WIDTH - 1))
}

/// The car's data sheet.
fn sheet(out: &mut dyn Write, words: &Words, session: &Session) -> io::Result<()> {
    let car = &session.job().car;
    writeln!(out, "┌─ {} ─ {}", words.say("bench-sheet"), words.car(&car.id, &car.name))?;
    for limit in &car.limits {
        wrapped(out, "│ • ", &words.limit(&car.id, &limit.id, &limit.text))?;
    }
    if let Some(m) = car.cut_out_height_m() {
        wrapped(out, "│ ", &say!(words, "bench-sheet-altitude", m = decimal(words, m)))?;
    }
    for (n, caution) in car.cautions.iter().enumerate() {
        wrapped(out, "│ ! ", &words.caution(&car.id, n, caution))?;
    }
    writeln!(out, "└{}", "─".repeat(WIDTH - 1))
}

/// What is open, fitted and on.
pub(super) fn look(out: &mut dyn Write, words: &Words, session: &Session) -> io::Result<()> {
    let view = session.view();
    let engine = words.say(match view.engine {
        EngineState::Stopped => "bench-engine-stopped",
        EngineState::ColdIdle => "bench-engine-cold",
        EngineState::WarmIdle => "bench-engine-warm",
        EngineState::Cruise => "bench-engine-cruise",
        EngineState::Overrun => "bench-engine-overrun",
        EngineState::WideOpen => "bench-engine-open",
    });
    let pedal = match view.pedal {
        PedalHold::Released => words.say("bench-pedal-free"),
        PedalHold::Foot { force_n } => say!(words, "bench-pedal-foot", n = decimal(words, force_n)),
        PedalHold::Prop { force_n } => say!(words, "bench-pedal-prop", n = decimal(words, force_n)),
    };
    let either = |is: bool, yes: &str, no: &str| words.say(if is { yes } else { no });
    let stands = say!(
        words,
        "bench-look",
        place = place(words, view.station),
        key = either(view.key_on, "bench-key-on", "bench-key-off"),
        engine = engine,
        pedal = pedal,
        chocks = either(view.chocked, "bench-chocks-on", "bench-chocks-off"),
        extraction = either(view.extracted, "bench-extraction-on", "bench-extraction-off"),
        hum = either(view.hum, "bench-hum", "bench-no-hum")
    );
    wrapped(out, "  ", &stands)?;
    let mut list = |key: &str, items: &[String]| {
        if items.is_empty() {
            return Ok(());
        }
        wrapped(out, "  ", &words.say_with(key, &[("list", items.join(", ").into())]))
    };
    list("bench-covers-off", &view.covers_off)?;
    list("bench-joints-open", &view.joints_open)?;
    list("bench-pulled", &view.pulled)?;
    let stops: Vec<String> = view
        .stops
        .iter()
        .map(|(port, stop)| match stop {
            Stop::Plug => say!(words, "bench-plug-on", at = port),
            Stop::Clamp => say!(words, "bench-clamp-at", at = port),
        })
        .collect();
    list("bench-stops", &stops)?;
    let fitted: Vec<String> = view
        .instruments
        .iter()
        .filter(|i| !i.at.is_empty())
        .map(|i| {
            let at: Vec<&str> = i.at.iter().map(|(_, port)| port.as_str()).collect();
            say!(words, "bench-fitted-at", it = i.id.as_str(), at = all_of(words, &at))
        })
        .collect();
    list("bench-fitted", &fitted)?;
    let whole = |min: f64| format!("{min:.0}");
    let (worked, waited) = (whole(view.attended_min), whole(view.unattended_min));
    wrapped(out, "  ", &say!(words, "bench-minutes", worked = worked, waited = waited))
}

/// One part, looked at.
pub(super) fn part(out: &mut dyn Write, words: &Words, session: &Session, id: &str) -> io::Result<()> {
    let car = &session.job().car;
    let view = session.view();
    let found = car.assembly.parts.iter().zip(&car.stands).find(|(part, _)| part.id == id);
    let Some((part, stands)) = found else { return Ok(()) };
    let name = capital(&called::part(words, car, id, &stands.name));
    let place = place(words, stands.station);
    let mut text = match &stands.behind {
        Some(cover) if !view.covers_off.contains(cover) => {
            say!(words, "bench-part-behind", name = name, place = place, cover = cover)
        }
        _ => say!(words, "bench-part", name = name, place = place),
    };
    let made_of = match (stands.rubber, stands.bright_metal) {
        (true, _) => Some("bench-part-rubber"),
        (false, true) => Some("bench-part-bright"),
        (false, false) => None,
    };
    if let Some(key) = made_of {
        text = format!("{text} {}", words.say(key));
    }
    wrapped(out, "  ", &text)?;
    for joint in &car.assembly.joints {
        let (a, b) = (car.assembly.port_name(joint.a), car.assembly.port_name(joint.b));
        if [&a, &b].iter().any(|port| port.split('.').next() == Some(id)) {
            let text = match view.joints_open.contains(&joint.id) {
                true => say!(words, "bench-part-joint-open", a = a, b = b),
                false => say!(words, "bench-part-joint", a = a, b = b),
            };
            writeln!(out, "  {:<14} {text}", joint.id)?;
        }
    }
    if let Some(unit) =
        car.units.iter().find(|u| u.parts.iter().any(|p| car.assembly.parts[usize::from(*p)].id == part.id))
    {
        let min = format!("{:.0}", unit.swap_min);
        writeln!(out, "  {}", say!(words, "bench-part-unit", unit = unit.id.as_str(), min = min))?;
    }
    Ok(())
}

/// The tool board, or one tool.
pub(super) fn tools(
    out: &mut dyn Write,
    words: &Words,
    session: &Session,
    one: Option<&str>,
) -> io::Result<()> {
    let view = session.view();
    for card in session.job().kit.iter().filter(|c| one.is_none_or(|id| c.id == id)) {
        let fitted = match view.instruments.iter().any(|i| i.id == card.id && !i.at.is_empty()) {
            true => format!("  {}", words.say("bench-tool-fitted")),
            false => String::new(),
        };
        let cost = match 0.0 < card.fit_min {
            true => format!(", {}", say!(words, "bench-tool-cost", min = decimal(words, card.fit_min))),
            false => String::new(),
        };
        writeln!(out, "  {:<12} {}{cost}{fitted}", card.id, called::instrument(words, card))?;
        wrapped(out, "               ", &called::instrument_help(words, card))?;
        if one.is_some()
            && let Some(dial) = dial::dial_of(&card.kind)
        {
            let number = |value: f64| decimal(words, value);
            let wrong = format!("{:.1}", dial.class / 100.0 * (dial.max - dial.min));
            let text = say!(
                words,
                "bench-tool-dial",
                min = number(dial.min),
                max = number(dial.max),
                division = number(dial.division),
                class = number(dial.class),
                wrong = decimal(words, wrong)
            );
            wrapped(out, "               ", &text)?;
        }
    }
    Ok(())
}

/// Spares, and what can be mended.
pub(super) fn store(out: &mut dyn Write, words: &Words, session: &Session) -> io::Result<()> {
    let job = session.job();
    let [unit, spare, price, min, what] =
        ["bench-store-unit", "bench-store-spare", "bench-store-price", "bench-store-min", "bench-store-what"]
            .map(|key| words.say(key));
    writeln!(out, "  {unit:<13} {spare:<14} {price:>6} {min:>4}  {what}")?;
    for spare in job.spares.iter() {
        let Some(unit) = job.car.units.get(usize::from(spare.unit)) else { continue };
        let price = decimal(words, format!("{:.2}", spare.price));
        let name = called::spare(words, &job.car, spare);
        writeln!(out, "  {:<13} {:<14} {price:>6} {:>4.0}  {name}", unit.id, spare.id, unit.swap_min)?;
    }
    let names = |can: &dyn Fn(&sim_core::car::RepairUnit) -> bool| {
        job.car.units.iter().filter(|u| can(u)).map(|u| u.id.clone()).collect::<Vec<_>>().join(", ")
    };
    wrapped(out, "  ", &say!(words, "bench-can-clean", list = names(&|u| !u.cleans.is_empty())))?;
    wrapped(out, "  ", &say!(words, "bench-can-reform", list = names(&|u| u.reforms)))?;
    wrapped(out, "  ", &say!(words, "bench-can-pull", list = names(&|u| u.plug_in)))
}

/// The notebook.
pub(super) fn notebook(out: &mut dyn Write, words: &Words, session: &Session) -> io::Result<()> {
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
pub(super) fn not_noted(out: &mut dyn Write, words: &Words, session: &Session) -> io::Result<()> {
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
pub(super) fn record(out: &mut dyn Write, words: &Words, session: &Session) -> io::Result<()> {
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
