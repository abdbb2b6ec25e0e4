//! An attempt is marked while the picture goes on.

use std::path::Path;
use std::sync::mpsc::{Receiver, TryRecvError, channel};
use std::sync::{Arc, Mutex};

use assess::attempt::Attempt;
use assess::locale::sentence::Sentence;
use assess::locale::{Locale, Naming};
use assess::marks::Evaluation;
use assess::marks::sheet::MarkSheet;
use assess::pack::Library;
use assess::pack::job::AfterHandBack;
use assess::play::Session;
use assess::sentence;

use crate::message;
use crate::{marking, output};

/// How far the marking is.
#[derive(Clone, Debug, Default)]
pub enum Marking {
    /// Nothing to mark.
    #[default]
    None,
    /// Handed in: the pack tells nothing more.
    HandedIn,
    /// At work in the background.
    Running,
    /// Done.
    Done(Arc<Evaluation>),
    /// It failed; carries why.
    Failed(Sentence),
}

/// What came of marking.
#[derive(Debug)]
struct Marked {
    evaluation: Evaluation,
    sheet: MarkSheet,
    /// Why its page could not be written, if so: a full disk keeps no mark from being shown.
    page: Option<Sentence>,
}

/// Marking in the background.
#[derive(Debug, Default)]
pub(super) struct Background {
    marking: Marking,
    /// `Receiver` is not `Sync`; the lock is never contended.
    marked: Option<Mutex<Receiver<Result<Marked, Sentence>>>>,
}

impl Background {
    /// How far it is.
    pub(super) fn marking(&self) -> &Marking {
        &self.marking
    }

    /// Marks a finished attempt on a thread of its own, once: a few seconds to a minute.
    pub(super) fn begin_if_finished(&mut self, session: &Session, library: &Library, languages: &[String]) {
        if !session.attempt().is_finished() || !matches!(self.marking, Marking::None) {
            return;
        }
        if session.job().after_hand_back == AfterHandBack::Nothing {
            self.marking = Marking::HandedIn;
            return;
        }
        let (attempt, library) = (session.attempt().clone(), library.clone());
        let languages = languages.to_vec();
        let file = session.path().map(Path::to_owned);
        let (to, from) = channel();
        self.marking = Marking::Running;
        self.marked = Some(Mutex::new(from));
        std::thread::spawn(move || {
            // The job may have been left meanwhile; then nobody wants the sheet any more.
            let marked = evaluate(&library, &attempt, file.as_deref(), &languages);
            drop(to.send(marked.map_err(|e| message::sentence(&e))));
        });
    }

    /// Takes the sheet when it is there, keeps the mark in the attempt's file, and tells what went wrong with that.
    pub(super) fn collect(&mut self, session: Option<&mut Session>) -> Vec<Sentence> {
        let Some(marked) = &self.marked else { return Vec::new() };
        let Ok(from) = marked.lock() else { return Vec::new() };
        let result = match from.try_recv() {
            Ok(result) => result,
            Err(TryRecvError::Empty) => return Vec::new(),
            Err(TryRecvError::Disconnected) => Err(sentence!(
                "shop-marking-stopped",
                "the marking stopped; mark the file with: pinhole mark"
            )),
        };
        drop(from);
        self.marked = None;
        let mut trouble = Vec::new();
        self.marking = match result {
            Ok(Marked { evaluation, sheet, page }) => {
                if let Some(session) = session {
                    trouble.extend(marking::told(&session.keep_mark(&sheet)));
                    trouble.extend(page);
                }
                Marking::Done(Arc::new(evaluation))
            }
            Err(why) => Marking::Failed(why),
        };
        trouble
    }
}

fn evaluate(
    library: &Library,
    attempt: &Attempt,
    file: Option<&Path>,
    languages: &[String],
) -> anyhow::Result<Marked> {
    let evaluation = marking::evaluation_of(library, attempt)?;
    let words = Locale::open(library.root(), languages)?;
    let sheet = evaluation.sheet(&words, Naming::Called);
    let page = |file| {
        let output = output::sheet_output(file)?;
        output.write(assess::report::html::render(&sheet, &words).as_bytes())
    };
    let page = file.and_then(|file| page(file).err()).map(|e| e.sentence());
    Ok(Marked { evaluation, sheet, page })
}
