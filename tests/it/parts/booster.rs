//! The booster by what a foot and a gauge notice: jump-in, servo ratio, hysteresis, run-out, and its faults.

use sim_core::air::Day;
use sim_core::parts::PartKind;
use sim_core::parts::booster::Booster;
use sim_core::parts::engine::EngineState;

use crate::rig::{Bench, alder_on, alder_part};

fn booster() -> Booster {
    let PartKind::Booster(b) = alder_part("booster") else { panic!("Alder's booster is none") };
    b
}

/// Alder at warm idle with a full store.
fn filled(changes: &[(&str, f64)]) -> Bench {
    let mut b = alder_on(Day::STANDARD);
    for (param, value) in changes {
        b.set(param, *value);
    }
    b.circuit.inputs_mut().engine = EngineState::WarmIdle;
    b.run_s(60.0);
    b
}

/// Brake force after the pedal was held with `n` newtons for `s` seconds, N.
fn held(b: &mut Bench, n: f64, s: f64) -> f64 {
    b.circuit.inputs_mut().pedal_n = n;
    b.run_s(s);
    b.circuit.brake_force_n()
}

/// Input force at the push-rod at which the control valve begins to admit, at the pedal, N.
fn response_n() -> f64 {
    booster().valve_preload_n / booster().pedal_ratio
}

#[test]
fn inv_output_jumps_in_and_then_follows_the_servo_ratio() {
    /// The band in which both seats are shut, times the ratio, and the last newton of a slow approach.
    const BAND: f64 = 0.08;
    let b = booster();
    let mut car = filled(&[]);
    let below = held(&mut car, response_n() - 1.0, 10.0);
    assert!(below < 1.0, "before the valve opens nothing comes out: {below} N");
    // A newton more: the gap behind the reaction disc closes only at the jump-in force.
    let jump = held(&mut car, response_n() + 1.0, 20.0);
    let expected = b.jump_in_n + b.servo_ratio * b.pedal_ratio;
    assert!((jump / expected - 1.0).abs() <= BAND, "jump-in {jump} N, {expected} N expected");
    let (low, high) = (held(&mut car, 40.0, 20.0), held(&mut car, 60.0, 20.0));
    let ratio = (high - low) / (20.0 * b.pedal_ratio);
    assert!((ratio / b.servo_ratio - 1.0).abs() <= BAND, "{ratio} for {}", b.servo_ratio);
}

#[test]
fn inv_output_hangs_behind_on_the_way_back() {
    let mut car = filled(&[]);
    let up = held(&mut car, 50.0, 20.0);
    held(&mut car, 70.0, 20.0);
    let down = held(&mut car, 50.0, 20.0);
    let b = booster();
    // The band of F_in in which both seats are shut: 0.2 of the preload, times the ratio.
    let band = 0.2 * b.valve_preload_n * b.servo_ratio;
    assert!(0.5 * band < down - up && down - up < 1.5 * band, "up {up} N, down {down} N, band {band} N");
}

#[test]
fn inv_assist_runs_out_and_the_pedal_is_hard_without_vacuum() {
    let mut car = filled(&[]);
    let (one, two) = (held(&mut car, 300.0, 20.0), held(&mut car, 400.0, 20.0));
    let slope = (two - one) / (100.0 * booster().pedal_ratio);
    assert!((slope - 1.0).abs() < 0.05, "beyond run-out one newton in gives one out: {slope}");
    let mut empty = alder_on(Day::STANDARD);
    let hard = held(&mut empty, 100.0, 20.0);
    let mut full = filled(&[]);
    let assisted = held(&mut full, 100.0, 20.0);
    assert!(3.0 * hard < assisted, "without {hard} N, with {assisted} N");
}

#[test]
fn inv_assist_remains_for_some_applications_without_a_source() {
    let mut car = filled(&[]);
    car.circuit.inputs_mut().engine = EngineState::Stopped;
    car.run_s(5.0);
    let mut forces = Vec::new();
    for _ in 0..6 {
        forces.push(held(&mut car, 80.0, 3.0));
        held(&mut car, 0.0, 3.0);
    }
    assert!(
        forces.windows(2).all(|w| w[1] <= w[0] + 1.0),
        "each no stronger than the one before: {forces:?}"
    );
    assert!(0.9 * forces[0] < forces[1] && forces[5] < 0.6 * forces[0], "{forces:?}");
}

#[test]
fn inv_a_valve_that_leaks_at_rest_and_one_that_leaks_applied_are_told_apart() {
    /// What the store loses in 30 s with the engine off, kPa.
    fn loses(changes: &[(&str, f64)], pedal_n: f64) -> f64 {
        let mut car = filled(changes);
        held(&mut car, pedal_n, 5.0);
        car.circuit.inputs_mut().engine = EngineState::Stopped;
        car.run_s(1.0);
        let before = car.kpa_gauge("tee.1");
        car.run_s(30.0);
        car.kpa_gauge("tee.1") - before
    }
    let (at_rest, applied) = ([("booster.air_seat_mm", 0.4)], [("booster.seat_mm", 1.5)]);
    assert!(5.0 < loses(&at_rest, 0.0), "{}", loses(&at_rest, 0.0));
    assert!(loses(&applied, 0.0) < 0.5, "{}", loses(&applied, 0.0));
    assert!(3.0 < loses(&applied, 60.0), "{}", loses(&applied, 60.0));
    assert!(loses(&[], 60.0) < 1.0, "{}", loses(&[], 60.0));
}

#[test]
fn inv_a_blocked_filter_delays_the_assist_and_takes_none() {
    /// Share of the assist that may still be missing after a minute.
    const LATE: f64 = 0.02;
    let blocked = [("booster.filter_blocked", 0.97)];
    let (quick_sound, quick) = (held(&mut filled(&[]), 60.0, 0.5), held(&mut filled(&blocked), 60.0, 0.5));
    assert!(quick < 0.6 * quick_sound, "after 0.5 s: {quick} N, sound {quick_sound} N");
    let (slow_sound, slow) = (held(&mut filled(&[]), 60.0, 60.0), held(&mut filled(&blocked), 60.0, 60.0));
    assert!((slow / slow_sound - 1.0).abs() < LATE, "after a minute: {slow} N, sound {slow_sound} N");
}

#[test]
fn inv_a_sticking_piston_stays_where_the_spring_cannot_push_it() {
    let released = |drag_n: f64| {
        let mut car = filled(&[("booster.drag_n", drag_n)]);
        held(&mut car, 80.0, 10.0);
        held(&mut car, 0.0, 30.0);
        (car.circuit.pedal_travel_mm(), car.circuit.brake_force_n())
    };
    let (sound_mm, sound_n) = released(0.0);
    assert!(sound_mm < 0.5 && sound_n < 1.0, "sound: {sound_mm} mm, {sound_n} N");
    let (mm, n) = released(300.0);
    // 97 N of spring at rest: the brakes push back as far as spring and brakes beat 300 N, no further.
    assert!(2.0 < mm, "the pedal hangs: {mm} mm");
    assert!(50.0 < n && n < 300.0, "the brakes drag with what the friction holds: {n} N");
}

#[test]
fn inv_a_push_rod_too_long_drags_the_brakes_and_one_too_short_makes_a_long_pedal() {
    let mut sound = filled(&[]);
    held(&mut sound, 60.0, 20.0);
    let mut short = filled(&[("booster.rod_mm", -3.0)]);
    held(&mut short, 60.0, 20.0);
    let longer = short.circuit.pedal_travel_mm() - sound.circuit.pedal_travel_mm();
    let expected = 3.0 * booster().pedal_ratio;
    assert!((longer - expected).abs() < 0.1 * expected, "{longer} mm longer, {expected} expected");
    let mut long = filled(&[("booster.rod_mm", 2.5)]);
    let drags = held(&mut long, 0.0, 30.0);
    assert!(10.0 < drags, "brakes drag with nobody at the pedal: {drags} N");
    let mut within = filled(&[("booster.rod_mm", 1.0)]);
    assert!(held(&mut within, 0.0, 30.0) < 1.0, "within the free travel nothing drags");
}

#[test]
fn inv_a_front_seal_and_a_shell_leak_are_one_to_the_gauge() {
    /// Two holes of one size to the same chamber: rounding only.
    const SAME: f64 = 1e-9;
    let loses = |param: &str| {
        let mut car = filled(&[(param, 0.3)]);
        car.circuit.inputs_mut().engine = EngineState::Stopped;
        car.run_s(60.0);
        car.kpa_gauge("tee.1")
    };
    let (seal, rim) = (loses("booster.front_seal_mm"), loses("booster.rim_mm"));
    assert!((seal - rim).abs() <= SAME, "{seal} kPa, {rim} kPa");
    assert!(-60.0 < seal, "it does leak: {seal} kPa");
}
