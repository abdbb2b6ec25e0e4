//! The integrator: its coefficients as they are published, and the order that follows from them.

use sim_core::circuit::RODAS3;

use super::{Table, checks};

const SANDU: &str = "Sandu, Verwer, Blom, Spee, Carmichael, Potra, Atmospheric Environment 31 (1997)";

checks! {
    val_coefficients_of_the_method through Law(RODAS3) {
        /// Printed as fractions: rounding alone.
        ROUNDING = 1e-15;
        "15.1" of SANDU => [
            value("gamma", "1", 0.5, abs(ROUNDING)),
            // Row and column: 43.0 is a43.
            series(
                "a{}",
                "1",
                &[
                    (11.0, 0.0), (12.0, 0.0), (13.0, 0.0), (14.0, 0.0),
                    (21.0, 0.0), (22.0, 0.0), (23.0, 0.0), (24.0, 0.0),
                    (31.0, 2.0), (32.0, 0.0), (33.0, 0.0), (34.0, 0.0),
                    (41.0, 2.0), (42.0, 0.0), (43.0, 1.0), (44.0, 0.0),
                ],
                abs(ROUNDING),
            ),
            series(
                "c{}",
                "1",
                &[
                    (11.0, 0.0), (12.0, 0.0), (13.0, 0.0), (14.0, 0.0),
                    (21.0, 4.0), (22.0, 0.0), (23.0, 0.0), (24.0, 0.0),
                    (31.0, 1.0), (32.0, -1.0), (33.0, 0.0), (34.0, 0.0),
                    (41.0, 1.0), (42.0, -1.0), (43.0, -8.0 / 3.0), (44.0, 0.0),
                ],
                abs(ROUNDING),
            ),
            series("m{}", "1", &[(1.0, 2.0), (2.0, 0.0), (3.0, 1.0), (4.0, 1.0)], abs(ROUNDING)),
            series("e{}", "1", &[(1.0, 0.0), (2.0, 0.0), (3.0, 0.0), (4.0, 1.0)], abs(ROUNDING)),
            // What the source lists besides must follow from them: where in time each stage stands.
            series("alpha {}", "1", &[(1.0, 0.0), (2.0, 0.0), (3.0, 1.0), (4.0, 1.0)], abs(ROUNDING)),
            series("gamma {}", "1", &[(1.0, 0.5), (2.0, 1.5), (3.0, 0.0), (4.0, 0.0)], abs(ROUNDING)),
        ];
    }

    val_order_of_the_method through Law(RODAS3) {
        // The conditions of order three for a Rosenbrock method (β = α + Γ), of order two for the embedded one.
        /// Rounding of a dozen operations.
        ROUNDING = 1e-14;
        "15.1" of SANDU => [
            value("sum b", "1", 1.0, abs(ROUNDING)),
            value("sum b beta", "1", 0.5, abs(ROUNDING)),
            value("sum b alpha squared", "1", 1.0 / 3.0, abs(ROUNDING)),
            value("sum b beta beta", "1", 1.0 / 6.0, abs(ROUNDING)),
            value("embedded: sum b", "1", 1.0, abs(ROUNDING)),
            value("embedded: sum b beta", "1", 0.5, abs(ROUNDING)),
            // Stiffly accurate: the last stage's row is the result, so that a stiff lag is damped in one step.
            formula("beta 4{}", "1", "b", abs(ROUNDING)),
        ];
    }
}

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

fn val_coefficients_of_the_method(t: &mut Table) {
    t.is("gamma", RODAS3.gamma);
    let at = |place: f64| place as usize - 1;
    let entry = |m: &Matrix, place: f64| m[at(place / 10.0)][at(place % 10.0)];
    t.series("a{}", |place| entry(&RODAS3.a, place));
    t.series("c{}", |place| entry(&RODAS3.c, place));
    t.series("m{}", |stage| RODAS3.m[at(stage)]);
    t.series("e{}", |stage| RODAS3.e[at(stage)]);
    let gamma = gammas();
    let (alpha_i, gamma_i) = (sums(&times(&RODAS3.a, &gamma)), sums(&gamma));
    t.series("alpha {}", |stage| alpha_i[at(stage)]);
    t.series("gamma {}", |stage| gamma_i[at(stage)]);
}

fn val_order_of_the_method(t: &mut Table) {
    let gamma = gammas();
    let alpha = times(&RODAS3.a, &gamma);
    let beta: Matrix = std::array::from_fn(|i| std::array::from_fn(|j| alpha[i][j] + gamma[i][j]));
    let weights =
        |m: [f64; 4]| -> [f64; 4] { std::array::from_fn(|j| dot(m, std::array::from_fn(|i| gamma[i][j]))) };
    let (b, less) = (weights(RODAS3.m), weights(RODAS3.e));
    let embedded: [f64; 4] = std::array::from_fn(|i| b[i] - less[i]);
    let (alpha_i, beta_i) = (sums(&alpha), sums(&beta));
    let twice: [f64; 4] = beta.map(|row| dot(row, beta_i));
    t.is("sum b", b.iter().sum());
    t.is("sum b beta", dot(b, beta_i));
    t.is("sum b alpha squared", dot(b, alpha_i.map(|a| a * a)));
    t.is("sum b beta beta", dot(b, twice));
    t.is("embedded: sum b", embedded.iter().sum());
    t.is("embedded: sum b beta", dot(embedded, beta_i));
    for (i, (last, b)) in beta[3].iter().zip(b).enumerate() {
        t.follows_for("beta 4{}", i + 1, *last, b);
    }
}
