//! What the panels ask for is done, each thing once and in order, and what came of it is remarked.

use sim_core::action::Action;
use sim_core::workshop::{Outcome, View};

use super::Shop;
use super::remarks::{RemarkKind, Told};
use crate::ask::{Ask, Pace};
use crate::deed::Deed;
use crate::held;
use crate::message;

impl Shop {
    /// Does what the panels asked for; each exactly once, in order.
    pub fn carry_out(&mut self, asks: impl IntoIterator<Item = Ask>) {
        for ask in asks {
            match ask {
                Ask::Do(action) => {
                    self.act(&action);
                }
                Ask::DoAll(actions) => {
                    // The rest would make no sense after one that was refused.
                    for action in &actions {
                        if !self.act(action) {
                            break;
                        }
                    }
                }
                Ask::Pace(pace) => {
                    self.pace = pace;
                    self.owed_s = 0.0;
                    // Whoever lets time run has read.
                    if pace != Pace::Hold {
                        self.let_go();
                    }
                }
                Ask::LetGo => self.let_go(),
                Ask::Begin(name) => {
                    if let Err(error) = self.begin(&name, None, None) {
                        self.trouble(message::sentence(&error));
                    }
                }
                Ask::CarryOn(path) => {
                    if let Err(error) = self.carry_on(&path) {
                        self.trouble(message::sentence(&error));
                    }
                }
                Ask::Hint => self.ask_hint(),
                Ask::Leave => self.leave(),
            }
        }
    }

    /// Does one action; whether it was done.
    pub(super) fn act(&mut self, action: &Action) -> bool {
        let Some(session) = &mut self.session else { return false };
        let before = session.view();
        match session.act(action) {
            Ok(outcome) => {
                let done = outcome.refused.is_none();
                if done {
                    self.turn_the_eye(action, &outcome);
                }
                self.look();
                self.report(action, &before, outcome);
                self.mark_if_finished();
                done
            }
            Err(error) => {
                self.trouble(error.sentence());
                false
            }
        }
    }

    fn report(&mut self, action: &Action, before: &View, outcome: Outcome) {
        if let Some(why) = outcome.refused {
            self.remark(RemarkKind::Refused, Told::Refusal(why));
            return;
        }
        if let Some(deed) = self.view.as_ref().and_then(|after| Deed::of(action, before, after, &outcome)) {
            self.remark(RemarkKind::Done(deed), Told::Nothing);
        }
        for notice in outcome.said {
            self.remark(RemarkKind::Noticed, Told::Notice(notice));
        }
        for hazard in outcome.breaches {
            self.remark(RemarkKind::Breach(hazard.gravity()), Told::Hazard(hazard));
        }
        if let Some(reading) = outcome.reading {
            self.remark(RemarkKind::Read(reading), Told::Nothing);
        }
        if let Some(entry) = outcome.record {
            let kind = RemarkKind::Record { item: entry.item, unmet: entry.unmet };
            self.remark(kind, Told::Nothing);
        }
    }

    /// After something was done the eye is on what was read by it, and on nothing else. To write down what
    /// was read takes no eye off it.
    fn turn_the_eye(&mut self, action: &Action, outcome: &Outcome) {
        if let Action::Note { reading, .. } = action {
            self.held.take_if(|held| held == reading);
        } else {
            let read = outcome.reading.as_ref().filter(|reading| held::instrument(reading).is_some());
            self.held = read.map(|reading| reading.id);
        }
    }
}
