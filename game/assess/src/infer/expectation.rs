//! What one hypothesis expects of one note: a line in severity for either group of cars, and how far cars stand from it.
//!
//! The sound car of the same draw has the same tolerances, so that the difference between the two is what the fault does.
//! Where differences spread less than the readings themselves, the note *follows* the sound car: the difference is
//! fitted, and how sound cars spread, known from many of them, is added: what a fault leaves as it was is then expected just
//! as in a sound car. This is asked at each severity anew: a small leak leaves a reading as it was, a large one makes it
//! its own.
//!
//! How far a car stands from the line is told in the spread of the cars nearby: where readings bend with severity, the few
//! cars on the bend would else say alone how all notes vary together.

use crate::infer::fitted::{Fitted, LONE, LONE_FLOORS, Points};
use crate::infer::modes::{Mode, cut, mode, value};
use crate::infer::reading::{Noted, Place};

/// A note follows the sound car when differences spread less than this share of what readings spread (variances).
const FOLLOWS: f64 = 0.5;
/// Share of the cars of a group that must have a sound car in its main group beside them.
const BESIDE_SOUND: f64 = 0.8;

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
    /// Notes before it from which it differs by less than it varies itself.
    pub after: Vec<After>,
}

/// How a note differs from one before it.
#[derive(Clone, Debug, PartialEq)]
pub struct After {
    /// Index of that note.
    pub note: usize,
    /// The way that note came out.
    pub mode: Mode,
    /// Middle of the difference, per node of severity.
    pub mean: Vec<f64>,
    /// Variance of the difference, per node.
    pub variance: Vec<f64>,
    /// Degrees of freedom behind it.
    pub freedom: f64,
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
    /// Where each car stands, if on the line.
    pub values: Vec<Option<f64>>,
    /// What the line is a line of.
    pub line: Option<(&'static str, bool)>,
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

    /// As [`Self::group`].
    pub fn group_mut(&mut self, mode: Mode) -> Option<&mut Group> {
        match mode {
            Mode::Low => self.low.as_mut(),
            Mode::High => self.high.as_mut(),
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
                after: Vec::new(),
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
    line: Option<(&'static str, bool)>,
}

impl<'a> Fit<'a> {
    fn new(noted: &Noted, places: &'a [(Place, f64)]) -> Self {
        let only: Vec<Place> = places.iter().map(|(place, _)| *place).collect();
        // The floor of gaps is that of small readings: a share of a large one would hide gaps.
        let cut = cut(&only, noted.floor(0.0));
        let modes = only.iter().map(|place| mode(*place, cut)).collect();
        Self { places, cut, modes, residuals: vec![0.0; places.len()], line: noted.line() }
    }

    fn members(&self, mode: Mode) -> Vec<usize> {
        (0..self.modes.len()).filter(|i| self.modes[*i] == mode).collect()
    }

    /// Mean of the instrument's error at the end of its class.
    fn error(&self, members: &[usize]) -> f64 {
        members.iter().map(|i| self.places[*i].1).sum::<f64>() / (members.len() as f64).max(1.0)
    }

    fn end(self, low: Option<Group>, high: Option<Group>) -> Expectation {
        let values = self.places.iter().map(|(place, _)| value(*place)).collect();
        let Self { modes, residuals, line, cut, .. } = self;
        Expectation { modes, low, high, residuals, values, line, cut }
    }
}
