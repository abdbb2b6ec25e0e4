//! A short trial of a car: what its numbers make of the model is not seen from their ranges one by one. A pump that draws
//! the last gramme out of a thimble, a piston whose stroke is longer than its chamber: each number is possible, the car
//! is not. A hundredth of a second of computing shows it before somebody works at it.

use sim_core::air::Day;
use sim_core::assembly::Assembly;
use sim_core::circuit::{Circuit, Pace};
use sim_core::parts::engine::EngineState::{self, ColdIdle, Overrun, Stopped, WideOpen};
use sim_core::units::TICKS_PER_SECOND;

use super::error::{BadCar, PackError};
use crate::locale::sentence::Value;

/// Engine, key, force on the pedal in N, and for how long in s: cold start, the hardest press a foot may do, overrun,
/// presses with the engine standing, the pump alone.
const COURSE: [(EngineState, bool, f64, u64); 9] = [
    (Stopped, true, 0.0, 3),
    (ColdIdle, true, 0.0, 20),
    (ColdIdle, true, 700.0, 3),
    (Overrun, true, 0.0, 8),
    (WideOpen, true, 700.0, 3),
    (Stopped, true, 0.0, 5),
    (Stopped, true, 700.0, 3),
    (Stopped, true, 0.0, 30),
    (Stopped, false, 0.0, 3600),
];

/// What went wrong with a car on the trial, if anything; `file` and `path` say where its numbers stand.
pub(crate) fn of(assembly: &Assembly, day: Day, file: &str, path: impl Into<Value>) -> Option<PackError> {
    let mut circuit = Circuit::new(assembly.clone(), day);
    for (engine, key_on, pedal_n, s) in COURSE {
        let inputs = circuit.inputs_mut();
        (inputs.engine, inputs.key_on, inputs.pedal_n) = (engine, key_on, pedal_n);
        let to = circuit.tick().plus(s * TICKS_PER_SECOND);
        circuit.run_to(to, Pace::Timed);
        if let Some(fault) = circuit.fault() {
            let part = fault.part.and_then(|part| assembly.parts.get(usize::from(part)));
            let part = part.map(|part| part.id.clone());
            let what = BadCar::NotComputed { path: path.into(), at_s: fault.tick.s(), part };
            return Some(PackError::new(file, what));
        }
    }
    None
}
