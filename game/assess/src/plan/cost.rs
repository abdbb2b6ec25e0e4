//! What tests cost: they are done in a sound car, and the workshop's clock is read.

use std::ops::Sub;
use std::sync::Arc;

use sim_core::Opened;
use sim_core::action::Action;
use sim_core::notice::{Hazard, Refusal};
use sim_core::observe::{Predicted, Reading};
use sim_core::units::Tick;
use sim_core::workshop::{Setup, Workshop};
use sim_core::world::World;

use super::standing::Standing;
use super::test::{Step, Test};
use super::work::{Row, Task};

/// Minutes of work.
#[derive(Clone, Copy, Debug, Default, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct Minutes {
    /// Somebody is busy.
    pub attended: f64,
    /// Nobody is needed.
    pub unattended: f64,
}

impl Minutes {
    /// What a minute is worth that needs nobody.
    pub const UNATTENDED_WORTH: f64 = 0.05;

    /// Minutes as economy counts them.
    #[must_use]
    pub fn weighed(self) -> f64 {
        self.attended + Self::UNATTENDED_WORTH * self.unattended
    }

    fn of(workshop: &Workshop) -> Self {
        let view = workshop.view();
        Self { attended: view.attended_min, unattended: view.unattended_min }
    }
}

impl Sub for Minutes {
    type Output = Self;

    fn sub(self, other: Self) -> Self {
        Self { attended: self.attended - other.attended, unattended: self.unattended - other.unattended }
    }
}

/// A reading that was noted.
#[derive(Clone, Debug, PartialEq)]
pub struct Noted {
    /// Which test of the row noted it.
    pub test: Option<usize>,
    /// The reading.
    pub reading: Reading,
    /// What the model said, before the instrument's error and its scale.
    pub predicted: Option<Predicted>,
    /// Whether it fills the line of the record that it was noted for; `None` when it was noted for none.
    pub record_filled: Option<bool>,
}

/// What was done.
#[derive(Clone, Debug, PartialEq)]
pub struct Done {
    /// What.
    pub action: Action,
    /// Tick at which it began.
    pub start: Tick,
    /// Tick at which it ended.
    pub end: Tick,
    /// It was refused: nothing changed.
    pub refused: bool,
}

/// A reading, with what the model said.
type Taken = (Reading, Option<Predicted>);

/// A row of tests, done in a car whose hidden numbers may be known.
#[derive(Clone, Debug)]
pub struct Rehearsal {
    row: Row,
    car: Opened,
    began: Minutes,
    done: usize,
    /// Readings of the test at hand, and which that is; `None` for one that was refused.
    read: (Option<usize>, Vec<Option<Taken>>),
    /// What was done, in order, with the ticks at which it began and ended.
    pub deeds: Vec<Done>,
    /// What was noted, in order.
    pub noted: Vec<Noted>,
    /// What was refused: index into the tasks, and why.
    pub refused: Vec<(usize, Refusal)>,
    /// What was dangerous: index into the tasks, and what.
    pub breaches: Vec<(usize, Hazard)>,
}

impl Rehearsal {
    /// In the car that stands there, as it stands; where the floor falls away it is chocked before anything else, and stays
    /// so.
    #[must_use]
    pub fn of(mut car: Opened) -> Self {
        let began = Minutes::of(&car);
        let mut deeds = Vec::new();
        if car.setup().arrival.on_slope && !car.view().chocked {
            let (action, start) = (Action::Chocks(true), car.tick());
            let refused = car.act(&action).refused.is_some();
            deeds.push(Done { action, start, end: car.tick(), refused });
        }
        let row = Row::new(Arc::clone(&car.setup().car), Standing::of(&car.view()));
        let (noted, refused, breaches) = (Vec::new(), Vec::new(), Vec::new());
        Self { row, car, began, done: 0, read: (None, Vec::new()), deeds, noted, refused, breaches }
    }

    /// In a sound car as it came in: the middle of every tolerance, instruments without an error.
    #[must_use]
    pub fn sound(setup: Setup) -> Self {
        let world = World::draw(&setup.car, &setup.kit, &[], &mut || 0.5);
        Self::of(Opened::of(setup, world))
    }

    /// In a sound car after what was done at another one: the recorded actions, each with the tick at which it ended.
    #[must_use]
    pub fn after<'a>(setup: Setup, deeds: impl IntoIterator<Item = (&'a Action, Tick)>) -> Self {
        let mut sound = Self::sound(setup);
        for (action, end) in deeds {
            sound.car.replay(action, end);
        }
        Self::of(sound.car)
    }

    /// The row, with its tasks so far.
    #[must_use]
    pub fn row(&self) -> &Row {
        &self.row
    }

    /// The car as it stands.
    #[must_use]
    pub fn car(&self) -> &Opened {
        &self.car
    }

    /// Minutes so far. What the last test has set up still stands until [`Rehearsal::end`].
    #[must_use]
    pub fn minutes(&self) -> Minutes {
        Minutes::of(&self.car) - self.began
    }

    /// Waits, s, before anything else is done.
    pub fn wait(&mut self, s: u32) {
        let (action, start) = (Action::Wait { s }, self.car.tick());
        let refused = self.car.act(&action).refused.is_some();
        self.deeds.push(Done { action, start, end: self.car.tick(), refused });
    }

    /// Does a test after the others.
    pub fn then(&mut self, test: &Test) {
        self.row.then(test);
        self.catch_up();
    }

    /// Does all these tests, one after the other, and puts away what still stands: what none of them has any more is put
    /// away as soon as that is so.
    pub fn all(&mut self, tests: &[&Test]) {
        self.row.all(tests);
        self.catch_up();
    }

    /// Puts away what still stands.
    pub fn end(&mut self) {
        self.row.end();
        self.catch_up();
    }

    fn catch_up(&mut self) {
        while let Some(task) = self.row.tasks().get(self.done).cloned() {
            self.task(&task);
            self.done += 1;
        }
    }

    fn task(&mut self, task: &Task) {
        if task.test.is_some() && task.test != self.read.0 {
            self.read = (task.test, Vec::new());
        }
        let (action, of) = match &task.line.step {
            Step::Do(action) => (action.clone(), None),
            Step::Note { reading, record } => {
                let taken = self.read.1.get(*reading as usize - 1).cloned().flatten();
                // What was refused is not noted.
                let Some((reading, predicted)) = taken else { return };
                (note(&self.car, &reading, record.as_ref()), Some((reading, predicted)))
            }
        };
        let start = self.car.tick();
        let outcome = self.car.act(&action);
        let refused = outcome.refused.is_some();
        self.deeds.push(Done { action, start, end: self.car.tick(), refused });
        if task.line.reads() {
            self.read.1.push(outcome.reading.map(|reading| (reading, self.car.predicted())));
        }
        if let (Some((reading, predicted)), None) = (of, &outcome.refused) {
            let record_filled = outcome.record.map(|entry| entry.condition_met);
            self.noted.push(Noted { test: task.test, reading, predicted, record_filled });
        }
        self.breaches.extend(outcome.breaches.into_iter().map(|hazard| (self.done, hazard)));
        self.refused.extend(outcome.refused.map(|why| (self.done, why)));
    }
}

/// Notes a reading as it was shown.
fn note(workshop: &Workshop, reading: &Reading, record: Option<&String>) -> Action {
    Action::Note {
        reading: reading.id,
        written: workshop.scale(&reading.what).written(reading.shown),
        record: record.cloned(),
    }
}

/// What one test costs by itself in a sound car as it came in, undone at the end.
#[must_use]
pub fn alone(setup: &Setup, test: &Test) -> Minutes {
    let mut rehearsal = Rehearsal::sound(setup.clone());
    rehearsal.then(test);
    rehearsal.end();
    rehearsal.minutes()
}
