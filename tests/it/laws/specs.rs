//! What every kind of part and instrument says of itself hangs together: nothing is named that it does not have,
//! and no port is left out.

use std::path::Path;

use sim_core::parts::elements::{
    Behind, Chamber, EngineState, Lag, Machine, Place, Quantity, Spec, Switch, Worth,
};
use sim_core::parts::{ALL_TABLES, Domain, PartKind};

use crate::rig::library;

/// Pressure of the day, Pa.
const P_ATM: f64 = 101_325.0;

/// Every kind, once with all its numbers at their least and once at their most.
fn every_kind() -> Vec<PartKind> {
    let mut all = Vec::new();
    for (name, table) in ALL_TABLES {
        for most in [false, true] {
            let number = |d: &sim_core::params::ParamDef| {
                (d.name.to_owned(), serde_json::Value::from(if most { d.max } else { d.min }))
            };
            let numbers: serde_json::Map<_, _> = table.iter().map(number).collect();
            all.push(serde_json::from_value(serde_json::json!({ *name: numbers })).unwrap());
        }
    }
    assert_eq!(all.len(), 2 * PartKind::NAMES.len());
    all
}

/// What is wrong with what a kind says.
#[expect(clippy::too_many_lines, reason = "a law a line, over every part of a circuit")]
fn complaints(kind: &PartKind, spec: &Spec) -> Vec<String> {
    let mut wrong = Vec::new();
    let mut must = |ok: bool, what: &str| {
        if !ok {
            wrong.push(format!("{}: {what}", kind.name()));
        }
    };
    let has_air = |c: Chamber| spec.air.volumes.iter().any(|v| v.chamber == c);
    let has = |is: Quantity| spec.states.iter().any(|s| s.is == is);
    for (i, port) in kind.ports().iter().enumerate() {
        let i = i as u8;
        let mouths = spec.air.mouths.iter().filter(|m| m.port == i).count();
        let poles = spec.electric.poles.iter().filter(|p| p.a == i || p.b == i).count();
        match port.domain {
            Domain::Pneumatic => must(mouths == 1 && poles == 0, "a pneumatic port is one mouth and no pole"),
            Domain::Electrical => {
                must(mouths == 0 && (0 < poles || spec.electric.earth), "an electrical port ends a two-pole");
            }
        }
    }
    let n_ports = kind.ports().len();
    must(spec.air.mouths.iter().all(|m| usize::from(m.port) < n_ports), "a mouth is at a port");
    must(
        spec.electric.poles.iter().all(|p| usize::from(p.a.max(p.b)) < n_ports && p.a != p.b),
        "a two-pole lies between two ports",
    );
    for p in &spec.electric.poles {
        must(
            match p.worth {
                Worth::Battery(_) => has(Quantity::Charge),
                Worth::Lamp(_) => has(Quantity::Filament),
                Worth::Motor => spec.machines.iter().any(|m| matches!(m, Machine::Rotor { .. })),
                Worth::Characteristic { characteristic, .. } => has_air(characteristic.chamber),
                Worth::Contact { .. } | Worth::Awake { .. } | Worth::Intact(_) | Worth::Pressed(_) => {
                    !spec.switches.is_empty()
                }
                Worth::Steady(_)
                | Worth::Source { .. }
                | Worth::KeyOn { .. }
                | Worth::EngineRuns { .. }
                | Worth::Meter(_) => true,
            },
            "a two-pole follows what is there",
        );
    }
    for m in &spec.air.mouths {
        must(
            !m.stem || spec.hangs && has(Quantity::Pointer),
            "what has a stem is an instrument and shows something",
        );
        must(
            match m.behind {
                Behind::Chamber(c) => has_air(c),
                Behind::Manifold => has(Quantity::Manifold),
            },
            "a mouth leads to air that is there",
        );
    }
    for (i, v) in spec.air.volumes.iter().enumerate() {
        must(0.0 < v.m3 && 0.0 <= v.w_per_k, "air has a volume");
        must(v.per_travel_m2.is_none() || has(Quantity::Travel), "a wall that moves is moved");
        must(spec.air.volumes[..i].iter().all(|u| u.chamber != v.chamber), "one body of air a chamber");
    }
    for path in &spec.air.flow_paths {
        let there = |place| match place {
            Place::Outside => true,
            Place::In(c) => has_air(c),
        };
        must(there(path.a) && there(path.b) && path.a != path.b, "a path lies between two bodies of air");
        must(path.law.state().is_none_or(has), "a path's law follows a state that is there");
    }
    let pole = |p: u8| usize::from(p) < spec.electric.poles.len();
    for (i, s) in spec.states.iter().enumerate() {
        must(spec.states[..i].iter().all(|t| t.is != s.is), "one state of each quantity");
        must(0.0 < s.bounds.allowance.at(1.0), "a step may err a little");
        let moved = spec.machines.iter().any(|m| match m {
            Machine::Piston { .. } => s.is == Quantity::Travel,
            Machine::Rotor { .. } => {
                matches!(s.is, Quantity::Winding | Quantity::Case | Quantity::Speed)
            }
        });
        must(moved != s.follows.is_some(), "a state either follows something or is moved by a machine");
        must(
            match s.follows {
                Some(Lag::Pressure { chamber, tau_s }) => has_air(chamber) && 0.0 < tau_s,
                Some(
                    Lag::Filament { pole: p, .. }
                    | Lag::Charge { pole: p, .. }
                    | Lag::FuseHeat { pole: p, .. },
                ) => pole(p),
                Some(Lag::Engine { tau_s, .. } | Lag::RunTime { rest_tau_s: tau_s }) => 0.0 < tau_s,
                None => true,
            },
            "a lag follows what is there",
        );
    }
    for m in &spec.machines {
        must(
            match m {
                Machine::Piston { front, rear, .. } => {
                    has_air(*front) && has_air(*rear) && has(Quantity::Travel)
                }
                Machine::Rotor { inlet, pole: p, .. } => {
                    has_air(*inlet)
                        && [Quantity::Winding, Quantity::Case, Quantity::Speed].into_iter().all(has)
                        && spec.electric.poles.get(usize::from(*p)).is_some_and(|p| p.worth == Worth::Motor)
                }
            },
            "a machine has its air, its states and its motor",
        );
    }
    must(spec.switches.len() <= 1, "one switch a part: its contact, fuse and hum are one each");
    for s in &spec.switches {
        must(
            match s {
                Switch::Vacuum { chamber, opens_at_pa, closes_at_pa } => {
                    // At the ends of their ranges the points may lie the wrong way round.
                    has_air(*chamber) && opens_at_pa.is_finite() && closes_at_pa.is_finite()
                }
                Switch::Relay { coil, .. } => pole(*coil),
                Switch::Controller { supply, feed, signal, earth, .. } => {
                    [supply, feed, signal, earth].into_iter().all(|p| usize::from(*p) < n_ports)
                        && has(Quantity::RunTime)
                }
                Switch::Fuse | Switch::Slack => has(Quantity::FuseHeat),
                Switch::Hum => has(Quantity::Speed),
            },
            "a switch follows what is there",
        );
    }
    wrong
}

#[test]
fn inv_what_a_kind_of_part_says_hangs_together() {
    let kinds = every_kind();
    let wrong: Vec<String> = kinds.iter().flat_map(|k| complaints(k, &k.spec(P_ATM))).collect();
    assert!(wrong.is_empty(), "{wrong:#?}");
}

fn lose_last<T>(list: &mut Vec<T>) {
    list.truncate(list.len().saturating_sub(1));
}

#[test]
fn a_kind_that_leaves_something_out_is_told() {
    // The law above can fail: what any kind has is taken away or turned, and it must complain.
    let mut told = 0;
    for kind in every_kind() {
        let spec = kind.spec(P_ATM);
        let mut spoilt: Vec<Spec> = Vec::new();
        let mut spoil = |how: fn(&mut Spec)| {
            let mut other = spec.clone();
            how(&mut other);
            if other != spec {
                spoilt.push(other);
            }
        };
        spoil(|s| lose_last(&mut s.air.mouths));
        spoil(|s| lose_last(&mut s.air.volumes));
        spoil(|s| lose_last(&mut s.electric.poles));
        spoil(|s| s.electric.earth = false);
        spoil(|s| s.machines.clear());
        spoil(|s| lose_last(&mut s.states));
        for other in spoilt {
            assert!(!complaints(&kind, &other).is_empty(), "{}: nobody complained of {other:?}", kind.name());
            told += 1;
        }
    }
    assert!(40 < told, "only {told} were spoilt");
}

#[test]
fn inv_a_state_of_the_engine_stands_at_its_own_place() {
    for (i, state) in EngineState::ALL.into_iter().enumerate() {
        assert_eq!(state.index(), i, "{state:?}");
    }
}

#[test]
fn inv_an_instruments_ends_are_its_parts_ports() {
    let mut seen = std::collections::BTreeSet::new();
    for card in library().kit().iter() {
        let nature = card.kind.nature();
        seen.insert(nature.name);
        let part = card.part.as_ref().map(PartKind::name);
        assert_eq!(part, nature.part, "{}", card.id);
        if let Some(part) = &card.part {
            let ports: Vec<&str> = part.ports().iter().map(|p| p.name).collect();
            assert_eq!(ports, nature.ends, "{}", card.id);
        }
    }
    assert!(12 < seen.len(), "only {seen:?}");
}

/// Rust files below a folder of `sim-core/src`.
fn sources(folder: &Path, found: &mut Vec<(String, String)>) {
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            sources(&path, found);
        } else {
            found.push((path.display().to_string(), std::fs::read_to_string(&path).unwrap()));
        }
    }
}

#[test]
fn the_circuit_knows_no_kind_of_part() {
    let source = Path::new(env!("CARGO_MANIFEST_DIR")).join("../sim-core/src");
    let mut circuit = Vec::new();
    sources(&source.join("circuit"), &mut circuit);
    let mut parts = Vec::new();
    sources(&source.join("parts"), &mut parts);
    let modules: Vec<String> = parts
        .iter()
        .filter(|(path, _)| !path.contains("elements") && !path.ends_with("mod.rs"))
        .map(|(path, _)| Path::new(path).file_stem().unwrap().to_string_lossy().into_owned())
        .collect();
    assert!(30 < circuit.len() && 10 < modules.len(), "{} files, {modules:?}", circuit.len());
    for (path, text) in circuit.iter().filter(|(path, _)| !path.ends_with("slopes.rs")) {
        assert!(!text.contains("PartKind::"), "{path} tells kinds of parts apart");
        for module in &modules {
            assert!(!text.contains(&format!("parts::{module}")), "{path} knows parts/{module}.rs");
        }
    }
    for (path, text) in parts.iter().filter(|(path, _)| path.contains("elements")) {
        assert!(
            !text.contains("crate::circuit") && !text.contains("PartKind"),
            "{path} knows a circuit or a kind"
        );
    }
}
