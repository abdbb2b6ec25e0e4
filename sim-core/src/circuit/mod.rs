//! The circuit: an assembly compiled to volumes, restrictions, a nodal network and heat nodes, and the
//! clock that steps it.
//!
//! API sketch, bodies follow. Everything a caller may ask stands here.

use crate::air::Day;
use crate::assembly::{Assembly, PortRef};
use crate::parts::engine::EngineState;
use crate::parts::instruments::MeterMode;
use crate::units::{AbsPressure, Tick};

/// How the clock runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pace {
    /// Free: a step is at most 8 ticks, because an action may come at any moment; the last step may end
    /// up to 7 ticks after the tick asked for.
    Free,
    /// A stated stretch of time: steps may be minutes long and the last one ends exactly on the tick.
    Timed,
}

/// What hands do to a part of the circuit.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Hand {
    /// Strokes per second, for a hand pump.
    pub strokes_per_s: f64,
    /// Button held, for a push-button lead.
    pub pressed: bool,
    /// Dial setting, for a multimeter.
    pub mode: MeterMode,
}

/// Lasting states that act on the circuit from outside.
#[derive(Clone, Debug, PartialEq)]
pub struct Inputs {
    /// What the engine does.
    pub engine: EngineState,
    /// Ignition key in position 15.
    pub key_on: bool,
    /// Force on the brake pedal, N.
    pub pedal_n: f64,
    /// Air temperature the surroundings drift to, °C.
    pub surroundings_c: f64,
    /// Per part of the assembly, what hands do to it.
    pub hands: Vec<Hand>,
}

/// Something that happened inside the circuit, at a step's end.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Event {
    /// The pump of this part began to run audibly.
    PumpStarted(u16),
    /// The pump of this part stopped.
    PumpStopped(u16),
    /// A vacuum switch opened.
    SwitchOpened(u16),
    /// A vacuum switch closed.
    SwitchClosed(u16),
    /// A relay pulled in.
    RelayPulled(u16),
    /// A relay dropped out.
    RelayDropped(u16),
    /// A fuse (also of a meter or a push-button lead) melted.
    FuseMelted(u16),
}

/// A compiled circuit with its state.
#[derive(Clone, Debug)]
pub struct Circuit {
    assembly: Assembly,
    day: Day,
    inputs: Inputs,
    tick: Tick,
    events: Vec<(Tick, Event)>,
}

#[expect(clippy::todo, reason = "skeleton, bodies follow")]
impl Circuit {
    /// Compiles `assembly` with all air at the day's pressure and all parts at ambient temperature.
    #[must_use]
    pub fn new(assembly: Assembly, day: Day) -> Self {
        let hands = vec![Hand::default(); assembly.parts.len()];
        Self {
            assembly,
            day,
            inputs: Inputs {
                engine: EngineState::Stopped,
                key_on: false,
                pedal_n: 0.0,
                surroundings_c: day.ambient_c,
                hands,
            },
            tick: Tick(0),
            events: Vec::new(),
        }
    }

    /// The assembly as it stands.
    #[must_use]
    pub fn assembly(&self) -> &Assembly {
        &self.assembly
    }

    /// Changes joints, stops or numbers and compiles again; every part keeps its air, heat and charge.
    /// Parts must be the same in number and kind.
    pub fn change(&mut self, change: impl FnOnce(&mut Assembly)) {
        change(&mut self.assembly);
    }

    /// Sets a part's own state (air, temperatures, melted fuse) back to ambient: another one was put in.
    pub fn renew_part(&mut self, _part: u16) {
        todo!()
    }

    /// The lasting states.
    #[must_use]
    pub fn inputs(&self) -> &Inputs {
        &self.inputs
    }

    /// The lasting states, to change between steps.
    pub fn inputs_mut(&mut self) -> &mut Inputs {
        &mut self.inputs
    }

    /// The day outside.
    #[must_use]
    pub fn day(&self) -> &Day {
        &self.day
    }

    /// The present tick.
    #[must_use]
    pub fn tick(&self) -> Tick {
        self.tick
    }

    /// Steps until `to` is reached.
    pub fn run_to(&mut self, _to: Tick, _pace: Pace) {
        todo!()
    }

    /// One step (at least one tick of time passes), never beyond `limit` when timed.
    pub fn step(&mut self, _limit: Tick, _pace: Pace) {
        todo!()
    }

    /// Everything that switched since the circuit was made, in order.
    #[must_use]
    pub fn events(&self) -> &[(Tick, Event)] {
        &self.events
    }

    /// FNV-1a over the bits of the whole state, in declared order.
    #[must_use]
    pub fn digest(&self) -> u64 {
        todo!()
    }

    /// Absolute pressure in the volume behind a pneumatic port (the front chamber for a booster).
    #[must_use]
    pub fn pressure(&self, _port: PortRef) -> AbsPressure {
        todo!()
    }

    /// Mass flow out of the part through a pneumatic port, kg/s.
    #[must_use]
    pub fn m_flow_out(&self, _port: PortRef) -> f64 {
        todo!()
    }

    /// Air that enters or leaves the open through a part: open ports, holes, gaps, seeps, valve noise
    /// of an applied booster, in kg/s (sum of magnitudes). What a listening tube hears.
    #[must_use]
    pub fn hiss(&self, _part: u16) -> f64 {
        todo!()
    }

    /// Voltage of an electrical port against the body, V.
    #[must_use]
    pub fn voltage(&self, _port: PortRef) -> f64 {
        todo!()
    }

    /// Current into the part through an electrical port, A.
    #[must_use]
    pub fn current(&self, _port: PortRef) -> f64 {
        todo!()
    }

    /// Surface temperature of a part, °C (ambient for parts without heat nodes).
    #[must_use]
    pub fn surface_c(&self, _part: u16) -> f64 {
        todo!()
    }

    /// Whether a pump runs audibly.
    #[must_use]
    pub fn hums(&self, _part: u16) -> bool {
        todo!()
    }

    /// Travel of the brake pedal from rest, mm.
    #[must_use]
    pub fn pedal_travel_mm(&self) -> f64 {
        todo!()
    }

    /// Pointer of a gauge or hand pump, kPa gauge, without the instrument's error.
    #[must_use]
    pub fn pointer_kpa(&self, _part: u16) -> f64 {
        todo!()
    }

    /// Filament temperature of a lamp, K.
    #[must_use]
    pub fn filament_k(&self, _part: u16) -> f64 {
        todo!()
    }

    /// What a multimeter feels at its terminals in its present mode (V, Ω or A), without its error;
    /// `None` when off, its fuse melted or the resistance infinite.
    #[must_use]
    pub fn meter(&self, _part: u16) -> Option<f64> {
        todo!()
    }

    /// Temperature of the surroundings now, °C.
    #[must_use]
    pub fn surroundings_c(&self) -> f64 {
        todo!()
    }

    /// Pressure of the day.
    #[must_use]
    pub fn ambient(&self) -> AbsPressure {
        self.day.pressure()
    }
}
