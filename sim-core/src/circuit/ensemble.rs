//! Many circuits, of which those of one shape are stepped side by side, a lane each.
//!
//! Circuits have one shape when they differ in numbers only: the same joints made, the same ways for air, the same
//! wires. Each lane tries steps of its own length and moves on when its own is good; a circuit that has run as far as
//! it should leaves its lane to the next one that waits. What is scalar (judging a step, what switches) is done by the
//! circuit itself ([`super::trial`]), so each gets the bits it would get alone, whoever stands beside it and in
//! whatever order they come.

use std::borrow::BorrowMut;
use std::collections::VecDeque;

use super::model::{Given, Model, N_LEDGERS, Numbers, Scratch};
use super::rosenbrock::{From, Work};
use super::switching::After;
use super::trial::{Judged, Trial};
use super::{Circuit, Pace};
use crate::lanes::{Eight, Mask, Real, Spread};
use crate::units::{TICK_S, Tick};

/// No number type has more lanes.
const MOST_LANES: usize = 8;

/// A circuit and how far it is to run.
#[derive(Debug)]
pub struct Errand<C> {
    /// The circuit.
    pub circuit: C,
    /// No step goes beyond this tick (when timed); must lie ahead.
    pub to: Tick,
    /// How the clock runs.
    pub pace: Pace,
    /// It comes back at the end of the first step that ends here or later, if not before.
    pub pause: Tick,
    /// It comes back at the end of the first step in which something switched.
    pub on_event: bool,
}

impl<C> Errand<C> {
    /// To `to`, come what may.
    pub fn to(circuit: C, to: Tick, pace: Pace) -> Self {
        Self { circuit, to, pace, pause: to, on_event: false }
    }
}

/// A circuit in its lane.
#[derive(Debug)]
struct Runner<C> {
    key: usize,
    errand: Errand<C>,
    trial: Trial,
    /// Events when it set out.
    events: usize,
}

/// Circuits that run and circuits that wait. A key, the caller's choice, tells them apart.
#[derive(Debug)]
pub struct Ensemble<C, R: Real = Eight> {
    waiting: VecDeque<(usize, Errand<C>)>,
    back: VecDeque<(usize, C)>,
    lanes: Vec<Option<Runner<C>>>,
    /// Somebody came or went since lanes were last filled.
    moved: bool,
    abreast: Option<Abreast<R>>,
}

/// Numbers and state of circuits side by side.
#[derive(Debug)]
struct Abreast<R: Real> {
    /// What they share; the numbers in it are nobody's.
    shape: Model,
    numbers: Numbers<R>,
    y: Vec<R>,
    f: Vec<R>,
    jacobian: Vec<R>,
    scratch: Scratch<R>,
    work: Work<R>,
    /// Whose numbers and state each lane holds (key, changes so far), as it stood when it came back.
    holds: Vec<Option<(usize, u64)>>,
}

impl<C: BorrowMut<Circuit>, R: Real> Default for Ensemble<C, R> {
    fn default() -> Self {
        let lanes = (0..R::LANES).map(|_| None).collect();
        Self { waiting: VecDeque::new(), back: VecDeque::new(), lanes, moved: false, abreast: None }
    }
}

impl<C: BorrowMut<Circuit>, R: Real> Ensemble<C, R> {
    /// Sends a circuit on its way. Its key must be no other's that is under way.
    pub fn send(&mut self, key: usize, errand: Errand<C>) {
        let circuit: &Circuit = errand.circuit.borrow();
        if errand.to <= circuit.tick {
            self.back.push_back((key, errand.circuit));
        } else {
            self.waiting.push_back((key, errand));
            self.moved = true;
        }
    }

    /// The next circuit that has run as far as it should; `None` when none is under way.
    pub fn next_back(&mut self) -> Option<(usize, C)> {
        while self.back.is_empty() {
            if std::mem::take(&mut self.moved) {
                self.fill();
            }
            let runs = self.lanes.iter().any(Option::is_some);
            self.abreast.as_mut().filter(|_| runs)?.round(&mut self.lanes, &mut self.back);
            self.moved |= !self.back.is_empty();
        }
        self.back.pop_front()
    }

    /// Gives free lanes to circuits that wait and have the shape of those that run.
    fn fill(&mut self) {
        if self.lanes.iter().all(Option::is_none) {
            let Some((_, first)) = self.waiting.front() else { return };
            let first: &Circuit = first.circuit.borrow();
            let fits = |a: &Abreast<R>| a.shape.has_shape_of(&first.model);
            if !self.abreast.as_ref().is_some_and(fits) {
                self.abreast = Some(Abreast::of(first));
            }
        }
        let Some(abreast) = &mut self.abreast else { return };
        // Back into the lane that still holds it, first of all.
        for lane in 0..self.lanes.len() {
            if self.lanes[lane].is_none()
                && let Some(held) = abreast.holds[lane]
                && let Some(at) = self.waiting.iter().position(|(key, errand)| {
                    let circuit: &Circuit = errand.circuit.borrow();
                    (*key, circuit.changes) == held
                })
                && let Some((key, errand)) = self.waiting.remove(at)
            {
                self.lanes[lane] = Some(abreast.set_out(key, errand, lane));
            }
        }
        for lane in 0..self.lanes.len() {
            if self.lanes[lane].is_some() {
                continue;
            }
            let fits = |(_, errand): &(usize, Errand<C>)| {
                let circuit: &Circuit = errand.circuit.borrow();
                abreast.shape.has_shape_of(&circuit.model)
            };
            let Some(at) = self.waiting.iter().position(fits) else { return };
            if let Some((key, errand)) = self.waiting.remove(at) {
                abreast.load(errand.circuit.borrow(), lane);
                self.lanes[lane] = Some(abreast.set_out(key, errand, lane));
            }
        }
    }
}

impl<R: Real> Abreast<R> {
    /// Room for circuits of the shape of `first`, with its numbers in every lane.
    fn of(first: &Circuit) -> Self {
        let n = first.model.n;
        let zero = R::all(0.0);
        let mut abreast = Self {
            numbers: Numbers::all_of(&first.model.numbers),
            y: first.y.iter().map(|y| R::all(*y)).collect(),
            f: vec![zero; n + N_LEDGERS],
            jacobian: vec![zero; first.model.plan.n_written()],
            scratch: Scratch::default(),
            work: Work::default(),
            holds: vec![None; R::LANES],
            shape: first.model.clone(),
        };
        // A lane that stands empty is worked out with the others: it must hold numbers that can be.
        for lane in 0..R::LANES {
            abreast.load(first, lane);
            abreast.hold(first, lane);
        }
        abreast
    }

    /// Takes a circuit's numbers and state into a lane.
    fn load(&mut self, circuit: &Circuit, lane: usize) {
        self.numbers.put_in(lane, &circuit.model.numbers);
        for (all, y) in self.y.iter_mut().zip(&circuit.y) {
            all.put(lane, *y);
        }
    }

    fn hold(&mut self, circuit: &Circuit, lane: usize) {
        let given = Given { inputs: &circuit.inputs, flags: &circuit.flags };
        circuit.model.hold(given, lane, &mut self.scratch);
    }

    /// Begins the first step of an errand whose circuit stands in the lane.
    fn set_out<C: BorrowMut<Circuit>>(&mut self, key: usize, errand: Errand<C>, lane: usize) -> Runner<C> {
        let circuit: &Circuit = errand.circuit.borrow();
        self.hold(circuit, lane);
        self.holds[lane] = Some((key, circuit.changes));
        let (trial, events) = (circuit.begin(errand.to, errand.pace), circuit.events.len());
        Runner { key, errand, trial, events }
    }

    /// Every lane tries its step once; circuits that have run as far as they should go to `back`.
    fn round<C: BorrowMut<Circuit>>(
        &mut self,
        lanes: &mut [Option<Runner<C>>],
        back: &mut VecDeque<(usize, C)>,
    ) {
        let Self { numbers, y, f, jacobian, scratch, work, shape: model, .. } = self;
        let h = R::from_lanes(|l| lanes[l].as_ref().map_or(TICK_S, |runner| runner.trial.h()));
        model.slopes(numbers, y, f, jacobian, h, scratch);
        let err = model.attempt(numbers, From { y, f, slopes: jacobian, h }, scratch, work);

        let mut judged = [Judged::Again; MOST_LANES];
        for (lane, runner) in lanes.iter_mut().enumerate() {
            let Some(Runner { errand, trial, .. }) = runner else { continue };
            let circuit = errand.circuit.borrow_mut();
            judged[lane] = circuit.judge(trial, err.lane(lane) / circuit.tolerance);
        }
        let mut after: [Option<After>; MOST_LANES] = [const { None }; MOST_LANES];
        if judged.contains(&Judged::Whole) {
            model.gases(numbers, &work.y_new, scratch);
            model.solve_wiring(numbers, &work.y_new, scratch);
            for (lane, runner) in lanes.iter_mut().enumerate() {
                let Some(Runner { errand, trial, .. }) = runner else { continue };
                if judged[lane] != Judged::Whole {
                    continue;
                }
                let circuit = errand.circuit.borrow_mut();
                let next = circuit.flags_after(&work.y_new, scratch, lane);
                if circuit.finds_switching(trial, &next) {
                    circuit.leave_as_is(next);
                    judged[lane] = Judged::Again;
                } else {
                    after[lane] = Some(next);
                }
            }
        }
        let taken =
            R::Mask::from_lanes(|l| matches!(judged[l], Judged::Whole | Judged::Part { taken: true }));
        for (y, new) in y.iter_mut().zip(&work.y_new) {
            *y = R::choose(taken, *new, *y);
        }
        let over = |runner: &Option<Runner<C>>, judged| {
            matches!(judged, Judged::Part { .. }) && runner.as_ref().is_some_and(|r| r.trial.is_over())
        };
        if lanes.iter().zip(judged).any(|(runner, judged)| over(runner, judged)) {
            model.gases(numbers, y, scratch);
            model.solve_wiring(numbers, y, scratch);
        }
        for lane in 0..lanes.len() {
            let is_over = over(&lanes[lane], judged[lane]);
            let Some(Runner { key, errand, trial, events }) = &mut lanes[lane] else { continue };
            let circuit: &mut Circuit = errand.circuit.borrow_mut();
            if taken.lane(lane) {
                circuit.add_to_ledgers(work.ledgers.map(|l| l.lane(lane)));
                circuit.steps += 1;
            }
            let switched = if let Some(next) = after[lane].take() {
                circuit.end_whole(*trial, err.lane(lane) / circuit.tolerance, next)
            } else if is_over {
                let next = circuit.flags_after(y, scratch, lane);
                circuit.end_parts(*trial, next)
            } else {
                continue;
            };
            let comes_back = errand.to <= circuit.tick
                || errand.pause <= circuit.tick
                || errand.on_event && *events < circuit.events.len();
            if comes_back {
                for (one, all) in circuit.y.iter_mut().zip(&*y) {
                    *one = all.lane(lane);
                }
                debug_assert_eq!(self.holds[lane], Some((*key, circuit.changes)));
                if let Some(Runner { key, errand, .. }) = lanes[lane].take() {
                    back.push_back((key, errand.circuit));
                }
                continue;
            }
            *trial = circuit.begin(errand.to, errand.pace);
            if switched {
                let given = Given { inputs: &circuit.inputs, flags: &circuit.flags };
                circuit.model.hold(given, lane, scratch);
            }
        }
    }
}
