//! One step of a Rosenbrock method: L-stable, stiffly accurate, third order with an embedded second.
//!
//! "Rodas3" of Sandu, Verwer, Blom, Spee, Carmichael, Potra (1997), four stages, three evaluations, one
//! factorisation (coefficients from memory; the order is tested). Linear in f: what one row loses and
//! another gains stays equal and opposite at every stage, so ledgers close to rounding whatever the
//! error of the step.

use super::linear::{Column, Plan, Unknowns};
use super::model::N_LEDGERS;

const STAGES: usize = 4;
const GAMMA: f64 = 0.5;
const A: [[f64; STAGES]; STAGES] = [[0.0; 4], [0.0; 4], [2.0, 0.0, 0.0, 0.0], [2.0, 0.0, 1.0, 0.0]];
const C: [[f64; STAGES]; STAGES] =
    [[0.0; 4], [4.0, 0.0, 0.0, 0.0], [1.0, -1.0, 0.0, 0.0], [1.0, -1.0, -8.0 / 3.0, 0.0]];
const M: [f64; STAGES] = [2.0, 0.0, 1.0, 1.0];
/// The embedded second-order result differs by the last stage.
const ERROR_STAGE: usize = 3;

/// Buffers of a step, kept between steps.
#[derive(Clone, Debug, Default)]
pub(crate) struct Work {
    lu: Vec<f64>,
    k: [Vec<f64>; STAGES],
    stage: Vec<f64>,
    f: Vec<f64>,
    rhs: Unknowns,
    flows: Unknowns,
    /// Result of the last step.
    pub(crate) y_new: Vec<f64>,
    /// Increment of the ledgers.
    pub(crate) ledgers: [f64; N_LEDGERS],
    /// Estimated error per state variable.
    pub(crate) error: Vec<f64>,
}

/// Rows whose increments are taken once more from what they are made of, so that they stay equal and opposite
/// however the elimination rounded.
#[derive(Clone, Copy)]
pub(crate) struct Conserved<'a> {
    /// The rows, ledgers included.
    pub(crate) rows: &'a [usize],
    /// Adds the slopes' product with an increment to those rows.
    pub(crate) along: &'a dyn Fn(&Column, &mut Column),
}

/// Takes a step of `h` seconds from `y` with f(y) = `f0` and slopes `jacobian` ((n + ledgers) × n).
/// `eval` computes f at a stage. Returns `false` when the step cannot be taken at this size.
#[expect(clippy::too_many_arguments, reason = "a step has that many ingredients, each of another kind")]
pub(crate) fn step(
    plan: &Plan,
    y: &[f64],
    f0: &[f64],
    jacobian: &[f64],
    h: f64,
    work: &mut Work,
    conserved: Option<Conserved<'_>>,
    mut eval: impl FnMut(&[f64], &mut [f64]) -> bool,
) -> bool {
    let n = y.len();
    plan.shifted(1.0 / (h * GAMMA), jacobian, &mut work.lu);
    if !plan.factor(&mut work.lu) {
        return false;
    }
    let rows = n + N_LEDGERS;
    work.f.clear();
    work.f.extend_from_slice(f0);
    for s in 0..STAGES {
        // The second stage re-uses f(y); the third and fourth need their own.
        if 2 <= s {
            work.stage.clear();
            work.stage.extend_from_slice(y);
            for (j, k) in work.k.iter().enumerate().take(s) {
                let a = A[s][j];
                if a != 0.0 {
                    add(&mut work.stage, a, k);
                }
            }
            if !eval(&work.stage, &mut work.f) {
                return false;
            }
        }
        work.rhs[..rows].copy_from_slice(&work.f);
        for (k, c) in work.k.iter().zip(C[s]).take(s) {
            if c != 0.0 {
                add(&mut work.rhs[..rows], c / h, k);
            }
        }
        if conserved.is_some() {
            work.flows.copy_from_slice(&work.rhs[..]);
        }
        plan.solve(&work.lu, &mut work.rhs);
        match conserved {
            // Ledger rows depend on the state but nothing depends on them.
            None => {
                plan.add_beyond(jacobian, &mut work.rhs);
                for x in &mut work.rhs[n..rows] {
                    *x *= h * GAMMA;
                }
            }
            Some(Conserved { rows, along }) => {
                along(&work.rhs, &mut work.flows);
                for row in rows {
                    work.rhs[*row] = h * GAMMA * work.flows[*row];
                }
            }
        }
        work.k[s].clear();
        work.k[s].extend_from_slice(&work.rhs[..rows]);
    }
    work.y_new.clear();
    work.y_new.extend_from_slice(y);
    work.ledgers = [0.0; N_LEDGERS];
    for (k, m) in work.k.iter().zip(M) {
        if m != 0.0 {
            add(&mut work.y_new, m, k);
            for (l, total) in work.ledgers.iter_mut().enumerate() {
                *total += m * k[n + l];
            }
        }
    }
    work.error.clear();
    work.error.extend_from_slice(&work.k[ERROR_STAGE][..n]);
    true
}

/// x += a k, over the length of x.
fn add(x: &mut [f64], a: f64, k: &[f64]) {
    for (x, k) in x.iter_mut().zip(k) {
        *x += a * k;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// y₀' = −y₀ y₁, y₁' = y₀ y₁ − y₁: two species with a known invariant row y₀ + y₁ + eaten, where the
    /// ledger collects what is eaten.
    fn rhs(y: &[f64], f: &mut [f64]) -> bool {
        f.fill(0.0);
        f[0] = -y[0] * y[1];
        f[1] = y[0] * y[1] - y[1];
        f[2] = y[1];
        true
    }

    fn run(n_steps: usize) -> (Vec<f64>, f64) {
        let plan = Plan::of(2, &[(0, 0), (0, 1), (1, 0), (1, 1), (2, 1)]);
        let (mut y, mut eaten, h) = (vec![1.5, 0.4], 0.0, 2.0 / n_steps as f64);
        let mut work = Work::default();
        for _ in 0..n_steps {
            let mut f = vec![0.0; 2 + N_LEDGERS];
            rhs(&y, &mut f);
            let mut jacobian = vec![0.0; (2 + N_LEDGERS) * 2];
            jacobian[..6].copy_from_slice(&[-y[1], -y[0], y[1], y[0] - 1.0, 0.0, 1.0]);
            assert!(step(&plan, &y, &f, &jacobian, h, &mut work, None, rhs));
            y.copy_from_slice(&work.y_new);
            eaten += work.ledgers[0];
        }
        (y, eaten)
    }

    #[test]
    fn inv_the_method_is_of_third_order() {
        let (reference, _) = run(4_096);
        let error = |n| (run(n).0[1] - reference[1]).abs();
        let ratio = error(32) / error(64);
        // 2³ = 8 in the limit; at these steps the next term still shows.
        assert!(6.5 < ratio && ratio < 9.5, "halving the step divided the error by {ratio}");
    }

    #[test]
    fn inv_the_ledger_gains_what_the_state_loses() {
        for n in [1, 2, 7, 50] {
            let (y, eaten) = run(n);
            let gap = (y[0] + y[1] + eaten - 1.9).abs();
            assert!(gap < 1e-14, "{n} steps: {gap:e} missing, however coarse the step");
        }
    }

    #[test]
    fn inv_a_stiff_lag_is_damped_in_one_huge_step() {
        // L-stable: y' = −10⁶ (y − 1) with h = 1 s lands on 1.
        let plan = Plan::of(1, &[(0, 0)]);
        let mut work = Work::default();
        let rhs = |y: &[f64], f: &mut [f64]| {
            f.fill(0.0);
            f[0] = -1e6 * (y[0] - 1.0);
            true
        };
        let mut f = vec![0.0; 1 + N_LEDGERS];
        rhs(&[5.0], &mut f);
        let mut jacobian = vec![0.0; 1 + N_LEDGERS];
        jacobian[0] = -1e6;
        assert!(step(&plan, &[5.0], &f, &jacobian, 1.0, &mut work, None, rhs));
        assert!((work.y_new[0] - 1.0).abs() < 1e-4, "{}", work.y_new[0]);
    }
}
