//! Units of vacuum in the workshop.

use sim_core::units::{AbsPressure, GaugePressure, PA_PER_INHG, PressureDiff};

use super::{Table, checks};

checks! {
    val_inches_of_mercury through Own {
        /// A definition: rounding only.
        ROUNDING = 1e-12;
        /// Half a pascal as printed, in inches of mercury.
        PRINTED_INHG = 2e-4;
        /// Two conventions for mercury's density differ in the seventh digit.
        MERCURY = 1e-5;
        "9.13" of "unit tables (29.921 26 inHg = 101.325 kPa), conversions" => [
            series(
                "vacuum of {} inHg",
                "kPa",
                &[
                    (2.0, 6.773),
                    (5.0, 16.932),
                    (8.0, 27.091),
                    (10.0, 33.864),
                    (12.0, 40.637),
                    (15.0, 50.796),
                    (17.0, 57.569),
                    (18.0, 60.955),
                    (20.0, 67.728),
                    (22.0, 74.501),
                    (25.0, 84.660),
                ],
                half_digit(3),
            ),
            formula("vacuum of {} kPa", "inHg", "the same table, read backwards", abs(PRINTED_INHG)),
            value("standard atmosphere", "inHg", 29.921_26, abs(MERCURY)),
            value("1 mbar", "Pa", 1.0, abs(ROUNDING)),
        ];
    }

    val_gauge_shows_difference_to_the_atmosphere through Own {
        /// There and back: rounding only.
        ROUNDING = 1e-9;
        /// Half a pascal as printed, in inches of mercury.
        PRINTED_INHG = 2e-4;
        // The gauge shows the difference between manifold and atmosphere. Row 9.1: about 20 inHg.
        "9.11" of "US Army TM 9-8000, para 17-8" => [
            value("idle vacuum", "inHg", 20.0, abs(PRINTED_INHG)),
            formula("and back", "kPa absolute", "the pressure it began with", abs(ROUNDING)),
        ];
    }
}

fn val_inches_of_mercury(t: &mut Table) {
    t.series("vacuum of {} inHg", |inhg| -GaugePressure::from_pa(-inhg * PA_PER_INHG).kpa());
    for (inhg, kpa) in t.points("vacuum of {} inHg") {
        t.follows_for("vacuum of {} kPa", kpa, -GaugePressure::from_kpa(-kpa).inhg(), *inhg);
    }
    t.is("standard atmosphere", AbsPressure::from_pa(101_325.0).inhg());
    t.is("1 mbar", PressureDiff::from_pa(100.0).mbar());
}

fn val_gauge_shows_difference_to_the_atmosphere(t: &mut Table) {
    let ambient = AbsPressure::from_kpa(101.325);
    let manifold = AbsPressure::from_kpa(101.325 - 67.728);
    t.is("idle vacuum", -manifold.gauge(ambient).inhg());
    t.follows("and back", manifold.gauge(ambient).absolute(ambient).kpa(), manifold.kpa());
}
