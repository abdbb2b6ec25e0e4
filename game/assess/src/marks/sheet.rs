//! The mark sheet: every number with the sentence that says why it is what it is.
//!
//! Serialises to the same bytes for the same attempt, pack and program version. Numbers are kept unrounded;
//! only the reports round.

use super::when::When;
use crate::attempt::override_line::OverrideLine;
use crate::play::course::TracePoint;

/// A marked attempt.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct MarkSheet {
    /// Version of the scheme.
    pub scheme: String,
    /// Version of the program that marked.
    pub engine: String,
    /// Job, `pack/job`.
    pub job: String,
    /// Title on the job card.
    pub title: String,
    /// The car in words.
    pub car: String,
    /// blake3 of all files behind the job, hexadecimal.
    pub job_digest: String,
    /// Seat, if any.
    pub seat: Option<String>,
    /// Seed of the attempt, hexadecimal.
    pub seed: String,
    /// Some of it was played from a script or a pipe.
    pub scripted: bool,
    /// When and by which way it was done; nothing is marked by it.
    pub when: When,
    /// Minutes of work.
    pub attended_min: f64,
    /// Minutes of waiting that needed nobody.
    pub unattended_min: f64,
    /// Minutes of work the job gives; more costs points.
    pub time_limit_min: f64,
    /// The marks; `None` when the car was not handed back. Then nothing about the fault is told either.
    pub marks: Option<Marks>,
    /// Breaches of safety.
    pub breaches: Vec<BreachLine>,
    /// The record.
    pub record: Vec<RecordLine>,
    /// Instruments and senses that were used but not noted, without values.
    pub not_noted: Vec<String>,
    /// Sentences that always stand on it.
    pub notices: Vec<String>,
    /// Where it was marked from its recording, because another version of the program made it and it comes out otherwise today.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub recording: Option<Recording>,
    /// What instructors said of it later, in the order of time, beside the program's own mark.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub overrides: Vec<OverrideLine>,
    /// What holds by the last of them; none where nobody has said anything and the program's own mark holds.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub holds: Option<Holds>,
}

/// An attempt that another version of the program made, marked from what its file recorded.
#[derive(Clone, Debug, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
pub struct Recording {
    /// Versions of the program that it was made with, in the order of the file.
    pub engines: Vec<String>,
    /// Number of the first action that comes out otherwise today.
    pub differs_at: u32,
    /// Numbers of the actions that were done then and that today's workshop refuses.
    pub refused_today: Vec<u32>,
}

/// What holds beside the program's own mark.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct Holds {
    /// Competent, or not yet.
    pub competent: bool,
    /// Total, 0 to 100.
    pub total: f64,
    /// Who said so.
    pub by: String,
}

impl MarkSheet {
    /// Puts what instructors said beside the marks; the last holds, and what it leaves open stays as the marks have it.
    #[must_use]
    pub(crate) fn with_overrides(self, overrides: &[OverrideLine]) -> Self {
        let holds = self.marks.as_ref().zip(overrides.last()).map(|(marks, last)| Holds {
            competent: last.competent.unwrap_or(marks.competent),
            total: last.total.unwrap_or(marks.total),
            by: last.by.clone(),
        });
        Self { overrides: overrides.to_vec(), holds, ..self }
    }

    /// Whether competent holds, the last override's or the program's own; `None` when the car was not handed back.
    #[must_use]
    pub fn competent(&self) -> Option<bool> {
        let own = self.marks.as_ref().map(|marks| marks.competent);
        self.holds.as_ref().map(|holds| holds.competent).or(own)
    }

    /// The total that holds, 0 to 100, as [`Self::competent`].
    #[must_use]
    pub fn total(&self) -> Option<f64> {
        let own = self.marks.as_ref().map(|marks| marks.total);
        self.holds.as_ref().map(|holds| holds.total).or(own)
    }
}

/// The marks of a finished attempt.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct Marks {
    /// Competent, or not yet.
    pub competent: bool,
    /// Total, 0 to 100.
    pub total: f64,
    /// Cut score.
    pub cut: f64,
    /// V, E, F where there is a reference plan, R, Q, D; T with points off where time ran out, H for hints.
    pub parts: Vec<PartLine>,
    /// Points taken off for breaches of safety.
    pub deducted: f64,
    /// The sentence about safety.
    pub safety: String,
    /// What *competent* asks, one by one.
    pub conditions: Vec<Condition>,
    /// Units that were outside their limits when the car came in, in words.
    pub truth: Vec<String>,
    /// The findings.
    pub findings: Vec<FindingLine>,
    /// Units replaced.
    pub swaps: Vec<SwapLine>,
    /// How the readings moved the belief.
    pub evidence: EvidenceSheet,
    /// True pressure in the store along the attempt.
    pub trace: Vec<TracePoint>,
    /// What is told after the hand-back.
    pub debrief: String,
    /// The reference plan of the job, as it goes in a car with every tolerance in the middle; empty without one.
    pub plan: Vec<PlanLine>,
}

/// A test of the reference plan.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct PlanLine {
    /// Name in words.
    pub test: String,
    /// Minutes of work it adds.
    pub worked_min: f64,
    /// Minutes of waiting it adds.
    pub waited_min: f64,
    /// Probability of what is true after it.
    pub p_true: f64,
}

/// A part of the mark.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct PartLine {
    /// Letter: V, E, F, R, Q, D, T, H.
    pub letter: String,
    /// Name in words.
    pub name: String,
    /// Value: −1 to 1 for V, else 0 to 1.
    pub value: f64,
    /// Points a value of 1 is worth; 0 where only points are taken off.
    pub weight: f64,
    /// Points.
    pub points: f64,
    /// Why.
    pub why: String,
    /// The numbers behind it, for whoever wants them: small print; empty when there are none.
    #[serde(default)]
    pub fine: String,
}

/// A condition of *competent*.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct Condition {
    /// What is asked.
    pub asked: String,
    /// Whether it is met.
    pub met: bool,
}

/// A finding.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct FindingLine {
    /// Minute of the attempt.
    pub at_min: f64,
    /// Units named, in words; empty = everything inside its limits.
    pub units: Vec<String>,
    /// Stated certainty.
    pub certainty: f64,
    /// Given before the first repair and first of all: the one that counts in full.
    pub counts_in_full: bool,
    /// Agreement with the truth, 0 to 1.
    pub correctness: f64,
    /// Points of −1 to 1 it earns.
    pub earns: f64,
}

/// A unit replaced.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct SwapLine {
    /// Minute of the attempt.
    pub at_min: f64,
    /// The unit in words.
    pub unit: String,
    /// Price of the new one.
    pub price: f64,
    /// Whether the old one was inside its limits.
    pub was_sound: bool,
    /// How probable the notes until then made it that it was not.
    pub p_faulty: f64,
}

/// A breach of safety.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct BreachLine {
    /// Minute of the attempt.
    pub at_min: f64,
    /// Short name of the rule.
    pub rule: String,
    /// minor, major, critical.
    pub gravity: sim_core::notice::Gravity,
    /// What happened and what should have been done.
    pub text: String,
}

/// A line of the record.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct RecordLine {
    /// Short name.
    pub item: String,
    /// In words.
    pub text: String,
    /// Belongs to the release checks.
    pub release: bool,
    /// Filled: right kind, under the condition asked for, read right.
    pub filled: bool,
    /// For a release check: done after the last change, inside its limit.
    pub passed: Option<bool>,
    /// What is missing; empty when nothing is.
    pub why: String,
}

/// How the readings moved the belief.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct EvidenceSheet {
    /// Classes: short name, words, probability on the complaint alone.
    pub classes: Vec<ClassLine>,
    /// Index of the true class.
    pub true_class: Option<usize>,
    /// Entropy on the complaint alone, bits.
    pub start_entropy: f64,
    /// The notes, in the order they were written.
    pub readings: Vec<ReadingLine>,
    /// Best probability of the true class that the reference attempt reaches here, and with how many
    /// notes; not computed when the attempt itself reached all that is asked.
    pub reference: Option<(f64, usize)>,
}

/// A class of the evidence.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct ClassLine {
    /// In words.
    pub name: String,
    /// Probability on the complaint alone.
    pub start: f64,
}

/// What became of a note.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum NoteWorth {
    /// It counts.
    Counts {
        /// Before the first finding and the first repair: for verdict and evidence.
        for_finding: bool,
        /// Probability of each class after it.
        classes: Vec<f64>,
        /// Entropy after it, bits.
        entropy: f64,
        /// Entropy it took away, bits.
        gain: f64,
        /// Bits it moved the true class by (negative: away).
        toward_truth: f64,
    },
    /// Misread: what was written is not what was shown.
    Misread,
    /// Right, but after two wrong values for the same look.
    Guessed,
    /// Right, and overwritten later with something that is not.
    StruckOut,
    /// The same was noted before in an unchanged state.
    Repeat {
        /// Number of that reading.
        of: u32,
    },
}

/// A noted reading.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct ReadingLine {
    /// Running number in the attempt.
    pub number: u32,
    /// Minute of the attempt at which it was read.
    pub at_min: f64,
    /// What was looked at.
    pub what: String,
    /// Plugs and clamps that sat on the car then, in words: `a clamp at hose.a`.
    #[serde(default)]
    pub with: Vec<String>,
    /// What was shown.
    pub shown: String,
    /// The number shown with its unit, for the chart over time.
    pub value: Option<(f64, String)>,
    /// A pressure of the store (for the chart over time).
    pub of_store: bool,
    /// It was written down before the first finding and the first repair.
    pub before_lock: bool,
    /// What became of it.
    pub worth: NoteWorth,
}

impl EvidenceSheet {
    /// How probable what was really wrong (`truth`, units in words) is when the classes have these probabilities.
    #[must_use]
    pub fn p_true(&self, truth: &[String], classes: &[f64]) -> f64 {
        if let Some(class) = self.true_class {
            return classes.get(class).copied().unwrap_or(0.0);
        }
        let named = self.classes.iter().zip(classes).filter(|(class, _)| truth.contains(&class.name));
        named.map(|(_, p)| p).sum()
    }

    /// The same on the complaint alone.
    #[must_use]
    pub fn p_true_at_start(&self, truth: &[String]) -> f64 {
        let start: Vec<f64> = self.classes.iter().map(|class| class.start).collect();
        self.p_true(truth, &start)
    }
}
