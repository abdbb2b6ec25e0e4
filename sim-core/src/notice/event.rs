//! What a person in the workshop notices, hears or is told while an action passes.

use super::table::told;
use super::{Gap, InGap, Paper};

/// A line of a paper with the file's own words for it.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CardLine {
    /// From 0.
    pub n: usize,
    /// The pack's words.
    pub text: String,
}

/// A limit of the data sheet.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub struct LimitLine {
    /// Short name.
    pub id: String,
    /// The car file's words.
    pub text: String,
}

/// A caution of the car.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CautionLine {
    /// From 0.
    pub n: usize,
    /// The car file's words.
    pub text: String,
}

impl InGap for CardLine {
    fn gap(&self) -> Gap {
        Gap::Paper(Paper::Card(self.n), self.text.clone())
    }
}

impl InGap for LimitLine {
    fn gap(&self) -> Gap {
        Gap::Paper(Paper::Limit(self.id.clone()), self.text.clone())
    }
}

impl InGap for CautionLine {
    fn gap(&self) -> Gap {
        Gap::Paper(Paper::Caution(self.n), self.text.clone())
    }
}

told! {
    /// Something that is noticed.
    pub enum Notice {
        // Papers.
        /// A line of the job card.
        Card {
            /// The line.
            line: CardLine,
        } => "told-paper",
        /// A limit of the data sheet.
        Limit {
            /// The line.
            line: LimitLine,
        } => "told-paper",
        /// A caution of the data sheet.
        Caution {
            /// The line.
            line: CautionLine,
        } => "told-paper",
        /// Up to which height the pump reaches its cut-out.
        CutOutHeight {
            /// m above the sea.
            height: f64,
        } => "told-cut-out-height",
        // Findings.
        /// A finding after a repair.
        SecondAfterRepair => "told-second-after-repair",
        /// The first finding.
        Locked => "told-locked",
        /// A finding after a finding.
        Second => "told-second",
        /// The car is not released.
        Stays => "told-stays",
        // Engine and pump.
        /// The engine stops because the ignition went off.
        EngineStops => "told-engine-stops",
        /// Back from the yard.
        BackInWorkshop => "told-back-in-workshop",
        /// The pump starts.
        PumpStarts => "told-pump-starts",
        /// The pump stops.
        PumpStops => "told-pump-stops",
        /// It starts and stops more often than one would count.
        PumpCycles {
            /// So often.
            times: u32,
        } => "told-pump-cycles",
        /// Exhaust gas gathers.
        Exhaust => "told-exhaust",
        // Timing and waiting.
        /// Nothing was timed: the pump did not start.
        DidNotStart => "told-did-not-start",
        /// Nothing was timed: the pump did not stop.
        DidNotStop => "told-did-not-stop",
        /// What was waited for did not come.
        NoCue {
            /// Within this many s.
            within: u32,
        } => "told-no-cue",
        /// Waited for a start while it runs.
        RunsAlready => "told-runs-already",
        /// Waited for a stop while it rests.
        RestsAlready => "told-rests-already",
        /// Waited for a lamp that is alight.
        LampAlightAlready => "told-lamp-alight-already",
        /// Waited for a lamp that is dark.
        LampDarkAlready => "told-lamp-dark-already",
        // The notebook.
        /// A note was written anew.
        StruckOut {
            /// Of this reading.
            reading: u32,
        } => "told-struck-out",
    }
}

impl Notice {
    /// Line `n`, from 0, of the job card.
    pub(crate) fn card(n: usize, text: &str) -> Self {
        Self::Card { line: CardLine { n, text: text.to_owned() } }
    }

    /// A limit of the data sheet.
    pub(crate) fn limit(id: &str, text: &str) -> Self {
        Self::Limit { line: LimitLine { id: id.to_owned(), text: text.to_owned() } }
    }

    /// Caution `n`, from 0, of the data sheet.
    pub(crate) fn caution(n: usize, text: &str) -> Self {
        Self::Caution { line: CautionLine { n, text: text.to_owned() } }
    }
}
