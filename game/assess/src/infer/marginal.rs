//! What a note would show in just any car of the catalogue: the rate at which something comes about that the hypothesis in
//! question does not foresee, and what *other* expects.

use crate::infer::modes::value;
use crate::infer::numeric::normal_between;
use crate::infer::reading::{Noted, Place, Seen};

/// Share of the spread of all cars that each stands for.
const WIDENED: f64 = 0.1;
/// What else may be shown, each cell of the scale alike.
const ANYTHING: f64 = 0.2;

/// Cars of all kinds at a note.
#[derive(Clone, Debug, PartialEq)]
pub struct Marginal {
    /// Weight, place, and the instrument's error at the end of its class.
    cars: Vec<(f64, Place, f64)>,
    /// What each stands for beside its own error, one σ.
    width: f64,
    /// Weight of everything that is not among the cars.
    rest: f64,
    cells: f64,
}

impl Marginal {
    /// Of cars with their weights, which sum to at most 1; the rest is what nothing is known of.
    #[must_use]
    pub fn of(noted: &Noted, cars: Vec<(f64, Place, f64)>) -> Self {
        let weight: f64 = cars.iter().map(|(weight, ..)| weight).sum();
        let on_line = || cars.iter().filter_map(|(weight, place, _)| Some((*weight, value(*place)?)));
        let all: f64 = on_line().map(|(weight, _)| weight).sum::<f64>().max(f64::MIN_POSITIVE);
        let mean = on_line().map(|(weight, at)| weight * at).sum::<f64>() / all;
        let variance = on_line().map(|(weight, at)| weight * (at - mean) * (at - mean)).sum::<f64>() / all;
        let floor = noted.floor(0.0);
        let width = (WIDENED * WIDENED * variance + floor * floor + noted.scatter * noted.scatter).sqrt();
        Self { width, rest: (1.0 - weight).max(0.0), cells: noted.cells, cars }
    }

    /// Chance of what was seen.
    #[must_use]
    pub fn chance(&self, seen: Seen) -> f64 {
        let of_car = |place: Place, error: f64| match (seen, place) {
            (Seen::Between(low, high), Place::At(at)) => {
                let sigma = (self.width * self.width + error * error / 3.0).sqrt();
                normal_between((low - at) / sigma, (high - at) / sigma)
            }
            (Seen::Between(_, f64::INFINITY), Place::Beyond) | (Seen::Dark, Place::Dark) => 1.0,
            (Seen::Between(..) | Seen::Dark, Place::Nowhere) => 1.0 / self.cells,
            (Seen::Between(..), Place::Beyond | Place::Dark) | (Seen::Dark, Place::At(_) | Place::Beyond) => {
                0.0
            }
        };
        let known: f64 = self.cars.iter().map(|(weight, place, error)| weight * of_car(*place, *error)).sum();
        (1.0 - ANYTHING) * (known + self.rest / self.cells) + ANYTHING / self.cells
    }

    /// Whether all cars stand at one and the same place: the note cannot tell any from another.
    #[must_use]
    pub fn is_one_place(&self) -> bool {
        self.cars.windows(2).all(|pair| match (pair[0].1, pair[1].1) {
            (Place::At(a), Place::At(b)) => (a - b).abs() <= 1e-9 * (1.0 + a.abs()),
            (a, b) => a == b,
        })
    }
}
