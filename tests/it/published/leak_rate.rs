//! Leaks as vacuum technology counts them: throughput in mbar·L/s, rise of pressure, conductances.

use std::f64::consts::FRAC_PI_4;

use sim_core::air::{P_SEA_LEVEL_PA, R_AIR};
use sim_core::flow::iso6358::Iso6358;
use sim_core::flow::pinhole::Pinhole;
use sim_core::flow::{Gas, laminar};
use sim_core::units::PressureDiff;

use super::iso_6358::joined_flow;
use super::{Table, checks};

checks! {
    reg_pinhole_table through Law(Pinhole::<f64>::flow) {
        /// Four digits are printed; the last may be off by a half.
        FOUR_DIGITS = 5.1e-4;
        "2.18" of "ideal hole from the atmosphere into vacuum, computed" => [
            series(
                "flow through {} mm",
                "kg/s",
                &[
                    (0.1, 1.879e-6),
                    (0.2, 7.514e-6),
                    (0.5, 4.696e-5),
                    (0.8, 1.202e-4),
                    (1.0, 1.878_5e-4),
                    (1.5, 4.227e-4),
                    (2.0, 7.514e-4),
                    (3.0, 1.691e-3),
                ],
                rel(FOUR_DIGITS),
            ),
            series(
                "throughput of {} mm",
                "mbar L/s",
                &[
                    (0.1, 1.581),
                    (0.2, 6.323),
                    (0.5, 39.52),
                    (0.8, 101.2),
                    (1.0, 158.1),
                    (1.5, 355.7),
                    (2.0, 632.3),
                    (3.0, 1_423.0),
                ],
                rel(FOUR_DIGITS),
            ),
            value("1 mm, free air", "L/min", 9.36, half_digit(2)),
        ];
    }

    val_leak_table_order_of_magnitude through Law(Pinhole::<f64>::flow) {
        /// The table gives powers of ten only: half a decade either way.
        HALF_A_DECADE = 0.5;
        "2.19" of "published leak table of a leak-testing firm" => [
            series("{} mm", "log₁₀ of mbar L/s", &[(1.0, 2.0), (0.1, 0.0), (0.01, -2.0)], abs(HALF_A_DECADE)),
        ];
    }

    val_leak_rate_unit through Law(laminar::flow::<f64>, laminar::coefficient) {
        /// A definition: rounding only.
        ROUNDING = 1e-12;
        /// 59.2 cm³/min is printed to three digits.
        THREE_DIGITS = 1e-3;
        "2.20, 2.21" of "leak-testing firm's page: definition and conversions" => [
            value("1 mbar in 1 L in 1 s", "mbar L/s", 1.0, abs(ROUNDING)),
            value("seep of 59.2 cm³/min", "mbar L/s", 1.0, rel(THREE_DIGITS)),
        ];
    }

    reg_rise_rate_of_a_choked_leak through Law(Pinhole::<f64>::flow) {
        "2.22" of "choked leak into 5 L, isothermal, computed" => [
            value("1 mm", "kPa/s", 3.161, half_digit(3)),
            value("0.5 mm", "kPa/s", 0.790_4, half_digit(4)),
        ];
    }

    val_conductances_add through Law(Iso6358::<f64>::flow, laminar::flow::<f64>) {
        /// Sums of the same numbers in another order: rounding only.
        ROUNDING = 1e-12;
        /// The pressure between is bisected to 1e-16 of itself, but enters as a difference of squares.
        BISECTED = 1e-9;
        "2.27" of "vacuum-technology handbook of a pump maker, formulas 1-20 and 1-21" => [
            value("side by side: C = C₁ + C₂ (restrictions)", "1", 1.0, rel(ROUNDING)),
            value("in a row: 1/C = 1/C₁ + 1/C₂ (seeps)", "1", 1.0, rel(BISECTED)),
        ];
    }

    val_allowed_loss_as_a_hole through Law(Pinhole::<f64>::flow) {
        /// The row gives the hole to three decimals of a millimetre.
        PRINTED_MM = 0.0006;
        // 125 mmHg in 10 min in 5 L = 0.139 Pa m³/s, "choked ideal hole of 0.094 mm".
        "1.32" of "inspection list without named issuer; hole computed" => [
            value("hole that loses 125 mmHg in 10 min from 5 L", "mm", 0.094, abs(PRINTED_MM)),
        ];
    }
}

const AIR: Gas = Gas { p: P_SEA_LEVEL_PA, t: 293.15 };
const VACUUM: Gas = Gas { p: 1.0, t: 293.15 };

fn ideal_hole_mm(d_mm: f64) -> Pinhole {
    Pinhole { area: FRAC_PI_4 * d_mm * d_mm * 1e-6, ideal: true }
}

/// Throughput q = ṁ R T, Pa·m³/s.
fn throughput(m: f64) -> f64 {
    m * R_AIR * 293.15
}

fn reg_pinhole_table(t: &mut Table) {
    t.series("flow through {} mm", |d| ideal_hole_mm(d).flow(AIR, VACUUM).m);
    t.series("throughput of {} mm", |d| throughput(ideal_hole_mm(d).flow(AIR, VACUUM).m) * 10.0);
    let free_air_l_min = ideal_hole_mm(1.0).flow(AIR, VACUUM).m / (AIR.p / (R_AIR * AIR.t)) * 60e3;
    t.is("1 mm, free air", free_air_l_min);
}

fn val_leak_table_order_of_magnitude(t: &mut Table) {
    t.series("{} mm", |d| {
        let sharp = Pinhole::of_diameter_mm(d).flow(AIR, VACUUM).m;
        f64::log10(throughput(sharp) * 10.0)
    });
}

fn val_leak_rate_unit(t: &mut Table) {
    let one_mbar_l = PressureDiff::from_pa(100.0).mbar() * 1.0;
    t.is("1 mbar in 1 L in 1 s", one_mbar_l);
    // 1 mbar L/s = 59.2 cm³/min of free air: our seep coefficient counts in cm³ of free air a minute.
    let q = throughput(laminar::flow(laminar::coefficient(59.2), AIR, Gas { p: 1e-6, t: 293.15 }).m);
    t.is("seep of 59.2 cm³/min", q * 10.0);
}

fn reg_rise_rate_of_a_choked_leak(t: &mut Table) {
    let rise = |d: f64| throughput(ideal_hole_mm(d).flow(AIR, VACUUM).m) / 5e-3 * 1e-3;
    t.is("1 mm", rise(1.0));
    t.is("0.5 mm", rise(0.5));
}

fn val_conductances_add(t: &mut Table) {
    let down = Gas { p: 60e3, t: 293.15 };

    let (c1, c2) = (Iso6358 { c: 2e-8, b: 0.3 }, Iso6358 { c: 1e-8, b: 0.3 });
    let beside = c1.flow(AIR, down).plus(c2.flow(AIR, down)).m;
    let sum = Iso6358 { c: 3e-8, b: 0.3 }.flow(AIR, down).m;
    t.is("side by side: C = C₁ + C₂ (restrictions)", beside / sum);

    // 1/C = 1/C₁ + 1/C₂ holds for conductances proportional to their driving difference: our seep, whose
    // driving difference is that of the squares.
    let (k1, k2) = (laminar::coefficient(300.0), laminar::coefficient(100.0));
    let joined = joined_flow(AIR, down, |a, b| laminar::flow(k1, a, b).m, |a, b| laminar::flow(k2, a, b).m);
    let one = laminar::flow(1.0 / (1.0 / k1 + 1.0 / k2), AIR, down).m;
    t.is("in a row: 1/C = 1/C₁ + 1/C₂ (seeps)", joined / one);
}

fn val_allowed_loss_as_a_hole(t: &mut Table) {
    let q = throughput(ideal_hole_mm(0.094).flow(AIR, VACUUM).m);
    let d_for_limit = 0.094 * f64::sqrt(125.0 * 133.322 / 600.0 * 5e-3 / q);
    t.is("hole that loses 125 mmHg in 10 min from 5 L", d_for_limit);
}
