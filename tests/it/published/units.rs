//! Units of vacuum in the workshop.

use sim_core::units::{AbsPressure, GaugePressure, PA_PER_INHG, PressureDiff};

use super::{Table, half_digit};

#[test]
fn val_inches_of_mercury() {
    /// A definition: rounding only.
    const ROUNDING: f64 = 1e-12;
    /// Half a pascal as printed, in inches of mercury.
    const PRINTED_INHG: f64 = 2e-4;
    /// Two conventions for mercury's density differ in the seventh digit.
    const MERCURY: f64 = 1e-5;
    let mut t = Table::of("unit tables (29.921 26 inHg = 101.325 kPa), conversions", "9.13");
    for (inhg, kpa) in [
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
    ] {
        let p = GaugePressure::from_pa(-inhg * PA_PER_INHG);
        t.near(&format!("{inhg} inHg of vacuum, kPa gauge"), p.kpa(), -kpa, half_digit(3));
        t.near(&format!("{kpa} kPa, inHg"), GaugePressure::from_kpa(-kpa).inhg(), -inhg, PRINTED_INHG);
    }
    t.near("standard atmosphere, inHg", AbsPressure::from_pa(101_325.0).inhg(), 29.921_26, MERCURY);
    t.near("1 mbar, Pa", PressureDiff::from_pa(100.0).mbar(), 1.0, ROUNDING);
}

#[test]
fn val_gauge_shows_difference_to_the_atmosphere() {
    /// There and back: rounding only.
    const ROUNDING: f64 = 1e-9;
    /// Half a pascal as printed, in inches of mercury.
    const PRINTED_INHG: f64 = 2e-4;
    // Row 9.11: the gauge shows the difference between manifold and atmosphere. Row 9.1: about 20 inHg.
    let ambient = AbsPressure::from_kpa(101.325);
    let manifold = AbsPressure::from_kpa(101.325 - 67.728);
    let mut t = Table::of("US Army TM 9-8000, para 17-8", "9.11");
    t.near("idle vacuum, inHg", -manifold.gauge(ambient).inhg(), 20.0, PRINTED_INHG);
    t.near(
        "and back, kPa absolute",
        manifold.gauge(ambient).absolute(ambient).kpa(),
        manifold.kpa(),
        ROUNDING,
    );
}
