//! The cars as their files say: sound cars stay inside the data sheet, faults leave it, complaints come true.
//!
//! The file states limits, serviceable ranges and severities; the circuit computes what a gauge would
//! show. Here the two are held against each other.

mod birch;
mod complaints;
mod faults;
mod sound;

use std::path::Path;
use std::sync::Arc;

use assess::pack::Library;
use dice::Dice;
use sim_core::air::Day;
use sim_core::assembly::PortRef;
use sim_core::car::Car;
use sim_core::circuit::{Circuit, Pace};
use sim_core::parts::engine::EngineState;
use sim_core::world::World;

/// Everything under the project's root.
fn library() -> Library {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    Library::open(&root).unwrap_or_else(|e| panic!("{e}"))
}

fn car(id: &str) -> Arc<Car> {
    library().car(id).unwrap_or_else(|e| panic!("{e}"))
}

/// The cars with an electric pump beside the engine's vacuum: one circuit of air, two ways to command it.
fn with_electric_pump() -> [Arc<Car>; 2] {
    [car("alder"), car("cedar")]
}

/// A car on the bench of these tests.
struct Bench {
    car: Arc<Car>,
    circuit: Circuit,
}

impl Bench {
    /// A new car with some numbers changed.
    fn new(car: &Arc<Car>, day: Day, changed: &[(String, f64)]) -> Self {
        let mut assembly = car.assembly.clone();
        for (name, value) in changed {
            assert!(assembly.set_param(name, *value), "{name}");
        }
        Self { car: Arc::clone(car), circuit: Circuit::new(assembly, day) }
    }

    /// A car drawn inside serviceable; every seed another one.
    fn drawn(car: &Arc<Car>, day: Day, seed: u64, faults: &[(u16, f64)]) -> Self {
        let mut dice = Dice::of(seed);
        let world = World::draw(car, &[], faults, &mut || dice.unit());
        Self::new(car, day, &world.params)
    }

    fn run(&mut self, s: f64) {
        let to = self.circuit.tick().plus((s * 100.0) as u64);
        self.circuit.run_to(to, Pace::Timed);
    }

    /// The port `part.port`.
    fn port(&self, name: &str) -> PortRef {
        self.circuit.assembly().port(name).unwrap_or_else(|| panic!("no port {name}"))
    }

    /// Gauge pressure at a port, kPa.
    fn gauge(&self, port: &str) -> f64 {
        let port = self.port(port);
        self.circuit.pressure(port).gauge(self.circuit.ambient()).kpa()
    }

    fn store(&self) -> f64 {
        self.gauge("tee.1")
    }

    fn volts(&self, plus: &str, minus: &str) -> f64 {
        let v = |port| self.circuit.voltage(self.port(port));
        v(plus) - v(minus)
    }

    fn pump_a(&self) -> f64 {
        self.circuit.current(self.port("pump.plus"))
    }

    fn hums(&self) -> bool {
        self.circuit.hums(self.port("pump.plus").part)
    }

    /// Seconds until the pump runs (or not), looked at every `every` s; `None` after `max` s.
    fn until(&mut self, hums: bool, every: f64, max: f64) -> Option<f64> {
        let start = self.circuit.tick().s();
        while self.circuit.tick().s() - start < max {
            if self.hums() == hums {
                return Some(self.circuit.tick().s() - start);
            }
            self.run(every);
        }
        None
    }

    fn key(&mut self, on: bool) {
        self.circuit.inputs_mut().key_on = on;
    }

    fn engine(&mut self, state: EngineState) {
        self.circuit.inputs_mut().engine = state;
    }

    /// Fills the store from the engine, then stands it with key and engine off for a minute.
    fn filled_and_settled(&mut self) {
        self.engine(EngineState::WarmIdle);
        self.run(60.0);
        self.engine(EngineState::Stopped);
        self.run(60.0);
    }

    /// Key on, engine off: time of the pump's run from an empty store.
    fn first_run(&mut self) -> Option<f64> {
        self.key(true);
        self.run(0.3);
        self.until(false, 0.05, 120.0).map(|s| s + 0.3)
    }

    /// Whether `value` keeps the line `limit` of the data sheet on this day.
    fn keeps(&self, limit: &str, value: f64) -> bool {
        let line = self.car.limits.iter().find(|l| l.id == limit).unwrap_or_else(|| panic!("no {limit}"));
        let (min, max) = line.bounds(self.circuit.ambient());
        min.is_none_or(|m| m <= value) && max.is_none_or(|m| value <= m)
    }
}

/// The lines of the data sheet of which a fault must leave one: that of `table`; any of its lines for a fault that is not in
/// it, so that a new fault needs no code.
fn left_by(table: &[(&str, &'static str)], fault: &str) -> Vec<&'static str> {
    if let Some((_, line)) = table.iter().find(|(id, _)| *id == fault) {
        return vec![line];
    }
    let mut all: Vec<&str> = table.iter().map(|(_, line)| *line).collect();
    all.sort_unstable();
    all.dedup();
    all
}
