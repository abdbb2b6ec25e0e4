//! `pinhole trace --circuit`: the compiled circuit, what it was told at which tick, and the states it went
//! through, in one JSON file, so that another program can solve the same equations (`tests/peers`).
//!
//! The stretch begins at the last change of the circuit's structure and is run again from there without
//! the table's rows, which shorten steps. The same run is timed, best of twenty.

use std::io::{self, Write};

use assess::locale::quote;
use cpu_time::ThreadTime;
use serde::Serialize;
use sim_core::circuit::export::{Numbers, Told};
use sim_core::circuit::{Circuit, Pace};
use sim_core::units::Tick;
use sim_core::workshop::Watch;

use crate::tongue::say;
use front::output::Output;
use front::words::Words;

/// Runs of the stretch that are timed; the fastest counts.
const TIMED_RUNS: usize = 20;

#[derive(Serialize)]
struct Exported {
    /// The equations' numbers.
    circuit: Numbers,
    /// What held from which tick on: told from outside or switched inside.
    told: Vec<Told>,
    /// States at the ends of our own steps, the first at the beginning; order as `circuit.vars`.
    states: Vec<(u64, Vec<f64>)>,
    /// Steps taken.
    steps: u64,
    /// Shortest processor time for the whole stretch, s.
    best_s: f64,
}

/// Writes the stretch of `watch` until `end`.
pub(crate) fn write(
    out: &mut dyn Write,
    words: &Words,
    output: Output,
    watch: &Watch,
    end: Tick,
) -> anyhow::Result<()> {
    let mut states = vec![(watch.start.tick().0, watch.start.state().to_vec())];
    let mut told: Vec<Told> = Vec::new();
    let done = again(watch, end, |circuit, ended| {
        if ended {
            states.push((circuit.tick().0, circuit.state().to_vec()));
            return;
        }
        let held = circuit.told();
        if told.last().is_none_or(|last| held != Told { tick: held.tick, ..last.clone() }) {
            told.push(held);
        }
    });
    let mut best_s = f64::INFINITY;
    for _ in 0..TIMED_RUNS {
        let mut circuit = watch.start.clone();
        let began = ThreadTime::now();
        run(&mut circuit, watch, end);
        best_s = best_s.min(began.elapsed().as_secs_f64());
    }
    let exported = Exported {
        circuit: watch.start.numbers(),
        told,
        states,
        steps: done.steps() - watch.start.steps(),
        best_s,
    };
    let path = output.path().to_owned();
    let mut file = output.begin()?;
    let written = serde_json::to_writer(&mut file, &exported).map_err(io::Error::from);
    file.end(written)?;
    let done = say!(
        words,
        "trace-circuit",
        file = quote::path(&path).to_string(),
        variables = exported.circuit.vars.len(),
        steps = exported.steps,
        changes = exported.told.len()
    );
    writeln!(out, "{done}")?;
    Ok(())
}

/// Runs the stretch and shows the circuit before each step (`false`) and after it (`true`).
fn again(watch: &Watch, end: Tick, mut show: impl FnMut(&Circuit, bool)) -> Circuit {
    let mut circuit = watch.start.clone();
    for (i, (_, inputs)) in watch.told.iter().enumerate() {
        let until = watch.told.get(i + 1).map_or(end, |(tick, _)| *tick);
        circuit.inputs_mut().clone_from(inputs);
        while circuit.tick() < until {
            show(&circuit, false);
            circuit.step(until, Pace::Timed);
            show(&circuit, true);
        }
    }
    circuit
}

fn run(circuit: &mut Circuit, watch: &Watch, end: Tick) {
    for (i, (_, inputs)) in watch.told.iter().enumerate() {
        let until = watch.told.get(i + 1).map_or(end, |(tick, _)| *tick);
        circuit.inputs_mut().clone_from(inputs);
        circuit.run_to(until, Pace::Timed);
    }
}
