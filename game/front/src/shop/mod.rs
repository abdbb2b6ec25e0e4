//! The shop: one job at a time, driven by actions, looked at through a [`View`].
//!
//! It knows neither Bevy nor egui. It holds no simulation state of its own: the session does. What is
//! here beside it is what a window needs to show what happened (remarks), to let time run (pace) and to
//! have an attempt marked without stopping the picture.

mod desk;
mod marking;
mod remarks;

use std::path::Path;
use std::sync::Arc;

use anyhow::Context as _;
use assess::attempt::clock::{By, Opening};
use assess::attempt::{Attempt, Seed, SeedFrom};
use assess::locale::quote;
use assess::pack::Library;
use assess::pack::job::Job;
use assess::play::{Begin, Session};
use sim_core::action::Action;
use sim_core::car::Car;
use sim_core::notice::Notice;
use sim_core::units::{TICKS_PER_SECOND, Tick};
use sim_core::workshop::{Outcome, View};

use crate::ask::{Ask, Pace};
use crate::deed::Deed;
use crate::message::message;
use crate::places::{Places, Unfinished};
use crate::{held, output, places};

pub use desk::{Offered, OfferedPack};
use marking::Background;
pub use marking::Marking;
use remarks::Remarks;
pub use remarks::{Remark, RemarkKind, Told};

/// Longest stretch of real time that is made up for in one frame, s; a frame that took longer (a laptop
/// that slept) does not make the workshop run away.
const LONGEST_FRAME_S: f64 = 0.25;

/// One job at a time, and the shelf it came from.
#[derive(Debug)]
pub struct Shop {
    places: Places,
    library: Library,
    packs: Vec<OfferedPack>,
    unfinished: Vec<Unfinished>,
    session: Option<Session>,
    view: Option<View>,
    pace: Pace,
    /// Real time not yet given to the workshop, s.
    owed_s: f64,
    /// The reading the eye is still on.
    held: Option<u32>,
    /// The reading that is being written down.
    in_form: Option<u32>,
    /// The instrument that stands still for it, by its card.
    frozen: Option<usize>,
    remarks: Remarks,
    background: Background,
    /// Tags of the languages of the page, best first.
    languages: Vec<String>,
}

impl Shop {
    /// Opens the shop: reads the packs and looks for unfinished attempts.
    ///
    /// # Errors
    /// The data folder is missing, or an instrument file in it is faulty.
    pub fn open(places: &Places) -> anyhow::Result<Self> {
        let library = Library::open(&places::data(places)?)?;
        let packs = desk::offered(&library)?;
        let mut shop = Self {
            places: places.clone(),
            library,
            packs,
            unfinished: Vec::new(),
            session: None,
            view: None,
            pace: Pace::Hold,
            owed_s: 0.0,
            held: None,
            in_form: None,
            frozen: None,
            remarks: Remarks::default(),
            background: Background::default(),
            languages: Vec::new(),
        };
        shop.look_for_unfinished();
        Ok(shop)
    }

    /// In which language the page of a mark is written from now on: tags, best first; English without.
    pub fn speak(&mut self, languages: &[String]) {
        self.languages = languages.to_vec();
    }

    /// The packs on the front desk.
    #[must_use]
    pub fn packs(&self) -> &[OfferedPack] {
        &self.packs
    }

    /// Attempts that can be carried on, newest first.
    #[must_use]
    pub fn unfinished(&self) -> &[Unfinished] {
        &self.unfinished
    }

    /// The session, while a job is open.
    #[must_use]
    pub fn session(&self) -> Option<&Session> {
        self.session.as_ref()
    }

    /// The job that is open.
    #[must_use]
    pub fn job(&self) -> Option<&Arc<Job>> {
        self.session.as_ref().map(Session::job)
    }

    /// The car of the job that is open.
    #[must_use]
    pub fn car(&self) -> Option<&Arc<Car>> {
        self.job().map(|job| &job.car)
    }

    /// What can be seen, as of this frame. An instrument that is being read stands as it was read.
    #[must_use]
    pub fn view(&self) -> Option<&View> {
        self.view.as_ref()
    }

    /// How fast time runs, unless a reading holds it.
    #[must_use]
    pub fn pace(&self) -> Pace {
        self.pace
    }

    /// The reading that is being read or written down: its instrument stands still, and so does time.
    #[must_use]
    pub fn held(&self) -> Option<u32> {
        self.in_form.or(self.held)
    }

    /// The reading that was taken last, while the eye is on it.
    #[must_use]
    pub fn eye_on(&self) -> Option<u32> {
        self.held
    }

    /// Card of the instrument that stands still for it.
    #[must_use]
    pub fn frozen(&self) -> Option<usize> {
        self.frozen
    }

    /// The form to write this reading down is open, or none is. A form that is left lets go of its reading.
    pub fn write_down(&mut self, reading: Option<u32>) {
        if self.in_form == reading {
            return;
        }
        if self.in_form.is_some() && self.held == self.in_form {
            self.held = None;
        }
        self.in_form = reading;
        self.look();
    }

    /// What was said in this job, oldest first.
    #[must_use]
    pub fn remarks(&self) -> &[Remark] {
        self.remarks.all()
    }

    /// The marking of the job that was handed back.
    #[must_use]
    pub fn marking(&self) -> &Marking {
        self.background.marking()
    }

    /// Lets `real_s` seconds of the wall clock pass: time in the workshop goes on at its pace.
    pub fn advance(&mut self, real_s: f64) {
        self.collect_mark();
        if self.held().is_some() {
            self.owed_s = 0.0;
            return;
        }
        let Some(session) = &mut self.session else { return };
        if session.attempt().is_finished() {
            return;
        }
        self.owed_s += real_s.clamp(0.0, LONGEST_FRAME_S) * f64::from(self.pace.factor());
        let ticks = (self.owed_s * TICKS_PER_SECOND as f64).floor();
        if ticks < 1.0 {
            return;
        }
        self.owed_s -= ticks / TICKS_PER_SECOND as f64;
        let before = self.view.as_ref().map(|v| (v.hum, v.engine));
        let target = session.workshop().tick().plus(ticks as u64);
        let stands = session.free_until() < target;
        session.run_free(target);
        if let Err(fault) = session.computed() {
            // Nothing goes on: what would be shown means nothing.
            self.pace = Pace::Hold;
            let at = ("t", format!("{:.2}", fault.tick.s()));
            let told = match fault.part {
                Some(part) => Told::Keyed("told-model-stops", vec![at, ("k", part)]),
                None => Told::Keyed("told-model-stops-car", vec![at]),
            };
            self.remark(RemarkKind::Trouble, told);
            return;
        }
        let view = session.view();
        let heard = before.filter(|(hum, _)| *hum != view.hum).map(|_| view.hum);
        self.view = Some(view);
        if let Some(hum) = heard {
            let notice = if hum { Notice::PumpStarts } else { Notice::PumpStops };
            self.remark(RemarkKind::Noticed, Told::Notice(notice));
        }
        if stands {
            self.pace = Pace::Hold;
            self.remark(RemarkKind::Noticed, Told::Keyed("told-time-stands", Vec::new()));
        }
    }

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
                        self.trouble(message(&error));
                    }
                }
                Ask::CarryOn(path) => {
                    if let Err(error) = self.carry_on(&path) {
                        self.trouble(message(&error));
                    }
                }
                Ask::Leave => self.leave(),
            }
        }
    }

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
                .with_context(|| format!("{} cannot be carried on", quote::path(path)))?;
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
        let session = self.session.as_mut().context("no job is open")?;
        for step in &attempt.steps {
            session.run_free(step.start);
            session.act(&step.action)?;
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
        let session = self.session.as_ref().context("no job is open")?;
        let names = assess::play::script::vocabulary(session);
        for (i, full) in text.lines().enumerate() {
            let line = full.trim().strip_prefix("try ").unwrap_or(full).trim();
            let Some(session) = &self.session else { break };
            let said = assess::words::parse(line, &names, &session.view().readings)
                .map_err(|e| anyhow::anyhow!("line {}: {e}", i + 1))?;
            if let Some(action) = assess::play::script::action_of(session, &said) {
                self.act(&action);
            }
        }
        Ok(())
    }

    /// Waits until the marking is over.
    pub fn wait_for_mark(&mut self) {
        while matches!(self.marking(), Marking::Running) {
            std::thread::sleep(std::time::Duration::from_millis(20));
            self.collect_mark();
        }
    }

    /// The folder that holds assets and scenarios.
    #[must_use]
    pub fn root(&self) -> &Path {
        self.library.root()
    }

    /// The shelf of packs, cars and drawings.
    #[must_use]
    pub fn library(&self) -> &Library {
        &self.library
    }

    /// Looks away from what was read.
    fn let_go(&mut self) {
        self.held = None;
        self.look();
    }

    /// Looks at the workshop as it is now; what is being read stands still.
    fn look(&mut self) {
        let Some(session) = &self.session else { return };
        let mut view = session.view();
        let held = self.held().and_then(|id| view.readings.iter().find(|r| r.id == id).cloned());
        self.frozen = held.and_then(|reading| held::hold(session, &mut view, &reading));
        self.view = Some(view);
    }

    /// After something was done the eye is on what was read by it, and on nothing else. To write down what
    /// was read takes no eye off it.
    fn turn_the_eye(&mut self, action: &Action, outcome: &Outcome) {
        match (action, &outcome.reading) {
            (Action::Note { reading, .. }, _) => self.held.take_if(|held| held == reading),
            (_, Some(reading)) if held::instrument(reading).is_some() => self.held.replace(reading.id),
            _ => self.held.take(),
        };
    }

    fn enter(&mut self, session: Session) {
        self.view = Some(session.view());
        self.session = Some(session);
        (self.held, self.in_form, self.frozen) = (None, None, None);
        self.remarks = Remarks::default();
        self.owed_s = 0.0;
        self.pace = Pace::Hold;
        self.background = Background::default();
        self.mark_if_finished();
    }

    /// Leaves the job; its attempt stays on the disk.
    fn leave(&mut self) {
        self.session = None;
        self.view = None;
        self.remarks = Remarks::default();
        self.background = Background::default();
        self.look_for_unfinished();
    }

    /// Does one action; whether it was done.
    fn act(&mut self, action: &Action) -> bool {
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
                self.trouble(message(&error.into()));
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

    fn remark(&mut self, kind: RemarkKind, told: Told) {
        let tick = self.view.as_ref().map_or(Tick(0), |v| v.tick);
        self.remarks.say(tick, kind, told);
    }

    /// The machine the program runs on fails.
    fn trouble(&mut self, text: String) {
        self.remark(RemarkKind::Trouble, Told::Text(text));
    }

    fn mark_if_finished(&mut self) {
        if let Some(session) = &self.session {
            self.background.begin_if_finished(session, &self.library, &self.languages);
        }
    }

    fn collect_mark(&mut self) {
        for text in self.background.collect(self.session.as_mut()) {
            self.trouble(text);
        }
    }

    fn look_for_unfinished(&mut self) {
        let Ok(folder) = places::attempts(&self.places) else {
            self.unfinished.clear();
            return;
        };
        self.unfinished = places::unfinished(&folder, None, None);
        self.unfinished.reverse();
    }
}
