//! Notes that differ little from one before them.
//!
//! The same gauge read again, two ends of one hose, the store and then the store ten minutes later: within a hypothesis such
//! readings differ by far less than each varies from car to car. What the second one tells is the difference. Taken for
//! itself it would be believed anew, and where readings bend with severity (all of the vacuum is lost, or most of it) the
//! chance of the same nought once more would tell against every hypothesis whose cars differ there.

use crate::infer::expectation::{After, Expectation};
use crate::infer::fitted::Points;
use crate::infer::line::Line;
use crate::infer::modes::Mode;
use crate::infer::reading::Noted;

/// A difference is kept when it varies less than this share of what the note itself varies (variances).
const KEPT: f64 = 0.5;
/// Share of the cars of a group that must be in one group at the note before, too.
const IN_BOTH: f64 = 0.8;
/// Least number of them.
const LEAST: usize = 3;
/// So many are kept, those that vary least.
const MOST: usize = 4;

/// The groups on the line.
const GROUPS: [Mode; 2] = [Mode::Low, Mode::High];

/// Lets a note know those before it that it differs little from. `at`: severity of each car, none for sound cars; `nodes`:
/// severities asked for.
pub fn compare(note: &mut Expectation, noted: &Noted, before: &[Expectation], at: &[f64], nodes: &[f64]) {
    let Some(line) = note.line else { return };
    for mode in GROUPS {
        let mut all: Vec<(f64, After)> = Vec::new();
        for (index, other) in before.iter().enumerate().filter(|(_, other)| other.line == Some(line)) {
            for of in GROUPS {
                all.extend(difference(note, mode, other, of).and_then(|difference| {
                    let (mean, variance) = difference.fitted(noted, at, nodes)?;
                    let freedom = (difference.cars.len() as f64 - 2.0).max(1.0);
                    Some((difference.variance, After { note: index, mode: of, mean, variance, freedom }))
                }));
            }
        }
        all.sort_by(|a, b| a.0.total_cmp(&b.0));
        if let Some(group) = note.group_mut(mode) {
            group.after = all.into_iter().take(MOST).map(|(_, after)| after).collect();
        }
    }
}

/// How far cars stand at one note from where they stood at another.
struct Difference {
    cars: Vec<usize>,
    /// Per car of the hypothesis.
    apart: Vec<Option<f64>>,
    /// Variance among them.
    variance: f64,
}

/// The difference of two groups, if it is worth knowing.
fn difference(note: &Expectation, mode: Mode, other: &Expectation, of: Mode) -> Option<Difference> {
    let members = note.modes.iter().filter(|m| **m == mode).count();
    let is_in_both = |i: &usize| note.modes[*i] == mode && other.modes[*i] == of;
    let cars: Vec<usize> = (0..note.modes.len()).filter(is_in_both).collect();
    if cars.len() < LEAST || (cars.len() as f64) < IN_BOTH * members as f64 {
        return None;
    }
    let apart: Vec<Option<f64>> =
        note.values.iter().zip(&other.values).map(|(a, b)| Some((*a)? - (*b)?)).collect();
    let spread =
        |values: &[Option<f64>]| variance(&cars.iter().filter_map(|i| values[*i]).collect::<Vec<_>>());
    let (own, variance) = (spread(&note.values), spread(&apart));
    (variance < KEPT * own).then_some(Difference { cars, apart, variance })
}

/// Variance of some numbers.
fn variance(values: &[f64]) -> f64 {
    let n = values.len() as f64;
    let mean = values.iter().sum::<f64>() / n;
    values.iter().map(|v| (v - mean) * (v - mean)).sum::<f64>() / n
}

impl Difference {
    /// Middle and variance of another car's difference, per node.
    fn fitted(&self, noted: &Noted, at: &[f64], nodes: &[f64]) -> Option<(Vec<f64>, Vec<f64>)> {
        if at.is_empty() {
            // Sound cars: no severity, and many of them.
            let n = self.cars.len() as f64;
            let mean = self.cars.iter().filter_map(|i| self.apart[*i]).sum::<f64>() / n;
            let floor = noted.floor(mean);
            let variance = self.variance * (n + 1.0) / (n - 1.0) + floor * floor;
            return Some((vec![mean; nodes.len()], vec![variance; nodes.len()]));
        }
        let fitted = Points::of(&self.cars, |i| self.apart[i], at).fitted(noted)?;
        let at_nodes: Vec<(Line, f64)> = nodes.iter().map(|node| fitted.at_node(noted, *node)).collect();
        Some(at_nodes.into_iter().map(|(line, variance)| (line.value, variance)).unzip())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::infer::chain::Chain;
    use crate::infer::forecast::{Forecast, NODES};
    use crate::infer::reading::Place;

    /// Cars of each hypothesis.
    const CARS: usize = 16;
    /// Looks.
    const LOOKS: usize = 6;

    /// A forecast of the same look, again and again, in cars that show `show` of their severity.
    fn forecast(show: impl Fn(usize, f64) -> f64) -> Forecast {
        let noted = Noted::of_gauge((-0.5, 0.5));
        let at: Vec<f64> = (0..CARS).map(|car| (car as f64 + 0.5) / CARS as f64).collect();
        let sound_places: Vec<(Place, f64)> =
            (0..CARS).map(|car| (Place::At(-60.0 - 0.1 * car as f64), 1.6)).collect();
        let beside: Vec<Place> = sound_places.iter().map(|(place, _)| *place).collect();
        let (mut sound, mut fault) = (Forecast::of_sound(CARS), Forecast::of_fault(at.clone()));
        for note in 0..LOOKS {
            let places: Vec<(Place, f64)> =
                at.iter().enumerate().map(|(car, at)| (Place::At(show(car, *at)), 1.6)).collect();
            sound.take(&noted, &sound_places, None);
            fault.take(&noted, &places, Some((&sound, &beside)));
            let common = Forecast::common(&[&fault], note);
            let of_sound = sound.draw_towards(&common, None).to_vec();
            fault.draw_towards(&common, Some(&of_sound));
        }
        fault
    }

    /// Natural log of the chance of a nought at every look so far, look by look, at one node of severity.
    fn told(forecast: &Forecast, node: usize) -> Vec<f64> {
        let (noted, mut chain) = (Noted::of_gauge((-0.5, 0.5)), Chain::new(forecast, node));
        (0..LOOKS).map(|note| chain.take(forecast, note, &noted, 0.1)).collect()
    }

    /// One fault empties the store in every car, the other in those beyond a bend, wherever that is in a car. Near the bend the
    /// first nought tells between the two; the same nought again does not.
    #[test]
    fn inv_the_same_nought_again_does_not_tell_again() {
        /// Odds that five more looks at the same thing may move, as a ratio.
        const MOVED: f64 = 3.0;
        let bent = forecast(|car, at| (-150.0 * (0.75 - at + 0.02 * (car % 5) as f64)).clamp(-60.0, 0.0));
        let flat = forecast(|_, _| 0.0);
        // Three quarters of the range.
        let node = 3 * NODES / 4 - 1;
        let (bent, flat) = (told(&bent, node), told(&flat, node));
        let later = |told: &[f64]| told[1..].iter().sum::<f64>();
        assert!(bent[0] < flat[0], "{bent:?} {flat:?}");
        assert!(later(&flat) - later(&bent) < MOVED.ln(), "{bent:?} {flat:?}");
    }
}
