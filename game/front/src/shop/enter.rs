//! A job is begun, carried on, rehearsed or left.

use std::path::Path;
use std::sync::Arc;

use assess::attempt::clock::{By, Opening};
use assess::attempt::{Attempt, Seed, SeedFrom};
use assess::locale::quote;
use assess::locale::sentence::Sentence;
use assess::pack::job::Job;
use assess::play::{Begin, Session};
use assess::sentence;

use super::Shop;
use super::hint::Hinting;
use super::marking::Background;
use super::remarks::{RemarkKind, Remarks, Told};
use crate::ask::Pace;
use crate::message::because;
use crate::{output, places};

impl Shop {
    /// Begins a job: a new attempt, in `path` or under a free name in the attempts folder.
    ///
    /// # Errors
    /// Unknown or faulty job; the attempt's file cannot be made.
    pub fn begin(&mut self, name: &str, path: Option<&Path>, seed: Option<Seed>) -> anyhow::Result<()> {
        let job = Arc::new(self.library.job(name)?);
        let (seed, seed_from) = match seed {
            Some(seed) => (seed, SeedFrom::Given),
            None => (Seed::random()?, SeedFrom::Drawn),
        };
        let begin = Begin { seed, seed_from, seat: None, opening: Opening::now(By::Window) };
        let session = match path {
            Some(path) => {
                output::new_attempt(path)?;
                Session::start(job, &begin, path)?
            }
            None => {
                let start = |path: &Path| Session::start(Arc::clone(&job), &begin, path);
                places::begin_in(&places::attempts(&self.places)?, &job.id, start)?
            }
        };
        self.enter(session);
        Ok(())
    }

    /// Carries an attempt on.
    ///
    /// # Errors
    /// The file is in use, damaged, or replays to something else.
    pub fn carry_on(&mut self, path: &Path) -> anyhow::Result<()> {
        let library = &self.library;
        let opening = Opening::now(By::Window);
        let (session, torn) =
            Session::resume::<anyhow::Error>(path, &opening, |name| Ok(Arc::new(library.job(name)?)))
                .map_err(because(sentence!(
                    "shop-not-carried-on",
                    "{file} cannot be carried on",
                    file = quote::path(path)
                )))?;
        self.enter(session);
        if torn {
            self.remark(RemarkKind::Trouble, Told::Keyed("told-torn", Vec::new()));
        }
        Ok(())
    }

    /// A rehearsal: a job without a file, for pictures and tests.
    ///
    /// # Errors
    /// Unknown or faulty job.
    pub fn rehearse(&mut self, name: &str, seed: Seed) -> anyhow::Result<()> {
        let job = Arc::new(self.library.job(name)?);
        let begin = Begin::rehearsal(seed);
        self.enter(Session::rehearse(job, &begin));
        Ok(())
    }

    /// A rehearsal of a job as it is given: with other hidden faults than its file has.
    pub fn rehearse_as(&mut self, job: Job, seed: Seed) {
        let begin = Begin::rehearsal(seed);
        self.enter(Session::rehearse(Arc::new(job), &begin));
    }

    /// A recorded attempt, done again without touching its file: for pictures.
    ///
    /// # Errors
    /// The file cannot be read, is of a job that is not here, or an action in it is refused otherwise.
    pub fn show_attempt(&mut self, path: &Path) -> anyhow::Result<()> {
        let attempt = Attempt::read(path)?;
        self.rehearse(&attempt.header.job, attempt.header.seed)?;
        let session = self.session.as_mut().ok_or_else(no_job)?;
        let mut hints = attempt.hints.iter().peekable();
        for (done, step) in attempt.steps.iter().enumerate() {
            while let Some(hint) = hints.next_if(|hint| hint.after as usize <= done) {
                session.hint(hint.advice.clone())?;
            }
            session.run_free(step.start);
            session.act(&step.action)?;
        }
        for hint in hints {
            session.hint(hint.advice.clone())?;
        }
        self.view = Some(session.view());
        self.mark_if_finished();
        Ok(())
    }

    /// Plays a script of plain words in the open job.
    ///
    /// # Errors
    /// A line that is not understood or is refused.
    pub fn play(&mut self, text: &str) -> anyhow::Result<()> {
        let session = self.session.as_ref().ok_or_else(no_job)?;
        let names = assess::play::script::vocabulary(session);
        for (i, full) in text.lines().enumerate() {
            let line = full.trim().strip_prefix("try ").unwrap_or(full).trim();
            let Some(session) = &self.session else { break };
            let said = assess::words::parse(line, &names, &session.view().readings)
                .map_err(|e| sentence!("shop-line", "line {n}: {why}", n = i + 1, why = e.sentence()))?;
            if let Some(action) = assess::play::script::action_of(session, &said) {
                self.act(&action);
            }
        }
        Ok(())
    }

    pub(super) fn enter(&mut self, session: Session) {
        self.view = Some(session.view());
        self.session = Some(session);
        (self.held, self.in_form, self.frozen) = (None, None, None);
        self.remarks = Remarks::default();
        self.owed_s = 0.0;
        self.pace = Pace::Hold;
        (self.background, self.hinting) = (Background::default(), Hinting::default());
        self.mark_if_finished();
    }

    /// Leaves the job; its attempt stays on the disk.
    pub(super) fn leave(&mut self) {
        self.session = None;
        self.view = None;
        self.remarks = Remarks::default();
        (self.background, self.hinting) = (Background::default(), Hinting::default());
        self.look_for_unfinished();
    }

    pub(super) fn look_for_unfinished(&mut self) {
        let Ok(folder) = places::attempts(&self.places) else {
            self.unfinished.clear();
            return;
        };
        self.unfinished = places::unfinished(&folder, None, None);
        self.unfinished.reverse();
    }
}

fn no_job() -> Sentence {
    sentence!("shop-no-job", "no job is open")
}
