//! What is measured when the model's speed is measured: the same cases for `pinhole bench` and for
//! `cargo bench -p assess`. No clock is read here.
//!
//! A [`Stretch`] is a circuit with what it is told at which tick. Which car it is, what is connected to it and which
//! attempt is marked is data: [`Bench`], from `assets/bench.ron`. [`marking`] counts the attempt's runs under
//! hypotheses.

pub mod marking;

use std::sync::Arc;

use sim_core::Opened;
use sim_core::air::Day;
use sim_core::car::Car;
use sim_core::circuit::ensemble::{Ensemble, Errand, Registers, Width};
use sim_core::circuit::{Circuit, Event, Inputs, Pace};
use sim_core::notice::{Refusal, Told as _};
use sim_core::units::{TICKS_PER_SECOND, Tick};
use sim_core::workshop::{Arrival, Setup};
use sim_core::world::World;

use crate::infer::hypotheses::every_first_car;
use crate::locale::sentence::{Sentence, Value};
use crate::pack::{Library, PackErrors};
use crate::sentence;
use crate::words::{self, Said, Vocabulary};

/// What is measured. Checked data, made by [`crate::pack`] from `assets/bench.ron`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Bench {
    /// The job whose car is measured: `pack/job`.
    pub job: String,
    /// What is done to the car before anything is measured, in plain words.
    pub connected: Vec<String>,
    /// The attempt at the job whose runs under hypotheses are counted, in plain words.
    pub attempt: Vec<String>,
}

/// Length of the driving case, s.
pub const DRIVING_S: u64 = 60;
/// Applications while driving: pedal down at, up at (s), force (N).
const APPLICATIONS: [(u64, u64, f64); 3] = [(35, 37, 100.0), (42, 44, 200.0), (49, 51, 60.0)];
/// Length of the hold, s: ten hours.
pub const HOLD_S: u64 = 36_000;
/// A pump that has not stopped by then never will, s.
const PATIENCE_S: u64 = 600;

/// What keeps the cases from being set up.
#[derive(Debug, thiserror::Error)]
#[error("{}", self.sentence())]
#[non_exhaustive]
pub enum SpeedError {
    /// The files behind the cases.
    Pack(#[from] PackErrors),
    /// The car has no such place or instrument.
    Line {
        /// In plain words.
        line: String,
        /// Why not.
        why: Value,
    },
    /// The car's pump does not reach its cut-out.
    NeverStops {
        /// The car.
        car: String,
    },
}

impl SpeedError {
    /// What is wrong, for every language.
    #[must_use]
    pub fn sentence(&self) -> Sentence {
        match self {
            Self::Pack(errors) => errors.in_one(),
            Self::Line { line, why } => sentence!(
                "speed-line",
                "the measured cases need a car and a kit in which this can be done: {line}: {why}",
                line = line,
                why = why
            ),
            Self::NeverStops { car } => sentence!(
                "speed-never-stops",
                "the pump of {car} has not stopped after {s} s; the measured cases need one that does",
                car = car,
                s = PATIENCE_S
            ),
        }
    }
}

/// How a stretch is stepped.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Steps {
    /// As in use: the length of a step by its error.
    Chosen,
    /// At most one tick each.
    OneTick,
    /// By a hundredth of the error allowed in use.
    Fine,
}

/// A circuit and what it is told.
#[derive(Clone, Debug)]
pub struct Stretch {
    /// As it stands at the beginning.
    start: Circuit,
    /// Ticks after the beginning, and what holds from then on.
    told: Vec<(u64, Inputs)>,
    /// Length in ticks.
    ticks: u64,
}

impl Stretch {
    /// Simulated time, s.
    #[must_use]
    pub fn seconds(&self) -> f64 {
        self.ticks as f64 / TICKS_PER_SECOND as f64
    }

    /// The circuit at the beginning.
    #[must_use]
    pub fn start(&self) -> &Circuit {
        &self.start
    }

    /// The same stretch, ended after `seconds` at the latest.
    #[must_use]
    pub fn shortened(&self, seconds: u64) -> Self {
        Self { ticks: self.ticks.min(seconds * TICKS_PER_SECOND), ..self.clone() }
    }

    /// Runs it from its beginning; gives back the circuit at its end.
    #[must_use]
    pub fn run(&self, steps: Steps) -> Circuit {
        let mut circuit = self.start.clone();
        if steps == Steps::Fine {
            circuit.set_tolerance(0.01);
        }
        let begin = circuit.tick().0;
        for (i, (at, inputs)) in self.told.iter().enumerate() {
            if self.ticks <= *at {
                break;
            }
            let until = self.told.get(i + 1).map_or(self.ticks, |(next, _)| self.ticks.min(*next));
            circuit.inputs_mut().clone_from(inputs);
            match steps {
                Steps::Chosen | Steps::Fine => circuit.run_to(Tick(begin + until), Pace::Timed),
                Steps::OneTick => {
                    while circuit.tick().0 < begin + until {
                        let next = circuit.tick().plus(1);
                        circuit.run_to(next, Pace::Timed);
                    }
                }
            }
        }
        circuit
    }
}

/// Runs stretches side by side, those of one shape in lanes, as many as they fill or `width`; the circuits at their
/// ends, in the same order.
#[must_use]
pub fn run_abreast(stretches: &[Stretch], width: Option<Width>, registers: Registers) -> Vec<Circuit> {
    let mut ensemble = Ensemble::<Box<Circuit>>::new(width, registers);
    let mut ends: Vec<Option<Box<Circuit>>> = stretches.iter().map(|_| None).collect();
    // How much of what a stretch is told has been told.
    let mut told = vec![0; stretches.len()];
    let mut send = |ensemble: &mut Ensemble<_>, which: usize, mut circuit: Box<Circuit>| {
        let stretch = &stretches[which];
        let Some((at, inputs)) = stretch.told.get(told[which]).filter(|(at, _)| *at < stretch.ticks) else {
            ends[which] = Some(circuit);
            return;
        };
        told[which] += 1;
        let until = stretch.told.get(told[which]).map_or(stretch.ticks, |(next, _)| stretch.ticks.min(*next));
        circuit.inputs_mut().clone_from(inputs);
        let to = circuit.tick().plus(until - at);
        ensemble.send(which, Errand::to(circuit, to, Pace::Timed));
    };
    for (which, stretch) in stretches.iter().enumerate() {
        send(&mut ensemble, which, Box::new(stretch.start.clone()));
    }
    while let Some((which, circuit)) = ensemble.next_back() {
        send(&mut ensemble, which, circuit);
    }
    ends.into_iter().flatten().map(|circuit| *circuit).collect()
}

/// The cases with one car.
#[derive(Clone, Debug)]
pub struct Cases {
    /// Short name of the car.
    pub car_id: String,
    /// The car in words.
    pub car: String,
    /// What has been done to it, in plain words.
    pub connected: Vec<String>,
    /// From an empty store: key on, the pump empties it; three applications; 60 s.
    pub driving: Stretch,
    /// From an empty store until a second after the pump has stopped.
    pub pull_down: Stretch,
    /// Ten hours with the key off, from a store that was emptied and had settled for a minute.
    pub hold: Stretch,
}

impl Cases {
    /// With the car as new.
    ///
    /// # Errors
    /// When the files cannot be read, or the car is not one in which the cases can be done.
    pub fn of(library: &Library) -> Result<Self, SpeedError> {
        let bench = library.bench()?;
        let car = library.job(&bench.job)?.car;
        let driving = driving(connected(library, &bench, &car, new_world(library))?);
        let mut circuit = driving.start.clone();
        circuit.inputs_mut().key_on = true;
        let patience = Tick(circuit.tick().0 + PATIENCE_S * TICKS_PER_SECOND);
        let stopped = |c: &Circuit| c.events().iter().any(|(_, e)| matches!(e, Event::PumpStopped(_)));
        let before = circuit.tick();
        while !stopped(&circuit) {
            if patience <= circuit.tick() {
                return Err(SpeedError::NeverStops { car: car.id.clone() });
            }
            circuit.step(patience, Pace::Timed);
        }
        let pull_down = Stretch {
            ticks: circuit.tick().0 - before.0 + TICKS_PER_SECOND,
            ..key_on(driving.start.clone())
        };
        let settled = circuit.tick().plus(60 * TICKS_PER_SECOND);
        circuit.run_to(settled, Pace::Timed);
        circuit.inputs_mut().key_on = false;
        let settled = circuit.tick().plus(60 * TICKS_PER_SECOND);
        circuit.run_to(settled, Pace::Timed);
        let told = vec![(0, circuit.inputs().clone())];
        let hold = Stretch { start: circuit, told, ticks: HOLD_S * TICKS_PER_SECOND };
        Ok(Self {
            car_id: car.id.clone(),
            car: car.name.clone(),
            connected: bench.connected,
            driving,
            pull_down,
            hold,
        })
    }
}

/// The driving case with `many` different cars: every hypothesis in turn, each with its own draw.
///
/// # Errors
/// As [`Cases::of`].
pub fn many_drives(library: &Library, many: usize) -> Result<Vec<Stretch>, SpeedError> {
    let bench = library.bench()?;
    let car = library.job(&bench.job)?.car;
    // A step of the golden section goes through all hypotheses and all draws alike.
    let worlds = every_first_car(&car, library.kit());
    let stride = (worlds.len() as f64 * 0.618_034) as usize | 1;
    let world = |i: usize| worlds[i * stride % worlds.len()].clone();
    (0..many).map(|i| Ok(driving(connected(library, &bench, &car, world(i))?))).collect()
}

/// Nothing wrong, everything new, instruments without error.
fn new_world(library: &Library) -> World {
    World { params: Vec::new(), instrument_errors: vec![0.0; library.kit().len()] }
}

/// The car with what is connected to it.
fn connected(library: &Library, bench: &Bench, car: &Arc<Car>, world: World) -> Result<Circuit, SpeedError> {
    let (car, kit, spares) = (Arc::clone(car), Arc::clone(library.kit()), library.spares(car)?);
    let names = Vocabulary::of(&car, &kit, &spares);
    let setup = Setup {
        car,
        kit,
        spares,
        day: Day::STANDARD,
        arrival: Arrival { driven: false, stood_min: 0, on_slope: false },
        card: Vec::new(),
    };
    let mut workshop = Opened::of(setup, world);
    for line in &bench.connected {
        let cannot = |why: Value| SpeedError::Line { line: line.clone(), why };
        let said = words::parse(line, &names, &[]).map_err(|e| cannot(e.sentence().into()))?;
        let Said::Do(action) = said else {
            return Err(cannot(sentence!("speed-no-deed", "it is not something to do").into()));
        };
        if let Some(why) = workshop.act(&action).refused {
            return Err(cannot(refused(&why)));
        }
    }
    Ok(workshop.circuit().clone())
}

/// A refusal by its kind: there is no workshop at hand in whose words it could be told.
fn refused(why: &Refusal) -> Value {
    sentence!("speed-refused", "refused ({kind})", kind = why.telling().key).into()
}

/// A stretch with the key on from its beginning, of no length yet.
fn key_on(start: Circuit) -> Stretch {
    let told = vec![(0, Inputs { key_on: true, ..start.inputs().clone() })];
    Stretch { start, told, ticks: 0 }
}

fn driving(start: Circuit) -> Stretch {
    let mut stretch = key_on(start);
    stretch.ticks = DRIVING_S * TICKS_PER_SECOND;
    let free = stretch.told[0].1.clone();
    for (down, up, pedal_n) in APPLICATIONS {
        stretch.told.push((down * TICKS_PER_SECOND, Inputs { pedal_n, ..free.clone() }));
        stretch.told.push((up * TICKS_PER_SECOND, free.clone()));
    }
    stretch
}
