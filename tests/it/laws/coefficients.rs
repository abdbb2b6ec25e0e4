//! Factors on the model's own coefficients do what they say, and nothing as built.

use sim_core::air::Day;
use sim_core::circuit::{Circuit, Pace};
use sim_core::coefficients::Coefficients;
use sim_core::parts::engine::EngineState;
use sim_core::units::TICKS_PER_SECOND;

use crate::rig::library;

/// Alder with a hole in the hose at the booster, evacuated by its pump and engine and left to itself: air that comes in within
/// ten seconds, kg, and the digest at the end.
fn let_in(hole_mm: f64, coefficients: Coefficients) -> (f64, u64) {
    let mut assembly = library().car("alder").unwrap().assembly.clone();
    assert!(assembly.set_param("hose_b.pinhole_mm", hole_mm));
    assembly.coefficients = coefficients;
    let mut circuit = Circuit::new(assembly, Day::STANDARD);
    let run = |circuit: &mut Circuit, seconds: u64| {
        let to = circuit.tick().plus(seconds * TICKS_PER_SECOND);
        circuit.run_to(to, Pace::Timed);
    };
    circuit.inputs_mut().key_on = true;
    run(&mut circuit, 3);
    circuit.inputs_mut().key_on = false;
    circuit.inputs_mut().engine = EngineState::WarmIdle;
    run(&mut circuit, 60);
    circuit.inputs_mut().engine = EngineState::Stopped;
    run(&mut circuit, 5);
    let before = circuit.balances().mass_out_kg;
    run(&mut circuit, 10);
    (before - circuit.balances().mass_out_kg, circuit.digest())
}

#[test]
fn inv_as_built_is_without_factors() {
    let built = Coefficients::default();
    assert!(built.are_as_built());
    assert!(!Coefficients { way: 1.01, ..built }.are_as_built());
    assert_eq!(let_in(0.4, built).1, let_in(0.4, Coefficients { hole: 1.0, ..built }).1);
}

/// Choked, a hole's flow is its discharge coefficient times what does not depend on it: the factor comes back, less what
/// comes in elsewhere. Tolerance: the air in the open cools and warms a little with the store (1 %).
#[test]
fn inv_a_hole_lets_in_so_many_times_as_much() {
    let of = |hole: f64| {
        let with = Coefficients { hole, ..Coefficients::default() };
        let_in(0.4, with).0 - let_in(0.0, with).0
    };
    let ratio = of(1.2) / of(1.0);
    assert!((ratio - 1.2).abs() < 0.012, "{ratio}");
}

#[test]
fn inv_each_factor_is_felt() {
    let built = let_in(0.4, Coefficients::default()).1;
    let factors = Coefficients::default();
    for other in [
        Coefficients { wall_heat: 1.5, ..factors },
        Coefficients { way: 1.1, ..factors },
        Coefficients { hole: 1.1, ..factors },
        Coefficients { friction: 1.1, ..factors },
    ] {
        assert_ne!(let_in(0.4, other).1, built, "{other:?}");
    }
}
