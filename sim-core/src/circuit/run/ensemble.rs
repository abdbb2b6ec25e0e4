//! Many circuits, of which those of one shape are stepped side by side, a lane each.
//!
//! Circuits have one shape when they differ in numbers only: the same joints made, the same ways for air, the same
//! wires. Each lane tries steps of its own length and moves on when its own is good; a circuit that has run as far as
//! it should leaves its lane to the next one that waits. There are eight lanes, four or one, as many as there are
//! circuits to fill; when that changes, those that run move over in the middle of what they do. What is scalar
//! (judging a step, what switches) is done by the circuit itself ([`super::trial`]), so each gets the bits it would
//! get alone, whoever stands beside it and in whatever order they come.

use std::borrow::BorrowMut;
use std::collections::{BTreeMap, VecDeque};
use std::fmt::Debug;

use super::super::compile::Net;
use super::super::solve::{Given, Model, N_LEDGERS, Numbers, Scratch, StepFrom, Work};
use super::switching::After;
use super::trial::{Judged, Trial};
use super::{Circuit, Pace};
use crate::lanes::{Eight, Four, Mask, Real, Spread};
use crate::units::{TICK_S, Tick};

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

/// How many lanes there are.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Width {
    /// One after the other.
    One,
    /// [`Four`].
    Four,
    /// [`Eight`].
    Eight,
}

impl Width {
    const MOST: usize = Eight::LANES;

    fn lanes(self) -> usize {
        match self {
            Self::One => f64::LANES,
            Self::Four => Four::LANES,
            Self::Eight => Eight::LANES,
        }
    }

    /// For so many circuits of one shape: as wide as they fill at least half.
    fn fit_for(circuits: usize) -> Self {
        match circuits {
            0..=1 => Self::One,
            2..=4 => Self::Four,
            _ => Self::Eight,
        }
    }
}

/// Circuits that run and circuits that wait. A key, the caller's choice, tells them apart.
#[derive(Debug)]
pub struct Ensemble<C> {
    waiting: VecDeque<Waiting<C>>,
    back: VecDeque<(usize, C)>,
    lanes: Vec<Option<Runner<C>>>,
    /// Somebody came or went since lanes were last filled.
    moved: bool,
    width: Option<Width>,
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

/// All shapes seen so far, numbered; and which is whose (by key: changes so far, number), so that a circuit is looked
/// at again only when something was changed.
#[derive(Debug, Default)]
struct Shapes {
    seen: Vec<Net>,
    whose: BTreeMap<usize, (u64, usize)>,
}

impl Shapes {
    fn number_of(&mut self, key: usize, circuit: &Circuit) -> usize {
        if let Some((_, number)) = self.whose.get(&key).filter(|(changes, _)| *changes == circuit.changes) {
            return *number;
        }
        let at = self.seen.iter().rposition(|seen| seen.has_shape_of(&circuit.net));
        let number = at.unwrap_or_else(|| {
            self.seen.push(circuit.net.clone());
            self.seen.len() - 1
        });
        self.whose.insert(key, (circuit.changes, number));
        number
    }
}

/// Shapes that are kept while none of them runs.
const MOST_RESTING: usize = 12;

/// Circuits of one shape side by side, however many lanes there are.
trait Side<C>: Debug {
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

impl<C: BorrowMut<Circuit> + Debug> Default for Ensemble<C> {
    fn default() -> Self {
        Self::new(None)
    }
}

impl<C: BorrowMut<Circuit> + Debug> Ensemble<C> {
    /// Nobody under way yet. Without a width, as many lanes as there are circuits of one shape to fill them.
    #[must_use]
    pub fn new(width: Option<Width>) -> Self {
        Self {
            waiting: VecDeque::new(),
            back: VecDeque::new(),
            lanes: (0..Width::MOST).map(|_| None).collect(),
            moved: false,
            width,
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
                None => (shape, of_width(width, self.any_of(shape))),
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

/// Room for circuits of the shape of `first`.
fn of_width<C: BorrowMut<Circuit> + Debug>(width: Width, first: &Circuit) -> Box<dyn Side<C>> {
    match width {
        Width::One => Box::new(Abreast::<f64>::of(width, first)),
        Width::Four => Box::new(Abreast::<Four>::of(width, first)),
        Width::Eight => Box::new(Abreast::<Eight>::of(width, first)),
    }
}

/// Begins the first step of an errand whose circuit stands in the lane.
fn set_out<C: BorrowMut<Circuit>>(
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
