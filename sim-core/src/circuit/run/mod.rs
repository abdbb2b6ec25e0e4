//! Run: one circuit, or many side by side, stepped by the clock.
//!
//! A step advances all of it at once with an L-stable Rosenbrock method on analytic slopes
//! ([`super::solve`]). Valves, lifts and leaks are continuous laws; what truly switches (vacuum switch,
//! relay, fuse, meter fuse) changes at the end of the first tick past its threshold. The length of a step
//! is chosen from the state alone ([`control`]), so a live run and its replay take the same steps.

mod control;
pub mod ensemble;
mod event;
pub mod export;
mod query;
mod shelf;
mod size;
#[cfg(test)]
pub(crate) mod slopes;
mod switching;
mod trial;

pub use event::{Event, Fault};
pub use size::Size;

use super::compile::{self, Net, StateVar};
use super::solve::{Flags, Given, Hand, Inputs, Model, N_BALANCES, Scratch, StepFrom, Work};
use crate::air::Day;
use crate::assembly::Assembly;
use crate::parts::elements::{Chamber, EngineState};
use crate::units::Tick;
use switching::After;
use trial::Judged;

/// How the clock runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pace {
    /// Free: a step is at most 8 ticks, because an action may come at any moment; the last step may end
    /// up to 7 ticks after the tick asked for.
    Free,
    /// A stated stretch of time: steps may be minutes long and the last one ends exactly on the tick.
    Timed,
}

/// What has crossed the border of the volumes since the circuit was made.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Balances {
    /// Air given to the outside, kg.
    pub mass_out_kg: f64,
    /// Enthalpy given to the outside with it, J.
    pub enthalpy_out_j: f64,
    /// Heat taken from walls, J.
    pub heat_in_j: f64,
    /// Work done on pistons, J.
    pub work_out_j: f64,
}

/// A compiled circuit with its state.
#[derive(Clone, Debug)]
pub struct Circuit {
    assembly: Assembly,
    day: Day,
    inputs: Inputs,
    tick: Tick,
    events: Vec<(Tick, Event)>,
    /// Where a step could not be taken; no time is computed from there on.
    fault: Option<Fault>,
    /// Smallest steps tried of late, see [`trial`].
    strain: u32,
    most_strain: u32,
    net: Net,
    model: Model,
    y: Vec<f64>,
    flags: Vec<Flags>,
    /// Room for the flags after a step.
    next_flags: Vec<Flags>,
    /// Exponent of the next step, see [`control`].
    e: i8,
    /// Scale on the error a step may make; 1 in use, less in convergence tests.
    tolerance: f64,
    balances: Balances,
    steps: u64,
    /// How often the structure, a number or a part was changed.
    changes: u64,
    f: Vec<f64>,
    jacobian: Vec<f64>,
    /// The slopes once more, for a step to use up.
    spent: Vec<f64>,
    scratch: Scratch,
    work: Work,
}

impl Circuit {
    /// Compiles `assembly` with all air at the day's pressure and all parts at ambient temperature. What cannot be made
    /// into equations (more than can be computed, a part that speaks of what it has not) has a [`Circuit::fault`] from
    /// the first tick on.
    #[must_use]
    pub fn new(assembly: Assembly, day: Day) -> Self {
        let hands = vec![Hand::default(); assembly.parts.len()];
        let (net, model, unsound) = match compile::compile(&assembly, &day) {
            Ok((net, model)) => (net, model, None),
            Err(why) => {
                let (net, model) = compile::bare(&assembly, &day);
                (net, model, Some(why))
            }
        };
        let flags = (0..assembly.parts.len()).map(|part| shelf::flags(&net, part)).collect();
        let inputs = Inputs {
            engine: EngineState::Stopped,
            key_on: false,
            pedal_n: 0.0,
            surroundings_c: day.ambient_c,
            hands,
        };
        let mut circuit = Self {
            y: Vec::new(),
            assembly,
            day,
            inputs,
            tick: Tick(0),
            events: Vec::new(),
            fault: None,
            strain: 0,
            most_strain: 0,
            net,
            model,
            flags,
            next_flags: Vec::new(),
            e: 0,
            tolerance: 1.0,
            balances: Balances::default(),
            steps: 0,
            changes: 0,
            f: Vec::new(),
            jacobian: Vec::new(),
            spent: Vec::new(),
            scratch: Scratch::default(),
            work: Work::default(),
        };
        circuit.y = (0..circuit.model.n).map(|i| circuit.initial(i, day.ambient_k())).collect();
        circuit.lay_out();
        if let Some(why) = unsound {
            circuit.cannot_go_on(why.part());
        }
        circuit
    }

    /// Changes joints, stops or numbers and compiles again; every part keeps its air, heat and charge.
    /// Parts must stay the same in number and kind. What cannot be made into equations then is a [`Circuit::fault`].
    pub fn change(&mut self, change: impl FnOnce(&mut Assembly)) {
        let before = self.air_mass_kg();
        let energy_before = self.air_energy_j();
        let old: Vec<((StateVar, Option<Chamber>), f64)> =
            (0..self.model.n).map(|i| (self.net.layout.identity(i), self.y[i])).collect();
        let t_room = self.y[0];
        change(&mut self.assembly);
        self.changes += 1;
        match compile::compile(&self.assembly, &self.day) {
            Ok((net, model)) => (self.net, self.model) = (net, model),
            // What was computed stays as it was, and nothing is from here on.
            Err(why) => return self.cannot_go_on(why.part()),
        }
        self.y = (0..self.model.n)
            .map(|i| {
                let id = self.net.layout.identity(i);
                old.iter().find(|(k, _)| *k == id).map_or_else(|| self.initial(i, t_room), |(_, v)| *v)
            })
            .collect();
        self.lay_out();
        // Air that came or went with an instrument from the board.
        self.balances.mass_out_kg += before - self.air_mass_kg();
        self.balances.enthalpy_out_j += energy_before - self.air_energy_j();
    }

    /// Sets a part's own state (air, temperatures, charge, melted fuse) back to that of a part from the
    /// shelf: another one was put in.
    pub fn renew_part(&mut self, part: u16) {
        let (mass, energy) = (self.air_mass_kg(), self.air_energy_j());
        let t_room = self.y[0];
        self.changes += 1;
        for i in 0..self.model.n {
            if self.net.layout.owner(i) == Some(part) {
                self.y[i] = self.initial(i, t_room);
            }
        }
        self.flags[part as usize] = shelf::flags(&self.net, usize::from(part));
        self.balances.mass_out_kg += mass - self.air_mass_kg();
        self.balances.enthalpy_out_j += energy - self.air_energy_j();
    }

    /// Wipes the codes a controller has stored.
    pub fn clear_codes(&mut self, part: u16) {
        self.flags[part as usize].codes = 0;
    }

    /// Steps until `to` is reached.
    pub fn run_to(&mut self, to: Tick, pace: Pace) {
        while self.tick < to {
            self.step(to, pace);
        }
    }

    /// One step (at least one tick of time passes), never beyond `limit` when timed; `limit` must lie
    /// ahead.
    pub fn step(&mut self, limit: Tick, pace: Pace) {
        if self.fault.is_some() {
            self.stand_still(limit);
            return;
        }
        let mut trial = self.begin(limit, pace);
        self.slopes(trial.h());
        loop {
            let err = self.attempt(trial.h());
            match self.judge(&mut trial, err) {
                Judged::Again => {}
                Judged::Whole => {
                    let Self { model, work, scratch, .. } = self;
                    model.observe(&model.numbers, &work.y_new, scratch);
                    let next = self.flags_at(true);
                    if self.finds_switching(&mut trial, &next) {
                        self.leave_as_is(next);
                        continue;
                    }
                    self.accept();
                    self.end_whole(trial, err, next);
                    return;
                }
                Judged::Part { taken } => {
                    if taken {
                        self.accept();
                    }
                    if trial.is_over() {
                        let Self { model, y, scratch, .. } = self;
                        model.observe(&model.numbers, y, scratch);
                        let next = self.flags_at(false);
                        self.end_parts(trial, next);
                        return;
                    }
                    self.slopes(trial.h());
                }
            }
        }
    }

    /// Where the model could not go on, if so: the state is that of this tick, whatever the clock says, and is not to
    /// be shown as a result.
    #[must_use]
    pub fn fault(&self) -> Option<Fault> {
        self.fault
    }

    /// The clock goes on, nothing else does: after a fault.
    fn stand_still(&mut self, limit: Tick) {
        self.tick = self.tick.max(limit);
    }

    /// Everything that switched since the circuit was made, in order.
    #[must_use]
    pub fn events(&self) -> &[(Tick, Event)] {
        &self.events
    }

    /// Steps taken so far (for benchmarks).
    #[must_use]
    pub fn steps(&self) -> u64 {
        self.steps
    }

    /// Scales the error a step may make (1 in use); smaller values give converged reference runs.
    pub fn set_tolerance(&mut self, tolerance: f64) {
        self.tolerance = tolerance;
    }

    /// What has crossed the border of the volumes.
    #[must_use]
    pub fn balances(&self) -> Balances {
        self.balances
    }

    /// Discrete states that follow from the present state, or from the one just tried.
    fn flags_at(&mut self, tried: bool) -> After {
        let scratch = std::mem::take(&mut self.scratch);
        let y = std::mem::take(if tried { &mut self.work.y_new } else { &mut self.y });
        let next = self.flags_after(&y, &scratch, 0);
        *if tried { &mut self.work.y_new } else { &mut self.y } = y;
        self.scratch = scratch;
        next
    }

    /// f and its slopes at the present state, for steps of `h` s and shorter ones.
    fn slopes(&mut self, h: f64) {
        let Self { model, inputs, flags, y, f, jacobian, scratch, .. } = self;
        model.hold(Given { inputs, flags }, 0, scratch);
        model.slopes(&model.numbers, y, f, jacobian, h, scratch);
    }

    /// Tries a step of `h` s into `work`; returns its error (1 = just allowed, ∞ = impossible).
    fn attempt(&mut self, h: f64) -> f64 {
        let Self { model, y, f, jacobian, spent, scratch, work, .. } = self;
        // The slopes are needed again if this step turns out too long.
        spent.clone_from(jacobian);
        let from = StepFrom { y, f, slopes: spent, h };
        model.attempt(&model.numbers, from, scratch, work) / self.tolerance
    }

    fn accept(&mut self) {
        std::mem::swap(&mut self.y, &mut self.work.y_new);
        self.add_to_balances(self.work.balances);
        self.steps += 1;
    }

    fn add_to_balances(&mut self, l: [f64; N_BALANCES]) {
        self.balances.mass_out_kg += l[0];
        self.balances.enthalpy_out_j += l[1];
        self.balances.heat_in_j += l[2];
        self.balances.work_out_j += l[3];
    }

    /// Buffers for the present model.
    fn lay_out(&mut self) {
        let n = self.model.n;
        self.f = vec![0.0; n + N_BALANCES];
        self.jacobian = vec![0.0; self.model.plan.n_written()];
        // What was solved before was another network.
        self.scratch = Scratch::default();
    }
}
