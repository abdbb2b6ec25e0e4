//! Bayes' rule over classes of hypotheses, with the draws inside the sum.
//!
//! A *cell* is one hypothesis with one draw of everything that is not known besides (tolerances,
//! severity, gauge errors). A reading multiplies each cell by the likelihood it has there, and only
//! then are cells added up:
//!
//! P(D | h) = Σ_m w_m Π_t L_t(h, m).
//!
//! The product stays inside the sum, so that two readings with one gauge do not count its error twice,
//! and a second look at an unchanged thing tells less than the first. All in logarithms, all sums in
//! index order.

use crate::infer::numeric::{ln, log_sum_exp, log2};

/// How sure one may be of each class after what was seen so far.
#[derive(Clone, Debug, PartialEq)]
pub struct Belief {
    n_classes: usize,
    class_of: Vec<usize>,
    log_mass: Vec<f64>,
}

impl Belief {
    /// Cells as (class, prior weight); weights are scaled to sum 1. Classes run from 0 to `n_classes` − 1.
    ///
    /// # Panics
    /// If a class is out of range or all weights are 0: both are mistakes of the caller, not of a user.
    #[must_use]
    pub fn new(n_classes: usize, cells: &[(usize, f64)]) -> Self {
        assert!(cells.iter().all(|&(class, weight)| class < n_classes && 0.0 <= weight));
        let total: f64 = cells.iter().map(|&(_, weight)| weight).sum();
        assert!(0.0 < total, "a belief needs some mass");
        Self {
            n_classes,
            class_of: cells.iter().map(|&(class, _)| class).collect(),
            log_mass: cells.iter().map(|&(_, weight)| ln(weight / total)).collect(),
        }
    }

    /// Cells with the natural logs of their masses, which are scaled to sum 1.
    ///
    /// # Panics
    /// If a class is out of range, there are not as many masses as cells, or all masses are 0.
    #[must_use]
    pub fn of_masses(n_classes: usize, class_of: Vec<usize>, log_mass: &[f64]) -> Self {
        assert!(class_of.len() == log_mass.len() && class_of.iter().all(|&class| class < n_classes));
        let log_mass = scaled(log_mass);
        assert!(log_mass.is_some(), "a belief needs some mass");
        Self { n_classes, class_of, log_mass: log_mass.unwrap_or_default() }
    }

    /// Mean over the cells of something known of each.
    ///
    /// # Panics
    /// If there are not as many values as cells.
    #[must_use]
    pub fn mean_of(&self, values: &[f64]) -> f64 {
        assert_eq!(values.len(), self.log_mass.len());
        self.log_mass.iter().zip(values).map(|(m, v)| sim_core::math::exp(*m) * v).sum()
    }

    /// Takes in an observation: the natural log of its likelihood in each cell.
    ///
    /// What is impossible in every cell leaves the belief as it was and returns `false` (with a slip
    /// rate above 0 that cannot happen).
    #[must_use]
    pub fn observe(&mut self, log_likelihood: &[f64]) -> bool {
        assert_eq!(log_likelihood.len(), self.log_mass.len());
        let next: Vec<f64> = self.log_mass.iter().zip(log_likelihood).map(|(m, l)| m + l).collect();
        let scaled = scaled(&next);
        let possible = scaled.is_some();
        self.log_mass = scaled.unwrap_or_else(|| std::mem::take(&mut self.log_mass));
        possible
    }

    /// This belief with each class that `share` (0 to 1) of the way from `start`, by ratio, which is that of the class now; inside
    /// a class as it is. `start` has the same cells.
    ///
    /// # Panics
    /// If it has others.
    #[must_use]
    pub fn moderated(&self, start: &Self, share: f64) -> Self {
        assert_eq!(self.class_of, start.class_of);
        let moved = self.classes().into_iter().zip(start.classes());
        let back: Vec<f64> = moved
            .map(
                |(now, then)| {
                    if 0.0 < now && 0.0 < then { (share - 1.0) * (ln(now) - ln(then)) } else { 0.0 }
                },
            )
            .collect();
        let next: Vec<f64> =
            self.log_mass.iter().zip(&self.class_of).map(|(mass, class)| mass + back[*class]).collect();
        Self { log_mass: scaled(&next).unwrap_or_else(|| self.log_mass.clone()), ..self.clone() }
    }

    /// This belief, of which `share` is what was believed in `start`, which has the same cells.
    ///
    /// # Panics
    /// If it has others.
    #[must_use]
    pub fn doubted(&self, start: &Self, share: f64) -> Self {
        assert_eq!(self.class_of, start.class_of);
        let (kept, back) = (ln(1.0 - share), ln(share));
        let mix = |(now, then): (&f64, &f64)| log_sum_exp([kept + now, back + then].iter().copied());
        let log_mass = self.log_mass.iter().zip(&start.log_mass).map(mix).collect();
        Self { log_mass, ..self.clone() }
    }

    /// Number of cells.
    #[must_use]
    pub fn n_cells(&self) -> usize {
        self.class_of.len()
    }

    /// Class of each cell.
    #[must_use]
    pub fn class_of(&self) -> &[usize] {
        &self.class_of
    }

    /// Probability of each class.
    #[must_use]
    pub fn classes(&self) -> Vec<f64> {
        let mut logs: Vec<Vec<f64>> = vec![Vec::new(); self.n_classes];
        for (class, mass) in self.class_of.iter().zip(&self.log_mass) {
            logs[*class].push(*mass);
        }
        logs.iter().map(|logs| sim_core::math::exp(log_sum_exp(logs.iter().copied())).min(1.0)).collect()
    }

    /// Probability that a statement about cells is true.
    #[must_use]
    pub fn mass_where(&self, holds: impl Fn(usize) -> bool) -> f64 {
        let held = (0..self.n_cells()).filter(|&cell| holds(cell)).map(|cell| self.log_mass[cell]);
        let held: Vec<f64> = held.collect();
        sim_core::math::exp(log_sum_exp(held.iter().copied())).min(1.0)
    }

    /// Probability of a run of cells.
    #[must_use]
    pub fn mass_in(&self, cells: std::ops::Range<usize>) -> f64 {
        sim_core::math::exp(log_sum_exp(self.log_mass[cells].iter().copied())).min(1.0)
    }

    /// Entropy over the classes, bits.
    #[must_use]
    pub fn entropy(&self) -> f64 {
        entropy(&self.classes())
    }

    /// What a test would tell, on average, bits: `likelihood[outcome][cell]`, outcomes exhaustive.
    ///
    /// H(class) − Σ_y P(y) H(class | y).
    #[must_use]
    pub fn expected_gain(&self, likelihood: &[Vec<f64>]) -> f64 {
        let mut left = 0.0;
        for outcome in likelihood {
            let p: f64 = (0..self.n_cells())
                .map(|cell| sim_core::math::exp(self.log_mass[cell]) * outcome[cell])
                .sum();
            let mut after = self.clone();
            let logs: Vec<f64> = outcome.iter().map(|&l| ln(l)).collect();
            if after.observe(&logs) {
                left += p * after.entropy();
            }
        }
        self.entropy() - left
    }
}

/// Natural logs of masses scaled to sum 1; `None` when all are 0.
fn scaled(log_mass: &[f64]) -> Option<Vec<f64>> {
    let total = log_sum_exp(log_mass.iter().copied());
    total.is_finite().then(|| log_mass.iter().map(|m| m - total).collect())
}

/// Entropy of a distribution, bits; 0 log 0 = 0.
#[must_use]
pub fn entropy(p: &[f64]) -> f64 {
    p.iter().filter(|&&p| 0.0 < p).map(|&p| -p * log2(p)).sum()
}
