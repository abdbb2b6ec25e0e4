//! Controller of the vacuum pump, for cars without a vacuum switch: thresholds, run-time limit, stored codes.
//!
//! It feeds the sensor with 5 V, reads the signal as a share of that feed, and drives the pump's relay to
//! earth while the vacuum is short: from the cut-in until the cut-out. It keeps a reckoning of how hot the
//! pump may be, dr/dt = 1 while it drives, −r/τ while not; at the limit it lets the pump rest until half of
//! it is gone. With a signal that cannot be right it drives as long as the limit allows (a pump too much is
//! safer than none). What it saw stays stored as a code in the form of ISO 15031-6, also without current.
//! Decisions fall at the end of a tick. Not modelled: how long a fault must last before it is stored, a
//! network to other controllers, warning lamp.

use crate::lanes::Real;
use crate::params::part_params;

part_params! {
    /// The controller; ports `15`, `31`, `feed`, `signal`, `ground` and `out` (all electrical).
    pub struct Controller {
        /// Stops the pump at this gauge pressure, kPa (negative).
        cut_out_kpa: -95.0 ..= -5.0,
        /// Starts it again at this gauge pressure, kPa (negative, above the cut-out).
        cut_in_kpa: -94.0 ..= -2.0,
        /// Share of the feed it takes for no vacuum.
        zero_share: 0.02 ..= 0.5,
        /// Further share it takes for 100 kPa of vacuum.
        span_share: 0.1 ..= 0.95,
        /// Time the pump may run from cold, s.
        run_limit_s: 5.0 ..= 3600.0,
        /// Time in which its reckoning of the pump's heat fades, s.
        rest_tau_s: 5.0 ..= 7200.0,
        /// Resistance of its own supply from 15 to 31, ohm.
        supply_ohm: 20.0 ..= 10000.0,
        /// Resistance from the signal's terminal to earth, kΩ.
        input_kohm: 5.0 ..= 1000.0,
        /// Resistance of the output while it drives, mΩ.
        out_mohm: 5.0 ..= 5000.0,
        faults {
            /// Resistance of a burnt output on top of the sound one, ohm; a million = open.
            out_burnt_ohm: 0.0 ..= 1000000.0,
            /// Conductance of an output that conducts without being driven, siemens; 0 = none.
            out_shorted_s: 0.0 ..= 1000.0,
        }
    }
}

/// Number of the port 15.
pub const SUPPLY: u8 = 0;
/// Number of the port 31.
pub const EARTH: u8 = 1;
/// Number of the port that feeds the sensor.
pub const FEED: u8 = 2;
/// Number of the port the signal comes in at.
pub const SIGNAL: u8 = 3;
/// Supply at which it wakes, V.
pub const WAKES_V: f64 = 8.0;
/// Supply below which it sleeps, V.
pub const SLEEPS_V: f64 = 6.0;
/// Feed it gives the sensor, V, behind this resistance, ohm.
pub const FEED_V: f64 = 5.0;
/// Resistance behind the feed, ohm.
pub const FEED_OHM: f64 = 0.5;
/// Resistance of the sensor's ground through the controller to 31, ohm.
pub const GROUND_OHM: f64 = 0.01;
/// Feed below which it takes the feed for shorted, V.
const FEED_SHORT_V: f64 = 4.5;
/// Share of the feed nearer to either end than this is no sound sensor's.
const IMPLAUSIBLE: f64 = 0.05;

/// A code in the two bytes of ISO 15031-6: letter, digit, three hexadecimal digits (form from memory).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct TroubleCode(pub u16);

impl std::fmt::Display for TroubleCode {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let letter = ['P', 'C', 'B', 'U'][usize::from(self.0 >> 14)];
        write!(f, "{letter}{}{:03X}", (self.0 >> 12) & 3, self.0 & 0xfff)
    }
}

/// What it can store, by the bit it sets; meanings as ISO 15031-6 lists them (from memory).
pub const CODES: [TroubleCode; 4] = [
    // Brake booster pressure sensor, circuit low.
    TroubleCode(0x0557),
    // Brake booster pressure sensor, circuit high.
    TroubleCode(0x0558),
    // Sensor reference voltage, circuit.
    TroubleCode(0x0641),
    // Vacuum pump control, range or performance: it ran to the limit and the vacuum did not come.
    TroubleCode(0x258B),
];

/// What a controller decides at the end of a tick.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Decision {
    /// Awake.
    pub powered: bool,
    /// Drives the relay.
    pub drives: bool,
    /// Lets the pump rest because of the run-time limit.
    pub resting: bool,
    /// Codes stored, a bit for each of [`CODES`].
    pub codes: u8,
}

impl Controller {
    /// What it decides after `before`, with `supply_v` between 15 and 31, `feed_v` and `signal_v` against
    /// 31, and its reckoning at `run_s`.
    #[must_use]
    pub fn decide(
        &self,
        before: Decision,
        supply_v: f64,
        feed_v: f64,
        signal_v: f64,
        run_s: f64,
    ) -> Decision {
        let powered = if before.powered { SLEEPS_V < supply_v } else { WAKES_V <= supply_v };
        let mut next = Decision { powered, ..before };
        if !powered || !before.powered {
            // Asleep, or just woken: the feed stands from the next tick on.
            next.drives = false;
            return next;
        }
        next.resting =
            if before.resting { self.run_limit_s * 0.5 < run_s } else { self.run_limit_s <= run_s };
        let share = signal_v / feed_v.max(1e-3);
        let seen = if feed_v < FEED_SHORT_V {
            Some(1 << 2)
        } else if share < IMPLAUSIBLE {
            Some(1 << 0)
        } else if 1.0 - IMPLAUSIBLE < share {
            Some(1 << 1)
        } else {
            None
        };
        if let Some(bit) = seen {
            next.codes |= bit;
            next.drives = !next.resting;
            return next;
        }
        if next.resting && !before.resting {
            next.codes |= 1 << 3;
        }
        let gauge_kpa = -(share - self.zero_share) / self.span_share * 100.0;
        let short = if before.drives { self.cut_out_kpa < gauge_kpa } else { self.cut_in_kpa <= gauge_kpa };
        next.drives = short && !next.resting;
        next
    }

    /// How fast a reckoning of `run_s` fades while the pump is not driven, time `rest_tau_s` (s), and the slope;
    /// while it is driven the reckoning grows by a second a second.
    #[must_use]
    pub fn run_rate<R: Real>(rest_tau_s: R, run_s: R) -> (R, R) {
        (-run_s / rest_tau_s, R::all(-1.0) / rest_tau_s)
    }
}
