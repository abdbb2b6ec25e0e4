//! What could be wrong with the car: the hypotheses of `score/1`, first version, and their cells.
//!
//! * *Inside limits*: every part drawn inside serviceable.
//! * Every single fault of the car's catalogue in two bands of severity, [min, √(min·max)] and
//!   [√(min·max), max]; each draw takes a severity of its own inside the band, so that a true severity in
//!   between is stood for. Severities run by ratio (by difference where a bound is 0).
//! * *Other*: something that is not in the catalogue; nothing is known of what it would show.
//!
//! A class is what would be repaired: one per repair unit that has a fault, one for *inside limits*, one
//! for *other*. Prior mass before the complaint: [`INSIDE_LIMITS`], [`OTHER`], the rest shared by commonness,
//! half of each fault's share to either band. Not in this version: pairs of faults.

use sim_core::car::Car;
use sim_core::instrument::InstrumentCard;
use sim_core::math;
use sim_core::world::World;

use crate::infer::draws::{DRAWS, Draw};

/// Mass of *inside limits* before the complaint is heard (own choice; a graded pack has at least 15 %
/// healthy cars).
pub const INSIDE_LIMITS: f64 = 0.15;
/// Mass of *other* before the complaint is heard (own choice).
pub const OTHER: f64 = 0.02;
/// Bands of severity of each fault.
pub const BANDS: usize = 2;

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
    /// One fault of the catalogue (index into `car.faults`), severity in this band (0 or 1).
    Fault {
        /// Index into `car.faults`.
        fault: u16,
        /// Band of severity.
        band: usize,
    },
    /// Something that is not in the catalogue.
    Other,
}

/// One hypothesis with one draw.
#[derive(Clone, Debug, PartialEq)]
pub struct Cell {
    /// Index into [`Hypotheses::list`].
    pub hypothesis: usize,
    /// Index into [`Hypotheses::classes`].
    pub class: usize,
    /// Weight before the complaint.
    pub prior: f64,
    /// The hidden numbers; `None` for *other*.
    pub world: Option<World>,
}

/// All hypotheses about a car with a kit, in fixed order.
#[derive(Clone, Debug, PartialEq)]
pub struct Hypotheses {
    /// Classes: *inside limits*, then units in the order of the car file, then *other*.
    pub classes: Vec<Class>,
    /// Hypotheses: *inside limits*, faults in the order of the car file with their bands, *other*.
    pub list: Vec<Hypothesis>,
    /// Cells, hypothesis by hypothesis.
    pub cells: Vec<Cell>,
}

impl Hypotheses {
    /// Lays out every hypothesis about `car` in the hands of someone with `kit`.
    #[must_use]
    pub fn of(car: &Car, kit: &[InstrumentCard]) -> Self {
        let mut units: Vec<u16> = car.faults.iter().map(|fault| fault.unit).collect();
        units.sort_unstable();
        units.dedup();
        let mut classes = vec![Class::Inside];
        classes.extend(units.iter().map(|&unit| Class::Unit(unit)));
        classes.push(Class::Other);
        let all_common: f64 = car.faults.iter().map(|fault| fault.commonness).sum();

        let mut list = vec![Hypothesis::Inside];
        let mut cells: Vec<Cell> = (0..DRAWS)
            .map(|draw| Cell {
                hypothesis: 0,
                class: 0,
                prior: INSIDE_LIMITS / DRAWS as f64,
                world: Some(world(car, kit, None, draw)),
            })
            .collect();
        for (index, fault) in car.faults.iter().enumerate() {
            let share = fault.commonness / all_common;
            let prior = (1.0 - INSIDE_LIMITS - OTHER) * share / (BANDS * DRAWS) as f64;
            let class = 1 + units.partition_point(|&unit| unit < fault.unit);
            for band in 0..BANDS {
                cells.extend((0..DRAWS).map(|draw| Cell {
                    hypothesis: list.len(),
                    class,
                    prior,
                    world: Some(world(car, kit, Some((index as u16, band)), draw)),
                }));
                list.push(Hypothesis::Fault { fault: index as u16, band });
            }
        }
        cells.push(Cell { hypothesis: list.len(), class: classes.len() - 1, prior: OTHER, world: None });
        list.push(Hypothesis::Other);
        Self { classes, list, cells }
    }

    /// The cells of each hypothesis, in order.
    pub fn ranges(&self) -> impl Iterator<Item = std::ops::Range<usize>> + '_ {
        let mut start = 0;
        self.cells.chunk_by(|a, b| a.hypothesis == b.hypothesis).map(move |cells| {
            start += cells.len();
            start - cells.len()..start
        })
    }

    /// Index of the class a set of units belongs to, when there is one class for it (no unit: *inside
    /// limits*).
    #[must_use]
    pub fn class_index(&self, units: &[u16]) -> Option<usize> {
        let class = match units {
            [] => Class::Inside,
            [unit] => Class::Unit(*unit),
            _ => return None,
        };
        self.classes.iter().position(|&c| c == class)
    }
}

/// One draw's world. The severity takes the first coordinate whether or not there is a fault, so that all
/// hypotheses see the same tolerances and the same instruments.
fn world(car: &Car, kit: &[InstrumentCard], fault: Option<(u16, usize)>, draw: usize) -> World {
    let mut draw = Draw::new(draw);
    let u_severity = draw.next_u();
    let faults: Vec<(u16, f64)> = fault
        .iter()
        .map(|&(fault, band)| {
            let def = &car.faults[usize::from(fault)];
            let u = (band as f64 + u_severity) / BANDS as f64;
            (fault, severity(def.severity_min, def.severity_max, u))
        })
        .collect();
    World::draw(car, kit, &faults, &mut || draw.next_u())
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
