//! What could be wrong with the car: the hypotheses of `score/2` and their cells.
//!
//! * *Inside limits*: every part drawn inside serviceable.
//! * Every single fault of the car's catalogue, at severities spread evenly over its range by ratio (by difference where a
//!   bound is 0); a cell is one of [`NODES`] stretches of that range.
//! * *Other*: something that is not in the catalogue; nothing is known of what it would show.
//!
//! A class is what would be repaired: one per repair unit that has a fault, one for *inside limits*, one
//! for *other*. Prior mass before the complaint: [`INSIDE_LIMITS`], [`OTHER`], the rest shared by commonness.
//! Not in this version: pairs of faults.

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

/// What is repaired, or that nothing is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Class {
    /// Everything inside its limits.
    Inside,
    /// This repair unit (index into `car.units`) is outside its limits.
    Unit(u16),
    /// Something that is not in the catalogue.
    Other,
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
            Hypothesis::Fault(_) => NODES,
            Hypothesis::Inside | Hypothesis::Other => 1,
        }
    }

    /// The fault, if it is one.
    #[must_use]
    pub fn fault(self) -> Option<u16> {
        match self.hypothesis {
            Hypothesis::Fault(fault) => Some(fault),
            Hypothesis::Inside | Hypothesis::Other => None,
        }
    }
}

/// All hypotheses about a car, in fixed order.
#[derive(Clone, Debug, PartialEq)]
pub struct Hypotheses {
    /// Classes: *inside limits*, then units in the order of the car file, then *other*.
    pub classes: Vec<Class>,
    /// Hypotheses: *inside limits*, faults in the order of the car file, *other*.
    pub list: Vec<Entry>,
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
        Self { classes, list }
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

/// The car of one draw with a fault at share `at` of its range. The severity takes the first coordinate whether or not it
/// is used, so that all hypotheses see the same tolerances.
#[must_use]
pub fn world(car: &Car, kit: &[InstrumentCard], fault: Option<u16>, draw: usize, at: f64) -> World {
    let mut draw = Draw::new(draw);
    draw.next_u();
    let faults: Vec<(u16, f64)> = fault
        .iter()
        .map(|&fault| {
            let def = &car.faults[usize::from(fault)];
            (fault, severity(def.severity_min, def.severity_max, at))
        })
        .collect();
    World::draw(car, kit, &faults, &mut || draw.next_u())
}

/// The first block of cars of every hypothesis, hypothesis by hypothesis: [`DRAWS`] each.
#[must_use]
pub fn every_first_car(car: &Car, kit: &[InstrumentCard]) -> Vec<World> {
    let faults = std::iter::once(None).chain((0..car.faults.len()).map(|fault| Some(fault as u16)));
    faults
        .flat_map(|fault| (0..DRAWS).map(move |draw| world(car, kit, fault, draw, severity_of(draw))))
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
