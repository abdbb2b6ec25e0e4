//! Numbers, times and units as a person writes them in the language shown.

use sim_core::action::Written;
use sim_core::units::{TICKS_PER_SECOND, Tick};

use super::{Words, pretty_unit};
use crate::prefs::PressureUnit;

impl Words {
    /// A pressure in the unit of the settings, with it.
    #[must_use]
    pub fn pressure(&self, kpa: f64, unit: PressureUnit) -> String {
        let decimals = match unit {
            PressureUnit::Kpa | PressureUnit::Inhg => 1,
            PressureUnit::Mbar => 0,
        };
        let value = kpa * unit.per_kpa();
        let whole = (value - value.round()).abs() < 1e-6;
        let text = if whole { self.number(value, 0) } else { self.number(value, decimals) };
        format!("{text} {}", unit.symbol())
    }

    /// What somebody wrote down; pressures in the unit of the settings.
    #[must_use]
    pub fn written(&self, written: &Written, unit: PressureUnit) -> String {
        if written.unit == "kPa" {
            return self.pressure(written.value, unit);
        }
        format!("{} {}", self.plain(written.value), pretty_unit(&written.unit))
    }

    /// A time of the attempt as the workshop clock shows it, without its seconds.
    #[must_use]
    pub fn clock(&self, tick: Tick) -> String {
        let s = tick.0 / TICKS_PER_SECOND;
        format!("{}:{:02}", s / 3600, s / 60 % 60)
    }

    /// A time of the attempt as the workshop clock shows it.
    #[must_use]
    pub fn clock_s(&self, tick: Tick) -> String {
        format!("{}:{:02}", self.clock(tick), tick.0 / TICKS_PER_SECOND % 60)
    }

    /// A share as whole percents, the ends named.
    #[must_use]
    pub fn percent(&self, p: f64) -> String {
        if p < 0.005 {
            "< 1 %".to_owned()
        } else if 0.995 <= p {
            "> 99 %".to_owned()
        } else {
            format!("{} %", self.number(100.0 * p, 0))
        }
    }
}
