//! A job as everything but the file reader sees it: checked, cross-referenced, ready to set up.
//!
//! Made by [`crate::pack::Library::job`]. It holds the truth (the hidden faults), so nothing that a
//! trainee sees may be made from it except through the workshop.

use std::sync::Arc;

use sim_core::air::Day;
use sim_core::car::{Car, Spare};
use sim_core::instrument::InstrumentCard;
use sim_core::workshop::{Arrival, Setup};

use crate::plan::test::Test;

/// What every job card says last.
pub const DEFER: &str = "The vehicle maker's data, local rules and licensed practice come before anything \
     this program says. It is practice, not service information.";

/// How a line of the card begins that is a caution.
pub const CAUTION: &str = "Caution: ";

/// Name of the scheme of the marks, on every mark sheet and in every reference plan.
pub const SCHEME: &str = "score/2";

/// The complaint as something simulated: would this car, in this state, have raised it?
#[derive(Clone, Copy, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Symptom {
    /// Engine off, key on, nobody touches the pedal: the pump rests less than this between two runs.
    ShortRest {
        /// Seconds.
        below_s: f64,
    },
    /// The pump can be heard with the key off.
    HumsKeyOff,
    /// After a night the store is above this gauge pressure: the first press is hard.
    HardPedalAfterNight {
        /// kPa gauge (negative).
        above_kpa_gauge: f64,
    },
    /// From an empty store the pump runs longer than this.
    LongRun {
        /// Seconds.
        above_s: f64,
    },
}

/// What is told once the car has been handed back.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
pub enum AfterHandBack {
    /// The mark with its reasons, what it was, and what the same actions would have shown with another fault.
    #[default]
    Everything,
    /// Only that it was handed in. Whoever holds the pack marks it: `pinhole mark`.
    Nothing,
}

/// How the parts of the mark weigh; `score/2` rescales what is used to 100.
#[derive(Clone, Copy, Debug, PartialEq, serde::Serialize)]
pub struct Weights {
    /// V: the verdict with its certainty.
    pub verdict: f64,
    /// E: how far the readings narrowed it down.
    pub evidence: f64,
    /// F: economy of minutes; counts where the job has a reference plan.
    pub economy: f64,
    /// R: parts not thrown away.
    pub parts: f64,
    /// Q: release checks.
    pub release: f64,
    /// D: the record.
    pub record: f64,
}

/// The reference plan of a job, as `pinhole prove` has written it.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum ReferencePlan {
    /// Nobody has proved the job.
    #[default]
    Missing,
    /// It was made of other files, or for another scheme of marks.
    OutOfDate,
    /// Its tests in their order.
    Tests(Vec<PlanStep>),
}

/// A test of a reference plan, as it went in a car with every tolerance in the middle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlanStep {
    /// Index into [`Job::tests`].
    pub test: usize,
    /// What it adds to the work, min.
    pub worked_min: f64,
    /// What it adds to the waiting, min.
    pub waited_min: f64,
    /// Probability of what is true after it.
    pub p_true: f64,
}

/// What a pack says it exercises.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize)]
pub struct Competence {
    /// Name of the framework.
    pub framework: String,
    /// Edition of the framework.
    pub edition: String,
    /// Code within it.
    pub code: String,
}

/// Faults that are not printed by accident.
#[derive(Clone)]
pub(crate) struct Hidden(pub(crate) Vec<(u16, f64)>);

impl std::fmt::Debug for Hidden {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str("…")
    }
}

/// A job.
#[derive(Clone, Debug)]
pub struct Job {
    /// Short name within the pack: `hum-at-the-lights`.
    pub id: String,
    /// Short name of the pack: `first-shift`.
    pub pack_id: String,
    /// Title on the card.
    pub title: String,
    /// The car.
    pub car: Arc<Car>,
    /// Instruments allowed, in fixed order (sorted by short name).
    pub kit: Arc<Vec<InstrumentCard>>,
    /// Spares in store.
    pub spares: Arc<Vec<Spare>>,
    /// What can be tried at the car; with which of its tools, [`Job::tests_here`] says.
    pub tests: Arc<Vec<Test>>,
    /// The day outside.
    pub day: Day,
    /// How the car came in.
    pub arrival: Arrival,
    /// Lines of the job card: the customer's words, then the cautions, [`DEFER`] last.
    pub card: Vec<String>,
    /// See [`Job::answer`].
    pub(crate) faults: Hidden,
    /// The complaint as something simulated.
    pub symptom: Symptom,
    /// What is told after the hand-back.
    pub debrief: String,
    /// Longest time allowed, attended minutes; more costs points.
    pub time_limit_min: f64,
    /// Least total for *competent*, of 100.
    pub cut_score: f64,
    /// Weights of the mark's parts.
    pub weights: Weights,
    /// How sure every finding is taken to be, where the school fixes it, one of [`sim_core::action::CERTAINTIES`].
    pub certainty: Option<f64>,
    /// How often whoever works may ask which test would tell most now.
    pub hints: u32,
    /// What is told after the hand-back.
    pub after_hand_back: AfterHandBack,
    /// What the pack says it exercises.
    pub competences: Vec<Competence>,
    /// Text of the scripted reference attempt, when its file exists.
    pub reference: Option<String>,
    /// The reference plan.
    pub plan: ReferencePlan,
    /// blake3 over every file behind the job, in fixed order.
    pub digest: [u8; 32],
    /// The same while the pack's list of jobs was shorter, or the car had no tests yet: that changes nothing of what
    /// happened in the car.
    pub digests_before: Vec<[u8; 32]>,
}

impl Job {
    /// Name that opens it: `first-shift/hum-at-the-lights`.
    #[must_use]
    pub fn name(&self) -> String {
        format!("{}/{}", self.pack_id, self.id)
    }

    /// Whether something was made with these files, the pack's later jobs left out.
    #[must_use]
    pub fn is_of(&self, digest: &str) -> bool {
        std::iter::once(&self.digest).chain(&self.digests_before).any(|own| hex::encode(own) == digest)
    }

    /// The customer's words, line by line.
    pub fn customer_says(&self) -> impl Iterator<Item = &str> {
        self.card.iter().map(String::as_str).filter(|line| !line.starts_with(CAUTION))
    }

    /// The cautions on the card, without the word that marks them; [`DEFER`] last.
    pub fn cautions(&self) -> impl Iterator<Item = &str> {
        self.card.iter().filter_map(|line| line.strip_prefix(CAUTION))
    }

    /// Tests of the car for which the tool board of this job has everything.
    pub fn tests_here(&self) -> impl Iterator<Item = &Test> {
        self.tests.iter().filter(|test| test.fits(&self.kit))
    }

    /// The tests of the reference plan, if there is one.
    #[must_use]
    pub fn planned(&self) -> Option<Vec<&Test>> {
        match &self.plan {
            ReferencePlan::Tests(tests) => tests.iter().map(|step| self.tests.get(step.test)).collect(),
            ReferencePlan::Missing | ReferencePlan::OutOfDate => None,
        }
    }

    /// What the workshop needs to begin, beside the hidden numbers.
    #[must_use]
    pub fn setup(&self) -> Setup {
        Setup {
            car: Arc::clone(&self.car),
            kit: Arc::clone(&self.kit),
            spares: Arc::clone(&self.spares),
            day: self.day,
            arrival: self.arrival,
            card: self.card.clone(),
        }
    }

    /// What is wrong with the car in truth, for whoever holds the pack: index into `car.faults`, severity in the unit of
    /// the fault's parameter. Nothing before a trainee asks for it (a test of the house holds that).
    #[must_use]
    pub fn answer(&self) -> &[(u16, f64)] {
        &self.faults.0
    }

    /// Lets something else be wrong: what-if, tests.
    pub fn set_answer(&mut self, faults: Vec<(u16, f64)>) {
        self.faults = Hidden(faults);
    }
}
