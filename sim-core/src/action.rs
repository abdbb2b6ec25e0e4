//! What a trainee can do. The list of actions **is** the attempt.
//!
//! Actions name things by the short names of the vehicle file and the instrument cards, so an attempt
//! can be read by eye and marked by a program that has never seen the window.

mod asked;

use crate::assembly::Stop;
use crate::parts::engine::EngineState;
use crate::parts::instruments::MeterMode;

/// Certainties of a finding that can be stated, beside 0 for *not found*.
pub const CERTAINTIES: [f64; 4] = [0.40, 0.60, 0.80, 0.95];

/// The certainty of [`CERTAINTIES`] that a number means, within what is lost in writing it down.
#[must_use]
pub fn certainty_of(number: f64) -> Option<f64> {
    CERTAINTIES.into_iter().find(|step| (step - number).abs() < 1e-9)
}

/// Where a person stands.
#[derive(
    Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, serde::Serialize, serde::Deserialize,
)]
#[serde(rename_all = "snake_case")]
pub enum Station {
    /// At the desk with the job card.
    #[default]
    Desk,
    /// In the driver's seat.
    Cab,
    /// At the open bonnet.
    Bay,
    /// Low in front of the car, at the pump.
    Front,
    /// At the bench.
    Bench,
}

/// How the brake pedal is held.
#[derive(Clone, Copy, Debug, Default, PartialEq, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum PedalHold {
    /// Nobody touches it.
    #[default]
    Released,
    /// By foot with this force, N; the trainee is bound to the driver's seat.
    Foot {
        /// Force on the pedal, N (1 to 700).
        force_n: f64,
    },
    /// By the pedal prop with this force, N.
    Prop {
        /// Force on the pedal, N (1 to 500).
        force_n: f64,
    },
}

/// Something a trainee can perceive and therefore wait for or time.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Cue {
    /// The pump begins to run.
    PumpStarts,
    /// The pump stops.
    PumpStops,
    /// A connected lamp goes out.
    LampOut,
    /// A connected lamp lights up.
    LampOn,
}

/// What the stopwatch times.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Cycle {
    /// From now (or from the pump's next start, if it rests) until the pump stops.
    PumpRun,
    /// From now (or from the pump's next stop, if it runs) until the pump starts again.
    PumpRest,
}

/// What a person perceives without an instrument.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Sense {
    /// Listen for a hiss at a part (through the listening tube): leaks and open ports of that part.
    Hiss {
        /// Short name of the part.
        part: String,
    },
    /// Listen whether the pump runs (from anywhere near the car).
    Hum,
    /// Touch a part's surface.
    Touch {
        /// Short name of the part.
        part: String,
    },
    /// How far the pedal stands under the foot or prop now, felt in steps of some 5 mm.
    PedalTravel,
    /// How the pedal has moved since the engine was last started or stopped, while it was held.
    PedalMoved,
    /// How many assisted applications the stopped car still gave (counted by `Action::PumpPedal`).
    Applications,
    /// Whether a connected lamp glows.
    Lamp {
        /// Short name of the instrument.
        instrument: String,
    },
    /// Look at fluid level, hoses, discs and pads, and at the pedal's firmness without assist.
    BaseBrakes,
    /// A slow drive with brake applications in the yard.
    YardDrive,
}

/// One thing done.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Action {
    /// Read the job card with its cautions.
    ReadCard,
    /// Read the car's data sheet (limits, points, altitude note).
    ReadSheet,
    /// Put the wheel chocks (`true`) or take them away.
    Chocks(bool),
    /// Hang the exhaust extraction on the tail pipe (`true`) or back on the wall.
    Extraction(bool),
    /// Turn the ignition key: `true` = position 15.
    Key(bool),
    /// Start, stop or run the engine.
    Engine(EngineState),
    /// Press, prop or release the brake pedal.
    Pedal(PedalHold),
    /// Press the pedal this many times with `force_n` and let it come back each time.
    PumpPedal {
        /// Number of applications (1 to 30).
        times: u32,
        /// Force on the pedal, N (1 to 700).
        force_n: f64,
    },
    /// Remove (`off: true`) or refit a cover.
    Cover {
        /// Short name of the cover.
        cover: String,
        /// Whether it is taken off.
        off: bool,
    },
    /// Open a joint: pull a hose off, unplug a connector, undo a terminal.
    OpenJoint {
        /// Short name of the joint.
        joint: String,
    },
    /// Make a joint again.
    MakeJoint {
        /// Short name of the joint.
        joint: String,
    },
    /// Plug an open port, clamp a hose beside a port, or take the stop away (`None`).
    SetStop {
        /// The port, `part.port`.
        port: String,
        /// Plug, clamp, or nothing.
        stop: Option<Stop>,
    },
    /// Take a plug-in unit (relay, fuse) out of its socket.
    PullUnit {
        /// Short name of the repair unit.
        unit: String,
    },
    /// Put a plug-in unit back.
    PushUnit {
        /// Short name of the repair unit.
        unit: String,
    },
    /// Connect an instrument: each of its ends to a port (`stem` → `tee.2`), or to a part it measures.
    Fit {
        /// Short name of the instrument.
        instrument: String,
        /// End of the instrument and the port (or part) it goes to.
        ends: Vec<(String, String)>,
    },
    /// Take an instrument off.
    Unfit {
        /// Short name of the instrument.
        instrument: String,
    },
    /// Turn a multimeter's dial.
    SetMeter {
        /// Short name of the instrument.
        instrument: String,
        /// The new setting.
        mode: MeterMode,
    },
    /// Press (`true`) or let go the button of a push-button lead, or the release lever of a hand pump.
    Press {
        /// Short name of the instrument.
        instrument: String,
        /// Whether it is held down.
        down: bool,
    },
    /// Stroke a hand pump.
    Stroke {
        /// Short name of the instrument.
        instrument: String,
        /// Number of strokes (1 to 200).
        times: u32,
    },
    /// Replace a repair unit with a spare from the store.
    Swap {
        /// Short name of the repair unit.
        unit: String,
        /// Short name of the spare.
        spare: String,
    },
    /// Clean a repair unit (contacts, earth points, valve seats) where that can mend it.
    Clean {
        /// Short name of the repair unit.
        unit: String,
    },
    /// Re-form a hose with hot air so that its bend fits again: a makeshift.
    Reform {
        /// Short name of the repair unit.
        unit: String,
    },
    /// Read an instrument: what it shows now enters the list of things looked at.
    Read {
        /// Short name of the instrument.
        instrument: String,
    },
    /// Perceive something without an instrument.
    Sense(Sense),
    /// Time a cycle of the pump with the stopwatch; give up after `max_s`.
    Time {
        /// What is timed.
        cycle: Cycle,
        /// Longest time to wait, s (1 to 7200).
        max_s: u32,
    },
    /// Wait a stated time.
    Wait {
        /// Seconds (1 to 43 200).
        s: u32,
    },
    /// Wait until something can be perceived; give up after `max_s`.
    WaitUntil {
        /// What is waited for.
        cue: Cue,
        /// Longest time to wait, s (1 to 7200).
        max_s: u32,
    },
    /// Leave the car standing overnight (12 h, key off, engine off).
    Overnight,
    /// Commit a reading to the notebook.
    Note {
        /// Which reading (its running number in this attempt).
        reading: u32,
        /// What the trainee wrote: for a dial or a display the number, for a sense nothing.
        written: Option<Written>,
        /// For which line of the car's record it counts, if any (short name of the record item).
        record: Option<String>,
    },
    /// Note a suspicion (free text; never marked).
    Suspect {
        /// The text.
        text: String,
    },
    /// Give the finding. The first is locked before the first repair.
    Finding {
        /// Short names of the repair units that are outside limits; empty = everything inside its limits.
        units: Vec<String>,
        /// Stated certainty, one of [`CERTAINTIES`]; 0 = not found, car stays, refer on.
        certainty: f64,
    },
    /// Hand the car back.
    HandBack,
}

/// A number as the trainee wrote it down.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Written {
    /// The number.
    pub value: f64,
    /// The unit as written: `kPa`, `V`, `A`, `ohm`, `C`, `s`, `deg`, `mm`.
    pub unit: String,
}
