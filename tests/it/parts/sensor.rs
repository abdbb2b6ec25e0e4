//! Vacuum sensor and controller: a ratiometric voltage, thresholds, run-time limit, stored codes.

use sim_core::air::Day;
use sim_core::assembly::Stop;
use sim_core::circuit::Event;
use sim_core::parts::PartKind;
use sim_core::parts::controller::{Controller, TroubleCode};
use sim_core::parts::electrical::Relay;
use sim_core::parts::vacuum_sensor::VacuumSensor;

use crate::rig::{
    Bench, ISOTHERMAL_M2, Rig, alder_part, body, constant_pump, day_of, resistor, supply, vessel,
};

const SENSOR: VacuumSensor = VacuumSensor {
    zero_share: 0.1,
    span_share: 0.8,
    track_ohm: 1_000.0,
    volume_cm3: 3.0,
    bore_mm: 2.0,
    drift_kpa: 0.0,
    diaphragm_mm: 0.0,
};

const CONTROLLER: Controller = Controller {
    cut_out_kpa: -60.0,
    cut_in_kpa: -47.0,
    zero_share: 0.1,
    span_share: 0.8,
    run_limit_s: 60.0,
    rest_tau_s: 120.0,
    supply_ohm: 300.0,
    input_kohm: 100.0,
    out_mohm: 100.0,
    out_burnt_ohm: 0.0,
    out_shorted_s: 0.0,
};

/// A sensor on a vessel with a hand-driven suction, fed with `volt`.
fn fed(sensor: VacuumSensor, volt: f64, p_atm: f64) -> Bench {
    Rig::default()
        .part("feed", supply(volt, 1e-3))
        .part("body", body())
        .part("sensor", PartKind::VacuumSensor(sensor))
        .part("vessel", PartKind::Booster(vessel(1.0, ISOTHERMAL_M2)))
        .part("suction", constant_pump(0.1, 0.2, 10.0))
        .part("tee", crate::rig::tee(8.0, 5.0, 0.0))
        .join("feed.minus", "body.31a")
        .join("feed.plus", "sensor.plus")
        .join("sensor.minus", "body.31b")
        .join("sensor.vacuum", "tee.1")
        .join("vessel.vacuum", "tee.2")
        .join("suction.stem", "tee.3")
        .on(day_of(p_atm, 20.0), &[])
}

fn signal(b: &Bench) -> f64 {
    b.circuit.voltage(b.port("sensor.signal"))
}

#[test]
fn inv_the_signal_is_a_share_of_its_feed() {
    /// The feed's own milliohm and 1 nS of every node.
    const LOOSE: f64 = 1e-5;
    for p_atm in [101_325.0, 80_000.0] {
        for volt in [4.5, 5.0, 5.5] {
            let mut b = fed(SENSOR, volt, p_atm);
            assert!((signal(&b) / volt - 0.1).abs() < LOOSE, "no vacuum: {} V", signal(&b));
            b.stroke("suction", 2.0);
            b.run_s(20.0);
            b.stroke("suction", 0.0);
            b.run_s(5.0);
            let vacuum = -b.kpa_gauge("sensor.vacuum");
            assert!(20.0 < vacuum);
            let expected = 0.1 + 0.8 * vacuum / 100.0;
            assert!((signal(&b) / volt - expected).abs() < LOOSE, "{vacuum} kPa: {} V of {volt}", signal(&b));
        }
    }
}

#[test]
fn inv_a_drifted_sensor_and_a_leaking_one_show_it() {
    let drifted = fed(VacuumSensor { drift_kpa: 10.0, ..SENSOR }, 5.0, 101_325.0);
    assert!((signal(&drifted) - 5.0 * 0.18).abs() < 1e-3, "{} V", signal(&drifted));
    let mut b = fed(VacuumSensor { diaphragm_mm: 0.5, ..SENSOR }, 5.0, 101_325.0);
    b.stroke("suction", 2.0);
    b.run_s(20.0);
    b.stroke("suction", 0.0);
    let before = b.kpa_gauge("vessel.vacuum");
    b.run_s(10.0);
    assert!(before + 10.0 < b.kpa_gauge("vessel.vacuum"), "its diaphragm lets the store down");
}

/// Controller, sensor, relay and electric pump on a vessel of 3 L; a wire at each terminal of the sensor.
fn car(controller: Controller) -> Bench {
    let relay = Relay {
        coil_ohm: 85.0,
        pull_in_v: 7.5,
        drop_out_v: 3.0,
        contact_mohm: 5.0,
        weld_s: 0.0,
        burnt_ohm: 0.0,
        coil_open_ohm: 0.0,
    };
    let rig = Rig::default()
        .part("battery", supply(13.5, 10e-3))
        .part("body", body())
        .part("key", alder_part("key"))
        .part("controller", PartKind::Controller(controller))
        .part("sensor", PartKind::VacuumSensor(SENSOR))
        .part("relay", PartKind::Relay(relay))
        .part("pump", alder_part("pump"))
        .part("valve", alder_part("valve_p"))
        .part("vessel", PartKind::Booster(vessel(3.0, 0.25)))
        .part("tee", crate::rig::tee(8.0, 6.0, 0.0))
        .part("signal", resistor(0.1))
        .part("feed", resistor(0.1))
        .join("battery.minus", "body.31a")
        .join("battery.plus", "key.30")
        .join("key.15", "controller.15")
        .join("controller.31", "body.31b")
        .join("controller.feed", "feed.a")
        .join("feed.b", "sensor.plus")
        .join("sensor.signal", "signal.a")
        .join("signal.b", "controller.signal")
        .join("sensor.minus", "controller.ground")
        .join("controller.out", "relay.85")
        .join("key.15", "relay.86")
        .join("battery.plus", "relay.30")
        .join("relay.87", "pump.plus")
        .join("pump.minus", "body.31c")
        .join("vessel.vacuum", "tee.1")
        .join("sensor.vacuum", "tee.2")
        .join("valve.store", "tee.3")
        .join("valve.source", "pump.inlet");
    rig.on(Day::STANDARD, &[])
}

fn codes(b: &Bench) -> Vec<String> {
    b.circuit.codes(b.part("controller")).iter().map(ToString::to_string).collect()
}

fn hums(b: &Bench) -> bool {
    b.circuit.hums(b.part("pump"))
}

#[test]
fn inv_the_pump_runs_between_the_thresholds_and_only_with_the_key_on() {
    let mut b = car(CONTROLLER);
    b.run_s(5.0);
    assert!(!hums(&b) && b.kpa_gauge("tee.1").abs() < 1e-6);
    b.circuit.inputs_mut().key_on = true;
    b.run_s(1.0);
    assert!(hums(&b));
    while hums(&b) {
        b.run_s(0.05);
        assert!(b.now_s() < 60.0);
    }
    /// The tick, the pump's run-out, the sensor's nipple: kPa.
    const NEAR: f64 = 1.5;
    assert!((b.kpa_gauge("tee.1") + 60.0).abs() < NEAR, "stops at {} kPa", b.kpa_gauge("tee.1"));
    // A leak brings the vacuum down to the cut-in.
    b.set("vessel.rim_mm", 0.3);
    let port = b.port("tee.1");
    let mut before = 0.0;
    while !hums(&b) {
        before = b.circuit.pressure(port).gauge(b.circuit.ambient()).kpa();
        b.run_s(0.05);
        assert!(b.now_s() < 600.0);
    }
    assert!((before + 47.0).abs() < NEAR, "starts again at {before} kPa");
    assert_eq!(codes(&b), Vec::<String>::new());
    b.circuit.inputs_mut().key_on = false;
    b.run_s(3.0);
    assert!(!hums(&b), "key off: the controller sleeps");
}

#[test]
fn inv_a_pump_that_gets_nowhere_is_rested_and_the_code_is_kept() {
    let mut b = car(CONTROLLER);
    b.set("vessel.rim_mm", 3.0);
    b.circuit.inputs_mut().key_on = true;
    b.run_s(59.0);
    assert!(hums(&b));
    b.run_s(5.0);
    assert!(!hums(&b), "after a minute it rests");
    assert_eq!(codes(&b), ["P258B"]);
    let part = b.part("controller");
    assert!(b.circuit.is_resting(part));
    // Half of the reckoning fades in τ ln 2.
    b.run_s(120.0 * std::f64::consts::LN_2 - 10.0);
    assert!(!hums(&b));
    b.run_s(12.0);
    assert!(hums(&b), "rested: it tries again");
    // Stored without current, gone when wiped.
    b.circuit.inputs_mut().key_on = false;
    b.run_s(60.0);
    assert_eq!(codes(&b), ["P258B"]);
    b.circuit.clear_codes(part);
    assert!(codes(&b).is_empty());
    let stored = b.circuit.events().iter().filter(|(_, e)| *e == Event::CodeStored(part)).count();
    assert_eq!(stored, 1);
}

#[test]
fn inv_a_signal_that_cannot_be_right_stores_its_code_and_the_pump_runs_as_long_as_it_may() {
    for (fault, code) in [("signal.b", "P0557"), ("feed.b", "P0557")] {
        let mut b = car(CONTROLLER);
        let port = b.port(fault);
        b.circuit.change(|a| {
            for j in &mut a.joints {
                j.made &= j.a != port && j.b != port;
            }
        });
        b.circuit.inputs_mut().key_on = true;
        b.run_s(40.0);
        assert_eq!(codes(&b), [code], "{fault}");
        assert!(hums(&b) && b.kpa_gauge("tee.1") < -70.0, "{fault}: it runs past the cut-out");
        b.run_s(30.0);
        assert!(!hums(&b), "{fault}: not for ever");
    }
    // Ground of the sensor lost: the signal goes to the feed.
    let mut b = car(CONTROLLER);
    let port = b.port("sensor.minus");
    b.circuit.change(|a| {
        for j in &mut a.joints {
            j.made &= j.a != port && j.b != port;
        }
    });
    b.circuit.inputs_mut().key_on = true;
    b.run_s(5.0);
    assert_eq!(codes(&b), ["P0558"]);
}

#[test]
fn inv_a_shorted_output_runs_the_pump_past_the_cut_out_and_a_burnt_one_never() {
    let mut b = car(Controller { out_shorted_s: 10.0, ..CONTROLLER });
    b.circuit.inputs_mut().key_on = true;
    b.run_s(120.0);
    assert!(hums(&b) && b.kpa_gauge("tee.1") < -75.0, "{} kPa", b.kpa_gauge("tee.1"));
    let mut b = car(Controller { out_burnt_ohm: 1e6, ..CONTROLLER });
    b.circuit.inputs_mut().key_on = true;
    b.run_s(10.0);
    assert!(!hums(&b));
}

#[test]
fn inv_save_and_go_on_gives_the_same_bits() {
    let mut b = car(CONTROLLER);
    b.circuit.inputs_mut().key_on = true;
    b.run_s(3.0);
    let mut copy = b.clone();
    b.run_s(30.0);
    copy.run_s(30.0);
    assert_eq!(b.circuit.digest(), copy.circuit.digest());
    // What the controller remembers is part of the state.
    let port = b.port("vessel.vacuum");
    copy.circuit.change(|a| a.set_stop(port, Some(Stop::Clamp)));
    let part = b.part("controller");
    assert!(0.0 < b.circuit.run_time_s(part));
}

#[test]
fn reg_codes_have_the_form_of_iso_15031_6() {
    // Two bytes: letter in the top two bits (P, C, B, U), then a digit, then three hexadecimal digits (form
    // from memory).
    for (bytes, text) in
        [(0x0557, "P0557"), (0x258B, "P258B"), (0x4123, "C0123"), (0x9A0F, "B1A0F"), (0xC100, "U0100")]
    {
        assert_eq!(TroubleCode(bytes).to_string(), text);
    }
}
