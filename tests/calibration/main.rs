//! Are the marker's probabilities what they say? Faults, severities, tolerances and instrument errors are drawn from the
//! marker's own prior, technicians of several kinds work, the marker marks, and what it stated is held against what was
//! true (check values 15.7, 15.8).
//!
//! `calibrate play` works on a file with one line of JSON an attempt, and goes on where it stopped; an attempt is named by
//! its number alone, so parts of a run can be made anywhere and put together. `calibrate table` prints the table.

mod attempt;
mod careful;
mod dump;
mod first;
mod separation;
mod table;
mod technician;
mod transform;
mod within;

use std::collections::BTreeSet;
use std::fs::OpenOptions;
use std::io::Write as _;
use std::path::{Path, PathBuf};

use anyhow::Context as _;
use assess::pack::Library;
use clap::{Parser, Subcommand};

use attempt::Played;
use within::By;

/// Holds the marker's stated probabilities against what was true.
#[derive(Debug, Parser)]
#[command(name = "calibrate")]
struct Cli {
    #[command(subcommand)]
    command: Command,
}

#[derive(Debug, Subcommand)]
enum Command {
    /// Plays and marks attempts, one line each; those that are in the file already are not played again.
    Play {
        /// File with a line an attempt.
        #[arg(long)]
        file: PathBuf,
        /// Numbers of the attempts: first, and one past the last.
        #[arg(long, num_args = 2, default_values_t = [0, 600])]
        numbers: Vec<u64>,
    },
    /// Writes tables of predicted readings of drawn attempts, a line each.
    Dump {
        /// File with a line an attempt.
        #[arg(long)]
        file: PathBuf,
        /// Numbers of the attempts: first, and one past the last.
        #[arg(long, num_args = 2)]
        numbers: Vec<u64>,
        /// Sound cars, cars of each fault, cars from the prior.
        #[arg(long, num_args = 3, default_values_t = [64, 16, 24])]
        cars: Vec<usize>,
    },
    /// Holds out cars of tables that were written before as truths, and prints what was believed of them.
    Within {
        /// Files with a table an attempt.
        files: Vec<PathBuf>,
        /// How often instruments and scatter are drawn for each truth.
        #[arg(long, default_value_t = 1)]
        times: u64,
        /// File for a line a truth.
        #[arg(long)]
        file: Option<PathBuf>,
        /// The attempts themselves, with what was noted; not invented truths.
        #[arg(long)]
        as_played: bool,
        /// By the first marker, not by today's.
        #[arg(long)]
        first: bool,
    },
    /// Prints which faults of a car no single one of its tests tells apart.
    Separate {
        /// The car.
        car: String,
        /// Cars that are drawn of each fault at each severity.
        #[arg(long, default_value_t = 5)]
        draws: usize,
        /// What they are drawn from.
        #[arg(long, default_value_t = 1)]
        seed: u64,
    },
    /// Careful attempts at the jobs as they are shipped, or at small leaks: is what is wrong found, or left open?
    Careful {
        /// Cars of each.
        #[arg(long, default_value_t = 20)]
        cars: u64,
        /// What they are drawn from.
        #[arg(long, default_value_t = 1)]
        seed: u64,
        /// Small leaks instead of the jobs.
        #[arg(long)]
        leaks: bool,
    },
    /// Prints the table of what was played.
    Table {
        /// Files with a line an attempt.
        files: Vec<PathBuf>,
    },
}

fn main() -> anyhow::Result<()> {
    match Cli::parse().command {
        Command::Separate { car, draws, seed } => {
            let library = Library::open(&PathBuf::from(concat!(env!("CARGO_MANIFEST_DIR"), "/..")))?;
            println!("seed {seed}, {draws} cars each");
            print!("{}", separation::of(&library, &car, draws, seed)?);
            Ok(())
        }
        Command::Careful { cars, seed, leaks } => {
            let library = Library::open(&PathBuf::from(concat!(env!("CARGO_MANIFEST_DIR"), "/..")))?;
            println!("seed {seed}, {cars} cars each");
            let of = if leaks { careful::leaks } else { careful::jobs };
            of(&library, seed, cars, &mut |line| println!("{line}"))
        }
        Command::Play { file, numbers } => play(&file, numbers[0]..numbers[1]),
        Command::Dump { file, numbers, cars } => {
            let root = PathBuf::from(concat!(env!("CARGO_MANIFEST_DIR"), "/.."));
            let library = Library::open(&root)?;
            let mut out = OpenOptions::new().create(true).append(true).open(file)?;
            let many = dump::Many { sound: cars[0], of_fault: cars[1], truths: cars[2] };
            for number in numbers[0]..numbers[1] {
                writeln!(out, "{}", dump::of(&library, number, many)?)?;
                println!("{number}");
            }
            Ok(())
        }
        Command::Within { files, times, file, as_played, first } => {
            within(&files, times, file.as_deref(), By { as_played, first })
        }
        Command::Table { files } => {
            let mut played = Vec::new();
            for file in &files {
                played.extend(read(file)?);
            }
            print!("{}", table::of(&played));
            Ok(())
        }
    }
}

fn within(files: &[PathBuf], times: u64, file: Option<&Path>, by: By) -> anyhow::Result<()> {
    let library = Library::open(&PathBuf::from(concat!(env!("CARGO_MANIFEST_DIR"), "/..")))?;
    let mut held = Vec::new();
    for tables in files {
        let text =
            std::fs::read_to_string(tables).with_context(|| format!("cannot read {}", tables.display()))?;
        let whole = text.rfind('\n').map_or("", |end| &text[..end]);
        held.extend(within::of(&library, whole, times, by)?);
    }
    let many = (held.len() as f64).max(1.0);
    let cars = held.iter().map(|held| held.cars).sum::<usize>() as f64 / many;
    let runs = held.iter().map(|held| held.runs).sum::<f64>() / many;
    let played: Vec<Played> = held.into_iter().map(|held| held.played).collect();
    if let Some(file) = file {
        let mut out = std::fs::File::create(file)?;
        for played in &played {
            writeln!(out, "{}", serde_json::to_string(played)?)?;
        }
    }
    print!("{}", table::of(&played));
    println!("\ncars: {cars:.0} an attempt; whole runs: {runs:.0}");
    Ok(())
}

/// Attempts of a file; a torn last line is left out.
fn read(file: &Path) -> anyhow::Result<Vec<Played>> {
    let text = std::fs::read_to_string(file).with_context(|| format!("cannot read {}", file.display()))?;
    let whole = text.rfind('\n').map_or("", |end| &text[..end]);
    whole
        .lines()
        .enumerate()
        .map(|(i, line)| {
            serde_json::from_str(line).with_context(|| format!("{}, line {}", file.display(), i + 1))
        })
        .collect()
}

fn play(file: &Path, numbers: std::ops::Range<u64>) -> anyhow::Result<()> {
    let root = PathBuf::from(concat!(env!("CARGO_MANIFEST_DIR"), "/.."));
    let library = Library::open(&root)?;
    let done: BTreeSet<u64> = if file.exists() {
        read(file)?.iter().map(|played| played.number).collect()
    } else {
        BTreeSet::new()
    };
    let mut out = OpenOptions::new().create(true).append(true).open(file)?;
    for number in numbers.filter(|number| !done.contains(number)) {
        let played = attempt::play(&library, number)?;
        writeln!(out, "{}", serde_json::to_string(&played)?)?;
        println!(
            "{number}: {}, {}, {}, {} notes, true class {:.3} at the end",
            played.job,
            played.truth.as_deref().unwrap_or("nothing wrong"),
            played.technician,
            played.trail.len().saturating_sub(1),
            played.trail.last().map_or(0.0, |belief| belief[played.true_class]),
        );
    }
    Ok(())
}
