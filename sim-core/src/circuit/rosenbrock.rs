//! One step of a Rosenbrock method: L-stable, stiffly accurate, third order with an embedded second.
//!
//! "Rodas3" of Sandu, Verwer, Blom, Spee, Carmichael, Potra (1997), four stages, three evaluations, one
//! factorisation (coefficients from memory; the order is tested). Linear in f: what one row loses and
//! another gains stays equal and opposite at every stage, so ledgers close to rounding whatever the
//! error of the step.

use super::linear::Plan;
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
    rhs: Vec<f64>,
    /// Result of the last step.
    pub(crate) y_new: Vec<f64>,
    /// Increment of the ledgers.
    pub(crate) ledgers: [f64; N_LEDGERS],
    /// Estimated error per state variable.
    pub(crate) error: Vec<f64>,
}

/// Takes a step of `h` seconds from `y` with f(y) = `f0` and slopes `jacobian` ((n + ledgers) × n).
/// `eval` computes f at a stage. Returns `false` when the step cannot be taken at this size.
pub(crate) fn step(
    plan: &Plan,
    y: &[f64],
    f0: &[f64],
    jacobian: &[f64],
    h: f64,
    work: &mut Work,
    mut eval: impl FnMut(&[f64], &mut [f64]) -> bool,
) -> bool {
    let n = y.len();
    let diagonal = 1.0 / (h * GAMMA);
    work.lu.clear();
    work.lu.resize(n * n, 0.0);
    for &p in &plan.places {
        work.lu[p as usize] = -jacobian[p as usize];
    }
    for i in 0..n {
        work.lu[i * n + i] += diagonal;
    }
    if !plan.factor(&mut work.lu) {
        return false;
    }
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
                    for i in 0..n {
                        work.stage[i] += a * k[i];
                    }
                }
            }
            if !eval(&work.stage, &mut work.f) {
                return false;
            }
        }
        work.rhs.clear();
        work.rhs.extend_from_slice(&work.f);
        for j in 0..s {
            let c = C[s][j] / h;
            if c != 0.0 {
                for i in 0..n + N_LEDGERS {
                    work.rhs[i] += c * work.k[j][i];
                }
            }
        }
        plan.solve(&work.lu, &mut work.rhs[..n]);
        // Ledger rows depend on the state but nothing depends on them.
        for l in n..n + N_LEDGERS {
            let row = &jacobian[l * n..(l + 1) * n];
            let dot: f64 = row.iter().zip(&work.rhs[..n]).map(|(a, b)| a * b).sum();
            work.rhs[l] = (work.rhs[l] + dot) * h * GAMMA;
        }
        work.k[s].clear();
        work.k[s].extend_from_slice(&work.rhs);
    }
    work.y_new.clear();
    work.y_new.extend_from_slice(y);
    work.ledgers = [0.0; N_LEDGERS];
    for (k, m) in work.k.iter().zip(M) {
        for i in 0..n {
            work.y_new[i] += m * k[i];
        }
        for (l, total) in work.ledgers.iter_mut().enumerate() {
            *total += m * k[n + l];
        }
    }
    work.error.clear();
    work.error.extend_from_slice(&work.k[ERROR_STAGE][..n]);
    true
}
