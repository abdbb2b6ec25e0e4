//! What the model says an observation would be: the continuous value before error and scale.
//!
//! Infrared thermometer: total radiation of a grey surface plus what it reflects of the surroundings,
//! ε T⁴ + (1 − ε) T_a⁴ = ε_set T_shown⁴ + (1 − ε_set) T_a⁴ (Stefan–Boltzmann; spectral band not modelled).
//! Hearing: log₁₀ of the air that passes into the open, in g/s, less what a pump running at the same
//! place or a running engine drowns. Not modelled: distance within a place, voices.

use super::state::Doing;
use super::{Workshop, graph};
use crate::action::{Cycle, Sense, Station};
use crate::air::ZERO_CELSIUS_K;
use crate::circuit::{Circuit, Event, Pace};
use crate::instrument::{Dial, DigitalRange, Display, InstrumentKind, Measured};
use crate::math;
use crate::observe::{Observed, Predicted, ShownValue};
use crate::parts::engine::EngineState;
use crate::parts::hose::Hose;
use crate::parts::instruments::MeterMode;
use crate::units::{TICK_S, Tick};

/// What a pump or engine running close by drowns, decades of hiss (common practice, no source).
const DROWNED: f64 = 1.0;
/// Without the listening tube only ten times as much is heard (common practice, no source).
const BARE_EAR: f64 = 1.0;
/// Hiss of nothing at all, log₁₀ g/s.
const SILENCE: f64 = -9.0;
/// Emissivity of paint, plastic and rubber (from memory).
const EMISSIVITY_DULL: f64 = 0.95;
/// A pump that started or stopped this long ago counts as caught with the watch in hand.
pub(super) const CAUGHT: u64 = super::timing::s(3);

/// A stopwatch in hand.
#[derive(Clone, Debug)]
pub(super) struct Watch {
    cycle: Cycle,
    pump: u16,
    /// Circuit tick at which it was started.
    pub(super) begun: Option<u64>,
    /// It was started with the pump's own start or stop, not in the middle.
    pub(super) whole: bool,
    /// Circuit tick at which it was stopped.
    pub(super) done: Option<u64>,
    /// Events looked at so far.
    seen: usize,
}

impl Watch {
    pub(super) fn new(circuit: &Circuit, pump: u16, cycle: Cycle) -> Self {
        let (now, seen) = (circuit.tick().0, circuit.events().len());
        let counting = match cycle {
            Cycle::PumpRun => circuit.hums(pump),
            Cycle::PumpRest => !circuit.hums(pump),
        };
        let mut watch = Self { cycle, pump, begun: counting.then_some(now), whole: false, done: None, seen };
        let last = circuit.events().iter().rev().find(|(_, e)| watch.begins(*e) || watch.ends(*e));
        if let (true, Some((tick, event))) = (counting, last)
            && watch.begins(*event)
            && now <= tick.0 + CAUGHT
        {
            watch.begun = Some(tick.0);
            watch.whole = true;
        }
        watch
    }

    fn begins(&self, event: Event) -> bool {
        event
            == match self.cycle {
                Cycle::PumpRun => Event::PumpStarted(self.pump),
                Cycle::PumpRest => Event::PumpStopped(self.pump),
            }
    }

    fn ends(&self, event: Event) -> bool {
        event
            == match self.cycle {
                Cycle::PumpRun => Event::PumpStopped(self.pump),
                Cycle::PumpRest => Event::PumpStarted(self.pump),
            }
    }

    /// Looks at what has happened since; `true` when the interval is over.
    pub(super) fn look(&mut self, circuit: &Circuit) -> bool {
        for (tick, event) in &circuit.events()[self.seen..] {
            if self.done.is_some() {
                break;
            }
            if self.begun.is_none() && self.begins(*event) {
                self.begun = Some(tick.0);
                self.whole = true;
            } else if self.begun.is_some() && self.ends(*event) {
                self.done = Some(tick.0);
            }
        }
        self.seen = circuit.events().len();
        self.done.is_some()
    }

    /// The interval, after at most `max_s` of waiting.
    pub(super) fn interval(&self, max_s: u32) -> Predicted {
        match (self.begun, self.done) {
            (Some(begun), Some(done)) => Predicted::Value((done - begun) as f64 * TICK_S),
            (Some(_), None) => Predicted::Beyond(f64::from(max_s)),
            (None, _) => Predicted::Blank,
        }
    }
}

impl Workshop {
    /// See [`super::Opened::predict`].
    pub(super) fn predict(&self, what: &Observed) -> Predicted {
        match what {
            Observed::Instrument { instrument, mode, at } => {
                let Some(card) = self.setup.kit.iter().position(|c| c.id == *instrument) else {
                    return Predicted::Blank;
                };
                self.predict_instrument(card, *mode, at)
            }
            Observed::Interval { cycle, max_s, .. } => {
                let Some(pump) = self.pump() else { return Predicted::Blank };
                let watch = Watch::new(&self.circuit, pump, *cycle);
                let limit = self.circuit.tick().0 + u64::from(*max_s) * crate::units::TICKS_PER_SECOND;
                run_copy_on(self.circuit.copy(), watch, limit).interval(*max_s)
            }
            Observed::Sense(sense) => self.predict_sense(sense),
        }
    }

    fn predict_instrument(&self, card: usize, mode: Option<MeterMode>, at: &[(String, String)]) -> Predicted {
        if self.state.fits[card] != at {
            return Predicted::Blank;
        }
        let assembly = self.circuit.assembly();
        let held_to = at.first().map(|(_, at)| at.as_str());
        let part = self.card_part(card);
        let nature = self.setup.kit[card].kind.nature();
        let value = match nature.measured {
            Measured::Pointer => part.map(|p| self.circuit.pointer_kpa(p)),
            Measured::Meter => {
                let Some(part) = part else { return Predicted::Blank };
                let set = self.circuit.inputs().hands[usize::from(part)].mode;
                if set == MeterMode::Off || mode.unwrap_or_default() != set {
                    return Predicted::Blank;
                }
                match (self.circuit.meter(part), set) {
                    (None, MeterMode::Ohm) => return nature.display(mode).map_or(Predicted::Blank, beyond),
                    // Leads in the air, or its fuse melted: it shows nought and does not say why.
                    (None, MeterMode::Volt | MeterMode::Ampere) => Some(0.0),
                    (value, _) => value,
                }
            }
            Measured::Current => held_to.and_then(|at| assembly.port(at)).map(|p| self.circuit.current(p)),
            Measured::Radiation { set, metal } => {
                held_to.and_then(|at| assembly.part_index(at)).map(|p| self.infrared(p, set, metal))
            }
            Measured::Day => Some(self.circuit.ambient().kpa()),
            Measured::Room => Some(self.circuit.surroundings_c()),
            Measured::Bend => held_to
                .and_then(|at| assembly.part_index(at))
                .and_then(|p| assembly.parts[usize::from(p)].kind.hose())
                .map(Hose::bend_now_deg),
            Measured::PedalTravel => Some(self.circuit.pedal_travel_mm()),
            Measured::Nothing | Measured::Glow | Measured::Time { .. } => None,
        };
        value.map_or(Predicted::Blank, Predicted::Value)
    }

    fn infrared(&self, part: u16, set: f64, metal: f64) -> f64 {
        let bright = self.setup.car.stands.get(usize::from(part)).is_some_and(|s| s.bright_metal);
        let emissivity = if bright { metal } else { EMISSIVITY_DULL };
        let fourth = |c: f64| {
            let k = c + ZERO_CELSIUS_K;
            k * k * k * k
        };
        let (body, around) = (fourth(self.circuit.surface_c(part)), fourth(self.circuit.surroundings_c()));
        let shown = around + emissivity / set * (body - around);
        shown.max(0.0).sqrt().sqrt() - ZERO_CELSIUS_K
    }

    fn predict_sense(&self, sense: &Sense) -> Predicted {
        let value = match sense {
            Sense::Hiss { part } => self.circuit.assembly().part_index(part).map(|p| self.heard(p)),
            Sense::Hum => Some(if self.pump_hums() { 1.0 } else { 0.0 }),
            Sense::Touch { part } => {
                self.circuit.assembly().part_index(part).map(|p| self.circuit.surface_c(p))
            }
            Sense::PedalTravel => Some(self.circuit.pedal_travel_mm()),
            Sense::PedalMoved => {
                let then = self.state.engine_event.and_then(|e| e.travel_mm);
                then.map(|then| self.circuit.pedal_travel_mm() - then)
            }
            Sense::Applications => self.state.applications,
            Sense::Lamp { instrument } => self
                .setup
                .kit
                .iter()
                .position(|c| c.id == *instrument && matches!(c.kind, InstrumentKind::Lamp))
                .and_then(|c| self.card_part(c))
                .map(|p| self.circuit.filament_k(p)),
            Sense::BaseBrakes => Some(1.0),
            Sense::YardDrive => self.state.yard_share,
        };
        value.map_or(Predicted::Blank, Predicted::Value)
    }

    /// What the ear gets of a part's hiss, log₁₀ g/s.
    fn heard(&self, part: u16) -> f64 {
        /// Grams in a kilogram.
        const G_PER_KG: f64 = 1e3;
        let g_per_s = self.circuit.hiss(part) * G_PER_KG;
        let mut heard = math::log10(g_per_s.max(1e-9)).max(SILENCE);
        let station = |p: u16| self.setup.car.stands.get(usize::from(p)).map(|s| s.station);
        let here = station(part);
        if let Some(pump) = self.pump()
            && self.circuit.hums(pump)
            && station(pump) == here
        {
            heard -= DROWNED;
        }
        if self.circuit.inputs().engine != EngineState::Stopped && here == Some(Station::Bay) {
            heard -= DROWNED;
        }
        if !self.setup.kit.iter().any(|c| matches!(c.kind, InstrumentKind::ListeningTube)) {
            heard -= BARE_EAR;
        }
        heard
    }

    /// Times a cycle; the clock runs until it is over, `max_s` has passed, or the recorded end.
    pub(super) async fn time_cycle(
        &mut self,
        doing: &Doing<'_>,
        pump: u16,
        cycle: Cycle,
        max_s: u32,
    ) -> Watch {
        let limit = self.circuit.tick().0 + u64::from(max_s) * crate::units::TICKS_PER_SECOND;
        let mut watch = Watch::new(&self.circuit, pump, cycle);
        match doing.cut {
            None => {
                while self.circuit.tick().0 < limit && !watch.look(&self.circuit) {
                    self.run_on(doing.beside, limit, Pace::Timed, true).await;
                }
                watch.look(&self.circuit);
                watch
            }
            Some(cut) => {
                while self.circuit.tick().0 < cut {
                    self.run_on(doing.beside, cut, Pace::Timed, true).await;
                    watch.look(&self.circuit);
                }
                if watch.done.is_some() || limit <= self.circuit.tick().0 {
                    watch
                } else {
                    run_copy_on(self.circuit.copy(), watch, limit)
                }
            }
        }
    }

    /// What is shown for a prediction, with this world's instrument error and the scatter of reading
    /// number `id`.
    pub(super) fn show(&self, what: &Observed, predicted: Predicted, id: u32) -> ShownValue {
        match predicted {
            Predicted::Blank => ShownValue::Blank,
            Predicted::Beyond(_) => ShownValue::Off(true),
            Predicted::Value(value) => {
                let scale = self.scale(what);
                let error = self.instrument_error(what, value, self.drawn_share(what));
                scale.show(value + error + scale.scatter() * self.noise(id))
            }
        }
    }

    /// A number with mean 0 and variance 1 for reading number `id`, fixed by the world alone: the sum of
    /// twelve uniform numbers less six. The world's own numbers are the seed, so that nobody who does
    /// not know them can foretell it and a replay finds it again.
    fn noise(&self, id: u32) -> f64 {
        let mut seed = super::digest::Fnv::new();
        for (name, value) in &self.world.params {
            seed.bytes(name.as_bytes());
            seed.f64(*value);
        }
        for share in &self.world.instrument_errors {
            seed.f64(*share);
        }
        seed.u32(id);
        let mut state = seed.finish();
        let mut sum = -6.0;
        for _ in 0..12 {
            // SplitMix64 (public domain mixing constants, from memory).
            state = state.wrapping_add(0x9e37_79b9_7f4a_7c15);
            let mut z = state;
            z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
            z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
            z ^= z >> 31;
            sum += (z >> 11) as f64 / (1u64 << 53) as f64;
        }
        sum
    }

    /// Whether a port is part of the vacuum store.
    pub(super) fn in_store(&self, port: crate::assembly::PortRef) -> bool {
        graph::store(self.circuit.assembly()).contains(&port)
    }
}

/// More than a display can show.
fn beyond(display: Display<'_>) -> Predicted {
    let (Display::Dial(_, Dial { max, .. })
    | Display::Signed(_, DigitalRange { max, .. })
    | Display::Unsigned(_, DigitalRange { max, .. })) = display;
    Predicted::Beyond(*max)
}

/// Runs a copy of the circuit on until the watch is stopped or `limit` is reached.
fn run_copy_on(mut circuit: Circuit, mut watch: Watch, limit: u64) -> Watch {
    while circuit.tick().0 < limit && !watch.look(&circuit) {
        circuit.step(Tick(limit), Pace::Timed);
    }
    watch.look(&circuit);
    watch
}
