//! The car's record and the notebook: conditions a reading was taken under, limits, notes.
//!
//! Which lines a reading could fill is settled when it is taken, from the state and the events behind
//! it. Release lines count only while nothing on the car has been changed since.

use super::access::cannot;
use super::predict::Watch;
use super::state::Doing;
use super::{RecordEntry, Refusal, Workshop, graph, timing};
use crate::action::{Cycle, PedalHold, Sense, Written};
use crate::car::RecordKind;
use crate::circuit::Event;
use crate::instrument::InstrumentKind;
use crate::observe::{Observed, Reading, Scale, ShownValue};
use crate::parts::PartKind;
use crate::parts::engine::EngineState;
use crate::parts::instruments::MeterMode;

/// "Just after" the pump has started or stopped.
const JUST_AFTER: u64 = timing::s(5);
/// A pump that starts this soon after a switch was turned did not start by itself.
const NOT_BY_ITSELF: u64 = timing::s(2);
/// How long the pedal is held after the engine was stopped.
const HELD: u64 = timing::s(30);
/// A store at the day's pressure, within this, is empty, kPa.
const EMPTY_KPA: f64 = -5.0;

impl Workshop {
    /// Kinds of record lines whose condition a reading taken now meets.
    pub(super) fn conditions_met(
        &self,
        what: &Observed,
        shown: ShownValue,
        watch: Option<&Watch>,
    ) -> Vec<RecordKind> {
        let mut met = Vec::new();
        match what {
            Observed::Instrument { instrument, mode, at } => {
                let kind = self.setup.kit.iter().find(|c| c.id == *instrument).map(|c| &c.kind);
                match kind {
                    Some(InstrumentKind::Barometer { .. }) => met.push(RecordKind::DayPressure),
                    Some(InstrumentKind::Multimeter { .. })
                        if *mode == Some(MeterMode::Volt) && self.across_battery(at) =>
                    {
                        let inputs = self.circuit.inputs();
                        if !inputs.key_on && inputs.engine == EngineState::Stopped {
                            met.push(RecordKind::BatteryVoltage);
                        }
                    }
                    Some(InstrumentKind::Gauge { .. } | InstrumentKind::HandPump { .. })
                        if self.at_store(at) =>
                    {
                        met.extend(self.switch_point());
                    }
                    _ => {}
                }
            }
            Observed::Interval { cycle, .. } => {
                let inputs = self.circuit.inputs();
                let Some(watch) = watch else { return met };
                let untouched = self.state.pedal == PedalHold::Released;
                if !inputs.key_on || inputs.engine != EngineState::Stopped || !untouched {
                    return met;
                }
                match cycle {
                    Cycle::PumpRun => {
                        let switched = self.state.last_switch;
                        let begun_by_switch =
                            watch.begun.is_some_and(|b| (switched..=switched + NOT_BY_ITSELF).contains(&b));
                        let empty = EMPTY_KPA < self.state.store_kpa_at_switch;
                        if watch.whole && begun_by_switch && empty && shown != ShownValue::Blank {
                            met.extend([RecordKind::PumpRun, RecordKind::ReleaseBuildUp]);
                        }
                    }
                    // A rest that outlasts the watch is at least that long, whenever it began.
                    Cycle::PumpRest => {
                        if watch.whole && shown != ShownValue::Blank || shown == ShownValue::Off(true) {
                            met.extend([RecordKind::PumpRest, RecordKind::ReleaseRest]);
                        }
                    }
                }
            }
            Observed::Sense(Sense::PedalMoved) => {
                let now = self.circuit.tick().0;
                match self.state.engine_event {
                    Some(e) if e.started => met.push(RecordKind::ReleaseDrop),
                    Some(e) if HELD <= now - e.tick => met.push(RecordKind::ReleaseNoRise),
                    _ => {}
                }
            }
            Observed::Sense(Sense::Applications) if self.state.applications_standing => {
                met.push(RecordKind::ReleaseReserve);
            }
            Observed::Sense(Sense::YardDrive) => met.push(RecordKind::ReleaseYard),
            Observed::Sense(_) => {}
        }
        met
    }

    /// The switch point a gauge at the store shows now, if the pump has just switched by itself.
    fn switch_point(&self) -> Option<RecordKind> {
        let pump = self.pump()?;
        let inputs = self.circuit.inputs();
        if !inputs.key_on || inputs.engine != EngineState::Stopped {
            return None;
        }
        let last = self
            .circuit
            .events()
            .iter()
            .rev()
            .find(|(_, e)| *e == Event::PumpStarted(pump) || *e == Event::PumpStopped(pump));
        let (tick, event) = last?;
        let by_itself = self.state.last_switch + NOT_BY_ITSELF < tick.0;
        if !by_itself || tick.0 + JUST_AFTER < self.circuit.tick().0 {
            return None;
        }
        Some(if *event == Event::PumpStopped(pump) { RecordKind::CutOut } else { RecordKind::CutIn })
    }

    fn at_store(&self, at: &[(String, String)]) -> bool {
        let ports = at.iter().filter_map(|(_, at)| self.circuit.assembly().port(at));
        ports.into_iter().any(|p| self.in_store(p))
    }

    fn across_battery(&self, at: &[(String, String)]) -> bool {
        let assembly = self.circuit.assembly();
        let Some(battery) = graph::first_part(assembly, |k| matches!(k, PartKind::Battery(_))) else {
            return false;
        };
        let on = |post: &str| {
            graph::port_of(assembly, battery, post).is_some_and(|post| {
                at.iter()
                    .filter_map(|(_, at)| assembly.port(at))
                    .any(|probe| graph::same_node(assembly, probe, post))
            })
        };
        on("plus") && on("minus")
    }

    pub(super) async fn do_note(
        &mut self,
        doing: &mut Doing<'_>,
        id: u32,
        written: Option<&Written>,
        record: Option<&str>,
    ) -> Result<(), Refusal> {
        let readings = &self.state.readings;
        let Some(reading) = id.checked_sub(1).and_then(|i| readings.get(i as usize)).cloned() else {
            return Err(Refusal::Unknown {
                kind: "reading",
                name: id.to_string(),
                known: if readings.is_empty() {
                    "none yet".into()
                } else {
                    format!("1 to {}", readings.len())
                },
            });
        };
        let item = record.map(|r| self.find_record(r)).transpose()?;
        let scale = self.scale(&reading.what);
        let sensed = matches!(reading.what, Observed::Sense(_));
        if !sensed && written.is_none() && scale.number(reading.shown).is_some() {
            return Err(cannot("write down the number you read, with its unit"));
        }
        if written.is_some_and(|w| !w.value.is_finite()) {
            return Err(cannot("write a finite number"));
        }
        // A slip of the pen is struck out and written anew; the page keeps both.
        if self.state.notes.iter().any(|(noted, ..)| *noted == id) {
            doing.say(format!(
                "What you had written for reading {id} is struck out; this stands in its place."
            ));
        }
        self.pass(doing, timing::NOTE).await;
        doing.read_right = (!sensed).then(|| match (&reading.what, reading.shown, written) {
            // "More than 900 s, given up" is written down as 900 s by everybody.
            (Observed::Interval { max_s, .. }, ShownValue::Off(true), Some(w)) => {
                f64::from(*max_s) <= w.value && same_unit(&w.unit, "s")
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
        let in_time = !line.kind.is_release() || facts.changes == self.state.changes;
        RecordEntry {
            item: line.id.clone(),
            condition_met: in_time && facts.met.contains(&line.kind),
            within_limit: self.within_limit(item, reading),
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
                _ => None,
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
        other => scale.number(other),
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
