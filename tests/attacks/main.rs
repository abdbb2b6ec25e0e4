//! Plays attackers and honest routes and marks them: no attacker may come out competent, every honest route must.
//!
//! `attack` plays all, `attack --only NAME` one, `attack --numbers 0 10` the first ten, so that a run can be cut in
//! parts. `--play` does not mark, which is quick: it tells whether the lines can still be done. Exit code 1 when somebody
//! came out wrong or could not be played.

use std::path::PathBuf;
use std::process::ExitCode;

use assess::marks::sheet::{EvidenceSheet, NoteWorth};
use assess::pack::Library;
use clap::Parser;
use tests::attacks::{self, Case, Kind};

/// Plays attackers and honest routes and marks them.
#[derive(Debug, Parser)]
#[command(name = "attack")]
struct Cli {
    /// Only who is called so.
    #[arg(long)]
    only: Option<String>,
    /// Numbers in the list: first, and one past the last.
    #[arg(long, num_args = 2)]
    numbers: Option<Vec<usize>>,
    /// Play without marking.
    #[arg(long)]
    play: bool,
    /// Print what was believed after each note too.
    #[arg(long)]
    belief: bool,
}

fn main() -> anyhow::Result<ExitCode> {
    let cli = Cli::parse();
    let root = PathBuf::from(concat!(env!("CARGO_MANIFEST_DIR"), "/.."));
    let library = Library::open(&root)?;
    let all = attacks::read(&root.join("tests/attacks"))?;
    let numbers = cli.numbers.as_ref().map_or(0..all.len(), |n| n[0]..n[1]);
    let chosen: Vec<(usize, &Case)> = all
        .iter()
        .enumerate()
        .filter(|(number, _)| numbers.contains(number))
        .filter(|(_, case)| cli.only.as_ref().is_none_or(|only| *only == case.name))
        .collect();
    anyhow::ensure!(!chosen.is_empty(), "nobody of that name or number");
    println!(
        "{:>3} {:<8} {:<30} {:<36} {:>5} {:>6} {:<9} what failed",
        "no", "kind", "name", "job", "seed", "total", "competent"
    );
    let mut wrong = 0;
    for (number, case) in &chosen {
        if !tell(&library, *number, case, &cli) {
            wrong += 1;
        }
    }
    println!("{} of {} as they must", chosen.len() - wrong, chosen.len());
    Ok(if wrong == 0 { ExitCode::SUCCESS } else { ExitCode::FAILURE })
}

/// Plays one and prints the line; whether it came out as it must.
fn tell(library: &Library, number: usize, case: &Case, cli: &Cli) -> bool {
    let kind = match case.kind {
        Kind::Attacker => "attacker",
        Kind::Honest => "honest",
    };
    let head = format!("{number:>3} {kind:<8} {:<30} {:<36} {:>5}", case.name, case.job, case.seed);
    let job = match library.job(&case.job) {
        Ok(job) => std::sync::Arc::new(job),
        Err(error) => {
            println!("{head} {error}");
            return false;
        }
    };
    let played = match attacks::play(&job, case) {
        Ok(played) => played,
        Err(error) => {
            println!("{head} WRONG: {error:#}");
            return false;
        }
    };
    if cli.play {
        let breaches: Vec<&str> = played.breaches().collect();
        println!(
            "{head} {} actions, {:.0} min of work, {:.0} min of waiting; {}",
            played.attempt.steps.len(),
            played.worked_min,
            played.waited_min,
            breaches.join(", ")
        );
        return true;
    }
    match attacks::mark(&job, &played.attempt) {
        Ok(marked) => {
            let right = marked.is_as_wanted(case.kind);
            let wrong = if right { "" } else { "WRONG " };
            let failed = if marked.failed.is_empty() { "-".to_owned() } else { marked.failed.join("; ") };
            let competent = if marked.competent { "yes" } else { "no" };
            println!("{head} {:>6.1} {competent:<9} {wrong}{failed} ({})", marked.total, marked.parts);
            if cli.belief {
                print!("{}", believed(&marked.marks.evidence));
            }
            right
        }
        Err(error) => {
            println!("{head} WRONG: {error:#}");
            false
        }
    }
}

/// What was noted, with the likeliest classes after each note and what is true.
fn believed(evidence: &EvidenceSheet) -> String {
    /// So many classes are named.
    const NAMED: usize = 4;
    let mut out = String::new();
    for line in &evidence.readings {
        let NoteWorth::Counts { classes, .. } = &line.worth else { continue };
        let mut order: Vec<usize> = (0..classes.len()).collect();
        order.sort_by(|a, b| classes[*b].total_cmp(&classes[*a]));
        let named =
            order.iter().take(NAMED).map(|c| format!("{} {:.3}", evidence.classes[*c].name, classes[*c]));
        let named: Vec<String> = named.collect();
        let truth = evidence.true_class.map_or(0.0, |c| classes[c]);
        out += &format!("    {} {}: true {truth:.3}; {}\n", line.what, line.shown, named.join(", "));
    }
    if let Some((best, notes)) = evidence.reference {
        out += &format!("    reachable: {best:.3} with {notes} notes\n");
    }
    out
}
