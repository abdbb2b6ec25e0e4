//! Deciding: the finding, handing the car back, and what is dangerous about it.

use super::access::cannot;
use super::state::Doing;
use super::{Gravity, Refusal, Workshop, timing};
use crate::action::{PedalHold, Station};
use crate::parts::engine::EngineState;

/// Certainties that can be stated; 0 = not found, the car stays.
const CERTAINTIES: [f64; 5] = [0.0, 0.40, 0.60, 0.80, 0.95];
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
        if !CERTAINTIES.iter().any(|c| (c - certainty).abs() < 1e-9) {
            return Err(cannot("state the certainty as 0 (not found), 0.40, 0.60, 0.80 or 0.95"));
        }
        let mut units = units.to_vec();
        units.sort();
        units.dedup();
        self.pass(doing, timing::FINDING).await;
        if self.state.findings.is_empty() {
            doing.say(if self.state.repaired_first {
                "Something has been repaired already: this counts as a second finding."
            } else {
                "This finding is locked: what was noted before it is its evidence."
            });
        } else {
            doing.say("A finding was given before; this one counts as a second.");
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
            doing.breach(
                "drive_with_things_left",
                Gravity::Critical,
                format!("You drove the car with things left on it or undone: {}.", left.join("; ")),
            );
        } else if self.state.changes != 0 && self.state.proven != Some(self.state.changes) {
            doing.breach(
                "drive_without_assist_proven",
                Gravity::Critical,
                "You drove the car after work on it without proving brake assist where it stands: hold the \
                 pedal and start the engine, or count the assisted applications first.",
            );
        }
    }

    pub(super) async fn do_hand_back(&mut self, doing: &mut Doing<'_>) -> Result<(), Refusal> {
        let inputs = self.circuit.inputs();
        if inputs.engine != EngineState::Stopped || inputs.key_on {
            return Err(cannot("switch engine and ignition off before you hand the car back"));
        }
        if self.state.extracted {
            return Err(cannot(
                "the extraction hangs on the exhaust: take it off before you hand the car back",
            ));
        }
        if matches!(self.state.pedal, PedalHold::Foot { .. }) {
            return Err(cannot("your foot is on the brake pedal: release it first"));
        }
        if self.state.findings.is_empty() {
            return Err(cannot("give your finding first, if need be with certainty 0: not found"));
        }
        let at = self.reach(&[(Station::Desk, None)])?;
        self.walk(doing, at).await;
        self.pass(doing, timing::HAND_BACK).await;
        let stays = self.state.findings.last().is_some_and(|(_, certainty)| *certainty <= 0.0);
        if stays {
            doing.say("The car stays; it is referred on.");
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
            doing.breach(
                "handed_back_with_things_left",
                Gravity::Critical,
                format!("You handed the car back with things left on it or undone: {}.", left.join("; ")),
            );
        }
        if self.state.covers_off.contains(&true) {
            doing.breach(
                "handed_back_with_cover_off",
                Gravity::Minor,
                "You handed the car back with a cover off. Refit what you take off.",
            );
        }
        if self.assist_on_the_road() < ASSIST_ENOUGH {
            doing.breach(
                "handed_back_without_assist",
                Gravity::Critical,
                "You handed back a car whose brakes have no or too little assist. Never release a car \
                 before assist is proven; a car that cannot be mended stays (finding with certainty 0).",
            );
        } else if self.state.changes != 0 && self.state.proven != Some(self.state.changes) {
            doing.breach(
                "assist_not_proven",
                Gravity::Critical,
                "You handed the car back without proving brake assist after the last change. Do the release \
                 checks after the last joint, plug or instrument was touched.",
            );
        }
        let checked = self.record_now().iter().any(|entry| {
            let line = self.setup.car.record.iter().find(|l| l.id == entry.item);
            entry.condition_met && line.is_some_and(|l| l.kind.is_release())
        });
        if self.state.repaired && !checked {
            doing.breach(
                "no_release_check",
                Gravity::Major,
                "You handed a repaired car back without a single release check after the repair.",
            );
        }
    }
}
