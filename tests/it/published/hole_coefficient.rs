//! Discharge coefficient of a sharp-edged hole by pressure ratio (Perry).

use sim_core::flow::Gas;
use sim_core::flow::pinhole::{Pinhole, R_CRITICAL, perry};

use super::Table;

const SOURCE: &str = "Perry's polynomial as reproduced on a simulation library's help page";

#[test]
fn val_perry_discharge_coefficient() {
    /// Four decimals are printed; at 0.3 the polynomial gives 0.814 95, which the row rounds up.
    const ONE_DIGIT: f64 = 1e-4;
    let mut t = Table::of(SOURCE, "2.16");
    for (r, printed) in [
        (0.0, 0.841_4),
        (0.3, 0.815_0),
        (R_CRITICAL, 0.737_4),
        (0.7, 0.667_6),
        (0.8, 0.635_8),
        (0.9, 0.614_2),
        (0.95, 0.606_7),
        (0.99, 0.601_4),
        (1.0, 0.600_1),
    ] {
        t.near(&format!("coefficient at {r}"), perry(r).0, printed, ONE_DIGIT);
    }
}

#[test]
fn val_sharp_hole_is_the_ideal_hole_times_the_coefficient() {
    /// Two ways to the same product: rounding only.
    const ROUNDING: f64 = 1e-12;
    let up = Gas { p: 101_325.0, t: 293.15 };
    let sharp = Pinhole::of_diameter_mm(1.0);
    let ideal = Pinhole { ideal: true, ..sharp };
    let mut t = Table::of(SOURCE, "2.16");
    for r in [0.05, 0.3, 0.528, 0.7, 0.9, 0.99] {
        let down = Gas { p: r * up.p, t: 293.15 };
        let share = sharp.flow(up, down).m / ideal.flow(up, down).m;
        t.near_rel(&format!("share of the ideal flow at {r}"), share, perry(r).0, ROUNDING);
    }
}

#[test]
fn reg_incompressible_limit_from_memory() {
    /// Books give 0.60 to 0.62 for a sharp-edged hole; the row's 0.61 is from memory.
    const SCATTER: f64 = 0.011;
    Table::of("sharp-edged hole, incompressible (from memory)", "2.17").near(
        "coefficient at rest",
        perry(1.0).0,
        0.61,
        SCATTER,
    );
}
