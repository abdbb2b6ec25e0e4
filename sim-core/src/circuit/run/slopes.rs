//! The slopes of the whole right-hand side are those of its values, over every part and law at once.

use super::super::compile::StateVar;
use super::super::solve::{Entries, Given, N_BALANCES, NoSlopes, Scratch};
use super::{Circuit, Pace};
use crate::air::Day;
use crate::assembly::{Assembly, Joint, Part};
use crate::parts::PartKind;
use crate::parts::booster::Booster;
use crate::parts::check_valve::CheckValve;
use crate::parts::elements::Quantity;
use crate::parts::engine::{Engine, EngineState};
use crate::parts::engine_pump::EnginePump;
use crate::parts::hose::Hose;
use crate::parts::reservoir::Reservoir;
use crate::parts::tee::Tee;
use crate::units::Tick;

/// Booster with a sticking piston, two soft hoses, reservoir, check valve, pump turned by the engine.
#[expect(clippy::too_many_lines, reason = "a list of parts with their numbers")]
pub(crate) fn assembly() -> Assembly {
    let soft = PartKind::Hose(Hose {
        bore_mm: 8.0,
        length_m: 0.5,
        seep_cm3_per_min: 0.1,
        bend_fit_deg: 90.0,
        bend_deg: 90.0,
        pinhole_mm: 0.2,
        blocked: 0.1,
        sludge_mm: 0.5,
        collapse: 0.9,
        bend_moved_deg: 12.0,
    });
    let booster = PartKind::Booster(Booster {
        front_l: 2.4,
        rear_l: 0.43,
        area_cm2: 533.0,
        spring_n: 97.0,
        spring_n_per_m: 2411.0,
        pedal_ratio: 4.0,
        servo_ratio: 5.0,
        jump_in_n: 400.0,
        valve_preload_n: 50.0,
        valve_span_n: 50.0,
        admit_mm2: 13.0,
        equalise_mm2: 37.0,
        brake_kn_per_cm2: 4.0,
        brake_free_mm: 1.5,
        damping_kns_per_m: 20.0,
        bore_mm: 8.0,
        surface_m2: 0.25,
        seep_cm3_per_min: 0.05,
        rim_mm: 0.1,
        tear_mm: 0.2,
        seat_mm: 0.1,
        air_seat_mm: 0.1,
        front_seal_mm: 0.1,
        filter_blocked: 0.5,
        drag_n: 60.0,
        rod_mm: -0.5,
    });
    let parts = [
        ("booster", booster),
        ("near", soft),
        ("far", soft),
        (
            "tank",
            PartKind::Reservoir(Reservoir {
                volume_l: 2.0,
                surface_m2: 0.1,
                bore_mm: 8.0,
                seep_cm3_per_min: 0.1,
                rust_mm: 0.1,
            }),
        ),
        ("tee", PartKind::Tee(Tee { bore_mm: 8.0, volume_cm3: 6.0, crack_mm: 0.1 })),
        (
            "valve",
            PartKind::CheckValve(CheckValve {
                bore_mm: 8.0,
                volume_cm3: 3.0,
                crack_kpa: 1.0,
                seat_leak_mm: 0.05,
                back_leak_mm: 0.1,
                blocked: 0.1,
                held_open: 0.05,
            }),
        ),
        ("line", soft),
        (
            "pump",
            PartKind::EnginePump(EnginePump {
                displacement_cm3: 120.0,
                slip_mm2: 0.3,
                ratio: 0.5,
                warm_idle_rpm: 800.0,
                cold_idle_rpm: 1100.0,
                cruise_rpm: 2000.0,
                overrun_rpm: 2500.0,
                wide_open_rpm: 4000.0,
                lag_s: 0.3,
                inlet_cm3: 10.0,
                bore_mm: 8.0,
                wear_mm2: 0.1,
                coupling_lost: 0.1,
            }),
        ),
        (
            "engine",
            PartKind::Engine(Engine {
                warm_idle_kpa: -60.0,
                cold_idle_kpa: -40.0,
                cruise_kpa: -50.0,
                overrun_kpa: -80.0,
                wide_open_kpa: -2.0,
                lag_s: 0.3,
                bore_mm: 8.0,
                alternator_v: 14.0,
                alternator_ohm: 0.05,
                weak_kpa: 0.0,
            }),
        ),
    ];
    let mut a = Assembly {
        parts: parts.into_iter().map(|(id, kind)| Part { id: id.to_owned(), kind }).collect(),
        ..Assembly::default()
    };
    for (x, y) in [
        ("booster.vacuum", "near.a"),
        ("near.b", "far.a"),
        ("far.b", "tank.1"),
        // A soft hose at the seat itself.
        ("valve.store", "line.a"),
        ("line.b", "tee.1"),
        ("tee.2", "tank.2"),
        ("valve.source", "pump.inlet"),
        ("tee.3", "engine.manifold"),
    ] {
        let port = |name| a.port(name).unwrap_or_else(|| panic!("no port {name}"));
        let joint = Joint { id: format!("{x}-{y}"), a: port(x), b: port(y), made: true };
        a.joints.push(joint);
    }
    a
}

/// Central differences over 1e-7 of a variable's size leave next to nothing of curvature and some 1e-6 of
/// rounding, of the largest slope in the row; where an opening or a wall has just come to its end, the
/// difference straddles it (over 1e-6 by up to 4e-3, which shrinks with the difference as a corner's does).
const RELATIVE: f64 = 2e-3;

#[test]
fn inv_slopes_of_the_whole_circuit() {
    let mut c = Circuit::new(assembly(), Day::STANDARD);
    let mut checked = 0;
    for (step, (engine, pedal)) in [
        (EngineState::WarmIdle, 0.0),
        (EngineState::WarmIdle, 60.0),
        (EngineState::Stopped, 120.0),
        (EngineState::Cruise, 15.0),
        (EngineState::Overrun, 0.0),
        (EngineState::Stopped, 0.0),
    ]
    .into_iter()
    .enumerate()
    {
        c.inputs_mut().engine = engine;
        c.inputs_mut().pedal_n = pedal;
        for part in 1..=9_u64 {
            c.run_to(Tick(step as u64 * 180 + part * 20), Pace::Timed);
            checked += compare(&c);
        }
    }
    assert!(10_000 < checked, "only {checked} slopes compared");
}

/// Compares every slope at the circuit's present state; how many.
fn compare(c: &Circuit) -> usize {
    let n = c.model.n;
    let given = Given { inputs: &c.inputs, flags: &c.flags };
    let mut scratch = Scratch::default();
    let plan = &c.model.plan;
    let mut entries = vec![0.0; plan.n_written()];
    let mut f = vec![0.0; n + N_BALANCES];
    c.model.hold(given, 0, &mut scratch);
    c.model.eval(&c.model.numbers, &c.y, &mut f, &mut Entries(&mut entries), &mut scratch);
    let mut slopes = vec![0.0; (n + N_BALANCES) * n];
    for (entry, slope) in entries.iter().enumerate() {
        let (row, column) = plan.place(entry);
        slopes[row * n + column] = *slope;
    }
    let mut at = |y: &[f64]| {
        let mut f = vec![0.0; n + N_BALANCES];
        c.model.eval(&c.model.numbers, y, &mut f, &mut NoSlopes, &mut scratch);
        f
    };
    let size: Vec<f64> = (0..n)
        .map(|j| match c.net.layout.vars[j] {
            StateVar::Of(Quantity::Travel, _) => 1e-2,
            _ => c.y[j].abs().max(1e-3),
        })
        .collect();
    let numeric: Vec<Vec<f64>> = (0..n)
        .map(|j| {
            let h = 1e-7 * size[j];
            let (mut up, mut down) = (c.y.clone(), c.y.clone());
            up[j] += h;
            down[j] -= h;
            let (up, down) = (at(&up), at(&down));
            up.iter().zip(&down).map(|(u, d)| (u - d) / (2.0 * h)).collect()
        })
        .collect();
    let mut compared = 0;
    for row in 0..n + N_BALANCES {
        let scale = (0..n).map(|j| (numeric[j][row] * size[j]).abs()).fold(1e-12, f64::max);
        for (j, column) in numeric.iter().enumerate() {
            let (got, want) = (slopes[row * n + j] * size[j], column[row] * size[j]);
            assert!(
                (got - want).abs() <= RELATIVE * scale,
                "row {row} {:?}, column {:?} at {}: {got:e} against {want:e}, largest {scale:e}",
                c.net.layout.vars.get(row),
                c.net.layout.vars[j],
                c.tick.0
            );
            compared += 1;
        }
    }
    compared
}
