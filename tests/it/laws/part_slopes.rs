//! The slopes the parts' laws return are those of the values they return.

use sim_core::math::smoothstep;
use sim_core::parts::booster::Booster;
use sim_core::parts::hose::{SOFT_BEGINS_PA, SOFT_SPAN_PA, open_share};
use sim_core::parts::instruments::TestLamp;
use sim_core::parts::vacuum_pump::VacuumPump;

/// Central difference with a step of 1e-5 of the range: curvature and rounding stay below this.
const RELATIVE: f64 = 1e-5;

/// Checks `law`'s slope at 997 places from `min` to `max`, except within two steps of a corner.
fn check(name: &str, min: f64, max: f64, corners: &[f64], law: &dyn Fn(f64) -> (f64, f64)) {
    let h = (max - min) * 1e-5;
    let scale = (law(max).0 - law(min).0).abs() / (max - min);
    for i in 1..=997 {
        let x = min + (max - min) * f64::from(i) / 998.0;
        if corners.iter().any(|c| (x - c).abs() < 2.0 * h) {
            continue;
        }
        let numeric = (law(x + h).0 - law(x - h).0) / (2.0 * h);
        let got = law(x).1;
        let tol = RELATIVE * (numeric.abs() + scale + f64::MIN_POSITIVE);
        assert!((got - numeric).abs() <= tol, "{name} at {x}: {got:e} against {numeric:e}");
    }
}

fn booster() -> Booster {
    Booster {
        front_l: 2.4,
        rear_l: 0.43,
        area_cm2: 533.0,
        spring_n: 97.0,
        spring_n_per_m: 2_411.0,
        pedal_ratio: 4.0,
        servo_ratio: 5.0,
        jump_in_n: 250.0,
        valve_preload_n: 50.0,
        valve_span_n: 50.0,
        admit_mm2: 30.0,
        equalise_mm2: 100.0,
        brake_kn_per_cm2: 1.0,
        brake_free_mm: 2.0,
        damping_kns_per_m: 5.0,
        bore_mm: 9.0,
        surface_m2: 0.2,
        seep_cm3_per_min: 1.0,
        rim_mm: 0.0,
        tear_mm: 0.0,
        seat_mm: 0.0,
        air_seat_mm: 0.0,
        front_seal_mm: 0.0,
        filter_blocked: 0.0,
        drag_n: 0.0,
        rod_mm: 0.0,
    }
}

#[test]
fn inv_booster_slopes() {
    let b = booster();
    let reaction_starts = (2.0 + 10.0 * f64::sqrt(0.25)) * 1e-3;
    check("brake force", -0.002, 0.04, &[0.002], &|x| b.law().brake_force(x));
    check("spring force", -0.001, 0.04, &[0.0], &|x| b.law().spring_force(x));
    check("valve force", 0.0, 0.04, &[0.002, reaction_starts], &|x| b.law().valve_force(100.0, x));
    check("admit", -100.0, 100.0, &[0.0, 50.0], &|e| b.law().admit_lift(e));
    check("equalise", -100.0, 100.0, &[-50.0, -10.0], &|e| b.law().equalise_lift(e));
    let sticks = Booster { drag_n: 40.0, rod_mm: 0.5, ..b };
    check("dry friction", -400.0, 400.0, &[-40.0, 40.0], &|f| sticks.law().unstuck(f));
    check("push-rod", -0.002, 0.04, &[0.0015], &|x| sticks.law().brake_force(x));
}

#[test]
fn inv_booster_valve_never_admits_and_joins_at_once() {
    let b = booster();
    for i in -1_000..=1_000 {
        let e = f64::from(i) * 0.1;
        assert!(b.law().admit_lift(e).0 * b.law().equalise_lift(e).0 <= 0.0, "both open at {e} N");
    }
    assert!((b.law().equalise_lift(-b.valve_preload_n).0 - 1.0).abs() <= 0.0, "joined at rest");
    assert!((b.law().admit_lift(-b.valve_preload_n).0).abs() <= 0.0, "shut to the air at rest");
}

#[test]
fn inv_pump_slopes() {
    let p = VacuumPump {
        displacement_cm3: 10.0,
        slip_mm2: 0.3,
        volume_ratio: 1.5,
        friction_nm: 0.1,
        viscous_mnms: 0.2,
        motor_k: 0.03,
        winding_ohm: 0.2,
        inertia_kgcm2: 1.0,
        winding_j_per_k: 60.0,
        case_j_per_k: 400.0,
        winding_w_per_k: 1.0,
        case_w_per_k: 0.5,
        inlet_cm3: 10.0,
        bore_mm: 8.0,
        wear_mm2: 0.0,
        brush_ohm: 0.0,
        drag_nm: 0.05,
    };
    check("compression", 1e3, 101e3, &[], &|x| p.compression_torque(x, 101_325.0));
    check("friction near rest", -1.0, 1.0, &[], &|w| p.motor().friction_torque(w));
    check("friction", 5.0, 500.0, &[], &|w| p.motor().friction_torque(w));
}

#[test]
fn inv_soft_wall_slopes() {
    let corners = [SOFT_BEGINS_PA, SOFT_BEGINS_PA + SOFT_SPAN_PA];
    check("soft wall", -20e3, 100e3, &corners, &|below| open_share(0.97, below));
}

#[test]
fn inv_lamp_slopes() {
    let lamp = TestLamp { rated_w: 21.0, rated_v: 12.0 }.filament();
    check("filament resistance", 250.0, 3_200.0, &[], &|t| lamp.resistance_ohm(t));
    check("radiated power", 250.0, 3_200.0, &[], &|t| lamp.radiated_w(t, 293.15));
}

#[test]
fn inv_smoothstep_slope() {
    check("smoothstep", -0.5, 1.5, &[0.0, 1.0], &|x| smoothstep(x));
}
