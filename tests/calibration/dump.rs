//! Tables of predicted readings of drawn attempts, for trying ways to compute the belief outside the program.

use std::sync::Arc;

use anyhow::Context as _;
use assess::infer::draws::Draw;
use assess::infer::hypotheses::{INSIDE_LIMITS, severity};
use assess::infer::rows::{self, Car};
use assess::pack::Library;
use assess::play::course::{Course, Deed, Worth};
use dice::Dice;
use serde_json::{Value, json};
use sim_core::observe::{Observed, Predicted, Scale, ShownValue};
use sim_core::world::World;

use crate::attempt::{self, Worked};

/// The table of attempt `number`: `sound` sound cars, `draws` of each fault, `truths` from the prior.
pub(crate) fn of(
    library: &Library,
    number: u64,
    sound: usize,
    draws: usize,
    truths: usize,
) -> anyhow::Result<Value> {
    let Worked { job, attempt: done, fault, .. } = attempt::worked(library, number)?;
    let deeds: Vec<Deed> = done
        .steps
        .iter()
        .map(|step| Deed {
            action: step.action.clone(),
            start: step.start,
            end: step.end,
            refused: step.refused.is_some(),
        })
        .collect();
    let own = attempt::hidden(&job, done.header.seed).context("a car that was handed back")?;
    let course = Course::play(&job, &own, deeds);
    let car = Arc::clone(&job.car);
    let mut names: Vec<(i64, f64, i64, Vec<f64>)> = Vec::new();
    let mut worlds: Vec<World> = Vec::new();
    let mut add = |fault: Option<u16>, u: f64, draw: i64, next: &mut dyn FnMut() -> f64| {
        let faults: Vec<(u16, f64)> = fault
            .iter()
            .map(|f| {
                let def = &car.faults[usize::from(*f)];
                (*f, severity(def.severity_min, def.severity_max, u))
            })
            .collect();
        let mut theta = Vec::new();
        let world = World::draw(&car, &job.kit, &faults, &mut || {
            let u = next();
            theta.push(u);
            u
        });
        theta.truncate(car.tolerances.len());
        names.push((fault.map_or(-1, i64::from), u, draw, theta));
        worlds.push(world);
    };
    for draw in 0..sound {
        let mut d = Draw::new(draw);
        let u = d.next_u();
        add(None, u, draw as i64, &mut || d.next_u());
    }
    for fault in 0..car.faults.len() {
        for draw in 0..draws {
            let mut d = Draw::new(draw);
            let u = d.next_u();
            add(Some(fault as u16), u, draw as i64, &mut || d.next_u());
        }
    }
    let mut dice = Dice::new(u128::from(number), 0x7472_7574_6873);
    let all: f64 = car.faults.iter().map(|fault| fault.commonness).sum();
    for _ in 0..truths {
        let is_sound = dice.unit() < INSIDE_LIMITS;
        let mut at = dice.unit() * all;
        let mut index = 0;
        while index + 1 < car.faults.len() && car.faults[index].commonness <= at {
            at -= car.faults[index].commonness;
            index += 1;
        }
        let u = dice.unit();
        add((!is_sound).then_some(index as u16), u, -1, &mut || dice.unit());
    }
    worlds.push(own);
    let own_fault = fault.map_or(-1, |(f, _)| i64::from(f));
    let own_u = fault.map_or(0.0, |(f, s)| {
        let def = &car.faults[usize::from(f)];
        if 0.0 < def.severity_min * def.severity_max {
            (s / def.severity_min).ln() / (def.severity_max / def.severity_min).ln()
        } else {
            (s - def.severity_min) / (def.severity_max - def.severity_min)
        }
    });
    names.push((own_fault, own_u, -2, Vec::new()));
    let mut cars = rows::arrive(&job, &worlds);
    let mut all_cars: Vec<&mut Car> = cars.iter_mut().collect();
    rows::advance(&course, &mut all_cars, course.deeds.len());
    let counted: Vec<_> = course.notes.iter().filter(|note| note.worth == Worth::Counts).collect();
    let notes: Vec<Value> = counted
        .iter()
        .map(|note| {
            let looked = &course.looked[note.looked];
            let instrument = match &looked.reading.what {
                Observed::Instrument { instrument, .. } | Observed::Interval { instrument, .. } => {
                    job.kit.iter().position(|card| card.id == *instrument).map_or(-1, |i| i as i64)
                }
                Observed::Sense(_) => -1,
            };
            let is_time = matches!(looked.reading.what, Observed::Interval { .. });
            let scale = match &looked.scale {
                Scale::Numeric { unit, resolution, min, max, scatter, .. } => json!({"num": [resolution, min, max, scatter],
                    "ratio": is_time || *unit == "ohm", "unit": unit}),
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
        })
        .collect();
    let rows: Vec<Value> = cars
        .iter()
        .zip(&names)
        .map(|(car, (fault, u, draw, theta))| {
            let told: Vec<Value> = counted
                .iter()
                .map(|note| match car.told.get(note.looked).copied().flatten() {
                    None => Value::Null,
                    Some(told) => match told.predicted {
                        Predicted::Value(v) => json!([v, told.error]),
                        Predicted::Beyond(_) => json!("beyond"),
                        Predicted::Blank => json!("blank"),
                    },
                })
                .collect();
            json!({"f": fault, "u": u, "draw": draw, "theta": theta, "shows": car.shows, "told": told})
        })
        .collect();
    let faults: Vec<Value> = car
        .faults
        .iter()
        .map(|f| json!({"id": f.id, "unit": f.unit, "p": (1.0 - INSIDE_LIMITS - 0.02) * f.commonness / all}))
        .collect();
    Ok(
        json!({"number": number, "job": job.name(), "faults": faults, "tol": car.tolerances.iter().map(|t| &t.param).collect::<Vec<_>>(),
        "kit": job.kit.iter().map(|k| &k.id).collect::<Vec<_>>(), "notes": notes, "rows": rows}),
    )
}
