//! What came of it, beside what is asked.

use std::collections::BTreeMap;

use super::{Line, Marker};

/// Largest standard deviation of a mark over other coefficients, points (acceptance of the marks).
const SPREAD: f64 = 3.0;
/// Largest share of marks in which *competent* is another one.
const FLIPPED: f64 = 0.02;
/// Largest difference of a mark between twice and four times the cars, points.
const BY_CARS: f64 = 1.0;

/// The table.
pub(crate) fn of(lines: &[Line]) -> String {
    let mut routes: BTreeMap<&str, Vec<&Line>> = BTreeMap::new();
    for line in lines {
        routes.entry(&line.name).or_default().push(line);
    }
    let mut out = String::new();
    let mut say = |text: String| out.push_str(&text);
    say(format!(
        "{:<34} {:>6} {:>6} {:>6} {:>6} {:>6} {:>7} {:>6} {:>6}\n",
        "route", "built", "draws", "mean", "sd", "least", "flipped", "2x", "4x"
    ));
    let (mut all, mut flips, mut widest, mut squares, mut degrees) = (0, 0, 0.0_f64, 0.0, 0.0);
    let (mut by_cars, mut most_by_cars) = (0, 0.0_f64);
    for (name, lines) in &routes {
        let cars = |times| lines.iter().find(|line| line.marker == Marker::Cars(times));
        let Some(built) = cars(1) else { continue };
        let others: Vec<&&Line> =
            lines.iter().filter(|line| matches!(line.marker, Marker::Other(_))).collect();
        let many = others.len() as f64;
        let mean = others.iter().map(|line| line.total).sum::<f64>() / many.max(1.0);
        let square = others.iter().map(|line| (line.total - mean).powi(2)).sum::<f64>();
        let spread = (square / (many - 1.0).max(1.0)).sqrt();
        let least = others.iter().map(|line| line.total).fold(f64::INFINITY, f64::min);
        let flipped = others.iter().filter(|line| line.competent != built.competent).count();
        let total = |times| cars(times).map_or(f64::NAN, |line| line.total);
        say(format!(
            "{name:<34} {:>6.1} {:>6} {mean:>6.1} {spread:>6.2} {least:>6.1} {flipped:>7} {:>6.1} {:>6.1}\n",
            built.total,
            others.len(),
            total(2),
            total(4)
        ));
        all += others.len();
        flips += flipped;
        widest = widest.max(spread);
        squares += square;
        degrees += (many - 1.0).max(0.0);
        let apart = (total(2) - total(4)).abs();
        if apart.is_finite() {
            by_cars += 1;
            most_by_cars = most_by_cars.max(apart);
        }
    }
    let verdict = |holds: bool| if holds { "holds" } else { "does not hold" };
    let pooled = (squares / f64::max(degrees, 1.0)).sqrt();
    say(format!(
        "\nstandard deviation over coefficients: {pooled:.2} points over all routes, {widest:.2} at the widest (below {SPREAD}): \
         {}\n",
        verdict(widest < SPREAD)
    ));
    let share = flips as f64 / f64::max(all as f64, 1.0);
    say(format!(
        "competent another one: {flips} of {all} ({:.1} %, at most {:.0} %): {}\n",
        share * 100.0,
        FLIPPED * 100.0,
        verdict(share <= FLIPPED)
    ));
    say(format!(
        "between twice and four times the cars: {most_by_cars:.2} points at most in {by_cars} routes (below {BY_CARS}): {}\n",
        verdict(most_by_cars < BY_CARS)
    ));
    out
}
