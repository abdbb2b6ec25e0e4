//! A hint is worked out while the picture goes on.

use std::sync::Mutex;
use std::sync::mpsc::{Receiver, TryRecvError, channel};

use assess::attempt::hint_line::Advice;
use assess::locale::sentence::Sentence;
use assess::planner::hint::advice;
use assess::play::Session;
use assess::sentence;

use super::Shop;
use super::remarks::{RemarkKind, Told};

/// What came of working it out.
type Worked = Result<Option<Advice>, Sentence>;

/// A hint in the making.
#[derive(Debug, Default)]
pub(super) struct Hinting {
    /// `Receiver` is not `Sync`; the lock is never contended.
    coming: Option<Mutex<Receiver<Worked>>>,
}

impl Hinting {
    /// Works it out on a thread of its own: some seconds.
    fn begin(&mut self, session: &Session) {
        let (attempt, job) = (session.attempt().clone(), session.job().clone());
        let (to, from) = channel();
        self.coming = Some(Mutex::new(from));
        std::thread::spawn(move || {
            // The job may have been left meanwhile; then nobody wants the hint any more.
            let advised = advice(&attempt, &job, |_, _| true);
            drop(to.send(advised.map_err(|e| e.sentence())));
        });
    }

    /// What came of it, once.
    fn collect(&mut self) -> Option<Worked> {
        let result = match self.coming.as_ref()?.lock().ok()?.try_recv() {
            Ok(result) => result,
            Err(TryRecvError::Empty) => return None,
            Err(TryRecvError::Disconnected) => Err(sentence!(
                "shop-hint-stopped",
                "the working out of the hint stopped; nothing was counted"
            )),
        };
        self.coming = None;
        Some(result)
    }
}

impl Shop {
    /// Whether a hint is being worked out.
    #[must_use]
    pub fn hint_is_coming(&self) -> bool {
        self.hinting.coming.is_some()
    }

    /// Begins to work out a hint, where one may be asked for.
    pub(super) fn ask_hint(&mut self) {
        let Some(session) = self.session.as_ref().filter(|_| self.hinting.coming.is_none()) else { return };
        match session.may_ask() {
            Ok(()) => self.hinting.begin(session),
            Err(error) => self.trouble(error.sentence()),
        }
    }

    /// Writes the hint down when it is there: from then on it counts.
    pub(super) fn collect_hint(&mut self) {
        let Some(worked) = self.hinting.collect() else { return };
        let Some(session) = &mut self.session else { return };
        match worked {
            Ok(None) => {}
            Ok(Some(advice)) => match session.hint(advice) {
                Ok(()) => self.remark(RemarkKind::Noticed, Told::Keyed("told-hint-there", Vec::new())),
                Err(error) => self.trouble(error.sentence()),
            },
            Err(why) => self.trouble(why),
        }
    }

    /// Waits until the hint is there.
    pub fn wait_for_hint(&mut self) {
        while self.hint_is_coming() {
            std::thread::sleep(std::time::Duration::from_millis(20));
            self.collect_hint();
        }
    }
}
