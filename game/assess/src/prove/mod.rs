//! The prover: whether a job can be done with what it gives, how long it takes, and whether it can be guessed.
//!
//! A job is proved by doing it. The planner does it in the middle car (every tolerance in the middle), which gives the
//! *reference plan*; then in cars as attempts draw them. What can be found by somebody who reads the card and guesses, or
//! who only sees for himself what the customer said, is no job. What is found is a [`Proof`]; what must not be so is among
//! its [`Flaw`]s.

pub mod alike;
pub mod confirming;
pub mod flaw;
mod flaws;
pub mod plan_file;
pub mod run;
mod script;

pub use flaw::Flaw;
pub use run::{Stage, prove};

use crate::pack::job::Job;
use crate::plan::cost::Minutes;

/// A test of the reference plan, as it went in the middle car.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct Planned {
    /// Short name of the test.
    pub test: String,
    /// Information that was expected of it, bits.
    pub expected_bits: f64,
    /// What it added to the work.
    pub minutes: Minutes,
    /// Probability of what is true after it.
    pub p_true: f64,
    /// The likeliest after it, short name of its unit (`-`: everything inside limits), and how likely.
    pub likeliest: (String, f64),
}

/// Something that looks like what is true.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct Alike {
    /// Short name of the unit; `-`: everything inside limits.
    pub unit: String,
    /// Its probability when every test there is was done.
    pub p: f64,
    /// The faults that look so, each with the severities at which it does.
    pub faults: Vec<(String, f64, f64)>,
}

/// What tests are worth to somebody who only sees for himself what the customer said.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct Confirming {
    /// Short names of the tests, each with the minutes that he waited before it.
    pub tests: Vec<(String, f64)>,
    /// Share of the way to a proved finding that they go by themselves, 0 to 1.
    pub evidence: f64,
}

/// How the author's own reference attempt does, in a few cars.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct Scripted {
    /// Cars in which it was played.
    pub cars: usize,
    /// Cars in which it ran to its end and was competent.
    pub competent: usize,
    /// Mean probability of what is true before its finding.
    pub p_true: f64,
    /// How sure it says it is.
    pub claims: f64,
    /// Why it stopped, where it did (in the English that is in the program).
    pub stopped: Option<String>,
}

/// What was found about a job.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct Proof {
    /// Name of the job, `pack/job`.
    pub job: String,
    /// Digest of its files, hexadecimal.
    pub digest: String,
    /// Version of the program.
    pub engine: String,
    /// Scheme of the marks.
    pub scheme: String,
    /// Short names of the units that are outside limits, in the middle car.
    pub truth: Vec<String>,
    /// Tests that the job's tool board allows.
    pub tests: usize,
    /// The reference plan.
    pub plan: Vec<Planned>,
    /// What the reference plan takes.
    pub minutes: Minutes,
    /// What it takes with the lines of the record that it does not fill.
    pub par: Minutes,
    /// Minutes of work that the job gives.
    pub time_limit_min: f64,
    /// Per drawn car: probability of what is true at the end of its own plan, and how many tests that took.
    pub cars: Vec<(f64, usize)>,
    /// Share of these cars that raise the complaint.
    pub shows: f64,
    /// Share of sound cars that would raise the complaint.
    pub sound_shows: f64,
    /// Probability of what is true on the complaint alone.
    pub card: f64,
    /// The likeliest on the complaint alone, as in [`Planned::likeliest`].
    pub card_likeliest: (String, f64),
    /// Tests that only confirm the complaint, each by itself and all together, the most telling first.
    pub confirming: Vec<Confirming>,
    /// What still looks alike when every test was done in the middle car.
    pub alike: Vec<Alike>,
    /// The author's reference attempt; `None` without one.
    pub script: Option<Scripted>,
    /// What must not be so.
    pub flaws: Vec<Flaw>,
}

impl Proof {
    /// Nothing is wrong with the job.
    #[must_use]
    pub fn passes(&self) -> bool {
        self.flaws.is_empty()
    }

    /// Share of the drawn cars in which what is true is found with the certainty that is asked for.
    #[must_use]
    pub fn solved(&self) -> f64 {
        let solved = self.cars.iter().filter(|(p, _)| crate::marks::score::TAU <= *p).count();
        solved as f64 / (self.cars.len() as f64).max(1.0)
    }

    /// Whether it is of this job's files as they are, of this program and of as many cars.
    #[must_use]
    pub fn is_of(&self, job: &Job, cars: usize) -> bool {
        self.digest == hex::encode(job.digest)
            && self.engine == crate::attempt::ENGINE
            && self.scheme == crate::marks::score::SCHEME
            && self.cars.len() == cars
    }
}
