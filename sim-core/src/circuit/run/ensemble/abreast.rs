//! Circuits of one shape side by side: their numbers and states in lanes, tried and judged together.

use std::borrow::BorrowMut;
use std::collections::VecDeque;
use std::fmt::Debug;

use super::super::super::solve::{Given, Model, N_BALANCES, Numbers, Scratch, StepFrom, Work};
use super::super::Circuit;
use super::super::switching::After;
use super::super::trial::Judged;
use super::errand::{Errand, Runner};
use super::width::{Registers, Width};
#[cfg(target_arch = "x86_64")]
use crate::lanes::{BroadEight, BroadFour, is_broad};
use crate::lanes::{Eight, Four, Mask, Real, Spread};
use crate::units::TICK_S;

/// Circuits of one shape side by side, however many lanes there are.
pub(super) trait Side<C>: Debug {
    fn width(&self) -> Width;
    /// Whose numbers and state a lane holds (key, changes so far).
    fn holds(&self, lane: usize) -> Option<(usize, u64)>;
    /// Takes a circuit's numbers and state into a lane.
    fn load(&mut self, circuit: &Circuit, lane: usize);
    /// Takes down what is told to the circuit in a lane, of that key.
    fn told(&mut self, key: usize, circuit: &Circuit, lane: usize);
    /// No lane holds anybody's any more.
    fn forget(&mut self);
    /// Gives a circuit the state in its lane.
    fn give_back(&self, circuit: &mut Circuit, lane: usize);
    /// Every lane tries its step once; circuits that have run as far as they should go to `back`.
    fn round(&mut self, lanes: &mut [Option<Runner<C>>], back: &mut VecDeque<(usize, C)>);
}

/// Numbers and state of circuits side by side.
#[derive(Debug)]
struct Abreast<R: Real> {
    width: Width,
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

/// Room for circuits of the shape of `first`.
#[cfg_attr(
    not(target_arch = "x86_64"),
    expect(unused_variables, reason = "elsewhere the plain registers are the widest that are used")
)]
pub(super) fn of_width<C: BorrowMut<Circuit> + Debug>(
    width: Width,
    registers: Registers,
    first: &Circuit,
) -> Box<dyn Side<C>> {
    #[cfg(target_arch = "x86_64")]
    if registers == Registers::Widest && is_broad() {
        match width {
            Width::One => {}
            Width::Four => return Box::new(Abreast::<BroadFour>::of(width, first)),
            Width::Eight => return Box::new(Abreast::<BroadEight>::of(width, first)),
        }
    }
    match width {
        Width::One => Box::new(Abreast::<f64>::of(width, first)),
        Width::Four => Box::new(Abreast::<Four>::of(width, first)),
        Width::Eight => Box::new(Abreast::<Eight>::of(width, first)),
    }
}

/// Begins the first step of an errand whose circuit stands in the lane.
pub(super) fn set_out<C: BorrowMut<Circuit>>(
    abreast: &mut dyn Side<C>,
    key: usize,
    errand: Errand<C>,
    lane: usize,
) -> Runner<C> {
    let circuit: &Circuit = errand.circuit.borrow();
    abreast.told(key, circuit, lane);
    let (trial, events) = (circuit.begin(errand.to, errand.pace), circuit.events.len());
    Runner { key, errand, trial, events }
}

impl<R: Real> Abreast<R> {
    /// Room for circuits of the shape of `first`, with its numbers in every lane.
    fn of(width: Width, first: &Circuit) -> Self {
        let n = first.model.n;
        let zero = R::all(0.0);
        let mut abreast = Self {
            width,
            numbers: Numbers::all_of(&first.model.numbers),
            y: first.y.iter().map(|y| R::all(*y)).collect(),
            f: vec![zero; n + N_BALANCES],
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
}

impl<C: BorrowMut<Circuit> + Debug, R: Real> Side<C> for Abreast<R> {
    fn width(&self) -> Width {
        self.width
    }

    fn holds(&self, lane: usize) -> Option<(usize, u64)> {
        self.holds[lane]
    }

    fn load(&mut self, circuit: &Circuit, lane: usize) {
        self.load(circuit, lane);
    }

    fn told(&mut self, key: usize, circuit: &Circuit, lane: usize) {
        self.hold(circuit, lane);
        self.holds[lane] = Some((key, circuit.changes));
    }

    fn forget(&mut self) {
        self.holds.fill(None);
    }

    fn give_back(&self, circuit: &mut Circuit, lane: usize) {
        for (one, all) in circuit.y.iter_mut().zip(&self.y) {
            *one = all.lane(lane);
        }
    }

    fn round(&mut self, lanes: &mut [Option<Runner<C>>], back: &mut VecDeque<(usize, C)>) {
        let Self { numbers, y, f, jacobian, scratch, work, shape: model, .. } = self;
        let h = R::from_lanes(|l| lanes[l].as_ref().map_or(TICK_S, |runner| runner.trial.h()));
        model.slopes(numbers, y, f, jacobian, h, scratch);
        let err = model.attempt(numbers, StepFrom { y, f, slopes: jacobian, h }, scratch, work);

        let mut judged = [Judged::Again; Width::MOST];
        for (lane, runner) in lanes.iter_mut().enumerate() {
            let Some(Runner { errand, trial, .. }) = runner else { continue };
            let circuit = errand.circuit.borrow_mut();
            judged[lane] = circuit.judge(trial, err.lane(lane) / circuit.tolerance);
        }
        let mut after: [Option<After>; Width::MOST] = [const { None }; Width::MOST];
        if judged.contains(&Judged::Whole) {
            model.observe(numbers, &work.y_new, scratch);
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
        R::within(
            #[inline(always)]
            || {
                for (y, new) in y.iter_mut().zip(&work.y_new) {
                    *y = R::choose(taken, *new, *y);
                }
            },
        );
        let over = |runner: &Option<Runner<C>>, judged| {
            matches!(judged, Judged::Part { .. }) && runner.as_ref().is_some_and(|r| r.trial.is_over())
        };
        if lanes.iter().zip(judged).any(|(runner, judged)| over(runner, judged)) {
            model.observe(numbers, y, scratch);
        }
        for lane in 0..lanes.len() {
            let is_over = over(&lanes[lane], judged[lane]);
            let Some(Runner { key, errand, trial, events }) = &mut lanes[lane] else { continue };
            let circuit: &mut Circuit = errand.circuit.borrow_mut();
            if taken.lane(lane) {
                circuit.add_to_balances(work.balances.map(|l| l.lane(lane)));
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
            let comes_back = circuit.fault.is_some()
                || errand.to <= circuit.tick
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
