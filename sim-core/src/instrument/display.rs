//! What an instrument shows its value on: its unit and range, its scale, and how far it errs.
//!
//! Dials: error = class percent of the span (EN 837-1, row in the check values), read by eye to half a
//! division. Digits: percent of reading + counts.

use super::kind::{Dial, DigitalRange, InstrumentKind};
use super::nature::Measured;
use crate::observe::Scale;
use crate::parts::elements::MeterMode;

/// A dial or a row of digits, in a unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Display<'a> {
    /// A dial read by eye.
    Dial(&'static str, &'a Dial),
    /// Digits that show values of both signs.
    Signed(&'static str, &'a DigitalRange),
    /// Digits from nought up.
    Unsigned(&'static str, &'a DigitalRange),
}

impl Display<'_> {
    /// The scale of a single reading whose scatter is `scatter`, one σ.
    #[must_use]
    pub fn scale(&self, scatter: f64) -> Scale {
        let digits = |unit, d: &DigitalRange, min| Scale::Numeric {
            unit,
            resolution: d.resolution,
            min,
            max: d.max,
            scatter,
            by_eye: false,
        };
        match *self {
            Self::Dial(unit, d) => Scale::Numeric {
                unit,
                resolution: 0.5 * d.division,
                min: d.min,
                max: d.max,
                scatter: 0.0,
                by_eye: true,
            },
            Self::Signed(unit, d) => digits(unit, d, -d.max),
            Self::Unsigned(unit, d) => digits(unit, d, 0.0),
        }
    }

    /// The largest constant error that its class allows at a true value, in its unit.
    #[must_use]
    pub fn error(&self, value: f64) -> f64 {
        match self {
            Self::Dial(_, d) => d.class * 0.01 * (d.max - d.min),
            Self::Signed(_, d) | Self::Unsigned(_, d) => {
                d.percent * 0.01 * value.abs() + d.counts * d.resolution
            }
        }
    }
}

impl InstrumentKind {
    /// All it has, each by the name that a file gives it, that of a meter in the order of its modes; none for what
    /// shows nothing to be read.
    pub fn displays(&self) -> impl Iterator<Item = (&'static str, Display<'_>)> {
        let one = |name, display| [Some((name, display)), None, None];
        let all = match self {
            Self::Gauge { dial } | Self::HandPump { dial } | Self::Barometer { dial } => {
                one("dial", Display::Dial("kPa", dial))
            }
            Self::WallThermometer { dial } => one("dial", Display::Dial("C", dial)),
            Self::AngleFinder { dial } => one("dial", Display::Dial("deg", dial)),
            Self::PedalRule { dial } => one("dial", Display::Dial("mm", dial)),
            Self::Multimeter { volt, ohm, ampere } => [
                Some(("volt", Display::Signed("V", volt))),
                Some(("ohm", Display::Unsigned("ohm", ohm))),
                Some(("ampere", Display::Signed("A", ampere))),
            ],
            Self::ClampAmmeter { ampere } => one("ampere", Display::Signed("A", ampere)),
            Self::IrThermometer { celsius, .. } => one("celsius", Display::Signed("C", celsius)),
            Self::Stopwatch { second, .. } => one("second", Display::Unsigned("s", second)),
            Self::Lamp
            | Self::PushLead
            | Self::PedalProp
            | Self::Plugs
            | Self::Clamps
            | Self::ListeningTube => [None, None, None],
        };
        all.into_iter().flatten()
    }

    /// The one that shows a value while the dial of a meter is set to `mode`; others have one at most.
    #[must_use]
    pub fn display(&self, mode: Option<MeterMode>) -> Option<Display<'_>> {
        let at = match (self.nature().measured, mode.unwrap_or_default()) {
            (Measured::Meter, MeterMode::Ohm) => 1,
            (Measured::Meter, MeterMode::Ampere) => 2,
            (_, MeterMode::Off | MeterMode::Volt | MeterMode::Ohm | MeterMode::Ampere) => 0,
        };
        self.displays().nth(at).map(|(_, display)| display)
    }

    /// Its dial, if it has one to be read by eye.
    #[must_use]
    pub fn dial(&self) -> Option<Dial> {
        match self.display(None)? {
            Display::Dial(_, dial) => Some(*dial),
            Display::Signed(..) | Display::Unsigned(..) => None,
        }
    }
}
