//! What one hypothesis expects of an attempt: every note, and how notes vary together.
//!
//! Readings vary together because the same pump, the same hoses and the same gauge are behind them. How much is seen in the
//! cars' residuals, note against note: of what follows the sound cars as it is in those, which are many; of what is the
//! fault's own in the cars that have it. Sixteen cars know few correlations; what all faults show on average is what
//! each is drawn towards (a shrinkage towards a common target: Schäfer and Strimmer, Statistical Applications in Genetics
//! and Molecular Biology 4, 2005, here with a fixed weight). A look repeated is the same reading in every hypothesis, so
//! that what is common says so.

use crate::infer::after::compare;
use crate::infer::expectation::Expectation;
use crate::infer::reading::{Noted, Place};

/// Nodes of severity.
pub const NODES: usize = 48;
/// So many cars the correlation common to all faults weighs.
const COMMON: f64 = 5.0;
/// The same beside sound cars.
const COMMON_OF_SOUND: f64 = 8.0;
/// Least number of cars on the line for a correlation.
const LEAST: usize = 4;
/// How far a car speaks for other severities, share of the range.
const NEAR: f64 = 0.1;
/// The same, cars' distances.
const NEAR_CARS: f64 = 1.2;

/// What is expected of an attempt.
#[derive(Clone, Debug)]
pub struct Forecast {
    /// Nodes of severity, shares of the range; one of no meaning for sound cars.
    pub nodes: Vec<f64>,
    /// Per node: what each car says of it, 0 to 1.
    pub near: Vec<Vec<f64>>,
    /// Expectation of each note so far.
    pub notes: Vec<Expectation>,
    /// Per note: its own correlation with each note before it; `None` where too few cars say anything.
    own: Vec<Vec<Option<f64>>>,
    /// Per note: the same, drawn towards what is common.
    drawn: Vec<Vec<f64>>,
    /// Per note: correlation with each note before it among sound cars.
    of_sound: Vec<Vec<f64>>,
    /// Severity of each car; empty for sound cars.
    at: Vec<f64>,
}

impl Forecast {
    /// Of `cars` sound cars.
    #[must_use]
    pub fn of_sound(cars: usize) -> Self {
        Self {
            nodes: vec![0.5],
            near: vec![vec![1.0; cars]],
            notes: Vec::new(),
            own: Vec::new(),
            drawn: Vec::new(),
            of_sound: Vec::new(),
            at: Vec::new(),
        }
    }

    /// Of a fault in cars with it at severities `at` (shares of its range).
    #[must_use]
    pub fn of_fault(at: Vec<f64>) -> Self {
        let nodes: Vec<f64> = (0..NODES).map(|node| (node as f64 + 0.5) / NODES as f64).collect();
        let reach = NEAR.max(NEAR_CARS / (at.len() as f64).max(1.0));
        let weight = |node: &f64, at: &f64| {
            let far = (node - at) / reach;
            sim_core::math::exp(-0.5 * far * far)
        };
        let near = nodes.iter().map(|node| at.iter().map(|at| weight(node, at)).collect()).collect();
        Self { nodes, near, notes: Vec::new(), own: Vec::new(), drawn: Vec::new(), of_sound: Vec::new(), at }
    }

    /// Width of a node's cell, share of the range; 0 for sound cars.
    #[must_use]
    pub fn width(&self) -> f64 {
        if self.at.is_empty() { 0.0 } else { 1.0 / self.nodes.len() as f64 }
    }

    /// Takes the next note in: where the cars stand. `sound` is the forecast of sound cars, which has the note already,
    /// with where the sound car of each draw stands; `None` when this is it.
    pub fn take(&mut self, noted: &Noted, places: &[(Place, f64)], sound: Option<(&Self, &[Place])>) {
        let index = self.notes.len();
        let mut expected = match sound.and_then(|(sound, beside)| Some((sound.notes.get(index)?, beside))) {
            Some((sound, beside)) => {
                Expectation::of_fault(noted, places, &self.at, sound, beside, &self.nodes)
            }
            None => Expectation::of_sound(noted, places),
        };
        compare(&mut expected, noted, &self.notes, &self.at, &self.nodes);
        self.notes.push(expected);
        let row = (0..index).map(|before| self.correlation(index, before)).collect();
        self.own.push(row);
    }

    fn correlation(&self, note: usize, before: usize) -> Option<f64> {
        let (a, b) = (&self.notes[note].residuals, &self.notes[before].residuals);
        let enough = |x: &[f64]| LEAST <= x.iter().filter(|x| **x != 0.0).count();
        let product = |x: &[f64], y: &[f64]| x.iter().zip(y).map(|(x, y)| x * y).sum::<f64>();
        (enough(a) && enough(b)).then(|| product(a, b) / (product(a, a) * product(b, b)).sqrt())
    }

    /// The correlations of note number `note` that are common to `forecasts`, which all have it.
    #[must_use]
    pub fn common(forecasts: &[&Self], note: usize) -> Vec<f64> {
        let of = |before: usize| {
            let (mut sum, mut weights) = (0.0, 0.0);
            for forecast in forecasts {
                if let Some(own) = forecast.own[note][before] {
                    let cars = forecast.near[0].len() as f64;
                    sum += cars * own;
                    weights += cars;
                }
            }
            if 0.0 < weights { sum / weights } else { 0.0 }
        };
        (0..note).map(of).collect()
    }

    /// Draws the correlations of the note after the last that was drawn towards what is common, and gives them. `of_sound`:
    /// those among sound cars, `None` where these are they.
    pub fn draw_towards(&mut self, common: &[f64], of_sound: Option<&[f64]>) -> &[f64] {
        let index = self.drawn.len();
        let cars = self.near[0].len() as f64;
        let weight = if of_sound.is_some() { COMMON } else { COMMON_OF_SOUND };
        let drawn = |(own, common): (&Option<f64>, &f64)| {
            own.map_or(0.0, |own| (cars * own + weight * common) / (cars + weight))
        };
        let row: Vec<f64> = self.own[index].iter().zip(common).map(drawn).collect();
        self.of_sound.push(of_sound.map_or_else(|| row.clone(), <[f64]>::to_vec));
        self.drawn.push(row);
        &self.drawn[index]
    }

    /// How what is the hypothesis' own, and what it shares with sound cars, vary together at two notes.
    #[must_use]
    pub fn together(&self, a: usize, b: usize) -> (f64, f64) {
        let of = |rows: &[Vec<f64>]| if a == b { 1.0 } else { rows[a.max(b)][a.min(b)] };
        (of(&self.drawn), of(&self.of_sound))
    }
}
