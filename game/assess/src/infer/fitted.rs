//! A line in severity through the cars of a group, and how far they stand from it.
//!
//! How far a car stands from the line is measured with that car left out, and how far cars stand at a severity among those
//! nearby.

use crate::infer::line::{Line, local};
use crate::infer::reading::Noted;

/// Reach of the local variance, in shares of the range of severity.
const REACH: f64 = 0.1;
/// How many cars the variance of all weighs beside those nearby.
const OF_ALL: f64 = 0.3;
/// Least number of cars for a line.
const FOR_A_LINE: usize = 5;
/// Spread of a group of one car, share of where it stands, at least [`LONE_FLOORS`] floors.
pub(super) const LONE: f64 = 0.05;
/// See [`LONE`].
pub(super) const LONE_FLOORS: f64 = 3.0;

/// Cars of a group with their severities.
pub(super) struct Points {
    pub(super) which: Vec<usize>,
    pub(super) at: Vec<f64>,
    pub(super) value: Vec<f64>,
}

/// A line through them, and how far they stand from it.
pub(super) struct Fitted {
    /// Index of each car.
    pub(super) which: Vec<usize>,
    pub(super) at: Vec<f64>,
    value: Vec<f64>,
    /// How far each stands from the line, on the line's own scale.
    residuals: Vec<f64>,
    /// So few that there is no slope: where all stand, and the variance of that as a multiple of one car's.
    level: Option<Line>,
    /// Variance about the line, of all.
    variance: f64,
}

impl Points {
    pub(super) fn of(members: &[usize], value: impl Fn(usize) -> Option<f64>, at: &[f64]) -> Self {
        let mut points = Self { which: Vec::new(), at: Vec::new(), value: Vec::new() };
        for &i in members {
            if let Some(v) = value(i) {
                points.which.push(i);
                points.at.push(at[i]);
                points.value.push(v);
            }
        }
        points
    }

    /// The line; `None` without a car.
    pub(super) fn fitted(self, noted: &Noted) -> Option<Fitted> {
        let Self { which, at, value } = self;
        let n = value.len();
        let cars = n as f64;
        let mean = value.iter().sum::<f64>() / cars.max(1.0);
        let mean_square = |residuals: &[f64]| residuals.iter().map(|r| r * r).sum::<f64>() / cars;
        let (residuals, level, variance): (Vec<f64>, _, _) = match n {
            0 => return None,
            1 => {
                let sigma = (LONE_FLOORS * noted.floor(mean)).max(LONE * mean.abs());
                (vec![0.0], Some(1.0), sigma * sigma)
            }
            2.. if n < FOR_A_LINE => {
                let scale = (cars / (cars - 1.0)).sqrt();
                let residuals: Vec<f64> = value.iter().map(|v| (v - mean) * scale).collect();
                let variance = mean_square(&residuals);
                (residuals, Some(1.0 / cars), variance)
            }
            _ => {
                let residual = |i: usize| {
                    let line = local(&at, &value, at[i], Some(i));
                    (value[i] - line.value) / (1.0 + line.leverage).sqrt()
                };
                let residuals: Vec<f64> = (0..n).map(residual).collect();
                let variance = mean_square(&residuals);
                (residuals, None, variance)
            }
        };
        let level = level.map(|leverage| Line { value: mean, slope: 0.0, leverage });
        Some(Fitted { which, at, value, residuals, level, variance })
    }
}

impl Fitted {
    /// Variance about the line among the cars near a severity.
    pub(super) fn near(&self, at: f64) -> f64 {
        if self.level.is_some() {
            return self.variance;
        }
        let (mut sum, mut weights) = (OF_ALL * self.variance, OF_ALL);
        for (residual, of_car) in self.residuals.iter().zip(&self.at) {
            let far = (at - of_car) / REACH;
            let weight = sim_core::math::exp(-far * far);
            sum += weight * residual * residual;
            weights += weight;
        }
        sum / weights
    }

    /// The line at a severity, and the variance of another car about it.
    pub(super) fn at_node(&self, noted: &Noted, at: f64) -> (Line, f64) {
        let line = self.level.unwrap_or_else(|| local(&self.at, &self.value, at, None));
        let mean = self.value.iter().sum::<f64>() / self.value.len() as f64;
        let floor = noted.floor(mean);
        (line, self.near(at) * (1.0 + line.leverage) + floor * floor)
    }

    /// How far a car stands from the line in standard deviations of those nearby.
    pub(super) fn residual(&self, car: usize) -> Option<f64> {
        let i = self.which.iter().position(|which| *which == car)?;
        let near = self.near(self.at[i]).sqrt();
        (0.0 < near).then(|| self.residuals[i] / near)
    }
}
