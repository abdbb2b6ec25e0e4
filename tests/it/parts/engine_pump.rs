//! Pump turned by the engine and reservoir: what they give with no current and no throttle.

use sim_core::air::{Day, R_AIR};
use sim_core::circuit::Circuit;
use sim_core::parts::PartKind;
use sim_core::parts::engine::{Engine, EngineState};
use sim_core::parts::engine_pump::EnginePump;
use sim_core::parts::reservoir::Reservoir;

use crate::rig::{Bench, ISOTHERMAL_M2, Rig, alder_part, day_of, vessel};

const PUMP: EnginePump = EnginePump {
    displacement_cm3: 110.0,
    slip_mm2: 0.3,
    ratio: 0.5,
    warm_idle_rpm: 800.0,
    cold_idle_rpm: 1100.0,
    cruise_rpm: 2000.0,
    overrun_rpm: 2500.0,
    wide_open_rpm: 3500.0,
    lag_s: 0.3,
    inlet_cm3: 10.0,
    bore_mm: 9.0,
    wear_mm2: 0.0,
    coupling_lost: 0.0,
};

fn engine() -> Engine {
    let PartKind::Engine(engine) = alder_part("engine") else { panic!("Alder's engine is none") };
    engine
}

/// A tank of `litre`, tight, isothermal.
fn tank(volume_l: f64) -> Reservoir {
    Reservoir { volume_l, surface_m2: ISOTHERMAL_M2, bore_mm: 20.0, seep_cm3_per_min: 0.0, rust_mm: 0.0 }
}

fn bench(pump: EnginePump, tank: Reservoir) -> Bench {
    Rig::default()
        .part("engine", PartKind::Engine(engine()))
        .part("pump", PartKind::EnginePump(pump))
        .part("tank", PartKind::Reservoir(tank))
        .join("pump.inlet", "tank.1")
        .on(day_of(101_325.0, 20.0), &[])
}

#[test]
fn inv_it_turns_with_the_engine_and_needs_no_key() {
    let mut b = bench(PUMP, tank(3.0));
    let pump = b.part("pump");
    b.run_s(10.0);
    assert!(b.kpa_gauge("tank.2").abs() < 1e-6, "nothing turns: {} kPa", b.kpa_gauge("tank.2"));
    for (state, rpm) in [
        (EngineState::WarmIdle, 800.0),
        (EngineState::ColdIdle, 1100.0),
        (EngineState::Cruise, 2000.0),
        (EngineState::Overrun, 2500.0),
        (EngineState::WideOpen, 3500.0),
    ] {
        b.circuit.inputs_mut().engine = state;
        b.run_s(10.0);
        let got = b.circuit.speed_rad_per_s(pump) * 30.0 / std::f64::consts::PI;
        assert!((got - rpm * 0.5).abs() < 0.1, "{state:?}: {got} 1/min");
    }
    assert!(!b.circuit.inputs().key_on);
    assert!(b.kpa_gauge("tank.2") < -90.0, "{} kPa", b.kpa_gauge("tank.2"));
}

#[test]
fn reg_pump_down_of_a_reservoir_at_idle() {
    /// Against t = V/S ln((p0 − p_ult)/(p − p_ult)), row 3.6: the start-up lag, the slip that is not constant
    /// above its critical ratio, and the nipples (some 3 %).
    const APART: f64 = 0.06;
    let mut b = bench(PUMP, tank(5.0));
    b.circuit.inputs_mut().engine = EngineState::WarmIdle;
    let t = b.when_fallen(0.05, 120.0, 30e3, |b| b.pa("tank.2"));
    let s = 110e-6 * 800.0 * 0.5 / 60.0;
    // Choked slip: C ρ0 p_atm against S p/(R T).
    let ultimate = PUMP.slip().c * 1.185 * 101_325.0 * R_AIR * 293.15 / s;
    let expected = 5e-3 / s * f64::ln((101_325.0 - ultimate) / (30e3 - ultimate)) + 0.3;
    assert!((t / expected - 1.0).abs() < APART, "{t} s, {expected} s by the formula");
}

#[test]
fn inv_worn_vanes_and_a_slipping_coupling_are_told_apart_by_the_dead_head() {
    let drawn = |pump: EnginePump, s: f64| {
        let mut b = bench(pump, tank(3.0));
        b.circuit.inputs_mut().engine = EngineState::WarmIdle;
        b.run_s(s);
        b.kpa_gauge("tank.2")
    };
    let worn = EnginePump { wear_mm2: 1.5, ..PUMP };
    let sheared = EnginePump { coupling_lost: 1.0, ..PUMP };
    let sound = drawn(PUMP, 120.0);
    assert!(sound < -88.0, "{sound} kPa");
    assert!(sound + 20.0 < drawn(worn, 120.0), "worn: {} kPa", drawn(worn, 120.0));
    assert!(drawn(sheared, 120.0).abs() < 1e-6, "sheared: {} kPa", drawn(sheared, 120.0));
}

#[test]
fn inv_a_vessel_let_into_an_evacuated_reservoir_mixes_by_boyles_law() {
    // A vessel of 2 L at the air's pressure, an evacuated tank of 2 L.
    let mut b = Rig::default()
        .part("engine", PartKind::Engine(engine()))
        .part("pump", PartKind::EnginePump(PUMP))
        .part("tank", PartKind::Reservoir(tank(2.0)))
        .part("vessel", PartKind::Booster(vessel(2.0, ISOTHERMAL_M2)))
        .join("pump.inlet", "tank.1")
        .join("vessel.vacuum", "tank.2")
        .on(Day::STANDARD, &[]);
    let joint = b.circuit.assembly().joints.len() - 1;
    let ends = [b.port("vessel.vacuum"), b.port("tank.2")];
    let set = |c: &mut Circuit, made: bool| {
        c.change(|a| {
            a.joints[joint].made = made;
            for end in ends {
                a.set_stop(end, (!made).then_some(sim_core::assembly::Stop::Plug));
            }
        });
    };
    set(&mut b.circuit, false);
    b.circuit.inputs_mut().engine = EngineState::Cruise;
    b.run_s(60.0);
    let (tank_before, vessel_before) = (b.pa("tank.2"), b.pa("vessel.vacuum"));
    // The pump is taken off so that it neither draws nor slips.
    let pump_end = [b.port("pump.inlet"), b.port("tank.1")];
    b.circuit.change(|a| {
        a.joints[0].made = false;
        a.set_stop(pump_end[1], Some(sim_core::assembly::Stop::Plug));
    });
    set(&mut b.circuit, true);
    b.run_s(10.0);
    let mixed = b.pa("tank.2");
    let expected = 0.5 * (tank_before + vessel_before);
    assert!((mixed / expected - 1.0).abs() < 1e-3, "{mixed} Pa, {expected} Pa");
    assert!((b.pa("vessel.vacuum") - mixed).abs() < 50.0);
}
