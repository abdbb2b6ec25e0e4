//! The car's record and the notebook: how a note fills a line, limits, notes. Which lines a reading could fill is
//! settled when it is taken ([`super::conditions`]); release lines count only while nothing on the car has been
//! changed since.

use super::access::cannot;
use super::state::Doing;
use super::{RecordEntry, Workshop, timing};
use crate::action::Written;
use crate::car::RecordKind;
use crate::notice::{Notice, Reason, Refusal, Unmet};
use crate::observe::{Observed, Reading, Scale, ShownValue};

/// How near the time given up at is written down, s.
const WHOLE_SECOND_S: f64 = 0.5;

impl Workshop {
    pub(super) async fn do_note(
        &mut self,
        doing: &mut Doing<'_>,
        id: u32,
        written: Option<&Written>,
        record: Option<&str>,
    ) -> Result<(), Refusal> {
        let readings = &self.state.readings;
        let Some(reading) = id.checked_sub(1).and_then(|i| readings.get(i as usize)).cloned() else {
            return Err(cannot(match readings.len() as u32 {
                0 => Reason::NoReadingYet { reading: id },
                last => Reason::NoReading { reading: id, last },
            }));
        };
        let item = record.map(|r| self.find_record(r)).transpose()?;
        let scale = self.scale(&reading.what);
        let sensed = matches!(reading.what, Observed::Sense(_));
        if !sensed && written.is_none() && scale.number(reading.shown).is_some() {
            return Err(cannot(Reason::WriteNumber));
        }
        if written.is_some_and(|w| !w.value.is_finite()) {
            return Err(cannot(Reason::Finite));
        }
        // A slip of the pen is struck out and written anew; the page keeps both.
        if self.state.notes.iter().any(|(noted, ..)| *noted == id) {
            doing.say(Notice::StruckOut { reading: id });
        }
        self.pass(doing, timing::NOTE).await;
        doing.read_right = (!sensed).then(|| match (&reading.what, reading.shown, written) {
            // "More than 900 s, given up" is written down as 900 s by everybody. More nobody has waited for.
            (Observed::Interval { max_s, .. }, ShownValue::Off(true), Some(w)) => {
                (w.value - f64::from(*max_s)).abs() <= WHOLE_SECOND_S && same_unit(&w.unit, "s")
            }
            _ => read_right(&scale, reading.shown, written),
        });
        self.state.notes.push((id, written.cloned(), record.map(str::to_owned)));
        doing.record = item.map(|item| self.entry(item, &reading));
        Ok(())
    }

    /// How a reading fills a record line, as things stand now.
    fn entry(&self, item: usize, reading: &Reading) -> RecordEntry {
        let line = &self.setup.car.record[item];
        let facts = &self.state.facts[reading.id as usize - 1];
        let since = self.state.changes - facts.changes;
        let lapsed = line.kind.is_release() && 0 < since;
        // What was wrong with the reading itself comes first: doing it again at once would not help.
        let unmet = facts.unmet.iter().find(|(kind, _)| *kind == line.kind).map(|(_, why)| *why);
        let unmet = unmet.or_else(|| lapsed.then_some(Unmet::ChangedSince { times: since }));
        RecordEntry {
            item: line.id.clone(),
            condition_met: unmet.is_none(),
            within_limit: self.within_limit(item, reading),
            unmet,
        }
    }

    /// The record as it stands now: per line that was filled, its last note. Release lines whose
    /// readings were taken before the last change of a joint, stop, unit or instrument do not meet
    /// their condition any more.
    #[must_use]
    pub fn record_now(&self) -> Vec<RecordEntry> {
        let filled = |line: &crate::car::RecordItem| {
            let mut notes = self.state.notes.iter().rev();
            notes.find(|(_, _, record)| record.as_deref() == Some(line.id.as_str())).map(|(id, ..)| *id)
        };
        let lines = self.setup.car.record.iter().enumerate();
        lines
            .filter_map(|(item, line)| {
                let reading = &self.state.readings[filled(line)? as usize - 1];
                Some(self.entry(item, reading))
            })
            .collect()
    }

    /// Whether what was shown lies inside the line's limit; `None` without a limit.
    fn within_limit(&self, item: usize, reading: &Reading) -> Option<bool> {
        let line = &self.setup.car.record[item];
        if let ShownValue::Level(level) = reading.shown {
            return match line.kind {
                RecordKind::ReleaseDrop | RecordKind::ReleaseReserve | RecordKind::ReleaseYard => {
                    Some(2 <= level)
                }
                RecordKind::ReleaseNoRise => Some(1 <= level),
                RecordKind::DayPressure
                | RecordKind::BatteryVoltage
                | RecordKind::PumpRun
                | RecordKind::PumpRest
                | RecordKind::CutOut
                | RecordKind::CutIn
                | RecordKind::ReleaseBuildUp
                | RecordKind::ReleaseRest => None,
            };
        }
        let limit = self.setup.car.limits.get(usize::from(line.limit?))?;
        // The time of a cycle that outlasted the watch is at least the time waited.
        let (low, high) = match (&reading.what, reading.shown) {
            (Observed::Interval { max_s, .. }, ShownValue::Off(true)) => (f64::from(*max_s), f64::INFINITY),
            _ => match self.scale(&reading.what).number(reading.shown) {
                Some(v) => (v, v),
                None => return Some(false),
            },
        };
        let (min, max) = limit.bounds(self.circuit.ambient());
        /// Half of the last bit of a number in steps.
        const ROUNDING: f64 = 1e-9;
        let above = min.is_none_or(|min| min <= low + ROUNDING);
        let below = max.is_none_or(|max| high <= max + ROUNDING);
        Some(above && below)
    }
}

/// Whether what was written agrees with what was shown: within half a division or half the last digit,
/// with the right unit. Off the scale nothing need be written.
fn read_right(scale: &Scale, shown: ShownValue, written: Option<&Written>) -> bool {
    let Scale::Numeric { unit, resolution, by_eye, min, max, .. } = scale else { return true };
    let allowed = if *by_eye { *resolution } else { 0.5 * resolution };
    let shown = match shown {
        ShownValue::Off(false) => Some(*min),
        ShownValue::Off(true) => Some(*max),
        shown @ (ShownValue::Steps(_) | ShownValue::Level(_) | ShownValue::Blank) => scale.number(shown),
    };
    match (written, shown) {
        (None, _) => true,
        (Some(_), None) => false,
        (Some(w), Some(shown)) => {
            let close = (w.value - shown).abs() <= allowed * (1.0 + 1e-9);
            close && same_unit(&w.unit, unit)
        }
    }
}

/// Whether a unit as written is the scale's: case and the usual signs (°, Ω) are forgiven.
fn same_unit(written: &str, unit: &str) -> bool {
    let plain = |u: &str| {
        let u = u.trim().to_lowercase();
        match u.as_str() {
            "°c" => "c".to_owned(),
            "Ω" | "ω" | "ohms" => "ohm".to_owned(),
            "°" => "deg".to_owned(),
            "sec" => "s".to_owned(),
            _ => u,
        }
    };
    plain(written) == plain(unit)
}

#[cfg(test)]
mod tests {
    use super::*;

    const DIAL: Scale =
        Scale::Numeric { unit: "kPa", resolution: 1.0, min: -100.0, max: 0.0, scatter: 0.0, by_eye: true };
    const DIGITS: Scale =
        Scale::Numeric { unit: "V", resolution: 0.01, min: -60.0, max: 60.0, scatter: 0.0, by_eye: false };

    fn wrote(value: f64, unit: &str) -> Written {
        Written { value, unit: unit.into() }
    }

    #[test]
    fn a_dial_is_forgiven_half_a_division_and_a_display_half_a_digit() {
        let dial = ShownValue::Steps(-60);
        assert!(read_right(&DIAL, dial, Some(&wrote(-61.0, "kPa"))));
        assert!(!read_right(&DIAL, dial, Some(&wrote(-61.5, "kPa"))));
        let volts = ShownValue::Steps(1263);
        assert!(read_right(&DIGITS, volts, Some(&wrote(12.63, "V"))));
        assert!(!read_right(&DIGITS, volts, Some(&wrote(12.64, "V"))));
    }

    #[test]
    fn sign_and_unit_count() {
        let dial = ShownValue::Steps(-60);
        assert!(!read_right(&DIAL, dial, Some(&wrote(60.0, "kPa"))));
        assert!(!read_right(&DIAL, dial, Some(&wrote(-60.0, "mbar"))));
        assert!(read_right(&DIAL, dial, Some(&wrote(-60.0, "kpa"))));
        assert!(same_unit("Ω", "ohm") && same_unit("°C", "C") && !same_unit("A", "V"));
    }
}
