//! One step of a Rosenbrock method: L-stable, stiffly accurate, third order with an embedded second.
//!
//! "Rodas3" of Sandu, Verwer, Blom, Spee, Carmichael, Potra (1997), four stages, three evaluations, one
//! factorisation (coefficients: row 15.1; the order is tested). Linear in f: what one row loses and
//! another gains stays equal and opposite at every stage, so balances close to rounding whatever the
//! error of the step.

use super::linear::{Column, Plan, Unknowns};
use super::model::N_BALANCES;
use crate::lanes::{Mask as _, Real};

const STAGES: usize = 4;

/// A Rosenbrock method in the form that needs no products of the matrix: (1/(h γ) − J) kᵢ = f(y + Σ aᵢⱼ kⱼ) + Σ cᵢⱼ/h kⱼ,
/// y' = y + Σ mᵢ kᵢ, error Σ eᵢ kᵢ.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Coefficients {
    /// γ.
    pub gamma: f64,
    /// Per stage, where f is asked.
    pub a: [[f64; STAGES]; STAGES],
    /// Per stage, what it takes of the stages before.
    pub c: [[f64; STAGES]; STAGES],
    /// What the result adds of each stage.
    pub m: [f64; STAGES],
    /// By how much of each stage the embedded result of second order differs.
    pub e: [f64; STAGES],
}

/// The method that [`step`] takes (row 15.1).
pub const RODAS3: Coefficients = Coefficients {
    gamma: 0.5,
    a: [[0.0; 4], [0.0; 4], [2.0, 0.0, 0.0, 0.0], [2.0, 0.0, 1.0, 0.0]],
    c: [[0.0; 4], [4.0, 0.0, 0.0, 0.0], [1.0, -1.0, 0.0, 0.0], [1.0, -1.0, -8.0 / 3.0, 0.0]],
    m: [2.0, 0.0, 1.0, 1.0],
    e: [0.0, 0.0, 0.0, 1.0],
};

const GAMMA: f64 = RODAS3.gamma;
/// What the third and the fourth stage add of the first and the third; all others are nought.
const A_20: f64 = RODAS3.a[2][0];
const A_30: f64 = RODAS3.a[3][0];
const A_32: f64 = RODAS3.a[3][2];
const C: [[f64; STAGES]; STAGES] = RODAS3.c;
/// Stages that the result adds, and how much of each.
const M: [(usize, f64); 3] = [(0, RODAS3.m[0]), (2, RODAS3.m[2]), (3, RODAS3.m[3])];
/// The embedded result differs by the last stage alone.
const ERROR_STAGE: usize = 3;

/// Buffers of a step, kept between steps: few, so that they stay in the first cache when eight circuits share them.
#[derive(Clone, Debug, Default)]
pub(crate) struct Work<R: Real = f64> {
    k: [Unknowns<R>; STAGES],
    flows: Unknowns<R>,
    /// Result of the last step; while it is taken, where its stages begin.
    pub(crate) y_new: Vec<R>,
    /// Increment of the balances.
    pub(crate) balances: [R; N_BALANCES],
}

impl<R: Real> Work<R> {
    /// Estimated error per state variable.
    pub(crate) fn error(&self) -> &[R] {
        &self.k[ERROR_STAGE][..self.y_new.len()]
    }
}

/// Where a step begins and how long it is.
pub(crate) struct From<'a, R> {
    pub(crate) y: &'a [R],
    /// f(y).
    pub(crate) f: &'a [R],
    /// Slopes of state and balances, the entries of the plan. They are used up.
    pub(crate) slopes: &'a mut [R],
    /// Length, s.
    pub(crate) h: R,
}

/// Rows whose increments are taken once more from what they are made of, so that they stay equal and opposite
/// however the elimination rounded.
#[derive(Clone, Copy)]
pub(crate) struct Conserved<'a, R: Real> {
    /// The rows, balances included.
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
    R::within(
        #[inline(always)]
        || {
            let From { y, f, slopes, h } = from;
            let n = y.len();
            let (matrix, beyond) = slopes.split_at_mut(plan.n_entries());
            plan.shift(R::all(1.0) / (h * GAMMA), matrix);
            let mut can = plan.factor(matrix);
            if !can.any() {
                return can;
            }
            let Work { k, flows, y_new: stage, balances } = work;
            let rows = n + N_BALANCES;
            stage.resize(n, R::all(0.0));
            for (s, c) in C.iter().enumerate() {
                let (before, here) = k.split_at_mut(s);
                // The right-hand side becomes the stage's increment in its place.
                let x = &mut *here[0];
                // The second stage re-uses f(y); the third and fourth need their own.
                if s < 2 {
                    x[..rows].copy_from_slice(f);
                } else {
                    if s == 2 {
                        sum(stage, y, [(R::all(A_20), &before[0])]);
                    } else {
                        sum(stage, y, [(R::all(A_30), &before[0]), (R::all(A_32), &before[2])]);
                    }
                    can = can & eval(stage, &mut x[..rows]);
                    if !can.any() {
                        return can;
                    }
                }
                match s {
                    0 => {}
                    1 => add(&mut x[..rows], [over(c[0], h, &before[0])]),
                    2 => add(&mut x[..rows], [over(c[0], h, &before[0]), over(c[1], h, &before[1])]),
                    _ => add(
                        &mut x[..rows],
                        [over(c[0], h, &before[0]), over(c[1], h, &before[1]), over(c[2], h, &before[2])],
                    ),
                }
                if conserved.is_some() {
                    flows[..rows].copy_from_slice(&x[..rows]);
                }
                plan.solve(matrix, x);
                // Balance rows depend on the state but nothing depends on them.
                plan.add_beyond(beyond, x);
                for x in &mut x[n..rows] {
                    *x *= h * GAMMA;
                }
                if let Some(Conserved { rows, along, at }) = conserved {
                    along(x, flows);
                    for row in rows {
                        x[*row] = R::choose(at, h * GAMMA * flows[*row], x[*row]);
                    }
                }
            }
            let [(j0, m0), (j1, m1), (j2, m2)] = M;
            let increments = [(R::all(m0), &k[j0]), (R::all(m1), &k[j1]), (R::all(m2), &k[j2])];
            sum(stage, y, increments);
            for (l, total) in balances.iter_mut().enumerate() {
                *total = R::all(0.0);
                for (m, k) in &increments {
                    *total += k[n + l] * *m;
                }
            }
            can
        },
    )
}

/// x = base + Σ a k, term by term, over the length of x.
#[inline(always)]
fn sum<const N: usize, R: Real>(x: &mut [R], base: &[R], terms: [(R, &Unknowns<R>); N]) {
    let n = x.len();
    let (base, terms) = (&base[..n], terms.map(|(a, k)| (a, &k[..n])));
    for i in 0..n {
        x[i] = plus(base[i], &terms, i);
    }
}

/// x += Σ a k, term by term, over the length of x.
#[inline(always)]
fn add<const N: usize, R: Real>(x: &mut [R], terms: [(R, &Unknowns<R>); N]) {
    let terms = terms.map(|(a, k)| (a, &k[..x.len()]));
    for (i, x) in x.iter_mut().enumerate() {
        *x = plus(*x, &terms, i);
    }
}

/// A stage with its coefficient, over the step.
#[inline(always)]
fn over<R: Real>(c: f64, h: R, k: &Unknowns<R>) -> (R, &Unknowns<R>) {
    (R::all(c) / h, k)
}

#[inline(always)]
fn plus<R: Real>(base: R, terms: &[(R, &[R])], i: usize) -> R {
    let mut sum = base;
    for (a, k) in terms {
        sum += *a * k[i];
    }
    sum
}

#[cfg(test)]
mod tests {
    use super::*;

    /// y₀' = −y₀ y₁, y₁' = y₀ y₁ − y₁: two species with a known invariant row y₀ + y₁ + eaten, where the
    /// balance collects what is eaten.
    fn rhs(y: &[f64], f: &mut [f64]) -> bool {
        f.fill(0.0);
        f[0] = -y[0] * y[1];
        f[1] = y[0] * y[1] - y[1];
        f[2] = y[1];
        true
    }

    fn run(n_steps: usize) -> (Vec<f64>, f64) {
        let (plan, _) = Plan::of(2, &[(0, 0), (0, 1), (1, 0), (1, 1), (2, 1)]).unwrap();
        let (mut y, mut eaten, h) = (vec![1.5, 0.4], 0.0, 2.0 / n_steps as f64);
        let mut work = Work::default();
        for _ in 0..n_steps {
            let mut f = vec![0.0; 2 + N_BALANCES];
            rhs(&y, &mut f);
            let dense = [[-y[1], -y[0]], [y[1], y[0] - 1.0], [0.0, 1.0]];
            let at = |i| plan.place(i);
            let mut slopes: Vec<f64> = (0..plan.n_written()).map(at).map(|(r, c)| dense[r][c]).collect();
            let from = From { y: &y, f: &f, slopes: &mut slopes, h };
            assert!(step(&plan, from, &mut work, None, rhs));
            y.copy_from_slice(&work.y_new);
            eaten += work.balances[0];
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
    fn inv_the_balance_gains_what_the_state_loses() {
        for n in [1, 2, 7, 50] {
            let (y, eaten) = run(n);
            let gap = (y[0] + y[1] + eaten - 1.9).abs();
            assert!(gap < 1e-14, "{n} steps: {gap:e} missing, however coarse the step");
        }
    }

    #[test]
    fn inv_a_stiff_lag_is_damped_in_one_huge_step() {
        // L-stable: y' = −10⁶ (y − 1) with h = 1 s lands on 1.
        let (plan, _) = Plan::of(1, &[(0, 0)]).unwrap();
        let mut work = Work::default();
        let rhs = |y: &[f64], f: &mut [f64]| {
            f.fill(0.0);
            f[0] = -1e6 * (y[0] - 1.0);
            true
        };
        let mut f = vec![0.0; 1 + N_BALANCES];
        rhs(&[5.0], &mut f);
        let from = From { y: &[5.0], f: &f, slopes: &mut [-1e6], h: 1.0 };
        assert!(step(&plan, from, &mut work, None, rhs));
        assert!((work.y_new[0] - 1.0).abs() < 1e-4, "{}", work.y_new[0]);
    }
}
