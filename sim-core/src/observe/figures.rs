//! With how many digits a scale shows what it shows. Displays, notebooks and sheets ask here.

use super::{Scale, ShownValue};
use crate::action::Written;

/// Most digits behind the point.
const MOST_DECIMALS: usize = 6;

/// Smallest step that can be written, as a whole number of them in one: what is finer is rounding.
const FINEST_IN_ONE: f64 = 1e6;

impl Scale {
    /// How many digits stand behind the point: as many as tell its smallest step exactly, six at most; 0 for levels.
    #[must_use]
    pub fn decimals(&self) -> usize {
        let Self::Numeric { resolution, .. } = self else { return 0 };
        let (mut step, mut decimals) = (*resolution, 0);
        while decimals < MOST_DECIMALS && 1e-9 < (step - step.round()).abs() {
            step *= 10.0;
            decimals += 1;
        }
        decimals
    }

    /// The characters of a display that shows `shown`: a number with all its digits, `OL` beyond its upper end, `-OL`
    /// beyond its lower one; `None` when it is dark, and for levels.
    #[must_use]
    pub fn characters(&self, shown: ShownValue) -> Option<String> {
        match shown {
            ShownValue::Steps(_) => {
                self.number(shown).map(|number| format!("{number:.decimals$}", decimals = self.decimals()))
            }
            ShownValue::Off(true) => Some("OL".to_owned()),
            ShownValue::Off(false) => Some("-OL".to_owned()),
            ShownValue::Level(_) | ShownValue::Blank => None,
        }
    }

    /// What a person who reads exactly writes down for `shown`, in the scale's unit; `None` when nothing is shown, when
    /// it is off the scale, and for levels.
    #[must_use]
    pub fn written(&self, shown: ShownValue) -> Option<Written> {
        let Self::Numeric { unit, .. } = self else { return None };
        // Rounded to what a person would write, so that 29 · 0.1 is 2.9.
        let value = (self.number(shown)? * FINEST_IN_ONE).round() / FINEST_IN_ONE;
        Some(Written { value, unit: (*unit).to_owned() })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(resolution: f64) -> Scale {
        Scale::Numeric { unit: "V", resolution, min: -60.0, max: 60.0, scatter: 0.0, by_eye: false }
    }

    #[test]
    fn displays_show_their_last_digit_and_their_ends() {
        let shows = |resolution, shown| of(resolution).characters(shown);
        for (steps, resolution, text) in [
            (1243, 0.01, "12.43"),
            (1300, 0.1, "130.0"),
            (7, 1.0, "7"),
            (-5, 0.5, "-2.5"),
            (-5, 0.01, "-0.05"),
            (3, 5.0, "15"),
            (2, 1e-3, "0.002"),
        ] {
            assert_eq!(shows(resolution, ShownValue::Steps(steps)).as_deref(), Some(text));
        }
        assert_eq!(shows(0.01, ShownValue::Off(true)).as_deref(), Some("OL"));
        assert_eq!(shows(0.01, ShownValue::Off(false)).as_deref(), Some("-OL"));
        assert_eq!(shows(0.01, ShownValue::Blank), None);
    }

    #[test]
    fn what_is_written_is_what_the_digits_say() {
        for resolution in [0.01, 0.1, 0.25, 0.5, 1.0] {
            for steps in -240..=240 {
                let (scale, shown) = (of(resolution), ShownValue::Steps(steps));
                let written = scale.written(shown).unwrap();
                assert_eq!(written.unit, "V");
                let digits: f64 = scale.characters(shown).unwrap().parse().unwrap();
                assert!((written.value - digits).abs() < 1e-12, "{steps} · {resolution}: {written:?}");
            }
        }
        assert_eq!(of(0.1).written(ShownValue::Steps(29)).unwrap().value.to_string(), "2.9");
        assert_eq!(of(0.1).written(ShownValue::Off(true)), None);
    }
}
