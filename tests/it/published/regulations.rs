//! Regulations and in-use inspection rules, on the whole car Alder.
//!
//! Where a rule says "full application" a force of 90 N on the pedal is meant (row 1.26), unless the rule
//! names another: Alder, like most cars, has no reservoir beside its booster.

use sim_core::air::Day;
use sim_core::parts::engine::EngineState;
use sim_core::units::PA_PER_INHG;

use super::Table;
use crate::rig::{Bench, alder_on};

/// Eight inches of mercury, kPa gauge (row 1.17).
const WARNING_KPA: f64 = -8.0 * PA_PER_INHG * 1e-3;

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

#[test]
fn val_reserve_of_one_application() {
    let mut bench = filled();
    let before = store(&bench);
    apply(&mut bench, 90.0);
    let kept = store(&bench) / before;
    Table::of("49 CFR 393.50(a)", "1.13").within("vacuum kept (at least 70 %)", kept, 0.70, 0.999);
    Table::of("Nevada NRS 484D.275", "1.14").within("vacuum lost (at most 30 %)", 1.0 - kept, 0.001, 0.30);
    Table::of("Texas Transportation Code 547.406", "1.15").within(
        "lost (at most 40 %)",
        1.0 - kept,
        0.001,
        0.40,
    );
}

#[test]
fn val_reserve_of_three_assisted_applications() {
    let mut bench = filled();
    let assists: Vec<f64> = (0..6).map(|_| apply(&mut bench, 90.0)).collect();
    // Assisted: the booster still adds more than the foot itself puts on the push rod (90 N × 4).
    let assisted = assists.iter().take_while(|a| 90.0 * 4.0 < **a).count();
    Table::of("Quebec C-24.2 r. 32 s. 37", "1.29").within("assisted applications", assisted as f64, 3.0, 5.0);
    Table::of("trade press (2 at least, 2 to 3 stored)", "9.6").within("assisted", assisted as f64, 2.0, 5.0);
    assert!(assists[5] < 90.0, "without source it must run out: {assists:?}");
}

#[test]
fn val_reserve_at_50_pounds() {
    let mut bench = filled();
    apply(&mut bench, 222.0);
    Table::of("49 CFR 570.56(c)", "1.28, 1.17").within(
        "store after one application at 222 N, kPa (warning at 8 inHg)",
        store(&bench),
        -101.0,
        WARNING_KPA,
    );
}

#[test]
fn val_leak_at_the_source_does_not_deplete_the_store() {
    /// The open hose stands in the room's air; a sound seat lets back next to nothing.
    const EMPTY_KPA: f64 = 1e-3;
    /// What the sound valves and seeps of a new Alder lose in a minute, with room: kPa.
    const SOUND: f64 = 0.1;
    let mut bench = filled();
    let before = store(&bench);
    bench.circuit.change(|a| {
        let joint = a.joints.iter_mut().find(|j| j.id == "j_manifold").unwrap();
        joint.made = false;
    });
    bench.run_s(60.0);
    let mut t = Table::of("Nevada NRS 484D.275(3), 49 CFR 393.50(b)(1)", "1.16");
    t.near("store a minute after the hose came off, kPa", store(&bench), before, SOUND);
    t.near("the hose itself is empty of vacuum, kPa", bench.kpa_gauge("hose_m.a"), 0.0, EMPTY_KPA);
}

#[test]
fn val_build_up_time() {
    // Electric pump, engine off, from an empty store.
    let mut bench = alder_on(Day::STANDARD);
    bench.circuit.inputs_mut().key_on = true;
    let mut to = |kpa: f64| {
        let fall = |b: &Bench| 200.0 + store(b);
        bench.when_fallen(0.1, 300.0, 200.0 + kpa, fall)
    };
    let (warning, working) = (to(WARNING_KPA), to(-59.0));
    let mut t = Table::of("Western Australia, Road Traffic (Vehicles) Regulations 2014 r. 334(3)", "1.20");
    t.within("warning off, s (at most 30)", warning, 0.5, 30.0);
    t.within("working level, s (at most 60)", working, 2.0, 60.0);
    // Engine vacuum.
    let mut bench = alder_on(Day::STANDARD);
    bench.circuit.inputs_mut().engine = EngineState::ColdIdle;
    let warning = bench.when_fallen(0.1, 300.0, 200.0 + WARNING_KPA, |b| 200.0 + store(b));
    Table::of("UK car inspection manual 1.1.3", "1.21").within(
        "warning off, s (at most 60)",
        warning,
        0.1,
        60.0,
    );
}

#[test]
fn val_pedal_drops_when_the_engine_starts() {
    /// A drop that a foot feels, mm at the pedal.
    const FELT_MM: f64 = 5.0;
    for (source, row, force_n) in [
        ("UK car inspection manual 1.1.10; Nevada NAC 484D.120(2)", "1.24, 1.25", 111.0),
        ("Quebec C-24.2 r. 32 s. 36", "1.24, 1.26", 90.0),
    ] {
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
        let mut t = Table::of(source, row);
        t.within("store exhausted, kPa", empty, -2.0, 1.0);
        t.within("pedal drops, mm", bench.circuit.pedal_travel_mm() - held, FELT_MM, 60.0);
    }
}

#[test]
fn val_allowed_vacuum_loss() {
    let mut bench = filled();
    bench.run_s(60.0);
    let before = store(&bench);
    bench.run_s(600.0);
    let lost = store(&bench) - before;
    Table::of("inspection list without named issuer (provenance weak)", "1.32").within(
        "lost in 10 min, kPa (at most 16.67)",
        lost,
        0.001,
        16.67,
    );
    // A hole just over the row's limit fails: in Alder's 2.9 L the limit is a smaller hole than in 5 L.
    let mut bench = filled();
    bench.set("booster.rim_mm", 0.10);
    bench.run_s(60.0);
    let before = store(&bench);
    bench.run_s(600.0);
    Table::of("inspection list without named issuer (provenance weak)", "1.32").within(
        "0.10 mm sharp hole, kPa (must fail)",
        store(&bench) - before,
        16.67,
        60.0,
    );
}

#[test]
fn val_pedal_does_not_rise_when_the_engine_is_stopped() {
    /// What a foot does not feel, mm.
    const UNFELT_MM: f64 = 1.0;
    let mut bench = alder_on(Day::STANDARD);
    bench.circuit.inputs_mut().engine = EngineState::WarmIdle;
    bench.run_s(60.0);
    bench.circuit.inputs_mut().pedal_n = 111.0;
    bench.run_s(5.0);
    let held = bench.circuit.pedal_travel_mm();
    bench.circuit.inputs_mut().engine = EngineState::Stopped;
    bench.run_s(30.0);
    Table::of("inspection list without named issuer (provenance weak)", "1.33").near(
        "pedal after 30 s, mm",
        bench.circuit.pedal_travel_mm(),
        held,
        UNFELT_MM,
    );
}
