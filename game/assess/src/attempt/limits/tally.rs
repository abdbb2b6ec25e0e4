//! What the actions of an attempt add up to, each held to what it can be.

use sim_core::observe::{Reading, ShownValue};
use sim_core::units::{TICKS_PER_SECOND, Tick};

use super::actions::{action, done, longest};
use super::beyond::{Beyond, Bound, at_most, short, unix_ms, within};
use super::quantity::Quantity;
use super::{LONGEST_ATTEMPT, LONGEST_FREE, LONGEST_PAUSE, LONGEST_TEXT, MOST_ACTIONS, MOST_BREACHES};
use crate::attempt::record::Step;
use crate::attempt::told::Refused;

/// What the actions so far add up to.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Tally {
    actions: u32,
    readings: u32,
    end: u64,
    free: u64,
}

impl Tally {
    /// Takes in an action, if each of its numbers can be.
    pub(crate) fn take(&mut self, step: &Step) -> Result<(), Beyond> {
        if step.n != self.actions + 1 {
            return Beyond::err(Quantity::ActionNumber, step.n, Bound::Just((self.actions + 1).into()));
        }
        at_most(Quantity::Actions, u64::from(step.n), u64::from(MOST_ACTIONS))?;
        let (start, end) = (step.start.0, step.end.0);
        if start < self.end {
            return Beyond::err(Quantity::FirstTick, start, Bound::FromLastEnd(self.end));
        }
        let pause = start - self.end;
        at_most(Quantity::Pause, pause, LONGEST_PAUSE)?;
        at_most(Quantity::Free, self.free + pause, LONGEST_FREE)?;
        if end < start {
            return Beyond::err(Quantity::LastTick, end, Bound::FromStart(start));
        }
        at_most(Quantity::LastTick, end, LONGEST_ATTEMPT)?;
        if step.refused.is_some() {
            at_most(Quantity::RefusedLength, end - start, 0)?;
        } else {
            at_most(Quantity::Length, end - start, longest(&step.action))?;
            done(&step.action, self.readings)?;
        }
        action(&step.action)?;
        short(Quantity::Refusal, step.refused.as_ref().map_or("", Refused::longest_text), 2 * LONGEST_TEXT)?;
        let ms = step.at_unix_ms.unwrap_or(0);
        unix_ms(Quantity::ActionTime, ms)?;
        if let Some(reading) = &step.reading {
            self.reading(reading, step)?;
        }
        self.minutes(step)?;
        at_most(Quantity::Breaches, step.breaches.len() as u64, MOST_BREACHES as u64)?;
        *self = Self {
            actions: step.n,
            readings: self.readings + u32::from(step.reading.is_some()),
            end,
            free: self.free + pause,
        };
        Ok(())
    }

    fn reading(&self, reading: &Reading, step: &Step) -> Result<(), Beyond> {
        let expected = self.readings + 1;
        if reading.id != expected {
            return Beyond::err(Quantity::ReadingNumber, reading.id, Bound::Just(expected.into()));
        }
        if reading.tick < step.start || step.end < reading.tick {
            let bound = Bound::WhileDone(step.start.0, step.end.0);
            return Beyond::err(Quantity::ReadingTick, reading.tick.0, bound);
        }
        match reading.shown {
            ShownValue::Steps(n) => within(Quantity::Shown, n as f64, -1e9, 1e9),
            ShownValue::Level(level) => at_most(Quantity::Level, u64::from(level), 20),
            ShownValue::Off(_) | ShownValue::Blank => Ok(()),
        }
    }

    /// One digest at most for each minute since the action before, in order.
    fn minutes(&self, step: &Step) -> Result<(), Beyond> {
        const MINUTE: u64 = 60 * TICKS_PER_SECOND;
        let most = (step.end.0 - self.end) / MINUTE + 1;
        at_most(Quantity::Minutes, step.minutes.len() as u64, most)?;
        let mut before = self.end;
        for (Tick(at), _) in &step.minutes {
            if *at < before || step.end.0 < *at {
                let bound = Bound::Ticks(before, step.end.0);
                return Beyond::err(Quantity::MinuteTick, *at, bound);
            }
            before = *at;
        }
        Ok(())
    }
}
