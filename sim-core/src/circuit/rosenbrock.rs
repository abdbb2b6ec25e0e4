//! One step of a Rosenbrock method: L-stable, stiffly accurate, third order with an embedded second.
//!
//! "Rodas3" of Sandu, Verwer, Blom, Spee, Carmichael, Potra (1997), four stages, three evaluations, one
//! factorisation (coefficients from memory; the order is tested). Linear in f: what one row loses and
//! another gains stays equal and opposite at every stage, so ledgers close to rounding whatever the
//! error of the step.

use super::linear::{Column, Plan, Unknowns};
use super::model::N_LEDGERS;
use crate::lanes::{Mask as _, Real};

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
pub(crate) struct Work<R: Real = f64> {
    lu: Vec<R>,
    k: [Unknowns<R>; STAGES],
    stage: Vec<R>,
    f: Vec<R>,
    flows: Unknowns<R>,
    /// Result of the last step.
    pub(crate) y_new: Vec<R>,
    /// Increment of the ledgers.
    pub(crate) ledgers: [R; N_LEDGERS],
    /// Estimated error per state variable.
    pub(crate) error: Vec<R>,
}

/// Where a step begins and how long it is.
#[derive(Clone, Copy)]
pub(crate) struct From<'a, R> {
    pub(crate) y: &'a [R],
    /// f(y).
    pub(crate) f: &'a [R],
    /// Slopes of state and ledgers, the entries of the plan.
    pub(crate) jacobian: &'a [R],
    /// Length, s.
    pub(crate) h: R,
}

/// Rows whose increments are taken once more from what they are made of, so that they stay equal and opposite
/// however the elimination rounded.
#[derive(Clone, Copy)]
pub(crate) struct Conserved<'a, R: Real> {
    /// The rows, ledgers included.
    pub(crate) rows: &'a [usize],
    /// Adds the slopes' product with an increment to those rows.
    pub(crate) along: &'a dyn Fn(&Column<R>, &mut Column<R>),
    /// Where it is done.
    pub(crate) at: R::Mask,
}

/// Takes a step. `eval` computes f at a stage and says where that can be. Says where the step can be taken at
/// this size; elsewhere nothing is to be made of the result.
pub(crate) fn step<R: Real>(
    plan: &Plan,
    from: From<'_, R>,
    work: &mut Work<R>,
    conserved: Option<Conserved<'_, R>>,
    mut eval: impl FnMut(&[R], &mut [R]) -> R::Mask,
) -> R::Mask {
    let From { y, f, jacobian, h } = from;
    let n = y.len();
    plan.shifted(R::all(1.0) / (h * GAMMA), jacobian, &mut work.lu);
    let mut can = plan.factor(&mut work.lu);
    if !can.any() {
        return can;
    }
    let rows = n + N_LEDGERS;
    work.f.clear();
    work.f.extend_from_slice(f);
    for s in 0..STAGES {
        // The second stage re-uses f(y); the third and fourth need their own.
        if 2 <= s {
            work.stage.clear();
            work.stage.extend_from_slice(y);
            for (j, k) in work.k.iter().enumerate().take(s) {
                let a = A[s][j];
                if a != 0.0 {
                    add(&mut work.stage, R::all(a), &k[..]);
                }
            }
            can = can & eval(&work.stage, &mut work.f);
            if !can.any() {
                return can;
            }
        }
        // The right-hand side becomes the stage's increment in its place.
        let (before, here) = work.k.split_at_mut(s);
        let x = &mut *here[0];
        x[..rows].copy_from_slice(&work.f);
        for (k, c) in before.iter().zip(C[s]) {
            if c != 0.0 {
                add(&mut x[..rows], R::all(c) / h, &k[..]);
            }
        }
        if conserved.is_some() {
            work.flows[..rows].copy_from_slice(&x[..rows]);
        }
        plan.solve(&work.lu, x);
        // Ledger rows depend on the state but nothing depends on them.
        plan.add_beyond(jacobian, x);
        for x in &mut x[n..rows] {
            *x *= h * GAMMA;
        }
        if let Some(Conserved { rows, along, at }) = conserved {
            along(x, &mut work.flows);
            for row in rows {
                x[*row] = R::choose(at, h * GAMMA * work.flows[*row], x[*row]);
            }
        }
    }
    work.y_new.clear();
    work.y_new.extend_from_slice(y);
    work.ledgers = [R::all(0.0); N_LEDGERS];
    for (k, m) in work.k.iter().zip(M) {
        if m != 0.0 {
            add(&mut work.y_new, R::all(m), &k[..]);
            for (l, total) in work.ledgers.iter_mut().enumerate() {
                *total += k[n + l] * m;
            }
        }
    }
    work.error.clear();
    work.error.extend_from_slice(&work.k[ERROR_STAGE][..n]);
    can
}

/// x += a k, over the length of x.
fn add<R: Real>(x: &mut [R], a: R, k: &[R]) {
    for (x, k) in x.iter_mut().zip(k) {
        *x += a * *k;
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
            let dense = [[-y[1], -y[0]], [y[1], y[0] - 1.0], [0.0, 1.0]];
            let at = |i| plan.place(i);
            let jacobian: Vec<f64> = (0..plan.n_written()).map(at).map(|(r, c)| dense[r][c]).collect();
            let from = From { y: &y, f: &f, jacobian: &jacobian, h };
            assert!(step(&plan, from, &mut work, None, rhs));
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
        let from = From { y: &[5.0], f: &f, jacobian: &[-1e6], h: 1.0 };
        assert!(step(&plan, from, &mut work, None, rhs));
        assert!((work.y_new[0] - 1.0).abs() < 1e-4, "{}", work.y_new[0]);
    }
}
