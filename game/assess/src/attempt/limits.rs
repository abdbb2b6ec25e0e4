//! What the numbers of an attempt can be, each by its own kind: checked before anything is done again, so that no
//! file can make a replay run for ever.
//!
//! * An action that was done lasts no longer than such an action can ([`longest`]); one that was refused, not at all.
//! * Between two actions the window's clock may run on by itself, but not for days ([`LONGEST_PAUSE`],
//!   [`LONGEST_FREE`]).
//! * All of an attempt together has a budget ([`LONGEST_ATTEMPT`], [`MOST_ACTIONS`]).
//!
//! Whoever works keeps a little under the budget ([`room_for`]), so that the car can always be handed back.

use sim_core::action::{Action, PedalHold, Sense};
use sim_core::observe::{Reading, ShownValue};
use sim_core::parts::engine::EngineState;
use sim_core::units::{TICKS_PER_SECOND, Tick};

use super::mark_line::MarkLine;
use super::{Header, Refused, Repair, SCHEMA, SCHEMA_1, SCHEMA_2, Sitting, Step};
use crate::attempt::clock::LATEST_UNIX_MS;
use crate::pack::job::Job;

const HOUR: u64 = 3600 * TICKS_PER_SECOND;

/// Actions in an attempt at most; a thorough job takes a hundred.
pub const MOST_ACTIONS: u32 = 5_000;
/// Simulated time of an attempt at most, ticks: ten days.
pub const LONGEST_ATTEMPT: u64 = 240 * HOUR;
/// How long the clock may run on between two actions, ticks: twelve hours.
pub const LONGEST_PAUSE: u64 = 12 * HOUR;
/// How long it may run on by itself in all of an attempt, ticks: a day.
pub const LONGEST_FREE: u64 = 24 * HOUR;

/// Actions and time kept for setting the car right and handing it back.
const KEPT_ACTIONS: u32 = 100;
const KEPT_TIME: u64 = 24 * HOUR;

/// Sittings, and repairs, in a file.
const MOST_SITTINGS: usize = 5_000;
/// Longest name of a thing, bytes.
const LONGEST_NAME: usize = 200;
/// Longest text that a person writes down, bytes.
pub const LONGEST_TEXT: usize = 4_000;
/// Longest list in an action.
const LONGEST_LIST: usize = 200;
/// Breaches of safety in one action at most.
const MOST_BREACHES: usize = 100;

/// A number that cannot be.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[error("{what} is {value}; {bound}")]
pub struct Beyond {
    /// Which number.
    pub what: &'static str,
    /// What it is.
    pub value: String,
    /// What it could be.
    pub bound: String,
}

fn beyond<T>(what: &'static str, value: impl ToString, bound: impl Into<String>) -> Result<T, Beyond> {
    Err(Beyond { what, value: value.to_string(), bound: bound.into() })
}

fn within(what: &'static str, value: f64, min: f64, max: f64) -> Result<(), Beyond> {
    if (min..=max).contains(&value) {
        Ok(())
    } else {
        beyond(what, value, format!("expected {min} to {max}"))
    }
}

fn at_most(what: &'static str, value: u64, most: u64) -> Result<(), Beyond> {
    if value <= most { Ok(()) } else { beyond(what, value, format!("at most {most}")) }
}

fn short(what: &'static str, text: &str, most: usize) -> Result<(), Beyond> {
    if text.len() <= most {
        Ok(())
    } else {
        beyond(what, format!("{} bytes long", text.len()), format!("at most {most}"))
    }
}

fn unix_ms(what: &'static str, ms: u64) -> Result<(), Beyond> {
    if ms <= LATEST_UNIX_MS {
        Ok(())
    } else {
        beyond(what, ms, format!("expected milliseconds since 1970, at most {LATEST_UNIX_MS}"))
    }
}

pub(super) fn header(header: &Header) -> Result<(), Beyond> {
    if ![SCHEMA, SCHEMA_2, SCHEMA_1].contains(&header.schema.as_str()) {
        let schema: String = header.schema.chars().take(40).collect();
        return beyond(
            "schema",
            format!("{schema:?}"),
            format!("expected {SCHEMA:?}, {SCHEMA_2:?} or {SCHEMA_1:?}"),
        );
    }
    let is_first = header.schema == SCHEMA_1;
    if header.scripted.is_some() != is_first {
        return beyond(
            "scripted",
            format!("{:?}", header.scripted),
            format!("it belongs to {SCHEMA_1:?} alone"),
        );
    }
    if header.seed_from.is_some() == is_first {
        return beyond(
            "seed_from",
            format!("{:?}", header.seed_from),
            format!("it does not belong to {SCHEMA_1:?}"),
        );
    }
    for (what, text) in [
        ("the program's version", &header.engine),
        ("the pack's name", &header.pack),
        ("the job's name", &header.job),
        ("the job's digest", &header.job_digest),
    ] {
        short(what, text, LONGEST_NAME)?;
    }
    short("the seat", header.seat.as_deref().unwrap_or_default(), 4 * 64)?;
    at_most("the time it was begun", header.created_unix_s, LATEST_UNIX_MS / 1000)
}

pub(super) fn sitting(sitting: &Sitting, done: u32, before: usize) -> Result<(), Beyond> {
    if sitting.after != done {
        return beyond("the number of actions before a sitting", sitting.after, format!("expected {done}"));
    }
    at_most("the number of sittings", before as u64 + 1, MOST_SITTINGS as u64)?;
    short("the program's version", &sitting.engine, LONGEST_NAME)?;
    unix_ms("the time of a sitting", sitting.at_unix_ms)
}

pub(super) fn repair(repair: &Repair, done: u32, before: usize) -> Result<(), Beyond> {
    if repair.after != done {
        return beyond("the number of actions before a repair", repair.after, format!("expected {done}"));
    }
    at_most("the number of repairs", before as u64 + 1, MOST_SITTINGS as u64)?;
    short("the program's version", &repair.engine, LONGEST_NAME)?;
    at_most("the number of bytes dropped", repair.dropped_bytes, 1 << 40)?;
    at_most("the number of lines dropped", repair.dropped_lines, 1 << 40)?;
    unix_ms("the time of a repair", repair.at_unix_ms)
}

pub(super) fn mark(mark: &MarkLine) -> Result<(), Beyond> {
    within("the mark's total", mark.total, 0.0, 100.0)?;
    within("the mark's deduction", mark.deducted, 0.0, 1e6)?;
    at_most("the number of the mark's parts", mark.parts.len() as u64, 20)?;
    for part in &mark.parts {
        within("points of a part of the mark", part.points, -100.0, 100.0)?;
    }
    [&mark.scheme, &mark.engine, &mark.job_digest]
        .into_iter()
        .try_for_each(|text| short("a name in the mark", text, LONGEST_NAME))
}

/// What the actions so far add up to.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Tally {
    actions: u32,
    readings: u32,
    end: u64,
    free: u64,
}

impl Tally {
    /// Takes in an action, if each of its numbers can be.
    pub(crate) fn take(&mut self, step: &Step) -> Result<(), Beyond> {
        if step.n != self.actions + 1 {
            return beyond("action number", step.n, format!("expected {}", self.actions + 1));
        }
        at_most("the number of actions", u64::from(step.n), u64::from(MOST_ACTIONS))?;
        let (start, end) = (step.start.0, step.end.0);
        if start < self.end {
            return beyond(
                "the first tick of an action",
                start,
                format!("at least {}, where the last ended", self.end),
            );
        }
        let pause = start - self.end;
        at_most("the pause before an action, in ticks,", pause, LONGEST_PAUSE)?;
        at_most("the time nobody did anything, in ticks,", self.free + pause, LONGEST_FREE)?;
        if end < start {
            return beyond("the last tick of an action", end, format!("at least {start}, where it began"));
        }
        at_most("the last tick of an action", end, LONGEST_ATTEMPT)?;
        if step.refused.is_some() {
            at_most("the length of a refused action, in ticks,", end - start, 0)?;
        } else {
            at_most("the length of the action, in ticks,", end - start, longest(&step.action))?;
            done(&step.action, self.readings)?;
        }
        action(&step.action)?;
        short(
            "why it was refused",
            step.refused.as_ref().map_or("", Refused::longest_text),
            2 * LONGEST_TEXT,
        )?;
        let ms = step.at_unix_ms.unwrap_or(0);
        unix_ms("the time of an action", ms)?;
        if let Some(reading) = &step.reading {
            self.reading(reading, step)?;
        }
        self.minutes(step)?;
        at_most("the number of breaches", step.breaches.len() as u64, MOST_BREACHES as u64)?;
        *self = Self {
            actions: step.n,
            readings: self.readings + u32::from(step.reading.is_some()),
            end,
            free: self.free + pause,
        };
        Ok(())
    }

    fn reading(&self, reading: &Reading, step: &Step) -> Result<(), Beyond> {
        let expected = self.readings + 1;
        if reading.id != expected {
            return beyond("the number of a reading", reading.id, format!("expected {expected}"));
        }
        if reading.tick < step.start || step.end < reading.tick {
            let bound = format!("expected {} to {}, when the action was done", step.start.0, step.end.0);
            return beyond("the tick of a reading", reading.tick.0, bound);
        }
        match reading.shown {
            ShownValue::Steps(n) => within("what a reading showed, in steps,", n as f64, -1e9, 1e9),
            ShownValue::Level(level) => at_most("the level of a reading", u64::from(level), 20),
            ShownValue::Off(_) | ShownValue::Blank => Ok(()),
        }
    }

    /// One digest at most for each minute since the action before, in order.
    fn minutes(&self, step: &Step) -> Result<(), Beyond> {
        const MINUTE: u64 = 60 * TICKS_PER_SECOND;
        let most = (step.end.0 - self.end) / MINUTE + 1;
        at_most("the number of minutes with a digest", step.minutes.len() as u64, most)?;
        let mut before = self.end;
        for (Tick(at), _) in &step.minutes {
            if *at < before || step.end.0 < *at {
                let bound = format!("expected {before} to {}", step.end.0);
                return beyond("the tick of a minute's digest", at, bound);
            }
            before = *at;
        }
        Ok(())
    }
}

/// How long an action can take at most, ticks: the time that is asked for or that a pack may set, and what walking
/// and standing about come to.
#[must_use]
pub fn longest(action: &Action) -> u64 {
    /// From any place to any other, twice over, and settling.
    const ABOUT_S: u64 = 300;
    let s = match action {
        Action::Wait { s } => u64::from(*s),
        // First until the pump starts or stops, then for the run or the rest.
        Action::Time { max_s, .. } => 2 * u64::from(*max_s),
        Action::WaitUntil { max_s, .. } => u64::from(*max_s),
        Action::Overnight => 12 * 3600,
        Action::PumpPedal { times, .. } => 5 * u64::from(*times),
        Action::Stroke { times, .. } => 2 * u64::from(*times),
        // What a pack may set at most.
        Action::Cover { .. } => 120 * 60,
        Action::Swap { .. } => 600 * 60,
        Action::Fit { .. } | Action::Unfit { .. } => 30 * 60,
        Action::Clean { .. } | Action::Reform { .. } => 20 * 60,
        Action::Sense(_) | Action::HandBack => 10 * 60,
        Action::ReadCard
        | Action::ReadSheet
        | Action::Chocks(_)
        | Action::Extraction(_)
        | Action::Key(_)
        | Action::Engine(_)
        | Action::Pedal(_)
        | Action::OpenJoint { .. }
        | Action::MakeJoint { .. }
        | Action::SetStop { .. }
        | Action::PullUnit { .. }
        | Action::PushUnit { .. }
        | Action::SetMeter { .. }
        | Action::Press { .. }
        | Action::Read { .. }
        | Action::Note { .. }
        | Action::Suspect { .. }
        | Action::Finding { .. } => 0,
    };
    s.saturating_add(ABOUT_S).saturating_mul(TICKS_PER_SECOND)
}

/// An action that was done has numbers with which it could be done.
fn done(action: &Action, readings: u32) -> Result<(), Beyond> {
    let whole = |what, n: u32, max: f64| within(what, f64::from(n), 1.0, max);
    match action {
        Action::Wait { s } => whole("the time to wait, in s,", *s, 43_200.0),
        Action::Time { max_s, .. } | Action::WaitUntil { max_s, .. } => {
            whole("the longest time to wait, in s,", *max_s, 7_200.0)
        }
        Action::Stroke { times, .. } => whole("the number of strokes", *times, 200.0),
        Action::PumpPedal { times, force_n } => {
            whole("the number of applications", *times, 30.0)?;
            within("the force on the pedal, in N,", *force_n, 1.0, 700.0)
        }
        Action::Pedal(PedalHold::Foot { force_n }) => {
            within("the force on the pedal, in N,", *force_n, 1.0, 700.0)
        }
        Action::Pedal(PedalHold::Prop { force_n }) => {
            within("the force of the prop, in N,", *force_n, 1.0, 500.0)
        }
        Action::Note { reading, .. } => {
            if readings == 0 {
                return beyond("the reading that is noted", reading, "nothing was read before");
            }
            whole("the reading that is noted", *reading, f64::from(readings))
        }
        Action::Finding { certainty, .. } => within("the certainty", *certainty, 0.0, 0.95),
        Action::ReadCard
        | Action::ReadSheet
        | Action::Chocks(_)
        | Action::Extraction(_)
        | Action::Key(_)
        | Action::Engine(_)
        | Action::Pedal(PedalHold::Released)
        | Action::Cover { .. }
        | Action::OpenJoint { .. }
        | Action::MakeJoint { .. }
        | Action::SetStop { .. }
        | Action::PullUnit { .. }
        | Action::PushUnit { .. }
        | Action::Fit { .. }
        | Action::Unfit { .. }
        | Action::SetMeter { .. }
        | Action::Press { .. }
        | Action::Swap { .. }
        | Action::Clean { .. }
        | Action::Reform { .. }
        | Action::Read { .. }
        | Action::Sense(_)
        | Action::Overnight
        | Action::Suspect { .. }
        | Action::HandBack => Ok(()),
    }
}

/// What may be asked for at all, done or refused: names and texts of a length that a person types.
///
/// # Errors
/// Which of its texts or lists is too long, or which number is none.
pub fn action(action: &Action) -> Result<(), Beyond> {
    let name = |text: &str| short("a name", text, LONGEST_NAME);
    let number = |what, value: f64| {
        if value.is_finite() { Ok(()) } else { beyond(what, value, "expected a number") }
    };
    match action {
        Action::Suspect { text } => short("the suspicion", text, LONGEST_TEXT),
        Action::Note { written, record, .. } => {
            if let Some(written) = written {
                number("the value written down", written.value)?;
                name(&written.unit)?;
            }
            name(record.as_deref().unwrap_or_default())
        }
        Action::Finding { units, certainty } => {
            at_most("the number of units in a finding", units.len() as u64, LONGEST_LIST as u64)?;
            number("the certainty", *certainty)?;
            units.iter().try_for_each(|unit| name(unit))
        }
        Action::Fit { instrument, ends } => {
            name(instrument)?;
            at_most("the number of ends", ends.len() as u64, LONGEST_LIST as u64)?;
            ends.iter().try_for_each(|(end, at)| name(end).and(name(at)))
        }
        Action::Pedal(PedalHold::Foot { force_n } | PedalHold::Prop { force_n })
        | Action::PumpPedal { force_n, .. } => number("the force on the pedal", *force_n),
        Action::Swap { unit, spare } => name(unit).and(name(spare)),
        Action::Cover { cover: one, .. }
        | Action::OpenJoint { joint: one }
        | Action::MakeJoint { joint: one }
        | Action::SetStop { port: one, .. }
        | Action::PullUnit { unit: one }
        | Action::PushUnit { unit: one }
        | Action::Clean { unit: one }
        | Action::Reform { unit: one }
        | Action::Unfit { instrument: one }
        | Action::SetMeter { instrument: one, .. }
        | Action::Press { instrument: one, .. }
        | Action::Stroke { instrument: one, .. }
        | Action::Read { instrument: one }
        | Action::Sense(
            Sense::Hiss { part: one } | Sense::Touch { part: one } | Sense::Lamp { instrument: one },
        ) => name(one),
        Action::ReadCard
        | Action::ReadSheet
        | Action::Chocks(_)
        | Action::Extraction(_)
        | Action::Key(_)
        | Action::Engine(_)
        | Action::Pedal(PedalHold::Released)
        | Action::Sense(_)
        | Action::Time { .. }
        | Action::Wait { .. }
        | Action::WaitUntil { .. }
        | Action::Overnight
        | Action::HandBack => Ok(()),
    }
}

/// Whether one more action may be done at `now` after `actions` of them, the last of which ended at `end`: a little is
/// always kept for handing the car back.
///
/// # Errors
/// Which bound of an attempt has been reached.
pub fn room_for(action: &Action, actions: usize, now: Tick) -> Result<(), Beyond> {
    let ends = matches!(
        action,
        Action::HandBack
            | Action::Finding { .. }
            | Action::Note { .. }
            | Action::Key(false)
            | Action::Engine(EngineState::Stopped)
            | Action::Pedal(PedalHold::Released)
    );
    let (kept, time) = if ends { (0, 0) } else { (KEPT_ACTIONS, KEPT_TIME) };
    let (most, longest_end) = (MOST_ACTIONS - kept, LONGEST_ATTEMPT - time);
    let n = actions as u64 + 1;
    if u64::from(most) < n {
        return beyond(
            "the number of actions",
            n,
            format!("at most {most}: set the car right and hand it back"),
        );
    }
    let end = now.0 + longest(action).min(12 * HOUR);
    if longest_end < end {
        let days = |ticks: u64| format!("{:.1}", ticks as f64 / (24 * HOUR) as f64);
        let bound = format!("at most {}: set the car right and hand it back", days(longest_end));
        return beyond("the time of the attempt, in days,", days(end), bound);
    }
    Ok(())
}

/// Tick up to which the clock may run on by itself, when the last action ended at `end` and the clock had run on for
/// `free` ticks before.
#[must_use]
pub fn free_until(end: Tick, free: u64) -> Tick {
    // Free steps may end a little beyond what was asked for.
    const LONGEST_STEP: u64 = 8;
    let most = LONGEST_PAUSE.min(LONGEST_FREE.saturating_sub(free)).saturating_sub(LONGEST_STEP);
    Tick(end.0.saturating_add(most).min(LONGEST_ATTEMPT - KEPT_TIME))
}

/// A name in an attempt that the job does not have.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("action {n} ({action}) names {name:?}, which this job does not have")]
pub struct Unknown {
    /// Number of the action.
    pub n: u32,
    /// The action in words.
    pub action: String,
    /// The name.
    pub name: String,
}

/// Checks that every action that was done names things of the job.
///
/// # Errors
/// The first that does not.
pub fn against(steps: &[Step], job: &Job) -> Result<(), Unknown> {
    for step in steps.iter().filter(|step| step.refused.is_none()) {
        if let Some(name) = unknown(&step.action, job) {
            let name = name.chars().take(60).collect();
            return Err(Unknown { n: step.n, action: crate::words::say(&step.action), name });
        }
    }
    Ok(())
}

/// The first name in an action that the job does not have.
fn unknown<'a>(action: &'a Action, job: &Job) -> Option<&'a str> {
    let car = &job.car;
    let missing = |name: &'a str, is_there: bool| (!is_there).then_some(name);
    let unit = |name: &'a str| missing(name, car.units.iter().any(|u| u.id == *name));
    let card = |name: &'a str| missing(name, job.kit.iter().any(|c| c.id == *name));
    let part = |name: &'a str| missing(name, car.assembly.part_index(name).is_some());
    match action {
        Action::Cover { cover, .. } => missing(cover, car.covers.iter().any(|c| c.id == *cover)),
        Action::OpenJoint { joint } | Action::MakeJoint { joint } => {
            missing(joint, car.assembly.joints.iter().any(|j| j.id == *joint))
        }
        Action::PullUnit { unit: name }
        | Action::PushUnit { unit: name }
        | Action::Clean { unit: name }
        | Action::Reform { unit: name } => unit(name),
        Action::Swap { unit: name, spare } => {
            unit(name).or_else(|| missing(spare, job.spares.iter().any(|s| s.id == *spare)))
        }
        Action::Fit { instrument, .. }
        | Action::Unfit { instrument }
        | Action::SetMeter { instrument, .. }
        | Action::Press { instrument, .. }
        | Action::Stroke { instrument, .. }
        | Action::Read { instrument }
        | Action::Sense(Sense::Lamp { instrument }) => card(instrument),
        Action::Sense(Sense::Hiss { part: name } | Sense::Touch { part: name }) => part(name),
        Action::Note { record: Some(item), .. } => missing(item, car.record.iter().any(|r| r.id == *item)),
        Action::Finding { units, .. } => units.iter().find_map(|name| unit(name)),
        // A port is looked for where it is needed: an instrument's own can be meant too.
        Action::SetStop { .. }
        | Action::Sense(
            Sense::Hum
            | Sense::PedalTravel
            | Sense::PedalMoved
            | Sense::Applications
            | Sense::BaseBrakes
            | Sense::YardDrive,
        )
        | Action::Note { record: None, .. }
        | Action::ReadCard
        | Action::ReadSheet
        | Action::Chocks(_)
        | Action::Extraction(_)
        | Action::Key(_)
        | Action::Engine(_)
        | Action::Pedal(_)
        | Action::PumpPedal { .. }
        | Action::Time { .. }
        | Action::Wait { .. }
        | Action::WaitUntil { .. }
        | Action::Overnight
        | Action::Suspect { .. }
        | Action::HandBack => None,
    }
}
