//! A day in the life of a leaky Alder: everything moves at least once. Laws are checked along it.

use std::ops::Range;

use sim_core::air::Day;
use sim_core::circuit::Pace;
use sim_core::parts::engine::EngineState;
use sim_core::units::Tick;

use crate::rig::{Bench, alder_on};

/// One leg: what is changed, and for how many seconds it then runs.
struct Leg {
    change: fn(&mut Bench),
    s: f64,
}

fn leg(s: f64, change: fn(&mut Bench)) -> Leg {
    Leg { change, s }
}

fn engine(bench: &mut Bench, state: EngineState) {
    bench.circuit.inputs_mut().engine = state;
}

fn pedal(bench: &mut Bench, newton: f64) {
    bench.circuit.inputs_mut().pedal_n = newton;
}

fn joint(bench: &mut Bench, id: &str, made: bool) {
    bench.circuit.change(|a| {
        let joint = a.joints.iter_mut().find(|j| j.id == id).unwrap_or_else(|| panic!("no joint {id}"));
        joint.made = made;
    });
}

fn legs() -> Vec<Leg> {
    vec![
        leg(20.0, |b| engine(b, EngineState::ColdIdle)),
        leg(2.0, |b| pedal(b, 90.0)),
        leg(3.0, |b| pedal(b, 0.0)),
        leg(30.0, |b| engine(b, EngineState::Cruise)),
        leg(10.0, |b| engine(b, EngineState::Overrun)),
        leg(5.0, |b| engine(b, EngineState::WideOpen)),
        leg(2.5, |b| pedal(b, 220.0)),
        leg(3.0, |b| pedal(b, 0.0)),
        leg(40.0, |b| {
            engine(b, EngineState::Stopped);
            b.circuit.inputs_mut().key_on = true;
        }),
        leg(1.0, |b| pedal(b, 400.0)),
        leg(1.0, |b| pedal(b, 0.0)),
        leg(1.0, |b| pedal(b, 60.0)),
        leg(60.0, |b| pedal(b, 0.0)),
        leg(10.0, |b| joint(b, "j_booster", false)),
        leg(40.0, |b| joint(b, "j_booster", true)),
        leg(7_200.0, |b| b.circuit.inputs_mut().key_on = false),
        leg(43_200.0, |b| b.circuit.inputs_mut().surroundings_c = 8.0),
    ]
}

/// The leaky Alder, morning.
pub(crate) fn morning() -> Bench {
    let mut bench =
        alder_on(Day { altitude_m: 600.0, weather_kpa: -1.2, ambient_c: 18.0, night_drop_k: 10.0 });
    bench.set("hose_b.pinhole_mm", 0.08);
    bench.set("booster.tear_mm", 0.5);
    bench.set("valve_m.back_leak_mm", 0.1);
    bench
}

/// How the day is cut into stretches of time.
#[derive(Clone, Copy)]
pub(crate) enum Cut {
    /// Each leg in one timed stretch.
    Leg,
    /// Free-running, so that no step is longer than 8 ticks.
    Free,
    /// Timed stretches of this many ticks, so that no step is longer.
    Ticks(u64),
}

/// Number of legs.
pub(crate) const LEGS: usize = 17;

/// Runs the whole day, see [`run_legs`].
pub(crate) fn run(bench: &mut Bench, cut: Cut, max_s: f64, look: impl FnMut(usize, &Bench)) {
    run_legs(bench, 0..LEGS, cut, max_s, look);
}

/// Runs some legs, each up to `max_s` long, and calls `look` every second (at the end of a leg that is
/// longer than two minutes).
pub(crate) fn run_legs(
    bench: &mut Bench,
    range: Range<usize>,
    cut: Cut,
    max_s: f64,
    mut look: impl FnMut(usize, &Bench),
) {
    let legs = legs();
    assert_eq!(legs.len(), LEGS);
    for i in range {
        let leg = &legs[i];
        (leg.change)(bench);
        let s = leg.s.min(max_s);
        let every = if s < 120.0 { 1.0 } else { s };
        let end = Tick(bench.circuit.tick().0 + Tick::from_s(s).0);
        while bench.circuit.tick() < end {
            let to = Tick((bench.circuit.tick().0 + Tick::from_s(every).0).min(end.0));
            match cut {
                Cut::Leg => bench.circuit.run_to(to, Pace::Timed),
                Cut::Free => bench.circuit.run_to(to, Pace::Free),
                Cut::Ticks(n) => {
                    while bench.circuit.tick() < to {
                        let next = Tick((bench.circuit.tick().0 + n).min(to.0));
                        bench.circuit.run_to(next, Pace::Timed);
                    }
                }
            }
            look(i, bench);
        }
    }
}
