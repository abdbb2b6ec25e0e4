//! Plays somebody's lines and marks what came of them.

use std::sync::Arc;

use anyhow::Context as _;
use assess::attempt::{Attempt, Breached, Seed};
use assess::locale::{Locale, Naming};
use assess::marks;
use assess::marks::sheet::{Marks, PartLine};
use assess::pack::job::Job;
use assess::play::{Begin, Session, script};

use super::{Case, Kind};

/// Somebody's work, done.
#[derive(Debug)]
pub struct Played {
    /// The attempt.
    pub attempt: Attempt,
    /// Minutes of work.
    pub worked_min: f64,
    /// Minutes of waiting.
    pub waited_min: f64,
}

impl Played {
    /// Rules of safety that were broken, in order.
    pub fn breaches(&self) -> impl Iterator<Item = &str> {
        self.attempt.steps.iter().flat_map(|step| &step.breaches).map(|breach| match breach {
            Breached::Typed(hazard) => hazard.rule(),
            Breached::Told(told) => &told.rule,
        })
    }
}

/// What came of it.
#[derive(Clone, Debug)]
pub struct Marked {
    /// Total, 0 to 100.
    pub total: f64,
    /// Competent.
    pub competent: bool,
    /// Conditions of *competent* that were not met, in English.
    pub failed: Vec<String>,
    /// Parts with their values, and points off for safety and time.
    pub parts: String,
    /// The marks in full, in English.
    pub marks: Marks,
}

impl Marked {
    /// Whether it came out as it must.
    #[must_use]
    pub fn is_as_wanted(&self, kind: Kind) -> bool {
        self.competent == (kind == Kind::Honest)
    }
}

/// Does the lines, one after the other, at the job as it stands in its pack.
///
/// # Errors
/// A line is not understood or refused (one that begins with `try` may be), or the car was not handed back.
pub fn play(job: &Arc<Job>, case: &Case) -> anyhow::Result<Played> {
    let seed = Seed(u128::from(case.seed));
    let mut session = Session::rehearse(Arc::clone(job), &Begin::rehearsal(seed));
    for (n, line) in case.lines.iter().enumerate() {
        let last = session.view().readings.len();
        let line = filled(line, last);
        script::play(&mut session, &line, |_, _, _, _| {})
            .with_context(|| format!("{}, line {} of what it does", case.name, n + 1))?;
    }
    let view = session.view();
    anyhow::ensure!(view.handed_back, "{}: the car was not handed back", case.name);
    let (worked_min, waited_min) = (view.attended_min, view.unattended_min);
    Ok(Played { attempt: session.into_attempt(), worked_min, waited_min })
}

/// A line with the numbers of readings filled in.
fn filled(line: &str, last: usize) -> String {
    /// So far back may be asked.
    const BACK: usize = 9;
    let mut line = line.replace("{last}", &last.to_string());
    for back in 1..=BACK {
        line = line.replace(&format!("{{last-{back}}}"), &last.saturating_sub(back).to_string());
    }
    line
}

/// Marks it.
///
/// # Errors
/// The attempt cannot be marked.
pub fn mark(job: &Job, attempt: &Attempt) -> anyhow::Result<Marked> {
    mark_with(job, attempt, 1)
}

/// Marks it with so many times the cars.
///
/// # Errors
/// As [`mark`].
pub fn mark_with(job: &Job, attempt: &Attempt, times: usize) -> anyhow::Result<Marked> {
    let sheet = marks::mark_with(attempt, job, times)?.sheet(&Locale::built_in(), Naming::Typed);
    let marks = sheet.marks.context("the car was handed back")?;
    let part = |part: &PartLine| {
        let value = if part.weight <= 0.0 { part.points } else { part.value };
        format!("{} {value:.2}", part.letter)
    };
    let parts: Vec<String> = marks.parts.iter().map(part).collect();
    let failed = marks.conditions.iter().filter(|condition| !condition.met);
    Ok(Marked {
        total: marks.total,
        competent: marks.competent,
        failed: failed.map(|condition| condition.asked.clone()).collect(),
        parts: format!("{}, off {:.0}", parts.join(", "), marks.deducted),
        marks,
    })
}
