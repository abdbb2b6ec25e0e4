//! Booster mechanics: an instrumented test car's numbers, and what follows from them.

use sim_core::air::{R_AIR, standard_pressure};
use sim_core::parts::PartKind;
use sim_core::parts::booster::Booster;
use sim_core::parts::elements::PistonLaw;

use super::{Table, checks};
use crate::rig::{Bench, ISOTHERMAL_M2, Rig, alder_part, constant_pump, day_of};

checks! {
    val_parameter_set_of_the_test_car through Law(Booster::law, PistonLaw::<f64>::spring_force) {
        /// As printed; Alder is built on it.
        PRINTED = 1e-9;
        "7.2" of "California PATH report UCB-ITS-PRR-97-21, table 2.1, in public notes" => [
            value("effective area", "m²", 5.33e-2, abs(PRINTED)),
            value("front volume at rest", "L", 2.4, abs(PRINTED)),
            value("rear volume at rest", "L", 0.43, abs(PRINTED)),
            value("return spring at rest", "N", 97.0, abs(PRINTED)),
            value("return spring at 10 mm", "N", 97.0 + 24.11, abs(PRINTED)),
        ];
    }

    reg_greatest_assist_by_altitude through Step {
        /// Two decimals of kN are printed; the row's altitudes are geopotential (trap T2: 13 Pa at 3000 m).
        PRINTED_KN = 0.006;
        "7.5, 7.6" of "A (p_atm − 33 kPa), computed" => [
            series(
                "{} m",
                "kN",
                &[(0.0, 3.64), (1_000.0, 3.03), (2_000.0, 2.48), (3_000.0, 1.98)],
                abs(PRINTED_KN),
            ),
        ];
    }

    reg_reserve_without_source through Step {
        /// The end stop yields 0.09 mm to such a foot.
        STOPS_MM = 0.1;
        /// Two decimals are printed, and each link begins from a printed one, of which up to 0.6 is passed on.
        CHAIN_KPA = 0.008;
        /// The step's error through an application, as converged runs show it, with room.
        STEP_KPA = 0.01;
        "7.7, 7.8" of "PATH test car, reserve, formula and table in public notes" => [
            series(
                "the row's own formula, 5 mm, from {} kPa",
                "kPa abs",
                &[(33.0, 49.81), (49.81, 62.48), (62.48, 72.04), (72.04, 79.24)],
                abs(CHAIN_KPA),
            ),
            series(
                "the row's own formula, 10 mm, from {} kPa",
                "kPa abs",
                &[(33.0, 56.24), (56.24, 71.57), (71.57, 81.69), (81.69, 88.36)],
                abs(CHAIN_KPA),
            ),
            formula("travel at application {}", "mm", "the stop's place", abs(STOPS_MM)),
            formula(
                "store after application {}",
                "kPa abs",
                "[p V_f0 + p_atm (V_r0 + A x)]/(V_f0 + V_r0), and what stop and pump take",
                abs(STEP_KPA),
            ),
        ];
    }

    reg_air_used_by_an_application through Step {
        /// Three digits of a gram are printed.
        PRINTED_G = 0.006;
        "7.9" of "PATH test car, air per application, public notes" => [
            value("air less what the front keeps", "g", 0.782, abs(PRINTED_G)),
        ];
    }

    reg_run_out_point through Step {
        /// The rear chamber has long reached the air's pressure: the step's error.
        SETTLED = 1e-5;
        /// Above the knee one more newton in gives one more out; the step and the damping leave 2 %.
        SLOPE = 0.02;
        // Row 7.10: F_in,knee = F_assist,max/(SR − 1).
        "7.10" of "F_assist,max/(SR − 1), derivation in public notes" => [
            formula("below the knee: output over input", "1", "the servo ratio", rel(SLOPE)),
            band("below the knee: assist over the greatest", "1", 0.7, 0.85),
            value("above the knee: assist over the greatest", "1", 1.0, abs(SETTLED)),
            value("above the knee: slope", "1", 1.0, abs(SLOPE)),
            value("the knee of row 7.5's assist and SR 5", "kN", 3.64 / 4.0, half_digit(2)),
        ];
    }

    val_run_out_is_where_the_rear_reaches_the_air through Step {
        /// After 10 s nothing is left of the difference but the step's error.
        REACHED_KPA = 1e-3;
        "7.1" of "US patent 6,033,038" => [
            value("apply chamber at run-out", "kPa", P_ATM * 1e-3, abs(REACHED_KPA)),
        ];
    }
}

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

fn val_parameter_set_of_the_test_car(t: &mut Table) {
    let PartKind::Booster(b) = alder_part("booster") else { panic!("Alder's booster is none") };
    t.is("effective area", b.area_m2());
    t.is("front volume at rest", b.front_l);
    t.is("rear volume at rest", b.rear_l);
    t.is("return spring at rest", b.law().spring_force(0.0).0);
    t.is("return spring at 10 mm", b.law().spring_force(0.01).0);
}

fn reg_greatest_assist_by_altitude(t: &mut Table) {
    t.series("{} m", |z| {
        let mut bench = bench(test_car(10.0), standard_pressure(z).pa(), true);
        bench.circuit.inputs_mut().pedal_n = 400.0;
        bench.run_s(10.0);
        bench.circuit.assist_n() * 1e-3
    });
}

fn reg_reserve_without_source(t: &mut Table) {
    // The row's formula, p′ = [p (V_f0 − A x) + p_atm (V_r0 + A x)]/(V_f0 + V_r0), lets p·A·x of air vanish
    // from the front chamber at every application: it holds the front at p while the piston moves in,
    // which takes a source. In a tight booster that air stays: p V_f0 instead of p (V_f0 − A x).
    let (a, front, rear) = (5.33e-2, 2.4e-3, 0.43e-3);
    let by_row = |p: f64, x: f64| (p * (front - a * x) + P_ATM * (rear + a * x)) / (front + rear);
    let kept = |p: f64, x: f64| p * a * x / (front + rear);
    t.series("the row's own formula, 5 mm, from {} kPa", |kpa| by_row(kpa * 1e3, 5.0 * 1e-3) * 1e-3);
    t.series("the row's own formula, 10 mm, from {} kPa", |kpa| by_row(kpa * 1e3, 10.0 * 1e-3) * 1e-3);
    for x_mm in [5.0, 10.0] {
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
            let whom = format!("{i}, {x_mm} mm");
            t.follows_for("travel at application {}", &whom, x * 1e3, x_mm);
            let got = bench.pa("booster.vacuum") * 1e-3;
            t.follows_for("store after application {}", &whom, got, expected);
        }
    }
}

fn reg_air_used_by_an_application(t: &mut Table) {
    // Row 7.9 has Δp (V_r0 + A x)/(R T) = 0.782 g, again without the p·A·x the front keeps: what comes
    // in from the open is [p_atm (V_r0 + A x) − p V_r0]/(R T), 0.21 g more.
    let mut bench = bench(test_car(10.0), P_ATM, false);
    let before = bench.circuit.balances().mass_out_kg;
    bench.circuit.inputs_mut().pedal_n = 1_200.0;
    bench.run_s(5.0);
    let x = bench.circuit.pedal_travel_mm() / 4.0 * 1e-3;
    let came_in = (before - bench.circuit.balances().mass_out_kg) * 1e3;
    let kept = 33e3 * 5.33e-2 * x / (R_AIR * 293.15) * 1e3;
    let stretched = (P_ATM - 33e3) * 5.33e-2 * (x - 0.01) / (R_AIR * 293.15) * 1e3;
    t.is("air less what the front keeps", came_in - kept - stretched);
}

fn reg_run_out_point(t: &mut Table) {
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
    let (below, assist_below) = at(0.8 * knee);
    t.follows("below the knee: output over input", below / (0.8 * knee - 5.0), booster.servo_ratio);
    t.is("below the knee: assist over the greatest", assist_below / full);
    let ((one, assist_above), (two, _)) = (at(1.1 * knee), at(1.3 * knee));
    t.is("above the knee: assist over the greatest", assist_above / full);
    t.is("above the knee: slope", (two - one) / (0.2 * knee));
    t.is("the knee of row 7.5's assist and SR 5", knee * 1e-3);
}

fn val_run_out_is_where_the_rear_reaches_the_air(t: &mut Table) {
    let mut bench = bench(test_car(10.0), P_ATM, true);
    bench.circuit.inputs_mut().pedal_n = 1_200.0;
    bench.run_s(10.0);
    let (rear, _) = bench.air("booster.rear");
    t.is("apply chamber at run-out", rear * 1e-3);
}
