//! Regulations and in-use inspection rules, on the whole car Alder.
//!
//! Where a rule says "full application" a force of 90 N on the pedal is meant (row 1.26), unless the rule
//! names another: Alder, like most cars, has no reservoir beside its booster.

use sim_core::air::Day;
use sim_core::parts::engine::EngineState;
use sim_core::units::PA_PER_INHG;

use super::{Table, checks};
use crate::rig::{Bench, alder_on};

/// Eight inches of mercury, kPa gauge (row 1.17).
const WARNING_KPA: f64 = -8.0 * PA_PER_INHG * 1e-3;

checks! {
    val_reserve_of_one_application through Step {
        "1.13" of "49 CFR 393.50(a)" => [
            band("vacuum kept (at least 70 %)", "1", 0.70, 0.999),
        ];
        "1.14" of "Nevada NRS 484D.275" => [
            band("vacuum lost (at most 30 %)", "1", 0.001, 0.30),
        ];
        "1.15" of "Texas Transportation Code 547.406" => [
            band("lost (at most 40 %)", "1", 0.001, 0.40),
        ];
    }

    val_reserve_of_three_assisted_applications through Step {
        "1.29" of "Quebec C-24.2 r. 32 s. 37" => [
            band("assisted applications", "1", 3.0, 5.0),
        ];
        "9.6" of "trade press (2 at least, 2 to 3 stored)" => [
            band("assisted", "1", 2.0, 5.0),
        ];
    }

    val_reserve_at_50_pounds through Step {
        "1.28, 1.17" of "49 CFR 570.56(c)" => [
            band("store after one application at 222 N (warning at 8 inHg)", "kPa", -101.0, WARNING_KPA),
        ];
    }

    val_leak_at_the_source_does_not_deplete_the_store through Step {
        /// The open hose stands in the room's air; a sound seat lets back next to nothing.
        EMPTY_KPA = 1e-3;
        /// What the sound valves and seeps of a new Alder lose in a minute, with room: kPa.
        SOUND = 0.1;
        "1.16" of "Nevada NRS 484D.275(3), 49 CFR 393.50(b)(1)" => [
            formula("store a minute after the hose came off", "kPa", "as before", abs(SOUND)),
            value("the hose itself is empty of vacuum", "kPa", 0.0, abs(EMPTY_KPA)),
        ];
    }

    val_build_up_time through Step {
        "1.20" of "Western Australia, Road Traffic (Vehicles) Regulations 2014 r. 334(3)" => [
            band("warning off (at most 30)", "s", 0.5, 30.0),
            band("working level (at most 60)", "s", 2.0, 60.0),
        ];
        "1.21" of "UK car inspection manual 1.1.3" => [
            band("warning off (at most 60)", "s", 0.1, 60.0),
        ];
    }

    val_pedal_drops_when_the_engine_starts through Step {
        /// A drop that a foot feels, mm at the pedal.
        FELT_MM = 5.0;
        "1.24, 1.25" of "UK car inspection manual 1.1.10; Nevada NAC 484D.120(2)" => [
            band("store exhausted before 111 N", "kPa", -2.0, 1.0),
            band("pedal drops under 111 N", "mm", FELT_MM.amount, 60.0).because(FELT_MM),
        ];
        "1.24, 1.26" of "Quebec C-24.2 r. 32 s. 36" => [
            band("store exhausted before 90 N", "kPa", -2.0, 1.0),
            band("pedal drops under 90 N", "mm", FELT_MM.amount, 60.0).because(FELT_MM),
        ];
    }

    val_allowed_vacuum_loss through Step {
        "1.32" of "inspection list without named issuer (provenance weak)" => [
            band("lost in 10 min (at most 16.67)", "kPa", 0.001, 16.67),
            // A hole just over the row's limit fails: in Alder's 2.9 L the limit is a smaller hole than in 5 L.
            band("0.10 mm sharp hole (must fail)", "kPa", 16.67, 60.0),
        ];
    }

    val_pedal_does_not_rise_when_the_engine_is_stopped through Step {
        /// What a foot does not feel, mm.
        UNFELT_MM = 1.0;
        "1.33" of "inspection list without named issuer (provenance weak)" => [
            formula("pedal after 30 s", "mm", "where it was held", abs(UNFELT_MM)),
        ];
    }
}

/// Alder with the store filled by the warm engine, engine stopped again.
fn filled() -> Bench {
    let mut bench = alder_on(Day::STANDARD);
    bench.circuit.inputs_mut().engine = EngineState::WarmIdle;
    bench.run_s(60.0);
    bench.circuit.inputs_mut().engine = EngineState::Stopped;
    bench.run_s(5.0);
    bench
}

fn store(bench: &Bench) -> f64 {
    bench.kpa_gauge("booster.vacuum")
}

/// Presses with `n` newtons for 3 s and lets go for 5 s; assist at the end of the press, N.
fn apply(bench: &mut Bench, n: f64) -> f64 {
    bench.circuit.inputs_mut().pedal_n = n;
    bench.run_s(3.0);
    let assist = bench.circuit.assist_n();
    bench.circuit.inputs_mut().pedal_n = 0.0;
    bench.run_s(5.0);
    assist
}

fn val_reserve_of_one_application(t: &mut Table) {
    let mut bench = filled();
    let before = store(&bench);
    apply(&mut bench, 90.0);
    let kept = store(&bench) / before;
    t.is("vacuum kept (at least 70 %)", kept);
    t.is("vacuum lost (at most 30 %)", 1.0 - kept);
    t.is("lost (at most 40 %)", 1.0 - kept);
}

fn val_reserve_of_three_assisted_applications(t: &mut Table) {
    let mut bench = filled();
    let assists: Vec<f64> = (0..6).map(|_| apply(&mut bench, 90.0)).collect();
    // Assisted: the booster still adds more than the foot itself puts on the push rod (90 N × 4).
    let assisted = assists.iter().take_while(|a| 90.0 * 4.0 < **a).count();
    t.is("assisted applications", assisted as f64);
    t.is("assisted", assisted as f64);
    assert!(assists[5] < 90.0, "without source it must run out: {assists:?}");
}

fn val_reserve_at_50_pounds(t: &mut Table) {
    let mut bench = filled();
    apply(&mut bench, 222.0);
    t.is("store after one application at 222 N (warning at 8 inHg)", store(&bench));
}

fn val_leak_at_the_source_does_not_deplete_the_store(t: &mut Table) {
    let mut bench = filled();
    let before = store(&bench);
    bench.circuit.change(|a| {
        let joint = a.joints.iter_mut().find(|j| j.id == "j_manifold").unwrap();
        joint.made = false;
    });
    bench.run_s(60.0);
    t.follows("store a minute after the hose came off", store(&bench), before);
    t.is("the hose itself is empty of vacuum", bench.kpa_gauge("hose_m.a"));
}

fn val_build_up_time(t: &mut Table) {
    // Electric pump, engine off, from an empty store.
    let mut bench = alder_on(Day::STANDARD);
    bench.circuit.inputs_mut().key_on = true;
    let mut to = |kpa: f64| {
        let fall = |b: &Bench| 200.0 + store(b);
        bench.when_fallen(0.1, 300.0, 200.0 + kpa, fall)
    };
    let (warning, working) = (to(WARNING_KPA), to(-59.0));
    t.is("warning off (at most 30)", warning);
    t.is("working level (at most 60)", working);
    // Engine vacuum.
    let mut bench = alder_on(Day::STANDARD);
    bench.circuit.inputs_mut().engine = EngineState::ColdIdle;
    let warning = bench.when_fallen(0.1, 300.0, 200.0 + WARNING_KPA, |b| 200.0 + store(b));
    t.is("warning off (at most 60)", warning);
}

fn val_pedal_drops_when_the_engine_starts(t: &mut Table) {
    for force_n in [111.0, 90.0] {
        let mut bench = filled();
        for _ in 0..8 {
            apply(&mut bench, 300.0);
        }
        let empty = store(&bench);
        bench.circuit.inputs_mut().pedal_n = force_n;
        bench.run_s(5.0);
        let held = bench.circuit.pedal_travel_mm();
        bench.circuit.inputs_mut().engine = EngineState::WarmIdle;
        bench.run_s(10.0);
        t.is(&format!("store exhausted before {force_n} N"), empty);
        t.is(&format!("pedal drops under {force_n} N"), bench.circuit.pedal_travel_mm() - held);
    }
}

fn val_allowed_vacuum_loss(t: &mut Table) {
    let mut bench = filled();
    bench.run_s(60.0);
    let before = store(&bench);
    bench.run_s(600.0);
    let lost = store(&bench) - before;
    t.is("lost in 10 min (at most 16.67)", lost);
    let mut bench = filled();
    bench.set("booster.rim_mm", 0.10);
    bench.run_s(60.0);
    let before = store(&bench);
    bench.run_s(600.0);
    t.is("0.10 mm sharp hole (must fail)", store(&bench) - before);
}

fn val_pedal_does_not_rise_when_the_engine_is_stopped(t: &mut Table) {
    let mut bench = alder_on(Day::STANDARD);
    bench.circuit.inputs_mut().engine = EngineState::WarmIdle;
    bench.run_s(60.0);
    bench.circuit.inputs_mut().pedal_n = 111.0;
    bench.run_s(5.0);
    let held = bench.circuit.pedal_travel_mm();
    bench.circuit.inputs_mut().engine = EngineState::Stopped;
    bench.run_s(30.0);
    t.follows("pedal after 30 s", bench.circuit.pedal_travel_mm(), held);
}
