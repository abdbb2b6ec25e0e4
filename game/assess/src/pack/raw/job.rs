//! A pack, its jobs, and what is measured, as written.

use sim_core::air::Day;
use sim_core::workshop::Arrival;

use crate::pack::job::AfterHandBack;
use crate::pack::job::Symptom;

raw! {
    /// A pack: `scenarios/<pack>/pack.ron`.
    struct RawPack = "Pack" {
        /// Version of the format: 1.
        schema: u32,
        /// Title.
        title: String,
        /// Who wrote it.
        author: String,
        /// Licence of the texts.
        licence: String,
        /// Language of the texts, as a tag: `en`.
        language: String,
        /// Least total for *competent*.
        cut_score: f64 [1.0, 100.0, OfHundred],
        /// Weights of the mark's parts; rescaled to 100.
        weights: RawWeights,
        /// How sure every finding is taken to be, where the school fixes it: 0.40, 0.60, 0.80 or 0.95 (*not found* can
        /// be said all the same); left out = whoever gives a finding says how sure.
        #[serde(default)]
        certainty: Option<f64> [0.40, 0.95, InName],
        /// How often whoever works may ask which test would tell most now; each costs points. Left out = 3, and 0 is none.
        #[serde(default)]
        hints: Option<u32> [0.0, 20.0, InName],
        /// Instruments allowed, short names.
        tools: Vec<String>,
        /// What the pack exercises; may be empty.
        competences: Vec<RawCompetence>,
        /// What is told once a car is handed back: `Everything`, or `Nothing` (only that it was handed in; whoever
        /// holds the pack marks it with `pinhole mark`); left out = Everything.
        #[serde(default)]
        after_hand_back: AfterHandBack,
        /// Jobs in order, short names of `jobs/<job>.ron`.
        jobs: Vec<String>,
    }
}

raw! {
    /// Weights of the parts of the mark; in `Pack.weights`.
    struct RawWeights = "Weights" {
        /// V: verdict with certainty.
        verdict: f64 [0.0, 100.0, InName],
        /// E: evidence.
        evidence: f64 [0.0, 100.0, InName],
        /// F: economy; counts in jobs that have a reference plan (`plans/`), else the others are scaled to 100.
        economy: f64 [0.0, 100.0, InName],
        /// R: parts.
        parts: f64 [0.0, 100.0, InName],
        /// Q: release checks.
        release: f64 [0.0, 100.0, InName],
        /// D: record.
        record: f64 [0.0, 100.0, InName],
    }
}

raw! {
    /// A competence; in `Pack.competences`.
    struct RawCompetence = "Competence" {
        /// Name of the framework.
        framework: String,
        /// Its edition.
        edition: String,
        /// Code within it.
        code: String,
    }
}

raw! {
    /// A job: `scenarios/<pack>/jobs/<job>.ron`.
    struct RawJob = "Job" {
        /// Version of the format: 1.
        schema: u32,
        /// Title on the card.
        title: String,
        /// Short name of the car.
        vehicle: String,
        /// The customer's words, line by line.
        complaint: Vec<String>,
        /// The complaint as something simulated: `ShortRest(below_s: …)`, `HumsKeyOff`,
        /// `HardPedalAfterNight(above_kpa_gauge: …)`, `LongRun(above_s: …)`.
        symptom: Symptom,
        /// The hidden faults; empty = everything inside its limits.
        hidden: Vec<RawHidden>,
        /// The day: `Day(altitude_m: …, weather_kpa: …, ambient_c: …, night_drop_k: …)`.
        day: Day,
        /// How the car came in: `Arrival(driven: …, stood_min: …)`, with `on_slope: true` where the floor falls away.
        arrival: Arrival,
        /// Spares in store, short names; left out = all of the car's.
        #[serde(default)]
        spares: Option<Vec<String>>,
        /// Instruments allowed, short names; left out = all of the pack's.
        #[serde(default)]
        tools: Option<Vec<String>>,
        /// Longest time allowed, attended minutes.
        time_limit_min: f64 [5.0, 600.0, InName],
        /// Cautions for this job, in sentences; at least one.
        hazards: Vec<String>,
        /// What is told after the hand-back, in paragraphs.
        debrief: Vec<String>,
        /// File name of the scripted reference attempt in `reference/`; it may not exist yet.
        reference: String,
    }
}

raw! {
    /// A hidden fault; in `Job.hidden`.
    struct RawHidden = "Hidden" {
        /// Short name of the fault in the car's catalogue.
        fault: String,
        /// Severity, inside the catalogue's range, in the unit of the fault's number.
        severity: f64,
    }
}

raw! {
    /// What is measured when the model's speed is measured: `assets/bench.ron`.
    struct RawBench = "Bench" {
        /// Version of the format: 1.
        schema: u32,
        /// The job whose car is measured: pack/job.
        job: String,
        /// What is done to the car first, in plain words.
        connected: Vec<String>,
        /// The attempt at the job whose runs under hypotheses are counted, in plain words.
        attempt: Vec<String>,
    }
}
