//! The workshop: the only way in is an action, the only way out is a [`View`] and readings.
//!
//! What is true behind them is told by [`Opened`] alone.
//!
//! [`Workshop::act`] checks an action (names, ranges, access, hands), lets its time pass in the circuit,
//! changes the car and says what came of it. [`Workshop::replay`] does the same with a recorded end, in
//! the same world (bit for bit) or in another (what if, hypotheses of the marker).

mod access;
mod act;
mod conditions;
mod decide;
mod digest;
pub mod exchange;
mod fits;
mod fitting;
mod graph;
mod hazards;
mod joints;
mod lasting;
mod opened;
mod predict;
mod record;
mod recorder;
mod repair;
mod scales;
mod sensing;
mod state;
mod timing;
mod view;
mod watch;

use std::sync::Arc;

use exchange::{Beside, Seat, at_once};
pub use fits::NoFit;
pub use opened::Opened;
use recorder::Recorder;
pub use recorder::TraceRow;
use state::State;
pub use watch::Watch;

use crate::action::{PedalHold, Station};
use crate::air::Day;
use crate::assembly::Part;
use crate::car::{Car, Spare};
use crate::circuit::{Circuit, Fault};
use crate::instrument::InstrumentCard;
use crate::notice::{Hazard, Notice, Refusal, Unmet};
use crate::observe::{Reading, Scale};
use crate::parts::engine::EngineState;
use crate::units::Tick;
use crate::world::World;

/// What a job gives the workshop, and everybody may know. Checked data, made by `assess::pack`.
#[derive(Clone, Debug)]
pub struct Setup {
    /// The car.
    pub car: Arc<Car>,
    /// Instruments allowed in this job, in fixed order.
    pub kit: Arc<Vec<InstrumentCard>>,
    /// Spares in store.
    pub spares: Arc<Vec<Spare>>,
    /// The day outside.
    pub day: Day,
    /// How the car came in.
    pub arrival: Arrival,
    /// Lines of the job card, as the customer said it.
    pub card: Vec<String>,
}

/// How the car came to the workshop; simulated before the first action, so that it shows its faults.
#[derive(Clone, Copy, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Arrival {
    /// It was driven in with a warm engine (else pushed or towed in, vacuum store empty).
    pub driven: bool,
    /// It has stood since, min (0 to 10 000).
    pub stood_min: u32,
    /// Where it stands the floor falls away: without chocks it rolls.
    #[serde(default)]
    pub on_slope: bool,
}

/// How a record line was filled by a note.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RecordEntry {
    /// Short name of the record item.
    pub item: String,
    /// Whether the reading is of the kind and was taken under the condition the line asks for.
    pub condition_met: bool,
    /// Whether what was shown lies inside the limit (`None`: the line has no limit).
    pub within_limit: Option<bool>,
    /// The first condition that was not met; `None` when all were, and in files made before it was written down.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub unmet: Option<Unmet>,
}

/// What came of an action.
#[derive(Clone, Debug, PartialEq)]
pub struct Outcome {
    /// Tick at which it began.
    pub start: Tick,
    /// Tick at which it ended.
    pub end: Tick,
    /// Why it was refused; nothing has changed then, no time has passed.
    pub refused: Option<Refusal>,
    /// The reading it gave.
    pub reading: Option<Reading>,
    /// Breaches of safety.
    pub breaches: Vec<Hazard>,
    /// How a note filled the record.
    pub record: Option<RecordEntry>,
    /// For a note: whether what was written agrees with what was shown (`None` for senses and others).
    pub read_right: Option<bool>,
    /// What a person in the workshop would notice (pump starts, fuse melts, hot case …).
    pub said: Vec<Notice>,
}

/// An instrument in use, as it can be seen.
#[derive(Clone, Debug, PartialEq)]
pub struct InstrumentView {
    /// Short name.
    pub id: String,
    /// Index into the kit.
    pub card: usize,
    /// Where its ends are (end, port or part); empty when on the board.
    pub at: Vec<(String, String)>,
    /// Position of a pointer or value behind a display, error included; `None` when blank or off scale.
    pub value: Option<f64>,
    /// What a reading now would show.
    pub shown: crate::observe::ShownValue,
    /// The scale it is shown on, if it shows anything.
    pub scale: Option<Scale>,
    /// Glow of a lamp, 0 to 1.
    pub glow: Option<f64>,
    /// Where a multimeter's dial stands.
    pub mode: Option<crate::parts::instruments::MeterMode>,
    /// Its button or lever is held down.
    pub pressed: bool,
}

/// Everything a person in the workshop can see. No hidden value is in it.
#[derive(Clone, Debug, PartialEq)]
pub struct View {
    /// The present tick.
    pub tick: Tick,
    /// Where the trainee stands.
    pub station: Station,
    /// Minutes worked.
    pub attended_min: f64,
    /// Minutes waited without needing to be there.
    pub unattended_min: f64,
    /// Key in position 15.
    pub key_on: bool,
    /// Engine.
    pub engine: EngineState,
    /// Pedal.
    pub pedal: PedalHold,
    /// Chocks in place.
    pub chocked: bool,
    /// The exhaust extraction hangs on the tail pipe.
    pub extracted: bool,
    /// Covers that are off, short names.
    pub covers_off: Vec<String>,
    /// Joints that are open, short names.
    pub joints_open: Vec<String>,
    /// Units pulled out, short names.
    pub pulled: Vec<String>,
    /// Stops, port name and kind.
    pub stops: Vec<(String, crate::assembly::Stop)>,
    /// The pump can be heard.
    pub hum: bool,
    /// Where the pedal is seen to stand, mm from its rest: to draw it, never to print it.
    pub pedal_seen_mm: f64,
    /// Instruments in kit order.
    pub instruments: Vec<InstrumentView>,
    /// Readings so far.
    pub readings: Vec<Reading>,
    /// Which readings are committed to the notebook, with what was written and the record line.
    pub notes: Vec<(u32, Option<crate::action::Written>, Option<String>)>,
    /// Findings so far (units, certainty); the first is the one that is locked.
    pub findings: Vec<(Vec<String>, f64)>,
    /// Whether the car has been handed back (the attempt is over).
    pub handed_back: bool,
}

/// A car in the workshop with a person working on it. It cannot be copied, and printing it shows nothing: see [`Opened`].
pub struct Workshop {
    setup: Setup,
    /// The hidden numbers.
    world: World,
    circuit: Seat,
    /// Per instrument card: index of its part in the circuit.
    card_parts: Vec<Option<u16>>,
    state: State,
    /// Circuit tick at which the attempt begins.
    offset: u64,
    /// Attempt tick from which the next minute's digest is due.
    next_minute: u64,
    minute_digests: Vec<(Tick, u64)>,
    /// Under the skin, for traces only.
    recorder: Option<Recorder>,
    /// What the circuit is told, for traces only.
    watch: Option<Box<Watch>>,
}

impl Workshop {
    /// Brings the car in: parts of car and kit, numbers of the hidden `world`, then the arrival.
    ///
    /// A parameter the car does not have is left as it is (packs are checked before).
    #[must_use]
    pub fn new(setup: Setup, world: World) -> Self {
        at_once(Self::new_beside(setup, world, None))
    }

    /// As [`Workshop::new`], with the circuit run beside others.
    pub async fn new_beside(setup: Setup, world: World, beside: Beside<'_>) -> Self {
        let mut assembly = setup.car.assembly.clone();
        let mut card_parts = Vec::with_capacity(setup.kit.len());
        for card in setup.kit.iter() {
            card_parts.push(card.part.map(|kind| {
                assembly.parts.push(Part { id: card.id.clone(), kind });
                (assembly.parts.len() - 1) as u16
            }));
        }
        for (param, value) in &world.params {
            assembly.set_param(param, *value);
        }
        let state =
            State::new(setup.car.covers.len(), setup.car.units.len(), setup.kit.len(), setup.spares.len());
        let mut circuit = Seat::of(Circuit::new(assembly, setup.day));
        arrive(&mut circuit, setup.arrival, beside).await;
        let offset = circuit.tick().0;
        let mut workshop = Self {
            setup,
            world,
            circuit,
            card_parts,
            state,
            offset,
            next_minute: timing::s(60),
            minute_digests: Vec::new(),
            recorder: None,
            watch: None,
        };
        workshop.mark_switch();
        workshop
    }

    /// The job's data.
    #[must_use]
    pub fn setup(&self) -> &Setup {
        &self.setup
    }

    /// A copy, for [`Opened`] alone.
    fn copy(&self) -> Self {
        Self {
            setup: self.setup.clone(),
            world: self.world.clone(),
            circuit: self.circuit.clone(),
            card_parts: self.card_parts.clone(),
            state: self.state.clone(),
            offset: self.offset,
            next_minute: self.next_minute,
            minute_digests: self.minute_digests.clone(),
            recorder: self.recorder.clone(),
            watch: self.watch.clone(),
        }
    }

    /// Short name of a part of the circuit, an instrument's after those of the car; `None` beyond them.
    #[must_use]
    pub fn part_name(&self, part: u16) -> Option<&str> {
        self.circuit.assembly().parts.get(usize::from(part)).map(|part| part.id.as_str())
    }

    /// The present tick.
    #[must_use]
    pub fn tick(&self) -> Tick {
        Tick(self.circuit.tick().0 - self.offset)
    }

    /// Where the model could not go on, if so; what is shown from there on means nothing. An attempt ends there.
    #[must_use]
    pub fn fault(&self) -> Option<Fault> {
        let fault = self.circuit.fault()?;
        // A fault on the way to the workshop stands at the first tick.
        Some(Fault { tick: Tick(fault.tick.0.saturating_sub(self.offset)), ..fault })
    }

    /// Digests at the first step end after each simulated minute since last asked.
    pub fn take_minute_digests(&mut self) -> Vec<(Tick, u64)> {
        std::mem::take(&mut self.minute_digests)
    }
}

impl std::fmt::Debug for Workshop {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Workshop")
            .field("car", &self.setup.car.id)
            .field("tick", &self.tick())
            .finish_non_exhaustive()
    }
}

/// The car comes in: driven with a warm engine and a few brake applications, then left standing.
async fn arrive(circuit: &mut Seat, arrival: Arrival, beside: Beside<'_>) {
    /// Times at which the brake is pressed on the way in, s.
    const BRAKES_AT_S: [u64; 2] = [60, 110];
    /// From this long a stand on, the night was in it, min.
    const NIGHT_MIN: u32 = 480;
    if arrival.driven {
        circuit.inputs_mut().key_on = true;
        circuit.inputs_mut().engine = EngineState::WarmIdle;
        for at in BRAKES_AT_S {
            circuit.run_timed(Tick(timing::s(at)), beside).await;
            circuit.inputs_mut().pedal_n = 80.0;
            let braked = circuit.tick().plus(timing::s(2));
            circuit.run_timed(braked, beside).await;
            circuit.inputs_mut().pedal_n = 0.0;
        }
        circuit.run_timed(Tick(timing::s(120)), beside).await;
        circuit.inputs_mut().engine = EngineState::Stopped;
        circuit.inputs_mut().key_on = false;
    }
    if 0 < arrival.stood_min {
        let day = *circuit.day();
        if NIGHT_MIN <= arrival.stood_min {
            circuit.inputs_mut().surroundings_c = day.ambient_c - day.night_drop_k;
        }
        let stood = circuit.tick().plus(timing::s(u64::from(arrival.stood_min) * 60));
        circuit.run_timed(stood, beside).await;
        circuit.inputs_mut().surroundings_c = day.ambient_c;
    }
}
