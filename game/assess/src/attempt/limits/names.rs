//! Names in an attempt, held against those of its job.

use sim_core::action::{Action, Sense};

use crate::attempt::record::Step;
use crate::locale::quote::quoted;
use crate::locale::sentence::Sentence;
use crate::pack::job::Job;
use crate::sentence;

/// A name in an attempt that the job does not have.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("{}", self.sentence())]
pub struct Unknown {
    /// Number of the action.
    pub n: u32,
    /// The action in words.
    pub action: String,
    /// The name.
    pub name: String,
}

impl Unknown {
    /// What is wrong, for every language.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        sentence!(
            "attempt-unknown-name",
            "action {n} ({action}) names {name}, which this job does not have",
            n = self.n,
            action = &self.action,
            name = quoted(&self.name)
        )
    }
}

/// Checks that every action that was done names things of the job.
///
/// # Errors
/// The first that does not.
pub fn against(steps: &[Step], job: &Job) -> Result<(), Unknown> {
    for step in steps.iter().filter(|step| step.refused.is_none()) {
        if let Some(name) = unknown(&step.action, job) {
            let name = name.chars().take(60).collect();
            return Err(Unknown { n: step.n, action: crate::words::say(&step.action), name });
        }
    }
    Ok(())
}

/// The first name in an action that the job does not have.
fn unknown<'a>(action: &'a Action, job: &Job) -> Option<&'a str> {
    let car = &job.car;
    let missing = |name: &'a str, is_there: bool| (!is_there).then_some(name);
    let unit = |name: &'a str| missing(name, car.units.iter().any(|u| u.id == *name));
    let card = |name: &'a str| missing(name, job.kit.iter().any(|c| c.id == *name));
    let part = |name: &'a str| missing(name, car.assembly.part_index(name).is_some());
    match action {
        Action::Cover { cover, .. } => missing(cover, car.covers.iter().any(|c| c.id == *cover)),
        Action::OpenJoint { joint } | Action::MakeJoint { joint } => {
            missing(joint, car.assembly.joints.iter().any(|j| j.id == *joint))
        }
        Action::PullUnit { unit: name }
        | Action::PushUnit { unit: name }
        | Action::Clean { unit: name }
        | Action::Reform { unit: name } => unit(name),
        Action::Swap { unit: name, spare } => {
            unit(name).or_else(|| missing(spare, job.spares.iter().any(|s| s.id == *spare)))
        }
        Action::Fit { instrument, .. }
        | Action::Unfit { instrument }
        | Action::SetMeter { instrument, .. }
        | Action::Press { instrument, .. }
        | Action::Stroke { instrument, .. }
        | Action::Read { instrument }
        | Action::Sense(Sense::Lamp { instrument }) => card(instrument),
        Action::Sense(Sense::Hiss { part: name } | Sense::Touch { part: name }) => part(name),
        Action::Note { record: Some(item), .. } => missing(item, car.record.iter().any(|r| r.id == *item)),
        Action::Finding { units, .. } => units.iter().find_map(|name| unit(name)),
        // A port is looked for where it is needed: an instrument's own can be meant too.
        Action::SetStop { .. }
        | Action::Sense(
            Sense::Hum
            | Sense::PedalTravel
            | Sense::PedalMoved
            | Sense::Applications
            | Sense::BaseBrakes
            | Sense::YardDrive,
        )
        | Action::Note { record: None, .. }
        | Action::ReadCard
        | Action::ReadSheet
        | Action::Chocks(_)
        | Action::Extraction(_)
        | Action::Key(_)
        | Action::Engine(_)
        | Action::Pedal(_)
        | Action::PumpPedal { .. }
        | Action::Time { .. }
        | Action::Wait { .. }
        | Action::WaitUntil { .. }
        | Action::Overnight
        | Action::Suspect { .. }
        | Action::HandBack => None,
    }
}
