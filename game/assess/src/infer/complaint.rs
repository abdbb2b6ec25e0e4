//! Would this car have raised this complaint? The complaint is an observation like any other: simulated.
//!
//! Each symptom is acted out with the car as it came in: key, engine and pedal as the customer would have
//! used them, and what he would have heard or felt. A customer is not an instrument, so the likelihood is
//! mixed with a share of words that mean nothing ([`MISHEARD`]): such a complaint is a toss of a coin.
//!
//! Not modelled: customers who notice only part of what happens, or at another time of the year.

use sim_core::assembly::Assembly;
use sim_core::circuit::Circuit;
use sim_core::parts::PartKind;
use sim_core::parts::engine::EngineState;
use sim_core::units::{TICKS_PER_SECOND, Tick};
use sim_core::workshop::exchange::{Beside, Seat, at_once};

use crate::infer::numeric::ln;
use crate::pack::job::{Job, Symptom};

/// Share of complaints that say nothing about the car (own choice, no source).
pub const MISHEARD: f64 = 0.1;

/// Longest wait for the pump to fill the store before its rest is timed, s.
const FILL_S: f64 = 120.0;

/// Force of an ordinary press, N.
const PRESS_N: f64 = 150.0;

/// Natural log of the likelihood of the complaint, given whether the car shows the symptom; `None` when
/// nothing is known (*other*).
#[must_use]
pub fn log_likelihood(shows: Option<bool>) -> f64 {
    let p = match shows {
        Some(true) => 1.0,
        Some(false) => 0.0,
        None => 0.5,
    };
    ln((1.0 - MISHEARD) * p + MISHEARD * 0.5)
}

/// Whether a car that has just come in shows the job's symptom.
#[must_use]
pub fn shows(job: &Job, came_in: &Circuit) -> bool {
    at_once(shows_beside(job, came_in.clone(), None))
}

/// The same beside other cars.
pub(crate) async fn shows_beside(job: &Job, came_in: Circuit, beside: Beside<'_>) -> bool {
    let mut road = Road { circuit: Seat::of(came_in), beside };
    match job.symptom {
        Symptom::ShortRest { below_s } => {
            road.stand_with_key_on().await;
            road.empty_the_store().await;
            // A pump that does not stop at all does not rest, short or long.
            road.until(FILL_S, |road| !road.hums()).await && road.until(below_s, Road::hums).await
        }
        Symptom::HumsKeyOff => {
            if road.hums() {
                return true;
            }
            road.stand_with_key_on().await;
            road.empty_the_store().await;
            road.until(5.0, Road::hums).await;
            road.circuit.inputs_mut().key_on = false;
            road.wait(3.0).await;
            road.hums()
        }
        Symptom::HardPedalAfterNight { above_kpa_gauge } => {
            // Driven home, put away, and pressed first thing in the morning.
            road.circuit.inputs_mut().key_on = true;
            road.circuit.inputs_mut().engine = EngineState::WarmIdle;
            road.wait(20.0).await;
            road.circuit.inputs_mut().engine = EngineState::Stopped;
            road.circuit.inputs_mut().key_on = false;
            road.circuit.inputs_mut().surroundings_c = job.day.ambient_c - job.day.night_drop_k;
            road.wait(12.0 * 3600.0).await;
            above_kpa_gauge < road.store_kpa()
        }
        Symptom::LongRun { above_s } => {
            road.stand_with_key_on().await;
            road.empty_the_store().await;
            // A pump that does not start does not run long.
            road.until(5.0, Road::hums).await && !road.until(above_s, |road| !road.hums()).await
        }
    }
}

/// The car with somebody in it.
struct Road<'a> {
    circuit: Seat,
    beside: Beside<'a>,
}

impl Road<'_> {
    /// At the lights: ignition on, engine standing.
    async fn stand_with_key_on(&mut self) {
        self.circuit.inputs_mut().engine = EngineState::Stopped;
        self.circuit.inputs_mut().key_on = true;
        self.wait(1.0).await;
    }

    /// Presses and lets go until little vacuum is left.
    async fn empty_the_store(&mut self) {
        for _ in 0..4 {
            self.circuit.inputs_mut().pedal_n = PRESS_N;
            self.wait(0.7).await;
            self.circuit.inputs_mut().pedal_n = 0.0;
            self.wait(0.7).await;
        }
    }

    async fn wait(&mut self, s: f64) {
        let to = self.circuit.tick().plus((s * TICKS_PER_SECOND as f64) as u64);
        self.circuit.run_timed(to, self.beside).await;
    }

    /// Waits until `happens`, at most `max_s`; whether it did.
    async fn until(&mut self, max_s: f64, happens: impl Fn(&Self) -> bool) -> bool {
        let to: Tick = self.circuit.tick().plus((max_s * TICKS_PER_SECOND as f64) as u64);
        while !happens(self) {
            if to <= self.circuit.tick() {
                return false;
            }
            self.circuit.step_timed(to, self.beside).await;
        }
        true
    }

    fn hums(&self) -> bool {
        let parts = &self.circuit.assembly().parts;
        (0..parts.len() as u16)
            .any(|i| matches!(parts[usize::from(i)].kind, PartKind::VacuumPump(_)) && self.circuit.hums(i))
    }

    /// Pressure at the booster, kPa gauge; 0 in a car without one.
    fn store_kpa(&self) -> f64 {
        let port = self.circuit.assembly().port(&store_port(self.circuit.assembly()));
        port.map_or(0.0, |port| self.circuit.pressure(port).gauge(self.circuit.ambient()).kpa())
    }
}

/// Name of the port that stands for the store: the booster's; empty in a car without one.
#[must_use]
pub fn store_port(assembly: &Assembly) -> String {
    let booster = assembly.parts.iter().find(|part| matches!(part.kind, PartKind::Booster(_)));
    booster.map_or_else(String::new, |part| format!("{}.vacuum", part.id))
}
