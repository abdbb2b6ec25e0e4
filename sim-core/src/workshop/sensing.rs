//! Looking and sensing: reading an instrument, listening, touching, timing, waiting for a cue.
//!
//! A sense takes its time first and tells the state at its end. An instrument is read at once, when one
//! stands before it; then the time of reading passes.

use super::access::{cannot, in_range};
use super::predict::Watch;
use super::state::{Doing, ReadingFacts};
use super::{Workshop, timing};
use crate::action::{Cue, Cycle, PedalHold, Sense, Station};
use crate::circuit::Pace;
use crate::instrument::{Held, InstrumentKind, Measured, ReadFrom};
use crate::notice::{Notice, Quantity, Reason, Refusal, Tool};
use crate::observe::{Observed, Predicted, Reading, ShownValue};
use crate::units::Tick;

/// Filament temperature above which a lamp is on, K (it gives light one can see in a workshop).
const LAMP_ON_K: f64 = 1_000.0;

impl Workshop {
    /// What looking at an instrument would observe; `None` for things that show nothing.
    pub(super) fn observed(&self, card: usize) -> Option<Observed> {
        let c = &self.setup.kit[card];
        let mode = match c.kind.nature().measured {
            Measured::Meter => self.card_part(card).map(|p| self.circuit.inputs().hands[usize::from(p)].mode),
            Measured::Glow => {
                return Some(Observed::Sense(Sense::Lamp { instrument: c.id.clone() }));
            }
            Measured::Nothing | Measured::Time { .. } => return None,
            Measured::Pointer
            | Measured::Current
            | Measured::Radiation { .. }
            | Measured::Day
            | Measured::Room
            | Measured::Bend
            | Measured::PedalTravel => None,
        };
        Some(Observed::Instrument { instrument: c.id.clone(), mode, at: self.state.fits[card].clone() })
    }

    /// Where one stands to look at an instrument.
    fn places_to_read(&self, card: usize) -> Vec<crate::reach::Place> {
        match self.setup.kit[card].kind.nature().read_from {
            ReadFrom::Wall => vec![(Station::Bench, None), (Station::Desk, None)],
            ReadFrom::Cab => vec![(Station::Cab, None)],
            ReadFrom::ItsEnds => self.places_of_card(card),
        }
    }

    pub(super) async fn do_read(&mut self, doing: &mut Doing<'_>, name: &str) -> Result<(), Refusal> {
        let card = self.find_card(name)?;
        let c = &self.setup.kit[card];
        if self.observed(card).is_none() {
            let timed = matches!(c.kind.nature().measured, Measured::Time { .. });
            return Err(cannot(if timed {
                Reason::WatchAlone
            } else {
                Reason::ShowsNothing { tool: c.id.as_str().into() }
            }));
        }
        let nature = c.kind.nature();
        let pointed = match nature.held {
            Held::AroundWire | Held::AtPart | Held::OnHose => true,
            Held::Nowhere
            | Held::OnLine
            | Held::OnWires
            | Held::InOpening
            | Held::OverHose
            | Held::AtEar
            | Held::OnPedal => nature.measured == Measured::Glow,
        };
        if pointed && self.state.fits[card].is_empty() {
            return Err(cannot(Reason::OnBoard { tool: c.id.as_str().into() }));
        }
        let at = self.reach(&self.places_to_read(card)).map_err(|e| match e {
            Refusal::Cannot(why) => {
                cannot(Reason::NotFromHere { tool: c.id.as_str().into(), why: Box::new(why) })
            }
            other @ (Refusal::Unknown { .. } | Refusal::Range { .. }) => other,
        })?;
        self.walk(doing, at).await;
        // Eyes first, then the time it takes to make sure: a gauge watched while waiting for the pump is
        // read at the moment it starts or stops.
        if let Some(what) = self.observed(card) {
            let predicted = self.predict(&what);
            self.enter(doing, what, predicted, None);
        }
        self.pass(doing, timing::READ).await;
        Ok(())
    }

    /// Enters a reading into the list of things looked at.
    fn enter(&mut self, doing: &mut Doing<'_>, what: Observed, predicted: Predicted, watch: Option<&Watch>) {
        let id = self.state.readings.len() as u32 + 1;
        let shown = self.show(&what, predicted, id);
        let unmet = self.conditions_unmet(&what, shown, watch);
        self.prove(&what, shown);
        let reading = Reading {
            id,
            tick: Tick(self.circuit.tick().0 - self.offset),
            what,
            shown,
            epoch: self.state.epoch,
        };
        self.state.readings.push(reading.clone());
        self.state.facts.push(ReadingFacts { unmet, changes: self.state.changes });
        doing.reading = Some(reading);
        doing.predicted = Some(predicted);
    }

    pub(super) async fn do_sense(&mut self, doing: &mut Doing<'_>, sense: &Sense) -> Result<(), Refusal> {
        match sense {
            Sense::Hiss { part } => {
                let part = self.find_part(part)?;
                let at = self.reach(&self.uncovered(part))?;
                self.walk(doing, at).await;
                self.pass(doing, timing::s(10)).await;
            }
            Sense::Hum => self.pass(doing, timing::s(3)).await,
            Sense::Touch { part } => {
                let part = self.find_part(part)?;
                let at = self.reach(&self.places_of_part(part))?;
                self.hands_free()?;
                self.walk(doing, at).await;
                self.pass(doing, timing::s(3)).await;
                self.touches(doing, part);
            }
            Sense::PedalTravel | Sense::PedalMoved => {
                if self.state.pedal == PedalHold::Released {
                    return Err(cannot(Reason::PedalFirst));
                }
                if *sense == Sense::PedalMoved
                    && self.state.engine_event.is_none_or(|e| e.travel_mm.is_none())
                {
                    return Err(cannot(Reason::PedalHeldOn));
                }
                let at = self.reach(&[(Station::Cab, None)])?;
                self.walk(doing, at).await;
                self.pass(doing, timing::s(2)).await;
            }
            Sense::Applications => {
                if self.state.applications.is_none() {
                    return Err(cannot(Reason::PumpPedalFirst));
                }
                self.pass(doing, timing::s(1)).await;
            }
            Sense::Lamp { instrument } => {
                let card = self.find_card(instrument)?;
                if !matches!(self.setup.kit[card].kind, InstrumentKind::Lamp) {
                    return Err(cannot(Reason::NoLamp { tool: instrument.as_str().into() }));
                }
                return self.do_read(doing, instrument).await;
            }
            Sense::BaseBrakes => self.do_base_brakes(doing).await?,
            Sense::YardDrive => self.do_yard_drive(doing).await?,
        }
        let what = Observed::Sense(sense.clone());
        let predicted = self.predict(&what);
        self.enter(doing, what, predicted, None);
        Ok(())
    }

    /// A part's places as the ear needs them: a cover does not bar the listening tube.
    fn uncovered(&self, part: u16) -> Vec<crate::reach::Place> {
        self.places_of_part(part).into_iter().map(|(station, _)| (station, None)).collect()
    }

    pub(super) async fn do_time(
        &mut self,
        doing: &mut Doing<'_>,
        cycle: Cycle,
        max_s: u32,
    ) -> Result<(), Refusal> {
        in_range(Quantity::LongestWait, f64::from(max_s), 1.0, 7200.0)?;
        let card = self.need(Tool::Stopwatch, |k| matches!(k, InstrumentKind::Stopwatch { .. }))?;
        let Some(pump) = self.pump() else {
            return Err(cannot(Reason::NoPumpToTime));
        };
        // The wait changes the state; readings before and after are not repeats.
        self.state.touch();
        let began = self.circuit.tick().0;
        let watch = self.time_cycle(doing, pump, cycle, max_s).await;
        self.waited(doing, began);
        let what = Observed::Interval { instrument: self.setup.kit[card].id.clone(), cycle, max_s };
        let predicted = watch.interval(max_s);
        if predicted == Predicted::Blank {
            doing.say(match cycle {
                Cycle::PumpRun => Notice::DidNotStart,
                Cycle::PumpRest => Notice::DidNotStop,
            });
        }
        self.enter(doing, what, predicted, Some(&watch));
        self.state.touch();
        Ok(())
    }

    /// Counts time waited since `began` as unattended when it was long and nothing binds the trainee.
    pub(super) fn waited(&self, doing: &mut Doing<'_>, began: u64) {
        let bound = matches!(self.state.pedal, PedalHold::Foot { .. }) || self.pressed_card().is_some();
        doing.unattended = !bound && timing::LONG_WAIT < self.circuit.tick().0 - began;
    }

    pub(super) async fn do_wait(&mut self, doing: &mut Doing<'_>, s: u32) -> Result<(), Refusal> {
        in_range(Quantity::Wait, f64::from(s), 1.0, 43_200.0)?;
        let began = self.circuit.tick().0;
        self.pass(doing, timing::s(u64::from(s))).await;
        self.waited(doing, began);
        self.state.touch();
        Ok(())
    }

    pub(super) async fn do_wait_until(
        &mut self,
        doing: &mut Doing<'_>,
        cue: Cue,
        max_s: u32,
    ) -> Result<(), Refusal> {
        in_range(Quantity::LongestWait, f64::from(max_s), 1.0, 7200.0)?;
        let lamp_cue = matches!(cue, Cue::LampOn | Cue::LampOut);
        if lamp_cue && !self.lamps().any(|c| !self.state.fits[c].is_empty()) {
            return Err(cannot(Reason::NoLampConnected));
        }
        if !lamp_cue && self.pump().is_none() {
            return Err(cannot(Reason::NoPump));
        }
        let began = self.circuit.tick().0;
        let limit = began + timing::s(u64::from(max_s));
        if self.cue(cue) {
            doing.say(match cue {
                Cue::PumpStarts => Notice::RunsAlready,
                Cue::PumpStops => Notice::RestsAlready,
                Cue::LampOn => Notice::LampAlightAlready,
                Cue::LampOut => Notice::LampDarkAlready,
            });
        }
        if let Some(cut) = doing.cut {
            // A lamp's cue is no switching of the circuit: its live wait may have ended inside what would
            // be one step here, so the live steps are taken as long as they fit.
            if lamp_cue {
                self.steps_that_fit(limit, cut);
            }
            self.run_timed(doing, cut).await;
        } else {
            while !self.cue(cue) && self.circuit.tick().0 < limit {
                if lamp_cue {
                    self.step(limit, Pace::Timed);
                } else {
                    self.run_on(doing.beside, limit, Pace::Timed, true).await;
                }
            }
        }
        if !self.cue(cue) {
            doing.say(Notice::NoCue { within: max_s });
        }
        self.waited(doing, began);
        self.state.touch();
        Ok(())
    }

    fn lamps(&self) -> impl Iterator<Item = usize> + '_ {
        (0..self.setup.kit.len()).filter(|c| matches!(self.setup.kit[*c].kind, InstrumentKind::Lamp))
    }

    /// Whether a cue can be perceived now.
    fn cue(&self, cue: Cue) -> bool {
        let lit = || {
            self.lamps().any(|c| {
                !self.state.fits[c].is_empty()
                    && self.card_part(c).is_some_and(|p| LAMP_ON_K < self.circuit.filament_k(p))
            })
        };
        match cue {
            Cue::PumpStarts => self.pump_hums(),
            Cue::PumpStops => !self.pump_hums(),
            Cue::LampOn => lit(),
            Cue::LampOut => !lit(),
        }
    }

    /// A reading that proves assist after the last change: the pedal dropped at the engine's start, at
    /// least two assisted applications, or full assist in the yard.
    fn prove(&mut self, what: &Observed, shown: ShownValue) {
        let ShownValue::Level(level) = shown else { return };
        let proves = match what {
            Observed::Sense(Sense::PedalMoved) => {
                level == 2 && self.state.engine_event.is_some_and(|e| e.started)
            }
            Observed::Sense(Sense::Applications | Sense::YardDrive) => 2 <= level,
            Observed::Sense(
                Sense::Hiss { .. }
                | Sense::Hum
                | Sense::Touch { .. }
                | Sense::PedalTravel
                | Sense::Lamp { .. }
                | Sense::BaseBrakes,
            )
            | Observed::Instrument { .. }
            | Observed::Interval { .. } => false,
        };
        if proves {
            self.state.proven = Some(self.state.changes);
        }
    }
}
