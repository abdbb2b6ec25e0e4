//! A workshop with its attempt: every action goes through the workshop and onto the disk.
//!
//! `act` returns only when the line is safe. Resuming does the recorded actions again and compares ([`super::replay`]).

use std::path::Path;
use std::sync::Arc;

use sim_core::action::{Action, Written};
use sim_core::observe::Reading;
use sim_core::units::Tick;
use sim_core::workshop::{Outcome, View, Workshop};

use super::begin::{Begin, header, sitting, workshop};
use super::error::{NoHint, SessionError, Uncomputed, computed};
use super::replay::{keep_quiet, replay, step};
use crate::attempt::clock::{By, Opening};
use crate::attempt::hint_line::{Advice, HintLine};
use crate::attempt::limits;
use crate::attempt::mark_line::MarkLine;
use crate::attempt::marked::{self, Kept};
use crate::attempt::{Attempt, AttemptError, Step, Writer};
use crate::locale::quote;
use crate::marks::sheet::MarkSheet;
use crate::pack::job::{AfterHandBack, Job};
use crate::words;

/// Ticks in which the clock ran on by itself.
fn free_ticks(steps: &[Step]) -> u64 {
    let ends = std::iter::once(0).chain(steps.iter().map(|step| step.end.0));
    steps.iter().zip(ends).map(|(step, end)| step.start.0 - end).sum()
}

/// Does an action at an attempt's workshop, and writes down what came of it.
fn done(workshop: &mut Workshop, n: u32, action: &Action) -> (Step, Outcome) {
    let outcome = workshop.act(action);
    let minutes = workshop.take_minute_digests();
    (step(n, action, &outcome, minutes, workshop.digest()), outcome)
}

/// Someone at work on a car, with the attempt behind it.
#[derive(Debug)]
pub struct Session {
    job: Arc<Job>,
    workshop: Workshop,
    /// `None`: a rehearsal that leaves no file.
    writer: Option<Writer>,
    attempt: Attempt,
    opening: Opening,
    /// Ticks in which the clock ran on by itself, before the last action.
    free: u64,
}

impl Session {
    /// Begins an attempt in a new file.
    ///
    /// # Errors
    /// When the file exists or cannot be made, or the car cannot be computed as it came in.
    pub fn start(job: Arc<Job>, begin: &Begin, path: &Path) -> Result<Self, SessionError> {
        let mut session = Self::rehearse(job, begin);
        computed(&session.workshop)?;
        session.writer = Some(Writer::create(path, &session.attempt.header, &session.attempt.sittings[0])?);
        Ok(session)
    }

    /// Begins an attempt without a file: for the marker's reference attempts and for tests.
    #[must_use]
    pub fn rehearse(job: Arc<Job>, begin: &Begin) -> Self {
        let workshop = workshop(&job, begin.seed);
        let attempt = Attempt {
            header: header(&job, begin),
            steps: Vec::new(),
            sittings: vec![sitting(&begin.opening, 0)],
            repairs: Vec::new(),
            hints: Vec::new(),
            mark: None,
            overrides: Vec::new(),
        };
        Self { job, workshop, writer: None, attempt, opening: begin.opening.clone(), free: 0 }
    }

    /// Carries an attempt on: locks and reads the file, does everything in it again, compares, and writes down that it
    /// was opened. The second value tells whether a torn last line was dropped. `job` gives the job of a name, as
    /// `Library::job` does.
    ///
    /// # Errors
    /// When the file is in use, damaged, of another job, replays to something else, or may not be written.
    pub fn resume<E: From<SessionError>>(
        path: &Path,
        opening: &Opening,
        job: impl FnOnce(&str) -> Result<Arc<Job>, E>,
    ) -> Result<(Self, bool), E> {
        let (mut writer, mut attempt, torn) = Writer::open(path).map_err(SessionError::from)?;
        let job = job(&attempt.header.job)?;
        let workshop = replay(&attempt, &job)?;
        // A finished one is opened to be looked at; nothing can be done in it any more.
        if !attempt.is_finished() {
            let sitting = sitting(opening, attempt.steps.len());
            writer.append_sitting(&sitting).map_err(SessionError::from)?;
            attempt.sittings.push(sitting);
        }
        let free = free_ticks(&attempt.steps);
        Ok((Self { job, workshop, writer: Some(writer), attempt, opening: opening.clone(), free }, torn))
    }

    /// Does an action; it is on the disk when this returns.
    ///
    /// # Errors
    /// When it cannot be written, holds what no attempt can hold, or the car has been handed back. A refusal is no
    /// error: see [`Outcome::refused`].
    pub fn act(&mut self, action: &Action) -> Result<Outcome, SessionError> {
        if self.attempt.is_finished() {
            return Err(SessionError::Over);
        }
        computed(&self.workshop)?;
        limits::action(action)?;
        limits::room_for(action, self.attempt.steps.len(), self.workshop.tick())?;
        let at_unix_ms = self.opening.clock.now_ms();
        let n = self.attempt.steps.len() as u32 + 1;
        let (mut step, mut outcome) = if let Action::Suspect { text } = action {
            // Free text is kept as it can be read again: without controls, and no longer than a page.
            let text = quote::tidied(text).chars().take(words::LONGEST_SUSPICION).collect();
            done(&mut self.workshop, n, &Action::Suspect { text })
        } else {
            done(&mut self.workshop, n, action)
        };
        keep_quiet(&self.job, &mut step, &mut outcome);
        computed(&self.workshop)?;
        (step.by, step.at_unix_ms) = (Some(self.opening.by), Some(at_unix_ms));
        if let Some(writer) = &mut self.writer {
            writer.append(&step)?;
        }
        self.free += step.start.0 - self.last_end().0;
        self.attempt.steps.push(step);
        Ok(outcome)
    }

    /// Writes down that a hint was asked for, and what was said; it is on the disk when this returns. The workshop's clock
    /// stands meanwhile.
    ///
    /// # Errors
    /// When the pack gives no more of them, the car has been repaired or handed back, or it cannot be written.
    pub fn hint(&mut self, advice: Advice) -> Result<(), SessionError> {
        self.may_ask()?;
        let after = self.attempt.steps.len() as u32;
        let line = HintLine { after, advice, at_unix_ms: self.opening.clock.now_ms() };
        if let Some(writer) = &mut self.writer {
            writer.append_hint(&line)?;
        }
        self.attempt.hints.push(line);
        Ok(())
    }

    /// Whether a hint may be asked for now.
    ///
    /// # Errors
    /// Why it may not.
    pub fn may_ask(&self) -> Result<(), SessionError> {
        if self.attempt.is_finished() {
            return Err(SessionError::Over);
        }
        if self.hints_left() == 0 {
            return Err(SessionError::NoHint(match self.job.hints {
                0 => NoHint::NoneGiven,
                given => NoHint::AllAsked { given },
            }));
        }
        let repairs = |step: &Step| step.action.repairs().is_some() && step.refused.is_none();
        if self.attempt.steps.iter().any(repairs) {
            return Err(SessionError::NoHint(NoHint::Repaired));
        }
        computed(&self.workshop)?;
        Ok(())
    }

    /// What was said last, where nothing has been noted since: it would be said again, and is no new hint.
    #[must_use]
    pub fn standing_hint(&self) -> Option<&Advice> {
        let last = self.attempt.hints.last()?;
        let noted = |step: &Step| matches!(step.action, Action::Note { .. }) && step.refused.is_none();
        let since = self.attempt.steps.get(last.after as usize..)?;
        (!since.iter().any(noted)).then_some(&last.advice)
    }

    /// Hints that may still be asked for.
    #[must_use]
    pub fn hints_left(&self) -> u32 {
        self.job.hints.saturating_sub(self.attempt.hints.len() as u32)
    }

    fn last_end(&self) -> Tick {
        self.attempt.steps.last().map_or(Tick(0), |step| step.end)
    }

    /// Writes the mark into the attempt's file, or compares it with the one that stands there
    /// ([`crate::attempt::marked`]). `None` for a rehearsal, for a sheet without marks, and in a pack that tells nothing.
    ///
    /// # Errors
    /// When it cannot be written. The mark is then merely not kept; the attempt is as whole as before.
    pub fn keep_mark(&mut self, sheet: &MarkSheet) -> Result<Option<Kept>, AttemptError> {
        if self.is_handed_in() {
            return Ok(None);
        }
        let (Some(writer), Some(line)) = (&mut self.writer, MarkLine::of(sheet)) else { return Ok(None) };
        let kept = marked::keep(writer, self.attempt.mark.as_ref(), &line)?;
        if kept == Kept::Written {
            self.attempt.mark = Some(line);
        }
        Ok(Some(kept))
    }

    /// Whether the car was handed back in a pack that tells nothing after it: then there is no mark, no answer, no
    /// what-if, only that it was handed in.
    #[must_use]
    pub fn is_handed_in(&self) -> bool {
        self.attempt.is_finished() && self.job.after_hand_back == AfterHandBack::Nothing
    }

    /// Lets time run to `to` without an action, no further than [`Self::free_until`]; the next action records it.
    pub fn run_free(&mut self, to: Tick) {
        self.workshop.run_free(to.min(self.free_until()));
    }

    /// Whether the model can go on.
    ///
    /// # Errors
    /// Where it could not: the attempt stops there.
    pub fn computed(&self) -> Result<(), Uncomputed> {
        computed(&self.workshop)
    }

    /// Tick at which time stands still until something is done.
    #[must_use]
    pub fn free_until(&self) -> Tick {
        limits::free_until(self.last_end(), self.free)
    }

    /// By which way actions come in.
    #[must_use]
    pub fn by(&self) -> By {
        self.opening.by
    }

    /// What a reading showed, as someone who reads exactly would write it; `None` for a sense.
    #[must_use]
    pub fn written_as_shown(&self, reading: &Reading) -> Option<Written> {
        self.workshop.scale(&reading.what).written(reading.shown)
    }

    /// The job.
    #[must_use]
    pub fn job(&self) -> &Arc<Job> {
        &self.job
    }

    /// The workshop, to look at.
    #[must_use]
    pub fn workshop(&self) -> &Workshop {
        &self.workshop
    }

    /// What can be seen.
    #[must_use]
    pub fn view(&self) -> View {
        self.workshop.view()
    }

    /// The attempt so far.
    #[must_use]
    pub fn attempt(&self) -> &Attempt {
        &self.attempt
    }

    /// The attempt, when it is no longer worked on.
    #[must_use]
    pub fn into_attempt(self) -> Attempt {
        self.attempt
    }

    /// The file, unless this is a rehearsal.
    #[must_use]
    pub fn path(&self) -> Option<&Path> {
        self.writer.as_ref().map(Writer::path)
    }
}
