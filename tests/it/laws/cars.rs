//! Laws over every car of the library: new, and with each of its faults at both ends of its severity, driven
//! through a day.

use std::sync::Arc;

use sim_core::air::Day;
use sim_core::car::Car;
use sim_core::circuit::{Circuit, Event, Pace};
use sim_core::parts::engine::EngineState;
use sim_core::units::Tick;

use crate::rig::library;

/// What is inside the volumes plus what has gone, kg and J.
fn total(c: &Circuit) -> (f64, f64) {
    let l = c.balances();
    (c.air_mass_kg() + l.mass_out_kg, c.air_energy_j() + l.enthalpy_out_j + l.work_out_j - l.heat_in_j)
}

/// Drives it: cold start, two applications, overrun, lights with the engine off, a night.
fn day(car: &Arc<Car>, fault: Option<(&str, f64)>, tolerance: f64, mut look: impl FnMut(&Circuit)) {
    let mut assembly = car.assembly.clone();
    if let Some((param, value)) = fault {
        assert!(assembly.set_param(param, value), "{}: no {param}", car.id);
    }
    let mut c = Circuit::new(assembly, Day::STANDARD);
    c.set_tolerance(tolerance);
    look(&c);
    for (engine, key, pedal, until_s) in [
        (EngineState::Stopped, true, 0.0, 5.0),
        (EngineState::ColdIdle, true, 0.0, 20.0),
        (EngineState::WarmIdle, true, 60.0, 23.0),
        (EngineState::Cruise, true, 0.0, 40.0),
        (EngineState::Overrun, true, 150.0, 44.0),
        (EngineState::WideOpen, true, 0.0, 50.0),
        (EngineState::Stopped, true, 400.0, 54.0),
        (EngineState::Stopped, true, 0.0, 90.0),
        (EngineState::Stopped, false, 0.0, 20_000.0),
    ] {
        let inputs = c.inputs_mut();
        inputs.engine = engine;
        inputs.key_on = key;
        inputs.pedal_n = pedal;
        c.run_to(Tick::from_s(until_s), Pace::Timed);
        look(&c);
    }
}

#[test]
fn inv_every_car_with_every_fault_keeps_mass_energy_and_sense() {
    /// Acceptance: relative to what is in the volumes at the start.
    const CLOSED: f64 = 1e-9;
    let library = library();
    let ids = library.cars().unwrap();
    assert!(3 <= ids.len(), "the demo cars are found: {ids:?}");
    let mut days = 0;
    for id in ids {
        let car = library.car(&id).unwrap();
        let mut cases = vec![None];
        for f in &car.faults {
            cases.extend([f.severity_min, f.severity_max].map(|v| Some((f.param.as_str(), v))));
        }
        for fault in cases {
            let mut start = None;
            day(&car, fault, 1.0, |c| {
                let (kg, joule) = total(c);
                let (m0, u0, kg0, joule0) =
                    *start.get_or_insert((c.air_mass_kg(), c.air_energy_j(), kg, joule));
                assert!((kg - kg0).abs() <= CLOSED * m0, "{id} {fault:?}: mass");
                assert!((joule - joule0).abs() <= CLOSED * u0, "{id} {fault:?}: energy");
                for (name, p, t) in c.bodies_of_air() {
                    assert!(0.0 < p.pa() && p.pa() <= 1.4 * c.ambient().pa(), "{id} {fault:?}: {name} {p:?}");
                    assert!(180.0 < t && t < 450.0, "{id} {fault:?}: {name} at {t} K");
                }
                assert!(!c.events().iter().any(|(_, e)| *e == Event::Fault), "{id} {fault:?}: a step failed");
                assert!(c.strain() < 0.01, "{id} {fault:?}: strained to {}", c.strain());
            });
            days += 1;
        }
    }
    assert!(150 < days, "only {days} days driven");
}

#[test]
fn inv_the_same_day_gives_the_same_bits() {
    let library = library();
    for id in library.cars().unwrap() {
        let car = library.car(&id).unwrap();
        let digests = || {
            let mut seen = Vec::new();
            day(&car, None, 1.0, |c| seen.push(c.digest()));
            seen
        };
        assert_eq!(digests(), digests(), "{id}");
    }
}

#[test]
fn every_unit_of_every_car_has_a_new_spare_and_every_fault_is_cured_by_its_unit() {
    let library = library();
    for id in library.cars().unwrap() {
        let car = library.car(&id).unwrap();
        let spares = library.spares(&car).unwrap();
        for (i, unit) in car.units.iter().enumerate() {
            let new = spares.iter().any(|s| usize::from(s.unit) == i && s.params.is_empty());
            assert!(new, "{id}: no new spare for {}", unit.id);
        }
        for f in &car.faults {
            assert!(car.assembly.param(&f.param).is_some(), "{id}: {}", f.id);
        }
        assert!(15 <= car.tolerances.iter().filter(|t| t.serviceable.0 < t.serviceable.1).count(), "{id}");
        assert!(18 <= car.faults.len(), "{id}");
    }
}

#[test]
fn german_has_every_name_of_every_car_and_no_other() {
    let library = library();
    let folder = library.root().join("assets/locales/de");
    let mut german = std::collections::BTreeSet::new();
    for entry in std::fs::read_dir(folder).unwrap() {
        let text = std::fs::read_to_string(entry.unwrap().path()).unwrap();
        german.extend(text.lines().filter_map(|l| l.split_once(" = ")).map(|(key, _)| key.to_owned()));
    }
    for id in library.cars().unwrap() {
        let car = library.car(&id).unwrap();
        let mut wanted = vec![format!("{id}-name")];
        wanted.extend(car.assembly.parts.iter().map(|p| format!("{id}-part-{}", p.id)));
        wanted.extend(car.covers.iter().map(|c| format!("{id}-cover-{}", c.id)));
        wanted.extend(car.units.iter().map(|u| format!("{id}-unit-{}", u.id)));
        wanted.extend(car.faults.iter().map(|f| format!("{id}-fault-{}", f.id)));
        wanted.extend(library.spares(&car).unwrap().iter().map(|s| format!("{id}-spare-{}", s.id)));
        wanted.extend(car.limits.iter().map(|l| format!("{id}-limit-{}", l.id)));
        wanted.extend(car.record.iter().map(|r| format!("{id}-record-{}", r.id)));
        wanted.extend((1..=car.cautions.len()).map(|n| format!("{id}-caution-{n}")));
        for key in &wanted {
            assert!(german.contains(key), "German lacks {key}");
        }
        for part in &car.assembly.parts {
            for end in part.kind.ports() {
                let key = format!("end-{}-{}", part.kind.name().to_lowercase(), end.name);
                assert!(german.contains(&key), "German lacks {key}");
            }
        }
        let families = ["part", "cover", "unit", "fault", "spare", "limit", "record", "caution"]
            .map(|f| format!("{id}-{f}-"));
        for key in german.iter().filter(|k| families.iter().any(|f| k.starts_with(f))) {
            assert!(wanted.contains(key), "{id} has nothing for {key}");
        }
    }
}
