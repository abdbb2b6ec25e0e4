//! Tables of predicted readings of drawn attempts, for trying ways to compute the belief outside the program.

use anyhow::Context as _;
use assess::attempt::Step;
use assess::infer::draws::Draw;
use assess::infer::hypotheses::{INSIDE_LIMITS, OTHER, severity};
use assess::infer::rows::{self, Car};
use assess::pack::Library;
use assess::pack::job::Job;
use assess::play::course::{Course, Deed, Looked, Note, Worth};
use dice::Dice;
use serde_json::{Value, json};
use sim_core::car::FaultDef;
use sim_core::observe::{Observed, Predicted, Scale, ShownValue};
use sim_core::world::World;

use crate::attempt::{self, Worked};

/// Stream of the random numbers of the cars from the prior.
const TRUTHS: u128 = 0x7472_7574_6873;

/// How many cars a table holds.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Many {
    /// Sound cars.
    pub(crate) sound: usize,
    /// Cars of each fault.
    pub(crate) of_fault: usize,
    /// Cars from the prior.
    pub(crate) truths: usize,
}

/// A car of a table.
struct Drawn {
    /// Index of its fault; −1: sound.
    fault: i64,
    /// Where in its range the severity lies, 0 to 1.
    share: f64,
    /// Number of the draw; −1: from the prior; −2: the car of the attempt itself.
    draw: i64,
    /// Where in their ranges the tolerances lie, 0 to 1.
    tolerances: Vec<f64>,
    world: World,
}

/// The table of attempt `number`.
///
/// # Errors
/// A job cannot be read, or the attempt cannot be played.
pub(crate) fn of(library: &Library, number: u64, many: Many) -> anyhow::Result<Value> {
    let worked = attempt::worked(library, number)?;
    let (own, course) = course(&worked)?;
    let Worked { job, fault, .. } = worked;
    let mut drawn = drawn(&job, number, many);
    drawn.push(Drawn {
        fault: fault.map_or(-1, |(f, _)| i64::from(f)),
        share: fault.map_or(0.0, |(f, s)| share(&job.car.faults[usize::from(f)], s)),
        draw: -2,
        tolerances: Vec::new(),
        world: own,
    });
    let worlds: Vec<World> = drawn.iter().map(|d| d.world.clone()).collect();
    let mut cars = rows::arrive(&job, &worlds);
    let mut all_cars: Vec<&mut Car> = cars.iter_mut().collect();
    rows::advance(&course, &mut all_cars, course.deeds.len());
    let counted: Vec<&Note> = course.notes.iter().filter(|note| note.worth == Worth::Counts).collect();
    let notes: Vec<Value> =
        counted.iter().map(|note| noted(&job, note, &course.looked[note.looked])).collect();
    let rows: Vec<Value> = cars
        .iter()
        .zip(&drawn)
        .map(|(car, d)| {
            let told: Vec<Value> = counted.iter().map(|note| told(car, note.looked)).collect();
            json!({"f": d.fault, "u": d.share, "draw": d.draw, "tolerances": d.tolerances, "shows": car.shows, "told": told})
        })
        .collect();
    let all: f64 = job.car.faults.iter().map(|fault| fault.commonness).sum();
    let prior = |f: &FaultDef| (1.0 - INSIDE_LIMITS - OTHER) * f.commonness / all;
    let faults: Vec<Value> =
        job.car.faults.iter().map(|f| json!({"id": f.id, "unit": f.unit, "p": prior(f)})).collect();
    let tolerances: Vec<&str> = job.car.tolerances.iter().map(|t| t.param.as_str()).collect();
    let kit: Vec<&str> = job.kit.iter().map(|k| k.id.as_str()).collect();
    Ok(
        json!({"number": number, "job": job.name(), "faults": faults, "tolerances": tolerances, "kit": kit, "notes": notes,
        "rows": rows}),
    )
}

/// The numbers of the attempt's own car, and the course that the attempt took in it.
///
/// # Errors
/// The car was not handed back.
pub(crate) fn course(worked: &Worked) -> anyhow::Result<(World, Course)> {
    let deed = |step: &Step| Deed {
        action: step.action.clone(),
        start: step.start,
        end: step.end,
        refused: step.refused.is_some(),
    };
    let Worked { job, attempt, .. } = worked;
    let own = attempt::hidden(job, attempt.header.seed).context("a car that was handed back")?;
    let course = Course::play(job, &own, attempt.steps.iter().map(deed).collect());
    Ok((own, course))
}

/// The cars of a table: the marker's own draws, then some from the prior.
fn drawn(job: &Job, number: u64, many: Many) -> Vec<Drawn> {
    let faults = std::iter::once(None).chain((0..job.car.faults.len()).map(|fault| Some(fault as u16)));
    let mut all: Vec<Drawn> = faults
        .flat_map(|fault| {
            let cars = if fault.is_none() { many.sound } else { many.of_fault };
            (0..cars).map(move |draw| {
                let mut next = Draw::new(draw);
                let share = next.next_u();
                one(job, fault, share, draw as i64, &mut || next.next_u())
            })
        })
        .collect();
    let mut dice = Dice::new(u128::from(number), TRUTHS);
    all.extend((0..many.truths).map(|_| {
        let fault = attempt::fault(&job.car, &mut dice);
        let share = dice.unit();
        one(job, fault, share, -1, &mut || dice.unit())
    }));
    all
}

fn one(job: &Job, fault: Option<u16>, share: f64, draw: i64, next: &mut dyn FnMut() -> f64) -> Drawn {
    let of = |f: u16| {
        let def = &job.car.faults[usize::from(f)];
        (f, severity(def.severity_min, def.severity_max, share))
    };
    let faults: Vec<(u16, f64)> = fault.map(of).into_iter().collect();
    let mut tolerances = Vec::new();
    let world = World::draw(&job.car, &job.kit, &faults, &mut || {
        let u = next();
        tolerances.push(u);
        u
    });
    tolerances.truncate(job.car.tolerances.len());
    Drawn { fault: fault.map_or(-1, i64::from), share, draw, tolerances, world }
}

/// Where in its range a severity lies.
fn share(def: &FaultDef, severity: f64) -> f64 {
    let (min, max) = (def.severity_min, def.severity_max);
    if 0.0 < min * max { (severity / min).ln() / (max / min).ln() } else { (severity - min) / (max - min) }
}

/// What was looked at and shown.
fn noted(job: &Job, note: &Note, looked: &Looked) -> Value {
    let instrument = match &looked.reading.what {
        Observed::Instrument { instrument, .. } | Observed::Interval { instrument, .. } => {
            job.kit.iter().position(|card| card.id == *instrument).map_or(-1, |i| i as i64)
        }
        Observed::Sense(_) => -1,
    };
    let is_time = matches!(looked.reading.what, Observed::Interval { .. });
    let scale = match &looked.scale {
        Scale::Numeric { unit, resolution, min, max, scatter, .. } => {
            json!({"num": [resolution, min, max, scatter], "ratio": is_time || *unit == "ohm", "unit": unit})
        }
        Scale::Ordinal { thresholds, scatter, .. } => json!({"ord": thresholds, "scatter": scatter}),
    };
    let shown = match looked.reading.shown {
        ShownValue::Steps(n) => json!(n),
        ShownValue::Level(l) => json!(l),
        ShownValue::Off(false) => json!("low"),
        ShownValue::Off(true) => json!("high"),
        ShownValue::Blank => json!("blank"),
    };
    json!({"what": format!("{:?}", looked.reading.what), "epoch": looked.reading.epoch, "instrument": instrument,
        "scale": scale, "shown": shown, "deed": note.deed})
}

/// What a car would have shown.
fn told(car: &Car, looked: usize) -> Value {
    match car.told.get(looked).copied().flatten() {
        None => Value::Null,
        Some(told) => match told.predicted {
            Predicted::Value(v) => json!([v, told.error]),
            Predicted::Beyond(_) => json!("beyond"),
            Predicted::Blank => json!("blank"),
        },
    }
}
