//! What one hypothesis expects of one note: a line in severity for either group of cars, and how far cars stand from it.
//!
//! The sound car of the same draw has the same tolerances, so that the difference between the two is what the fault does.
//! Where differences spread less than the readings themselves, the note *follows* the sound car: the difference is
//! fitted, and how sound cars spread, known from many of them, is added: what a fault leaves as it was is then expected just
//! as in a sound car.
//!
//! How far a car stands from the line is measured with that car left out.

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
const OF_ALL: f64 = 2.0;
/// Least number of cars for a line.
const FOR_A_LINE: usize = 5;
/// Spread of a group of one car, share of where it stands, at least [`LONE_FLOORS`] floors.
const LONE: f64 = 0.05;
/// See [`LONE`].
const LONE_FLOORS: f64 = 3.0;

/// One group on the line.
#[derive(Clone, Debug, PartialEq)]
pub struct Group {
    /// Middle, per node of severity.
    pub mean: Vec<f64>,
    /// Slope over the whole range of severity, per node.
    pub slope: Vec<f64>,
    /// Spread that it shares with sound cars, one σ; 0 where it does not follow them.
    pub shared: f64,
    /// Spread of its own, per node, one σ.
    pub own: Vec<f64>,
    /// Degrees of freedom behind the spread.
    pub freedom: f64,
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
    /// deviations of all of them; 0 off the line.
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
                fit.residuals[*i] = v - mean;
            }
            (!values.is_empty()).then(|| Group {
                mean: vec![mean],
                slope: vec![0.0],
                shared: 0.0,
                own: vec![sigma],
                freedom: (n - 1.0).max(1.0),
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
            let own = own.fitted(noted, nodes)?;
            let with_sound =
                with_sound.fitted(noted, nodes).filter(|f| whole && f.variance < FOLLOWS * own.variance);
            let followed = with_sound.as_ref().and_then(|_| sound.group(sound.main()));
            let (shared, of_sound) = followed.map_or((0.0, 1.0), |group| (group.own[0], group.freedom));
            let fitted = with_sound.unwrap_or(own);
            for (i, residual) in fitted.which.iter().zip(&fitted.residuals) {
                fit.residuals[*i] = *residual;
            }
            let cars = fitted.which.len() as f64;
            let mean = fitted.variances.iter().sum::<f64>() / nodes.len() as f64;
            Some(Group {
                own: fitted.variances.iter().map(|v| v.sqrt()).collect(),
                mean: fitted.lines.iter().map(|line| line.value).collect(),
                slope: fitted.lines.iter().map(|line| line.slope).collect(),
                freedom: freedom(shared * shared, of_sound, mean, (cars - 2.0).max(1.0)),
                error: fit.error(&members),
                shared,
            })
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

    fn end(mut self, low: Option<Group>, high: Option<Group>) -> Expectation {
        let on_line: Vec<f64> = self.residuals.iter().copied().filter(|r| *r != 0.0).collect();
        let sigma = (on_line.iter().map(|r| r * r).sum::<f64>() / (on_line.len() as f64).max(1.0)).sqrt();
        if 0.0 < sigma {
            self.residuals.iter_mut().for_each(|r| *r /= sigma);
        }
        Expectation { modes: self.modes, low, high, residuals: self.residuals, cut: self.cut }
    }
}

/// Cars of a group with their severities.
struct Points {
    which: Vec<usize>,
    at: Vec<f64>,
    value: Vec<f64>,
}

/// A line through them.
struct Fitted {
    which: Vec<usize>,
    lines: Vec<Line>,
    variances: Vec<f64>,
    residuals: Vec<f64>,
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

    /// The line at each node, with the variance of a car about it; `None` without a car.
    fn fitted(self, noted: &Noted, nodes: &[f64]) -> Option<Fitted> {
        let n = self.value.len();
        let cars = n as f64;
        let mean = self.value.iter().sum::<f64>() / cars.max(1.0);
        let floor = noted.floor(mean);
        let level = |variance: f64, leverage: f64, residuals: Vec<f64>| {
            let lines = nodes.iter().map(|_| Line { value: mean, slope: 0.0, leverage }).collect();
            (lines, vec![variance; nodes.len()], residuals)
        };
        let (lines, near, residuals): (Vec<Line>, Vec<f64>, Vec<f64>) = match n {
            0 => return None,
            1 => {
                let sigma = (LONE_FLOORS * floor).max(LONE * mean.abs());
                level(sigma * sigma, 1.0, vec![0.0])
            }
            2.. if n < FOR_A_LINE => {
                let scale = (cars / (cars - 1.0)).sqrt();
                let residuals: Vec<f64> = self.value.iter().map(|v| (v - mean) * scale).collect();
                level(residuals.iter().map(|r| r * r).sum::<f64>() / cars, 1.0 / cars, residuals)
            }
            _ => {
                let residual = |i: usize| {
                    let line = local(&self.at, &self.value, self.at[i], Some(i));
                    (self.value[i] - line.value) / (1.0 + line.leverage).sqrt()
                };
                let residuals: Vec<f64> = (0..n).map(residual).collect();
                let lines = nodes.iter().map(|at| local(&self.at, &self.value, *at, None)).collect();
                let all = residuals.iter().map(|r| r * r).sum::<f64>() / cars;
                let near = |node: &f64| {
                    let weight = |i: usize| {
                        let far = (node - self.at[i]) / REACH;
                        sim_core::math::exp(-far * far)
                    };
                    let (sum, weights) = (0..n).fold((OF_ALL * all, OF_ALL), |(sum, weights), i| {
                        (sum + weight(i) * residuals[i] * residuals[i], weights + weight(i))
                    });
                    sum / weights
                };
                (lines, nodes.iter().map(near).collect(), residuals)
            }
        };
        let variance = residuals.iter().map(|r| r * r).sum::<f64>() / cars;
        let variances =
            near.iter().zip(&lines).map(|(v, line)| v * (1.0 + line.leverage) + floor * floor).collect();
        Some(Fitted { which: self.which, lines, variances, residuals, variance })
    }
}
