//! The course of an attempt as the marker needs it: what was done, seen, written down, decided, and when.
//!
//! Made by playing the recorded actions again in the attempt's own world, so nothing here is taken on
//! trust from a file: readings, breaches and record lines come out of the workshop once more. Only of an attempt that
//! another version of the program made, and that comes out otherwise today, they are those of its file.

mod worth;

use sim_core::Opened;
use sim_core::action::Action;
use sim_core::assembly::Stop;
use sim_core::observe::{Reading, Scale};
use sim_core::units::{TICKS_PER_SECOND, Tick};
use sim_core::workshop::{Outcome, RecordEntry};
use sim_core::world::World;

use crate::attempt::{Breached, Step};
use crate::infer::complaint::store_port;
use crate::pack::job::{AfterHandBack, Job};
use worth::worths;
pub use worth::{Note, Worth};

/// Points of the chart over time.
const TRACE_POINTS: u64 = 1500;

/// One action of a recorded attempt, with the ticks at which it began and ended.
#[derive(Clone, Debug, PartialEq)]
pub struct Deed {
    /// What was done.
    pub action: Action,
    /// Tick at which it began.
    pub start: Tick,
    /// Tick at which it ended.
    pub end: Tick,
    /// It was refused: nothing changed.
    pub refused: bool,
}

/// A reading with the scale it was shown on and the deed that took it.
#[derive(Clone, Debug, PartialEq)]
pub struct Looked {
    /// The reading.
    pub reading: Reading,
    /// Its scale.
    pub scale: Scale,
    /// Index of the deed.
    pub deed: usize,
    /// Plugs and clamps that sat on the car then: port and kind.
    pub stops: Vec<(String, Stop)>,
}

/// A finding.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// Index of the deed.
    pub deed: usize,
    /// Units named, indices into `car.units`, sorted.
    pub units: Vec<u16>,
    /// Stated certainty.
    pub certainty: f64,
}

/// A unit replaced.
#[derive(Clone, Debug, PartialEq)]
pub struct Swapped {
    /// Index of the deed.
    pub deed: usize,
    /// The unit, index into `car.units`.
    pub unit: u16,
    /// Price of the spare.
    pub price: f64,
    /// Whether the unit taken out was inside its limits.
    pub was_sound: bool,
}

/// A point of the course of the true store pressure.
#[derive(Clone, Copy, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct TracePoint {
    /// Time since the start of the attempt, s.
    pub at_s: f64,
    /// Pressure at the booster, kPa gauge.
    pub store_kpa: f64,
}

/// The course of an attempt.
#[derive(Clone, Debug, PartialEq)]
pub struct Course {
    /// What was done.
    pub deeds: Vec<Deed>,
    /// What was looked at.
    pub looked: Vec<Looked>,
    /// The notebook.
    pub notes: Vec<Note>,
    /// The findings.
    pub findings: Vec<Finding>,
    /// Units replaced.
    pub swaps: Vec<Swapped>,
    /// Breaches of safety, with the deed.
    pub breaches: Vec<(usize, Breached)>,
    /// First repair (swap, clean, re-form), if any.
    pub first_repair: Option<usize>,
    /// Last change of a joint, a stop, a unit, or an instrument in a vacuum line, if any.
    pub last_change: Option<usize>,
    /// The hand-back, if it came.
    pub handed_back: Option<usize>,
    /// Units outside limits when the car came in.
    pub faulty_at_start: Vec<u16>,
    /// Units outside limits at the end.
    pub faulty_at_end: Vec<u16>,
    /// Minutes of work.
    pub attended_min: f64,
    /// Minutes of waiting that needed nobody.
    pub unattended_min: f64,
    /// The same two at the lock: after the first finding, or before the first repair.
    pub to_lock_min: Option<(f64, f64)>,
    /// True pressure in the store along the attempt; empty where nobody asked for it.
    pub trace: Vec<TracePoint>,
}

/// What came of a deed.
struct Came<'a> {
    refused: bool,
    reading: Option<&'a Reading>,
    read_right: Option<bool>,
    record: Option<&'a RecordEntry>,
    breaches: Vec<Breached>,
}

impl<'a> Came<'a> {
    /// Out of the workshop.
    fn now(outcome: &'a Outcome) -> Self {
        Self {
            refused: outcome.refused.is_some(),
            reading: outcome.reading.as_ref(),
            read_right: outcome.read_right,
            record: outcome.record.as_ref(),
            breaches: outcome.breaches.iter().cloned().map(Breached::Typed).collect(),
        }
    }

    /// As it is recorded.
    fn then(step: &'a Step) -> Self {
        Self {
            refused: step.refused.is_some(),
            reading: step.reading.as_ref(),
            read_right: step.read_right,
            record: step.record.as_ref(),
            breaches: step.breaches.clone(),
        }
    }
}

impl Course {
    /// Plays `deeds` again in their own world.
    #[must_use]
    pub fn play(job: &Job, world: &World, deeds: Vec<Deed>) -> Self {
        let mut workshop = Opened::of(job.setup(), world.clone());
        let mut taking = Taking::new(&workshop);
        for (index, deed) in deeds.iter().enumerate() {
            if workshop.tick() < deed.start {
                workshop.run_free(deed.start);
            }
            taking.before(&workshop);
            let outcome = workshop.act(&deed.action);
            taking.after(index, &deed.action, job, &outcome, &workshop);
        }
        taking.end(&workshop, deeds)
    }

    /// Units that were replaced, cleaned or re-formed, indices into `car.units`.
    #[must_use]
    pub fn repaired_units(&self, job: &Job) -> Vec<u16> {
        let done = self.deeds.iter().filter(|deed| !deed.refused);
        let named = done.filter_map(|deed| deed.action.repairs());
        let index = |id: &str| job.car.units.iter().position(|unit| unit.id == id);
        named.filter_map(index).map(|unit| unit as u16).collect()
    }

    /// Minute of the attempt at which a deed ended.
    #[must_use]
    pub fn at_min(&self, deed: usize) -> f64 {
        let start = self.deeds.first().map_or(Tick(0), |first| first.start);
        self.deeds.get(deed).map_or(0.0, |deed| Tick(deed.end.0.saturating_sub(start.0)).s() / 60.0)
    }

    /// The first deed whose notes no longer count for the verdict: the first finding or the first repair,
    /// whichever came first; the number of deeds if neither did.
    #[must_use]
    pub fn lock(&self) -> usize {
        self.lock_in(self.deeds.len())
    }

    /// As [`Course::lock`], among so many deeds.
    fn lock_in(&self, deeds: usize) -> usize {
        let finding = self.findings.first().map(|finding| finding.deed);
        finding.into_iter().chain(self.first_repair).min().unwrap_or(deeds)
    }

    fn empty(faulty_at_start: Vec<u16>) -> Self {
        Self {
            deeds: Vec::new(),
            looked: Vec::new(),
            notes: Vec::new(),
            findings: Vec::new(),
            swaps: Vec::new(),
            breaches: Vec::new(),
            first_repair: None,
            last_change: None,
            handed_back: None,
            faulty_at_start,
            faulty_at_end: Vec::new(),
            attended_min: 0.0,
            unattended_min: 0.0,
            to_lock_min: None,
            trace: Vec::new(),
        }
    }

    fn take_in(
        &mut self,
        index: usize,
        action: &Action,
        job: &Job,
        came: &Came<'_>,
        workshop: &Opened,
        faulty_before: &[u16],
    ) {
        if let Some(reading) = came.reading {
            let scale = workshop.scale(&reading.what);
            let assembly = workshop.circuit().assembly();
            let stops =
                assembly.stops.iter().map(|(port, stop)| (assembly.port_name(*port), *stop)).collect();
            self.looked.push(Looked { reading: reading.clone(), scale, deed: index, stops });
        }
        let unit_index =
            |id: &String| job.car.units.iter().position(|unit| unit.id == *id).map(|unit| unit as u16);
        match action {
            Action::Note { reading, .. } => {
                if let Some(looked) = self.looked.iter().position(|l| l.reading.id == *reading) {
                    let right = came.read_right != Some(false);
                    let record = came.record.cloned();
                    // What it is worth hangs on what is written later.
                    let worth = if right { Worth::Counts } else { Worth::Misread };
                    self.notes.push(Note { deed: index, looked, right, stands: right, worth, record });
                }
            }
            Action::Finding { units, certainty } => {
                let mut units: Vec<u16> = units.iter().filter_map(unit_index).collect();
                units.sort_unstable();
                units.dedup();
                self.findings.push(Finding { deed: index, units, certainty: *certainty });
            }
            Action::Swap { unit, spare } => {
                if let Some(unit) = unit_index(unit) {
                    let price = job.spares.iter().find(|s| s.id == *spare).map_or(0.0, |s| s.price);
                    let was_sound = !faulty_before.contains(&unit);
                    self.swaps.push(Swapped { deed: index, unit, price, was_sound });
                }
            }
            Action::HandBack => self.handed_back = Some(index),
            Action::ReadCard
            | Action::ReadSheet
            | Action::Chocks(_)
            | Action::Extraction(_)
            | Action::Key(_)
            | Action::Engine(_)
            | Action::Pedal(_)
            | Action::PumpPedal { .. }
            | Action::Cover { .. }
            | Action::OpenJoint { .. }
            | Action::MakeJoint { .. }
            | Action::SetStop { .. }
            | Action::PullUnit { .. }
            | Action::PushUnit { .. }
            | Action::Fit { .. }
            | Action::Unfit { .. }
            | Action::SetMeter { .. }
            | Action::Press { .. }
            | Action::Stroke { .. }
            | Action::Clean { .. }
            | Action::Reform { .. }
            | Action::Read { .. }
            | Action::Sense(_)
            | Action::Time { .. }
            | Action::Wait { .. }
            | Action::WaitUntil { .. }
            | Action::Overnight
            | Action::Suspect { .. } => {}
        }
        if action.repairs().is_some() {
            self.first_repair.get_or_insert(index);
        }
    }
}

/// A course that is taken down while an attempt is done again.
#[derive(Debug)]
pub struct Taking {
    course: Course,
    faulty_before: Vec<u16>,
    changes_before: u32,
    minutes_before: (f64, f64),
}

impl Taking {
    /// Begins with the car as it came in.
    #[must_use]
    pub fn new(workshop: &Opened) -> Self {
        let faulty = workshop.units_outside_limits();
        Self {
            course: Course::empty(faulty.clone()),
            faulty_before: faulty,
            changes_before: workshop.changes(),
            minutes_before: workshop.minutes(),
        }
    }

    /// Looks at the workshop before an action.
    pub fn before(&mut self, workshop: &Opened) {
        self.faulty_before = workshop.units_outside_limits();
        self.changes_before = workshop.changes();
        self.minutes_before = workshop.minutes();
    }

    /// Takes down what came of it.
    pub fn after(&mut self, index: usize, action: &Action, job: &Job, outcome: &Outcome, workshop: &Opened) {
        self.came(index, action, job, Came::now(outcome), workshop);
    }

    /// Takes down what its file recorded; `today` is what came of it in this workshop, unless it was refused then. Where the
    /// pack tells nothing after the hand-back the file keeps quiet about its dangers too, and today's count.
    pub(crate) fn after_then(
        &mut self,
        index: usize,
        recorded: &Step,
        job: &Job,
        today: Option<&Outcome>,
        workshop: &Opened,
    ) {
        let mut came = Came::then(recorded);
        if let Some(today) =
            today.filter(|_| recorded.hands_back() && job.after_hand_back == AfterHandBack::Nothing)
        {
            came.breaches = Came::now(today).breaches;
        }
        self.came(index, &recorded.action, job, came, workshop);
    }

    fn came(&mut self, index: usize, action: &Action, job: &Job, came: Came<'_>, workshop: &Opened) {
        if !came.refused {
            self.course.take_in(index, action, job, &came, workshop, &self.faulty_before);
            if self.course.lock_in(usize::MAX) == index {
                let found = matches!(action, Action::Finding { .. });
                self.course.to_lock_min = Some(if found { workshop.minutes() } else { self.minutes_before });
            }
            if self.changes_before < workshop.changes() {
                self.course.last_change = Some(index);
            }
        }
        self.course.breaches.extend(came.breaches.into_iter().map(|breach| (index, breach)));
    }

    /// Closes with the workshop as it stands after the last of `deeds`.
    #[must_use]
    pub fn end(self, workshop: &Opened, deeds: Vec<Deed>) -> Course {
        let view = workshop.view();
        let mut course = self.course;
        let locked = course.lock_in(deeds.len());
        worths(&mut course.notes, &course.looked, locked);
        Course {
            attended_min: view.attended_min,
            unattended_min: view.unattended_min,
            faulty_at_end: workshop.units_outside_limits(),
            deeds,
            ..course
        }
    }
}

/// True pressure in the store along an attempt, every two seconds or, in a long one, [`TRACE_POINTS`] in all.
/// A run of its own: the recorder's rows cut the steps, so its bits are not those of the attempt.
pub(crate) fn trace(job: &Job, world: &World, deeds: &[Deed]) -> Vec<TracePoint> {
    let mut workshop = Opened::of(job.setup(), world.clone());
    let start = workshop.tick();
    let length = deeds.last().map_or(0, |last| last.end.0.saturating_sub(start.0));
    let every = (length / TRACE_POINTS).max(2 * TICKS_PER_SECOND);
    let column = format!("{}_kpa_abs", store_port(workshop.circuit().assembly()));
    let Some(column) = workshop.trace_columns().iter().position(|name| *name == column) else {
        return Vec::new();
    };
    let ambient = workshop.circuit().ambient().kpa();
    let mut points = Vec::new();
    workshop.record_every(every);
    for deed in deeds.iter().filter(|deed| !deed.refused) {
        if workshop.tick() < deed.start {
            workshop.run_free(deed.start);
        }
        workshop.replay(&deed.action, deed.end);
        for row in workshop.take_rows().unwrap_or_default() {
            let at_s = Tick(row.tick.0.saturating_sub(start.0)).s();
            points.push(TracePoint { at_s, store_kpa: row.values[column] - ambient });
        }
    }
    points
}
