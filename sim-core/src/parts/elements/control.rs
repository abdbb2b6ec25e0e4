//! What the controller of a vacuum pump decides by, at the end of a tick, and the codes it stores.

use crate::lanes::Real;

/// A controller's numbers as its decisions need them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Control {
    /// Stops the pump at this gauge pressure, kPa (negative).
    pub cut_out_kpa: f64,
    /// Starts it again at this gauge pressure, kPa.
    pub cut_in_kpa: f64,
    /// Share of the feed it takes for no vacuum.
    pub zero_share: f64,
    /// Further share it takes for 100 kPa of vacuum.
    pub span_share: f64,
    /// Time the pump may run from cold, s.
    pub run_limit_s: f64,
}

/// Supply at which it wakes, V.
const WAKES_V: f64 = 8.0;
/// Supply below which it sleeps, V.
const SLEEPS_V: f64 = 6.0;
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

impl Control {
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
    #[inline(always)]
    pub fn run_rate<R: Real>(rest_tau_s: R, run_s: R) -> (R, R) {
        (-run_s / rest_tau_s, R::all(-1.0) / rest_tau_s)
    }
}
