//! Blade fuse: operating times.

use sim_core::air::Day;
use sim_core::circuit::Event;
use sim_core::parts::PartKind;
use sim_core::parts::electrical::{FUSE_MELTS_AT, FUSE_TAU_S, Fuse};

use super::Table;
use crate::rig::{Rig, body, resistor, supply};

/// When the strip, cold at first, melts at the steady current `x` times its rating, s.
fn melts_after_s(x: f64) -> f64 {
    let heat = x * x;
    if heat <= FUSE_MELTS_AT { f64::INFINITY } else { FUSE_TAU_S * f64::ln(heat / (heat - FUSE_MELTS_AT)) }
}

#[test]
fn val_conventional_tripping_current() {
    /// "1.35 I_n": it must melt there, and the strip must not take longer than the half hour or so that
    /// any norm's conventional time allows.
    const CONVENTIONAL_TIME_S: f64 = 1_800.0;
    Table::of("public notes on blade fuses: conventional tripping current 1.35 I_n", "6.13b").within(
        "time to melt at 135 %, s",
        melts_after_s(1.35),
        0.0,
        CONVENTIONAL_TIME_S,
    );
}

#[test]
fn reg_fuse_bands_from_memory() {
    let mut t = Table::of("ISO 8820-3 (from memory)", "6.13b");
    t.within("110 %, s", melts_after_s(1.10), 360e3, f64::INFINITY);
    for (percent, min, max) in [
        (135.0, 0.75, 600.0),
        (160.0, 0.25, 50.0),
        (200.0, 0.15, 5.0),
        (350.0, 0.04, 0.5),
        (600.0, 0.02, 0.1),
    ] {
        t.within(&format!("{percent} %, s"), melts_after_s(percent / 100.0), min, max);
    }
}

/// A fuse of 10 A under a steady current of `x` times its rating; when it melts, s.
fn melts_in_the_circuit_after_s(x: f64) -> Option<f64> {
    let fuse = Fuse { rating_a: 10.0, mohm: 5.0, corroded_ohm: 0.0 };
    let mut bench = Rig::default()
        .part("supply", supply(10.0 * x, 1e-6))
        .part("fuse", PartKind::Fuse(fuse))
        .part("load", resistor(1.0 - 5e-3 - 1e-6))
        .part("body", body())
        .join("supply.minus", "body.31a")
        .join("supply.plus", "fuse.a")
        .join("fuse.b", "load.a")
        .join("load.b", "body.31b")
        .on(Day::STANDARD, &[]);
    bench.run_s(3_600.0);
    let part = bench.part("fuse");
    let melted = bench.circuit.events().iter().find(|(_, e)| *e == Event::FuseMelted(part));
    melted.map(|(tick, _)| tick.s())
}

#[test]
fn reg_fuse_bands_in_the_circuit_from_memory() {
    /// A switch changes at the end of the first tick past its threshold, s.
    const TICK_S: f64 = 0.01;
    /// The step's error, of the time.
    const STEP: f64 = 1e-3;
    let late_s = |after_s: f64| TICK_S + STEP * after_s;
    let mut t = Table::of("ISO 8820-3 (from memory)", "6.13b");
    assert_eq!(melts_in_the_circuit_after_s(1.10), None, "110 % for an hour");
    for (percent, min, max) in [
        (135.0, 0.75, 600.0),
        (160.0, 0.25, 50.0),
        (200.0, 0.15, 5.0),
        (350.0, 0.04, 0.5),
        (600.0, 0.02, 0.1),
    ] {
        let x = percent / 100.0;
        let got = melts_in_the_circuit_after_s(x).unwrap();
        t.within(&format!("{percent} %, s"), got, min, max);
        t.near(&format!("{percent} %, s, by the law"), got, melts_after_s(x), late_s(melts_after_s(x)));
    }
}
