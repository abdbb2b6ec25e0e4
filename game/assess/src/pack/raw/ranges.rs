//! Ranges of the blocks whose types live in other crates.

use crate::pack::range::{Range, Unit};

/// `Day.altitude_m`.
pub(crate) const ALTITUDE_M: Range = Range::new(-400.0, 4500.0, Unit::InName);
/// `Day.weather_kpa`.
pub(crate) const WEATHER_KPA: Range = Range::new(-6.0, 5.0, Unit::InName);
/// `Day.ambient_c`.
pub(crate) const AMBIENT_C: Range = Range::new(-30.0, 45.0, Unit::InName);
/// `Day.night_drop_k`.
pub(crate) const NIGHT_DROP_K: Range = Range::new(0.0, 25.0, Unit::InName);
/// `Arrival.stood_min`.
pub(crate) const STOOD_MIN: Range = Range::new(0.0, 10_000.0, Unit::InName);
/// `ShortRest.below_s`, `LongRun.above_s`.
pub(crate) const SYMPTOM_S: Range = Range::new(1.0, 43_200.0, Unit::InName);
/// `HardPedalAfterNight.above_kpa_gauge`.
pub(crate) const SYMPTOM_KPA: Range = Range::new(-100.0, 0.0, Unit::InName);
/// `Place.at`, `Place.points`.
pub(crate) const GRID: Range = Range::new(0.0, 400.0, Unit::GridStep);
/// `Place.turn`.
pub(crate) const TURN: Range = Range::new(0.0, 3.0, Unit::QuarterTurn);
/// Sizes of `CoverShape` and `FixtureShape`.
pub(crate) const SIZE_M: Range = Range::new(0.005, 3.0, Unit::InName);
/// `Dial.class`.
pub(crate) const CLASS: Range = Range::new(0.05, 10.0, Unit::OfSpan);
/// `Dial.min`, `Dial.max`.
pub(crate) const DIAL: Range = Range::new(-1e4, 1e4, Unit::Instrument);
/// `Dial.division`.
pub(crate) const DIVISION: Range = Range::new(1e-4, 1e3, Unit::Instrument);
/// `DigitalRange.max`.
pub(crate) const DISPLAY_MAX: Range = Range::new(1e-3, 1e9, Unit::Instrument);
/// `DigitalRange.resolution`.
pub(crate) const RESOLUTION: Range = Range::new(1e-6, 1e3, Unit::Instrument);
/// `DigitalRange.percent`.
pub(crate) const PERCENT: Range = Range::new(0.0, 20.0, Unit::OfReading);
/// `DigitalRange.counts`.
pub(crate) const COUNTS: Range = Range::new(0.0, 100.0, Unit::Count);
/// `Stopwatch.reaction_s`.
pub(crate) const REACTION_S: Range = Range::new(0.0, 2.0, Unit::InName);
/// `IrThermometer.emissivity_set`, `emissivity_metal`.
pub(crate) const EMISSIVITY: Range = Range::new(0.05, 1.0, Unit::InName);
