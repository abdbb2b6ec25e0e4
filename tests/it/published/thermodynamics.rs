//! Heating and cooling of the air that stays or comes in, through the circuit's own step.
//!
//! The rows are adiabatic: the vessel's walls are taken away. The circuit cannot hold a tank above the
//! day's pressure, so the day's pressure is that of the tank; what leaves is drawn off by a pump, which
//! is the same to the air that remains.

use sim_core::parts::booster::Booster;

use super::{Table, checks};
use crate::rig::{Bench, ISOTHERMAL_M2, Rig, constant_pump, day_of, vessel, vessel_and_pump};
use sim_core::parts::PartKind;

checks! {
    val_adiabatic_blow_down through Step {
        /// Two decimals are printed, and the step may be off by 2e-4 per step of the pressure.
        STEP_K = 0.05;
        /// One decimal is printed; R of the book is 287.0, ours 287.053.
        PRINTED_KG = 0.1;
        "3.8" of "Balmer, Modern Engineering Thermodynamics, Ex. 4.20" => [
            value("temperature of the air that stays", "K", 97.45, abs(STEP_K)),
            value("mass of the air that stays", "kg", 143.0, abs(PRINTED_KG)),
        ];
    }

    reg_adiabatic_evacuation through Step {
        /// The step's error.
        STEP_K = 0.05;
        "3.9" of "adiabatic evacuation from 293.15 K, computed" => [
            series("101 325 to {} Pa", "K", &[(50e3, 239.58), (30e3, 207.04)], abs(STEP_K)),
        ];
    }

    reg_adiabatic_filling through Step {
        /// Half of the last pascal printed.
        FILLED_PA = 0.5;
        /// The last pascals come in slowly; the step's error on top.
        STEP_K = 0.15;
        "3.10, 3.11" of "first law, filling from the atmosphere at 293.15 K, computed" => [
            value("from {} Pa: filled", "Pa", 101_325.0, abs(FILLED_PA)),
            series("from {} Pa", "K", &[(30e3, 366.95), (30.0, 410.41)], abs(STEP_K)),
        ];
    }

    reg_small_warm_housing_settles_back through Step {
        /// After 30 s the air is at the wall's temperature, to the step's error.
        WARMING = 1e-5;
        "3.9, T12" of "settling after a pull-down (trap T12, computed)" => [
            band("air just after the pull-down (adiabatic 207, wall 293)", "K", 230.0, 292.5),
            band("settling back", "kPa", 0.05, 8.0),
            formula("isothermal in the end: p/T", "1", "wall over the cold air, 293.15 K/T", abs(WARMING)),
        ];
    }

    reg_air_takes_on_the_walls_temperature through Step {
        /// The air's heat capacity changes by a few per cent on the way; the step's error on top.
        LUMPED = 0.03;
        // The design's figure: some 5 W/(m² K) on the inner surface. τ = m c_v/(h A), here 2.1 s.
        "design, T12" of "5 W/(m² K), common practice, no source" => [
            formula("time constant of the air", "s", "m c_v/(h A)", rel(LUMPED)),
        ];
    }
}

/// Evacuates an adiabatic vessel to `target` Pa; temperature of what remains, K.
fn evacuated(mut bench: Bench, strokes: f64, target: f64) -> Bench {
    bench.stroke("suction", strokes);
    bench.when_fallen(0.05, 3_600.0, target, |b| b.pa("vessel.vacuum"));
    bench
}

/// Temperature at `target` Pa from one close by, along the adiabatic, K.
fn moved_to(target: f64, (p, t): (f64, f64)) -> f64 {
    t * f64::powf(target / p, 0.4 / 1.4)
}

fn val_adiabatic_blow_down(t: &mut Table) {
    let tank = Booster { bore_mm: 1_000.0, ..vessel(20e3, 0.0) };
    // A slow draw: 0.56 m³/s, some 100 s.
    let bench = evacuated(vessel_and_pump(tank, 0.0, day_of(10e6, 298.0 - 273.15)), 560.0, 200e3);
    let air = bench.air("vessel.front");
    let kelvin = moved_to(200e3, air);
    let m = bench.mass("vessel.front", 20.0) * f64::powf(200e3 / air.0, 1.0 / 1.4);
    t.is("temperature of the air that stays", kelvin);
    t.is("mass of the air that stays", m);
}

fn reg_adiabatic_evacuation(t: &mut Table) {
    t.series("101 325 to {} Pa", |target| {
        let bench = evacuated(vessel_and_pump(vessel(5.0, 0.0), 0.0, day_of(101_325.0, 20.0)), 1.0, target);
        moved_to(target, bench.air("vessel.front"))
    });
}

fn reg_adiabatic_filling(t: &mut Table) {
    for from in [30e3, 30.0] {
        let mut bench = Rig::default()
            .part("vessel", PartKind::Booster(Booster { bore_mm: 10.0, ..vessel(5.0, ISOTHERMAL_M2) }))
            .part("tee", crate::rig::tee(10.0, 2.0, 0.0))
            .part("suction", constant_pump(1.0, 0.0, 10.0))
            .join("tee.1", "vessel.vacuum")
            .join("suction.stem", "tee.2")
            .on(day_of(101_325.0, 20.0), &[]);
        bench.stroke("suction", 3.0);
        bench.when_fallen(0.05, 3_600.0, from, |b| b.pa("vessel.vacuum"));
        bench.stroke("suction", 0.0);
        let start = bench.pa("vessel.vacuum");
        bench.set("vessel.surface_m2", 0.0);
        let tee_3 = bench.port("tee.3");
        bench.circuit.change(|a| a.set_stop(tee_3, None));
        bench.run_s(60.0);
        let (p, kelvin) = bench.air("vessel.front");
        t.is_for("from {} Pa: filled", from, p);
        // T₂ = γT/(1 + (p₁/p₂)(γ − 1)): the row's at its p₁, ours at the pressure the pump really left.
        let row = |p1: f64| 1.4 * 293.15 / (1.0 + p1 / 101_325.0 * 0.4);
        let nominal = if from < 1e3 { 0.0 } else { from };
        t.at("from {} Pa", from, kelvin + row(nominal) - row(start));
    }
}

fn reg_small_warm_housing_settles_back(t: &mut Table) {
    // Trap T12 and the design: a fast pull-down cools the air, which then warms up at the wall. In a
    // booster-sized vessel the vacuum settles back by itself for some seconds, without any leak.
    let bench = vessel_and_pump(vessel(2.83, 0.25), 0.0, day_of(101_325.0, 20.0));
    let mut bench = evacuated(bench, 1.0, 30e3);
    let (cold, before) = (bench.air("vessel.front").1, bench.pa("vessel.vacuum"));
    bench.stroke("suction", 0.0);
    bench.run_s(30.0);
    let after = bench.pa("vessel.vacuum");
    t.is("air just after the pull-down (adiabatic 207, wall 293)", cold);
    t.is("settling back", (after - before) * 1e-3);
    t.follows("isothermal in the end: p/T", after / before, 293.15 / cold);
}

fn reg_air_takes_on_the_walls_temperature(t: &mut Table) {
    let bench = vessel_and_pump(vessel(2.83, 0.25), 0.0, day_of(101_325.0, 20.0));
    let mut bench = evacuated(bench, 3.0, 30e3);
    bench.stroke("suction", 0.0);
    let cold = 293.15 - bench.air("vessel.front").1;
    bench.run_s(0.5);
    let after = 293.15 - bench.air("vessel.front").1;
    let by_law = bench.mass("vessel.front", 2.83e-3) * sim_core::air::CV / (5.0 * 0.25);
    t.follows("time constant of the air", 0.5 / f64::ln(cold / after), by_law);
}
