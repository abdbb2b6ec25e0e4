//! What truly switches, at the end of the first tick past its threshold.

use super::air::Chamber;
use super::control::Control;

/// Something of a part that switches.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Switch {
    /// A contact by the gauge pressure of a body of air; closed with none.
    Vacuum {
        /// The body.
        chamber: Chamber,
        /// Opens at this gauge pressure, Pa.
        opens_at_pa: f64,
        /// Closes again at this gauge pressure, Pa.
        closes_at_pa: f64,
    },
    /// A contact by the voltage at a coil.
    Relay {
        /// Number of the coil's two-pole in the part.
        coil: u8,
        /// Share of the voltage that is left behind a corroded terminal.
        share: f64,
        /// Coil voltage at which it pulls in, V.
        pull_in_v: f64,
        /// Coil voltage at which it drops out, V.
        drop_out_v: f64,
    },
    /// A controller with its output.
    Controller {
        /// What it decides by.
        law: Control,
        /// Port of the supply.
        supply: u8,
        /// Port that feeds the sensor.
        feed: u8,
        /// Port the signal comes in at.
        signal: u8,
        /// Port of its earth.
        earth: u8,
    },
    /// A fuse by its heat ([`super::Quantity::FuseHeat`]).
    Fuse,
    /// A slack clip by its own heat ([`super::Quantity::FuseHeat`]): it lets go warm and makes contact again cold.
    Slack,
    /// The hum of a pump by its speed ([`super::Quantity::Speed`]).
    Hum,
}
