//! `pinhole bench`: the model's speed and size on this machine.
//!
//! Processor time, not time by the clock, wherever one thread works: another program at work then spoils
//! little. On all threads the clock counts, because that is what somebody waits for. Every case stands beside
//! another way to do the same in the same run, so that numbers of two machines can be compared by their ratios.
//! The cases are those of [`assess::speed`].

mod rows;
mod stopwatch;

use std::hint::black_box;
use std::io::Write;

use anyhow::Context as _;
use assess::pack::Library;
use assess::speed::marking::Marking;
use assess::speed::{Cases, Steps, Stretch, many_drives, run_abreast};
use rayon::prelude::*;
use sim_core::circuit::Circuit;

use crate::cli::BenchArgs;
use front::output::{Kind, Outputs};
use front::places::Places;
use rows::{Beside, Row, Rows};
use stopwatch::{Clock, Measured, measure};

/// Cars in a row.
const CARS: usize = 64;
/// Runs under hypotheses in a sample.
const RUNS: usize = 192;
/// Circuits that are laid side by side to see how large one is.
const LAID_OUT: usize = 2_000;
/// Steps of one tick are equally long, so a minute of them stands for any stretch.
const ONE_TICK_S: u64 = 60;

const PROCESSOR: &str = "simulated s per processor s";
const BY_THE_CLOCK: &str = "simulated s per s by the clock";

/// Measures and prints.
///
/// # Errors
/// When the data files do not hold what is measured, this system tells no memory or processor time, or a
/// file cannot be written.
pub(crate) fn run(out: &mut dyn Write, places: &Places, args: &BenchArgs) -> anyhow::Result<()> {
    let mut outputs = Outputs::default();
    let csv = args.csv.as_ref().map(|path| outputs.plan("--csv", path, Kind::SpeedTable)).transpose()?;
    let library = Library::open(&front::places::data(places)?)?;
    let threads = rayon::current_num_threads();
    let cases = Cases::of(&library)?;
    writeln!(out, "{}; {}.", cases.car, cases.connected.join("; "))?;
    writeln!(out, "{threads} threads; best and median of {}.", args.samples)?;
    if cfg!(debug_assertions) {
        writeln!(out, "This is not a release build: its numbers say little.")?;
    }
    out.flush()?;
    let mut rows = Rows::default();
    // Before anything else has stirred the memory.
    rows.push(memory(cases.driving.start())?);
    for (name, stretch) in
        [("driving", &cases.driving), ("pull-down", &cases.pull_down), ("overnight hold", &cases.hold)]
    {
        stretch_rows(&mut rows, name, stretch, args.samples);
    }
    in_a_row(&mut rows, &many_drives(&library, CARS)?, args.samples);
    let marking = Marking::of(&library)?;
    marking_rows(&mut rows, &marking, args.samples);
    rows.print(out)?;
    writeln!(
        out,
        "\nA hypothesis run is an attempt of {:.1} minutes of work in the car of one of {} hypotheses and draws.",
        marking.attended_min,
        marking.worlds()
    )?;
    if let Some(output) = csv {
        output.write(&rows.csv()?)?;
    }
    Ok(())
}

/// A stretch as it is used, by a hundredth of the error, and in steps of one tick.
fn stretch_rows(rows: &mut Rows, name: &'static str, stretch: &Stretch, samples: usize) {
    let minute = stretch.shortened(ONE_TICK_S);
    let rate = |stretch: &Stretch, steps| {
        let measured = measure(Clock::Thread, samples, || {
            black_box(stretch.run(steps));
        });
        measured.rate_of(stretch.seconds())
    };
    let (chosen, fine) = (rate(stretch, Steps::Chosen), rate(stretch, Steps::Fine));
    let one_tick = rate(&minute, Steps::OneTick);
    let beside = Beside::of("steps of one tick", chosen, one_tick);
    rows.push(Row::new(name, "steps as in use", PROCESSOR, chosen, samples).beside(beside));
    rows.push(Row::new(name, "steps of one tick", PROCESSOR, one_tick, samples));
    let beside = Beside::of("steps as in use", fine, chosen);
    rows.push(Row::new(name, "a hundredth of the error", PROCESSOR, fine, samples).beside(beside));
}

/// Many different cars, each driven in turn.
fn in_a_row(rows: &mut Rows, drives: &[Stretch], samples: usize) {
    let seconds: f64 = drives.iter().map(Stretch::seconds).sum();
    let one = |clock| {
        let all = || {
            for drive in drives {
                black_box(drive.run(Steps::Chosen));
            }
        };
        measure(clock, samples, all).rate_of(seconds)
    };
    let together = measure(Clock::Wall, samples, || {
        drives.par_iter().with_max_len(1).for_each(|drive| {
            black_box(drive.run(Steps::Chosen));
        });
    })
    .rate_of(seconds);
    let abreast = measure(Clock::Thread, samples, || {
        black_box(run_abreast(drives, None));
    })
    .rate_of(seconds);
    let name = "64 cars driving";
    let by_processor = one(Clock::Thread);
    rows.push(Row::new(name, "one after the other", PROCESSOR, by_processor, samples));
    let beside = Beside::of("one after the other", abreast, by_processor);
    rows.push(Row::new(name, "side by side in lanes", PROCESSOR, abreast, samples).beside(beside));
    let by_clock = one(Clock::Wall);
    rows.push(Row::new(name, "one after the other", BY_THE_CLOCK, by_clock, samples));
    let beside = Beside::of("one after the other", together, by_clock);
    rows.push(Row::new(name, "on all threads", BY_THE_CLOCK, together, samples).beside(beside));
}

fn marking_rows(rows: &mut Rows, marking: &Marking, samples: usize) {
    let one = measure(Clock::Thread, samples, || {
        black_box(marking.run_one_by_one(RUNS));
    })
    .rate_of(RUNS as f64);
    let beside = |clock| {
        let all = || {
            black_box(marking.run_side_by_side(RUNS));
        };
        measure(clock, samples, all).rate_of(RUNS as f64)
    };
    let together = measure(Clock::Wall, samples, || {
        black_box(marking.run_on_all_threads(RUNS));
    })
    .rate_of(RUNS as f64);
    let name = "hypothesis runs";
    rows.push(Row::new(name, "one after the other", "runs per processor s", one, samples));
    let lanes = beside(Clock::Thread);
    let ratio = Beside::of("one after the other", lanes, one);
    rows.push(Row::new(name, "side by side", "runs per processor s", lanes, samples).beside(ratio));
    let by_clock = beside(Clock::Wall);
    rows.push(Row::new(name, "side by side on one thread", "runs per s by the clock", by_clock, samples));
    let ratio = Beside::of("side by side on one thread", together, by_clock);
    rows.push(
        Row::new(name, "side by side on all threads", "runs per s by the clock", together, samples)
            .beside(ratio),
    );
}

/// What a circuit takes with all its buffers: resident memory of this process before and after many copies.
/// The first half fills what was free already; only the second half counts.
fn memory(circuit: &Circuit) -> anyhow::Result<Row> {
    let resident = || {
        let stats =
            memory_stats::memory_stats().context("this system does not tell how much memory is in use")?;
        Ok::<f64, anyhow::Error>(stats.physical_mem as f64)
    };
    let mut copies = Vec::with_capacity(2 * LAID_OUT);
    copies.extend(std::iter::repeat_n(circuit, LAID_OUT).cloned());
    let before = resident()?;
    copies.extend(std::iter::repeat_n(circuit, LAID_OUT).cloned());
    let after = resident()?;
    drop(black_box(copies));
    let bytes = (after - before) / LAID_OUT as f64;
    let state = size_of_val(circuit.state()) as f64;
    let beside = Beside { what: "its state variables alone", ratio: bytes / state };
    Ok(Row::new("memory", "a circuit with its buffers", "bytes", Measured::once(bytes), LAID_OUT)
        .beside(beside))
}
