//! Laws of the whole circuit: nothing is made or lost, nothing runs by itself, the same day gives the
//! same bits, and the length of a step does not show.

use sim_core::air::{Day, GAMMA};
use sim_core::assembly::Stop;
use sim_core::circuit::export::VolumeNumbers;
use sim_core::circuit::{Event, Pace};
use sim_core::parts::PartKind;
use sim_core::parts::hose::Hose;
use sim_core::units::Tick;

use super::busy_day::{Cut, LEGS, morning, run, run_legs};
use crate::rig::{Bench, ISOTHERMAL_M2, Rig, constant_pump, day_of, tee, vessel};

#[test]
fn inv_mass_and_energy_close() {
    /// Acceptance: relative.
    const CLOSED: f64 = 1e-9;
    let mut bench = morning();
    let (m0, u0) = (bench.circuit.air_mass_kg(), bench.circuit.air_energy_j());
    let mut looks = 0;
    run(&mut bench, Cut::Leg, f64::INFINITY, |leg, b| {
        let l = b.circuit.balances();
        let mass = b.circuit.air_mass_kg() + l.mass_out_kg - m0;
        let energy = b.circuit.air_energy_j() + l.enthalpy_out_j + l.work_out_j - l.heat_in_j - u0;
        assert!(mass.abs() <= CLOSED * m0, "leg {leg}: {mass:e} kg of {m0:e}");
        assert!(energy.abs() <= CLOSED * u0, "leg {leg}: {energy:e} J of {u0:e}");
        looks += 1;
    });
    let l = bench.circuit.balances();
    println!("{looks} looks, {l:?}");
    // The day did move air, heat and pistons, or the sums above would prove nothing.
    assert!(1e-4 < l.mass_out_kg.abs() && 1.0 < l.heat_in_j.abs() && 0.1 < l.work_out_j.abs(), "{l:?}");
}

#[test]
fn inv_air_stays_possible() {
    let mut bench = morning();
    let ambient = bench.circuit.ambient().pa();
    run(&mut bench, Cut::Leg, f64::INFINITY, |leg, b| {
        for (name, p, t) in b.circuit.bodies_of_air() {
            // No source in Alder is deeper than 8 kPa abs; a foot may press a closed front chamber a
            // little above the day's pressure.
            assert!(8e3 < p.pa() && p.pa() < 1.4 * ambient, "leg {leg}: {name} at {p:?}");
            assert!(180.0 < t && t < 420.0, "leg {leg}: {name} at {t} K");
        }
        assert!(!b.circuit.events().iter().any(|(_, e)| *e == Event::Fault), "leg {leg}: a step failed");
    });
}

#[test]
fn inv_above_the_highest_source_only_by_work_or_heat() {
    /// Rounding, and the error a step may make where two bodies come to rest at the day's pressure, J.
    const ROUNDING: f64 = 1e-4;
    // The engine only draws: the highest source is the day. Looked at every tick, chamber by chamber, so
    // that work that went into one is not set off against work that came out of the other.
    let mut bench = morning();
    let p_atm = bench.circuit.ambient().pa();
    let nipple = bench.port("booster.vacuum");
    let numbers = bench.circuit.numbers();
    let volumes = |b: &Bench| -> Vec<f64> {
        let y = b.circuit.state();
        let m3 = |v: &VolumeNumbers| v.m3 + v.travel.map_or(0.0, |i| v.per_travel_m2 * y[i]);
        numbers.volumes.iter().map(m3).collect()
    };
    let pressures =
        |b: &Bench| -> Vec<f64> { b.circuit.bodies_of_air().iter().map(|(_, p, _)| p.pa()).collect() };
    let (mut given, mut above) = (0.0_f64, 0);
    let (mut heat, mut m3, mut pa) = (bench.circuit.balances().heat_in_j, volumes(&bench), pressures(&bench));
    for i in 0..=LEGS {
        if i < LEGS {
            run_legs(&mut bench, i..i + 1, Cut::Ticks(1), 0.0, |_, _| {});
        } else {
            // At last a foot on a store that is empty and shut: it presses the front chamber.
            bench.circuit.change(|a| a.joints.retain(|j| j.id != "j_booster"));
            bench.run_s(3_600.0);
            bench.circuit.change(|a| a.set_stop(nipple, Some(Stop::Plug)));
            (heat, m3, pa) = (bench.circuit.balances().heat_in_j, volumes(&bench), pressures(&bench));
            (given, above) = (0.0, 0);
            bench.circuit.inputs_mut().pedal_n = 600.0;
        }
        let end = bench.circuit.tick().plus(6_000);
        while bench.circuit.tick() < end {
            let next = bench.circuit.tick().plus(1);
            bench.circuit.run_to(next, Pace::Timed);
            let now = (bench.circuit.balances().heat_in_j, volumes(&bench), pressures(&bench));
            given += (now.0 - heat).max(0.0);
            for k in 0..m3.len() {
                // Work raises the energy and shrinks the volume it is compared by: p dV γ/(γ − 1) at most.
                given += GAMMA / (GAMMA - 1.0) * (0.5 * (pa[k] + now.2[k]) * (m3[k] - now.1[k])).max(0.0);
            }
            (heat, m3, pa) = now;
            // Energy of a body of air above that of the same volume at the day's pressure.
            let excess = |k: usize| (pa[k] - p_atm).max(0.0) * m3[k] / (GAMMA - 1.0);
            let excess = (0..m3.len()).map(excess).fold(0.0, f64::max);
            above += usize::from(0.0 < excess);
            assert!(excess <= given + ROUNDING, "leg {i}: {excess} J above the day with {given} J given");
            if excess <= 0.0 {
                given = 0.0;
            }
        }
    }
    // The last foot did press air above the day's pressure, or nothing was tried.
    assert!(50 < above, "{above} ticks above the day's pressure");
}

#[test]
fn inv_same_day_same_bits() {
    let digests = || {
        let (mut bench, mut list) = (morning(), Vec::new());
        run(&mut bench, Cut::Free, 60.0, |_, b| list.push(b.circuit.digest()));
        list
    };
    let (first, second) = (digests(), digests());
    assert!(100 < first.len());
    assert_eq!(first, second);
}

#[test]
fn inv_a_copy_goes_on_the_same() {
    for cut_at in [2, 7, 9, 11, 13, 14] {
        let mut bench = morning();
        run_legs(&mut bench, 0..cut_at, Cut::Leg, 60.0, |_, _| {});
        let mut copy = bench.clone();
        let rest = |b: &mut Bench| {
            let mut list = Vec::new();
            run_legs(b, cut_at..LEGS, Cut::Leg, 60.0, |_, b| list.push(b.circuit.digest()));
            list
        };
        assert_eq!(rest(&mut bench), rest(&mut copy), "copied before leg {cut_at}");
    }
}

/// Every pressure (Pa) and the pump's current (A) at each look, with the number of switchings so far.
fn traced(cut: Cut, tolerance: f64, max_s: f64) -> Vec<(usize, usize, Vec<f64>, f64)> {
    let (mut bench, mut list) = (morning(), Vec::new());
    bench.circuit.set_tolerance(tolerance);
    run(&mut bench, cut, max_s, |leg, b| {
        let pressures = b.circuit.bodies_of_air().iter().map(|(_, p, _)| p.pa()).collect();
        let ampere = b.circuit.current(b.port("pump.plus"));
        list.push((leg, b.circuit.events().len(), pressures, ampere));
    });
    list
}

/// Greatest difference of a pressure (Pa) and of a current (share of 10 A) between two traces.
fn apart(a: &[(usize, usize, Vec<f64>, f64)], b: &[(usize, usize, Vec<f64>, f64)]) -> (f64, f64) {
    assert_eq!(a.len(), b.len());
    let (mut worst_p, mut worst_i) = (0.0_f64, 0.0_f64);
    let mut shifted = 0;
    for (i, (x, y)) in a.iter().zip(b).enumerate() {
        if x.1 != y.1 {
            // A look fell between one's switching and the other's: a few ticks apart, no more.
            shifted += 1;
            assert!(shifted <= 2, "look {i}: one has switched, the other still has not");
            continue;
        }
        let p = x.2.iter().zip(&y.2).map(|(p, q)| (p - q).abs()).fold(0.0, f64::max);
        if worst_p < p {
            println!("look {i}, leg {}: {p:.3} Pa", x.0);
        }
        worst_p = worst_p.max(p);
        worst_i = worst_i.max((x.3 - y.3).abs() / 10.0);
    }
    (worst_p, worst_i)
}

#[test]
fn inv_the_length_of_a_step_does_not_show() {
    /// The design's error bar on every pressure, Pa, and on currents, share.
    const BAR: (f64, f64) = (50.0, 0.005);
    // Long legs cut into short steps take long: the night is compared by error only.
    const SHORT_S: f64 = 300.0;
    for (what, usual, other) in [
        ("a thousandth of the error", traced(Cut::Leg, 1.0, 1e9), traced(Cut::Leg, 1e-3, 1e9)),
        ("steps of 8 ticks at most", traced(Cut::Leg, 1.0, SHORT_S), traced(Cut::Ticks(8), 1.0, SHORT_S)),
        (
            "steps of 4 ticks at most",
            traced(Cut::Ticks(8), 1.0, SHORT_S),
            traced(Cut::Ticks(4), 1.0, SHORT_S),
        ),
    ] {
        let (p, i) = apart(&usual, &other);
        println!("{what}: {p:.3} Pa, {:.4} %", i * 100.0);
        assert!(p <= BAR.0, "{what}: pressures {p} Pa apart");
        assert!(i <= BAR.1, "{what}: currents {i} apart");
    }
}

#[test]
fn inv_nothing_moves_without_a_cause() {
    /// Twelve hours of rounding.
    const ROUNDING: f64 = 1e-9;
    let mut bench = crate::rig::alder_on(Day::STANDARD);
    let before = bench.circuit.bodies_of_air();
    bench.run_s(43_200.0);
    for ((name, p0, t0), (_, p, t)) in before.iter().zip(bench.circuit.bodies_of_air()) {
        assert!((p.pa() / p0.pa() - 1.0).abs() <= ROUNDING, "{name}: {p0:?} became {p:?}");
        assert!((t / t0 - 1.0).abs() <= ROUNDING, "{name}: {t0} K became {t} K");
    }
    assert!(bench.circuit.events().is_empty(), "{:?}", bench.circuit.events());
}

#[test]
fn inv_a_cold_night_raises_the_vacuum_of_a_tight_vessel() {
    /// p/T of a sealed vessel: the step's error in T over a night.
    const STEP: f64 = 1e-4;
    let mut bench = Rig::default()
        .part("vessel", PartKind::Booster(vessel(3.0, 0.25)))
        .part("suction", constant_pump(0.5, 0.3, 20.0))
        .join("suction.stem", "vessel.vacuum")
        .on(day_of(101_325.0, 20.0), &[]);
    bench.stroke("suction", 1.0);
    bench.run_s(120.0);
    bench.stroke("suction", 0.0);
    bench.run_s(600.0);
    let (p0, t0) = bench.air("vessel.front");
    bench.circuit.inputs_mut().surroundings_c = -5.0;
    bench.run_s(43_200.0);
    let (p, t) = bench.air("vessel.front");
    assert!(t < t0 - 20.0, "the night was cold: {t0} K to {t} K");
    assert!(((p / p0) / (t / t0) - 1.0).abs() <= STEP, "{p0} Pa {t0} K, {p} Pa {t} K");
}

fn hose() -> PartKind {
    PartKind::Hose(Hose {
        bore_mm: 6.0,
        length_m: 0.8,
        seep_cm3_per_min: 0.0,
        bend_fit_deg: 0.0,
        bend_deg: 0.0,
        pinhole_mm: 0.0,
        blocked: 0.3,
        sludge_mm: 0.0,
        collapse: 0.0,
        bend_moved_deg: 0.0,
    })
}

#[test]
fn inv_a_hose_is_the_same_both_ways() {
    /// Same numbers in another order.
    const ROUNDING: f64 = 1e-9;
    let filled = |near: &str, far: &str| {
        let mut bench = Rig::default()
            .part("vessel", PartKind::Booster(vessel(3.0, 0.25)))
            .part("hose", hose())
            .part("tee", tee(20.0, 5.0, 0.0))
            .part("suction", constant_pump(1.0, 0.1, 20.0))
            .join("vessel.vacuum", near)
            .join(far, "tee.1")
            .join("suction.stem", "tee.2")
            .on(day_of(101_325.0, 20.0), &[]);
        bench.stroke("suction", 2.0);
        bench.run_s(3.0);
        let drawn = bench.pa("vessel.vacuum");
        bench.stroke("suction", 0.0);
        let open = bench.port("tee.3");
        bench.circuit.change(|a| a.set_stop(open, None));
        bench.run_s(0.3);
        (drawn, bench.pa("vessel.vacuum"))
    };
    let (there, back) = (filled("hose.a", "hose.b"), filled("hose.b", "hose.a"));
    assert!(there.0 < 60e3 && there.0 + 5e3 < there.1, "it was drawn and filled: {there:?}");
    assert!((there.0 / back.0 - 1.0).abs() <= ROUNDING, "{there:?} {back:?}");
    assert!((there.1 / back.1 - 1.0).abs() <= ROUNDING, "{there:?} {back:?}");
}

#[test]
fn inv_a_wide_port_opens_on_a_small_deep_vacuum() {
    // 20 mm onto 5 cm³ at 24 kPa: it fills in some 20 µs. With steps of 1/64 tick at least, none was
    // possible: the circuit stood still from there on and said `Fault`.
    for (bore_mm, cm3) in [(30.0, 2.0), (20.0, 5.0), (8.0, 6.0), (8.0, 2.0)] {
        let mut bench = Rig::default()
            .part("tee", tee(bore_mm, cm3, 0.0))
            .part("suction", constant_pump(1.0, 0.02, bore_mm))
            .join("suction.stem", "tee.1")
            .on(day_of(101_325.0, 20.0), &[]);
        bench.stroke("suction", 2.0);
        bench.run_s(5.0);
        bench.stroke("suction", 0.0);
        let open = bench.port("tee.2");
        bench.circuit.change(|a| a.set_stop(open, None));
        bench.run_s(0.02);
        let p = bench.pa("tee.1");
        assert!((p - 101_325.0).abs() < 200.0, "{bore_mm} mm on {cm3} cm³: {p} Pa");
        assert!(bench.circuit.events().is_empty(), "{bore_mm} mm on {cm3} cm³");
    }
}

#[test]
fn inv_hoses_side_by_side_add() {
    /// Both hoses settle to the same states: what is left of settling after a minute.
    const SETTLED: f64 = 1e-6;
    let flow = |n: usize| {
        let mut rig = Rig::default()
            .part("mouth", tee(300.0, 500.0, 0.0))
            .part("end", tee(300.0, 500.0, 0.0))
            .part("suction", constant_pump(100.0, 0.0, 300.0))
            .part("h1", hose())
            .part("h2", hose())
            .join("suction.stem", "end.1");
        for (i, h) in ["h1", "h2"].iter().enumerate().take(n) {
            let port = i + 2;
            rig = rig.join(&format!("{h}.a"), &format!("mouth.{port}"));
            rig = rig.join(&format!("{h}.b"), &format!("end.{port}"));
        }
        let mut bench = rig.on(day_of(101_325.0, 20.0), &["mouth.1"]);
        bench.stroke("suction", 5.0);
        bench.run_s(60.0);
        // Choked at the far end: the pump's side does not act back.
        assert!(bench.pa("end.1") < 0.1 * 101_325.0, "{}", bench.pa("end.1"));
        -bench.circuit.m_flow_out(bench.port("suction.stem"))
    };
    let (one, two) = (flow(1), flow(2));
    assert!(1e-5 < one);
    // The mouth itself resists a little: 1e-4 of the pressure in front of the hoses.
    assert!((two / (2.0 * one) - 1.0).abs() <= SETTLED + 1e-4, "{one:e} and {two:e}");
}

#[test]
fn inv_a_suction_beyond_what_can_be_computed_is_told_and_never_freezes() {
    /// As near as a vessel is to the pump's share of the day's pressure when its way is no resistance.
    const EMPTY: f64 = 1.01;
    /// The pump's end: a tenth of the day's pressure.
    const SHARE: f64 = 0.1;
    // 20 L/s to 2 million. Whatever can be computed comes to the pump's end and stays there; what cannot is told.
    for strokes_per_s in [0.2, 2.0, 20.0, 200.0, 2e3, 2e4] {
        let mut bench = Rig::default()
            .part("vessel", PartKind::Booster(vessel(3.0, ISOTHERMAL_M2)))
            .part("suction", constant_pump(100.0, SHARE, 300.0))
            .join("suction.stem", "vessel.vacuum")
            .on(day_of(101_325.0, 20.0), &[]);
        bench.stroke("suction", strokes_per_s);
        bench.run_s(300.0);
        let told = bench.circuit.fault().is_some();
        let p = bench.pa("vessel.vacuum");
        println!("{} L/s: {p} Pa, told {told}", strokes_per_s * 100.0);
        assert!(told || (p <= EMPTY * SHARE * 101_325.0 && 0.0 < p), "{strokes_per_s} strokes/s: {p} Pa");
        assert_eq!(told, bench.circuit.events().iter().any(|(_, e)| *e == Event::Fault));
    }
}

#[test]
fn inv_currents_at_a_node_sum_to_nothing() {
    /// Amperes: loose ends are tied by 1 nS, conductances of 1e3 S cancel to 1e-10 of 10 A.
    const KIRCHHOFF_A: f64 = 1e-6;
    let mut bench = morning();
    let mut largest = 0.0_f64;
    run(&mut bench, Cut::Leg, 30.0, |leg, b| {
        let i = |port: &str| b.circuit.current(b.port(port));
        for node in [
            &["wire_plus.b", "fuse.a"][..],
            &["fuse.b", "relay.30"],
            &["relay.87", "wire_pump.a"],
            &["wire_pump.b", "pump.plus"],
            &["pump.minus", "wire_earth.a"],
            &["relay.85", "wire_switch.a"],
            &["battery.plus", "wire_plus.a", "key.30", "engine.b_plus"],
            &["wire_earth.b", "strap.b", "switch.com", "engine.ground"],
        ] {
            let sum: f64 = node.iter().map(|p| i(p)).sum();
            assert!(sum.abs() <= KIRCHHOFF_A, "leg {leg}: {node:?} sums to {sum:e} A");
        }
        largest = largest.max(i("pump.plus").abs());
    });
    assert!(5.0 < largest, "the pump ran: {largest} A");
}

#[test]
fn inv_isothermal_vessel_stays_at_the_walls_temperature() {
    // The published isothermal rows rest on this.
    let mut bench = crate::rig::vessel_and_pump(vessel(5.0, ISOTHERMAL_M2), 0.0, day_of(101_325.0, 20.0));
    bench.stroke("suction", 5.0);
    bench.run_s(1.0);
    let (p, t) = bench.air("vessel.front");
    assert!(p < 50e3 && (t - 293.15).abs() < 0.01, "{p} Pa, {t} K");
}

#[test]
fn inv_a_contact_that_moves_after_hours_moves_when_short_steps_say() {
    /// The store loses some 1.6 Pa a second; steps of hours and of seconds may be a pascal apart, a fiftieth of
    /// the bar of 0.05 kPa.
    const APART_S: f64 = 1.0 / 1.6;
    // A new car with a hose that sweats: the key stays on, and after hours the pump is asked for again. In one
    // go steps are hours long; in pieces of ten seconds none is longer than that.
    let night = |piece_s: f64| {
        let mut bench = crate::rig::alder_on(Day::STANDARD);
        bench.set("hose_b.seep_cm3_per_min", 2.0);
        bench.circuit.inputs_mut().key_on = true;
        bench.run_s(120.0);
        let begun = bench.circuit.events().len();
        for _ in 0..(43_200.0 / piece_s) as usize {
            bench.run_s(piece_s);
        }
        bench.circuit.events()[begun..].to_vec()
    };
    let (whole, pieces) = (night(43_200.0), night(10.0));
    let what = |events: &[(Tick, Event)]| events.iter().map(|(_, e)| *e).collect::<Vec<_>>();
    assert!(!whole.is_empty(), "nothing moved in twelve hours");
    assert_eq!(what(&whole), what(&pieces));
    let (first, same) = (whole[0], pieces[0]);
    println!("{:?} at {} s, in pieces at {} s", first.1, first.0.s(), same.0.s());
    assert!(3_600.0 < first.0.s(), "{first:?} is no matter of hours");
    assert!((first.0.s() - same.0.s()).abs() <= APART_S, "{first:?} against {same:?}");
}

#[test]
fn inv_a_battery_gives_no_more_than_it_holds() {
    use sim_core::parts::engine::EngineState;
    /// What one step may make wrong in a charge; it ends on the last of them.
    const STEP: f64 = 1e-6;
    // A welded relay over a weekend: 42 A·h at some 8 A last five hours and a bit, then the hum dies.
    let mut bench = crate::rig::alder_on(Day::STANDARD);
    bench.set("relay.weld_s", 60.0);
    let (pump, battery) = (bench.part("pump"), bench.part("battery"));
    bench.run_s(4.0 * 3_600.0);
    assert!(bench.circuit.hums(pump), "it still runs after four hours");
    bench.run_s(44.0 * 3_600.0);
    assert!(!bench.circuit.hums(pump), "it stands after two days");
    let charge = bench.circuit.charge(battery);
    assert!((-0.1 - STEP..0.0).contains(&charge), "charge {charge}");
    assert!(bench.circuit.voltage(bench.port("battery.plus")) < 3.0, "the battery is flat");
    // And charging ends when it is full.
    bench.set("relay.weld_s", 0.0);
    bench.circuit.inputs_mut().engine = EngineState::Cruise;
    let mut last = charge;
    for hour in 0..12 {
        bench.run_s(3_600.0);
        let now = bench.circuit.charge(battery);
        assert!(last - STEP <= now && now <= 1.0 + STEP, "hour {hour}: {last} to {now}");
        last = now;
    }
    assert!(0.98 < last, "full: {last}");
    assert!(!bench.circuit.events().iter().any(|(_, e)| *e == Event::Fault));
}
