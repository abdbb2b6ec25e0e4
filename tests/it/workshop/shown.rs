//! What instruments and senses show of what the model says: error, steps, ends.

use sim_core::action::{Action, Sense};
use sim_core::observe::Scale;
use sim_core::parts::instruments::MeterMode;

use super::*;

const JOB: &str = "first-shift/hum-at-the-lights";

#[test]
fn inv_a_dial_errs_by_at_most_its_class_and_half_a_step() {
    for share in [-1.0, -0.3, 0.0, 0.8, 1.0] {
        let (setup, mut world) = setup(JOB, &[]);
        world.instrument_errors.iter_mut().for_each(|e| *e = share);
        let mut b = Bench { ws: Opened::of(setup, world), log: Vec::new() };
        let out = b.act(read("barometer"));
        let reading = out.reading.unwrap();
        let Some(Predicted::Value(truth)) = b.ws.predicted() else { panic!("the barometer shows something") };
        let scale = b.ws.scale(&reading.what);
        let Scale::Numeric { resolution, .. } = scale else { panic!("a dial has numbers") };
        let shown = scale.number(reading.shown).unwrap();
        let error = b.ws.instrument_error(&reading.what, truth, share);
        assert!(
            (shown - truth - error).abs() <= 0.5 * resolution + 1e-9,
            "{shown} for {truth}, error {error}"
        );
        assert!(error * share >= 0.0 && (error == 0.0) == (share == 0.0));
    }
}

#[test]
fn a_digital_meter_errs_in_percent_and_counts() {
    let b = Bench::new(JOB, &[]);
    let what = |mode| Observed::Instrument { instrument: "meter".into(), mode: Some(mode), at: vec![] };
    // 0.5 % of 12 V + 2 counts of 0.01 V; 0.8 % of 100 ohm + 3 counts of 0.1 ohm.
    assert!((b.ws.instrument_error(&what(MeterMode::Volt), 12.0, 1.0) - 0.08).abs() < 1e-12);
    assert!((b.ws.instrument_error(&what(MeterMode::Ohm), 100.0, -1.0) + 1.1).abs() < 1e-12);
}

#[test]
fn the_meter_is_dark_when_off_reads_volts_and_overflows_on_open_leads() {
    let mut b = Bench::new(JOB, &[]);
    let set = |mode| Action::SetMeter { instrument: "meter".into(), mode };
    assert_eq!(b.act(read("meter")).reading.unwrap().shown, ShownValue::Blank);
    b.act(set(MeterMode::Ohm));
    assert_eq!(b.act(read("meter")).reading.unwrap().shown, ShownValue::Off(true));
    b.act(fit("meter", &[("v_ohm", "battery.plus"), ("com", "battery.minus")]));
    b.act(set(MeterMode::Volt));
    let out = b.act(read("meter"));
    let ShownValue::Steps(hundredths) = out.reading.unwrap().shown else { panic!("volts are shown") };
    assert!((1200..1320).contains(&hundredths), "{hundredths}");
}

#[test]
fn bright_metal_looks_cold_to_the_infrared_thermometer() {
    let mut b = Bench::new(JOB, &[("relay_welded", 50.0)]);
    b.act(cover("splash_guard", true));
    b.act(Action::Wait { s: 1200 });
    b.act(fit("infrared", &[("beam", "pump")]));
    b.act(read("infrared"));
    let Some(Predicted::Value(seen)) = b.ws.predicted() else { panic!("it shows something") };
    let pump = b.ws.circuit().assembly().part_index("pump").unwrap();
    let (case, room) = (b.ws.circuit().surface_c(pump), b.ws.circuit().surroundings_c());
    assert!(60.0 < case, "twenty minutes of running: {case}");
    let bright = b.ws.setup().car.stands[usize::from(pump)].bright_metal;
    if bright {
        assert!(room < seen && seen < room + 0.6 * (case - room), "{seen} between {room} and {case}");
    } else {
        assert!((seen - case).abs() < 1.0, "{seen} against {case}");
    }
}

#[test]
fn a_quarter_millimetre_hisses_faintly_and_a_sound_car_is_silent() {
    let hears = |faults: &[(&str, f64)]| {
        let mut b = Bench::new(JOB, faults);
        b.act(Action::Key(true));
        b.act(Action::Wait { s: 30 });
        b.act(sense(Sense::Hiss { part: "booster".into() })).reading.unwrap().shown
    };
    assert_eq!(hears(&[]), ShownValue::Level(0));
    assert_eq!(hears(&[("booster_rim", 0.25)]), ShownValue::Level(1));
    assert_eq!(hears(&[("booster_rim", 1.0)]), ShownValue::Level(2));
}

#[test]
fn the_same_world_shows_the_same_and_another_gauge_error_another_pointer() {
    let shown = |share: f64| {
        let (setup, mut world) = setup(JOB, &[]);
        world.instrument_errors.iter_mut().for_each(|e| *e = share);
        let mut b = Bench { ws: Opened::of(setup, world), log: Vec::new() };
        b.act(read("barometer")).reading.unwrap().shown
    };
    assert_eq!(shown(0.9), shown(0.9));
    assert_ne!(shown(-1.0), shown(1.0));
}

#[test]
fn a_lamp_at_the_battery_is_bright_and_one_behind_a_resistance_is_not() {
    let mut b = Bench::new(JOB, &[]);
    b.act(fit("lamp", &[("a", "battery.plus"), ("b", "battery.minus")]));
    let lamp = || sense(Sense::Lamp { instrument: "lamp".into() });
    assert_eq!(b.act(lamp()).reading.unwrap().shown, ShownValue::Level(3));
    let view = b.ws.view();
    let glow = view.instruments.iter().find(|i| i.id == "lamp").and_then(|i| i.glow).unwrap();
    assert!(0.8 < glow, "{glow}");
    b.act(Action::Unfit { instrument: "lamp".into() });
    b.act(fit("lamp", &[("a", "battery.plus"), ("b", "battery.plus")]));
    b.act(Action::Wait { s: 5 });
    assert_eq!(b.act(lamp()).reading.unwrap().shown, ShownValue::Level(0));
}
