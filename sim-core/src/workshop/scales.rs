//! How each observation is shown: units, steps, ends, scatter; and how far an instrument errs.
//!
//! Dials: error = class percent of the span (EN 837-1, row in the check values), read by eye to half a
//! division. Digits: percent of reading + counts. Senses: levels with thresholds on a continuous measure.
//! Thresholds of hearing, sight and feel are common practice, no source, except touch (row 5.1).

use super::Workshop;
use super::hazards::{METAL_10_S_C, RUBBER_10_S_C};
use crate::action::Sense;
use crate::instrument::{Dial, DigitalRange, InstrumentKind};
use crate::observe::{Observed, Scale};
use crate::parts::instruments::MeterMode;

/// Hiss, log₁₀ of g/s: a hole of 0.25 mm at −60 kPa gauge passes 0.01 g/s and is faint; the seep of a
/// sound car (below 0.001 g/s) is silent.
const HISS: Scale = Scale::Ordinal {
    levels: &["nothing", "a faint hiss", "a clear hiss", "a loud hiss"],
    thresholds: &[-2.3, -1.3, -0.1],
    scatter: 0.12,
};
const HUM: Scale =
    Scale::Ordinal { levels: &["the pump is quiet", "the pump hums"], thresholds: &[0.5], scatter: 0.1 };
const TOUCH_METAL: Scale = Scale::Ordinal {
    levels: &["cool", "warm", "hot", "too hot to touch"],
    thresholds: &[32.0, 48.0, METAL_10_S_C],
    scatter: 1.5,
};
const TOUCH_RUBBER: Scale = Scale::Ordinal {
    levels: &["cool", "warm", "hot", "too hot to touch"],
    thresholds: &[32.0, 48.0, RUBBER_10_S_C],
    scatter: 1.5,
};
/// Felt by the foot in steps of 5 mm.
const TRAVEL: Scale =
    Scale::Numeric { unit: "mm", resolution: 5.0, min: 0.0, max: 250.0, scatter: 1.0, by_eye: false };
/// Change of travel in mm since the engine was started or stopped.
const MOVED: Scale = Scale::Ordinal {
    levels: &["it has risen clearly", "it has not moved", "it has dropped clearly"],
    thresholds: &[-4.0, 4.0],
    scatter: 0.7,
};
const APPLICATIONS: Scale = Scale::Ordinal {
    levels: &["none", "one", "two", "three", "four", "five", "six or more"],
    thresholds: &[0.5, 1.5, 2.5, 3.5, 4.5, 5.5],
    scatter: 0.15,
};
/// Filament temperature in K; the first glow is seen at the Draper point, about 800 K (from memory).
const LAMP: Scale = Scale::Ordinal {
    levels: &["dark", "it glimmers", "half bright", "bright"],
    thresholds: &[850.0, 1500.0, 2350.0],
    scatter: 30.0,
};
const BASE_BRAKES: Scale = Scale::Ordinal {
    levels: &["not in order", "fluid, hoses, discs and pads in order, pedal firm"],
    thresholds: &[0.5],
    scatter: 0.1,
};
const YARD: Scale = Scale::Ordinal {
    levels: &["no assist", "weak assist", "full assist"],
    thresholds: &[0.25, 0.55],
    scatter: 0.05,
};

fn dial(unit: &'static str, d: &Dial) -> Scale {
    Scale::Numeric { unit, resolution: 0.5 * d.division, min: d.min, max: d.max, scatter: 0.0, by_eye: true }
}

fn digital(unit: &'static str, d: &DigitalRange, min: f64, scatter: f64) -> Scale {
    Scale::Numeric { unit, resolution: d.resolution, min, max: d.max, scatter, by_eye: false }
}

/// What an instrument kind measures in a meter mode: its unit and its range, if it shows a number.
enum Display<'a> {
    Dial(&'static str, &'a Dial),
    Digits(&'static str, &'a DigitalRange),
}

fn display(kind: &InstrumentKind, mode: Option<MeterMode>) -> Option<Display<'_>> {
    Some(match kind {
        InstrumentKind::Gauge { dial } | InstrumentKind::HandPump { dial } => Display::Dial("kPa", dial),
        InstrumentKind::Barometer { dial } => Display::Dial("kPa", dial),
        InstrumentKind::WallThermometer { dial } => Display::Dial("C", dial),
        InstrumentKind::AngleFinder { dial } => Display::Dial("deg", dial),
        InstrumentKind::PedalRule { dial } => Display::Dial("mm", dial),
        InstrumentKind::Multimeter { volt, ohm, ampere } => match mode.unwrap_or_default() {
            MeterMode::Off | MeterMode::Volt => Display::Digits("V", volt),
            MeterMode::Ohm => Display::Digits("ohm", ohm),
            MeterMode::Ampere => Display::Digits("A", ampere),
        },
        InstrumentKind::ClampAmmeter { ampere } => Display::Digits("A", ampere),
        InstrumentKind::IrThermometer { celsius, .. } => Display::Digits("C", celsius),
        InstrumentKind::Stopwatch { second, .. } => Display::Digits("s", second),
        InstrumentKind::Lamp
        | InstrumentKind::PushLead
        | InstrumentKind::PedalProp
        | InstrumentKind::Plugs
        | InstrumentKind::Clamps
        | InstrumentKind::ListeningTube => return None,
    })
}

impl Workshop {
    /// The scale an observation is shown on. An unknown instrument gets a bare yes-or-no scale.
    #[must_use]
    pub fn scale(&self, what: &Observed) -> Scale {
        let (instrument, mode) = match what {
            Observed::Instrument { instrument, mode, .. } => (instrument, *mode),
            Observed::Interval { instrument, .. } => (instrument, None),
            Observed::Sense(sense) => return self.sense_scale(sense),
        };
        let kind = self.setup.kit.iter().find(|c| c.id == *instrument).map(|c| &c.kind);
        // The stopwatch is started and stopped by hand: two reactions.
        let scatter = match kind {
            Some(InstrumentKind::Stopwatch { reaction_s, .. }) => reaction_s * std::f64::consts::SQRT_2,
            _ => 0.0,
        };
        match kind.and_then(|k| display(k, mode)) {
            Some(Display::Dial(unit, d)) => dial(unit, d),
            Some(Display::Digits(unit @ ("V" | "A" | "C"), d)) => digital(unit, d, -d.max, scatter),
            Some(Display::Digits(unit, d)) => digital(unit, d, 0.0, scatter),
            None => HUM,
        }
    }

    fn sense_scale(&self, sense: &Sense) -> Scale {
        match sense {
            Sense::Hiss { .. } => HISS,
            Sense::Hum => HUM,
            Sense::Touch { part } => {
                let i = self.setup.car.assembly.part_index(part).map(usize::from);
                let rubber = i.and_then(|i| self.setup.car.stands.get(i)).is_some_and(|s| s.rubber);
                if rubber { TOUCH_RUBBER } else { TOUCH_METAL }
            }
            Sense::PedalTravel => TRAVEL,
            Sense::PedalMoved => MOVED,
            Sense::Applications => APPLICATIONS,
            Sense::Lamp { .. } => LAMP,
            Sense::BaseBrakes => BASE_BRAKES,
            Sense::YardDrive => YARD,
        }
    }

    /// The constant error of the instrument behind `what` at a true value, in the scale's unit, when its
    /// drawn share is `share` (−1 to 1); 0 for senses.
    #[must_use]
    pub fn instrument_error(&self, what: &Observed, value: f64, share: f64) -> f64 {
        let (instrument, mode) = match what {
            Observed::Instrument { instrument, mode, .. } => (instrument, *mode),
            Observed::Interval { instrument, .. } => (instrument, None),
            Observed::Sense(_) => return 0.0,
        };
        let kind = self.setup.kit.iter().find(|c| c.id == *instrument).map(|c| &c.kind);
        share
            * match kind.and_then(|k| display(k, mode)) {
                Some(Display::Dial(_, d)) => d.class * 0.01 * (d.max - d.min),
                Some(Display::Digits(_, d)) => d.percent * 0.01 * value.abs() + d.counts * d.resolution,
                None => 0.0,
            }
    }

    /// The share this world has drawn for the instrument behind `what`; 0 for senses.
    pub(super) fn drawn_share(&self, what: &Observed) -> f64 {
        let (Observed::Instrument { instrument, .. } | Observed::Interval { instrument, .. }) = what else {
            return 0.0;
        };
        let card = self.setup.kit.iter().position(|c| c.id == *instrument);
        card.and_then(|c| self.setup.world.instrument_errors.get(c)).copied().unwrap_or(0.0)
    }
}
