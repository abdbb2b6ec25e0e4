//! Tests that only confirm what the customer said: with nothing but ears, a foot and a watch he could have seen it himself.

use sim_core::action::{Action, Cycle, Sense};
use sim_core::notice::Tool;

use crate::pack::job::{Job, Symptom};
use crate::plan::test::{Step, Test};

/// Whether a test needs nothing but the driver's seat and a watch, and looks at nothing but what the complaint says.
#[must_use]
pub fn only_confirms(symptom: Symptom, test: &Test) -> bool {
    let access = &test.access;
    let nothing = access.covers.is_empty()
        && access.joints.is_empty()
        && access.units.is_empty()
        && access.instruments.is_empty();
    let looks = test.lines().filter(|(_, line)| line.reads());
    nothing
        && access.tools.iter().all(|tool| matches!(tool, Tool::Stopwatch))
        && looks.into_iter().all(|(_, line)| match &line.step {
            Step::Do(action) => is_of(symptom, action),
            Step::Note { .. } => true,
        })
}

/// Somebody who only listens may listen again after so long, s: a pump that should have filled its store long since has
/// told him more than the customer could (own choice).
const LATE_S: u32 = 300;

/// The tests that only confirm what a job's complaint says, index into the job's tests, each with the wait before it, s.
#[must_use]
pub fn late(job: &Job) -> Vec<(usize, u32)> {
    let of = |test: &usize| only_confirms(job.symptom, &job.tests[*test]);
    (0..job.tests.len()).filter(of).map(|test| (test, LATE_S)).collect()
}

/// Whether a look is at what the complaint says.
fn is_of(symptom: Symptom, look: &Action) -> bool {
    let hums = matches!(look, Action::Sense(Sense::Hum));
    let runs = matches!(look, Action::Time { cycle: Cycle::PumpRun, .. });
    let rests = matches!(look, Action::Time { cycle: Cycle::PumpRest, .. });
    let pedal = matches!(look, Action::Sense(Sense::PedalTravel | Sense::PedalMoved | Sense::Applications));
    match symptom {
        Symptom::HumsKeyOff => hums,
        Symptom::ShortRest { .. } => hums || runs || rests,
        Symptom::LongRun { .. } => hums || runs,
        Symptom::HardPedalAfterNight { .. } => pedal,
    }
}
