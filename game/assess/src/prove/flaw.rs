//! What must not be so in a job of a graded pack.

use crate::locale::Locale;
use crate::locale::sentence::Sentence;
use crate::sentence;

/// Something that makes a job unfit.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Flaw {
    /// The car has no list of tests, so that nothing can be planned.
    NoTests {
        /// Short name of the car.
        car: String,
    },
    /// A fault is hidden, but everything is inside its limits.
    InsideLimits {
        /// Short name of the fault.
        fault: String,
    },
    /// Cars with this very fault mostly do not raise the complaint.
    SymptomNotCaused {
        /// Share that does.
        shows: f64,
    },
    /// What is true cannot be found with the tools that there are.
    NotSolvable {
        /// Share of cars in which it can.
        solved: f64,
    },
    /// The reference plan takes longer than the job gives.
    TooLong {
        /// Minutes of work it takes.
        takes_min: f64,
        /// Minutes of work that the job gives.
        gives_min: f64,
    },
    /// Whoever reads the card and guesses is right more often than not.
    GuessableFromCard {
        /// Probability of what is true on the complaint alone.
        p: f64,
    },
    /// Whoever only sees for himself what the customer said, and guesses, has the evidence.
    GuessableByConfirming {
        /// Short names of the tests, each with the minutes waited before it.
        tests: Vec<(String, f64)>,
        /// Share of the way to a proved finding.
        evidence: f64,
    },
    /// What the plan asks for is dangerous in this car.
    Unsafe {
        /// Short name of the test.
        test: String,
        /// What is breached.
        rule: String,
    },
    /// A unit that is outside its limits can neither be replaced nor mended.
    NoSpare {
        /// Short name of the unit.
        unit: String,
    },
    /// More than one other unit looks just like what is true.
    LooksLikeMany {
        /// Their short names.
        units: Vec<String>,
    },
    /// There is no reference attempt.
    NoScript,
    /// The reference attempt stops before its end.
    ScriptStops {
        /// Why.
        why: String,
    },
    /// The reference attempt is not competent itself.
    WeakScript {
        /// Cars in which it is.
        competent: usize,
        /// Cars in which it was played.
        cars: usize,
    },
    /// The reference attempt says it is surer than its readings allow.
    ScriptClaims {
        /// How sure it says it is.
        claims: f64,
        /// How probable its readings made what is true.
        p_true: f64,
    },
}

impl Flaw {
    /// What is wrong, for every language.
    #[must_use]
    pub fn sentence(&self, words: &Locale) -> Sentence {
        let percent = |p: f64| words.number(100.0 * p, 0);
        let minutes = |m: f64| words.number(m, 0);
        match self {
            Self::NoTests { car } => sentence!(
                "prove-no-tests",
                "the car has no list of tests, so nothing can be planned: write assets/tests/{car}.ron",
                car = car
            ),
            Self::InsideLimits { fault } => sentence!(
                "prove-inside-limits",
                "the fault {fault} is hidden, but everything is inside its limits: raise its severity, or hide nothing",
                fault = fault
            ),
            Self::SymptomNotCaused { shows } => sentence!(
                "prove-symptom",
                "only {n} % of such cars raise the complaint: change the complaint's numbers or the severity",
                n = percent(*shows)
            ),
            Self::NotSolvable { solved } => sentence!(
                "prove-not-solvable",
                "with the tools that there are the fault is found in only {n} % of such cars: give more tools, or raise the severity",
                n = percent(*solved)
            ),
            Self::TooLong { takes_min, gives_min } => sentence!(
                "prove-too-long",
                "the reference plan takes {takes} minutes of work, the job gives {gives}: give more time",
                takes = minutes(*takes_min),
                gives = minutes(*gives_min)
            ),
            Self::GuessableFromCard { p } => sentence!(
                "prove-card",
                "the card alone makes the fault {n} % probable: it can be guessed without a measurement",
                n = percent(*p)
            ),
            Self::GuessableByConfirming { tests, evidence } => sentence!(
                "prove-confirming",
                "whoever only sees for himself what the customer said ({tests}) has {n} % of the evidence: add a fault to the car that complains alike, or change the complaint",
                tests = late_tests(tests),
                n = percent(*evidence)
            ),
            Self::Unsafe { test, rule } => sentence!(
                "prove-unsafe",
                "the test {test} is dangerous in this car ({rule}): mend the test, or the way the car comes in",
                test = test,
                rule = rule
            ),
            Self::NoSpare { unit } => sentence!(
                "prove-no-spare",
                "{unit} is outside its limits, and there is neither a spare nor a way to mend it: add one to assets/spares",
                unit = unit
            ),
            Self::LooksLikeMany { units } => sentence!(
                "prove-alike",
                "no test there is tells the fault from more than one other unit ({units}): give more tools, or raise the severity",
                units = units.join(", ")
            ),
            Self::NoScript => sentence!(
                "prove-no-script",
                "there is no reference attempt: write the script that the job names in reference/"
            ),
            Self::ScriptStops { why } => {
                sentence!("prove-script-stops", "the reference attempt stops: {why}", why = why)
            }
            Self::WeakScript { competent, cars } => sentence!(
                "prove-script-weak",
                "the reference attempt itself is competent in only {n} of {all} cars",
                n = *competent,
                all = *cars
            ),
            Self::ScriptClaims { claims, p_true } => sentence!(
                "prove-script-claims",
                "the reference attempt says it is {claims} % sure, and its readings make the truth {n} % probable",
                claims = percent(*claims),
                n = percent(*p_true)
            ),
        }
    }
}

/// Tests by their short names, a wait before one told in minutes: `hum-key-off, hum-key-off (+5 min)`.
fn late_tests(tests: &[(String, f64)]) -> String {
    let one = |(test, after_min): &(String, f64)| {
        if *after_min <= 0.0 { test.clone() } else { format!("{test} (+{after_min:.0} min)") }
    };
    tests.iter().map(one).collect::<Vec<_>>().join(", ")
}
