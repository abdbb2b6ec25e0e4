//! What can be asked of an action. A new one must answer: there is no arm for the rest.

use super::Action;

impl Action {
    /// Whether it ends when the car gives a cue that can be perceived, rather than after a time of its own.
    #[must_use]
    pub fn ends_with_a_cue(&self) -> bool {
        match self {
            Self::Time { .. } | Self::WaitUntil { .. } => true,
            Self::ReadCard
            | Self::ReadSheet
            | Self::Chocks(_)
            | Self::Extraction(_)
            | Self::Key(_)
            | Self::Engine(_)
            | Self::Pedal(_)
            | Self::PumpPedal { .. }
            | Self::Cover { .. }
            | Self::OpenJoint { .. }
            | Self::MakeJoint { .. }
            | Self::SetStop { .. }
            | Self::PullUnit { .. }
            | Self::PushUnit { .. }
            | Self::Fit { .. }
            | Self::Unfit { .. }
            | Self::SetMeter { .. }
            | Self::Press { .. }
            | Self::Stroke { .. }
            | Self::Swap { .. }
            | Self::Clean { .. }
            | Self::Reform { .. }
            | Self::Read { .. }
            | Self::Sense(_)
            | Self::Wait { .. }
            | Self::Overnight
            | Self::Note { .. }
            | Self::Suspect { .. }
            | Self::Finding { .. }
            | Self::HandBack => false,
        }
    }

    /// Short name of the repair unit that it replaces or mends; `None` when it is no repair.
    #[must_use]
    pub fn repairs(&self) -> Option<&str> {
        match self {
            Self::Swap { unit, .. } | Self::Clean { unit } | Self::Reform { unit } => Some(unit),
            Self::ReadCard
            | Self::ReadSheet
            | Self::Chocks(_)
            | Self::Extraction(_)
            | Self::Key(_)
            | Self::Engine(_)
            | Self::Pedal(_)
            | Self::PumpPedal { .. }
            | Self::Cover { .. }
            | Self::OpenJoint { .. }
            | Self::MakeJoint { .. }
            | Self::SetStop { .. }
            | Self::PullUnit { .. }
            | Self::PushUnit { .. }
            | Self::Fit { .. }
            | Self::Unfit { .. }
            | Self::SetMeter { .. }
            | Self::Press { .. }
            | Self::Stroke { .. }
            | Self::Read { .. }
            | Self::Sense(_)
            | Self::Time { .. }
            | Self::Wait { .. }
            | Self::WaitUntil { .. }
            | Self::Overnight
            | Self::Note { .. }
            | Self::Suspect { .. }
            | Self::Finding { .. }
            | Self::HandBack => None,
        }
    }
}
