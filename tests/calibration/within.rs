//! What a way to compute the belief is worth, in minutes: cars from the prior are held out as truths against tables of
//! readings that were computed before ([`crate::dump`]), and the marker follows what their trainee would have noted.
//!
//! The marker's own code does all of it; only the cars come from the table ([`Recorded`]) and not from the simulator. A truth
//! is taken with the chance that its car would have raised the job's complaint, as an attempt takes it; its instruments'
//! errors and the hand's scatter are drawn anew, always the same for the same truth, so that two ways to compute can be
//! held against each other truth by truth.

use anyhow::Context as _;
use assess::infer::complaint::MISHEARD;
use assess::infer::evidence::follow_in;
use assess::infer::guests::{Asked, Guest, Guests};
use assess::infer::hypotheses::{Class, Hypotheses, Hypothesis};
use assess::infer::reading::Noted;
use assess::infer::rows::{Car, Told};
use assess::pack::Library;
use assess::pack::job::Job;
use assess::play::course::{Course, Looked, Worth};
use dice::Dice;
use rayon::prelude::*;
use serde::Deserialize;
use sim_core::observe::Predicted;

use crate::attempt::{self, Played};
use crate::dump;
use crate::first;
use crate::transform;

/// Stream of the random numbers of what is noted.
const STREAM: u128 = 0x7769_7468_696e;
/// Cars of each fault that the first marker had: two bands.
const MOST: i64 = 2 * first::DRAWS as i64;
/// Number of the draw of a car from the prior.
const FROM_PRIOR: i64 = -1;
/// The same of the car of the attempt itself.
const OWN: i64 = -2;
/// How much farther than the nearest a car may lie from the severity asked for.
const AS_NEAR: f64 = 1e-9;

/// A line of the dump, as far as it is wanted.
#[derive(Debug, Deserialize)]
struct Dumped {
    number: u64,
    rows: Vec<Row>,
}

/// A car of it.
#[derive(Debug, Deserialize)]
struct Row {
    /// Fault; −1: sound.
    f: i64,
    /// Share of the range of severity.
    u: f64,
    /// Number of the draw; −1: from the prior; −2: the car of the attempt itself.
    draw: i64,
    shows: bool,
    told: Vec<Shown>,
}

/// What a car would show at a note.
#[derive(Debug, Deserialize)]
#[serde(untagged)]
enum Shown {
    /// A value with the instrument's error.
    Value(f64, f64),
    /// `"beyond"` or `"blank"`.
    Word(String),
    /// It could not come about.
    Nothing(()),
}

impl Shown {
    fn told(&self) -> Option<Told> {
        match self {
            Self::Value(value, error) => Some(Told { predicted: Predicted::Value(*value), error: *error }),
            Self::Word(word) if word == "blank" => Some(Told { predicted: Predicted::Blank, error: 0.0 }),
            Self::Word(_) => Some(Told { predicted: Predicted::Beyond(0.0), error: 0.0 }),
            Self::Nothing(()) => None,
        }
    }
}

/// An attempt with what all cars would have shown.
struct Table {
    number: u64,
    job: Job,
    course: Course,
    /// Index of each note that counts, into the course's.
    counted: Vec<usize>,
    rows: Vec<Row>,
}

impl Table {
    fn of(library: &Library, line: &str) -> anyhow::Result<Self> {
        let Dumped { number, rows } = serde_json::from_str(line)?;
        let worked = attempt::worked(library, number)?;
        let (_, course) = dump::course(&worked)?;
        let counts = |n: &usize| course.notes[*n].worth == Worth::Counts;
        let counted: Vec<usize> = (0..course.notes.len()).filter(counts).collect();
        let fits = rows.iter().all(|row| row.told.len() == counted.len());
        anyhow::ensure!(fits, "{number}: the table is of another attempt");
        Ok(Self { number, job: worked.job, course, counted, rows })
    }

    /// A row as a car.
    fn car(&self, row: &Row) -> Car {
        let mut told = vec![None; self.course.looked.len()];
        for (note, shown) in self.counted.iter().zip(&row.told) {
            told[self.course.notes[*note].looked] = shown.told();
        }
        Car::of_record(row.shows, told)
    }

    /// What the trainee would have noted in the car of a row; what cannot come about in it is not noted.
    fn noted_in(&self, row: &Row, dice: &mut Dice) -> Course {
        let mut course = self.course.clone();
        let shares: Vec<f64> = self.job.kit.iter().map(|_| 2.0 * dice.unit() - 1.0).collect();
        for (note, shown) in self.counted.iter().zip(&row.told) {
            let looked = &mut course.looked[self.course.notes[*note].looked];
            let noted = Noted::of(&self.job, looked);
            let share = noted.instrument.map_or(0.0, |instrument| shares[instrument]);
            let scatter = normal(dice);
            match noted.show(shown.told(), share, scatter) {
                Some(shown) => looked.reading.shown = shown,
                None => course.notes[*note].worth = Worth::Misread,
            }
        }
        course
    }
}

impl Table {
    /// What the first marker made of `course`.
    fn by_first(&self, course: &Course, dice: &mut Dice) -> Marked {
        let counts = |note: &&usize| course.notes[**note].worth == Worth::Counts;
        let places: Vec<usize> =
            (0..self.counted.len()).filter(|place| counts(&&self.counted[*place])).collect();
        let looked: Vec<&Looked> =
            places.iter().map(|place| &course.looked[course.notes[self.counted[*place]].looked]).collect();
        let rows = self.rows.iter().filter(|row| 0 <= row.draw && row.draw < MOST);
        let cars: Vec<first::Drawn> = rows
            .map(|row| first::Drawn {
                fault: u16::try_from(row.f).ok(),
                at: row.u,
                shows: row.shows,
                told: places.iter().map(|place| row.told[*place].told()).collect(),
                shares: self.job.kit.iter().map(|_| 2.0 * dice.unit() - 1.0).collect(),
            })
            .collect();
        Marked {
            trail: first::trail(&self.job, &looked, &cars),
            transform: None,
            runs: cars.len() as f64,
            cars: cars.len(),
        }
    }
}

/// A standard normal number (Box and Muller 1958).
fn normal(dice: &mut Dice) -> f64 {
    let (u, v) = (1.0 - dice.unit(), dice.unit());
    (-2.0 * u.ln()).sqrt() * (std::f64::consts::TAU * v).cos()
}

/// What one marker made of a truth.
struct Marked {
    trail: Vec<Vec<f64>>,
    transform: Option<f64>,
    cars: usize,
    runs: f64,
}

/// Cars of a table: who asks for one is given the one of the same fault that lies nearest in severity and is not out yet.
struct Recorded<'a> {
    table: &'a Table,
    out: Vec<bool>,
    /// Cars that were given out.
    given: usize,
}

impl Guests for Recorded<'_> {
    fn bring_in(&mut self, asked: &[Asked]) -> Vec<Guest> {
        let mut guests = Vec::new();
        for asked in asked {
            let rows = &self.table.rows;
            let fault = match asked.hypothesis {
                Hypothesis::Inside => -1,
                Hypothesis::Fault(fault) => i64::from(fault),
                // The tables hold cars with one fault at most.
                Hypothesis::Other | Hypothesis::Pair(..) => continue,
            };
            let mut best: Option<(usize, f64)> = None;
            for (index, row) in rows.iter().enumerate() {
                if row.f != fault || row.draw < 0 || self.out[index] {
                    continue;
                }
                let far = if fault < 0 {
                    (row.draw - asked.draw as i64).abs() as f64
                } else {
                    (row.u - asked.at).abs()
                };
                if best.is_none_or(|(_, least)| far + AS_NEAR < least) {
                    best = Some((index, far));
                }
            }
            if let Some((index, _)) = best {
                self.out[index] = true;
                self.given += 1;
                let row = &rows[index];
                guests.push(Guest { car: self.table.car(row), draw: row.draw as usize, at: row.u });
            }
        }
        guests
    }
}

/// What is marked, and how.
#[derive(Clone, Copy, Debug)]
pub(crate) struct By {
    /// The attempts themselves, with what was noted; not invented truths.
    pub(crate) as_played: bool,
    /// By the first marker ([`crate::first`]); not by today's.
    pub(crate) first: bool,
}

/// A truth as it was marked, with how many cars that took.
pub(crate) struct Held {
    /// What the marker believed.
    pub(crate) played: Played,
    /// Cars that were asked for.
    pub(crate) cars: usize,
    /// How often the whole attempt was done in a car, all parts of it added up.
    pub(crate) runs: f64,
}

/// Holds out the truths of the tables in `text`, each `times` times.
///
/// # Errors
/// The text is no table, or of attempts that are played otherwise today.
pub(crate) fn of(library: &Library, text: &str, times: u64, by: By) -> anyhow::Result<Vec<Held>> {
    let tables: Vec<anyhow::Result<Table>> =
        text.lines().collect::<Vec<_>>().par_iter().map(|line| Table::of(library, line)).collect();
    let tables: Vec<Table> = tables.into_iter().collect::<anyhow::Result<_>>()?;
    let truths: Vec<(&Table, usize, u64)> = tables
        .iter()
        .flat_map(|table| {
            let which = if by.as_played { OWN } else { FROM_PRIOR };
            let truths = (0..table.rows.len()).filter(move |row| table.rows[*row].draw == which);
            truths.flat_map(move |row| (0..times).map(move |time| (table, row, time)))
        })
        .collect();
    let held: Vec<anyhow::Result<Option<Held>>> =
        truths.par_iter().with_max_len(1).map(|(table, row, time)| one(table, *row, *time, by)).collect();
    held.into_iter().filter_map(Result::transpose).collect()
}

/// Marks what would have been noted in one car; `None` when nobody would have complained about it.
fn one(table: &Table, index: usize, time: u64, by: By) -> anyhow::Result<Option<Held>> {
    let row = &table.rows[index];
    let name = (u128::from(table.number) << 64) | ((index as u128) << 16) | u128::from(time);
    let mut dice = Dice::new(name, STREAM);
    let raised = (1.0 - MISHEARD) * f64::from(u8::from(row.shows)) + MISHEARD * 0.5;
    if !by.as_played && raised <= dice.unit() {
        return Ok(None);
    }
    let course = if by.as_played { table.course.clone() } else { table.noted_in(row, &mut dice) };
    let hypotheses = Hypotheses::of(&table.job.car);
    let marked = if by.first {
        table.by_first(&course, &mut dice)
    } else {
        let mut cars = Recorded { table, out: vec![false; table.rows.len()], given: 0 };
        let followed = follow_in(&table.job, &hypotheses, &course, course.deeds.len(), |_| false, &mut cars);
        let beliefs = std::iter::once(&followed.start).chain(followed.links.iter().map(|link| &link.belief));
        let below = |fault| transform::below(&followed.hypotheses, followed.end(), fault, row.u);
        Marked {
            trail: beliefs.map(|belief| belief.classes()).collect(),
            transform: u16::try_from(row.f).ok().and_then(below),
            cars: cars.given,
            runs: followed.deeds as f64 / course.deeds.len() as f64,
        }
    };
    let fault = usize::try_from(row.f).ok().map(|fault| &table.job.car.faults[fault]);
    let class = fault.map_or(Class::Inside, |fault| Class::Unit(fault.unit));
    let played = Played {
        number: if by.as_played { table.number } else { table.number * 10_000 + index as u64 },
        job: table.job.name(),
        truth: fault.map(|fault| fault.id.clone()),
        severity: row.u,
        technician: String::new(),
        tests: Vec::new(),
        true_class: hypotheses.classes.iter().position(|c| *c == class).context("a class of the car")?,
        trail: marked.trail,
        transform: marked.transform,
    };
    Ok(Some(Held { played, cars: marked.cars, runs: marked.runs }))
}
