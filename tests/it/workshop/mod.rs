//! The workshop from outside: the real car, the real tool board, actions in, readings out.

mod costs;
mod hazards;
mod opened;
mod random;
mod reach;
mod record;
mod references;
mod refusals;
mod replay;
mod shown;

use std::path::Path;
use std::sync::{Arc, LazyLock};

use assess::pack::Library;
use sim_core::Opened;
use sim_core::action::{Action, Written};
use sim_core::observe::{Observed, Predicted, ShownValue};
use sim_core::parts::engine::EngineState;
use sim_core::workshop::{Outcome, Setup};
use sim_core::world::World;

static LIBRARY: LazyLock<Library> = LazyLock::new(|| {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    Library::open(&root).expect("the shipped files are sound")
});

/// A car in the workshop: car, kit, day and arrival of a shipped job, faults as the test asks.
struct Bench {
    ws: Opened,
    log: Vec<(Action, Outcome)>,
}

/// The setup of a shipped job with other faults; tolerances and instrument errors in the middle.
fn setup(job: &str, faults: &[(&str, f64)]) -> (Setup, World) {
    let job = LIBRARY.job(job).expect("a shipped job");
    let faults: Vec<(u16, f64)> = faults
        .iter()
        .map(|(id, severity)| {
            let i = job.car.faults.iter().position(|f| f.id == *id).expect("a fault of the catalogue");
            (i as u16, *severity)
        })
        .collect();
    let world = World::draw(&job.car, &job.kit, &faults, &mut || 0.5);
    (job.setup(), world)
}

fn bring_in((setup, world): (Setup, World)) -> Opened {
    Opened::of(setup, world)
}

impl Bench {
    fn new(job: &str, faults: &[(&str, f64)]) -> Self {
        Self { ws: bring_in(setup(job, faults)), log: Vec::new() }
    }

    /// Does something that must not be refused.
    fn act(&mut self, action: Action) -> Outcome {
        let out = self.ws.act(&action);
        if let Some(refusal) = &out.refused {
            panic!("{action:?} refused: {refusal:?}");
        }
        self.log.push((action, out.clone()));
        out
    }
}

fn sense(s: sim_core::action::Sense) -> Action {
    Action::Sense(s)
}

fn fit(instrument: &str, ends: &[(&str, &str)]) -> Action {
    Action::Fit {
        instrument: instrument.into(),
        ends: ends.iter().map(|(e, a)| ((*e).into(), (*a).into())).collect(),
    }
}

fn read(instrument: &str) -> Action {
    Action::Read { instrument: instrument.into() }
}

fn open(joint: &str) -> Action {
    Action::OpenJoint { joint: joint.into() }
}

fn make(joint: &str) -> Action {
    Action::MakeJoint { joint: joint.into() }
}

fn cover(cover: &str, off: bool) -> Action {
    Action::Cover { cover: cover.into(), off }
}
