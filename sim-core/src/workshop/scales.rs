//! How each observation is shown: units, steps, ends, scatter; and how far an instrument errs.
//!
//! What an instrument shows its value on it says itself ([`crate::instrument::Display`]). Senses: levels with
//! thresholds on a continuous measure.
//! Thresholds of hearing, sight and feel are common practice, no source, except touch (row 5.1).

use super::Workshop;
use super::hazards::{METAL_10_S_C, RUBBER_10_S_C};
use crate::action::Sense;
use crate::instrument::{InstrumentKind, Measured};
use crate::observe::{Observed, Scale};

/// Hiss, log₁₀ of g/s: a hole of 0.25 mm at −60 kPa gauge passes 0.01 g/s and is faint; the seep of a
/// sound car (below 0.001 g/s) is silent.
const HISS: Scale = Scale::Ordinal {
    levels: &["nothing", "a-faint-hiss", "a-clear-hiss", "a-loud-hiss"],
    thresholds: &[-2.3, -1.3, -0.1],
    scatter: 0.12,
};
const HUM: Scale =
    Scale::Ordinal { levels: &["the-pump-is-quiet", "the-pump-hums"], thresholds: &[0.5], scatter: 0.1 };
const TOUCH_METAL: Scale = Scale::Ordinal {
    levels: &["cool", "warm", "hot", "too-hot-to-touch"],
    thresholds: &[32.0, 48.0, METAL_10_S_C],
    scatter: 1.5,
};
const TOUCH_RUBBER: Scale = Scale::Ordinal {
    levels: &["cool", "warm", "hot", "too-hot-to-touch"],
    thresholds: &[32.0, 48.0, RUBBER_10_S_C],
    scatter: 1.5,
};
/// Felt by the foot in steps of 5 mm.
const TRAVEL: Scale =
    Scale::Numeric { unit: "mm", resolution: 5.0, min: 0.0, max: 250.0, scatter: 1.0, by_eye: false };
/// Change of travel in mm since the engine was started or stopped.
const MOVED: Scale = Scale::Ordinal {
    levels: &["it-has-risen-clearly", "it-has-not-moved", "it-has-dropped-clearly"],
    thresholds: &[-4.0, 4.0],
    scatter: 0.7,
};
const APPLICATIONS: Scale = Scale::Ordinal {
    levels: &["none", "one", "two", "three", "four", "five", "six-or-more"],
    thresholds: &[0.5, 1.5, 2.5, 3.5, 4.5, 5.5],
    scatter: 0.15,
};
/// Filament temperature in K; the first glow is seen at the Draper point, about 800 K (from memory).
const LAMP: Scale = Scale::Ordinal {
    levels: &["dark", "it-glimmers", "half-bright", "bright"],
    thresholds: &[850.0, 1500.0, 2350.0],
    scatter: 30.0,
};
const BASE_BRAKES: Scale = Scale::Ordinal {
    levels: &["not-in-order", "fluid-hoses-discs-and-pads-in-order-pedal-firm"],
    thresholds: &[0.5],
    scatter: 0.1,
};
const YARD: Scale = Scale::Ordinal {
    levels: &["no-assist", "weak-assist", "full-assist"],
    thresholds: &[0.25, 0.55],
    scatter: 0.05,
};

impl Workshop {
    /// The scale an observation is shown on. An unknown instrument gets a bare yes-or-no scale.
    #[must_use]
    pub fn scale(&self, what: &Observed) -> Scale {
        let (kind, mode) = match what {
            Observed::Instrument { instrument, mode, .. } => (self.kind_of(instrument), *mode),
            Observed::Interval { instrument, .. } => (self.kind_of(instrument), None),
            Observed::Sense(sense) => return self.sense_scale(sense),
        };
        // The stopwatch is started and stopped by hand: two reactions.
        let scatter = if let Some(Measured::Time { reaction_s }) = kind.map(|k| k.nature().measured) {
            reaction_s * std::f64::consts::SQRT_2
        } else {
            0.0
        };
        kind.and_then(|k| k.nature().display(mode)).map_or(HUM, |display| display.scale(scatter))
    }

    /// The kind of the instrument called `name`.
    pub(super) fn kind_of(&self, name: &str) -> Option<&InstrumentKind> {
        self.setup.kit.iter().find(|c| c.id == *name).map(|c| &c.kind)
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
        let (kind, mode) = match what {
            Observed::Instrument { instrument, mode, .. } => (self.kind_of(instrument), *mode),
            Observed::Interval { instrument, .. } => (self.kind_of(instrument), None),
            Observed::Sense(_) => return 0.0,
        };
        share * kind.and_then(|k| k.nature().display(mode)).map_or(0.0, |display| display.error(value))
    }

    /// The share this world has drawn for the instrument behind `what`; 0 for senses.
    pub(super) fn drawn_share(&self, what: &Observed) -> f64 {
        let (Observed::Instrument { instrument, .. } | Observed::Interval { instrument, .. }) = what else {
            return 0.0;
        };
        let card = self.setup.kit.iter().position(|c| c.id == *instrument);
        card.and_then(|c| self.world.instrument_errors.get(c)).copied().unwrap_or(0.0)
    }
}
