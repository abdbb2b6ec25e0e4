//! Many circuits, of which those of one shape are stepped side by side, a lane each.
//!
//! Circuits have one shape when they differ in numbers only: the same joints made, the same flow paths, the same
//! wires. Each lane tries steps of its own length and moves on when its own is good; a circuit that has run as far as
//! it should leaves its lane to the next one that waits. There are eight lanes, four or one, as many as there are
//! circuits to fill; when that changes, those that run move over in the middle of what they do. What is scalar
//! (judging a step, what switches) is done by the circuit itself ([`super::trial`]), so each gets the bits it would
//! get alone, whoever stands beside it and in whatever order they come.

mod abreast;
mod errand;
mod shapes;
mod width;

pub use errand::Errand;
pub use width::{Registers, Width};

use std::borrow::BorrowMut;
use std::collections::VecDeque;
use std::fmt::Debug;

use super::Circuit;
use abreast::{Side, of_width, set_out};
use errand::Runner;
use shapes::Shapes;

/// Circuits that run and circuits that wait. A key, the caller's choice, tells them apart.
#[derive(Debug)]
pub struct Ensemble<C> {
    waiting: VecDeque<Waiting<C>>,
    back: VecDeque<(usize, C)>,
    lanes: Vec<Option<Runner<C>>>,
    /// Somebody came or went since lanes were last filled.
    moved: bool,
    width: Option<Width>,
    registers: Registers,
    /// The shape that runs, by its number, and where.
    abreast: Option<(usize, Box<dyn Side<C>>)>,
    /// What ran before, for when its like come again.
    resting: Vec<(usize, Box<dyn Side<C>>)>,
    shapes: Shapes,
}

/// A circuit that waits for a lane.
#[derive(Debug)]
struct Waiting<C> {
    key: usize,
    shape: usize,
    errand: Errand<C>,
}

/// Shapes that are kept while none of them runs.
const MOST_RESTING: usize = 12;

impl<C: BorrowMut<Circuit> + Debug> Default for Ensemble<C> {
    fn default() -> Self {
        Self::new(None, Registers::default())
    }
}

impl<C: BorrowMut<Circuit> + Debug> Ensemble<C> {
    /// Nobody under way yet. Without a width, as many lanes as there are circuits of one shape to fill them.
    #[must_use]
    pub fn new(width: Option<Width>, registers: Registers) -> Self {
        Self {
            waiting: VecDeque::new(),
            back: VecDeque::new(),
            lanes: (0..Width::MOST).map(|_| None).collect(),
            moved: false,
            width,
            registers,
            abreast: None,
            resting: Vec::new(),
            shapes: Shapes::default(),
        }
    }

    /// Sends a circuit on its way. Its key must never have been another's.
    pub fn send(&mut self, key: usize, mut errand: Errand<C>) {
        let to = errand.to;
        let circuit: &mut Circuit = errand.circuit.borrow_mut();
        if circuit.fault.is_some() {
            circuit.stand_still(to);
        }
        if errand.to <= circuit.tick {
            self.back.push_back((key, errand.circuit));
        } else {
            let shape = self.shapes.number_of(key, circuit);
            self.waiting.push_back(Waiting { key, shape, errand });
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
            let (_, abreast) = self.abreast.as_mut().filter(|_| runs)?;
            abreast.round(&mut self.lanes, &mut self.back);
            self.moved |= !self.back.is_empty();
        }
        self.back.pop_front()
    }

    /// Gives lanes to circuits that wait and have the shape of those that run, as many as are filled.
    fn fill(&mut self) {
        let run = self.lanes.iter().flatten().count();
        let runs = self.abreast.as_ref().filter(|_| 0 < run).map(|(shape, _)| *shape);
        let Some(shape) = runs.or_else(|| Some(self.waiting.front()?.shape)) else { return };
        let fits = self.waiting.iter().filter(|w| w.shape == shape).take(Width::MOST - run).count();
        let width = self.width.unwrap_or(Width::fit_for(run + fits));
        let is_right = |(of, side): &(usize, Box<dyn Side<C>>)| *of == shape && side.width() == width;
        if !self.abreast.as_ref().is_some_and(is_right) {
            let at = self.resting.iter().position(is_right);
            let next = match at {
                Some(at) => self.resting.remove(at),
                None => (shape, of_width(width, self.registers, self.any_of(shape))),
            };
            if let Some((of, mut before)) = self.abreast.replace(next) {
                self.move_from(&*before);
                before.forget();
                if self.resting.len() == MOST_RESTING {
                    self.resting.remove(0);
                }
                self.resting.push((of, before));
            }
        }
        self.let_in();
    }

    /// A circuit of this shape that runs or waits.
    fn any_of(&self, shape: usize) -> &Circuit {
        let waits = || self.waiting.iter().find(|w| w.shape == shape).map(|w| &w.errand);
        let runs = self.lanes.iter().flatten().next().map(|runner| &runner.errand);
        match runs.or_else(waits) {
            Some(errand) => errand.circuit.borrow(),
            None => unreachable!("a shape is looked for when one of it runs or waits"),
        }
    }

    /// Those that run go on in other lanes, their steps as far as they have come.
    fn move_from(&mut self, before: &dyn Side<C>) {
        let Some((_, abreast)) = &mut self.abreast else { return };
        let mut lanes: Vec<Option<Runner<C>>> = (0..Width::MOST).map(|_| None).collect();
        let running = self.lanes.iter_mut().enumerate().filter_map(|(lane, r)| Some((lane, r.take()?)));
        for (to, (from, mut runner)) in running.enumerate() {
            let circuit: &mut Circuit = runner.errand.circuit.borrow_mut();
            before.give_back(circuit, from);
            abreast.load(circuit, to);
            abreast.told(runner.key, circuit, to);
            lanes[to] = Some(runner);
        }
        self.lanes = lanes;
    }

    fn let_in(&mut self) {
        let Some((shape, abreast)) = &mut self.abreast else { return };
        let n_lanes = abreast.width().lanes();
        // Back into the lane that still holds it, first of all.
        for lane in 0..n_lanes {
            if self.lanes[lane].is_none()
                && let Some(held) = abreast.holds(lane)
                && let Some(at) = self.waiting.iter().position(|w| {
                    let circuit: &Circuit = w.errand.circuit.borrow();
                    (w.key, circuit.changes) == held
                })
                && let Some(Waiting { key, errand, .. }) = self.waiting.remove(at)
            {
                self.lanes[lane] = Some(set_out(&mut **abreast, key, errand, lane));
            }
        }
        for lane in 0..n_lanes {
            if self.lanes[lane].is_some() {
                continue;
            }
            let Some(at) = self.waiting.iter().position(|w| w.shape == *shape) else { return };
            if let Some(Waiting { key, errand, .. }) = self.waiting.remove(at) {
                abreast.load(errand.circuit.borrow(), lane);
                self.lanes[lane] = Some(set_out(&mut **abreast, key, errand, lane));
            }
        }
    }
}
