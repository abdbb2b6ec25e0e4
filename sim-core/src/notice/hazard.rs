//! What was unsafe, how grave it is, and what was left on the car.

use super::names::{Joint, Port, TheTool, TheUnit};
use super::table::told;
use super::words::Word;

/// How grave a breach of safety is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Gravity {
    /// Five points.
    Minor,
    /// Fifteen points.
    Major,
    /// Not yet competent.
    Critical,
}

told! {
    /// Something left on the car or undone.
    pub enum Left {
        /// A plug or clamp.
        Stop {
            /// Plug or clamp.
            stop: Word,
            /// Where.
            at: Port,
        } => "told-left-stop",
        /// A joint stands open.
        Joint {
            /// Which.
            joint: Joint,
        } => "told-left-joint",
        /// A unit is pulled out.
        Pulled {
            /// Which.
            unit: TheUnit,
        } => "told-left-pulled",
        /// An instrument is connected.
        Tool {
            /// Which.
            tool: TheTool,
        } => "told-left-tool",
        /// The prop holds the pedal.
        Prop => "told-left-prop",
    }
}

told! {
    /// A breach of safety: what happened, explained at once with what should have been done.
    pub enum Hazard {
        /// Driven with things left on the car.
        DroveWithThings {
            /// What.
            left: Vec<Left>,
        } => "told-drove-with-things",
        /// Driven after work without proof of assist.
        DroveUnproven => "told-drove-unproven",
        /// Handed back with things left on the car.
        BackWithThings {
            /// What.
            left: Vec<Left>,
        } => "told-back-with-things",
        /// Handed back with a cover off.
        BackCover => "told-back-cover",
        /// Handed back without assist.
        BackNoAssist => "told-back-no-assist",
        /// Handed back without proof of assist.
        BackUnproven => "told-back-unproven",
        /// Handed back after a repair without a release check.
        BackUnchecked => "told-back-unchecked",
        /// Hands at the running pump.
        RunningPump => "told-running-pump",
        /// Hands at a pump that may start by itself.
        MayStart => "told-may-start",
        /// A surface was touched that burns within some seconds.
        Burn => "told-burn",
        /// A surface was touched that burns within one.
        BurnAtOnce => "told-burn",
        /// A joint of the store was opened under vacuum.
        StoreOpen => "told-store-open",
        /// Battery plus with the earth on.
        BatteryOrder {
            /// Made or undid.
            done: Word,
        } => "told-battery-order",
        /// Engine started with the manifold's nipple open.
        Nipple => "told-nipple",
        /// Engine started with an open end on the manifold.
        OpenEnd => "told-open-end",
        /// Engine started without chocks.
        NoChocks => "told-no-chocks",
        /// Worked on a car on a slope without chocks.
        SlopeNoChocks => "told-slope-no-chocks",
        /// Went on without chocks on a slope after it was said.
        SlopeStillNoChocks => "told-slope-still-no-chocks",
        /// Engine started without extraction.
        NoExtraction => "told-no-extraction",
        /// Extraction taken off a running engine.
        ExtractionOffRunning => "told-extraction-off-running",
        /// An instrument's fuse has melted.
        FuseMelted {
            /// Whose.
            tool: TheTool,
        } => "told-fuse-melted",
    }
}

impl Hazard {
    /// Short name of the rule that was broken.
    #[must_use]
    pub fn rule(&self) -> &'static str {
        match self {
            Self::DroveWithThings { .. } => "drive_with_things_left",
            Self::DroveUnproven => "drive_without_assist_proven",
            Self::BackWithThings { .. } => "handed_back_with_things_left",
            Self::BackCover => "handed_back_with_cover_off",
            Self::BackNoAssist => "handed_back_without_assist",
            Self::BackUnproven => "assist_not_proven",
            Self::BackUnchecked => "no_release_check",
            Self::RunningPump => "hands_at_running_pump",
            Self::MayStart => "pump_may_start",
            Self::Burn | Self::BurnAtOnce => "hot_surface",
            Self::StoreOpen => "joint_under_vacuum",
            Self::BatteryOrder { .. } => "battery_order",
            Self::Nipple | Self::OpenEnd => "open_manifold",
            Self::NoChocks => "no_chocks",
            Self::SlopeNoChocks | Self::SlopeStillNoChocks => "no_chocks_on_slope",
            Self::NoExtraction | Self::ExtractionOffRunning => "no_extraction",
            Self::FuseMelted { .. } => "melted_fuse",
        }
    }

    /// How grave it is.
    #[must_use]
    pub fn gravity(&self) -> Gravity {
        match self {
            Self::DroveWithThings { .. }
            | Self::DroveUnproven
            | Self::BackWithThings { .. }
            | Self::BackNoAssist
            | Self::BackUnproven
            | Self::SlopeStillNoChocks => Gravity::Critical,
            Self::BackUnchecked
            | Self::SlopeNoChocks
            | Self::RunningPump
            | Self::BurnAtOnce
            | Self::BatteryOrder { .. }
            | Self::Nipple => Gravity::Major,
            Self::BackCover
            | Self::MayStart
            | Self::Burn
            | Self::StoreOpen
            | Self::OpenEnd
            | Self::NoChocks
            | Self::NoExtraction
            | Self::ExtractionOffRunning
            | Self::FuseMelted { .. } => Gravity::Minor,
        }
    }
}
