//! `score/2`: the arithmetic of the marks, free of attempts and cars.
//!
//! The scheme, its reasons and its sources are in `docs/marking.md`. Every function here is total: any
//! finite input gives a number.

use crate::infer::numeric::{ln, log2};

/// Name of the scheme, on every mark sheet.
pub use crate::pack::job::SCHEME;

/// Certainty at which the search may stop, and the most a reachable posterior is asked to be.
pub const TAU: f64 = crate::planner::next::SURE;

/// Certainty that all is well at which the proof after the repair is complete.
pub const TAU_RELEASE: f64 = 0.95;

/// Least share of the reachable evidence for *competent*.
pub const E_PASS: f64 = 0.8;
/// Least mark for parts for *competent*.
pub const R_PASS: f64 = 0.5;
/// Least mark for the release for *competent*.
pub const Q_PASS: f64 = 0.8;
/// Cut score unless the pack states another, points of 100.
pub const CUT: f64 = 70.0;

/// Points taken off for a major breach of safety.
pub const MAJOR_POINTS: f64 = 15.0;
/// Points taken off for a minor breach of safety.
pub const MINOR_POINTS: f64 = 5.0;

/// Points taken off for each begun tenth of the time limit, or begun four hours of waiting, beyond what the job gives.
pub const TIME_POINTS: f64 = 2.0;
/// Points taken off for each hint (own choice: three of them, all that a pack gives unless it says otherwise, are less than
/// what economy can give).
pub const HINT_POINTS: f64 = 3.0;
/// Waiting that costs [`TIME_POINTS`] beyond what the job gives, min.
pub const WAITING_STEP_MIN: f64 = 240.0;
/// What a sound part that was thrown in costs at least, as a share of the dearest: its price is not all that it costs to
/// open a car that was whole.
pub const LEAST_WASTE: f64 = 0.25;

/// Brier's score of a stated probability against what came true (0 to 1): smaller is better.
#[must_use]
pub fn brier(stated: f64, came_true: f64) -> f64 {
    (stated - came_true) * (stated - came_true)
}

/// Log score of the probability that was given to what came true, nat: larger (nearer 0) is better.
#[must_use]
pub fn log_score(stated: f64) -> f64 {
    ln(stated)
}

/// What a bet pays when right and when wrong.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bet {
    /// When right.
    pub right: f64,
    /// When wrong.
    pub wrong: f64,
}

impl Bet {
    /// Expected pay when right with probability `p`.
    #[must_use]
    pub fn expected(self, p: f64) -> f64 {
        p * self.right + (1.0 - p) * self.wrong
    }

    /// The probability at which this bet and another pay the same; `None` when they never cross.
    #[must_use]
    pub fn break_even(self, other: Self) -> Option<f64> {
        let slope = (other.right - other.wrong) - (self.right - self.wrong);
        (slope != 0.0).then(|| (self.wrong - other.wrong) / slope)
    }

    /// The bet that a stated certainty makes.
    #[must_use]
    pub fn of_certainty(certainty: f64) -> Self {
        Self { right: verdict(certainty, 1.0), wrong: verdict(certainty, 0.0) }
    }
}

/// V: `2 r z − r²`, Brier's rule less what the forecaster cannot change, so that naming the likeliest
/// and saying one's true certainty are both best, and a wrong finding never earns.
#[must_use]
pub fn verdict(certainty: f64, correctness: f64) -> f64 {
    correctness * correctness - brier(certainty, correctness)
}

/// z: agreement of two sets of repair units, 2 |A ∩ B| / (|A| + |B|); two empty sets agree fully
/// ("everything inside its limits").
#[must_use]
pub fn correctness<T: PartialEq>(found: &[T], truth: &[T]) -> f64 {
    if found.is_empty() && truth.is_empty() {
        return 1.0;
    }
    let common = found.iter().filter(|unit| truth.contains(unit)).count();
    2.0 * common as f64 / (found.len() + truth.len()) as f64
}

/// Weight of evidence, bits: how far a probability was raised from `before` to `after`.
#[must_use]
pub fn bits(before: f64, after: f64) -> f64 {
    (log_score(after) - log_score(before)) / std::f64::consts::LN_2
}

/// Share of the way, in bits, from `prior` to `goal` that `reached` stands for, 0 to 1.
///
/// When the prior is already at the goal there is no way to go: 1 if `reached` holds the goal, else 0.
#[must_use]
pub fn share_of_way(prior: f64, reached: f64, goal: f64) -> f64 {
    if goal <= prior {
        return if goal <= reached { 1.0 } else { 0.0 };
    }
    if reached <= prior {
        return 0.0;
    }
    (log2(reached / prior) / log2(goal / prior)).clamp(0.0, 1.0)
}

/// E: share of the reachable information about the true class; `reachable` is capped at [`TAU`].
#[must_use]
pub fn evidence(prior: f64, reached: f64, reachable: f64) -> f64 {
    share_of_way(prior, reached, reachable.min(TAU))
}

/// Least share of the reachable evidence for economy: who has not found it has nothing to be quick about.
pub const E_FOR_ECONOMY: f64 = 0.5;

/// F: `min(1, 1.25 · reference / spent)`, only with the right class and E ≥ [`E_FOR_ECONOMY`].
#[must_use]
pub fn economy(reference_min: f64, spent_min: f64, correctness: f64, evidence: f64) -> f64 {
    if correctness < 1.0 || evidence < E_FOR_ECONOMY {
        0.0
    } else if spent_min <= 0.0 {
        1.0
    } else {
        (1.25 * reference_min / spent_min).min(1.0)
    }
}

/// A part put in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PartUsed {
    /// Price, shop money.
    pub price: f64,
    /// Whether the part taken out was inside its limits.
    pub was_sound: bool,
    /// How probable the readings until then made it that it was not.
    pub p_faulty: f64,
}

/// R: price of sound parts thrown away, each at least [`LEAST_WASTE`] of the dearest, forgiven as far as the evidence then
/// excused it.
#[must_use]
pub fn parts(used: &[PartUsed], dearest: f64) -> f64 {
    let cost = |used: &PartUsed| used.price.max(LEAST_WASTE * dearest) * (1.0 - used.p_faulty);
    let wasted: f64 = used.iter().filter(|used| used.was_sound).map(cost).sum();
    if wasted <= 0.0 {
        1.0
    } else if dearest <= 0.0 {
        0.0
    } else {
        (1.0 - wasted / dearest).max(0.0)
    }
}

/// Q: ⅔ share of release checks passed after the last change, ⅓ proof that all is well; 0 when the car
/// went back with a unit outside its limits.
#[must_use]
pub fn release(checks_share: f64, proof: f64, back_faulty: bool) -> f64 {
    if back_faulty { 0.0 } else { (2.0 * checks_share + proof) / 3.0 }
}

/// Weights of the parts; the total is scaled to 100 whatever they sum to.
#[derive(Clone, Copy, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct Weights {
    /// Verdict.
    pub v: f64,
    /// Evidence.
    pub e: f64,
    /// Economy.
    pub f: f64,
    /// Parts.
    pub r: f64,
    /// Release.
    pub q: f64,
    /// Record.
    pub d: f64,
}

impl Weights {
    /// All parts of `score/2`.
    pub const FULL: Self = Self { v: 30.0, e: 25.0, f: 10.0, r: 10.0, q: 15.0, d: 10.0 };
    /// Without economy: of a job that has no reference plan.
    pub const NO_ECONOMY: Self = Self { f: 0.0, ..Self::FULL };

    /// Points of 100 that a full mark in each part is worth, same order as the fields.
    #[must_use]
    pub fn points(self) -> Self {
        let sum = self.v + self.e + self.f + self.r + self.q + self.d;
        let scale = 100.0 / sum;
        Self {
            v: self.v * scale,
            e: self.e * scale,
            f: self.f * scale,
            r: self.r * scale,
            q: self.q * scale,
            d: self.d * scale,
        }
    }
}

/// The parts of a mark. V may be negative (−1 to 1), the others lie between 0 and 1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Parts {
    /// Verdict.
    pub v: f64,
    /// Evidence.
    pub e: f64,
    /// Economy.
    pub f: f64,
    /// Parts.
    pub r: f64,
    /// Release.
    pub q: f64,
    /// Record.
    pub d: f64,
}

/// Breaches of safety.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Breaches {
    /// Critical ones.
    pub critical: u32,
    /// Major ones.
    pub major: u32,
    /// Minor ones.
    pub minor: u32,
}

impl Breaches {
    /// Points taken off (a critical breach caps instead).
    #[must_use]
    pub fn points(self) -> f64 {
        MAJOR_POINTS * f64::from(self.major) + MINOR_POINTS * f64::from(self.minor)
    }
}

/// Time that an attempt took, and that its job gives.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Time {
    /// Minutes of work.
    pub attended_min: f64,
    /// Minutes of work that the job gives.
    pub limit_min: f64,
    /// Minutes of waiting, nights among them.
    pub unattended_min: f64,
    /// Minutes of waiting that the job gives.
    pub waiting_min: f64,
}

/// T: points off for time beyond what the job gives, 0 or more.
#[must_use]
pub fn overrun(time: Time) -> f64 {
    let begun = |beyond: f64, step: f64| if 0.0 < beyond { (beyond / step).ceil() } else { 0.0 };
    let work = begun(time.attended_min - time.limit_min, 0.1 * time.limit_min);
    let waiting = begun(time.unattended_min - time.waiting_min, WAITING_STEP_MIN);
    TIME_POINTS * (work + waiting)
}

/// H: points off for so many hints.
#[must_use]
pub fn hints(asked: usize) -> f64 {
    HINT_POINTS * asked as f64
}

/// The total of 0 to 100: weighted sum less deductions; a critical breach caps it just under the cut.
#[must_use]
pub fn total(parts: Parts, weights: Weights, breaches: Breaches, cut: f64) -> f64 {
    let w = weights.points();
    let sum = w.v * parts.v + w.e * parts.e + w.f * parts.f + w.r * parts.r + w.q * parts.q + w.d * parts.d;
    let total = (sum - breaches.points()).clamp(0.0, 100.0);
    if 0 < breaches.critical { total.min(just_under(cut)) } else { total }
}

/// The highest total that a critical breach leaves: a tenth of a point under the cut.
#[must_use]
pub fn just_under(cut: f64) -> f64 {
    (cut - 0.1).max(0.0)
}

/// Whether the attempt shows competence: right class and enough of everything that may not be bought
/// with something else.
#[must_use]
pub fn competent(parts: Parts, right_class: bool, breaches: Breaches, total: f64, cut: f64) -> bool {
    breaches.critical == 0
        && right_class
        && E_PASS <= parts.e
        && R_PASS <= parts.r
        && Q_PASS <= parts.q
        && cut <= total
}
