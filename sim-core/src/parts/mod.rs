//! Every part the workshop knows: its numbers, its ports, its laws. One kind a file.

mod battery;
mod body;
pub mod booster;
pub mod check_valve;
pub mod controller;
pub mod electrical;
pub mod elements;
pub mod engine;
pub mod engine_pump;
mod fuse;
mod hand_pump;
pub mod hose;
pub mod instruments;
mod key_switch;
mod multimeter;
mod push_lead;
mod relay;
mod relay_socket;
pub mod reservoir;
mod supply;
pub mod tee;
mod test_lamp;
mod vacuum_gauge;
pub mod vacuum_pump;
pub mod vacuum_sensor;
pub mod vacuum_switch;
mod wire;

use crate::params::Params;
use booster::Booster;
use check_valve::CheckValve;
use controller::Controller;
use electrical::{Battery, Body, Fuse, KeySwitch, Relay, RelaySocket, Supply, Wire};
use elements::{Seen, Spec, Specified};
use engine::Engine;
use engine_pump::EnginePump;
use hose::Hose;
use instruments::{HandPump, Multimeter, PushLead, TestLamp, VacuumGauge};
use reservoir::Reservoir;
use tee::Tee;
use vacuum_pump::VacuumPump;
use vacuum_sensor::VacuumSensor;
use vacuum_switch::VacuumSwitch;

impl PartKind {
    /// Its numbers as a hose, if it is one: what a clamp squeezes and an angle finder is laid on.
    #[must_use]
    pub fn hose(&self) -> Option<&Hose> {
        if let Self::Hose(hose) = self { Some(hose) } else { None }
    }

    /// Gauge pressures of the store at which it switches the pump off and on again, kPa, if it does.
    #[must_use]
    pub fn switch_points_kpa(&self) -> Option<(f64, f64)> {
        match self {
            Self::VacuumSwitch(s) => Some((s.cut_out_kpa, s.cut_in_kpa)),
            Self::Controller(c) => Some((c.cut_out_kpa, c.cut_in_kpa)),
            Self::Hose(_)
            | Self::Tee(_)
            | Self::CheckValve(_)
            | Self::VacuumPump(_)
            | Self::Booster(_)
            | Self::Engine(_)
            | Self::Reservoir(_)
            | Self::EnginePump(_)
            | Self::VacuumSensor(_)
            | Self::Battery(_)
            | Self::Supply(_)
            | Self::Fuse(_)
            | Self::Relay(_)
            | Self::RelaySocket(_)
            | Self::KeySwitch(_)
            | Self::Wire(_)
            | Self::Body(_)
            | Self::VacuumGauge(_)
            | Self::HandPump(_)
            | Self::TestLamp(_)
            | Self::Multimeter(_)
            | Self::PushLead(_) => None,
        }
    }

    /// Its numbers as a booster, if it is one: what the pedal presses.
    #[must_use]
    pub fn booster(&self) -> Option<&Booster> {
        if let Self::Booster(booster) = self { Some(booster) } else { None }
    }
}

/// What flows through a port.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Domain {
    /// Air.
    Pneumatic,
    /// Current.
    Electrical,
}

/// A kind of part's port.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PortDef {
    /// Name within the part.
    pub name: &'static str,
    /// What flows through it.
    pub domain: Domain,
}

// `$d` is a dollar: what is written with it is a variable of the macro that this one makes.
macro_rules! kinds {
    ($d:tt $( $(#[doc = $doc:literal])+ $kind:ident { $($port:literal: $domain:ident),* } )*) => {
        /// A part by its kind, with its numbers.
        #[derive(Clone, Copy, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
        pub enum PartKind { $( $(#[doc = $doc])+ $kind($kind), )* }

        impl PartKind {
            /// Names of all kinds, as a file writes them.
            pub const NAMES: &'static [&'static str] = &[$(stringify!($kind)),*];

            /// Ports in declared order; a port's index is its place here.
            #[must_use]
            pub fn ports(&self) -> &'static [PortDef] {
                match self { $( Self::$kind(_) => const { &[ $( PortDef { name: $port, domain: Domain::$domain } ),* ] }, )* }
            }

            /// The kind's name, as a file writes it.
            #[must_use]
            pub fn name(&self) -> &'static str {
                match self { $( Self::$kind(_) => stringify!($kind), )* }
            }

            /// How it lies in the car.
            #[must_use]
            pub fn seen(&self) -> Seen {
                match self { $( Self::$kind(_) => $kind::SEEN, )* }
            }

            /// What the circuit compiles of it on a day of pressure `p_atm`, Pa.
            #[must_use]
            pub fn spec(&self, p_atm: f64) -> Spec {
                match self { $( Self::$kind(p) => p.spec(p_atm), )* }
            }

            /// The part's numbers by name.
            #[must_use]
            pub fn params(&self) -> &dyn Params {
                match self { $( Self::$kind(p) => p, )* }
            }

            /// The part's numbers by name, to change.
            pub fn params_mut(&mut self) -> &mut dyn Params {
                match self { $( Self::$kind(p) => p, )* }
            }
        }

        impl PartKind {
            /// Whether it is a line between fittings, a hose or a wire: it has a way, no place.
            #[must_use]
            pub fn is_line(&self) -> bool {
                self.seen().lies == elements::Lies::Along
            }
        }

        /// Does the same with the numbers of a part of any kind, each kind's being of a type of their own:
        /// `with_kind!(kind, part => part.what_every_kind_says())`. Whoever stands above asks every kind for something in
        /// this way: by a trait of his own, without which a new kind does not compile.
        #[macro_export]
        macro_rules! with_kind {
            ($d kind:expr, $d part:ident => $d it:expr) => {
                match $d kind { $( $crate::parts::PartKind::$kind($d part) => $d it, )* }
            };
        }

        /// The parameter table of every kind, for the reference page.
        pub const ALL_TABLES: &[(&str, &[crate::params::ParamDef])] = &[$((stringify!($kind), $kind::TABLE)),*];
    };
}

kinds! { $
    /// Hose or pipe.
    Hose { "a": Pneumatic, "b": Pneumatic }
    /// Distribution piece.
    Tee { "1": Pneumatic, "2": Pneumatic, "3": Pneumatic, "4": Pneumatic }
    /// Check valve.
    CheckValve { "store": Pneumatic, "source": Pneumatic }
    /// Vacuum switch.
    VacuumSwitch { "vacuum": Pneumatic, "p": Electrical, "com": Electrical }
    /// Electric vacuum pump.
    VacuumPump { "inlet": Pneumatic, "plus": Electrical, "minus": Electrical }
    /// Brake booster.
    Booster { "vacuum": Pneumatic }
    /// Engine with manifold and alternator.
    Engine { "manifold": Pneumatic, "b_plus": Electrical, "ground": Electrical }
    /// Vacuum reservoir.
    Reservoir { "1": Pneumatic, "2": Pneumatic }
    /// Vacuum pump turned by the engine.
    EnginePump { "inlet": Pneumatic }
    /// Vacuum sensor.
    VacuumSensor { "vacuum": Pneumatic, "plus": Electrical, "signal": Electrical, "minus": Electrical }
    /// Controller of the vacuum pump.
    Controller { "15": Electrical, "31": Electrical, "feed": Electrical, "signal": Electrical, "ground": Electrical, "out": Electrical }
    /// Battery.
    Battery { "plus": Electrical, "minus": Electrical }
    /// Bench supply.
    Supply { "plus": Electrical, "minus": Electrical }
    /// Fuse.
    Fuse { "a": Electrical, "b": Electrical }
    /// Relay.
    Relay { "30": Electrical, "87": Electrical, "85": Electrical, "86": Electrical }
    /// Relay socket, its load side.
    RelaySocket { "30": Electrical, "clip": Electrical, "87": Electrical }
    /// Ignition switch.
    KeySwitch { "30": Electrical, "15": Electrical }
    /// Wire.
    Wire { "a": Electrical, "b": Electrical }
    /// Car body (earth).
    Body { "31a": Electrical, "31b": Electrical, "31c": Electrical, "31d": Electrical }
    /// Dial gauge.
    VacuumGauge { "stem": Pneumatic }
    /// Hand vacuum pump.
    HandPump { "stem": Pneumatic }
    /// Test lamp.
    TestLamp { "a": Electrical, "b": Electrical }
    /// Multimeter.
    Multimeter { "v_ohm": Electrical, "com": Electrical }
    /// Push-button lead.
    PushLead { "a": Electrical, "b": Electrical }
}
