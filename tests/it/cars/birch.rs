//! Birch: no current and no throttle; a pump on the camshaft, a reservoir, two check valves.

use std::sync::Arc;

use sim_core::air::Day;
use sim_core::assembly::Stop;
use sim_core::car::Car;
use sim_core::parts::engine::EngineState;

use super::{Bench, car, left_by};

/// The line of the data sheet that each fault leaves first, as a technician would measure it.
const LEAVES: &[(&str, &str)] = &[
    ("pump_worn", "dead-head"),
    ("pump_coupling", "build-up"),
    ("valve_p_leaks_back", "hold-tank"),
    ("valve_b_leaks_back", "check-valve"),
    ("valve_b_stuck_shut", "build-up"),
    ("hose_b_pinhole", "hold-10-min"),
    ("hose_b_bend", "bend"),
    ("hose_t_soft", "build-up"),
    ("hose_p_sludge", "build-up"),
    ("hose_p_kinked", "build-up"),
    ("tank_rusted", "hold-tank"),
    ("booster_rim", "hold-10-min"),
    ("booster_front_seal", "hold-10-min"),
    ("booster_tear", "hold-applied"),
    ("booster_seat", "hold-applied"),
    ("booster_air_seat", "hold-10-min"),
    ("booster_filter", "pedal-follows"),
    ("booster_sticks", "pedal-returns"),
    ("booster_rod_short", "free-travel"),
    ("booster_rod_long", "free-travel"),
];

const BOOSTER: &str = "booster.vacuum";

fn birch() -> Arc<Car> {
    car("birch")
}

fn cut(b: &mut Bench, joint: &str, plugs: &[&str]) {
    let plugs: Vec<_> = plugs.iter().map(|p| b.port(p)).collect();
    b.circuit.change(|a| {
        for j in &mut a.joints {
            j.made &= j.id != joint;
        }
        for port in plugs {
            a.set_stop(port, Some(Stop::Plug));
        }
    });
}

/// Filled at warm idle, engine off, a minute to settle.
fn settled(b: &mut Bench) {
    b.engine(EngineState::WarmIdle);
    b.run(120.0);
    b.engine(EngineState::Stopped);
    b.run(60.0);
}

fn travel(b: &Bench) -> f64 {
    b.circuit.pedal_travel_mm()
}

fn press(b: &mut Bench, n: f64, s: f64) {
    b.circuit.inputs_mut().pedal_n = n;
    b.run(s);
}

/// Measures the line on a car; `true` when it stays inside.
fn stays_inside(b: &mut Bench, line: &str) -> bool {
    match line {
        "dead-head" => {
            cut(b, "j_pump", &["pump.inlet"]);
            b.engine(EngineState::WarmIdle);
            b.run(60.0);
            b.keeps(line, b.gauge("pump.inlet"))
        }
        "build-up" => {
            b.engine(EngineState::WarmIdle);
            while -50.0 < b.gauge(BOOSTER) && b.circuit.tick().s() < 60.0 {
                b.run(0.2);
            }
            b.keeps(line, b.circuit.tick().s())
        }
        "depth" => {
            b.engine(EngineState::WarmIdle);
            b.run(120.0);
            b.keeps(line, b.gauge(BOOSTER))
        }
        "hold-10-min" | "hold-tank" => {
            settled(b);
            let port = if line == "hold-tank" { "tank.1" } else { BOOSTER };
            let before = b.gauge(port);
            b.run(600.0);
            b.keeps(line, b.gauge(port) - before)
        }
        "check-valve" => {
            settled(b);
            cut(b, "j_hose_t", &[]);
            let before = b.gauge(BOOSTER);
            b.run(600.0);
            b.keeps(line, b.gauge(BOOSTER) - before)
        }
        "line-difference" => {
            b.engine(EngineState::WarmIdle);
            while -50.0 < b.gauge(BOOSTER) && b.circuit.tick().s() < 120.0 {
                b.run(0.1);
            }
            b.keeps(line, (b.gauge(BOOSTER) - b.gauge("tank.1")).abs())
        }
        "hold-applied" => {
            settled(b);
            press(b, 60.0, 5.0);
            let before = b.gauge(BOOSTER);
            b.run(30.0);
            b.keeps(line, b.gauge(BOOSTER) - before)
        }
        "pedal-follows" => {
            settled(b);
            press(b, 60.0, 1.0);
            let soon = travel(b);
            b.run(20.0);
            let late = travel(b);
            b.keeps(line, if (late - soon).abs() <= 1.0 { 1.0 } else { 20.0 })
        }
        "pedal-returns" => {
            settled(b);
            let rest = travel(b);
            press(b, 80.0, 5.0);
            press(b, 0.0, 20.0);
            b.keeps(line, travel(b) - rest)
        }
        "free-travel" => {
            // Ten newtons of brake are felt; with an empty store the foot alone moves the piston.
            let mut n = 0.0;
            while b.circuit.brake_force_n() < 10.0 && n < 100.0 {
                press(b, n, 1.0);
                n += 0.5;
            }
            b.keeps(line, travel(b))
        }
        "bend" => {
            let now = |p: &str| b.circuit.assembly().param(p).unwrap_or_else(|| panic!("no {p}"));
            b.keeps(line, now("hose_b.bend_deg") + now("hose_b.bend_moved_deg"))
        }
        other => panic!("no measurement for {other}"),
    }
}

#[test]
fn inv_lowest_severity_of_each_fault_leaves_the_sheet_and_a_sound_birch_does_not() {
    let car = birch();
    let mut misses = Vec::new();
    for (i, fault) in car.faults.iter().enumerate() {
        let lines = left_by(LEAVES, &fault.id);
        for seed in [3, 4] {
            for line in &lines {
                let mut sound = Bench::drawn(&car, Day::STANDARD, seed, &[]);
                assert!(stays_inside(&mut sound, line), "a sound Birch {seed} leaves {line}");
            }
            let stays = |line: &&str| {
                let mut faulty = Bench::drawn(&car, Day::STANDARD, seed, &[(i as u16, fault.severity_min)]);
                stays_inside(&mut faulty, line)
            };
            if lines.iter().all(stays) {
                misses.push(format!("{} in Birch {seed} stays inside {lines:?}", fault.id));
            }
        }
    }
    assert!(misses.is_empty(), "{misses:#?}");
}

#[test]
fn inv_sound_birches_stay_inside_the_sheet_also_where_the_air_is_thin() {
    let high = Day { altitude_m: 2000.0, weather_kpa: -1.0, ambient_c: 14.0, night_drop_k: 9.0 };
    let cold = Day { altitude_m: 300.0, weather_kpa: 2.0, ambient_c: -5.0, night_drop_k: 8.0 };
    let car = birch();
    for (name, day) in [("sea level", Day::STANDARD), ("2000 m", high), ("cold", cold)] {
        for seed in 1..=4 {
            for line in ["dead-head", "depth", "hold-10-min", "hold-tank", "check-valve"] {
                let mut b = Bench::drawn(&car, day, seed, &[]);
                assert!(stays_inside(&mut b, line), "{name}, car {seed} leaves {line}");
            }
        }
    }
}

#[test]
fn inv_the_reservoir_gives_applications_that_the_booster_alone_has_not() {
    /// Applications of 80 N with the engine off until the brake force has halved.
    fn applications(cut_off: bool) -> u32 {
        let mut b = Bench::new(&birch(), Day::STANDARD, &[]);
        settled(&mut b);
        if cut_off {
            cut(&mut b, "j_hose_t", &["valve_b.source", "hose_t.a"]);
        }
        press(&mut b, 80.0, 3.0);
        let first = b.circuit.brake_force_n();
        for n in 1..30 {
            if b.circuit.brake_force_n() < 0.5 * first {
                return n;
            }
            press(&mut b, 0.0, 3.0);
            press(&mut b, 80.0, 3.0);
        }
        30
    }
    let (with, without) = (applications(false), applications(true));
    assert!(2 <= without && without + 2 <= with, "with {with}, without {without}");
}

#[test]
fn inv_no_key_and_no_pulled_wire_stops_the_pump() {
    let mut b = Bench::new(&birch(), Day::STANDARD, &[]);
    b.engine(EngineState::WarmIdle);
    b.key(false);
    b.run(60.0);
    assert!(b.gauge(BOOSTER) < -75.0, "{} kPa", b.gauge(BOOSTER));
}

/// The job's car as it comes in, by its hidden fault or another.
fn bread_round(seed: u64, faults: &[(u16, f64)]) -> Bench {
    let job = super::library().job("first-shift/before-the-bread-round").unwrap();
    Bench::drawn(&job.car, job.day, seed, faults)
}

#[test]
fn inv_the_debrief_of_the_bread_round_says_what_the_model_does() {
    /// What the debrief says, kPa in ten minutes.
    const BOTH: f64 = 13.0;
    const HOSE: f64 = 25.0;
    /// The car's own seeps move it.
    const SPREAD: f64 = 2.5;
    let job = super::library().job("first-shift/before-the-bread-round").unwrap();
    for seed in 1..=6 {
        let mut b = bread_round(seed, job.answer());
        settled(&mut b);
        let before = [b.gauge(BOOSTER), b.gauge("valve_b.store")];
        b.run(600.0);
        for (port, before) in [BOOSTER, "valve_b.store"].into_iter().zip(before) {
            let lost = b.gauge(port) - before;
            assert!((lost - BOTH).abs() < SPREAD, "car {seed}: {port} loses {lost} kPa, unclamped");
        }
        settled(&mut b);
        let clamped = b.port("hose_b.a");
        b.circuit.change(|a| {
            a.set_stop(clamped, Some(Stop::Clamp));
        });
        let before = [b.gauge(BOOSTER), b.gauge("valve_b.store")];
        b.run(600.0);
        let (booster, hose) = (b.gauge(BOOSTER) - before[0], b.gauge("valve_b.store") - before[1]);
        assert!(booster.abs() < 1.0, "car {seed}: the booster alone loses {booster} kPa");
        assert!((hose - HOSE).abs() < SPREAD, "car {seed}: hose and reservoir lose {hose} kPa");
        // Nothing of it while the engine runs.
        let deep = |faults: &[(u16, f64)]| {
            let mut b = bread_round(seed, faults);
            b.engine(EngineState::WarmIdle);
            b.run(120.0);
            b.gauge(BOOSTER)
        };
        let (faulty, sound) = (deep(job.answer()), deep(&[]));
        assert!((faulty - sound).abs() < 1.0, "car {seed}: {faulty} against {sound} kPa");
    }
}

#[test]
fn inv_a_leak_behind_the_boosters_valve_leaves_the_first_press_assisted() {
    let job = super::library().job("first-shift/before-the-bread-round").unwrap();
    for (i, fault) in job.car.faults.iter().enumerate() {
        if !["tank_rusted", "valve_p_leaks_back"].contains(&fault.id.as_str()) {
            continue;
        }
        for seed in 1..=6 {
            let mut b = bread_round(seed, &[(i as u16, fault.severity_max)]);
            settled(&mut b);
            let evening = b.gauge(BOOSTER);
            b.circuit.inputs_mut().surroundings_c = job.day.ambient_c - job.day.night_drop_k;
            b.run(12.0 * 3600.0);
            let (tank, booster) = (b.gauge("tank.1"), b.gauge(BOOSTER));
            assert!(-1.0 < tank, "{}, car {seed}: the reservoir is empty, {tank} kPa", fault.id);
            assert!(booster - evening < 8.0, "{}, car {seed}: from {evening} to {booster} kPa", fault.id);
            assert!(booster < -25.0, "{}, car {seed}: {booster} kPa", fault.id);
        }
    }
}
