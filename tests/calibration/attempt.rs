//! One attempt: a car from the prior that raises the job's complaint, a technician's work, the marker's belief.

use std::sync::Arc;

use anyhow::Context as _;
use assess::attempt::{Attempt, Seed};
use assess::infer::belief::Belief;
use assess::infer::complaint::{self, MISHEARD};
use assess::infer::hypotheses::{Class, INSIDE_LIMITS, severity};
use assess::marks;
use assess::pack::Library;
use assess::pack::job::Job;
use assess::plan::test::{Phase, Step, Test};
use assess::play::{Begin, Session, SessionError};
use dice::Dice;
use sim_core::Opened;
use sim_core::action::Action;
use sim_core::car::Car;
use sim_core::observe::Reading;
use sim_core::parts::engine::EngineState;
use sim_core::workshop::Outcome;
use sim_core::world::World;

use crate::technician::Technician;
use crate::transform;

/// What a car with its technician gave.
#[derive(Clone, Debug, serde::Serialize, serde::Deserialize)]
pub(crate) struct Played {
    /// Number of the attempt; everything else follows from it.
    pub(crate) number: u64,
    /// `pack/job`.
    pub(crate) job: String,
    /// The fault, if any.
    pub(crate) truth: Option<String>,
    /// Its severity.
    pub(crate) severity: f64,
    /// Who worked.
    pub(crate) technician: String,
    /// Tests that were done, in order.
    #[serde(alias = "trials")]
    pub(crate) tests: Vec<String>,
    /// Index of what is true into a belief.
    pub(crate) true_class: usize,
    /// Probability of each class: on the complaint, and after each note that counts.
    pub(crate) trail: Vec<Vec<f64>>,
    /// Share of the belief in the true fault that lies below its true severity, at the end ([`transform`]).
    #[serde(default)]
    pub(crate) transform: Option<f64>,
}

/// Stream of the random numbers of this program.
const STREAM: u128 = 0x6361_6c69_6272_6174;

/// Jobs.
pub(crate) const JOBS: [&str; 5] = [
    "first-shift/hum-at-the-lights",
    "first-shift/flat-after-the-weekend",
    "first-shift/hard-first-press",
    "first-shift/new-in-the-mountains",
    "first-shift/before-the-bread-round",
];

/// Plays attempt `number` and follows what the marker believes along it, as it does when it marks: only what else stands on
/// a sheet is left out (other drawings of the instruments' errors, what could be reached).
///
/// # Errors
/// A job cannot be read, or an attempt cannot be played.
pub(crate) fn play(library: &Library, number: u64) -> anyhow::Result<Played> {
    let Worked { job, attempt, fault, technician, tests } = worked(library, number)?;
    let followed = marks::followed(&attempt, &job)?;
    let classes = &followed.hypotheses.classes;
    let beliefs = std::iter::once(&followed.start).chain(followed.links.iter().map(|link| &link.belief));
    let trail = beliefs.map(Belief::classes).collect();
    let class = match fault {
        Some((fault, _)) => Class::Unit(job.car.faults[usize::from(fault)].unit),
        None => Class::Inside,
    };
    Ok(Played {
        number,
        job: job.name(),
        truth: fault.map(|(fault, _)| job.car.faults[usize::from(fault)].id.clone()),
        severity: fault.map_or(0.0, |(_, severity)| severity),
        technician: format!("{technician:?}"),
        tests,
        true_class: classes.iter().position(|c| *c == class).context("a class of the car")?,
        trail,
        transform: fault.and_then(|(index, severity)| {
            let def = &job.car.faults[usize::from(index)];
            let at = transform::share(def.severity_min, def.severity_max, severity);
            transform::below(&followed.hypotheses, followed.end(), index, at)
        }),
    })
}

/// An attempt at a drawn car, handed back and not marked yet.
pub(crate) struct Worked {
    /// The job, with what is wrong in this attempt as its answer and without its reference.
    pub(crate) job: Job,
    /// What was done.
    pub(crate) attempt: Attempt,
    /// The fault with its severity, if any.
    pub(crate) fault: Option<(u16, f64)>,
    /// Who worked.
    pub(crate) technician: Technician,
    /// Tests that were done, in order.
    pub(crate) tests: Vec<String>,
}

/// Attempt `number`, as far as the hand-back.
///
/// # Errors
/// A job cannot be read, or an attempt cannot be played.
pub(crate) fn worked(library: &Library, number: u64) -> anyhow::Result<Worked> {
    let mut dice = Dice::new(u128::from(number), STREAM);
    let name = JOBS[(number % JOBS.len() as u64) as usize];
    let mut job = library.job(name)?;
    // The reference would cost as much again, and says nothing of the belief.
    job.reference = None;
    let (seed, fault) = car(&mut job, &mut dice);
    let technician = Technician::draw(&mut dice);
    let tests: Vec<&Test> = job.tests_here().collect();
    let order = technician.order(&tests, &mut dice);
    let mut session = Session::rehearse(Arc::new(job.clone()), &Begin::rehearsal(seed));
    work(&mut session, technician, &order, &mut dice)?;
    let tests = order.into_iter().map(|test| test.id.clone()).collect();
    Ok(Worked { attempt: session.into_attempt(), fault, technician, tests, job })
}

/// A car from the prior that would have come in with this complaint: its seed, and what is wrong with it.
fn car(job: &mut Job, dice: &mut Dice) -> (Seed, Option<(u16, f64)>) {
    let car = Arc::clone(&job.car);
    loop {
        let seed = Seed(u128::from(dice.bits()) << 64 | u128::from(dice.bits()));
        let fault = self::fault(&car, dice).map(|index| {
            let def = &car.faults[usize::from(index)];
            (index, severity(def.severity_min, def.severity_max, dice.unit()))
        });
        job.set_answer(fault.into_iter().collect());
        let shows = shows(job, seed);
        let raised = (1.0 - MISHEARD) * f64::from(u8::from(shows)) + MISHEARD * 0.5;
        if dice.unit() < raised {
            return (seed, fault);
        }
    }
}

/// A fault by its commonness, or none.
pub(crate) fn fault(car: &Car, dice: &mut Dice) -> Option<u16> {
    let all: f64 = car.faults.iter().map(|fault| fault.commonness).sum();
    let sound = dice.unit() < INSIDE_LIMITS;
    let mut at = dice.unit() * all;
    let mut index = 0;
    while index + 1 < car.faults.len() && car.faults[index].commonness <= at {
        at -= car.faults[index].commonness;
        index += 1;
    }
    (!sound).then_some(index as u16)
}

/// Whether the car of this seed shows the job's symptom.
fn shows(job: &Job, seed: Seed) -> bool {
    let came_in = hidden(job, seed).map(|world| Opened::of(job.setup(), world));
    came_in.is_some_and(|came_in| complaint::shows(job, came_in.circuit()))
}

/// The numbers of the car of this seed: it is looked at with its hood open.
pub(crate) fn hidden(job: &Job, seed: Seed) -> Option<World> {
    let mut workshop = assess::play::workshop(job, seed);
    workshop.act(&nothing_found());
    workshop.act(&Action::HandBack);
    Some(Opened::after(workshop)?.world().clone())
}

/// Does the tests one after the other, each with its undo; lines are left out as this technician does, and what is
/// refused is passed over. Hands back.
pub(crate) fn work(
    session: &mut Session,
    technician: Technician,
    order: &[&Test],
    dice: &mut Dice,
) -> anyhow::Result<()> {
    for first in [Action::ReadCard, Action::ReadSheet, Action::Chocks(true)] {
        session.act(&first)?;
    }
    for test in order {
        let mut read: Vec<Option<Reading>> = Vec::new();
        for (_, line) in test.lines() {
            let action = match &line.step {
                Step::Do(action) => {
                    if dice.unit() < technician.leaves_out() {
                        read.extend(line.reads().then_some(None));
                        continue;
                    }
                    action.clone()
                }
                Step::Note { reading, record } => {
                    let Some(reading) = read.get(*reading as usize - 1).and_then(Option::as_ref) else {
                        continue;
                    };
                    let written = session.written_as_shown(reading);
                    Action::Note { reading: reading.id, written, record: record.clone() }
                }
            };
            let outcome = session.act(&action)?;
            read.extend(line.reads().then_some(outcome.reading));
        }
    }
    let mut outcome = handed_back(session)?;
    if outcome.refused.is_some() {
        // Something that was left out still holds the car: everything is undone, the last first.
        for test in order.iter().rev() {
            for line in test.lines_of(Phase::Undo) {
                if let Step::Do(action) = &line.step {
                    session.act(action)?;
                }
            }
        }
        outcome = handed_back(session)?;
    }
    anyhow::ensure!(outcome.refused.is_none(), "the car was not taken back: {:?}", outcome.refused);
    Ok(())
}

/// Switches everything off (an undo may have left the key on) and hands back.
fn handed_back(session: &mut Session) -> Result<Outcome, SessionError> {
    for last in
        [Action::Engine(EngineState::Stopped), Action::Key(false), Action::Extraction(false), nothing_found()]
    {
        session.act(&last)?;
    }
    session.act(&Action::HandBack)
}

/// The car goes on to somebody else: what was noted counts all the same.
fn nothing_found() -> Action {
    Action::Finding { units: Vec::new(), certainty: 0.0 }
}
