//! How much does a mark hang on the model's own coefficients, which no data sheet gives, and on how many cars the marker
//! draws? Honest routes of `tests/attacks` are played once, as the program is built; then the same recorded readings are
//! marked by markers whose model has other coefficients (`sim_core::coefficients`), and by markers that draw twice and
//! four times the cars.
//!
//! `robust mark --file F` works on a file with one line of JSON a mark and goes on where it stopped; `robust table F` prints
//! what came of it, with what is asked: the standard deviation of the mark below 3 points, *competent* flipped in at most 2 %,
//! less than a point between twice and four times the cars.

mod other;
mod table;

use std::collections::BTreeSet;
use std::fs::OpenOptions;
use std::io::Write as _;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use anyhow::Context as _;
use assess::attempt::Attempt;
use assess::pack::Library;
use assess::pack::job::Job;
use clap::{Parser, Subcommand};
use sim_core::coefficients::Coefficients;
use tests::attacks::{self, Case, Kind, Marked};

/// Holds marks by other models against the mark of this one.
#[derive(Debug, Parser)]
#[command(name = "robust")]
struct Cli {
    #[command(subcommand)]
    command: Command,
}

#[derive(Debug, Subcommand)]
enum Command {
    /// Marks honest routes with other models, one line each; those that are in the file already are not marked again.
    Mark {
        /// File with a line a mark.
        #[arg(long)]
        file: PathBuf,
        /// Routes, from the first of the list on.
        #[arg(long, default_value_t = 20)]
        attempts: usize,
        /// Other coefficients that each is marked with.
        #[arg(long, default_value_t = 20)]
        draws: usize,
        /// What coefficients are drawn from.
        #[arg(long, default_value_t = 1)]
        seed: u64,
        /// Leave out the markers with more cars.
        #[arg(long)]
        same_cars: bool,
    },
    /// Prints the table.
    Table {
        /// Files with a line a mark.
        files: Vec<PathBuf>,
    },
}

/// One mark.
#[derive(Clone, Debug, serde::Serialize, serde::Deserialize)]
pub(crate) struct Line {
    /// The route.
    pub(crate) name: String,
    /// The job, `pack/job`.
    pub(crate) job: String,
    /// By whom it was marked.
    pub(crate) marker: Marker,
    /// Total, 0 to 100.
    pub(crate) total: f64,
    /// Competent.
    pub(crate) competent: bool,
    /// Parts of the mark, in words.
    pub(crate) parts: String,
}

/// Who marks.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, serde::Serialize, serde::Deserialize)]
pub(crate) enum Marker {
    /// So many times the cars, the model as built.
    Cars(usize),
    /// The coefficients of this number.
    Other(u64),
}

fn main() -> anyhow::Result<()> {
    match Cli::parse().command {
        Command::Mark { file, attempts, draws, seed, same_cars } => {
            // Marker by marker: a part of a run has all routes.
            let mut markers = vec![Marker::Cars(1)];
            markers.extend((0..draws as u64).map(|n| Marker::Other(seed << 32 | n)));
            if !same_cars {
                markers.extend([Marker::Cars(2), Marker::Cars(4)]);
            }
            mark(&file, attempts, &markers)
        }
        Command::Table { files } => {
            let mut lines = Vec::new();
            for file in &files {
                lines.extend(read(file)?);
            }
            print!("{}", table::of(&lines));
            Ok(())
        }
    }
}

/// Marks of a file; a torn last line is left out.
fn read(file: &Path) -> anyhow::Result<Vec<Line>> {
    let text = std::fs::read_to_string(file).with_context(|| format!("cannot read {}", file.display()))?;
    let whole = text.rfind('\n').map_or("", |end| &text[..end]);
    let line =
        |(i, line)| serde_json::from_str(line).with_context(|| format!("{}, line {}", file.display(), i + 1));
    whole.lines().enumerate().map(line).collect()
}

fn mark(file: &Path, attempts: usize, markers: &[Marker]) -> anyhow::Result<()> {
    let root = PathBuf::from(concat!(env!("CARGO_MANIFEST_DIR"), "/.."));
    let library = Library::open(&root)?;
    let all = attacks::read(&root.join("tests/attacks"))?;
    let honest = all.iter().filter(|case| case.kind == Kind::Honest).take(attempts);
    let done: BTreeSet<(String, Marker)> = if file.exists() {
        read(file)?.into_iter().map(|line| (line.name, line.marker)).collect()
    } else {
        BTreeSet::new()
    };
    let mut out = OpenOptions::new().create(true).append(true).open(file)?;
    let mut routes = Vec::new();
    for case in honest {
        let job = Arc::new(library.job(&case.job)?);
        let attempt = attacks::play(&job, case)?.attempt;
        routes.push((case, job, attempt));
    }
    for marker in markers {
        for (case, job, attempt) in &routes {
            if done.contains(&(case.name.clone(), *marker)) {
                continue;
            }
            let marked = marked(job, attempt, *marker).with_context(|| case.name.clone())?;
            let line = line(case, *marker, marked);
            writeln!(out, "{}", serde_json::to_string(&line)?)?;
            println!("{marker:?} {}: {:.1}, {}", case.name, line.total, line.parts);
        }
    }
    Ok(())
}

fn line(case: &Case, marker: Marker, marked: Marked) -> Line {
    Line {
        name: case.name.clone(),
        job: case.job.clone(),
        marker,
        total: marked.total,
        competent: marked.competent,
        parts: marked.parts,
    }
}

fn marked(job: &Job, attempt: &Attempt, marker: Marker) -> anyhow::Result<Marked> {
    match marker {
        Marker::Cars(times) => attacks::mark_with(job, attempt, times),
        Marker::Other(number) => {
            attacks::mark(&with(job, other::coefficients(number)), &of_another_version(attempt))
        }
    }
}

/// The job at a car whose model has other coefficients.
fn with(job: &Job, coefficients: Coefficients) -> Job {
    let mut job = job.clone();
    Arc::make_mut(&mut job.car).assembly.coefficients = coefficients;
    job
}

/// The attempt as if another version of the program had made it: its recorded readings count, not those that this model
/// would show.
fn of_another_version(attempt: &Attempt) -> Attempt {
    let mut attempt = attempt.clone();
    let made = |engine: &mut String| *engine = "another".to_owned();
    made(&mut attempt.header.engine);
    attempt.sittings.iter_mut().for_each(|sitting| made(&mut sitting.engine));
    attempt
}
