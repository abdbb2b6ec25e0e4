//! A row of tests as one piece of work: set-ups are shared while they last, and everything is undone at the end.
//!
//! What a test shows must not hang on what was done before it, or no table of its readings would hold. So at each of its
//! waits, strokes and readings the car stands as if the test were done alone, but for what no reading feels: covers off,
//! chocks, extraction, and an instrument that the test itself will have in the same place. Everything else that stands
//! is put away before a test, by the undo of the test that brought it, less what the next one wants as it is.

use std::sync::Arc;

use sim_core::action::{Action, Sense};
use sim_core::assembly::Assembly;
use sim_core::car::Car;
use sim_core::parts::instruments::MeterMode;

use super::standing::{Lasting, Standing, only_lasts};
use super::test::{Line, Phase, Step, Test};

/// A line of the work.
#[derive(Clone, Debug, PartialEq)]
pub struct Task {
    /// Which test of the row it belongs to; `None` puts away what was there before, or what several tests shared.
    pub test: Option<usize>,
    /// To which part of it.
    pub phase: Phase,
    /// What is done.
    pub line: Line,
}

/// A row of tests, as far as it goes; what the last one has set up still stands.
#[derive(Clone, Debug)]
pub struct Row {
    car: Arc<Car>,
    /// What may stay to the end, because it was there at the beginning.
    stays: Standing,
    standing: Standing,
    /// The last test's undo.
    undo: Vec<Line>,
    tests: usize,
    tasks: Vec<Task>,
}

impl Row {
    /// Begins where `standing` stands.
    #[must_use]
    pub fn new(car: Arc<Car>, standing: Standing) -> Self {
        let stays = standing.only(unfelt);
        Self { car, stays, standing, undo: Vec::new(), tests: 0, tasks: Vec::new() }
    }

    /// The work so far.
    #[must_use]
    pub fn tasks(&self) -> &[Task] {
        &self.tasks
    }

    /// How many tests there are.
    #[must_use]
    pub fn tests(&self) -> usize {
        self.tests
    }

    /// What stands now.
    #[must_use]
    pub fn standing(&self) -> &Standing {
        &self.standing
    }

    /// Puts a test behind the others: what it cannot have about is put away, what stands already is not set up again.
    /// Covers, chocks and extraction stay as they are: a test that comes later may want them.
    pub fn then(&mut self, test: &Test) {
        self.then_before(test, |_| true);
    }

    /// As [`Row::then`], where what comes later is known: of covers, chocks and extraction only what this test or a later
    /// one has stays.
    fn then_before(&mut self, test: &Test, later_has: impl Fn(&Lasting) -> bool) {
        let stays = Alone::of(test).stays(&self.standing, &self.car.assembly);
        let here = brings(test);
        let stays = stays.only(|thing| {
            !unfelt(thing) || later_has(thing) || here.contains(thing) || self.stays.has(thing)
        });
        self.put_away(&stays);
        for (phase, line) in test.lines().filter(|(phase, _)| *phase != Phase::Undo) {
            self.put(Some(self.tests), phase, line);
        }
        self.undo = test.undo.clone();
        self.tests += 1;
    }

    /// Puts all these tests behind the others, and undoes what still stands.
    pub fn all(&mut self, tests: &[&Test]) {
        for (n, test) in tests.iter().enumerate() {
            let later: Vec<Lasting> = tests[n + 1..].iter().flat_map(|test| brings(test)).collect();
            self.then_before(test, |thing| later.contains(thing));
        }
        self.end();
    }

    /// Undoes what still stands, but for covers, chocks and extraction that were so at the beginning.
    pub fn end(&mut self) {
        let stays = self.stays.clone();
        self.put_away(&stays);
    }

    /// Adds a line, unless what it does is so already.
    fn put(&mut self, test: Option<usize>, phase: Phase, line: &Line) {
        if let Step::Do(action) = &line.step {
            match self.standing.after(action) {
                Some(next) => self.standing = next,
                None if only_lasts(action) => return,
                None => {}
            }
            // What was to be done in between stands already.
            if let Some(Task { line: Line { step: Step::Do(before), .. }, .. }) = self.tasks.last()
                && takes_back(before, action)
            {
                self.tasks.pop();
                return;
            }
        }
        self.tasks.push(Task { test, phase, line: line.clone() });
    }

    /// Lets nothing stand but `stays`.
    fn put_away(&mut self, stays: &Standing) {
        let mut standing = self.standing.clone();
        let mut lines: Vec<(Option<usize>, Line)> = Vec::new();
        let last = self.tests.checked_sub(1);
        for line in std::mem::take(&mut self.undo) {
            let Step::Do(action) = &line.step else { continue };
            let Some(next) = standing.after(action) else { continue };
            if standing.without(&next).iter().any(|thing| stays.has(thing)) {
                continue;
            }
            standing = next;
            lines.push((last, line));
        }
        // Covers that several tests shared; and whatever was there before the first.
        for thing in standing.without(stays).iter().rev() {
            let action = thing.undo();
            let Some(next) = standing.after(&action) else { continue };
            standing = next;
            lines.push((None, Line { step: Step::Do(action), may_be_refused: false }));
        }
        // What only makes ready for something that need not be done.
        let lasts = |line: &Line| matches!(&line.step, Step::Do(action) if only_lasts(action));
        let needed = lines.iter().rposition(|(_, line)| lasts(line)).map_or(0, |last| last + 1);
        for (test, line) in &lines[..needed] {
            self.put(*test, Phase::Undo, line);
        }
    }
}

/// The tasks of a row of tests, from where `standing` stands to the end.
#[must_use]
pub fn work<'t>(car: &Arc<Car>, standing: &Standing, tests: impl IntoIterator<Item = &'t Test>) -> Vec<Task> {
    let mut row = Row::new(Arc::clone(car), standing.clone());
    row.all(&tests.into_iter().collect::<Vec<_>>());
    row.tasks
}

/// Tasks as a script for an attempt in which so many readings have been taken.
#[must_use]
pub fn script(tasks: &[Task], readings: u32) -> String {
    let (mut all, mut before, mut test) = (readings, readings, None);
    let mut script = String::new();
    for task in tasks {
        if task.test.is_some() && task.test != test {
            (test, before) = (task.test, all);
        }
        script += &task.line.text_after(before);
        script.push('\n');
        all += u32::from(task.line.reads());
    }
    script
}

/// What a test has that no reading feels.
fn brings(test: &Test) -> Vec<Lasting> {
    let nothing = Standing::as_it_came();
    let actions = test.lines().filter_map(|(_, line)| match &line.step {
        Step::Do(action) => nothing.after(action),
        Step::Note { .. } => None,
    });
    actions.flat_map(|after| after.only(unfelt).without(&nothing)).collect()
}

/// What no reading feels.
fn unfelt(thing: &Lasting) -> bool {
    matches!(thing, Lasting::Chocks | Lasting::Extraction | Lasting::CoverOff(_))
}

/// Whether the second of two actions, done at once, only takes back the first: nothing that pulling, plugging and
/// covers leave behind.
fn takes_back(first: &Action, second: &Action) -> bool {
    if let (Action::PullUnit { unit: a }, Action::PushUnit { unit: b }) = (first, second) {
        return a == b;
    }
    if let (Action::Cover { cover: a, off: was }, Action::Cover { cover: b, off }) = (first, second) {
        return a == b && was != off;
    }
    false
}

/// An instrument, its ends, and what stands when it goes there.
type FirstFit<'t> = (&'t str, &'t [(String, String)], Standing);

/// A test as it is when nothing was done before it.
struct Alone<'t> {
    /// What stands before anything happens: after the lines that do nothing but set up.
    ready: Standing,
    /// Each instrument's first place, with what stands when it goes there.
    fits: Vec<FirstFit<'t>>,
    /// It moves the car.
    drives: bool,
}

impl<'t> Alone<'t> {
    fn of(test: &'t Test) -> Self {
        let mut standing = Standing::as_it_came();
        let mut ready = None;
        let mut fits: Vec<FirstFit<'_>> = Vec::new();
        let mut drives = false;
        for (_, line) in test.lines() {
            let action = match &line.step {
                Step::Do(action) if only_lasts(action) => action,
                step => {
                    drives |= *step == Step::Do(Action::Sense(Sense::YardDrive));
                    ready.get_or_insert_with(|| standing.clone());
                    if let Step::Do(action) = step {
                        standing = standing.after(action).unwrap_or(standing);
                    }
                    continue;
                }
            };
            if let Action::Fit { instrument, ends } = action
                && !fits.iter().any(|(it, ..)| it == instrument)
            {
                fits.push((instrument, ends, standing.clone()));
            }
            standing = standing.after(action).unwrap_or(standing);
        }
        Self { ready: ready.unwrap_or(standing), fits, drives }
    }

    /// What of `standing` may stay when this test comes next.
    fn stays(&self, standing: &Standing, assembly: &Assembly) -> Standing {
        let same_engine = self.ready.engine() == standing.engine();
        let here = standing.only(|thing| match thing {
            Lasting::Chocks | Lasting::Extraction => !self.drives,
            Lasting::CoverOff(_) => true,
            Lasting::Key | Lasting::Engine(_) => same_engine && self.ready.has(thing),
            Lasting::Pedal(_)
            | Lasting::Open(_)
            | Lasting::Stop(..)
            | Lasting::Pulled(_)
            | Lasting::Pressed(_) => self.ready.has(thing),
            Lasting::Fitted(..) | Lasting::Dial(..) => false,
        });
        let fitted = |instrument: &str, ends: &[(String, String)]| {
            self.fits.iter().any(|(it, first, then)| {
                *it == instrument && same_ends(first, ends) && same_around(ends, then, &here, assembly)
            })
        };
        standing.only(|thing| match thing {
            Lasting::Fitted(it, ends) => fitted(it, ends),
            // It lies on live terminals in between: nothing but volts does no harm there.
            Lasting::Dial(it, mode) => {
                let ends = standing.fitted(it).unwrap_or_default();
                *mode == MeterMode::Volt && fitted(it, ends)
            }
            thing => here.has(thing),
        })
    }
}

fn same_ends(a: &[(String, String)], b: &[(String, String)]) -> bool {
    a.len() == b.len() && a.iter().all(|end| b.contains(end))
}

/// Whether the joints at the ends of an instrument are as open now as they are when the test itself fits it.
fn same_around(ends: &[(String, String)], then: &Standing, now: &Standing, assembly: &Assembly) -> bool {
    ends.iter().filter_map(|(_, at)| assembly.port(at)).all(|port| {
        let joints = assembly.joints.iter().filter(|j| j.a == port || j.b == port);
        joints.map(|j| Lasting::Open(j.id.clone())).all(|open| then.has(&open) == now.has(&open))
    })
}
