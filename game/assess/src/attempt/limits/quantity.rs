//! The numbers, names and texts of an attempt that have a limit, by what they are called.

use crate::locale::sentence::Sentence;
use crate::sentence;

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
    /// Actions before a hint.
    BeforeHint,
    /// Hints.
    Hints,
    /// When a hint was asked for.
    HintTime,
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
    /// Overrides of a mark.
    Overrides,
    /// The total that an override says.
    OverrideTotal,
    /// Why a mark was overridden.
    OverrideReason,
    /// Who overrode it.
    OverrideName,
    /// When.
    OverrideTime,
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
            Self::BeforeHint => sentence!("beyond-before-hint", "the number of actions before a hint"),
            Self::Hints => sentence!("beyond-hints", "the number of hints"),
            Self::HintTime => sentence!("beyond-hint-time", "the time of a hint"),
            Self::Total => sentence!("beyond-total", "the mark's total"),
            Self::Deduction => sentence!("beyond-deduction", "the mark's deduction"),
            Self::MarkParts => sentence!("beyond-mark-parts", "the number of the mark's parts"),
            Self::Points => sentence!("beyond-points", "points of a part of the mark"),
            Self::MarkName => sentence!("beyond-mark-name", "a name in the mark"),
            Self::Overrides => sentence!("beyond-overrides", "the number of overrides"),
            Self::OverrideTotal => sentence!("beyond-override-total", "the total of an override"),
            Self::OverrideReason => sentence!("beyond-override-reason", "the reason of an override"),
            Self::OverrideName => sentence!("beyond-override-name", "the name in an override"),
            Self::OverrideTime => sentence!("beyond-override-time", "the time of an override"),
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
