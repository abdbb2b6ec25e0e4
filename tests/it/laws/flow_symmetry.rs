//! Every flow law: nothing flows between equal pressures, air runs downhill, what goes in comes out, a
//! passage without a valve is the same both ways, and more difference never means less flow.

use sim_core::flow::iso6358::Iso6358;
use sim_core::flow::pinhole::Pinhole;
use sim_core::flow::valve::CheckLaw;
use sim_core::flow::{Flow, Gas, R_LAMINAR, laminar};

/// Same numbers, other order: rounding only.
const ROUNDING: f64 = 1e-12;

fn pressures() -> impl Iterator<Item = f64> {
    (1..=60).map(|i| 2e3 * f64::from(i))
}

fn gas(p: f64) -> Gas {
    Gas { p, t: 293.15 }
}

type Law = Box<dyn Fn(Gas, Gas) -> Flow>;

fn passages() -> Vec<(&'static str, Law)> {
    let sharp = Pinhole::of_diameter_mm(0.7);
    let ideal = Pinhole { ideal: true, ..sharp };
    let hose = Iso6358 { c: 4e-8, b: 0.45 };
    vec![
        ("sharp hole", Box::new(move |a, b| sharp.flow(a, b))),
        ("ideal hole", Box::new(move |a, b| ideal.flow(a, b))),
        ("ISO 6358", Box::new(move |a, b| hose.flow(a, b))),
        ("seep", Box::new(move |a, b| laminar::flow(laminar::coefficient(3.0), a, b))),
    ]
}

#[test]
fn inv_passages_are_the_same_both_ways() {
    for (name, law) in passages() {
        for a in pressures() {
            for b in pressures() {
                let (there, back) = (law(gas(a), gas(b)).m, law(gas(b), gas(a)).m);
                assert!((there + back).abs() <= ROUNDING * there.abs(), "{name} {a} {b}: {there} {back}");
            }
        }
    }
}

#[test]
fn inv_air_runs_downhill_and_rests_at_equal_pressures() {
    for (name, law) in passages() {
        for a in pressures() {
            assert!(law(gas(a), gas(a)).m.abs() <= 0.0, "{name}: flow at rest, {a} Pa");
            for b in pressures().filter(|b| *b < a) {
                assert!(0.0 < law(gas(a), gas(b)).m, "{name}: uphill from {a} to {b}");
            }
        }
    }
}

#[test]
fn inv_a_deeper_vacuum_never_draws_less_through_a_passage() {
    for (name, law) in passages() {
        // A sharp hole by Perry's polynomial rises all the way to r = 0 as well.
        let mut last = 0.0;
        for i in 0..=4_000 {
            let p = 101_325.0 * (1.0 - f64::from(i) / 4_000.0 * 0.999);
            let m = law(gas(101_325.0), gas(p)).m;
            assert!(last <= m * (1.0 + ROUNDING), "{name}: {m:e} at {p} Pa after {last:e}");
            last = m;
        }
    }
}

#[test]
fn inv_laws_are_continuous_where_their_formula_changes() {
    for (name, law) in passages() {
        for r in [0.45, sim_core::flow::pinhole::R_CRITICAL, R_LAMINAR, 1.0] {
            let at = |x: f64| law(gas(100e3), gas(100e3 * x)).m;
            let (below, above) = (at(r - 1e-12), at(r + 1e-12));
            let peak = at(0.01).abs();
            assert!((below - above).abs() <= 1e-9 * peak, "{name}: jump at {r}: {below:e} {above:e}");
        }
    }
}

#[test]
fn inv_a_sound_check_valve_lets_nothing_back() {
    let law = CheckLaw {
        open: Iso6358 { c: 5e-8, b: 0.4 },
        p_crack: 1e3,
        p_span: 2e3,
        leak: Pinhole::of_diameter_mm(0.0),
        lift_min: 0.0,
    };
    for a in pressures() {
        for b in pressures() {
            let m = law.flow(gas(a), gas(b)).m;
            if a - b <= 1e3 {
                assert!(m.abs() <= 0.0, "{a} {b}: {m:e}");
            } else {
                assert!(0.0 < m, "{a} {b}: {m:e}");
            }
        }
    }
}
