//! Blade fuse: operating times.

use sim_core::air::Day;
use sim_core::circuit::Event;
use sim_core::parts::PartKind;
use sim_core::parts::electrical::{FUSE_MELTS_AT, FUSE_TAU_S, Fuse};

use super::{Table, checks};
use crate::rig::{Rig, body, resistor, supply};

checks! {
    val_conventional_tripping_current through Own {
        /// "1.35 I_n": it must melt there, and the strip must not take longer than the half hour or so that
        /// any norm's conventional time allows.
        CONVENTIONAL_TIME_S = 1_800.0;
        "6.13b" of "public notes on blade fuses: conventional tripping current 1.35 I_n" => [
            band("time to melt at 135 %", "s", 0.0, CONVENTIONAL_TIME_S.amount).because(CONVENTIONAL_TIME_S),
        ];
    }

    reg_fuse_bands_from_memory through Own {
        "6.13b" of "ISO 8820-3 (from memory)" => [
            band("110 %", "s", 360e3, f64::INFINITY),
            bands(
                "{} %",
                "s",
                &[
                    (135.0, 0.75, 600.0),
                    (160.0, 0.25, 50.0),
                    (200.0, 0.15, 5.0),
                    (350.0, 0.04, 0.5),
                    (600.0, 0.02, 0.1),
                ],
            ),
        ];
    }

    reg_fuse_bands_in_the_circuit_from_memory through Step {
        /// A switch changes at the end of the first tick past its threshold, s.
        TICK_S = 0.01;
        /// The step's error, of the time.
        STEP = 1e-3;
        "6.13b" of "ISO 8820-3 (from memory)" => [
            bands(
                "{} %",
                "s",
                &[
                    (135.0, 0.75, 600.0),
                    (160.0, 0.25, 50.0),
                    (200.0, 0.15, 5.0),
                    (350.0, 0.04, 0.5),
                    (600.0, 0.02, 0.1),
                ],
            ),
            formula("{} %, by the law", "s", "τ ln(x²/(x² − 1.3²))", abs_and_rel(TICK_S, STEP)),
        ];
    }
}

/// When the strip, cold at first, melts at the steady current `x` times its rating, s.
fn melts_after_s(x: f64) -> f64 {
    let heat = x * x;
    if heat <= FUSE_MELTS_AT { f64::INFINITY } else { FUSE_TAU_S * f64::ln(heat / (heat - FUSE_MELTS_AT)) }
}

fn val_conventional_tripping_current(t: &mut Table) {
    t.is("time to melt at 135 %", melts_after_s(1.35));
}

fn reg_fuse_bands_from_memory(t: &mut Table) {
    t.is("110 %", melts_after_s(1.10));
    t.series("{} %", |percent| melts_after_s(percent / 100.0));
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

fn reg_fuse_bands_in_the_circuit_from_memory(t: &mut Table) {
    assert_eq!(melts_in_the_circuit_after_s(1.10), None, "110 % for an hour");
    for percent in [135.0, 160.0, 200.0, 350.0, 600.0] {
        let x = percent / 100.0;
        let got = melts_in_the_circuit_after_s(x).unwrap();
        t.at("{} %", percent, got);
        t.follows_for("{} %, by the law", percent, got, melts_after_s(x));
    }
}
