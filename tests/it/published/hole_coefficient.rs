//! Discharge coefficient of a sharp-edged hole by pressure ratio (Perry).

use sim_core::flow::Gas;
use sim_core::flow::pinhole::{Pinhole, R_CRITICAL, perry};

use super::{Table, checks};

const SOURCE: &str = "Perry's polynomial as reproduced on a simulation library's help page";

checks! {
    val_perry_discharge_coefficient through Law(perry::<f64>) {
        /// Four decimals are printed; at 0.3 the polynomial gives 0.814 95, which the row rounds up.
        ONE_DIGIT = 1e-4;
        "2.16" of SOURCE => [
            series(
                "coefficient at {}",
                "1",
                &[
                    (0.0, 0.841_4),
                    (0.3, 0.815_0),
                    (R_CRITICAL, 0.737_4),
                    (0.7, 0.667_6),
                    (0.8, 0.635_8),
                    (0.9, 0.614_2),
                    (0.95, 0.606_7),
                    (0.99, 0.601_4),
                    (1.0, 0.600_1),
                ],
                abs(ONE_DIGIT),
            ),
        ];
    }

    val_sharp_hole_is_the_ideal_hole_times_the_coefficient through Law(Pinhole::<f64>::flow, perry::<f64>) {
        /// Two ways to the same product: rounding only.
        ROUNDING = 1e-12;
        "2.16" of SOURCE => [
            formula("share of the ideal flow at {}", "1", "C_d", rel(ROUNDING)),
        ];
    }

    reg_incompressible_limit_from_memory through Law(perry::<f64>) {
        /// Books give 0.60 to 0.62 for a sharp-edged hole; the row's 0.61 is from memory.
        SCATTER = 0.011;
        "2.17" of "sharp-edged hole, incompressible (from memory)" => [
            value("coefficient at rest", "1", 0.61, abs(SCATTER)),
        ];
    }
}

fn val_perry_discharge_coefficient(t: &mut Table) {
    t.series("coefficient at {}", |r| perry(r).0);
}

fn val_sharp_hole_is_the_ideal_hole_times_the_coefficient(t: &mut Table) {
    let up = Gas { p: 101_325.0, t: 293.15 };
    let sharp = Pinhole::of_diameter_mm(1.0);
    let ideal = Pinhole { ideal: true, ..sharp };
    for r in [0.05, 0.3, 0.528, 0.7, 0.9, 0.99] {
        let down = Gas { p: r * up.p, t: 293.15 };
        let share = sharp.flow(up, down).m / ideal.flow(up, down).m;
        t.follows_for("share of the ideal flow at {}", r, share, perry(r).0);
    }
}

fn reg_incompressible_limit_from_memory(t: &mut Table) {
    t.is("coefficient at rest", perry(1.0).0);
}
