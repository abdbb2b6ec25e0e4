//! What the customer could have seen himself: from the driver's seat, with a watch at most.

use sim_core::action::{Action, Sense};
use sim_core::notice::Tool;

use crate::plan::test::{Step, Test};

/// Whether a test needs nothing but the driver's seat and a watch: it can only confirm what the customer said.
#[must_use]
pub fn is_from_the_seat(test: &Test) -> bool {
    let access = &test.access;
    let nothing = access.covers.is_empty()
        && access.joints.is_empty()
        && access.units.is_empty()
        && access.instruments.is_empty();
    nothing
        && access.tools.iter().all(|tool| matches!(tool, Tool::Stopwatch))
        && test.lines().all(|(_, line)| {
            if let Step::Do(Action::Sense(sense)) = &line.step { is_felt(sense) } else { true }
        })
}

/// What is felt or heard in the seat.
fn is_felt(sense: &Sense) -> bool {
    match sense {
        Sense::Hum | Sense::PedalTravel | Sense::PedalMoved | Sense::Applications => true,
        Sense::Hiss { .. }
        | Sense::Touch { .. }
        | Sense::Lamp { .. }
        | Sense::BaseBrakes
        | Sense::YardDrive => false,
    }
}
