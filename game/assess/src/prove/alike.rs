//! What cannot be told apart.

use super::Alike;
use crate::infer::belief::Belief;
use crate::infer::forecast::NODES;
use crate::infer::hypotheses::{Class, Hypotheses, severity};
use crate::pack::job::Job;

/// Less is not worth a word.
const LEAST: f64 = 0.02;
/// Share of a fault's own mass that a cell must hold for its severities to be named.
const OF_FAULT: f64 = 0.05;

/// Short name of a class: that of its unit; `-` for everything inside limits, `?` for what is not in the catalogue.
#[must_use]
pub fn name_of(job: &Job, class: Class) -> String {
    match class {
        Class::Inside => "-".to_owned(),
        Class::Unit(unit) => job.car.units[usize::from(unit)].id.clone(),
        Class::Pair(a, b) => format!("{}+{}", name_of(job, Class::Unit(a)), name_of(job, Class::Unit(b))),
        Class::Other => "?".to_owned(),
    }
}

/// The classes besides `truth` that are still probable, the likeliest first.
pub(super) fn in_belief(job: &Job, hypotheses: &Hypotheses, truth: &[usize], belief: &Belief) -> Vec<Alike> {
    let mut all: Vec<Alike> = belief
        .classes()
        .iter()
        .enumerate()
        .filter(|(class, p)| !truth.contains(class) && LEAST <= **p)
        .map(|(class, p)| Alike {
            unit: name_of(job, hypotheses.classes[class]),
            p: *p,
            faults: faults(job, hypotheses, class, belief),
        })
        .collect();
    all.sort_by(|a, b| b.p.total_cmp(&a.p));
    all
}

/// The faults of a class that hold its mass, with the range of severities that does.
fn faults(job: &Job, hypotheses: &Hypotheses, class: usize, belief: &Belief) -> Vec<(String, f64, f64)> {
    let mut cell = 0;
    let mut found = Vec::new();
    for entry in &hypotheses.list {
        let cells = cell..cell + entry.cells();
        cell = cells.end;
        let Some(fault) = entry.fault().filter(|_| entry.class == class) else { continue };
        let mass = belief.mass_in(cells.clone());
        if mass < LEAST {
            continue;
        }
        let held: Vec<usize> = cells
            .clone()
            .filter(|cell| OF_FAULT * mass <= belief.mass_in(*cell..*cell + 1))
            .map(|cell| cell - cells.start)
            .collect();
        let (Some(first), Some(last)) = (held.first(), held.last()) else { continue };
        let def = &job.car.faults[usize::from(fault)];
        let at = |edge: usize| severity(def.severity_min, def.severity_max, edge as f64 / NODES as f64);
        found.push((def.id.clone(), at(*first), at(last + 1)));
    }
    found
}
