//! Leaks as vacuum technology counts them: throughput in mbar·L/s, rise of pressure, conductances.

use std::f64::consts::FRAC_PI_4;

use sim_core::air::{P_SEA_LEVEL_PA, R_AIR};
use sim_core::flow::iso6358::Iso6358;
use sim_core::flow::pinhole::Pinhole;
use sim_core::flow::{Gas, laminar};
use sim_core::units::PressureDiff;

use super::iso_6358::joined_flow;
use super::{Table, half_digit};

const AIR: Gas = Gas { p: P_SEA_LEVEL_PA, t: 293.15 };
const VACUUM: Gas = Gas { p: 1.0, t: 293.15 };

fn ideal_hole_mm(d_mm: f64) -> Pinhole {
    Pinhole { area: FRAC_PI_4 * d_mm * d_mm * 1e-6, ideal: true }
}

/// Throughput q = ṁ R T, Pa·m³/s.
fn throughput(m: f64) -> f64 {
    m * R_AIR * 293.15
}

#[test]
fn reg_pinhole_table() {
    /// Four digits are printed; the last may be off by a half.
    const FOUR_DIGITS: f64 = 5.1e-4;
    let mut t = Table::of("ideal hole from the atmosphere into vacuum, computed", "2.18");
    for (d, kg_s, mbar_l_s) in [
        (0.1, 1.879e-6, 1.581),
        (0.2, 7.514e-6, 6.323),
        (0.5, 4.696e-5, 39.52),
        (0.8, 1.202e-4, 101.2),
        (1.0, 1.878_5e-4, 158.1),
        (1.5, 4.227e-4, 355.7),
        (2.0, 7.514e-4, 632.3),
        (3.0, 1.691e-3, 1_423.0),
    ] {
        let m = ideal_hole_mm(d).flow(AIR, VACUUM).m;
        t.near_rel(&format!("{d} mm, kg/s"), m, kg_s, FOUR_DIGITS);
        t.near_rel(&format!("{d} mm, mbar L/s"), throughput(m) * 10.0, mbar_l_s, FOUR_DIGITS);
    }
    let free_air_l_min = ideal_hole_mm(1.0).flow(AIR, VACUUM).m / (AIR.p / (R_AIR * AIR.t)) * 60e3;
    t.near("1 mm, free air, L/min", free_air_l_min, 9.36, half_digit(2));
}

#[test]
fn val_leak_table_order_of_magnitude() {
    /// The table gives powers of ten only: half a decade either way.
    const HALF_A_DECADE: f64 = 0.5;
    let mut t = Table::of("published leak table of a leak-testing firm", "2.19");
    for (d, power) in [(1.0, 2.0), (0.1, 0.0), (0.01, -2.0)] {
        let sharp = Pinhole::of_diameter_mm(d).flow(AIR, VACUUM).m;
        let decade = f64::log10(throughput(sharp) * 10.0);
        t.near(&format!("{d} mm, log₁₀ of mbar L/s"), decade, power, HALF_A_DECADE);
    }
}

#[test]
fn val_leak_rate_unit() {
    /// A definition: rounding only.
    const ROUNDING: f64 = 1e-12;
    /// 59.2 cm³/min is printed to three digits.
    const THREE_DIGITS: f64 = 1e-3;
    let mut t = Table::of("leak-testing firm's page: definition and conversions", "2.20, 2.21");
    let one_mbar_l = PressureDiff::from_pa(100.0).mbar() * 1.0;
    t.near("1 mbar in 1 L in 1 s, mbar L/s", one_mbar_l, 1.0, ROUNDING);
    // 1 mbar L/s = 59.2 cm³/min of free air: our seep coefficient counts in cm³ of free air a minute.
    let q = throughput(laminar::flow(laminar::coefficient(59.2), AIR, Gas { p: 1e-6, t: 293.15 }).m);
    t.near_rel("seep of 59.2 cm³/min, mbar L/s", q * 10.0, 1.0, THREE_DIGITS);
}

#[test]
fn reg_rise_rate_of_a_choked_leak() {
    let rise = |d: f64| throughput(ideal_hole_mm(d).flow(AIR, VACUUM).m) / 5e-3 * 1e-3;
    let mut t = Table::of("choked leak into 5 L, isothermal, computed", "2.22");
    t.near("1 mm, kPa/s", rise(1.0), 3.161, half_digit(3));
    t.near("0.5 mm, kPa/s", rise(0.5), 0.790_4, half_digit(4));
}

#[test]
fn val_conductances_add() {
    /// Sums of the same numbers in another order: rounding only.
    const ROUNDING: f64 = 1e-12;
    /// The pressure between is bisected to 1e-16 of itself, but enters as a difference of squares.
    const BISECTED: f64 = 1e-9;
    let down = Gas { p: 60e3, t: 293.15 };
    let mut t = Table::of("vacuum-technology handbook of a pump maker, formulas 1-20 and 1-21", "2.27");

    let (c1, c2) = (Iso6358 { c: 2e-8, b: 0.3 }, Iso6358 { c: 1e-8, b: 0.3 });
    let beside = c1.flow(AIR, down).plus(c2.flow(AIR, down)).m;
    let sum = Iso6358 { c: 3e-8, b: 0.3 }.flow(AIR, down).m;
    t.near_rel("side by side: C = C₁ + C₂ (restrictions)", beside / sum, 1.0, ROUNDING);

    // 1/C = 1/C₁ + 1/C₂ holds for conductances proportional to their driving difference: our seep, whose
    // driving difference is that of the squares.
    let (k1, k2) = (laminar::coefficient(300.0), laminar::coefficient(100.0));
    let joined = joined_flow(AIR, down, |a, b| laminar::flow(k1, a, b).m, |a, b| laminar::flow(k2, a, b).m);
    let one = laminar::flow(1.0 / (1.0 / k1 + 1.0 / k2), AIR, down).m;
    t.near_rel("in a row: 1/C = 1/C₁ + 1/C₂ (seeps)", joined / one, 1.0, BISECTED);
}

#[test]
fn val_allowed_loss_as_a_hole() {
    /// The row gives the hole to three decimals of a millimetre.
    const PRINTED_MM: f64 = 0.0006;
    // 125 mmHg in 10 min in 5 L = 0.139 Pa m³/s, "choked ideal hole of 0.094 mm".
    let q = throughput(ideal_hole_mm(0.094).flow(AIR, VACUUM).m);
    let d_for_limit = 0.094 * f64::sqrt(125.0 * 133.322 / 600.0 * 5e-3 / q);
    Table::of("inspection list without named issuer; hole computed", "1.32").near(
        "hole that loses 125 mmHg in 10 min from 5 L, mm",
        d_for_limit,
        0.094,
        PRINTED_MM,
    );
}
