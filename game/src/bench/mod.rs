//! `pinhole bench`: the model's speed and size on this machine.
//!
//! Processor time, not time by the clock, wherever one thread works: another program at work then spoils
//! little. On all threads the clock counts, because that is what somebody waits for. Every case stands beside
//! another way to do the same in the same run, so that numbers of two machines can be compared by their ratios.
//! The cases are those of [`assess::speed`].

mod names;
mod rows;
mod stopwatch;

use std::hint::black_box;
use std::io::Write;

use assess::pack::Library;
use assess::sentence;
use assess::speed::marking::Marking;
use assess::speed::{Cases, Steps, Stretch, many_drives, run_abreast};
use rayon::prelude::*;
use sim_core::circuit::Circuit;
use sim_core::circuit::ensemble::Registers;

use crate::cli::BenchArgs;
use crate::tongue::{decimal, say};
use front::output::{Kind, Outputs};
use front::places::Places;
use front::words::Words;
use names::{Case, How, Quantity};
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

/// Measures and prints.
///
/// # Errors
/// When the data files do not hold what is measured, this system tells no memory or processor time, or a
/// file cannot be written.
pub(crate) fn run(
    out: &mut dyn Write,
    words: &Words,
    places: &Places,
    args: &BenchArgs,
) -> anyhow::Result<()> {
    let mut outputs = Outputs::default();
    let csv = args.csv.as_ref().map(|path| outputs.plan("--csv", path, Kind::SpeedTable)).transpose()?;
    let library = Library::open(&front::places::data(places)?)?;
    let threads = rayon::current_num_threads();
    let cases = Cases::of(&library)?;
    writeln!(out, "{}; {}.", words.car(&cases.car_id, &cases.car), cases.connected.join("; "))?;
    writeln!(out, "{}", say!(words, "speed-threads", threads = threads, samples = args.samples))?;
    if cfg!(debug_assertions) {
        writeln!(out, "{}", words.say("speed-no-release"))?;
    }
    out.flush()?;
    let mut rows = Rows::default();
    // Before anything else has stirred the memory.
    rows.push(memory(cases.driving.start())?);
    for (case, stretch) in
        [(Case::Driving, &cases.driving), (Case::PullDown, &cases.pull_down), (Case::Hold, &cases.hold)]
    {
        stretch_rows(&mut rows, case, stretch, args.samples);
    }
    in_a_row(&mut rows, &many_drives(&library, CARS)?, args.samples);
    let marking = Marking::of(&library)?;
    marking_rows(&mut rows, &marking, args.samples);
    rows.print(out, words)?;
    let minutes = decimal(words, format!("{:.1}", marking.attended_min));
    let run = say!(words, "speed-a-run", minutes = minutes, worlds = marking.worlds());
    writeln!(out, "\n{run}")?;
    if let Some(output) = csv {
        output.write(&rows.csv()?)?;
    }
    Ok(())
}

/// A stretch as it is used, by a hundredth of the error, and in steps of one tick.
fn stretch_rows(rows: &mut Rows, case: Case, stretch: &Stretch, samples: usize) {
    let minute = stretch.shortened(ONE_TICK_S);
    let rate = |stretch: &Stretch, steps| {
        let measured = measure(Clock::Thread, samples, || {
            black_box(stretch.run(steps));
        });
        measured.rate_of(stretch.seconds())
    };
    let (chosen, fine) = (rate(stretch, Steps::Chosen), rate(stretch, Steps::Fine));
    let one_tick = rate(&minute, Steps::OneTick);
    let row = |how, rate| Row::new(case, how, Quantity::ByProcessor, rate, samples);
    rows.push(row(How::AsInUse, chosen).beside(Beside::of(How::OneTick, chosen, one_tick)));
    rows.push(row(How::OneTick, one_tick));
    rows.push(row(How::Fine, fine).beside(Beside::of(How::AsInUse, fine, chosen)));
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
    let lanes = |registers| {
        let all = || {
            black_box(run_abreast(drives, None, registers));
        };
        measure(Clock::Thread, samples, all).rate_of(seconds)
    };
    let [abreast, plain] = [Registers::Widest, Registers::Plain].map(lanes);
    let row = |how, of, rate| Row::new(Case::ManyCars, how, of, rate, samples);
    let (by_processor, by_clock) = (one(Clock::Thread), one(Clock::Wall));
    rows.push(row(How::OneByOne, Quantity::ByProcessor, by_processor));
    let beside = Beside::of(How::OneByOne, abreast, by_processor);
    rows.push(row(How::InLanes, Quantity::ByProcessor, abreast).beside(beside));
    let beside = Beside::of(How::OneByOne, plain, by_processor);
    rows.push(row(How::InPlainLanes, Quantity::ByProcessor, plain).beside(beside));
    rows.push(row(How::OneByOne, Quantity::ByTheClock, by_clock));
    let beside = Beside::of(How::OneByOne, together, by_clock);
    rows.push(row(How::OnAllThreads, Quantity::ByTheClock, together).beside(beside));
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
    let row = |how, of, rate| Row::new(Case::Hypotheses, how, of, rate, samples);
    rows.push(row(How::OneByOne, Quantity::RunsByProcessor, one));
    let lanes = beside(Clock::Thread);
    let ratio = Beside::of(How::OneByOne, lanes, one);
    rows.push(row(How::SideBySide, Quantity::RunsByProcessor, lanes).beside(ratio));
    let by_clock = beside(Clock::Wall);
    rows.push(row(How::SideBySideOnOneThread, Quantity::RunsByTheClock, by_clock));
    let ratio = Beside::of(How::SideBySideOnOneThread, together, by_clock);
    rows.push(row(How::SideBySideOnAllThreads, Quantity::RunsByTheClock, together).beside(ratio));
}

/// What a circuit takes with all its buffers: resident memory of this process before and after many copies.
/// The first half fills what was free already; only the second half counts.
fn memory(circuit: &Circuit) -> anyhow::Result<Row> {
    let resident = || {
        let stats = memory_stats::memory_stats().ok_or_else(|| {
            sentence!("speed-no-memory", "this system does not tell how much memory is in use")
        })?;
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
    let beside = Beside { what: How::StateAlone, ratio: bytes / state };
    let measured = Measured::once(bytes);
    Ok(Row::new(Case::Memory, How::WithBuffers, Quantity::Bytes, measured, LAID_OUT).beside(beside))
}
