//! What one hypothesis expects of one note: a line in severity for either group of cars, and how far cars stand from it.
//!
//! The sound car of the same draw has the same tolerances, so that the difference between the two is what the fault does.
//! Where differences spread less than the readings themselves, the note *follows* the sound car: the difference is
//! fitted, and how sound cars spread, known from many of them, is added: what a fault leaves as it was is then expected just
//! as in a sound car. This is asked at each severity anew: a small leak leaves a reading as it was, a large one makes it
//! its own.
//!
//! How far a car stands from the line is measured with that car left out, and in the spread of the cars nearby: where
//! readings bend with severity, the few cars on the bend would else say alone how all notes vary together.

use crate::infer::line::{Line, local};
use crate::infer::modes::{Mode, cut, mode, value};
use crate::infer::reading::{Noted, Place};

/// A note follows the sound car when differences spread less than this share of what readings spread (variances).
const FOLLOWS: f64 = 0.5;
/// Share of the cars of a group that must have a sound car in its main group beside them.
const BESIDE_SOUND: f64 = 0.8;
/// Reach of the local variance, in shares of the range of severity.
const REACH: f64 = 0.2;
/// How many cars the variance of all weighs beside those nearby.
const OF_ALL: f64 = 0.3;
/// Least number of cars for a line.
const FOR_A_LINE: usize = 5;
/// Spread of a group of one car, share of where it stands, at least [`LONE_FLOORS`] floors.
const LONE: f64 = 0.05;
/// See [`LONE`].
const LONE_FLOORS: f64 = 3.0;

/// One group on the line.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Group {
    /// Middle, per node of severity.
    pub mean: Vec<f64>,
    /// Slope over the whole range of severity, per node.
    pub slope: Vec<f64>,
    /// Spread that it shares with sound cars, per node, one σ; 0 where it does not follow them.
    pub shared: Vec<f64>,
    /// Spread of its own, per node, one σ.
    pub own: Vec<f64>,
    /// Degrees of freedom behind the spread, per node.
    pub freedom: Vec<f64>,
    /// The instrument's error at the end of its class, on the line.
    pub error: f64,
}

/// What a hypothesis expects of a note.
#[derive(Clone, Debug, PartialEq)]
pub struct Expectation {
    /// Per car of the hypothesis.
    pub modes: Vec<Mode>,
    /// The lower group, if any car is in it.
    pub low: Option<Group>,
    /// The upper group.
    pub high: Option<Group>,
    /// How far each car stands from its line (where it follows the sound cars: its difference from them), in standard
    /// deviations of those nearby; 0 off the line.
    pub residuals: Vec<f64>,
    /// Between which places the groups part.
    cut: f64,
}

impl Expectation {
    /// The group of a mode.
    #[must_use]
    pub fn group(&self, mode: Mode) -> Option<&Group> {
        match mode {
            Mode::Low => self.low.as_ref(),
            Mode::High => self.high.as_ref(),
            Mode::Beyond | Mode::Dark | Mode::Nowhere => None,
        }
    }

    /// The group on the line in which most cars are.
    fn main(&self) -> Mode {
        let many = |mode: Mode| self.modes.iter().filter(|m| **m == mode).count();
        if many(Mode::Low) < many(Mode::High) { Mode::High } else { Mode::Low }
    }

    /// How far a sound car stands from the middle of its main group.
    fn apart(&self, place: Place) -> Option<f64> {
        let main = self.main();
        let group = self.group(main)?;
        (mode(place, self.cut) == main).then(|| value(place).map(|at| at - group.mean[0]))?
    }

    /// Of sound cars: no severity, one node.
    #[must_use]
    pub fn of_sound(noted: &Noted, places: &[(Place, f64)]) -> Self {
        let mut fit = Fit::new(noted, places);
        let mut group = |mode: Mode| {
            let members = fit.members(mode);
            let values: Vec<f64> = members.iter().filter_map(|i| value(places[*i].0)).collect();
            let n = values.len() as f64;
            let mean = values.iter().sum::<f64>() / n.max(1.0);
            let floor = noted.floor(mean);
            let sigma = if values.len() < 2 {
                (LONE_FLOORS * floor).max(LONE * mean.abs())
            } else {
                let variance = values.iter().map(|v| (v - mean) * (v - mean)).sum::<f64>() / (n - 1.0);
                (variance * (1.0 + 1.0 / n) + floor * floor).sqrt()
            };
            for (i, v) in members.iter().zip(&values) {
                fit.residuals[*i] = (v - mean) / sigma;
            }
            (!values.is_empty()).then(|| Group {
                mean: vec![mean],
                slope: vec![0.0],
                shared: vec![0.0],
                own: vec![sigma],
                freedom: vec![(n - 1.0).max(1.0)],
                error: fit.error(&members),
            })
        };
        let (low, high) = (group(Mode::Low), group(Mode::High));
        fit.end(low, high)
    }

    /// Of a fault. `at`: severity of each car, share of its range; `beside`: what `sound` says and where the sound car of
    /// the same draw stands; `nodes`: severities asked for.
    #[must_use]
    pub fn of_fault(
        noted: &Noted,
        places: &[(Place, f64)],
        at: &[f64],
        sound: &Self,
        beside: &[Place],
        nodes: &[f64],
    ) -> Self {
        let mut fit = Fit::new(noted, places);
        let mut group = |mode: Mode| {
            let members = fit.members(mode);
            let own = Points::of(&members, |i| value(places[i].0), at);
            let with_sound =
                Points::of(&members, |i| Some(value(places[i].0)? - sound.apart(beside[i])?), at);
            let whole = (members.len() as f64 * BESIDE_SOUND).max(3.0) <= with_sound.which.len() as f64;
            let own = own.fitted(noted)?;
            let of_sound = sound.group(sound.main()).filter(|_| whole);
            let followed = of_sound.and_then(|group| Some((group, with_sound.fitted(noted)?)));
            let following = |at: f64| {
                let follows = |(_, fitted): &&(&Group, Fitted)| fitted.near(at) < FOLLOWS * own.near(at);
                followed.as_ref().filter(follows)
            };
            for (member, at) in own.which.iter().zip(&own.at) {
                let residual = match following(*at) {
                    Some((_, fitted)) => fitted.residual(*member),
                    None => own.residual(*member),
                };
                fit.residuals[*member] = residual.unwrap_or(0.0);
            }
            let mut group = Group { error: fit.error(&members), ..Group::default() };
            for node in nodes {
                let ((shared, of_sound), fitted) = match following(*node) {
                    Some((sound, fitted)) => ((sound.own[0], sound.freedom[0]), fitted),
                    None => ((0.0, 1.0), &own),
                };
                let (line, variance) = fitted.at_node(noted, *node);
                let cars = fitted.which.len() as f64;
                group.mean.push(line.value);
                group.slope.push(line.slope);
                group.own.push(variance.sqrt());
                group.shared.push(shared);
                group.freedom.push(freedom(shared * shared, of_sound, variance, (cars - 2.0).max(1.0)));
            }
            Some(group)
        };
        let (low, high) = (group(Mode::Low), group(Mode::High));
        fit.end(low, high)
    }
}

/// Degrees of freedom behind a sum of two variances (Welch, Biometrika 34, 1947; Satterthwaite 1946).
fn freedom(a: f64, of_a: f64, b: f64, of_b: f64) -> f64 {
    let both = a * a / of_a + b * b / of_b;
    if 0.0 < both { (a + b) * (a + b) / both } else { of_b }
}

/// An expectation in the making.
struct Fit<'a> {
    places: &'a [(Place, f64)],
    cut: f64,
    modes: Vec<Mode>,
    residuals: Vec<f64>,
}

impl<'a> Fit<'a> {
    fn new(noted: &Noted, places: &'a [(Place, f64)]) -> Self {
        let only: Vec<Place> = places.iter().map(|(place, _)| *place).collect();
        // The floor of gaps is that of small readings: a share of a large one would hide gaps.
        let cut = cut(&only, noted.floor(0.0));
        let modes = only.iter().map(|place| mode(*place, cut)).collect();
        Self { places, cut, modes, residuals: vec![0.0; places.len()] }
    }

    fn members(&self, mode: Mode) -> Vec<usize> {
        (0..self.modes.len()).filter(|i| self.modes[*i] == mode).collect()
    }

    /// Mean of the instrument's error at the end of its class.
    fn error(&self, members: &[usize]) -> f64 {
        members.iter().map(|i| self.places[*i].1).sum::<f64>() / (members.len() as f64).max(1.0)
    }

    fn end(self, low: Option<Group>, high: Option<Group>) -> Expectation {
        Expectation { modes: self.modes, low, high, residuals: self.residuals, cut: self.cut }
    }
}

/// Cars of a group with their severities.
struct Points {
    which: Vec<usize>,
    at: Vec<f64>,
    value: Vec<f64>,
}

/// A line through them, and how far they stand from it.
struct Fitted {
    /// Index of each car.
    which: Vec<usize>,
    at: Vec<f64>,
    value: Vec<f64>,
    /// How far each stands from the line, on the line's own scale.
    residuals: Vec<f64>,
    /// So few that there is no slope: where all stand, and the variance of that as a multiple of one car's.
    level: Option<Line>,
    /// Variance about the line, of all.
    variance: f64,
}

impl Points {
    fn of(members: &[usize], value: impl Fn(usize) -> Option<f64>, at: &[f64]) -> Self {
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
    fn fitted(self, noted: &Noted) -> Option<Fitted> {
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
    fn near(&self, at: f64) -> f64 {
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
    fn at_node(&self, noted: &Noted, at: f64) -> (Line, f64) {
        let line = self.level.unwrap_or_else(|| local(&self.at, &self.value, at, None));
        let mean = self.value.iter().sum::<f64>() / self.value.len() as f64;
        let floor = noted.floor(mean);
        (line, self.near(at) * (1.0 + line.leverage) + floor * floor)
    }

    /// How far a car stands from the line in standard deviations of those nearby.
    fn residual(&self, car: usize) -> Option<f64> {
        let i = self.which.iter().position(|which| *which == car)?;
        let near = self.near(self.at[i]).sqrt();
        (0.0 < near).then(|| self.residuals[i] / near)
    }
}
