//! The slopes a flow law returns are those of the flow it returns.
//!
//! The circuit's step builds its Jacobian from them; a wrong slope would not fail, it would only be slow
//! or, worse, converge to something else.

use sim_core::flow::iso6358::Iso6358;
use sim_core::flow::pinhole::{Pinhole, R_CRITICAL};
use sim_core::flow::valve::CheckLaw;
use sim_core::flow::{Flow, Gas, R_LAMINAR, laminar};

/// Central difference: step 1e-6 of the variable leaves about 1e-10 of rounding and 1e-9 of curvature,
/// more where the root is steep (the curvature of √(1−r) at r = 0.999).
const RELATIVE: f64 = 1e-4;

/// Step of the difference, share of the variable.
const STEP: f64 = 1e-7;

/// Pressures from deep vacuum to boost, in a wide grid.
const PRESSURES: [f64; 14] =
    [0.8e3, 5e3, 14e3, 20e3, 33e3, 45e3, 53e3, 60e3, 79.5e3, 95e3, 99.5e3, 100.9e3, 101.325e3, 180e3];
const TEMPERATURES: [f64; 3] = [233.15, 293.15, 393.15];

/// Whether `a` and `b` lie so near a corner of the law (choking, laminar line, equal pressures, valve
/// edges) that a difference across it means nothing.
fn near_corner(a: f64, b: f64, corners: &[f64], edges: &[f64]) -> bool {
    let r = a.min(b) / a.max(b);
    corners.iter().any(|c| (r - c).abs() < 1e-5)
        || edges.iter().any(|e| (a - b - e).abs() < 1.0)
        || (1.0 - r).abs() < 1e-6
}

fn check(name: &str, law: &dyn Fn(Gas, Gas) -> Flow, corners: &[f64], edges: &[f64]) {
    let mut checked = 0;
    for &pa in &PRESSURES {
        for &pb in &PRESSURES {
            if near_corner(pa, pb, corners, edges) {
                continue;
            }
            for &ta in &TEMPERATURES {
                for &tb in &TEMPERATURES {
                    let (a, b) = (Gas { p: pa, t: ta }, Gas { p: pb, t: tb });
                    let f = law(a, b);
                    let slope = |x: f64, at: &dyn Fn(f64) -> Flow| {
                        let h = x * STEP;
                        (at(x + h).m - at(x - h).m) / (2.0 * h)
                    };
                    let numeric = [
                        slope(pa, &|p| law(Gas { p, t: ta }, b)),
                        slope(pb, &|p| law(a, Gas { p, t: tb })),
                        slope(ta, &|t| law(Gas { p: pa, t }, b)),
                        slope(tb, &|t| law(a, Gas { p: pb, t })),
                    ];
                    let scale =
                        [f.m.abs() / pa.min(pb), f.m.abs() / pa.min(pb), f.m.abs() / ta, f.m.abs() / tb];
                    for (i, (got, want)) in [f.dpa, f.dpb, f.dta, f.dtb].into_iter().zip(numeric).enumerate()
                    {
                        let tol = RELATIVE * (want.abs() + scale[i]);
                        assert!(
                            (got - want).abs() <= tol,
                            "{name}: slope {i} at {a:?} {b:?}: {got:e} against {want:e}"
                        );
                        checked += 1;
                    }
                }
            }
        }
    }
    assert!(1_000 < checked, "{name}: only {checked} slopes checked");
}

#[test]
fn inv_pinhole_slopes() {
    for ideal in [true, false] {
        let hole = Pinhole { area: 0.8e-6, ideal };
        check("pinhole", &|a, b| hole.flow(a, b), &[R_CRITICAL, R_LAMINAR], &[]);
    }
}

#[test]
fn inv_iso_6358_slopes() {
    for b in [0.0, 0.2, 0.35, 0.528, 0.8] {
        let law = Iso6358 { c: 3e-8, b };
        check("ISO 6358", &|x, y| law.flow(x, y), &[b, R_LAMINAR], &[]);
    }
}

#[test]
fn inv_seep_slopes() {
    let k = laminar::coefficient(4.0);
    check("seep", &|a, b| laminar::flow(k, a, b), &[], &[]);
}

#[test]
fn inv_check_valve_slopes() {
    for (leak_mm, lift_min, p_crack) in [(0.0, 0.0, 1e3), (0.3, 0.0, 1e3), (0.3, 0.2, 5e3), (2.0, 1.0, 300.0)]
    {
        let law = CheckLaw {
            open: Iso6358 { c: 5e-8, b: 0.4 },
            p_crack,
            p_span: 2e3,
            leak: Pinhole::of_diameter_mm(leak_mm),
            lift_min,
        };
        let edges = [p_crack, p_crack + 2e3];
        check("check valve", &|a, b| law.flow(a, b), &[0.4, R_CRITICAL, R_LAMINAR], &edges);
    }
}
