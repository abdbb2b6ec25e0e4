//! ISO 6358 restrictions: sonic conductance C and critical ratio b.

use sim_core::flow::Gas;
use sim_core::flow::iso6358::{C_PER_MM2, Iso6358, RHO_0, T_0};
use sim_core::flow::pinhole::{Pinhole, R_CRITICAL};

use super::{Table, half_digit};

const EXAMPLE: Iso6358 = Iso6358 { c: 1e-8, b: 0.35 };

fn example(p_down: f64) -> f64 {
    EXAMPLE.flow(Gas { p: 700e3, t: 293.15 }, Gas { p: p_down, t: 293.15 }).m
}

#[test]
fn val_iso_6358_choked_example() {
    /// Printed to six decimals; the row asks for 1e-7.
    const ASKED: f64 = 1e-7;
    Table::of("ISO 6358, checked example in public notes", "2.8").near(
        "C = 1e-8, b = 0.35, 700 to 100 kPa, kg/s",
        example(100e3),
        0.008_295,
        ASKED,
    );
}

#[test]
fn val_iso_8778_reference_air() {
    let mut t = Table::of("ISO 8778 as reproduced in public code", "2.7");
    t.near("reference density, kg/m³", RHO_0, 1.185, half_digit(6));
    t.near("reference temperature, K", T_0, 293.15, half_digit(6));
}

#[test]
fn val_iso_6358_temperature_and_choking() {
    /// The formula as reproduced, evaluated in the test: rounding only.
    const ROUNDING: f64 = 1e-12;
    let mut t = Table::of("ISO 6358 as reproduced on two simulation libraries' help pages", "2.6");
    let hot = EXAMPLE.flow(Gas { p: 700e3, t: 353.15 }, Gas { p: 100e3, t: 250.0 }).m;
    t.near_rel("hot upstream air: × √(T₀/T₁)", hot / example(100e3), f64::sqrt(293.15 / 353.15), ROUNDING);
    t.near_rel("choked up to b", example(0.35 * 700e3), example(1e3), ROUNDING);
    let ellipse = f64::sqrt(1.0 - f64::powi((0.6 - 0.35) / 0.65, 2));
    t.near_rel("subsonic ellipse at 0.6", example(0.6 * 700e3) / example(100e3), ellipse, ROUNDING);
}

#[test]
fn reg_iso_6358_subsonic_example() {
    /// Eight decimals are printed.
    const PRINTED: f64 = 0.5e-8;
    Table::of("ISO 6358, computed", "2.9").near(
        "700 to 500 kPa, kg/s",
        example(500e3),
        0.006_869_88,
        PRINTED,
    );
}

#[test]
fn reg_conductance_of_an_ideal_hole() {
    let air = Gas { p: 101_325.0, t: 293.15 };
    let hole = Pinhole { area: 1e-6, ideal: true };
    let m = hole.flow(air, Gas { p: 1.0, t: 293.15 }).m;
    let c = m / (air.p * RHO_0);
    let mut t = Table::of("Saint-Venant–Wantzel over ISO 6358, computed", "2.10");
    t.near("C of 1 mm², m³/(s Pa)", c * 1e9, 1.991_9, half_digit(4));
    t.near("our constant, m³/(s Pa)", C_PER_MM2 * 1e9, 1.991_9, half_digit(4));
    t.near("C of 1 mm², dm³/(s bar)", c * 1e3 * 1e5, 0.199_2, half_digit(4));
}

#[test]
fn reg_ellipse_against_nozzle() {
    /// Five decimals are printed; the row's b has four, ours is exact: a tenth of a digit more.
    const PRINTED: f64 = 0.6e-5;
    let up = Gas { p: 100e3, t: 293.15 };
    let hole = Pinhole { area: 1e-6, ideal: true };
    let ellipse = Iso6358 { c: C_PER_MM2, b: R_CRITICAL };
    let mut t = Table::of("ISO 6358 ellipse against the exact nozzle, computed", "2.11");
    for (r, exact, approximate) in [
        (0.6, 0.988_59, 0.988_38),
        (0.7, 0.932_22, 0.931_39),
        (0.8, 0.818_80, 0.817_44),
        (0.9, 0.617_15, 0.615_66),
        (0.95, 0.449_29, 0.448_06),
        (0.99, 0.205_43, 0.204_81),
    ] {
        let down = Gas { p: r * up.p, t: 293.15 };
        let choked = Gas { p: 0.5 * R_CRITICAL * up.p, t: 293.15 };
        let share = hole.flow(up, down).m / hole.flow(up, choked).m;
        t.near(&format!("nozzle at {r}"), share, exact, PRINTED);
        let share = ellipse.flow(up, down).m / ellipse.flow(up, choked).m;
        t.near(&format!("ellipse at {r}"), share, approximate, PRINTED);
    }
}

#[test]
fn reg_elements_in_a_row_from_memory() {
    /// The rule itself, 1/C² = Σ 1/Cᵢ²: rounding only. The row is from memory (M).
    const ROUNDING: f64 = 1e-12;
    let (wide, tight) = (Iso6358 { c: 3e-8, b: 0.5 }, Iso6358 { c: 1e-8, b: 0.35 });
    let both = wide.in_series(tight);
    let mut t = Table::of("rule for elements in a row (from memory)", "2.28");
    t.near_rel("C of the two, m³/(s Pa)", both.c, 1.0 / f64::sqrt(1.0 / 9e-16 + 1.0 / 1e-16), ROUNDING);
    t.near_rel("order does not matter", tight.in_series(wide).c, both.c, ROUNDING);
}

#[test]
fn reg_rule_for_elements_in_a_row_against_the_joined_flow() {
    /// The rule ignores that the air between has expanded. Near rest, where a pressure drop divides as
    /// squares do, it is exact but for terms of the order of the drop itself (2 % here).
    const NEAR_REST: f64 = 0.01;
    let up = Gas { p: 100e3, t: 293.15 };
    let down = Gas { p: 98e3, t: 293.15 };
    let (first, second) = (Iso6358 { c: 2e-8, b: 0.4 }, Iso6358 { c: 1e-8, b: 0.4 });
    let joined = joined_flow(up, down, |a, b| first.flow(a, b).m, |a, b| second.flow(a, b).m);
    let rule = first.in_series(second).flow(up, down).m;
    Table::of("rule for elements in a row (from memory)", "2.28").near_rel(
        "flow by the rule against the joined flow",
        rule / joined,
        1.0,
        NEAR_REST,
    );
}

/// Flow through two laws with a small volume between, by bisection of the pressure between.
pub(super) fn joined_flow(
    up: Gas,
    down: Gas,
    first: impl Fn(Gas, Gas) -> f64,
    second: impl Fn(Gas, Gas) -> f64,
) -> f64 {
    let (mut low, mut high) = (down.p, up.p);
    for _ in 0..100 {
        let middle = Gas { p: 0.5 * (low + high), t: up.t };
        if second(middle, down) < first(up, middle) { low = middle.p } else { high = middle.p }
    }
    first(up, Gas { p: 0.5 * (low + high), t: up.t })
}
