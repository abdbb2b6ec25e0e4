//! Readings: what was looked at, what was shown, and the scale it was shown on.
//!
//! One path serves the live workshop and the marker. The model gives a continuous value
//! ([`crate::workshop::Workshop::predict`]); the instrument's error is added; the scale turns it into
//! what is shown. The marker asks the same model, under another hypothesis, for the same value and
//! computes how likely what was shown would have been.

use crate::action::{Cycle, Sense};
use crate::parts::instruments::MeterMode;

/// What exactly was looked at, by name; two readings of the same thing have equal `Observed`.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Observed {
    /// A connected or wall instrument.
    Instrument {
        /// Short name of the instrument.
        instrument: String,
        /// Meter setting, for a multimeter.
        mode: Option<MeterMode>,
        /// Where its ends are (end, port or part), sorted by end.
        at: Vec<(String, String)>,
    },
    /// A time by stopwatch.
    Interval {
        /// Short name of the stopwatch.
        instrument: String,
        /// What was timed.
        cycle: Cycle,
        /// Longest time waited, s.
        max_s: u32,
    },
    /// A sense.
    Sense(Sense),
}

/// How a continuous value becomes what is shown.
#[derive(Clone, Debug, PartialEq)]
pub enum Scale {
    /// A number with a smallest step, from `min` to `max`.
    Numeric {
        /// Unit as written in the notebook.
        unit: &'static str,
        /// Smallest step that is told apart: half a division, or the last digit.
        resolution: f64,
        /// Lower end; below it the pointer is at its stop, the display reads OL.
        min: f64,
        /// Upper end.
        max: f64,
        /// Scatter of a single reading that is not the instrument's constant error, one σ.
        scatter: f64,
        /// Read by eye from a dial (the trainee writes the value) rather than from digits.
        by_eye: bool,
    },
    /// A few ordered levels with thresholds between them.
    Ordinal {
        /// Names of the levels, one more than thresholds.
        levels: &'static [&'static str],
        /// Thresholds on the continuous value, rising.
        thresholds: &'static [f64],
        /// Scatter of the perception, one σ.
        scatter: f64,
    },
}

/// What was shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum ShownValue {
    /// A number, as a whole number of the scale's resolution.
    Steps(i64),
    /// Off the scale at the low end (`false`) or the high end (`true`); OL; "still running".
    Off(bool),
    /// A level of an ordinal scale.
    Level(u8),
    /// The display is dark: instrument off, fuse blown, not connected.
    Blank,
}

/// A reading as it enters the attempt.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct Reading {
    /// Running number in the attempt, from 1.
    pub id: u32,
    /// Tick at which it was taken.
    pub tick: crate::units::Tick,
    /// What was looked at.
    pub what: Observed,
    /// What was shown.
    pub shown: ShownValue,
    /// Number of changes to the car's state before it (repeats in an unchanged state count once).
    pub epoch: u32,
}

/// What the model says an observation would be, before instrument error and scale.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Predicted {
    /// The continuous value in the scale's unit.
    Value(f64),
    /// A time that would have gone on beyond this many seconds.
    Beyond(f64),
    /// Nothing would be shown.
    Blank,
}
