//! Booster mechanics: an instrumented test car's numbers, and what follows from them.

use sim_core::air::{R_AIR, standard_pressure};
use sim_core::parts::PartKind;
use sim_core::parts::booster::Booster;

use super::{Table, half_digit};
use crate::rig::{Bench, ISOTHERMAL_M2, Rig, alder_part, constant_pump, day_of};

/// Pressure of the day the rows use, Pa.
const P_ATM: f64 = 101_300.0;

/// The test car's booster (row 7.2) with a wall of stone at `stop_mm`, tight, isothermal.
fn test_car(stop_mm: f64) -> Booster {
    let PartKind::Booster(alder) = alder_part("booster") else { panic!("Alder's booster is none") };
    Booster {
        brake_free_mm: stop_mm,
        brake_kn_per_cm2: 1e5,
        jump_in_n: 0.0,
        seep_cm3_per_min: 0.0,
        surface_m2: ISOTHERMAL_M2,
        ..alder
    }
}

/// The booster at 33 kPa abs, with the pump that brought it there (and holds it, if `held`).
fn bench(booster: Booster, p_atm: f64, held: bool) -> Bench {
    let mut bench = Rig::default()
        .part("booster", PartKind::Booster(booster))
        .part("suction", constant_pump(1.0, 33e3 / p_atm, 50.0))
        .join("suction.stem", "booster.vacuum")
        .on(day_of(p_atm, 20.0), &[]);
    bench.stroke("suction", 5.0);
    bench.run_s(30.0);
    if !held {
        bench.stroke("suction", 0.0);
    }
    bench
}

#[test]
fn val_parameter_set_of_the_test_car() {
    /// As printed; Alder is built on it.
    const PRINTED: f64 = 1e-9;
    let PartKind::Booster(b) = alder_part("booster") else { panic!("Alder's booster is none") };
    let mut t = Table::of("California PATH report UCB-ITS-PRR-97-21, table 2.1, in public notes", "7.2");
    t.near("effective area, m²", b.area_m2(), 5.33e-2, PRINTED);
    t.near("front volume at rest, L", b.front_l, 2.4, PRINTED);
    t.near("rear volume at rest, L", b.rear_l, 0.43, PRINTED);
    t.near("return spring at rest, N", b.law().spring_force(0.0).0, 97.0, PRINTED);
    t.near("return spring at 10 mm, N", b.law().spring_force(0.01).0, 97.0 + 24.11, PRINTED);
}

#[test]
fn reg_greatest_assist_by_altitude() {
    /// Two decimals of kN are printed; the row's altitudes are geopotential (trap T2: 13 Pa at 3000 m).
    const PRINTED_KN: f64 = 0.006;
    let mut t = Table::of("A (p_atm − 33 kPa), computed", "7.5, 7.6");
    for (z, printed) in [(0.0, 3.64), (1_000.0, 3.03), (2_000.0, 2.48), (3_000.0, 1.98)] {
        let mut bench = bench(test_car(10.0), standard_pressure(z).pa(), true);
        bench.circuit.inputs_mut().pedal_n = 400.0;
        bench.run_s(10.0);
        t.near(&format!("{z} m, kN"), bench.circuit.assist_n() * 1e-3, printed, PRINTED_KN);
    }
}

#[test]
fn reg_reserve_without_source() {
    /// The end stop yields 0.09 mm to such a foot.
    const STOPS_MM: f64 = 0.1;
    /// Two decimals are printed, and each link begins from a printed one, of which up to 0.6 is passed on.
    const CHAIN_KPA: f64 = 0.008;
    /// The step's error through an application, as converged runs show it, with room.
    const STEP_KPA: f64 = 0.01;
    // The row's formula, p′ = [p (V_f0 − A x) + p_atm (V_r0 + A x)]/(V_f0 + V_r0), lets p·A·x of air vanish
    // from the front chamber at every application: it holds the front at p while the piston moves in,
    // which takes a source. In a tight booster that air stays: p V_f0 instead of p (V_f0 − A x).
    let (a, front, rear) = (5.33e-2, 2.4e-3, 0.43e-3);
    let by_row = |p: f64, x: f64| (p * (front - a * x) + P_ATM * (rear + a * x)) / (front + rear);
    let kept = |p: f64, x: f64| p * a * x / (front + rear);
    let mut t = Table::of("PATH test car, reserve, formula and table in public notes", "7.7, 7.8");
    for (x_mm, chain) in
        [(5.0, [33.0, 49.81, 62.48, 72.04, 79.24]), (10.0, [33.0, 56.24, 71.57, 81.69, 88.36])]
    {
        for link in chain.windows(2) {
            let got = by_row(link[0] * 1e3, x_mm * 1e-3) * 1e-3;
            t.near(&format!("the row's own formula, {x_mm} mm, kPa abs"), got, link[1], CHAIN_KPA);
        }
        let mut bench = bench(test_car(x_mm), P_ATM, false);
        for i in 1.. {
            let before = bench.pa("booster.vacuum");
            bench.circuit.inputs_mut().pedal_n = 1_200.0;
            bench.run_s(5.0);
            let x = bench.circuit.pedal_travel_mm() / 4.0 * 1e-3;
            bench.circuit.inputs_mut().pedal_n = 0.0;
            bench.run_s(10.0);
            // The rest stop yields 0.05 mm to the return spring, and the pump adds its 2 cm³.
            let (yields, pump) = (97.0 / 2e6 * a, 2e-6);
            let v = front + rear;
            let expected =
                ((by_row(before, x) + kept(before, x)) * v + before * (yields + pump)) / (v + pump) * 1e-3;
            if P_ATM * 1e-3 < expected {
                break; // The foot has pumped the booster up to the air's pressure: nothing is in reserve.
            }
            t.near(&format!("application {i}: travel, mm"), x * 1e3, x_mm, STOPS_MM);
            let got = bench.pa("booster.vacuum") * 1e-3;
            t.near(&format!("application {i}, {x_mm} mm: store, kPa abs"), got, expected, STEP_KPA);
        }
    }
}

#[test]
fn reg_air_used_by_an_application() {
    /// Three digits of a gram are printed.
    const PRINTED_G: f64 = 0.006;
    // Row 7.9 has Δp (V_r0 + A x)/(R T) = 0.782 g, again without the p·A·x the front keeps: what comes
    // in from the open is [p_atm (V_r0 + A x) − p V_r0]/(R T), 0.21 g more.
    let mut bench = bench(test_car(10.0), P_ATM, false);
    let before = bench.circuit.ledgers().mass_out_kg;
    bench.circuit.inputs_mut().pedal_n = 1_200.0;
    bench.run_s(5.0);
    let x = bench.circuit.pedal_travel_mm() / 4.0 * 1e-3;
    let came_in = (before - bench.circuit.ledgers().mass_out_kg) * 1e3;
    let kept = 33e3 * 5.33e-2 * x / (R_AIR * 293.15) * 1e3;
    let mut t = Table::of("PATH test car, air per application, public notes", "7.9");
    let stretched = (P_ATM - 33e3) * 5.33e-2 * (x - 0.01) / (R_AIR * 293.15) * 1e3;
    t.near("air, g, less what the front keeps", came_in - kept - stretched, 0.782, PRINTED_G);
}

#[test]
fn reg_run_out_point() {
    /// The rear chamber has long reached the air's pressure: the step's error.
    const SETTLED: f64 = 1e-5;
    /// Above the knee one more newton in gives one more out; the step and the damping leave 2 %.
    const SLOPE: f64 = 0.02;
    // Row 7.10: F_in,knee = F_assist,max/(SR − 1). Preload small, no jump-in, no return spring.
    let booster = Booster {
        valve_preload_n: 5.0,
        valve_span_n: 5.0,
        jump_in_n: 0.0,
        spring_n: 0.0,
        spring_n_per_m: 0.0,
        brake_free_mm: 0.0,
        brake_kn_per_cm2: 10.0,
        ..test_car(0.0)
    };
    let at = |input_n: f64| {
        let mut bench = bench(booster, P_ATM, true);
        bench.circuit.inputs_mut().pedal_n = input_n / booster.pedal_ratio;
        bench.run_s(20.0);
        (bench.circuit.brake_force_n(), bench.circuit.assist_n())
    };
    let full = booster.area_m2() * (P_ATM - 33e3);
    let knee = full / (booster.servo_ratio - 1.0);
    let mut t = Table::of("F_assist,max/(SR − 1), derivation in public notes", "7.10");
    let (below, assist_below) = at(0.8 * knee);
    t.near_rel("below the knee: output over input", below / (0.8 * knee - 5.0), booster.servo_ratio, SLOPE);
    t.within("below the knee: assist over the greatest", assist_below / full, 0.7, 0.85);
    let ((one, assist_above), (two, _)) = (at(1.1 * knee), at(1.3 * knee));
    t.near("above the knee: assist over the greatest", assist_above / full, 1.0, SETTLED);
    t.near("above the knee: slope", (two - one) / (0.2 * knee), 1.0, SLOPE);
    t.near("the knee of row 7.5's assist and SR 5, kN", knee * 1e-3, 3.64 / 4.0, half_digit(2));
}

#[test]
fn val_run_out_is_where_the_rear_reaches_the_air() {
    /// After 10 s nothing is left of the difference but the step's error.
    const REACHED_KPA: f64 = 1e-3;
    let mut bench = bench(test_car(10.0), P_ATM, true);
    bench.circuit.inputs_mut().pedal_n = 1_200.0;
    bench.run_s(10.0);
    let (rear, _) = bench.air("booster.rear");
    Table::of("US patent 6,033,038", "7.1").near(
        "apply chamber at run-out, kPa",
        rear * 1e-3,
        P_ATM * 1e-3,
        REACHED_KPA,
    );
}
