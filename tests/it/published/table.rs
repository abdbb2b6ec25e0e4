//! What a test's body is given: its figures by name, and whether each was asked for and hit.

use std::collections::BTreeSet;
use std::fmt::Display;

use super::row::{Check, Figure, Source, Through, Want};

/// The figures of one test.
///
/// Every comparison is printed (`--nocapture`); the misses are reported together at the end, so that a failure
/// shows the whole row.
pub(crate) struct Table {
    check: &'static Check,
    /// Figures asked for: source, figure, place in a series.
    asked: BTreeSet<(usize, usize, usize)>,
    misses: Vec<String>,
}

impl Table {
    pub(super) fn of(check: &'static Check) -> Self {
        Self { check, asked: BTreeSet::new(), misses: Vec::new() }
    }

    /// The code gives `got` for this number or band.
    pub(crate) fn is(&mut self, what: &str, got: f64) {
        self.is_for(what, "", got);
    }

    /// The code gives `got` for this number or band, asked for `whom` (`{}` in its name).
    pub(crate) fn is_for(&mut self, what: &str, whom: impl Display, got: f64) {
        let (place, source, figure) = self.find(what);
        let (min, max) = match figure.want {
            Want::Value(printed) => either_way(figure, printed),
            Want::Band(min, max) => (min, max),
            Want::Series(_) | Want::Bands(_) | Want::Formula(_) => {
                panic!("{what:?} is neither a number nor a band: use `series`, `at` or `follows`")
            }
        };
        self.compare((place.0, place.1, 0), source, &named(figure, &whom), got, min, max);
    }

    /// The code gives `got(x)` at every argument `x` of this series.
    pub(crate) fn series(&mut self, what: &str, mut got: impl FnMut(f64) -> f64) {
        let (.., figure) = self.find(what);
        let arguments: Vec<f64> = match figure.want {
            Want::Series(points) => points.iter().map(|p| p.0).collect(),
            Want::Bands(points) => points.iter().map(|p| p.0).collect(),
            Want::Value(_) | Want::Band(..) | Want::Formula(_) => panic!("{what:?} is no series"),
        };
        for x in arguments {
            self.at(what, x, got(x));
        }
    }

    /// The code gives `got` at the argument `x` of this series.
    pub(crate) fn at(&mut self, what: &str, x: f64, got: f64) {
        let (place, source, figure) = self.find(what);
        let same = |a: f64| a.to_bits() == x.to_bits();
        let found = match figure.want {
            Want::Series(points) => points.iter().position(|p| same(p.0)).map(|i| (i, points[i].1, None)),
            Want::Bands(points) => {
                points.iter().position(|p| same(p.0)).map(|i| (i, points[i].1, Some(points[i].2)))
            }
            Want::Value(_) | Want::Band(..) | Want::Formula(_) => panic!("{what:?} is no series"),
        };
        let (i, first, last) = found.unwrap_or_else(|| panic!("{what:?} has nothing at {x}"));
        let (min, max) = last.map_or_else(|| either_way(figure, first), |max| (first, max));
        self.compare((place.0, place.1, i), source, &named(figure, &x), got, min, max);
    }

    /// The code gives `got` where the formula gives `wanted`.
    pub(crate) fn follows(&mut self, what: &str, got: f64, wanted: f64) {
        self.follows_for(what, "", got, wanted);
    }

    /// The code gives `got` where the formula gives `wanted`, asked for `whom` (`{}` in its name).
    pub(crate) fn follows_for(&mut self, what: &str, whom: impl Display, got: f64, wanted: f64) {
        let (place, source, figure) = self.find(what);
        let Want::Formula(_) = figure.want else {
            panic!("{what:?} is no formula: its number stands in the table")
        };
        let (min, max) = either_way(figure, wanted);
        self.compare((place.0, place.1, 0), source, &named(figure, &whom), got, min, max);
    }

    /// The points of a series, as printed.
    pub(crate) fn points(&self, what: &str) -> &'static [(f64, f64)] {
        match self.find(what).2.want {
            Want::Series(points) => points,
            Want::Value(_) | Want::Band(..) | Want::Bands(_) | Want::Formula(_) => {
                panic!("{what:?} is no series")
            }
        }
    }

    fn find(&self, what: &str) -> ((usize, usize), &'static Source, &'static Figure) {
        for (i, source) in self.check.sources.iter().enumerate() {
            if let Some(j) = source.figures.iter().position(|f| f.what == what) {
                return ((i, j), source, &source.figures[j]);
            }
        }
        panic!("{what:?} stands in no row of {}", self.check.test)
    }

    /// A NaN is a miss.
    fn compare(
        &mut self,
        place: (usize, usize, usize),
        source: &Source,
        what: &str,
        got: f64,
        min: f64,
        max: f64,
    ) {
        self.asked.insert(place);
        let hit = (min..=max).contains(&got);
        let line =
            format!("row {} ({}) {what}: {got:.9} against {min:.9} to {max:.9}", source.rows, source.body);
        println!("{line}{}", if hit { "" } else { "  MISS" });
        if !hit {
            self.misses.push(line);
        }
    }

    /// What is wrong once the body has run; `stepped` when a circuit was.
    pub(super) fn faults(self, stepped: bool) -> Vec<String> {
        let mut faults = self.misses;
        for (i, source) in self.check.sources.iter().enumerate() {
            for (j, figure) in source.figures.iter().enumerate() {
                let n = match figure.want {
                    Want::Series(points) => points.len(),
                    Want::Bands(points) => points.len(),
                    Want::Value(_) | Want::Band(..) | Want::Formula(_) => 1,
                };
                let left = (0..n).filter(|k| !self.asked.contains(&(i, j, *k))).count();
                if 0 < left {
                    faults
                        .push(format!("row {}, {:?}: {left} of {n} not asked for", source.rows, figure.what));
                }
            }
        }
        match (self.check.through, stepped) {
            (Through::Step, false) => {
                faults.push("said to go through the step, and runs no circuit".to_owned())
            }
            (Through::Law | Through::Own, true) => {
                faults.push("runs a circuit: it goes through Step".to_owned())
            }
            (Through::Step, true) | (Through::Law | Through::Own, false) => {}
        }
        faults
    }
}

fn either_way(figure: &Figure, wanted: f64) -> (f64, f64) {
    let margin = figure.margin.of(wanted);
    (wanted - margin, wanted + margin)
}

fn named(figure: &Figure, whom: &impl Display) -> String {
    format!("{}, {}", figure.what.replace("{}", &whom.to_string()), figure.unit)
}

mod tests {
    use super::super::row::{Check, Source, Through, Tolerance, abs, band, series, value};
    use super::Table;

    const CLOSE: Tolerance = Tolerance::new("CLOSE", "0.1", 0.1, " Because the example says so.");
    const CHECK: Check = Check {
        test: "val_example",
        through: Through::Own,
        laws: &[],
        sources: &[Source {
            rows: "0.1",
            body: "an example",
            figures: &[
                value("one", "1", 1.0, abs(CLOSE)),
                series("at {}", "1", &[(1.0, 10.0), (2.0, 20.0)], abs(CLOSE)),
                band("between", "1", 0.0, 1.0),
            ],
        }],
    };

    /// The faults when the body gives these numbers, `None` where it does not ask.
    fn faults(one: Option<f64>, at: &[(f64, f64)], between: Option<f64>, stepped: bool) -> usize {
        let mut table = Table::of(&CHECK);
        if let Some(got) = one {
            table.is("one", got);
        }
        for (x, got) in at {
            table.at("at {}", *x, *got);
        }
        if let Some(got) = between {
            table.is("between", got);
        }
        table.faults(stepped).len()
    }

    #[test]
    fn what_is_not_asked_for_or_missed_is_a_fault() {
        let both = [(1.0, 10.0), (2.0, 20.05)];
        assert_eq!(faults(Some(1.05), &both, Some(1.0), false), 0);
        assert_eq!(faults(None, &both, Some(1.0), false), 1, "a figure left out");
        assert_eq!(faults(Some(1.0), &both[..1], Some(1.0), false), 1, "a point of a series left out");
        assert_eq!(faults(Some(1.2), &both, Some(1.0), false), 1, "beside the figure");
        assert_eq!(faults(Some(f64::NAN), &both, Some(-0.1), false), 2, "no number, and below the band");
        assert_eq!(faults(Some(1.0), &both, Some(1.0), true), 1, "a circuit was run and the entry says Own");
        assert_eq!(faults(None, &[], None, false), 3, "nothing asked for");
    }

    #[test]
    #[should_panic(expected = "stands in no row")]
    fn what_stands_in_no_row_cannot_be_asserted() {
        Table::of(&CHECK).is("two", 2.0);
    }

    #[test]
    #[should_panic(expected = "has nothing at 3")]
    fn a_point_that_is_not_printed_cannot_be_asserted() {
        Table::of(&CHECK).at("at {}", 3.0, 30.0);
    }

    #[test]
    #[should_panic(expected = "a tolerance needs its reason")]
    fn a_tolerance_without_a_reason_is_refused() {
        // In a table this is an error of compilation; without any `///` the table does not even read.
        Tolerance::new("CLOSE", "0.1", 0.1, std::hint::black_box(" —"));
    }
}
