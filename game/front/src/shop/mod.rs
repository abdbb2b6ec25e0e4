//! The shop: one job at a time, driven by actions, looked at through a [`View`].
//!
//! It knows neither Bevy nor egui. It holds no simulation state of its own: the session does. What is
//! here beside it is what a window needs to show what happened (remarks), to let time run (pace) and to
//! have an attempt marked without stopping the picture.

mod act;
mod desk;
mod enter;
mod hint;
mod marking;
mod remarks;

use std::path::Path;
use std::sync::Arc;

use assess::locale::sentence::Sentence;
use assess::pack::Library;
use assess::pack::job::Job;
use assess::play::Session;
use sim_core::car::Car;
use sim_core::notice::Notice;
use sim_core::units::{TICKS_PER_SECOND, Tick};
use sim_core::workshop::View;

use crate::ask::Pace;
use crate::places::{Places, Unfinished};
use crate::{held, places};

pub use desk::{Offered, OfferedPack};
use hint::Hinting;
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
    hinting: Hinting,
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
            hinting: Hinting::default(),
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
        self.collect_hint();
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

    fn remark(&mut self, kind: RemarkKind, told: Told) {
        let tick = self.view.as_ref().map_or(Tick(0), |v| v.tick);
        self.remarks.say(tick, kind, told);
    }

    /// The machine the program runs on fails.
    fn trouble(&mut self, said: Sentence) {
        self.remark(RemarkKind::Trouble, Told::Said(said));
    }

    fn mark_if_finished(&mut self) {
        if let Some(session) = &self.session {
            self.background.begin_if_finished(session, &self.library, &self.languages);
        }
    }

    fn collect_mark(&mut self) {
        for said in self.background.collect(self.session.as_mut()) {
            self.trouble(said);
        }
    }
}
