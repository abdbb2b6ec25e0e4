//! What could be wrong with the car: the hypotheses of `score/2` and their cells.
//!
//! * *Inside limits*: every part drawn inside serviceable.
//! * Every single fault of the car's catalogue, at severities spread evenly over its range by ratio (by difference where a
//!   bound is 0); a cell is one of [`NODES`] stretches of that range.
//! * *Other*: something that is not in the catalogue; nothing is known of what it would show.
//!
//! A class is what would be repaired: one per repair unit that has a fault, one for *inside limits*, one
//! for *other*, one per two units that may both have one. Prior mass before the complaint: [`INSIDE_LIMITS`], [`OTHER`], the
//! rest shared by commonness.
//! Two faults at once are hypotheses too, laid out when no single one explains what was noted ([`Hypotheses::pair`]); they
//! have [`PAIRS`] beside all others.

use sim_core::car::Car;
use sim_core::instrument::InstrumentCard;
use sim_core::math;
use sim_core::world::World;

use crate::infer::draws::{DRAWS, Draw};
use crate::infer::forecast::NODES;

/// Mass of *inside limits* before the complaint is heard (own choice; a graded pack has at least 15 %
/// healthy cars).
pub const INSIDE_LIMITS: f64 = 0.15;
/// Mass of *other* before the complaint is heard (own choice).
pub const OTHER: f64 = 0.02;
/// Mass of two faults at once, in different units, beside the mass of all that is not (own choice: about one car in thirty
/// that comes in has a second fault that matters).
pub const PAIRS: f64 = 0.03;

/// What is repaired, or that nothing is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Class {
    /// Everything inside its limits.
    Inside,
    /// This repair unit (index into `car.units`) is outside its limits.
    Unit(u16),
    /// Something that is not in the catalogue.
    Other,
    /// Both repair units are outside their limits, the smaller index first.
    Pair(u16, u16),
}

impl Class {
    /// Whether a unit (index into `car.units`) is outside its limits when this is so.
    #[must_use]
    pub fn has(self, unit: u16) -> bool {
        match self {
            Self::Inside | Self::Other => false,
            Self::Unit(own) => own == unit,
            Self::Pair(first, second) => first == unit || second == unit,
        }
    }

    /// Whether exactly these units (index into `car.units`, each once) are outside their limits when this is so.
    #[must_use]
    pub fn is_exactly(self, units: &[u16]) -> bool {
        match self {
            Self::Inside => units.is_empty(),
            Self::Unit(_) => units.len() == 1 && self.has(units[0]),
            Self::Pair(..) => units.len() == 2 && units.iter().all(|unit| self.has(*unit)),
            Self::Other => false,
        }
    }
}

/// A hypothesis.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Hypothesis {
    /// Everything inside its limits.
    Inside,
    /// One fault of the catalogue (index into `car.faults`).
    Fault(u16),
    /// Something that is not in the catalogue.
    Other,
    /// Two faults of the catalogue, in different units, the smaller index first.
    Pair(u16, u16),
}

/// A hypothesis with what it is before anything was seen.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Entry {
    /// Which.
    pub hypothesis: Hypothesis,
    /// Index into [`Hypotheses::classes`].
    pub class: usize,
    /// Weight before the complaint.
    pub prior: f64,
}

impl Entry {
    /// Cells of it.
    #[must_use]
    pub fn cells(self) -> usize {
        match self.hypothesis {
            Hypothesis::Fault(_) | Hypothesis::Pair(..) => NODES,
            Hypothesis::Inside | Hypothesis::Other => 1,
        }
    }

    /// The fault, if it is a single one.
    #[must_use]
    pub fn fault(self) -> Option<u16> {
        match self.hypothesis {
            Hypothesis::Fault(fault) => Some(fault),
            Hypothesis::Inside | Hypothesis::Other | Hypothesis::Pair(..) => None,
        }
    }
}

/// All hypotheses about a car, in fixed order.
#[derive(Clone, Debug, PartialEq)]
pub struct Hypotheses {
    /// Classes: *inside limits*, then units in the order of the car file, then *other*, then pairs as they were laid out.
    pub classes: Vec<Class>,
    /// Hypotheses: *inside limits*, faults in the order of the car file, *other*, pairs as they were laid out.
    pub list: Vec<Entry>,
    /// So many times the cars that are drawn by default: 1, or more to see how much hangs on their number.
    pub times: usize,
}

impl Hypotheses {
    /// Lays out every hypothesis about `car`.
    #[must_use]
    pub fn of(car: &Car) -> Self {
        let mut units: Vec<u16> = car.faults.iter().map(|fault| fault.unit).collect();
        units.sort_unstable();
        units.dedup();
        let mut classes = vec![Class::Inside];
        classes.extend(units.iter().map(|&unit| Class::Unit(unit)));
        classes.push(Class::Other);
        let all_common: f64 = car.faults.iter().map(|fault| fault.commonness).sum();
        let mut list = vec![Entry { hypothesis: Hypothesis::Inside, class: 0, prior: INSIDE_LIMITS }];
        list.extend(car.faults.iter().enumerate().map(|(index, fault)| Entry {
            hypothesis: Hypothesis::Fault(index as u16),
            class: 1 + units.partition_point(|&unit| unit < fault.unit),
            prior: (1.0 - INSIDE_LIMITS - OTHER) * fault.commonness / all_common,
        }));
        list.push(Entry { hypothesis: Hypothesis::Other, class: classes.len() - 1, prior: OTHER });
        Self { classes, list, times: 1 }
    }

    /// The same with so many times the cars (at least as many).
    #[must_use]
    pub fn with_cars(self, times: usize) -> Self {
        Self { times: times.max(1), ..self }
    }

    /// Every two faults of `car` that lie in different units, each with its weight before the complaint: [`PAIRS`] shared by
    /// how common both are.
    #[must_use]
    pub fn pairs(car: &Car) -> Vec<((u16, u16), f64)> {
        let number = |fault: usize| car.faults[fault].commonness;
        let apart = |(a, b): &(usize, usize)| car.faults[*a].unit != car.faults[*b].unit;
        let all: Vec<(usize, usize)> = (0..car.faults.len())
            .flat_map(|second| (0..second).map(move |first| (first, second)))
            .filter(apart)
            .collect();
        let sum: f64 = all.iter().map(|(a, b)| number(*a) * number(*b)).sum();
        all.iter().map(|(a, b)| ((*a as u16, *b as u16), PAIRS * number(*a) * number(*b) / sum)).collect()
    }

    /// Lays out two faults at once, of this weight before the complaint.
    pub fn pair(&mut self, car: &Car, (a, b): (u16, u16), prior: f64) {
        let unit = |fault: u16| car.faults[usize::from(fault)].unit;
        let class = Class::Pair(unit(a).min(unit(b)), unit(a).max(unit(b)));
        let known = self.classes.iter().position(|known| *known == class);
        let class = known.unwrap_or_else(|| {
            self.classes.push(class);
            self.classes.len() - 1
        });
        self.list.push(Entry { hypothesis: Hypothesis::Pair(a.min(b), a.max(b)), class, prior });
    }

    /// Hypothesis and class of every cell, hypothesis by hypothesis.
    pub fn cells(&self) -> impl Iterator<Item = (usize, usize)> + '_ {
        let of = |(index, entry): (usize, &Entry)| std::iter::repeat_n((index, entry.class), entry.cells());
        self.list.iter().enumerate().flat_map(of)
    }
}

/// Where in its range the severity of a draw lies, when nobody asks for another.
#[must_use]
pub fn severity_of(draw: usize) -> f64 {
    Draw::new(draw).next_u()
}

/// The car of one draw, its (first) fault at share `at` of its range. The severity takes the first coordinate whether or not
/// it is used, so that all hypotheses see the same tolerances; where a second fault stands is [`Draw::aside`].
#[must_use]
pub fn world(car: &Car, kit: &[InstrumentCard], hypothesis: Hypothesis, number: usize, at: f64) -> World {
    let mut draw = Draw::new(number);
    draw.next_u();
    let of = |fault: u16, at: f64| {
        let def = &car.faults[usize::from(fault)];
        (fault, severity(def.severity_min, def.severity_max, at))
    };
    let faults = match hypothesis {
        Hypothesis::Inside | Hypothesis::Other => vec![],
        Hypothesis::Fault(fault) => vec![of(fault, at)],
        Hypothesis::Pair(first, second) => vec![of(first, at), of(second, Draw::aside(number))],
    };
    World::draw(car, kit, &faults, &mut || draw.next_u())
}

/// The first block of cars of every hypothesis, hypothesis by hypothesis: [`DRAWS`] each.
#[must_use]
pub fn every_first_car(car: &Car, kit: &[InstrumentCard]) -> Vec<World> {
    let faults = (0..car.faults.len()).map(|fault| Hypothesis::Fault(fault as u16));
    std::iter::once(Hypothesis::Inside)
        .chain(faults)
        .flat_map(|which| (0..DRAWS).map(move |draw| world(car, kit, which, draw, severity_of(draw))))
        .collect()
}

/// Severity at share `u` (0 to 1) of the way from `min` to `max`, by ratio when both have one sign.
#[must_use]
pub fn severity(min: f64, max: f64, u: f64) -> f64 {
    if 0.0 < min * max { min * math::pow(max / min, u) } else { min + (max - min) * u }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn severities_run_by_ratio_whatever_their_sign() {
        assert!((severity(0.06, 0.6, 0.5) - 0.06 * 10f64.sqrt()).abs() < 1e-12);
        assert!((severity(-8.0, -32.0, 0.5) + 16.0).abs() < 1e-12, "the middle by ratio of −8 and −32");
        assert_eq!(severity(0.0, 4.0, 0.25), 1.0);
        for (min, max) in [(0.06, 0.6), (-8.0, -30.0), (0.98, 1.0), (0.0, 3.0)] {
            assert!((severity(min, max, 0.0) - min).abs() < 1e-12);
            assert!((severity(min, max, 1.0) - max).abs() < 1e-12);
        }
    }
}
