//! What the wiring does to parts: relay thresholds, the blown meter fuse, inrush, a hot motor.

use sim_core::air::Day;
use sim_core::circuit::Event;
use sim_core::parts::PartKind;
use sim_core::parts::electrical::{Relay, RelaySocket};
use sim_core::parts::instruments::MeterMode;

use crate::rig::{Bench, Rig, alder_part, body, multimeter, resistor, supply};

/// A relay's coil fed with `volt`, its contact with 12 V through 12 Ω.
fn coil_at(volt: f64) -> Bench {
    let relay = Relay {
        coil_ohm: 85.0,
        pull_in_v: 7.5,
        drop_out_v: 3.0,
        contact_mohm: 5.0,
        weld_s: 0.0,
        burnt_ohm: 0.0,
        coil_open_ohm: 0.0,
    };
    Rig::default()
        .part("coil", supply(volt, 1e-3))
        .part("load", supply(12.0, 1e-3))
        .part("body", body())
        .part("relay", PartKind::Relay(relay))
        .part("ohm", resistor(12.0))
        .join("coil.minus", "body.31a")
        .join("load.minus", "body.31b")
        .join("coil.plus", "relay.86")
        .join("relay.85", "body.31c")
        .join("load.plus", "relay.30")
        .join("relay.87", "ohm.a")
        .join("ohm.b", "body.31d")
        .on(Day::STANDARD, &[])
}

#[test]
fn inv_a_relay_pulls_in_and_drops_out_at_its_two_voltages() {
    let mut b = coil_at(6.0);
    let relay = b.part("relay");
    let at = |b: &mut Bench, volt: f64| {
        b.set("coil.volt", volt);
        b.run_s(0.1);
        (b.circuit.is_closed(relay), b.circuit.current(b.port("ohm.a")))
    };
    for (volt, closed) in [(7.4, false), (7.6, true), (5.0, true), (3.1, true), (2.9, false), (7.0, false)] {
        let (is, ampere) = at(&mut b, volt);
        assert_eq!(is, closed, "{volt} V");
        assert!((ampere - if closed { 1.0 } else { 0.0 }).abs() < 0.01, "{volt} V: {ampere} A");
    }
    // A corroded terminal eats the coil's voltage: 12 V behind as many ohms again are 6.
    b.set("relay.coil_open_ohm", 85.0);
    assert!(!at(&mut b, 12.0).0);
    let v = b.circuit.current(b.port("relay.86"));
    assert!((v - 12.0 / 170.0).abs() < 1e-3, "{v} A");
}

/// A relay's socket with the blade of 30 leading to `ohm` ohms, at 12 V; nothing joined to 87 but a probe of a megohm.
fn socket_with(ohm: f64, slack_per_a2: f64, bridge_s: f64) -> Bench {
    Rig::default()
        .part("supply", supply(12.0, 1e-3))
        .part("body", body())
        .part("socket", PartKind::RelaySocket(RelaySocket { clip_mohm: 2.0, slack_per_a2, bridge_s }))
        .part("ohm", resistor(ohm))
        .part("probe", resistor(1e6))
        .join("supply.minus", "body.31a")
        .join("supply.plus", "socket.30")
        .join("socket.clip", "ohm.a")
        .join("ohm.b", "body.31b")
        .join("socket.87", "probe.a")
        .join("probe.b", "body.31c")
        .on(Day::STANDARD, &[])
}

/// θ = (i/I)² (1 − e^(−t/τ)), and back from there: the law written out by hand.
#[test]
fn inv_a_slack_clip_lets_go_warm_and_makes_contact_again_cold() {
    const TAU_S: f64 = 1.9;
    /// Ticks of 10 ms at either end, and steps of the solver.
    const NEAR_S: f64 = 0.05;
    // 10 A through a clip that carries 5 A for ever: θ runs towards 4.
    let mut b = socket_with(1.2, 1.0 / 25.0, 0.0);
    let socket = b.part("socket");
    let until = |b: &mut Bench, closed: bool| {
        let mut s = 0.0;
        while b.circuit.is_closed(socket) != closed && s < 30.0 {
            b.run_s(0.01);
            s += 0.01;
        }
        s
    };
    let first = until(&mut b, false);
    let expected = TAU_S * (4.0_f64 / 3.0).ln();
    assert!((first - expected).abs() < NEAR_S, "{first} s, {expected} s");
    assert!(b.circuit.current(b.port("ohm.a")).abs() < 1e-3, "nothing flows meanwhile");
    let (rest, expected) = (until(&mut b, true), TAU_S * 10.0_f64.ln());
    assert!((rest - expected).abs() < NEAR_S, "{rest} s, {expected} s");
    let (again, expected) = (until(&mut b, false), TAU_S * (3.9_f64 / 3.0).ln());
    assert!((again - expected).abs() < NEAR_S, "{again} s, {expected} s");
    // Under what it carries it holds for ever, and a firm one always does.
    for (ohm, slack) in [(2.6, 1.0 / 25.0), (1.2, 0.0)] {
        let mut b = socket_with(ohm, slack, 0.0);
        b.run_s(60.0);
        assert!(b.circuit.is_closed(b.part("socket")), "{ohm} ohm, {slack}");
    }
}

#[test]
fn inv_a_bridge_feeds_87_whatever_is_in_the_socket() {
    let volt = |bridge_s: f64| {
        let mut b = socket_with(1.2, 0.0, bridge_s);
        b.run_s(0.1);
        1e6 * b.circuit.current(b.port("probe.a"))
    };
    assert!((volt(5.0) - 12.0).abs() < 0.05, "{} V", volt(5.0));
    assert!(volt(0.0).abs() < 0.05, "{} V", volt(0.0));
}

/// Alder's pump at 13.5 V through a multimeter in ampere mode with a fuse of `fuse_a`.
fn through_the_meter(fuse_a: f64) -> Bench {
    let mut b = Rig::default()
        .part("supply", supply(13.5, 20e-3))
        .part("body", body())
        .part("meter", multimeter(10.0))
        .part("pump", alder_part("pump"))
        .join("supply.minus", "body.31a")
        .join("supply.plus", "meter.v_ohm")
        .join("meter.com", "pump.plus")
        .join("pump.minus", "body.31b")
        .on(Day::STANDARD, &["pump.inlet"]);
    b.set("meter.fuse_a", fuse_a);
    let meter = b.part("meter");
    b.circuit.inputs_mut().hands[usize::from(meter)].mode = MeterMode::Ampere;
    b
}

#[test]
fn inv_inrush_through_a_small_meter_fuse_melts_it_and_the_meter_shows_nothing_more() {
    let mut b = through_the_meter(3.0);
    let meter = b.part("meter");
    b.run_s(5.0);
    assert!(b.circuit.is_melted(meter));
    assert_eq!(b.circuit.meter(meter), None);
    assert!(b.circuit.events().iter().any(|(_, e)| *e == Event::FuseMelted(meter)));
    assert!(b.circuit.speed_rad_per_s(b.part("pump")) < 60.0, "and the pump stands");
    // In volts it still measures: its fuse is in the ampere socket alone.
    b.circuit.inputs_mut().hands[usize::from(meter)].mode = MeterMode::Volt;
    b.run_s(5.0);
    let volt = b.circuit.meter(meter).expect("a voltmeter");
    assert!((volt - 13.5).abs() < 0.1, "{volt} V");
}

#[test]
fn inv_a_motor_draws_many_times_its_running_current_at_the_start() {
    let mut b = through_the_meter(30.0);
    let meter = b.part("meter");
    let amps = |b: &Bench| b.circuit.meter(meter).expect("an ammeter");
    let start = amps(&b);
    b.run_s(10.0);
    let running = amps(&b);
    // V/R over winding, brushes, meter and supply against what it settles at.
    assert!((start - 13.5 / (0.22 + 0.01 + 0.2 + 0.02)).abs() < 0.1 * start, "{start} A");
    assert!(3.0 * running < start, "{start} A, then {running} A");
    assert!(!b.circuit.is_melted(meter));
}

#[test]
fn inv_a_hot_motor_is_a_weaker_one() {
    let mut b = through_the_meter(30.0);
    let (meter, pump) = (b.part("meter"), b.part("pump"));
    let cold_start = b.circuit.meter(meter).expect("an ammeter");
    b.run_s(5.0);
    let cold = b.circuit.speed_rad_per_s(pump);
    b.run_s(1_800.0);
    let (hot, winding) = (b.circuit.speed_rad_per_s(pump), b.circuit.winding_c(pump));
    assert!(60.0 < winding, "{winding} °C");
    // Off, at rest, and on again while it is hot.
    b.circuit.inputs_mut().hands[usize::from(meter)].mode = MeterMode::Off;
    b.run_s(2.0);
    b.circuit.inputs_mut().hands[usize::from(meter)].mode = MeterMode::Ampere;
    b.run_s(0.0);
    let hot_start = b.circuit.meter(meter).expect("an ammeter");
    // Copper's 0.393 %/K on the winding's share of the loop.
    let ohm = |dt: f64| 0.22 * (1.0 + 0.003_93 * dt) + 0.01 + 0.2 + 0.02;
    let expected = ohm(0.0) / ohm(b.circuit.winding_c(pump) - 20.0);
    assert!((hot_start / cold_start - expected).abs() < 0.02, "{cold_start} A, hot {hot_start} A");
    assert!((hot - cold).abs() > 1.0, "cold {cold} rad/s, hot {hot} rad/s");
}
