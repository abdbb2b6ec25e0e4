//! Every fault of the catalogue, at its lowest severity in a drawn car, leaves a line of the data sheet.

use sim_core::air::Day;
use sim_core::assembly::Stop;
use sim_core::parts::engine::EngineState;

use super::{Bench, left_by, with_electric_pump};

/// The line of the data sheet that each fault leaves first, as a technician would measure it.
const LEAVES: &[(&str, &str)] = &[
    ("pump_worn", "dead-head"),
    ("pump_brushes", "run"),
    ("pump_drags", "pump-current"),
    ("valve_p_leaks_back", "hold-10-min"),
    ("valve_p_stuck_shut", "run"),
    ("switch_deeper", "cut-out"),
    ("switch_shallower", "cut-out"),
    ("switch_welded", "cut-out"),
    ("switch_burnt", "runs at all"),
    ("switch_diaphragm", "hold-10-min"),
    ("valve_m_leaks_back", "hold-10-min"),
    ("valve_m_stuck_shut", "engine-build-up"),
    ("hose_b_pinhole", "hold-10-min"),
    ("hose_b_bend", "bend"),
    ("hose_b_blocked", "line-difference"),
    ("hose_p_hole", "dead-head through the hose"),
    ("hose_p_blocked", "run"),
    ("hose_m_hole", "hose-hold"),
    ("tee_crack", "hold-10-min"),
    ("booster_rim", "hold-10-min"),
    ("booster_seat", "hold-applied"),
    ("booster_air_seat", "hold-10-min"),
    ("relay_welded", "key-off-current"),
    ("key_sticks", "key-off-current"),
    ("socket_bridged", "key-off-current"),
    ("socket_slack", "cut-out"),
    ("relay_burnt", "drop-relay"),
    ("relay_coil_open", "runs at all"),
    ("earth_bad", "drop-earth"),
    ("plus_corroded", "drop-plus"),
    ("pump_wire_corroded", "drop-plus"),
    ("fuse_holder", "drop-plus"),
    ("control_wire_open", "runs at all"),
    ("battery_weak", "battery-load"),
    ("engine_weak", "idle-vacuum"),
    // Cedar, with sensor and controller in place of the switch.
    ("sensor_shows_less", "cut-out"),
    ("sensor_shows_more", "cut-out"),
    ("sensor_diaphragm", "hold-10-min"),
    ("signal_open", "cut-out"),
    ("feed_open", "cut-out"),
    ("ground_corroded", "cut-out"),
    ("controller_burnt", "runs at all"),
    ("controller_shorted", "cut-out"),
    ("hose_m_soft", "engine-build-up"),
];

/// Measures the line on a car; `true` when it stays inside.
fn stays_inside(b: &mut Bench, line: &str) -> bool {
    match line {
        "dead-head" | "dead-head through the hose" => {
            let (joint, port) =
                if line == "dead-head" { ("j_pump", "pump.inlet") } else { ("j_hose_p", "hose_p.a") };
            let at = b.port(port);
            b.circuit.change(|a| {
                for j in &mut a.joints {
                    j.made &= j.id != joint;
                }
                a.set_stop(at, Some(Stop::Plug));
            });
            b.key(true);
            b.run(60.0);
            b.keeps("dead-head", b.gauge(port))
        }
        "run" => {
            let run = b.first_run().unwrap_or(120.0);
            b.keeps("run", run)
        }
        "cut-out" => {
            b.key(true);
            b.run(0.3);
            b.until(false, 0.05, 60.0);
            b.keeps("cut-out", b.store())
        }
        "runs at all" => {
            b.key(true);
            b.run(1.0);
            b.hums()
        }
        "pump-current" | "drop-plus" | "drop-earth" | "drop-relay" | "battery-load" => {
            b.key(true);
            b.run(4.0);
            let value = match line {
                "pump-current" => b.pump_a(),
                "drop-plus" => b.volts("battery.plus", "pump.plus"),
                "drop-earth" => b.volts("pump.minus", "battery.minus"),
                "drop-relay" => b.volts("relay.30", "relay.87"),
                _ => b.volts("battery.plus", "battery.minus"),
            };
            b.keeps(line, value)
        }
        "key-off-current" => {
            b.run(2.0);
            b.keeps(line, b.pump_a())
        }
        "hold-10-min" => {
            b.filled_and_settled();
            let settled = b.store();
            b.run(600.0);
            b.keeps(line, b.store() - settled)
        }
        "hold-applied" => {
            b.engine(EngineState::WarmIdle);
            b.run(60.0);
            b.circuit.inputs_mut().pedal_n = 60.0;
            b.run(5.0);
            b.engine(EngineState::Stopped);
            b.run(1.0);
            let before = b.store();
            b.run(30.0);
            b.keeps(line, b.store() - before)
        }
        "engine-build-up" => {
            b.engine(EngineState::WarmIdle);
            b.run(10.0);
            b.store() < -50.0
        }
        "line-difference" => {
            b.key(true);
            b.run(1.0);
            b.keeps(line, (b.store() - b.gauge("booster.vacuum")).abs())
        }
        "hose-hold" => {
            // Drawn down by the engine, then pulled off with both ends plugged: the hand pump's part.
            b.engine(EngineState::Overrun);
            b.run(10.0);
            let ends = ["hose_m.a", "hose_m.b"].map(|p| b.port(p));
            b.circuit.change(|a| {
                for j in &mut a.joints {
                    j.made &= j.id != "j_hose_m" && j.id != "j_manifold";
                }
                for end in ends {
                    a.set_stop(end, Some(Stop::Plug));
                }
            });
            let before = b.gauge("hose_m.a");
            b.run(60.0);
            b.keeps(line, b.gauge("hose_m.a") - before)
        }
        "idle-vacuum" => {
            b.engine(EngineState::WarmIdle);
            b.run(5.0);
            b.keeps(line, b.gauge("engine.manifold"))
        }
        "bend" => {
            let now = |p: &str| b.circuit.assembly().param(p).unwrap_or_else(|| panic!("no {p}"));
            b.keeps(line, now("hose_b.bend_deg") + now("hose_b.bend_moved_deg"))
        }
        other => panic!("no measurement for {other}"),
    }
}

#[test]
fn inv_lowest_severity_of_each_fault_leaves_the_sheet_and_a_sound_car_does_not() {
    let mut misses = Vec::new();
    for car in with_electric_pump() {
        for (i, fault) in car.faults.iter().enumerate() {
            let lines = left_by(LEAVES, &fault.id);
            for seed in [3, 4] {
                for line in &lines {
                    let mut sound = Bench::drawn(&car, Day::STANDARD, seed, &[]);
                    assert!(stays_inside(&mut sound, line), "{}: a sound car {seed} leaves {line}", car.id);
                }
                let stays = |line: &&str| {
                    let faulty = [(i as u16, fault.severity_min)];
                    stays_inside(&mut Bench::drawn(&car, Day::STANDARD, seed, &faulty), line)
                };
                if lines.iter().all(stays) {
                    misses.push(format!("{} in {} {seed} stays inside {lines:?}", fault.id, car.id));
                }
            }
        }
    }
    assert!(misses.is_empty(), "{misses:#?}");
    for (fault, _) in LEAVES {
        let known = with_electric_pump().iter().any(|c| c.faults.iter().any(|f| f.id == *fault));
        assert!(known, "no car has {fault}");
    }
}
