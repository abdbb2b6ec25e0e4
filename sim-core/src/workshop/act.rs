//! The one way in: an action is checked, its time passes, the car changes, an outcome comes back.
//!
//! Every `do_…` checks everything before it changes anything, so a refused action leaves no trace.

use super::access::cannot;
use super::exchange::{Beside, at_once};
use super::state::Doing;
use super::{Outcome, Workshop, timing};
use crate::action::{Action, PedalHold, Station};
use crate::circuit::Pace;
use crate::notice::{Notice, Reason, Refusal};
use crate::observe::Predicted;
use crate::parts::engine::EngineState;
use crate::units::Tick;

impl Workshop {
    /// Does an action now; its own time passes.
    pub fn act(&mut self, action: &Action) -> Outcome {
        at_once(self.act_beside(action, None))
    }

    /// Does an action of a recorded attempt in another world: it takes until `end`, whatever this world
    /// does, and is never refused for a reason that lies in hidden state.
    pub fn replay(&mut self, action: &Action, end: Tick) -> Outcome {
        at_once(self.replay_beside(action, end, None))
    }

    /// As [`Workshop::act`], with the circuit run beside others.
    pub async fn act_beside(&mut self, action: &Action, beside: Beside<'_>) -> Outcome {
        self.carry_out(action, None, beside).await.0
    }

    /// As [`Workshop::replay`], with the circuit run beside others.
    pub async fn replay_beside(&mut self, action: &Action, end: Tick, beside: Beside<'_>) -> Outcome {
        self.carry_out(action, Some(end), beside).await.0
    }

    /// Does an action, to its own end or to a recorded one; what came of it, and what the model said before error and
    /// rounding if it took a reading.
    pub(super) async fn carry_out(
        &mut self,
        action: &Action,
        end: Option<Tick>,
        beside: Beside<'_>,
    ) -> (Outcome, Option<Predicted>) {
        let cut = end.map(|end| end.0 + self.offset);
        let mut doing = Doing::new(self.circuit.tick().0, cut, self.circuit.events().len(), beside);
        let refused = if self.state.handed_back {
            Some(cannot(Reason::Over))
        } else {
            self.dispatch(&mut doing, action).await.err()
        };
        if let Some(cut) = cut {
            self.run_timed(&doing, cut).await;
        }
        let end = self.circuit.tick().0;
        if refused.is_none() {
            let took = end - doing.start;
            if doing.unattended {
                self.state.unattended += took;
            } else {
                self.state.attended += took;
            }
            self.aftermath(&mut doing);
            self.works_on_slope(&mut doing, action);
        }
        let predicted = doing.predicted;
        (doing.outcome(self.offset, end, refused), predicted)
    }

    async fn dispatch(&mut self, doing: &mut Doing<'_>, action: &Action) -> Result<(), Refusal> {
        match action {
            Action::ReadCard => {
                self.paper(doing).await?;
                let card = self.setup.card.iter().enumerate();
                doing.said.extend(card.map(|(n, text)| Notice::card(n, text)));
            }
            Action::ReadSheet => {
                self.paper(doing).await?;
                let car = std::sync::Arc::clone(&self.setup.car);
                doing.said.extend(car.limits.iter().map(|l| Notice::limit(&l.id, &l.text)));
                doing.said.extend(car.cut_out_height_m().map(|height| Notice::CutOutHeight { height }));
                let cautions = car.cautions.iter().enumerate();
                doing.said.extend(cautions.map(|(n, text)| Notice::caution(n, text)));
            }
            Action::Chocks(on) => self.do_chocks(doing, *on).await?,
            Action::Extraction(on) => self.do_extraction(doing, *on).await?,
            Action::Key(on) => self.do_key(doing, *on).await?,
            Action::Engine(state) => self.do_engine(doing, *state).await?,
            Action::Pedal(hold) => self.do_pedal(doing, *hold).await?,
            Action::PumpPedal { times, force_n } => self.do_pump_pedal(doing, *times, *force_n).await?,
            Action::Cover { cover, off } => self.do_cover(doing, cover, *off).await?,
            Action::OpenJoint { joint } => self.do_joint(doing, joint, false).await?,
            Action::MakeJoint { joint } => self.do_joint(doing, joint, true).await?,
            Action::SetStop { port, stop } => self.do_stop(doing, port, *stop).await?,
            Action::PullUnit { unit } => self.do_plug_in(doing, unit, true).await?,
            Action::PushUnit { unit } => self.do_plug_in(doing, unit, false).await?,
            Action::Fit { instrument, ends } => self.do_fit(doing, instrument, ends).await?,
            Action::Unfit { instrument } => self.do_unfit(doing, instrument).await?,
            Action::SetMeter { instrument, mode } => self.do_set_meter(doing, instrument, *mode).await?,
            Action::Press { instrument, down } => self.do_press(doing, instrument, *down).await?,
            Action::Stroke { instrument, times } => self.do_stroke(doing, instrument, *times).await?,
            Action::Swap { unit, spare } => self.do_swap(doing, unit, spare).await?,
            Action::Clean { unit } => self.do_clean(doing, unit).await?,
            Action::Reform { unit } => self.do_reform(doing, unit).await?,
            Action::Read { instrument } => self.do_read(doing, instrument).await?,
            Action::Sense(sense) => self.do_sense(doing, sense).await?,
            Action::Time { cycle, max_s } => self.do_time(doing, *cycle, *max_s).await?,
            Action::Wait { s } => self.do_wait(doing, *s).await?,
            Action::WaitUntil { cue, max_s } => self.do_wait_until(doing, *cue, *max_s).await?,
            Action::Overnight => self.do_overnight(doing).await?,
            Action::Note { reading, written, record } => {
                self.do_note(doing, *reading, written.as_ref(), record.as_deref()).await?;
            }
            Action::Suspect { .. } => self.pass(doing, timing::NOTE).await,
            Action::Finding { units, certainty } => self.do_finding(doing, units, *certainty).await?,
            Action::HandBack => self.do_hand_back(doing).await?,
        }
        Ok(())
    }

    /// Reads the job card or the data sheet at the desk.
    async fn paper(&mut self, doing: &Doing<'_>) -> Result<(), Refusal> {
        let at = self.reach(&[(Station::Desk, None)])?;
        self.walk(doing, at).await;
        self.pass(doing, timing::READ_PAPER).await;
        Ok(())
    }

    async fn do_overnight(&mut self, doing: &mut Doing<'_>) -> Result<(), Refusal> {
        let inputs = self.circuit.inputs();
        if inputs.engine != EngineState::Stopped || inputs.key_on {
            return Err(cannot(Reason::HomeOff));
        }
        if matches!(self.state.pedal, PedalHold::Foot { .. }) {
            return Err(cannot(Reason::FootOnPedal));
        }
        self.hands_free()?;
        let day = *self.circuit.day();
        self.circuit.inputs_mut().surroundings_c = day.ambient_c - day.night_drop_k;
        self.pass(doing, timing::NIGHT).await;
        self.circuit.inputs_mut().surroundings_c = day.ambient_c;
        doing.unattended = true;
        doing.away = true;
        self.state.touch();
        Ok(())
    }

    /// Lets time run freely to `to` (window pace): steps are short and the last may end up to 7 ticks
    /// later, because nothing may depend on when the next action comes.
    pub fn run_free(&mut self, to: Tick) {
        let start = self.circuit.tick().0;
        while self.circuit.tick().0 < to.0 + self.offset {
            self.step(to.0 + self.offset, Pace::Free);
        }
        self.state.attended += self.circuit.tick().0 - start;
    }

    /// As [`Workshop::run_free`], with the circuit run beside others.
    pub async fn run_free_beside(&mut self, to: Tick, beside: Beside<'_>) {
        let (start, limit) = (self.circuit.tick().0, to.0 + self.offset);
        while self.circuit.tick().0 < limit {
            self.run_on(beside, limit, Pace::Free, false).await;
        }
        self.state.attended += self.circuit.tick().0 - start;
    }

    /// As [`Workshop::run_free`], for the replay of a recorded attempt in any world: takes the same free
    /// steps, but never goes beyond `to`, where the next recorded action began.
    pub fn run_free_cut(&mut self, to: Tick) {
        /// Longest free step, ticks.
        const LONGEST: u64 = 8;
        let limit = to.0 + self.offset;
        let start = self.circuit.tick().0;
        while self.circuit.tick().0 < limit {
            if self.circuit.tick().0 + LONGEST <= limit {
                self.step(limit, Pace::Free);
                continue;
            }
            let mut ahead = self.circuit.clone();
            ahead.step(Tick(limit), Pace::Free);
            let pace = if ahead.tick().0 <= limit { Pace::Free } else { Pace::Timed };
            self.step(limit, pace);
        }
        self.state.attended += self.circuit.tick().0 - start;
    }
}
