//! The integrator: its coefficients as they are published, and the order that follows from them.

use sim_core::circuit::RODAS3;

use super::Table;

const SANDU: &str = "Sandu, Verwer, Blom, Spee, Carmichael, Potra, Atmospheric Environment 31 (1997)";

type Matrix = [[f64; 4]; 4];

fn times(x: &Matrix, y: &Matrix) -> Matrix {
    std::array::from_fn(|i| std::array::from_fn(|j| (0..4).map(|k| x[i][k] * y[k][j]).sum()))
}

/// Σ xᵢ yᵢ.
fn dot(x: [f64; 4], y: [f64; 4]) -> f64 {
    x.iter().zip(y).map(|(x, y)| x * y).sum()
}

fn sums(x: &Matrix) -> [f64; 4] {
    x.map(|row| row.iter().sum())
}

/// Γ of the method's own form, the inverse of 1/γ − C: lower triangular, so each row follows from those before.
fn gammas() -> Matrix {
    let (mut inverse, own) = ([[0.0; 4]; 4], RODAS3.gamma);
    for i in 0..4 {
        let row = |j: usize| {
            let unit = if i == j { 1.0 } else { 0.0 };
            let before: f64 = (0..i).map(|k| RODAS3.c[i][k] * inverse[k][j]).sum();
            own * (unit + before)
        };
        inverse[i] = std::array::from_fn(row);
    }
    inverse
}

#[test]
fn val_coefficients_of_the_method() {
    /// Printed as fractions: rounding alone.
    const ROUNDING: f64 = 1e-15;
    let mut t = Table::of(SANDU, "15.1");
    let eight_thirds = 8.0 / 3.0;
    t.near("gamma", RODAS3.gamma, 0.5, ROUNDING);
    let a = [[0.0; 4], [0.0; 4], [2.0, 0.0, 0.0, 0.0], [2.0, 0.0, 1.0, 0.0]];
    let c = [[0.0; 4], [4.0, 0.0, 0.0, 0.0], [1.0, -1.0, 0.0, 0.0], [1.0, -1.0, -eight_thirds, 0.0]];
    for i in 0..4 {
        for j in 0..4 {
            t.near(&format!("a{}{}", i + 1, j + 1), RODAS3.a[i][j], a[i][j], ROUNDING);
            t.near(&format!("c{}{}", i + 1, j + 1), RODAS3.c[i][j], c[i][j], ROUNDING);
        }
        t.near(&format!("m{}", i + 1), RODAS3.m[i], [2.0, 0.0, 1.0, 1.0][i], ROUNDING);
        t.near(&format!("e{}", i + 1), RODAS3.e[i], [0.0, 0.0, 0.0, 1.0][i], ROUNDING);
    }
    // What the source lists besides must follow from them: where in time each stage stands.
    let gamma = gammas();
    let (alpha_i, gamma_i) = (sums(&times(&RODAS3.a, &gamma)), sums(&gamma));
    for i in 0..4 {
        t.near(&format!("alpha {}", i + 1), alpha_i[i], [0.0, 0.0, 1.0, 1.0][i], ROUNDING);
        t.near(&format!("gamma {}", i + 1), gamma_i[i], [0.5, 1.5, 0.0, 0.0][i], ROUNDING);
    }
}

#[test]
fn val_order_of_the_method() {
    /// Rounding of a dozen operations.
    const ROUNDING: f64 = 1e-14;
    // The conditions of order three for a Rosenbrock method (β = α + Γ), of order two for the embedded one.
    let gamma = gammas();
    let alpha = times(&RODAS3.a, &gamma);
    let beta: Matrix = std::array::from_fn(|i| std::array::from_fn(|j| alpha[i][j] + gamma[i][j]));
    let weights =
        |m: [f64; 4]| -> [f64; 4] { std::array::from_fn(|j| dot(m, std::array::from_fn(|i| gamma[i][j]))) };
    let (b, less) = (weights(RODAS3.m), weights(RODAS3.e));
    let embedded: [f64; 4] = std::array::from_fn(|i| b[i] - less[i]);
    let (alpha_i, beta_i) = (sums(&alpha), sums(&beta));
    let twice: [f64; 4] = beta.map(|row| dot(row, beta_i));
    let mut t = Table::of(SANDU, "15.1");
    t.near("sum b", b.iter().sum(), 1.0, ROUNDING);
    t.near("sum b beta", dot(b, beta_i), 0.5, ROUNDING);
    t.near("sum b alpha squared", dot(b, alpha_i.map(|a| a * a)), 1.0 / 3.0, ROUNDING);
    t.near("sum b beta beta", dot(b, twice), 1.0 / 6.0, ROUNDING);
    t.near("embedded: sum b", embedded.iter().sum(), 1.0, ROUNDING);
    t.near("embedded: sum b beta", dot(embedded, beta_i), 0.5, ROUNDING);
    // Stiffly accurate: the last stage's row is the result, so that a stiff lag is damped in one step.
    for (i, (last, b)) in beta[3].iter().zip(b).enumerate() {
        t.near(&format!("beta 4{}", i + 1), *last, b, ROUNDING);
    }
}
