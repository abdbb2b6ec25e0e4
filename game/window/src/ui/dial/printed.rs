//! A scale as it is printed on a face: span, marks, numbers, unit, class, in the unit the trainee has
//! chosen for pressure.
//!
//! A dial in mbar or inHg is another dial, not another label: its divisions are round numbers of its own
//! unit and never coarser than those of the instrument, so that a reading to half a division is worth as
//! much as one in kPa.

use sim_core::instrument::{Display, InstrumentKind};

use front::prefs::PressureUnit;
use front::words::{Words, pretty_unit};

/// More divisions than this do not fit round a dial; then a part of the scale is shown, enlarged.
const MOST_DIVISIONS: u32 = 110;
/// Numbers round a dial, at most this many intervals.
const MOST_NUMBERS: u32 = 10;

/// A scale as it is printed.
#[derive(Clone, Debug, PartialEq)]
pub struct Printed {
    /// Lower end, in the printed unit.
    pub min: f64,
    /// Upper end.
    pub max: f64,
    /// One division.
    pub division: f64,
    /// A number stands at every so many divisions.
    pub per_number: u32,
    /// Unit as printed.
    pub unit: &'static str,
    /// Accuracy class, percent of span.
    pub class: f64,
    /// A pressure dial, whose class is printed as EN 837-1 asks.
    pub pressure: bool,
    /// Printed units for one of the instrument's own.
    per_own: f64,
}

/// Where a pointer stands, as an eye tells it: to half a division and no better.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Stand {
    /// On a mark.
    On(f64),
    /// Half way between two marks.
    Between(f64, f64),
    /// Against the lower stop.
    LowStop,
    /// Against the upper stop.
    HighStop,
}

/// Whether a step is 1, 2 or 5 times a power of ten.
fn is_round(step: f64) -> bool {
    let power = 10f64.powf(step.log10().floor());
    [1.0, 2.0, 5.0, 10.0].iter().any(|n| (step / power - n).abs() < 1e-6)
}

/// The largest round step that is not coarser than `step`.
fn round_down(step: f64) -> f64 {
    let power = 10f64.powf(step.log10().floor());
    [5.0, 2.0, 1.0].iter().map(|n| n * power).find(|s| *s <= step * (1.0 + 1e-9)).unwrap_or(power)
}

impl Printed {
    /// The scale of an instrument in the wanted unit; `None` for what has no dial.
    #[must_use]
    pub fn of(kind: &InstrumentKind, pressure: PressureUnit) -> Option<Self> {
        let Display::Dial(own, dial) = kind.nature().display(None)? else { return None };
        let is_pressure = own == "kPa";
        let unit = if is_pressure { pressure.symbol() } else { pretty_unit(own) };
        let per_own = if is_pressure { pressure.per_kpa() } else { 1.0 };
        let division = round_down(dial.division * per_own);
        let (min, max) = (dial.min * per_own, dial.max * per_own);
        let count = ((max - min) / division).round().max(1.0) as u32;
        let per_number = [1, 2, 4, 5, 10, 20, 50]
            .into_iter()
            .find(|n| is_round(division * f64::from(*n)) && count <= MOST_NUMBERS * n)
            .unwrap_or(10);
        let per_number = if MOST_DIVISIONS < count { 10 } else { per_number };
        // In another unit the ends are moved out to the next number.
        let step = division * f64::from(per_number);
        let (low, high) = ((min / step + 1e-6).floor() * step, (max / step - 1e-6).ceil() * step);
        let own = (per_own - 1.0).abs() < 1e-12;
        let (min, max) = if own { (min, max) } else { (low, high) };
        Some(Self { min, max, division, per_number, unit, class: dial.class, pressure: is_pressure, per_own })
    }

    /// Number of divisions.
    #[must_use]
    pub fn divisions(&self) -> u32 {
        ((self.max - self.min) / self.division).round().max(1.0) as u32
    }

    /// Whether the whole scale fits round a dial; else a part of it is shown, enlarged.
    #[must_use]
    pub fn fits_round(&self) -> bool {
        self.divisions() <= MOST_DIVISIONS
    }

    /// A value of the instrument in the printed unit.
    #[must_use]
    pub fn printed(&self, own: f64) -> f64 {
        own * self.per_own
    }

    /// A printed value in the instrument's own unit.
    #[must_use]
    pub fn own(&self, printed: f64) -> f64 {
        printed / self.per_own
    }

    /// The value of mark number `i`, counted from the lower end.
    #[must_use]
    pub fn mark(&self, i: u32) -> f64 {
        self.min + f64::from(i) * self.division
    }

    /// Whether mark number `i` carries a number.
    #[must_use]
    pub fn numbered(&self, i: u32) -> bool {
        // Numbers are multiples of their step, whatever the lower end.
        let step = self.division * f64::from(self.per_number);
        let times = self.mark(i) / step;
        (times - times.round()).abs() < 1e-6
    }

    /// Whether mark number `i` is half way between two numbers.
    #[must_use]
    pub fn halfway(&self, i: u32) -> bool {
        let step = self.division * f64::from(self.per_number);
        let times = self.mark(i) / step;
        self.per_number.is_multiple_of(2) && ((times - times.floor()) - 0.5).abs() < 1e-6
    }

    /// Where a pointer at `value` (printed unit) stands for an eye.
    #[must_use]
    pub fn stand(&self, value: f64) -> Stand {
        let quarter = 0.25 * self.division;
        if value < self.min - quarter {
            return Stand::LowStop;
        }
        if self.max + quarter < value {
            return Stand::HighStop;
        }
        let halves = ((value.clamp(self.min, self.max) - self.min) / (0.5 * self.division)).round() as u32;
        if halves.is_multiple_of(2) {
            Stand::On(self.mark(halves / 2))
        } else {
            Stand::Between(self.mark(halves / 2), self.mark(halves / 2 + 1))
        }
    }
}

/// A number as it is printed on a face: no more digits than it needs, a true minus.
#[must_use]
pub fn figure(value: f64) -> String {
    let rounded = (value * 1e4).round() / 1e4;
    let text = if rounded == 0.0 { "0".to_owned() } else { format!("{rounded}") };
    text.replace('-', "\u{2212}")
}

/// The same with the decimal sign of the language shown.
#[must_use]
pub fn figure_in(words: &Words, value: f64) -> String {
    let point = words.say("decimal-mark");
    figure(value).replace('.', &point)
}

#[cfg(test)]
mod tests {
    use super::*;
    use sim_core::instrument::Dial;

    fn kinds() -> Vec<InstrumentKind> {
        let dial = |min, max, class, division| Dial { min, max, class, division };
        vec![
            InstrumentKind::Gauge { dial: dial(-100.0, 0.0, 1.6, 2.0) },
            InstrumentKind::HandPump { dial: dial(-100.0, 0.0, 2.5, 5.0) },
            InstrumentKind::Barometer { dial: dial(60.0, 110.0, 0.6, 0.5) },
            InstrumentKind::WallThermometer { dial: dial(-30.0, 50.0, 1.0, 1.0) },
            InstrumentKind::AngleFinder { dial: dial(0.0, 180.0, 0.5, 1.0) },
            InstrumentKind::PedalRule { dial: dial(0.0, 200.0, 0.5, 1.0) },
        ]
    }

    #[test]
    fn inv_no_printed_scale_is_coarser_or_shorter_than_the_instrument() {
        for kind in kinds() {
            let own = kind.dial().unwrap();
            for unit in PressureUnit::ALL {
                let p = Printed::of(&kind, unit).unwrap();
                assert!(p.division <= p.printed(own.division) * (1.0 + 1e-9), "{kind:?} in {unit:?}: {p:?}");
                assert!(p.min <= p.printed(own.min) + 1e-9 && p.printed(own.max) <= p.max + 1e-9, "{p:?}");
                assert!(is_round(p.division), "{p:?}");
                let numbers = (0..=p.divisions()).filter(|i| p.numbered(*i)).count();
                assert!(5 <= numbers, "{numbers} numbers on {p:?}");
                assert!(p.numbered(0) && p.numbered(p.divisions()), "{p:?}");
            }
        }
    }

    #[test]
    fn the_gauge_in_three_units() {
        let gauge = kinds()[0];
        let kpa = Printed::of(&gauge, PressureUnit::Kpa).unwrap();
        assert_eq!((kpa.min, kpa.max, kpa.division, kpa.per_number), (-100.0, 0.0, 2.0, 5));
        let mbar = Printed::of(&gauge, PressureUnit::Mbar).unwrap();
        assert_eq!((mbar.min, mbar.max, mbar.division, mbar.per_number), (-1000.0, 0.0, 20.0, 5));
        let inhg = Printed::of(&gauge, PressureUnit::Inhg).unwrap();
        assert_eq!((inhg.min, inhg.max, inhg.division, inhg.unit), (-30.0, 0.0, 0.5, "inHg"));
    }

    #[test]
    fn an_eye_tells_half_a_division() {
        let p = Printed::of(&kinds()[0], PressureUnit::Kpa).unwrap();
        assert_eq!(p.stand(-60.2), Stand::On(-60.0));
        assert_eq!(p.stand(-60.9), Stand::Between(-62.0, -60.0));
        assert_eq!(p.stand(-103.0), Stand::LowStop);
        assert_eq!(p.stand(4.0), Stand::HighStop);
        assert_eq!(p.stand(0.3), Stand::On(0.0));
    }

    #[test]
    fn figures_are_short() {
        assert_eq!(figure(-0.0), "0");
        assert_eq!(figure(-60.0), "\u{2212}60");
        assert_eq!(figure(0.1 + 0.2), "0.3");
    }
}
