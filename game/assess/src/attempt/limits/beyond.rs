//! A number that cannot be: which one it is, what it is, what it could be.

use crate::attempt::clock::LATEST_UNIX_MS;
use crate::locale::sentence::{Sentence, Value};
use crate::sentence;

/// A number that cannot be.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
#[error("{}", self.sentence())]
pub struct Beyond {
    /// Which number.
    pub what: Quantity,
    /// What it is.
    pub value: Value,
    /// What it could be.
    pub bound: Bound,
}

/// Which number of an attempt.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Quantity {
    /// Form of the file.
    Schema,
    /// Key of the header in old files.
    Scripted,
    /// Key of the header in files of today.
    SeedFrom,
    /// Version of the program.
    Engine,
    /// Name of the pack.
    Pack,
    /// Name of the job.
    Job,
    /// Digest of the job.
    JobDigest,
    /// Name of the seat.
    Seat,
    /// When the attempt was begun.
    Begun,
    /// Actions before a sitting.
    BeforeSitting,
    /// Sittings.
    Sittings,
    /// When a sitting began.
    SittingTime,
    /// Actions before a repair.
    BeforeRepair,
    /// Repairs.
    Repairs,
    /// Bytes that a repair dropped.
    DroppedBytes,
    /// Lines that a repair dropped.
    DroppedLines,
    /// When a file was repaired.
    RepairTime,
    /// Total of the mark.
    Total,
    /// What is taken off the mark.
    Deduction,
    /// Parts of the mark.
    MarkParts,
    /// Points of one of them.
    Points,
    /// A name in the mark.
    MarkName,
    /// Running number of an action.
    ActionNumber,
    /// Actions.
    Actions,
    /// Tick at which an action begins.
    FirstTick,
    /// Ticks before an action.
    Pause,
    /// Ticks in which nobody did anything.
    Free,
    /// Tick at which an action ends.
    LastTick,
    /// Ticks of a refused action.
    RefusedLength,
    /// Ticks of an action.
    Length,
    /// Why an action was refused.
    Refusal,
    /// When an action was asked for.
    ActionTime,
    /// Breaches of safety in an action.
    Breaches,
    /// Running number of a reading.
    ReadingNumber,
    /// Tick of a reading.
    ReadingTick,
    /// Steps that a display showed.
    Shown,
    /// Level that a sense showed.
    Level,
    /// Digests of minutes in an action.
    Minutes,
    /// Tick of one of them.
    MinuteTick,
    /// How long to wait, s.
    Wait,
    /// How long to wait at most, s.
    LongestWait,
    /// Strokes of a pump.
    Strokes,
    /// Applications of the brake.
    Applications,
    /// Force on the pedal, N.
    PedalForce,
    /// Force on the pedal, of no size yet.
    AnyPedalForce,
    /// Force of the prop, N.
    PropForce,
    /// The reading that a note is about.
    Noted,
    /// Certainty of a finding.
    Certainty,
    /// A name.
    Name,
    /// A suspicion.
    Suspicion,
    /// What was written down.
    Written,
    /// Units in a finding.
    Units,
    /// Ends of an instrument.
    Ends,
    /// Days of the attempt.
    Days,
}

/// What a number could be.
#[derive(Clone, Debug, PartialEq)]
pub enum Bound {
    /// No more than this.
    AtMost(u64),
    /// No less than where the last action ended.
    FromLastEnd(u64),
    /// No less than where the action began.
    FromStart(u64),
    /// Just this.
    Just(u64),
    /// Between two.
    Between(f64, f64),
    /// Between two ticks.
    Ticks(u64, u64),
    /// Between the ticks at which the action began and ended.
    WhileDone(u64, u64),
    /// A time.
    UnixMs,
    /// A number at all.
    Number,
    /// Nothing was read yet.
    NothingRead,
    /// No more than this, and then the car is to be handed back.
    ThenHandBack(Value),
    /// A form of the file that is known.
    Schemas([&'static str; 3]),
    /// It belongs to one form of the file alone.
    OnlyIn(&'static str),
    /// It does not belong to one form of the file.
    NotIn(&'static str),
}

impl Beyond {
    /// What is wrong, for every language.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        sentence!(
            "beyond-bound",
            "{what} is {value}; {bound}",
            what = self.what.sentence(),
            value = &self.value,
            bound = self.bound.sentence()
        )
    }

    /// As an error.
    pub(super) fn err<T>(what: Quantity, value: impl Into<Value>, bound: Bound) -> Result<T, Self> {
        Err(Self { what, value: value.into(), bound })
    }
}

pub(super) fn within(what: Quantity, value: f64, min: f64, max: f64) -> Result<(), Beyond> {
    if (min..=max).contains(&value) { Ok(()) } else { Beyond::err(what, value, Bound::Between(min, max)) }
}

pub(super) fn at_most(what: Quantity, value: u64, most: u64) -> Result<(), Beyond> {
    if value <= most { Ok(()) } else { Beyond::err(what, value, Bound::AtMost(most)) }
}

pub(super) fn short(what: Quantity, text: &str, most: usize) -> Result<(), Beyond> {
    if text.len() <= most {
        return Ok(());
    }
    let long = sentence!("beyond-bytes", "{n} bytes long", n = text.len());
    Beyond::err(what, long, Bound::AtMost(most as u64))
}

pub(super) fn unix_ms(what: Quantity, ms: u64) -> Result<(), Beyond> {
    if ms <= LATEST_UNIX_MS { Ok(()) } else { Beyond::err(what, ms, Bound::UnixMs) }
}

impl Quantity {
    /// What it is called.
    #[must_use]
    pub fn sentence(self) -> Sentence {
        match self {
            Self::Schema => sentence!("beyond-schema", "schema"),
            Self::Scripted => sentence!("beyond-scripted", "scripted"),
            Self::SeedFrom => sentence!("beyond-seed-from", "seed_from"),
            Self::Engine => sentence!("beyond-engine", "the program's version"),
            Self::Pack => sentence!("beyond-pack", "the pack's name"),
            Self::Job => sentence!("beyond-job", "the job's name"),
            Self::JobDigest => sentence!("beyond-job-digest", "the job's digest"),
            Self::Seat => sentence!("beyond-seat", "the seat"),
            Self::Begun => sentence!("beyond-begun", "the time it was begun"),
            Self::BeforeSitting => {
                sentence!("beyond-before-sitting", "the number of actions before a sitting")
            }
            Self::Sittings => sentence!("beyond-sittings", "the number of sittings"),
            Self::SittingTime => sentence!("beyond-sitting-time", "the time of a sitting"),
            Self::BeforeRepair => sentence!("beyond-before-repair", "the number of actions before a repair"),
            Self::Repairs => sentence!("beyond-repairs", "the number of repairs"),
            Self::DroppedBytes => sentence!("beyond-dropped-bytes", "the number of bytes dropped"),
            Self::DroppedLines => sentence!("beyond-dropped-lines", "the number of lines dropped"),
            Self::RepairTime => sentence!("beyond-repair-time", "the time of a repair"),
            Self::Total => sentence!("beyond-total", "the mark's total"),
            Self::Deduction => sentence!("beyond-deduction", "the mark's deduction"),
            Self::MarkParts => sentence!("beyond-mark-parts", "the number of the mark's parts"),
            Self::Points => sentence!("beyond-points", "points of a part of the mark"),
            Self::MarkName => sentence!("beyond-mark-name", "a name in the mark"),
            Self::ActionNumber => sentence!("beyond-action-number", "action number"),
            Self::Actions => sentence!("beyond-actions", "the number of actions"),
            Self::FirstTick => sentence!("beyond-first-tick", "the first tick of an action"),
            Self::Pause => sentence!("beyond-pause", "the pause before an action, in ticks,"),
            Self::Free => sentence!("beyond-free", "the time nobody did anything, in ticks,"),
            Self::LastTick => sentence!("beyond-last-tick", "the last tick of an action"),
            Self::RefusedLength => {
                sentence!("beyond-refused-length", "the length of a refused action, in ticks,")
            }
            Self::Length => sentence!("beyond-length", "the length of the action, in ticks,"),
            Self::Refusal => sentence!("beyond-refusal", "why it was refused"),
            Self::ActionTime => sentence!("beyond-action-time", "the time of an action"),
            Self::Breaches => sentence!("beyond-breaches", "the number of breaches"),
            Self::ReadingNumber => sentence!("beyond-reading-number", "the number of a reading"),
            Self::ReadingTick => sentence!("beyond-reading-tick", "the tick of a reading"),
            Self::Shown => sentence!("beyond-shown", "what a reading showed, in steps,"),
            Self::Level => sentence!("beyond-level", "the level of a reading"),
            Self::Minutes => sentence!("beyond-minutes", "the number of minutes with a digest"),
            Self::MinuteTick => sentence!("beyond-minute-tick", "the tick of a minute's digest"),
            Self::Wait => sentence!("beyond-wait", "the time to wait, in s,"),
            Self::LongestWait => sentence!("beyond-longest-wait", "the longest time to wait, in s,"),
            Self::Strokes => sentence!("beyond-strokes", "the number of strokes"),
            Self::Applications => sentence!("beyond-applications", "the number of applications"),
            Self::PedalForce => sentence!("beyond-pedal-force", "the force on the pedal, in N,"),
            Self::AnyPedalForce => sentence!("beyond-any-pedal-force", "the force on the pedal"),
            Self::PropForce => sentence!("beyond-prop-force", "the force of the prop, in N,"),
            Self::Noted => sentence!("beyond-noted", "the reading that is noted"),
            Self::Certainty => sentence!("beyond-certainty", "the certainty"),
            Self::Name => sentence!("beyond-name", "a name"),
            Self::Suspicion => sentence!("beyond-suspicion", "the suspicion"),
            Self::Written => sentence!("beyond-written", "the value written down"),
            Self::Units => sentence!("beyond-units", "the number of units in a finding"),
            Self::Ends => sentence!("beyond-ends", "the number of ends"),
            Self::Days => sentence!("beyond-days", "the time of the attempt, in days,"),
        }
    }
}

impl Bound {
    /// In words.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        match self {
            Self::AtMost(most) => sentence!("bound-at-most", "at most {most}", most = *most),
            Self::FromLastEnd(least) => {
                sentence!("bound-from-last-end", "at least {least}, where the last ended", least = *least)
            }
            Self::FromStart(least) => {
                sentence!("bound-from-start", "at least {least}, where it began", least = *least)
            }
            Self::Just(n) => sentence!("bound-just", "expected {n}", n = *n),
            Self::Between(min, max) => {
                sentence!("bound-between", "expected {min} to {max}", min = *min, max = *max)
            }
            Self::Ticks(min, max) => {
                sentence!("bound-between", "expected {min} to {max}", min = *min, max = *max)
            }
            Self::WhileDone(min, max) => sentence!(
                "bound-while-done",
                "expected {min} to {max}, when the action was done",
                min = *min,
                max = *max
            ),
            Self::UnixMs => sentence!(
                "bound-unix-ms",
                "expected milliseconds since 1970, at most {most}",
                most = LATEST_UNIX_MS
            ),
            Self::Number => sentence!("bound-number", "expected a number"),
            Self::NothingRead => sentence!("bound-nothing-read", "nothing was read before"),
            Self::ThenHandBack(most) => sentence!(
                "bound-then-hand-back",
                "at most {most}: set the car right and hand it back",
                most = most
            ),
            Self::Schemas([first, second, third]) => sentence!(
                "bound-schemas",
                "expected {first}, {second} or {third}",
                first = format!("{first:?}"),
                second = format!("{second:?}"),
                third = format!("{third:?}")
            ),
            Self::OnlyIn(schema) => {
                sentence!("bound-only-in", "it belongs to {schema} alone", schema = format!("{schema:?}"))
            }
            Self::NotIn(schema) => {
                sentence!("bound-not-in", "it does not belong to {schema}", schema = format!("{schema:?}"))
            }
        }
    }
}
