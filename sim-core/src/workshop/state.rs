//! What the workshop remembers beside the circuit: who stands where, what is off, open, pulled, fitted,
//! what was read, noted and found.
//!
//! Everything here is changed by actions only. Ticks inside are ticks of the circuit's clock, which runs
//! from before the arrival; [`super::Workshop`] takes the offset off before anything is shown.

use super::exchange::Beside;
use super::{Outcome, RecordEntry};
use crate::action::{PedalHold, Station, Written};
use crate::car::RecordKind;
use crate::notice::{Hazard, Notice, Refusal, Unmet};
use crate::observe::{Predicted, Reading};
use crate::units::Tick;

/// The engine was started or stopped.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct EngineEvent {
    /// Started (else stopped).
    pub(super) started: bool,
    /// Circuit tick.
    pub(super) tick: u64,
    /// Where the pedal stood just before, mm, if it was held.
    pub(super) travel_mm: Option<f64>,
}

/// What hangs on a reading beside what was shown: which lines of the record it cannot fill.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct ReadingFacts {
    /// Kinds of the car's record lines whose condition it does not meet, and why not.
    pub(super) unmet: Vec<(RecordKind, Unmet)>,
    /// Number of changes to the car (joints, stops, units, instruments) before it.
    pub(super) changes: u32,
}

/// How far it went with work on a slope since the chocks were last set.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) enum Slope {
    /// Nothing to be said yet.
    #[default]
    Untold,
    /// It was said that chocks come first.
    Told,
    /// The work went on without them.
    WentOn,
}

/// State of the workshop.
#[derive(Clone, Debug)]
pub(super) struct State {
    pub(super) station: Station,
    /// Ticks worked.
    pub(super) attended: u64,
    /// Ticks waited.
    pub(super) unattended: u64,
    pub(super) pedal: PedalHold,
    pub(super) chocked: bool,
    /// Whether it was said that on a slope chocks come first.
    pub(super) slope: Slope,
    /// The exhaust extraction hangs on the tail pipe.
    pub(super) extracted: bool,
    /// Per cover of the car.
    pub(super) covers_off: Vec<bool>,
    /// Per repair unit: the joints to make again when it is pushed back.
    pub(super) pulled: Vec<Option<Vec<u16>>>,
    /// Per instrument card: end and where it is, sorted by end.
    pub(super) fits: Vec<Vec<(String, String)>>,
    /// Per spare: built in already.
    pub(super) spares_used: Vec<bool>,
    pub(super) readings: Vec<Reading>,
    /// Per reading.
    pub(super) facts: Vec<ReadingFacts>,
    pub(super) notes: Vec<(u32, Option<Written>, Option<String>)>,
    pub(super) findings: Vec<(Vec<String>, f64)>,
    pub(super) handed_back: bool,
    /// Changes of anything, waits included: readings with equal epoch were taken in an unchanged state.
    pub(super) epoch: u32,
    /// Changes of joints, stops, units and instruments on the car.
    pub(super) changes: u32,
    /// Something was repaired.
    pub(super) repaired: bool,
    /// Something was repaired before the first finding.
    pub(super) repaired_first: bool,
    /// Tick of the last change of key, joint, unit or push button.
    pub(super) last_switch: u64,
    /// Gauge pressure in the store just before that, kPa.
    pub(super) store_kpa_at_switch: f64,
    pub(super) engine_event: Option<EngineEvent>,
    /// Assisted applications of the standing car so far, as a continuous count.
    pub(super) applications: Option<f64>,
    /// All of them with key off and engine stopped.
    pub(super) applications_standing: bool,
    /// Least share of assist in the last yard drive.
    pub(super) yard_share: Option<f64>,
    /// `changes` at which assist was last proven.
    pub(super) proven: Option<u32>,
}

impl State {
    /// At the desk, car closed, tools on the board.
    pub(super) fn new(n_covers: usize, n_units: usize, n_cards: usize, n_spares: usize) -> Self {
        Self {
            station: Station::Desk,
            attended: 0,
            unattended: 0,
            pedal: PedalHold::Released,
            chocked: false,
            slope: Slope::Untold,
            extracted: false,
            covers_off: vec![false; n_covers],
            pulled: vec![None; n_units],
            fits: vec![Vec::new(); n_cards],
            spares_used: vec![false; n_spares],
            readings: Vec::new(),
            facts: Vec::new(),
            notes: Vec::new(),
            findings: Vec::new(),
            handed_back: false,
            epoch: 0,
            changes: 0,
            repaired: false,
            repaired_first: false,
            last_switch: 0,
            store_kpa_at_switch: 0.0,
            engine_event: None,
            applications: None,
            applications_standing: false,
            yard_share: None,
            proven: None,
        }
    }

    /// Something was changed that a reading could show.
    pub(super) fn touch(&mut self) {
        self.epoch += 1;
    }

    /// A joint, stop, unit or instrument on the car was changed.
    pub(super) fn change(&mut self) {
        self.epoch += 1;
        self.changes += 1;
    }
}

/// An action in hand: its limits and what has come of it so far.
#[derive(Debug)]
pub(super) struct Doing<'a> {
    /// With whom the circuit runs side by side while time passes; alone without.
    pub(super) beside: Beside<'a>,
    /// Circuit tick at which it began.
    pub(super) start: u64,
    /// Circuit tick at which a recorded action ends (replay).
    pub(super) cut: Option<u64>,
    /// Counts as waiting.
    pub(super) unattended: bool,
    /// Nobody is there to hear anything.
    pub(super) away: bool,
    /// Events of the circuit before it.
    pub(super) events_before: usize,
    pub(super) reading: Option<Reading>,
    pub(super) predicted: Option<Predicted>,
    pub(super) breaches: Vec<Hazard>,
    pub(super) record: Option<RecordEntry>,
    pub(super) read_right: Option<bool>,
    pub(super) said: Vec<Notice>,
}

impl<'a> Doing<'a> {
    pub(super) fn new(start: u64, cut: Option<u64>, events_before: usize, beside: Beside<'a>) -> Self {
        Self {
            beside,
            start,
            cut,
            unattended: false,
            away: false,
            events_before,
            reading: None,
            predicted: None,
            breaches: Vec::new(),
            record: None,
            read_right: None,
            said: Vec::new(),
        }
    }

    /// Done for real, not replayed: hidden state may refuse it and may decide how long it takes.
    pub(super) fn live(&self) -> bool {
        self.cut.is_none()
    }

    pub(super) fn say(&mut self, notice: Notice) {
        self.said.push(notice);
    }

    /// The outcome, ticks counted from `offset`.
    pub(super) fn outcome(self, offset: u64, end: u64, refused: Option<Refusal>) -> Outcome {
        Outcome {
            start: Tick(self.start - offset),
            end: Tick(end - offset),
            refused,
            reading: self.reading,
            breaches: self.breaches,
            record: self.record,
            read_right: self.read_right,
            said: self.said,
        }
    }
}
