//! ISO 6358 restrictions: sonic conductance C and critical ratio b.

use sim_core::flow::Gas;
use sim_core::flow::iso6358::{C_PER_MM2, Iso6358, RHO_0, T_0};
use sim_core::flow::pinhole::{Pinhole, R_CRITICAL};

use super::{Table, checks};

checks! {
    val_iso_6358_choked_example through Law(Iso6358::<f64>::flow) {
        /// Printed to six decimals; the row asks for 1e-7.
        ASKED = 1e-7;
        "2.8" of "ISO 6358, checked example in public notes" => [
            value("C = 1e-8, b = 0.35, 700 to 100 kPa", "kg/s", 0.008_295, abs(ASKED)),
        ];
    }

    val_iso_8778_reference_air through Own {
        "2.7" of "ISO 8778 as reproduced in public code" => [
            value("reference density", "kg/m³", 1.185, half_digit(6)),
            value("reference temperature", "K", 293.15, half_digit(6)),
        ];
    }

    val_iso_6358_temperature_and_choking through Law(Iso6358::<f64>::flow) {
        /// The formula as reproduced, evaluated in the test: rounding only.
        ROUNDING = 1e-12;
        "2.6" of "ISO 6358 as reproduced on two simulation libraries' help pages" => [
            formula("hot upstream air", "1", "√(T₀/T₁)", rel(ROUNDING)),
            formula("choked up to b", "kg/s", "the flow into 1 kPa", rel(ROUNDING)),
            formula("subsonic ellipse at 0.6", "1", "√(1 − ((r − b)/(1 − b))²)", rel(ROUNDING)),
        ];
    }

    reg_iso_6358_subsonic_example through Law(Iso6358::<f64>::flow) {
        /// Eight decimals are printed.
        PRINTED = 0.5e-8;
        "2.9" of "ISO 6358, computed" => [
            value("700 to 500 kPa", "kg/s", 0.006_869_88, abs(PRINTED)),
        ];
    }

    reg_conductance_of_an_ideal_hole through Law(Pinhole::<f64>::flow, C_PER_MM2) {
        "2.10" of "Saint-Venant–Wantzel over ISO 6358, computed" => [
            value("C of 1 mm²", "10⁻⁹ m³/(s Pa)", 1.991_9, half_digit(4)),
            value("our constant", "10⁻⁹ m³/(s Pa)", 1.991_9, half_digit(4)),
            value("C of 1 mm² in the trade's unit", "dm³/(s bar)", 0.199_2, half_digit(4)),
        ];
    }

    reg_ellipse_against_nozzle through Law(Pinhole::<f64>::flow, Iso6358::<f64>::flow) {
        /// Five decimals are printed; the row's b has four, ours is exact: a tenth of a digit more.
        PRINTED = 0.6e-5;
        "2.11" of "ISO 6358 ellipse against the exact nozzle, computed" => [
            series(
                "nozzle at {}",
                "1",
                &[
                    (0.6, 0.988_59),
                    (0.7, 0.932_22),
                    (0.8, 0.818_80),
                    (0.9, 0.617_15),
                    (0.95, 0.449_29),
                    (0.99, 0.205_43),
                ],
                abs(PRINTED),
            ),
            series(
                "ellipse at {}",
                "1",
                &[
                    (0.6, 0.988_38),
                    (0.7, 0.931_39),
                    (0.8, 0.817_44),
                    (0.9, 0.615_66),
                    (0.95, 0.448_06),
                    (0.99, 0.204_81),
                ],
                abs(PRINTED),
            ),
        ];
    }

    reg_elements_in_a_row_from_memory through Law(Iso6358::in_series) {
        /// The rule itself, 1/C² = Σ 1/Cᵢ²: rounding only. The row is from memory (M).
        ROUNDING = 1e-12;
        "2.28" of "rule for elements in a row (from memory)" => [
            formula("C of the two", "m³/(s Pa)", "1/C² = Σ 1/Cᵢ²", rel(ROUNDING)),
            formula("order does not matter", "m³/(s Pa)", "C the other way round", rel(ROUNDING)),
        ];
    }

    reg_rule_for_elements_in_a_row_against_the_joined_flow through Law(Iso6358::in_series, Iso6358::<f64>::flow) {
        /// The rule ignores that the air between has expanded. Near rest, where a pressure drop divides as
        /// squares do, it is exact but for terms of the order of the drop itself (2 % here).
        NEAR_REST = 0.01;
        "2.28" of "rule for elements in a row (from memory)" => [
            value("flow by the rule against the joined flow", "1", 1.0, rel(NEAR_REST)),
        ];
    }
}

const EXAMPLE: Iso6358 = Iso6358 { c: 1e-8, b: 0.35 };

fn example(p_down: f64) -> f64 {
    EXAMPLE.flow(Gas { p: 700e3, t: 293.15 }, Gas { p: p_down, t: 293.15 }).m
}

fn val_iso_6358_choked_example(t: &mut Table) {
    t.is("C = 1e-8, b = 0.35, 700 to 100 kPa", example(100e3));
}

fn val_iso_8778_reference_air(t: &mut Table) {
    t.is("reference density", RHO_0);
    t.is("reference temperature", T_0);
}

fn val_iso_6358_temperature_and_choking(t: &mut Table) {
    let hot = EXAMPLE.flow(Gas { p: 700e3, t: 353.15 }, Gas { p: 100e3, t: 250.0 }).m;
    t.follows("hot upstream air", hot / example(100e3), f64::sqrt(293.15 / 353.15));
    t.follows("choked up to b", example(0.35 * 700e3), example(1e3));
    let ellipse = f64::sqrt(1.0 - f64::powi((0.6 - 0.35) / 0.65, 2));
    t.follows("subsonic ellipse at 0.6", example(0.6 * 700e3) / example(100e3), ellipse);
}

fn reg_iso_6358_subsonic_example(t: &mut Table) {
    t.is("700 to 500 kPa", example(500e3));
}

fn reg_conductance_of_an_ideal_hole(t: &mut Table) {
    let air = Gas { p: 101_325.0, t: 293.15 };
    let hole = Pinhole { area: 1e-6, ideal: true };
    let m = hole.flow(air, Gas { p: 1.0, t: 293.15 }).m;
    let c = m / (air.p * RHO_0);
    t.is("C of 1 mm²", c * 1e9);
    t.is("our constant", C_PER_MM2 * 1e9);
    t.is("C of 1 mm² in the trade's unit", c * 1e3 * 1e5);
}

fn reg_ellipse_against_nozzle(t: &mut Table) {
    let up = Gas { p: 100e3, t: 293.15 };
    let hole = Pinhole { area: 1e-6, ideal: true };
    let ellipse = Iso6358 { c: C_PER_MM2, b: R_CRITICAL };
    let down = |r: f64| Gas { p: r * up.p, t: 293.15 };
    let choked = down(0.5 * R_CRITICAL);
    t.series("nozzle at {}", |r| hole.flow(up, down(r)).m / hole.flow(up, choked).m);
    t.series("ellipse at {}", |r| ellipse.flow(up, down(r)).m / ellipse.flow(up, choked).m);
}

fn reg_elements_in_a_row_from_memory(t: &mut Table) {
    let (wide, tight) = (Iso6358 { c: 3e-8, b: 0.5 }, Iso6358 { c: 1e-8, b: 0.35 });
    let both = wide.in_series(tight);
    t.follows("C of the two", both.c, 1.0 / f64::sqrt(1.0 / 9e-16 + 1.0 / 1e-16));
    t.follows("order does not matter", tight.in_series(wide).c, both.c);
}

fn reg_rule_for_elements_in_a_row_against_the_joined_flow(t: &mut Table) {
    let up = Gas { p: 100e3, t: 293.15 };
    let down = Gas { p: 98e3, t: 293.15 };
    let (first, second) = (Iso6358 { c: 2e-8, b: 0.4 }, Iso6358 { c: 1e-8, b: 0.4 });
    let joined = joined_flow(up, down, |a, b| first.flow(a, b).m, |a, b| second.flow(a, b).m);
    let rule = first.in_series(second).flow(up, down).m;
    t.is("flow by the rule against the joined flow", rule / joined);
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
