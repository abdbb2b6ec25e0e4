//! Readings: what was looked at, what was shown, and the scale it was shown on.
//!
//! One path serves the live workshop and the marker. The model gives a continuous value
//! ([`crate::Opened::predict`]); the instrument's error is added; the scale turns it into
//! what is shown. The marker asks the same model, under another hypothesis, for the same value and
//! computes how likely what was shown would have been.

mod figures;

use crate::action::{Cycle, Sense};
use crate::parts::instruments::MeterMode;

/// What exactly was looked at, by name; two readings of the same thing have equal `Observed`.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
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
        /// Keys of the levels (`level-…` in the files of words), one more than thresholds.
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
#[serde(deny_unknown_fields)]
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

impl Scale {
    /// What is shown for a continuous value `v` (in the scale's unit, error and scatter included).
    ///
    /// A number is rounded to the nearest step; one that lies more than half a step beyond an end of
    /// the scale is off it: the pointer is at its stop, the display reads OL. Digits from nought up show
    /// nought for what lies below ([`Scale::counts_from_nought`]).
    #[must_use]
    pub fn show(&self, v: f64) -> ShownValue {
        match self {
            Self::Numeric { resolution, min, max, .. } => {
                let half = 0.5 * resolution;
                if v < min - half && !self.counts_from_nought() {
                    ShownValue::Off(false)
                } else if max + half < v {
                    ShownValue::Off(true)
                } else {
                    ShownValue::Steps((v.clamp(*min, *max) / resolution).round() as i64)
                }
            }
            Self::Ordinal { thresholds, .. } => {
                ShownValue::Level(thresholds.iter().filter(|t| **t <= v).count() as u8)
            }
        }
    }

    /// Whether it is a row of digits from nought up (ohms, seconds): whatever an error makes of a small value, it shows no
    /// sign.
    #[must_use]
    pub fn counts_from_nought(&self) -> bool {
        matches!(self, Self::Numeric { min, by_eye: false, .. } if *min == 0.0)
    }

    /// The range of continuous values that are shown as `shown` (the ends may be infinite); `None` for
    /// a blank display or for something this scale cannot show. The inverse of [`Scale::show`]; how
    /// likely a reading was is the chance that value, error and scatter fall into it.
    #[must_use]
    pub fn interval(&self, shown: ShownValue) -> Option<(f64, f64)> {
        match (self, shown) {
            (Self::Numeric { resolution, min, max, .. }, ShownValue::Steps(n)) => {
                let half = 0.5 * resolution;
                let at = n as f64 * resolution;
                let (low, high) = ((at - half).max(min - half), (at + half).min(max + half));
                let low_end = if n == 0 && self.counts_from_nought() { f64::NEG_INFINITY } else { low };
                (low < high).then_some((low_end, high))
            }
            (Self::Numeric { resolution, min, .. }, ShownValue::Off(false)) if !self.counts_from_nought() => {
                Some((f64::NEG_INFINITY, min - 0.5 * resolution))
            }
            (Self::Numeric { resolution, max, .. }, ShownValue::Off(true)) => {
                Some((max + 0.5 * resolution, f64::INFINITY))
            }
            (Self::Ordinal { thresholds, .. }, ShownValue::Level(level)) => {
                let level = usize::from(level);
                if thresholds.len() < level {
                    return None;
                }
                let low = if level == 0 { f64::NEG_INFINITY } else { thresholds[level - 1] };
                Some((low, thresholds.get(level).copied().unwrap_or(f64::INFINITY)))
            }
            _ => None,
        }
    }

    /// The number a person would write down for `shown`, in the scale's unit; `None` when nothing is
    /// shown, when it is off the scale, or for a sense in levels.
    #[must_use]
    pub fn number(&self, shown: ShownValue) -> Option<f64> {
        match (self, shown) {
            (Self::Numeric { resolution, .. }, ShownValue::Steps(n)) => Some(n as f64 * resolution),
            _ => None,
        }
    }

    /// One σ of the scatter of a single reading, in the scale's unit.
    #[must_use]
    pub fn scatter(&self) -> f64 {
        match self {
            Self::Numeric { scatter, .. } | Self::Ordinal { scatter, .. } => *scatter,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const DIAL: Scale =
        Scale::Numeric { unit: "kPa", resolution: 1.0, min: -100.0, max: 0.0, scatter: 0.0, by_eye: true };
    const OHMS: Scale =
        Scale::Numeric { unit: "ohm", resolution: 0.1, min: 0.0, max: 3.0, scatter: 0.0, by_eye: false };
    const EAR: Scale =
        Scale::Ordinal { levels: &["nothing", "faint", "clear"], thresholds: &[-2.0, -1.0], scatter: 0.1 };

    #[test]
    fn inv_what_is_shown_lies_in_its_interval() {
        for scale in [&DIAL, &EAR, &OHMS] {
            for i in -1100..=50 {
                let v = f64::from(i) * 0.1;
                let shown = scale.show(v);
                let (low, high) = scale.interval(shown).unwrap();
                assert!(low <= v && v <= high, "{v} shown as {shown:?}, interval {low}..{high}");
            }
        }
    }

    #[test]
    fn dial_is_read_to_half_a_division_and_has_ends() {
        assert_eq!(DIAL.show(-60.4), ShownValue::Steps(-60));
        assert_eq!(DIAL.show(-60.6), ShownValue::Steps(-61));
        assert_eq!(DIAL.show(0.6), ShownValue::Off(true));
        assert_eq!(DIAL.show(-100.6), ShownValue::Off(false));
        // No ohmmeter shows less than nothing, however it errs.
        assert_eq!(OHMS.show(-0.3), ShownValue::Steps(0));
        assert_eq!(OHMS.show(0.06), ShownValue::Steps(1));
        assert_eq!(OHMS.interval(ShownValue::Off(false)), None);
        assert_eq!(DIAL.number(ShownValue::Steps(-61)), Some(-61.0));
        assert_eq!(DIAL.number(ShownValue::Off(true)), None);
    }

    #[test]
    fn a_level_is_the_number_of_thresholds_passed() {
        assert_eq!(EAR.show(-3.0), ShownValue::Level(0));
        assert_eq!(EAR.show(-1.5), ShownValue::Level(1));
        assert_eq!(EAR.show(0.0), ShownValue::Level(2));
        assert_eq!(EAR.interval(ShownValue::Level(3)), None);
    }
}
