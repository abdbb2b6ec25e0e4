//! Ways in which a note can come out that are no matter of degree: the pump runs or stands, a display is dark.
//!
//! They are read off the cars: places on the line fall into two groups when the widest gap between neighbours is wide
//! against the other gaps.

use crate::infer::reading::Place;

/// So many times the other gaps is wide.
const WIDE: f64 = 20.0;

/// The way a note comes out in a car.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mode {
    /// On the line; the lower group where there are two.
    Low,
    /// On the line, in the upper group.
    High,
    /// A time without an end.
    Beyond,
    /// A dark display.
    Dark,
    /// It cannot come about.
    Nowhere,
}

impl Mode {
    /// All of them.
    pub const ALL: [Self; 5] = [Self::Low, Self::High, Self::Beyond, Self::Dark, Self::Nowhere];
}

/// Between which places two groups part; `+inf` when all are one group. `floor`: what gaps are measured against at least.
#[must_use]
pub fn cut(places: &[Place], floor: f64) -> f64 {
    let mut values: Vec<f64> = places.iter().filter_map(|place| value(*place)).collect();
    if values.len() < 3 {
        return f64::INFINITY;
    }
    values.sort_by(f64::total_cmp);
    let gaps: Vec<f64> = values.windows(2).map(|pair| pair[1] - pair[0]).collect();
    let widest = (0..gaps.len()).fold(0, |best, i| if gaps[best] < gaps[i] { i } else { best });
    let mut others: Vec<f64> =
        gaps.iter().enumerate().filter(|(i, _)| *i != widest).map(|(_, gap)| *gap).collect();
    others.sort_by(f64::total_cmp);
    let middle = 0.5 * (others[(others.len() - 1) / 2] + others[others.len() / 2]);
    let mean = others.iter().sum::<f64>() / others.len() as f64;
    let inner = middle.max(0.5 * floor).max(0.5 * mean);
    if WIDE * inner < gaps[widest] { 0.5 * (values[widest] + values[widest + 1]) } else { f64::INFINITY }
}

/// The mode of a place, when groups part at `cut`.
#[must_use]
pub fn mode(place: Place, cut: f64) -> Mode {
    match place {
        Place::At(value) if cut < value => Mode::High,
        Place::At(_) => Mode::Low,
        Place::Beyond => Mode::Beyond,
        Place::Dark => Mode::Dark,
        Place::Nowhere => Mode::Nowhere,
    }
}

/// The place on the line, if it is on it.
#[must_use]
pub fn value(place: Place) -> Option<f64> {
    match place {
        Place::At(value) => Some(value),
        Place::Beyond | Place::Dark | Place::Nowhere => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(values: &[f64]) -> Vec<Place> {
        values.iter().map(|v| Place::At(*v)).collect()
    }

    #[test]
    fn two_groups_part_at_the_gap_and_an_even_row_does_not() {
        let even: Vec<f64> = (0..16).map(f64::from).collect();
        assert_eq!(cut(&at(&even), 0.1), f64::INFINITY);
        let mut apart = even.clone();
        apart.extend([500.0, 501.0]);
        assert_eq!(cut(&at(&apart), 0.1), 257.5);
        assert_eq!(mode(Place::At(500.0), 257.5), Mode::High);
        assert_eq!(mode(Place::At(15.0), 257.5), Mode::Low);
        assert_eq!(cut(&at(&[0.0, 900.0]), 0.1), f64::INFINITY, "two are no groups");
    }
}
