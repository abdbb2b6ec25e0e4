//! What came of something that was done, to be told in a sentence: nothing is done in silence.

use sim_core::action::{Action, Station};
use sim_core::assembly::Stop;
use sim_core::observe::Reading;
use sim_core::parts::engine::EngineState;
use sim_core::units::TICKS_PER_SECOND;
use sim_core::workshop::{Outcome, View};

/// Something that was done.
#[derive(Clone, Debug, PartialEq)]
pub struct Deed {
    /// What.
    pub action: Action,
    /// How long it took, walking included, whole seconds.
    pub took_s: u64,
    /// Where one walked for it.
    pub walked_to: Option<Station>,
    /// The engine was started by it.
    pub started: bool,
    /// What was at the port before, for a plug or clamp that was taken off.
    pub was: Option<Stop>,
    /// For a note: what it was of.
    pub of: Option<Reading>,
}

impl Deed {
    /// What was done between two looks; `None` for a reading that was taken where one stood: that is told
    /// by itself.
    #[must_use]
    pub fn of(action: &Action, before: &View, after: &View, outcome: &Outcome) -> Option<Self> {
        let walked_to = (before.station != after.station).then_some(after.station);
        if outcome.reading.is_some() && walked_to.is_none() {
            return None;
        }
        let was = if let Action::SetStop { port, stop: None } = action {
            before.stops.iter().find(|(at, _)| at == port).map(|(_, stop)| *stop)
        } else {
            None
        };
        let of = if let Action::Note { reading, .. } = action {
            after.readings.iter().find(|r| r.id == *reading).cloned()
        } else {
            None
        };
        let took = outcome.end.0 - outcome.start.0;
        Some(Self {
            action: action.clone(),
            took_s: took.div_ceil(TICKS_PER_SECOND),
            walked_to,
            started: before.engine == EngineState::Stopped && after.engine != EngineState::Stopped,
            was,
            of,
        })
    }
}
