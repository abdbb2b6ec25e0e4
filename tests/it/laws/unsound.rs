//! What cannot be made into equations stands still and says so; nothing panics.

use sim_core::air::Day;
use sim_core::assembly::{Assembly, Joint, Part, PortRef};
use sim_core::circuit::{Circuit, Event, Pace};
use sim_core::parts::PartKind;
use sim_core::parts::instruments::VacuumGauge;
use sim_core::units::Tick;

use crate::rig::library;

/// A hose of a shipped car.
fn hose() -> PartKind {
    let car = library().car("alder").unwrap();
    car.assembly.parts.iter().find(|p| p.kind.hose().is_some()).unwrap().kind
}

/// So many hoses in a row.
fn row(n: usize) -> Assembly {
    let parts = (0..n).map(|i| Part { id: format!("hose_{i}"), kind: hose() }).collect();
    let joint = |i: usize| Joint {
        id: format!("j_{i}"),
        a: PortRef { part: i as u16, port: 1 },
        b: PortRef { part: i as u16 + 1, port: 0 },
        made: true,
    };
    Assembly { parts, joints: (0..n - 1).map(joint).collect(), ..Assembly::default() }
}

/// Everything that can be asked is answered, and time goes on.
fn stands_still(mut circuit: Circuit) {
    let fault = circuit.fault().expect("it cannot be computed");
    assert_eq!(circuit.events().iter().filter(|(_, e)| *e == Event::Fault).count(), 1);
    let told = |c: &Circuit| {
        for port in c.assembly().ports() {
            assert!(c.pressure(port).pa().is_finite() && c.m_flow_out(port).is_finite());
        }
        for part in 0..c.assembly().parts.len() as u16 {
            assert!(c.surface_c(part).is_finite() && c.hiss(part).is_finite() && !c.hums(part));
        }
        (c.air_mass_kg(), c.surroundings_c())
    };
    let before = told(&circuit);
    let end = circuit.tick().plus(1_000);
    circuit.run_to(end, Pace::Timed);
    circuit.change(|a| a.joints.iter_mut().for_each(|j| j.made = false));
    assert_eq!((circuit.fault(), circuit.tick()), (Some(fault), end));
    assert_eq!(told(&circuit), before);
}

#[test]
fn inv_more_than_can_be_computed_is_a_fault_from_the_first_tick_on() {
    assert_eq!(Circuit::new(row(120), Day::STANDARD).fault(), None, "many, and not too many");
    let circuit = Circuit::new(row(130), Day::STANDARD);
    assert_eq!(circuit.fault().map(|f| f.tick), Some(Tick(0)));
    stands_still(circuit);
}

#[test]
fn inv_what_becomes_too_much_stands_still_from_then_on() {
    let gauge = PartKind::VacuumGauge(VacuumGauge { volume_cm3: 5.0, bore_mm: 2.0, lag_s: 0.2 });
    let mut assembly = row(120);
    let stems: Vec<Joint> = (0..10)
        .map(|i| {
            assembly.parts.push(Part { id: format!("gauge_{i}"), kind: gauge });
            let (a, b) = (PortRef { part: 120 + i, port: 0 }, PortRef { part: i, port: 1 });
            Joint { id: format!("fit_{i}"), a, b, made: true }
        })
        .collect();
    let mut circuit = Circuit::new(assembly, Day::STANDARD);
    circuit.run_to(Tick(100), Pace::Timed);
    assert_eq!(circuit.fault(), None);
    circuit.change(|a| a.joints.extend(stems));
    assert_eq!(circuit.fault().map(|f| f.tick), Some(Tick(100)));
    stands_still(circuit);
}
