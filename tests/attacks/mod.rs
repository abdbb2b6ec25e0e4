//! Attackers and honest routes, as data: who they are, at which job, with which seed, and what they do.
//!
//! `attackers.ron` and `honest.ron` list them; `pieces.ron` has lines that several of them do. Lines are those of the text
//! bench. A line may say `{last}` for the number of the last reading (`{last-1}` for the one before it) and, in what is
//! repeated, `{n}` for how often it was done before.

mod play;

use std::collections::BTreeMap;
use std::path::Path;

use anyhow::Context as _;

pub use play::{Marked, Played, mark, mark_with, play};

/// Whether somebody may pass.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Must not be competent.
    Attacker,
    /// Must be competent.
    Honest,
}

/// Somebody at work.
#[derive(Clone, Debug)]
pub struct Case {
    /// Whether he may pass.
    pub kind: Kind,
    /// What he is called.
    pub name: String,
    /// The job, `pack/job`.
    pub job: String,
    /// Seed of the car.
    pub seed: u64,
    /// Lines of the text bench, with their repeats written out; numbers of readings still to be filled in.
    pub lines: Vec<String>,
}

/// As it stands in the list.
#[derive(Debug, serde::Deserialize)]
#[serde(deny_unknown_fields)]
struct Written {
    name: String,
    /// What he does, in a sentence; for whoever reads the list.
    #[serde(rename = "does")]
    _does: String,
    job: String,
    seed: u64,
    steps: Vec<Step>,
}

/// What is done.
#[derive(Clone, Debug, serde::Deserialize)]
enum Step {
    /// Lines that several do, by their name in `pieces.ron`.
    Piece(String),
    /// Lines of his own.
    Lines(Vec<String>),
    /// Lines done so often.
    Repeat(u32, Vec<String>),
}

/// Everybody of the lists in `folder`: attackers first, each list in its order.
///
/// # Errors
/// A list cannot be read, names a piece that is not there, or has a name twice.
pub fn read(folder: &Path) -> anyhow::Result<Vec<Case>> {
    let text = |name: &str| {
        let path = folder.join(name);
        std::fs::read_to_string(&path).with_context(|| format!("cannot read {}", path.display()))
    };
    let pieces: BTreeMap<String, Vec<String>> = ron::from_str(&text("pieces.ron")?).context("pieces.ron")?;
    let mut cases: Vec<Case> = Vec::new();
    for (kind, name) in [(Kind::Attacker, "attackers.ron"), (Kind::Honest, "honest.ron")] {
        let written: Vec<Written> = ron::from_str(&text(name)?).context(name)?;
        for one in written {
            anyhow::ensure!(cases.iter().all(|case| case.name != one.name), "{} stands twice", one.name);
            let lines = lines(&pieces, &one.steps).with_context(|| one.name.clone())?;
            cases.push(Case { kind, name: one.name, job: one.job, seed: one.seed, lines });
        }
    }
    Ok(cases)
}

fn lines(pieces: &BTreeMap<String, Vec<String>>, steps: &[Step]) -> anyhow::Result<Vec<String>> {
    let mut out = Vec::new();
    for step in steps {
        match step {
            Step::Piece(name) => {
                out.extend(pieces.get(name).with_context(|| format!("no piece {name}"))?.iter().cloned());
            }
            Step::Lines(lines) => out.extend(lines.iter().cloned()),
            Step::Repeat(times, lines) => {
                for n in 0..*times {
                    out.extend(lines.iter().map(|line| line.replace("{n}", &n.to_string())));
                }
            }
        }
    }
    Ok(out)
}
