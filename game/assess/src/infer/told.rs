//! What is told of a belief that was computed as if the cars that were drawn were all there is.
//!
//! **Many notes together are worth less than they seem.** What each hypothesis expects of a note is known from some dozens of
//! cars, so that what a note says for one against another is itself a little wrong, and of many notes these errors add up. The
//! probability that is right on average over such errors lies nearer to where it began: log odds are divided by
//! √(1 + π s²/8), where s² is their variance (MacKay, *The evidence framework applied to classification networks*, Neural
//! Computation 4, 1992). s² is [`ERROR`] for each note that tells; one that tells little counts for little, one that says the
//! same of every car for nothing, and in which order notes of one state were taken does not matter. How sure one is among
//! severities of one unit stays as it is.
//!
//! **The marker may be mistaken.** With the chance [`MISTAKEN`] this car is none of those that were drawn for what is wrong
//! with it, in a way that no reading by itself shows: then all notes together say nothing, and what the complaint said holds.
//!
//! The numbers were found on invented truths; what holds on others, and what is not known yet: `docs/calibration.md`.

use crate::infer::belief::Belief;

/// Variance of the error in what a note says that tells, squared natural logs.
const ERROR: f64 = 0.2;
/// See the head of this file.
const MISTAKEN: f64 = 0.02;
/// Variance over all hypotheses of what a note says, squared natural logs, at which it counts for half a note that tells.
const TELLS: f64 = 0.2;

/// The belief along the notes.
#[derive(Clone, Debug, Default)]
pub struct Path {
    /// On the complaint alone, then after each note, as computed; [`Path::told`] makes of them what is told.
    pub beliefs: Vec<Belief>,
    /// For each of them, how many notes that tell stand behind it.
    pub tellings: Vec<f64>,
    /// Per note: natural log of how much a hypothesis that stands still could have gained on the others at most.
    pub could_gain: Vec<f64>,
}

/// How much of a note that tells one is whose natural logs of likelihood vary so much over all hypotheses.
pub(super) fn tells(variance: f64) -> f64 {
    variance / (variance + TELLS)
}

impl Path {
    /// The last belief as computed.
    #[must_use]
    pub fn last(&self) -> &Belief {
        // Along any notes there is at least one, that on the complaint alone.
        &self.beliefs[self.beliefs.len() - 1]
    }

    /// What is told along the notes; the first is that on the complaint alone.
    #[must_use]
    pub fn told(&self) -> Vec<Belief> {
        (0..self.beliefs.len()).map(|notes| self.told_after(notes)).collect()
    }

    /// The last of them.
    #[must_use]
    pub fn last_told(&self) -> Belief {
        self.told_after(self.beliefs.len() - 1)
    }

    fn told_after(&self, notes: usize) -> Belief {
        let start = &self.beliefs[0];
        if notes == 0 {
            return start.clone();
        }
        let variance = ERROR * self.tellings[notes];
        let share = 1.0 / (1.0 + std::f64::consts::PI / 8.0 * variance).sqrt();
        self.beliefs[notes].moderated(start, share).doubted(start, MISTAKEN)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Two classes of which the first was as probable as the second and is `odds` times as probable now.
    fn after(odds: f64, tellings: f64) -> f64 {
        let belief =
            |odds: f64| Belief::of_masses(2, vec![0, 0, 1], &[(odds / 2.0).ln(), (odds / 2.0).ln(), 0.0]);
        let path = Path {
            beliefs: vec![belief(1.0), belief(odds)],
            tellings: vec![0.0, tellings],
            could_gain: vec![0.0],
        };
        path.last_told().classes()[0]
    }

    #[test]
    fn inv_what_is_told_never_moves_further_than_what_was_computed() {
        for odds in [0.01, 0.3, 1.0, 3.0, 100.0] {
            let computed = odds / (1.0 + odds);
            let mut before = after(odds, 0.0);
            for tellings in [1.0, 5.0, 20.0] {
                let told = after(odds, tellings);
                assert!((told - 0.5).abs() <= (before - 0.5).abs() + 1e-12, "{odds}, {tellings}: {told}");
                assert!((told - 0.5).abs() <= (computed - 0.5).abs() + 1e-12, "{odds}, {tellings}: {told}");
                before = told;
            }
        }
    }

    #[test]
    fn inv_without_a_note_that_tells_only_the_mistaken_marker_is_mixed_in() {
        let told = after(9.0, 0.0);
        // Tolerance: rounding.
        assert!((told - ((1.0 - MISTAKEN) * 0.9 + MISTAKEN * 0.5)).abs() < 1e-12, "{told}");
    }

    /// The rule stands for a probability that is right on average over a normal error of the log odds. By Simpson's rule over
    /// six standard deviations; the rule is within 0.02 of it (MacKay 1992; the bound is our own, of this check).
    #[test]
    fn inv_moderated_odds_are_the_mean_over_their_error() {
        for odds in [2.0_f64, 10.0, 50.0] {
            for tellings in [2.0, 10.0, 20.0] {
                let sigma = (ERROR * tellings).sqrt();
                let (mut sum, mut weights, steps) = (0.0, 0.0, 600);
                for i in 0..=steps {
                    let x = -6.0 + 12.0 * f64::from(i) / f64::from(steps);
                    let weight = (if i == 0 || i == steps { 1.0 } else { 2.0 + 2.0 * f64::from(i % 2) })
                        * (-0.5 * x * x).exp();
                    sum += weight / (1.0 + (-(odds.ln() + sigma * x)).exp());
                    weights += weight;
                }
                let mean = (1.0 - MISTAKEN) * sum / weights + MISTAKEN * 0.5;
                let told = after(odds, tellings);
                assert!((told - mean).abs() < 0.02, "{odds}, {tellings}: {told} against {mean}");
            }
        }
    }
}
