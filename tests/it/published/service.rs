//! Service facts: idle vacuum, hold tests, what a check valve is for. On the whole car Alder.

use sim_core::air::Day;
use sim_core::parts::engine::EngineState;
use sim_core::units::PA_PER_INHG;

use super::{Table, checks};
use crate::rig::{Bench, alder_on};

checks! {
    val_hold_test_of_the_assembled_servo through Step {
        "9.7" of "repair manual page, checking for vacuum loss (maker not named)" => [
            value("pedal {} N: start", "kPa", -66.7, half_digit(1)),
            band("pedal {} N: after 15 s (63.3 at least)", "kPa", -67.0, -63.3),
        ];
    }

    reg_hold_test_as_a_hole through Step {
        // In 2.83 L the test fails from a hole of 0.22 mm (C_d 0.84) on. Alder holds 2.90 L with hoses and tee;
        // below 0.19 mm it must pass, from 0.26 mm on it must fail.
        "9.8" of "hold test 9.7 as a hole, computed" => [
            band("lost through 0.19 mm (passes)", "kPa", 1.0, 3.4),
            band("lost through 0.26 mm (fails)", "kPa", 3.4, 9.0),
        ];
    }

    val_hand_pump_hold_test through Step {
        /// "No change" on a gauge read to half a division of 1 kPa.
        NO_CHANGE_KPA = 0.5;
        "9.9" of "manual page on a vacuum tank" => [
            formula("after 1 min", "kPa", "as at the start", abs(NO_CHANGE_KPA)),
        ];
    }

    val_manifold_vacuum through Step {
        /// "About", and a throttle that is only just open.
        SNAP_INHG = 1.5;
        /// "About", in whole inches of mercury.
        ABOUT_INHG = 1.0;
        "9.1, 9.2, 9.3, 9.5" of "US Army Ordnance course OD1001; general repair literature" => [
            value("idle (about 20)", "inHg", 20.0, abs(ABOUT_INHG)),
            band("idle (17 to 22)", "inHg", 17.0, 22.0),
            band("idle (better than 60.0)", "kPa", 60.0, 80.0),
            value("snap throttle (about 2)", "inHg", 2.0, abs(SNAP_INHG)),
            value("closing (about 25)", "inHg", 25.0, abs(ABOUT_INHG)),
        ];
    }

    val_check_valve_traps_vacuum through Step {
        /// What a gauge does not show, kPa.
        UNSEEN_KPA = 0.5;
        "9.10" of "US Army TM 9-8000 para 34-42" => [
            formula("store after {}", "kPa", "as at idle", abs(UNSEEN_KPA)),
            band("manifold after {}", "kPa", -3.0, 0.1),
        ];
    }
}

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

fn val_hold_test_of_the_assembled_servo(t: &mut Table) {
    for pedal_n in [0.0, 196.0] {
        let mut bench = at_500_mmhg(pedal_n);
        let start = store(&bench);
        bench.run_s(15.0);
        t.is_for("pedal {} N: start", pedal_n, start);
        t.is_for("pedal {} N: after 15 s (63.3 at least)", pedal_n, store(&bench));
    }
}

fn reg_hold_test_as_a_hole(t: &mut Table) {
    let loss = |d_mm: f64| {
        let mut bench = at_500_mmhg(0.0);
        bench.set("booster.rim_mm", d_mm);
        let start = store(&bench);
        bench.run_s(15.0);
        store(&bench) - start
    };
    t.is("lost through 0.19 mm (passes)", loss(0.19));
    t.is("lost through 0.26 mm (fails)", loss(0.26));
}

fn val_hand_pump_hold_test(t: &mut Table) {
    let mut bench = at_500_mmhg(0.0);
    bench.run_s(5.0);
    let start = store(&bench);
    bench.run_s(60.0);
    t.follows("after 1 min", store(&bench), start);
}

fn val_manifold_vacuum(t: &mut Table) {
    let mut bench = alder_on(Day::STANDARD);
    let mut manifold = |state| {
        bench.circuit.inputs_mut().engine = state;
        bench.run_s(10.0);
        -bench.kpa_gauge("engine.manifold") * 1e3 / PA_PER_INHG
    };
    let idle = manifold(EngineState::WarmIdle);
    t.is("idle (about 20)", idle);
    t.is("idle (17 to 22)", idle);
    t.is("idle (better than 60.0)", idle * PA_PER_INHG * 1e-3);
    t.is("snap throttle (about 2)", manifold(EngineState::WideOpen));
    t.is("closing (about 25)", manifold(EngineState::Overrun));
}

fn val_check_valve_traps_vacuum(t: &mut Table) {
    let mut bench = alder_on(Day::STANDARD);
    bench.circuit.inputs_mut().engine = EngineState::WarmIdle;
    bench.run_s(60.0);
    let idle = store(&bench);
    for (what, state) in
        [("rapid acceleration", EngineState::WideOpen), ("engine failure", EngineState::Stopped)]
    {
        bench.circuit.inputs_mut().engine = state;
        bench.run_s(20.0);
        t.follows_for("store after {}", what, store(&bench), idle);
        t.is_for("manifold after {}", what, bench.kpa_gauge("engine.manifold"));
    }
}
