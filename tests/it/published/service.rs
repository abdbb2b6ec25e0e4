//! Service facts: idle vacuum, hold tests, what a check valve is for. On the whole car Alder.

use sim_core::air::Day;
use sim_core::parts::engine::EngineState;
use sim_core::units::PA_PER_INHG;

use super::{Table, half_digit};
use crate::rig::{Bench, alder_on};

fn store(bench: &Bench) -> f64 {
    bench.kpa_gauge("booster.vacuum")
}

/// Alder with its engine tuned so that the store stands at −66.7 kPa (500 mmHg), engine stopped.
fn at_500_mmhg(pedal_n: f64) -> Bench {
    let mut bench = alder_on(Day::STANDARD);
    // A check valve keeps its cracking pressure, 1 kPa, for itself.
    bench.set("engine.warm_idle_kpa", -66.7 - 1.0);
    bench.circuit.inputs_mut().engine = EngineState::WarmIdle;
    bench.run_s(60.0);
    bench.circuit.inputs_mut().pedal_n = pedal_n;
    bench.run_s(30.0);
    bench.circuit.inputs_mut().engine = EngineState::Stopped;
    bench
}

#[test]
fn val_hold_test_of_the_assembled_servo() {
    for pedal_n in [0.0, 196.0] {
        let mut bench = at_500_mmhg(pedal_n);
        let start = store(&bench);
        bench.run_s(15.0);
        let mut t = Table::of("repair manual page, checking for vacuum loss (maker not named)", "9.7");
        t.near(&format!("pedal {pedal_n} N: start, kPa"), start, -66.7, half_digit(1));
        t.within(&format!("pedal {pedal_n} N: after 15 s, kPa (63.3 at least)"), store(&bench), -67.0, -63.3);
    }
}

#[test]
fn reg_hold_test_as_a_hole() {
    // Row 9.8, computed: in 2.83 L the test fails from a hole of 0.22 mm (C_d 0.84) on. Alder holds
    // 2.90 L with hoses and tee; below 0.19 mm it must pass, from 0.26 mm on it must fail.
    let loss = |d_mm: f64| {
        let mut bench = at_500_mmhg(0.0);
        bench.set("booster.rim_mm", d_mm);
        let start = store(&bench);
        bench.run_s(15.0);
        store(&bench) - start
    };
    let mut t = Table::of("hold test 9.7 as a hole, computed", "9.8");
    t.within("0.19 mm, kPa lost (passes)", loss(0.19), 1.0, 3.4);
    t.within("0.26 mm, kPa lost (fails)", loss(0.26), 3.4, 9.0);
}

#[test]
fn val_hand_pump_hold_test() {
    /// "No change" on a gauge read to half a division of 1 kPa.
    const NO_CHANGE_KPA: f64 = 0.5;
    let mut bench = at_500_mmhg(0.0);
    bench.run_s(5.0);
    let start = store(&bench);
    bench.run_s(60.0);
    Table::of("manual page on a vacuum tank", "9.9").near(
        "after 1 min, kPa",
        store(&bench),
        start,
        NO_CHANGE_KPA,
    );
}

#[test]
fn val_manifold_vacuum() {
    /// "About", and a throttle that is only just open.
    const SNAP_INHG: f64 = 1.5;
    /// "About", in whole inches of mercury.
    const ABOUT_INHG: f64 = 1.0;
    let mut bench = alder_on(Day::STANDARD);
    let mut manifold = |state| {
        bench.circuit.inputs_mut().engine = state;
        bench.run_s(10.0);
        -bench.kpa_gauge("engine.manifold") * 1e3 / PA_PER_INHG
    };
    let mut t = Table::of("US Army Ordnance course OD1001; general repair literature", "9.1, 9.2, 9.3, 9.5");
    let idle = manifold(EngineState::WarmIdle);
    t.near("idle, inHg (about 20)", idle, 20.0, ABOUT_INHG);
    t.within("idle, inHg (17 to 22)", idle, 17.0, 22.0);
    t.within("idle, kPa (better than 60.0)", idle * PA_PER_INHG * 1e-3, 60.0, 80.0);
    t.near("snap throttle, inHg (about 2)", manifold(EngineState::WideOpen), 2.0, SNAP_INHG);
    t.near("closing, inHg (about 25)", manifold(EngineState::Overrun), 25.0, ABOUT_INHG);
}

#[test]
fn val_check_valve_traps_vacuum() {
    /// What a gauge does not show, kPa.
    const UNSEEN_KPA: f64 = 0.5;
    let mut bench = alder_on(Day::STANDARD);
    bench.circuit.inputs_mut().engine = EngineState::WarmIdle;
    bench.run_s(60.0);
    let idle = store(&bench);
    let mut t = Table::of("US Army TM 9-8000 para 34-42", "9.10");
    for (what, state) in
        [("rapid acceleration", EngineState::WideOpen), ("engine failure", EngineState::Stopped)]
    {
        bench.circuit.inputs_mut().engine = state;
        bench.run_s(20.0);
        t.near(&format!("store after {what}, kPa"), store(&bench), idle, UNSEEN_KPA);
        t.within(&format!("manifold after {what}, kPa"), bench.kpa_gauge("engine.manifold"), -3.0, 0.1);
    }
}
