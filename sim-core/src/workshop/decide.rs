//! Deciding: the finding, handing the car back, and what is dangerous about it.

use super::access::cannot;
use super::state::Doing;
use super::{Workshop, timing};
use crate::action::{PedalHold, Station, certainty_of};
use crate::notice::{Hazard, Notice, Reason, Refusal};
use crate::parts::engine::EngineState;

/// Least share of assist on the road with which a car may go.
const ASSIST_ENOUGH: f64 = 0.4;

impl Workshop {
    pub(super) async fn do_finding(
        &mut self,
        doing: &mut Doing<'_>,
        units: &[String],
        certainty: f64,
    ) -> Result<(), Refusal> {
        for unit in units {
            self.find_unit(unit)?;
        }
        if 1e-9 <= certainty.abs() && certainty_of(certainty).is_none() {
            return Err(cannot(Reason::Certainty));
        }
        let mut units = units.to_vec();
        units.sort();
        units.dedup();
        self.pass(doing, timing::FINDING).await;
        if self.state.findings.is_empty() {
            doing.say(if self.state.repaired_first { Notice::SecondAfterRepair } else { Notice::Locked });
        } else {
            doing.say(Notice::Second);
        }
        self.state.findings.push((units, certainty));
        Ok(())
    }

    /// Whether the first finding came after the first repair, so that it counts as a second one.
    #[must_use]
    pub fn repaired_before_finding(&self) -> bool {
        self.state.repaired_first
    }

    /// Number of changes to the car so far: joints, stops, units, instruments in vacuum lines.
    #[must_use]
    pub fn changes(&self) -> u32 {
        self.state.changes
    }

    /// Before a drive in the yard.
    pub(super) fn drive_hazards(&self, doing: &mut Doing<'_>) {
        let left = self.left_on_car(false);
        if !left.is_empty() {
            doing.breach(Hazard::DroveWithThings { left });
        } else if self.state.changes != 0 && self.state.proven != Some(self.state.changes) {
            doing.breach(Hazard::DroveUnproven);
        }
    }

    pub(super) async fn do_hand_back(&mut self, doing: &mut Doing<'_>) -> Result<(), Refusal> {
        let inputs = self.circuit.inputs();
        if inputs.engine != EngineState::Stopped || inputs.key_on {
            return Err(cannot(Reason::BackOff));
        }
        if self.state.extracted {
            return Err(cannot(Reason::BackExtraction));
        }
        if matches!(self.state.pedal, PedalHold::Foot { .. }) {
            return Err(cannot(Reason::FootOnPedal));
        }
        if self.state.findings.is_empty() {
            return Err(cannot(Reason::BackFinding));
        }
        let at = self.reach(&[(Station::Desk, None)])?;
        self.walk(doing, at).await;
        self.pass(doing, timing::HAND_BACK).await;
        let stays = self.state.findings.last().is_some_and(|(_, certainty)| *certainty <= 0.0);
        if stays {
            doing.say(Notice::Stays);
        } else {
            self.release_hazards(doing);
        }
        self.state.handed_back = true;
        Ok(())
    }

    /// A car goes back on the road.
    fn release_hazards(&self, doing: &mut Doing<'_>) {
        let left = self.left_on_car(true);
        if !left.is_empty() {
            doing.breach(Hazard::BackWithThings { left });
        }
        if self.state.covers_off.contains(&true) {
            doing.breach(Hazard::BackCover);
        }
        if self.assist_on_the_road() < ASSIST_ENOUGH {
            doing.breach(Hazard::BackNoAssist);
        } else if self.state.changes != 0 && self.state.proven != Some(self.state.changes) {
            doing.breach(Hazard::BackUnproven);
        }
        let checked = self.record_now().iter().any(|entry| {
            let line = self.setup.car.record.iter().find(|l| l.id == entry.item);
            entry.condition_met && line.is_some_and(|l| l.kind.is_release())
        });
        if self.state.repaired && !checked {
            doing.breach(Hazard::BackUnchecked);
        }
    }
}
