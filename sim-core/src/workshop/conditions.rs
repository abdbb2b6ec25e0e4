//! The conditions of the record's lines: which of them a reading meets is settled when it is taken, from the
//! state and the events behind it. The first that it does not meet is kept, to be told.

use super::predict::{CAUGHT, Watch};
use super::state::EngineEvent;
use super::{Workshop, graph, timing};
use crate::action::{Cycle, PedalHold, Sense};
use crate::car::RecordKind;
use crate::circuit::Event;
use crate::instrument::Measured;
use crate::notice::{Unmet, Wanted};
use crate::observe::{Observed, ShownValue};
use crate::parts::PartKind;
use crate::parts::engine::EngineState;
use crate::parts::instruments::MeterMode;
use crate::units::TICKS_PER_SECOND;

/// "Just after" the pump has started or stopped.
const JUST_AFTER: u64 = timing::s(5);
/// A pump that starts this soon after a switch was turned did not start by itself.
const NOT_BY_ITSELF: u64 = timing::s(2);
/// How long the pedal is held after the engine was stopped.
const HELD: u64 = timing::s(30);
/// A store at the day's pressure, within this, is empty, kPa.
const EMPTY_KPA: f64 = -5.0;

/// Whole seconds, rounded up: what is longer than asked for is told as longer.
fn s_up(ticks: u64) -> u32 {
    ticks.div_ceil(TICKS_PER_SECOND) as u32
}

/// Whole seconds, rounded down: what is shorter than asked for is told as shorter.
fn s_down(ticks: u64) -> u32 {
    (ticks / TICKS_PER_SECOND) as u32
}

impl Workshop {
    /// Kinds of the car's record lines whose condition a reading taken now does not meet, and the first that
    /// it does not.
    pub(super) fn conditions_unmet(
        &self,
        what: &Observed,
        shown: ShownValue,
        watch: Option<&Watch>,
    ) -> Vec<(RecordKind, Unmet)> {
        let kinds = self.setup.car.record.iter().map(|line| line.kind);
        kinds.filter_map(|kind| Some((kind, self.condition(kind, what, shown, watch).err()?))).collect()
    }

    /// Whether a reading taken now meets the condition of a line.
    fn condition(
        &self,
        kind: RecordKind,
        what: &Observed,
        shown: ShownValue,
        watch: Option<&Watch>,
    ) -> Result<(), Unmet> {
        match kind {
            RecordKind::DayPressure if self.measured(what) == Some(Measured::Day) => Ok(()),
            RecordKind::DayPressure => Err(Unmet::OtherReading(Wanted::Barometer)),
            RecordKind::BatteryVoltage => self.battery_condition(what),
            RecordKind::CutOut | RecordKind::CutIn => self.switch_point(kind, what),
            RecordKind::PumpRun | RecordKind::ReleaseBuildUp => self.run_condition(what, shown, watch),
            RecordKind::PumpRest | RecordKind::ReleaseRest => self.rest_condition(what, shown, watch),
            RecordKind::ReleaseDrop => self.pedal_drops(what),
            RecordKind::ReleaseNoRise => self.pedal_stays(what),
            RecordKind::ReleaseReserve if *what != Observed::Sense(Sense::Applications) => {
                Err(Unmet::OtherReading(Wanted::Applications))
            }
            RecordKind::ReleaseReserve if self.state.applications_standing => Ok(()),
            RecordKind::ReleaseReserve => Err(Unmet::NotStanding),
            RecordKind::ReleaseYard if *what == Observed::Sense(Sense::YardDrive) => Ok(()),
            RecordKind::ReleaseYard => Err(Unmet::OtherReading(Wanted::YardDrive)),
        }
    }

    /// What the instrument behind an observation measures.
    fn measured(&self, what: &Observed) -> Option<Measured> {
        let Observed::Instrument { instrument, .. } = what else { return None };
        self.kind_of(instrument).map(|k| k.nature().measured)
    }

    fn battery_condition(&self, what: &Observed) -> Result<(), Unmet> {
        let other = Unmet::OtherReading(Wanted::Battery);
        let (Some(Measured::Meter), Observed::Instrument { mode, at, .. }) = (self.measured(what), what)
        else {
            return Err(other);
        };
        match mode {
            Some(MeterMode::Volt) => {}
            mode => return Err(Unmet::Meter(mode.unwrap_or_default())),
        }
        if !self.across_battery(at) {
            return Err(other);
        }
        let inputs = self.circuit.inputs();
        if inputs.key_on {
            return Err(Unmet::KeyOn);
        }
        self.engine_stands()
    }

    fn engine_stands(&self) -> Result<(), Unmet> {
        if self.circuit.inputs().engine == EngineState::Stopped { Ok(()) } else { Err(Unmet::EngineRan) }
    }

    fn key_is_on(&self) -> Result<(), Unmet> {
        if self.circuit.inputs().key_on { Ok(()) } else { Err(Unmet::KeyOff) }
    }

    /// Key on, engine off, nobody at the pedal: what run and rest are timed under.
    fn left_alone(&self) -> Result<(), Unmet> {
        self.key_is_on()?;
        self.engine_stands()?;
        match self.state.pedal {
            PedalHold::Released => Ok(()),
            PedalHold::Foot { force_n } => Err(Unmet::FootOnPedal { force_n }),
            PedalHold::Prop { force_n } => Err(Unmet::PropOnPedal { force_n }),
        }
    }

    fn run_condition(&self, what: &Observed, shown: ShownValue, watch: Option<&Watch>) -> Result<(), Unmet> {
        let (Observed::Interval { cycle: Cycle::PumpRun, .. }, Some(watch)) = (what, watch) else {
            return Err(Unmet::OtherReading(Wanted::Run));
        };
        self.left_alone()?;
        let Some(begun) = watch.begun.filter(|_| shown != ShownValue::Blank) else {
            return Err(Unmet::NothingTimed);
        };
        if !watch.whole {
            return Err(self.late(begun, true));
        }
        let switched = self.state.last_switch;
        if !(switched..=switched + NOT_BY_ITSELF).contains(&begun) {
            let after_s = s_up(begun.saturating_sub(switched));
            return Err(Unmet::StartedByItself { after_s, within_s: s_down(NOT_BY_ITSELF) });
        }
        if EMPTY_KPA < self.state.store_kpa_at_switch { Ok(()) } else { Err(Unmet::StoreNotEmpty) }
    }

    fn rest_condition(&self, what: &Observed, shown: ShownValue, watch: Option<&Watch>) -> Result<(), Unmet> {
        let (Observed::Interval { cycle: Cycle::PumpRest, .. }, Some(watch)) = (what, watch) else {
            return Err(Unmet::OtherReading(Wanted::Rest));
        };
        self.left_alone()?;
        // A rest that outlasts the watch is at least that long, whenever it began. That says something of the line only if
        // it was waited for as long as the line asks.
        if shown == ShownValue::Off(true) {
            let Observed::Interval { max_s, .. } = *what else { return Ok(()) };
            let least_s = self.least_rest_s();
            return if max_s < least_s {
                Err(Unmet::GivenUpEarly { after_s: max_s, least_s })
            } else {
                Ok(())
            };
        }
        match watch.begun.filter(|_| shown != ShownValue::Blank) {
            None => Err(Unmet::NothingTimed),
            Some(begun) if !watch.whole => Err(self.late(begun, false)),
            Some(_) => Ok(()),
        }
    }

    /// How long the pump has to rest at least by the car's record, whole s; 0 where no line has a limit.
    fn least_rest_s(&self) -> u32 {
        let car = &self.setup.car;
        let lines = car
            .record
            .iter()
            .filter(|line| matches!(line.kind, RecordKind::PumpRest | RecordKind::ReleaseRest));
        let limits = lines.filter_map(|line| car.limits.get(usize::from(line.limit?)));
        let least = limits.filter_map(|limit| limit.bounds(self.circuit.ambient()).0).fold(0.0, f64::max);
        least.ceil() as u32
    }

    /// The watch was started in the middle, at tick `begun`: so long after the pump had started (or stopped).
    fn late(&self, begun: u64, started: bool) -> Unmet {
        let begins = self.pump().map(|pump| match started {
            true => Event::PumpStarted(pump),
            false => Event::PumpStopped(pump),
        });
        let events = self.circuit.events().iter().rev();
        let since = events
            .filter(|(tick, _)| self.offset <= tick.0 && tick.0 <= begun)
            .find(|(_, event)| Some(*event) == begins)
            .map(|(tick, _)| s_up(begun - tick.0));
        Unmet::WatchLate { after_s: since, within_s: s_down(CAUGHT) }
    }

    /// The engine's start or stop since which a held pedal was felt to move.
    fn pedal_felt(&self, what: &Observed) -> Result<EngineEvent, Unmet> {
        let event = self.state.engine_event.filter(|_| *what == Observed::Sense(Sense::PedalMoved));
        event.ok_or(Unmet::OtherReading(Wanted::PedalMoved))
    }

    /// The pedal was held while the engine started.
    fn pedal_drops(&self, what: &Observed) -> Result<(), Unmet> {
        if self.pedal_felt(what)?.started { Ok(()) } else { Err(Unmet::EngineStoppedLast) }
    }

    /// The pedal was held long enough since the engine stopped.
    fn pedal_stays(&self, what: &Observed) -> Result<(), Unmet> {
        let event = self.pedal_felt(what)?;
        let held = self.circuit.tick().0 - event.tick;
        if event.started {
            Err(Unmet::EngineStartedLast)
        } else if held < HELD {
            Err(Unmet::HeldTooShort { for_s: s_down(held), least_s: s_down(HELD) })
        } else {
            Ok(())
        }
    }

    /// A gauge at the store, read when the pump had just stopped (or started) by itself.
    fn switch_point(&self, kind: RecordKind, what: &Observed) -> Result<(), Unmet> {
        let gauge = self.measured(what) == Some(Measured::Pointer);
        let at_store = matches!(what, Observed::Instrument { at, .. } if gauge && self.at_store(at));
        let Some(pump) = self.pump().filter(|_| at_store) else {
            return Err(Unmet::OtherReading(Wanted::Store));
        };
        self.key_is_on()?;
        self.engine_stands()?;
        let switched = |e: &Event| *e == Event::PumpStarted(pump) || *e == Event::PumpStopped(pump);
        let last = self.circuit.events().iter().rev().find(|(_, e)| switched(e));
        let Some((tick, event)) = last.filter(|(tick, _)| self.offset <= tick.0) else {
            return Err(Unmet::NeverSwitched);
        };
        let since = self.circuit.tick().0 - tick.0;
        let stopped = *event == Event::PumpStopped(pump);
        if kind == RecordKind::CutOut && !stopped {
            return Err(Unmet::PumpRan { for_s: s_down(since) });
        }
        if kind == RecordKind::CutIn && stopped {
            return Err(Unmet::PumpRested { for_s: s_down(since) });
        }
        let hands = self.state.last_switch;
        if tick.0 < hands {
            return Err(Unmet::HandsSince { before_s: s_down(self.circuit.tick().0 - hands) });
        }
        if tick.0 <= hands + NOT_BY_ITSELF {
            let after_s = s_down(tick.0 - hands);
            return Err(Unmet::SwitchedByHand { after_s, beyond_s: s_down(NOT_BY_ITSELF) });
        }
        if JUST_AFTER < since {
            return Err(Unmet::Late { after_s: s_up(since), within_s: s_down(JUST_AFTER) });
        }
        Ok(())
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
}
