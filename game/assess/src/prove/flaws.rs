//! From what was found to what must not be so.

use super::{Flaw, Proof};
use crate::marks::score;
use crate::pack::job::Job;

/// Share of cars that must raise the complaint.
const SHOWS: f64 = 0.9;
/// Share of cars in which what is true must be found.
const SOLVED: f64 = 0.9;
/// Probability on the card alone from which on guessing pays.
const GUESSED: f64 = 0.5;
/// So much surer than its readings a reference attempt may say it is: half a step of certainty.
const CLAIMED: f64 = 0.1;
/// So probable something else must be, after every test, to look just like what is true.
pub(super) const ALIKE: f64 = 0.1;

/// What is wrong with a job of which everything else was found. `dangers`: test and rule of each breach of the plan.
pub(super) fn of(job: &Job, proof: &Proof, dangers: &[(String, String)]) -> Vec<Flaw> {
    let mut flaws = Vec::new();
    let mut put = |is: bool, flaw: Flaw| flaws.extend(is.then_some(flaw));
    let hidden = job.answer();
    for (fault, _) in hidden {
        let def = &job.car.faults[usize::from(*fault)];
        let unit = &job.car.units[usize::from(def.unit)].id;
        put(!proof.truth.contains(unit), Flaw::InsideLimits { fault: def.id.clone() });
    }
    // Nobody whose car is sound needs to have said the truth; but a fault must be behind its complaint.
    put(proof.shows < SHOWS, Flaw::SymptomNotCaused { shows: proof.shows });
    put(proof.tests == 0, Flaw::NoTests { car: job.car.id.clone() });
    let solved = proof.solved();
    put(0 < proof.tests && solved < SOLVED, Flaw::NotSolvable { solved });
    let takes_min = proof.par.attended;
    put(proof.time_limit_min < takes_min, Flaw::TooLong { takes_min, gives_min: proof.time_limit_min });
    put(GUESSED <= proof.card, Flaw::GuessableFromCard { p: proof.card });
    if let Some(best) = proof.confirming.first() {
        let guessed = Flaw::GuessableByConfirming { tests: best.tests.clone(), evidence: best.evidence };
        put(score::E_PASS <= best.evidence, guessed);
    }
    for (test, rule) in dangers {
        put(true, Flaw::Unsafe { test: test.clone(), rule: rule.clone() });
    }
    for (fault, _) in hidden {
        let def = &job.car.faults[usize::from(*fault)];
        let unit = &job.car.units[usize::from(def.unit)];
        let spare = job.spares.iter().any(|spare| spare.unit == def.unit);
        let mends = unit.cleans.contains(&def.param) || unit.reforms;
        put(!spare && !mends, Flaw::NoSpare { unit: unit.id.clone() });
    }
    let units: Vec<String> =
        proof.alike.iter().filter(|alike| ALIKE <= alike.p).map(|alike| alike.unit.clone()).collect();
    put(1 < units.len(), Flaw::LooksLikeMany { units });
    match &proof.script {
        None => put(true, Flaw::NoScript),
        Some(script) => {
            if let Some(why) = &script.stopped {
                put(true, Flaw::ScriptStops { why: why.clone() });
            }
            let (competent, cars) = (script.competent, script.cars);
            put(competent < cars, Flaw::WeakScript { competent, cars });
            put(
                script.p_true + CLAIMED < script.claims,
                Flaw::ScriptClaims { claims: script.claims, p_true: script.p_true },
            );
        }
    }
    flaws
}
