//! Controller of the vacuum pump, for cars without a vacuum switch: thresholds, run-time limit, stored codes.
//!
//! It feeds the sensor with 5 V, reads the signal as a share of that feed, and drives the pump's relay to
//! earth while the vacuum is short: from the cut-in until the cut-out. It keeps a reckoning of how hot the
//! pump may be, dr/dt = 1 while it drives, −r/τ while not; at the limit it lets the pump rest until half of
//! it is gone. With a signal that cannot be right it drives as long as the limit allows (a pump too much is
//! safer than none). What it saw stays stored as a code in the form of ISO 15031-6, also without current.
//! Decisions fall at the end of a tick. Not modelled: how long a fault must last before it is stored, a
//! network to other controllers, warning lamp.

use crate::params::part_params;
use crate::parts::elements::{
    Air, Allowance, Bounds, Control, Electric, FEED_OHM, FEED_V, GROUND_OHM, Lag, Pole, Quantity, Seen, Spec,
    Specified, Start, State, Switch, Worth,
};

pub use crate::parts::elements::{CODES, TroubleCode};

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

/// Numbers of the ports.
const SUPPLY: u8 = 0;
const EARTH: u8 = 1;
const FEED: u8 = 2;
const SIGNAL: u8 = 3;
const GROUND: u8 = 4;
const OUT: u8 = 5;

impl Controller {
    /// What it decides by.
    #[must_use]
    pub fn law(&self) -> Control {
        Control {
            cut_out_kpa: self.cut_out_kpa,
            cut_in_kpa: self.cut_in_kpa,
            zero_share: self.zero_share,
            span_share: self.span_share,
            run_limit_s: self.run_limit_s,
        }
    }

    /// Its two-poles, each to its own earth.
    fn poles(&self) -> Vec<Pole> {
        let to_earth = |a, name, worth| Pole { a, b: EARTH, name, worth };
        let out = 1.0 / (self.out_mohm * 1e-3 + self.out_burnt_ohm);
        vec![
            to_earth(SUPPLY, "supply", Worth::Steady(1.0 / self.supply_ohm)),
            to_earth(FEED, "feed", Worth::Awake { g: 1.0 / FEED_OHM, emf: FEED_V }),
            to_earth(SIGNAL, "input", Worth::Steady(1e-3 / self.input_kohm)),
            to_earth(GROUND, "ground", Worth::Steady(1.0 / GROUND_OHM)),
            to_earth(OUT, "output", Worth::Contact { g: out, weld: self.out_shorted_s }),
        ]
    }
}

impl Specified for Controller {
    const SEEN: Seen = Seen::PIECE;

    fn spec(&self, _: f64) -> Spec {
        Spec {
            hangs: false,
            air: Air::NONE,
            electric: Electric::of(self.poles()),
            states: vec![State {
                is: Quantity::RunTime,
                bounds: Bounds::any(Allowance::of(0.01)),
                start: Start::At(0.0),
                follows: Some(Lag::RunTime { rest_tau_s: self.rest_tau_s }),
            }],
            machines: vec![],
            switches: vec![Switch::Controller {
                law: self.law(),
                supply: SUPPLY,
                feed: FEED,
                signal: SIGNAL,
                earth: EARTH,
            }],
        }
    }
}
